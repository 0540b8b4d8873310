package org.lifeline.base.canonical;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Something in which two values differ: a number or text that changed, came, or went.
 *
 * <p>Immutable and thread-safe.
 *
 * @param path where, in the words of the builders
 * @param before the entry of the first value; empty where only the second has it
 * @param after the entry of the second value; empty where only the first has it
 * @since 1.0.0
 */
public record Difference(String path, Optional<CanonicalForm.Entry> before, Optional<CanonicalForm.Entry> after) {

    /**
     * The differences of two forms.
     *
     * @param before the first form
     * @param after the second form
     * @return what changed and went in the order of the first, then what came in the order of the second, then an entry {@code
     *     order} if only the order of the parts differs; unmodifiable
     */
    public static List<Difference> between(CanonicalForm before, CanonicalForm after) {
        Map<String, CanonicalForm.Entry> old = byPath(before);
        Map<String, CanonicalForm.Entry> now = byPath(after);
        List<Difference> list = new ArrayList<>();
        old.forEach((path, entry) -> {
            CanonicalForm.Entry other = now.get(path);
            if (!entry.equals(other)) {
                list.add(new Difference(path, Optional.of(entry), Optional.ofNullable(other)));
            }
        });
        now.forEach((path, entry) -> {
            if (!old.containsKey(path)) {
                list.add(new Difference(path, Optional.empty(), Optional.of(entry)));
            }
        });
        if (list.isEmpty() && !before.entries().equals(after.entries())) {
            list.add(new Difference("order", order(before), order(after)));
        }
        return List.copyOf(list);
    }

    private static Map<String, CanonicalForm.Entry> byPath(CanonicalForm form) {
        Map<String, CanonicalForm.Entry> map = new LinkedHashMap<>();
        form.entries().forEach(e -> map.put(e.path(), e));
        return map;
    }

    private static Optional<CanonicalForm.Entry> order(CanonicalForm form) {
        String first = form.entries().stream()
                .map(CanonicalForm.Entry::path)
                .reduce((a, b) -> a + ", " + b)
                .orElse("");
        return Optional.of(new CanonicalForm.Entry("order", first, OptionalDouble.empty(), ""));
    }

    /**
     * By how much a number changed.
     *
     * @return second less first [unit of the entry]; empty unless both are finite numbers of one unit
     */
    public OptionalDouble change() {
        if (!before.map(CanonicalForm.Entry::unit).equals(after.map(CanonicalForm.Entry::unit))) {
            return OptionalDouble.empty();
        }
        double change = number(after) - number(before);
        return Double.isFinite(change) ? OptionalDouble.of(change) : OptionalDouble.empty();
    }

    /**
     * By what share a number changed.
     *
     * @return change over the magnitude of the first number [-]; empty where there is no change, or the first number is zero
     */
    public OptionalDouble relativeChange() {
        double first = Math.abs(number(before));
        OptionalDouble change = change();
        return change.isPresent() && first > 0
                ? OptionalDouble.of(change.getAsDouble() / first)
                : OptionalDouble.empty();
    }

    /**
     * Tells whether a change is more than rounding.
     *
     * @param tolerance share of the larger number that counts as rounding [-], not negative
     * @return true if a number changed by more, and for everything that is no change of a number
     */
    public boolean isBeyond(double tolerance) {
        OptionalDouble change = change();
        return change.isEmpty()
                || Math.abs(change.getAsDouble())
                        > tolerance * Math.max(Math.abs(number(before)), Math.abs(number(after)));
    }

    private static double number(Optional<CanonicalForm.Entry> entry) {
        return entry.map(CanonicalForm.Entry::number).orElse(Double.NaN);
    }

    @Override
    public String toString() {
        String by = change().isPresent()
                ? " (" + (change().getAsDouble() > 0 ? "+" : "") + change().getAsDouble() + ")"
                : "";
        return path + ": " + before.map(CanonicalForm.Entry::shown).orElse("none") + " → "
                + after.map(CanonicalForm.Entry::shown).orElse("none") + by;
    }
}
