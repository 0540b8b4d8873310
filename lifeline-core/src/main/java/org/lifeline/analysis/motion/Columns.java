package org.lifeline.analysis.motion;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.lifeline.base.GivenValue;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.Violation;
import org.lifeline.base.ViolationCode;

/** Copies of columns of numbers, and what is said where a column is asked for that is not there. */
final class Columns {
    private Columns() {}

    static <Q extends Enum<Q>> Map<Q, double[]> copy(Class<Q> quantities, Map<Q, double[]> columns) {
        Map<Q, double[]> copy = new EnumMap<>(quantities);
        columns.forEach((quantity, values) -> copy.put(quantity, values.clone()));
        return copy;
    }

    /** The refusal of an id that nothing in the result has; null is one of them. */
    static InvalidInputException unknown(@Nullable String id, ViolationCode rule) {
        return new InvalidInputException(List.of(Violation.of("id", GivenValue.text(String.valueOf(id)), rule)));
    }
}
