package org.lifeline.explorer.engine.stand;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.regex.Pattern;
import org.lifeline.base.GivenValue;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.Violation;
import org.lifeline.base.ViolationCode;
import org.lifeline.file.json.JsonRule;
import org.lifeline.file.json.JsonText;

/**
 * Stands in for the reader of JSON text, which rests on a library four times its size: the same trees with the digits that
 * were written, the same limits, keys given twice collected, and what is no JSON reported with line and column.
 */
public final class JsonTree {
    private static final int LARGEST = 10_000_000;
    private static final int DEEPEST = 50;
    private static final int LONGEST_NUMBER = 200;
    private static final int LONGEST_KEY = 10_000;
    private static final int SHOWN = 100;
    private static final JsonNodeFactory NODES = new JsonNodeFactory(true);

    private static final Pattern PLAIN_KEY = Pattern.compile("[A-Za-z_][A-Za-z0-9_-]*");
    private static final Pattern NUMBER = Pattern.compile("[0-9]+(\\.[0-9]+)?([eE][+-]?[0-9]+)?");

    private final String text;
    private final Function<JsonRule, ViolationCode> codes;
    private final List<Violation> duplicates = new ArrayList<>();
    private int furtherDuplicates;
    private int at;

    private JsonTree(String text, Function<JsonRule, ViolationCode> codes) {
        this.text = text;
        this.codes = codes;
    }

    /**
     * What was read.
     *
     * @param root the value of the whole text
     * @param duplicates keys that were given twice, the first of them
     * @param furtherDuplicates how many more were given twice
     */
    public record Parsed(JsonNode root, List<Violation> duplicates, int furtherDuplicates) {}

    /**
     * Reads a whole text.
     *
     * @param bytes the text in UTF-8
     * @param codes the code of each rule that the text may break
     * @return the tree and the keys given twice
     * @throws InvalidInputException with one violation if this is no JSON text within the limits
     */
    public static Parsed parse(byte[] bytes, Function<JsonRule, ViolationCode> codes) {
        if (bytes.length > LARGEST) {
            throw broken("file", bytes.length + " bytes", codes.apply(JsonRule.LARGER_THAN_READ), LARGEST);
        }
        String text = new String(bytes, StandardCharsets.UTF_8);
        JsonTree tree = new JsonTree(text.startsWith("\uFEFF") ? text.substring(1) : text, codes);
        tree.blanks();
        if (tree.ended()) {
            throw broken("file", "empty", codes.apply(JsonRule.NO_OBJECT));
        }
        JsonNode root = tree.value("", 1);
        tree.blanks();
        if (!tree.ended()) {
            throw tree.located(codes.apply(JsonRule.GOES_ON));
        }
        return new Parsed(root, List.copyOf(tree.duplicates), tree.furtherDuplicates);
    }

    private boolean ended() {
        return at >= text.length();
    }

    private void blanks() {
        while (!ended() && " \t\r\n".indexOf(text.charAt(at)) >= 0) {
            at++;
        }
    }

    private char next() {
        if (ended()) {
            throw noJson("the text ends before its value is whole");
        }
        return text.charAt(at);
    }

    private void expect(char c) {
        blanks();
        if (next() != c) {
            throw unexpected();
        }
        at++;
    }

    private JsonNode value(String path, int depth) {
        blanks();
        if (depth > DEEPEST + 1) {
            throw limit();
        }
        char c = next();
        return switch (c) {
            case '{' -> object(path, depth);
            case '[' -> array(path, depth);
            case '"' -> NODES.textNode(string());
            default -> word();
        };
    }

    private ObjectNode object(String path, int depth) {
        ObjectNode node = NODES.objectNode();
        at++;
        blanks();
        while (next() != '}') {
            if (next() != '"') {
                throw unexpected();
            }
            int begin = at;
            String key = string();
            if (key.length() > LONGEST_KEY) {
                throw limit();
            }
            String child = child(path, key);
            expect(':');
            JsonNode value = value(child, depth + 1);
            if (node.has(key) && duplicates.size() >= SHOWN) {
                furtherDuplicates++;
            } else if (node.has(key)) {
                int[] where = lineAndColumn(begin);
                GivenValue again = GivenValue.text(clip(JsonText.compact(value)));
                duplicates.add(Violation.of(child, again, codes.apply(JsonRule.KEY_TWICE), where[0], where[1]));
            } else {
                node.set(key, value);
            }
            separator('}');
        }
        at++;
        return node;
    }

    private ArrayNode array(String path, int depth) {
        ArrayNode node = NODES.arrayNode();
        at++;
        blanks();
        while (next() != ']') {
            node.add(value(path + "[" + node.size() + "]", depth + 1));
            separator(']');
        }
        at++;
        return node;
    }

    /** A comma with something behind it, or the end. */
    private void separator(char end) {
        blanks();
        if (next() == end) {
            return;
        }
        expect(',');
        blanks();
        if (next() == end) {
            throw unexpected();
        }
    }

    private String string() {
        StringBuilder out = new StringBuilder();
        at++;
        while (next() != '"') {
            char c = next();
            if (c < 0x20) {
                throw noJson("a text in quotes holds a line break or another control character");
            }
            out.append(c == '\\' ? escape() : c);
            at++;
        }
        at++;
        return out.toString();
    }

    private char escape() {
        at++;
        char c = next();
        int known = "\"\\/bfnrt".indexOf(c);
        if (known >= 0) {
            return "\"\\/\b\f\n\r\t".charAt(known);
        }
        if (c != 'u' || at + 4 >= text.length()) {
            throw noJson("there is no such escape behind a backslash");
        }
        int code = 0;
        for (int i = 0; i < 4; i++) {
            int digit = Character.digit(text.charAt(++at), 16);
            if (digit < 0) {
                throw noJson("there is no such escape behind a backslash");
            }
            code = 16 * code + digit;
        }
        return (char) code;
    }

    private JsonNode word() {
        int begin = at;
        while (!ended() && (Character.isLetterOrDigit(text.charAt(at)) || "+-.".indexOf(text.charAt(at)) >= 0)) {
            at++;
        }
        String word = text.substring(begin, at);
        at = begin;
        JsonNode node =
                switch (word) {
                    case "true" -> NODES.booleanNode(true);
                    case "false" -> NODES.booleanNode(false);
                    case "null" -> NODES.nullNode();
                    case "NaN" -> NODES.numberNode(Double.NaN);
                    case "Infinity", "INF", "+Infinity", "+INF" -> NODES.numberNode(Double.POSITIVE_INFINITY);
                    case "-Infinity", "-INF" -> NODES.numberNode(Double.NEGATIVE_INFINITY);
                    default -> number(word);
                };
        at = begin + word.length();
        return node;
    }

    private JsonNode number(String word) {
        if (word.isEmpty()) {
            throw unexpected();
        }
        if (word.length() > LONGEST_NUMBER) {
            throw limit();
        }
        String digits = word.startsWith("-") ? word.substring(1) : word;
        if (digits.isEmpty() || !Character.isDigit(digits.charAt(0))) {
            throw noJson(
                    Character.isLetter(word.charAt(0))
                            ? '"' + word + "\" is no value; a text stands in double quotes"
                            : "this is no number");
        }
        if (digits.length() > 1 && digits.charAt(0) == '0' && Character.isDigit(digits.charAt(1))) {
            throw noJson("a number must not begin with a needless zero");
        }
        if (!NUMBER.matcher(digits).matches()) {
            throw noJson("this is no number");
        }
        return NODES.numberNode(new BigDecimal(word));
    }

    private static String child(String parent, String key) {
        String step = key.length() <= SHOWN && PLAIN_KEY.matcher(key).matches() ? key : "[\"" + clip(key) + "\"]";
        return parent.isEmpty() || step.startsWith("[") ? parent + step : parent + "." + step;
    }

    private static String clip(String text) {
        return text.length() <= SHOWN ? text : text.substring(0, SHOWN) + "…";
    }

    private int[] lineAndColumn(int place) {
        int line = 1;
        int start = 0;
        for (int i = 0; i < Math.min(place, text.length()); i++) {
            if (text.charAt(i) == '\n') {
                line++;
                start = i + 1;
            }
        }
        return new int[] {line, place - start + 1};
    }

    private InvalidInputException unexpected() {
        return noJson("the character " + next() + " is not expected here");
    }

    private InvalidInputException limit() {
        return broken("file", "JSON", codes.apply(JsonRule.BEYOND_A_LIMIT), DEEPEST, LONGEST_NUMBER, LONGEST_KEY);
    }

    private InvalidInputException noJson(String fault) {
        return located(codes.apply(JsonRule.NOT_JSON), fault);
    }

    private InvalidInputException located(ViolationCode rule, Object... arguments) {
        int[] where = lineAndColumn(at);
        int start = text.lastIndexOf('\n', Math.min(at, text.length() - 1) - 1) + 1;
        int end = text.indexOf('\n', start);
        String shown = text.substring(Math.min(start, text.length()), end < 0 ? text.length() : end)
                .strip();
        String given = ended() ? "end of file" : clip(shown);
        return broken("line " + where[0] + ", column " + where[1], given, rule, arguments);
    }

    private static InvalidInputException broken(String path, String value, ViolationCode rule, Object... arguments) {
        return new InvalidInputException(List.of(Violation.of(path, GivenValue.text(value), rule, arguments)));
    }
}
