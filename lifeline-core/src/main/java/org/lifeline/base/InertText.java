package org.lifeline.base;

/**
 * Makes text of unknown origin harmless in the format that it is written to.
 *
 * <p>In all formats: characters that steer a display (control characters, marks and overrides of writing direction,
 * invisible ones, halves of surrogate pairs) are replaced by something that can be seen, line breaks by a space, and
 * text beyond {@value #LONGEST} characters is cut with a note of its length. Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public final class InertText {
    /** Longest text that is shown in full, in characters. */
    public static final int LONGEST = 2000;

    /** Longest name that is shown in full, in characters. */
    public static final int LONGEST_NAME = 160;

    private InertText() {}

    /**
     * Text without anything that steers a display, for a terminal or a plain text file.
     *
     * @param text any text
     * @return the text on one line, at most {@value #LONGEST} characters and a note
     */
    public static String plain(String text) {
        return plain(text, LONGEST);
    }

    /**
     * A name or title for use within other text.
     *
     * @param text any text
     * @return the text on one line, at most {@value #LONGEST_NAME} characters and a note
     */
    public static String name(String text) {
        return plain(text, LONGEST_NAME);
    }

    private static String plain(String text, int longest) {
        StringBuilder b = new StringBuilder();
        int shown = 0;
        int i = 0;
        while (i < text.length() && shown < longest) {
            int c = text.codePointAt(i);
            append(b, c);
            i += Character.charCount(c);
            shown++;
        }
        if (i < text.length()) {
            b.append("… (").append(text.codePointCount(0, text.length())).append(" characters)");
        }
        return b.toString();
    }

    private static void append(StringBuilder b, int c) {
        if (c == '\n' || c == '\r' || c == '\t' || c == 0x2028 || c == 0x2029 || c == 0x85) {
            b.append(' ');
        } else if (c < 0x20) {
            b.appendCodePoint(0x2400 + c);
        } else if (c == 0x7F) {
            b.appendCodePoint(0x2421);
        } else if (isSteering(c)) {
            b.append('⟨')
                    .append(String.format(java.util.Locale.ROOT, "U+%04X", c))
                    .append('⟩');
        } else {
            b.appendCodePoint(c);
        }
    }

    /** Invisible, direction-changing, unassigned or half a character. */
    private static boolean isSteering(int c) {
        return switch (Character.getType(c)) {
            case Character.CONTROL,
                    Character.FORMAT,
                    Character.SURROGATE,
                    Character.UNASSIGNED,
                    Character.PRIVATE_USE,
                    Character.LINE_SEPARATOR,
                    Character.PARAGRAPH_SEPARATOR -> true;
            default -> false;
        };
    }

    /**
     * Text for the content or a quoted attribute of HTML, XML or SVG.
     *
     * @param text any text
     * @return the text made plain, with markup characters as entities
     */
    public static String markup(String text) {
        return escape(plain(text));
    }

    /**
     * Entities only, for text that is known to be harmless but for markup characters.
     *
     * @param text the text
     * @return the text with markup characters as entities
     */
    public static String escape(String text) {
        StringBuilder b = new StringBuilder(text.length() + 16);
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            switch (c) {
                case '&' -> b.append("&amp;");
                case '<' -> b.append("&lt;");
                case '>' -> b.append("&gt;");
                case '"' -> b.append("&quot;");
                case '\'' -> b.append("&#39;");
                default -> b.append(c);
            }
        }
        return b.toString();
    }

    /**
     * Text as a field of a file of comma-separated values. What a spreadsheet would take for a formula gets an
     * apostrophe in front.
     *
     * @param text any text; for numbers use {@link #csvNumber}
     * @return the field, in double quotes where it needs them
     */
    public static String csv(String text) {
        String plain = plain(text);
        String stripped = plain.strip();
        boolean formula = !stripped.isEmpty() && "=+-@|％＝＋－＠".indexOf(stripped.charAt(0)) >= 0;
        String safe = formula ? "'" + plain : plain;
        boolean quoted = safe.indexOf(',') >= 0
                || safe.indexOf('"') >= 0
                || safe.indexOf(';') >= 0
                || !safe.equals(safe.strip());
        return quoted ? '"' + safe.replace("\"", "\"\"") + '"' : safe;
    }

    /**
     * A number as a field of a file of comma-separated values, with all its digits.
     *
     * @param value the number [unit of the column]
     * @return the field; empty for what is not a finite number
     */
    public static String csvNumber(double value) {
        return Double.isFinite(value) ? Double.toString(value) : "";
    }
}
