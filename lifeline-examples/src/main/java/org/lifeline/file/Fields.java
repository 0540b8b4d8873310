package org.lifeline.file;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.lifeline.base.InputRule;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.PlausibleRange;
import org.lifeline.base.Violation;
import org.lifeline.base.ViolationCode;
import org.lifeline.base.Violations;
import org.lifeline.base.unit.Dimension;
import org.lifeline.base.unit.NearestName;
import org.lifeline.base.unit.Quantity;
import org.lifeline.base.unit.QuantityText;
import org.lifeline.file.json.Findings;
import org.lifeline.file.json.JsonText;

/**
 * The fields of one JSON object, read one by one; what is wrong goes to the {@link Findings}.
 *
 * <p>A field that is absent or wrong reads as null or NaN, so that reading goes on. {@link #close()} reports the keys that
 * nobody asked for. Not thread-safe.
 */
final class Fields {
    /** Which numbers a field takes. */
    enum Range {
        /** Every finite number. */
        ANY,
        /** Zero and above. */
        NOT_NEGATIVE,
        /** Above zero. */
        POSITIVE
    }

    /** Longest list that is read: supports of 10 000 spans. More are not computed in one piece. */
    static final int MOST_ELEMENTS = 10_001;

    private static final Pattern STEPS = Pattern.compile("[.\\[\\]]+");

    private final JsonNode node;
    private final String path;
    private final Findings findings;
    private final Set<String> known = new LinkedHashSet<>();
    private final long before;

    private Fields(JsonNode node, String path, Findings findings) {
        this.node = node;
        this.path = path;
        this.findings = findings;
        this.before = findings.count();
    }

    /** The fields of a value that must be an object; null, with a violation, if it is none. */
    static @Nullable Fields of(JsonNode node, String path, Findings findings) {
        if (!node.isObject()) {
            findings.bad(path.isEmpty() ? "file" : path, node, FileRule.NOT_AN_OBJECT);
            return null;
        }
        return new Fields(node, path, findings);
    }

    String path() {
        return path;
    }

    String path(String key) {
        return Findings.child(path, key);
    }

    Findings findings() {
        return findings;
    }

    /** Tells whether a key is there, whatever its value; it counts as known from now on. */
    boolean has(String key) {
        known.add(key);
        return node.has(key);
    }

    /** How many of these keys are there. */
    int count(String... keys) {
        int n = 0;
        for (String each : keys) {
            n += has(each) ? 1 : 0;
        }
        return n;
    }

    @Nullable
    JsonNode value(String key) {
        return has(key) ? node.get(key) : null;
    }

    /** The value of a key that is there. */
    JsonNode node(String key) {
        return node.path(key);
    }

    @Nullable
    JsonNode required(String key) {
        JsonNode value = value(key);
        if (value == null) {
            findings.missing(path(key), InputRule.MISSING);
        }
        return value;
    }

    @Nullable
    Fields object(String key) {
        JsonNode value = value(key);
        return value == null ? null : of(value, path(key), findings);
    }

    /** The elements of an array; empty if it is absent or no array. */
    List<JsonNode> array(String key) {
        JsonNode value = value(key);
        if (value == null) {
            return List.of();
        }
        if (!value.isArray()) {
            findings.bad(path(key), value, FileRule.NOT_AN_ARRAY);
            return List.of();
        }
        if (value.size() > MOST_ELEMENTS) {
            findings.say(path(key), value.size() + " elements", FileRule.TOO_MANY_ELEMENTS, MOST_ELEMENTS);
            return List.of();
        }
        List<JsonNode> list = new ArrayList<>();
        value.forEach(list::add);
        return list;
    }

    @Nullable
    String text(String key) {
        JsonNode value = value(key);
        return value == null ? null : text(value, path(key), findings);
    }

    @Nullable
    String requiredText(String key) {
        JsonNode value = required(key);
        return value == null ? null : text(value, path(key), findings);
    }

    static @Nullable String text(JsonNode value, String path, Findings findings) {
        if (!value.isTextual()) {
            findings.bad(path, value, FileRule.NOT_A_TEXT);
            return null;
        }
        findings.note(path, value.textValue());
        return value.textValue();
    }

    /** A text that must be one of a few. */
    @Nullable
    String choice(String key, List<String> choices) {
        String text = text(key);
        if (text == null || choices.contains(text)) {
            return text;
        }
        String near = NearestName.of(text, choices)
                .map(s -> " (did you mean \"" + s + "\"?)")
                .orElse("");
        JsonNode value = node.get(key);
        findings.bad(path(key), value, FileRule.NOT_ONE_OF, String.join("\", \"", choices), near);
        return null;
    }

    /** A quantity with unit; NaN if it is absent or wrong. */
    double quantity(String key, Dimension dimension, Range range) {
        JsonNode value = value(key);
        return value == null ? Double.NaN : quantity(value, path(key), dimension, range);
    }

    double requiredQuantity(String key, Dimension dimension, Range range) {
        JsonNode value = required(key);
        return value == null ? Double.NaN : quantity(value, path(key), dimension, range);
    }

    double quantity(JsonNode value, String at, Dimension dimension, Range range) {
        if (!value.isTextual()) {
            if (dimension == Dimension.STRAIN && value.isNumber()) {
                return inRange(value.doubleValue(), value, at, range);
            }
            findings.bad(at, value, FileRule.NOT_A_QUANTITY_TEXT, dimension.sample());
            return Double.NaN;
        }
        try {
            Quantity quantity = QuantityText.parse(value.textValue(), dimension);
            findings.note(at, quantity.written());
            return inRange(quantity.si(), value, at, range);
        } catch (QuantityText.RuleBroken e) {
            findings.bad(at, value, InputRule.NOT_A_QUANTITY, e.rule());
            return Double.NaN;
        }
    }

    /** A quantity that was read, within what the design takes; NaN, with a violation, outside. */
    double within(String key, double value, PlausibleRange range) {
        Violations v = new Violations();
        if (!Double.isNaN(value)) {
            range.check(v, key, value);
        }
        v.list().forEach(each -> report(each, key));
        return v.list().isEmpty() ? value : Double.NaN;
    }

    /** A number without unit; NaN if it is absent or wrong. */
    double number(String key, Range range) {
        JsonNode value = value(key);
        if (value == null) {
            return Double.NaN;
        }
        if (!value.isNumber()) {
            findings.bad(path(key), value, FileRule.NOT_A_NUMBER);
            return Double.NaN;
        }
        findings.note(path(key), JsonText.compact(value));
        return inRange(value.doubleValue(), value, path(key), range);
    }

    /** A truth value; false where it is none, which is reported. */
    boolean flag(String key) {
        JsonNode value = value(key);
        if (value == null) {
            return false;
        }
        if (!value.isBoolean()) {
            findings.bad(path(key), value, FileRule.NOT_A_TRUTH_VALUE);
        }
        return value.asBoolean();
    }

    /** A whole number; 0 if it is absent or wrong. */
    int count(String key) {
        JsonNode value = value(key);
        if (value == null) {
            return 0;
        }
        double number = value.isNumber() ? value.doubleValue() : Double.NaN;
        if (!(number >= 1) || number != Math.rint(number) || number > 1_000_000) {
            findings.bad(path(key), value, FileRule.NOT_A_COUNT);
            return 0;
        }
        findings.note(path(key), JsonText.compact(value));
        return (int) number;
    }

    private static Optional<ViolationCode> ruleUnless(boolean kept, ViolationCode rule) {
        return kept ? Optional.empty() : Optional.of(rule);
    }

    private double inRange(double number, JsonNode value, String at, Range range) {
        Optional<ViolationCode> rule =
                switch (range) {
                    case ANY -> ruleUnless(Double.isFinite(number), FileRule.NOT_FINITE_IN_FILE);
                    case NOT_NEGATIVE -> ruleUnless(number >= 0 && Double.isFinite(number), FileRule.NEGATIVE_IN_FILE);
                    case POSITIVE -> ruleUnless(number > 0 && Double.isFinite(number), FileRule.NOT_ABOVE_ZERO_IN_FILE);
                };
        if (rule.isEmpty()) {
            return number;
        }
        findings.bad(at, value, rule.get());
        return Double.NaN;
    }

    /** Pairs of two quantities: a curve. Empty if anything of it is wrong. */
    List<double[]> pairs(String key, Dimension first, Dimension second) {
        long start = findings.count();
        List<double[]> list = new ArrayList<>();
        List<JsonNode> items = array(key);
        for (int i = 0; i < items.size(); i++) {
            String at = path(key) + "[" + i + "]";
            JsonNode pair = items.get(i);
            if (!pair.isArray() || pair.size() != 2) {
                findings.bad(at, pair, FileRule.NOT_A_PAIR, first.sample(), second.sample());
                continue;
            }
            double a = quantity(pair.get(0), at + "[0]", first, Range.NOT_NEGATIVE);
            double b = quantity(pair.get(1), at + "[1]", second, Range.NOT_NEGATIVE);
            list.add(new double[] {a, b});
        }
        return findings.count() == start ? list : List.of();
    }

    /** Tells whether nothing was found wrong since this object was begun. */
    boolean clean() {
        return findings.count() == before;
    }

    /**
     * Builds a part of the model if its fields are right; what the model finds wrong is reported at this object's path,
     * with the value as it was written.
     */
    <T> @Nullable T build(Supplier<T> part) {
        if (!clean()) {
            return null;
        }
        try {
            return part.get();
        } catch (InvalidInputException e) {
            e.violations()
                    .forEach(v ->
                            report(v, path.isEmpty() ? ModelPaths.inFile(v.path()) : ModelPaths.members(v.path())));
            return null;
        }
    }

    /** Reports a violation that the model found, at a path below this object. */
    void report(Violation found, String below) {
        Violation at = found.at(below).below(path);
        JsonNode value = find(node, below);
        findings.add(value == null ? at : at.written(Findings.written(value)));
    }

    /** Reports all keys that were not asked for. */
    void close() {
        Iterator<String> names = node.fieldNames();
        while (names.hasNext()) {
            String name = names.next();
            if (known.contains(name)) {
                continue;
            }
            if (findings.full()) {
                findings.addUnlisted(1);
            } else {
                String near = NearestName.of(name, known)
                        .map(s -> "; did you mean \"" + s + "\"?")
                        .orElse("; known here: " + String.join(", ", known));
                findings.bad(path(name), node.get(name), FileRule.UNKNOWN_KEY, near);
            }
        }
    }

    /** Follows a path such as {@code curve[1][0]} or {@code stiffness.x} through a tree. */
    private static @Nullable JsonNode find(JsonNode start, String below) {
        JsonNode at = start;
        for (String step : STEPS.split(below, -1)) {
            if (step.isEmpty() || at == null) {
                continue;
            }
            at = at.isArray() && step.matches("[0-9]{1,6}") ? at.get(Integer.parseInt(step)) : at.get(step);
        }
        return at;
    }
}
