package org.lifeline.report.document;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Tables and the other blocks of a report: what goes in comes out, and cannot be changed from outside. */
class TableBuilderTest {
    private static TableBuilder twoColumns() {
        return new TableBuilder("Forces").text("Anchor").number("Load [kN]");
    }

    @Test
    void columnsAndRowsStandInTheirOrder() {
        ReportBlock.Table table = twoColumns()
                .row("north", "6.00")
                .row(List.of("south", "7.00"))
                .total("both", "13.00")
                .build();
        assertThat(table.caption()).isEqualTo("Forces");
        assertThat(table.columns())
                .containsExactly(new ReportBlock.Column("Anchor", false), new ReportBlock.Column("Load [kN]", true));
        assertThat(table.rows())
                .containsExactly(
                        new ReportBlock.Row(List.of("north", "6.00"), false),
                        new ReportBlock.Row(List.of("south", "7.00"), false),
                        new ReportBlock.Row(List.of("both", "13.00"), true));
    }

    @Test
    void aRowThatDoesNotFitIsRefusedWithTheNameOfTheTable() {
        assertThatThrownBy(() -> twoColumns().row("north").build())
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("Forces")
                .hasMessageContaining("1 cells in 2 columns");
        assertThatThrownBy(() -> twoColumns().total("a", "b", "c").build())
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("3 cells in 2 columns");
    }

    @Test
    void aBuilderUsedTwiceGivesIndependentTables() {
        TableBuilder b = twoColumns().row("north", "6.00");
        ReportBlock.Table first = b.build();
        ReportBlock.Table second = b.row("south", "7.00").build();
        assertThat(first.rows()).hasSize(1);
        assertThat(second.rows()).hasSize(2);
    }

    @Test
    void blocksHoldCopies() {
        List<String> cells = new ArrayList<>(List.of("north", "6.00"));
        List<String> items = new ArrayList<>(List.of("remark"));
        ReportBlock.Row row = new ReportBlock.Row(cells, false);
        ReportBlock.Items list = new ReportBlock.Items(items);
        cells.clear();
        items.clear();
        assertThat(row.cells()).containsExactly("north", "6.00");
        assertThat(list.items()).containsExactly("remark");
        assertThatThrownBy(() -> row.cells().clear()).isInstanceOf(UnsupportedOperationException.class);
        assertThatThrownBy(() -> list.items().clear()).isInstanceOf(UnsupportedOperationException.class);
        List<ReportBlock> blocks = new ArrayList<>(List.of(list));
        ReportSection section = new ReportSection("Loads", 1, blocks);
        List<ReportSection> sections = new ArrayList<>(List.of(section));
        List<String> identity = new ArrayList<>(List.of("computed by a test"));
        ReportDocument document = new ReportDocument("Title", identity, sections, PageMarks.none());
        blocks.clear();
        sections.clear();
        identity.clear();
        assertThat(section.blocks()).containsExactly(list);
        assertThat(document.sections()).containsExactly(section);
        assertThat(document.identity()).containsExactly("computed by a test");
    }

    @Test
    void aPictureWithoutNumbersHasAnEmptyTable() {
        Picture picture = new Picture("Plan", "Seen from above.", "<svg/>");
        assertThat(picture.data().rows()).isEmpty();
        assertThat(picture.data().columns()).isEmpty();
        assertThat(picture.data().caption()).isEqualTo("Plan");
    }

    @Test
    void marksOfAPageWithoutANumber() {
        assertThat(PageMarks.none().paper()).isEqualTo(Paper.A4);
        assertThat(PageMarks.none().document()).isEmpty();
        assertThat(Paper.A4.css()).isEqualTo("A4");
        assertThat(Paper.LETTER.css()).isEqualTo("letter");
        Provenance alone = Provenance.of("a program 1.0");
        assertThat(alone.program()).isEqualTo("a program 1.0");
        assertThat(alone.designHash()).isEmpty();
        assertThat(alone.date()).isEmpty();
        assertThat(alone.preparedBy()).isEmpty();
    }
}
