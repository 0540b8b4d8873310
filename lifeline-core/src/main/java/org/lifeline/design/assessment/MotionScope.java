package org.lifeline.design.assessment;

/**
 * Whether arrests were followed in time.
 *
 * @since 1.0.0
 */
public enum MotionScope {
    /** They were, where a load, a force or a distance may govern. */
    FOLLOWED("followed"),
    /** They were left out. */
    LEFT_OUT("left out");

    private final String words;

    MotionScope(String words) {
        this.words = words;
    }

    /**
     * The scope in words.
     *
     * @return the words
     */
    public String words() {
        return words;
    }
}
