package org.lifeline.analysis.explain;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.lifeline.base.UnitSystem;
import org.lifeline.base.unit.Dimension;

/** A sheet is settled when every line comes out as printed from the printed numbers of the lines above it. */
class CalculationSheetTest {
    private static BigDecimal again(CalculationStep step, int decimals) {
        return new BigDecimal(PocketCalculator.of(step.numbers()), new MathContext(15))
                .setScale(decimals, RoundingMode.HALF_UP);
    }

    private static BigDecimal printed(CalculationStep step) {
        return new BigDecimal(step.printed().replace('−', '-'));
    }

    @Test
    void aLineWithoutFormulaIsAnInput() {
        CalculationSheet sheet = new CalculationSheet(UnitSystem.SI);
        sheet.section("Cable");
        sheet.given("w", "weight", 4.2, Dimension.FORCE_PER_LENGTH, "design");
        CalculationStep step = sheet.finish().get(0);
        assertThat(step.section()).isEqualTo("Cable");
        assertThat(step.symbol()).isEqualTo("w");
        assertThat(step.what()).isEqualTo("weight");
        assertThat(step.formula()).isEmpty();
        assertThat(step.numbers()).isEmpty();
        assertThat(step.printed()).isEqualTo("4.2");
        assertThat(step.unit()).isEqualTo("N/m");
        assertThat(step.source()).isEqualTo("design");
        assertThat(step.value()).isEqualTo(4.2);
        assertThat(step).hasToString("w = 4.2 N/m  (weight; design)");
    }

    @Test
    void aLineWithAFormulaShowsItTwice() {
        CalculationSheet sheet = new CalculationSheet(UnitSystem.SI);
        Figure a = sheet.given("a", "one leg", 3, Dimension.LENGTH, "design");
        Figure b = sheet.given("b", "other leg", 4, Dimension.LENGTH, "design");
        sheet.row("c", "hypotenuse", Expression.length(a, b), Dimension.LENGTH, "Pythagoras");
        CalculationStep step = sheet.finish().get(2);
        assertThat(step).hasToString("c = √(a² + b²) = √(3² + 4²) = 5.00000 m  (hypotenuse; Pythagoras)");
    }

    @Test
    void aBareNumberHasNoUnitInItsLine() {
        CalculationSheet sheet = new CalculationSheet(UnitSystem.SI);
        sheet.given("n", "number", 2, Dimension.RATIO, "design");
        assertThat(sheet.finish().get(0)).hasToString("n = 2  (number; design)");
    }

    /** 5,000 lbf are 22.2 kN in 29 CFR 1926.502(d)(15). */
    @Test
    void inputsAreTurnedIntoTheUnitsOfTheSheet() {
        CalculationSheet sheet = new CalculationSheet(UnitSystem.US_CUSTOMARY);
        sheet.given("F", "strength of the anchorage", 5000 * 4.4482216152605, Dimension.FORCE, "design");
        CalculationStep step = sheet.finish().get(0);
        assertThat(step.value()).isCloseTo(5000, within(1e-9));
        assertThat(step.printed()).isEqualTo("5000");
        assertThat(step.unit()).isEqualTo("lbf");
    }

    /** The difference of two long numbers needs more of their digits than six. */
    @Test
    void figuresGainTheDigitsThatADifferenceNeeds() {
        CalculationSheet sheet = new CalculationSheet(UnitSystem.SI);
        Figure a = sheet.row("a", "root", Expression.root(Expression.number(3)), Dimension.LENGTH, "s");
        Figure b = sheet.row(
                "b",
                "nearly the same",
                Expression.over(Expression.number(1732050), Expression.number(1000000)),
                Dimension.LENGTH,
                "s");
        sheet.row("d", "difference", Expression.minus(a, b), Dimension.RATIO, "s");
        List<CalculationStep> steps = sheet.finish();
        assertThat(steps.get(2).value()).isCloseTo(8.07569e-7, within(1e-12));
        assertThat(steps.get(0).printed().length()).isGreaterThan(10);
        assertThat(again(steps.get(2), printed(steps.get(2)).scale())).isEqualByComparingTo(printed(steps.get(2)));
    }

    @Test
    void aSumOfManyTermsIsSettledToo() {
        CalculationSheet sheet = new CalculationSheet(UnitSystem.SI);
        List<Expression> terms = new ArrayList<>();
        double sum = 0;
        for (int i = 1; i <= 30; i++) {
            terms.add(sheet.row(
                    "t_" + i,
                    "term",
                    Expression.over(Expression.number(1), Expression.number(3 * i)),
                    Dimension.LENGTH,
                    "s"));
            sum += 1 / (3.0 * i);
        }
        sheet.row("Σ", "sum", Expression.sum(terms), Dimension.LENGTH, "s");
        List<CalculationStep> steps = sheet.finish();
        CalculationStep last = steps.get(30);
        assertThat(last.value()).isCloseTo(sum, within(1e-14));
        assertThat(again(last, printed(last).scale())).isEqualByComparingTo(printed(last));
    }

    @Test
    void randomChainsComeOutAsPrinted() {
        for (long seed = 1; seed <= 300; seed++) {
            SplittableRandom r = new SplittableRandom(seed);
            CalculationSheet sheet = new CalculationSheet(seed % 2 == 0 ? UnitSystem.SI : UnitSystem.US_CUSTOMARY);
            List<Figure> known = new ArrayList<>();
            for (int i = 0; i < 4; i++) {
                known.add(sheet.given("g_" + i, "input", r.nextDouble(0.1, 5000), Dimension.LENGTH, "design"));
            }
            for (int i = 0; i < 12; i++) {
                Figure a = known.get(r.nextInt(known.size()));
                Figure b = known.get(r.nextInt(known.size()));
                Expression e =
                        switch (r.nextInt(4)) {
                            case 0 -> Expression.sum(a, b);
                            case 1 -> Expression.over(a, Expression.sum(a, b));
                            case 2 -> Expression.length(a, b);
                            default -> Expression.half(Expression.times(a, Expression.arctan(b)));
                        };
                known.add(sheet.row("r_" + i, "result", e, Dimension.LENGTH, "s"));
            }
            for (CalculationStep step : sheet.finish()) {
                if (!step.formula().isEmpty()) {
                    assertThat(again(step, printed(step).scale()))
                            .as("seed %d: %s", seed, step)
                            .isEqualByComparingTo(printed(step));
                }
            }
        }
    }

    @Test
    void theLinesCannotBeChanged() {
        CalculationSheet sheet = new CalculationSheet(UnitSystem.SI);
        sheet.given("n", "number", 2, Dimension.RATIO, "design");
        List<CalculationStep> steps = sheet.finish();
        org.assertj.core.api.Assertions.assertThatThrownBy(steps::clear)
                .isInstanceOf(UnsupportedOperationException.class);
    }
}
