package org.lifeline.analysis.explain;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.EnergyBalance;
import org.lifeline.analysis.LineEquilibrium;
import org.lifeline.analysis.state.InlineAbsorberState;
import org.lifeline.model.Attachment;
import org.lifeline.model.Connection;
import org.lifeline.model.Connection.PersonalAbsorber;
import org.lifeline.model.Fall;
import org.lifeline.model.Installed;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Place;
import org.lifeline.model.Support;
import org.lifeline.model.Worker;
import org.lifeline.model.absorber.AbsorberCondition;
import org.lifeline.model.absorber.DeploymentForce;
import org.lifeline.model.absorber.LoadingCurve;
import org.lifeline.samples.SampleDesigns;
import org.lifeline.testing.Cases;
import org.lifeline.testing.Shorthand;

/** The energy balance on the sheet where fallers, their absorbers or those in the line differ from the usual. */
class BalanceSheetTest {
    private static final Lifeline LINE = SampleDesigns.single(SampleDesigns.steel(), Installed.pretension(2000));

    private static Map<String, CalculationStep> by(ArrestResult r) {
        return Reviewer.bySymbol(r.explain());
    }

    private static CalculationStep step(Map<String, CalculationStep> by, String symbol) {
        return Objects.requireNonNull(by.get(symbol), symbol);
    }

    private static double value(Map<String, CalculationStep> by, String symbol) {
        return step(by, symbol).value();
    }

    private static ArrestResult fall(Worker... workers) {
        Fall.Builder fall = Fall.builder("fall").at(Place.of(1, 4));
        List.of(workers).forEach(fall::faller);
        return EnergyBalance.withDefaults().solve(LINE, fall.build());
    }

    private static Worker worker(String id, double mass, Connection.AbsorberBuilder absorber) {
        return SampleDesigns.worker(id, mass, Attachment.GRIPPED, Connection.lanyard(1.8, absorber.build()));
    }

    private static Connection.AbsorberBuilder absorber(double force) {
        return PersonalAbsorber.builder()
                .clearanceForce(force)
                .maximumForce(force)
                .maximumExtension(1.5)
                .initialStiffness(1e5)
                .stopStiffness(2e5);
    }

    /** Forces that hold for the wet absorber come from where that is stated, not from the dry curve of the design. */
    @Test
    void theForcesOfAWetAbsorberNameTheirSource() {
        AbsorberCondition wet = AbsorberCondition.builder(AbsorberCondition.Kind.WET)
                .clearanceForce(2600)
                .maximumForce(5200)
                .source("test report 17")
                .build();
        Map<String, CalculationStep> by =
                by(fall(worker("A", 100, absorber(4000).condition(wet))));
        assertThat(value(by, "P")).isCloseTo(5200, within(1e-6));
        assertThat(step(by, "F_c1").source()).contains("wet").contains("test report 17");
        assertThat(step(by, "x_c1").source()).isEqualTo("design");
        Map<String, CalculationStep> dry = by(fall(worker("A", 100, absorber(4000))));
        assertThat(step(dry, "F_c1").source()).isEqualTo("design");
        // Of two who are not alike each has his own.
        Map<String, CalculationStep> two = by(fall(
                worker("A", 100, absorber(4000)), worker("B", 80, absorber(3000).condition(wet))));
        assertThat(step(two, "F_c1.1").source()).isEqualTo("design");
        assertThat(step(two, "F_c2.1").source()).contains("wet").contains("test report 17");
    }

    /** Each of two has his own curve under his number; the longer deployment counts, whoever's it is. */
    @Test
    void theLongestDeploymentCountsInEitherOrder() {
        Worker light = worker("light", 70, absorber(5000));
        Worker heavy = worker("heavy", 120, absorber(3000));
        ArrestResult first = fall(heavy, light);
        ArrestResult second = fall(light, heavy);
        assertThat(first.isBound()).isTrue();
        assertThat(first.deployments().get(0)).isGreaterThan(first.deployments().get(1) + 0.1);
        Map<String, CalculationStep> a = by(first);
        Map<String, CalculationStep> b = by(second);
        assertThat(value(a, "F_c1.1")).isCloseTo(3000, within(1e-9));
        assertThat(value(a, "F_c2.1")).isCloseTo(5000, within(1e-9));
        assertThat(value(b, "F_c1.1")).isCloseTo(5000, within(1e-9));
        for (String k : List.of("x", "P", "W_c", "m", "h")) {
            assertThat(value(b, k + "_2")).isCloseTo(value(a, k + "_1"), within(1e-6));
            assertThat(value(b, k + "_1")).isCloseTo(value(a, k + "_2"), within(1e-6));
        }
        for (ArrestResult r : List.of(first, second)) {
            Map<String, CalculationStep> by = by(r);
            double longest = r.deployments().stream().mapToDouble(x -> x).max().orElseThrow();
            assertThat(value(by, "h_t"))
                    .isCloseTo(r.freeFall() + longest + r.lineDescent() + r.harnessStretch(), within(1e-8));
            assertThat(value(by, "C_l")).isCloseTo(r.clearance().requiredBelowLine(), within(1e-8));
            // A bound on the safe side: what was taken is not less than what the fall sets free.
            assertThat(value(by, "W_r")).isLessThanOrEqualTo(1e-6);
            assertThat(value(by, "P")).isCloseTo(value(by, "P_1") + value(by, "P_2"), within(1e-6));
            Reviewer.recompute(r.explain());
        }
    }

    /** Two spans, the second running back beside the first: a fall in the first draws the post in, and the second slackens. */
    private static ArrestResult runningBack(Place fall, Place... hanging) {
        Shorthand s = new Shorthand("running back")
                .cable(4.2, 1.2e-5, 0, 0, 1, 4.9e6)
                .end(0, 0, 12)
                .post(12, 0, 12, Shorthand.INF)
                .springs(6e4, Shorthand.INF, Shorthand.INF)
                .end(2, 6, 12)
                .absorber(Shorthand.INF, 3e5, 0, 5000, 0.8, 9000)
                .installed(Installed.Form.PRETENSION, 2500, 1, 15);
        for (Place each : hanging) {
            s.hanging(Attachment.GRIPPED, each, 100);
        }
        return s.faller(new double[] {100, 10.5, 1.5}, false, 1.8, 2e5, 0, 0, 0.06, 6000, 1.2, 6000)
                .fall(Attachment.GRIPPED, fall, Double.NaN)
                .at(15, DeploymentForce.MAXIMUM)
                .solve();
    }

    private static double force(ArrestResult r, LineEquilibrium state, InlineAbsorberState absorber) {
        boolean first = r.line().supports().get(0).id().equals(absorber.supportId());
        return first ? state.firstTension() : state.lastTension();
    }

    private static boolean onFirstLoading(ArrestResult r, LineEquilibrium state, InlineAbsorberState absorber) {
        LoadingCurve law = r.line().supports().stream()
                .filter(s -> s.id().equals(absorber.supportId()))
                .map(Support::inlineAbsorber)
                .findFirst()
                .orElseThrow()
                .orElseThrow()
                .curve();
        double tension = force(r, state, absorber);
        return absorber.extension() == 0
                ? tension <= law.rigidForce() * (1 + 1e-6)
                : Math.abs(law.force(absorber.extension()) - tension) < 1e-4 * tension;
    }

    /** Areas under the curve are written as long as an absorber goes up its curve; else there is a number of the result alone. */
    @Test
    void anAbsorberThatGivesWayHasNoAreaUnderItsCurve() {
        ArrestResult r = runningBack(Place.of(1, 6), Place.of(2, 6));
        InlineAbsorberState before = r.before().inlineAbsorbers().get(0);
        InlineAbsorberState peak = r.peak().inlineAbsorbers().get(0);
        assertThat(before.extension()).isPositive();
        assertThat(onFirstLoading(r, r.before(), before)).isTrue();
        assertThat(onFirstLoading(r, r.peak(), peak)).isFalse();
        CalculationStep taken = step(by(r), "W_4");
        assertThat(taken.formula()).isEmpty();
        assertThat(taken.value()).isEqualTo(r.energy().inlineAbsorbers());
    }

    /** One hangs in either span, the first of them behind the post: the second has relaxed the absorber before the fall. */
    @Test
    void anAbsorberThatWasRelaxedBeforeTheFallHasNoAreaUnderItsCurve() {
        ArrestResult r = runningBack(Place.of(2, 7), Place.of(2, 4), Place.of(1, 6));
        InlineAbsorberState before = r.before().inlineAbsorbers().get(0);
        assertThat(before.extension()).isPositive();
        assertThat(onFirstLoading(r, r.before(), before)).isFalse();
        assertThat(onFirstLoading(r, r.peak(), r.inlineAbsorbers().get(0))).isTrue();
        CalculationStep taken = step(by(r), "W_4");
        assertThat(taken.formula()).isEmpty();
        assertThat(taken.value()).isEqualTo(r.energy().inlineAbsorbers());
    }

    /** Two absorbers that had both given way before the fall: each is counted from where it stood itself. */
    @Test
    void eachAbsorberIsCountedFromWhereItStood() {
        ArrestResult r = new Shorthand("both have given way")
                .cable(4.2, 1.2e-5, 0, 0, 1, 4.9e6)
                .end(0, 0, 12)
                .absorber(8e6, 2.2e5, 0, 4000, 0.8, 8000)
                .post(12, 0, 12, 0.3)
                .end(24, 0, 13)
                .absorber(Shorthand.INF, 3e5, 0, 2500, 0.7, 9000)
                .installed(Installed.Form.PRETENSION, 1500, 1, 15)
                .hanging(Attachment.GRIPPED, Place.of(2, 6), 120)
                .faller(new double[] {100, 10.5, 1.5}, false, 1.8, 2e5, 0, 0, 0.06, 6000, 1.2, 6000)
                .fall(Attachment.GRIPPED, Place.of(1, 6), Double.NaN)
                .at(15, DeploymentForce.MAXIMUM)
                .solve();
        Map<String, CalculationStep> by = by(r);
        double sum = 0;
        for (int i = 0; i < 2; i++) {
            InlineAbsorberState was = r.before().inlineAbsorbers().get(i);
            InlineAbsorberState is = r.inlineAbsorbers().get(i);
            assertThat(onFirstLoading(r, r.before(), was)).isTrue();
            assertThat(onFirstLoading(r, r.peak(), is)).isTrue();
            assertThat(was.extension()).isPositive().isLessThan(is.extension());
            String end = i == 0 ? "a0" : "a2";
            assertThat(value(by, "e_b" + end)).isEqualTo(was.extension());
            assertThat(value(by, "e_" + end)).isEqualTo(is.extension());
            LoadingCurve law = r.line()
                    .supports()
                    .get(2 * i)
                    .inlineAbsorber()
                    .orElseThrow()
                    .curve();
            sum += law.work(is.extension()) - law.work(was.extension());
        }
        assertThat(step(by, "W_4").formula()).contains("U_a0", "U_ba0", "U_a2", "U_ba2");
        assertThat(value(by, "W_4")).isCloseTo(sum, within(1e-5));
    }

    /** Rigid up to its activation, an absorber has no extension before the fall and no line for it. */
    @Test
    void anAbsorberThatHasNotBegunHasNoLineBefore() {
        ArrestResult r = Cases.twoInlineAbsorbers().solve();
        Map<String, CalculationStep> by = by(r);
        assertThat(r.before().inlineAbsorbers())
                .allSatisfy(s -> assertThat(s.extension()).isZero());
        assertThat(by).doesNotContainKeys("e_ba0", "U_ba0", "e_ba1", "U_ba1");
        assertThat(by).containsKeys("e_a1", "U_a1");
        assertThat(step(by, "W_4").formula()).contains("U_a1");
    }
}
