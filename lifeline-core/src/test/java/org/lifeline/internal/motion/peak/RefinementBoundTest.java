package org.lifeline.internal.motion.peak;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;

/** The bound of a peak on ever finer meshes, on sequences that were measured. */
class RefinementBoundTest {
    /** Tension of a slack 30 m span with a plain lanyard on segments of 0.5 m to 16 mm [N]. */
    private static final double[] RAW = {27_700, 27_500, 28_100, 29_100, 29_900, 30_300};

    /** End tension of a 14 m span behind the filter, mesh by mesh [N]. */
    private static final double[] FILTERED = {33_024, 33_567, 33_812, 33_965, 34_005, 34_005};

    @Test
    void twoMeshesSayNothing() {
        assertThat(RefinementBound.of(new double[] {5}, 1)).isInfinite();
        assertThat(RefinementBound.of(new double[] {5, 5}, 1)).isInfinite();
        assertThat(RefinementBound.of(new double[] {5, 5, 5}, 1)).isEqualTo(1);
    }

    /** A raw peak that grows mesh by mesh stays within the bound of every mesh from the third on. */
    @Test
    void aGrowingPeakStaysWithinItsBound() {
        double segments = 4 * 60;
        for (int n = 3; n < RAW.length; n++) {
            double[] seen = Arrays.copyOf(RAW, n);
            double least = RefinementBound.least(seen[n - 1], segments, 0);
            double bound = RefinementBound.ofLoad(seen, least);
            assertThat(RAW[RAW.length - 1] - seen[n - 1])
                    .as("after %s meshes", n)
                    .isLessThanOrEqualTo(bound);
            segments *= 2;
        }
    }

    @Test
    void aFilteredPeakStaysWithinItsBound() {
        double segments = 4 * 28;
        for (int n = 3; n < FILTERED.length; n++) {
            double[] seen = Arrays.copyOf(FILTERED, n);
            double bound = RefinementBound.ofLoad(seen, RefinementBound.leastFiltered(seen[n - 1], segments));
            assertThat(FILTERED[FILTERED.length - 1] - seen[n - 1])
                    .as("after %s meshes", n)
                    .isLessThanOrEqualTo(bound);
            segments *= 2;
        }
    }

    /** The larger of the last two changes counts whatever its sign, and more if it is the last. */
    @Test
    void theLargerOfTheLastTwoChangesCounts() {
        assertThat(RefinementBound.of(new double[] {100, 90, 91}, 0)).isCloseTo(25, within(1e-12));
        assertThat(RefinementBound.of(new double[] {100, 101, 91}, 0)).isCloseTo(40, within(1e-12));
        assertThat(RefinementBound.of(new double[] {0, 100, 101, 101}, 0)).isCloseTo(2.5, within(1e-12));
    }

    /** A load that rises counts as before; one that falls may come back to where it was. */
    @Test
    void aLoadIsBoundedFromAbove() {
        assertThat(RefinementBound.ofLoad(new double[] {5, 5}, 1)).isInfinite();
        assertThat(RefinementBound.ofLoad(new double[] {90, 91, 100}, 0)).isCloseTo(36, within(1e-12));
        assertThat(RefinementBound.ofLoad(new double[] {90, 100, 101}, 0)).isCloseTo(25, within(1e-12));
        assertThat(RefinementBound.ofLoad(new double[] {100, 101, 91}, 0)).isCloseTo(10, within(1e-12));
        assertThat(RefinementBound.ofLoad(new double[] {7007, 6819, 3382}, 300)).isCloseTo(3625, within(1e-9));
        assertThat(RefinementBound.ofLoad(new double[] {100, 90, 80}, 30)).isCloseTo(30, within(1e-12));
    }

    /** Meshes that agree by chance do not make a peak exact: a front as wide as the mesh makes it may be hidden. */
    @Test
    void agreementByChanceIsNotBelieved() {
        double coarse = RefinementBound.least(20_000, 64, 0);
        double fine = RefinementBound.least(20_000, 512, 0);
        assertThat(coarse / fine).isCloseTo(4, within(1e-12));
        assertThat(RefinementBound.of(new double[] {20_000, 20_000, 20_000}, fine))
                .isEqualTo(fine);
        assertThat(RefinementBound.leastFiltered(20_000, 512)).isLessThan(fine);
    }

    /**
     * The same for a length: its least bound falls by the square of the mesh, as the dispersion of a lumped chain does.
     */
    @Test
    void aLengthIsNotExactEither() {
        double n = 128;
        double wave = 2 * Math.PI / n;
        // A wave of the number k runs at c sin(kL/2)/(kL/2) on segments of the length L.
        double slower = 1 - Math.sin(0.5 * wave) / (0.5 * wave);
        assertThat(RefinementBound.leastLength(2, n)).isCloseTo(2 * slower, within(1e-3 * slower));
        assertThat(RefinementBound.leastLength(2, 2 * n))
                .isCloseTo(0.25 * RefinementBound.leastLength(2, n), within(1e-15));
        assertThat(RefinementBound.leastLength(0, n)).isZero();
    }

    /** A spike that the filter takes off may grow, of either sign. */
    @Test
    void aSpikeCounts() {
        assertThat(RefinementBound.least(20_000, 1e9, 1000)).isCloseTo(1500, within(1e-9));
        assertThat(RefinementBound.least(20_000, 1e9, -1000)).isCloseTo(1500, within(1e-9));
    }
}
