package org.lifeline.internal.path;

import org.lifeline.internal.numeric.RootBracket;
import org.lifeline.internal.numeric.RootBracket.Sample;

/**
 * Goes to the end of an {@link EquilibriumPath}. Each point at which the end is not yet reached becomes the current
 * point, so that the path is followed and not jumped. Not thread-safe.
 */
final class EndSearch {
    private static final int STEPS = 200;
    private static final int TRIES = 40;

    private final EquilibriumPath path;
    private final EquilibriumPath.End end;
    private final RootBracket bracket = new RootBracket();

    EndSearch(EquilibriumPath path, EquilibriumPath.End end) {
        this.path = path;
        this.end = end;
    }

    /** Goes to the end, which lies between the current point, or the value looked from, and the next point. */
    void find(double watchFrom) {
        Sample high = sample(path.next());
        path.keepBeyond();
        double low = path.now().value;
        double near = PathTolerances.NEAR_END * high.at();
        double to = across(high);
        boolean beside =
                !path.isFollowed() && to > Math.max(watchFrom, low) && high.at() - to < near && high.at() - low > near;
        // What is far from the end, or lower than it is looked for, needs no slope.
        boolean plain = beside || low < watchFrom;
        bracket.begin(plain ? new Sample(low, end.value(path.now()), Double.NaN) : sample(path.now()), high);
        if (beside) {
            look(to);
        }
        while (path.now().value < watchFrom) {
            if (Double.isNaN(path.step(watchFrom))) {
                throw path.failure(path.now().value / watchFrom);
            }
            path.accept();
            bracket.begin(sample(path.now()), bracket.high());
        }
        for (int k = 0; k < STEPS && !isMet(path.now(), bracket.low()); k++) {
            double top = bracket.high().at();
            if (bracket.width() <= PathTolerances.JUMP_WIDTH * top) {
                double left = PathTolerances.JUMP * path.energyScale()
                        + PathTolerances.ENERGY_ROUNDING * path.now().energySize;
                boolean jump = bracket.low().value() > left;
                if (!jump || path.passJump(end, watchFrom) || bracket.width() <= PathTolerances.ROUNDING * top) {
                    return;
                }
            }
            step();
        }
        if (!isMet(path.now(), bracket.low())) {
            throw path.failure(bracket.low().at() / bracket.high().at());
        }
    }

    /**
     * Goes to the end from a value near it.
     *
     * @return false if it does not lie there; the path is then at that value or where it was
     */
    boolean findNear(double aim, double target, double watchFrom) {
        if (Double.isNaN(path.stepRoughly(aim))) {
            return false;
        }
        Sample near = sample(path.next());
        if (near.value() >= 0) {
            path.accept();
            double beyond = across(near);
            boolean found = beyond > aim && beyond < target && !Double.isNaN(path.step(beyond));
            if (!found || end.value(path.next()) >= 0) {
                return false;
            }
        }
        find(watchFrom);
        return true;
    }

    /** A value on the other side of the end by Newton's step. */
    private static double across(Sample sample) {
        return sample.at() - PathTolerances.OTHER_SIDE * sample.value() / sample.slope();
    }

    private void step() {
        double low = bracket.low().at();
        double to = bracket.next();
        for (int tries = 0; !look(to); tries++) {
            if (tries == TRIES) {
                throw path.failure(low / bracket.high().at());
            }
            to = low + PathTolerances.AFTER_LOSS * (to - low);
        }
    }

    /** Looks at a value within the bracket, which becomes the current one unless it lies beyond the end; false if lost. */
    private boolean look(double to) {
        if (Double.isNaN(path.step(to))) {
            return false;
        }
        Sample sample = sample(path.next(), bracket.high());
        boolean beyond = sample.value() < 0 && !isMet(path.next(), sample);
        bracket.add(sample, beyond);
        if (beyond) {
            path.keepBeyond();
        } else {
            path.accept();
        }
        return true;
    }

    /** What is known at a point near another one; at the end, where nobody asks for more, with the slope of that. */
    private Sample sample(PathPoint point, Sample near) {
        Sample sample = new Sample(point.value, end.value(point), near.slope());
        return isMet(point, sample) ? sample : sample(point);
    }

    private Sample sample(PathPoint point) {
        return new Sample(point.value, end.value(point), path.slope(point, end));
    }

    /**
     * Tells whether what is left is rounding, of energies that are differences of larger ones or of the state that they belong
     * to: then Newton's step from there changes the value by no more.
     */
    private boolean isMet(PathPoint point, Sample sample) {
        double left = Math.abs(sample.value());
        return left <= PathTolerances.END * path.energyScale() + PathTolerances.END_ROUNDING * point.energySize
                || left <= -sample.slope() * sample.at() * PathTolerances.END_VALUE;
    }
}
