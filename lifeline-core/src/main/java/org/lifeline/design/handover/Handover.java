package org.lifeline.design.handover;

import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.NoEquilibriumException;
import org.lifeline.base.Violations;
import org.lifeline.design.assessment.AssessedCriterion;
import org.lifeline.design.assessment.AssessmentResult;
import org.lifeline.design.assessment.NotComputed;
import org.lifeline.design.criteria.Criterion;
import org.lifeline.design.criteria.CriterionResult;
import org.lifeline.design.envelope.Envelope;
import org.lifeline.design.envelope.FailedCase;
import org.lifeline.design.occupancy.Occupancy;

/**
 * Draws up what an assessed design hands over.
 *
 * <p>A part that cannot be computed is named with its reason and stops no other. Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public final class Handover {
    private final HandoverRequest request;

    private Handover(HandoverRequest request) {
        this.request = request;
    }

    /**
     * The parts of a request.
     *
     * @param request what is asked for
     * @return the analysis
     */
    public static Handover of(HandoverRequest request) {
        Violations.required("request", request);
        return new Handover(request);
    }

    /**
     * Draws up the parts.
     *
     * @param assessment the assessment of the design
     * @return the parts
     */
    public HandoverResult solve(AssessmentResult assessment) {
        Violations.required("assessment", assessment);
        HandoverResult.Parts parts = new HandoverResult.Parts();
        request.structure()
                .ifPresent(a ->
                        parts.structure = part(parts, "loads for the supporting structure", () -> a.solve(assessment)));
        request.clearance()
                .ifPresent(a -> parts.clearance = part(parts, "clearance along the line", () -> a.solve(assessment)));
        request.installation()
                .ifPresent(a -> parts.installation = part(parts, "installation", () -> a.solve(assessment.design())));
        if (request.numberOfWorkers()) {
            parts.occupancy = part(
                    parts,
                    "number of workers",
                    () -> Occupancy.meeting(criteria(assessment))
                            .withEnvelope(Envelope.withDefaults()
                                    .withTolerances(assessment.envelope().tolerances()))
                            .solve(assessment.design()));
        }
        return new HandoverResult(assessment, parts);
    }

    private static List<Criterion> criteria(AssessmentResult assessment) {
        return assessment.criteria().stream()
                .map(AssessedCriterion::result)
                .map(CriterionResult::criterion)
                .toList();
    }

    private static <T> @Nullable T part(HandoverResult.Parts parts, String what, Supplier<T> work) {
        try {
            return Optional.of(work.get()).get();
        } catch (InvalidInputException | NoEquilibriumException e) {
            parts.notComputed.add(new NotComputed(what, FailedCase.words(e)));
            return null;
        }
    }
}
