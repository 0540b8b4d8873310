package org.lifeline.analysis.explain;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.TransientArrest;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.UnitSystem;
import org.lifeline.model.Attachment;
import org.lifeline.model.Fall;
import org.lifeline.model.Installed;
import org.lifeline.model.Place;
import org.lifeline.samples.SampleDesigns;
import org.lifeline.testing.ArrestCase;
import org.lifeline.testing.Cases;

/** Sheets of arrests of every kind: formulas come out, forces balance, and both systems of units say the same. */
class CasesExplanationTest {
    private static final Map<String, ArrestResult> ARRESTS = solved();

    /** Factors into SI: NIST Special Publication 811 (2008), appendix B.8, recalled. */
    private static final Map<String, Double> FACTORS = Map.ofEntries(
            Map.entry("lbf", 4.448_221_615_260_5),
            Map.entry("ft", 0.3048),
            Map.entry("ft·lbf", 1.355_817_948_331_4),
            Map.entry("lb", 0.453_592_37),
            Map.entry("lbf/ft", 4.448_221_615_260_5 / 0.3048),
            Map.entry("rad", 1.0),
            Map.entry("-", 1.0));

    private static Map<String, ArrestResult> solved() {
        Map<String, ArrestResult> map = new LinkedHashMap<>();
        for (ArrestCase each : List.of(
                Cases.sequence(),
                Cases.touching(),
                Cases.clampsAndCorners(),
                Cases.yielding(),
                Cases.twoInlineAbsorbers(),
                Cases.retracting(),
                Cases.climbing())) {
            map.put(each.name(), each.solve());
        }
        return map;
    }

    private static List<CalculationStep> sheet(String name, UnitSystem system) {
        return Objects.requireNonNull(ARRESTS.get(name)).explainIn(system);
    }

    private static Map<String, CalculationStep> bySymbol(List<CalculationStep> steps) {
        return steps.stream()
                .collect(Collectors.toMap(
                        CalculationStep::symbol, Function.identity(), (a, b) -> b, LinkedHashMap::new));
    }

    private static double value(Map<String, CalculationStep> by, String symbol) {
        return Objects.requireNonNull(by.get(symbol), symbol).value();
    }

    @TestFactory
    Stream<DynamicTest> everyFormulaComesOutInBothSystems() {
        List<DynamicTest> tests = new ArrayList<>();
        ARRESTS.forEach((name, r) -> {
            for (UnitSystem system : UnitSystem.values()) {
                tests.add(
                        DynamicTest.dynamicTest(name + " in " + system, () -> Reviewer.recompute(sheet(name, system))));
            }
        });
        return tests.stream();
    }

    @Test
    void bothSystemsSayTheSame() {
        ARRESTS.forEach((name, r) -> {
            List<CalculationStep> si = sheet(name, UnitSystem.SI);
            List<CalculationStep> us = sheet(name, UnitSystem.US_CUSTOMARY);
            assertThat(us).as(name).hasSameSizeAs(si);
            int compared = 0;
            for (int i = 0; i < si.size(); i++) {
                CalculationStep a = si.get(i);
                CalculationStep b = us.get(i);
                assertThat(b.symbol()).isEqualTo(a.symbol());
                assertThat(b.formula()).isEqualTo(a.formula());
                assertThat(b.what()).isEqualTo(a.what());
                Double factor = FACTORS.get(b.unit());
                if (factor != null && !a.formula().isEmpty()) {
                    // A difference of large numbers keeps fewer digits than they have.
                    assertThat(b.value() * factor)
                            .as("%s: %s", name, a)
                            .isCloseTo(a.value(), within(1e-9 * Math.abs(a.value()) + 1e-5));
                    compared++;
                }
            }
            assertThat(compared).as(name).isGreaterThan(20);
        });
    }

    /** Vertical forces on all supports carry the cable, those who hang and the fall. */
    @Test
    void supportsCarryCableAndLoads() {
        ARRESTS.forEach((name, r) -> {
            Map<String, CalculationStep> by = bySymbol(sheet(name, UnitSystem.SI));
            double up = 0;
            for (int i = 0; i < r.supports().size(); i++) {
                up += value(by, "Rz_" + i);
                double horizontal = by.containsKey("Ry_" + i)
                        ? Math.hypot(value(by, "Rx_" + i), value(by, "Ry_" + i))
                        : value(by, "Rx_" + i);
                assertThat(Math.hypot(horizontal, value(by, "Rz_" + i)))
                        .as("%s, support %d", name, i)
                        .isCloseTo(value(by, "R_" + i), within(1e-6 * r.maximumTension()));
            }
            double loads = r.peak().loads().stream().mapToDouble(l -> l.force()).sum();
            double weight = r.peak().spans().stream()
                    .flatMap(s -> s.pieces().stream())
                    .mapToDouble(p -> p.unstretchedLength() * p.weightPerLength())
                    .sum();
            assertThat(-up).as(name).isCloseTo(loads + weight, within(1e-6 * r.maximumTension()));
        });
    }

    @Test
    void theFallSetsFreeWhatLineAndConnectionTake() {
        ARRESTS.forEach((name, r) -> {
            Map<String, CalculationStep> by = bySymbol(sheet(name, UnitSystem.SI));
            double free = value(by, "W_f");
            assertThat(value(by, "W") + value(by, "W_c"))
                    .as(name)
                    .isCloseTo(free - r.energy().residual(), within(1e-6 * free));
            assertThat(value(by, "W_r")).as(name).isCloseTo(r.energy().residual(), within(1e-6 * free));
            assertThat(value(by, "h_t"))
                    .as(name)
                    .isCloseTo(r.freeFall() + r.deployment() + r.lineDescent() + r.harnessStretch(), within(1e-8));
        });
    }

    @Test
    void theClearanceGoesDownStepByStep() {
        ARRESTS.forEach((name, r) -> {
            Map<String, CalculationStep> by = bySymbol(sheet(name, UnitSystem.SI));
            double before = Double.POSITIVE_INFINITY;
            int steps = 0;
            for (int i = 1; by.containsKey("z_c" + i); i++) {
                double here = value(by, "z_c" + i);
                assertThat(here).as("%s, row %d", name, i).isLessThanOrEqualTo(before + 1e-9);
                before = here;
                steps++;
            }
            assertThat(steps).as(name).isGreaterThan(3);
            assertThat(before).as(name).isCloseTo(r.clearance().requiredElevation(), within(1e-8));
        });
    }

    @Test
    void tensionsOnBothSidesOfASupportKeepItsRule() {
        ARRESTS.forEach((name, r) -> {
            Map<String, CalculationStep> by = bySymbol(sheet(name, UnitSystem.SI));
            for (int i = 1; i < r.line().spans(); i++) {
                CalculationStep ratio = by.get("r_" + i);
                if (ratio == null) {
                    continue;
                }
                double own =
                        r.peak().spans().get(i).pieces().get(0).startTension().magnitude();
                List<org.lifeline.analysis.CablePiece> before =
                        r.peak().spans().get(i - 1).pieces();
                double other = before.get(before.size() - 1).endTension().magnitude();
                assertThat(ratio.value()).as("%s, support %d", name, i).isCloseTo(own / other, within(1e-8));
                if (ratio.what().contains("runs freely")) {
                    assertThat(ratio.value()).isCloseTo(1, within(1e-8));
                }
            }
        });
    }

    @Test
    void sectionsStandInOneBlockEach() {
        ARRESTS.forEach((name, r) -> {
            List<String> order = new ArrayList<>();
            for (CalculationStep s : sheet(name, UnitSystem.SI)) {
                if (order.isEmpty() || !order.get(order.size() - 1).equals(s.section())) {
                    order.add(s.section());
                }
            }
            assertThat(order).as(name).doesNotHaveDuplicates().hasSizeGreaterThan(4);
            assertThat(order.get(0)).isEqualTo("Cable");
        });
    }

    @Test
    void anArrestInTimeIsExplainedFromItsPeaks() {
        Fall fall = Fall.builder("fall")
                .at(Place.of(1, 5))
                .faller(SampleDesigns.worker("A", 100, Attachment.GRIPPED, SampleDesigns.lanyard()))
                .build();
        ArrestResult r = TransientArrest.withDefaults()
                .withSegmentLength(1)
                .withRefinements(0)
                .withDuration(0.9)
                .solve(SampleDesigns.single(SampleDesigns.steel(), Installed.pretension(2000)), fall)
                .arrest();
        List<CalculationStep> steps = r.explain();
        Reviewer.recompute(steps);
        Reviewer.recompute(r.explainIn(UnitSystem.US_CUSTOMARY));
        Map<String, CalculationStep> by = bySymbol(steps);
        assertThat(value(by, "h_t")).isCloseTo(r.totalFallDistance(), within(1e-8));
        assertThat(value(by, "C_l")).isCloseTo(r.clearance().requiredBelowLine(), within(1e-8));
        assertThat(steps).allSatisfy(s -> {
            assertThat(s.what()).isNotBlank();
            assertThat(s.source()).isNotBlank();
        });
    }

    @Test
    @SuppressWarnings("NullAway")
    void withoutAnArrestAStateOrASystemNothingIsExplained() {
        ArrestResult r = ARRESTS.values().iterator().next();
        assertThatThrownBy(() -> Explanations.of(r, null))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("system");
        assertThatThrownBy(() -> Explanations.of((ArrestResult) null, UnitSystem.SI))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("arrest");
        assertThatThrownBy(() -> Explanations.of(r.peak(), null))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("system");
        assertThat(Explanations.of(r, UnitSystem.SI)).hasSameSizeAs(r.explain());
    }
}
