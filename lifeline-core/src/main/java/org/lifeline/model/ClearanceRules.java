package org.lifeline.model;

import java.util.List;
import org.lifeline.base.PlausibleRange;
import org.lifeline.base.Violations;
import org.lifeline.base.canonical.Canonical;
import org.lifeline.base.canonical.CanonicalForm;

/**
 * What the clearance account needs beside the arrest: harness stretch, margin, obstructions.
 *
 * <p>Immutable and thread-safe.
 *
 * @param harnessStretch stretch of the harness with the body's shift in it [m], not negative
 * @param margin safety margin below the lowest point of the worker [m], not negative
 * @param obstructions what lies below
 * @since 1.0.0
 */
public record ClearanceRules(double harnessStretch, double margin, List<Obstruction> obstructions)
        implements Canonical {
    private static final ClearanceRules COMMON = new ClearanceRules(0.3, 0.6, List.of());

    /**
     * Checks the numbers and copies the list.
     *
     * @param harnessStretch stretch of the harness with the body's shift in it [m], not negative
     * @param margin safety margin below the lowest point of the worker [m], not negative
     * @param obstructions what lies below
     * @throws org.lifeline.base.InvalidInputException if a length is negative or not finite
     */
    public ClearanceRules {
        Violations v = new Violations();
        PlausibleRange.LENGTH.check(v, "harnessStretch", harnessStretch);
        PlausibleRange.LENGTH.check(v, "margin", margin);
        PlausibleRange.checkCount(
                v,
                "obstructions",
                Violations.requiredAll("obstructions", obstructions).size());
        v.throwIfAny();
        obstructions = List.copyOf(obstructions);
    }

    /**
     * Harness stretch 0.3 m and margin 0.6 m (common practice, no source), nothing below.
     *
     * @return the rules
     */
    public static ClearanceRules commonPractice() {
        return COMMON;
    }

    /**
     * The same with another harness stretch.
     *
     * @param value stretch [m], not negative
     * @return the new rules
     */
    public ClearanceRules withHarnessStretch(double value) {
        return new ClearanceRules(value, margin, obstructions);
    }

    /**
     * The same with another margin.
     *
     * @param value margin [m], not negative
     * @return the new rules
     */
    public ClearanceRules withMargin(double value) {
        return new ClearanceRules(harnessStretch, value, obstructions);
    }

    /**
     * The same with other obstructions.
     *
     * @param value the obstructions
     * @return the new rules
     */
    public ClearanceRules withObstructions(List<Obstruction> value) {
        Violations.requiredAll("obstructions", value);
        return new ClearanceRules(harnessStretch, margin, value);
    }

    @Override
    public CanonicalForm canonicalForm() {
        return ModelForms.of(this);
    }
}
