package org.lifeline.report.section;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.motion.ForceFilter;
import org.lifeline.design.assessment.Assessment;
import org.lifeline.design.assessment.AssessmentResult;
import org.lifeline.design.assessment.GoverningValue;
import org.lifeline.design.envelope.Designs;
import org.lifeline.design.envelope.Extreme;
import org.lifeline.model.Attachment;
import org.lifeline.model.Fall;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.ModelFactors;
import org.lifeline.model.Passage;
import org.lifeline.model.Place;
import org.lifeline.model.Worker;
import org.lifeline.report.CalculationReport;
import org.lifeline.report.TextReport;
import org.lifeline.report.document.ReportBlock;
import org.lifeline.report.document.ReportDetail;
import org.lifeline.report.document.ReportDocument;
import org.lifeline.report.document.UnitChoice;

/** What a report says of arrests in time: each force with its allowance and behind the filter, as it is judged. */
class AssessedReportTest {
    private static final AssessmentResult ASSESSED = assessed(ModelFactors.none(), ForceFilter.NONE);

    private static AssessmentResult assessed(ModelFactors factors, ForceFilter filter) {
        Worker worker = Designs.worker("A", Attachment.GRIPPED);
        return Assessment.withDefaults()
                .withForceFilter(filter)
                .solve(LifelineDesign.builder("walkway")
                        .line(Designs.line(1, Passage.free()))
                        .worker(worker)
                        .modelFactors(factors)
                        .fall(Fall.builder("f")
                                .at(Place.of(1, 4))
                                .faller(worker)
                                .build())
                        .build());
    }

    private static ReportDocument report(AssessmentResult a, ReportDetail detail) {
        return CalculationReport.of(a.design(), a.stated().arrests())
                .withUnits(UnitChoice.SI)
                .withDetail(detail)
                .withAssessment(a)
                .build();
    }

    private static Stream<ReportBlock.Table> tables(ReportDocument d, String caption) {
        return d.sections().stream()
                .flatMap(s -> s.blocks().stream())
                .filter(ReportBlock.Table.class::isInstance)
                .map(ReportBlock.Table.class::cast)
                .filter(t -> t.caption().startsWith(caption));
    }

    private static BigDecimal kilonewtons(String cell) {
        return new BigDecimal(cell.replace(" kN", ""));
    }

    @Test
    void peakAndAllowanceAddUpToWhatIsJudged() {
        ReportBlock.Table t = tables(report(ASSESSED, ReportDetail.SHORT), "Forces in time")
                .findFirst()
                .orElseThrow();
        assertThat(t.rows()).hasSize(5);
        for (ReportBlock.Row row : t.rows()) {
            List<String> c = row.cells();
            assertThat(kilonewtons(c.get(1)).add(kilonewtons(c.get(2)))).isEqualTo(kilonewtons(c.get(5)));
        }
        Extreme end = ASSESSED.governing("endAnchorLoad")
                .flatMap(GoverningValue::inTimeExtreme)
                .orElseThrow();
        ArrestResult r = end.arrest();
        List<String> first = t.rows().get(0).cells();
        assertThat(first.get(0)).isEqualTo("End anchor load");
        assertThat(1000 * kilonewtons(first.get(1)).doubleValue()).isCloseTo(r.endAnchorLoad(), within(5.01));
        assertThat(1000 * kilonewtons(first.get(5)).doubleValue()).isCloseTo(end.value(), within(5.01));
        double filtered = r.supports().stream()
                .filter(s -> s.force() == r.endAnchorLoad())
                .mapToDouble(
                        s -> r.motion().orElseThrow().wholeRun().support(s.id()).filteredForce())
                .findFirst()
                .orElseThrow();
        assertThat(1000 * kilonewtons(first.get(3)).doubleValue()).isCloseTo(filtered, within(5.01));
    }

    @Test
    void whatIsJudgedHasTheModelFactorAndTheFilterThatWasChosen() {
        AssessmentResult a = assessed(new ModelFactors(1.2, 1, "test"), ForceFilter.LOW_PASS_100_HZ);
        ReportBlock.Table t = tables(report(a, ReportDetail.SHORT), "Forces in time")
                .findFirst()
                .orElseThrow();
        assertThat(t.columns().get(5).heading()).isEqualTo("Judged: 1.2 × (force behind 100 Hz and allowance)");
        for (ReportBlock.Row row : t.rows()) {
            List<String> c = row.cells();
            double judged = 1.2
                    * (kilonewtons(c.get(3)).doubleValue()
                            + kilonewtons(c.get(4)).doubleValue());
            // Three numbers to 0.01 kN.
            assertThat(kilonewtons(c.get(5)).doubleValue()).as(row.toString()).isCloseTo(judged, within(0.0171));
        }
    }

    @Test
    void aFullReportHasEveryArrestInTimeBesideItsEnvelope() {
        ReportDocument full = report(ASSESSED, ReportDetail.FULL);
        assertThat(tables(full, "Arrests that were followed in time")
                        .findFirst()
                        .orElseThrow()
                        .rows())
                .hasSameSizeAs(ASSESSED.followed());
        ReportBlock.Table all = tables(full, "Worst values anywhere on the line by energy balance")
                .findFirst()
                .orElseThrow();
        assertThat(all.rows().get(0).cells().get(0)).isEqualTo("End anchor load");
        assertThat(TextReport.write(full).replaceAll("\\s+", " "))
                .contains(
                        "Arrests in time are not in this table: what governs by either method stands in the summary.");
        ReportDocument usual = report(ASSESSED, ReportDetail.GOVERNING);
        assertThat(tables(usual, "Arrests that were followed in time")).isEmpty();
        assertThat(tables(usual, "Worst values anywhere on the line of what the summary does not list"))
                .hasSize(1);
    }
}
