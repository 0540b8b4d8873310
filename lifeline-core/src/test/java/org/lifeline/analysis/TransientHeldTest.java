package org.lifeline.analysis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.concurrent.CancellationException;
import org.junit.jupiter.api.Test;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.Point;
import org.lifeline.model.Attachment;
import org.lifeline.model.Fall;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Passage;
import org.lifeline.model.Place;
import org.lifeline.model.Worker;
import org.lifeline.model.cable.Cable;
import org.lifeline.testing.PlainParts;

/** A free-running attachment that is held at the station of the fall, a run that is interrupted, settings refused. */
class TransientHeldTest {
    private static final TransientArrest QUICK = TransientArrest.withDefaults()
            .withSegmentLength(0.3)
            .withRefinements(0)
            .withEndAfterFirstCatch(0.05);

    private static Lifeline line() {
        return Lifeline.builder()
                .cable(Cable.builder().massPerLength(0.41).axialStiffness(3.3e6).build())
                .endAnchor("a", Point.of(0, 0, 10))
                .intermediateAnchor("p", Point.of(12, 0, 10), Passage.friction(0.12))
                .intermediateAnchor("q", Point.of(24, 0, 10), Passage.friction(0.12))
                .endAnchor("b", Point.of(36, 0, 10))
                .pretension(1500)
                .build();
    }

    private static Fall fall(double station, Attachment attachment) {
        Worker worker = Worker.builder("w")
                .mass(100)
                .walkingLevel(8.5)
                .attachment(attachment)
                .connection(PlainParts.sixKilonewtons())
                .build();
        return Fall.builder("f")
                .at(Place.of(2, station))
                .faller(worker)
                .freeFall(1.5)
                .build();
    }

    /** Held, the attachment stays at its material point; running, it runs toward the middle of the span. */
    @Test
    void heldItStaysWhereTheFallBegan() {
        TransientResult held = QUICK.withAttachmentHeld().solve(line(), fall(1, Attachment.FREE_RUNNING));
        TransientResult running = QUICK.solve(line(), fall(1, Attachment.FREE_RUNNING));
        double[] at = held.history().worker("w").lineX();
        double[] ran = running.history().worker("w").lineX();
        double farthest = 0;
        double farthestRan = 0;
        for (double x : at) {
            farthest = Math.max(farthest, Math.abs(x - at[0]));
        }
        for (double x : ran) {
            farthestRan = Math.max(farthestRan, Math.abs(x - ran[0]));
        }
        assertThat(at[0]).isCloseTo(13, within(1e-6));
        assertThat(farthest).isLessThan(0.6);
        assertThat(farthestRan).isGreaterThan(2 * farthest);
        assertThat(held.arrest().supports().get(1).force())
                .isGreaterThan(running.arrest().supports().get(1).force());
    }

    /** To a gripped attachment, which is at a material point, it makes no difference. */
    @Test
    void aGrippedAttachmentIsHeldAnyway() {
        Fall fall = fall(4, Attachment.GRIPPED);
        TransientResult a = QUICK.solve(line(), fall);
        TransientResult b = QUICK.withAttachmentHeld().solve(line(), fall);
        assertThat(b.firstCatch().tension()).isEqualTo(a.firstCatch().tension());
        assertThat(b.firstCatch().workers()).isEqualTo(a.firstCatch().workers());
    }

    /** An interrupt ends the run; the flag stays set for the caller. */
    @Test
    void anInterruptEndsTheRun() {
        Thread.currentThread().interrupt();
        try {
            assertThatThrownBy(() -> QUICK.solve(line(), fall(4, Attachment.GRIPPED)))
                    .isInstanceOf(CancellationException.class)
                    .hasMessageContaining("interrupted");
        } finally {
            assertThat(Thread.interrupted()).isTrue();
        }
        assertThat(QUICK.solve(line(), fall(4, Attachment.GRIPPED)).firstCatchOver())
                .isTrue();
    }

    /** What is not stated is not a number: temperatures that are none are refused, and so is nothing for a side. */
    @Test
    void settingsThatMeanNothingAreRefused() {
        for (double t : new double[] {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY}) {
            assertThatThrownBy(() -> QUICK.withTemperature(t))
                    .isInstanceOf(InvalidInputException.class)
                    .hasMessageContaining("temperature");
        }
        for (double bad : new double[] {Double.NaN, Double.POSITIVE_INFINITY, -1}) {
            assertThatThrownBy(() -> QUICK.withDuration(bad)).isInstanceOf(InvalidInputException.class);
            assertThatThrownBy(() -> QUICK.withSampling(bad)).isInstanceOf(InvalidInputException.class);
            assertThatThrownBy(() -> QUICK.withAccuracy(bad)).isInstanceOf(InvalidInputException.class);
            assertThatThrownBy(() -> QUICK.withSegmentLength(bad)).isInstanceOf(InvalidInputException.class);
            assertThatThrownBy(() -> QUICK.withEndAfterFirstCatch(bad)).isInstanceOf(InvalidInputException.class);
        }
    }
}
