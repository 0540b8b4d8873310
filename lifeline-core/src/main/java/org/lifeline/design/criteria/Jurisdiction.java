package org.lifeline.design.criteria;

/**
 * Where a criterion comes from.
 *
 * @since 1.0.0
 */
public enum Jurisdiction {
    /** United States, federal. */
    UNITED_STATES("us"),
    /** Québec. */
    QUEBEC("qc"),
    /** Alberta. */
    ALBERTA("ab"),
    /** Ontario. */
    ONTARIO("on"),
    /** British Columbia. */
    BRITISH_COLUMBIA("bc"),
    /** Manitoba. */
    MANITOBA("mb"),
    /** European standards. */
    EUROPE("eu"),
    /** Singapore. */
    SINGAPORE("sg"),
    /** Japan. */
    JAPAN("jp"),
    /** New Zealand. */
    NEW_ZEALAND("nz"),
    /** International standards. */
    INTERNATIONAL("iso"),
    /** Common practice, no jurisdiction. */
    PRACTICE("practice"),
    /** The design itself: a client's or an engineer's own limit. */
    DESIGN("design");

    private final String key;

    Jurisdiction(String key) {
        this.key = key;
    }

    /**
     * Short name, the first word of the ids of its criteria.
     *
     * @return for example {@code "us"}
     */
    public String key() {
        return key;
    }
}
