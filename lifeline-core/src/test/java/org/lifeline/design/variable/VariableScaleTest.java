package org.lifeline.design.variable;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.lifeline.base.Interval;
import org.lifeline.base.InvalidInputException;

/** Where a share of the range of a variable lies, and the axes of a sweep. */
class VariableScaleTest {
    private static final DesignVariable LINEAR =
            DesignVariable.of("x", "m", Interval.of(1, 100), (design, value) -> design);

    @Test
    void aShareOfALinearScale() {
        assertThat(LINEAR.at(0)).isEqualTo(1);
        assertThat(LINEAR.at(0.5)).isCloseTo(50.5, within(1e-12));
        assertThat(LINEAR.at(1)).isEqualTo(100);
        assertThat(LINEAR.isWhole()).isFalse();
    }

    /** Halfway between 1 and 100 on a logarithmic scale is their geometric mean. */
    @Test
    void aShareOfALogarithmicScale() {
        DesignVariable log = LINEAR.logarithmic();
        assertThat(log.at(0)).isEqualTo(1);
        assertThat(log.at(0.5)).isCloseTo(10, within(1e-12));
        assertThat(log.at(1)).isEqualTo(100);
        assertThat(log.at(0.75) / log.at(0.5)).isCloseTo(log.at(0.5) / log.at(0.25), within(1e-12));
    }

    @Test
    void aWholeScaleHasWholeNumbersOnly() {
        DesignVariable whole = LINEAR.within(Interval.of(1, 4)).whole();
        assertThat(whole.isWhole()).isTrue();
        for (double share = 0; share <= 1; share += 0.01) {
            double value = whole.at(share);
            assertThat(value).isEqualTo(Math.floor(value)).isBetween(1.0, 4.0);
        }
        assertThat(Axis.even(whole, 50).values()).containsExactly(1.0, 2.0, 3.0, 4.0);
    }

    @ParameterizedTest
    @CsvSource({
        "1.4, 2.6, 2, 2",
        "0.5, 4.5, 1, 4",
        "-0.4, 1.9, 0, 1",
        "2, 2, 2, 2",
        "1.2, 3, 2, 3",
        "-2.5, -1.5, -2, -2"
    })
    void aWholeScaleStaysWithinBoundsThatAreNotWhole(double low, double high, double first, double last) {
        DesignVariable whole = LINEAR.within(Interval.of(low, high)).whole();
        Set<Double> seen = new TreeSet<>();
        for (int i = -1; i <= 101; i++) {
            double value = whole.at(0.01 * i);
            assertThat(value).isEqualTo(Math.rint(value)).isBetween(low, high);
            seen.add(value);
        }
        assertThat(seen).hasSize((int) (last - first) + 1).startsWith(first).endsWith(last);
        assertThat(whole.bounds()).isEqualTo(Interval.of(low, high));
    }

    @ParameterizedTest
    @CsvSource({"1.2, 1.8", "1.5, 1.5", "-0.9, -0.1"})
    void boundsWithoutAWholeNumberAreRefused(double low, double high) {
        Interval bounds = Interval.of(low, high);
        DesignVariable between = LINEAR.within(bounds);
        assertThatThrownBy(between::whole)
                .isInstanceOf(InvalidInputException.class)
                .hasMessage("bounds: " + bounds + ": must hold a whole number");
        DesignVariable whole = LINEAR.whole();
        assertThatThrownBy(() -> whole.within(bounds))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("bounds: " + bounds);
        assertThatThrownBy(() -> DesignVariables.workersTogether(bounds))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("must hold a whole number");
    }

    @ParameterizedTest
    @ValueSource(doubles = {-0.1, -1e300})
    void belowNothingIsTheLowerEndAndAboveOneTheUpper(double share) {
        for (DesignVariable v : List.of(LINEAR, LINEAR.logarithmic(), LINEAR.whole())) {
            assertThat(v.at(share)).isEqualTo(1);
            assertThat(v.at(1 - share)).isEqualTo(100);
        }
    }

    @Test
    void whatIsNoVariableIsRefused() {
        assertThatThrownBy(() -> DesignVariable.of(" ", "m", Interval.of(1, 2), (d, v) -> d))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("name");
        DesignVariable fromNothing = LINEAR.within(Interval.of(0, 2));
        assertThatThrownBy(fromNothing::logarithmic)
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("bounds")
                .hasMessageContaining("above zero");
        DesignVariable log = LINEAR.logarithmic();
        assertThatThrownBy(() -> log.within(Interval.of(-1, 2))).isInstanceOf(InvalidInputException.class);
    }

    @Test
    void aRangeIsExchangedInTheNewVariableOnly() {
        DesignVariable other = LINEAR.within(Interval.of(5, 6));
        assertThat(other.bounds()).isEqualTo(Interval.of(5, 6));
        assertThat(LINEAR.bounds()).isEqualTo(Interval.of(1, 100));
        assertThat(other.name()).isEqualTo("x");
        assertThat(other.unit()).isEqualTo("m");
        assertThat(other).hasToString("x [m]");
        assertThat(DesignVariable.of("n", "-", Interval.of(1, 2), (d, v) -> d)).hasToString("n");
    }

    @Test
    void evenAxesEndAtTheBounds() {
        Axis axis = Axis.even(LINEAR, 12);
        assertThat(axis.values()).hasSize(12).isSorted().startsWith(1.0).endsWith(100.0);
        for (int i = 1; i < 12; i++) {
            assertThat(axis.values().get(i) - axis.values().get(i - 1)).isCloseTo(9, within(1e-12));
        }
        assertThatThrownBy(() -> Axis.even(LINEAR, 1))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("count");
    }

    @ParameterizedTest
    @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY})
    void anAxisNamesTheValueThatIsNone(double bad) {
        assertThatThrownBy(() -> new Axis(LINEAR, List.of(1.0, bad)))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("values[1]");
    }

    @Test
    void anAxisHoldsACopy() {
        List<Double> values = Arrays.asList(1.0, 2.0);
        Axis axis = new Axis(LINEAR, values);
        values.set(0, 9.0);
        assertThat(axis.values()).containsExactly(1.0, 2.0);
        assertThatThrownBy(() -> new Axis(LINEAR, List.of()))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("at least one");
    }
}
