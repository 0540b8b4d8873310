package org.lifeline.report.document;

import java.util.ArrayList;
import java.util.List;

/**
 * Breaks a text into lines of characters of one width, at spaces; between a number and its unit only where there is no other
 * space. A word that is longer than a line is broken behind a hyphen where it has one.
 *
 * <p>Immutable and thread-safe.
 *
 * @param width most characters of a line, at least 1; a code point counts as one
 * @param indent what all lines but the first begin with, shorter than the width
 * @param withinWords true to break a word that is longer than a line, false to give it a longer line of its own
 * @since 1.0.0
 */
public record LineBreaks(int width, String indent, boolean withinWords) {
    /**
     * Refuses a width in which nothing finds room.
     *
     * @param width most characters of a line, at least 1
     * @param indent what all lines but the first begin with, shorter than the width
     * @param withinWords true to break a word that is longer than a line
     */
    public LineBreaks {
        if (width <= length(indent)) {
            throw new IllegalArgumentException("width " + width + " must be larger than the indent, " + length(indent));
        }
    }

    /**
     * Lines of a width, without an indent; a longer word is broken where it must be.
     *
     * @param width most characters of a line, at least 1
     * @return the rule
     */
    public static LineBreaks at(int width) {
        return new LineBreaks(width, "", true);
    }

    /**
     * Breaks a text.
     *
     * @param text the text, without line breaks
     * @return its lines, at least one; unmodifiable
     */
    public List<String> lines(String text) {
        List<String> lines = new ArrayList<>();
        String start = "";
        String rest = text;
        while (length(start) + length(rest) > width) {
            int at = end(rest, rest.offsetByCodePoints(0, width - length(start)));
            if (at < 0) {
                break;
            }
            lines.add(start + rest.substring(0, at));
            rest = rest.substring(at).stripLeading();
            start = indent;
        }
        lines.add(start + rest);
        return List.copyOf(lines);
    }

    /** Where a line ends that may have so many characters; negative where its only word is the last. */
    private int end(String text, int cut) {
        int last = text.lastIndexOf(' ', cut);
        int space = last;
        while (space > 0 && isBeforeUnit(text, space)) {
            space = text.lastIndexOf(' ', space - 1);
        }
        if (space > 0 || last > 0) {
            return space > 0 ? space : last;
        }
        return withinWords ? withinWord(text, cut) : text.indexOf(' ', cut);
    }

    /** Where a word is broken: behind its last hyphen between letters, as in the id of a criterion, else where the line is full. */
    private static int withinWord(String text, int cut) {
        for (int at = text.lastIndexOf('-', cut - 1); at > 0; at = text.lastIndexOf('-', at - 1)) {
            if (Character.isLetter(text.charAt(at - 1)) && Character.isLetter(text.charAt(at + 1))) {
                return at + 1;
            }
        }
        return cut;
    }

    /** Tells whether a space stands between a number and its unit. */
    private static boolean isBeforeUnit(String text, int space) {
        if (!Character.isDigit(text.charAt(space - 1)) || space + 1 == text.length()) {
            return false;
        }
        char next = text.charAt(space + 1);
        return Character.isLetter(next) || next == '°' || next == '%';
    }

    private static int length(String text) {
        return text.codePointCount(0, text.length());
    }
}
