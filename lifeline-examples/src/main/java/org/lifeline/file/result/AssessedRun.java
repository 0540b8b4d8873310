package org.lifeline.file.result;

import org.lifeline.design.assessment.Assessment;
import org.lifeline.design.assessment.AssessmentResult;
import org.lifeline.model.LifelineDesign;

/**
 * A design with its assessment, and its stated falls as they are written to a result file.
 *
 * <p>Immutable and thread-safe.
 *
 * @param run the stated falls
 * @param assessment the worst of the whole line
 */
public record AssessedRun(DesignRun run, AssessmentResult assessment) {

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
}
