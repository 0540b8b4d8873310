package org.lifeline.internal.line;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.lifeline.base.Point;
import org.lifeline.base.Vector3;

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
}
