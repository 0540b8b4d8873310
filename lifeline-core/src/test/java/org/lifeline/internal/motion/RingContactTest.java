package org.lifeline.internal.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.lifeline.base.Point;
import org.lifeline.base.Vector3;
import org.lifeline.model.Support;

/** A ring between a support and another ring: where it is pushed, how hard, and when it comes free. */
class RingContactTest {
    private static final double RING = 0.02;
    private static final double NEAR = 0.3;
    private static final double STIFFNESS = 1e4;
    private static final Vector3 NONE = new Vector3(0, 0, 0);

    /** Support at 0, a ring at a place, another ring a little farther, and the rest of the cable. */
    private final LumpedMassChain chain;

    private final SupportJoint support;
    private final SlidingJoint ring;
    private final SlidingJoint other;
    private final RingContact contact;

    RingContactTest() {
        chain = Chains.through(
                0, 1, new double[] {0, 0, 0}, new double[] {1, 0, 0}, new double[] {2, 0, 0}, new double[] {5, 0, 0});
        support = new SupportJoint(chain, 0, Support.end("a", Point.of(0, 0, 0)), NONE, NONE);
        ring = new SlidingJoint(chain, 1, RING);
        other = new SlidingJoint(chain, 2, RING);
        contact = new RingContact(ring, support, other, NEAR);
        ring.turn();
    }

    private void ringAt(double x) {
        chain.x[1] = x;
        ring.release();
        other.release();
        support.release();
        contact.act(STIFFNESS);
    }

    @Test
    void nothingPushesARingThatIsFarFromBoth() {
        ringAt(1);
        assertThat(ring.pullX).isZero();
        assertThat(contact.resting()).isFalse();
        ringAt(NEAR + 1e-9);
        assertThat(contact.resting()).isFalse();
    }

    @Test
    void aRingThatIsNearASupportRestsAgainstIt() {
        ringAt(NEAR - 1e-9);
        assertThat(contact.resting()).isTrue();
        assertThat(ring.pullX).as("where they met nothing pushes yet").isZero();
        ringAt(NEAR - 0.01);
        assertThat(ring.pullX).as("spring toward where they met").isCloseTo(100, within(1e-3));
        assertThat(support.pullX).as("and back on the support").isEqualTo(-ring.pullX);
        assertThat(ring.contactX).isEqualTo(ring.pullX);
        ringAt(NEAR + 1e-3);
        assertThat(contact.resting()).as("drawn away").isFalse();
        assertThat(ring.pullX).isZero();
    }

    /** Half of the critical damping of ring mass and spring is c = 0.5 √(k m). */
    @Test
    void aRestingRingIsDampedAgainstItsSupport() {
        ringAt(NEAR - 1e-9);
        chain.vx[1] = -2;
        chain.vy[1] = 1;
        chain.vz[1] = 3;
        ringAt(NEAR - 1e-9);
        double damping = 0.5 * Math.sqrt(STIFFNESS * RING);
        assertThat(ring.pullX).isCloseTo(2 * damping, within(1e-9));
        assertThat(ring.pullY).isCloseTo(-damping, within(1e-9));
        assertThat(ring.pullZ).isCloseTo(-3 * damping, within(1e-9));
        chain.vx[0] = -2;
        chain.vy[0] = 1;
        chain.vz[0] = 3;
        ringAt(NEAR - 1e-9);
        assertThat(new double[] {ring.pullX, ring.pullY, ring.pullZ})
                .as("a support that moves alike does not damp")
                .containsExactly(new double[3], within(1e-9));
    }

    @Test
    void aRestingRingGoesWithItsSupport() {
        ringAt(NEAR - 1e-9);
        chain.x[0] = 0.05;
        chain.z[0] = -0.02;
        ringAt(NEAR);
        assertThat(contact.resting()).isTrue();
        assertThat(ring.pullX).isCloseTo(0.05 * STIFFNESS, within(1e-3));
        assertThat(ring.pullZ).isCloseTo(-0.02 * STIFFNESS, within(1e-3));
    }

    @Test
    void theLinkOfAnAbsorberKeepsTheRingAway() {
        chain.firstLink = 0.4;
        ringAt(NEAR + 0.4 + 1e-9);
        assertThat(contact.resting()).isFalse();
        ringAt(NEAR + 0.4 - 1e-9);
        assertThat(contact.resting()).isTrue();
    }

    @Test
    void ringsPushEachOtherOff() {
        ringAt(2 - NEAR - 1e-9);
        assertThat(ring.pullX).isZero();
        ringAt(2 - NEAR + 0.1);
        assertThat(ring.pullX).isCloseTo(-0.1 * STIFFNESS, within(1e-6));
        assertThat(other.pullX).isEqualTo(-ring.pullX);
        assertThat(contact.resting()).isFalse();
    }

    @Test
    void ringsThatPartDoNotPullEachOther() {
        double damping = 0.5 * Math.sqrt(STIFFNESS * RING);
        chain.vx[1] = 3;
        ringAt(2 - NEAR + 0.1);
        assertThat(ring.pullX).as("closing").isCloseTo(-0.1 * STIFFNESS - 3 * damping, within(1e-6));
        chain.vx[1] = -1000;
        ringAt(2 - NEAR + 0.1);
        assertThat(ring.pullX).as("parting fast").isZero();
    }

    @Test
    void ringsPushAlongTheLineBetweenThem() {
        chain.y[2] = 0.06;
        chain.z[2] = 0.08;
        ringAt(2);
        // 0.1 m apart, 0.2 m too near.
        assertThat(ring.pullY).isCloseTo(-0.6 * 0.2 * STIFFNESS, within(1e-6));
        assertThat(ring.pullZ).isCloseTo(-0.8 * 0.2 * STIFFNESS, within(1e-6));
        assertThat(other.pullZ).isEqualTo(-ring.pullZ);
    }

    @Test
    void onlyNeighboursTouch() {
        SlidingJoint far = new SlidingJoint(chain, 3, RING);
        RingContact apart = new RingContact(ring, far, far, 10);
        ring.release();
        apart.act(STIFFNESS);
        assertThat(ring.pullX).isZero();
    }

    /** The support behind the ring mirrors the one before it. */
    @Test
    void aSupportBehindActsLikeOneBefore() {
        SupportJoint end = new SupportJoint(chain, 2, Support.end("b", Point.of(2, 0, 0)), NONE, NONE);
        RingContact mirrored = new RingContact(ring, other, end, NEAR);
        chain.x[1] = 2 - NEAR + 1e-9;
        mirrored.act(STIFFNESS);
        assertThat(mirrored.resting()).isTrue();
        chain.x[1] = 2 - NEAR + 0.01;
        ring.release();
        mirrored.act(STIFFNESS);
        assertThat(ring.pullX).isCloseTo(-100, within(1e-3));
        chain.x[1] = 2 - NEAR - 0.001;
        ring.release();
        mirrored.act(STIFFNESS);
        assertThat(mirrored.resting()).isFalse();
        assertThat(ring.pullX).isZero();
    }

    /** On a cable that slopes in space a resting ring is held across the cable as well, and comes free along it only. */
    @Test
    void onASlopingCableARingComesFreeAlongTheCable() {
        for (double[] away : new double[][] {{0, 0.8, -0.6}, {0, -0.8, 0.6}, {0.6, 0, -0.8}, {0.6, 0.8, 0}}) {
            double[] u = Chains.sum(new double[] {0.5, 0, 0}, 1, away);
            u = Chains.sum(new double[3], 1 / Math.sqrt(Chains.along(u, u)), u);
            LumpedMassChain c = Chains.through(
                    0,
                    1,
                    new double[3],
                    Chains.sum(new double[3], 0.2, u),
                    Chains.sum(new double[3], 3, u),
                    new double[] {9, 0, 0});
            SupportJoint start = new SupportJoint(c, 0, Support.end("a", Point.of(0, 0, 0)), NONE, NONE);
            SlidingJoint held = new SlidingJoint(c, 1, RING);
            held.turn();
            RingContact rest = new RingContact(held, start, new SlidingJoint(c, 2, RING), NEAR);
            rest.act(STIFFNESS);
            assertThat(rest.resting()).isTrue();
            double[] across = {u[1] * 0.3 - u[2] * 0.1, u[2] * 0.2 - u[0] * 0.3, u[0] * 0.1 - u[1] * 0.2};
            double[] moved = Chains.sum(Chains.sum(new double[3], -0.01, u), 0.05, across);
            c.x[1] += moved[0];
            c.y[1] += moved[1];
            c.z[1] += moved[2];
            held.release();
            rest.act(STIFFNESS);
            assertThat(new double[] {held.pullX, held.pullY, held.pullZ})
                    .as("pulled back to where they met")
                    .containsExactly(Chains.sum(new double[3], -STIFFNESS, moved), within(1e-9));
            c.x[1] += 0.011 * u[0];
            c.y[1] += 0.011 * u[1];
            c.z[1] += 0.011 * u[2];
            rest.act(STIFFNESS);
            assertThat(rest.resting()).as("drawn away along the cable").isFalse();
        }
    }

    /** Two rings are damped by the speed at which they come together, whatever way they lie. */
    @Test
    void onlyTheSpeedOfClosingDampsTwoRings() {
        double[] apart = {0.06, -0.12, 0.04};
        chain.x[2] = 1 + apart[0];
        chain.y[2] = apart[1];
        chain.z[2] = apart[2];
        double distance = Math.sqrt(Chains.along(apart, apart));
        double[] speed = {0.3, -0.5, 0.7};
        chain.vx[2] = 1;
        chain.vy[2] = 2;
        chain.vz[2] = 3;
        chain.vx[1] = 1 + speed[0];
        chain.vy[1] = 2 + speed[1];
        chain.vz[1] = 3 + speed[2];
        ringAt(1);
        double closing = Chains.along(speed, apart) / distance;
        double force = STIFFNESS * (NEAR - distance) + 0.5 * Math.sqrt(STIFFNESS * RING) * closing;
        assertThat(new double[] {ring.pullX, ring.pullY, ring.pullZ})
                .containsExactly(Chains.sum(new double[3], -force / distance, apart), within(1e-9));
    }
}
