package org.lifeline.design.variable;

import java.util.List;
import java.util.TreeSet;
import org.lifeline.base.GivenValue;
import org.lifeline.base.InputRule;
import org.lifeline.base.PlausibleRange;
import org.lifeline.base.Violations;

/**
 * A variable with the values that it takes in a table.
 *
 * <p>Immutable and thread-safe.
 *
 * @param variable the variable
 * @param values its values, each [unit of the variable]
 * @since 1.0.0
 */
public record Axis(DesignVariable variable, List<Double> values) {
    /**
     * Copies the values.
     *
     * @param variable the variable
     * @param values its values, each [unit of the variable]
     * @throws org.lifeline.base.InvalidInputException if there is no value, or one is not finite
     */
    public Axis {
        Violations.required("variable", variable);
        Violations.requiredAll("values", values);
        values = List.copyOf(values);
        Violations v = new Violations();
        v.require(!values.isEmpty(), "values", GivenValue.text("[]"), InputRule.EMPTY, "value");
        for (int i = 0; i < values.size(); i++) {
            v.finite("values[" + i + "]", values.get(i), variable.unit());
        }
        v.throwIfAny();
    }

    /**
     * Values spread evenly over the bounds of a variable, on its scale, ends included; whole numbers once each.
     *
     * @param variable the variable
     * @param count number of values, from 2 to 10 001
     * @return the axis
     * @throws org.lifeline.base.InvalidInputException if there are fewer or more
     */
    public static Axis even(DesignVariable variable, int count) {
        Violations.required("variable", variable);
        Violations v = new Violations().atLeast("count", count, 2);
        PlausibleRange.checkCount(v, "count", count);
        v.throwIfAny();
        TreeSet<Double> set = new TreeSet<>();
        for (int i = 0; i < count; i++) {
            set.add(variable.at((double) i / (count - 1)));
        }
        return new Axis(variable, List.copyOf(set));
    }
}
