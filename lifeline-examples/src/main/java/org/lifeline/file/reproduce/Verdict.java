package org.lifeline.file.reproduce;

/**
 * What a result file turned out to be.
 *
 * @since 1.0.0
 */
public enum Verdict {
    /** Every number came out again, and all checks hold. */
    REPRODUCED("reproduced: every number came out again"),
    /** This version and this design, but numbers differ or contradict each other. */
    ALTERED("NOT reproduced: numbers were changed after they were computed"),
    /** The numbers came out again, but the independent verifier finds that they are no equilibrium or no arrest. */
    UNVERIFIED("NOT reproduced: the same numbers came out, but the independent check of them fails"),
    /** Parts of a result are missing although the file ends as it should. */
    INCOMPLETE("NOT reproduced: parts of the result are missing"),
    /** The text ends in the middle. */
    TRUNCATED("NOT reproduced: the file is cut off"),
    /** No JSON, or nothing that looks like a result. */
    DAMAGED("NOT reproduced: the file is not a result file"),
    /** Computed by another version of this library. */
    OTHER_VERSION("NOT reproduced: computed by another version of the library, and numbers differ"),
    /** Computed by another version, with the same numbers. */
    OTHER_VERSION_SAME_NUMBERS("reproduced: computed by another version of the library, with the same numbers"),
    /** Not a result of this library. */
    OTHER_PROGRAM("a result of another program: it was compared as far as it goes"),
    /** Computed from a design file with other content. */
    OTHER_DESIGN("NOT reproduced: the result belongs to another design file");

    private final String text;

    Verdict(String text) {
        this.text = text;
    }

    /**
     * The verdict in words.
     *
     * @return a sentence
     */
    public String text() {
        return text;
    }

    /**
     * Tells whether the numbers came out again.
     *
     * @return true if they did
     */
    public boolean isReproduced() {
        return this == REPRODUCED || this == OTHER_VERSION_SAME_NUMBERS;
    }
}
