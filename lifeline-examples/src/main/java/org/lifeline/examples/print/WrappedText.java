package org.lifeline.examples.print;

import java.util.List;
import org.lifeline.report.document.LineBreaks;

/** Text in lines of a terminal. */
public final class WrappedText {
    /** Width of a terminal [columns]. */
    public static final int COLUMNS = 80;

    private WrappedText() {}

    /**
     * Breaks a text between words; a word that is longer than a line keeps a line of its own.
     *
     * @param text the text
     * @param width most characters of a line
     * @return the lines, at least one
     */
    public static List<String> of(String text, int width) {
        return of(text, width, "");
    }

    /**
     * Breaks a text between words; all lines but the first one are indented within the width.
     *
     * @param text the text
     * @param width most characters of a line
     * @param indent what the further lines begin with
     * @return the lines, at least one
     */
    static List<String> of(String text, int width, String indent) {
        return new LineBreaks(width, indent, false).lines(text);
    }

    /**
     * Breaks a text, all lines but the first one indented.
     *
     * @param text the text
     * @param indent what the further lines begin with
     * @return the text with line breaks, no longer than a line of a terminal
     */
    public static String hanging(String text, String indent) {
        return String.join("\n" + indent, of(text, COLUMNS - indent.length()));
    }
}
