package org.lifeline.file.json;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.Iterator;
import java.util.Map;

/**
 * Writes a JSON tree as text: in one line, or one value a line with two blanks for each level. It needs no reflection, so
 * that it works where there is none.
 */
public final class JsonText {
    private static final String HEX = "0123456789ABCDEF";

    private JsonText() {}

    /**
     * A tree in one line.
     *
     * @param node the tree
     * @return the text
     */
    public static String compact(JsonNode node) {
        StringBuilder out = new StringBuilder();
        write(out, node, -1);
        return out.toString();
    }

    /**
     * A tree with one value a line.
     *
     * @param node the tree
     * @return the text, without a line break at its end
     */
    public static String pretty(JsonNode node) {
        StringBuilder out = new StringBuilder();
        write(out, node, 0);
        return out.toString();
    }

    /** Writes a node; below level 0 without line breaks. */
    private static void write(StringBuilder out, JsonNode node, int level) {
        if (node.isObject()) {
            object(out, node, level);
        } else if (node.isArray()) {
            array(out, node, level);
        } else if (node.isTextual()) {
            text(out, node.textValue());
        } else if (node.isDouble() && !Double.isFinite(node.doubleValue())) {
            text(out, Double.toString(node.doubleValue()));
        } else if (node.isDouble()) {
            JsonNumber.append(out, node.doubleValue());
        } else if (node.isBigDecimal() || node.isBigInteger()) {
            out.append(node.decimalValue());
        } else {
            out.append(node.asText());
        }
    }

    private static void object(StringBuilder out, JsonNode node, int level) {
        Iterator<Map.Entry<String, JsonNode>> fields = node.properties().iterator();
        if (!fields.hasNext()) {
            out.append(level < 0 ? "{}" : "{ }");
            return;
        }
        out.append('{');
        while (fields.hasNext()) {
            Map.Entry<String, JsonNode> each = fields.next();
            line(out, level < 0 ? level : level + 1);
            text(out, each.getKey());
            out.append(level < 0 ? ":" : " : ");
            write(out, each.getValue(), level < 0 ? level : level + 1);
            out.append(fields.hasNext() ? "," : "");
        }
        line(out, level);
        out.append('}');
    }

    private static void array(StringBuilder out, JsonNode node, int level) {
        if (node.isEmpty()) {
            out.append(level < 0 ? "[]" : "[ ]");
            return;
        }
        out.append('[');
        for (int i = 0; i < node.size(); i++) {
            line(out, level < 0 ? level : level + 1);
            write(out, node.get(i), level < 0 ? level : level + 1);
            out.append(i + 1 < node.size() ? "," : "");
        }
        line(out, level);
        out.append(']');
    }

    private static void line(StringBuilder out, int level) {
        if (level >= 0) {
            out.append('\n').append("  ".repeat(level));
        }
    }

    private static void text(StringBuilder out, String text) {
        out.append('"');
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            switch (c) {
                case '"' -> out.append("\\\"");
                case '\\' -> out.append("\\\\");
                case '\b' -> out.append("\\b");
                case '\f' -> out.append("\\f");
                case '\n' -> out.append("\\n");
                case '\r' -> out.append("\\r");
                case '\t' -> out.append("\\t");
                default -> {
                    if (c < 0x20) {
                        out.append("\\u00").append(HEX.charAt(c >> 4)).append(HEX.charAt(c & 15));
                    } else {
                        out.append(c);
                    }
                }
            }
        }
        out.append('"');
    }
}
