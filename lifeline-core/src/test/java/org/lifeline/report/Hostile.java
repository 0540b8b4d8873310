package org.lifeline.report;

import java.util.List;

/** Text as somebody might put it into a title or a name to do harm or by accident. */
public final class Hostile {
    private Hostile() {}

    public static List<String> texts() {
        return List.of(
                "</title><script>alert(1)</script>",
                "\"><img src=http://probe.invalid/x onerror=alert(1)>",
                "' onmouseover='alert(1)",
                "]]><svg onload=alert(1)>&lt;",
                "javascript:alert(1) url(http://probe.invalid/)",
                "=HYPERLINK(\"http://probe.invalid\";\"x\")",
                "@SUM(A1:A9)",
                "+1+cmd|' /C calc'!A0",
                "-2+3",
                "\u001b[2J\u001b[31mred\u0007\b\u0000",
                "\u202Etxt.exe\u202C \u2066left\u2069 \u200Fmark \u061C",
                "zero\u200Bwidth\uFEFF \uD800 half \uFFFF",
                "line one\r\nline two\u2028line three\ttab",
                "x".repeat(1 << 20));
    }
}
