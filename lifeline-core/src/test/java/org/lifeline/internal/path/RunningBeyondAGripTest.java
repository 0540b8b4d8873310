package org.lifeline.internal.path;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.lifeline.base.Point;
import org.lifeline.model.Lifeline;
import org.lifeline.model.cable.Cable;

/**
 * A free-running load that is hooked on beyond a gripped one started from the lowest point of the whole span, on the
 * other side of the grip, which it cannot pass.
 */
class RunningBeyondAGripTest {
    private static LineModel model(double rise) {
        return new LineModel(Lifeline.builder()
                .cable(Cable.builder().massPerLength(0.5).axialStiffness(4e6).build())
                .endAnchor("a", Point.of(0, 0, 5))
                .endAnchor("b", Point.of(12, 0, 5 + rise))
                .pretension(4000)
                .build());
    }

    @Test
    void onAClimbItRunsDownToTheGrip() {
        for (double rise : new double[] {4, -4}) {
            LineModel m = model(rise);
            double grip = rise > 0 ? 5 : 7;
            LineModel.Load holds = m.hook(0, grip, true);
            m.hang(holds, 500);
            LineModel.Load runs = m.hook(0, rise > 0 ? 9 : 3, false);
            m.hang(runs, 500);
            assertThat(m.position(runs).distance(m.position(holds))).isLessThan(1e-9);
            assertThat(m.restsOn(runs)).isEqualTo(-1);
            assertThat(m.position(runs).x()).isCloseTo(grip, within(0.1));
        }
    }

    @Test
    void hookedOnBelowTheGripItRunsToTheSupport() {
        LineModel m = model(4);
        m.hang(m.hook(0, 9, true), 500);
        LineModel.Load runs = m.hook(0, 5, false);
        m.hang(runs, 300);
        assertThat(m.restsOn(runs)).isZero();
    }

    @Test
    void onALevelSpanItStaysOnItsSide() {
        // The grip in the middle is the lowest point; a light load runs down to it from either side and goes no
        // further.
        for (double station : new double[] {4, 8}) {
            LineModel m = model(0);
            LineModel.Load holds = m.hook(0, 6, true);
            m.hang(holds, 2000);
            LineModel.Load runs = m.hook(0, station, false);
            m.hang(runs, 200);
            assertThat(m.position(runs).distance(m.position(holds))).isLessThan(1e-9);
        }
    }

    @Test
    void aHeavyLoadLeavesTheGripTowardTheMiddleButNotThroughIt() {
        for (double station : new double[] {3, 11}) {
            LineModel m = model(0);
            LineModel.Load holds = m.hook(0, 9, true);
            m.hang(holds, 500);
            LineModel.Load heavy = m.hook(0, station, false);
            m.hang(heavy, 9000);
            if (station < 9) {
                assertThat(m.position(heavy).x()).isBetween(5.0, 8.0);
            } else {
                assertThat(m.position(heavy).distance(m.position(holds))).isLessThan(1e-9);
            }
        }
    }
}
