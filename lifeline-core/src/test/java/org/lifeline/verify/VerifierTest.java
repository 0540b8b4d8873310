package org.lifeline.verify;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.lifeline.analysis.LineEquilibrium;
import org.lifeline.analysis.Statics;
import org.lifeline.analysis.state.AppliedLoad;
import org.lifeline.base.InvalidInputException;
import org.lifeline.model.Attachment;
import org.lifeline.model.Place;
import org.lifeline.testing.ArrestCase;
import org.lifeline.testing.Cases;

class VerifierTest {
    /** Every arrest is held to these; the others depend on what the line has. */
    private static final Set<Check> ALWAYS = EnumSet.complementOf(EnumSet.of(
            Check.LOAD_EQUILIBRIUM,
            Check.PASSAGE_FREE,
            Check.PASSAGE_FRICTION,
            Check.FREE_RUNNING,
            Check.GRIPPED,
            Check.ABSORBER_LAW,
            Check.ABSORBER_GROWTH,
            Check.ABSORBER_REMAINING,
            Check.PATH_WORK,
            Check.STATIC_PATH_WORK));

    static List<ArrestCase> cases() {
        return Cases.all();
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("cases")
    void rightArrestsPass(ArrestCase each) {
        VerificationReport report = Verifier.withDefaults().arrest(each.solve());

        assertThat(report.failures()).isEmpty();
        assertThat(report.passed()).isTrue();
        assertThat(report.worst()).containsKeys(ALWAYS.toArray(new Check[0]));
    }

    @Test
    void theCasesMakeEveryCheckButTheExpensiveOne() {
        Set<Check> made = EnumSet.noneOf(Check.class);
        for (ArrestCase each : Cases.all()) {
            made.addAll(Verifier.withDefaults().arrest(each.solve()).worst().keySet());
        }

        assertThat(made).isEqualTo(EnumSet.complementOf(EnumSet.of(Check.STATIC_PATH_WORK)));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("cases")
    void rightStatesOfRestPass(ArrestCase each) {
        List<AppliedLoad> loads = List.of(
                new AppliedLoad(Place.of(1, 3), Attachment.GRIPPED, 900),
                new AppliedLoad(Place.of(1, 5), Attachment.FREE_RUNNING, 1200));
        LineEquilibrium state = Statics.withDefaults().withTemperature(30).solve(each.line(), loads);

        assertThat(Verifier.withDefaults().equilibrium(state, loads).failures()).isEmpty();
    }

    @Test
    void workThroughStaticStatesEqualsTheWorkOnTheLine() {
        for (ArrestCase each :
                List.of(Cases.level(), Cases.gripped(), Cases.plain(), Cases.sequence(), Cases.slack())) {
            VerificationReport report =
                    Verifier.withDefaults().withPathWork(20_000).arrest(each.solve());

            assertThat(report.failures()).as(each.name()).isEmpty();
            assertThat(report.worst()).as(each.name()).containsKey(Check.STATIC_PATH_WORK);
        }
    }

    @Test
    void whereFrictionMakesThePathMatterStaticsIsNotAsked() {
        VerificationReport report =
                Verifier.withDefaults().withPathWork(1).arrest(Cases.friction().solve());

        assertThat(report.worst()).doesNotContainKey(Check.STATIC_PATH_WORK);
    }

    @Test
    void limitsCanBeSet() {
        Verifier strict = Verifier.withDefaults().withLimit(Check.STRETCH, 0).withLimit(Check.SLIP, 0.5);
        VerificationReport report = strict.arrest(Cases.friction().solve());

        assertThat(report.failures()).isNotEmpty().allMatch(r -> r.check() == Check.STRETCH);
        assertThat(report.worst())
                .hasEntrySatisfying(Check.SLIP, r -> assertThat(r.limit()).isEqualTo(0.5));
    }

    @Test
    void badSettingsAreRefused() {
        Verifier verifier = Verifier.withDefaults();

        assertThatThrownBy(() -> verifier.withLimit(Check.SLIP, -1))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("limit");
        assertThatThrownBy(() -> verifier.withPathWork(0))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("solutions");
    }

    @Test
    void aStateCheckedAgainstOtherLoadsFails() {
        ArrestCase each = Cases.level();
        List<AppliedLoad> loads = List.of(new AppliedLoad(Place.of(1, 8), Attachment.GRIPPED, 900));
        LineEquilibrium state = Statics.withDefaults().solve(each.line(), loads);

        assertThat(Verifier.withDefaults().equilibrium(state, List.of()).passed())
                .isFalse();
    }
}
