package org.lifeline.base;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

/**
 * Conversions out of SI, and those of weights, stresses and energies. Independent numbers: the definitions of inch, foot
 * and pound (international yard and pound agreement, 1959, recalled), of standard gravity (3rd CGPM, 1901, recalled), and
 * the rounded factors of NIST Special Publication 811 (2008), appendix B.8 (recalled).
 */
class UnitsBackTest {
    private record Pair(String name, DoubleUnaryOperator in, DoubleUnaryOperator out, double si) {}

    /** Every pair with the SI value of one unit, worked out by hand from the definitions. */
    private static List<Pair> pairs() {
        return List.of(
                new Pair("mm", Units::millimetres, Units::toMillimetres, 0.001),
                new Pair("ft", Units::feet, Units::toFeet, 0.3048),
                new Pair("in", Units::inches, Units::toInches, 0.0254),
                new Pair("kN", Units::kN, Units::toKN, 1000),
                new Pair("MN", Units::meganewtons, Units::toMeganewtons, 1e6),
                new Pair("lbf", Units::poundsForce, Units::toPoundsForce, 4.4482216152605),
                new Pair("kip", Units::kips, Units::toKips, 4448.2216152605),
                new Pair("lb", Units::pounds, Units::toPounds, 0.45359237),
                new Pair("kN/m", Units::kNPerMetre, Units::toKNPerMetre, 1000),
                new Pair("lbf/ft", Units::poundsForcePerFoot, Units::toPoundsForcePerFoot, 14.593902937206366),
                new Pair("lbf/in", Units::poundsForcePerInch, Units::toPoundsForcePerInch, 175.1268352464764),
                new Pair("lb/ft", Units::poundsPerFoot, Units::toPoundsPerFoot, 1.4881639435695537),
                new Pair("MPa", Units::megapascals, Units::toMegapascals, 1e6),
                new Pair("GPa", Units::gigapascals, Units::toGigapascals, 1e9),
                new Pair("psi", Units::psi, Units::toPsi, 6894.757293168361),
                new Pair("ksi", Units::ksi, Units::toKsi, 6894757.293168361),
                new Pair("mm²", Units::squareMillimetres, Units::toSquareMillimetres, 1e-6),
                new Pair("ft·lbf", Units::footPoundsForce, Units::toFootPoundsForce, 1.3558179483314003),
                new Pair("°", Units::degrees, Units::toDegrees, Math.PI / 180));
    }

    @Test
    void oneOfEachUnitIsItsDefinitionAndTheWayBackIsOne() {
        // At most four roundings, each by half a unit in the last place: 4 · 1.1e-16 of the value.
        for (Pair p : pairs()) {
            assertThat(p.in.applyAsDouble(1)).as(p.name).isCloseTo(p.si, within(4.5e-16 * p.si));
            assertThat(p.out.applyAsDouble(p.si)).as(p.name).isCloseTo(1, within(4.5e-16));
        }
    }

    /** Conversions but that of temperatures are proportional: nothing is nothing, and twice is twice to the last digit. */
    @Test
    void conversionsAreProportional() {
        for (Pair p : pairs()) {
            assertThat(p.in.applyAsDouble(0)).as(p.name).isZero();
            assertThat(p.out.applyAsDouble(0)).as(p.name).isZero();
            assertThat(p.in.applyAsDouble(-2)).as(p.name).isEqualTo(-2 * p.in.applyAsDouble(1));
            assertThat(p.out.applyAsDouble(-2 * p.si)).as(p.name).isEqualTo(-2 * p.out.applyAsDouble(p.si));
        }
    }

    @Test
    void smallUnitsMakeUpLargeOnes() {
        assertThat(Units.inches(12)).isCloseTo(Units.feet(1), within(1e-16));
        assertThat(Units.poundsForce(1000)).isCloseTo(Units.kips(1), within(1e-12));
        assertThat(Units.psi(1000)).isCloseTo(Units.ksi(1), within(2e-9));
        assertThat(Units.poundsForcePerFoot(12)).isCloseTo(Units.poundsForcePerInch(1), within(5e-14));
        assertThat(Units.megapascals(1000)).isEqualTo(Units.gigapascals(1));
        assertThat(Units.kN(1000)).isEqualTo(Units.meganewtons(1));
        // A pound weighs one pound-force under standard gravity, a foot of it a pound-force per foot.
        assertThat(Units.pounds(7) * Units.STANDARD_GRAVITY).isCloseTo(Units.poundsForce(7), within(1e-14));
        assertThat(Units.poundsPerFoot(7) * Units.STANDARD_GRAVITY)
                .isCloseTo(Units.poundsForcePerFoot(7), within(5e-14));
        // One pound-force along one foot is a foot-pound; on one square inch a psi.
        assertThat(Units.poundsForce(1) * Units.feet(1)).isEqualTo(Units.footPoundsForce(1));
        assertThat(Units.poundsForce(1) / (Units.inches(1) * Units.inches(1))).isEqualTo(Units.psi(1));
    }

    /** Fixed points of both scales: water freezes at 32 °F, boils at 212 °F; -40 and absolute zero at -459.67 °F. */
    @Test
    void temperaturesMeetTheirFixedPoints() {
        assertThat(Units.toFahrenheit(0)).isEqualTo(32);
        assertThat(Units.toFahrenheit(100)).isEqualTo(212);
        assertThat(Units.toFahrenheit(-40)).isEqualTo(-40);
        assertThat(Units.toFahrenheit(-273.15)).isCloseTo(-459.67, within(1e-12));
        assertThat(Units.fahrenheit(-459.67)).isCloseTo(-273.15, within(1e-13));
        // A difference of 9 °F is one of 5 K.
        assertThat(Units.fahrenheit(59) - Units.fahrenheit(50)).isCloseTo(5, within(1e-14));
    }

    /** Inputs of the check of statics 1 of the published values: 1000 ft, 0.85 in², 19 000 ksi, 3.16 lb/ft, 8 kip. */
    @Test
    void aPublishedCableIsTheSameInBothSystems() {
        assertThat(Units.feet(1000)).isCloseTo(304.8, within(1e-12));
        assertThat(0.85 * Units.inches(1) * Units.inches(1)).isCloseTo(Units.squareMillimetres(548.39), within(5e-9));
        assertThat(Units.toGigapascals(Units.ksi(19_000))).isCloseTo(131.0, within(0.05));
        assertThat(Units.poundsForcePerFoot(3.16)).isCloseTo(46.12, within(0.005));
        assertThat(Units.toKN(Units.kips(8))).isCloseTo(35.586, within(5e-4));
    }

    @Test
    void aFullTurnIsTwoPi() {
        assertThat(Units.degrees(360)).isEqualTo(2 * Math.PI);
        assertThat(Units.toDegrees(Math.PI)).isEqualTo(180);
        assertThat(Units.toDegrees(-Math.PI / 3)).isCloseTo(-60, within(1e-14));
    }
}
