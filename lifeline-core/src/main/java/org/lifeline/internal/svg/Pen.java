package org.lifeline.internal.svg;

/** A way of drawing: each has its own colour, its own dashes and its own name, so that one of them always survives. */
public enum Pen {
    INK("ink", "#14181c", "#eef1f4", 1.2, ""),
    THIN("thin", "#5c666f", "#a5afb8", 0.8, ""),
    GRID("grid", "#cfd5da", "#3a4249", 0.6, ""),
    FIRST("s1", "#0a4f8f", "#7db8f0", 2.2, ""),
    SECOND("s2", "#b2400a", "#ff9d66", 2.2, "9 4"),
    THIRD("s3", "#0f6b4f", "#63d3ac", 2.2, "2.5 3"),
    FOURTH("s4", "#77377f", "#dba0e4", 2.2, "11 3 2.5 3"),
    FIFTH("s5", "#5c5300", "#d9cc55", 2.2, "5 2 5 6"),
    SIXTH("s6", "#14181c", "#eef1f4", 1.4, "14 3"),
    GHOST("ghost", "#5c666f", "#a5afb8", 1.3, "6 4"),
    FORCE("force", "#b2400a", "#ff9d66", 1.8, ""),
    LIMIT("limit", "#9a1028", "#ff8a9a", 1.4, "3 2");

    final String css;
    final String light;
    final String dark;
    final double width;
    final String dash;

    Pen(String css, String light, String dark, double width, String dash) {
        this.css = css;
        this.light = light;
        this.dark = dark;
        this.width = width;
        this.dash = dash;
    }
}
