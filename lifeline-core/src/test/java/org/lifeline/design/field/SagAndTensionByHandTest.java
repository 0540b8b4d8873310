package org.lifeline.design.field;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.lifeline.analysis.EnergyBalance;
import org.lifeline.analysis.Statics;
import org.lifeline.analysis.warning.Warning;
import org.lifeline.base.Interval;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.Point;
import org.lifeline.design.envelope.Designs;
import org.lifeline.design.envelope.Extreme;
import org.lifeline.design.envelope.Extremes;
import org.lifeline.design.envelope.Quantity;
import org.lifeline.model.Fall;
import org.lifeline.model.Installed;
import org.lifeline.model.Lifeline;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Passage;
import org.lifeline.model.Place;
import org.lifeline.model.cable.Cable;

/**
 * Readings against the parabola by hand: sag w L²/(8 H) at midspan, and the change of state of a span, whose stress-free length is
 * L (1 + (w L)²/(24 H²)) (1 − H/EA).
 */
@SuppressWarnings("NullAway") // Null is handed over to be refused, and what is there is taken as there.
class SagAndTensionByHandTest {
    private static final double EA = 4e6;
    private static final double ALPHA = 12e-6;
    private static final double W = 0.5 * 9.80665;
    private static final FieldCheck NOTHING = FieldCheck.withDefaults().withAnalysis(d -> Extremes.of(d, List.of()));

    private static Lifeline line(double run, double rise, int spans, Passage passage) {
        Lifeline.Builder b = Lifeline.builder()
                .cable(Cable.builder()
                        .massPerLength(0.5)
                        .axialStiffness(EA)
                        .thermalExpansion(ALPHA)
                        .build())
                .endAnchor("a", Point.of(0, 0, 12.4));
        for (int i = 1; i < spans; i++) {
            b.intermediateAnchor("p" + i, Point.of(run * i, 0, 12.4 + rise * i), passage);
        }
        return b.endAnchor("z", Point.of(run * spans, 0, 12.4 + rise * spans))
                .pretension(1500)
                .build();
    }

    private static double rope(double run, double tension) {
        return run * (1 + W * W * run * run / (24 * tension * tension)) * (1 - tension / EA);
    }

    /** Tension in a span of the same rope when it is warmer by some kelvins. */
    private static double warmed(double run, double tension, double kelvins) {
        double length = rope(run, tension) * (1 + ALPHA * kelvins);
        double low = 50;
        double high = 1e5;
        for (int i = 0; i < 200; i++) {
            double middle = 0.5 * (low + high);
            if (rope(run, middle) > length) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return low;
    }

    private static StringingRow row(Lifeline line, double temperature) {
        return StringingTable.withDefaults().solve(line, List.of(temperature)).get(0);
    }

    // Stringing tables.

    @ParameterizedTest
    @CsvSource({"8, -30", "8, 45", "12, -30", "12, 0", "12, 45", "20, 45"})
    void theTableFollowsTheChangeOfState(double run, double temperature) {
        StringingRow r = row(line(run, 0, 1, Passage.free()), temperature);
        double tension = warmed(run, 1500, temperature - 15);
        assertThat(r.tension().nominal()).isEqualTo(tension, within(2e-3 * tension));
        assertThat(r.sag().nominal())
                .isEqualTo(W * run * run / (8 * tension), within(4e-3 * r.sag().nominal()));
        assertThat(r.temperature()).isEqualTo(temperature);
        assertThat(r.span()).isEqualTo(1);
    }

    /** On a slope the cable weighs 1/cos β more a metre of run: sag w L²/(8 H cos β), upright below the chord. */
    @ParameterizedTest
    @ValueSource(doubles = {0, 1.5, -4})
    void onASlopeTheSagIsThatOfTheHeavierRun(double rise) {
        Lifeline line = line(12, rise, 1, Passage.free());
        double cosine = 12 / Math.hypot(12, rise);
        double h = Statics.withDefaults().solve(line, List.of()).span(1).horizontalTension();
        double expected = W * 144 / (8 * h * cosine);
        assertThat(Measurement.midspanSag(1, 1).on(line)).isEqualTo(expected, within(2e-3 * expected));
    }

    @Test
    void spansOfOneLengthThatTheCablePassesFreelyAreAlike() {
        List<StringingRow> rows =
                StringingTable.withDefaults().solve(line(10, 0, 3, Passage.free()), List.of(0.0, 30.0));
        assertThat(rows).extracting(StringingRow::span).containsExactly(1, 2, 3, 1, 2, 3);
        assertThat(rows).extracting(StringingRow::temperature).containsExactly(0.0, 0.0, 0.0, 30.0, 30.0, 30.0);
        for (int i = 1; i < 3; i++) {
            assertThat(rows.get(i).sag().nominal()).isEqualTo(rows.get(0).sag().nominal(), within(1e-7));
            assertThat(rows.get(i).tension().nominal())
                    .isEqualTo(rows.get(0).tension().nominal(), within(1e-4));
        }
    }

    @Test
    void clampsAreOpenWhileTheLineIsTensioned() {
        List<Double> temperatures = List.of(-20.0, 40.0);
        List<StringingRow> free = StringingTable.withDefaults().solve(line(10, 0.5, 2, Passage.free()), temperatures);
        assertThat(StringingTable.withDefaults().solve(line(10, 0.5, 2, Passage.clamped()), temperatures))
                .isEqualTo(free);
        assertThat(StringingTable.withDefaults().solve(line(10, 0.5, 2, Passage.friction(0.2)), temperatures))
                .isEqualTo(free);
    }

    /** At the temperature of installation the tolerance is on the tension itself, and inversely on the sag. */
    @Test
    void theToleranceIsOnThePretension() {
        StringingRow r = StringingTable.withDefaults()
                .withTolerance(Interval.of(0.8, 1.25))
                .solve(line(12, 0, 1, Passage.free()), List.of(15.0))
                .get(0);
        assertThat(r.tension().low()).isEqualTo(1200, within(1e-5));
        assertThat(r.tension().high()).isEqualTo(1875, within(1e-5));
        assertThat(r.sag().low())
                .isEqualTo(r.sag().nominal() / 1.25, within(1e-3 * r.sag().nominal()));
        assertThat(r.sag().high())
                .isEqualTo(r.sag().nominal() / 0.8, within(1e-3 * r.sag().nominal()));
        StringingRow none = row(line(12, 0, 1, Passage.free()), 15);
        assertThat(none.tension())
                .isEqualTo(new Reading(
                        none.tension().nominal(),
                        none.tension().nominal(),
                        none.tension().nominal()));
        assertThat(r.tension().nominal()).isEqualTo(none.tension().nominal());
    }

    @ParameterizedTest
    @CsvSource({"0, 1.2", "-0.5, 1.2", "1.0000001, 1.2", "0.5, 0.9999999"})
    void aToleranceWithoutTheDesignIsRefused(double low, double high) {
        assertThatThrownBy(() -> StringingTable.withDefaults().withTolerance(Interval.of(low, high)))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageStartingWith("tolerance: ");
    }

    @Test
    void aToleranceMayEndAtTheDesign() {
        Lifeline line = line(12, 0, 1, Passage.free());
        for (Interval each : List.of(Interval.of(1, 1.2), Interval.of(0.9, 1))) {
            Reading t = StringingTable.withDefaults()
                    .withTolerance(each)
                    .solve(line, List.of(15.0))
                    .get(0)
                    .tension();
            assertThat(t.low()).isEqualTo(each.low() * 1500, within(1e-5));
            assertThat(t.high()).isEqualTo(each.high() * 1500, within(1e-5));
        }
    }

    private static StringingRow made(int span, double highest) {
        return new StringingRow(-20, span, new Reading(1, 2, highest), new Reading(0, 0, 0));
    }

    /** The terminations hold 0.9 · 50 kN = 45 kN: exactly that is no warning. */
    @Test
    void aRowBeyondTheTerminationsIsWarnedOf() {
        Lifeline unknown = line(12, 0, 3, Passage.free());
        Lifeline line = unknown.withCable(unknown.cable().toBuilder()
                .breakingStrength(50e3)
                .terminationEfficiency(0.9)
                .build());
        List<Warning> list = StringingTable.warnings(line, List.of(made(1, 45e3), made(2, 45e3 + 1e-6), made(3, 60e3)));
        assertThat(list).hasSize(2);
        assertThat(list).allSatisfy(w -> {
            assertThat(w.code()).isEqualTo(Warning.Code.CABLE_STRENGTH);
            assertThat(w.limit()).isEqualTo(45e3, within(1e-9));
            assertThat(w.place()).isEqualTo("-20.0 °C");
        });
        assertThat(list).extracting(Warning::subject).containsExactly("span 2", "span 3");
        assertThat(list.get(1).value()).isEqualTo(60e3);
        assertThat(StringingTable.warnings(unknown, List.of(made(1, 1e9)))).isEmpty();
        assertThat(StringingTable.warnings(line, List.of())).isEmpty();
    }

    @Test
    void whatATableNeedsIsNamed() {
        Lifeline line = line(12, 0, 1, Passage.free());
        StringingTable t = StringingTable.withDefaults();
        assertThatThrownBy(() -> t.solve(null, List.of())).hasMessage("line: null: must be given");
        assertThatThrownBy(() -> t.solve(line, Arrays.asList(1.0, null)))
                .hasMessage("temperatures[1]: null: must be given");
        assertThatThrownBy(() -> t.withTolerance(null)).hasMessage("tolerance: null: must be given");
        assertThatThrownBy(() -> StringingTable.warnings(null, List.of())).hasMessage("line: null: must be given");
        assertThatThrownBy(() -> StringingTable.warnings(line, null)).hasMessage("rows: null: must be given");
        assertThat(t.solve(line, List.of())).isEmpty();
    }

    // What was measured.

    /** By hand: H = w L²/(8 f) at the temperature of the measurement, and back to 15 °C by the change of state. */
    @ParameterizedTest
    @CsvSource({"0.05, 15", "0.12, 15", "0.05, 40", "0.03, -20", "0.1, 0"})
    void fromASagFollowsThePretension(double sag, double temperature) {
        double h = W * 144 / (8 * sag);
        double expected = warmed(12, h, 15 - temperature);
        FieldCheckResult r = NOTHING.solve(
                Designs.withWorker(line(12, 0, 1, Passage.free())),
                Measurement.midspanSag(1, sag).atTemperature(temperature));
        assertThat(r.pretensionNow()).isEqualTo(expected, within(4e-3 * expected));
        assertThat(r.designNow().line().installed().value()).isEqualTo(r.pretensionNow());
        assertThat(r.pretensionRange()).isEqualTo(Interval.exactly(r.pretensionNow()));
        assertThat(r.analyses()).as("no uncertainty is stated").hasSize(1);
    }

    @Test
    void whatTheDesignWouldHaveGivenIsSaidBeside() {
        FieldCheckResult r = NOTHING.solve(
                Designs.withWorker(line(12, 0, 1, Passage.free())),
                Measurement.midspanSag(1, 0.1).atTemperature(40));
        double tension = warmed(12, 1500, 25);
        assertThat(r.readingOfDesign()).isEqualTo(W * 144 / (8 * tension), within(4e-3 * r.readingOfDesign()));
        assertThat(r.pretensionOfDesign()).isEqualTo(1500, within(1e-6));
    }

    /** A tension that was read is the pretension, read at the temperature of installation; of a level span at both ends. */
    @ParameterizedTest
    @ValueSource(doubles = {300, 1500, 9000, 30_000})
    void aTensionThatIsReadIsThePretension(double tension) {
        LifelineDesign d = Designs.withWorker(line(12, 0, 1, Passage.free()));
        assertThat(NOTHING.solve(d, Measurement.firstTension(tension)).pretensionNow())
                .isEqualTo(tension, within(1e-7 * tension));
        assertThat(NOTHING.solve(d, Measurement.lastTension(tension)).pretensionNow())
                .isEqualTo(tension, within(1e-6 * tension));
        // The end tension of a catenary is larger than its horizontal part: T = H cosh(w L/(2 H)).
        assertThat(NOTHING.solve(d, Measurement.horizontalTension(1, tension)).pretensionNow())
                .isEqualTo(tension * Math.cosh(W * 6 / tension), within(1e-5 * tension));
    }

    @Test
    void theFormOfTheDesignMakesNoDifference() {
        Lifeline byTension = line(12, 0, 1, Passage.free());
        double length =
                Statics.withDefaults().solve(byTension, List.of()).span(1).unstretchedLength();
        Lifeline byLength = byTension.withInstalled(Installed.unstretchedLength(length));
        Measurement m = Measurement.midspanSag(1, 0.08);
        assertThat(NOTHING.solve(Designs.withWorker(byLength), m).pretensionNow())
                .isEqualTo(NOTHING.solve(Designs.withWorker(byTension), m).pretensionNow(), within(1e-5));
    }

    /** Each analysis is asked once, as measured, slackest, tightest; for a tension the slackest is the lower one. */
    @Test
    void theEndsOfTheUncertaintyAreAnalysedSlackestFirst() {
        LifelineDesign d = Designs.withWorker(line(12, 0, 1, Passage.free()));
        for (Measurement m : List.of(
                Measurement.midspanSag(1, 0.06).withUncertainty(0.01),
                Measurement.firstTension(1400).withUncertainty(200))) {
            List<Double> asked = new ArrayList<>();
            FieldCheckResult r = FieldCheck.withDefaults()
                    .withAnalysis(x -> {
                        asked.add(x.line().installed().value());
                        return Extremes.of(x, List.of());
                    })
                    .solve(d, m);
            assertThat(asked).hasSize(3);
            assertThat(asked.get(1)).isLessThan(asked.get(0));
            assertThat(asked.get(2)).isGreaterThan(asked.get(0));
            assertThat(r.pretensionRange()).isEqualTo(Interval.of(asked.get(1), asked.get(2)));
            assertThat(r.pretensionNow()).isEqualTo(asked.get(0));
            assertThat(r.analyses()).hasSize(3);
            assertThat(r.worst(Quantity.SAG)).as("nothing was computed").isEmpty();
            assertThat(r.measurement()).isSameAs(m);
        }
    }

    @Test
    void tighterReadingsAreTighterLines() {
        LifelineDesign d = Designs.withWorker(line(12, 0, 2, Passage.friction(0.1)));
        double before = Double.POSITIVE_INFINITY;
        for (double sag = 0.03; sag < 0.3; sag *= 1.7) {
            double p = NOTHING.solve(d, Measurement.midspanSag(2, sag)).pretensionNow();
            assertThat(p).isLessThan(before).isPositive();
            before = p;
        }
    }

    // What no line gives.

    @Test
    void aReadingOfNoPretensionIsRefusedWithItsName() {
        LifelineDesign d = Designs.withWorker(line(12, 0, 1, Passage.free()));
        assertThatThrownBy(() -> NOTHING.solve(d, Measurement.midspanSag(1, 1e-8)))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageStartingWith("midspan sag of span 1: ")
                .hasMessageContaining("no pretension gives it: one above 200000 N would stretch the cable by 5.0");
        assertThatThrownBy(() -> NOTHING.solve(d, Measurement.midspanSag(1, 8)))
                .hasMessageContaining("the line would have to be slacker than it can hang");
        assertThatThrownBy(() -> NOTHING.solve(d, Measurement.midspanSag(2, 0.1)))
                .hasMessageStartingWith("span: 2: ");
        assertThatThrownBy(() -> NOTHING.solve(null, Measurement.firstTension(1)))
                .hasMessageStartingWith("design: null");
        assertThatThrownBy(() -> NOTHING.solve(d, null)).hasMessageStartingWith("measurement: null");
        assertThatThrownBy(() -> FieldCheck.withDefaults().withAnalysis(null)).hasMessageStartingWith("analysis: null");
    }

    @Test
    void anUncertaintyIsSmallerThanItsValue() {
        Measurement m = Measurement.firstTension(1000);
        assertThat(m.withUncertainty(0).uncertainty()).isZero();
        assertThat(m.withUncertainty(Math.nextDown(1000.0)).uncertainty()).isLessThan(1000);
        assertThatThrownBy(() -> m.withUncertainty(1000))
                .hasMessageStartingWith("uncertainty: ")
                .hasMessageContaining("must be smaller than the value (");
        assertThatThrownBy(() -> m.withUncertainty(-1e-9)).hasMessageStartingWith("uncertainty: ");
        assertThatThrownBy(() -> Measurement.horizontalTension(0, 1)).hasMessage("span: 0: must be 1 or more");
    }

    /** Three arrests as if of three pretensions, in every order: the worst is the worst, of equals the first. */
    @Test
    void theWorstOfTheAnalysesCountsWhereverItStands() {
        LifelineDesign d = Designs.withWorker(line(12, 0, 1, Passage.free()));
        List<Extremes> three = new ArrayList<>();
        for (double station : new double[] {2, 4, 6}) {
            Fall f = Fall.builder("f")
                    .at(Place.of(1, station))
                    .faller(d.workers().get(0))
                    .build();
            three.add(Extremes.of(d, List.of(EnergyBalance.withDefaults().solve(d.line(), f))));
        }
        assertThat(worst(d, List.of(three.get(2), again(d)), Quantity.SAG).arrest())
                .isSameAs(three.get(2).of(Quantity.SAG).orElseThrow().arrest());
        int[][] orders = {{0, 1, 2}, {0, 2, 1}, {1, 0, 2}, {1, 2, 0}, {2, 0, 1}, {2, 1, 0}};
        for (int[] o : orders) {
            List<Extremes> list = List.of(three.get(o[0]), three.get(o[1]), three.get(o[2]));
            for (Quantity q : List.of(Quantity.SAG, Quantity.REQUIRED_ELEVATION)) {
                double sign = q.largestIsWorst() ? 1 : -1;
                double most = list.stream()
                        .mapToDouble(e -> sign * e.of(q).orElseThrow().value())
                        .max()
                        .orElseThrow();
                assertThat(sign * worst(d, list, q).value()).isEqualTo(most);
            }
        }
    }

    private static Extremes again(LifelineDesign d) {
        Fall f = Fall.builder("f").at(Place.of(1, 6)).faller(d.workers().get(0)).build();
        return Extremes.of(d, List.of(EnergyBalance.withDefaults().solve(d.line(), f)));
    }

    private static Extreme worst(LifelineDesign d, List<Extremes> list, Quantity q) {
        FieldCheckResult.AsDesigned designed = new FieldCheckResult.AsDesigned(1, 2);
        return new FieldCheckResult(Measurement.firstTension(1), designed, List.of(1.0), List.of(d), list)
                .worst(q)
                .orElseThrow();
    }

    @Test
    void namesAndUnitsSayWhatWasRead() {
        List<Measurement> all = List.of(
                Measurement.midspanSag(3, 0.1),
                Measurement.firstTension(1),
                Measurement.lastTension(1),
                Measurement.horizontalTension(2, 1));
        assertThat(all)
                .extracting(Measurement::name)
                .containsExactly(
                        "midspan sag of span 3",
                        "tension at the first end anchor",
                        "tension at the last end anchor",
                        "horizontal tension in span 2");
        assertThat(all).extracting(Measurement::unit).containsExactly("m", "N", "N", "N");
        assertThat(all).extracting(Measurement::fallsWithTension).containsExactly(true, false, false, false);
        assertThat(all).extracting(Measurement::uncertainty).containsOnly(0.0);
    }
}
