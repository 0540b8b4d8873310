package org.lifeline.internal.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** The first mesh by the shortest span, and how a course is changed. */
class NumericalParametersTest {
    @Test
    void longSpansAreCutByTheLongestSegment() {
        assertThat(NumericalParameters.firstLength(16)).isEqualTo(0.25);
        assertThat(NumericalParameters.firstLength(50)).isEqualTo(0.25);
    }

    @Test
    void middlingSpansAreCutIntoSixtyFour() {
        assertThat(NumericalParameters.firstLength(8)).isCloseTo(0.125, within(1e-15));
        assertThat(NumericalParameters.firstLength(5.12)).isCloseTo(0.08, within(1e-15));
    }

    /** The third mesh, a quarter of the first, shall not be finer than 20 mm; a very short span is cut into eight. */
    @Test
    void shortSpansAreCutSoThatThreeMeshesEndNearTheFinest() {
        assertThat(NumericalParameters.firstLength(2)).isCloseTo(0.08, within(1e-15));
        assertThat(NumericalParameters.firstLength(0.64)).isCloseTo(0.08, within(1e-15));
        assertThat(NumericalParameters.firstLength(0.4)).isCloseTo(0.05, within(1e-15));
    }

    @Test
    void theFirstLengthRisesWithTheSpan() {
        double last = 0;
        for (double span = 0.1; span < 30; span *= 1.1) {
            double length = NumericalParameters.firstLength(span);
            assertThat(length).isGreaterThanOrEqualTo(last).isLessThanOrEqualTo(span / 8);
            last = length;
        }
    }

    @Test
    void aCourseIsChangedInOneThingAtATime() {
        Motion.Sampling sampling = new Motion.Sampling(3, 0.01);
        MeshRefinement.Course plain = new MeshRefinement.Course(sampling, OptionalDouble.empty());
        assertThat(plain.steps()).isEqualTo(1);
        assertThat(plain.inLongSteps()).isEqualTo(new MeshRefinement.Course(sampling, OptionalDouble.empty(), 2));
        assertThat(plain.endedAfterCatch(0.2))
                .isEqualTo(new MeshRefinement.Course(sampling, OptionalDouble.of(0.2), 1));
        Motion.Sampling other = new Motion.Sampling(5, 0.02);
        assertThat(plain.inLongSteps().sampled(other))
                .isEqualTo(new MeshRefinement.Course(other, OptionalDouble.empty(), 2));
    }
}
