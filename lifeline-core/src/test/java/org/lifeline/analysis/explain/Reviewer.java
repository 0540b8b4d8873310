package org.lifeline.analysis.explain;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;

/** Follows the lines of a sheet with a pocket calculator. */
final class Reviewer {
    private Reviewer() {}

    /** Works out every formula again from its printed numbers: it must come out as printed. */
    static void recompute(List<CalculationStep> steps) {
        int formulas = 0;
        for (CalculationStep s : steps) {
            BigDecimal printed = number(s.printed());
            assertThat(printed.doubleValue())
                    .as("rounding of %s", s)
                    .isCloseTo(
                            s.value(), within(0.5000001 * Math.pow(10, -printed.scale()) + 16 * Math.ulp(s.value())));
            if (!s.formula().isEmpty()) {
                formulas++;
                BigDecimal again = new BigDecimal(PocketCalculator.of(s.numbers()), new MathContext(15))
                        .setScale(printed.scale(), RoundingMode.HALF_UP);
                assertThat(again).as("%s", s).isEqualByComparingTo(printed);
            }
        }
        assertThat(formulas).isGreaterThan(10);
    }

    /** The last line of each symbol. */
    static Map<String, CalculationStep> bySymbol(List<CalculationStep> steps) {
        return steps.stream().collect(Collectors.toMap(CalculationStep::symbol, Function.identity(), (a, b) -> b));
    }

    static BigDecimal number(String printed) {
        return new BigDecimal(printed.replace('−', '-'));
    }
}
