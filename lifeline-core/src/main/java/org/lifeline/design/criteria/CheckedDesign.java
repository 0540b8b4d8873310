package org.lifeline.design.criteria;

import java.util.List;
import org.lifeline.analysis.LineEquilibrium;
import org.lifeline.analysis.Statics;
import org.lifeline.design.envelope.Extremes;
import org.lifeline.model.Fall;
import org.lifeline.model.Lifeline;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Obstruction;

/** What a criterion is checked against: the design, the worst values of its arrests, the line as installed. */
final class CheckedDesign {
    private final Extremes extremes;
    private final LifelineDesign design;

    CheckedDesign(Extremes extremes) {
        this.extremes = extremes;
        this.design = extremes.design();
    }

    Extremes extremes() {
        return extremes;
    }

    LifelineDesign design() {
        return design;
    }

    Lifeline line() {
        return design.line();
    }

    /** The line as installed, without anybody on it. */
    LineEquilibrium installed() {
        return Statics.withDefaults().solve(line(), List.of());
    }

    /** Horizontal distance along the line between the end anchors [m]. */
    double length() {
        double sum = 0;
        for (int i = 1; i <= line().spans(); i++) {
            sum += line().run(i);
        }
        return sum;
    }

    /** Most workers who are hooked on to one span: in a stated fall, or when all spread as evenly as they can. */
    int workersInOneSpan() {
        int spans = line().spans();
        int most = (design.workers().size() + spans - 1) / spans;
        for (Fall fall : design.falls()) {
            int[] count = new int[spans + 1];
            count[line().spanOf(fall.place())] += fall.fallers().size();
            for (Fall.Hanging h : fall.hanging()) {
                count[line().spanOf(h.place())]++;
            }
            for (int c : count) {
                most = Math.max(most, c);
            }
        }
        return most;
    }

    /** Elevation of the highest obstruction below a span [m]; NaN if there is none. */
    double highestBelow(int span) {
        double from = 0;
        for (int i = 1; i < span; i++) {
            from += line().run(i);
        }
        double start = from;
        double end = from + line().run(span);
        return design.clearance().obstructions().stream()
                .filter(o -> o.from() <= end && o.to() >= start)
                .mapToDouble(Obstruction::elevation)
                .max()
                .orElse(Double.NaN);
    }
}
