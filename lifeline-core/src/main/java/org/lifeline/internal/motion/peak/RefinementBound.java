package org.lifeline.internal.motion.peak;

import org.lifeline.internal.numeric.Elementary;

/**
 * How far a peak on the finest of several meshes, each with half the segments of the one before, may be from the peak on
 * ever finer meshes.
 *
 * <p>A peak of tension is cut by a wave front and does not converge by a fixed factor, so it cannot be extrapolated.
 * Meshes that agree by chance say nothing, either: a front that none of them resolves comes out alike on all. So the
 * bound is the largest of three: a multiple of the larger of the last two changes, more if they grow; what a front may hide that is as wide
 * as the mesh makes it; and a multiple of what a low-pass filter takes off the peak, because a spike that is already
 * seen grows while its front gets narrower. A kink that has run along a span of n segments is about n^(1/3) segments
 * wide (dispersion of a lumped chain, ω = 2 c/L sin(kL/2)), which is n^(−2/3) of the span. The factors are measured, not
 * derived: {@code src/docs/theory/transient.md}, section 3.
 */
public final class RefinementBound {
    /** Least number of meshes from which anything can be said: two changes. */
    public static final int LEAST_MESHES = 3;

    /** Multiple of the larger of the last two changes if they shrink from mesh to mesh [-]. */
    static final double CHANGES = 2.5;

    /** Multiple of the last change if it is larger than the one before: fronts are not resolved yet [-]. */
    static final double GROWING_CHANGES = 5;

    /** What a front may hide of a peak as it is, as a share of it and times n^(−2/3) [-]. */
    static final double FRONT = 2.4;

    /** The same behind the low-pass filter, which smooths fronts [-]. */
    static final double FILTERED_FRONT = 1.4;

    /** Multiple of the part of a peak that the low-pass filter takes off [-]. */
    static final double SPIKE = 1.5;

    /** Square of 2π over 24 [-]: what dispersion takes off the speed of a wave as long as the span, times n^(−2). */
    static final double DISPERSION = Math.PI * Math.PI / 6;

    /**
     * Share of a length that fronts may hide, which come a little later or sooner on every mesh, times 1/n [-]: lowest points on
     * a plateau of an absorber creep down mesh by mesh, by up to 0.03/n.
     */
    static final double LATE_FRONT = 0.05;

    /** Share of the largest tension by which a front on the cable is felt at a support that it passes [-]. */
    static final double FELT = 0.5;

    private RefinementBound() {}

    /**
     * What the bound of the force on a support is a share of: the force, but no less than what a front that passes it brings.
     *
     * @param force the force on the support, or what it is compared with where that is larger [N]
     * @param tension largest tension of the cable [N]
     * @return size [N]
     */
    public static double sizeOfSupport(double force, double tension) {
        return Math.max(force, FELT * tension);
    }

    /**
     * Least bound of a peak as it is.
     *
     * @param size the peak, or what it is compared with where that is larger [N]
     * @param segments segments of the finest mesh in the shortest span of a fall
     * @param spike what a low-pass filter takes off the peak [N]
     * @return least bound [N]
     */
    public static double least(double size, double segments, double spike) {
        return Math.max(front(size, segments), SPIKE * Math.abs(spike));
    }

    /**
     * What a front that is as wide as the mesh makes it may hide.
     *
     * @param size the peak, or what it is compared with where that is larger [any unit]
     * @param segments segments of the finest mesh in the shortest span of a fall
     * @return share of the peak [unit of the peak]
     */
    public static double front(double size, double segments) {
        return FRONT * size * width(segments);
    }

    /**
     * Least bound of a filtered peak.
     *
     * @param size the peak, or what it is compared with where that is larger [N]
     * @param segments segments of the finest mesh in the shortest span of a fall
     * @return least bound [N]
     */
    public static double leastFiltered(double size, double segments) {
        return FILTERED_FRONT * size * width(segments);
    }

    /**
     * Least bound of a length: meshes that agree by chance are not exact. A chain carries a wave that is as long as the
     * span, n segments, slower by (2π/n)²/24, and puts what moves with it out of place by that share; its fronts are as
     * wide as the mesh makes them, and what they bring comes later or sooner.
     *
     * @param size how far what is measured has moved [m]
     * @param segments segments of the finest mesh in the shortest span of a fall
     * @return least bound [m]
     */
    public static double leastLength(double size, double segments) {
        return size * Math.max(DISPERSION / (segments * segments), LATE_FRONT / segments);
    }

    /** Width of a kink that has run along a span of so many segments, as a share of the span [-]. */
    private static double width(double segments) {
        return Elementary.power(segments, -2.0 / 3);
    }

    /**
     * The bound.
     *
     * @param peaks the peak on each mesh, from the coarsest to the finest [any unit]
     * @param least what the bound is at least [unit of the peak]
     * @return largest distance of the last peak from that of ever finer meshes [unit of the peak]; positive infinity if
     *     there are too few meshes
     */
    public static double of(double[] peaks, double least) {
        int n = peaks.length;
        if (n < LEAST_MESHES) {
            return Double.POSITIVE_INFINITY;
        }
        double last = Math.abs(peaks[n - 1] - peaks[n - 2]);
        double before = Math.abs(peaks[n - 2] - peaks[n - 3]);
        return Math.max(last > before ? GROWING_CHANGES * last : CHANGES * before, least);
    }

    /**
     * The bound of a load: how far it may be below that of ever finer meshes. A peak that falls from mesh to mesh was a spike of
     * the coarse ones; nothing says that it rises beyond what it was there. Rises count as in {@link #of}.
     *
     * @param peaks the peak on each mesh, from the coarsest to the finest [N]
     * @param least what the bound is at least [N]
     * @return largest distance of the last peak below that of ever finer meshes [N]; positive infinity if there are too few
     */
    public static double ofLoad(double[] peaks, double least) {
        int n = peaks.length;
        if (n < LEAST_MESHES) {
            return Double.POSITIVE_INFINITY;
        }
        double last = Math.max(0, peaks[n - 1] - peaks[n - 2]);
        double before = Math.max(0, peaks[n - 2] - peaks[n - 3]);
        double rise = last > before ? GROWING_CHANGES * last : CHANGES * before;
        double spike = Math.max(peaks[n - 2], peaks[n - 3]) - peaks[n - 1];
        return Math.max(Math.max(rise, spike), least);
    }
}
