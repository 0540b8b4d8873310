package org.lifeline.analysis.explain;

import java.util.List;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.LineEquilibrium;
import org.lifeline.base.UnitSystem;
import org.lifeline.base.Violations;

/**
 * Writes results down as calculations that a reviewer can follow line by line.
 *
 * @since 1.0.0
 */
public final class Explanations {
    private Explanations() {}

    /**
     * An arrest, from the inputs to the clearance.
     *
     * @param arrest the arrest
     * @param system the units to calculate in
     * @return the lines; unmodifiable
     * @throws java.util.concurrent.CancellationException if the thread is interrupted; its interrupt flag stays set
     */
    public static List<CalculationStep> of(ArrestResult arrest, UnitSystem system) {
        Violations.required("arrest", arrest);
        Violations.required("system", system);
        return ArrestExplanation.of(arrest, system);
    }

    /**
     * A line in equilibrium.
     *
     * @param state the equilibrium
     * @param system the units to calculate in
     * @return the lines; unmodifiable
     * @throws java.util.concurrent.CancellationException if the thread is interrupted; its interrupt flag stays set
     */
    public static List<CalculationStep> of(LineEquilibrium state, UnitSystem system) {
        Violations.required("state", state);
        Violations.required("system", system);
        return LineExplanation.of(state, system);
    }
}
