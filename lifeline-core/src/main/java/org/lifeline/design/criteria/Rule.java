package org.lifeline.design.criteria;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.function.Predicate;

/** What a criterion asks for. */
interface Rule {
    /** Checks a situation. */
    Check check(String title, Situation situation);

    /** The comparisons in it, as data. */
    List<Limit> limits();

    /**
     * A demand on the allowed side of a limit, for every item of the demand.
     *
     * @param value the limit [unit of the demand]
     */
    static Rule limit(Demand demand, double value) {
        return new Rule() {
            @Override
            public Check check(String title, Situation s) {
                return Rule.compare(title, demand, new Limit(demand.key(), demand.sense(), value, demand.unit()), s);
            }

            @Override
            public List<Limit> limits() {
                return List.of(new Limit(demand.key(), demand.sense(), value, demand.unit()));
            }
        };
    }

    /**
     * A limit for each worker on the line.
     *
     * @param value the limit for one worker [unit of the demand]
     */
    static Rule limitPerWorker(Demand demand, double value) {
        return new Rule() {
            @Override
            public Check check(String title, Situation s) {
                double all = value * s.design().workers().size();
                return Rule.compare(title, demand, new Limit(demand.key(), demand.sense(), all, demand.unit()), s);
            }

            @Override
            public List<Limit> limits() {
                return List.of(new Limit(demand.key(), demand.sense(), value, demand.unit() + " per worker"));
            }
        };
    }

    private static Check compare(String title, Demand demand, Limit limit, Situation s) {
        List<Check> list = new ArrayList<>();
        for (Item item : demand.items(s)) {
            list.add(Check.of(
                    demand.comparison(limit.value()), item, limit, s.extremes().coversEverything()));
        }
        return Check.all(title, list);
    }

    /** Nothing to compare. */
    static Rule none(String why) {
        return new Rule() {
            @Override
            public Check check(String title, Situation s) {
                return Check.missing(title, why);
            }

            @Override
            public List<Limit> limits() {
                return List.of();
            }
        };
    }

    /** All of several rules. */
    static Rule allOf(Rule... rules) {
        return combined(List.of(rules), parts -> Check.all("all of these", parts));
    }

    /** Any of several rules. */
    static Rule anyOf(Rule... rules) {
        return combined(List.of(rules), parts -> Check.any("one of these", parts));
    }

    private static Rule combined(List<Rule> rules, Function<List<Check>, Check> join) {
        return new Rule() {
            @Override
            public Check check(String title, Situation s) {
                return join.apply(rules.stream().map(r -> r.check(title, s)).toList());
            }

            @Override
            public List<Limit> limits() {
                return rules.stream().flatMap(r -> r.limits().stream()).toList();
            }
        };
    }

    /** A rule that is stated for some designs only. */
    static Rule onlyFor(Predicate<Situation> condition, String otherwise, Rule rule) {
        return new Rule() {
            @Override
            public Check check(String title, Situation s) {
                return condition.test(s) ? rule.check(title, s) : Check.missing(title, otherwise);
            }

            @Override
            public List<Limit> limits() {
                return rule.limits();
            }
        };
    }
}
