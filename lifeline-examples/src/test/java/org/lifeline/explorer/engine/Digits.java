package org.lifeline.explorer.engine;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;

/**
 * Compares two answers number by number. Numbers agree to 1e-9 of the larger one, those of a line with friction to 1e-6, which
 * is how well its path is known: the lengths of its steps turn on last digits. Energies are compared by the energy of the
 * fall, and lengths that may be nothing at all, slip and displacement, by a metre: both are differences of larger numbers, in
 * which the last digits of logarithms and exponentials, on which platforms differ, stand farther to the left.
 */
public final class Digits {
    private static final double RELATIVE = 1e-9;
    private static final double ROUGH = 1e-6;
    private static final Set<String> ENERGIES =
            Set.of("friction", "lineEnergy", "connectionEnergy", "fallEnergy", "residual", "line", "cable", "hanging");
    private static final Set<String> LENGTHS = Set.of("slip", "displacement");

    private final List<String> differences = new ArrayList<>();
    private final double allowed;
    private double largest;
    private int compared;

    /** For answers to a design whose numbers do not turn on last digits. */
    public Digits() {
        this(RELATIVE);
    }

    private Digits(double allowed) {
        this.allowed = allowed;
    }

    /**
     * For answers to a design.
     *
     * @param design a design file; {@code friction} stands in it or does not
     * @return the comparison
     */
    public static Digits of(String design) {
        return new Digits(design.contains("friction") ? ROUGH : RELATIVE);
    }

    /**
     * Tells whether all numbers agree as those of a line without friction do.
     *
     * @return true if they do
     */
    public boolean isClose() {
        return largest <= RELATIVE;
    }

    /**
     * Compares two answers.
     *
     * @param one an answer
     * @param other the other answer
     * @return this
     */
    public Digits compare(JsonNode one, JsonNode other) {
        compare("", one, other, 1);
        return this;
    }

    private void compare(String path, JsonNode one, JsonNode other, double energy) {
        if (one.isNumber() && other.isNumber()) {
            number(path, one.doubleValue(), other.doubleValue(), energy);
        } else if (one.isObject() && other.isObject()) {
            double scale = one.path("fallEnergy").asDouble(energy);
            Set<String> keys = new TreeSet<>();
            for (JsonNode each : List.of(one, other)) {
                for (Iterator<String> names = each.fieldNames(); names.hasNext(); ) {
                    keys.add(names.next());
                }
            }
            keys.forEach(k -> compare(path + "." + k, one.path(k), other.path(k), scale));
        } else if (one.isArray() && other.isArray() && one.size() == other.size()) {
            for (int i = 0; i < one.size(); i++) {
                compare(path + "[" + i + "]", one.get(i), other.get(i), energy);
            }
        } else if (!one.equals(other)) {
            differences.add(path + ": " + one + " and " + other);
        }
    }

    private void number(String path, double a, double b, double energy) {
        compared++;
        String key = path.substring(path.lastIndexOf('.') + 1);
        double scale = ENERGIES.contains(key) ? energy : LENGTHS.contains(key) ? 1 : 0;
        double difference = a == b ? 0 : Math.abs(a - b) / Math.max(scale, Math.max(Math.abs(a), Math.abs(b)));
        largest = Math.max(largest, difference);
        if (!(difference <= allowed)) {
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
     * @return share of the larger one, or of the scale [-]
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
