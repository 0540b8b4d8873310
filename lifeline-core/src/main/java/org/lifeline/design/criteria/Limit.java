package org.lifeline.design.criteria;

/**
 * One comparison of a criterion, as data.
 *
 * <p>Immutable and thread-safe.
 *
 * @param quantity name of what is compared, see {@link CheckedQuantity#key()}
 * @param type which side of the limit is allowed
 * @param value the limit [unit of the quantity]
 * @param unit SI unit of the limit; {@code "-"} for a bare number
 * @since 1.0.0
 */
public record Limit(String quantity, LimitType type, double value, String unit) {
    @Override
    public String toString() {
        return quantity + " " + type.symbol() + " " + value + (unit.equals("-") ? "" : " " + unit);
    }
}
