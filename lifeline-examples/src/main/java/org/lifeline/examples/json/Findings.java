package org.lifeline.examples.json;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.Violation;

/**
 * Collects, while a design is read, what is wrong with it and how its values were written.
 *
 * <p>Not thread-safe; made, filled and thrown within one call.
 */
final class Findings {
    /** Longest value that a violation shows in full [characters]. */
    private static final int LONGEST = 100;

    private static final Pattern PLAIN_KEY = Pattern.compile("[A-Za-z_][A-Za-z0-9_-]*");

    private final List<Violation> violations = new ArrayList<>();
    private final Map<String, String> written = new LinkedHashMap<>();

    /** The path of a key below a parent. */
    static String child(String parent, String key) {
        String step = PLAIN_KEY.matcher(key).matches() ? key : "[\"" + key + "\"]";
        return parent.isEmpty() || step.startsWith("[") ? parent + step : parent + "." + step;
    }

    /** A value as it was written, without line breaks and not too long. */
    static String written(JsonNode value) {
        return clip(value.isFloatingPointNumber() && Double.isNaN(value.doubleValue()) ? "NaN" : value.toString());
    }

    static String clip(String text) {
        return text.length() <= LONGEST ? text : text.substring(0, LONGEST) + "…";
    }

    void bad(String path, JsonNode value, String rule) {
        violations.add(new Violation(path, written(value), rule));
    }

    void say(String path, String value, String rule) {
        violations.add(new Violation(path, value, rule));
    }

    void missing(String path, String rule) {
        violations.add(new Violation(path, "missing", rule));
    }

    void add(Violation violation) {
        violations.add(violation);
    }

    /** Notes how a quantity or text was written. */
    void note(String path, String text) {
        written.put(path, text);
    }

    Map<String, String> written() {
        return written;
    }

    /** Tells whether something at a path or below it was found wrong. */
    boolean touches(String path) {
        return violations.stream()
                .map(Violation::path)
                .anyMatch(p -> p.equals(path) || p.startsWith(path + ".") || p.startsWith(path + "["));
    }

    int count() {
        return violations.size();
    }

    void throwIfAny() {
        if (!violations.isEmpty()) {
            throw new InvalidInputException(violations);
        }
    }
}
