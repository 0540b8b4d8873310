package org.lifeline.report.section;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Support;
import org.lifeline.model.Worker;
import org.lifeline.report.PrintedNumber;
import org.lifeline.report.document.Quantities;
import org.lifeline.report.document.ReportBlock;
import org.lifeline.report.document.ReportSection;
import org.lifeline.report.document.UnitChoice;
import org.lifeline.samples.SampleDesigns;

/** Inputs, read back from the report, are what was put in, to the seventh digit. */
class InputSectionsTest {
    private static final LifelineDesign DESIGN = SampleDesigns.design("inputs");

    private static List<ReportBlock.Table> tables(String title) {
        return new InputSections(DESIGN, Quantities.in(UnitChoice.SI))
                .sections(false).stream()
                        .filter(s -> s.title().equals(title))
                        .flatMap((ReportSection s) -> s.blocks().stream())
                        .filter(ReportBlock.Table.class::isInstance)
                        .map(ReportBlock.Table.class::cast)
                        .toList();
    }

    private static void check(String cell, double value) {
        assertThat(PrintedNumber.of(cell)).as(cell).hasSize(1);
        assertThat(PrintedNumber.of(cell).get(0).si()).as(cell).isCloseTo(value, within(5e-7 * Math.abs(value)));
    }

    @Test
    void supportsStandWhereTheyWerePut() {
        List<ReportBlock.Row> rows = tables("Supports").get(0).rows();
        List<Support> supports = DESIGN.line().supports();
        assertThat(rows).hasSameSizeAs(supports);
        for (int i = 0; i < supports.size(); i++) {
            List<String> cells = rows.get(i).cells();
            Support s = supports.get(i);
            assertThat(cells.get(0)).isEqualTo(s.id());
            assertThat(cells.get(1).startsWith("end")).isEqualTo(i == 0 || i == supports.size() - 1);
            check(cells.get(2), s.position().x());
            check(cells.get(3), s.position().y());
            check(cells.get(4), s.position().z());
            if (s.capacity().isPresent()) {
                check(cells.get(7), s.capacity().getAsDouble());
            } else {
                assertThat(cells.get(7)).isEqualTo("not stated");
            }
        }
    }

    @Test
    void workersStandOnTheirLevels() {
        List<ReportBlock.Row> rows =
                tables("Workers and connecting subsystems").get(0).rows();
        List<Worker> workers = DESIGN.workers();
        assertThat(rows).hasSameSizeAs(workers);
        for (int i = 0; i < workers.size(); i++) {
            List<String> cells = rows.get(i).cells();
            Worker w = workers.get(i);
            assertThat(cells.get(0)).isEqualTo(w.id());
            assertThat(cells.get(1)).endsWith(" kg");
            assertThat(Double.parseDouble(cells.get(1).replace(" kg", ""))).isEqualTo(w.mass());
            check(cells.get(2), w.walkingLevel());
            check(cells.get(3), w.attachmentHeight());
            check(cells.get(6), w.connection().tautLength(0));
        }
    }

    /** Corner by corner, with what lies beyond the last one. */
    @Test
    void curvesAreThoseOfTheSubsystems() {
        List<ReportBlock.Table> tables = tables("Workers and connecting subsystems");
        assertThat(tables).hasSizeGreaterThan(1);
        for (ReportBlock.Table each : tables.subList(1, tables.size())) {
            assertThat(each.caption()).startsWith("Connecting subsystem of ");
            List<ReportBlock.Row> rows = each.rows();
            double extension = -1;
            for (ReportBlock.Row row : rows.subList(0, rows.size() - 1)) {
                double here = PrintedNumber.of(row.cells().get(0)).get(0).si();
                assertThat(here).as(each.caption()).isGreaterThan(extension);
                extension = here;
            }
            assertThat(rows.get(rows.size() - 1).cells().get(0)).isEqualTo("beyond");
        }
    }

    @Test
    void theCableAloneLeavesTheRestOut() {
        List<ReportSection> sections = new InputSections(DESIGN, Quantities.in(UnitChoice.SI)).sections(true);
        assertThat(sections).extracting(ReportSection::title).containsExactly("Cable and installation");
    }
}
