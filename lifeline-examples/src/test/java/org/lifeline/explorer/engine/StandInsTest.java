package org.lifeline.explorer.engine;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Random;
import java.util.function.DoubleBinaryOperator;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.lifeline.explorer.engine.stand.StrictMath;

/** What stands in for functions of the JDK in a script, against the JDK: the same double, to the last digit. */
class StandInsTest {
    private static final int NUMBERS = 200_000;
    private static final List<Double> EXTREMES = List.of(
            0.0,
            -0.0,
            1.0,
            -1.0,
            0.5,
            -3.0,
            4.0,
            Math.PI,
            -Math.PI / 2,
            Math.nextUp(1.0),
            Math.nextDown(1.0),
            Double.MIN_VALUE,
            -Double.MIN_NORMAL,
            1e-310,
            1e-200,
            1e-17,
            1e-9,
            22.5,
            -41.3,
            709.7,
            -740.0,
            1e5,
            1e200,
            -1e308,
            Double.MAX_VALUE,
            Double.POSITIVE_INFINITY,
            Double.NEGATIVE_INFINITY,
            Double.NaN);

    static Stream<Arguments> ofOneNumber() {
        return Stream.of(
                one("log", StrictMath::log, java.lang.StrictMath::log),
                one("log1p", StrictMath::log1p, java.lang.StrictMath::log1p),
                one("exp", StrictMath::exp, java.lang.StrictMath::exp),
                one("sinh", StrictMath::sinh, java.lang.StrictMath::sinh),
                one("cosh", StrictMath::cosh, java.lang.StrictMath::cosh),
                one("sin", StrictMath::sin, java.lang.StrictMath::sin),
                one("cos", StrictMath::cos, java.lang.StrictMath::cos),
                one("asin", StrictMath::asin, java.lang.StrictMath::asin));
    }

    static Stream<Arguments> ofTwoNumbers() {
        return Stream.of(
                two("atan2", StrictMath::atan2, java.lang.StrictMath::atan2),
                two("hypot", StrictMath::hypot, java.lang.StrictMath::hypot));
    }

    private static Arguments one(String name, DoubleUnaryOperator ours, DoubleUnaryOperator jdk) {
        return Arguments.of(name, ours, jdk);
    }

    private static Arguments two(String name, DoubleBinaryOperator ours, DoubleBinaryOperator jdk) {
        return Arguments.of(name, ours, jdk);
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("ofOneNumber")
    void aFunctionOfOneNumberIsThatOfTheJdk(String name, DoubleUnaryOperator ours, DoubleUnaryOperator jdk) {
        Random random = new Random(20_261_129);
        double[] scales = {1e-9, 1e-3, 0.3, 1, 3, 30, 500};
        for (int i = 0; i < NUMBERS; i++) {
            agree(name, random.nextGaussian() * scales[i % scales.length], ours, jdk);
            agree(name, 1 + random.nextGaussian() * scales[i % 3], ours, jdk);
        }
        for (int i = -200; i <= 200; i++) {
            for (double x : List.of(i * Math.PI / 4, Math.nextUp(i * Math.PI / 4), i / 16.0, Math.nextDown(i / 16.0))) {
                agree(name, x, ours, jdk);
            }
        }
        EXTREMES.forEach(x -> agree(name, x, ours, jdk));
    }

    private static void agree(String name, double x, DoubleUnaryOperator ours, DoubleUnaryOperator jdk) {
        assertThat(ours.applyAsDouble(x)).as("%s(%s)", name, x).isEqualTo(Double.valueOf(jdk.applyAsDouble(x)));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("ofTwoNumbers")
    void aFunctionOfTwoNumbersIsThatOfTheJdk(String name, DoubleBinaryOperator ours, DoubleBinaryOperator jdk) {
        Random random = new Random(20_261_129);
        for (int i = 0; i < NUMBERS; i++) {
            double x = random.nextGaussian() * java.lang.StrictMath.pow(10, 6 * random.nextGaussian());
            double y = i % 2 == 0 ? x * random.nextGaussian() : random.nextGaussian();
            agree(name, x, y, ours, jdk);
        }
        for (double x : EXTREMES) {
            for (double y : EXTREMES) {
                agree(name, x, y, ours, jdk);
            }
        }
    }

    private static void agree(String name, double x, double y, DoubleBinaryOperator ours, DoubleBinaryOperator jdk) {
        assertThat(ours.applyAsDouble(x, y))
                .as("%s(%s, %s)", name, x, y)
                .isEqualTo(Double.valueOf(jdk.applyAsDouble(x, y)));
    }
}
