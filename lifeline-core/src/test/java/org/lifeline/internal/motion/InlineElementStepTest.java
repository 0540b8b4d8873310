package org.lifeline.internal.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.lifeline.base.Point;
import org.lifeline.base.Vector3;
import org.lifeline.internal.motion.law.HystereticCurve;
import org.lifeline.model.Stiffness;
import org.lifeline.model.Support;
import org.lifeline.model.absorber.LoadingCurve;

/**
 * An in-line absorber within one step of a crooked chain in space: cable and absorber pull alike, the cable's tension is
 * that of its strain and of its rate of strain without what the absorber has given way, momentum is force times time.
 */
class InlineElementStepTest {
    private static final double KICK = 1e-4;
    private static final double UNLOADING = 8e5;
    private static final double STOP = 2e5;
    private static final int CASES = Math.min(12, Integer.getInteger("lifeline.cases", 12));
    private static final double[] DRAWN = {1e-3, 0.008, 0.00999, 0.2, 0.29999, 0.35, 0.39999, 0.41};
    private static final LoadingCurve CURVE = LoadingCurve.through(
            List.of(
                    new LoadingCurve.Corner(0, 1000),
                    new LoadingCurve.Corner(0.01, 6000),
                    new LoadingCurve.Corner(0.3, 6000),
                    new LoadingCurve.Corner(0.4, 9000)),
            UNLOADING,
            STOP);

    /** A chain with an absorber at one of its ends, drawn out so far, and the anchor that it hangs on. */
    private static final class Case {
        final LumpedMassChain chain;
        final InlineElement element;
        final SupportJoint anchor;
        final Joint neighbour;
        final int segment;
        final int free;

        Case(long seed, boolean first, double yielded, double drawn, double strain) {
            chain = Chains.crooked(seed, 5, Chains.G);
            segment = first ? 0 : 3;
            free = first ? 1 : 3;
            element = new InlineElement(chain, first, new HystereticCurve(CURVE, 1e9), 0.002);
            element.start(yielded, drawn);
            chain.setLength(segment, (chain.stretched[segment] - element.link()) / (1 + strain));
            for (int i = 0; i < chain.nodes; i++) {
                chain.mobility[i] = 1 / chain.mass(i);
                // Slow enough that damping lets no segment go slack.
                chain.vx[i] *= 0.1;
                chain.vy[i] *= 0.1;
                chain.vz[i] *= 0.1;
            }
            int node = first ? 0 : 4;
            chain.mobility[node] = 0;
            chain.mobility[4 - node] = 0;
            Support end = Support.end("e", Point.of(chain.x[node], chain.y[node], chain.z[node]))
                    .withStiffness(new Stiffness(2e5, 3e5, 4e5));
            anchor = new SupportJoint(chain, node, end, new Vector3(0, 0, 0), new Vector3(0, 0, 0));
            neighbour = new FixedJoint(chain, seed % 2 == 0 ? free : 2);
            ChainStep.geometry(chain);
            element.shorten();
        }

        void step() {
            ChainStep.predict(chain, KICK);
            anchor.predict(KICK);
            ChainStep.rows(chain, KICK);
            anchor.addRows(KICK);
            element.addRow(KICK);
            boolean again = true;
            for (int k = 0; again && k < 6; k++) {
                ChainStep.solve(chain);
                ChainStep.tensions(chain);
                again = element.revise(KICK);
            }
            element.finish(KICK, anchor, neighbour);
            ChainStep.finish(chain, KICK);
            anchor.finish(KICK);
        }

        double stretching(double[][] v) {
            double[] apart = Chains.sum(v[segment + 1], -1, v[segment]);
            return Chains.along(Chains.direction(chain, segment), apart);
        }

        double[][] velocities() {
            double[][] v = new double[chain.nodes][];
            for (int i = 0; i < chain.nodes; i++) {
                v[i] = Chains.velocity(chain, i);
            }
            return v;
        }
    }

    private static void tighten(Case c, double tension) {
        c.chain.setLength(c.segment, c.chain.stretched[c.segment] / (1 + tension / Chains.EA));
        ChainStep.geometry(c.chain);
        c.element.shorten();
        for (int i = 0; i < c.chain.nodes; i++) {
            c.chain.mobility[i] = c.chain.mobility[i] > 0 ? 1 / c.chain.mass(i) : 0;
        }
    }

    /** On every part of its curve and across its corners, drawn out and drawn back, at both ends of a line. */
    @Test
    void absorberAndCablePullAlikeWithinAStep() {
        int out = 0;
        int back = 0;
        for (long seed = 1; seed <= CASES; seed++) {
            for (boolean first : new boolean[] {true, false}) {
                for (double drawn : DRAWN) {
                    Case c = new Case(seed, first, drawn, drawn, 1e-3);
                    // The anchor gives way within the step, unless the cable pulls harder from the start.
                    tighten(c, c.element.force + (seed % 3 == 0 ? 0 : 2500));
                    double[][] before = c.velocities();
                    double old = c.chain.elastic[c.segment];
                    double was = c.element.force;
                    double work = c.element.work;
                    double extension = c.element.extension;
                    double tear = c.element.forceIf(extension);
                    assertThat(tear).isEqualTo(was);
                    c.step();
                    String what = "seed " + seed + ", drawn " + drawn + ", first " + first;
                    double delta = c.element.extension - extension;
                    double tension = c.chain.tension[c.segment];
                    assertThat(c.element.force).as(what).isCloseTo(tension, within(0.2));
                    assertNewton(c, before);
                    double length = c.chain.length[c.segment];
                    double fresh = old - Chains.EA / length * delta;
                    assertThat(c.chain.elastic[c.segment]).as(what).isCloseTo(fresh, within(1e-6));
                    double rate = c.chain.weight * c.stretching(c.velocities())
                            + (1 - c.chain.weight) * c.stretching(before)
                            - delta / KICK;
                    double damping = Chains.EA * c.chain.dampingTime / length * rate;
                    assertThat(tension - fresh).as(what).isCloseTo(damping, within(1e-4));
                    assertThat(c.chain.excess[c.segment]).as(what).isCloseTo(damping, within(1e-4));
                    assertThat(c.element.work - work).isCloseTo(0.5 * (was + c.element.force) * delta, within(1e-9));
                    assertThat(c.element.dampingHeat).isCloseTo(-damping * delta, within(1e-6));
                    assertThat(first ? c.chain.firstLinkRate : c.chain.lastLinkRate)
                            .isCloseTo(delta / KICK, within(1e-9));
                    assertThat(first ? c.chain.firstLink : c.chain.lastLink)
                            .isCloseTo(c.element.extension - 0.002, within(1e-15));
                    out += delta > 0 ? 1 : 0;
                    back += delta < 0 ? 1 : 0;
                }
            }
        }
        assertThat(out).isGreaterThan(10);
        assertThat(back).isGreaterThan(10);
    }

    /** Newton's second law for the node at the other end of the segment, by the tensions that came out. */
    private static void assertNewton(Case c, double[][] before) {
        double[] force = Chains.sum(new double[3], c.chain.tension[c.free], Chains.direction(c.chain, c.free));
        force = Chains.sum(force, -c.chain.tension[c.free - 1], Chains.direction(c.chain, c.free - 1));
        double mass = c.chain.mass(c.free);
        double[] want = Chains.sum(before[c.free], KICK / mass, force);
        want[2] -= KICK * Chains.G;
        assertThat(Chains.velocity(c.chain, c.free)).containsExactly(want, within(1e-9));
        // The anchor moves by the same pull on springs that are at rest: k h²/4 of stiffness counts as mass.
        double[] pull = Chains.sum(
                new double[3],
                (c.anchor.node == 0 ? 1 : -1) * c.chain.tension[c.segment],
                Chains.direction(c.chain, c.segment));
        double own = c.chain.mass(c.anchor.node);
        pull[2] -= own * Chains.G;
        double[] stiffness = {2e5, 3e5, 4e5};
        double[] moved = before[c.anchor.node].clone();
        for (int k = 0; k < 3; k++) {
            moved[k] += KICK * pull[k] / (own + 0.25 * KICK * KICK * stiffness[k]);
        }
        assertThat(Chains.velocity(c.chain, c.anchor.node)).containsExactly(moved, within(1e-9));
    }

    /** Cable that is slack has no tension, and the absorber rests where it is. */
    @Test
    void besideASlackCableItRests() {
        for (boolean first : new boolean[] {true, false}) {
            Case c = new Case(3, first, 0.2, 0.2 - 6000 / UNLOADING, -0.01);
            assertThat(c.chain.elastic[c.segment]).isZero();
            double extension = c.element.extension;
            double work = c.element.work;
            c.step();
            assertThat(c.chain.tension[c.segment]).isCloseTo(0, within(1e-12));
            assertThat(c.element.extension).isCloseTo(extension, within(1e-15));
            assertThat(c.element.work).isCloseTo(work, within(1e-12));
            assertThat(c.element.force).isCloseTo(0, within(1e-6));
            assertThat(first ? c.chain.firstLinkRate : c.chain.lastLinkRate).isCloseTo(0, within(1e-9));
        }
    }

    /**
     * Drawn into its stop by 10 mm, and the cable slack by more or less: stop and absorber give back their work until both
     * pull alike, or until nothing is left; what the cable does not take up is lost.
     */
    @Test
    void fromItsStopItDrawsInASlackCable() {
        double end = 0.41;
        double full = 9000 + 0.01 * STOP;
        for (boolean first : new boolean[] {true, false}) {
            for (double slack : new double[] {1e-3, 8e-3, 0.012, 0.018, 0.05}) {
                Case c = new Case(4, first, end, end, 1e-3);
                assertThat(c.element.force).isCloseTo(full, within(1e-6));
                double cable = c.chain.stretched[c.segment];
                c.chain.setLength(c.segment, cable + slack);
                ChainStep.geometry(c.chain);
                double work = c.element.work;
                c.element.shorten();
                double k = Chains.EA / (cable + slack);
                // By the stop alone, or by all of it and then by the line of unloading.
                double stop = (full + k * slack) / (STOP + k);
                double drawn = stop <= 0.01 ? stop : 0.01 + (9000 + k * (slack - 0.01)) / (UNLOADING + k);
                drawn = Math.min(drawn, 0.01 + 9000 / UNLOADING);
                double force = drawn <= 0.01 ? full - STOP * drawn : 9000 - UNLOADING * (drawn - 0.01);
                String what = "slack " + slack + ", first " + first;
                assertThat(end - c.element.extension).as(what).isCloseTo(drawn, within(1e-7));
                assertThat(c.element.force).as(what).isCloseTo(force, within(0.1));
                double strain = drawn < slack ? 0 : (drawn - slack) * k;
                assertThat(c.chain.elastic[c.segment]).as(what).isCloseTo(strain, within(0.1));
                double given = drawn <= 0.01
                        ? 0.5 * (full + force) * drawn
                        : 0.5 * (full + 9000) * 0.01 + 0.5 * (9000 + force) * (drawn - 0.01);
                assertThat(work - c.element.work).as(what).isCloseTo(given, within(1e-3));
                assertThat(c.element.settlingHeat).as(what).isCloseTo(given - 0.5 * strain * strain / k, within(1e-3));
                assertThat(first ? c.chain.firstLink : c.chain.lastLink)
                        .isCloseTo(c.element.extension - 0.002, within(1e-15));
            }
        }
    }
}
