package org.lifeline.base.unit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.lifeline.base.InputRule;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.UnitSystem;
import org.lifeline.base.Units;

/** Conversions both ways, and quantities as text both ways. */
class UnitTest {
    private static final long SEED = 20281128;

    /** A conversion of {@link Units} and the way back, with the unit of the table that it must agree with. */
    private record Pair(DoubleUnaryOperator in, DoubleUnaryOperator out, Unit unit) {}

    private static List<Pair> pairs() {
        return List.of(
                new Pair(Units::millimetres, Units::toMillimetres, Unit.MILLIMETRE),
                new Pair(Units::feet, Units::toFeet, Unit.FOOT),
                new Pair(Units::inches, Units::toInches, Unit.INCH),
                new Pair(Units::kN, Units::toKN, Unit.KILONEWTON),
                new Pair(Units::meganewtons, Units::toMeganewtons, Unit.MEGANEWTON),
                new Pair(Units::poundsForce, Units::toPoundsForce, Unit.POUND_FORCE),
                new Pair(Units::kips, Units::toKips, Unit.KIP),
                new Pair(Units::pounds, Units::toPounds, Unit.POUND),
                new Pair(Units::kNPerMetre, Units::toKNPerMetre, Unit.KILONEWTON_PER_METRE),
                new Pair(Units::poundsForcePerFoot, Units::toPoundsForcePerFoot, Unit.POUND_FORCE_PER_FOOT),
                new Pair(Units::poundsForcePerInch, Units::toPoundsForcePerInch, Unit.POUND_FORCE_PER_INCH),
                new Pair(Units::poundsPerFoot, Units::toPoundsPerFoot, Unit.POUND_PER_FOOT),
                new Pair(Units::megapascals, Units::toMegapascals, Unit.MEGAPASCAL),
                new Pair(Units::gigapascals, Units::toGigapascals, Unit.GIGAPASCAL),
                new Pair(Units::psi, Units::toPsi, Unit.POUND_PER_SQUARE_INCH),
                new Pair(Units::ksi, Units::toKsi, Unit.KIP_PER_SQUARE_INCH),
                new Pair(Units::squareMillimetres, Units::toSquareMillimetres, Unit.SQUARE_MILLIMETRE),
                new Pair(Units::footPoundsForce, Units::toFootPoundsForce, Unit.FOOT_POUND_FORCE),
                new Pair(Units::fahrenheit, Units::toFahrenheit, Unit.FAHRENHEIT),
                new Pair(Units::degrees, Units::toDegrees, Unit.DEGREE));
    }

    /** Quick conversions agree with the exact ones of the table to the rounding of a few operations, both ways. */
    @Test
    void quickConversionsAgreeWithTheTable() {
        Random random = new Random(SEED);
        for (Pair each : pairs()) {
            for (int i = 0; i < 200; i++) {
                double x = 200 * random.nextDouble() - 100;
                String what = each.unit + " of " + x + ", seed " + SEED;
                double si = each.unit.toSi(x);
                // Three roundings, against the largest term: 32 °F in a temperature.
                assertThat(each.in.applyAsDouble(x))
                        .as(what)
                        .isEqualTo(si, within(1e-15 * Math.abs(si) + 1e-14 * scale(each)));
                assertThat(each.out.applyAsDouble(si)).as(what).isEqualTo(x, within(1e-15 * (Math.abs(x) + 200)));
                assertThat(each.unit.fromSi(si))
                        .as(what)
                        .isEqualTo(x, within(2 * Math.ulp(x) + 1e-14 * offset(each.unit)));
            }
        }
    }

    private static double scale(Pair pair) {
        return Math.abs(pair.unit.toSi(1) - pair.unit.toSi(0)) * offset(pair.unit);
    }

    private static double offset(Unit unit) {
        return unit == Unit.FAHRENHEIT ? 32 : 0;
    }

    /** Rounded factors of NIST Special Publication 811 (2008), App. B.8, seven digits; recalled. */
    @Test
    void publishedFactors() {
        assertThat(Units.kips(1)).isCloseTo(4448.222, within(5e-4));
        assertThat(Units.ksi(1)).isCloseTo(6.894757e6, within(0.5));
        assertThat(Units.psi(1)).isCloseTo(6894.757, within(5e-4));
        assertThat(Units.poundsPerFoot(1)).isCloseTo(1.488164, within(5e-7));
        assertThat(Units.poundsForcePerFoot(1)).isCloseTo(14.59390, within(5e-6));
        assertThat(Units.footPoundsForce(1)).isCloseTo(1.355818, within(5e-7));
    }

    /** What is printed with all its digits is read back as the same double; fuzzed over 40 orders of magnitude. */
    @ParameterizedTest
    @EnumSource(Unit.class)
    void whatIsPrintedIsReadBack(Unit unit) throws QuantityText.RuleBroken {
        if (unit == Unit.ONE) {
            return; // a bare number has no unit to be read by
        }
        Random random = new Random(SEED);
        for (int i = 0; i < 300; i++) {
            double si = random.nextGaussian() * Math.pow(10, random.nextInt(13) - 6);
            String text = unit.print(si);
            assertThat(QuantityText.parse(text, unit.dimension()).si())
                    .as(text + ", seed " + SEED)
                    .isEqualTo(si);
        }
    }

    @Test
    void printsWithDecimals() {
        assertThat(Unit.KILONEWTON.print(21_086.4, 2)).isEqualTo("21.09 kN");
        assertThat(Unit.POUND_FORCE.print(Units.kN(6), 0)).isEqualTo("1349 lbf");
        assertThat(Unit.CELSIUS.print(-30, 0)).isEqualTo("-30 °C");
        assertThat(Unit.KELVIN.print(15)).isEqualTo("288.15 K");
        assertThat(Unit.FAHRENHEIT.print(15)).isEqualTo("59 °F");
        assertThat(Unit.KILONEWTON.print(3500)).isEqualTo("3.5 kN");
        assertThat(Unit.METRE.print(1e6)).isEqualTo("1000000 m");
        assertThat(Unit.ONE.print(0.25)).isEqualTo("0.25");
        assertThat(Unit.NEWTON_PER_METRE.print(Double.POSITIVE_INFINITY)).isEqualTo("Infinity N/m");
    }

    @Test
    void aTextThatIsNoQuantityIsAViolation() {
        assertThat(QuantityText.read("pretension", "1.5 kip", Dimension.FORCE)).isCloseTo(6672.33242289, within(1e-8));
        assertThatThrownBy(() -> QuantityText.read("pretension", "1.5 lb", Dimension.FORCE))
                .isInstanceOfSatisfying(InvalidInputException.class, e -> {
                    assertThat(e.violations().get(0).code()).isEqualTo(InputRule.NOT_A_QUANTITY);
                    assertThat(e)
                            .hasMessageStartingWith("pretension: \"1.5 lb\": is a mass (lb); must be a force in N");
                });
    }

    /** The coherent units of a dimension agree with the table of units, where both have one. */
    @Test
    void coherentUnitsAgreeWithTheTable() {
        assertThat(Unit.POUND_FORCE_PER_FOOT.fromSi(1234.5))
                .isEqualTo(Dimension.FORCE_PER_LENGTH.in(1234.5, UnitSystem.US_CUSTOMARY));
        assertThat(Unit.POUND_FORCE.fromSi(1234.5)).isEqualTo(Dimension.FORCE.in(1234.5, UnitSystem.US_CUSTOMARY));
        assertThat(Unit.FAHRENHEIT.fromSi(-12.3)).isEqualTo(Dimension.TEMPERATURE.in(-12.3, UnitSystem.US_CUSTOMARY));
        assertThat(144 * Unit.POUND_PER_SQUARE_INCH.fromSi(6894.757))
                .isEqualTo(Dimension.STRESS.in(6894.757, UnitSystem.US_CUSTOMARY), within(1e-12));
        for (Dimension each : Dimension.values()) {
            assertThat(each.label()).isNotBlank();
            assertThat(each.withArticle()).endsWith(each.label());
        }
    }
}
