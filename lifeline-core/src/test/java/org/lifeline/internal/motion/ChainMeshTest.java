package org.lifeline.internal.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.lifeline.internal.motion.law.TensionStrainLaw;
import org.lifeline.model.cable.LoadElongation;

/** What a change of the mesh must not change: material, mass, momentum, the shape of a straight segment. */
class ChainMeshTest {
    private static final int CASES = Integer.getInteger("lifeline.cases", 300);
    private static final double MASS = 0.4;

    private static LumpedMassChain random(SplittableRandom r, int nodes) {
        LumpedMassChain c =
                new LumpedMassChain(nodes + 4, MASS, 9.80665, new TensionStrainLaw(LoadElongation.linear(3e6)), 1e-3);
        c.nodes = nodes;
        for (int i = 0; i < nodes; i++) {
            c.x[i] = i + r.nextDouble(-0.2, 0.2);
            c.y[i] = r.nextDouble(-0.2, 0.2);
            c.z[i] = r.nextDouble(-0.2, 0.2);
            c.vx[i] = r.nextDouble(-3, 3);
            c.vy[i] = r.nextDouble(-3, 3);
            c.vz[i] = r.nextDouble(-3, 3);
            if (i < nodes - 1) {
                c.setLength(i, r.nextDouble(0.3, 1.2));
            }
        }
        for (int i = 0; i < nodes; i++) {
            c.mobility[i] = 1 / c.mass(i);
        }
        return c;
    }

    private static double mass(LumpedMassChain c) {
        double sum = 0;
        for (int i = 0; i < c.nodes; i++) {
            sum += c.mass(i);
        }
        return sum;
    }

    @Test
    void theMassOfTheNodesIsThatOfTheCable() {
        for (long seed = 1; seed <= CASES; seed++) {
            SplittableRandom r = new SplittableRandom(seed);
            LumpedMassChain c = random(r, r.nextInt(2, 12));
            assertThat(mass(c)).as("seed %d", seed).isCloseTo(MASS * MotionCases.unstretched(c), within(1e-13));
            assertThat(c.segments()).isEqualTo(c.nodes - 1);
            for (int j = 0; j < c.segments(); j++) {
                assertThat(c.length[j] * c.perLength[j]).as("seed %d", seed).isCloseTo(1, within(1e-15));
            }
        }
    }

    @Test
    void aNodeMoreChangesNeitherMaterialNorShape() {
        for (long seed = 1; seed <= CASES; seed++) {
            SplittableRandom r = new SplittableRandom(seed);
            LumpedMassChain c = random(r, r.nextInt(3, 10));
            int node = r.nextInt(c.nodes - 1);
            double whole = MotionCases.unstretched(c);
            double length = c.length[node];
            double share = r.nextDouble(0.1, 0.9);
            double[] a = {c.x[node], c.y[node], c.z[node]};
            double[] b = {c.x[node + 1], c.y[node + 1], c.z[node + 1]};
            double energy = c.strainEnergy(node);
            int nodes = c.nodes;
            c.insert(node, share * length);
            assertThat(c.nodes).isEqualTo(nodes + 1);
            assertThat(MotionCases.unstretched(c)).as("seed %d", seed).isCloseTo(whole, within(1e-13));
            assertThat(c.x[node + 1]).as("seed %d", seed).isCloseTo(a[0] + share * (b[0] - a[0]), within(1e-13));
            assertThat(c.y[node + 1]).as("seed %d", seed).isCloseTo(a[1] + share * (b[1] - a[1]), within(1e-13));
            assertThat(c.z[node + 1]).as("seed %d", seed).isCloseTo(a[2] + share * (b[2] - a[2]), within(1e-13));
            assertThat(c.x[node + 2]).isEqualTo(b[0]);
            assertThat(c.strainEnergy(node) + c.strainEnergy(node + 1))
                    .as("both parts are stretched alike, seed %d", seed)
                    .isCloseTo(energy, within(1e-9 * (energy + 1)));
        }
    }

    @Test
    void insertedAndRemovedTheChainIsAsBefore() {
        for (long seed = 1; seed <= CASES; seed++) {
            SplittableRandom r = new SplittableRandom(seed);
            LumpedMassChain c = random(r, r.nextInt(3, 10));
            double[] x = c.x.clone();
            double[] v = c.vz.clone();
            double[] length = c.length.clone();
            int nodes = c.nodes;
            int node = r.nextInt(c.nodes - 1);
            c.insert(node, r.nextDouble(0.1, 0.9) * c.length[node]);
            c.remove(node + 1);
            assertThat(c.nodes).isEqualTo(nodes);
            for (int i = 0; i < nodes; i++) {
                assertThat(c.x[i]).as("seed %d", seed).isEqualTo(x[i]);
                assertThat(c.vz[i]).as("seed %d", seed).isEqualTo(v[i]);
                if (i < nodes - 1) {
                    assertThat(c.length[i]).as("seed %d", seed).isCloseTo(length[i], within(1e-14));
                }
            }
        }
    }

    @Test
    void aNodeThatIsWeighedAnewKeepsItsMomentum() {
        for (long seed = 1; seed <= CASES; seed++) {
            SplittableRandom r = new SplittableRandom(seed);
            LumpedMassChain c = random(r, r.nextInt(3, 10));
            int node = r.nextInt(1, c.nodes - 1);
            double momentum = c.vx[node] / c.mobility[node];
            c.setLength(node, c.length[node] * r.nextDouble(0.2, 3));
            c.reweigh(node);
            assertThat(c.mobility[node]).as("seed %d", seed).isCloseTo(1 / c.mass(node), within(1e-12));
            assertThat(c.vx[node] / c.mobility[node]).as("seed %d", seed).isCloseTo(momentum, within(1e-13));
        }
    }

    /** The link of an absorber stays whole beside its anchor: only the cable behind it is divided. */
    @Test
    void theLinkOfAnAbsorberIsNoCable() {
        for (boolean first : new boolean[] {true, false}) {
            LumpedMassChain c = random(new SplittableRandom(1), 2);
            c.x[0] = 0;
            c.x[1] = 3;
            c.y[0] = c.y[1];
            c.z[0] = c.z[1];
            c.setLength(0, 2);
            if (first) {
                c.firstLink = 0.5;
            } else {
                c.lastLink = 0.5;
            }
            double energy = c.strainEnergy(0);
            c.insert(0, 0.5);
            // 2.5 m of stretched cable hold 2 m unstretched: a quarter of it is 0.625 m.
            assertThat(c.x[1]).isCloseTo(first ? 1.125 : 0.625, within(1e-13));
            assertThat(c.strainEnergy(0) + c.strainEnergy(1)).isCloseTo(energy, within(1e-9 * energy));
            assertThat(c.link(0)).isEqualTo(first ? 0.5 : 0);
            assertThat(c.link(1)).isZero();
            assertThat(c.link(2)).isEqualTo(first ? 0 : 0.5);
        }
    }

    @Test
    void anglesBetweenSegments() {
        LumpedMassChain c = random(new SplittableRandom(1), 4);
        c.ux[0] = 1;
        c.ux[1] = 0.6;
        c.uz[1] = 0.8;
        c.ux[2] = -0.6;
        c.uz[2] = -0.8;
        assertThat(c.cosine(0)).isCloseTo(0.6, within(1e-15));
        assertThat(c.cosine(1)).isCloseTo(-1, within(1e-15));
        c.vx[1] = 2;
        c.vy[1] = 3;
        c.vz[1] = 6;
        assertThat(c.speedSquared(1)).isEqualTo(49);
    }

    @Test
    void aChainThatIsFullTakesNoMoreNodes() {
        LumpedMassChain c = random(new SplittableRandom(1), 4);
        int room = 0;
        while (c.hasRoom()) {
            c.insert(0, 0.5 * c.length[0]);
            room++;
        }
        assertThat(room).isEqualTo(4);
        assertThat(c.nodes).isEqualTo(8);
    }
}
