package org.lifeline.analysis.state;

/**
 * What a free-running attachment does during the arrest: the two limits between which a connector stays.
 *
 * <p>A connector that runs needs time for it, and may be held by a splice, ice or a sleeve; the energy balance knows no
 * time. Decision 32 says which limit governs what.
 *
 * @since 1.0.0
 */
public enum AttachmentLimit {
    /** It runs without friction to where the tension is the same on both sides, wherever the fall starts. */
    RUNNING("running"),
    /** It does not run: it holds the material point of the cable that hung at the station as installed. */
    HELD("held");

    private final String label;

    AttachmentLimit(String label) {
        this.label = label;
    }

    /**
     * The limit in a word.
     *
     * @return the label
     */
    public String label() {
        return label;
    }
}
