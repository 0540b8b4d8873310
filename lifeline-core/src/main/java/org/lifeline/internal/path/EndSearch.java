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
        while (path.now().value < watchFrom) {
            if (Double.isNaN(path.step(watchFrom))) {
                throw path.failure(path.now().value / watchFrom);
            }
            path.accept();
        }
        bracket.begin(sample(path.now()), high);
        for (int k = 0; k < STEPS && !isMet(path.now(), bracket.low().value()); k++) {
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
            if (isAtRounding(bracket.low())) {
                return;
            }
        }
        if (!isMet(path.now(), bracket.low().value())) {
            throw path.failure(bracket.low().at() / bracket.high().at());
        }
    }

    private void step() {
        double low = bracket.low().at();
        double to = bracket.next();
        double reached = path.step(to);
        for (int tries = 0; Double.isNaN(reached) && tries < TRIES; tries++) {
            to = low + PathTolerances.AFTER_LOSS * (to - low);
            reached = path.step(to);
        }
        if (Double.isNaN(reached)) {
            throw path.failure(low / bracket.high().at());
        }
        Sample sample = sample(path.next());
        boolean beyond = sample.value() < 0 && !isMet(path.next(), -sample.value());
        bracket.add(sample, beyond);
        if (beyond) {
            path.keepBeyond();
        } else {
            path.accept();
        }
    }

    private Sample sample(PathPoint point) {
        return new Sample(point.value, end.value(point), path.slope(point, end));
    }

    /** Tells whether what is left is rounding of energies that are differences of larger ones. */
    private boolean isMet(PathPoint point, double left) {
        return left <= PathTolerances.END * path.energyScale() + PathTolerances.END_ROUNDING * point.energySize;
    }

    /** Tells whether Newton's step from the low end is rounding of its value. */
    private static boolean isAtRounding(Sample low) {
        return low.slope() < 0 && low.value() <= -low.slope() * low.at() * 4 * PathTolerances.ROUNDING;
    }
}
