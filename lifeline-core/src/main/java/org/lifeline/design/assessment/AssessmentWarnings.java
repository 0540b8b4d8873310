package org.lifeline.design.assessment;

import java.util.ArrayList;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.warning.Measured;
import org.lifeline.analysis.warning.Warning;
import org.lifeline.design.criteria.CapacityCheck;
import org.lifeline.design.criteria.CriterionResult;
import org.lifeline.design.criteria.Status;
import org.lifeline.design.envelope.Envelope;
import org.lifeline.design.envelope.Extreme;
import org.lifeline.design.envelope.FallCase;
import org.lifeline.design.envelope.Quantity;
import org.lifeline.model.Fall;
import org.lifeline.model.Lifeline;
import org.lifeline.model.ModelFactors;
import org.lifeline.model.Support;

/** What a reader of an assessment must not overlook, the gravest kinds first. */
final class AssessmentWarnings {
    /** Tension for each unit of force above which a line is called flat [-]: about 5° (29 CFR 1926 Subpart M App. C). */
    private static final double FLAT = 6;

    /** Slope of a span above which a free attachment may run down it [rad]; CEN/TS 16415:2013 draws a line at 15°. */
    private static final double STEEP = Math.toRadians(15);

    /** Share by which a load elsewhere, or in time, must be larger to be worth a warning [-]: more than a rounding. */
    private static final double NOTABLE = 0.01;

    /** The same for distances [m]. */
    private static final double NOTABLE_LENGTH = 0.01;

    /** Strengths, which are compared here with the model factors in the load. */
    private static final Set<Warning.Code> CHECKED_WITH_FACTORS =
            Set.of(Warning.Code.CABLE_STRENGTH, Warning.Code.ANCHOR_CAPACITY);

    private final AssessmentResult result;
    private final List<Warning> list = new ArrayList<>();

    AssessmentWarnings(AssessmentResult result) {
        this.result = result;
    }

    List<Warning> list() {
        checks();
        notComputed();
        criteria();
        strengths();
        clearance();
        ofArrests();
        masses();
        elsewhere();
        inTime();
        motion();
        geometry();
        return List.copyOf(list);
    }

    private void checks() {
        for (IndependentCheck each : result.checks()) {
            if (!each.passed()) {
                list.add(Warning.of(Warning.Code.CHECK_FAILED, each.fallCase().describe())
                        .saying("the independent check failed (" + each.method().label()
                                + "); do not use the result before the cause is known: "
                                + each.failures().get(0)));
            }
        }
    }

    private void notComputed() {
        for (NotComputed each : result.notComputed()) {
            list.add(Warning.of(Warning.Code.NOT_COMPUTED, each.what()).saying("not computed: " + each.why()));
        }
    }

    private void criteria() {
        for (AssessedCriterion each : result.criteria()) {
            if (each.result().status() == Status.NOT_EVALUATED) {
                list.add(Warning.of(
                                Warning.Code.CRITERION_NOT_EVALUATED,
                                each.result().criterion().id())
                        .saying("not evaluated, " + each.result().reason()));
            }
            butForMesh(each.result());
        }
    }

    /** Says of a criterion that is not met when it would be without the allowances of the meshes. */
    private void butForMesh(CriterionResult criterion) {
        List<CapacityCheck> failing = criterion.comparisons().stream()
                .filter(c -> c.status() == Status.NOT_MET)
                .toList();
        if (!failing.isEmpty() && failing.stream().allMatch(c -> asComputed(c) <= c.capacity())) {
            CapacityCheck first = failing.get(0);
            list.add(Warning.of(
                            Warning.Code.MET_BUT_FOR_MESH, criterion.criterion().id())
                    .in(first.governing().orElseThrow().fallCase().describe())
                    .with(new Measured(asComputed(first), first.unit(), first.capacity())));
        }
    }

    /** The demand on a force in time without its allowance; infinite for anything else. */
    private static double asComputed(CapacityCheck check) {
        return check.governing()
                .filter(e -> e.unit().equals("N") && e.allowance() > 0 && Double.isFinite(e.allowance()))
                .map(e -> check.demand() * e.computed() / (e.computed() + e.allowance()))
                .orElse(Double.POSITIVE_INFINITY);
    }

    private void strengths() {
        Lifeline line = result.design().line();
        worst("maximumTension")
                .ifPresent(g -> line.cable().breakingStrength().ifPresent(strength -> {
                    double holds = strength * line.cable().terminationEfficiency();
                    if (g.factored() > holds) {
                        add(Warning.Code.CABLE_STRENGTH, "cable", g, holds);
                    }
                }));
        for (Support s : line.supports()) {
            worst("load on " + s.id())
                    .ifPresent(g -> s.capacity().ifPresent(capacity -> {
                        if (g.factored() > capacity) {
                            add(Warning.Code.ANCHOR_CAPACITY, s.id(), g, capacity);
                        }
                    }));
        }
    }

    private void clearance() {
        worst("clearanceMargin")
                .filter(g -> g.factored() < 0)
                .ifPresent(g -> add(Warning.Code.CLEARANCE_LACKING, words(g), g, 0));
    }

    private void add(Warning.Code code, String subject, GoverningValue g, double limit) {
        list.add(Warning.of(code, subject)
                .in(g.fallCase().describe())
                .with(new Measured(g.factored(), g.unit(), limit)));
    }

    /** What the arrests that govern say of themselves: each kind once for each part, with its worst value. */
    private void ofArrests() {
        Map<String, Warning> found = new LinkedHashMap<>();
        Set<ArrestResult> told = Collections.newSetFromMap(new IdentityHashMap<>());
        for (GoverningValue each : result.governing()) {
            if (!told.add(each.arrest())) {
                // One arrest may govern many supports of a long line.
                continue;
            }
            for (Warning w : each.arrest().warnings()) {
                if (!CHECKED_WITH_FACTORS.contains(w.code())) {
                    found.merge(
                            w.code() + w.subject(),
                            w.in(each.fallCase().describe()),
                            (old, other) -> other.value() > old.value() ? other : old);
                }
            }
        }
        list.addAll(found.values());
    }

    /** Where several fall together and their masses have a range. */
    private void masses() {
        if (result.envelope().tolerances().mass().isEmpty()) {
            return;
        }
        for (Fall each : Envelope.movingFalls(result.design())) {
            if (each.fallers().size() > 1) {
                list.add(Warning.of(Warning.Code.MASSES_TAKEN_ALIKE, each.id()));
            }
        }
    }

    /** Where it is worse than in the stated falls. */
    private void elsewhere() {
        if (result.stated().searched()) {
            return;
        }
        for (GoverningValue each : result.governing()) {
            Optional<Extreme> here = each.quantity()
                    .filter(q -> q != Quantity.SUPPORT_LOAD)
                    .flatMap(q -> result.stated().extremes().of(q));
            here.filter(h -> isNotablyWorse(each.extreme(), each.factored(), h.value()))
                    .ifPresent(h -> add(Warning.Code.WORSE_THAN_STATED, words(each), each, h.value()));
        }
    }

    /** Where the worst in time is worse than the worst by energy balance. */
    private void inTime() {
        for (GoverningValue each : result.governing()) {
            Optional<Extreme> balance = each.balanceExtreme();
            Optional<Extreme> motion = each.inTimeExtreme();
            if (balance.isPresent()
                    && motion.isPresent()
                    && isNotablyWorse(
                            each.extreme(),
                            motion.get().computed(),
                            balance.get().computed())) {
                list.add(Warning.of(Warning.Code.WORSE_IN_TIME, words(each))
                        .in(motion.get().fallCase().describe())
                        .with(new Measured(
                                motion.get().computed(),
                                each.unit(),
                                balance.get().computed())));
            }
        }
    }

    private static boolean isNotablyWorse(Extreme kind, double value, double other) {
        boolean least = kind.quantity().map(q -> !q.largestIsWorst()).orElse(false);
        double more = least ? other - value : value - other;
        return more > (kind.unit().equals("N") ? NOTABLE * Math.abs(other) : NOTABLE_LENGTH);
    }

    private static String words(GoverningValue value) {
        return value.support().isPresent()
                ? value.name()
                : value.quantity().map(Quantity::words).orElse(value.name());
    }

    private void motion() {
        for (FollowedArrest each : result.followed()) {
            each.arrest()
                    .motion()
                    .filter(m -> !m.firstCatchOver())
                    .ifPresent(m -> list.add(Warning.of(
                            Warning.Code.FIRST_CATCH_NOT_OVER, each.fallCase().describe())));
        }
        List<FollowedArrest> rough =
                result.followed().stream().filter(a -> !a.accurate()).toList();
        if (!rough.isEmpty()) {
            list.add(Warning.of(
                            Warning.Code.MOTION_NOT_ACCURATE,
                            rough.size() + " of " + result.followed().size() + " arrests in time")
                    .in(rough.get(0).fallCase().describe())
                    .saying(String.format(
                            Locale.ROOT,
                            "finer meshes may change a peak by more than %.0f %%, which verdicts allow for",
                            100 * SearchParameters.ACCURACY)));
        }
        ModelFactors factors = result.design().modelFactors();
        if (factors.force() < 1 || factors.distance() < 1) {
            list.add(Warning.of(Warning.Code.MODEL_FACTOR_BELOW_ONE, "modelFactors")
                    .with(new Measured(Math.min(factors.force(), factors.distance()), "-", 1)));
        }
    }

    private void geometry() {
        double flat = 0;
        FallCase flatCase = null;
        for (GoverningValue each : result.governing()) {
            ArrestResult r = each.arrest();
            double ratio = r.lineLoad() > 0 ? r.maximumTension() / r.lineLoad() : 0;
            if (ratio > flat) {
                flat = ratio;
                flatCase = each.fallCase();
            }
        }
        if (flatCase != null && flat > FLAT) {
            list.add(Warning.of(Warning.Code.FLAT_LINE, "line")
                    .in(flatCase.describe())
                    .with(new Measured(flat, "-", FLAT)));
        }
        Lifeline line = result.design().line();
        for (int i = 1; i <= line.spans(); i++) {
            double slope = StrictMath.atan2(Math.abs(line.rise(i)), line.run(i));
            if (slope > STEEP) {
                list.add(Warning.of(Warning.Code.STEEP_SPAN, "span " + i).with(new Measured(slope, "rad", STEEP)));
            }
        }
    }

    private Optional<GoverningValue> worst(String name) {
        return result.governing(name);
    }
}
