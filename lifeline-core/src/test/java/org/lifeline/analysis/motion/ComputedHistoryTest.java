package org.lifeline.analysis.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.lifeline.analysis.TransientArrest;
import org.lifeline.analysis.TransientResult;
import org.lifeline.base.Point;
import org.lifeline.model.Attachment;
import org.lifeline.model.Connection;
import org.lifeline.model.Fall;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Place;
import org.lifeline.model.Worker;
import org.lifeline.model.absorber.LoadingCurve;
import org.lifeline.model.cable.Cable;

/** The histories of one computed arrest on a symmetric line against mechanics that needs no solver. */
class ComputedHistoryTest {
    private static final double G = 9.80665;
    private static final double MASS = 100;
    private static final double STIFFNESS = 3e4;
    private static final double FREE_FALL = 1.2;
    private static final double TAUT = 1.8;
    private static final TransientResult RESULT = run();
    private static final MotionHistory HISTORY = RESULT.history();

    private static TransientResult run() {
        Lifeline line = Lifeline.builder()
                .cable(Cable.builder().massPerLength(0.4).axialStiffness(3e6).build())
                .endAnchor("a", Point.of(0, 0, 10))
                .endAnchor("b", Point.of(12, 0, 10))
                .pretension(1500)
                .build();
        Worker worker = Worker.builder("w")
                .mass(MASS)
                .walkingLevel(8.5)
                .attachment(Attachment.GRIPPED)
                .connection(Connection.plainLanyard(TAUT, LoadingCurve.spring(STIFFNESS)))
                .build();
        Fall fall = Fall.builder("f")
                .at(Place.of(1, 6))
                .faller(worker)
                .freeFall(FREE_FALL)
                .build();
        return TransientArrest.withDefaults()
                .withSegmentLength(0.3)
                .withRefinements(0)
                .withSampling(1e-3)
                .withEndAfterFirstCatch(0.1)
                .solve(line, fall);
    }

    private static double largest(double[] values) {
        return Arrays.stream(values).max().orElseThrow();
    }

    @Test
    void theWorkerFallsFreelyUntilTheCatch() {
        double[] t = HISTORY.times();
        double[] z = HISTORY.worker("w").z();
        double end = Math.sqrt(2 * FREE_FALL / G);
        int seen = 0;
        for (int i = 0; i < t.length && t[i] < end; i++) {
            assertThat(z[i]).as("at %s s", t[i]).isCloseTo(z[0] - 0.5 * G * t[i] * t[i], within(1e-9));
            seen++;
        }
        assertThat(seen).isGreaterThan(100);
    }

    /** Fall and line are in one vertical plane: nothing leaves it, and nothing tells left from right. */
    @Test
    void theMotionIsSymmetric() {
        WorkerHistory w = HISTORY.worker("w");
        SupportHistory a = HISTORY.support("a");
        SupportHistory b = HISTORY.support("b");
        for (int i = 0; i < HISTORY.times().length; i++) {
            assertThat(w.y()[i]).isZero();
            assertThat(w.x()[i]).isCloseTo(6, within(1e-9));
            assertThat(w.lineX()[i]).isCloseTo(6, within(1e-6));
            assertThat(a.force()[i]).isCloseTo(b.force()[i], within(1e-6 * b.force()[i] + 1e-6));
            assertThat(a.forceAlong(0)[i]).isCloseTo(-b.forceAlong(0)[i], within(1e-6 * b.force()[i] + 1e-6));
            if (i % 50 != 0) {
                i += 7;
            }
        }
    }

    /** F = k x, and x is what the straight way from line to worker has beyond the taut length. */
    @Test
    void forceFollowsFromThePositions() {
        WorkerHistory w = HISTORY.worker("w");
        double taut = TAUT;
        double[] force = w.force();
        for (int i = 0; i < force.length; i += 10) {
            double reach = Math.abs(w.lineZ()[i] - w.z()[i]);
            double stretch = w.extension()[i];
            assertThat(force[i]).isCloseTo(STIFFNESS * stretch, within(1e-6 + 1e-9 * force[i]));
            if (stretch > 0) {
                assertThat(reach - taut).isCloseTo(stretch, within(1e-6));
            }
        }
    }

    /** Rigid supports hold a cable at rest at first: the force on them is the pretension. */
    @Test
    void beforeTheFallTheSupportsHoldThePretension() {
        assertThat(HISTORY.support("a").tensionBehind()[0]).isCloseTo(1500, within(15.0));
        // Half of the first segment hangs on the support itself.
        double half = 0.5 * 0.3 * 0.4 * G;
        assertThat(HISTORY.support("a").force()[0])
                .isCloseTo(HISTORY.support("a").tensionBehind()[0], within(half));
        assertThat(Arrays.stream(HISTORY.support("a").tensionBefore()).allMatch(v -> v == 0))
                .isTrue();
        assertThat(Arrays.stream(HISTORY.support("b").tensionBehind()).allMatch(v -> v == 0))
                .isTrue();
        assertThat(Arrays.stream(HISTORY.support("a").displacement(2)).allMatch(v -> v == 0))
                .isTrue();
        assertThat(Arrays.stream(HISTORY.support("a").inlineExtension()).allMatch(v -> v == 0))
                .isTrue();
    }

    @Test
    void peaksAreNotBelowTheirSamples() {
        MotionPeaks peaks = RESULT.wholeRun();
        assertThat(largest(HISTORY.worker("w").force()))
                .isBetween(
                        0.98 * peaks.worker("w").force().value(),
                        peaks.worker("w").force().value());
        assertThat(largest(HISTORY.support("a").force()))
                .isLessThanOrEqualTo(peaks.support("a").force().value());
        assertThat(largest(HISTORY.support("a").tensionBehind()))
                .isLessThanOrEqualTo(peaks.support("a").tensionBehind());
        assertThat(peaks.support("a").tensionBehind())
                .isLessThanOrEqualTo(peaks.tension().value());
        assertThat(Arrays.stream(HISTORY.worker("w").z()).min().orElseThrow())
                .isGreaterThanOrEqualTo(peaks.worker("w").lowest().value());
    }

    /** The impulse of all forces is the change of momentum: ∫(m g − F) dt = m v, by trapezoids. */
    @Test
    void theImpulseOnTheWorkerIsItsMomentum() {
        WorkerHistory w = HISTORY.worker("w");
        double[] t = HISTORY.times();
        double[] force = w.force();
        double[] z = w.z();
        double impulse = 0;
        int last = t.length - 2;
        for (int i = 1; i <= last; i++) {
            impulse += (MASS * G - 0.5 * (force[i] + force[i - 1])) * (t[i] - t[i - 1]);
        }
        double speed = -(z[last + 1] - z[last - 1]) / (t[last + 1] - t[last - 1]);
        double size = MASS * Math.sqrt(2 * G * FREE_FALL);
        assertThat(impulse).isCloseTo(MASS * speed, within(0.01 * size));
    }

    /** The drift of the account is small against the energy of the fall, and the friction of no support is no heat. */
    @Test
    void theAccountCloses() {
        EnergyHistory e = HISTORY.energies();
        double fall = MASS * G * RESULT.arrest().totalFallDistance();
        for (double each : e.drift()) {
            assertThat(Math.abs(each)).isLessThan(2e-3 * fall);
        }
        assertThat(Arrays.stream(e.of(EnergyHistory.Part.FRICTION)).allMatch(v -> v == 0))
                .isTrue();
        assertThat(Arrays.stream(e.of(EnergyHistory.Part.ANCHORS)).allMatch(v -> v == 0))
                .isTrue();
        assertThat(Arrays.stream(e.of(EnergyHistory.Part.INLINE_ABSORBERS)).allMatch(v -> v == 0))
                .isTrue();
        double[] damping = e.of(EnergyHistory.Part.DAMPING);
        for (int i = 1; i < damping.length; i++) {
            assertThat(damping[i]).as("heat does not come back").isGreaterThanOrEqualTo(damping[i - 1] - 1e-6 * fall);
        }
        // ½ k x² is what the lanyard holds.
        double[] held = e.of(EnergyHistory.Part.CONNECTIONS);
        double[] x = HISTORY.worker("w").extension();
        for (int i = 0; i < held.length; i += 20) {
            assertThat(held[i]).isCloseTo(0.5 * STIFFNESS * x[i] * x[i], within(2e-3 * fall));
        }
    }
}
