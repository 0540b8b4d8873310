package org.lifeline.examples.print;

import java.util.Arrays;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** In which units results are printed. */
public enum UnitChoice {
    /** SI and US customary side by side. */
    BOTH,
    /** SI only. */
    SI,
    /** US customary only. */
    US;

    /**
     * The choice of a name on the command line.
     *
     * @param name both, si or us
     * @return the choice, or null if there is no such name
     */
    public static @Nullable UnitChoice named(String name) {
        return Arrays.stream(values())
                .filter(c -> c.name().toLowerCase(Locale.ROOT).equals(name))
                .findFirst()
                .orElse(null);
    }

    /**
     * Tells whether SI is printed.
     *
     * @return true unless only US customary units are wanted
     */
    public boolean si() {
        return this != US;
    }

    /**
     * Tells whether US customary units are printed.
     *
     * @return true unless only SI is wanted
     */
    public boolean us() {
        return this != SI;
    }
}
