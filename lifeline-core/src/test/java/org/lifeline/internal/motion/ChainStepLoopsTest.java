package org.lifeline.internal.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.lifeline.internal.motion.law.TensionStrainLaw;
import org.lifeline.model.cable.LoadElongation;

/** Each loop of a step against the law that it stands for, node by node and segment by segment. */
class ChainStepLoopsTest {
    private static final double KICK = 2e-4;
    private static final int LARGEST = 11;

    /** A crooked chain between two points that do not move. */
    private static LumpedMassChain held(int nodes) {
        LumpedMassChain c = Chains.crooked(nodes, nodes, Chains.G);
        for (int end : new int[] {0, nodes - 1}) {
            c.mobility[end] = 0;
            c.vx[end] = 0;
            c.vy[end] = 0;
            c.vz[end] = 0;
        }
        return c;
    }

    /** Sum of the forces of two neighbouring segments on a node. */
    private static double[] net(LumpedMassChain c, double[] force, int node) {
        double[] ahead = Chains.sum(new double[3], force[node], Chains.direction(c, node));
        return Chains.sum(ahead, -force[node - 1], Chains.direction(c, node - 1));
    }

    private static double stretching(LumpedMassChain c, int j, double[] from, double[] to) {
        return Chains.along(Chains.direction(c, j), Chains.sum(to, -1, from));
    }

    @Test
    void geometryIsThatOfThePoints() {
        LumpedMassChain c = held(7);
        for (int j = 0; j < c.segments(); j++) {
            double[] d = {c.x[j + 1] - c.x[j], c.y[j + 1] - c.y[j], c.z[j + 1] - c.z[j]};
            double length = Math.sqrt(Chains.along(d, d));
            assertThat(c.stretched[j]).isCloseTo(length, within(1e-14));
            assertThat(Chains.direction(c, j)).containsExactly(Chains.sum(new double[3], 1 / length, d), within(1e-14));
            assertThat(c.elastic[j]).isCloseTo(Chains.EA * (length / c.length[j] - 1), within(1e-6));
        }
    }

    @Test
    void aSlackSegmentPullsNothing() {
        LumpedMassChain c = held(4);
        c.setLength(1, c.stretched[1] * 1.01);
        ChainStep.geometry(c);
        assertThat(c.elastic[1]).isZero();
        assertThat(c.elastic[0]).isPositive();
        ChainStep.predict(c, KICK);
        ChainStep.rows(c, KICK);
        ChainStep.solve(c);
        assertThat(c.damping[1]).as("nor does it damp").isCloseTo(0, within(1e-20));
    }

    @Test
    void aSegmentFoldedUpToAPointDividesByNothing() {
        LumpedMassChain c =
                Chains.through(0, 1, new double[] {0, 0, 0}, new double[] {1, 0, 0}, new double[] {2, 0, 0});
        c.x[1] = 0;
        ChainStep.geometry(c);
        assertThat(c.elastic[0]).isZero();
        assertThat(Chains.direction(c, 0)).containsOnly(0);
    }

    @Test
    void aBentLawGivesTensionAndSlopeOfItsPiece() {
        LoadElongation law = LoadElongation.curve(List.of(
                new LoadElongation.Corner(0, 0),
                new LoadElongation.Corner(0.01, 1000),
                new LoadElongation.Corner(0.3, 60_000)));
        LumpedMassChain c = new LumpedMassChain(4, 0.4, 0, new TensionStrainLaw(law), 1e-3);
        c.nodes = 3;
        c.x[1] = 1.005;
        c.x[2] = 1.005 + 1.11;
        c.setLength(0, 1);
        c.setLength(1, 1);
        ChainStep.geometry(c);
        double second = 59_000 / 0.29;
        assertThat(c.elastic[0]).isCloseTo(500, within(1e-6));
        assertThat(c.slope[0]).isCloseTo(1e5, within(1e-4));
        assertThat(c.elastic[1]).isCloseTo(1000 + 0.1 * second, within(1e-6));
        assertThat(c.slope[1]).isCloseTo(second, within(1e-4));
        c.mobility[1] = 1 / c.mass(1);
        ChainStep.predict(c, KICK);
        ChainStep.rows(c, KICK);
        assertThat(c.compliance[0]).isCloseTo(1 / (1e5 * 1e-3), within(1e-12));
        assertThat(c.compliance[1]).isCloseTo(1 / (second * 1e-3), within(1e-12));
    }

    /** Newton's second law for every node between the ends. */
    @Test
    void theKickIsForceOverMassAndWeight() {
        LumpedMassChain c = held(8);
        ChainStep.predict(c, KICK);
        for (int i = 1; i < c.nodes - 1; i++) {
            double[] gain = Chains.sum(Chains.predicted(c, i), -1, Chains.velocity(c, i));
            double[] want = Chains.sum(new double[3], KICK / c.mass(i), net(c, c.elastic, i));
            want[2] -= KICK * Chains.G;
            assertThat(gain).as("node %d", i).containsExactly(want, within(1e-12));
        }
    }

    /** D = (EA τ/L)(θ r′ + (1 − θ) r), the rate r′ by the velocities that D itself leads to. */
    @Test
    void theDampingForcesAgreeWithTheRatesThatTheyLeadTo() {
        for (int n = 3; n <= LARGEST; n++) {
            LumpedMassChain c = held(n);
            ChainStep.predict(c, KICK);
            ChainStep.rows(c, KICK);
            ChainStep.solve(c);
            double[][] after = new double[n][];
            for (int i = 0; i < n; i++) {
                double[] w = Chains.predicted(c, i);
                after[i] = i == 0 || i == n - 1 ? w : Chains.sum(w, KICK * c.mobility[i], net(c, c.damping, i));
            }
            for (int j = 0; j < n - 1; j++) {
                double rate = c.weight * stretching(c, j, after[j], after[j + 1])
                        + (1 - c.weight) * stretching(c, j, Chains.velocity(c, j), Chains.velocity(c, j + 1));
                double force = Chains.EA * c.dampingTime / c.length[j] * rate;
                assertThat(c.damping[j]).as("n %d, segment %d", n, j).isCloseTo(force, within(1e-8));
            }
        }
    }

    @Test
    void noTensionFallsBelowZero() {
        LumpedMassChain c = held(4);
        double[] elastic = {500, 500, 0};
        double[] damping = {200, -700, 30};
        System.arraycopy(elastic, 0, c.elastic, 0, 3);
        System.arraycopy(damping, 0, c.damping, 0, 3);
        ChainStep.tensions(c);
        assertThat(new double[] {c.tension[0], c.tension[1], c.tension[2]}).containsExactly(700, 0, 30);
        assertThat(new double[] {c.excess[0], c.excess[1], c.excess[2]}).containsExactly(200, -500, 30);
        ChainStep.findLargest(c);
        assertThat(c.largest).isEqualTo(700);
        c.tension[2] = 701;
        ChainStep.findLargest(c);
        assertThat(c.largest).as("the last segment counts").isEqualTo(701);
    }

    /** What damping takes is force times way of every node, however many there are. */
    @Test
    void theHeatIsTheWorkOfTheDampingForces() {
        for (int n = 3; n <= LARGEST; n++) {
            LumpedMassChain c = held(n);
            ChainStep.predict(c, KICK);
            ChainStep.rows(c, KICK);
            ChainStep.solve(c);
            ChainStep.tensions(c);
            double heat = 0;
            double[][] after = new double[n][];
            for (int i = 1; i < n - 1; i++) {
                double[] force = net(c, c.excess, i);
                after[i] = Chains.sum(Chains.predicted(c, i), KICK * c.mobility[i], force);
                heat -= 0.5 * KICK * Chains.along(force, Chains.sum(after[i], 1, Chains.velocity(c, i)));
            }
            ChainStep.finish(c, KICK);
            assertThat(ChainStep.heat(c, KICK)).as("n %d", n).isCloseTo(heat, within(1e-12));
            for (int i = 1; i < n - 1; i++) {
                assertThat(Chains.velocity(c, i)).as("n %d", n).containsExactly(after[i], within(1e-12));
            }
            assertThat(Chains.velocity(c, 0)).containsOnly(0);
        }
    }

    /** Left alone by springs and weight the chain loses as much kinetic energy as damping turns to heat. */
    @Test
    void heatComesFromTheMotion() {
        LumpedMassChain c = held(9);
        double before = 0;
        for (int i = 1; i < c.nodes - 1; i++) {
            before += 0.5 * c.mass(i) * c.speedSquared(i);
            c.wx[i] = c.vx[i];
            c.wy[i] = c.vy[i];
            c.wz[i] = c.vz[i];
        }
        ChainStep.rows(c, KICK);
        ChainStep.solve(c);
        System.arraycopy(c.damping, 0, c.excess, 0, c.segments());
        ChainStep.finish(c, KICK);
        double after = 0;
        for (int i = 1; i < c.nodes - 1; i++) {
            after += 0.5 * c.mass(i) * c.speedSquared(i);
        }
        assertThat(ChainStep.heat(c, KICK)).isPositive().isCloseTo(before - after, within(1e-10));
    }

    /** A chain in a plane takes the short way, and comes to the same. */
    @Test
    void inAPlaneTheShortWayIsTheSame() {
        LumpedMassChain[] both = {held(8), held(8)};
        for (LumpedMassChain c : both) {
            for (int i = 0; i < c.nodes; i++) {
                c.y[i] = 0;
                c.vy[i] = 0;
                c.setLength(Math.min(i, c.segments() - 1), 0.999);
            }
        }
        both[1].plane = true;
        for (LumpedMassChain c : both) {
            ChainStep.geometry(c);
            ChainStep.predict(c, KICK);
            ChainStep.rows(c, KICK);
            ChainStep.solve(c);
            ChainStep.tensions(c);
            ChainStep.finish(c, KICK);
            ChainStep.drift(c, 3 * KICK);
        }
        assertThat(both[1].tension).containsExactly(both[0].tension, within(1e-9));
        assertThat(both[1].vz).containsExactly(both[0].vz, within(1e-13));
        assertThat(both[1].x).containsExactly(both[0].x, within(1e-14));
        assertThat(ChainStep.heat(both[1], KICK)).isCloseTo(ChainStep.heat(both[0], KICK), within(1e-12));
    }

    @Test
    void everyNodeDriftsByItsVelocity() {
        LumpedMassChain c = held(5);
        double[] x = c.x.clone();
        double[] y = c.y.clone();
        double[] z = c.z.clone();
        c.vx[4] = 2;
        ChainStep.drift(c, 0.1);
        for (int i = 0; i < 5; i++) {
            assertThat(new double[] {c.x[i], c.y[i], c.z[i]})
                    .containsExactly(
                            new double[] {x[i] + 0.1 * c.vx[i], y[i] + 0.1 * c.vy[i], z[i] + 0.1 * c.vz[i]},
                            within(1e-15));
        }
    }
}
