package org.lifeline.report.handover;

import java.util.ArrayList;
import java.util.List;
import org.lifeline.base.InertText;
import org.lifeline.base.Interval;
import org.lifeline.design.clearance.ClearanceAlongLineResult;
import org.lifeline.design.clearance.ClearanceStretch;
import org.lifeline.report.chart.ChartAxis;
import org.lifeline.report.chart.ChartPanel;
import org.lifeline.report.chart.ChartPicture;
import org.lifeline.report.chart.ChartSeries;
import org.lifeline.report.document.Picture;
import org.lifeline.report.document.Quantities;
import org.lifeline.report.document.QuantityKind;
import org.lifeline.report.document.ReportBlock;
import org.lifeline.report.document.ReportSection;
import org.lifeline.report.document.TableBuilder;

/** Clearance along the line, for those who install it and those who use it. */
final class ClearanceSection {
    private final ClearanceAlongLineResult result;
    private final Quantities q;

    ClearanceSection(ClearanceAlongLineResult result, Quantities q) {
        this.result = result;
        this.q = q;
    }

    ReportSection section() {
        List<ReportBlock> blocks = new ArrayList<>();
        blocks.add(new ReportBlock.Paragraph("Every span is cut into stretches of at most "
                + q.stated(QuantityKind.LENGTH, result.steps().step())
                + " from its first support. Required clearances are"
                + " rounded up, available ones down, to "
                + q.stated(QuantityKind.LENGTH, result.steps().rounding())
                + ". Model factors, harness stretch and the wanted margin are in them"
                + (result.arrestsInTime() == 0
                        ? "; no arrest was followed in time."
                        : ", and " + q.result(QuantityKind.LENGTH, result.additionInTime())
                                + ", the most that one of " + result.arrestsInTime()
                                + " arrests in time needs beyond its energy balance, with what its mesh may hide.")
                + " Distances below the line count from the line as installed."));
        List<String> items = new ArrayList<>();
        for (Interval each : result.mustNotBeUsed()) {
            items.add("DO NOT USE the line from " + q.result(QuantityKind.LENGTH, each.low()) + " to "
                    + q.result(QuantityKind.LENGTH, each.high()) + " along it.");
        }
        blocks.add(
                items.isEmpty()
                        ? new ReportBlock.Paragraph("No stretch was found where the line must not be used for want of"
                                + " clearance above the obstructions that are stated.")
                        : new ReportBlock.Items(items));
        blocks.add(table());
        blocks.add(new ReportBlock.Figure(picture()));
        return new ReportSection("Clearance along the line", 1, blocks);
    }

    private ReportBlock table() {
        TableBuilder t = new TableBuilder("Clearance by stretches")
                .number("Span")
                .number("From")
                .number("To")
                .number("Required below the line")
                .number("Available below the line")
                .number("Required below the walking level")
                .number("Swing: displacement")
                .number("Swing: reach")
                .number("Swing: angle")
                .text("Use");
        for (ClearanceStretch s : result.stretches()) {
            t.row(
                    Integer.toString(s.span()),
                    q.stated(QuantityKind.LENGTH, s.stations().low()),
                    q.stated(QuantityKind.LENGTH, s.stations().high()),
                    q.stated(QuantityKind.LENGTH, result.steps().up(s.requiredBelowLine())),
                    s.availableBelowLine().isPresent()
                            ? q.stated(
                                    QuantityKind.LENGTH,
                                    result.steps().down(s.availableBelowLine().getAsDouble()))
                            : "not stated",
                    q.stated(QuantityKind.LENGTH, result.steps().up(s.requiredBelowWalkingLevel())),
                    q.stated(QuantityKind.LENGTH, result.steps().up(s.swing().displacement())),
                    q.stated(QuantityKind.LENGTH, result.steps().up(s.swing().amplitude())),
                    q.result(QuantityKind.ANGLE, s.swing().angle()),
                    s.mustNotBeUsed()
                            ? "NO: " + InertText.plain(String.join("; ", s.reasons()))
                            : s.obstruction().isPresent() ? "" : "no obstruction stated");
        }
        return t.build();
    }

    private Picture picture() {
        int n = result.stretches().size();
        double[] x = new double[2 * n];
        double[] line = new double[2 * n];
        double[] required = new double[2 * n];
        double[] obstruction = new double[2 * n];
        double[] forbidden = new double[2 * n];
        for (int i = 0; i < n; i++) {
            ClearanceStretch s = result.stretches().get(i);
            for (int side = 0; side < 2; side++) {
                int at = 2 * i + side;
                x[at] = side == 0 ? s.along().low() : s.along().high();
                line[at] = s.lineElevation().low();
                required[at] = s.requiredElevation();
                obstruction[at] = s.obstruction().orElse(Double.NaN);
                forbidden[at] = s.mustNotBeUsed() ? s.lineElevation().high() : Double.NaN;
            }
        }
        List<ChartSeries> series = new ArrayList<>(
                List.of(ChartSeries.of("line as installed", x, line), ChartSeries.of("keep free below", x, required)));
        if (result.stretches().stream().anyMatch(s -> s.obstruction().isPresent())) {
            series.add(ChartSeries.of("top of obstruction", x, obstruction));
        }
        if (result.stretches().stream().anyMatch(ClearanceStretch::mustNotBeUsed)) {
            series.add(ChartSeries.of("DO NOT USE", x, forbidden));
        }
        return ChartPicture.in(q.choice())
                .draw(
                        "Clearance along the line: "
                                + InertText.name(result.design().title()),
                        "Elevation of the line as installed, elevation below which everything must be free, and tops of the"
                                + " stated obstructions, stretch by stretch.",
                        new ChartAxis("distance along the line", QuantityKind.LENGTH),
                        List.of(new ChartPanel(new ChartAxis("elevation", QuantityKind.LENGTH), series, List.of())));
    }
}
