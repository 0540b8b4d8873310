package org.lifeline.design.assessment;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.lifeline.analysis.Method;
import org.lifeline.analysis.motion.ForceFilter;
import org.lifeline.analysis.warning.Warning;
import org.lifeline.base.Interval;
import org.lifeline.base.NoEquilibriumException;
import org.lifeline.base.canonical.Canonical;
import org.lifeline.base.canonical.CanonicalForm;
import org.lifeline.design.criteria.Criterion;
import org.lifeline.design.criteria.CriterionResult;
import org.lifeline.design.envelope.ComputedCase;
import org.lifeline.design.envelope.DesignResult;
import org.lifeline.design.envelope.EnvelopeResult;
import org.lifeline.design.envelope.Extreme;
import org.lifeline.design.envelope.Extremes;
import org.lifeline.design.envelope.FailedCase;
import org.lifeline.model.LifelineDesign;

/**
 * What an assessment has found: the one answer to what governs a design.
 *
 * <p>Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public final class AssessmentResult implements Canonical {
    private final Basics basics;
    private final DesignResult stated;
    private final EnvelopeResult envelope;
    private final List<FollowedArrest> followed;
    private final Extremes balance;
    private final Extremes inTime;
    private final @Nullable RescueSearch rescue;
    private final Extremes extremes;
    private final List<GoverningValue> governing;
    private final Map<String, GoverningValue> byName;
    private final List<AssessedCriterion> criteria;
    private final List<IndependentCheck> checks;
    private final List<NotComputed> notComputed;
    private final boolean complete;
    private final List<Warning> warnings;

    /** What was asked for. */
    record Basics(Basis basis, boolean motion, ForceFilter filter, List<Criterion> criteria) {}

    /** What was computed. */
    record Computed(
            DesignResult stated,
            EnvelopeResult envelope,
            Extremes balance,
            MotionSearch motion,
            @Nullable RescueSearch rescue) {
        boolean isComplete() {
            return envelope.isComplete() && motion.isComplete() && (rescue == null || rescue.isComplete());
        }

        /** The worst values of each way in which something was computed. */
        List<Extremes> extremes() {
            return rescue == null
                    ? List.of(balance, motion.extremes())
                    : List.of(balance, motion.extremes(), rescue.extremes());
        }
    }

    AssessmentResult(Basics basics, Computed computed, List<IndependentCheck> checks) {
        this.basics = basics;
        this.stated = computed.stated();
        this.envelope = computed.envelope();
        MotionSearch motion = computed.motion();
        this.followed = motion.followed();
        this.balance = computed.balance();
        this.inTime = motion.extremes();
        this.checks = List.copyOf(checks);
        this.rescue = computed.rescue();
        this.complete = computed.isComplete();
        this.notComputed = notComputed(motion);
        this.extremes = judged(motion);
        this.governing = governingValues(motion);
        this.byName = new HashMap<>();
        governing.forEach(g -> byName.putIfAbsent(g.name(), g));
        this.criteria = basics.criteria.stream().map(this::judge).toList();
        this.warnings = new AssessmentWarnings(this).list();
    }

    private List<NotComputed> notComputed(MotionSearch motion) {
        List<NotComputed> list = new ArrayList<>();
        Map<String, List<FailedCase>> alike = new LinkedHashMap<>();
        for (FailedCase each : balance.failures()) {
            // What failed for one reason is said once: a stop without stiffness fails at every rigid support.
            String why = each.cause() instanceof NoEquilibriumException e ? e.where() : each.reason();
            alike.computeIfAbsent(why, k -> new ArrayList<>()).add(each);
        }
        alike.forEach((why, cases) -> list.add(new NotComputed(
                cases.get(0).fallCase().describe()
                        + (cases.size() == 1 ? "" : ", and " + (cases.size() - 1) + " more cases"),
                cases.size() == 1 ? cases.get(0).reason() : why)));
        if (!basics.motion) {
            list.add(new NotComputed("arrests in time", "they were left out"));
            design().secondFall()
                    .ifPresent(f -> list.add(new NotComputed(
                            "second fall of " + f.worker() + " within the first second",
                            "it is followed in time only, and arrests in time were left out")));
        }
        list.addAll(motion.failures());
        if (rescue != null) {
            list.addAll(rescue.failures());
        }
        if (!complete) {
            list.add(new NotComputed("the rest of the search", "it was ended early"));
        }
        return List.copyOf(list);
    }

    /** The worst values on the basis of the assessment, with what they lack. */
    private Extremes judged(MotionSearch motion) {
        Extremes e =
                switch (basics.basis) {
                    case LARGER_OF_BOTH -> Extremes.joined(balance, List.of(inTime));
                    case ENERGY_BALANCE -> balance;
                    case IN_TIME -> inTime;
                };
        if (basics.basis != Basis.ENERGY_BALANCE) {
            if (!basics.motion) {
                e = e.lacking("arrests were not followed in time");
            } else if (!motion.failures().isEmpty()) {
                e = e.lacking(motion.failures().size() + " arrests could not be followed in time");
            } else if (!complete) {
                e = e.lacking("the search in time was ended early");
            }
        }
        if (basics.basis == Basis.ENERGY_BALANCE && design().secondFall().isPresent()) {
            e = e.lacking("a second fall within the first second is followed in time only");
        }
        if (rescue != null) {
            e = Extremes.joined(e, List.of(rescue.extremes()));
            if (rescue.states().isEmpty() || !rescue.failures().isEmpty()) {
                e = e.lacking("the line at rest with a rescuer could not be computed everywhere");
            }
        }
        long failed =
                checks.stream().filter(c -> !c.passed()).filter(c -> isOf(c)).count();
        return failed == 0 ? e : e.lacking("the independent check of " + failed + " governing arrests failed");
    }

    /** Tells whether a check concerns the method that verdicts rest on. */
    private boolean isOf(IndependentCheck check) {
        if (check.method() == Method.RESCUE_AT_REST) {
            return true;
        }
        return switch (basics.basis) {
            case LARGER_OF_BOTH -> true;
            case ENERGY_BALANCE -> check.method() == Method.ENERGY_BALANCE;
            case IN_TIME -> check.method() == Method.TRANSIENT;
        };
    }

    /** What governs, with the margin above each obstruction where there are several. */
    static List<Extreme> governing(LifelineDesign design, Extremes extremes) {
        List<Extreme> list = new ArrayList<>(extremes.governing());
        int obstructions = design.clearance().obstructions().size();
        for (int i = 0; i < obstructions && obstructions > 1; i++) {
            extremes.overObstruction(i).ifPresent(list::add);
        }
        return list;
    }

    private List<GoverningValue> governingValues(MotionSearch motion) {
        List<GoverningValue> list = new ArrayList<>();
        Map<String, Extreme> ofBalance = byName(balance);
        Map<String, Extreme> ofMotion = byName(inTime);
        for (Extreme each : governing(design(), extremes)) {
            Optional<Extreme> slow = Optional.ofNullable(ofBalance.get(each.name()));
            Optional<Extreme> fast = Optional.ofNullable(ofMotion.get(each.name()));
            Optional<Interval> range = fast.flatMap(e -> range(e, motion));
            list.add(new GoverningValue(each, slow, fast, range));
        }
        return List.copyOf(list);
    }

    private Map<String, Extreme> byName(Extremes in) {
        Map<String, Extreme> map = new HashMap<>();
        governing(design(), in).forEach(e -> map.putIfAbsent(e.name(), e));
        return map;
    }

    private Optional<Extreme> find(Extremes in, String name) {
        return Optional.ofNullable(byName(in).get(name));
    }

    /**
     * The range of a value in time over the damping times that it was followed with: the value times what each changes on the
     * mesh that they share. A value that changes sign has no ratio; its differences are added.
     */
    private Optional<Interval> range(Extreme e, MotionSearch motion) {
        List<FollowedArrest> damped = motion.dampedOf(e);
        if (damped.size() < 2) {
            return Optional.empty();
        }
        double[] values = damped.stream()
                .mapToDouble(d -> find(Extremes.ofCases(design(), List.of(d.computed()), basics.filter), e.name())
                        .map(Extreme::computed)
                        .orElse(Double.NaN))
                .toArray();
        double low = e.computed();
        double high = e.computed();
        for (int i = 1; i < values.length; i++) {
            double value =
                    e.unit().equals("N") ? e.computed() * values[i] / values[0] : e.computed() + values[i] - values[0];
            if (Double.isFinite(value)) {
                low = Math.min(low, value);
                high = Math.max(high, value);
            }
        }
        return Optional.of(Interval.of(low, high));
    }

    private AssessedCriterion judge(Criterion criterion) {
        CriterionResult result = criterion.check(extremes);
        boolean ofArrests = result.comparisons().stream()
                .anyMatch(c -> c.governing().isPresent()
                        && !c.governing().get().lacking().isEmpty());
        String remark = "";
        if (ofArrests) {
            remark = basics.motion ? "not everything that it needs was computed" : "arrests were not followed in time";
        }
        return new AssessedCriterion(result, criterion.check(stated.extremes()), remark);
    }

    /**
     * The design.
     *
     * @return the design; where it stated no falls, with those that were found
     */
    public LifelineDesign design() {
        return balance.design();
    }

    /**
     * What the verdicts rest on.
     *
     * @return the basis
     */
    public Basis basis() {
        return basics.basis;
    }

    /**
     * How forces in time are read.
     *
     * @return the filter
     */
    public ForceFilter forceFilter() {
        return basics.filter;
    }

    /**
     * What the verdicts rest on, with what was left out of it.
     *
     * @return a sentence
     */
    public String restsOn() {
        if (basics.motion || basics.basis == Basis.ENERGY_BALANCE) {
            return "Verdicts rest on " + basics.basis.words() + alsoRestsOn() + ".";
        }
        return basics.basis == Basis.IN_TIME
                ? "Verdicts were to rest on arrests in time, which were left out: criteria on forces and distances"
                        + " are not evaluated."
                : "Verdicts rest on energy balance alone: a criterion on the forces or distances of an arrest can"
                        + " fail by it, but is not met without arrests in time.";
    }

    /** What else the design states. */
    private String alsoRestsOn() {
        List<String> also = new ArrayList<>();
        if (design().secondFall().isPresent() && basics.basis != Basis.ENERGY_BALANCE) {
            also.add("a second fall within the first second");
        }
        if (rescue != null) {
            also.add("the line at rest with a rescuer");
        }
        return also.isEmpty() ? "" : ", with " + String.join(" and ", also);
    }

    /**
     * The falls that the design states, by energy balance; where it states none, the worst places, each like a stated fall.
     *
     * @return the arrests in the order of the falls
     */
    public DesignResult stated() {
        return stated;
    }

    /**
     * The falls moved over the whole line, by energy balance.
     *
     * @return the envelope
     */
    public EnvelopeResult envelope() {
        return envelope;
    }

    /**
     * The arrests that were followed in time on as many meshes as bound what finer ones would change: those that may govern.
     *
     * @return the arrests in the order in which they were followed; unmodifiable
     */
    public List<FollowedArrest> followed() {
        return followed;
    }

    /**
     * Whether arrests were followed in time.
     *
     * @return followed, or left out
     */
    public MotionScope motion() {
        return basics.motion ? MotionScope.FOLLOWED : MotionScope.LEFT_OUT;
    }

    /**
     * The worst values on the basis of the assessment: what the criteria are judged on.
     *
     * @return the extremes; each says by its arrest which method it comes from
     */
    public Extremes extremes() {
        return extremes;
    }

    /**
     * The worst values by energy balance, of the stated falls and of the whole line.
     *
     * @return the extremes
     */
    public Extremes balance() {
        return balance;
    }

    /**
     * The worst values of the arrests that were followed in time.
     *
     * @return the extremes; empty if none was followed
     */
    public Extremes inTime() {
        return inTime;
    }

    /**
     * The arrests that were followed finely with a further worker who falls within the first second.
     *
     * @return those of {@link #followed()} with a second fall, in the same order; unmodifiable
     */
    public List<FollowedArrest> secondFalls() {
        return followed.stream().filter(f -> f.fallCase().later().isPresent()).toList();
    }

    /**
     * The worst values of the arrests with a further worker who falls within the first second; {@link #inTime()} has them in it.
     *
     * @return the extremes; empty where none was followed: the design states none, or motion was left out
     */
    public Optional<Extremes> secondFall() {
        List<ComputedCase> cases =
                secondFalls().stream().map(FollowedArrest::computed).toList();
        return cases.isEmpty() ? Optional.empty() : Optional.of(Extremes.ofCases(design(), cases, basics.filter));
    }

    /**
     * The worst values of the line at rest after an arrest, with a rescuer beside those who have fallen; {@link #extremes()} has
     * them in it, whatever the verdicts rest on.
     *
     * @return tensions, loads, sag and clearance of all places; empty where the design states no rescuer, or nothing was computed
     */
    public Optional<Extremes> rescue() {
        return rescueStates().isEmpty() || rescue == null ? Optional.empty() : Optional.of(rescue.extremes());
    }

    /**
     * The states at rest with a rescuer that were computed, at every place that was looked at.
     *
     * @return the cases, their results by the method {@link Method#RESCUE_AT_REST}; empty where the design states no rescuer;
     *     unmodifiable
     */
    public List<ComputedCase> rescueStates() {
        return rescue == null ? List.of() : rescue.states();
    }

    /**
     * What governs, quantity by quantity, then support by support, then obstruction by obstruction where there are several.
     *
     * @return the values on the basis of the assessment, with those of both methods beside them; unmodifiable
     */
    public List<GoverningValue> governing() {
        return governing;
    }

    /**
     * What governs one quantity.
     *
     * @param name its name, for example {@code "endAnchorLoad"} or {@code "load on north"}
     * @return the value, if there is one
     */
    public Optional<GoverningValue> governing(String name) {
        return Optional.ofNullable(byName.get(name));
    }

    /**
     * The criteria, judged on the worst of the whole line.
     *
     * @return one result each, in the order in which they were asked for; unmodifiable
     */
    public List<AssessedCriterion> criteria() {
        return criteria;
    }

    /**
     * The independent check of every arrest that governs by either method.
     *
     * @return the checks; unmodifiable
     */
    public List<IndependentCheck> checks() {
        return checks;
    }

    /**
     * What a reader must not overlook.
     *
     * @return the warnings, the gravest kinds first; unmodifiable
     */
    public List<Warning> warnings() {
        return warnings;
    }

    /**
     * The warnings, those of one kind and in the same words together.
     *
     * @return groups in the order of their first warnings; unmodifiable, none empty
     */
    public List<List<Warning>> warningsByKind() {
        Map<String, List<Warning>> groups = new LinkedHashMap<>();
        for (Warning each : warnings) {
            groups.computeIfAbsent(each.code() + each.text(), k -> new ArrayList<>())
                    .add(each);
        }
        return groups.values().stream().map(List::copyOf).toList();
    }

    /**
     * What could not be computed, or was left out.
     *
     * @return each with its reason; unmodifiable
     */
    public List<NotComputed> notComputed() {
        return notComputed;
    }

    /**
     * Tells whether the search was carried through.
     *
     * @return false if the listener ended it, or the thread was interrupted
     */
    public boolean isComplete() {
        return complete;
    }

    /**
     * What the assessment found: of every quantity the value that governs, and of every criterion its ratio.
     *
     * @return the numbers, with places, cases and verdicts as texts
     */
    @Override
    public CanonicalForm canonicalForm() {
        CanonicalForm.Builder b = CanonicalForm.builder("assessment result");
        for (GoverningValue each : governing()) {
            String path = CanonicalForm.Builder.element("governing", each.name());
            b.number(path + ".value", each.factored(), each.unit())
                    .number(path + ".energyBalance", each.energyBalance(), each.unit())
                    .number(path + ".inTime", each.inTime(), each.unit())
                    .text(path + ".case", each.fallCase().describe());
        }
        for (int i = 0; i < criteria().size(); i++) {
            CriterionResult r = criteria().get(i).result();
            String path = CanonicalForm.Builder.element("criterion", i);
            b.text(path + ".id", r.criterion().id())
                    .text(path + ".status", r.status().name());
            b.number(path + ".ratio", r.ratio(), "");
        }
        for (int i = 0; i < warnings().size(); i++) {
            b.text(
                    CanonicalForm.Builder.element("warning", i),
                    warnings().get(i).text());
        }
        return b.text("complete", isComplete()).build();
    }
}
