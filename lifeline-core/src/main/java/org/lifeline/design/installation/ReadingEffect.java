package org.lifeline.design.installation;

import java.util.Optional;
import java.util.OptionalDouble;
import org.lifeline.design.envelope.Extreme;
import org.lifeline.design.envelope.Extremes;
import org.lifeline.design.envelope.Quantity;

/**
 * What a line with another pretension does over its whole length, by energy balance.
 *
 * <p>Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public final class ReadingEffect {
    private final String name;
    private final double pretension;
    private final Extremes extremes;

    ReadingEffect(String name, double pretension, Extremes extremes) {
        this.name = name;
        this.pretension = pretension;
        this.extremes = extremes;
    }

    /**
     * Why this pretension is looked at.
     *
     * @return for example {@code "lower end of the tolerance"}
     */
    public String name() {
        return name;
    }

    /**
     * Pretension at the temperature of installation of the design.
     *
     * @return tension at the first end anchor [N]
     */
    public double pretension() {
        return pretension;
    }

    /**
     * The worst of the whole line with it.
     *
     * @return the extremes
     */
    public Extremes extremes() {
        return extremes;
    }

    /**
     * The worst of one quantity, with the model factors.
     *
     * @param quantity the quantity
     * @return value [N], [m] or [rad]; empty if there is none
     */
    public OptionalDouble worst(Quantity quantity) {
        Optional<Extreme> e = extremes.of(quantity);
        return e.isPresent() ? OptionalDouble.of(e.get().value()) : OptionalDouble.empty();
    }
}
