package org.lifeline.model.absorber;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.lifeline.model.absorber.LoadingCurve.Corner;

/**
 * The force at the end of the initial rise was k · (F/k), which may miss F by a rounding error. The plateau was then not flat,
 * its whole length lay within one unit in the last place of the force, and the search for the arrest force failed.
 */
class FlatPlateauBugTest {
    @Test
    void aPlateauBehindAnInitialRiseIsFlat() {
        SplittableRandom random = new SplittableRandom(11);
        for (int i = 0; i < 10_000; i++) {
            double force = random.nextDouble(1e3, 1e4);
            double stiffness = random.nextDouble(5e4, 1e6);

            List<Corner> corners = LoadingCurve.through(
                            List.of(new Corner(0, force), new Corner(1.2, force)), stiffness, 2e5)
                    .corners();

            assertThat(corners).hasSize(3);
            assertThat(corners.get(1).force()).as("force %s", force).isEqualTo(force);
        }
    }
}
