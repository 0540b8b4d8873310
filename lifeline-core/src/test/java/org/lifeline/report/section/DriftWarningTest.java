package org.lifeline.report.section;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.TransientResult;
import org.lifeline.analysis.motion.MotionSummary;
import org.lifeline.model.Fall;
import org.lifeline.model.Lifeline;
import org.lifeline.model.LifelineDesign;
import org.lifeline.report.CalculationReport;
import org.lifeline.report.document.ReportBlock;
import org.lifeline.report.document.ReportDetail;
import org.lifeline.testing.RigidTie;

/** The report warns where the energies of a motion drift apart by more than a thousandth of that of the fall. */
class DriftWarningTest {
    private static final String WARNING = "the energies of the motion do not add up, they drift apart by ";
    private static final Lifeline LINE = RigidTie.line(1000);
    private static final Fall FALL = RigidTie.hardFall();
    private static final TransientResult COARSE = RigidTie.on(RigidTie.COARSE).solve(LINE, FALL);
    private static final TransientResult FINE = RigidTie.on(RigidTie.FINE).solve(LINE, FALL);

    private static CalculationReport report(ArrestResult arrest) {
        LifelineDesign design = LifelineDesign.builder("tie")
                .line(LINE)
                .worker(FALL.fallers().get(0))
                .fall(FALL)
                .build();
        return CalculationReport.of(design, List.of(arrest)).withDetail(ReportDetail.SHORT);
    }

    private static List<String> warnings(CalculationReport report) {
        return report.build().sections().stream()
                .filter(s -> s.title().equals("Warnings"))
                .flatMap(s -> s.blocks().stream())
                .filter(ReportBlock.Items.class::isInstance)
                .flatMap(b -> ((ReportBlock.Items) b).items().stream())
                .toList();
    }

    private static MotionSummary drifted(double share) {
        MotionSummary m = COARSE.arrest().motion().orElseThrow();
        MotionSummary.Quality quality = new MotionSummary.Quality(m.mesh(), m.allowances(), share);
        return new MotionSummary(quality, m.wholeRun(), m.harnessFall(), m.firstCatchOver());
    }

    @Test
    void onTwoSegmentsTheDriftIsWarnedOf() {
        assertThat(COARSE.relativeDrift()).isBetween(2e-3, 0.1);
        String share = MotionSections.percent(COARSE.relativeDrift());
        String text = WARNING + share + " of that of the fall; its peaks are that uncertain at least.";
        assertThat(warnings(report(COARSE.arrest()))).contains("Arrest 1: " + text);
        assertThat(warnings(report(FINE.arrest()).withMotions(List.of(COARSE))))
                .filteredOn(w -> w.contains(WARNING))
                .singleElement()
                .satisfies(w -> assertThat(w).startsWith("In time, ").endsWith(text));
    }

    @Test
    void onManySegmentsThereIsNothingToWarnOf() {
        assertThat(FINE.relativeDrift()).isLessThan(1e-3);
        List<String> warnings = warnings(report(FINE.arrest()).withMotions(List.of(FINE)));
        assertThat(warnings).isNotEmpty().noneMatch(w -> w.contains("energies"));
    }

    @Test
    void aThousandthIsTheLimit() {
        assertThat(WarningSection.drift(drifted(0.000999))).isEmpty();
        assertThat(WarningSection.drift(drifted(0.001001)).orElseThrow()).startsWith(WARNING + "0.1 %");
        assertThat(WarningSection.drift(drifted(0.0123)).orElseThrow()).startsWith(WARNING + "1.2 %");
        assertThat(WarningSection.drift(drifted(Double.NaN)).orElseThrow()).startsWith(WARNING + "an unknown share");
    }
}
