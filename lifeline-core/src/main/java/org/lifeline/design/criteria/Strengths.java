package org.lifeline.design.criteria;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Predicate;
import org.lifeline.design.envelope.Extreme;
import org.lifeline.design.envelope.Quantity;
import org.lifeline.model.Support;
import org.lifeline.model.cable.Cable;

/** Strengths against loads. */
final class Strengths {
    static final String NO_BREAKING_STRENGTH = "its minimum breaking strength is not given";
    static final String NO_CAPACITY = "its capacity is not given";

    private Strengths() {}

    static List<CheckedValue> all(CheckedDesign s) {
        List<CheckedValue> list = new ArrayList<>(cable(s));
        list.addAll(anchors(s));
        return list;
    }

    static List<CheckedValue> cable(CheckedDesign s) {
        Cable cable = s.line().cable();
        OptionalDouble strength = strengthOf(cable);
        Optional<Extreme> load = s.extremes().of(Quantity.MAXIMUM_TENSION);
        if (strength.isEmpty()) {
            return List.of(CheckedValue.missing("cable", NO_BREAKING_STRENGTH));
        }
        if (load.isEmpty()) {
            return List.of(CheckedValue.missing("cable", s.noCase()));
        }
        return List.of(CheckedValue.strength("cable", strength.getAsDouble(), load.get()));
    }

    /** Minimum breaking strength with its termination [N]. */
    static OptionalDouble strengthOf(Cable cable) {
        return cable.breakingStrength().isPresent()
                ? OptionalDouble.of(cable.breakingStrength().getAsDouble() * cable.terminationEfficiency())
                : OptionalDouble.empty();
    }

    static List<CheckedValue> anchors(CheckedDesign s) {
        List<CheckedValue> list = new ArrayList<>();
        for (Support each : s.line().supports()) {
            Optional<Extreme> load = s.extremes().onSupport(each.id());
            if (each.capacity().isEmpty()) {
                list.add(CheckedValue.missing(each.id(), NO_CAPACITY));
            } else if (load.isEmpty()) {
                list.add(CheckedValue.missing(each.id(), s.noCase()));
            } else {
                list.add(CheckedValue.strength(each.id(), each.capacity().getAsDouble(), load.get()));
            }
        }
        return list;
    }

    static List<CheckedValue> capacities(CheckedDesign s, Predicate<Support> which) {
        List<CheckedValue> list = new ArrayList<>();
        for (Support each : s.line().supports()) {
            if (which.test(each)) {
                list.add(
                        each.capacity().isPresent()
                                ? CheckedValue.of(each.id(), each.capacity().getAsDouble())
                                : CheckedValue.missing(each.id(), NO_CAPACITY));
            }
        }
        return list;
    }
}
