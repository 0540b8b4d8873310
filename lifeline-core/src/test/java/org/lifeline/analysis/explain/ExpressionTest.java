package org.lifeline.analysis.explain;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.lifeline.base.unit.Dimension;

/** Formulas as they are written and as they are worked out; what is written is read back by a calculator of its own. */
class ExpressionTest {
    private static final Figure A = figure("a", 3);
    private static final Figure B = figure("b", 4);
    private static final Figure C = figure("c", -2);

    private static Figure figure(String symbol, double value) {
        return new Figure(symbol, value, Dimension.RATIO, true);
    }

    private static double value(Expression e) {
        return e.value(Figure::value);
    }

    private static void is(Expression e, String symbols, String numbers, double value) {
        assertThat(e.write(false)).isEqualTo(symbols);
        assertThat(e.write(true)).isEqualTo(numbers);
        assertThat(value(e)).as(symbols).isCloseTo(value, within(1e-14));
    }

    @Test
    void theOperationsOfASheet() {
        is(Expression.number(7), "7", "7", 7);
        is(Expression.sum(A, B), "a + b", "3 + 4", 7);
        is(Expression.minus(A, B), "a − b", "3 − 4", -1);
        is(Expression.times(A, B), "a·b", "3·4", 12);
        is(Expression.over(A, B), "a/b", "3/4", 0.75);
        is(Expression.half(B), "b/2", "4/2", 2);
        is(Expression.square(A), "a²", "3²", 9);
        is(Expression.root(B), "√(b)", "√(4)", 2);
        is(Expression.length(A, B), "√(a² + b²)", "√(3² + 4²)", 5);
        is(Expression.size(C), "|c|", "|(−2)|", 2);
        is(Expression.notNegative(C), "max(0; c)", "max(0; (−2))", 0);
        is(Expression.notNegative(A), "max(0; a)", "max(0; 3)", 3);
        is(Expression.ln(A), "ln(a)", "ln(3)", 1.0986122886681098);
    }

    /** tan π/4 = 1, cos π/3 = 1/2, tanh of ln 2 is 3/5: M. Abramowitz, I. Stegun, ch. 4. */
    @Test
    void inverseFunctionsAtKnownPlaces() {
        assertThat(value(Expression.arctan(figure("t", 1)))).isCloseTo(Math.PI / 4, within(1e-15));
        assertThat(value(Expression.arccos(figure("t", 0.5)))).isCloseTo(Math.PI / 3, within(1e-15));
        assertThat(value(Expression.artanh(figure("t", 0.6)))).isCloseTo(Math.log(2), within(1e-15));
        assertThat(value(Expression.artanh(figure("t", -0.6)))).isCloseTo(-Math.log(2), within(1e-15));
        assertThat(value(Expression.artanh(figure("t", 0)))).isZero();
    }

    /** Where the argument is tiny, artanh x is x: the sheet of a taut, light line rests on it. */
    @ParameterizedTest
    @ValueSource(doubles = {1e-12, 1e-9, 1e-6})
    void artanhKeepsItsDigitsNearZero(double x) {
        assertThat(value(Expression.artanh(figure("x", x)))).isCloseTo(x, within(x * x * x + 1e-15 * x));
        for (double wide : new double[] {0.1, 0.5, 0.9, 0.99}) {
            assertThat(Math.tanh(value(Expression.artanh(figure("x", wide))))).isCloseTo(wide, within(1e-14));
        }
    }

    @Test
    void bracketsStandWhereTheOrderOfOperationsNeedsThem() {
        assertThat(Expression.times(Expression.sum(A, B), C).write(false)).isEqualTo("(a + b)·c");
        assertThat(Expression.sum(Expression.times(A, B), C).write(false)).isEqualTo("a·b + c");
        assertThat(Expression.minus(A, Expression.sum(B, C)).write(false)).isEqualTo("a − (b + c)");
        assertThat(Expression.minus(Expression.sum(A, B), C).write(false)).isEqualTo("a + b − c");
        assertThat(Expression.minus(A, Expression.minus(B, C)).write(false)).isEqualTo("a − (b − c)");
        assertThat(Expression.over(A, Expression.times(B, C)).write(false)).isEqualTo("a/(b·c)");
        assertThat(Expression.over(A, Expression.over(B, C)).write(false)).isEqualTo("a/(b/c)");
        assertThat(Expression.over(Expression.times(A, B), C).write(false)).isEqualTo("a·b/c");
        assertThat(Expression.square(Expression.square(A)).write(false)).isEqualTo("(a²)²");
        assertThat(Expression.square(Expression.over(A, B)).write(false)).isEqualTo("(a/b)²");
        assertThat(Expression.over(A, Expression.square(B)).write(false)).isEqualTo("a/b²");
    }

    @Test
    void aSumOfOneTermIsTheTerm() {
        assertThat(Expression.sum(A)).isSameAs(A);
        assertThat(Expression.sum(List.of(B))).isSameAs(B);
    }

    @Test
    void everyFigureIsVisitedOnceForEachTimeItIsWritten() {
        List<String> seen = new ArrayList<>();
        Expression.over(Expression.length(A, B), Expression.times(A, C)).figures(f -> seen.add(f.symbol()));
        assertThat(seen).containsExactly("a", "b", "a", "c");
    }

    @Test
    void theReadingDecidesWhatAFigureIsWorth() {
        assertThat(Expression.times(A, B).value(f -> 10)).isEqualTo(100);
    }

    /** The written numbers go through the pocket calculator of the tests, which knows the order of operations only. */
    @Test
    void whatIsWrittenIsWhatIsWorkedOut() {
        for (long seed = 1; seed <= 2000; seed++) {
            SplittableRandom r = new SplittableRandom(seed);
            Expression e = random(r, 4);
            double value = e.value(Figure::value);
            if (Double.isFinite(value) && Math.abs(value) < 1e12) {
                assertThat(PocketCalculator.of(e.write(true)))
                        .as("seed %d: %s", seed, e.write(true))
                        .isCloseTo(value, within(1e-9 * Math.max(1, Math.abs(value))));
            }
        }
    }

    private static Expression random(SplittableRandom r, int depth) {
        if (depth == 0 || r.nextInt(5) == 0) {
            return r.nextInt(3) == 0 ? Expression.number(r.nextInt(1, 9)) : figure("x", r.nextInt(-90, 90) / 10.0);
        }
        Expression a = random(r, depth - 1);
        Expression b = random(r, depth - 1);
        return switch (r.nextInt(9)) {
            case 0 -> Expression.sum(a, b, random(r, depth - 1));
            case 1 -> Expression.minus(a, b);
            case 2 -> Expression.times(a, b);
            case 3 -> Expression.over(a, b);
            case 4 -> Expression.square(a);
            case 5 -> Expression.root(Expression.size(a));
            case 6 -> Expression.arctan(a);
            case 7 -> Expression.notNegative(a);
            default -> Expression.length(a, b);
        };
    }
}
