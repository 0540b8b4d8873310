package org.lifeline.file.output;

import java.util.regex.Pattern;

/**
 * Kinds of files that commands and examples write. A kind knows a former output of its own by how it begins, so that no
 * other file is replaced by mistake.
 */
public enum FileKind {
    /** The numbers of an analysis. */
    RESULT("result file", "\\s*\\{\\s*\"format\"\\s*:\\s*\"org\\.lifeline\\.result/"),
    /** The calculation report as HTML. */
    REPORT_PAGE("report as HTML", "<!DOCTYPE html>(?s:.{0,2000})<title>Calculation report"),
    /** The page that computes a line in a browser. */
    EXPLORER_PAGE("page for a browser", "<!DOCTYPE html>(?s:.{0,2000})<title>A lifeline to turn and look at"),
    /** The calculation report as text. */
    REPORT_TEXT("report as text", "Calculation report: "),
    /** A picture. */
    PICTURE("picture", "<svg xmlns=\"http://www\\.w3\\.org/2000/svg\" role=\"img\" viewBox=\""),
    /** The cases of a study. */
    CASES("table of cases", "case,[^\\r\\n]*,failure\\r?\\n"),
    /** Histories of an arrest in time. */
    HISTORIES("table of histories", "time \\[s\\],"),
    /** The list of the parts of a report. */
    INDEX("list of the parts of a report", "file,section,holds\\r?\\n"),
    /** A table or a calculation of a report; known by the list of parts that names it, not by how it begins. */
    PART("part of a report", "(?!)");

    /** How much of a file is looked at to know its kind [bytes]. */
    static final int HEAD = 1 << 16;

    private static final Pattern DESIGN = Pattern.compile("\"format\"\\s*:\\s*\"org\\.lifeline\\.design/");

    private final String words;
    private final Pattern beginning;

    FileKind(String words, String beginning) {
        this.words = words;
        this.beginning = Pattern.compile(beginning);
    }

    /** Tells whether a file that begins like this is a former output of this kind. */
    boolean recognises(String head) {
        return beginning.matcher(head).lookingAt();
    }

    /** Tells whether a text is that of a design file, whatever else is wrong with it. */
    static boolean isDesign(String text) {
        String start = text.startsWith("\u00EF\u00BB\u00BF") ? text.substring(3) : text;
        return start.stripLeading().startsWith("{") && DESIGN.matcher(start).find();
    }

    @Override
    public String toString() {
        return words;
    }
}
