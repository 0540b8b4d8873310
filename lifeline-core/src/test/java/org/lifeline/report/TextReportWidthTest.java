package org.lifeline.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.lifeline.report.document.ReportBlock;
import org.lifeline.report.document.UnitChoice;

/** A text report fits a terminal of 80 columns. */
class TextReportWidthTest {
    private static final int COLUMNS = 80;

    @ParameterizedTest
    @EnumSource(UnitChoice.class)
    void everyLineFits(UnitChoice units) {
        String text = TextReport.write(ReportSamples.document("Gallery", units));
        assertThat(text.lines())
                .allSatisfy(
                        l -> assertThat(l.codePointCount(0, l.length())).as(l).isLessThanOrEqualTo(COLUMNS));
    }

    @Test
    void aTableThatIsTooWideIsPartedAndLosesNothing() {
        List<ReportBlock.Column> columns = new java.util.ArrayList<>();
        List<String> cells = new java.util.ArrayList<>();
        for (int i = 0; i < 12; i++) {
            columns.add(new ReportBlock.Column("heading" + i, true));
            cells.add("12345678" + i + ".25");
        }
        String text = TextReport.writeTable(
                new ReportBlock.Table("wide", columns, List.of(new ReportBlock.Row(cells, false))));
        assertThat(text.lines()).allMatch(l -> l.length() <= COLUMNS);
        cells.forEach(c -> assertThat(text).contains(c));
        assertThat(text.split(cells.get(0), -1))
                .as("the first column is repeated")
                .hasSizeGreaterThan(2);
    }
}
