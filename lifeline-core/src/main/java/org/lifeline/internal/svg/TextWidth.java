package org.lifeline.internal.svg;

import org.lifeline.base.InertText;

/** How wide a text is in a picture whose reader's fonts are unknown. */
public final class TextWidth {
    /** How much wider bold letters are than these; a little too much for the widest of the usual fonts. */
    static final double BOLD = 1.25;

    private TextWidth() {}

    /** Estimated width of a text in user units; a little too wide rather than too narrow. */
    public static double of(String text) {
        double sum = 0;
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if ("il.,:;'|!()[] jtfr".indexOf(c) >= 0) {
                sum += 4.3;
            } else if ("mwMW@%—".indexOf(c) >= 0 || c > 0x2E80) {
                sum += 11.5;
            } else if (Character.isUpperCase(c)) {
                sum += 8.7;
            } else {
                sum += 7.0;
            }
        }
        return sum;
    }

    /** Text cut to a width, with an ellipsis. */
    public static String cut(String text, double most) {
        String plain = InertText.plain(text);
        if (of(plain) <= most) {
            return plain;
        }
        int end = plain.length();
        while (end > 1 && of(plain.substring(0, end)) + 9 > most) {
            end--;
        }
        if (Character.isHighSurrogate(plain.charAt(end - 1))) {
            end--;
        }
        return plain.substring(0, end).stripTrailing() + "…";
    }
}
