package org.lifeline.internal.path;

import java.util.function.ToDoubleFunction;

/** Ends of a path, by functions of its points. */
final class Ends {
    private Ends() {}

    /** An end of which nothing is known but its value. */
    static EquilibriumPath.End of(ToDoubleFunction<PathPoint> value) {
        return of(value, p -> Double.NaN);
    }

    static EquilibriumPath.End of(ToDoubleFunction<PathPoint> value, ToDoubleFunction<PathPoint> slope) {
        return new EquilibriumPath.End() {
            @Override
            public double value(PathPoint point) {
                return value.applyAsDouble(point);
            }

            @Override
            public double slope(PathPoint point) {
                return slope.applyAsDouble(point);
            }
        };
    }
}
