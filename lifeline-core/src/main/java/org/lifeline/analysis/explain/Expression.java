package org.lifeline.analysis.explain;

import java.util.Arrays;
import java.util.List;
import java.util.function.Consumer;
import java.util.function.ToDoubleFunction;
import org.lifeline.internal.numeric.Elementary;

/**
 * A formula of a calculation sheet: can be evaluated, and written with its symbols or with its numbers.
 *
 * <p>Not thread-safe: its figures gain digits while a sheet is settled.
 */
abstract class Expression {
    private static final int SUM = 1;
    private static final int PRODUCT = 2;
    private static final int POWER = 3;
    private static final int ATOM = 4;

    /** How tightly the outermost operation binds. */
    abstract int binding();

    /** The value with a given reading of the figures. */
    abstract double value(ToDoubleFunction<Figure> reading);

    /** The formula with symbols, or with printed numbers. */
    abstract String write(boolean numbers);

    /** Visits the figures in it. */
    abstract void figures(Consumer<Figure> visitor);

    private static String inside(Expression e, int least, boolean numbers) {
        String text = e.write(numbers);
        return e.binding() < least ? "(" + text + ")" : text;
    }

    /** A plain number. */
    static Expression number(int value) {
        return new Operation(ATOM, List.of(), v -> value, t -> Integer.toString(value));
    }

    static Expression sum(Expression... terms) {
        return sum(Arrays.asList(terms));
    }

    static Expression sum(List<? extends Expression> terms) {
        if (terms.size() == 1) {
            return terms.get(0);
        }
        return new Operation(SUM, terms, v -> Arrays.stream(v).sum(), t -> String.join(" + ", t));
    }

    static Expression minus(Expression a, Expression b) {
        return new Operation(SUM, List.of(a, b), v -> v[0] - v[1], t -> t[0] + " − " + t[1], new int[] {SUM, PRODUCT});
    }

    static Expression times(Expression... factors) {
        return new Operation(
                PRODUCT,
                Arrays.asList(factors),
                v -> Arrays.stream(v).reduce(1, (a, b) -> a * b),
                t -> String.join("·", t));
    }

    static Expression over(Expression a, Expression b) {
        return new Operation(
                PRODUCT, List.of(a, b), v -> v[0] / v[1], t -> t[0] + "/" + t[1], new int[] {PRODUCT, POWER});
    }

    static Expression half(Expression a) {
        return over(a, number(2));
    }

    static Expression square(Expression a) {
        return new Operation(POWER, List.of(a), v -> v[0] * v[0], t -> t[0] + "²", new int[] {ATOM});
    }

    static Expression root(Expression a) {
        return function("√", a, Math::sqrt);
    }

    /** √(a² + b² + …). */
    static Expression length(Expression... components) {
        return root(sum(Arrays.stream(components).map(Expression::square).toList()));
    }

    static Expression artanh(Expression a) {
        return function("artanh", a, x -> 0.5 * Elementary.log1p(2 * x / (1 - x)));
    }

    static Expression arctan(Expression a) {
        return function("arctan", a, StrictMath::atan);
    }

    static Expression arccos(Expression a) {
        return function("arccos", a, StrictMath::acos);
    }

    static Expression ln(Expression a) {
        return function("ln", a, StrictMath::log);
    }

    static Expression size(Expression a) {
        return new Operation(ATOM, List.of(a), v -> Math.abs(v[0]), t -> "|" + t[0] + "|", new int[] {SUM});
    }

    /** The larger of zero and a. */
    static Expression notNegative(Expression a) {
        return new Operation(ATOM, List.of(a), v -> Math.max(0, v[0]), t -> "max(0; " + t[0] + ")", new int[] {SUM});
    }

    private static Expression function(String name, Expression a, java.util.function.DoubleUnaryOperator f) {
        return new Operation(
                ATOM, List.of(a), v -> f.applyAsDouble(v[0]), t -> name + "(" + t[0] + ")", new int[] {SUM});
    }

    private static final class Operation extends Expression {
        private final int binding;
        private final List<? extends Expression> operands;
        private final ToDoubleFunction<double[]> value;
        private final java.util.function.Function<String[], String> text;
        private final int[] least;

        Operation(
                int binding,
                List<? extends Expression> operands,
                ToDoubleFunction<double[]> value,
                java.util.function.Function<String[], String> text,
                int... least) {
            this.binding = binding;
            this.operands = List.copyOf(operands);
            this.value = value;
            this.text = text;
            this.least = least;
        }

        @Override
        int binding() {
            return binding;
        }

        @Override
        double value(ToDoubleFunction<Figure> reading) {
            double[] v = new double[operands.size()];
            for (int i = 0; i < v.length; i++) {
                v[i] = operands.get(i).value(reading);
            }
            return value.applyAsDouble(v);
        }

        @Override
        String write(boolean numbers) {
            String[] t = new String[operands.size()];
            for (int i = 0; i < t.length; i++) {
                // The parts of a chain bind at least as tightly as the chain itself.
                int need = least.length == 0 ? binding : least[Math.min(i, least.length - 1)];
                t[i] = inside(operands.get(i), need, numbers);
            }
            return text.apply(t);
        }

        @Override
        void figures(Consumer<Figure> visitor) {
            operands.forEach(o -> o.figures(visitor));
        }
    }
}
