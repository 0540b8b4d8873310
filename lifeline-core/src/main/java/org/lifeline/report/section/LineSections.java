package org.lifeline.report.section;

import java.util.ArrayList;
import java.util.List;
import org.lifeline.analysis.CablePiece;
import org.lifeline.analysis.LineEquilibrium;
import org.lifeline.analysis.SpanState;
import org.lifeline.report.document.Quantities;
import org.lifeline.report.document.QuantityKind;
import org.lifeline.report.document.ReportBlock;
import org.lifeline.report.document.ReportSection;
import org.lifeline.report.document.TableBuilder;

/**
 * Writes down states of the line.
 *
 * @since 1.0.0
 */
public final class LineSections {
    private final Quantities q;

    /**
     * Sections in the units of a report.
     *
     * @param q the units
     */
    public LineSections(Quantities q) {
        this.q = q;
    }

    /**
     * Writes the installed state.
     *
     * @param state the line as installed
     * @return the section
     */
    public ReportSection installed(LineEquilibrium state) {
        List<ReportBlock> blocks = new ArrayList<>();
        blocks.add(spans(
                "Spans as installed, at " + q.input(QuantityKind.TEMPERATURE, state.temperature()),
                "Initial sag",
                state));
        blocks.add(new ReportBlock.Paragraph("Unstretched length of the whole cable: "
                + q.result(
                        QuantityKind.LENGTH,
                        state.spans().stream()
                                .mapToDouble(SpanState::unstretchedLength)
                                .sum())
                + ". Tension at the first support " + q.result(QuantityKind.FORCE, state.firstTension())
                + ", at the last "
                + q.result(QuantityKind.FORCE, state.lastTension()) + "."));
        return new ReportSection("Installed state", 1, blocks);
    }

    ReportBlock.Table spans(String caption, String sag, LineEquilibrium state) {
        TableBuilder t = new TableBuilder(caption)
                .number("Span")
                .number("Run")
                .number("Horizontal tension")
                .number("Tension at its start")
                .number("Tension at its end")
                .number(sag)
                .number("Unstretched length");
        for (SpanState s : state.spans()) {
            List<CablePiece> p = s.pieces();
            t.row(
                    Integer.toString(s.number()),
                    q.result(QuantityKind.LENGTH, s.firstSupport().horizontalDistance(s.secondSupport())),
                    q.result(QuantityKind.FORCE, s.horizontalTension()),
                    q.result(QuantityKind.FORCE, p.get(0).startTension().magnitude()),
                    q.result(
                            QuantityKind.FORCE, p.get(p.size() - 1).endTension().magnitude()),
                    q.result(QuantityKind.LENGTH, s.sag()),
                    q.result(QuantityKind.LENGTH, s.unstretchedLength()));
        }
        return t.build();
    }
}
