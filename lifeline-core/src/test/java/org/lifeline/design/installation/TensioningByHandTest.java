package org.lifeline.design.installation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.lifeline.base.Interval;
import org.lifeline.base.Point;
import org.lifeline.design.envelope.Designs;
import org.lifeline.design.field.StringingRow;
import org.lifeline.design.field.StringingTable;
import org.lifeline.model.InlineAbsorber;
import org.lifeline.model.Installed;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Passage;
import org.lifeline.model.Stiffness;
import org.lifeline.model.Support;
import org.lifeline.model.absorber.LoadingCurve;
import org.lifeline.model.cable.Cable;

/**
 * Lengths, take-up and stretch against series of the catenary and Hooke's law by hand. With u = w L/(2 H) a span of run L has the
 * end tension T = H (1 + u²/2 + u⁴/24) and the stress-free length L (1 + u²/6 + u⁴/120) (1 − H/EA); what is left out is of the
 * order of (T/EA)² and u⁶.
 */
class TensioningByHandTest {
    private static final double EA = 3.3e6;
    private static final double ALPHA = 12e-6;
    private static final double MASS = 0.41;
    private static final double W = MASS * 9.80665;

    private static Lifeline line(Passage passage, double... runs) {
        Lifeline.Builder b = Lifeline.builder()
                .cable(Cable.builder()
                        .massPerLength(MASS)
                        .axialStiffness(EA)
                        .thermalExpansion(ALPHA)
                        .build())
                .endAnchor("a", Point.of(0, 0, 12.4));
        double x = 0;
        for (int i = 0; i < runs.length - 1; i++) {
            x += runs[i];
            b.intermediateAnchor("p" + i, Point.of(x, 0, 12.4), passage);
        }
        return b.endAnchor("z", Point.of(x + runs[runs.length - 1], 0, 12.4))
                .pretension(1500)
                .build();
    }

    private static InstallationResult plan(Lifeline line, Interval temperatures, double hand, double... stretch) {
        Optional<ConstructionalStretch> s = stretch.length == 0
                ? Optional.empty()
                : Optional.of(new ConstructionalStretch(Interval.of(stretch[0], stretch[1]), "test"));
        return InstallationPlan.of(new InstallationRequest(temperatures, hand, Interval.of(0.9, 1.1), s))
                .withoutReadings()
                .solve(Designs.withWorker(line));
    }

    private static InstallationResult plan(Lifeline line) {
        return plan(line, Interval.of(-10, 30), 100);
    }

    private static double rope(double run, double tension) {
        double h = tension;
        for (int i = 0; i < 100; i++) {
            double u = W * run / (2 * h);
            h = tension / (1 + u * u / 2 + u * u * u * u / 24);
        }
        double u = W * run / (2 * h);
        return run * (1 + u * u / 6 + u * u * u * u / 120) * (1 - h / EA);
    }

    /** Change of state of a span by the same series: the tension at which the same rope, warmer by ΔT, spans the same run. */
    private static double tensionAt(double run, double tension, double warmer) {
        double length = rope(run, tension);
        double low = 60;
        double high = 1e5;
        for (int i = 0; i < 200; i++) {
            double middle = 0.5 * (low + high);
            if (rope(run, middle) > length * (1 + ALPHA * warmer)) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return low;
    }

    @Test
    void lengthsOfSpansFollowTheSeries() {
        InstallationResult r = plan(line(Passage.free(), 8, 12, 10));
        double[] runs = {8, 12, 10};
        double sum = 0;
        for (int i = 0; i < 3; i++) {
            CutLength c = r.lengths().get(i);
            assertThat(c.span()).isEqualTo(i + 1);
            assertThat(c.run()).isEqualTo(runs[i], within(1e-12));
            // (T/EA)² L = 2e-7 · 12 m.
            assertThat(c.unstretched()).isEqualTo(rope(runs[i], 1500), within(4e-6));
            sum += c.unstretched();
        }
        assertThat(r.totalLength()).isEqualTo(sum, within(1e-12));
    }

    @ParameterizedTest
    @ValueSource(doubles = {-40, 15, 16, 60})
    void aLengthMeasuredWarmerIsLongerByTheThermalStrain(double temperature) {
        InstallationResult r = plan(line(Passage.free(), 12));
        assertThat(r.totalLengthAt(temperature) / r.totalLength() - 1)
                .isEqualTo(ALPHA * (temperature - 15), within(1e-13));
    }

    /** While it is tensioned the cable runs over clamps that are closed afterwards. */
    @Test
    void clampsMakeNoDifferenceWhileTheLineIsTensioned() {
        InstallationResult free = plan(line(Passage.free(), 8, 12));
        InstallationResult clamped = plan(line(Passage.clamped(), 8, 12));
        InstallationResult rough = plan(line(Passage.friction(0.3), 8, 12));
        for (InstallationResult other : List.of(clamped, rough)) {
            assertThat(other.totalLength()).isEqualTo(free.totalLength(), within(1e-9));
            assertThat(other.takeUps()).isEqualTo(free.takeUps());
            assertThat(other.stringing()).isEqualTo(free.stringing());
        }
    }

    @ParameterizedTest
    @CsvSource({"-10", "30", "0"})
    void tensionsAtOtherTemperaturesFollowTheChangeOfState(double temperature) {
        TakeUp t = plan(line(Passage.free(), 12), Interval.exactly(temperature), 100)
                .takeUps()
                .get(0);
        double expected = tensionAt(12, 1500, temperature - 15);
        assertThat(t.tensions().high()).isEqualTo(expected, within(1e-3 * expected));
        assertThat(t.tensions().low()).isEqualTo(100);
        assertThat(t.rope()).isEqualTo(rope(12, 100) - rope(12, expected), within(2e-4));
    }

    @Test
    void eachTemperatureOfTheRangeHasOneRow() {
        Lifeline line = line(Passage.free(), 12);
        assertThat(plan(line, Interval.of(0, 30), 100).takeUps())
                .extracting(TakeUp::temperature)
                .containsExactly(0.0, 15.0, 30.0);
        assertThat(plan(line, Interval.of(15, 30), 100).takeUps())
                .extracting(TakeUp::temperature)
                .containsExactly(15.0, 30.0);
        assertThat(plan(line, Interval.of(20, 30), 100).takeUps())
                .extracting(TakeUp::temperature)
                .containsExactly(20.0, 30.0);
        assertThat(plan(line, Interval.exactly(20), 100).takeUps()).hasSize(1);
        assertThat(plan(line, Interval.of(0, 30), 100).stringing())
                .extracting(StringingRow::temperature)
                .containsExactly(0.0, 15.0, 30.0);
    }

    /**
     * Nothing but second order: the plan takes rope to weigh w whatever its temperature, heat spreads the weight that is there. Of
     * the L u²/6 that sag takes up the difference is 2 α ΔT.
     */
    @Test
    void aLineThatIsTightByHandTakesUpNothing() {
        for (TakeUp t :
                plan(line(Passage.free(), 12), Interval.of(-10, 30), 9000).takeUps()) {
            assertThat(t.tensions().width()).isEqualTo(0, within(1e-9));
            double u = W * 12 / (2 * t.tensions().high());
            double spread = 2 * ALPHA * (t.temperature() - 15) * 12 * u * u / 6;
            assertThat(t.rope()).isEqualTo(spread, within(0.02 * Math.abs(spread) + 1e-11));
            assertThat(t.structure()).isZero();
        }
    }

    @Test
    void tighterByHandLeavesLessToTakeUp() {
        double before = Double.POSITIVE_INFINITY;
        for (double hand : new double[] {60, 100, 200, 500, 1400}) {
            double travel =
                    plan(line(Passage.free(), 12), Interval.of(0, 30), hand).tensionerTravel();
            assertThat(travel).as("%s N", hand).isLessThan(before).isPositive();
            before = travel;
        }
    }

    // What gives way.

    private static Lifeline with(Lifeline line, Stiffness first, Stiffness last) {
        return line.withSupports(s -> s.isEnd() ? s.withStiffness(s.id().equals("a") ? first : last) : s);
    }

    /** Springs along the line, 1e5 N/m and 5e4 N/m: they give by ΔT/k each; the sag's slope is below 1 % of the tension. */
    @Test
    void elasticAnchorsGiveByHookesLaw() {
        Lifeline line = with(line(Passage.free(), 12), Stiffness.alongX(1e5), Stiffness.alongX(5e4));
        TakeUp t = plan(line, Interval.exactly(15), 100).takeUps().get(0);
        assertThat(t.structure()).isEqualTo(1400 / 1e5 + 1400 / 5e4, within(0.01 * 0.042));
        assertThat(t.total()).isEqualTo(t.rope() + t.structure());
        Lifeline across = with(line(Passage.free(), 12), Stiffness.rigid().withY(1e4), Stiffness.rigid());
        assertThat(plan(across, Interval.exactly(15), 100).takeUps().get(0).structure())
                .as("nothing pulls across the line")
                .isEqualTo(0, within(1e-9));
    }

    /** An in-line absorber below its activation is a spring: (1500 − 100) N over 2e5 N/m. */
    @Test
    void anInLineAbsorberGivesByItsInitialStiffness() {
        InlineAbsorber absorber = InlineAbsorber.of(LoadingCurve.through(
                List.of(new LoadingCurve.Corner(0, 9000), new LoadingCurve.Corner(0.8, 9000)), 2e5, 2.2e5));
        Lifeline line =
                line(Passage.free(), 12).withSupports(s -> s.id().equals("z") ? s.withInlineAbsorber(absorber) : s);
        TakeUp t = plan(line, Interval.exactly(15), 100).takeUps().get(0);
        assertThat(t.structure()).isEqualTo(1400 / 2e5, within(1e-8));
    }

    /**
     * A post of 1 m above the anchors, 10 m from both, that yields upright: it carries R = 2 T/√101 and the weight of half the
     * cable; the way is shortened by ΔR R/(k T).
     */
    @Test
    void anAngleOverAnElasticPostGivesToo() {
        double k = 2e5;
        Lifeline line = Lifeline.builder()
                .cable(line(Passage.free(), 1).cable())
                .endAnchor("a", Point.of(0, 0, 11.4))
                .support(Support.intermediate("p", Point.of(10, 0, 12.4), Passage.free())
                        .withStiffness(Stiffness.rigid().withZ(k)))
                .endAnchor("z", Point.of(20, 0, 11.4))
                .pretension(1500)
                .build();
        TakeUp t = plan(line, Interval.exactly(15), 200).takeUps().get(0);
        double weight = W * Math.sqrt(101);
        double now = 2 * 1500 / Math.sqrt(101) + weight;
        double change = 2 * 1300 / Math.sqrt(101);
        assertThat(t.structure()).isEqualTo(change * now / (k * 1500), within(0.03 * change * now / (k * 1500)));
    }

    // Stretch.

    /** Lengthening by bedding in or by heat is one and the same: 0.06 % are 50 K at 12e-6/K. */
    @Test
    void aStretchActsAsTheHeatThatLengthensAsMuch() {
        Lifeline line = line(Passage.free(), 12, 12);
        StretchEffect s =
                plan(line, Interval.exactly(15), 100, 0.0006, 0.0006).stretch().get(0);
        StringingRow hot =
                StringingTable.withDefaults().solve(line, List.of(65.0)).get(0);
        assertThat(s.stretch()).isEqualTo(0.0006);
        assertThat(s.pretension()).isEqualTo(hot.tension().nominal(), within(1e-6 * s.pretension()));
        assertThat(s.sag()).isEqualTo(hot.sag().nominal(), within(1e-6));
        assertThat(s.sag()).isEqualTo(W * 144 / (8 * s.pretension()), within(2e-3 * s.sag()));
    }

    @Test
    void noStretchLeavesTheLineAsDesigned() {
        InstallationResult r = plan(line(Passage.free(), 12), Interval.exactly(15), 100, 0, 0.001);
        StretchEffect none = r.stretch().get(0);
        assertThat(none.pretension()).isEqualTo(1500, within(1e-6));
        assertThat(none.retension()).isZero();
        StretchEffect some = r.stretch().get(1);
        assertThat(some.pretension()).isLessThan(1500);
        assertThat(some.sag()).isGreaterThan(none.sag());
        assertThat(some.retension()).isEqualTo(0.001 * r.totalLength(), within(1e-12));
        // The tensioner takes up both: from hand-tight, and later the largest stretch.
        assertThat(r.tensionerTravel()).isEqualTo(r.takeUps().get(0).total() + some.retension(), within(1e-12));
    }

    /** Of two spans the longer one sags more, and that sag is the one that is named. */
    @Test
    void theLargestSagOfAllSpansIsNamed() {
        StretchEffect s = plan(line(Passage.free(), 6, 14), Interval.exactly(15), 100, 0.0005, 0.0005)
                .stretch()
                .get(0);
        assertThat(s.sag()).isEqualTo(W * 196 / (8 * s.pretension()), within(2e-3 * s.sag()));
    }

    /** Stated by its length instead, the same line has the same plan. */
    @Test
    void theFormInWhichTheLineIsStatedDoesNotMatter() {
        Lifeline line = line(Passage.free(), 12);
        InstallationResult byTension = plan(line);
        InstallationResult byLength = plan(line.withInstalled(Installed.unstretchedLength(byTension.totalLength())));
        assertThat(byLength.totalLength()).isEqualTo(byTension.totalLength(), within(1e-12));
        for (int i = 0; i < 3; i++) {
            assertThat(byLength.takeUps().get(i).total())
                    .isEqualTo(byTension.takeUps().get(i).total(), within(1e-7));
        }
    }
}
