package org.lifeline.examples.arrests;

import java.util.List;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.LineEquilibrium;
import org.lifeline.model.LifelineDesign;

/**
 * A design with everything that was computed for it.
 *
 * <p>Immutable and thread-safe.
 *
 * @param design the design; its falls are those that were computed
 * @param searched true if the design named no falls and the worst places were looked for
 * @param installed the line as installed
 * @param arrests every fall at every temperature with both deployment forces, in that order
 */
public record DesignRun(
        LifelineDesign design, boolean searched, LineEquilibrium installed, List<ArrestResult> arrests) {

    /** Copies the list. */
    public DesignRun {
        arrests = List.copyOf(arrests);
    }
}
