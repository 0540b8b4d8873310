package org.lifeline.analysis.explain;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.concurrent.CancellationException;
import java.util.function.Consumer;
import java.util.function.ToDoubleFunction;
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

    /** Numbers of a sum: one that loses its leading digits in the difference, and small ones that keep theirs. */
    private static List<CalculationStep> cancelling(int small) {
        CalculationSheet sheet = new CalculationSheet(UnitSystem.SI);
        List<Expression> terms = new ArrayList<>();
        for (int i = 0; i < small; i++) {
            Expression tiny = Expression.over(Expression.root(Expression.number(2 + 3 * i)), Expression.number(1000));
            terms.add(sheet.row("b_" + i, "small", tiny, Dimension.LENGTH, "s"));
        }
        Figure large = sheet.row(
                "a",
                "large",
                Expression.times(Expression.number(1000), Expression.root(Expression.number(3))),
                Dimension.LENGTH,
                "s");
        terms.add(Expression.minus(large, Expression.number(1732)));
        sheet.row("d", "what is left", Expression.sum(terms), Dimension.LENGTH, "s");
        return sheet.finish();
    }

    /** 1732.05081 less 1732 and a thousandth or two: six decimals of the large number are wanted, of the small ones no more. */
    @Test
    void onlyTheNumberThatCountsGainsDigits() {
        for (int small : List.of(1, 5, 19)) {
            List<CalculationStep> steps = cancelling(small);
            CalculationStep large = steps.get(small);
            assertThat(large.symbol()).isEqualTo("a");
            assertThat(printed(large).scale()).as("%d small terms", small).isGreaterThan(4);
            assertThat(steps.subList(0, small))
                    .allSatisfy(s -> assertThat(printed(s).scale()).isLessThanOrEqualTo(7));
            assertThat(steps.get(0).printed()).startsWith("0.001414");
            CalculationStep left = steps.get(small + 1);
            assertThat(again(left, printed(left).scale())).isEqualByComparingTo(printed(left));
        }
        assertThat(cancelling(1).get(0).printed()).isEqualTo("0.001414");
    }

    /** A large number that is printed above its value and a small one below: the larger error counts, whatever its sign. */
    @Test
    void aNumberThatWasRoundedUpGainsDigitsAsOneRoundedDown() {
        CalculationSheet sheet = new CalculationSheet(UnitSystem.SI);
        Expression thousandth = Expression.over(Expression.root(Expression.number(2)), Expression.number(1000));
        Figure small = sheet.row("b", "small", thousandth, Dimension.LENGTH, "s");
        // 2449.48974, printed as 2449.49.
        Expression thousand = Expression.times(Expression.number(1000), Expression.root(Expression.number(6)));
        Figure large = sheet.row("a", "large", thousand, Dimension.LENGTH, "s");
        Expression left = Expression.sum(small, Expression.minus(large, Expression.number(2449)));
        sheet.row("d", "what is left", left, Dimension.LENGTH, "s");
        List<CalculationStep> steps = sheet.finish();
        assertThat(steps.get(0).printed()).isEqualTo("0.001414");
        assertThat(printed(steps.get(1)).scale()).isGreaterThan(4);
        assertThat(steps.get(2).printed()).isEqualTo("0.491157");
        assertThat(again(steps.get(2), 6)).isEqualByComparingTo(printed(steps.get(2)));
    }

    /** Thirty times 1/30000: in six decimals they make 0.00099, in eight 0.001. The sum itself keeps its six. */
    @Test
    void aLongSumKeepsItsDigitsWhereItsNumbersGainThem() {
        CalculationSheet sheet = new CalculationSheet(UnitSystem.SI);
        List<Expression> terms = new ArrayList<>();
        for (int i = 0; i < 30; i++) {
            Expression small = Expression.over(Expression.number(1), Expression.number(30_000));
            terms.add(sheet.row("t_" + i, "term", small, Dimension.LENGTH, "s"));
        }
        sheet.row("Σ", "sum", Expression.sum(terms), Dimension.LENGTH, "s");
        List<CalculationStep> steps = sheet.finish();
        assertThat(steps.get(30).printed()).isEqualTo("0.001000");
        assertThat(steps.subList(0, 30)).allSatisfy(s -> assertThat(s.printed()).isEqualTo("0.00003333"));
    }

    /** A divisor that is nothing as printed needs more digits; what is divided does not, and keeps six. */
    @Test
    void aFactorKeepsItsDigitsWhereADivisorIsNothingAsPrinted() {
        CalculationSheet sheet = new CalculationSheet(UnitSystem.SI);
        Figure a = sheet.row("a", "root", Expression.root(Expression.number(3)), Dimension.RATIO, "s");
        Figure b = sheet.given("b", "nearly the same", 1.7320, Dimension.RATIO, "design");
        Figure c = sheet.row("c", "factor", Expression.root(Expression.number(2)), Dimension.RATIO, "s");
        Expression inverse = Expression.over(Expression.number(1), Expression.minus(a, b));
        sheet.row("q", "quotient", Expression.times(inverse, c), Dimension.RATIO, "s");
        List<CalculationStep> steps = sheet.finish();
        assertThat(steps.get(3).value()).isCloseTo(Math.sqrt(2) / (Math.sqrt(3) - 1.7320), within(1e-6));
        assertThat(printed(steps.get(0)).scale()).isGreaterThan(8);
        assertThat(again(steps.get(3), printed(steps.get(3)).scale())).isEqualByComparingTo(printed(steps.get(3)));
        assertThat(steps.get(2).printed()).hasSizeLessThanOrEqualTo(9);
    }

    /** In a sum of more than twenty numbers each is given a digit at a time, the small with the large. */
    @Test
    void inALongSumAllGainDigitsTogether() {
        List<CalculationStep> steps = cancelling(25);
        CalculationStep large = steps.get(25);
        int gained = printed(large).scale() - 2;
        assertThat(gained).isPositive();
        assertThat(steps.subList(0, 25))
                .allSatisfy(s -> assertThat(printed(s).scale()).isEqualTo(6 + gained));
        // Its numbers have the digits that it wants: the sum keeps those of a length.
        assertThat(printed(steps.get(26)).scale()).isEqualTo(6);
    }

    /** Inputs carry noise behind their 13th digit: where it decides the last digit of a result, one more is printed. */
    @Test
    void aTieOfTheLastDigitIsBrokenByOneMore() {
        for (int terms : List.of(1, 25)) {
            CalculationSheet sheet = new CalculationSheet(UnitSystem.SI);
            List<Expression> inputs = new ArrayList<>();
            for (int i = 0; i < terms; i++) {
                // 0.1, as 0.09999999999999964.
                inputs.add(sheet.given("a_" + i, "difference of two levels", 12.6 - 12.5, Dimension.LENGTH, "design"));
            }
            sheet.row(
                    "F",
                    "force",
                    Expression.over(Expression.sum(inputs), Expression.number(200 * terms)),
                    Dimension.FORCE,
                    "s");
            CalculationStep force = sheet.finish().get(terms);
            // A force has three decimals; 0.0005 and what is a little less would be 0.001 and 0.000.
            assertThat(force.printed()).isEqualTo("0.0005");
            assertThat(again(force, 4)).isEqualByComparingTo(printed(force));
        }
    }

    /** 1/(√3 − 1.73205): the difference is nothing in six digits, and something in more. */
    @Test
    void aQuotientGainsTheDigitsThatItsDivisorNeeds() {
        CalculationSheet sheet = new CalculationSheet(UnitSystem.SI);
        Figure a = sheet.row("a", "root", Expression.root(Expression.number(3)), Dimension.LENGTH, "s");
        Figure b = sheet.given("b", "nearly the same", 1.73205, Dimension.LENGTH, "design");
        sheet.row("q", "quotient", Expression.over(Expression.number(1), Expression.minus(a, b)), Dimension.RATIO, "s");
        List<CalculationStep> steps = sheet.finish();
        CalculationStep quotient = steps.get(2);
        assertThat(quotient.value()).isCloseTo(1 / 8.0756887729e-7, within(1.0));
        assertThat(again(quotient, printed(quotient).scale())).isEqualByComparingTo(printed(quotient));
    }

    /** A difference that is nothing, enlarged beyond what any digits hold: it is printed as it is, and the sheet ends. */
    @Test
    void whatNoDigitsHoldIsLeftAsItIs() {
        CalculationSheet sheet = new CalculationSheet(UnitSystem.SI);
        double root = Math.sqrt(17);
        assertThat(root * root - 17).isZero();
        Figure a = sheet.row("a", "root", Expression.root(Expression.number(17)), Dimension.RATIO, "s");
        sheet.row(
                "d",
                "difference, enlarged",
                Expression.over(
                        Expression.minus(Expression.square(a), Expression.number(17)),
                        sheet.given("e", "small", 1e-16, Dimension.RATIO, "design")),
                Dimension.RATIO,
                "s");
        List<CalculationStep> steps = sheet.finish();
        assertThat(steps.get(2).printed()).isEqualTo("0");
        assertThat(printed(steps.get(0)).doubleValue()).isCloseTo(root, within(1e-12));
    }

    /** Of 14 digits that a number has, a difference of two that agree in twelve keeps two: more would be invented. */
    @Test
    void aDifferenceShowsNoMoreDigitsThanItsNumbersHold() {
        CalculationSheet sheet = new CalculationSheet(UnitSystem.SI);
        Figure a = sheet.row("a", "root", Expression.root(Expression.number(3)), Dimension.RATIO, "s");
        Figure b = sheet.row(
                "b",
                "root of nearly the same",
                Expression.root(Expression.sum(
                        Expression.number(3), Expression.over(Expression.number(1), Expression.number(1_000_000_000)))),
                Dimension.RATIO,
                "s");
        sheet.row(
                "d",
                "difference, enlarged",
                Expression.times(Expression.number(1_000_000), Expression.minus(b, a)),
                Dimension.RATIO,
                "s");
        List<CalculationStep> steps = sheet.finish();
        // 1e-9/(2√3)·1e6 = 2.88675e-4; the roots are known to 1e-13, the product to 1e-7.
        assertThat(steps.get(2).value()).isCloseTo(2.88675e-4, within(1e-8));
        assertThat(again(steps.get(2), printed(steps.get(2)).scale())).isEqualByComparingTo(printed(steps.get(2)));
        assertThat(printed(steps.get(0)).scale()).isLessThanOrEqualTo(13);
        assertThat(printed(steps.get(2)).scale()).isBetween(5, 8);
        assertThat(printed(steps.get(2)).doubleValue()).isCloseTo(2.88675e-4, within(1e-6));
    }

    @Test
    void aThreadThatIsInterruptedStopsWriting() {
        CalculationSheet sheet = new CalculationSheet(UnitSystem.SI);
        Figure a = sheet.given("a", "input", 2, Dimension.RATIO, "s");
        Thread.currentThread().interrupt();
        try {
            assertThatThrownBy(() -> sheet.row("b", "twice", Expression.sum(a, a), Dimension.RATIO, "s"))
                    .isInstanceOf(CancellationException.class);
            assertThatThrownBy(sheet::finish).isInstanceOf(CancellationException.class);
            assertThat(Thread.currentThread().isInterrupted()).isTrue();
        } finally {
            assertThat(Thread.interrupted()).isTrue();
        }
        assertThat(sheet.finish()).hasSize(1);
    }

    /** A number that interrupts the thread as it is read or written, as somebody might who no longer waits. */
    private static final class Interrupting extends Expression {
        private int calls;
        private int interruptAt;

        private void call() {
            if (++calls == interruptAt) {
                Thread.currentThread().interrupt();
            }
        }

        @Override
        int binding() {
            return 4;
        }

        @Override
        double value(ToDoubleFunction<Figure> reading) {
            call();
            return 2;
        }

        @Override
        String write(boolean numbers) {
            call();
            return "2";
        }

        @Override
        void figures(Consumer<Figure> visitor) {}
    }

    /** Whenever it is interrupted, no line is worked out or written any more: at most the one that was begun ends. */
    @Test
    void whereverTheThreadIsInterruptedNoFurtherLineIsBegun() {
        int all = 0;
        for (int at = 1; at <= all || all == 0; at++) {
            Interrupting number = new Interrupting();
            CalculationSheet sheet = new CalculationSheet(UnitSystem.SI);
            for (int i = 0; i < 5; i++) {
                sheet.row("r_" + i, "row", number, Dimension.RATIO, "s");
            }
            int begun = number.calls;
            if (all == 0) {
                sheet.finish();
                all = number.calls - begun;
                // Worked out once more, then written with symbols and with numbers.
                assertThat(all).isEqualTo(15);
                at = 0;
                continue;
            }
            number.interruptAt = begun + at;
            // The last line is written when its last call comes: nothing is left to stop.
            boolean last = at > all - 2;
            try {
                if (last) {
                    assertThat(sheet.finish()).hasSize(5);
                } else {
                    assertThatThrownBy(sheet::finish).as("call %d", at).isInstanceOf(CancellationException.class);
                }
            } finally {
                assertThat(Thread.interrupted()).isTrue();
            }
            assertThat(number.calls - begun).as("call %d", at).isBetween(at, at + 1);
        }
    }

    @Test
    void theLinesCannotBeChanged() {
        CalculationSheet sheet = new CalculationSheet(UnitSystem.SI);
        sheet.given("n", "number", 2, Dimension.RATIO, "design");
        List<CalculationStep> steps = sheet.finish();
        assertThatThrownBy(steps::clear).isInstanceOf(UnsupportedOperationException.class);
    }
}
