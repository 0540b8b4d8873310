package org.lifeline.base;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/**
 * Conversions against the definitions: the inch and the pound of the international yard and pound agreement (1959),
 * standard gravity of the 3rd CGPM (1901), and the factors of NIST Special Publication 811 (2008), appendix B.8
 * (recalled).
 */
class UnitsTest {
    @Test
    void lengths() {
        assertThat(Units.feet(1)).isEqualTo(0.3048);
        assertThat(Units.inches(12)).isCloseTo(Units.feet(1), within(1e-16));
        assertThat(Units.inches(1)).isEqualTo(0.0254);
        assertThat(Units.FOOT).isEqualTo(0.3048);
        assertThat(Units.INCH).isEqualTo(0.0254);
        assertThat(Units.millimetres(11.5)).isEqualTo(0.0115);
    }

    @Test
    void forces() {
        assertThat(Units.kN(6)).isEqualTo(6000);
        assertThat(Units.meganewtons(4.9)).isEqualTo(4.9e6);
        // NIST SP 811: 1 lbf = 4.448 222 N; exactly 4.4482216152605 N.
        assertThat(Units.poundsForce(1)).isCloseTo(4.4482216152605, within(1e-15));
        assertThat(Units.POUND_FORCE).isEqualTo(Units.poundsForce(1));
        // 29 CFR 1926.502: 1,800 pounds maximum arresting force is 8 kN, 900 pounds 4 kN, 5,000 pounds 22.2 kN.
        assertThat(Units.poundsForce(1800)).isCloseTo(8000, within(10.0));
        assertThat(Units.poundsForce(5000)).isCloseTo(22_200, within(50.0));
    }

    @Test
    void massesAndGravity() {
        assertThat(Units.pounds(1)).isEqualTo(0.45359237);
        assertThat(Units.POUND).isEqualTo(0.45359237);
        assertThat(Units.pounds(220)).isCloseTo(99.79, within(0.005));
        assertThat(Units.STANDARD_GRAVITY).isEqualTo(9.80665);
    }

    @Test
    void stiffnessStressAndArea() {
        assertThat(Units.kNPerMetre(300)).isEqualTo(300_000);
        assertThat(Units.gigapascals(131)).isEqualTo(131e9);
        assertThat(Units.squareMillimetres(548.39)).isCloseTo(548.39e-6, within(1e-18));
        // E A of 131 GPa on 548.39 mm² is 71.8 MN.
        assertThat(Units.gigapascals(131) * Units.squareMillimetres(548.39)).isCloseTo(71.839e6, within(1e3));
    }

    @Test
    void temperaturesAndAngles() {
        assertThat(Units.fahrenheit(32)).isZero();
        assertThat(Units.fahrenheit(212)).isCloseTo(100, within(1e-13));
        assertThat(Units.fahrenheit(-40)).isCloseTo(-40, within(1e-14));
        assertThat(Units.degrees(180)).isEqualTo(Math.PI);
        assertThat(Units.degrees(-90)).isEqualTo(-Math.PI / 2);
    }
}
