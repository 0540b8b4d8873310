package org.lifeline.analysis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.lifeline.analysis.motion.WorkerPeaks;
import org.lifeline.base.Units;
import org.lifeline.model.absorber.LoadingCurve;
import org.lifeline.testing.StiffLine;
import org.lifeline.testing.StiffLine.Body;

/** Masses dropped on springs, as simulations: the line is so stiff that only the connecting subsystem gives way. */
class ImpactTest {
    /** One pound-second squared per inch as a mass [kg]. */
    private static final double SLINCH = Units.POUND_FORCE / Units.INCH;

    /**
     * Thomson, Vibration Theory and Applications, ex. 4.6-1: m 0.5 lb·s²/in, k 1973.92 lb/in, free fall 1 in, g 386 in/s²:
     * maximum 1.5506 in at 0.10037 s (published). In closed form it is 1.55067 in at 0.10044 s: the printed time is good
     * to 0.1 %.
     */
    @Test
    void massDroppedOnASpring() {
        double k = 1973.92 * Units.POUND_FORCE / Units.INCH;
        TransientResult r = StiffLine.drop(
                new Body(0.5 * SLINCH, Units.INCH, Units.inches(386), 1e9), LoadingCurve.spring(k), 0.11);
        WorkerPeaks w = r.firstCatch().worker("w");
        double fallen = r.history().worker("w").z()[0] - w.lowest().value();
        assertThat(fallen / Units.INCH).isCloseTo(1.5506, within(2e-4));
        assertThat(w.lowest().time()).isCloseTo(0.10037, Percentage.withPercentage(0.1));
        assertThat(w.lowest().time()).isCloseTo(0.100445, Percentage.withPercentage(0.02));
        assertThat(r.relativeDrift()).isLessThan(1e-4);
    }

    /**
     * Gere and Goodno, Mechanics of Materials, prob. 2.8-1: W 150 lb falls 2 in on a rod of 4 ft, 0.75 in², 30e6 psi:
     * 0.0361 in, 22 600 psi, impact factor 113 (published, three digits).
     */
    @Test
    void weightDroppedOnARod() {
        double k = 30e6 * 0.75 / 48 * Units.POUND_FORCE / Units.INCH;
        TransientResult r = StiffLine.drop(
                new Body(Units.pounds(150), 2 * Units.INCH, Units.STANDARD_GRAVITY, 1e12),
                LoadingCurve.spring(k),
                0.11);
        WorkerPeaks w = r.firstCatch().worker("w");
        assertThat(w.extension() / Units.INCH).isCloseTo(0.0361, within(5e-5));
        assertThat(w.force().value() / Units.POUND_FORCE / 0.75).isCloseTo(22600, within(50.0));
        assertThat(w.force().value() / Units.POUND_FORCE / 150).isCloseTo(113, within(0.5));
    }

    /** Suddenly applied load: exactly twice the static deflection (Thomson p. 102, published: 2 in), after half a period. */
    @Test
    void suddenlyAppliedLoadDeflectsTwice() {
        double k = 5e5;
        double mass = 120;
        TransientResult r =
                StiffLine.drop(new Body(mass, 0, Units.STANDARD_GRAVITY, 1e10), LoadingCurve.spring(k), 0.06);
        WorkerPeaks w = r.firstCatch().worker("w");
        double rest = mass * Units.STANDARD_GRAVITY / k;
        assertThat(w.extension() / rest).isCloseTo(2, within(1e-3));
        assertThat(w.force().value() / (mass * Units.STANDARD_GRAVITY)).isCloseTo(2, within(1e-3));
        assertThat(w.lowest().time()).isCloseTo(Math.PI * Math.sqrt(mass / k), Percentage.withPercentage(0.1));
    }

    /**
     * Elastic–plastic response to a suddenly applied constant load F: with yield resistance R and yield deflection x_e the
     * greatest deflection is x_m = x_e/(2 (1 − F/R)) (Biggs, Introduction to Structural Dynamics, McGraw-Hill 1964, ch. 2,
     * where charts are drawn from it; recalled, and follows from F x_m = R (x_m − x_e/2)). The time of the maximum in
     * closed form: elastic up to x_e, then with the constant deceleration (R − F)/m.
     */
    @Test
    void elasticPlasticResponseToAStep() {
        double g = Units.STANDARD_GRAVITY;
        double mass = 100;
        double weight = mass * g;
        double k = 1e5;
        for (double ratio : new double[] {0.6, 0.75, 0.9}) {
            double resistance = weight / ratio;
            LoadingCurve curve = LoadingCurve.through(
                    List.of(new LoadingCurve.Corner(0, resistance), new LoadingCurve.Corner(1, resistance)), k, 1e6);
            double yield = resistance / k;
            double omega = Math.sqrt(k / mass);
            double phase = Math.acos(1 - yield * k / weight);
            double speed = weight / k * omega * Math.sin(phase);
            double end = phase / omega + speed * mass / (resistance - weight);
            TransientResult r = StiffLine.drop(new Body(mass, 0, g, 1e9), curve, end + 0.02);
            WorkerPeaks w = r.firstCatch().worker("w");
            assertThat(w.extension() / yield)
                    .as("F/R = %s", ratio)
                    .isCloseTo(1 / (2 * (1 - ratio)), Percentage.withPercentage(0.1));
            assertThat(w.force().value()).isCloseTo(resistance, within(1e-6 * resistance));
            assertThat(w.lowest().time()).as("F/R = %s", ratio).isCloseTo(end, Percentage.withPercentage(0.2));
            assertThat(r.arrest().bottomedOut()).isFalse();
        }
    }

    /** Light string with a mass at its middle: ω = √(4T/(ML)) (recalled); the lowest point comes after half a period. */
    @Test
    void lightStringWithAMassAtItsMiddle() {
        double tension = 1000;
        double length = 4;
        double mass = 50;
        double omega = Math.sqrt(4 * tension / (mass * length));
        assertThat(StiffLine.halfPeriodOfString(tension, mass, length))
                .isCloseTo(Math.PI / omega, Percentage.withPercentage(0.3));
    }
}
