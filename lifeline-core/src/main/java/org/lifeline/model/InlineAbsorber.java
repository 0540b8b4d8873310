package org.lifeline.model;

import org.jspecify.annotations.Nullable;
import org.lifeline.base.Violations;
import org.lifeline.model.absorber.LoadingCurve;

/**
 * An energy absorber between an end anchor and the cable. Extends along the cable; when it is unloaded it gives back
 * only its elastic part, along the initial stiffness of its curve.
 *
 * <p>Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public final class InlineAbsorber {
    private final LoadingCurve curve;

    private InlineAbsorber(LoadingCurve curve) {
        this.curve = curve;
    }

    /**
     * An absorber with a force–extension curve.
     *
     * @param curve force against extension, with initial stiffness and stop
     * @return the absorber
     */
    public static InlineAbsorber of(LoadingCurve curve) {
        return new InlineAbsorber(Violations.required("curve", curve));
    }

    /**
     * Force against extension on first loading.
     *
     * @return the curve
     */
    public LoadingCurve curve() {
        return curve;
    }

    /**
     * Stiffness up to activation and on unloading.
     *
     * @return stiffness [N/m]; infinite where rigid
     */
    public double initialStiffness() {
        return curve.initialStiffness();
    }

    /**
     * Compares values.
     *
     * @param other another object
     * @return true for an absorber with the same curve
     */
    @Override
    public boolean equals(@Nullable Object other) {
        return other instanceof InlineAbsorber a && curve.equals(a.curve);
    }

    @Override
    public int hashCode() {
        return 31 + curve.hashCode();
    }

    @Override
    public String toString() {
        return "in-line absorber: " + curve;
    }
}
