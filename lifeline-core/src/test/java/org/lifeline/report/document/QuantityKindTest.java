package org.lifeline.report.document;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.lifeline.base.UnitSystem;
import org.lifeline.base.Units;
import org.lifeline.base.unit.Dimension;

/** Quantities in both systems, correct to the last printed digit. */
class QuantityKindTest {
    private static final Quantities BOTH = Quantities.in(UnitChoice.BOTH);

    @Test
    void knownQuantities() {
        // 29 CFR 1926.502(d)(15): 5,000 lbf (22.2 kN); (d)(16)(ii): 1,800 lbf (8 kN); (d)(16)(iii): 6 ft (1.8 m).
        assertThat(BOTH.result(QuantityKind.FORCE, Units.poundsForce(5000))).isEqualTo("22.24 kN (5000 lbf)");
        assertThat(BOTH.result(QuantityKind.FORCE, Units.poundsForce(1800))).isEqualTo("8.01 kN (1800 lbf)");
        assertThat(BOTH.input(QuantityKind.LENGTH, Units.feet(6))).isEqualTo("1.8288 m (6 ft)");
        assertThat(BOTH.input(QuantityKind.TEMPERATURE, -40)).isEqualTo("−40 °C (−40 °F)");
        assertThat(BOTH.input(QuantityKind.MASS, Units.pounds(310))).isEqualTo("140.6136 kg (310 lb)");
        assertThat(BOTH.result(QuantityKind.SMALL_LENGTH, 0.0254))
                .isEqualTo("25.4 mm (1 in)".replace("1 in", "1.00 in"));
        assertThat(BOTH.result(QuantityKind.ANGLE, Math.toRadians(15))).isEqualTo("15.0°");
        assertThat(BOTH.result(QuantityKind.RATIO, 2)).isEqualTo("2.000");
        assertThat(BOTH.unit(QuantityKind.FORCE)).isEqualTo("kN (lbf)");
        assertThat(BOTH.unit(QuantityKind.TIME)).isEqualTo("s");
    }

    @Test
    void digitsDoNotPretend() {
        Quantities si = Quantities.in(UnitChoice.SI);
        assertThat(si.result(QuantityKind.FORCE, 18432.77)).isEqualTo("18.43 kN");
        assertThat(si.result(QuantityKind.FORCE, 33.86)).isEqualTo("0.03 kN");
        assertThat(si.result(QuantityKind.LENGTH, 1.38348)).isEqualTo("1.383 m");
        assertThat(si.result(QuantityKind.FORCE, 0)).isEqualTo("0.00 kN");
        assertThat(si.result(QuantityKind.FORCE, Double.POSITIVE_INFINITY)).isEqualTo("unlimited");
        assertThat(si.result(QuantityKind.FORCE, 123_456_789)).isEqualTo("123456.79 kN");
    }

    @Test
    void halvesAreRoundedUpFromTheExactDouble() {
        // 0.0005 is a little above a half of the last digit as a double, 1.0005 a little below.
        assertThat(QuantityKind.LENGTH.number(0.0005, UnitSystem.SI)).isEqualTo("0.001");
        assertThat(QuantityKind.LENGTH.number(1.0005, UnitSystem.SI)).isEqualTo("1.000");
        assertThat(QuantityKind.LENGTH.number(0.5, UnitSystem.SI)).isEqualTo("0.500");
        assertThat(QuantityKind.LENGTH.number(-0.0001, UnitSystem.SI)).isEqualTo("0.000");
    }

    @Test
    void lastDigitIsCorrectForRandomNumbers() {
        SplittableRandom random = new SplittableRandom(20);
        for (int i = 0; i < 3_000; i++) {
            double value = (random.nextBoolean() ? 1 : -1) * Math.pow(10, random.nextDouble(-6, 8));
            for (QuantityKind m : QuantityKind.values()) {
                for (UnitSystem s : UnitSystem.values()) {
                    BigDecimal printed = new BigDecimal(m.number(value, s).replace('−', '-'));
                    BigDecimal error = printed.subtract(m.exact(value, s)).abs();
                    BigDecimal half =
                            BigDecimal.ONE.movePointLeft(printed.scale()).divide(BigDecimal.valueOf(2));
                    assertThat(error).as("%s %s %s", value, m, s).isLessThanOrEqualTo(half);
                }
            }
        }
    }

    @Test
    void inputsComeBackFromWhatIsPrinted() {
        SplittableRandom random = new SplittableRandom(21);
        for (int i = 0; i < 1_000; i++) {
            // As somebody types it: at most five digits, in either system.
            double typed = random.nextInt(1, 100_000) / Math.pow(10, random.nextInt(0, 4));
            for (QuantityKind m : QuantityKind.values()) {
                for (UnitSystem s : UnitSystem.values()) {
                    double si = m.back(typed, s);
                    double read = Double.parseDouble(m.input(si, s).replace('−', '-'));
                    assertThat(read).as("%s %s %s", typed, m, s).isEqualTo(typed);
                }
            }
        }
    }

    @Test
    void conversionsAreThoseOfTheBase() {
        assertThat(QuantityKind.FORCE.in(Units.POUND_FORCE, UnitSystem.US_CUSTOMARY))
                .isCloseTo(1, within(1e-15));
        assertThat(QuantityKind.LENGTH.in(Units.FOOT, UnitSystem.US_CUSTOMARY)).isEqualTo(1);
        assertThat(QuantityKind.MASS.in(Units.POUND, UnitSystem.US_CUSTOMARY)).isEqualTo(1);
        assertThat(QuantityKind.TEMPERATURE.in(Units.fahrenheit(104), UnitSystem.US_CUSTOMARY))
                .isCloseTo(104, within(1e-12));
        assertThat(QuantityKind.ENERGY.in(Units.POUND_FORCE * Units.FOOT, UnitSystem.US_CUSTOMARY))
                .isCloseTo(1, within(1e-15));
        // Handbook identities (NIST SP 811, app. B): 1 lbf/in is 175.1268 N/m, 1 lb/ft is 1.488164 kg/m.
        assertThat(QuantityKind.STIFFNESS
                        .exact(175.126835, UnitSystem.US_CUSTOMARY)
                        .round(new MathContext(8)))
                .isEqualByComparingTo("1");
        assertThat(QuantityKind.MASS_PER_LENGTH.in(1.48816394, UnitSystem.US_CUSTOMARY))
                .isCloseTo(1, within(1e-8));
    }

    @Test
    void coherentUnitsMakeFormulasHold() {
        UnitSystem us = UnitSystem.US_CUSTOMARY;
        double weight = Dimension.MASS.in(100, us) * Dimension.WEIGHT_PER_MASS.in(9.80665, us);
        assertThat(weight).isCloseTo(Dimension.FORCE.in(980.665, us), within(1e-12));
        assertThat(Dimension.FORCE.in(6, us) * Dimension.LENGTH.in(7, us))
                .isCloseTo(Dimension.ENERGY.in(42, us), within(1e-12));
        assertThat(Dimension.FORCE_SQUARED_LENGTH.in(36 * 7, us))
                .isCloseTo(Math.pow(Dimension.FORCE.in(6, us), 2) * Dimension.LENGTH.in(7, us), within(1e-9));
        assertThat(Dimension.EXPANSION.in(12e-6, us)
                        * (Dimension.TEMPERATURE.in(40, us) - Dimension.TEMPERATURE.in(15, us)))
                .isCloseTo(12e-6 * 25, within(1e-15));
        assertThat(Dimension.LENGTH_PER_FORCE.in(2, us))
                .isCloseTo(Dimension.LENGTH.in(2, us) / Dimension.FORCE.in(1, us), within(1e-12));
    }
}
