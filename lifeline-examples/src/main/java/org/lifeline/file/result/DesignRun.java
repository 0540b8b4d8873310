package org.lifeline.file.result;

import java.util.List;
import java.util.concurrent.CancellationException;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.LineEquilibrium;
import org.lifeline.analysis.Statics;
import org.lifeline.design.envelope.DesignAnalysis;
import org.lifeline.design.envelope.DesignResult;
import org.lifeline.design.envelope.Extremes;
import org.lifeline.model.LifelineDesign;

/**
 * A design with everything that was computed for it.
 *
 * <p>Immutable and thread-safe.
 *
 * @param result the arrests and what governs
 * @param installed the line as installed
 */
public record DesignRun(DesignResult result, LineEquilibrium installed) {

    /**
     * Computes a design by energy balance.
     *
     * @param design the design
     * @return everything that was computed
     * @throws org.lifeline.base.InvalidInputException if the line cannot hang as stated, with paths of the design file
     * @throws org.lifeline.base.NoEquilibriumException if an equilibrium was not found
     */
    public static DesignRun of(LifelineDesign design) {
        return of(design, DesignAnalysis.withDefaults());
    }

    /**
     * Computes a design.
     *
     * @param design the design
     * @param analysis how
     * @return everything that was computed
     * @throws org.lifeline.base.InvalidInputException if the line cannot hang as stated, with paths of the design file
     * @throws org.lifeline.base.NoEquilibriumException if an equilibrium was not found
     * @throws CancellationException if the analysis was ended by its listener or an interrupt before it was whole
     */
    public static DesignRun of(LifelineDesign design, DesignAnalysis analysis) {
        Statics.withDefaults().solve(design.line(), List.of());
        return of(analysis.solve(design));
    }

    /**
     * What was computed already.
     *
     * @param result the arrests
     * @return the same with the line as installed
     * @throws org.lifeline.base.NoEquilibriumException if an equilibrium was not found
     */
    public static DesignRun of(DesignResult result) {
        LineEquilibrium installed = Statics.withDefaults().solve(result.design().line(), List.of());
        if (!result.failures().isEmpty()) {
            // A result file without all its arrests would look like one of fewer falls.
            throw result.failures().get(0).cause();
        }
        if (!result.extremes().coversEverything()) {
            throw new CancellationException("the analysis was ended before every arrest was computed");
        }
        return new DesignRun(result, installed);
    }

    /**
     * The design.
     *
     * @return the design; its falls are those that were computed
     */
    public LifelineDesign design() {
        return result.design();
    }

    /**
     * Tells whether the worst places were looked for.
     *
     * @return true if the design named no falls
     */
    public boolean searched() {
        return result.searched();
    }

    /**
     * Every fall at every temperature with both deployment forces.
     *
     * @return the arrests in that order; unmodifiable
     */
    public List<ArrestResult> arrests() {
        return result.arrests();
    }

    /**
     * The worst values, model factors applied.
     *
     * @return the extremes
     */
    public Extremes extremes() {
        return result.extremes();
    }
}
