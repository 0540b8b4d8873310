package org.lifeline.reference;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.List;
import java.util.Locale;

/** Writes the published numbers and the computed ones as the page {@code src/docs/theory/verification.md}. */
final class VerificationTable {
    private VerificationTable() {}

    static String markdown(List<ReferenceCheck> checks) {
        StringBuilder page = new StringBuilder();
        page.append("# Verification against published numbers\n\n")
                .append(
                        "Written by the test run (`VerificationTableTest`), which fails when this page is out of date; ")
                .append(
                        "`mvn -pl lifeline-core test -Dtest=VerificationTableTest -Dlifeline.writeDocs=true` writes it ")
                .append("anew. Inputs, sources and tolerances stand in `src/test/resources/reference`.\n\n")
                .append("Marks: *published*: the number was seen in the source; *computed*: solved from the published ")
                .append("inputs with 30 digits or in closed form, independently of this library; *recalled*: from ")
                .append("memory, not seen. Differences are relative. Smaller than 1e-8 is shown as such.\n");
        String source = "";
        String title = "";
        for (ReferenceCheck c : checks) {
            if (!c.source().equals(source)) {
                source = c.source();
                page.append("\n## ").append(source).append('\n');
                title = "";
            }
            if (!c.title().equals(title)) {
                title = c.title();
                page.append("\n**")
                        .append(title)
                        .append(
                                "**\n\n| quantity | unit | mark | expected | here | difference | tolerance | reason |\n")
                        .append("|---|---|---|---|---|---|---|---|\n");
            }
            page.append("| ")
                    .append(String.join(
                            " | ",
                            c.quantity(),
                            c.unit(),
                            c.mark(),
                            c.expected(),
                            digits(c.computed()),
                            difference(c.difference()),
                            String.format(Locale.ROOT, "%.1e", c.tolerance()),
                            c.reason()))
                    .append(" |\n");
        }
        long held = checks.stream().filter(ReferenceCheck::holds).count();
        page.append("\n")
                .append(checks.size())
                .append(" numbers, ")
                .append(held)
                .append(" within their tolerance.\n");
        return page.toString();
    }

    private static String digits(double value) {
        return new BigDecimal(value)
                .round(new MathContext(8))
                .stripTrailingZeros()
                .toPlainString();
    }

    private static String difference(double value) {
        return Math.abs(value) < 1e-8 ? "< 1e-8" : String.format(Locale.ROOT, "%+.1e", value);
    }
}
