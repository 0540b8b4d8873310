package org.lifeline.report.section;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.LineEquilibrium;
import org.lifeline.analysis.Method;
import org.lifeline.analysis.Statics;
import org.lifeline.base.UnitSystem;
import org.lifeline.report.document.Quantities;
import org.lifeline.report.document.QuantityKind;
import org.lifeline.report.document.ReportBlock;
import org.lifeline.report.document.UnitChoice;
import org.lifeline.samples.SampleDesigns;

/** What the derivations print is what the analysis found, worked out another way. */
class DerivationSectionTest {
    private static final List<ArrestResult> ARRESTS = SampleDesigns.arrests().values().stream()
            .filter(r -> r.method() == Method.ENERGY_BALANCE)
            .collect(Collectors.toList());
    private static final Quantities SI = Quantities.in(UnitChoice.SI);

    private static List<ReportBlock> blocks(ArrestResult r) {
        LineEquilibrium installed = Statics.withDefaults().solve(r.line(), List.of());
        return new DerivationSection(installed, SI).blocks(r);
    }

    private static List<ReportBlock.Table> tables(ArrestResult r, String caption) {
        return blocks(r).stream()
                .filter(ReportBlock.Table.class::isInstance)
                .map(ReportBlock.Table.class::cast)
                .filter(t -> t.caption().startsWith(caption))
                .toList();
    }

    private static double millimetres(String cell) {
        return Double.parseDouble(cell.replace('−', '-').replace(" mm", ""));
    }

    @Test
    void displacementsAreForcesOverStiffness() {
        int rows = 0;
        for (ArrestResult r : ARRESTS) {
            for (ReportBlock.Table t : tables(r, "Displacement")) {
                for (ReportBlock.Row row : t.rows()) {
                    String name = row.cells().get(0);
                    String id = name.substring(0, name.lastIndexOf(','));
                    var u = r.supports().stream()
                            .filter(s -> s.id().equals(id))
                            .findFirst()
                            .orElseThrow()
                            .displacement();
                    double expected = name.endsWith("x") ? u.x() : name.endsWith("y") ? u.y() : u.z();
                    assertThat(millimetres(row.cells().get(4))).isCloseTo(1000 * expected, within(0.0501));
                    rows++;
                }
            }
        }
        assertThat(rows).as("displacements compared").isPositive();
    }

    /** The cable passed is the number that stands beside the supports, rounded once, and follows from the printed lengths. */
    @Test
    void cablePassedIsTheGrowthOfUnstretchedLength() {
        int rows = 0;
        int warmer = 0;
        for (ArrestResult r : ARRESTS) {
            for (ReportBlock.Table t : tables(r, "Cable that passes")) {
                double expansion = r.line().cable().thermalExpansion()
                        * (r.temperature() - r.line().installed().temperature());
                warmer += expansion == 0 ? 0 : 1;
                assertThat(t.caption().contains("α(θ − θᵢ) = " + QuantityKind.RATIO.number(expansion, UnitSystem.SI)))
                        .isEqualTo(expansion != 0);
                for (int i = 0; i < t.rows().size(); i++) {
                    double slip = r.peak().supports().get(i + 1).slip()
                            - r.before().supports().get(i + 1).slip();
                    List<String> cells = t.rows().get(i).cells();
                    assertThat(cells.get(3)).isEqualTo(SI.result(QuantityKind.SMALL_LENGTH, slip));
                    assertThat(cells.get(3).replace("−", ""))
                            .isEqualTo(SI.result(QuantityKind.SMALL_LENGTH, r.slip(i + 1))
                                    .replace("−", ""));
                    // Two lengths to 0.01 mm, and the quotient shown to 0.1 mm.
                    assertThat((millimetres(cells.get(2)) - millimetres(cells.get(1))) / (1 + expansion))
                            .isCloseTo(1000 * slip, within(0.0101));
                    rows++;
                }
            }
        }
        assertThat(rows).as("supports compared").isPositive();
        assertThat(warmer)
                .as("arrests away from the temperature of installation")
                .isPositive();
    }

    @Test
    void heatOfFrictionIsTheSumOverSteps() {
        int compared = 0;
        for (ArrestResult r : ARRESTS) {
            double heat = r.energy().friction();
            if (heat > 0) {
                // Trapezoids over ten steps of a curve that bends: 3 % and half a joule.
                assertThat(FrictionHeat.of(r).total()).isCloseTo(heat, within(0.03 * heat + 0.5));
                ReportBlock.Table t = tables(r, "Heat of friction").get(0);
                assertThat(t.rows()).hasSize(FrictionHeat.STEPS + 1);
                assertThat(t.rows().get(FrictionHeat.STEPS).cells().get(0))
                        .isEqualTo(SI.result(QuantityKind.FORCE, r.lineLoad()));
                compared++;
            }
        }
        assertThat(compared).as("arrests with friction").isPositive();
    }
}
