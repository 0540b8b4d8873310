package org.lifeline.internal.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** How meshes are halved, and what is said of their error. */
class MeshRefinementTest {
    private static MeshRefinement run(double accuracy, int refinements) {
        return MeshRefinement.run(
                MotionCases.setup(MotionCases.single(), 4, true), MotionCases.request(accuracy, refinements, 1));
    }

    @Test
    void everyMeshHasHalfTheSegmentsOfTheOneBefore() {
        List<MeshRefinement.Level> levels = run(1e-9, 3).levels();
        assertThat(levels).hasSize(4);
        for (int k = 1; k < levels.size(); k++) {
            assertThat(levels.get(k).segment())
                    .isCloseTo(0.5 * levels.get(k - 1).segment(), within(1e-12));
            assertThat(levels.get(k).nodes())
                    .isBetween(
                            2 * levels.get(k - 1).nodes() - 6,
                            2 * levels.get(k - 1).nodes() + 6);
            assertThat(levels.get(k).steps()).isGreaterThan(levels.get(k - 1).steps());
        }
    }

    /** An accuracy that three meshes reach ends there; two never do. */
    @Test
    void twoMeshesAreNeverEnough() {
        MeshRefinement easy = run(1e3, 5);
        assertThat(easy.levels()).hasSize(3);
        assertThat(easy.uncertainty()).isFinite();
        MeshRefinement two = run(1e3, 1);
        assertThat(two.levels()).hasSize(2);
        assertThat(two.uncertainty()).isInfinite();
        assertThat(two.bound(new MeshRefinement.Force(p -> p.tension, p -> p.filteredTension)))
                .isInfinite();
        assertThat(two.lowestBound()).isInfinite();
    }

    /** The uncertainty is the largest of the bounds as shares, and every bound shrinks on a finer mesh. */
    @Test
    void theUncertaintyIsTheLargestShare() {
        MeshRefinement coarse = run(1e-9, 2);
        MeshRefinement fine = run(1e-9, 4);
        MeshRefinement.Force tension = new MeshRefinement.Force(p -> p.tension, p -> p.filteredTension);
        for (MeshRefinement each : List.of(coarse, fine)) {
            PeakValues last = each.motion().firstCatch();
            assertThat(each.uncertainty()).isGreaterThanOrEqualTo(each.bound(tension) / last.tension);
            assertThat(each.uncertainty()).isGreaterThanOrEqualTo(each.filteredBound(tension) / last.filteredTension);
            assertThat(each.uncertainty()).isGreaterThanOrEqualTo(each.lowestBound() / each.fallDistance());
        }
        assertThat(fine.uncertainty()).isLessThan(coarse.uncertainty());
        assertThat(fine.lowestBound()).isLessThan(coarse.lowestBound());
        double found =
                Math.abs(fine.motion().firstCatch().tension - coarse.motion().firstCatch().tension);
        assertThat(found).isLessThanOrEqualTo(coarse.bound(tension));
    }

    /** Coarse meshes end with the first catch, the last one after the time asked for. */
    @Test
    void theLastMeshIsFollowedToTheEnd() {
        MotionSetup setup = MotionCases.setup(MotionCases.single(), 4, true);
        MeshRefinement.Request cut = MotionCases.request(1, 0, 0.5);
        Motion short1 = MeshRefinement.run(setup, cut).motion();
        Motion long1 = MeshRefinement.run(
                        setup,
                        new MeshRefinement.Request(
                                1,
                                0,
                                OptionalDouble.of(0.5),
                                new MeshRefinement.Course(new Motion.Sampling(2, 0.01), OptionalDouble.empty())))
                .motion();
        assertThat(short1.firstCatchOver()).isTrue();
        assertThat(short1.time()).isLessThan(1.5);
        assertThat(long1.time()).isCloseTo(2, within(1e-3));
        assertThat(long1.firstCatch().tension).isEqualTo(short1.firstCatch().tension);
    }
}
