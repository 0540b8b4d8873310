package org.lifeline.design.variable;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.NavigableSet;
import java.util.TreeSet;
import java.util.concurrent.CancellationException;
import java.util.function.DoubleUnaryOperator;
import org.jspecify.annotations.Nullable;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.NoEquilibriumException;
import org.lifeline.design.criteria.Criterion;
import org.lifeline.design.criteria.CriterionResult;
import org.lifeline.design.criteria.Status;
import org.lifeline.design.envelope.Extremes;
import org.lifeline.design.envelope.WorstCases;
import org.lifeline.design.variable.FeasibleInterval.Closure;
import org.lifeline.internal.numeric.OrderedWork;
import org.lifeline.internal.numeric.Roots;
import org.lifeline.model.LifelineDesign;

/**
 * Solves for the feasible ranges of one variable. Works on shares of the way between the bounds.
 *
 * <p>Over an envelope it searches with the cases that govern, which are learned from some envelopes, and then confirms every
 * end, and a value within, by the whole envelope. A case that the envelope knows and the search did not is learned, and the
 * search is made again; an end that the envelope puts a little further inside is moved there. What cannot be confirmed so is
 * searched with the envelope throughout. Not thread-safe.
 */
final class FeasibleRangeSolver {
    /** Searches with learned cases after which the envelope is used throughout; two or three are usual. */
    private static final int MOST_SEARCHES = 6;

    /** First step into a range to where its end is confirmed, over the half of the range [-]. */
    private static final double FIRST_STEP = 1.0 / 512;

    /** Growth of the step [-]. */
    private static final double STEP_GROWTH = 8;

    /** How near to 1 the ratio at an end has to lie [-]; twice the gain that an envelope does not look for. */
    private static final double ACCURACY = 2e-4;

    /** Excess of a ratio over 1 that stands for every larger one [-]: infinite ratios have no root. */
    private static final double LARGEST_EXCESS = 1e3;

    /** Width of the bracket of a least ratio over the width of the bounds [-]; it only has to be seen to lie below 1. */
    private static final double MINIMUM_WIDTH = 1e-3;

    /**
     * Where it is seen whether a ratio of exactly 1 stays so, over the way to where it is known to be larger [-]: within the
     * accuracy of an end, and far enough that a ratio that grows differs from 1 by more than rounding.
     */
    private static final double NEXT_TO_A_ROOT = 1e-6;

    /** Width over that of the bounds at which a jump counts as found [-]. */
    private static final double JUMP_WIDTH = 1e-9;

    private final FeasibleSearch search;
    private final LifelineDesign base;
    private final DesignVariable variable;
    private final Map<Double, Trial> trials = new LinkedHashMap<>();
    private final Map<Double, Trial> wholes = new LinkedHashMap<>();
    private final Map<Double, Double> shares = new LinkedHashMap<>();
    private final Map<String, String> open = new LinkedHashMap<>();
    private @Nullable GoverningCases guide;
    private int count;

    FeasibleRangeSolver(FeasibleSearch search, LifelineDesign base, DesignVariable variable) {
        this.search = search;
        this.base = base;
        this.variable = variable;
    }

    /** The listener wants no more. */
    private static final class Stopped extends RuntimeException {
        private static final long serialVersionUID = 1L;
    }

    /** The same with cases that are known already to govern. */
    FeasibleRangeSolver knowing(GoverningCases cases) {
        this.guide = cases;
        return this;
    }

    FeasibleResult run() {
        List<FeasibleInterval> intervals = new ArrayList<>();
        boolean complete = true;
        try {
            intervals.addAll(search.envelope().isPresent() ? confirmed() : searched());
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

    private List<FeasibleInterval> searched() {
        List<FeasibleInterval> intervals = new ArrayList<>();
        List<Double> shares = new ArrayList<>(firstShares());
        shares.forEach(this::trial);
        if (!variable.isWhole()) {
            addMinima(shares);
        }
        collect(shares, intervals);
        return intervals;
    }

    /** The ranges over an envelope, searched with the cases that govern and confirmed by the envelope. */
    private List<FeasibleInterval> confirmed() {
        if (guide == null) {
            guide = GoverningCases.of(search.envelope().orElseThrow()).sharedBy(search.shared());
            for (double share : variable.bounds().width() == 0 ? List.of(0.0) : List.of(0.0, 0.5, 1.0)) {
                whole(variable.isWhole() ? shareOf(variable.at(share)) : share);
            }
        }
        for (int i = 0; i < MOST_SEARCHES; i++) {
            trials.clear();
            trials.putAll(wholes);
            List<FeasibleInterval> found = searched();
            boolean learned = false;
            for (FeasibleInterval each : found) {
                boolean low = isRefuted(each.low());
                boolean high = isRefuted(each.high());
                boolean middle = !whole(middle(each)).isFeasible();
                learned = learned || low || high || middle;
            }
            if (found.isEmpty()) {
                Trial best = trials.values().stream()
                        .min(Comparator.comparingDouble(Trial::ratio))
                        .orElseThrow();
                whole(shareOf(best.value()));
            }
            if (!learned) {
                return found.stream()
                        .map(f -> new FeasibleInterval(moved(f.low(), middle(f)), moved(f.high(), middle(f))))
                        .toList();
            }
        }
        guide = null;
        trials.clear();
        trials.putAll(wholes);
        return searched();
    }

    private double middle(FeasibleInterval range) {
        double middle =
                0.5 * (shareOf(range.low().value()) + shareOf(range.high().value()));
        return variable.isWhole() ? shareOf(variable.at(middle)) : middle;
    }

    /** Tells whether the envelope finds an end not met by more than what moving it a little can mend. */
    private boolean isRefuted(FeasibleInterval.End end) {
        Trial t = whole(shareOf(end.value()));
        boolean slightly = end.closure() == Closure.CRITERION && t.ratio() <= 1 + ACCURACY;
        return !t.isFeasible() && !slightly;
    }

    /** The end where the envelope sees it, no further than a share within the range. */
    private FeasibleInterval.End moved(FeasibleInterval.End end, double within) {
        double share = shareOf(end.value());
        Trial at = whole(share);
        if (at.isFeasible()) {
            return new FeasibleInterval.End(at, end.closure(), end.by());
        }
        double step = FIRST_STEP * (within - share);
        double in = share;
        while (in != within && !whole(in).isFeasible()) {
            double next = share + step;
            in = Math.abs(step) >= Math.abs(within - share) ? within : next;
            step *= STEP_GROWTH;
        }
        double root = beyondOne(x -> excess(whole(x)), in, share).in();
        return new FeasibleInterval.End(whole(root), Closure.CRITERION, end.by());
    }

    private double shareOf(double value) {
        Double known = shares.get(value);
        double width = variable.bounds().width();
        return known != null
                ? known
                : width == 0 ? 0 : (value - variable.bounds().low()) / width;
    }

    /** A share tried over the whole envelope, whose cases the search knows from then on. */
    private Trial whole(double share) {
        Trial known = wholes.get(share);
        if (known == null) {
            known = analyse(variable.at(share), search.analysis());
            wholes.put(share, known);
            record(share, known);
        }
        return known;
    }

    private void record(double share, Trial t) {
        trials.put(share, t);
        shares.put(t.value(), share);
        count++;
        if (!search.listener().progress(count, Math.max(count, search.samples()))) {
            throw new Stopped();
        }
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
            for (double v = variable.firstWhole(); v <= variable.lastWhole(); v++) {
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
            double low = shares.get(Math.max(0, i - 1));
            double high = shares.get(Math.min(shares.size() - 1, i + 1));
            // Bounds without width have nothing beside their one value.
            if (here > 0 && lowest && here < LARGEST_EXCESS && low < high) {
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
        Ends ends = beyondOne(this::excess, in, out);
        Trial at = trial(ends.in());
        if (at.ratio() == 1) {
            // What ends the range may be another criterion than the one that stays at its limit within.
            Trial next = trial(ends.out());
            return excess(next) <= ACCURACY
                    ? new FeasibleInterval.End(at, Closure.CRITERION, next.governing())
                    : closed(at, next, Closure.JUMP);
        }
        if (at.ratio() >= 1 - 2 * ACCURACY) {
            return new FeasibleInterval.End(at, Closure.CRITERION, at.governing());
        }
        return closed(at, firstBeyond(ends.in(), outside), Closure.JUMP);
    }

    /** Two shares, the one within the range and the other beyond its end. */
    private record Ends(double in, double out) {}

    /**
     * Where an excess passes from zero or less to more. A root of it is no end where the excess stays at exactly zero beyond,
     * as it does where another criterion is at its limit for every value: from there the end is closed in by halving.
     */
    private Ends beyondOne(DoubleUnaryOperator excess, double inside, double outside) {
        double in = excess.applyAsDouble(inside) == 0
                ? inside
                : Roots.crossing(
                        "end of the feasible range of " + variable,
                        excess,
                        Math.min(inside, outside),
                        Math.max(inside, outside),
                        ACCURACY);
        double out = outside;
        if (excess.applyAsDouble(in) < 0) {
            return new Ends(in, out);
        }
        double slope = Double.POSITIVE_INFINITY;
        double next = in + NEXT_TO_A_ROOT * (out - in);
        while (true) {
            double there = excess.applyAsDouble(next);
            if (there > 0) {
                slope = Math.abs((excess.applyAsDouble(out) - there) / (out - next));
                out = next;
            } else {
                in = next;
            }
            double width = Math.abs(out - in);
            // Within, the ratio says nothing of how near the end is: as far as it changes beyond the end is known.
            if (width <= JUMP_WIDTH || (excess.applyAsDouble(out) <= ACCURACY && slope * width <= ACCURACY)) {
                return new Ends(in, out);
            }
            next = 0.5 * (in + out);
        }
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

    /** A value of the variable, tried; over an envelope with the cases that were found to govern. */
    Trial at(double value) {
        return analyse(value, guide == null ? search.analysis() : guide);
    }

    /** How far the worst ratio lies above 1; kept finite. */
    private double excess(double share) {
        return excess(trial(share));
    }

    private static double excess(Trial t) {
        return Math.min(t.ratio() - 1, LARGEST_EXCESS);
    }

    private Trial trial(double share) {
        Trial known = trials.get(share);
        if (known != null) {
            return known;
        }
        Trial t = at(variable.at(share));
        record(share, t);
        return t;
    }

    private Trial analyse(double value, WorstCases analysis) {
        List<CriterionResult> results = new ArrayList<>();
        try {
            Extremes extremes = analysis.extremes(variable.apply(base, value));
            OrderedWork.stopIfInterrupted();
            if (guide != null && analysis != guide) {
                guide = guide.and(extremes);
            }
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
