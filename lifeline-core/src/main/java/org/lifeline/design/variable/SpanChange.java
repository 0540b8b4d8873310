package org.lifeline.design.variable;

import java.util.List;
import java.util.function.IntToDoubleFunction;
import org.lifeline.analysis.Statics;
import org.lifeline.base.Point;
import org.lifeline.base.Violations;
import org.lifeline.model.Fall;
import org.lifeline.model.Installed;
import org.lifeline.model.Lifeline;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Obstruction;
import org.lifeline.model.Place;
import org.lifeline.model.Support;

/** Changes the lengths of spans and takes everything along that is stated by its place on the line. */
final class SpanChange {
    private final Lifeline old;
    private final double[] scale;

    private SpanChange(Lifeline old, double[] scale) {
        this.old = old;
        this.scale = scale;
    }

    static LifelineDesign apply(LifelineDesign design, IntToDoubleFunction newRun) {
        Lifeline line = design.line();
        double[] scale = new double[line.spans() + 1];
        Violations v = new Violations();
        for (int i = 1; i <= line.spans(); i++) {
            v.positive("length of span " + i, newRun.applyAsDouble(i), "m");
            scale[i] = newRun.applyAsDouble(i) / line.run(i);
        }
        v.throwIfAny();
        SpanChange c = new SpanChange(line, scale);
        LifelineDesign.Builder b = LifelineDesign.builder(design.title())
                .line(c.line())
                .modelFactors(design.modelFactors())
                .clearance(design.clearance()
                        .withObstructions(design.clearance().obstructions().stream()
                                .map(c::moved)
                                .toList()));
        design.workingFloor().ifPresent(b::workingFloor);
        design.secondFall().ifPresent(b::secondFall);
        design.rescuerMass().ifPresent(b::rescuerMass);
        design.temperatures().forEach(b::temperature);
        design.workers().forEach(b::worker);
        design.falls().forEach(f -> b.fall(c.moved(f)));
        return b.build();
    }

    private Lifeline line() {
        Lifeline.Builder b = Lifeline.builder().cable(old.cable()).gravity(old.gravity());
        List<Support> supports = old.supports();
        double x = supports.get(0).position().x();
        double y = supports.get(0).position().y();
        b.support(supports.get(0));
        for (int i = 1; i < supports.size(); i++) {
            Point from = supports.get(i - 1).position();
            Point to = supports.get(i).position();
            x += scale[i] * (to.x() - from.x());
            y += scale[i] * (to.y() - from.y());
            b.support(supports.get(i).withPosition(Point.of(x, y, to.z())));
        }
        Installed installed = old.installed();
        if (installed.form() == Installed.Form.UNSTRETCHED_LENGTH) {
            double tension = Statics.withDefaults().solve(old, List.of()).firstTension();
            installed = installed.withPretension(tension);
        }
        return b.installed(installed).build();
    }

    private Place moved(Place p) {
        return p.isAtSupport() ? p : Place.of(p.span(), p.station() * scale[p.span()]);
    }

    private Fall moved(Fall f) {
        Fall.Builder b = Fall.builder(f.id()).at(moved(f.place()));
        f.fallers().forEach(b::faller);
        f.hanging().forEach(h -> b.hanging(h.worker(), moved(h.place())));
        f.freeFall().ifPresent(b::freeFall);
        return b.build();
    }

    private Obstruction moved(Obstruction o) {
        return new Obstruction(along(o.from()), along(o.to()), o.elevation(), o.distance());
    }

    /** Distance along the new line of a place at a distance along the old one. */
    private double along(double distance) {
        double before = 0;
        double after = 0;
        if (distance <= 0) {
            return distance;
        }
        for (int i = 1; i <= old.spans(); i++) {
            double run = old.run(i);
            if (distance <= before + run) {
                return after + (distance - before) * scale[i];
            }
            before += run;
            after += run * scale[i];
        }
        return after + distance - before;
    }
}
