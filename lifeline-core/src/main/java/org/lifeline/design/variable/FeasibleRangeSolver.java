package org.lifeline.design.variable;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.NavigableSet;
import java.util.TreeSet;
import java.util.concurrent.CancellationException;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.NoEquilibriumException;
import org.lifeline.design.criteria.Criterion;
import org.lifeline.design.criteria.CriterionResult;
import org.lifeline.design.criteria.Status;
import org.lifeline.design.variable.FeasibleInterval.Closure;
import org.lifeline.internal.numeric.OrderedWork;
import org.lifeline.internal.numeric.Roots;
import org.lifeline.model.LifelineDesign;

/** Solves for the feasible ranges of one variable. Works on shares of the way between the bounds. Not thread-safe. */
final class FeasibleRangeSolver {
    /** How near to 1 the ratio at an end has to lie [-]; twice the gain that an envelope does not look for. */
    private static final double ACCURACY = 2e-4;

    /** Excess of a ratio over 1 that stands for every larger one [-]: infinite ratios have no root. */
    private static final double LARGEST_EXCESS = 1e3;

    /** Width of the bracket of a least ratio over the width of the bounds [-]; it only has to be seen to lie below 1. */
    private static final double MINIMUM_WIDTH = 1e-3;

    /** Width over that of the bounds at which a jump counts as found [-]. */
    private static final double JUMP_WIDTH = 1e-9;

    private final FeasibleSearch search;
    private final LifelineDesign base;
    private final DesignVariable variable;
    private final Map<Double, Trial> trials = new LinkedHashMap<>();
    private final Map<String, String> open = new LinkedHashMap<>();

    FeasibleRangeSolver(FeasibleSearch search, LifelineDesign base, DesignVariable variable) {
        this.search = search;
        this.base = base;
        this.variable = variable;
    }

    /** The listener wants no more. */
    private static final class Stopped extends RuntimeException {
        private static final long serialVersionUID = 1L;
    }

    FeasibleResult run() {
        List<FeasibleInterval> intervals = new ArrayList<>();
        boolean complete = true;
        try {
            List<Double> shares = new ArrayList<>(firstShares());
            shares.forEach(this::trial);
            if (!variable.isWhole()) {
                addMinima(shares);
            }
            collect(shares, intervals);
        } catch (Stopped | CancellationException e) {
            complete = false;
        }
        if (trials.isEmpty()) {
            throw new CancellationException("the search was interrupted before a value of " + variable + " was tried");
        }
        List<String> notEvaluated = open.entrySet().stream()
                .map(e -> e.getKey() + ": " + e.getValue())
                .toList();
        return new FeasibleResult(variable, intervals, List.copyOf(trials.values()), notEvaluated, complete);
    }

    private NavigableSet<Double> firstShares() {
        NavigableSet<Double> set = new TreeSet<>();
        double width = variable.bounds().width();
        int n = search.samples() - 1;
        if (width == 0) {
            return new TreeSet<>(List.of(0.0));
        }
        if (variable.isWhole()) {
            // Every whole number: a count has few, and no root to find between two.
            for (double v = Math.ceil(variable.bounds().low());
                    v <= variable.bounds().high();
                    v++) {
                set.add((v - variable.bounds().low()) / width);
            }
            return set;
        }
        for (int i = 0; i <= n; i++) {
            set.add((double) i / n);
        }
        return set;
    }

    /** Where no neighbour of a least ratio is feasible, something better may hide beside it. */
    private void addMinima(List<Double> shares) {
        List<Double> found = new ArrayList<>();
        for (int i = 0; i < shares.size(); i++) {
            double here = excess(shares.get(i));
            boolean lowest = (i == 0 || here <= excess(shares.get(i - 1)))
                    && (i == shares.size() - 1 || here <= excess(shares.get(i + 1)));
            if (here > 0 && lowest && here < LARGEST_EXCESS) {
                double low = shares.get(Math.max(0, i - 1));
                double high = shares.get(Math.min(shares.size() - 1, i + 1));
                double best = Roots.roughMinimum(this::excess, low, high, MINIMUM_WIDTH);
                if (excess(best) <= 0) {
                    found.add(best);
                }
            }
        }
        shares.addAll(found);
        shares.sort(null);
    }

    private void collect(List<Double> shares, List<FeasibleInterval> intervals) {
        FeasibleInterval.End low = null;
        for (int i = 0; i < shares.size(); i++) {
            boolean inside = trial(shares.get(i)).isFeasible();
            boolean before = i > 0 && trial(shares.get(i - 1)).isFeasible();
            if (inside && low == null) {
                low = i == 0 ? bound(shares.get(i)) : edge(shares.get(i), shares.get(i - 1));
            }
            if (low != null && before && !inside) {
                intervals.add(new FeasibleInterval(low, edge(shares.get(i - 1), shares.get(i))));
                low = null;
            }
        }
        if (low != null) {
            intervals.add(new FeasibleInterval(low, bound(shares.get(shares.size() - 1))));
        }
    }

    private FeasibleInterval.End bound(double share) {
        return new FeasibleInterval.End(trial(share), Closure.BOUND, "");
    }

    /** The last feasible share between a feasible one and one that is not. */
    private FeasibleInterval.End edge(double inside, double outside) {
        Trial beyond = trial(outside);
        if (variable.isWhole()) {
            return closed(trial(inside), beyond, Closure.JUMP);
        }
        double in = inside;
        double out = outside;
        // Past where the design cannot be analysed, or has no capacity at all, halving is all that can be done.
        while (Math.abs(excess(out)) >= LARGEST_EXCESS && Math.abs(out - in) > JUMP_WIDTH) {
            double middle = 0.5 * (in + out);
            if (trial(middle).isFeasible()) {
                in = middle;
            } else {
                out = middle;
            }
        }
        beyond = trial(out);
        if (Math.abs(out - in) <= JUMP_WIDTH) {
            return closed(trial(in), beyond, Closure.JUMP);
        }
        double root = excess(in) == 0
                ? in
                : Roots.crossing(
                        "end of the feasible range of " + variable,
                        this::excess,
                        Math.min(in, out),
                        Math.max(in, out),
                        ACCURACY);
        Trial at = trial(root);
        if (at.ratio() >= 1 - 2 * ACCURACY) {
            return new FeasibleInterval.End(at, Closure.CRITERION, at.governing());
        }
        return closed(at, firstBeyond(root, outside), Closure.JUMP);
    }

    /** The trial next to a share on the side of another one. */
    private Trial firstBeyond(double share, double toward) {
        Trial next = trial(toward);
        double nearest = Math.abs(toward - share);
        for (Map.Entry<Double, Trial> e : trials.entrySet()) {
            double way = (e.getKey() - share) * Math.signum(toward - share);
            if (way > 0 && way < nearest && !e.getValue().isFeasible()) {
                nearest = way;
                next = e.getValue();
            }
        }
        return next;
    }

    private static FeasibleInterval.End closed(Trial at, Trial beyond, Closure jump) {
        boolean failed = !beyond.reason().isEmpty();
        return new FeasibleInterval.End(
                at, failed ? Closure.FAILURE : jump, failed ? beyond.reason() : beyond.governing());
    }

    /** A value of the variable, tried. */
    Trial at(double value) {
        return analyse(value);
    }

    /** How far the worst ratio lies above 1; kept finite. */
    private double excess(double share) {
        return Math.min(trial(share).ratio() - 1, LARGEST_EXCESS);
    }

    private Trial trial(double share) {
        Trial known = trials.get(share);
        if (known != null) {
            return known;
        }
        Trial t = analyse(variable.at(share));
        trials.put(share, t);
        if (!search.listener().progress(trials.size(), Math.max(trials.size(), search.samples()))) {
            throw new Stopped();
        }
        return t;
    }

    private Trial analyse(double value) {
        List<CriterionResult> results = new ArrayList<>();
        try {
            var extremes = search.analysis().extremes(variable.apply(base, value));
            OrderedWork.stopIfInterrupted();
            if (!extremes.failures().isEmpty()) {
                return new Trial(
                        value,
                        Double.POSITIVE_INFINITY,
                        "",
                        extremes.failures().get(0).toString());
            }
            if (!extremes.coversEverything()) {
                return new Trial(value, Double.POSITIVE_INFINITY, "", "its analysis was ended early");
            }
            for (Criterion c : search.criteria()) {
                results.add(c.check(extremes));
            }
        } catch (InvalidInputException | NoEquilibriumException e) {
            return new Trial(value, Double.POSITIVE_INFINITY, "", String.valueOf(e.getMessage()));
        }
        double worst = Double.NaN;
        String governing = "";
        for (CriterionResult r : results) {
            if (r.status() == Status.NOT_EVALUATED) {
                open.putIfAbsent(r.criterion().id(), r.reason());
            }
            if (!Double.isNaN(r.ratio()) && !(r.ratio() <= worst)) {
                worst = r.ratio();
                governing = r.criterion().id();
            }
        }
        if (Double.isNaN(worst)) {
            return new Trial(value, Double.POSITIVE_INFINITY, "", "no criterion could be evaluated: " + open);
        }
        // A ratio of 1 but for rounding is 1, as in the checks.
        return new Trial(value, worst > 1 && Status.of(worst) == Status.MET ? 1 : worst, governing, "");
    }
}
