package org.lifeline.internal.motion.peak;

/**
 * How far a peak on the finest of several meshes, each with half the segments of the one before, may be from the peak on
 * ever finer meshes.
 *
 * <p>A peak of tension is cut by a wave front and does not converge by a fixed factor, so it cannot be extrapolated.
 * Three meshes that agree by chance say nothing, either: a front that none of them resolves comes out alike on all. So
 * the bound is the larger of two: a multiple of the larger of the last two changes, and what a front may hide that is as
 * wide as the mesh makes it. A kink that has run along a span of n segments is about n^(1/3) segments wide (dispersion
 * of a lumped chain, ω = 2 c/L sin(kL/2)), which is n^(−2/3) of the span. Both factors are measured:
 * {@code src/docs/theory/transient.md}, section 3.
 */
public final class RefinementBound {
    /** Least number of meshes from which anything can be said: two changes. */
    public static final int LEAST_MESHES = 3;

    /** Multiple of the larger of the last two changes [-]. */
    static final double CHANGES = 2;

    /** What a front may hide of a peak as it is, as a share of it and times n^(−2/3) [-]. */
    public static final double FRONT = 1.2;

    /** The same behind the low-pass filter of a laboratory, which smooths fronts [-]. */
    public static final double FILTERED_FRONT = 0.5;

    private RefinementBound() {}

    /**
     * The bound.
     *
     * @param peaks the peak on each mesh, from the coarsest to the finest [any unit]
     * @param hidden what a front may hide, times n^(−2/3); 0 for what no front cuts [unit of the peak]
     * @param segments segments of the finest mesh in the shortest span of a fall
     * @return largest distance of the last peak from that of ever finer meshes [unit of the peak]; positive infinity if
     *     there are too few meshes
     */
    public static double of(double[] peaks, double hidden, double segments) {
        int n = peaks.length;
        if (n < LEAST_MESHES) {
            return Double.POSITIVE_INFINITY;
        }
        double last = Math.abs(peaks[n - 1] - peaks[n - 2]);
        double before = Math.abs(peaks[n - 2] - peaks[n - 3]);
        double front = hidden * Math.pow(segments, -2.0 / 3);
        return Math.max(CHANGES * Math.max(last, before), front);
    }
}
