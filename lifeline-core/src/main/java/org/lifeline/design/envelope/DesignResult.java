package org.lifeline.design.envelope;

import java.util.List;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.model.LifelineDesign;

/**
 * The arrests of a design and what governs.
 *
 * <p>Immutable and thread-safe.
 */
public final class DesignResult {
    private final Extremes extremes;
    private final List<ArrestResult> arrests;

    DesignResult(Extremes extremes, List<ArrestResult> arrests) {
        this.extremes = extremes;
        this.arrests = List.copyOf(arrests);
    }

    /**
     * The design.
     *
     * @return the design
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
     * The arrests: of the stated falls, in the order fall, temperature, side; or those that govern somewhere, when the worst
     * places were looked for.
     *
     * @return the arrests; unmodifiable
     */
    public List<ArrestResult> arrests() {
        return arrests;
    }

    /**
     * Cases that could not be computed.
     *
     * @return the cases with their reasons; unmodifiable
     */
    public List<FailedCase> failures() {
        return extremes.failures();
    }
}
