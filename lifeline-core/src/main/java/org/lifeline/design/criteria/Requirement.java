package org.lifeline.design.criteria;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.lifeline.base.GivenValue;
import org.lifeline.base.InputRule;
import org.lifeline.base.PlausibleRange;
import org.lifeline.base.Violations;

/**
 * What a criterion asks for: one limit, or several requirements of which all, or any, have to be met, for the whole or for
 * each anchor by itself.
 *
 * <p>Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public final class Requirement {
    /**
     * How the parts of a requirement are joined.
     *
     * @since 1.0.0
     */
    public enum Join {
        /** No parts: a limit, or a rule that is built in. */
        NONE,
        /** All parts have to be met. */
        ALL_OF,
        /** One part has to be met, by everything that it concerns. */
        ANY_OF,
        /** For each anchor one part has to be met; another anchor may meet another one. */
        EACH_ANCHOR_ANY_OF
    }

    /**
     * A limit on a quantity.
     *
     * @param quantity what is limited
     * @param limit the limit [unit of the quantity]
     * @param perWorker true for a limit that counts once for each worker on the line
     * @param factor factor on the value before it is compared [-]
     * @since 1.0.0
     */
    public record Comparison(CheckedQuantity quantity, double limit, boolean perWorker, double factor) {}

    /** A rule that limits alone cannot state. */
    interface BuiltIn {
        CapacityCheck check(String title, CheckedDesign design);

        List<Limit> limits();
    }

    /** Above it a whole number is no number of a criterion, and soon none of 64 bits. */
    private static final double LARGEST_WHOLE = 1e15;

    private final Join join;
    private final List<Requirement> parts;
    private final @Nullable Comparison comparison;
    private final @Nullable BuiltIn builtIn;

    private Requirement(
            Join join, List<Requirement> parts, @Nullable Comparison comparison, @Nullable BuiltIn builtIn) {
        this.join = join;
        this.parts = List.copyOf(parts);
        this.comparison = comparison;
        this.builtIn = builtIn;
    }

    private static Requirement of(Comparison comparison) {
        return new Requirement(Join.NONE, List.of(), comparison, null);
    }

    static Requirement of(BuiltIn rule) {
        return new Requirement(Join.NONE, List.of(), null, rule);
    }

    /**
     * A quantity on the allowed side of a limit, wherever it occurs.
     *
     * @param quantity the quantity
     * @param value the limit [unit of the quantity]; the side is that of {@link CheckedQuantity#limitType()}
     * @return the requirement
     * @throws org.lifeline.base.InvalidInputException if the limit is not finite, not above zero where only that makes sense,
     *     or outside what is plausible ({@link PlausibleRange}, {@code CRITERION_FORCE} and its neighbours)
     */
    public static Requirement limit(CheckedQuantity quantity, double value) {
        Violations.required("quantity", quantity);
        quantity.limits().required("capacity", value);
        return of(new Comparison(quantity, value, false, 1));
    }

    /**
     * A least force for each worker on the line: the limit counts as often as there are workers on it.
     *
     * @param quantity a force that has to reach a limit, as a capacity does
     * @param value the limit for one worker [N]
     * @return the requirement
     * @throws org.lifeline.base.InvalidInputException if the quantity is no such force, or the limit not above zero or outside
     *     what is plausible
     */
    public static Requirement limitPerWorker(CheckedQuantity quantity, double value) {
        Violations.required("quantity", quantity);
        Violations v = new Violations()
                .require(
                        quantity.unit().equals("N") && quantity.limitType() == LimitType.AT_LEAST,
                        "perWorker",
                        GivenValue.text(quantity.key()),
                        InputRule.NOT_A_CAPACITY);
        quantity.limits().check(v, "capacity", value);
        v.throwIfAny();
        return of(new Comparison(quantity, value, true, 1));
    }

    /**
     * A load times a factor within a limit.
     *
     * @param quantity a load of the arrests
     * @param factor factor on the load [-], above zero
     * @param limit the limit [N], above zero
     * @return the requirement
     * @throws org.lifeline.base.InvalidInputException if the quantity is no load, or a number is not above zero or outside
     *     what is plausible
     */
    public static Requirement factoredLoad(CheckedQuantity quantity, Factor factor, double limit) {
        Violations.required("quantity", quantity);
        Violations.required("factor", factor);
        Violations v = new Violations()
                .require(
                        quantity.unit().equals("N") && quantity.limitType() == LimitType.AT_MOST,
                        "factor",
                        GivenValue.text(quantity.key()),
                        InputRule.NOT_A_LOAD);
        PlausibleRange.CRITERION_FACTOR.check(v, "factor", factor.value());
        quantity.limits().check(v, "capacity", limit);
        v.throwIfAny();
        return of(new Comparison(quantity, limit, false, factor.value()));
    }

    /**
     * A factor on a load.
     *
     * @param value the factor [-]
     * @since 1.0.0
     */
    public record Factor(double value) {}

    /**
     * All of several requirements.
     *
     * @param requirements the requirements, at least one
     * @return the requirement
     * @throws org.lifeline.base.InvalidInputException if there is none
     */
    public static Requirement allOf(Requirement... requirements) {
        Violations.requiredAll("requirements", Arrays.asList(Violations.required("requirements", requirements)));
        return joined(Join.ALL_OF, "allOf", requirements);
    }

    /**
     * Any of several requirements; one has to be met by everything that it concerns.
     *
     * @param requirements the requirements, at least one
     * @return the requirement
     * @throws org.lifeline.base.InvalidInputException if there is none
     */
    public static Requirement anyOf(Requirement... requirements) {
        Violations.requiredAll("requirements", Arrays.asList(Violations.required("requirements", requirements)));
        return joined(Join.ANY_OF, "anyOf", requirements);
    }

    /**
     * For each anchor any of several requirements: one may meet this, another that.
     *
     * @param requirements requirements on anchors, at least one
     * @return the requirement
     * @throws org.lifeline.base.InvalidInputException if there is none, or one that says nothing of single anchors
     */
    public static Requirement eachAnchorAnyOf(Requirement... requirements) {
        Violations.requiredAll("requirements", Arrays.asList(Violations.required("requirements", requirements)));
        Violations v = new Violations();
        for (Requirement each : requirements) {
            Comparison c = each.comparison;
            v.require(
                    c != null && c.quantity().isOfAnchors(),
                    "eachAnchorAnyOf",
                    GivenValue.text(each.words()),
                    InputRule.NOT_OF_ANCHORS);
        }
        v.throwIfAny();
        return joined(Join.EACH_ANCHOR_ANY_OF, "eachAnchorAnyOf", requirements);
    }

    private static Requirement joined(Join join, String name, Requirement... requirements) {
        new Violations()
                .require(requirements.length > 0, name, GivenValue.text("[]"), InputRule.EMPTY, "requirement")
                .throwIfAny();
        return new Requirement(join, List.of(requirements), null, null);
    }

    /**
     * How the parts are joined.
     *
     * @return the kind of join; none for a single limit
     */
    public Join join() {
        return join;
    }

    /**
     * The requirements that are joined.
     *
     * @return the parts; empty for a single limit; unmodifiable
     */
    public List<Requirement> parts() {
        return parts;
    }

    /**
     * The limit of a requirement without parts.
     *
     * @return quantity and limit; empty for a requirement of several parts and for a rule that limits alone cannot state
     */
    public Optional<Comparison> comparison() {
        return Optional.ofNullable(comparison);
    }

    /** The limits in it, as data. */
    List<Limit> limits() {
        if (builtIn != null) {
            return builtIn.limits();
        }
        if (comparison != null) {
            CheckedQuantity q = comparison.quantity();
            String key = comparison.factor() == 1 ? q.key() : number(comparison.factor()) + " × " + q.key();
            String unit = q.unit() + (comparison.perWorker() ? " per worker" : "");
            return List.of(new Limit(key, q.limitType(), comparison.limit(), unit));
        }
        return parts.stream().flatMap(r -> r.limits().stream()).toList();
    }

    /** The requirement in words. */
    String words() {
        if (join != Join.NONE) {
            String between = join == Join.ALL_OF ? "; and " : "; or ";
            String list = parts.stream().map(Requirement::words).collect(Collectors.joining(between));
            return join == Join.EACH_ANCHOR_ANY_OF ? "for each anchor: " + list : list;
        }
        return limits().stream()
                .map(l -> l.quantity() + side(l.type()) + l.value() + (l.unit().equals("-") ? "" : " " + l.unit()))
                .collect(Collectors.joining("; "));
    }

    private static String side(LimitType type) {
        return switch (type) {
            case AT_MOST -> " at most ";
            case BELOW -> " below ";
            case AT_LEAST -> " at least ";
        };
    }

    static String number(double value) {
        return value == Math.rint(value) && Math.abs(value) < LARGEST_WHOLE
                ? Long.toString((long) value)
                : Double.toString(value);
    }

    CapacityCheck check(String title, CheckedDesign design) {
        if (builtIn != null) {
            return builtIn.check(title, design);
        }
        if (comparison != null) {
            return compare(title, comparison, design);
        }
        List<CapacityCheck> checks =
                parts.stream().map(r -> r.check(title, design)).toList();
        return switch (join) {
            case ALL_OF -> CapacityCheck.all("all of these", checks);
            case ANY_OF -> CapacityCheck.any("one of these", checks);
            default -> forEachAnchor(checks);
        };
    }

    private static CapacityCheck compare(String title, Comparison c, CheckedDesign design) {
        CheckedQuantity q = c.quantity();
        double value = c.perWorker() ? c.limit() * design.users() : c.limit();
        Limit limit = new Limit(q.key(), q.limitType(), value, q.unit());
        String words = (c.factor() == 1 ? "" : number(c.factor()) + " × ") + q.comparison(value);
        List<CapacityCheck> list = new ArrayList<>();
        for (CheckedValue each : q.values(design)) {
            CheckedValue scaled = c.factor() == 1 ? each : each.withValue(c.factor() * each.value());
            list.add(CapacityCheck.of(words, scaled, limit, design.extremes().coversEverything()));
        }
        return CapacityCheck.all(title, list);
    }

    /** Puts the alternatives together anchor by anchor. */
    private static CapacityCheck forEachAnchor(List<CapacityCheck> alternatives) {
        Map<String, List<CapacityCheck>> anchors = new LinkedHashMap<>();
        for (CapacityCheck alternative : alternatives) {
            for (CapacityCheck leaf : alternative.leaves()) {
                anchors.computeIfAbsent(leaf.component(), k -> new ArrayList<>())
                        .add(leaf);
            }
        }
        return CapacityCheck.all(
                "every anchor",
                anchors.values().stream()
                        .map(list -> CapacityCheck.any("one of these", list))
                        .toList());
    }

    /** Nothing to compare. */
    static Requirement none(String why) {
        return of(new BuiltIn() {
            @Override
            public CapacityCheck check(String title, CheckedDesign design) {
                return CapacityCheck.missing(title, why);
            }

            @Override
            public List<Limit> limits() {
                return List.of();
            }
        });
    }

    /** A requirement that is stated for some numbers of spans only. */
    static Requirement forSpans(int least, int most, Requirement requirement) {
        return of(new BuiltIn() {
            @Override
            public CapacityCheck check(String title, CheckedDesign design) {
                int spans = design.line().spans();
                return spans >= least && spans <= most
                        ? requirement.check(title, design)
                        : CapacityCheck.missing(
                                title,
                                "it is stated for lines of " + least + " to " + most + " spans, not of " + spans);
            }

            @Override
            public List<Limit> limits() {
                return requirement.limits();
            }
        });
    }

    /** A condition under which values of the source hold. Where it is not met nothing is broken, but nothing is shown. */
    static Requirement condition(Requirement requirement, String otherwise) {
        return of(new BuiltIn() {
            @Override
            public CapacityCheck check(String title, CheckedDesign design) {
                CapacityCheck check = requirement.check(title, design);
                return check.status() == Status.NOT_MET ? CapacityCheck.missing(title, otherwise) : check;
            }

            @Override
            public List<Limit> limits() {
                return requirement.limits();
            }
        });
    }
}
