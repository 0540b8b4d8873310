package org.lifeline.internal.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.LUDecomposition;
import org.junit.jupiter.api.Test;
import org.lifeline.base.Point;
import org.lifeline.internal.motion.law.TensionStrainLaw;
import org.lifeline.internal.path.LineModel;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Passage;
import org.lifeline.model.absorber.LoadingCurve;
import org.lifeline.model.cable.Cable;

/** The loops of a step, and free motion. */
class ChainStepTest {
    private static final double G = 9.80665;

    /** The elimination from both ends against a dense solver of Commons Math, for even and odd numbers. */
    @Test
    void eliminationFromBothEndsSolvesTheSystem() {
        long seed = 7;
        Random random = new Random(seed);
        for (int n = 2; n < 40; n++) {
            LumpedMassChain c = new LumpedMassChain(n + 2, 1, G, law(), 1e-3);
            c.nodes = n + 1;
            Array2DRowRealMatrix dense = new Array2DRowRealMatrix(n, n);
            ArrayRealVector right = new ArrayRealVector(n);
            for (int i = 0; i < n; i++) {
                c.diagonal[i] = 2 + random.nextDouble();
                c.lower[i] = i == 0 ? 0 : random.nextDouble();
                c.upper[i] = i == n - 1 ? 0 : random.nextDouble();
                c.rate[i] = random.nextGaussian();
                dense.setEntry(i, i, c.diagonal[i]);
                if (i > 0) {
                    dense.setEntry(i, i - 1, -c.lower[i]);
                }
                if (i < n - 1) {
                    dense.setEntry(i, i + 1, -c.upper[i]);
                }
                right.setEntry(i, c.rate[i]);
            }
            double[] expected =
                    new LUDecomposition(dense).getSolver().solve(right).toArray();
            ChainStep.solve(c);
            for (int i = 0; i < n; i++) {
                assertThat(c.damping[i]).as("seed %d, n %d", seed, n).isCloseTo(expected[i], within(1e-12));
            }
        }
    }

    private static TensionStrainLaw law() {
        return new TensionStrainLaw(
                Cable.builder().massPerLength(1).axialStiffness(1e6).build().elongation());
    }

    private static LineModel line(double tension) {
        return new LineModel(Lifeline.builder()
                .cable(Cable.builder().massPerLength(0.5).axialStiffness(4e6).build())
                .endAnchor("a", Point.of(0, 0, 10))
                .intermediateAnchor("p", Point.of(10, 0, 10), Passage.friction(0.2))
                .endAnchor("b", Point.of(20, 4, 10.5))
                .pretension(tension)
                .build());
    }

    /** A line at rest stays at rest: what moves is of the second order in the segments. */
    @Test
    void aLineAtRestStaysAtRest() {
        for (double tension : new double[] {200, 2000}) {
            MotionSystem s = new MotionSystem(new MotionSetup(line(tension), 2e-4), 0.1, 1);
            double[] z = s.chain.z.clone();
            Strings.run(s, 0.5);
            double most = 0;
            for (int i = 0; i < s.chain.nodes; i++) {
                most = Math.max(most, Math.abs(s.chain.z[i] - z[i]));
            }
            assertThat(most).as("pretension %s N", tension).isLessThan(2e-5);
        }
    }

    /** Free fall: the worker before the catch, in closed form; the line waits at rest. */
    @Test
    void aFallingWorkerFallsFreely() {
        LineModel model = line(2000);
        MotionSetup setup = new MotionSetup(model, 2e-4);
        setup.attach(
                0,
                model.pointAtStation(0, 4),
                true,
                List.of(new MotionSetup.Person(
                        90, LoadingCurve.spring(5e4), 1.5, new MotionSetup.Timing(0, 1.4, true))));
        Motion motion = new Motion(setup, 0.3, 1, new Motion.Sampling(1, 0.01));
        motion.run(1);
        double[] t = motion.history().times();
        double[] z = motion.history().body(0, 4);
        double start = z[0];
        int seen = 0;
        for (int i = 0; i < t.length && t[i] <= motion.catchTime(); i++) {
            assertThat(z[i]).isCloseTo(start - 0.5 * G * t[i] * t[i], within(1e-9));
            seen++;
        }
        assertThat(seen).isGreaterThan(50);
        assertThat(motion.catchTime()).isCloseTo(Math.sqrt(2 * 1.4 / G), within(1e-12));
    }

    /** A later fall is integrated step by step, and falls freely all the same. */
    @Test
    void aLaterFallIsFreeAsWell() {
        LineModel model = line(2000);
        MotionSetup setup = new MotionSetup(model, 2e-4);
        LoadingCurve spring = LoadingCurve.spring(5e4);
        setup.attach(
                0,
                model.pointAtStation(0, 4),
                true,
                List.of(new MotionSetup.Person(90, spring, 1.5, new MotionSetup.Timing(0, 1.0, true))));
        setup.attach(
                1,
                model.pointAtStation(1, 4),
                true,
                List.of(new MotionSetup.Person(80, spring, 1.5, new MotionSetup.Timing(0.8, 2.0, false))));
        Motion motion = new Motion(setup, 0.3, 1, new Motion.Sampling(2, 0.01));
        motion.run(2);
        double[] t = motion.history().times();
        double[] z = motion.history().body(1, 4);
        for (int i = 0; i < t.length && t[i] < 1.3; i++) {
            double gone = Math.max(0, t[i] - 0.8);
            assertThat(z[i]).as("at %s s", t[i]).isCloseTo(z[0] - 0.5 * G * gone * gone, within(1e-6));
        }
    }

    /** A chain whose middle is let go with no tension falls like a stone. */
    @Test
    void aSlackCableFallsFreely() {
        MotionSystem s = Strings.string(new double[] {2000, 4e6}, new double[] {10, 0.5}, G, 40);
        for (int j = 0; j < s.chain.segments(); j++) {
            s.chain.setLength(j, 2 * s.chain.length[j]);
        }
        for (int i = 1; i < s.chain.nodes - 1; i++) {
            s.chain.reweigh(i);
        }
        double[] z = s.chain.z.clone();
        Strings.run(s, 0.2);
        double t = s.time;
        for (int i = 1; i < s.chain.nodes - 1; i++) {
            assertThat(s.chain.z[i]).isCloseTo(z[i] - 0.5 * G * t * t, within(1e-9));
            assertThat(s.chain.tension[i]).isLessThan(1e-20);
        }
    }

    /**
     * A pendulum: a worker on a stiff lanyard below a stiff line, let go at an angle. Period of a pendulum of finite
     * amplitude: 2π√(l/g) (1 + θ²/16 + 11 θ⁴/3072) (series of the complete elliptic integral).
     */
    @Test
    void aHangingWorkerSwingsLikeAPendulum() {
        double length = 2;
        double angle = 0.4;
        double period = WaveSignals.pendulum(length, angle, G);
        double exact = 2 * Math.PI * Math.sqrt(length / G) * (1 + angle * angle / 16 + 11 * Math.pow(angle, 4) / 3072);
        assertThat(period).isCloseTo(exact, within(2e-4 * exact));
    }
}
