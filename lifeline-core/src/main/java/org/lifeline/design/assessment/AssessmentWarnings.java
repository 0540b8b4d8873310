package org.lifeline.design.assessment;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.design.criteria.Status;
import org.lifeline.design.envelope.Extreme;
import org.lifeline.design.envelope.FallCase;
import org.lifeline.design.envelope.Quantity;
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
    private static final Set<org.lifeline.analysis.warning.Warning.Code> CHECKED_WITH_FACTORS = Set.of(
            org.lifeline.analysis.warning.Warning.Code.CABLE_STRENGTH,
            org.lifeline.analysis.warning.Warning.Code.ANCHOR_CAPACITY);

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
        elsewhere();
        inTime();
        motion();
        geometry();
        return List.copyOf(list);
    }

    private void add(String code, String where, String text) {
        list.add(new Warning(code, text, where, Double.NaN, Double.NaN, "-"));
    }

    private void checks() {
        for (IndependentCheck each : result.checks()) {
            if (!each.passed()) {
                add(
                        "check-failed",
                        each.fallCase().describe(),
                        "the independent check failed (" + each.method().label()
                                + "); do not use the result before the cause is known: "
                                + each.failures().get(0));
            }
        }
    }

    private void notComputed() {
        for (NotComputed each : result.notComputed()) {
            add("not-computed", each.what(), "not computed: " + each.why());
        }
    }

    private void criteria() {
        for (AssessedCriterion each : result.criteria()) {
            if (each.result().status() == Status.NOT_EVALUATED) {
                add(
                        "criterion-not-evaluated",
                        each.result().criterion().id(),
                        "not evaluated, " + each.result().reason());
            }
        }
    }

    private void strengths() {
        Lifeline line = result.design().line();
        worst("maximumTension")
                .ifPresent(g -> line.cable().breakingStrength().ifPresent(strength -> {
                    double holds = strength * line.cable().terminationEfficiency();
                    if (g.factored() > holds) {
                        list.add(new Warning(
                                "cable-strength-exceeded",
                                "the tension exceeds what cable and terminations hold",
                                g.fallCase().describe(),
                                g.factored(),
                                holds,
                                "N"));
                    }
                }));
        for (Support s : line.supports()) {
            worst("load on " + s.id())
                    .ifPresent(g -> s.capacity().ifPresent(capacity -> {
                        if (g.factored() > capacity) {
                            list.add(new Warning(
                                    "anchor-capacity-exceeded",
                                    "the load exceeds the stated strength of the anchor",
                                    s.id(),
                                    g.factored(),
                                    capacity,
                                    "N"));
                        }
                    }));
        }
    }

    private void clearance() {
        worst("clearanceMargin")
                .filter(g -> g.factored() < 0)
                .ifPresent(g -> list.add(new Warning(
                        "clearance-lacking",
                        "the clearance does not suffice",
                        g.fallCase().describe(),
                        g.factored(),
                        0,
                        "m")));
    }

    /** What the arrests that govern say of themselves: each kind once for each part, with its worst value. */
    private void ofArrests() {
        Map<String, Warning> found = new LinkedHashMap<>();
        for (GoverningValue each : result.governing()) {
            for (org.lifeline.analysis.warning.Warning w : each.arrest().warnings()) {
                if (CHECKED_WITH_FACTORS.contains(w.code())) {
                    continue;
                }
                String code = w.code().name().toLowerCase(Locale.ROOT).replace('_', '-');
                String where = w.where() + ", " + each.fallCase().describe();
                Warning here =
                        new Warning(code, w.where() + ": " + w.code().text(), where, w.value(), w.limit(), w.unit());
                found.merge(code + w.where(), here, (old, other) -> other.value() > old.value() ? other : old);
            }
        }
        list.addAll(found.values());
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
                    .ifPresent(h -> list.add(new Warning(
                            "worse-than-stated",
                            words(each) + ": worse than in the stated falls",
                            each.fallCase().describe(),
                            each.factored(),
                            h.value(),
                            each.unit())));
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
                list.add(new Warning(
                        "worse-in-time",
                        words(each) + ": worse in time than by balance",
                        motion.get().fallCase().describe(),
                        motion.get().computed(),
                        balance.get().computed(),
                        each.unit()));
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
            String where = each.fallCase().describe();
            each.arrest().motion().ifPresent(m -> {
                if (!m.firstCatchOver()) {
                    add("first-catch-not-over", where, "the motion was not followed to the end of the first catch");
                }
            });
        }
        List<FollowedArrest> rough =
                result.followed().stream().filter(a -> !a.accurate()).toList();
        if (!rough.isEmpty()) {
            add(
                    "motion-not-accurate",
                    rough.get(0).fallCase().describe(),
                    rough.size() + " of " + result.followed().size()
                            + " arrests in time did not reach the accuracy asked for; the first of them is named");
        }
        ModelFactors factors = result.design().modelFactors();
        if (factors.force() < 1 || factors.distance() < 1) {
            list.add(new Warning(
                    "model-factor-below-one",
                    "a model factor below 1 makes every criterion easier to meet",
                    "modelFactors",
                    Math.min(factors.force(), factors.distance()),
                    1,
                    "-"));
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
            list.add(new Warning(
                    "flat-line", "flat line, tension over force on the line", flatCase.describe(), flat, FLAT, "-"));
        }
        Lifeline line = result.design().line();
        for (int i = 1; i <= line.spans(); i++) {
            double slope = Math.atan2(Math.abs(line.rise(i)), line.run(i));
            if (slope > STEEP) {
                list.add(new Warning(
                        "steep-span",
                        "an attachment may run down the span before and during a fall",
                        String.format(Locale.ROOT, "span %d", i),
                        slope,
                        STEEP,
                        "rad"));
            }
        }
    }

    private Optional<GoverningValue> worst(String name) {
        return result.governing(name);
    }
}
