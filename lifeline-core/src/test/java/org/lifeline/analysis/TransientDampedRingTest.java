package org.lifeline.analysis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.lifeline.base.Point;
import org.lifeline.model.Attachment;
import org.lifeline.model.Fall;
import org.lifeline.model.InlineAbsorber;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Passage;
import org.lifeline.model.Place;
import org.lifeline.model.Stiffness;
import org.lifeline.model.Support;
import org.lifeline.model.Worker;
import org.lifeline.model.absorber.LoadingCurve;
import org.lifeline.model.cable.Cable;
import org.lifeline.testing.PlainParts;

/**
 * A ring runs along a cable with much damping. The drag between ring and cable once acted after the damping forces had been solved
 * for, which therefore were those of a flow that did not remain: on segments of 62 mm the elastic parts of the tension on both
 * sides of the ring drifted apart, and the raw tension of the line below rose to 11.1 kN for a moment, 5.0 kN on segments of 125 mm
 * and 4.9 kN behind the filter on both.
 */
class TransientDampedRingTest {
    private static Support end(String id, double x, double force) {
        LoadingCurve plateau = LoadingCurve.through(
                List.of(new LoadingCurve.Corner(0, force), new LoadingCurve.Corner(1.5, force)), 6e6, 2e5);
        return Support.end(id, Point.of(x, 0, 10)).withInlineAbsorber(InlineAbsorber.of(plateau));
    }

    private static Support post(String id, double x, double y, double z) {
        return Support.intermediate(id, Point.of(x, y, z), Passage.free()).withStiffness(new Stiffness(2e6, 2e6, 2e6));
    }

    private static final Lifeline LINE = Lifeline.builder()
            .cable(Cable.builder()
                    .massPerLength(0.33)
                    .axialStiffness(4.6e6)
                    .dampingTime(0.02)
                    .build())
            .support(end("a", 0, 5000))
            .support(post("p", 8.4, 0.7, 9.6))
            .support(post("q", 16.7, 0.1, 10.1))
            .support(end("b", 25, 4500))
            .pretension(1500)
            .build();

    private static final Fall FALL = Fall.builder("fall")
            .at(Place.of(3, 5.7))
            .freeFall(1.5)
            .faller(Worker.builder("worker")
                    .mass(100)
                    .walkingLevel(8.5)
                    .attachment(Attachment.FREE_RUNNING)
                    .connection(PlainParts.sixKilonewtons())
                    .build())
            .build();

    private static TransientResult onSegmentsOf(double length) {
        return TransientArrest.withDefaults()
                .withRefinements(0)
                .withSegmentLength(length)
                .withEndAfterFirstCatch(0.02)
                .solve(LINE, FALL);
    }

    @Test
    void theTensionBesideTheRingDoesNotRiseWithTheMesh() {
        TransientResult coarse = onSegmentsOf(0.125);
        TransientResult fine = onSegmentsOf(0.0625);
        double raw = coarse.firstCatch().tension().value();
        assertThat(fine.firstCatch().tension().value()).isCloseTo(raw, within(0.01 * raw));
        double filtered = coarse.firstCatch().filteredTension();
        assertThat(fine.firstCatch().filteredTension()).isCloseTo(filtered, within(0.01 * filtered));
        // The energy account of the second order in the step: half the segment, half the step, a quarter of what is
        // open.
        assertThat(fine.relativeDrift()).isLessThan(0.4 * coarse.relativeDrift());
    }
}
