package org.lifeline.design.installation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.lifeline.base.Interval;
import org.lifeline.base.InvalidInputException;
import org.lifeline.design.envelope.DesignAnalysis;
import org.lifeline.design.envelope.Designs;
import org.lifeline.design.envelope.Extremes;
import org.lifeline.design.envelope.Quantity;
import org.lifeline.design.envelope.WorstCases;
import org.lifeline.model.LifelineDesign;

/** Requests and what they refuse; readings with an analysis that only notes what it was asked for. */
@SuppressWarnings("NullAway") // Null is handed over to be refused, and what is there is taken as there.
class InstallationDataTest {
    private static final LifelineDesign DESIGN = Designs.fallInTheMiddle();

    private static InstallationRequest request(double low, double high) {
        return new InstallationRequest(Interval.of(0, 30), 100, Interval.of(low, high), Optional.empty());
    }

    private static void refused(ThrowingCallable call, String start, String end) {
        assertThatThrownBy(call)
                .isInstanceOf(InvalidInputException.class)
                .hasMessageStartingWith(start)
                .hasMessageEndingWith(end);
    }

    // Requests.

    @ParameterizedTest
    @CsvSource({"0, 1.1", "-0.1, 1.1", "1, 1.1", "0.9, 1", "1.1, 1.2", "0.5, 0.9"})
    void aToleranceThatDoesNotSurroundOneIsRefused(double low, double high) {
        refused(() -> request(low, high), "tolerance: ", "must be a range of factors above zero around 1");
    }

    @Test
    void aToleranceJustAroundOneIsTaken() {
        InstallationRequest r = request(Math.nextDown(1.0), Math.nextUp(1.0));
        assertThat(r.tolerance().contains(1)).isTrue();
        assertThat(request(1e-9, 100).tolerance()).isEqualTo(Interval.of(1e-9, 100));
    }

    @Test
    void whatIsCommonIsTakenWhereNothingIsStated() {
        InstallationRequest r = InstallationRequest.between(Interval.of(-5, 25));
        assertThat(r.temperatures()).isEqualTo(Interval.of(-5, 25));
        assertThat(r.handTight()).isEqualTo(InstallationRequest.DRAWN_BY_HAND).isEqualTo(100);
        assertThat(r.tolerance())
                .isEqualTo(InstallationRequest.WITHIN_TEN_PERCENT)
                .isEqualTo(Interval.of(0.9, 1.1));
        assertThat(r.stretch()).isEmpty();
    }

    @Test
    void temperaturesAndTensionsThatCannotBeAreRefused() {
        Interval ten = Interval.of(0.9, 1.1);
        refused(
                () -> new InstallationRequest(Interval.of(-300, 30), 100, ten, Optional.empty()),
                "temperatures[0]: -300",
                "");
        refused(
                () -> new InstallationRequest(Interval.of(0, 3000), 100, ten, Optional.empty()),
                "temperatures[1]: 3000",
                "");
        refused(() -> new InstallationRequest(Interval.of(0, 30), 0, ten, Optional.empty()), "handTight: 0", "");
        refused(() -> new InstallationRequest(null, 1, ten, Optional.empty()), "temperatures: null", "must be given");
        refused(
                () -> new InstallationRequest(Interval.of(0, 30), 1, null, Optional.empty()),
                "tolerance: null",
                "must be given");
    }

    @Test
    void aConstructionalStretchLiesFromNoughtToFivePercent() {
        assertThat(new ConstructionalStretch(Interval.of(0, 0.05), "test").range())
                .isEqualTo(Interval.of(0, 0.05));
        refused(
                () -> new ConstructionalStretch(Interval.of(-1e-9, 0.01), "test"),
                "constructionalStretch: ",
                "must lie from 0 to 5 %");
        refused(
                () -> new ConstructionalStretch(Interval.of(0, Math.nextUp(0.05)), "test"),
                "constructionalStretch: ",
                "must lie from 0 to 5 %");
        refused(() -> new ConstructionalStretch(Interval.of(0, 0.01), "  "), "source: \"  \"", "must not be blank");
        refused(() -> new ConstructionalStretch(null, "test"), "range: null", "must be given");
        refused(() -> new ConstructionalStretch(Interval.of(0, 0.01), null), "source: null", "must be given");
    }

    @Test
    void theStretchesByRopeAreThoseOfTheGuide() {
        assertThat(ConstructionalStretch.STEEL_CORE.range()).isEqualTo(Interval.of(0.00125, 0.0025));
        assertThat(ConstructionalStretch.STEEL_CORE.source()).contains("steel core");
        assertThat(ConstructionalStretch.FIBRE_CORE.source()).contains("fibre core");
    }

    @Test
    void aTakeUpIsRopeAndStructureTogether() {
        assertThat(new TakeUp(15, Interval.of(100, 1500), 0.3, 0.02).total()).isEqualTo(0.32, within(1e-15));
    }

    // Readings.

    /** Five pretensions and one for each end of the stretch, in the order in which they are handed over. */
    @Test
    void everyReadingIsAnalysedWithItsPretension() {
        List<Double> asked = new ArrayList<>();
        WorstCases notes = d -> {
            asked.add(d.line().installed().value());
            return Extremes.of(d, List.of());
        };
        InstallationResult r = InstallationPlan.of(new InstallationRequest(
                        Interval.of(0, 30),
                        100,
                        Interval.of(0.8, 1.25),
                        Optional.of(new ConstructionalStretch(Interval.of(0.0002, 0.001), "test"))))
                .withAnalysis(notes)
                .solve(DESIGN);

        assertThat(r.readings())
                .extracting(ReadingEffect::name)
                .containsExactly(
                        "as designed",
                        "lower end of the tolerance",
                        "upper end of the tolerance",
                        "half the lower end",
                        "twice the upper end",
                        "left after a stretch of 0.0200 %, not re-tensioned",
                        "left after a stretch of 0.100 %, not re-tensioned");
        double[] expected = {
            1500,
            1200,
            1875,
            600,
            3750,
            r.stretch().get(0).pretension(),
            r.stretch().get(1).pretension()
        };
        for (int i = 0; i < expected.length; i++) {
            assertThat(r.readings().get(i).pretension()).isEqualTo(expected[i], within(1e-6));
            assertThat(asked.get(i)).as(r.readings().get(i).name()).isEqualTo(expected[i], within(1e-5));
        }
        assertThat(asked).hasSize(7);
        assertThat(r.readings().get(0).worst(Quantity.SAG))
                .as("nothing was computed")
                .isEmpty();
        assertThat(r.design()).isSameAs(DESIGN);
    }

    @Test
    void withoutReadingsNothingIsAnalysed() {
        InstallationResult r = InstallationPlan.of(request(0.9, 1.1))
                .withAnalysis(d -> {
                    throw new IllegalStateException("not asked for");
                })
                .withoutReadings()
                .solve(DESIGN);
        assertThat(r.readings()).isEmpty();
        assertThat(r.stretch()).isEmpty();
        assertThat(r.request().handTight()).isEqualTo(100);
    }

    /** Tighter lines load their anchors more and sag less: the five readings in the order of their pretensions. */
    @Test
    void tighterLinesLoadMoreAndSagLess() {
        List<ReadingEffect> list = new ArrayList<>(InstallationPlan.of(request(0.8, 1.25))
                .withAnalysis(DesignAnalysis.withDefaults())
                .solve(DESIGN)
                .readings());
        list.sort((a, b) -> Double.compare(a.pretension(), b.pretension()));
        for (int i = 1; i < list.size(); i++) {
            assertThat(list.get(i).worst(Quantity.END_ANCHOR_LOAD).orElseThrow())
                    .isGreaterThan(
                            list.get(i - 1).worst(Quantity.END_ANCHOR_LOAD).orElseThrow());
            assertThat(list.get(i).worst(Quantity.SAG).orElseThrow())
                    .isLessThan(list.get(i - 1).worst(Quantity.SAG).orElseThrow());
        }
        assertThat(list.get(0).extremes().of(Quantity.SAG).orElseThrow().value())
                .isEqualTo(list.get(0).worst(Quantity.SAG).orElseThrow());
    }
}
