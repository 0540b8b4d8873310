package org.lifeline.base;

import java.util.List;
import java.util.stream.Collectors;

/**
 * An input cannot be used. The exception lists every violation that was found, not only the first.
 *
 * <p>Survives serialization. Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public final class InvalidInputException extends IllegalArgumentException {
    private static final long serialVersionUID = 1L;

    /** Everything that is wrong with the input. */
    private final Violation[] violations;

    /**
     * An exception for a list of violations.
     *
     * @param violations what is wrong; at least one
     */
    public InvalidInputException(List<Violation> violations) {
        super(violations.stream().map(Violation::toString).collect(Collectors.joining("; ")));
        this.violations = violations.toArray(new Violation[0]);
    }

    /**
     * Everything that is wrong with the input.
     *
     * @return the violations in the order in which they were found; unmodifiable
     */
    public List<Violation> violations() {
        return List.of(violations);
    }
}
