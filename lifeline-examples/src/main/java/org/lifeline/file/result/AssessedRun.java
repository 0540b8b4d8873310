package org.lifeline.file.result;

import java.util.Optional;
import org.lifeline.design.assessment.Assessment;
import org.lifeline.design.assessment.AssessmentResult;
import org.lifeline.design.handover.Handover;
import org.lifeline.design.handover.HandoverRequest;
import org.lifeline.design.handover.HandoverResult;
import org.lifeline.model.LifelineDesign;

/**
 * A design with its assessment, and its stated falls as they are written to a result file.
 *
 * <p>Immutable and thread-safe.
 *
 * @param run the stated falls
 * @param assessment the worst of the whole line
 * @param handover the parts that are handed over, if any
 */
public record AssessedRun(DesignRun run, AssessmentResult assessment, Optional<HandoverResult> handover) {
    /**
     * Hands over nothing.
     *
     * @param run the stated falls
     * @param assessment the worst of the whole line
     */
    public AssessedRun(DesignRun run, AssessmentResult assessment) {
        this(run, assessment, Optional.empty());
    }

    /**
     * Assesses a design.
     *
     * @param design the design
     * @param assessment how, with the criteria and their basis
     * @return everything that was computed
     * @throws org.lifeline.base.InvalidInputException if the line cannot hang as stated, with paths of the design file
     * @throws org.lifeline.base.NoEquilibriumException if an equilibrium was not found
     */
    public static AssessedRun of(LifelineDesign design, Assessment assessment) {
        AssessmentResult result = assessment.solve(design);
        return new AssessedRun(DesignRun.of(result.stated()), result);
    }

    /**
     * The same with the parts that are to be handed over.
     *
     * @param request the parts; nothing is computed where it is empty
     * @return the new run
     */
    public AssessedRun handingOver(HandoverRequest request) {
        return request.isEmpty()
                ? this
                : new AssessedRun(
                        run, assessment, Optional.of(Handover.of(request).solve(assessment)));
    }
}
