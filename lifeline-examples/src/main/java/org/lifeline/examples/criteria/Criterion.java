package org.lifeline.examples.criteria;

import org.lifeline.examples.arrests.Demand;

/**
 * A criterion that a design asks for: one that is built in, or a limit of the design's own.
 *
 * <p>Immutable and thread-safe.
 */
public sealed interface Criterion {
    /**
     * The criterion's name.
     *
     * @return the id
     */
    String id();

    /**
     * A criterion of {@link BuiltInCriteria}.
     *
     * @param id its name
     */
    record BuiltIn(String id) implements Criterion {}

    /**
     * A limit that the design states itself.
     *
     * @param id its name
     * @param demand what is limited
     * @param capacity the limit, with the support it belongs to
     * @param source where the limit comes from
     */
    record Own(String id, Demand demand, Limit capacity, String source) implements Criterion {}

    /**
     * A limit on a demand.
     *
     * @param value the most allowed, or the least where more is better [unit of the demand]
     * @param support the support whose load is meant; empty for the largest of all
     */
    record Limit(double value, String support) {}
}
