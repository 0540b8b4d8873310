package org.lifeline.internal.balance;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;
import org.lifeline.internal.path.LoadPath;
import org.lifeline.model.absorber.LoadingCurve;

/**
 * Bounds of force and extension for workers who fall together and are not alike.
 *
 * <p>How much of the line's work each of them does depends on who pulls when, which a balance of energies does not know. On a
 * line that stiffens the least that one can do is what is left when the others have drawn the line down before and hold it
 * with their largest force: that gives the largest extension and the largest force. A line that gives way at some force, as
 * an in-line absorber does, would spare the faller where the pull of the others brings it there; such a line is searched for
 * the weaker pull, down to none, under which it spares him least. The largest forces of all are found together, each from those
 * of the others. Not thread-safe.
 */
public final class UnequalFallers {
    private final List<Faller> fallers;
    private final Supplier<LoadPath> start;

    /**
     * One who falls.
     *
     * @param weight weight [N]
     * @param curve force of the connection against its extension
     * @param freeFall free fall [m]
     */
    public record Faller(double weight, LoadingCurve curve, double freeFall) {}

    /**
     * Force and extension of one faller.
     *
     * @param force largest force [N]
     * @param extension largest extension [m]
     */
    public record Bound(double force, double extension) {
        /** The larger force and the larger extension of two. */
        Bound orWorse(Bound other) {
            return new Bound(Math.max(force, other.force), Math.max(extension, other.extension));
        }
    }

    /**
     * A problem.
     *
     * @param fallers those who fall
     * @param start gives the path of the line from before the fall, a new one at each call
     */
    public UnequalFallers(List<Faller> fallers, Supplier<LoadPath> start) {
        this.fallers = List.copyOf(fallers);
        this.start = start;
    }

    /**
     * Finds the bounds.
     *
     * @return force and extension of each, in their order
     * @throws org.lifeline.base.NoEquilibriumException if there are none
     */
    public List<Bound> solve() {
        List<Bound> alone = new ArrayList<>();
        for (Faller each : fallers) {
            alone.add(solve(each, 0, start.get()));
        }
        List<Bound> bounds = together(alone);
        for (int k = 0; k < BalanceTolerances.SEARCHES; k++) {
            List<Bound> worst = underWeakerPulls(alone, bounds);
            if (isNoWorse(worst, bounds)) {
                return worst;
            }
            bounds = together(worst);
        }
        throw start.get().failure("the forces of those who fall together find no common bound");
    }

    private static boolean isNoWorse(List<Bound> worst, List<Bound> known) {
        for (int i = 0; i < known.size(); i++) {
            if (worst.get(i).force() > known.get(i).force() * (1 + BalanceTolerances.SAME)
                    || worst.get(i).extension() > known.get(i).extension() * (1 + BalanceTolerances.SAME)) {
                return false;
            }
        }
        return true;
    }

    /** The largest each can come to under any pull of the others from none up to their bounds. */
    private List<Bound> underWeakerPulls(List<Bound> alone, List<Bound> bounds) {
        List<Bound> list = new ArrayList<>();
        for (int i = 0; i < fallers.size(); i++) {
            Faller faller = fallers.get(i);
            double others = total(bounds) - bounds.get(i).force();
            WeakerPulls pulls = new WeakerPulls(others, q -> solve(faller, q, start.get()));
            list.add(pulls.worst(alone.get(i), bounds.get(i)));
        }
        return List.copyOf(list);
    }

    /** Bounds of which each is found with the others at their bounds, and none is below what is known as its least. */
    private List<Bound> together(List<Bound> least) {
        List<Bound> bounds = new ArrayList<>(least);
        List<List<Bound>> rounds = new ArrayList<>();
        while (rounds.size() < BalanceTolerances.ROUNDS) {
            double change = 0;
            for (int i = 0; i < fallers.size(); i++) {
                double others = total(bounds) - bounds.get(i).force();
                Bound now = solve(fallers.get(i), others, start.get()).orWorse(least.get(i));
                // Rounding must not let a force wander up and down.
                change = Math.max(change, Math.abs(now.force() - bounds.get(i).force()) / now.force());
                bounds.set(i, now);
            }
            rounds.add(List.copyOf(bounds));
            if (change <= BalanceTolerances.FORCES) {
                return List.copyOf(bounds);
            }
            if (rounds.size() >= BalanceTolerances.WANDERING) {
                List<List<Bound>> last = rounds.subList(rounds.size() - BalanceTolerances.WANDERING, rounds.size());
                if (wanders(last)) {
                    return largest(last);
                }
            }
        }
        throw start.get().failure("the forces of those who fall together find no common bound");
    }

    /**
     * Tells whether forces go up and down by no more than what paths leave on a line with friction, on which steps that are chosen
     * otherwise for the last digit give another seventh digit. From below they only rise.
     */
    private static boolean wanders(List<List<Bound>> rounds) {
        int falls = 0;
        for (int k = 1; k < rounds.size(); k++) {
            falls += total(rounds.get(k)) < total(rounds.get(k - 1)) ? 1 : 0;
        }
        if (falls < BalanceTolerances.FALLS) {
            return false;
        }
        List<Bound> most = largest(rounds);
        for (List<Bound> round : rounds) {
            for (int i = 0; i < most.size(); i++) {
                double force = most.get(i).force();
                if (force - round.get(i).force() > BalanceTolerances.PATHS * force) {
                    return false;
                }
            }
        }
        return true;
    }

    /** The largest force and extension of each. */
    private static List<Bound> largest(List<List<Bound>> rounds) {
        List<Bound> most = new ArrayList<>(rounds.get(0));
        for (List<Bound> round : rounds) {
            for (int i = 0; i < most.size(); i++) {
                most.set(i, most.get(i).orWorse(round.get(i)));
            }
        }
        return List.copyOf(most);
    }

    /** Sum of all forces [N]. */
    public static double total(List<Bound> bounds) {
        return bounds.stream().mapToDouble(Bound::force).sum();
    }

    private static Bound solve(Faller faller, double others, LoadPath path) {
        FallBalance balance = new FallBalance(faller.weight(), faller.curve(), faller.freeFall());
        balance.pulledBy(path, others);
        double x = balance.solve(path);
        return new Bound(path.peakForce() - others, x);
    }
}
