package org.lifeline.internal.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.lifeline.base.Point;
import org.lifeline.base.Vector3;
import org.lifeline.model.Support;

/** Merging and splitting beside a ring, on a crooked moving chain in space: when it is done, and what it keeps. */
class RemeshingInSpaceTest {
    private static final double RING = 0.02;
    private static final double LOUD = 0;
    private static final double QUIET = 1e12;
    private static final int CASES = Math.min(10, Integer.getInteger("lifeline.cases", 10));
    private static final Vector3 NONE = new Vector3(0, 0, 0);

    /** A chain with a ring between two end anchors, and its remeshing. */
    private static final class Line {
        final LumpedMassChain chain;
        final SlidingJoint ring;
        final List<Joint> joints;
        final double unit;

        Line(LumpedMassChain c, int at, double unit) {
            chain = c;
            this.unit = unit;
            joints = new ArrayList<>();
            joints.add(end(c, 0));
            ring = new SlidingJoint(c, at, RING);
            joints.add(ring);
            joints.add(end(c, c.nodes - 1));
            c.mobility[at] = 0;
            ring.turn();
            ring.load();
            ring.flow = 2;
        }

        Remeshing remeshing(double weight) {
            return new Remeshing(chain, joints, List.of(unit, unit), weight);
        }

        /** Momentum of all that moves, and what is owed to the ring [N·s]. */
        double[] momentum() {
            LumpedMassChain c = chain;
            double[] sum = {ring.owed(0), ring.owed(1), ring.owed(2)};
            double[] unitVector = {ring.unitX(), ring.unitY(), ring.unitZ()};
            for (int i = 0; i < c.nodes; i++) {
                double[] v = Chains.velocity(c, i);
                if (i == ring.node) {
                    sum = Chains.sum(sum, RING, v);
                    v = Chains.sum(v, ring.flow, unitVector);
                }
                sum = Chains.sum(sum, c.mass(i), v);
            }
            return sum;
        }

        /** Motion and strain [J]. */
        double energy() {
            LumpedMassChain c = chain;
            double sum = ring.cableEnergy();
            for (int i = 0; i < c.nodes; i++) {
                sum += i == ring.node ? 0 : 0.5 * c.mass(i) * c.speedSquared(i);
            }
            for (int j = 0; j < c.segments(); j++) {
                sum += c.strainEnergy(j);
            }
            return sum;
        }
    }

    private static SupportJoint end(LumpedMassChain c, int node) {
        c.mobility[node] = 0;
        c.vx[node] = 0;
        c.vy[node] = 0;
        c.vz[node] = 0;
        Support s = Support.end("e", Point.of(c.x[node], c.y[node], c.z[node]));
        return new SupportJoint(c, node, s, NONE, NONE);
    }

    /** A line whose segment before or behind the ring is a multiple of the reference length of 1 m. */
    private static Line line(long seed, int nodes, int ring, int segment, double multiple) {
        LumpedMassChain c = Chains.crooked(seed, nodes, 0);
        int node = segment == ring ? ring + 1 : segment;
        double share = multiple / c.stretched[segment];
        c.x[node] = c.x[ring] + share * (c.x[node] - c.x[ring]);
        c.y[node] = c.y[ring] + share * (c.y[node] - c.y[ring]);
        c.z[node] = c.z[ring] + share * (c.z[node] - c.z[ring]);
        ChainStep.geometry(c);
        for (int j = 0; j < c.segments(); j++) {
            c.setLength(j, j == segment ? multiple : c.stretched[j] / 1.002);
        }
        ChainStep.geometry(c);
        for (int i = 0; i < c.nodes; i++) {
            c.mobility[i] = 1 / c.mass(i);
        }
        System.arraycopy(c.elastic, 0, c.tension, 0, c.segments());
        Line line = new Line(c, ring, 1);
        double beside = c.length[segment == ring ? ring - 1 : ring];
        assertThat(beside).as("the other side gives no cause").isBetween(0.7, 1.6);
        return line;
    }

    private static void assertChange(Line line, double weight, int by) {
        LumpedMassChain c = line.chain;
        int nodes = c.nodes;
        int last = line.joints.get(2).node;
        double length = MotionCases.unstretched(c);
        double[] momentum = line.momentum();
        double energy = line.energy();
        Remeshing remeshing = line.remeshing(weight);
        assertThat(remeshing.adapt()).isEqualTo(by != 0);
        assertThat(c.nodes).isEqualTo(nodes + by);
        assertThat(line.joints.get(2).node).isEqualTo(last + by);
        assertThat(remeshing.changes).isEqualTo(Math.abs(by));
        assertThat(MotionCases.unstretched(c)).as("unstretched length").isCloseTo(length, within(1e-12));
        assertThat(line.momentum()).as("momentum").containsExactly(momentum, within(1e-11));
        assertThat(remeshing.lost).as("energy").isCloseTo(energy - line.energy(), within(1e-9 * (1 + energy)));
        double[] mean = Chains.sum(Chains.direction(c, line.ring.node - 1), 1, Chains.direction(c, line.ring.node));
        double[] unit = {line.ring.unitX(), line.ring.unitY(), line.ring.unitZ()};
        double size = Math.sqrt(Chains.along(mean, mean));
        assertThat(unit)
                .as("the ring looks along")
                .containsExactly(Chains.sum(new double[3], 1 / size, mean), within(1e-12));
        for (int i = 0; i < c.nodes; i++) {
            if (c.mobility[i] > 0) {
                assertThat(c.mobility[i] * c.mass(i)).as("node %d", i).isCloseTo(1, within(1e-12));
            }
        }
    }

    @Test
    void mergingAndSplittingKeepLengthMassAndMomentum() {
        for (long seed = 1; seed <= CASES; seed++) {
            for (int segment : new int[] {3, 4}) {
                assertChange(line(seed, 9, 4, segment, 0.2), LOUD, -1);
                assertChange(line(seed, 9, 4, segment, 2.1), LOUD, 1);
            }
        }
    }

    /** What is loud waits until the segment is very short or very long; what is quiet is changed before. */
    @Test
    void whatCostsEnergyWaits() {
        double[] multiples = {0.24, 0.26, 0.64, 0.66, 1.69, 1.71, 1.99, 2.01};
        int[] loud = {-1, 0, 0, 0, 0, 0, 0, 1};
        int[] quiet = {-1, -1, -1, 0, 0, 1, 1, 1};
        for (int segment : new int[] {3, 4}) {
            for (int k = 0; k < multiples.length; k++) {
                assertChange(line(5, 9, 4, segment, multiples[k]), LOUD, loud[k]);
                assertChange(line(5, 9, 4, segment, multiples[k]), QUIET, quiet[k]);
            }
        }
    }

    /**
     * The cost: half of the mass at the node meets the other half at another speed, ½ (m/2) Δv², and the kink of two
     * segments a and b is straightened against the tension, which takes T a b/(a + b) (1 − cos φ).
     */
    @Test
    void theCostIsTheMotionThatIsSharedAndTheKinkThatIsStraightened() {
        for (long seed = 1; seed <= CASES; seed++) {
            for (int segment : new int[] {3, 4}) {
                for (double multiple : new double[] {0.5, 1.8}) {
                    double cost = cost(line(seed, 9, 4, segment, multiple), segment, true);
                    double weight = cost / NumericalParameters.QUIET;
                    int by = multiple < 1 ? -1 : 1;
                    assertChange(line(seed, 9, 4, segment, multiple), 0.999 * weight, 0);
                    assertChange(line(seed, 9, 4, segment, multiple), 1.001 * weight, by);
                }
            }
        }
    }

    private static double cost(Line line, int segment, boolean kink) {
        LumpedMassChain c = line.chain;
        int ring = line.ring.node;
        int node = segment == ring ? ring + 1 : segment;
        double[] cable =
                Chains.sum(Chains.velocity(c, ring), line.ring.flow * c.ratio(segment), Chains.direction(c, segment));
        double[] apart = Chains.sum(Chains.velocity(c, node), -1, cable);
        double motion = 0.25 * c.mass(node) * Chains.along(apart, apart);
        if (!kink) {
            return motion;
        }
        double a = c.stretched[node - 1];
        double b = c.stretched[node];
        return motion + c.tension[node] * a * b / (a + b) * (1 - c.cosine(node - 1));
    }

    /** Beside an anchor, which has no kink to be straightened, only the motion counts. */
    @Test
    void besideAnAnchorThereIsNoKink() {
        for (int segment : new int[] {0, 1}) {
            double cost = cost(line(3, 3, 1, segment, 1.8), segment, false);
            double weight = cost / NumericalParameters.QUIET;
            assertThat(line(3, 3, 1, segment, 1.8).remeshing(0.999 * weight).adapt())
                    .isFalse();
            assertThat(line(3, 3, 1, segment, 1.8).remeshing(1.001 * weight).adapt())
                    .isTrue();
        }
    }

    /** The part away from the ring gets the reference length; a bay of one segment is halved. Both are strained alike. */
    @Test
    void thePartsOfASplitSegment() {
        for (int segment : new int[] {3, 4}) {
            Line line = line(6, 9, 4, segment, 2.3);
            LumpedMassChain c = line.chain;
            double ratio = c.ratio(segment);
            double[] direction = Chains.direction(c, segment);
            double[] whole = rates(c, segment, line);
            assertChange(line, LOUD, 1);
            int away = segment == 3 ? line.ring.node - 2 : line.ring.node + 1;
            int beside = segment == 3 ? line.ring.node - 1 : line.ring.node;
            assertThat(c.length[away]).isCloseTo(1, within(1e-12));
            assertThat(c.length[beside]).isCloseTo(1.3, within(1e-12));
            for (int j : new int[] {away, beside}) {
                assertThat(c.ratio(j)).isCloseTo(ratio, within(1e-12));
                assertThat(Chains.direction(c, j)).containsExactly(direction, within(1e-12));
                assertThat(rates(c, j, line)).containsExactly(whole, within(1e-10));
            }
        }
        for (int segment : new int[] {0, 1}) {
            Line line = line(6, 3, 1, segment, 2.3);
            LumpedMassChain c = line.chain;
            assertThat(line.remeshing(LOUD).adapt()).isTrue();
            assertThat(c.length[segment]).isCloseTo(1.15, within(1e-12));
            assertThat(c.length[segment + 1]).isCloseTo(1.15, within(1e-12));
        }
    }

    /** Rate of stretching of the cable of a segment [1/s], and the speed at which the segment turns in space [1/s]. */
    private static double[] rates(LumpedMassChain c, int j, Line line) {
        double[] u = Chains.direction(c, j);
        double[] d = Chains.sum(Chains.velocity(c, j + 1), -1, Chains.velocity(c, j));
        double along = Chains.along(d, u);
        double passes = (j == line.ring.node ? line.ring.flow : 0) - (j + 1 == line.ring.node ? line.ring.flow : 0);
        double links = c.linkRate(j) + c.linkRate(j + 1);
        double chord = c.chord(j);
        double ratio = (chord - c.link(j) - c.link(j + 1)) * c.perLength[j];
        double[] turn = Chains.sum(new double[3], 1 / chord, Chains.sum(d, -along, u));
        return new double[] {(along - links - ratio * passes) / c.length[j], turn[0], turn[1], turn[2]};
    }

    /** The link of an absorber that is being drawn out stays whole beside its anchor, and the cable is strained alike. */
    @Test
    void theLinkOfAnAbsorberStaysBesideItsAnchor() {
        for (boolean first : new boolean[] {true, false}) {
            int segment = first ? 0 : 1;
            Line line = line(4, 3, 1, segment, 2.4);
            LumpedMassChain c = line.chain;
            if (first) {
                c.firstLink = 0.4;
                c.firstLinkRate = 3;
            } else {
                c.lastLink = 0.4;
                c.lastLinkRate = 3;
            }
            c.setLength(segment, (2.4 - 0.4) / 1.003 + 0.1);
            double ratio = (c.chord(segment) - 0.4) * c.perLength[segment];
            double[] whole = rates(c, segment, line);
            assertThat(line.remeshing(QUIET).adapt()).isTrue();
            int held = first ? 0 : 2;
            int free = 1;
            assertThat((c.chord(held) - 0.4) * c.perLength[held]).isCloseTo(ratio, within(1e-12));
            assertThat(c.chord(free) * c.perLength[free]).isCloseTo(ratio, within(1e-12));
            assertThat(rates(c, held, line)).containsExactly(whole, within(1e-10));
            assertThat(rates(c, free, line)).containsExactly(whole, within(1e-10));
        }
    }

    /** Where there is no room for another node a segment goes on growing, and one that is too short is merged all the same. */
    @Test
    void withoutRoomNothingIsSplit() {
        for (int segment : new int[] {3, 4}) {
            for (double multiple : new double[] {0.2, 2.1}) {
                Line line = line(2, 9, 4, segment, multiple);
                LumpedMassChain c = line.chain;
                LumpedMassChain full = new LumpedMassChain(9, c.massPerLength, 0, c.law, c.dampingTime);
                full.nodes = 9;
                double[][] from = {c.x, c.y, c.z, c.mobility};
                double[][] to = {full.x, full.y, full.z, full.mobility};
                for (int k = 0; k < from.length; k++) {
                    System.arraycopy(from[k], 0, to[k], 0, 9);
                }
                for (int j = 0; j < 8; j++) {
                    full.setLength(j, c.length[j]);
                }
                ChainStep.geometry(full);
                assertThat(new Line(full, 4, 1).remeshing(QUIET).adapt()).isEqualTo(multiple < 1);
            }
        }
    }
}
