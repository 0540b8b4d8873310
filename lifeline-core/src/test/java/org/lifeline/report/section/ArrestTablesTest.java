package org.lifeline.report.section;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.base.UnitSystem;
import org.lifeline.report.document.Quantities;
import org.lifeline.report.document.QuantityKind;
import org.lifeline.report.document.ReportBlock;
import org.lifeline.report.document.UnitChoice;
import org.lifeline.samples.SampleDesigns;

/** All arrests side by side: accounts add up in their printed digits, and every number is that of its arrest. */
class ArrestTablesTest {
    private static final List<ArrestResult> ARRESTS =
            List.copyOf(SampleDesigns.arrests().values());

    private static List<ReportBlock.Table> tables(ArrestResult r, UnitChoice units) {
        return new ArrestTables(List.of(r), Quantities.in(units))
                .section().blocks().stream()
                        .filter(ReportBlock.Table.class::isInstance)
                        .map(ReportBlock.Table.class::cast)
                        .toList();
    }

    private static BigDecimal number(String cell) {
        return new BigDecimal(cell.replace('−', '-'));
    }

    @Test
    void powersOfTenHaveTheMinusSignOfAllOtherNumbers() {
        assertThat(IndependentCheckSection.power(-6.84e-13)).isEqualTo("−6.8e−13");
        assertThat(IndependentCheckSection.power(6.84e-13)).isEqualTo("6.8e−13");
        assertThat(IndependentCheckSection.power(12_345)).isEqualTo("1.2e+04");
        assertThat(IndependentCheckSection.power(0)).isEqualTo("0");
    }

    @ParameterizedTest
    @EnumSource(UnitChoice.class)
    void energyAccountsAddUpAsPrinted(UnitChoice units) {
        UnitSystem system = units.leading();
        for (ArrestResult r : ARRESTS) {
            List<String> cells = tables(r, units).get(1).rows().get(0).cells();
            BigDecimal sum = BigDecimal.ZERO;
            for (String cell : cells.subList(1, cells.size() - 1)) {
                sum = sum.add(number(cell));
                assertThat(number(cell).scale()).as("whole joules").isZero();
            }
            assertThat(number(cells.get(cells.size() - 1))).isEqualByComparingTo(sum);
            assertThat(Math.abs(sum.doubleValue()
                            - QuantityKind.ENERGY.in(r.energy().fall(), system)))
                    .isLessThan(0.51);
        }
    }

    @ParameterizedTest
    @EnumSource(UnitChoice.class)
    void clearanceAccountsAddUpAsPrinted(UnitChoice units) {
        for (ArrestResult r : ARRESTS) {
            List<String> cells = tables(r, units).get(2).rows().get(0).cells();
            BigDecimal left = number(cells.get(1));
            for (String cell : cells.subList(2, cells.size() - 1)) {
                left = left.subtract(number(cell));
            }
            BigDecimal end = number(cells.get(cells.size() - 1));
            assertThat(end).isEqualByComparingTo(left);
            double required = QuantityKind.LENGTH.in(r.clearance().requiredElevation(), units.leading());
            assertThat(Math.abs(end.doubleValue() - required)).isLessThan(0.000501);
        }
    }

    @ParameterizedTest
    @EnumSource(UnitChoice.class)
    void loadsAreThoseOfTheSupports(UnitChoice units) {
        Quantities q = Quantities.in(units);
        for (ArrestResult r : ARRESTS) {
            List<ReportBlock.Table> tables = tables(r, units);
            List<String> cells = tables.get(tables.size() - 1).rows().get(0).cells();
            for (int i = 0; i < r.supports().size(); i++) {
                assertThat(cells.get(i + 1))
                        .isEqualTo(
                                q.result(QuantityKind.FORCE, r.supports().get(i).force()));
            }
            assertThat(cells.get(cells.size() - 1)).isEqualTo(q.result(QuantityKind.FORCE, r.maximumTension()));
        }
    }
}
