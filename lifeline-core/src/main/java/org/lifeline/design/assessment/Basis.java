package org.lifeline.design.assessment;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * What the verdict of a criterion on forces and distances rests on.
 *
 * @since 1.0.0
 */
public enum Basis {
    /** The larger of energy balance and arrest in time; the default. */
    LARGER_OF_BOTH("larger-of-both", "the larger of energy balance and arrest in time"),
    /** Energy balance with the model factors that the design states, as published energy methods are used. */
    ENERGY_BALANCE("energy-balance", "energy balance with the stated model factors"),
    /** The arrests that were followed in time. */
    IN_TIME("in-time", "arrests in time");

    private final String key;
    private final String words;

    Basis(String key, String words) {
        this.key = key;
        this.words = words;
    }

    /**
     * The name in a design file.
     *
     * @return for example {@code "larger-of-both"}
     */
    public String key() {
        return key;
    }

    /**
     * The basis in words.
     *
     * @return the words
     */
    public String words() {
        return words;
    }

    /**
     * The basis of a name in a design file.
     *
     * @param key the name
     * @return the basis, if there is one
     */
    public static Optional<Basis> of(String key) {
        return Arrays.stream(values()).filter(b -> b.key.equals(key)).findFirst();
    }

    /**
     * The names of all of them.
     *
     * @return the keys in the order of the constants; unmodifiable
     */
    public static List<String> keys() {
        return Arrays.stream(values()).map(Basis::key).toList();
    }
}
