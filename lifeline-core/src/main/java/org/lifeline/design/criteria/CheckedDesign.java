package org.lifeline.design.criteria;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Stream;
import org.lifeline.analysis.LineEquilibrium;
import org.lifeline.analysis.Statics;
import org.lifeline.base.Interval;
import org.lifeline.design.envelope.Extreme;
import org.lifeline.design.envelope.Extremes;
import org.lifeline.model.Fall;
import org.lifeline.model.Lifeline;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Obstruction;
import org.lifeline.model.Worker;

/**
 * What a criterion is checked against: the design, the worst values of its arrests, those who use the line, the line as
 * installed.
 */
final class CheckedDesign {
    private static final String NO_CASE = "no arrest could be computed";

    private final Extremes extremes;
    private final LifelineDesign design;
    private final Collection<Worker> workers;
    private final int users;
    private final boolean empty;

    CheckedDesign(Extremes extremes) {
        this.extremes = extremes;
        this.design = extremes.design();
        List<Fall> falls = new ArrayList<>(design.falls());
        List<Extreme> arrests = extremes.all();
        this.empty = arrests.isEmpty();
        arrests.forEach(e -> falls.add(e.arrest().fall()));
        // Workers are told apart by all that they are: another mass or another connection is another worker.
        Set<Worker> all = new LinkedHashSet<>(design.workers());
        int most = design.workers().size();
        for (Fall each : falls) {
            participants(each).forEach(all::add);
            most = Math.max(most, each.fallers().size() + each.hanging().size());
        }
        this.workers = List.copyOf(all);
        this.users = most;
    }

    private static Stream<Worker> participants(Fall fall) {
        return Stream.concat(fall.fallers().stream(), fall.hanging().stream().map(Fall.Hanging::worker));
    }

    Extremes extremes() {
        return extremes;
    }

    /** Tells whether there is no arrest at all to take values from. */
    boolean hasNoArrest() {
        return empty;
    }

    /** Why a value of an arrest is missing: that none was asked for is another reason than that none could be computed. */
    String noCase() {
        String lacking = empty ? extremes.lacking() : "";
        if (lacking.isEmpty()) {
            return NO_CASE;
        }
        return extremes.failures().isEmpty() ? lacking : NO_CASE + "; " + lacking;
    }

    LifelineDesign design() {
        return design;
    }

    Lifeline line() {
        return design.line();
    }

    /** Those of the design and those who fall or hang in its arrests, each once. */
    Collection<Worker> workers() {
        return workers;
    }

    /**
     * Number of workers on the line at once: all of the design, or as many as fall and hang together. Nothing keeps them from
     * one and the same span.
     */
    int users() {
        return users;
    }

    /** The masses that a worker may have: his own, or any in the range that the arrests were computed over [kg]. */
    Interval massesOf(Worker worker) {
        return extremes.massTolerance().orElse(Interval.exactly(worker.mass()));
    }

    /** The line as installed, without anybody on it. */
    LineEquilibrium installed() {
        return Statics.withDefaults().solve(line(), List.of());
    }

    /** The line at every temperature in service, without anybody on it. */
    List<LineEquilibrium> unloaded() {
        return design.temperatures().stream()
                .distinct()
                .map(t -> Statics.withDefaults().withTemperature(t).solve(line(), List.of()))
                .toList();
    }

    /** Horizontal distance along the line between the end anchors [m]. */
    double length() {
        double sum = 0;
        for (int i = 1; i <= line().spans(); i++) {
            sum += line().run(i);
        }
        return sum;
    }

    /** Elevation of the highest obstruction below a span [m]; empty if there is none. */
    OptionalDouble highestBelow(int span) {
        double from = 0;
        for (int i = 1; i < span; i++) {
            from += line().run(i);
        }
        double start = from;
        double end = from + line().run(span);
        return design.clearance().obstructions().stream()
                .filter(o -> o.from() <= end && o.to() >= start)
                .mapToDouble(Obstruction::elevation)
                .max();
    }
}
