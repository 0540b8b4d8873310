package org.lifeline.report.section;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.lifeline.report.document.Quantities;
import org.lifeline.report.document.ReportBlock;
import org.lifeline.report.document.ReportSection;
import org.lifeline.report.document.UnitChoice;

/** Terms are defined once, and the digits that are promised are those that the tables have. */
class GlossarySectionTest {
    private static List<ReportBlock.Row> terms(UnitChoice choice) {
        ReportSection section = GlossarySection.section(Quantities.in(choice));
        return ((ReportBlock.Table) section.blocks().get(0)).rows();
    }

    @Test
    void termsAndSymbolsAreDefinedOnce() {
        Set<String> names = new TreeSet<>();
        Set<String> symbols = new TreeSet<>();
        for (ReportBlock.Row row : terms(UnitChoice.SI)) {
            assertThat(names.add(row.cells().get(0))).as(row.cells().get(0)).isTrue();
            String symbol = row.cells().get(1);
            assertThat(symbol.isEmpty() || symbols.add(symbol)).as(symbol).isTrue();
            assertThat(row.cells().get(2)).isNotBlank();
        }
        assertThat(names).hasSizeGreaterThan(15);
    }

    @ParameterizedTest
    @EnumSource(UnitChoice.class)
    void digitsAreToldForTheUnitsThatAreShown(UnitChoice choice) {
        ReportSection section = GlossarySection.section(Quantities.in(choice));
        String digits = ((ReportBlock.Paragraph) section.blocks().get(1)).text();
        assertThat(digits.contains("0.01 kN")).isEqualTo(choice != UnitChoice.US_CUSTOMARY);
        assertThat(digits.contains("1 lbf")).isEqualTo(choice != UnitChoice.SI);
        assertThat(terms(choice)).isEqualTo(terms(UnitChoice.SI));
    }
}
