package org.lifeline.file.reproduce;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;

/**
 * Compares two results, value by value.
 *
 * <p>Numbers agree if they differ by no more than the tolerance times the larger of them, or times one unit (m, N, J, kg)
 * where both are smaller than that; a number that is not finite agrees with none. How an iteration went (residual, number of steps) is not compared: it is no result.
 */
final class Comparison {
    private static final Set<String> NOT_COMPARED = Set.of(
            "format", "libraryVersion", "designSha256", "designContentSha256", "provenance", "convergence", "residual");

    private final double tolerance;
    private final boolean onlyShared;
    private final List<Difference> differences = new ArrayList<>();
    private final List<String> missing = new ArrayList<>();
    private int compared;

    /**
     * A comparison.
     *
     * @param tolerance largest relative difference [-]
     * @param onlyShared true to compare only what both have
     */
    Comparison(double tolerance, boolean onlyShared) {
        this.tolerance = tolerance;
        this.onlyShared = onlyShared;
    }

    Comparison run(JsonNode stored, JsonNode recomputed) {
        compare("", stored, recomputed);
        return this;
    }

    List<Difference> differences() {
        return List.copyOf(differences);
    }

    /** Paths that the stored result lacks. */
    List<String> missing() {
        return List.copyOf(missing);
    }

    int compared() {
        return compared;
    }

    private void compare(String path, JsonNode a, JsonNode b) {
        if (a.isObject() && b.isObject()) {
            Set<String> names = new TreeSet<>();
            a.fieldNames().forEachRemaining(names::add);
            b.fieldNames().forEachRemaining(names::add);
            for (String name : names) {
                String at = path.isEmpty() ? name : path + "." + name;
                if (!NOT_COMPARED.contains(name)) {
                    member(at, a.get(name), b.get(name));
                } else if (a.has(name)) {
                    finite(at, a.get(name));
                }
            }
        } else if (a.isArray() && b.isArray()) {
            for (int i = 0; i < Math.max(a.size(), b.size()); i++) {
                member(path + "[" + i + "]", a.get(i), b.get(i));
            }
        } else if (a.isNumber() && b.isNumber()) {
            numbers(path, a.doubleValue(), b.doubleValue());
        } else {
            compared++;
            if (!a.equals(b)) {
                differences.add(new Difference(path, show(a), show(b), Double.NaN));
            }
        }
    }

    private void member(
            String path, @org.jspecify.annotations.Nullable JsonNode a, @org.jspecify.annotations.Nullable JsonNode b) {
        if (a != null && b != null) {
            compare(path, a, b);
        } else if (!onlyShared) {
            if (a == null) {
                missing.add(path);
            }
            differences.add(new Difference(path, a == null ? "" : show(a), b == null ? "" : show(b), Double.NaN));
        }
    }

    /** What is not compared must still be made of numbers. */
    private void finite(String path, JsonNode a) {
        if (a.isNumber() && !Double.isFinite(a.doubleValue())) {
            differences.add(new Difference(path, Double.toString(a.doubleValue()), "a finite number", Double.NaN));
        }
        a.properties().forEach(e -> finite(path + "." + e.getKey(), e.getValue()));
        for (int i = 0; a.isArray() && i < a.size(); i++) {
            finite(path + "[" + i + "]", a.get(i));
        }
    }

    private void numbers(String path, double a, double b) {
        compared++;
        double scale = Math.max(Math.max(Math.abs(a), Math.abs(b)), 1);
        double off = Math.abs(a - b);
        // Infinity is within any share of infinity; no stored number may be that large.
        boolean finite = Double.isFinite(a) && Double.isFinite(b);
        if (!finite || !(off <= tolerance * scale)) {
            double relative =
                    finite ? off / Math.max(Math.max(Math.abs(a), Math.abs(b)), Double.MIN_NORMAL) : Double.NaN;
            differences.add(new Difference(path, Double.toString(a), Double.toString(b), relative));
        }
    }

    private static String show(JsonNode node) {
        String text = node.toString();
        return text.length() > 60 ? text.substring(0, 57) + "..." : text;
    }
}
