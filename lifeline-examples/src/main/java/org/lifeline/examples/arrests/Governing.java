package org.lifeline.examples.arrests;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Support;

/**
 * The extreme value of a quantity over all arrests and the case that governs it. The extreme is that of the values with
 * the design's model factors applied; without factors that is the extreme of the computed values.
 *
 * <p>Immutable and thread-safe.
 *
 * @param demand the quantity
 * @param support the support that a support load belongs to; empty for other quantities
 * @param value the computed value in that arrest, no model factor applied [unit of the demand]
 * @param arrest the arrest in which it occurs
 */
public record Governing(Demand demand, String support, double value, ArrestResult arrest) {

    /** What the governing table lists, in this order, before the load on each support. */
    private static final List<Demand> QUANTITIES = List.of(
            Demand.END_ANCHOR_LOAD,
            Demand.MAXIMUM_TENSION,
            Demand.ARREST_FORCE,
            Demand.FREE_FALL,
            Demand.DEPLOYMENT,
            Demand.SAG,
            Demand.LINE_DESCENT,
            Demand.TOTAL_FALL_DISTANCE,
            Demand.REQUIRED_BELOW_LINE,
            Demand.CLEARANCE_MARGIN);

    /**
     * What governs, for every quantity and every support.
     *
     * @param run the computed design
     * @return a list without quantities that no arrest has; unmodifiable
     */
    public static List<Governing> all(DesignRun run) {
        List<Governing> list = new ArrayList<>();
        QUANTITIES.forEach(q -> of(run, q, "").ifPresent(list::add));
        for (Support each : run.design().line().supports()) {
            of(run, Demand.SUPPORT_LOAD, each.id()).ifPresent(list::add);
        }
        return List.copyOf(list);
    }

    /**
     * The extreme of one quantity. Where several arrests have the same value, the first of them is named.
     *
     * @param run the computed design
     * @param demand the quantity
     * @param support for a support load the support, or empty for the largest of all
     * @return the extreme, if any arrest has the quantity
     */
    public static Optional<Governing> of(DesignRun run, Demand demand, String support) {
        Governing extreme = null;
        for (ArrestResult each : run.arrests()) {
            OptionalDouble value = support.isEmpty() ? demand.of(each) : OptionalDouble.of(each.anchorLoad(support));
            if (value.isPresent()) {
                Governing next = new Governing(demand, support, value.getAsDouble(), each);
                extreme = extreme == null || next.passes(extreme, run.design()) ? next : extreme;
            }
        }
        return Optional.ofNullable(extreme);
    }

    private boolean passes(Governing other, LifelineDesign design) {
        double mine = factored(design);
        return demand.atLeast() ? mine < other.factored(design) : mine > other.factored(design);
    }

    /**
     * The value with the design's model factors applied.
     *
     * @param design the design
     * @return the value to compare with a limit [unit of the demand]
     */
    public double factored(LifelineDesign design) {
        return demand.factored(value, arrest, design.modelFactors());
    }
}
