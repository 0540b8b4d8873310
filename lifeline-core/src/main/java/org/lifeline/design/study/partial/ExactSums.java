package org.lifeline.design.study.partial;

import java.util.List;
import org.lifeline.base.GivenValue;
import org.lifeline.base.InputRule;
import org.lifeline.base.Violations;
import org.lifeline.internal.numeric.Covariances;

/**
 * Sums over the cases with a value, without any rounding: of each variable and of the response, and of each product of two of
 * them. From these come mean, deviation, correlations and regression.
 *
 * <p>A sum is written as an odd whole number in hexadecimal digits, {@code p}, and a power of two: {@code "-1fp-3"} is −31/8. Zero
 * is {@code "0"}; {@code "NaN"} stands where a product was beyond the range of doubles. Immutable and thread-safe.
 *
 * @param count number of cases with a value
 * @param sums the sum of each variable in its order, then that of the response
 * @param products the sums of products, row by row of the lower triangle: first·first, second·first, second·second, …
 * @since 1.0.0
 */
public record ExactSums(long count, List<String> sums, List<String> products) {
    /**
     * Copies the lists.
     *
     * @param count number of cases with a value
     * @param sums the sums
     * @param products the sums of products
     * @throws org.lifeline.base.InvalidInputException if a text is not that of a sum, or there are too few or too many
     */
    public ExactSums {
        Violations.requiredAll("sums", sums);
        Violations.requiredAll("products", products);
        sums = List.copyOf(sums);
        products = List.copyOf(products);
        new Violations()
                .require(count >= 0, "count", GivenValue.count(count), InputRule.COUNT_FROM_ZERO)
                .throwIfAny();
        covariances(count, sums, products);
    }

    private static Covariances covariances(long count, List<String> sums, List<String> products) {
        try {
            return Covariances.of(count, sums, products);
        } catch (NumberFormatException e) {
            new Violations()
                    .require(false, "sums", GivenValue.text(String.valueOf(e.getMessage())), InputRule.NOT_A_SUM)
                    .throwIfAny();
            throw e;
        }
    }

    private Covariances covariances() {
        return covariances(count, sums, products);
    }

    ExactSums merged(ExactSums other) {
        Covariances all = covariances();
        all.add(other.covariances());
        return new ExactSums(all.count(), all.sums(), all.products());
    }
}
