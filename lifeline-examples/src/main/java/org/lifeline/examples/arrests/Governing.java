package org.lifeline.examples.arrests;

import java.util.ArrayList;
import java.util.List;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.design.envelope.Extreme;
import org.lifeline.design.envelope.Quantity;
import org.lifeline.model.ModelFactors;
import org.lifeline.model.Support;

/**
 * The extreme value of a quantity over all arrests and the case that governs it. The extreme is that of the values with
 * the design's model factors applied; without factors that is the extreme of the computed values.
 *
 * <p>Immutable and thread-safe.
 *
 * @param quantity the quantity
 * @param support the support that a support load belongs to; empty for other quantities
 * @param value the computed value in that arrest, no model factor applied [unit of the quantity]
 * @param extreme the value with model factors, and the arrest in which it occurs
 */
public record Governing(Quantity quantity, String support, double value, Extreme extreme) {

    /** What the governing table lists, in this order, before the load on each support. */
    private static final List<Quantity> QUANTITIES = List.of(
            Quantity.END_ANCHOR_LOAD,
            Quantity.MAXIMUM_TENSION,
            Quantity.ARREST_FORCE,
            Quantity.FREE_FALL,
            Quantity.DEPLOYMENT,
            Quantity.SAG,
            Quantity.LINE_DESCENT,
            Quantity.TOTAL_FALL_DISTANCE,
            Quantity.REQUIRED_BELOW_LINE,
            Quantity.CLEARANCE_MARGIN);

    /**
     * What governs, for every quantity and every support.
     *
     * @param run the computed design
     * @return a list without quantities that no arrest has; unmodifiable
     */
    public static List<Governing> all(DesignRun run) {
        List<Governing> list = new ArrayList<>();
        for (Quantity q : QUANTITIES) {
            run.extremes()
                    .of(q)
                    .ifPresent(e -> list.add(new Governing(q, "", q.value(e.arrest(), ModelFactors.none()), e)));
        }
        for (Support s : run.design().line().supports()) {
            run.extremes()
                    .onSupport(s.id())
                    .ifPresent(e -> list.add(new Governing(
                            Quantity.SUPPORT_LOAD, s.id(), e.arrest().anchorLoad(s.id()), e)));
        }
        return List.copyOf(list);
    }

    /**
     * The value with the design's model factors applied.
     *
     * @return the value to compare with a limit [unit of the quantity]
     */
    public double factored() {
        return extreme.value();
    }

    /**
     * The arrest in which the extreme occurs.
     *
     * @return the arrest, as computed
     */
    public ArrestResult arrest() {
        return extreme.arrest();
    }
}
