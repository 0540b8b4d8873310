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
        assertThat(RefinementBound.of(new double[] {100, 101, 91}, 0)).isCloseTo(50, within(1e-12));
        assertThat(RefinementBound.of(new double[] {0, 100, 101, 101}, 0)).isCloseTo(2.5, within(1e-12));
    }

    /** A load that rises counts as before; one that falls may come back to where it was. */
    @Test
    void aLoadIsBoundedFromAbove() {
        assertThat(RefinementBound.ofLoad(new double[] {5, 5}, 1)).isInfinite();
        assertThat(RefinementBound.ofLoad(new double[] {90, 91, 100}, 0)).isCloseTo(45, within(1e-12));
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
     * The same for a length: on coarse meshes its least bound falls by the square of the mesh, as the dispersion of a lumped
     * chain does, on finer ones by the mesh.
     */
    @Test
    void aLengthIsNotExactEither() {
        double n = 16;
        double wave = 2 * Math.PI / n;
        // A wave of the number k runs at c sin(kL/2)/(kL/2) on segments of the length L.
        double slower = 1 - Math.sin(0.5 * wave) / (0.5 * wave);
        assertThat(RefinementBound.leastLength(2, n)).isCloseTo(2 * slower, within(1e-2 * slower));
        assertThat(RefinementBound.leastLength(2, 2 * n))
                .isCloseTo(0.25 * RefinementBound.leastLength(2, n), within(1e-15));
        assertThat(RefinementBound.leastLength(2, 256)).isCloseTo(0.1 / 256, within(1e-15));
        assertThat(RefinementBound.leastLength(0, n)).isZero();
    }

    /** A spike that the filter takes off may grow, of either sign. */
    @Test
    void aSpikeCounts() {
        assertThat(RefinementBound.least(20_000, 1e9, 1000)).isCloseTo(1500, within(1e-9));
        assertThat(RefinementBound.least(20_000, 1e9, -1000)).isCloseTo(1500, within(1e-9));
    }

    /**
     * What was measured on meshes eight times as fine as the third, on the lines of 200 random ones that used most of their
     * bounds: largest tension, the same behind the filter, load on a post beside the largest tension, lowest point.
     */
    @Test
    void theWorstOfTwoHundredLinesStayWithinTheirBounds() {
        double[] tension = {16_648.7, 16_648.1, 16_809.0};
        assertThat(bound(tension, 378)).isBetween(17_461.4 - 16_809.0, 1.5 * (17_461.4 - 16_809.0));
        assertThat(bound(new double[] {15_135.8, 15_377.8, 15_369.9}, 256)).isGreaterThan(16_143.2 - 15_369.9);
        assertThat(bound(new double[] {13_826.0, 13_811.5, 13_821.9}, 333)).isGreaterThan(14_396.0 - 13_821.9);
        assertThat(filtered(new double[] {13_789.8, 13_772.6, 13_759.0}, 333)).isGreaterThan(14_093.0 - 13_759.0);
        assertThat(filtered(new double[] {16_637.7, 16_635.8, 16_698.6}, 378)).isGreaterThan(17_071.2 - 16_698.6);
        assertThat(filtered(new double[] {16_276.6, 16_349.8, 16_373.3}, 256)).isGreaterThan(16_597.0 - 16_373.3);
        double[] post = {2878.6, 2801.4, 2822.2};
        double size = RefinementBound.sizeOfSupport(3839.7, 15_055.1);
        assertThat(RefinementBound.ofLoad(post, RefinementBound.least(size, 256, 0)))
                .isGreaterThan(3159.1 - 2822.2);
        double[] lowest = {6.843198, 6.843179, 6.843201};
        assertThat(RefinementBound.of(lowest, RefinementBound.leastLength(2.84, 337)))
                .isGreaterThan(6.843201 - 6.842923);
        assertThat(RefinementBound.sizeOfSupport(9000, 15_055.1)).isEqualTo(9000);
    }

    private static double bound(double[] peaks, double segments) {
        return RefinementBound.ofLoad(peaks, RefinementBound.least(peaks[peaks.length - 1], segments, 0));
    }

    private static double filtered(double[] peaks, double segments) {
        return RefinementBound.ofLoad(peaks, RefinementBound.leastFiltered(peaks[peaks.length - 1], segments));
    }
}
