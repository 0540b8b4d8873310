package org.lifeline.file.json;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.regex.Pattern;
import org.lifeline.base.GivenValue;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.Violation;
import org.lifeline.base.ViolationCode;

/**
 * Collects, while a design is read, what is wrong with it and how its values were written.
 *
 * <p>Not thread-safe; made, filled and thrown within one call.
 */
public final class Findings {
    /** Longest value that a violation shows in full [characters]. */
    private static final int LONGEST = 100;

    /** Most violations that are listed; of the others only their number is told. */
    public static final int MOST = 100;

    private static final Pattern PLAIN_KEY = Pattern.compile("[A-Za-z_][A-Za-z0-9_-]*");

    private final Function<JsonRule, ViolationCode> codes;
    private final List<Violation> violations = new ArrayList<>();
    private long further;
    private final Map<String, String> written = new LinkedHashMap<>();

    /** Nothing found yet; with the code that a rule has for who reads. */
    public Findings(Function<JsonRule, ViolationCode> codes) {
        this.codes = codes;
    }

    /** The path of a key below a parent. */
    public static String child(String parent, String key) {
        String step = key.length() <= LONGEST && PLAIN_KEY.matcher(key).matches() ? key : "[\"" + clip(key) + "\"]";
        return parent.isEmpty() || step.startsWith("[") ? parent + step : parent + "." + step;
    }

    /** A value as it was written, without line breaks and not too long. */
    public static String written(JsonNode value) {
        return clip(
                value.isFloatingPointNumber() && Double.isNaN(value.doubleValue()) ? "NaN" : JsonText.compact(value));
    }

    public static String clip(String text) {
        return text.length() <= LONGEST ? text : text.substring(0, LONGEST) + "…";
    }

    public void bad(String path, JsonNode value, ViolationCode rule, Object... arguments) {
        if (full()) {
            further++;
        } else {
            say(path, written(value), rule, arguments);
        }
    }

    public void say(String path, String value, ViolationCode rule, Object... arguments) {
        add(Violation.of(path, GivenValue.text(value), rule, arguments));
    }

    public void missing(String path, ViolationCode rule) {
        add(Violation.of(path, GivenValue.missing(), rule));
    }

    public void add(Violation violation) {
        if (full()) {
            further++;
        } else {
            violations.add(violation);
        }
    }

    /** Counts violations that are not listed. */
    public void addUnlisted(long number) {
        further += number;
    }

    /** Tells whether further violations are only counted, so that nothing need be looked up for them. */
    public boolean full() {
        return violations.size() >= MOST;
    }

    /** Notes how a quantity or text was written. */
    public void note(String path, String text) {
        written.put(path, text);
    }

    public Map<String, String> written() {
        return written;
    }

    /** Tells whether something at a path or below it was found wrong. */
    public boolean touches(String path) {
        return violations.stream()
                .map(Violation::path)
                .anyMatch(p -> p.equals(path) || p.startsWith(path + ".") || p.startsWith(path + "["));
    }

    public long count() {
        return violations.size() + further;
    }

    public void throwIfAny() {
        if (further > 0) {
            GivenValue number = GivenValue.countOf(further, "further violations");
            violations.add(Violation.of("file", number, codes.apply(JsonRule.NOT_LISTED)));
        }
        if (!violations.isEmpty()) {
            throw new InvalidInputException(violations);
        }
    }
}
