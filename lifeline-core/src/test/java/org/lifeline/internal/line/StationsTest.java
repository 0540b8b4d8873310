package org.lifeline.internal.line;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.lifeline.base.Point;

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
}
