package org.lifeline.explorer.engine;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;

/**
 * Compares two answers number by number: the library adds and multiplies in the same order in a script as on the JVM and has the
 * same functions, so that every number is the same double.
 */
public final class Digits {
    private final List<String> differences = new ArrayList<>();
    private double largest;
    private int compared;

    /** With nothing compared so far. */
    public Digits() {}

    /**
     * Compares two answers.
     *
     * @param one an answer
     * @param other the other answer
     * @return this
     */
    public Digits compare(JsonNode one, JsonNode other) {
        compare("", one, other);
        return this;
    }

    private void compare(String path, JsonNode one, JsonNode other) {
        if (one.isNumber() && other.isNumber()) {
            number(path, one.doubleValue(), other.doubleValue());
        } else if (one.isObject() && other.isObject()) {
            Set<String> keys = new TreeSet<>();
            for (JsonNode each : List.of(one, other)) {
                for (Iterator<String> names = each.fieldNames(); names.hasNext(); ) {
                    keys.add(names.next());
                }
            }
            keys.forEach(k -> compare(path + "." + k, one.path(k), other.path(k)));
        } else if (one.isArray() && other.isArray() && one.size() == other.size()) {
            for (int i = 0; i < one.size(); i++) {
                compare(path + "[" + i + "]", one.get(i), other.get(i));
            }
        } else if (!one.equals(other)) {
            differences.add(path + ": " + one + " and " + other);
        }
    }

    private void number(String path, double a, double b) {
        compared++;
        double difference = a == b ? 0 : Math.abs(a - b) / Math.max(Math.abs(a), Math.abs(b));
        largest = Math.max(largest, difference);
        if (a != b) {
            differences.add(path + ": " + a + " and " + b);
        }
    }

    /**
     * Where the answers differ.
     *
     * @return one line for each; empty if they agree
     */
    public List<String> differences() {
        return List.copyOf(differences);
    }

    /**
     * The largest difference of two numbers that were compared.
     *
     * @return share of the larger one [-]
     */
    public double largest() {
        return largest;
    }

    /**
     * How many numbers were compared.
     *
     * @return their number
     */
    public int compared() {
        return compared;
    }
}
