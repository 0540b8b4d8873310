package org.lifeline.model.absorber;

import org.lifeline.base.Violations;

/**
 * What was published of the scatter of personal energy absorbers.
 *
 * <p>Carrión, Saez, Pomares &amp; González, Int. J. Environ. Res. Public Health 17(20):7647, 2020: 20 drops of 100 kg to EN 355 with
 * lanyards of 10 models; the average deployment force was about 87.5 % of its maximum in the same drop, and two of the lanyards
 * bought went above the permitted maximum force. A pair of forces of a design that lies closer together than that leaves no room
 * for what one and the same absorber does in one drop. Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public final class PublishedScatter {
    /** Average deployment force over the maximum force of the same drop [-]. */
    public static final double AVERAGE_OVER_MAXIMUM = 0.875;

    /** Where the values come from. */
    public static final String SOURCE =
            "Carrión et al., Int. J. Environ. Res. Public Health 17(20):7647, 2020 (published)";

    private PublishedScatter() {}

    /**
     * Tells whether a stated pair of deployment forces lies closer together than average and maximum of one drop.
     *
     * @param clearance curve of the clearance deployment force
     * @param maximum curve of the maximum deployment force
     * @return true if the clearance force is above 87.5 % of the maximum force
     */
    public static boolean isNarrower(LoadingCurve clearance, LoadingCurve maximum) {
        Violations.required("clearance", clearance);
        Violations.required("maximum", maximum);
        return maximum.activationForce() > 0
                && clearance.activationForce() > AVERAGE_OVER_MAXIMUM * maximum.activationForce();
    }
}
