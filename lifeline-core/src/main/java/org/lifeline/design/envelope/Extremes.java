package org.lifeline.design.envelope;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Support;
import org.lifeline.model.Worker;

/**
 * The worst values over a set of cases, each with the case that governs it.
 *
 * <p>Both sides of the absorber's force range are in the set, and the worse value counts whichever side it comes from.
 * Loads come from the maximum deployment force as a rule, distances from the clearance deployment force; where a
 * subsystem bottoms out it can be the other way round, and the governing case says so.
 *
 * <p>Immutable and thread-safe.
 */
public final class Extremes {
    private final LifelineDesign design;
    private final Measures measures;
    private final Curve.@Nullable Worst[] worst;

    private final Scope scope;

    private Extremes(LifelineDesign design, Measures measures, Curve.@Nullable Worst[] worst, Scope scope) {
        this.design = design;
        this.measures = measures;
        this.worst = worst;
        this.scope = scope;
    }

    /** What the worst values were taken over. */
    record Scope(Interval masses, List<FailedCase> failures, boolean complete) {
        static Scope of(LifelineDesign design, Tolerances tolerances, List<FailedCase> failures, boolean complete) {
            double[] m = design.workers().stream().mapToDouble(Worker::mass).toArray();
            Interval designed = Interval.of(
                    Arrays.stream(m).min().orElseThrow(), Arrays.stream(m).max().orElseThrow());
            return new Scope(tolerances.mass().orElse(designed), List.copyOf(failures), complete);
        }
    }

    /** Collects the worst values. */
    static final class Collector {
        private final LifelineDesign design;
        private final Measures measures;
        private final Curve.@Nullable Worst[] worst;

        private final double hair;

        /** Collects; of values that differ by no more than a share, the first is kept. */
        Collector(LifelineDesign design, Measures measures, double hair) {
            this.design = design;
            this.measures = measures;
            this.hair = hair;
            this.worst = new Curve.Worst[measures.size()];
        }

        void add(int index, Curve.@Nullable Worst w) {
            Curve.Worst known = worst[index];
            if (w != null && (known == null || w.value() > known.value() + hair * Math.abs(known.value()))) {
                worst[index] = w;
            }
        }

        double value(int index) {
            Curve.Worst w = worst[index];
            return w == null ? Double.NEGATIVE_INFINITY : w.value();
        }

        Curve.@Nullable Worst worst(int index) {
            return worst[index];
        }

        Extremes finish(Scope scope) {
            return new Extremes(design, measures, worst.clone(), scope);
        }
    }

    /**
     * The design whose cases these are.
     *
     * @return the design
     */
    public LifelineDesign design() {
        return design;
    }

    /**
     * The worst value of a quantity.
     *
     * @param quantity the quantity
     * @return value and case; empty where no case has the quantity
     */
    public Optional<Extreme> of(Quantity quantity) {
        return extreme(Measures.index(quantity), quantity.key(), quantity.unit());
    }

    /**
     * The largest force on a support.
     *
     * @param id the support
     * @return value and case; empty where no case could be computed
     * @throws IllegalArgumentException if there is no such support
     */
    public Optional<Extreme> onSupport(String id) {
        return extreme(measures.indexOfSupport(number(id)), "load on " + id, "N");
    }

    /**
     * The largest component of the force on a support in a direction. The other components that act together with it are
     * those of the governing arrest.
     *
     * @param id the support
     * @param direction the direction
     * @return value and case, the value negative when every case pulls the other way; empty where no case could be
     *     computed
     * @throws IllegalArgumentException if there is no such support
     */
    public Optional<Extreme> onSupportToward(String id, Direction direction) {
        return extreme(
                measures.indexOfSupport(number(id), direction), "load on " + id + " along " + direction.symbol(), "N");
    }

    /**
     * The least margin above an obstruction.
     *
     * @param index number of the obstruction in the clearance rules of the design, from 0
     * @return margin and case, negative where the clearance does not suffice; empty where no fall comes to lie above it
     */
    public Optional<Extreme> overObstruction(int index) {
        return extreme(measures.indexOfObstruction(index), "margin above obstruction " + (index + 1), "m");
    }

    /**
     * The masses of workers that the cases cover.
     *
     * @return lightest and heaviest [kg]
     */
    public Interval masses() {
        return scope.masses();
    }

    /**
     * Cases that could not be computed and are therefore not in the worst values.
     *
     * @return the cases with their reasons; unmodifiable
     */
    public List<FailedCase> failures() {
        return scope.failures();
    }

    /**
     * Tells whether every case was computed.
     *
     * @return false if cases failed or the analysis was ended early
     */
    public boolean coversEverything() {
        return scope.complete() && scope.failures().isEmpty();
    }

    /**
     * All of them: the quantities in their order, then the loads on the supports.
     *
     * @return the extremes; unmodifiable
     */
    public List<Extreme> all() {
        List<Extreme> list = new ArrayList<>();
        for (Quantity q : Quantity.values()) {
            of(q).ifPresent(list::add);
        }
        for (Support s : design.line().supports()) {
            onSupport(s.id()).ifPresent(list::add);
        }
        return List.copyOf(list);
    }

    private int number(String id) {
        List<Support> supports = design.line().supports();
        for (int i = 0; i < supports.size(); i++) {
            if (supports.get(i).id().equals(id)) {
                return i;
            }
        }
        throw new IllegalArgumentException("no support has the id " + id);
    }

    private Optional<Extreme> extreme(int index, String name, String unit) {
        Curve.Worst w = worst[index];
        return w == null
                ? Optional.empty()
                : Optional.of(new Extreme(name, unit, measures.sign(index) * w.value(), w.fallCase(), w.arrest()));
    }
}
