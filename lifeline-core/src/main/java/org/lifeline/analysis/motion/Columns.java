package org.lifeline.analysis.motion;

import java.util.EnumMap;
import java.util.Map;

/** Copies of columns of numbers. */
final class Columns {
    private Columns() {}

    static <Q extends Enum<Q>> Map<Q, double[]> copy(Class<Q> quantities, Map<Q, double[]> columns) {
        Map<Q, double[]> copy = new EnumMap<>(quantities);
        columns.forEach((quantity, values) -> copy.put(quantity, values.clone()));
        return copy;
    }
}
