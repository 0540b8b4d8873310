package org.lifeline.examples.arrests;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.examples.criteria.Demand;
import org.lifeline.model.Support;

/**
 * The extreme value of a quantity over all arrests and the case that governs it.
 *
 * <p>Immutable and thread-safe.
 *
 * @param demand the quantity
 * @param support the support that a support load belongs to; empty for other quantities
 * @param value the largest value, for the clearance margin the smallest [unit of the demand]
 * @param arrest the arrest in which it occurs
 */
public record Governing(Demand demand, String support, double value, ArrestResult arrest) {

    /** What the governing table lists, in this order, besides the load on each support. */
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
     * @return a list without quantities that no arrest has
     */
    public static List<Governing> all(DesignRun run) {
        List<Governing> list = new ArrayList<>();
        for (Demand each : QUANTITIES) {
            add(list, of(run, each, ""));
        }
        for (Support each : run.design().line().supports()) {
            add(list, of(run, Demand.SUPPORT_LOAD, each.id()));
        }
        return List.copyOf(list);
    }

    private static void add(List<Governing> list, @Nullable Governing governing) {
        if (governing != null) {
            list.add(governing);
        }
    }

    /**
     * The extreme of one quantity.
     *
     * @param run the computed design
     * @param demand the quantity
     * @param support for a support load the support, or empty for the largest of all
     * @return the extreme, or null if no arrest has the quantity
     */
    public static @Nullable Governing of(DesignRun run, Demand demand, String support) {
        Function<ArrestResult, OptionalDouble> value =
                support.isEmpty() ? demand::of : r -> OptionalDouble.of(r.anchorLoad(support));
        ArrestResult governs = null;
        double extreme = Double.NaN;
        for (ArrestResult each : run.arrests()) {
            OptionalDouble v = value.apply(each);
            if (v.isPresent()
                    && (governs == null || (demand.atLeast() ? v.getAsDouble() < extreme : v.getAsDouble() > extreme))) {
                governs = each;
                extreme = v.getAsDouble();
            }
        }
        return governs == null ? null : new Governing(demand, support, extreme, governs);
    }
}
