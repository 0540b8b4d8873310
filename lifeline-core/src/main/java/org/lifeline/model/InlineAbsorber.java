package org.lifeline.model;

/**
 * An energy absorber between an end anchor and the cable. Extends along the cable; gives no extension back but for
 * its elastic part when it is unloaded.
 *
 * <p>Immutable and thread-safe.
 */
public final class InlineAbsorber {
    private final LoadingCurve curve;
    private final double initialStiffness;

    private InlineAbsorber(LoadingCurve curve, double initialStiffness) {
        this.curve = curve;
        this.initialStiffness = initialStiffness;
    }

    /**
     * An absorber with a force–extension curve.
     *
     * @param curve force against extension, its initial stiffness already worked in
     * @param initialStiffness stiffness up to activation and on unloading [N/m]; infinite where rigid
     * @return the absorber
     */
    public static InlineAbsorber of(LoadingCurve curve, double initialStiffness) {
        return new InlineAbsorber(curve, initialStiffness);
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
        return initialStiffness;
    }
}
