package org.lifeline.examples.print;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.lifeline.examples.json.DesignFile;

/** What the design file states, in the units in which it states it: every value of the file, none converted. */
final class GivenSection {
    /** A path: the part it belongs to, the rest of its keys, and where it stands in arrays at the end. */
    private static final Pattern PATH =
            Pattern.compile("(?<part>[A-Za-z]+(?:\\[[0-9]+])?)(?<keys>(?:\\.[A-Za-z]+(?:\\[[0-9]+](?=\\.))?)*)"
                    + "(?<index>(?:\\[[0-9]+])*)");

    private GivenSection() {}

    static void print(Sheet sheet, DesignFile file) {
        sheet.section("What was given (as written in the design file)");
        Map<String, Map<String, List<String>>> parts = new LinkedHashMap<>();
        file.written().forEach((path, text) -> {
            Matcher m = PATH.matcher(path);
            if (!m.matches() || path.equals("title") || path.equals("format")) {
                return;
            }
            String keys = m.group("keys").isEmpty() ? "" : m.group("keys").substring(1);
            parts.computeIfAbsent(m.group("part"), p -> new LinkedHashMap<>())
                    .computeIfAbsent(keys, k -> new ArrayList<>())
                    .add(pairMark(m.group("index")) + Inert.of(text));
        });
        int widest =
                parts.keySet().stream().mapToInt(s -> label(s).length()).max().orElse(0);
        parts.forEach((part, values) -> {
            List<String> words = new ArrayList<>();
            values.forEach((keys, texts) -> words.add((label(keys) + " " + join(texts)).strip()));
            String lead = "  " + label(part) + " ".repeat(widest - label(part).length()) + "  ";
            sheet.paragraph(lead, String.join("; ", words));
        });
    }

    /** Values that belong in pairs, as the corners of a curve do, are marked by their place in the pair. */
    private static String pairMark(String index) {
        return index.endsWith("][0]") ? "(" : index.endsWith("][1]") ? ")" : "";
    }

    private static String join(List<String> texts) {
        StringBuilder b = new StringBuilder();
        for (String each : texts) {
            if (each.startsWith("(")) {
                b.append(b.isEmpty() ? "" : " ").append(each);
            } else if (each.startsWith(")")) {
                b.append(", ").append(each.substring(1)).append(')');
            } else {
                b.append(b.isEmpty() ? "" : ", ").append(each);
            }
        }
        return b.toString();
    }

    /** {@code workers[0]} becomes "workers 1", {@code massPerLength} "mass per length". */
    private static String label(String keys) {
        return keys.replaceAll("([a-z])([A-Z])", "$1 $2")
                .toLowerCase(Locale.ROOT)
                .replace('.', ' ')
                .transform(GivenSection::countFromOne);
    }

    private static String countFromOne(String text) {
        return Pattern.compile("\\[([0-9]+)]").matcher(text).replaceAll(m -> " " + (Integer.parseInt(m.group(1)) + 1));
    }
}
