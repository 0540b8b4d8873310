package org.lifeline.examples.print;

import java.util.Locale;

/**
 * Makes text from files harmless for a terminal: control characters, escape sequences and marks that turn the direction of
 * writing become visible escapes, and nothing is longer than it should be.
 */
public final class Inert {
    private static final int LONGEST = 200;

    private Inert() {}

    /**
     * The text on one line, with visible escapes.
     *
     * @param text any text
     * @return the text, at most about 200 characters long
     */
    public static String of(String text) {
        StringBuilder b = new StringBuilder();
        int[] points = text.codePoints().limit(LONGEST + 1L).toArray();
        for (int i = 0; i < Math.min(LONGEST, points.length); i++) {
            int c = points[i];
            if (isHarmful(c)) {
                b.append(String.format(Locale.ROOT, "\\u%04X", c));
            } else {
                b.appendCodePoint(c);
            }
        }
        return points.length > LONGEST ? b.append('…').toString() : b.toString();
    }

    private static boolean isHarmful(int c) {
        return switch (Character.getType(c)) {
            case Character.CONTROL,
                    Character.FORMAT,
                    Character.SURROGATE,
                    Character.PRIVATE_USE,
                    Character.UNASSIGNED,
                    Character.LINE_SEPARATOR,
                    Character.PARAGRAPH_SEPARATOR -> true;
            default -> false;
        };
    }
}
