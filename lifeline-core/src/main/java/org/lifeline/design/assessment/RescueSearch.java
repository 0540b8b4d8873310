package org.lifeline.design.assessment;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.EnergyBalance;
import org.lifeline.analysis.RescueLoad;
import org.lifeline.analysis.state.AttachmentLimit;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.NoEquilibriumException;
import org.lifeline.design.envelope.ComputedCase;
import org.lifeline.design.envelope.Envelope;
import org.lifeline.design.envelope.Extreme;
import org.lifeline.design.envelope.Extremes;
import org.lifeline.design.envelope.FailedCase;
import org.lifeline.design.envelope.FallCase;
import org.lifeline.design.envelope.LoadCombination;
import org.lifeline.internal.numeric.OrderedWork;
import org.lifeline.internal.numeric.SharedWork;
import org.lifeline.model.Fall;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Place;

/**
 * Looks for the place where a rescuer beside those who have fallen loads the line most: stations of every span, those of obstructions
 * among them, then smaller steps beside the worst of each quantity. Not thread-safe.
 */
final class RescueSearch {
    private final LifelineDesign design;
    private final Envelope envelope;
    private final @Nullable SharedWork shared;
    private final StagedProgress progress;
    private final RescueLoad analysis;
    private final Map<Follower.Key, ComputedCase> found = new LinkedHashMap<>();
    private final List<NotComputed> failures = new ArrayList<>();
    private final Set<Follower.Key> tried = new LinkedHashSet<>();
    private boolean whole = true;

    /** A state, or why there is none. */
    private record Attempt(
            Follower.Task task,
            @Nullable ArrestResult state,
            @Nullable NotComputed failure) {}

    RescueSearch(
            LifelineDesign design,
            Envelope envelope,
            @Nullable SharedWork shared,
            StagedProgress progress,
            double mass) {
        this.design = design;
        this.envelope = envelope;
        this.shared = shared;
        this.progress = progress;
        this.analysis = RescueLoad.ofRescuer(mass).withClearance(design.clearance());
    }

    /** Computes the stated falls and looks for the worst places. */
    void run(List<ComputedCase> stated) {
        List<Follower.Task> tasks = new ArrayList<>();
        stated.forEach(c -> tasks.add(Follower.Task.of(c.fallCase(), c.arrest().line())));
        for (LoadCombination combination : envelope.combinations(design)) {
            for (Fall fall : Envelope.movingFalls(design)) {
                for (int span = 1; span <= design.line().spans(); span++) {
                    for (double station : stations(span)) {
                        Fall moved = fall.at(Place.of(span, station));
                        tasks.add(Follower.Task.of(combination.of(moved), combination.line()));
                        if (moved.canRun()) {
                            tasks.add(Follower.Task.of(combination.held().of(moved), combination.line()));
                        }
                    }
                }
            }
        }
        compute(tasks);
        double step = SearchParameters.RESCUE_STEP;
        for (int round = 0; round < SearchParameters.RESCUE_ROUNDS; round++) {
            besideTheWorst(step);
            step /= 2;
        }
    }

    private List<Double> stations(int span) {
        List<Double> list = new ArrayList<>();
        SearchParameters.RESCUE.forEach(share -> list.add(share * design.line().run(span)));
        list.addAll(design.clearance().obstructionStations(design.line(), span));
        return list;
    }

    private void besideTheWorst(double step) {
        List<Follower.Task> tasks = new ArrayList<>();
        for (Extreme e : AssessmentResult.governing(design, extremes())) {
            Place at = e.fallCase().fall().place();
            if (at.isAtSupport()) {
                continue;
            }
            double run = design.line().run(at.span());
            double least = SearchParameters.RESCUE.get(0) * run;
            for (int side : new int[] {-1, 1}) {
                double station = at.station() + side * step * run;
                if (station >= least && station <= run - least) {
                    tasks.add(Follower.Task.of(
                            e.fallCase().at(Place.of(at.span(), station)),
                            e.arrest().line()));
                }
            }
        }
        compute(tasks);
    }

    private void compute(List<Follower.Task> tasks) {
        List<Follower.Task> fresh =
                tasks.stream().filter(t -> tried.add(t.key())).toList();
        if (!whole) {
            return;
        }
        progress.begin(fresh.size());
        long done = OrderedWork.run(fresh.size(), i -> attempt(fresh.get((int) i)), shared, (i, attempt) -> {
            if (attempt.state() != null) {
                found.put(attempt.task().key(), new ComputedCase(attempt.task().fallCase(), attempt.state()));
            } else if (attempt.failure() != null) {
                failures.add(attempt.failure());
            }
            return progress.done(i + 1);
        });
        whole = done == fresh.size();
    }

    private Attempt attempt(Follower.Task task) {
        FallCase c = task.fallCase();
        try {
            ArrestResult arrest = EnergyBalance.withDefaults()
                    .withTemperature(c.temperature())
                    .withSide(c.side())
                    .withClearance(design.clearance())
                    .withAttachmentLimit(c.attachmentLimit().orElse(AttachmentLimit.RUNNING))
                    .solve(task.line(), c.fall());
            return new Attempt(task, analysis.solve(arrest), null);
        } catch (NoEquilibriumException | InvalidInputException e) {
            return new Attempt(task, null, new NotComputed(c.describe() + ", rescue at rest", FailedCase.words(e)));
        }
    }

    /** The worst of all states. */
    Extremes extremes() {
        return Extremes.ofCases(design, List.copyOf(found.values()));
    }

    /** What could not be computed: the first case, with the number of the others. */
    List<NotComputed> failures() {
        if (failures.size() < 2) {
            return List.copyOf(failures);
        }
        NotComputed first = failures.get(0);
        return List.of(new NotComputed(first.what() + ", and " + (failures.size() - 1) + " more cases", first.why()));
    }

    List<ComputedCase> states() {
        return List.copyOf(found.values());
    }

    boolean isComplete() {
        return whole;
    }
}
