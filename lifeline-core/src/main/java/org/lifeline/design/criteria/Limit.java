package org.lifeline.design.criteria;

/**
 * One comparison of a criterion, as data.
 *
 * <p>Immutable and thread-safe.
 *
 * @param demand name of what is compared, see {@link Demand#key()}
 * @param sense which side of the limit is allowed
 * @param value the limit [unit of the demand]
 * @param unit SI unit of the limit; {@code "-"} for a bare number
 */
public record Limit(String demand, Sense sense, double value, String unit) {
    @Override
    public String toString() {
        return demand + " " + sense.symbol() + " " + value + (unit.equals("-") ? "" : " " + unit);
    }
}
