package org.lifeline.report.document;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.lifeline.base.UnitSystem;

/** How quantities read in the units that were chosen. */
class QuantitiesTest {
    private static final Quantities SI = Quantities.in(UnitChoice.SI);
    private static final Quantities US = Quantities.in(UnitChoice.US_CUSTOMARY);
    private static final Quantities BOTH = Quantities.in(UnitChoice.BOTH);

    @ParameterizedTest
    @CsvSource({
        "FORCE, 6000, 6.00 kN, 1349 lbf",
        "LENGTH, 2.5, 2.500 m, 8.202 ft",
        "SMALL_LENGTH, 0.012, 12.0 mm, 0.47 in",
        "ENERGY, 2000, 2000 J, 1475 ft·lbf",
        "MASS, 100, 100.0 kg, 220.5 lb",
        "TEMPERATURE, 20, 20.0 °C, 68.0 °F",
        "TIME, 0.25, 0.250 s, 0.250 s",
        "RATIO, 0.5, 0.5000, 0.5000",
        "ANGLE, 0.5235987755982988, 30.0°, 30.0°",
    })
    void aResultHasTheDigitsOfItsKind(QuantityKind kind, double value, String si, String us) {
        assertThat(SI.result(kind, value)).isEqualTo(si);
        assertThat(US.result(kind, value)).isEqualTo(us);
        assertThat(BOTH.result(kind, value)).isEqualTo(si.equals(us) ? si : si + " (" + us + ")");
    }

    @ParameterizedTest
    @EnumSource(QuantityKind.class)
    void whatIsNoNumberIsAWordWithoutUnit(QuantityKind kind) {
        for (Quantities q : new Quantities[] {SI, US, BOTH}) {
            assertThat(q.result(kind, Double.POSITIVE_INFINITY)).isEqualTo("unlimited");
            assertThat(q.result(kind, Double.NaN)).isEqualTo("none").isEqualTo(q.input(kind, Double.NaN));
            assertThat(q.input(kind, Double.POSITIVE_INFINITY)).isEqualTo("unlimited");
        }
        assertThat(SI.result(kind, Double.NEGATIVE_INFINITY)).isEqualTo("−unlimited");
    }

    @ParameterizedTest
    @EnumSource(QuantityKind.class)
    void theUnitOfAHeadingIsTheOneBehindTheNumber(QuantityKind kind) {
        for (Quantities q : new Quantities[] {SI, US}) {
            assertThat(q.input(kind, 1)).endsWith(q.unit(kind));
        }
        assertThat(BOTH.unit(kind)).startsWith(SI.unit(kind));
        if (SI.unit(kind).equals(US.unit(kind))) {
            assertThat(BOTH.unit(kind)).isEqualTo(SI.unit(kind));
        } else {
            assertThat(BOTH.unit(kind)).isEqualTo(SI.unit(kind) + " (" + US.unit(kind) + ")");
        }
    }

    @Test
    void theChoiceIsKept() {
        assertThat(BOTH.choice()).isEqualTo(UnitChoice.BOTH);
        assertThat(UnitChoice.BOTH.systems()).containsExactly(UnitSystem.SI, UnitSystem.US_CUSTOMARY);
        assertThat(UnitChoice.BOTH.leading()).isEqualTo(UnitSystem.SI);
        assertThat(UnitChoice.US_CUSTOMARY.leading()).isEqualTo(UnitSystem.US_CUSTOMARY);
        assertThat(UnitChoice.SI.systems()).containsExactly(UnitSystem.SI);
    }

    @ParameterizedTest
    @EnumSource(QuantityKind.class)
    void aMinusIsATrueOne(QuantityKind kind) {
        assertThat(SI.result(kind, -123456)).startsWith("−").doesNotContain("-");
        assertThat(SI.input(kind, -123456)).startsWith("−").doesNotContain("-");
        // A number that is rounded to zero has no sign.
        assertThat(SI.result(QuantityKind.FORCE, -0.001)).isEqualTo("0.00 kN");
    }

    /** There and back, over all kinds: converting loses nothing beyond the last place. */
    @Test
    void conversionsAreInverse() {
        for (long seed = 1; seed <= 500; seed++) {
            SplittableRandom r = new SplittableRandom(seed);
            double value = (r.nextBoolean() ? 1 : -1) * Math.pow(10, r.nextDouble(-6, 8));
            for (QuantityKind kind : QuantityKind.values()) {
                for (UnitSystem system : UnitSystem.values()) {
                    double back = kind.back(kind.in(value, system), system);
                    double shift = kind == QuantityKind.TEMPERATURE ? 32 : 0;
                    assertThat(back)
                            .as("seed %d: %s in %s", seed, kind, system)
                            .isCloseTo(value, within(4e-16 * (Math.abs(value) + shift)));
                }
            }
        }
    }

    @Test
    void largeNumbersAreNotRoundedLeftOfThePoint() {
        assertThat(SI.result(QuantityKind.STIFFNESS, 123_456_789)).isEqualTo("123457 kN/m");
        assertThat(SI.result(QuantityKind.MASS, 123_456.7)).isEqualTo("123457 kg");
        assertThat(QuantityKind.MASS.decimals(1234.5, UnitSystem.SI)).isZero();
        assertThat(QuantityKind.MASS.decimals(0.012345, UnitSystem.SI)).isEqualTo(5);
        assertThat(QuantityKind.MASS.decimals(0, UnitSystem.SI)).isZero();
        // 9.9996 becomes 10.00 with four digits: the number of digits counts after rounding.
        assertThat(SI.result(QuantityKind.MASS, 9.99996)).isEqualTo("10.00 kg");
    }

    @Test
    void roundingIsHalfUpAwayFromZero() {
        assertThat(QuantityKind.ENERGY.rounded(2.5, UnitSystem.SI, 0)).isEqualByComparingTo("3");
        assertThat(QuantityKind.ENERGY.rounded(-2.5, UnitSystem.SI, 0)).isEqualByComparingTo("-3");
        assertThat(QuantityKind.ENERGY.rounded(2.5, UnitSystem.SI, 1)).isEqualByComparingTo("2.5");
        assertThat(QuantityKind.show(new BigDecimal("-1.50"))).isEqualTo("−1.50");
        assertThat(QuantityKind.show(new BigDecimal("0.00"))).isEqualTo("0.00");
    }

    @Test
    void anInputIsAsShortAsItIs() {
        assertThat(SI.input(QuantityKind.LENGTH, 6)).isEqualTo("6 m");
        assertThat(SI.input(QuantityKind.LENGTH, 6.25)).isEqualTo("6.25 m");
        assertThat(SI.input(QuantityKind.FORCE, 1_500_000)).isEqualTo("1500 kN");
        assertThat(SI.input(QuantityKind.FORCE, 1_500_000_000)).isEqualTo("1500000 kN");
        assertThat(SI.input(QuantityKind.LENGTH, 1.0 / 3)).isEqualTo("0.3333333 m");
    }
}
