package org.lifeline.internal.path;

/**
 * The root of a gap along a {@link LoadPath}. Each point at which the gap is not yet below zero becomes the current
 * point, so that the path is followed and not jumped. Not thread-safe.
 */
final class PathRoot {
    private static final int STEPS = 200;
    private static final double TOLERANCE = 1e-14;

    /** Rounding of the energies of a state [-]. */
    private static final double ROUNDING = 4e-16;

    /** Width of a bracket, as a share of the force, in which only a jump can still hide. */
    private static final double NARROW = 1e-13;

    /** Share of the energy that is left over where the path jumps over the root. */
    private static final double JUMP = 1e-10;

    private final LoadPath path;
    private final double scale;
    private double low;
    private double lowGap;
    private double lowSlope;
    private double high;
    private double highGap;
    private double highSlope;

    PathRoot(LoadPath path, double scale) {
        this.path = path;
        this.scale = scale;
    }

    /** Goes to the root, which lies between the current point, or the force looked from, and the next point. */
    void find(LoadPath.Gap gap, double watchFrom) {
        setHigh(gap);
        while (path.now().force < watchFrom) {
            if (Double.isNaN(path.step(watchFrom))) {
                throw path.lost(path.now().force / watchFrom);
            }
            path.accept();
        }
        setLow(gap);
        double before = Double.POSITIVE_INFINITY;
        for (int k = 0; k < STEPS; k++) {
            if (lowGap <= tolerance(path.now())) {
                return;
            }
            if (high - low <= NARROW * high) {
                boolean jump = lowGap > JUMP * scale + LoadPath.ROUNDING * path.now().size;
                if ((jump && path.giveWay(gap, watchFrom)) || !jump) {
                    return;
                }
                if (high - low <= 1e-15 * high) {
                    return;
                }
            }
            double nearest = Math.min(lowGap, -highGap);
            boolean halve = k > 1 && nearest > 0.3 * before;
            before = halve ? Double.POSITIVE_INFINITY : nearest;
            double to = halve ? 0.5 * (low + high) : guess();
            double reached = path.step(to);
            for (int tries = 0; Double.isNaN(reached) && tries < 40; tries++) {
                to = low + 0.25 * (to - low);
                reached = path.step(to);
            }
            if (Double.isNaN(reached)) {
                throw path.lost(low / high);
            }
            double value = path.gapAt(path.next(), gap);
            boolean met = Math.abs(value) <= tolerance(path.next());
            if (value >= 0 || met) {
                path.accept();
                if (met) {
                    return;
                }
                setLow(gap);
            } else {
                setHigh(gap);
            }
            if (isAtRounding()) {
                return;
            }
        }
        throw path.lost(low / high);
    }

    /** What is left of a gap at its root, in which energies are differences of larger ones. */
    private double tolerance(PathNode node) {
        return TOLERANCE * scale + ROUNDING * node.size;
    }

    private void setLow(LoadPath.Gap gap) {
        low = path.now().force;
        lowGap = path.gapAt(path.now(), gap);
        lowSlope = path.slopeAt(path.now(), gap);
    }

    /** Keeps the next point as the one beyond the root. */
    private void setHigh(LoadPath.Gap gap) {
        high = path.next().force;
        highGap = path.gapAt(path.next(), gap);
        highSlope = path.slopeAt(path.next(), gap);
        path.keepBeyond();
    }

    /** Tells whether the current point is so near the root that Newton's step from it is rounding. */
    private boolean isAtRounding() {
        return lowSlope < 0 && lowGap <= -lowSlope * low * 4e-15;
    }

    /**
     * The force at which the inverse cubic by both gaps and slopes is zero; by Newton's step or false position where the
     * slopes do not serve.
     */
    private double guess() {
        double run = high - low;
        double fall = highGap - lowGap;
        double a = fall / (lowSlope * run);
        double b = fall / (highSlope * run);
        double u = -lowGap / fall;
        double share = u;
        if (b > 0 && b < 3) {
            // Inverse interpolation: share of the run as a function of the gap; parabola where the low slope is no use.
            share = a > 0 && a < 3 ? u * (a + u * (3 - 2 * a - b + u * (a + b - 2))) : u * (2 - b + u * (b - 1));
        }
        if (!(share > 0 && share < 1)) {
            share = u;
        }
        double least = 1e-15;
        double to = low + Math.min(Math.max(share, least), 1 - least) * run;
        return to > low && to < high ? to : 0.5 * (low + high);
    }
}
