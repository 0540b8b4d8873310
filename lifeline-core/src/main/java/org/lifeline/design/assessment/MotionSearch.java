package org.lifeline.design.assessment;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.function.LongFunction;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import org.lifeline.analysis.Method;
import org.lifeline.analysis.motion.ForceFilter;
import org.lifeline.base.InvalidInputException;
import org.lifeline.design.envelope.ComputedCase;
import org.lifeline.design.envelope.Envelope;
import org.lifeline.design.envelope.Extreme;
import org.lifeline.design.envelope.Extremes;
import org.lifeline.design.envelope.FailedCase;
import org.lifeline.design.envelope.FallCase;
import org.lifeline.design.envelope.LoadCombination;
import org.lifeline.design.envelope.Quantity;
import org.lifeline.internal.numeric.OrderedWork;
import org.lifeline.internal.numeric.SharedWork;
import org.lifeline.model.Attachment;
import org.lifeline.model.Fall;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Place;
import org.lifeline.model.Worker;
import org.lifeline.model.absorber.DeploymentForce;
import org.lifeline.model.incident.SecondFall;

/**
 * The search for the worst in time, in rounds; each works on its cases independently of one another, with what the rounds
 * before have found, so that the outcome does not depend on the threads.
 *
 * <ol>
 *   <li>a survey follows the given cases, those that are stated or govern by energy balance, and the falls at a few stations of
 *       every span on one coarse mesh, then beside the worst of these;
 *   <li>the worst of the survey are followed finely, quantity by quantity, where they may be worse than what is known, and so are
 *       the given cases that the coarse mesh lost;
 *   <li>where the design states a further worker who may fall within the first second, the same with him beside the worst;
 *   <li>what governs is followed finely with other damping times.
 * </ol>
 */
final class MotionSearch {
    private final LifelineDesign design;
    private final Envelope envelope;
    private final @Nullable SharedWork shared;
    private final StagedProgress progress;
    private final Follower follower;
    private final Map<Follower.Key, FollowedArrest> fine = new LinkedHashMap<>();
    private final Map<Follower.Key, Survey> surveyed = new LinkedHashMap<>();
    private final List<NotComputed> failures = new ArrayList<>();
    private final Map<Follower.Key, List<FollowedArrest>> damped = new LinkedHashMap<>();
    private final Extremes known;
    private final ForceFilter filter;
    private boolean whole = true;

    /**
     * A case of the survey, the distance of the stations that were looked at beside it as a share of the span [-], and what is to
     * be expected of it on fine meshes, by the names of the values.
     */
    private record Survey(Follower.Task task, double step, Map<String, Double> expected) {}

    /** The worst by energy balance, and how forces in time are read. */
    record Known(Extremes balance, ForceFilter filter) {}

    MotionSearch(Known known, Envelope envelope, @Nullable SharedWork shared, StagedProgress progress) {
        this.known = known.balance;
        this.filter = known.filter;
        this.design = known.balance.design();
        this.envelope = envelope;
        this.shared = shared;
        this.progress = progress;
        this.follower = new Follower(design.clearance());
    }

    /** Follows given cases and looks for worse ones. */
    void run(List<ComputedCase> given) {
        List<Follower.Task> tasks = new ArrayList<>();
        for (ComputedCase each : given) {
            tasks.add(Follower.Task.of(each.fallCase(), each.arrest().line()));
        }
        survey(tasks, SearchParameters.FIRST_STEP);
        followFinely(tasks.stream().filter(t -> !surveyed.containsKey(t.key())).toList());
        survey();
        for (int round = 0; round < SearchParameters.ROUNDS; round++) {
            besideTheWorst();
        }
        for (int pass = 0; pass < SearchParameters.FOLLOWED_PER_QUANTITY; pass++) {
            followFinely(worst().stream().map(Survey::task).toList());
        }
        if (whole) {
            design.secondFall().ifPresent(this::secondFall);
            damping();
        }
    }

    /**
     * Follows a further worker who falls within the first second, after each of the delays beside every arrest that is worst
     * without him; then at the places beside the worst of these and half-way between its delays.
     */
    private void secondFall(SecondFall second) {
        String what = "second fall of " + second.worker() + " within the first second";
        Worker worker = design.workers().stream()
                .filter(w -> w.id().equals(second.worker()))
                .findFirst()
                .orElseThrow();
        List<Follower.Task> tasks = new ArrayList<>();
        try {
            for (Survey each : worstOf(c -> !c.fall().names(worker.id()))) {
                for (double delay : second.delays()) {
                    tasks.add(each.task().later(worker, delay));
                }
            }
        } catch (InvalidInputException e) {
            failures.add(new NotComputed(what, FailedCase.words(e)));
            return;
        }
        if (tasks.isEmpty()) {
            failures.add(new NotComputed(what, "no arrest that it could come after was followed in time"));
            return;
        }
        survey(tasks, SearchParameters.FIRST_STEP);
        followFinely(tasks.stream().filter(t -> !surveyed.containsKey(t.key())).toList());
        for (int round = 0; round < SearchParameters.ROUNDS; round++) {
            besideTheWorst();
            betweenDelays(second.delays());
        }
        for (int pass = 0; pass < SearchParameters.FOLLOWED_PER_QUANTITY; pass++) {
            followFinely(worst().stream().map(Survey::task).toList());
        }
        // What is worst with him is said even where something else governs.
        followFinely(
                worstOf(c -> c.later().isPresent()).stream().map(Survey::task).toList());
    }

    /** Looks half-way to the delays before and after the worst. */
    private void betweenDelays(List<Double> delays) {
        List<Follower.Task> tasks = new ArrayList<>();
        for (Survey each : worst()) {
            FallCase c = each.task().fallCase();
            int at = c.later().map(l -> delays.indexOf(l.delay())).orElse(-1);
            for (int other : new int[] {at - 1, at + 1}) {
                if (at >= 0 && other >= 0 && other < delays.size()) {
                    double delay = 0.5 * (delays.get(at) + delays.get(other));
                    tasks.add(Follower.Task.of(c.delayed(delay), each.task().line()));
                }
            }
        }
        survey(tasks, SearchParameters.FIRST_STEP);
    }

    /** The case of the survey that is worst for each quantity, of those that pass. */
    private List<Survey> worstOf(Predicate<FallCase> passes) {
        Map<String, Survey> worst = new LinkedHashMap<>();
        for (Survey each : surveyed.values()) {
            if (passes.test(each.task().fallCase())) {
                each.expected().forEach((name, value) -> {
                    Survey old = worst.get(name);
                    double sign = isLeast(name) ? -1 : 1;
                    if (old == null || sign * value > sign * old.expected().getOrDefault(name, Double.NaN)) {
                        worst.put(name, each);
                    }
                });
            }
        }
        // A free fall is over before a second one can matter.
        worst.remove(Quantity.FREE_FALL.key());
        Map<Follower.Key, Survey> distinct = new LinkedHashMap<>();
        worst.values().forEach(s -> distinct.putIfAbsent(s.task().key(), s));
        return List.copyOf(distinct.values());
    }

    private static boolean isLeast(String name) {
        return Quantity.of(name).map(q -> !q.largestIsWorst()).orElse(name.startsWith("margin"));
    }

    private void followFinely(List<Follower.Task> tasks) {
        Map<Follower.Key, Follower.Task> fresh = new LinkedHashMap<>();
        tasks.stream().filter(t -> !fine.containsKey(t.key())).forEach(t -> fresh.putIfAbsent(t.key(), t));
        for (Follower.Attempt each : all(List.copyOf(fresh.values()), follower::fine)) {
            if (each.failure() != null) {
                failures.add(each.failure());
            } else {
                fine.put(each.task().key(), each.followed());
            }
        }
    }

    private void survey() {
        if (!whole) {
            return;
        }
        List<Follower.Task> tasks = new ArrayList<>();
        for (LoadCombination combination : envelope.combinations(design)) {
            for (Fall fall : Envelope.movingFalls(design)) {
                for (int span = 1; span <= design.line().spans(); span++) {
                    for (double share : stations(combination)) {
                        Place place = Place.of(span, share * design.line().run(span));
                        tasks.add(Follower.Task.of(combination.of(fall.at(place)), combination.line()));
                        if (mayBeHeld(fall, combination)) {
                            tasks.add(Follower.Task.of(combination.held().of(fall.at(place)), combination.line()));
                        }
                    }
                }
            }
        }
        survey(tasks, SearchParameters.FIRST_STEP);
    }

    /** A free-running attachment that is held gives larger forces, and smaller distances. */
    private static boolean mayBeHeld(Fall fall, LoadCombination combination) {
        return combination.side() == DeploymentForce.MAXIMUM
                && fall.fallers().get(0).attachment() == Attachment.FREE_RUNNING;
    }

    private static List<Double> stations(LoadCombination combination) {
        return combination.side() == DeploymentForce.MAXIMUM
                ? SearchParameters.SURVEY
                : SearchParameters.SURVEY_OF_DISTANCES;
    }

    private void survey(List<Follower.Task> tasks, double step) {
        Map<Follower.Key, Follower.Task> fresh = new LinkedHashMap<>();
        tasks.stream().filter(t -> !surveyed.containsKey(t.key())).forEach(t -> fresh.putIfAbsent(t.key(), t));
        for (Follower.Attempt each : all(List.copyOf(fresh.values()), follower::coarse)) {
            // What the coarse mesh loses is no result, and no failure of one either: the fine ones are.
            if (each.failure() == null) {
                surveyed.put(each.task().key(), new Survey(each.task(), step, expected(each.followed())));
            }
        }
    }

    /** Looks half-way to the stations beside the worst of the survey. */
    private void besideTheWorst() {
        Map<Follower.Key, Double> steps = new LinkedHashMap<>();
        List<Follower.Task> tasks = new ArrayList<>();
        double step = 1;
        for (Survey each : worst()) {
            step = 0.5 * each.step();
            Place at = each.task().fallCase().fall().place();
            if (at.isAtSupport()) {
                continue;
            }
            double run = design.line().run(at.span());
            for (int side : new int[] {-1, 1}) {
                double station = at.station() + side * step * run;
                if (station > 0 && station < run) {
                    FallCase moved = each.task().fallCase().at(Place.of(at.span(), station));
                    tasks.add(Follower.Task.of(moved, each.task().line()));
                }
            }
            steps.put(each.task().key(), step);
        }
        if (!tasks.isEmpty()) {
            survey(tasks, step);
            steps.forEach((key, value) ->
                    surveyed.computeIfPresent(key, (k, s) -> new Survey(s.task(), value, s.expected())));
        }
    }

    /**
     * The case of the survey that is worst for each quantity, of those that were not followed finely yet, as far as it may be
     * worse than what is known; nothing any more once the search was ended.
     */
    private List<Survey> worst() {
        if (!whole) {
            return List.of();
        }
        Map<Follower.Key, Survey> found = new LinkedHashMap<>();
        for (Extreme known : AssessmentResult.governing(design, Extremes.joined(this.known, List.of(extremes())))) {
            boolean least = isLeast(known.name());
            double error = known.unit().equals("N")
                    ? SearchParameters.SURVEY_ERROR * Math.abs(known.value())
                    : SearchParameters.SURVEY_LENGTH_ERROR;
            double bar = least ? -known.value() - error : known.value() - error;
            Survey worst = null;
            for (Survey each : surveyed.values()) {
                Double expected = fine.containsKey(each.task().key())
                        ? null
                        : each.expected().get(known.name());
                double value = expected == null ? Double.NaN : least ? -expected : expected;
                if (value > bar) {
                    bar = value;
                    worst = each;
                }
            }
            if (worst != null) {
                found.putIfAbsent(worst.task().key(), worst);
            }
        }
        return List.copyOf(found.values());
    }

    private static Follower.Key keyOf(Extreme e) {
        return Follower.Task.of(e.fallCase(), e.arrest().line()).key();
    }

    /**
     * What is to be expected of a case on fine meshes: a force with the allowance that they give at least, and with that of its
     * spike, since what a low-pass filter takes off a peak counts in the allowance and the survey's single mesh bounds nothing.
     */
    private Map<String, Double> expected(FollowedArrest surveyed) {
        List<ComputedCase> one = List.of(surveyed.computed());
        Map<String, Double> smooth = new LinkedHashMap<>();
        for (Extreme e :
                AssessmentResult.governing(design, Extremes.ofCases(design, one, ForceFilter.LOW_PASS_100_HZ))) {
            smooth.put(e.name(), e.computed());
        }
        Map<String, Double> map = new LinkedHashMap<>();
        for (Extreme e : AssessmentResult.governing(design, extremes(one))) {
            double allowance = 0;
            if (e.unit().equals("N")) {
                double spike = e.computed() - smooth.getOrDefault(e.name(), e.computed());
                allowance =
                        Math.max(SearchParameters.EXPECTED_ALLOWANCE * e.computed(), SearchParameters.SPIKE * spike);
            }
            map.put(e.name(), e.computed() + allowance);
        }
        return map;
    }

    private void damping() {
        List<Follower.Task> tasks = new ArrayList<>();
        Map<Follower.Key, Follower.Task> distinct = new LinkedHashMap<>();
        Extremes both = Extremes.joined(known, List.of(extremes()));
        for (Extreme e : AssessmentResult.governing(design, both)) {
            if (e.arrest().method() != Method.TRANSIENT) {
                continue;
            }
            Follower.Task t = Follower.Task.of(e.fallCase(), e.arrest().line());
            distinct.putIfAbsent(t.key(), t);
        }
        List<Double> factors = new ArrayList<>();
        for (Follower.Task t : distinct.values()) {
            for (double f : SearchParameters.DAMPING) {
                tasks.add(t);
                factors.add(f);
            }
        }
        List<Follower.Attempt> attempts =
                indexed(tasks.size(), i -> follower.damped(tasks.get((int) i), factors.get((int) i)));
        for (int i = 0; i < attempts.size(); i++) {
            Follower.Attempt a = attempts.get(i);
            if (a.failure() == null) {
                damped.computeIfAbsent(a.task().key(), k -> new ArrayList<>()).add(a.followed());
            } else {
                failures.add(new NotComputed(
                        a.failure().what() + ", damping time × " + factors.get(i),
                        a.failure().why()));
            }
        }
    }

    private List<Follower.Attempt> all(List<Follower.Task> tasks, Function<Follower.Task, Follower.Attempt> work) {
        return indexed(tasks.size(), i -> work.apply(tasks.get((int) i)));
    }

    private List<Follower.Attempt> indexed(int count, LongFunction<Follower.Attempt> work) {
        List<Follower.Attempt> list = new ArrayList<>();
        if (!whole) {
            return list;
        }
        progress.begin(count);
        long done = OrderedWork.run(count, work, shared, (i, attempt) -> {
            list.add(attempt);
            return progress.done(i + 1);
        });
        whole = done == count;
        return list;
    }

    /** The fine arrests in the order in which they were followed. */
    List<FollowedArrest> followed() {
        return List.copyOf(fine.values());
    }

    /** The worst of the fine arrests. */
    Extremes extremes() {
        return extremes(computed());
    }

    private Extremes extremes(List<ComputedCase> cases) {
        return Extremes.ofCases(design, cases, filter);
    }

    List<ComputedCase> computed() {
        return fine.values().stream().map(FollowedArrest::computed).toList();
    }

    /** The arrests of a case with other damping times. */
    List<FollowedArrest> dampedOf(Extreme e) {
        return damped.getOrDefault(keyOf(e), List.of());
    }

    List<NotComputed> failures() {
        return List.copyOf(failures);
    }

    int surveys() {
        return surveyed.size();
    }

    /** Tells whether every round was carried through. */
    boolean isComplete() {
        return whole;
    }
}
