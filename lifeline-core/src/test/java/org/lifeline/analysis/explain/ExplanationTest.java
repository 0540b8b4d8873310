package org.lifeline.analysis.explain;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.junit.jupiter.api.DynamicTest.dynamicTest;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.LineEquilibrium;
import org.lifeline.analysis.SpanState;
import org.lifeline.analysis.Statics;
import org.lifeline.base.UnitSystem;
import org.lifeline.model.Installed;
import org.lifeline.samples.SampleDesigns;

/** A reviewer with a pocket calculator follows every line of the explanations. */
class ExplanationTest {
    private static final Map<String, ArrestResult> ARRESTS = SampleDesigns.arrests();

    @TestFactory
    Stream<DynamicTest> everyLineComesOutAsPrinted() {
        List<DynamicTest> tests = new ArrayList<>();
        ARRESTS.forEach((name, arrest) -> {
            for (UnitSystem system : UnitSystem.values()) {
                tests.add(dynamicTest(name + " in " + system, () -> Reviewer.recompute(arrest.explainIn(system))));
            }
            tests.add(dynamicTest(
                    name + ", before", () -> Reviewer.recompute(arrest.before().explain())));
        });
        return tests.stream();
    }

    private static double value(Map<String, CalculationStep> by, String symbol) {
        CalculationStep step = by.get(symbol);
        assertThat(step).as(symbol).isNotNull();
        return step == null ? Double.NaN : step.value();
    }

    @TestFactory
    Stream<DynamicTest> explanationEndsAtTheResult() {
        return ARRESTS.entrySet().stream().map(e -> dynamicTest(e.getKey(), () -> endsAtTheResult(e.getValue())));
    }

    private static void endsAtTheResult(ArrestResult r) {
        Map<String, CalculationStep> by = Reviewer.bySymbol(r.explain());
        assertThat(value(by, "δ")).isCloseTo(r.lineDescent(), within(1e-8));
        if (r.fall().place().isAtSupport()) {
            assertThat(value(by, "z_p")).isCloseTo(r.attachmentAtPeak().z(), within(1e-8));
        } else {
            assertThat(value(by, "f")).isCloseTo(r.sag(), within(1e-8));
            assertThat(value(by, "a")).isCloseTo(r.loadX(), within(1e-8));
        }
        assertThat(value(by, "W"))
                .isCloseTo(r.energy().lineWork(), within(1e-7 * r.energy().fall()));
        assertThat(value(by, "W_c"))
                .isCloseTo(r.energy().connection(), within(1e-9 * r.energy().fall()));
        assertThat(value(by, "W_f"))
                .isCloseTo(r.energy().fall(), within(1e-8 * r.energy().fall()));
        assertThat(value(by, "h_t")).isCloseTo(r.totalFallDistance(), within(1e-8));
        assertThat(value(by, "C_l")).isCloseTo(r.clearance().requiredBelowLine(), within(1e-8));
        assertThat(value(by, "C_m")).isCloseTo(r.clearance().margin().orElseThrow(), within(1e-8));
        if (by.containsKey("x_P")) {
            assertThat(value(by, "x_P")).isCloseTo(r.deployment(), within(2e-6));
        }
        for (int i = 0; i < r.supports().size(); i++) {
            assertThat(value(by, "R_" + i)).isCloseTo(r.supports().get(i).force(), within(1e-7 * r.maximumTension()));
        }
        for (SpanState s : r.peak().spans()) {
            String k = Integer.toString(s.number());
            assertThat(value(by, "ΣX_" + k)).isCloseTo(value(by, "L_" + k), within(1e-8));
            assertThat(value(by, "ΣZ_" + k)).isCloseTo(value(by, "D_" + k), within(1e-8));
        }
    }

    @Test
    void symbolsAreDefinedBeforeTheyAreUsed() {
        ARRESTS.forEach((name, r) -> {
            List<String> known = new ArrayList<>();
            for (CalculationStep s : r.explain()) {
                for (String symbol : Pattern.compile("[ ·/()²;|]+")
                        .splitAsStream(s.formula())
                        .toList()) {
                    if (!symbol.matches("|[+−]|[0-9]+|√|ln|artanh|arctan|arccos|max")) {
                        assertThat(known).as("%s in %s: %s", symbol, name, s).contains(symbol);
                    }
                }
                known.add(s.symbol());
            }
        });
    }

    @Test
    void symbolsOfALineMeanOneThing() {
        ARRESTS.forEach((name, r) -> {
            List<String> symbols = r.explain().stream()
                    .map(CalculationStep::symbol)
                    .filter(s -> !s.equals("x_P"))
                    .toList();
            assertThat(symbols).as(name).doesNotHaveDuplicates();
        });
    }

    @Test
    void installedStateIsTiedToItsForm() {
        Map<Installed, String> forms = Map.of(
                Installed.pretension(2000), "T_0",
                Installed.horizontalTension(2000), "H_0",
                Installed.initialSag(1, 0.1), "f_0",
                Installed.unstretchedLength(10.01), "S");
        forms.forEach((installed, symbol) -> {
            LineEquilibrium state =
                    Statics.withDefaults().solve(SampleDesigns.single(SampleDesigns.steel(), installed), List.of());
            CalculationStep step = state.explain().stream()
                    .filter(s -> s.symbol().equals(symbol))
                    .findFirst()
                    .orElseThrow();
            assertThat(step.value()).isCloseTo(installed.value(), within(1e-9 * installed.value()));
        });
    }

    @Test
    void everyLineSaysWhatAndWhence() {
        Set<String> units = Set.of("m", "N", "J", "kg", "N/m", "m/N", "N²·m", "N/kg", "°C", "1/°C", "rad", "-");
        assertThat(ARRESTS.getOrDefault("gallery", ARRESTS.values().iterator().next())
                        .explain())
                .allSatisfy(s -> {
                    assertThat(s.what()).isNotBlank();
                    assertThat(s.source()).isNotBlank();
                    assertThat(s.section()).isNotBlank();
                    assertThat(s.unit()).isIn(units);
                    assertThat(s.toString()).contains(s.printed());
                });
    }
}
