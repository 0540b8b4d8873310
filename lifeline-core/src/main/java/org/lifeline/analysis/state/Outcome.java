package org.lifeline.analysis.state;

import java.util.Optional;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.NoEquilibriumException;
import org.lifeline.base.Violations;

/**
 * What came of an analysis that was tried: its result, or why there is none. For tables and searches, in which one bad case must
 * not end the others. A fault of the program is no outcome: it is thrown.
 *
 * <p>Immutable and thread-safe.
 *
 * @param <T> type of the result
 * @since 1.0.0
 */
public final class Outcome<T> {
    private final @Nullable T result;
    private final @Nullable RuntimeException failure;

    private Outcome(@Nullable T result, @Nullable RuntimeException failure) {
        this.result = result;
        this.failure = failure;
    }

    /**
     * Tries an analysis.
     *
     * @param analysis what gives the result or throws
     * @param <T> type of the result
     * @return the result, or the invalid input or lost equilibrium that it threw
     */
    public static <T> Outcome<T> of(Supplier<T> analysis) {
        Violations.required("analysis", analysis);
        try {
            return new Outcome<>(analysis.get(), null);
        } catch (InvalidInputException | NoEquilibriumException e) {
            return new Outcome<>(null, e);
        }
    }

    /**
     * The result.
     *
     * @return the result; empty where the analysis failed
     */
    public Optional<T> result() {
        return Optional.ofNullable(result);
    }

    /**
     * What was wrong with the input.
     *
     * @return the exception with its violations; empty where the input was not what failed
     */
    public Optional<InvalidInputException> invalidInput() {
        return failure instanceof InvalidInputException e ? Optional.of(e) : Optional.empty();
    }

    /**
     * How far the analysis came before it lost equilibrium.
     *
     * @return the exception; empty where equilibrium was not what failed
     */
    public Optional<NoEquilibriumException> noEquilibrium() {
        return failure instanceof NoEquilibriumException e ? Optional.of(e) : Optional.empty();
    }

    /**
     * The result, or the exception thrown.
     *
     * @return the result
     * @throws InvalidInputException if the input could not be used
     * @throws NoEquilibriumException if no equilibrium was found
     */
    public T orElseThrow() {
        if (result == null) {
            throw failure == null ? new IllegalStateException("an analysis gave nothing") : failure;
        }
        return result;
    }
}
