package org.lifeline.internal.line;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.lifeline.base.Point;
import org.lifeline.base.Vector3;
import org.lifeline.model.Stiffness;
import org.lifeline.model.Support;

/** Pieces of cable hang on each other: point by point, and force by force. */
class LineGeometryTest {
    private static final int CASES = Integer.getInteger("lifeline.cases", 300);

    @Test
    void piecesHangOnEachOther() {
        int joints = 0;
        for (long seed = 1; seed <= CASES; seed++) {
            RandomSystem random = new RandomSystem(seed);
            LineSystem sys = random.system;
            LineState s = random.state;
            LineGeometry geometry = new LineGeometry(sys, s);
            for (int i = 0; i < sys.spans; i++) {
                List<Piece> pieces = geometry.pieces(i);
                double length = 0;
                for (int k = 0; k < pieces.size(); k++) {
                    Piece p = pieces.get(k);
                    length += p.length();
                    if (k > 0) {
                        Piece before = pieces.get(k - 1);
                        assertThat(p.start().distance(before.end()))
                                .as("seed %d, joint", seed)
                                .isLessThan(1e-9);
                        Vector3 load = p.startTension().minus(before.endTension());
                        assertThat(load.z()).as("seed %d", seed).isCloseTo(before.load(), within(1e-9 * tension(p)));
                        assertThat(load.horizontal()).as("seed %d", seed).isLessThan(1e-9 * tension(p));
                        joints++;
                    }
                    // Weight of the piece: the vertical component grows by what it weighs.
                    assertThat(p.endTension().z() - p.startTension().z())
                            .as("seed %d, weight", seed)
                            .isCloseTo(p.weight() * p.length(), within(1e-9 * tension(p)));
                }
                double hot = (sys.length[i] + s.slip[i + 1] - s.slip[i]) * s.thermal;
                assertThat(length).as("seed %d, unstretched length", seed).isCloseTo(hot, within(1e-9 * hot));
                assertThat(pieces.get(0).startTension().z()).isEqualTo(s.tension[3 * i + 2]);
                double end = pieces.get(pieces.size() - 1).endTension().z()
                        + pieces.get(pieces.size() - 1).load();
                assertThat(end)
                        .as("seed %d", seed)
                        .isCloseTo(sys.forces.endZ(s, i), within(1e-9 * tension(pieces.get(0))));
            }
        }
        assertThat(joints).isGreaterThan(CASES / 2);
    }

    private static double tension(Piece p) {
        return p.startTension().magnitude() + p.endTension().magnitude();
    }

    @Test
    void aSupportStandsWhereItsForcePushesIt() {
        for (long seed = 1; seed <= CASES; seed++) {
            RandomSystem random = new RandomSystem(seed);
            LineSystem sys = random.system;
            LineGeometry geometry = new LineGeometry(sys, random.state);
            for (int i = 0; i <= sys.spans; i++) {
                Point at = geometry.support(i);
                Vector3 moved = geometry.displacement(i);
                Vector3 force = geometry.reaction(i);
                assertThat(at.x()).isEqualTo(sys.px[i] + moved.x());
                assertThat(at.y()).isEqualTo(sys.py[i] + moved.y());
                assertThat(at.z()).isEqualTo(sys.pz[i] + moved.z());
                assertThat(moved.x())
                        .isEqualTo(
                                sys.compliance[3 * i] == 0
                                        ? 0
                                        : sys.compliance[3 * i] * (force.x() - sys.reference[3 * i]));
            }
        }
    }

    /** To a load, or to where it holds the cable: the same point, the end of the pieces up to there. */
    @Test
    void aWalkToALoadEndsWhereItsPieceDoes() {
        int walks = 0;
        for (long seed = 1; seed <= CASES; seed++) {
            RandomSystem random = new RandomSystem(seed);
            LineSystem sys = random.system;
            LineState s = random.state;
            LineGeometry geometry = new LineGeometry(sys, s);
            for (int i = 0; i < sys.spans; i++) {
                List<Piece> pieces = geometry.pieces(i);
                int k = 0;
                for (int j = sys.firstLoad[i]; j < sys.firstLoad[i + 1]; j++) {
                    if (!s.active[j]) {
                        continue;
                    }
                    Point end = pieces.get(k++).end();
                    // The state need not be one of equilibrium: the load may stand before another one that follows it.
                    assertThat(geometry.walk(pieces, i, Double.NaN, j))
                            .as("seed %d", seed)
                            .isEqualTo(end);
                    assertThat(geometry.walk(pieces, i, s.coordinate[j], -1).distance(end))
                            .as("seed %d, load %d", seed, j)
                            .isLessThan(1e-11);
                    double before = 0.3 * pieces.get(k - 1).length();
                    double coordinate = s.coordinate[j] - before / s.thermal;
                    Point there = pieces.get(k - 1).at(pieces.get(k - 1).length() - before);
                    assertThat(geometry.walk(pieces, i, coordinate, -1).distance(there))
                            .as("seed %d, before load %d", seed, j)
                            .isLessThan(1e-11);
                    walks++;
                }
                Point end = pieces.get(pieces.size() - 1).end();
                assertThat(geometry.walk(pieces, i, sys.length[i] + s.slip[i + 1], -1)
                                .distance(end))
                        .isLessThan(1e-11);
            }
        }
        assertThat(walks).isGreaterThan(CASES);
    }

    /** At the first support the cable begins behind the absorber's link, which points along it. */
    @Test
    void anAbsorberStandsBetweenTheFirstSupportAndTheCable() {
        int linked = 0;
        for (long seed = 1; seed <= CASES; seed++) {
            RandomSystem random = new RandomSystem(seed);
            LineSystem sys = random.system;
            LineGeometry geometry = new LineGeometry(sys, random.state);
            for (int i = 0; i < sys.spans; i++) {
                Piece first = geometry.pieces(i).get(0);
                Vector3 link = first.start().minus(geometry.support(i));
                boolean absorber = i == 0 && sys.absorbers[0] != null;
                double drawn = absorber ? random.state.extension[0] - sys.installedExtension[0] : 0;
                Vector3 along = first.startTension();
                assertThat(link.dot(along) / along.magnitude())
                        .as("seed %d", seed)
                        .isCloseTo(drawn, within(1e-13 * 50));
                assertThat(link.magnitude()).as("seed %d", seed).isCloseTo(Math.abs(drawn), within(1e-13 * 50));
                linked += absorber ? 1 : 0;
            }
        }
        assertThat(linked).isGreaterThan(CASES / 10);
    }

    /** From the support as installed to a point, along the span as it stands now; a step aside does not count. */
    @Test
    void aRunCountsAlongThePresentDirectionFromTheSupportAsInstalled() {
        int moved = 0;
        for (long seed = 1; seed <= CASES; seed++) {
            RandomSystem random = new RandomSystem(seed);
            LineSystem sys = random.system;
            LineGeometry geometry = new LineGeometry(sys, random.state);
            for (int i = 0; i < sys.spans; i++) {
                Point installed = new Point(sys.px[i], sys.py[i], sys.pz[i]);
                Vector3 span = geometry.support(i + 1).minus(geometry.support(i));
                Vector3 along = new Vector3(span.x(), span.y(), 0).times(1 / span.horizontal());
                Vector3 aside = new Vector3(-along.y(), along.x(), 0);
                assertThat(geometry.runTo(i, 5, installed)).as("seed %d", seed).isCloseTo(5, within(1e-12));
                Point beside =
                        installed.plus(along.times(3)).plus(aside.times(7)).plus(new Vector3(0, 0, 2));
                assertThat(geometry.runTo(i, 5, beside)).as("seed %d", seed).isCloseTo(2, within(1e-12));
                moved += geometry.displacement(i).horizontal() > 0 ? 1 : 0;
            }
        }
        assertThat(moved).isGreaterThan(CASES / 10);
    }

    /**
     * A cable without weight, under 300 N at 4 m and 200 N at 7 m, with H = 1000 N and 300 N down at its start: straight
     * from load to load, its slopes V/H. The line stands oblique, and its first support is drawn 0.05 m along it.
     */
    @Test
    void aStationIsOnTheStraightPieceThatPassesIt() {
        double stiffness = 1000 / 0.05;
        List<Support> ends = List.of(
                Support.end("a", Point.of(1, 2, 3)).withStiffness(new Stiffness(stiffness, stiffness, 1 / 0.0)),
                Support.end("b", Point.of(7, 10, 3)));
        LoadSlot[] slots = {new LoadSlot(0, true, 4), new LoadSlot(0, true, 7)};
        LineSystem sys = Lines.of(ends, 1000, 0, slots);
        LineState s = Lines.straight(sys, 1000, slots);
        Lines.loaded(s, 0, 300);
        Lines.loaded(s, 1, 200);
        s.tension[2] = -300;
        LineGeometry geometry = new LineGeometry(sys, s);
        assertThat(geometry.displacement(0).minus(new Vector3(0.03, 0.04, 0)).magnitude())
                .isLessThan(1e-15);
        List<Piece> pieces = geometry.pieces(0);
        double[] slopes = {-0.3, 0, 0.2};
        double from = 0.05;
        double z = 3;
        for (int k = 0; k < 3; k++) {
            double run = LineGeometry.runTo(pieces.get(k));
            assertThat(run * Math.hypot(1, slopes[k]))
                    .isCloseTo(
                            pieces.get(k).length() * (1 + Math.hypot(1, slopes[k]) * 1000 / Lines.EA), within(1e-12));
            for (double share : new double[] {0.1, 0.5, 1}) {
                double station = from + share * run;
                Point p = geometry.pointAtStation(0, station);
                assertThat(p.x()).isCloseTo(1 + 0.6 * station, within(1e-12));
                assertThat(p.y()).isCloseTo(2 + 0.8 * station, within(1e-12));
                assertThat(p.z()).isCloseTo(z + slopes[k] * share * run, within(1e-12));
            }
            from += run;
            z += slopes[k] * run;
        }
        assertThat(geometry.pointAtStation(0, 30)).isEqualTo(pieces.get(2).end());
        assertThat(geometry.pointAtStation(0, 0.02)).as("before the cable").isEqualTo(geometry.support(0));
    }
}
