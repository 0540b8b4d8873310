package org.lifeline.report.section;

import java.util.List;
import java.util.stream.Collectors;
import org.lifeline.base.UnitSystem;
import org.lifeline.report.document.Quantities;
import org.lifeline.report.document.ReportBlock;
import org.lifeline.report.document.ReportSection;
import org.lifeline.report.document.TableBuilder;
import org.lifeline.report.document.UnitChoice;

/**
 * Symbols and terms of the report with their definitions; the same words stand in the design file and in the documentation.
 *
 * @since 1.0.0
 */
public final class GlossarySection {
    private static final List<List<String>> TERMS = List.of(
            List.of("arrest force (MAF)", "F", "largest force on one worker while the fall is arrested"),
            List.of("end anchor load (MAL)", "", "largest force of the line on one of its two end anchors"),
            List.of("force on the line", "P", "sum of the arrest forces of those who fall together"),
            List.of("tension", "T", "force along the cable; T and T′ at the start and the end of a piece"),
            List.of(
                    "horizontal tension",
                    "H",
                    "horizontal component of the tension, the same along a span between loads"),
            List.of(
                    "initial sag",
                    "fᵢ",
                    "largest vertical distance from the chord of a span down to the cable as installed"),
            List.of(
                    "sag at the load",
                    "f",
                    "vertical distance from the chord of the span, between its supports where they are"
                            + " at the lowest point, down to the load"),
            List.of("descent of the line", "δ", "fall of the attachment from before the fall to the lowest point"),
            List.of("free fall distance", "h", "fall of the worker until the connecting subsystem is taut"),
            List.of(
                    "deployment",
                    "x",
                    "extension of the connecting subsystem while it arrests (deceleration distance)"),
            List.of(
                    "total fall distance",
                    "",
                    "h + x + δ + harness stretch: fall of the worker from standing to the lowest" + " point"),
            List.of(
                    "clearance margin",
                    "",
                    "what is left between the required clearance, the wanted margin included, and the"
                            + " obstruction below; negative where it is lacking"),
            List.of("wanted margin", "", "distance that is to stay free below the feet at the lowest point"),
            List.of("safety factor", "", "strength over load"),
            List.of(
                    "demand over capacity",
                    "",
                    "largest value over the limit that it must not pass; above 1 the criterion is" + " not met"),
            List.of("weight per length", "w", "weight of the cable per unstretched length"),
            List.of("axial stiffness", "EA", "tension per unit of strain"),
            List.of("unstretched length", "S", "length of a piece of cable without tension, at its temperature"),
            List.of("run, rise", "L, D", "horizontal and vertical distance of the two supports of a span"),
            List.of(
                    "coefficient of friction",
                    "μ",
                    "of the cable in an intermediate anchor; θ is the angle turned there"),
            List.of("clearance deployment force", "", "least force of the energy absorber: governs distances"),
            List.of("maximum deployment force", "", "largest force of the energy absorber: governs loads"));

    private GlossarySection() {}

    /**
     * Writes the section.
     *
     * @param q the units
     * @return the section
     */
    public static ReportSection section(Quantities q) {
        TableBuilder t = new TableBuilder("Symbols and terms")
                .text("Term")
                .text("Symbol")
                .text("Definition");
        TERMS.forEach(t::row);
        return new ReportSection(
                "Symbols and terms",
                1,
                List.of(
                        t.build(),
                        new ReportBlock.Paragraph("Digits: tables and drawings show " + digits(q.choice())
                                + ", ratios to four significant digits; rows of an account add up as printed. The calculation"
                                + " line by line shows as many digits as following it by hand takes.")));
    }

    private static String digits(UnitChoice choice) {
        return choice.systems().stream()
                .map(s -> s == UnitSystem.SI
                        ? "forces to 0.01 kN, lengths to 1 mm, small lengths to 0.1 mm, energies to 1 J, angles to 0.1°"
                        : "forces to 1 lbf, lengths to 0.001 ft, small lengths to 0.01 in, energies to 1 ft·lbf,"
                                + " angles to 0.1°")
                .collect(Collectors.joining("; "));
    }
}
