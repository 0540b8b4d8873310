package org.lifeline.file;

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

    /** Most violations that are listed; of the others only their number is told. */
    static final int MOST = 100;

    private static final Pattern PLAIN_KEY = Pattern.compile("[A-Za-z_][A-Za-z0-9_-]*");

    private final List<Violation> violations = new ArrayList<>();
    private long further;
    private final Map<String, String> written = new LinkedHashMap<>();

    /** The path of a key below a parent. */
    static String child(String parent, String key) {
        String step = key.length() <= LONGEST && PLAIN_KEY.matcher(key).matches() ? key : "[\"" + clip(key) + "\"]";
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
        if (full()) {
            further++;
        } else {
            say(path, written(value), rule);
        }
    }

    void say(String path, String value, String rule) {
        add(new Violation(path, value, rule));
    }

    void missing(String path, String rule) {
        say(path, "missing", rule);
    }

    void add(Violation violation) {
        if (full()) {
            further++;
        } else {
            violations.add(violation);
        }
    }

    /** Counts violations that are not listed. */
    void addUnlisted(long number) {
        further += number;
    }

    /** Tells whether further violations are only counted, so that nothing need be looked up for them. */
    boolean full() {
        return violations.size() >= MOST;
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

    long count() {
        return violations.size() + further;
    }

    void throwIfAny() {
        if (further > 0) {
            violations.add(new Violation("file", further + " further violations", "are not listed"));
        }
        if (!violations.isEmpty()) {
            throw new InvalidInputException(violations);
        }
    }
}
