package org.lifeline.design.envelope;

import java.util.Locale;
import org.lifeline.analysis.ArrestResult;

/**
 * The worst value of a quantity, with the case that governs it.
 *
 * <p>Immutable and thread-safe.
 */
public final class Extreme {
    private final String name;
    private final String unit;
    private final double value;
    private final FallCase fallCase;
    private final ArrestResult arrest;

    Extreme(String name, String unit, double value, FallCase fallCase, ArrestResult arrest) {
        this.name = name;
        this.unit = unit;
        this.value = value;
        this.fallCase = fallCase;
        this.arrest = arrest;
    }

    /**
     * The quantity.
     *
     * @return its name, for example {@code "endAnchorLoad"} or {@code "load on north"}
     */
    public String name() {
        return name;
    }

    /**
     * The SI unit of the value.
     *
     * @return {@code "N"}, {@code "m"} or {@code "rad"}
     */
    public String unit() {
        return unit;
    }

    /**
     * The worst value, with the model factors of the design in it.
     *
     * @return the value [N], [m] or [rad], by {@link #unit()}
     */
    public double value() {
        return value;
    }

    /**
     * The case that governs.
     *
     * @return the case
     */
    public FallCase fallCase() {
        return fallCase;
    }

    /**
     * The arrest that governs, as computed, without model factors.
     *
     * @return the arrest
     */
    public ArrestResult arrest() {
        return arrest;
    }

    @Override
    public String toString() {
        return String.format(Locale.ROOT, "%s %.6g %s: %s", name, value, unit, fallCase.describe());
    }
}
