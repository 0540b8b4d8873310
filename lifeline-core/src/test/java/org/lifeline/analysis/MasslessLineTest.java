package org.lifeline.analysis;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.lifeline.analysis.motion.WorkerPeaks;
import org.lifeline.base.Point;
import org.lifeline.model.Attachment;
import org.lifeline.model.Connection;
import org.lifeline.model.Fall;
import org.lifeline.model.InlineAbsorber;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Passage;
import org.lifeline.model.Place;
import org.lifeline.model.Stiffness;
import org.lifeline.model.Support;
import org.lifeline.model.Worker;
import org.lifeline.model.absorber.DeploymentForce;
import org.lifeline.model.absorber.LoadingCurve;
import org.lifeline.model.absorber.LoadingCurve.Corner;
import org.lifeline.model.cable.Cable;

/**
 * A line of next to no mass follows its load without waves. Then the motion is that of one mass on a nonlinear spring:
 * first against an ordinary differential equation that is written down from geometry alone, then against the energy
 * balance, whose path comes from the elastic catenary.
 */
class MasslessLineTest {
    private static final double EA = 3e6;
    private static final double SPAN = 8;
    private static final double INSTALLED = 1500;
    private static final double MASS = 100;
    private static final double LANYARD = 6e4;
    private static final double FREE_FALL = 1.2;

    /** Mass of the cable [kg/m]: what it does by its mass shrinks with the root of it. */
    private static final double LIGHT = 1e-5;

    /** Damping time [s]: the default of 2e-4 s takes 0.1 % off the forces here. */
    private static final double DAMPING = 5e-6;

    private static Cable cable() {
        return cable(LIGHT);
    }

    private static Cable cable(double mass) {
        return Cable.builder()
                .massPerLength(mass)
                .axialStiffness(EA)
                .dampingTime(DAMPING)
                .build();
    }

    private static Worker worker(Connection connection) {
        return Worker.builder("w")
                .mass(MASS)
                .walkingLevel(-2)
                .attachment(Attachment.GRIPPED)
                .connection(connection)
                .build();
    }

    private static TransientResult run(Lifeline line, int span) {
        Fall fall = Fall.builder("middle")
                .at(Place.of(span, SPAN / 2))
                .faller(worker(Connection.plainLanyard(1.5, LoadingCurve.spring(LANYARD))))
                .freeFall(FREE_FALL)
                .build();
        return TransientArrest.withDefaults()
                .withSegmentLength(SPAN / 8)
                .withRefinements(0)
                .withDuration(0.9)
                .solve(line, fall);
    }

    private static void agree(String what, TransientResult r, WeightlessLine.Lowest expected) {
        WorkerPeaks w = r.firstCatch().worker("w");
        double z = r.arrest().attachmentBefore().z() - 1.5;
        assertThat(z - w.lowest().value()).as(what).isCloseTo(expected.distance(), Percentage.withPercentage(0.1));
        assertThat(w.force().value()).as(what).isCloseTo(expected.force(), Percentage.withPercentage(0.1));
        assertThat(r.arrest().maximumTension()).as(what).isCloseTo(expected.tension(), Percentage.withPercentage(0.2));
        assertThat(w.lowest().time()).as(what).isCloseTo(expected.time(), Percentage.withPercentage(0.1));
        assertThat(r.relativeDrift()).as(what).isLessThan(1e-3);
    }

    private static Lifeline three(Passage passage) {
        return Lifeline.builder()
                .cable(cable())
                .endAnchor("a", Point.of(0, 0, 0))
                .intermediateAnchor("p", Point.of(SPAN, 0, 0), passage)
                .intermediateAnchor("q", Point.of(2 * SPAN, 0, 0), passage)
                .endAnchor("b", Point.of(3 * SPAN, 0, 0))
                .pretension(INSTALLED)
                .build();
    }

    private static final double UNSTRETCHED = SPAN / (1 + INSTALLED / EA);

    /** Elastic tension of a span of an unstretched length whose half is stretched to a length. */
    private static double elastic(double leg, double unstretched) {
        return Math.max(0, EA * (2 * leg / unstretched - 1));
    }

    private static final double[] RIGID = {Double.POSITIVE_INFINITY, 0};

    @Test
    void rigidAnchors() {
        Lifeline line = Lifeline.builder()
                .cable(cable())
                .endAnchor("a", Point.of(0, 0, 0))
                .endAnchor("b", Point.of(SPAN, 0, 0))
                .pretension(INSTALLED)
                .build();
        WeightlessLine.Lowest expected =
                new WeightlessLine(SPAN / 2, RIGID, leg -> elastic(leg, UNSTRETCHED)).fall(MASS, LANYARD, FREE_FALL);
        agree("rigid anchors", run(line, 1), expected);
    }

    @Test
    void clampsKeepTheOtherSpansOut() {
        WeightlessLine.Lowest expected =
                new WeightlessLine(SPAN / 2, RIGID, leg -> elastic(leg, UNSTRETCHED)).fall(MASS, LANYARD, FREE_FALL);
        TransientResult r = run(three(Passage.clamped()), 2);
        agree("clamped", r, expected);
        assertThat(r.firstCatch().support("a").force().value()).isCloseTo(INSTALLED, Percentage.withPercentage(0.01));
        assertThat(r.arrest().slip(1)).isZero();
    }

    @Test
    void freePassageSharesTheTension() {
        DoubleUnaryOperator tension = leg -> Math.max(0, EA * ((2 * leg + 2 * SPAN) / (3 * UNSTRETCHED) - 1));
        WeightlessLine.Lowest expected = new WeightlessLine(SPAN / 2, RIGID, tension).fall(MASS, LANYARD, FREE_FALL);
        TransientResult r = run(three(Passage.free()), 2);
        agree("free", r, expected);
        assertThat(r.firstCatch().support("a").force().value())
                .isCloseTo(expected.tension(), Percentage.withPercentage(0.6));
    }

    /**
     * Friction: the loaded span pulls material in over both anchors against the capstan's ratio e^(μθ), θ the slope of the
     * leg. Until the lowest point the load only grows, so that the cable only slips one way.
     */
    @Test
    void frictionHoldsMaterialBack() {
        for (double mu : new double[] {0.1, 0.3, 0.8}) {
            DoubleUnaryOperator tension = leg -> {
                double theta = Math.acos(Math.min(1, 0.5 * SPAN / leg));
                double low = 0;
                double high = 1e6;
                for (int i = 0; i < 80; i++) {
                    double t = 0.5 * (low + high);
                    double outer = t * Math.exp(-mu * theta);
                    double length = 2 * leg / (1 + t / EA) + 2 * SPAN / (1 + outer / EA);
                    if (length > 3 * UNSTRETCHED) {
                        low = t;
                    } else {
                        high = t;
                    }
                }
                // While the ratio is within the limit nothing slips.
                return Math.min(0.5 * (low + high), elastic(leg, UNSTRETCHED));
            };
            WeightlessLine.Lowest expected =
                    new WeightlessLine(SPAN / 2, RIGID, tension).fall(MASS, LANYARD, FREE_FALL);
            TransientResult r = run(three(Passage.friction(mu)), 2);
            agree("friction " + mu, r, expected);
            double theta = Math.atan2(r.arrest().sag(), SPAN / 2);
            assertThat(r.firstCatch().support("a").force().value())
                    .as("outer span, friction %s", mu)
                    .isCloseTo(expected.tension() * Math.exp(-mu * theta), Percentage.withPercentage(1));
            assertThat(r.arrest().energy().friction()).isPositive();
        }
    }

    @Test
    void elasticAnchorsGiveWay() {
        for (double k : new double[] {1e5, 1e6}) {
            Lifeline line = Lifeline.builder()
                    .cable(cable())
                    .support(Support.end("a", Point.of(0, 0, 0)).withStiffness(Stiffness.alongX(k)))
                    .support(Support.end("b", Point.of(SPAN, 0, 0)).withStiffness(Stiffness.alongX(k)))
                    .pretension(INSTALLED)
                    .build();
            WeightlessLine.Lowest expected = new WeightlessLine(
                            SPAN / 2, new double[] {k, INSTALLED}, leg -> elastic(leg, UNSTRETCHED))
                    .fall(MASS, LANYARD, FREE_FALL);
            agree("anchors of " + k + " N/m", run(line, 1), expected);
        }
    }

    /**
     * What remains is the cable's mass: waves ripple on the arrest force, the less of them the lighter the cable. With the
     * mass a tenth, less than half of the deviation remains.
     */
    @Test
    void theDeviationGoesWithTheMassOfTheCable() {
        double k = 1e5;
        WeightlessLine.Lowest expected = new WeightlessLine(
                        SPAN / 2, new double[] {k, INSTALLED}, leg -> elastic(leg, UNSTRETCHED))
                .fall(MASS, LANYARD, FREE_FALL);
        double before = Double.POSITIVE_INFINITY;
        for (double mass : new double[] {1e-2, 1e-3, 1e-4, 1e-5}) {
            Lifeline line = Lifeline.builder()
                    .cable(cable(mass))
                    .support(Support.end("a", Point.of(0, 0, 0)).withStiffness(Stiffness.alongX(k)))
                    .support(Support.end("b", Point.of(SPAN, 0, 0)).withStiffness(Stiffness.alongX(k)))
                    .pretension(INSTALLED)
                    .build();
            double deviation = run(line, 1).firstCatch().worker("w").force().value() - expected.force();
            assertThat(deviation).as("%s kg/m", mass).isPositive().isLessThan(before / 2);
            before = deviation;
        }
        assertThat(before).isLessThan(1e-3 * expected.force());
    }

    /** In-line absorbers at both ends, rigid up to 7 kN: the tension stops there, and the absorbers take the rest. */
    @Test
    void inLineAbsorbersCapTheTension() {
        InlineAbsorber absorber = InlineAbsorber.of(
                LoadingCurve.through(List.of(new Corner(0, 7000), new Corner(1, 7000)), Double.POSITIVE_INFINITY, 1e6));
        Lifeline line = Lifeline.builder()
                .cable(cable())
                .support(Support.end("a", Point.of(0, 0, 0)).withInlineAbsorber(absorber))
                .support(Support.end("b", Point.of(SPAN, 0, 0)).withInlineAbsorber(absorber))
                .pretension(INSTALLED)
                .build();
        WeightlessLine.Lowest expected = new WeightlessLine(
                        SPAN / 2, RIGID, leg -> Math.min(7000, elastic(leg, UNSTRETCHED)))
                .fall(MASS, LANYARD, FREE_FALL);
        TransientResult r = run(line, 1);
        agree("in-line absorbers", r, expected);
        double leg = Math.hypot(SPAN / 2, r.arrest().sag());
        double extension = leg - 0.5 * UNSTRETCHED * (1 + 7000 / EA);
        assertThat(r.arrest().inlineAbsorbers().get(0).extension())
                .isCloseTo(extension, Percentage.withPercentage(0.5));
    }

    /**
     * The energy balance follows the static path of the same line; off the middle, sloping, with an absorber. Where its
     * plateau begins the cable, still on its way down, overshoots by its mass: 0.4 % of the tension at most here.
     */
    @Test
    void energyBalanceIsTheLimit() {
        Connection absorber = Connection.lanyard(
                1.5,
                Connection.PersonalAbsorber.builder()
                        .clearanceForce(2500)
                        .maximumForce(5000)
                        .maximumExtension(1.5)
                        .initialStiffness(8e4)
                        .build());
        for (Passage passage : List.of(Passage.free(), Passage.friction(0.3), Passage.clamped())) {
            Lifeline line = Lifeline.builder()
                    .cable(cable())
                    .support(Support.end("a", Point.of(0, 0, 0)).withStiffness(Stiffness.alongX(4e5)))
                    .intermediateAnchor("p", Point.of(9, 0, 0.4), passage)
                    .endAnchor("b", Point.of(17, 3, 0))
                    .pretension(INSTALLED)
                    .build();
            Fall fall = Fall.builder("third point")
                    .at(Place.of(1, 4.5))
                    .faller(worker(absorber))
                    .freeFall(FREE_FALL)
                    .build();
            for (DeploymentForce side : DeploymentForce.values()) {
                String what = passage + ", " + side;
                ArrestResult balance =
                        EnergyBalance.withDefaults().withSide(side).solve(line, fall);
                TransientResult motion = TransientArrest.withDefaults()
                        .withSide(side)
                        .withSegmentLength(1)
                        .withRefinements(0)
                        .withDuration(1.1)
                        .solve(line, fall);
                ArrestResult a = motion.arrest();
                assertThat(a.arrestForce()).as(what).isCloseTo(balance.arrestForce(), Percentage.withPercentage(0.1));
                assertThat(a.totalFallDistance())
                        .as(what)
                        .isCloseTo(balance.totalFallDistance(), Percentage.withPercentage(0.3));
                assertThat(a.maximumTension())
                        .as(what)
                        .isCloseTo(balance.maximumTension(), Percentage.withPercentage(0.5));
                assertThat(motion.tensionRatio().orElseThrow())
                        .isEqualTo(a.maximumTension() / balance.maximumTension());
            }
        }
    }
}
