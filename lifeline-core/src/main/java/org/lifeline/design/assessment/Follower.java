package org.lifeline.design.assessment;

import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.lifeline.analysis.TransientArrest;
import org.lifeline.analysis.TransientResult;
import org.lifeline.analysis.state.AttachmentLimit;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.NoEquilibriumException;
import org.lifeline.design.envelope.FailedCase;
import org.lifeline.design.envelope.FallCase;
import org.lifeline.model.Attachment;
import org.lifeline.model.ClearanceRules;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Place;
import org.lifeline.model.Worker;

/** Follows cases in time: finely, as a result, or on one coarse mesh, as a survey. Immutable and thread-safe. */
final class Follower {
    private final ClearanceRules clearance;

    Follower(ClearanceRules clearance) {
        this.clearance = clearance;
    }

    /** A case with the line that goes with it, and what tells cases from one another: everything that an arrest depends on. */
    record Task(FallCase fallCase, Lifeline line, Key key) {
        static Task of(FallCase fallCase, Lifeline line) {
            return new Task(
                    fallCase,
                    line,
                    new Key(fallCase.describe(), fallCase.fall().place().toString()));
        }

        /** The same with a further worker who falls so much later [s]. */
        Task later(Worker worker, double delay) {
            return of(fallCase.withLater(worker, delay), line);
        }
    }

    /** Identity of a case. */
    record Key(String description, String place) {}

    /** An arrest that was followed, or why there is none. */
    record Attempt(
            Task task,
            @Nullable FollowedArrest arrest,
            @Nullable NotComputed failure) {
        FollowedArrest followed() {
            return Objects.requireNonNull(arrest, "arrest");
        }
    }

    private TransientArrest of(Task task, int refinements) {
        FallCase fallCase = task.fallCase();
        Lifeline line = task.line();
        double run = line.run(line.spanOf(fallCase.fall().place()));
        TransientArrest analysis = TransientArrest.withDefaults()
                .withTemperature(fallCase.temperature())
                .withSide(fallCase.side())
                .withClearance(clearance)
                .withDuration(SearchParameters.DURATION
                        + fallCase.later().map(FallCase.Later::delay).orElse(0.0))
                .withSampling(SearchParameters.SAMPLING)
                .withEndAfterFirstCatch(0)
                .withSegmentLength(Math.max(run / SearchParameters.SEGMENTS, SearchParameters.SHORTEST))
                .withAccuracy(SearchParameters.ACCURACY)
                .withRefinements(refinements);
        if (fallCase.later().isPresent()) {
            FallCase.Later later = fallCase.later().get();
            analysis = analysis.withDelay(later.worker(), later.delay());
        }
        return fallCase.attachmentLimit().filter(l -> l == AttachmentLimit.HELD).isPresent()
                ? analysis.withAttachmentHeld()
                : analysis;
    }

    /** The case on as many meshes as give a bound of what finer ones would change. */
    Attempt fine(Task task) {
        return attempt(task, of(task, SearchParameters.REFINEMENTS), task.line());
    }

    /** The case on the first mesh alone, in long steps where they serve. */
    Attempt coarse(Task task) {
        TransientArrest analysis = of(task, 0);
        if (runsBesideSupport(task)) {
            return attempt(task, analysis, task.line());
        }
        Attempt quick = attempt(task, analysis.withLongSteps(), task.line());
        return quick.failure() == null ? quick : attempt(task, analysis, task.line());
    }

    /** Tells whether an attachment that may run falls beside a support: what happens there is too sharp for long steps. */
    private static boolean runsBesideSupport(Task task) {
        FallCase fallCase = task.fallCase();
        Place place = fallCase.fall().place();
        if (place.isAtSupport()
                || fallCase.fall().fallers().get(0).attachment() == Attachment.GRIPPED
                || fallCase.attachmentLimit()
                        .filter(l -> l == AttachmentLimit.HELD)
                        .isPresent()) {
            return false;
        }
        double run = task.line().run(place.span());
        return Math.min(place.station(), run - place.station()) < SearchParameters.BESIDE_SUPPORT * run;
    }

    /** The case on the meshes of the damping times, with a factor on the damping time of its cable [-]. */
    Attempt damped(Task task, double factor) {
        double tau = task.line().cable().dampingTime().orElse(TransientArrest.DAMPING_TIME);
        Lifeline line = task.line()
                .withCable(task.line().cable().toBuilder()
                        .dampingTime(factor * tau)
                        .build());
        return attempt(task, of(task, SearchParameters.DAMPING_REFINEMENTS), line);
    }

    private static Attempt attempt(Task task, TransientArrest analysis, Lifeline line) {
        try {
            TransientResult result = analysis.solve(line, task.fallCase().fall());
            return new Attempt(task, new FollowedArrest(task.fallCase(), result.arrest(), result.accurate()), null);
        } catch (NoEquilibriumException | InvalidInputException e) {
            String what = task.fallCase().describe() + ", in time";
            return new Attempt(task, null, new NotComputed(what, FailedCase.words(e)));
        }
    }
}
