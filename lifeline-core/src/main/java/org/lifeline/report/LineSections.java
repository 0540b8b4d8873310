package org.lifeline.report;

import java.util.ArrayList;
import java.util.List;
import org.lifeline.analysis.CablePiece;
import org.lifeline.analysis.LineEquilibrium;
import org.lifeline.analysis.SpanState;

/** Writes down states of the line. */
final class LineSections {
    private final Quantities q;

    LineSections(Quantities q) {
        this.q = q;
    }

    ReportSection installed(LineEquilibrium state) {
        List<ReportBlock> blocks = new ArrayList<>();
        blocks.add(spans("Spans as installed, at " + q.input(Measure.TEMPERATURE, state.temperature()), state));
        blocks.add(new ReportBlock.Paragraph("Unstretched length of the whole cable: "
                + q.result(
                        Measure.LENGTH,
                        state.spans().stream()
                                .mapToDouble(SpanState::unstretchedLength)
                                .sum())
                + ". Tension at the first support " + q.result(Measure.FORCE, state.firstTension()) + ", at the last "
                + q.result(Measure.FORCE, state.lastTension()) + "."));
        return new ReportSection("Installed state", 1, blocks);
    }

    ReportBlock.Table spans(String caption, LineEquilibrium state) {
        TableBuilder t = new TableBuilder(caption)
                .number("Span")
                .number("Run")
                .number("Horizontal tension")
                .number("Tension at its start")
                .number("Tension at its end")
                .number("Sag")
                .number("Unstretched length");
        for (SpanState s : state.spans()) {
            List<CablePiece> p = s.pieces();
            t.row(
                    Integer.toString(s.number()),
                    q.result(Measure.LENGTH, s.firstSupport().horizontalDistance(s.secondSupport())),
                    q.result(Measure.FORCE, s.horizontalTension()),
                    q.result(Measure.FORCE, p.get(0).startTension().magnitude()),
                    q.result(Measure.FORCE, p.get(p.size() - 1).endTension().magnitude()),
                    q.result(Measure.LENGTH, s.sag()),
                    q.result(Measure.LENGTH, s.unstretchedLength()));
        }
        return t.build();
    }
}
