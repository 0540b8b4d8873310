package org.lifeline.analysis.motion;

/**
 * How a force in time is read. Laboratories record forces through a low-pass filter near 100 Hz (recalled from test standards,
 * not seen); a structure feels the force as it is.
 *
 * @since 1.0.0
 */
public enum ForceFilter {
    /** The force as it is: what criteria read unless the engineer chooses otherwise. */
    NONE("none", "forces as they are"),
    /** The force behind a second-order low-pass filter of 100 Hz (Butterworth's). */
    LOW_PASS_100_HZ("low-pass-100-Hz", "forces behind a 100 Hz low-pass filter");

    private final String key;
    private final String words;

    ForceFilter(String key, String words) {
        this.key = key;
        this.words = words;
    }

    /**
     * The name in a file.
     *
     * @return for example {@code "none"}
     */
    public String key() {
        return key;
    }

    /**
     * The filter in words.
     *
     * @return the words
     */
    public String words() {
        return words;
    }
}
