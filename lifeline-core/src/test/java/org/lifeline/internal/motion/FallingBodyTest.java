package org.lifeline.internal.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.lifeline.internal.motion.law.HystereticCurve;
import org.lifeline.internal.motion.law.TensionStrainLaw;
import org.lifeline.model.absorber.LoadingCurve;
import org.lifeline.model.cable.LoadElongation;

/** A worker alone, against the mechanics of a point: free fall, the line of the pull, its work, momentum. */
class FallingBodyTest {
    private static final double G = 9.80665; // m/s², standard gravity, ISO 80000-3
    private static final double MASS = 100; // kg
    private static final double TAUT = 2; // m
    private static final double STIFFNESS = 5000; // N/m

    private static LumpedMassChain chain() {
        LumpedMassChain c = new LumpedMassChain(4, 0.4, G, new TensionStrainLaw(LoadElongation.linear(3e6)), 1e-3);
        c.nodes = 3;
        c.setLength(0, 5);
        c.setLength(1, 5);
        c.x[1] = 5;
        c.x[2] = 10;
        c.z[0] = 12;
        c.z[1] = 12;
        c.z[2] = 12;
        return c;
    }

    /** An absorber that is a spring up to 20 kN. */
    private static LoadingCurve spring() {
        return LoadingCurve.through(
                List.of(new LoadingCurve.Corner(0, 0), new LoadingCurve.Corner(4, 4 * STIFFNESS)),
                STIFFNESS,
                STIFFNESS);
    }

    private static FallingBody body(double start) {
        MotionSetup.Person person =
                new MotionSetup.Person(MASS, spring(), TAUT, new MotionSetup.Timing(start, 2, true));
        FallingBody body =
                new FallingBody(person, new FixedJoint(chain(), 1), new HystereticCurve(spring(), 1e7), 12.5);
        body.x = 5;
        return body;
    }

    private static void at(FallingBody body, double dx, double dz) {
        body.x = body.joint.chain.x[1] + dx;
        body.z = body.joint.chain.z[1] + dz;
        body.joint.release();
        body.pull();
    }

    @Test
    void itWaitsAndThenFallsFreely() {
        FallingBody body = body(0.3);
        body.release(0.2, 0, G);
        assertThat(body.falling()).isFalse();
        body.pull();
        body.kick(0.1, G);
        body.drift(0.1);
        assertThat(body.z).as("before its fall it stands").isEqualTo(12.5);
        assertThat(body.kineticEnergy()).isZero();

        body.release(0.8, 0.01, G);
        assertThat(body.falling()).isTrue();
        assertThat(body.z).isCloseTo(12.5 - G * 0.5 * 0.5 / 2, within(1e-12));
        assertThat(body.vz).as("velocity half a step before").isCloseTo(-G * (0.5 - 0.01), within(1e-12));
    }

    @Test
    void itPullsAlongTheLineFromAttachmentToWorker() {
        for (long seed = 1; seed <= 200; seed++) {
            SplittableRandom r = new SplittableRandom(seed);
            FallingBody body = body(0);
            body.release(0, 0, G);
            double angle = r.nextDouble(-1, 1);
            double distance = TAUT + r.nextDouble(0.01, 1.5);
            // From the taut length on, so that nothing of it counts as slack.
            at(body, TAUT * Math.sin(angle), -TAUT * Math.cos(angle));
            assertThat(body.force).as("seed %d, just taut", seed).isCloseTo(0, within(1e-6));
            at(body, distance * Math.sin(angle), -distance * Math.cos(angle));
            double force = STIFFNESS * (distance - TAUT);
            assertThat(body.force).as("seed %d", seed).isCloseTo(force, within(1e-6 * force));
            Joint joint = body.joint;
            assertThat(joint.pullX).as("seed %d", seed).isCloseTo(force * Math.sin(angle), within(1e-6 * force));
            assertThat(joint.pullZ).as("seed %d", seed).isCloseTo(-force * Math.cos(angle), within(1e-6 * force));
            assertThat(joint.pullY).isZero();
            assertThat(joint.swing)
                    .as("stiffness of a pendulum, F / l")
                    .isCloseTo(force / distance, within(1e-6 * force));
        }
    }

    @Test
    void theWorkOfASpringIsHalfForceTimesExtension() {
        FallingBody body = body(0);
        body.release(0, 0, G);
        int steps = 50;
        for (int k = 0; k <= steps; k++) {
            at(body, 0, -TAUT - 1.2 * k / steps);
        }
        assertThat(body.work).isCloseTo(0.5 * STIFFNESS * 1.2 * 1.2, within(1e-6 * body.work));
        assertThat(body.longest).isCloseTo(1.2, within(1e-12));
        // A spring gives back what it took.
        for (int k = steps; k >= 0; k--) {
            at(body, 0, -TAUT - 1.2 * k / steps);
        }
        assertThat(body.work).isCloseTo(0, within(1e-6));
        assertThat(body.longest).as("stays").isCloseTo(1.2, within(1e-12));
    }

    @Test
    void oneWhoComesFromFartherOffIsSlackUntilTheDistanceGrows() {
        FallingBody body = body(0);
        body.release(0, 0, G);
        at(body, 0, -2.6);
        assertThat(body.force).as("the distance at which it engaged").isZero();
        at(body, 0, -2.3);
        assertThat(body.force).as("nearer").isZero();
        at(body, 0, -2.4);
        assertThat(body.extension).as("counts from the least distance").isCloseTo(0.1, within(1e-12));
        assertThat(body.force).isCloseTo(0.1 * STIFFNESS, within(1e-3));
    }

    @Test
    void beyondTheLengthButAboveTheLineNothingPulls() {
        FallingBody body = body(0);
        body.release(0, 0, G);
        at(body, 0, 2.5);
        assertThat(body.force).isZero();
        assertThat(body.joint.pullZ).isZero();
    }

    /** Newton's second law over a kick, and the mean kinetic energy of two velocities half a step apart. */
    @Test
    void aKickChangesMomentumByForceTimesTime() {
        FallingBody body = body(0);
        body.release(0, 0, G);
        at(body, 0, -TAUT);
        at(body, 0.9, -2.4);
        body.vx = 1;
        body.vz = -4;
        double kick = 1e-3;
        double fx = -body.joint.pullX;
        double fz = -body.joint.pullZ - MASS * G;
        body.kick(kick, G);
        assertThat(MASS * (body.vx - 1)).isCloseTo(fx * kick, within(1e-9));
        assertThat(MASS * (body.vz + 4)).isCloseTo(fz * kick, within(1e-9));
        assertThat(body.kineticEnergy()).isCloseTo(0.5 * MASS * (1 * body.vx - 4 * body.vz), within(1e-9));
        double z = body.z;
        body.drift(0.01);
        assertThat(body.z).isCloseTo(z + 0.01 * body.vz, within(1e-15));
    }

    @Test
    void oneWhoHangsPullsFromTheStart() {
        FallingBody body = body(Double.NEGATIVE_INFINITY);
        body.hang(MASS * G / STIFFNESS);
        assertThat(body.falling()).isTrue();
        assertThat(body.force).isCloseTo(MASS * G, within(1e-3));
        at(body, 0, -TAUT - MASS * G / STIFFNESS);
        double vz = body.vz;
        body.kick(1e-3, G);
        assertThat(body.vz).as("in balance").isCloseTo(vz, within(1e-9));
    }
}
