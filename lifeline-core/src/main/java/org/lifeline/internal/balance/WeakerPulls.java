package org.lifeline.internal.balance;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleFunction;
import org.lifeline.internal.balance.UnequalFallers.Bound;

/**
 * What one faller comes to while the others pull at the line with any force from none to their largest.
 *
 * <p>Where a line stiffens, the largest pull is the worst: force and extension grow with it. Where it gives way at some force
 * both fall off behind the pull that brings the line there, so that the worst lies between. A few pulls tell the two apart; the
 * second kind is sampled more closely and closed in on by the golden section. Not thread-safe.
 */
final class WeakerPulls {
    private static final double GOLDEN = 0.5 * (Math.sqrt(5) - 1);

    private final double largest;
    private final DoubleFunction<Bound> under;

    /** Pulls of the others up to the largest [N], and what the faller comes to under one. */
    WeakerPulls(double largest, DoubleFunction<Bound> under) {
        this.largest = largest;
        this.under = under;
    }

    /** The worst of all, from what the faller comes to under no pull and under the largest. */
    Bound worst(Bound none, Bound most) {
        List<Bound> few = sampled(BalanceTolerances.PULLS, none, most);
        few.add(few.size() - 1, under.apply(largest * (1 - BalanceTolerances.JUST_BELOW)));
        if (grows(few)) {
            return most;
        }
        List<Bound> close = sampled(BalanceTolerances.PULLS_CLOSE, none, most);
        int at = 0;
        Bound worst = most.orWorse(none);
        for (int i = 0; i < close.size(); i++) {
            worst = worst.orWorse(close.get(i));
            at = isWorse(close.get(i), close.get(at)) ? i : at;
        }
        double step = largest / BalanceTolerances.PULLS_CLOSE;
        return worst.orWorse(closedIn(Math.max(0, (at - 1) * step), Math.min(largest, (at + 1) * step)));
    }

    private List<Bound> sampled(int steps, Bound none, Bound most) {
        List<Bound> list = new ArrayList<>(List.of(none));
        for (int i = 1; i < steps; i++) {
            list.add(under.apply(largest * i / steps));
        }
        list.add(most);
        return list;
    }

    private static boolean grows(List<Bound> bounds) {
        for (int i = 1; i < bounds.size(); i++) {
            Bound before = bounds.get(i - 1);
            Bound now = bounds.get(i);
            if (now.force() < before.force() * (1 - BalanceTolerances.SAME)
                    || now.extension() < before.extension() * (1 - BalanceTolerances.SAME)) {
                return false;
            }
        }
        return true;
    }

    /** Force grows with extension, but not on a plateau, and extension not at a rigid start or stop. */
    private static boolean isWorse(Bound a, Bound b) {
        return a.extension() > b.extension() || (a.extension() == b.extension() && a.force() > b.force());
    }

    private Bound closedIn(double from, double to) {
        double low = from;
        double high = to;
        double left = high - GOLDEN * (high - low);
        double right = low + GOLDEN * (high - low);
        Bound atLeft = under.apply(left);
        Bound atRight = under.apply(right);
        Bound worst = atLeft.orWorse(atRight);
        for (int i = 0; i < BalanceTolerances.CLOSING_IN; i++) {
            if (isWorse(atLeft, atRight)) {
                high = right;
                right = left;
                atRight = atLeft;
                left = high - GOLDEN * (high - low);
                atLeft = under.apply(left);
                worst = worst.orWorse(atLeft);
            } else {
                low = left;
                left = right;
                atLeft = atRight;
                right = low + GOLDEN * (high - low);
                atRight = under.apply(right);
                worst = worst.orWorse(atRight);
            }
        }
        return worst;
    }
}
