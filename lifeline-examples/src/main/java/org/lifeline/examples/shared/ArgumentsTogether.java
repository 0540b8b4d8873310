package org.lifeline.examples.shared;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** Arguments of examples that go together: a variable with its bounds, a sag with its span. A part of them says nothing. */
public final class ArgumentsTogether {
    private static final Map<String, Set<Integer>> NUMBERS =
            Map.of("solve-for", Set.of(0, 1, 4), "field-check", Set.of(0, 5));

    private ArgumentsTogether() {}

    /** What is wrong with so many arguments of an example; empty if nothing is. */
    public static Optional<String> problem(String example, List<String> takes, int given) {
        Set<Integer> numbers = NUMBERS.getOrDefault(example, Set.of(given));
        if (numbers.contains(given)) {
            return Optional.empty();
        }
        return Optional.of("example " + example + " takes no arguments, "
                + (numbers.contains(1) ? "the design alone, " : "") + "or all of "
                + takes.stream().map(t -> t.substring(0, t.indexOf(' '))).collect(Collectors.joining(", ")) + ", not "
                + given);
    }
}
