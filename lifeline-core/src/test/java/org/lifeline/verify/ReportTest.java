package org.lifeline.verify;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

class ReportTest {
    private static CheckResult result(Check check, double value) {
        return new CheckResult(check, "here", value, 1e-9);
    }

    @Test
    void aValueOnTheLimitPassesAndWhatIsNoNumberFails() {
        assertThat(result(Check.STRETCH, 1e-9).passed()).isTrue();
        assertThat(result(Check.STRETCH, 1.1e-9).passed()).isFalse();
        assertThat(result(Check.STRETCH, Double.NaN).passed()).isFalse();
        assertThat(result(Check.STRETCH, Double.POSITIVE_INFINITY).passed()).isFalse();
    }

    @Test
    void severityIsValueOverLimit() {
        assertThat(result(Check.STRETCH, 5e-10).severity()).isEqualTo(0.5);
        assertThat(result(Check.STRETCH, Double.NaN).severity()).isInfinite();
        assertThat(new CheckResult(Check.FINITE, "here", 0, 0).severity()).isZero();
        assertThat(new CheckResult(Check.FINITE, "here", 1, 0).severity()).isInfinite();
    }

    @Test
    void theReportKeepsTheWorstOfEachKindAndEveryFailure() {
        CheckResult small = result(Check.STRETCH, 1e-12);
        CheckResult large = result(Check.STRETCH, 1e-10);
        CheckResult bad = result(Check.SLIP, 1e-3);
        VerificationReport report = new VerificationReport(List.of(small, large, bad));

        assertThat(report.passed()).isFalse();
        assertThat(report.failures()).containsExactly(bad);
        assertThat(report.worst()).containsEntry(Check.STRETCH, large).containsEntry(Check.SLIP, bad);
        assertThat(report.lines().get(0)).isEqualTo("3 checks, 1 failed");
        assertThat(report.toString())
                .contains("FAILED  SLIP, here: 0.001 (limit 1.0E-9 -): " + Check.SLIP.what())
                .contains("ok      STRETCH, here: 1.0E-10");
    }

    @Test
    void whatCannotBeCheckedNeitherPassesNorFails() {
        CheckResult open = new CheckResult(Check.ENERGY_CABLE, "fall", 0.14, 1e-6, false);
        VerificationReport report = new VerificationReport(List.of(result(Check.STRETCH, 0), open));

        assertThat(open.passed()).isFalse();
        assertThat(open.severity()).isInfinite();
        assertThat(report.passed()).isFalse();
        assertThat(report.failures()).isEmpty();
        assertThat(report.notCheckable()).containsExactly(open);
        assertThat(report.worst()).containsEntry(Check.ENERGY_CABLE, open);
        assertThat(report.lines().get(0)).isEqualTo("2 checks, 0 failed, 1 not checkable");
        assertThat(report.lines().get(1))
                .isEqualTo("NOT CHECKABLE  ENERGY_CABLE, fall: rounding leaves 0.14 open (at most 1.0E-6 -): "
                        + Check.ENERGY_CABLE.what());
    }

    @Test
    void nothingCheckedPasses() {
        assertThat(new VerificationReport(List.of()).passed()).isTrue();
    }

    @Test
    void aResultNamesItsCheck() {
        CheckResult r = result(Check.FREE_FALL, 0);

        assertThat(r.name()).isEqualTo("FREE_FALL");
        assertThat(r.what()).isEqualTo(Check.FREE_FALL.what());
        assertThat(r.unit()).isEqualTo("-");
        assertThat(Check.ABSORBER_REMAINING.unit()).isEqualTo("m");
        assertThat(Check.FINITE.defaultLimit()).isZero();
    }
}
