package org.lifeline.report.section;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.CablePiece;
import org.lifeline.analysis.LineEquilibrium;
import org.lifeline.analysis.SpanState;
import org.lifeline.analysis.Statics;
import org.lifeline.base.Point;
import org.lifeline.report.PrintedNumber;
import org.lifeline.report.document.Quantities;
import org.lifeline.report.document.ReportBlock;
import org.lifeline.report.document.UnitChoice;
import org.lifeline.samples.SampleDesigns;

/** The numbers of the installed state, read back from the report, are those of the line. */
class LineSectionsTest {
    @ParameterizedTest
    @EnumSource(UnitChoice.class)
    void everySpanIsWrittenAsItHangs(UnitChoice units) {
        int systems = units.systems().size();
        int spans = 0;
        for (ArrestResult r : SampleDesigns.arrests().values()) {
            LineEquilibrium installed = Statics.withDefaults().solve(r.line(), List.of());
            List<ReportBlock> blocks =
                    new LineSections(Quantities.in(units)).installed(installed).blocks();
            ReportBlock.Table table = (ReportBlock.Table) blocks.get(0);
            assertThat(table.rows()).hasSize(r.line().spans());
            double cable = 0;
            for (SpanState s : installed.spans()) {
                List<String> cells = table.rows().get(s.number() - 1).cells();
                assertThat(cells.get(0)).isEqualTo(Integer.toString(s.number()));
                Point a = s.firstSupport();
                Point b = s.secondSupport();
                PrintedNumber.check(cells.get(1), systems, Math.hypot(b.x() - a.x(), b.y() - a.y()));
                CablePiece first = s.pieces().get(0);
                CablePiece last = s.pieces().get(s.pieces().size() - 1);
                double h = Math.hypot(
                        first.startTension().x(), first.startTension().y());
                PrintedNumber.check(cells.get(2), systems, h);
                PrintedNumber.check(
                        cells.get(3),
                        systems,
                        Math.hypot(h, first.startTension().z()));
                PrintedNumber.check(
                        cells.get(4), systems, Math.hypot(h, last.endTension().z()));
                PrintedNumber.check(cells.get(5), systems, sag(s));
                PrintedNumber.check(cells.get(6), systems, first.unstretchedLength());
                cable += first.unstretchedLength();
                spans++;
            }
            List<PrintedNumber> sentence = PrintedNumber.of(((ReportBlock.Paragraph) blocks.get(1)).text());
            assertThat(sentence).hasSize(3 * systems);
            assertThat(Math.abs(sentence.get(0).si() - cable))
                    .isLessThanOrEqualTo(1.000001 * sentence.get(0).half());
        }
        assertThat(spans).isGreaterThan(20);
    }

    /** Greatest depth of many points of the cable below the chord [m]. */
    private static double sag(SpanState s) {
        Point a = s.firstSupport();
        Point b = s.secondSupport();
        double run = a.horizontalDistance(b);
        double most = 0;
        for (Point p : s.shape(2000)) {
            double chord = a.z() + (b.z() - a.z()) * a.horizontalDistance(p) / run;
            most = Math.max(most, chord - p.z());
        }
        return most;
    }
}
