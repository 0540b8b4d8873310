package org.lifeline.design.envelope;

import java.util.List;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.warning.Warning;
import org.lifeline.model.LifelineDesign;

/**
 * The arrests of a design and what governs.
 *
 * <p>Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public final class DesignResult {
    private final Extremes extremes;
    private final List<ArrestResult> arrests;
    private final boolean searched;

    DesignResult(Extremes extremes, List<ArrestResult> arrests, boolean searched) {
        this.extremes = extremes;
        this.arrests = List.copyOf(arrests);
        this.searched = searched;
    }

    /**
     * The design; where the worst places were looked for, with the falls that were found.
     *
     * @return the design whose falls were computed
     */
    public LifelineDesign design() {
        return extremes.design();
    }

    /**
     * The worst value of each quantity, with the case that governs it.
     *
     * @return the extremes
     */
    public Extremes extremes() {
        return extremes;
    }

    /**
     * Tells whether the design stated no falls, so that the worst places were looked for.
     *
     * @return true if they were looked for
     */
    public boolean searched() {
        return searched;
    }

    /**
     * The arrests, in the order fall, temperature, side (clearance, then maximum), without those that could not be computed.
     *
     * @return the arrests; unmodifiable
     */
    public List<ArrestResult> arrests() {
        return arrests;
    }

    /**
     * The same arrests with their cases.
     *
     * @return the cases in the same order; unmodifiable
     */
    public List<ComputedCase> cases() {
        return arrests.stream()
                .map(r -> new ComputedCase(FallCase.asDesigned(r), r))
                .toList();
    }

    /**
     * Cases that could not be computed.
     *
     * @return the cases with their reasons; unmodifiable
     */
    public List<FailedCase> failures() {
        return extremes.failures();
    }

    /**
     * What a reader of the worst values must not overlook, see {@link Extremes#warnings()}.
     *
     * @return the warnings, each with its case; unmodifiable
     */
    public List<Warning> warnings() {
        return extremes().warnings();
    }
}
