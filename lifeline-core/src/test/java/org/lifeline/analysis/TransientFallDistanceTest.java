package org.lifeline.analysis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.lifeline.analysis.motion.WorkerPeaks;
import org.lifeline.base.Point;
import org.lifeline.model.Attachment;
import org.lifeline.model.Connection;
import org.lifeline.model.Fall;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Place;
import org.lifeline.model.Worker;
import org.lifeline.model.absorber.LoadingCurve;
import org.lifeline.model.cable.Cable;

/** In a transient the fall distance ends at the lowest point, which is not the moment of the largest extension. */
class TransientFallDistanceTest {
    @Test
    void theFallEndsAtTheLowestPoint() {
        Lifeline line = Lifeline.builder()
                .cable(Cable.builder().massPerLength(0.41).axialStiffness(3.3e6).build())
                .endAnchor("a", Point.of(0, 0, 12))
                .endAnchor("b", Point.of(20, 0, 12))
                .pretension(1500)
                .build();
        Worker worker = Worker.builder("A")
                .mass(100)
                .walkingLevel(10.5)
                .attachment(Attachment.GRIPPED)
                .connection(Connection.plainLanyard(1.8, LoadingCurve.spring(6e4)))
                .build();
        Fall fall = Fall.builder("middle").at(Place.of(1, 10)).faller(worker).build();
        TransientResult r = TransientArrest.withDefaults()
                .withRefinements(0)
                .withDuration(1.2)
                .solve(line, fall);
        ArrestResult a = r.arrest();
        WorkerPeaks body = a.motion().orElseThrow().wholeRun().workers().get(0);
        double fallen = 10.5 + worker.attachmentHeight() - body.lowest().value();
        double stretch = a.totalFallDistance() - fallen;
        // The rows of the clearance account say the same: down to the harness, then its stretch.
        assertThat(stretch)
                .isCloseTo(
                        a.clearance().rows().stream()
                                .filter(row -> row.item().equals("harness stretch"))
                                .findFirst()
                                .orElseThrow()
                                .value(),
                        within(1e-12));
        assertThat(a.clearance().lowestPoint())
                .isCloseTo(
                        10.5 + worker.attachmentHeight() - a.totalFallDistance() - worker.attachmentHeight(),
                        within(1e-12));
        // The lanyard is longest before the lowest point: the parts at their largest are more than the whole.
        assertThat(a.freeFall() + a.deployment() + a.lineDescent() + stretch)
                .isGreaterThan(a.totalFallDistance() + 0.005);
    }
}
