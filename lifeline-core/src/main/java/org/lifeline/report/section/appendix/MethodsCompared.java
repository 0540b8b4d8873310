package org.lifeline.report.section.appendix;

import java.util.List;
import org.lifeline.report.document.ReportBlock;
import org.lifeline.report.document.ReportSection;
import org.lifeline.report.document.TableBuilder;

/** What arrests in time gave beside the energy balance, and what published drop tests gave: how far a number carries. */
final class MethodsCompared {
    /** Quantiles over 2000 random lines of steel rope; the theory page on the arrest, section 5, has the same. */
    private static final List<List<String>> RATIOS = List.of(
            List.of("end anchor load", "2000", "0.891", "0.980", "1.082", "1.258", "1.325", "1.490"),
            List.of("load on an intermediate support", "1664", "0.603", "0.934", "1.131", "1.521", "1.772", "3.149"),
            List.of("tension of the cable", "2000", "0.891", "0.978", "1.091", "1.258", "1.320", "1.586"),
            List.of("arrest force", "2000", "0.764", "1.000", "1.000", "1.096", "1.433", "2.156"),
            List.of("total fall distance", "2000", "0.817", "0.931", "0.992", "0.998", "0.999", "0.999"));

    private MethodsCompared() {}

    static ReportBlock.Table table() {
        TableBuilder t = new TableBuilder("Arrest in time over energy balance, without model factors [-]")
                .text("Quantity")
                .number("Lines")
                .number("Least")
                .number("5 %")
                .number("Median")
                .number("95 %")
                .number("99 %")
                .number("Largest");
        RATIOS.forEach(t::row);
        return t.build();
    }

    static ReportSection section() {
        return new ReportSection(
                "9 How far the methods agree",
                2,
                List.of(
                        new ReportBlock.Paragraph("Numbers that come from the energy balance alone are to be read beside these"
                                + " ratios: 2000 random plausible lines of steel rope, one to six spans of 3 to 20 m, absorbers of 2.5 to 6 kN,"
                                + " the balance at the worse limit of the attachment, one mesh in time."),
                        table(),
                        new ReportBlock.Paragraph("Loads by energy balance alone were on the unsafe side on most of these lines,"
                                + " by a quarter on one in twenty for end anchors and tension and by half for intermediate supports; no fall"
                                + " distance was. Published: a static method with anchor flexibility overestimated the line tension in most of"
                                + " 42 drop tests, by at most 17 % (Galy & Lan, Int. J. Occup. Saf. Ergon. 24(1), 2018, abstract); in 48 drop"
                                + " tests results of an energy balance needed correction before they could be used safely (Goh et al., 2020,"
                                + " abstract). Model factors of the design are for that.")));
    }
}
