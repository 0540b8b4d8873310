package org.lifeline.analysis;

/**
 * How an arrest was computed.
 *
 * @since 1.0.0
 */
public enum Method {
    /** Energy balance with the static force–descent path of the line. */
    ENERGY_BALANCE("energy balance"),
    /** Integration of the motion in time. */
    TRANSIENT("transient"),
    /** Equilibrium after the arrest, with a rescuer on the line beside those who have fallen. */
    RESCUE_AT_REST("rescue at rest");

    private final String label;

    Method(String label) {
        this.label = label;
    }

    /**
     * The method in words.
     *
     * @return the label
     */
    public String label() {
        return label;
    }
}
