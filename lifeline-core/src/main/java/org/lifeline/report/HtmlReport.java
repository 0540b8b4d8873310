package org.lifeline.report;

import java.util.List;
import java.util.regex.Pattern;
import org.lifeline.analysis.explain.CalculationStep;
import org.lifeline.report.document.InertText;
import org.lifeline.report.document.Picture;
import org.lifeline.report.document.ReportBlock;
import org.lifeline.report.document.ReportDocument;
import org.lifeline.report.document.ReportSection;

/**
 * Writes a report as one HTML file that needs nothing else: no script, no network, no font of its own. Readable on a phone,
 * in light and dark, and printable on A4 and Letter. A content security policy forbids everything but its own style.
 */
public final class HtmlReport {
    private static final int LONGEST_NUMBER = 40;
    private static final Pattern INDEX = Pattern.compile("_([0-9A-Za-z.]+)");
    private static final String STYLE = """
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
            .wide{overflow-x:auto;margin:.8rem 0 1.1rem}
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
            .calc col.c1{width:8%}.calc col.c2{width:34%}.calc col.c3{width:42%}.calc col.c4{width:16%}
            .calc small{color:var(--soft);font-size:.88em}
            .calc td,.calc th{overflow-wrap:anywhere}
            .calc .group th{font-weight:bold;background:var(--band);border-bottom:1px solid var(--ink)}
            .calc .f{font-variant-numeric:tabular-nums}
            .calc .r{font-weight:bold;font-variant-numeric:tabular-nums}
            sub{font-size:.75em;line-height:0}
            @media (max-width:44rem){
            body{padding:.8rem .7rem 2rem;font-size:.95rem}
            th,td{padding:.25rem .4rem}
            .calc caption{display:block}
            .calc,.calc tbody,.calc tr,.calc td,.calc th{display:block;width:auto}
            .calc thead,.calc colgroup{display:none}
            .calc tr{border-bottom:1px solid var(--rule);padding:.35rem 0}
            .calc td,.calc th{border:0;padding:.08rem 0}}
            @media print{
            a{color:inherit;text-decoration:none}
            @page{margin:16mm 14mm}
            body{max-width:none;padding:0;font-size:9.5pt}
            h2{border-top:1.5pt solid #000;break-after:avoid}h3,caption{break-after:avoid}
            tr,figure{break-inside:avoid}thead{display:table-header-group;break-after:avoid}
            tbody tr:first-child{break-before:avoid}
            .wide{overflow:visible}table{font-size:8.5pt}
            th,td{padding:.15rem .35rem}
            .calc{font-size:7.5pt}.calc th,.calc td{padding:.1rem .3rem}
            figure svg{min-width:0}}
            """;

    private final StringBuilder out = new StringBuilder();
    private int pictures;

    private HtmlReport() {}

    /**
     * Writes a report.
     *
     * @param document the report
     * @return a complete HTML document, to be stored as UTF-8
     */
    public static String write(ReportDocument document) {
        HtmlReport report = new HtmlReport();
        report.document(document);
        return report.out.toString();
    }

    private void document(ReportDocument d) {
        String title = InertText.markup(d.title());
        out.append("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\"/>\n")
                .append("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\"/>\n")
                .append("<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; ")
                .append("style-src 'unsafe-inline'; img-src data:\"/>\n")
                .append("<meta name=\"referrer\" content=\"no-referrer\"/>\n")
                .append("<link rel=\"icon\" href=\"data:,\"/>\n<title>")
                .append(title)
                .append("</title>\n<style>\n")
                .append(STYLE)
                .append("</style>\n</head>\n<body>\n<header>\n<h1><bdi>")
                .append(title)
                .append("</bdi></h1>\n<ul class=\"identity\">\n");
        d.identity().forEach(i -> out.append("<li>").append(InertText.markup(i)).append("</li>\n"));
        out.append("</ul>\n</header>\n");
        contents(d);
        out.append("<main>\n");
        int number = 0;
        for (ReportSection s : d.sections()) {
            String tag = s.level() == 1 ? "h2" : "h3";
            number++;
            out.append("<section aria-labelledby=\"s")
                    .append(number)
                    .append("\">\n<")
                    .append(tag)
                    .append(" id=\"s")
                    .append(number)
                    .append("\">")
                    .append(InertText.markup(s.title()))
                    .append("</")
                    .append(tag)
                    .append(">\n");
            s.blocks().forEach(this::block);
            out.append("</section>\n");
        }
        out.append("</main>\n</body>\n</html>\n");
    }

    /** Links to the main sections. */
    private void contents(ReportDocument d) {
        out.append("<nav aria-label=\"Contents\">\n<ul>\n");
        int number = 0;
        for (ReportSection s : d.sections()) {
            number++;
            if (s.level() == 1) {
                out.append("<li><a href=\"#s")
                        .append(number)
                        .append("\">")
                        .append(InertText.markup(s.title()))
                        .append("</a></li>\n");
            }
        }
        out.append("</ul>\n</nav>\n");
    }

    private void block(ReportBlock b) {
        if (b instanceof ReportBlock.Paragraph p) {
            out.append("<p>").append(InertText.markup(p.text())).append("</p>\n");
        } else if (b instanceof ReportBlock.Items items) {
            out.append("<ul>\n");
            items.items()
                    .forEach(i -> out.append("<li>").append(InertText.markup(i)).append("</li>\n"));
            out.append("</ul>\n");
        } else if (b instanceof ReportBlock.Table t) {
            table(t);
        } else if (b instanceof ReportBlock.Calculation c) {
            calculation(c.steps());
        } else if (b instanceof ReportBlock.Figure f) {
            figure(f.picture());
        }
    }

    private void open(String caption) {
        out.append("<div class=\"wide\" role=\"region\" tabindex=\"0\" aria-label=\"")
                .append(InertText.markup(caption))
                .append("\">\n");
    }

    private void table(ReportBlock.Table t) {
        open(t.caption());
        out.append("<table>\n<caption>").append(InertText.markup(t.caption())).append("</caption>\n<thead>\n<tr>");
        for (ReportBlock.Column c : t.columns()) {
            out.append("<th scope=\"col\"")
                    .append(c.numeric() ? " class=\"n\"" : "")
                    .append('>')
                    .append(InertText.markup(c.heading()))
                    .append("</th>");
        }
        out.append("</tr>\n</thead>\n<tbody>\n");
        for (ReportBlock.Row r : t.rows()) {
            out.append(r.total() ? "<tr class=\"total\">" : "<tr>");
            for (int j = 0; j < r.cells().size(); j++) {
                boolean numeric = t.columns().get(j).numeric();
                String text = InertText.markup(r.cells().get(j));
                String cell = "<bdi>" + (numeric ? number(text) : text) + "</bdi>";
                String css = numeric ? " class=\"n\"" : "";
                out.append(
                        j == 0 ? "<th scope=\"row\"" + css + ">" + cell + "</th>" : "<td" + css + ">" + cell + "</td>");
            }
            out.append("</tr>\n");
        }
        out.append("</tbody>\n</table>\n</div>\n");
    }

    /** A number in both systems of units breaks between them only; other text in a column of numbers as it must. */
    private static String number(String markup) {
        if (markup.length() > LONGEST_NUMBER) {
            return markup;
        }
        int at = markup.indexOf(" (");
        return at < 0
                ? "<span>" + markup + "</span>"
                : "<span>" + markup.substring(0, at) + "</span> <span>" + markup.substring(at + 1) + "</span>";
    }

    private static String formula(String text) {
        return INDEX.matcher(InertText.escape(text)).replaceAll("<sub>$1</sub>");
    }

    private void calculation(List<CalculationStep> steps) {
        out.append("<table class=\"calc\">\n<caption>Calculation, line by line</caption>\n")
                .append("<colgroup><col class=\"c1\"/><col class=\"c2\"/><col class=\"c3\"/><col class=\"c4\"/>")
                .append("</colgroup>\n<thead>\n<tr>");
        for (String head : List.of("Symbol", "What [source]", "Formula, and with numbers", "Result")) {
            out.append("<th scope=\"col\">").append(head).append("</th>");
        }
        out.append("</tr>\n</thead>\n");
        String section = "";
        for (CalculationStep s : steps) {
            if (!s.section().equals(section)) {
                out.append(section.isEmpty() ? "" : "</tbody>\n").append("<tbody>\n");
                section = s.section();
                out.append("<tr class=\"group\"><th scope=\"rowgroup\" colspan=\"4\">")
                        .append(InertText.markup(section))
                        .append("</th></tr>\n");
            }
            out.append("<tr><th scope=\"row\">")
                    .append(formula(s.symbol()))
                    .append("</th><td>")
                    .append(formula(InertText.plain(s.what())))
                    .append(" <small>[")
                    .append(InertText.markup(s.source()))
                    .append("]</small>")
                    .append("</td><td class=\"f\">");
            if (!s.formula().isEmpty()) {
                out.append("= ").append(formula(s.formula())).append("<br/>= ").append(InertText.escape(s.numbers()));
            }
            out.append("</td><td class=\"r\">")
                    .append(InertText.escape(s.printed()))
                    .append(s.unit().equals("-") ? "" : " " + InertText.escape(s.unit()))
                    .append("</td></tr>\n");
        }
        out.append(section.isEmpty() ? "" : "</tbody>\n").append("</table>\n");
    }

    private void figure(Picture p) {
        pictures++;
        // Hatches are found by id; a number in front keeps those of two pictures on one page apart.
        String svg = p.svg().replace(" id=\"", " id=\"p" + pictures + "-").replace("url(#", "url(#p" + pictures + "-");
        out.append("<figure>\n");
        open(p.title());
        out.append(svg)
                .append("</div>\n<figcaption>")
                .append(InertText.markup(p.title()))
                .append(". ")
                .append(InertText.markup(p.description()))
                .append("</figcaption>\n</figure>\n");
    }
}
