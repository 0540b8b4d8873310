package org.lifeline.base;

import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.util.List;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;

/** What an input is refused for. */
public final class Refusal {
    private Refusal() {}

    /** The violations as they read, {@code path: value: rule}; an empty list if nothing was thrown. */
    public static List<String> of(ThrowingCallable call) {
        InvalidInputException e = catchThrowableOfType(InvalidInputException.class, call);
        return e == null
                ? List.of()
                : e.violations().stream().map(Violation::toString).toList();
    }

    /** Paths of the violations. */
    public static List<String> paths(ThrowingCallable call) {
        InvalidInputException e = catchThrowableOfType(InvalidInputException.class, call);
        return e == null
                ? List.of()
                : e.violations().stream().map(Violation::path).toList();
    }
}
