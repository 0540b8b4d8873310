package org.lifeline.design.envelope;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.motion.ForceFilter;
import org.lifeline.analysis.warning.Warning;
import org.lifeline.base.Direction;
import org.lifeline.base.GivenValue;
import org.lifeline.base.InputRule;
import org.lifeline.base.Interval;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.Violation;
import org.lifeline.base.Violations;
import org.lifeline.model.Fall;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Support;
import org.lifeline.model.Worker;
import org.lifeline.model.absorber.DeploymentForce;

/**
 * The worst values over a set of cases, each with the case that governs it.
 *
 * <p>A value in time counts with what its mesh may hide ({@link Extreme#allowance()}), so that it lies on the safe side of the
 * mesh.
 *
 * <p>Both sides of the absorber's force range are in the set, and the worse value counts whichever side it comes from.
 * Loads come from the maximum deployment force as a rule, distances from the clearance deployment force; where a
 * subsystem bottoms out it can be the other way round, and the governing case says so.
 *
 * <p>A tie: cases whose values differ by no more than a share of 1e-9 count as equal. Of equal cases those with the maximum
 * deployment force govern a force, those with the clearance deployment force a distance or an angle; of these the first in
 * the order of the falls, the temperatures and the places along the line.
 *
 * <p>Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public final class Extremes {
    /** The quantities that a table of what governs lists, in this order, before the load on each support. */
    public static final List<Quantity> GOVERNING = List.of(
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

    private final LifelineDesign design;
    private final ArrestQuantities quantities;
    private final InfluenceLine.@Nullable Worst[] worst;
    private final Scope scope;
    private final ArrestQuantities.Reader reader;

    private Extremes(
            LifelineDesign design, ArrestQuantities quantities, InfluenceLine.@Nullable Worst[] worst, Scope scope) {
        this.design = design;
        this.quantities = quantities;
        this.worst = worst;
        this.scope = scope;
        this.reader = new ArrestQuantities.Reader(ArrestQuantities.withoutFactors(design, quantities.filter()));
    }

    /**
     * The worst values of arrests that were computed already, by whatever method. The order of the list is the order of the
     * cases where there is a tie.
     *
     * @param design the design whose arrests they are
     * @param arrests the arrests; those that could not be computed are missing from it
     * @return the extremes
     */
    public static Extremes of(LifelineDesign design, List<ArrestResult> arrests) {
        Violations.required("design", design);
        Violations.requiredAll("arrests", arrests);
        return ofCases(
                design,
                arrests.stream()
                        .map(r -> new ComputedCase(FallCase.asDesigned(r), r))
                        .toList());
    }

    /**
     * The worst values of cases that were computed already, by whatever method.
     *
     * @param design the design whose cases they are
     * @param cases the cases, in the order that counts where there is a tie
     * @return the extremes
     */
    public static Extremes ofCases(LifelineDesign design, List<ComputedCase> cases) {
        Violations.required("design", design);
        Violations.requiredAll("cases", cases);
        return ofCases(design, cases, ForceFilter.NONE);
    }

    /**
     * The worst values of cases that were computed already, with those that could not be computed.
     *
     * @param design the design whose cases they are
     * @param cases the cases, in the order that counts where there is a tie
     * @param failures the cases that could not be computed; where there is one, the extremes do not cover everything
     * @return the extremes; empty where every case failed
     */
    public static Extremes ofCases(LifelineDesign design, List<ComputedCase> cases, List<FailedCase> failures) {
        Violations.required("design", design);
        Violations.requiredAll("cases", cases);
        Violations.requiredAll("failures", failures);
        Extremes computed = ofCases(design, cases);
        return new Extremes(
                design, computed.quantities, computed.worst, Scope.of(design, Tolerances.none(), failures, true));
    }

    /**
     * The worst values of cases that were computed already, forces in time read behind a filter.
     *
     * @param design the design whose cases they are
     * @param cases the cases, in the order that counts where there is a tie
     * @param filter how forces in time are read; forces by energy balance have no filter
     * @return the extremes
     */
    public static Extremes ofCases(LifelineDesign design, List<ComputedCase> cases, ForceFilter filter) {
        Violations.required("design", design);
        Violations.requiredAll("cases", cases);
        Collector collector = new Collector(design, ArrestQuantities.of(design, filter));
        for (ComputedCase each : cases) {
            collector.add(each.fallCase(), each.arrest());
        }
        return collector.finish(Scope.of(design, Tolerances.none(), List.of(), true));
    }

    /**
     * The worst of several sets of worst values of one design. What failed in any of them has failed. Where one of them reads
     * forces in time behind a filter, the others hold no arrests in time, or read them alike.
     *
     * @param first the first set, whose cases count first where there is a tie
     * @param others the others
     * @return the extremes over all of them
     */
    public static Extremes joined(Extremes first, List<Extremes> others) {
        Violations.required("first", first);
        Violations.requiredAll("others", others);
        ArrestQuantities quantities = others.stream()
                .map(e -> e.quantities)
                .filter(q -> q.filter() != ForceFilter.NONE)
                .findFirst()
                .orElse(first.quantities);
        Collector collector = new Collector(first.design, quantities);
        Scope scope = first.scope;
        for (int index = 0; index < first.quantities.size(); index++) {
            collector.add(index, first.worst[index]);
        }
        for (Extremes each : others) {
            scope = scope.and(each.scope);
            for (int index = 0; index < first.quantities.size(); index++) {
                collector.add(index, each.worst[index]);
            }
        }
        return collector.finish(scope);
    }

    /**
     * The same for the case that more would have to be computed before a force or a distance can be said to keep a limit.
     *
     * @param why what is missing, for example {@code "no arrest was followed in time"}
     * @return extremes on which a criterion on forces or distances that is met so far counts as not evaluated
     */
    public Extremes lacking(String why) {
        Violations.required("why", why);
        String both = scope.lacking().isEmpty() ? why : scope.lacking() + "; " + why;
        Scope less = new Scope(
                scope.masses(), scope.tolerance(), scope.failures(), scope.complete(), both, scope.wholeLine());
        return new Extremes(design, quantities, worst, less);
    }

    /**
     * The same as values that stand for the whole line: those of cases that an envelope found to govern.
     *
     * @param ranges the ranges that the envelope went over
     * @return the extremes, with these ranges as {@link #wholeLine()}
     */
    public Extremes ofWholeLine(Tolerances ranges) {
        Violations.required("ranges", ranges);
        return new Extremes(design, quantities, worst, scope.over(ranges));
    }

    /**
     * Where falls were moved along the whole line, the ranges that this went over.
     *
     * @return the ranges; empty where these are the worst values of given cases alone
     */
    public Optional<Tolerances> wholeLine() {
        return scope.wholeLine();
    }

    /** What the worst values were taken over. */
    record Scope(
            Interval masses,
            Optional<Interval> tolerance,
            List<FailedCase> failures,
            boolean complete,
            String lacking,
            Optional<Tolerances> wholeLine) {
        Scope over(Tolerances ranges) {
            return new Scope(masses, tolerance, failures, complete, lacking, Optional.of(ranges));
        }

        Scope and(Scope other) {
            List<FailedCase> both = new ArrayList<>(failures);
            both.addAll(other.failures);
            Interval range = Interval.of(
                    Math.min(masses.low(), other.masses.low()), Math.max(masses.high(), other.masses.high()));
            String less = other.lacking.isEmpty() || lacking.equals(other.lacking)
                    ? lacking
                    : lacking.isEmpty() ? other.lacking : lacking + "; " + other.lacking;
            return new Scope(
                    range,
                    tolerance.isPresent() ? tolerance : other.tolerance,
                    List.copyOf(both),
                    complete && other.complete,
                    less,
                    wholeLine.isPresent() ? wholeLine : other.wholeLine);
        }

        static Scope of(LifelineDesign design, Tolerances tolerances, List<FailedCase> failures, boolean complete) {
            double[] m = Stream.concat(
                            design.workers().stream(),
                            design.falls().stream()
                                    .flatMap(f -> Stream.concat(
                                            f.fallers().stream(),
                                            f.hanging().stream().map(Fall.Hanging::worker))))
                    .mapToDouble(Worker::mass)
                    .toArray();
            Interval designed = Interval.of(
                    Arrays.stream(m).min().orElseThrow(), Arrays.stream(m).max().orElseThrow());
            return new Scope(
                    tolerances.mass().orElse(designed),
                    tolerances.mass(),
                    List.copyOf(failures),
                    complete,
                    "",
                    Optional.empty());
        }
    }

    /** Collects the worst values; a tie is decided as the class says. */
    static final class Collector {
        private final LifelineDesign design;
        private final ArrestQuantities quantities;
        private final InfluenceLine.@Nullable Worst[] worst;

        Collector(LifelineDesign design, ArrestQuantities quantities) {
            this.design = design;
            this.quantities = quantities;
            this.worst = new InfluenceLine.Worst[quantities.size()];
        }

        void add(int index, InfluenceLine.@Nullable Worst w) {
            if (w != null && governs(index, w, worst[index])) {
                worst[index] = w;
            }
        }

        /** Tells whether a value governs over the one that is known; see {@link Extremes} for the rule of a tie. */
        private boolean governs(int index, InfluenceLine.Worst w, InfluenceLine.@Nullable Worst known) {
            if (known == null || EnvelopeTolerances.isWorse(w.value(), known.value())) {
                return true;
            }
            if (EnvelopeTolerances.isWorse(known.value(), w.value())) {
                return false;
            }
            if (w.arrest().motion().isPresent() && known.arrest().motion().isPresent()) {
                // Of equal sums of a value and its allowance that with the larger value, which is known better.
                double more =
                        quantities.computed(w.arrest())[index] - quantities.computed(known.arrest())[index];
                if (EnvelopeTolerances.isWorse(Math.abs(more), 0)) {
                    return more > 0;
                }
            }
            DeploymentForce side = quantities.sideOfTie(index);
            return w.fallCase().side() == side && known.fallCase().side() != side;
        }

        /** Adds every value of an arrest. */
        void add(FallCase fallCase, ArrestResult arrest) {
            double[] row = quantities.of(arrest);
            for (int index = 0; index < row.length; index++) {
                if (!Double.isNaN(row[index])) {
                    add(index, new InfluenceLine.Worst(row[index], quantities.tolerance(index, row), fallCase, arrest));
                }
            }
        }

        double value(int index) {
            InfluenceLine.Worst w = worst[index];
            return w == null ? Double.NEGATIVE_INFINITY : w.value();
        }

        InfluenceLine.@Nullable Worst worst(int index) {
            return worst[index];
        }

        Extremes finish(Scope scope) {
            return new Extremes(design, quantities, worst.clone(), scope);
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
        Violations.required("quantity", quantity);
        return extreme(ArrestQuantities.index(quantity), Extreme.Subject.of(quantity));
    }

    /**
     * The largest force on a support.
     *
     * @param id the support
     * @return value and case; empty where no case could be computed
     * @throws InvalidInputException if there is no such support
     */
    public Optional<Extreme> onSupport(String id) {
        return extreme(quantities.indexOfSupport(number(id)), Extreme.Subject.load(id));
    }

    /**
     * The largest component of the force on a support in a direction. The other components that act together with it are
     * those of the governing arrest.
     *
     * @param id the support
     * @param direction the direction
     * @return value and case, the value negative when every case pulls the other way; empty where no case could be
     *     computed
     * @throws InvalidInputException if there is no such support
     */
    public Optional<Extreme> onSupportToward(String id, Direction direction) {
        Violations.required("direction", direction);
        return extreme(quantities.indexOfSupport(number(id), direction), Extreme.Subject.component(id, direction));
    }

    /**
     * The least margin above an obstruction.
     *
     * @param index number of the obstruction in the clearance rules of the design, from 0
     * @return margin and case, negative where the clearance does not suffice; empty where no fall comes to lie above it
     * @throws InvalidInputException if there is no such obstruction
     */
    public Optional<Extreme> overObstruction(int index) {
        int last = design.clearance().obstructions().size() - 1;
        new Violations()
                .require(
                        index >= 0 && index <= last,
                        "obstruction",
                        GivenValue.count(index),
                        last < 0 ? InputRule.NO_OBSTRUCTION : InputRule.NO_SUCH_OBSTRUCTION,
                        last)
                .throwIfAny();
        return extreme(quantities.indexOfObstruction(index), Extreme.Subject.margin(index));
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
     * The range of masses that every worker was given in turn, where a tolerance on the mass was examined.
     *
     * @return masses [kg]; empty where every worker has his own mass
     */
    public Optional<Interval> massTolerance() {
        return scope.tolerance();
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
     * What a reader of the worst values must not overlook: the warnings of the arrests that give them, of each kind and subject
     * the one that goes farthest, and every case that could not be computed.
     *
     * @return the warnings, each with its case; unmodifiable
     */
    public List<Warning> warnings() {
        Map<String, Warning> worst = new LinkedHashMap<>();
        for (Extreme extreme : all()) {
            for (Warning each : extreme.arrest().warnings()) {
                Warning found = each.in(extreme.fallCase().describe());
                worst.merge(each.code() + " " + each.subject(), found, (a, b) -> b.value() > a.value() ? b : a);
            }
        }
        List<Warning> list = new ArrayList<>(worst.values());
        for (FailedCase each : failures()) {
            list.add(Warning.of(Warning.Code.NOT_COMPUTED, each.fallCase().describe())
                    .saying("not computed: " + each.reason()));
        }
        return List.copyOf(list);
    }

    /**
     * What would have to be computed as well before a force or a distance can be said to keep a limit, see {@link
     * #lacking(String)}; where nothing at all was computed, why not.
     *
     * @return what is missing, in words; empty where nothing is
     */
    public String lacking() {
        return scope.lacking();
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
        loads(list);
        return List.copyOf(list);
    }

    /**
     * What governs: the quantities that a table of results lists, in the order of {@link #GOVERNING}, then the load on each
     * support in the order of the line. Every table, file and picture that says what governs takes it from here.
     *
     * @return the extremes, without quantities that no arrest has; unmodifiable
     */
    public List<Extreme> governing() {
        List<Extreme> list = new ArrayList<>();
        for (Quantity q : GOVERNING) {
            of(q).ifPresent(list::add);
        }
        loads(list);
        return List.copyOf(list);
    }

    /** Adds the load on each support. */
    private void loads(List<Extreme> list) {
        List<Support> supports = design.line().supports();
        for (int i = 0; i < supports.size(); i++) {
            extreme(
                            quantities.indexOfSupport(i),
                            Extreme.Subject.load(supports.get(i).id()))
                    .ifPresent(list::add);
        }
    }

    private int number(String id) {
        List<Support> supports = design.line().supports();
        for (int i = 0; i < supports.size(); i++) {
            if (supports.get(i).id().equals(id)) {
                return i;
            }
        }
        throw new InvalidInputException(
                List.of(Violation.of("support", GivenValue.text(String.valueOf(id)), InputRule.NO_SUCH_SUPPORT)));
    }

    private Optional<Extreme> extreme(int index, Extreme.Subject subject) {
        InfluenceLine.Worst w = worst[index];
        if (w == null) {
            return Optional.empty();
        }
        ArrestQuantities.Value read = reader.read(w.arrest(), index);
        int sign = quantities.sign(index);
        boolean known = !ArrestQuantities.isUnbounded(w.arrest());
        double allowance = known ? read.hidden() : Double.POSITIVE_INFINITY;
        // A free fall follows from the line before the fall; nothing that is asked of the arrest itself concerns it.
        boolean before = index == ArrestQuantities.index(Quantity.FREE_FALL);
        Extreme.Values values = new Extreme.Values(sign * read.computed(), before ? 0 : allowance, sign * w.value());
        return Optional.of(
                new Extreme(subject, values, new ComputedCase(w.fallCase(), w.arrest()), before ? "" : lacking(known)));
    }

    private String lacking(boolean known) {
        if (known) {
            return scope.lacking();
        }
        String why = "fewer than three meshes were followed, so that nothing is known of what they hide";
        return scope.lacking().isEmpty() ? why : scope.lacking() + "; " + why;
    }
}
