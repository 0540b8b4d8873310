package org.lifeline.report;

import org.lifeline.base.InertText;
import org.lifeline.report.document.PageMarks;

/** The style sheet of a report: screen and phone, light and dark, and paper with marks in the margin of every page. */
final class HtmlStyle {
    /** Longest text in the margin of a page [characters]. */
    private static final int LONGEST_MARK = 48;

    private static final String SCREEN = """
            :root{color-scheme:light dark;--paper:#fff;--ink:#14181c;--soft:#4a545d;--rule:#b9c1c8;--band:#f1f4f6;--link:#0a4f8f}
            @media screen and (prefers-color-scheme:dark){
            :root{--paper:#14181c;--ink:#eef1f4;--soft:#b4bdc5;--rule:#4a545d;--band:#1f262c;--link:#8fc4ff}}
            *{box-sizing:border-box}
            html{-webkit-text-size-adjust:100%}
            body{margin:0 auto;padding:1.2rem 1rem 3rem;max-width:64rem;background:var(--paper);color:var(--ink);
            font:1rem/1.45 Helvetica,Arial,"DejaVu Sans",sans-serif}
            h1{font-size:1.6rem;line-height:1.2;margin:.2rem 0 .6rem;overflow-wrap:anywhere}
            h2{font-size:1.25rem;margin:2.2rem 0 .6rem;padding-top:.6rem;border-top:2px solid var(--ink);overflow-wrap:anywhere}
            h3{font-size:1.05rem;margin:1.5rem 0 .4rem;overflow-wrap:anywhere}
            p,li{overflow-wrap:anywhere}
            .identity{color:var(--soft);margin:0 0 1rem;padding:0;list-style:none}
            nav ul{columns:18rem;list-style:none;margin:0;padding:.6rem 0;border-top:1px solid var(--rule)}
            nav li{padding:.12rem 0;overflow-wrap:anywhere;break-inside:avoid}
            a{color:var(--link)}
            summary{cursor:pointer;color:var(--soft);font-size:.9rem}
            .wide{overflow-x:auto;margin:.8rem 0 1.1rem;
            background:linear-gradient(to right,var(--paper),var(--paper)) left/2rem 100% no-repeat local,
            linear-gradient(to left,var(--paper),var(--paper)) right/2rem 100% no-repeat local,
            linear-gradient(to right,var(--rule),transparent) left/.8rem 100% no-repeat scroll,
            linear-gradient(to left,var(--rule),transparent) right/.8rem 100% no-repeat scroll}
            .wide:focus-visible{outline:3px solid #0a4f8f;outline-offset:2px}
            table{border-collapse:collapse;font-size:.92rem;min-width:40%}
            caption{text-align:left;font-weight:bold;padding:.2rem 0 .35rem}
            th,td{padding:.25rem .6rem;border-bottom:1px solid var(--rule);text-align:left;vertical-align:top}
            thead th{border-bottom:2px solid var(--ink);vertical-align:bottom}
            tbody th{font-weight:normal}
            .n{text-align:right;font-variant-numeric:tabular-nums}
            .n span{white-space:nowrap}
            .total th,.total td{border-top:2px solid var(--ink);font-weight:bold;background:var(--band)}
            figure{margin:1rem 0}
            figure .wide{margin:0}
            figure svg{display:block;width:100%;min-width:40rem;height:auto;border:1px solid var(--rule)}
            figcaption{color:var(--soft);font-size:.9rem;margin-top:.35rem}
            .calc{table-layout:fixed;width:100%}
            .calc col.c1{width:8%}.calc col.c2{width:30%}.calc col.c3{width:47%}.calc col.c4{width:15%}
            .calc small{color:var(--soft);font-size:.88em}
            .calc td,.calc th{overflow-wrap:anywhere}
            .calc .group th{font-weight:bold;background:var(--band);border-bottom:1px solid var(--ink)}
            .calc .f{font-variant-numeric:tabular-nums}
            .calc .f span{display:block}
            .calc .r{font-weight:bold;font-variant-numeric:tabular-nums}
            sub{font-size:.75em;line-height:0}
            @media screen and (max-width:44rem){
            body{padding:.8rem .7rem 2rem;font-size:.95rem}
            th,td{padding:.25rem .4rem}
            .wide tbody th:first-child,.wide thead th:first-child{position:sticky;left:0;background:var(--paper);
            max-width:9rem;overflow-wrap:anywhere;box-shadow:1px 0 0 var(--rule)}
            .wide .total th:first-child{background:var(--band)}
            .wide caption{position:sticky;left:0;max-width:calc(100vw - 1.4rem);display:table-caption}
            .calc caption{display:block}
            .calc,.calc tbody,.calc tr,.calc td,.calc th{display:block;width:auto}
            .calc thead,.calc colgroup{display:none}
            .calc tr{border-bottom:1px solid var(--rule);padding:.35rem 0}
            .calc td,.calc th{border:0;padding:.08rem 0}}
            """;

    /**
     * Sizes in points and millimetres; a heading, a caption and the first rows of a table stay together. A unit of a drawing
     * is 0.172 mm, so that its letters, 12.5 units high, have 6.1 points in every drawing.
     */
    private static final String PRINT = """
            @media print{
            :root{--paper:#fff;--ink:#000;--soft:#333;--rule:#888;--band:#eee;--link:#000}
            html,body{background:#fff}
            a{color:inherit;text-decoration:none}
            body{max-width:none;padding:0;font-size:8.2pt;line-height:1.23;orphans:1;widows:1}
            nav,details{display:none}
            h1{font-size:13pt;margin:0 0 1.5mm}
            h2{font-size:11pt;border-top:1.2pt solid #000;margin:3.5mm 0 1.2mm;padding-top:1.2mm;break-after:avoid;break-inside:avoid}
            h3{font-size:9.2pt;margin:2.4mm 0 .8mm;break-after:avoid;break-inside:avoid}
            p{margin:.8mm 0 1.4mm;orphans:3;widows:3}
            li{orphans:2;widows:2}
            h2+p,h3+p{break-after:avoid}
            ul{margin:.6mm 0 1.4mm;padding-left:4.5mm}
            .identity{margin:0 0 1.5mm}
            caption{break-after:avoid;padding:.3mm 0 .5mm}
            tr,figure,figcaption{break-inside:avoid}
            thead{display:table-header-group;break-after:avoid;break-inside:avoid}
            tbody tr:first-child,tbody tr:last-child{break-before:avoid}
            .wide{overflow:visible;margin:.6mm 0 1.6mm;background:none}
            .short{break-inside:avoid;display:inline-block;vertical-align:top;margin-right:5mm;max-width:100%}
            table{font-size:7.4pt;line-height:1.15}
            th,td{padding:.2mm 1.1mm}
            .narrow td.n{white-space:nowrap}
            thead th{border-bottom-width:1pt}
            .total th,.total td{border-top-width:1pt}
            .calc .f span{display:inline}
            .calc col.c1{width:7%}.calc col.c2{width:31%}.calc col.c3{width:49%}.calc col.c4{width:13%}
            .calc{font-size:6.6pt;line-height:1.1}.calc th,.calc td{padding:.15mm .8mm}
            .calc .group{break-after:avoid}
            figure{margin:1.5mm 0}
            figcaption{font-size:7.6pt;margin-top:.6mm}
            figure svg{min-width:0;width:calc(var(--units)*.166mm);max-width:100%;margin:0 auto}}
            """;

    private HtmlStyle() {}

    static String of(PageMarks marks) {
        String document =
                joined(mark(marks.document()), marks.revision().isBlank() ? "" : "rev. " + mark(marks.revision()));
        return SCREEN + PRINT
                + "@page{size:" + marks.paper().css() + ";margin:12mm 11mm 11mm;"
                + box("top-left", quoted(document))
                + box("top-right", quoted(mark(marks.program())))
                + box("bottom-left", quoted("computed, not approved"))
                + box("bottom-right", "\"page \" counter(page) \" of \" counter(pages)")
                + "}\n";
    }

    private static String mark(String text) {
        String name = InertText.name(text.strip());
        return name.length() <= LONGEST_MARK ? name : name.substring(0, LONGEST_MARK - 1) + "…";
    }

    private static String joined(String a, String b) {
        return a.isEmpty() || b.isEmpty() ? a + b : a + ", " + b;
    }

    private static String box(String place, String content) {
        return "@" + place + "{content:" + content
                + ";font:7.5pt Helvetica,Arial,\"DejaVu Sans\",sans-serif;color:#333}";
    }

    /** A text as a string of CSS: whatever is neither letter nor digit by its number, so that nothing can end it. */
    private static String quoted(String text) {
        StringBuilder b = new StringBuilder("\"");
        text.codePoints().forEach(c -> {
            if (Character.isLetterOrDigit(c) || c == ' ') {
                b.appendCodePoint(c);
            } else {
                b.append('\\').append(Integer.toHexString(c)).append(' ');
            }
        });
        return b.append('"').toString();
    }
}
