package org.lifeline.design.installation;

import org.lifeline.base.Interval;

/**
 * What a tensioner takes up at one temperature, from the cable drawn by hand to the pretension of that temperature.
 *
 * <p>Immutable and thread-safe.
 *
 * @param temperature temperature of the cable [°C]
 * @param tensions tension at the first end anchor before and after [N]
 * @param rope stress-free cable that is drawn out, measured at that temperature [m]
 * @param structure what elastic supports and in-line absorbers give way meanwhile [m]
 * @since 1.0.0
 */
public record TakeUp(double temperature, Interval tensions, double rope, double structure) {
    /**
     * Travel of the tensioner.
     *
     * @return rope and structure together [m]
     */
    public double total() {
        return rope + structure;
    }
}
