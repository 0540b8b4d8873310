package org.lifeline.internal.line;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.lifeline.base.Point;
import org.lifeline.model.Passage;

/** Material points and where they hang, on random spans without loads and without springs. */
class StationsTest {
    private static final int CASES = Integer.getInteger("lifeline.cases", 600);

    /** A random system whose loads take no part. */
    private static RandomSystem bare(long seed) {
        RandomSystem random = new RandomSystem(seed);
        for (int j = 0; j < random.system.loads; j++) {
            random.state.active[j] = false;
            random.state.force[j] = 0;
        }
        return random;
    }

    @Test
    void theCoordinateAtAStationHangsThere() {
        int tried = 0;
        for (long seed = 1; seed <= CASES; seed++) {
            RandomSystem random = bare(seed);
            LineSystem sys = random.system;
            LineGeometry geometry = new LineGeometry(sys, random.state);
            SplittableRandom r = new SplittableRandom(seed);
            for (int i = 0; i < sys.spans; i++) {
                List<Piece> pieces = geometry.pieces(i);
                double run =
                        pieces.get(0).start().horizontalDistance(pieces.get(0).end());
                double chord = Math.hypot(sys.px[i + 1] - sys.px[i], sys.py[i + 1] - sys.py[i]);
                double station = Math.min(run, chord) * r.nextDouble(0.01, 0.99);
                double coordinate = Stations.coordinateAt(sys, random.state, i, station);
                Point p = geometry.walk(pieces, i, coordinate, -1);
                assertThat(p.horizontalDistance(pieces.get(0).start()))
                        .as("seed %d, span %d", seed, i)
                        .isCloseTo(station, within(1e-9 * chord));
                tried++;
            }
        }
        assertThat(tried).isGreaterThan(CASES);
    }

    /** No other point of the span is lower, by walking along it. */
    @Test
    void nothingHangsBelowTheLowestPoint() {
        int inside = 0;
        for (long seed = 1; seed <= CASES; seed++) {
            RandomSystem random = new RandomSystem(seed);
            LineSystem sys = random.system;
            LineGeometry geometry = new LineGeometry(sys, random.state);
            for (int i = 0; i < sys.spans; i++) {
                List<Piece> pieces = geometry.pieces(i);
                double low = random.state.slip[i];
                double high = sys.length[i] + random.state.slip[i + 1];
                double lowest = Stations.lowest(sys, random.state, i);
                assertThat(lowest).as("seed %d", seed).isBetween(low, high);
                double z = geometry.walk(pieces, i, lowest, -1).z();
                for (int k = 0; k <= 40; k++) {
                    double other = geometry.walk(pieces, i, low + (high - low) * k / 40, -1)
                            .z();
                    assertThat(other).as("seed %d, span %d", seed, i).isGreaterThan(z - 1e-9 * sys.chord[i]);
                }
                inside += lowest > low && lowest < high ? 1 : 0;
            }
        }
        assertThat(inside).as("spans that are lowest between their ends").isGreaterThan(CASES / 4);
    }

    /** Under its weight alone a cable is level where that has carried off the pull down at its start, V/w from there. */
    @Test
    void theLowestPointOfABareSpanIsAtTheVerticalPullOverTheWeight() {
        LoadSlot slot = new LoadSlot(0, true, 1);
        LineSystem sys = Lines.level(1000, 5, Passage.free(), 1, slot);
        LineState s = Lines.straight(sys, 1000, slot);
        for (double down : new double[] {0, 1, 20, 40}) {
            s.tension[2] = -down;
            // A load that takes no part is not there, wherever it was last.
            for (double last : new double[] {-3, 1, 30}) {
                s.coordinate[0] = last;
                assertThat(Stations.lowest(sys, s, 0)).as("pull %s N", down).isCloseTo(down / 5, within(1e-12));
            }
        }
        s.tension[2] = 10;
        assertThat(Stations.lowest(sys, s, 0)).as("rises all the way").isEqualTo(0);
        s.tension[2] = -80;
        assertThat(Stations.lowest(sys, s, 0)).as("falls all the way").isEqualTo(sys.length[0]);
    }

    /** Without weight the cable has corners at its loads alone: it is lowest where it ceases to fall. */
    @Test
    void withoutWeightItIsLowestAtTheLoadThatTurnsItUp() {
        LoadSlot[] slots = {new LoadSlot(0, true, 2), new LoadSlot(0, true, 5), new LoadSlot(0, true, 8)};
        LineSystem sys = Lines.level(1000, 0, Passage.free(), 1, slots);
        LineState s = Lines.straight(sys, 1000, slots);
        for (int j = 0; j < 3; j++) {
            Lines.loaded(s, j, 100);
        }
        double[][] pulls = {{1, 0}, {-50, 2}, {-99, 2}, {-150, 5}, {-250, 8}, {-350, sys.length[0]}};
        for (double[] pull : pulls) {
            s.tension[2] = pull[0];
            assertThat(Stations.lowest(sys, s, 0)).as("pull %s N", pull[0]).isEqualTo(pull[1]);
        }
        s.active[1] = false;
        s.tension[2] = -150;
        assertThat(Stations.lowest(sys, s, 0)).as("the second one off").isEqualTo(8);
    }

    /** With weight and a load: level before the load, at it, or behind it, by V + w s + P = 0. */
    @Test
    void aLoadMovesTheLowestPointTowardItself() {
        LoadSlot slot = new LoadSlot(0, true, 4);
        LineSystem sys = Lines.level(1000, 5, Passage.free(), 1, slot);
        LineState s = Lines.loaded(Lines.straight(sys, 1000, slot), 0, 30);
        double[][] pulls = {{-15, 3}, {-20, 4}, {-45, 4}, {-50, 4}, {-60, 6}, {-75, 9}, {-90, sys.length[0]}};
        for (double[] pull : pulls) {
            s.tension[2] = pull[0];
            assertThat(Stations.lowest(sys, s, 0)).as("pull %s N", pull[0]).isCloseTo(pull[1], within(1e-12));
        }
    }

    @Test
    void aStationBeyondTheCableIsItsEnd() {
        LineSystem sys = Lines.level(1000, 5, Passage.free(), 2);
        LineState s = Lines.straight(sys, 1000);
        s.slip[1] = 0.25;
        s.thermal = 1.001;
        assertThat(Stations.coordinateAt(sys, s, 0, 11)).isCloseTo(sys.length[0] + 0.25, within(1e-13));
        assertThat(Stations.coordinateAt(sys, s, 1, 0)).isCloseTo(0.25, within(1e-13));
        assertThat(Stations.coordinateAt(sys, s, 1, 11)).isCloseTo(sys.length[1], within(1e-13));
    }
}
