package org.lifeline.housefixture.good.analysis;

import java.math.RoundingMode;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.Executor;
import org.lifeline.housefixture.good.base.Length;
import org.lifeline.housefixture.good.internal.line.Step;
import org.lifeline.housefixture.good.internal.numeric.Trace;

/** Does what a careful class may do: the near miss of every rule. */
public final class Quiet {
    private static final double[] TABLE = {1, 2};
    static final List<String> NAMES = List.of("north", "south");

    private final Step step;

    Quiet(Step step) {
        this.step = step;
    }

    public static Quiet withDefaults() {
        return new Quiet(new Step(new Trace()));
    }

    public Length length() {
        return new Length(step.trace().value() + TABLE[0]);
    }

    public String text() {
        return String.format(Locale.ROOT, "%.1f", length().metres()).toUpperCase(Locale.ROOT);
    }

    public double sample(long seed) {
        return new SplittableRandom(seed).nextDouble();
    }

    public CompletableFuture<Length> on(Executor executor) {
        return CompletableFuture.supplyAsync(this::length, executor);
    }

    public int decimals(RoundingMode mode) {
        return switch (mode) { // the compiler keeps a static table for it
            case UNNECESSARY -> 15;
            default -> 3;
        };
    }

    public Length checked(Length limit) {
        if (limit.metres() < 0) {
            throw new IllegalArgumentException("limit: " + limit + " is negative");
        }
        return limit;
    }
}
