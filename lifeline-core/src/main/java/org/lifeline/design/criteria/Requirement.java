package org.lifeline.design.criteria;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.function.Predicate;

/** What a criterion asks for. */
interface Requirement {
    /** Checks a design. */
    CapacityCheck check(String title, CheckedDesign design);

    /** The comparisons in it, as data. */
    List<Limit> limits();

    /**
     * A quantity on the allowed side of a limit, for every item of the quantity.
     *
     * @param value the limit [unit of the quantity]
     */
    static Requirement limit(CheckedQuantity quantity, double value) {
        return new Requirement() {
            @Override
            public CapacityCheck check(String title, CheckedDesign s) {
                return Requirement.compare(
                        title, quantity, new Limit(quantity.key(), quantity.limitType(), value, quantity.unit()), s);
            }

            @Override
            public List<Limit> limits() {
                return List.of(new Limit(quantity.key(), quantity.limitType(), value, quantity.unit()));
            }
        };
    }

    /**
     * A limit for each worker on the line.
     *
     * @param value the limit for one worker [unit of the quantity]
     */
    static Requirement limitPerWorker(CheckedQuantity quantity, double value) {
        return new Requirement() {
            @Override
            public CapacityCheck check(String title, CheckedDesign s) {
                double all = value * s.design().workers().size();
                return Requirement.compare(
                        title, quantity, new Limit(quantity.key(), quantity.limitType(), all, quantity.unit()), s);
            }

            @Override
            public List<Limit> limits() {
                return List.of(new Limit(quantity.key(), quantity.limitType(), value, quantity.unit() + " per worker"));
            }
        };
    }

    private static CapacityCheck compare(String title, CheckedQuantity quantity, Limit limit, CheckedDesign s) {
        List<CapacityCheck> list = new ArrayList<>();
        for (CheckedValue checked : quantity.values(s)) {
            list.add(CapacityCheck.of(
                    quantity.comparison(limit.value()),
                    checked,
                    limit,
                    s.extremes().coversEverything()));
        }
        return CapacityCheck.all(title, list);
    }

    /** Nothing to compare. */
    static Requirement none(String why) {
        return new Requirement() {
            @Override
            public CapacityCheck check(String title, CheckedDesign s) {
                return CapacityCheck.missing(title, why);
            }

            @Override
            public List<Limit> limits() {
                return List.of();
            }
        };
    }

    /** All of several rules. */
    static Requirement allOf(Requirement... rules) {
        return combined(List.of(rules), parts -> CapacityCheck.all("all of these", parts));
    }

    /** Any of several rules. */
    static Requirement anyOf(Requirement... rules) {
        return combined(List.of(rules), parts -> CapacityCheck.any("one of these", parts));
    }

    private static Requirement combined(List<Requirement> rules, Function<List<CapacityCheck>, CapacityCheck> join) {
        return new Requirement() {
            @Override
            public CapacityCheck check(String title, CheckedDesign s) {
                return join.apply(rules.stream().map(r -> r.check(title, s)).toList());
            }

            @Override
            public List<Limit> limits() {
                return rules.stream().flatMap(r -> r.limits().stream()).toList();
            }
        };
    }

    /** A rule that is stated for some designs only. */
    static Requirement onlyFor(Predicate<CheckedDesign> condition, String otherwise, Requirement rule) {
        return new Requirement() {
            @Override
            public CapacityCheck check(String title, CheckedDesign s) {
                return condition.test(s) ? rule.check(title, s) : CapacityCheck.missing(title, otherwise);
            }

            @Override
            public List<Limit> limits() {
                return rule.limits();
            }
        };
    }
}
