package org.lifeline.design.field;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.lifeline.analysis.LineEquilibrium;
import org.lifeline.analysis.Statics;
import org.lifeline.base.InputRule;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.Point;
import org.lifeline.base.Violation;
import org.lifeline.design.envelope.Designs;
import org.lifeline.design.envelope.Extremes;
import org.lifeline.design.envelope.WorstCases;
import org.lifeline.model.Attachment;
import org.lifeline.model.Installed;
import org.lifeline.model.Lifeline;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.cable.Cable;

/** Readings up to what the line holds are found, readings beyond are refused by their own name. */
class ReadingLimitsTest {
    /** What the terminations hold [N]. */
    private static final double HOLDS = 0.9 * 50e3;

    /** The pretension alone is of interest here, no fall is analysed. */
    private static final WorstCases NO_FALLS = design -> Extremes.of(design, List.of());

    private static LifelineDesign design(Installed installed) {
        Lifeline line = Lifeline.builder()
                .cable(Cable.builder()
                        .massPerLength(0.5)
                        .axialStiffness(4e6)
                        .breakingStrength(50e3)
                        .terminationEfficiency(0.9)
                        .build())
                .endAnchor("a", Point.of(0, 0, 12.4))
                .endAnchor("z", Point.of(12, 0, 12.4))
                .installed(installed)
                .build();
        return LifelineDesign.builder("span")
                .line(line)
                .worker(Designs.worker("A", Attachment.GRIPPED))
                .build();
    }

    private static FieldCheckResult check(double pretension, Measurement m) {
        return FieldCheck.withDefaults().withAnalysis(NO_FALLS).solve(design(Installed.pretension(pretension)), m);
    }

    /** At the temperature of installation the reading at the first end anchor is the pretension itself. */
    @ParameterizedTest
    @CsvSource({"1500, 9000", "1500, 44999", "1500, 45000", "15000, 33000", "45, 20000", "45, 45000", "44000, 45000"})
    void everyTensionThatTheLineHoldsIsFound(double pretension, double reading) {
        assertThat(check(pretension, Measurement.firstTension(reading)).pretensionNow())
                .isEqualTo(reading, within(2e-9 * reading));
    }

    /** A taut line of 12 m hangs down to about 50 N; a thousandth of the design is no bound of its own. */
    @ParameterizedTest
    @ValueSource(doubles = {45, 60, 1000})
    void everyTensionInWhichTheLineHangsIsFound(double reading) {
        assertThat(check(44e3, Measurement.firstTension(reading)).pretensionNow())
                .isEqualTo(reading, within(2e-9 * reading));
    }

    /** Parabola of a taut cable: H = w L²/(8 f); the catenary and the rope's stretch differ by less than 1e-3 here. */
    @Test
    void aSmallSagIsFoundUpToTheStrength() {
        double sag = 0.5 * 9.80665 * 144 / (8 * 40e3);
        assertThat(check(1500, Measurement.midspanSag(1, sag)).pretensionNow()).isEqualTo(40e3, within(40.0 * 11));
        LineEquilibrium there =
                Statics.withDefaults().solve(design(Installed.pretension(40e3)).line(), List.of());
        assertThat(check(1500, Measurement.midspanSag(1, Midspan.sag(there.span(1))))
                        .pretensionNow())
                .isEqualTo(40e3, within(1e-3));
    }

    /** Between fixed anchors cold raises the tension of the stretched cable by EA α ΔT (1 + T/EA), 1920 N · 1.0115. */
    @Test
    void aReadingInTheColdMayExceedWhatTheLineWasTensionedTo() {
        double now =
                check(1500, Measurement.firstTension(46e3).atTemperature(-25)).pretensionNow();
        assertThat(now).isEqualTo(46e3 - 4e6 * 12e-6 * 40 * (1 + 46e3 / 4e6), within(0.1));
    }

    @ParameterizedTest
    @CsvSource({"1500, 45000.1", "1500, 60000", "44000, 46000", "45, 1e9"})
    void aTensionBeyondTheStrengthIsRefusedByItsName(double pretension, double reading) {
        assertThatThrownBy(() -> check(pretension, Measurement.firstTension(reading)))
                .isInstanceOfSatisfying(InvalidInputException.class, e -> {
                    assertThat(e.violations()).hasSize(1);
                    Violation v = e.violations().get(0);
                    assertThat(v.path()).isEqualTo("tension at the first end anchor");
                    assertThat(v.number()).hasValue(reading);
                    assertThat(v.unit()).isEqualTo("N");
                    assertThat(v.code()).isEqualTo(InputRule.PRETENSION_NOT_FOUND);
                    assertThat(v.rule())
                            .isEqualTo(
                                    "no pretension gives it: one above 45000.0 N is more than cable and terminations"
                                            + " hold, 45000.0 N (breaking strength 50000.0 N times termination efficiency 0.9)");
                });
    }

    @Test
    void aSagBeyondTheStrengthIsRefusedByItsName() {
        assertThatThrownBy(() -> check(1500, Measurement.midspanSag(1, 1e-4)))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("midspan sag of span 1: 1.0E-4 m: no pretension gives it")
                .hasMessageContaining("terminations hold, 45000.0 N");
    }

    /** The reading is possible, the upper end of its uncertainty is not. */
    @Test
    void anEndOfTheUncertaintyIsNamed() {
        assertThatThrownBy(() -> check(1500, Measurement.firstTension(44e3).withUncertainty(2e3)))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("tension at the first end anchor, an end of its uncertainty: 46000.0 N: ");
    }

    @Test
    void aSlackReadingIsRefusedByItsName() {
        assertThatThrownBy(() -> check(1500, Measurement.firstTension(5)))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("tension at the first end anchor: 5.0 N: the line would have to be slacker");
    }

    /**
     * A length may be stated that puts the design itself beyond what it holds: 12 m on 11.85 m are 1.27 % and 51 kN. What is
     * measured lower is found.
     */
    @Test
    void aDesignBeyondItsStrengthIsFoundSlacker() {
        LifelineDesign tight = design(Installed.unstretchedLength(11.85));
        FieldCheckResult r =
                FieldCheck.withDefaults().withAnalysis(NO_FALLS).solve(tight, Measurement.firstTension(20e3));
        assertThat(r.pretensionOfDesign()).isGreaterThan(HOLDS);
        assertThat(r.pretensionNow()).isEqualTo(20e3, within(1e-4));
    }
}
