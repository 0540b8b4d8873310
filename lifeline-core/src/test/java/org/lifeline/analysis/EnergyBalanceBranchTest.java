package org.lifeline.analysis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.lifeline.base.Point;
import org.lifeline.model.Attachment;
import org.lifeline.model.Connection;
import org.lifeline.model.Fall;
import org.lifeline.model.Installed;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Passage;
import org.lifeline.model.Place;
import org.lifeline.model.Worker;
import org.lifeline.model.absorber.DeploymentForce;
import org.lifeline.model.absorber.LoadingCurve;
import org.lifeline.model.absorber.LoadingCurve.Corner;
import org.lifeline.model.cable.Cable;
import org.lifeline.model.cable.LoadElongation;

/**
 * Every branch of the energy balance on a weightless span, against the balance solved by bisection over the closed form
 * of two straight legs: m g (h + δ + x) = U(P) − U₀ + ∫F dx, P = F(x).
 */
class EnergyBalanceBranchTest {
    private static final double G = 9.80665;
    private static final double RIGID = Double.POSITIVE_INFINITY;
    private static final double RUN = 12;
    private static final double STIFFNESS = 4e6;
    private static final double PRETENSION = 2000;
    private static final double LENGTH = RUN / (1 + PRETENSION / STIFFNESS);
    private static final StraightLegs LEGS = new StraightLegs(RUN, 0, LENGTH, STIFFNESS);
    private static final double STORED = PRETENSION * PRETENSION * LENGTH / (2 * STIFFNESS);

    private static Lifeline line() {
        return Lifeline.builder()
                .cable(Cable.builder()
                        .weightPerLength(0)
                        .axialStiffness(STIFFNESS)
                        .build())
                .endAnchor("a", Point.of(0, 0, 8))
                .endAnchor("b", Point.of(RUN, 0, 8))
                .pretension(PRETENSION)
                .build();
    }

    private static Worker worker(String id, double mass, LoadingCurve curve) {
        return Worker.builder(id)
                .mass(mass)
                .walkingLevel(6.5)
                .attachment(Attachment.FREE_RUNNING)
                .connection(Connection.givenCurve(1.5, curve))
                .build();
    }

    private static Fall fall(double freeFall, Worker... workers) {
        Fall.Builder b = Fall.builder("fall").at(Place.of(1, RUN / 2)).freeFall(freeFall);
        for (Worker each : workers) {
            b.faller(each);
        }
        return b.build();
    }

    /** Energy set free less energy taken at a force on the line and an extension. */
    private static double gap(double mass, double freeFall, double force, double x, double work) {
        StraightLegs.Shape s = LEGS.running(force);
        return mass * G * (freeFall + s.drop() + x) - (s.energy() - STORED) - work;
    }

    /** The force at which the balance closes, where the extension follows from the force. */
    private static double force(double mass, double freeFall, DoubleUnaryOperator x, DoubleUnaryOperator work) {
        return StraightLegs.solve(
                f -> -gap(mass, freeFall, f, x.applyAsDouble(f), work.applyAsDouble(f)), mass * G, 1e6);
    }

    private static ArrestResult solve(Fall fall) {
        ArrestResult a = EnergyBalance.withDefaults().solve(line(), fall);
        Arrests.closes("branch", a);
        Arrests.balances("branch", a.peak());
        assertThat(a.energy().friction()).isZero();
        assertThat(a.energy().anchors()).isZero();
        assertThat(a.energy().inlineAbsorbers()).isZero();
        assertThat(a.pathWork()).isNaN();
        assertThat(a.method()).isEqualTo(Method.ENERGY_BALANCE);
        return a;
    }

    private static void compare(ArrestResult a, double force, double x) {
        StraightLegs.Shape s = LEGS.running(force);
        assertThat(a.lineLoad()).as("load").isCloseTo(force, within(1e-9 * force));
        assertThat(a.deployment()).as("deployment").isCloseTo(x, within(1e-9 * (1 + x)));
        assertThat(a.lineDescent()).as("descent").isCloseTo(s.drop(), within(1e-9 * s.drop()));
        assertThat(a.sag()).as("sag").isCloseTo(s.drop(), within(1e-9 * s.drop()));
        assertThat(a.loadX()).as("place").isCloseTo(RUN / 2, within(1e-8));
        assertThat(a.maximumTension()).as("tension").isCloseTo(s.firstTension(), within(1e-9 * s.firstTension()));
        assertThat(a.endAnchorLoad()).isCloseTo(s.firstTension(), within(1e-9 * s.firstTension()));
        assertThat(a.energy().cable()).isCloseTo(s.energy() - STORED, within(1e-9 * s.energy()));
    }

    @Test
    void absorberNotReached() {
        // A rise of 30 kN/m to a deployment force of 60 kN that a short fall does not reach.
        LoadingCurve curve = LoadingCurve.through(List.of(new Corner(0, 60_000), new Corner(5, 60_000)), 3e4, 1e5);
        double p = force(90, 0.2, f -> f / 3e4, f -> f * f / 6e4);
        ArrestResult a = solve(fall(0.2, worker("A", 90, curve)));
        compare(a, p, p / 3e4);
        assertThat(a.bottomedOut()).isFalse();
        assertThat(a.arrestForce()).isEqualTo(a.lineLoad());
        assertThat(a.energy().connection()).isCloseTo(p * p / 6e4, within(1e-6));
    }

    @Test
    void onThePlateau() {
        LoadingCurve curve = LoadingCurve.through(List.of(new Corner(0, 5000), new Corner(2, 5000)), RIGID, 1e5);
        StraightLegs.Shape s = LEGS.running(5000);
        double x = (100 * G * (1.8 + s.drop()) - (s.energy() - STORED)) / (5000 - 100 * G);
        assertThat(x).isBetween(0.1, 1.9);
        ArrestResult a = solve(fall(1.8, worker("A", 100, curve)));
        compare(a, 5000, x);
        assertThat(a.bottomedOut()).isFalse();
        assertThat(a.arrestForce()).isEqualTo(5000);
        assertThat(a.totalFallDistance()).isCloseTo(1.8 + x + s.drop() + 0.3, within(1e-8));
    }

    @Test
    void onThePlateauBehindAnElasticRise() {
        LoadingCurve curve = LoadingCurve.through(List.of(new Corner(0, 5000), new Corner(2, 5000)), 1e5, 1e5);
        StraightLegs.Shape s = LEGS.running(5000);
        // To the corner at 50 mm the work is 125 J; from there on 5 kN.
        double spare = gap(100, 1.8, 5000, 0.05, 125);
        double x = 0.05 + spare / (5000 - 100 * G);
        compare(solve(fall(1.8, worker("A", 100, curve))), 5000, x);
        assertThat(s.drop()).isPositive();
    }

    @Test
    void theLineAloneStopsTheFallBelowARigidAbsorber() {
        // Rigid up to 40 kN: the line takes it all and nothing deploys.
        LoadingCurve curve = LoadingCurve.through(List.of(new Corner(0, 40_000), new Corner(2, 40_000)), RIGID, 1e5);
        double p = force(80, 0.3, f -> 0, f -> 0);
        assertThat(p).isLessThan(40_000);
        ArrestResult a = solve(fall(0.3, worker("A", 80, curve)));
        compare(a, p, 0);
        assertThat(a.deployment()).isZero();
        assertThat(a.energy().connection()).isZero();
    }

    @Test
    void onARisingCurve() {
        // 3 kN rising by 2.5 kN/m.
        LoadingCurve curve = LoadingCurve.through(List.of(new Corner(0, 3000), new Corner(2, 8000)), RIGID, 1e5);
        DoubleUnaryOperator x = f -> Math.max(0, (f - 3000) / 2500);
        double p = force(100, 1.8, x, f -> 0.5 * (3000 + f) * x.applyAsDouble(f));
        assertThat(p).isBetween(3500.0, 7900.0);
        ArrestResult a = solve(fall(1.8, worker("A", 100, curve)));
        compare(a, p, x.applyAsDouble(p));
        assertThat(a.bottomedOut()).isFalse();
    }

    @Test
    void bottomedOut() {
        LoadingCurve curve = LoadingCurve.through(List.of(new Corner(0, 3000), new Corner(0.5, 3000)), RIGID, 8e4);
        DoubleUnaryOperator x = f -> 0.5 + (f - 3000) / 8e4;
        double p = force(120, 2.5, x, f -> 1500 + (f - 3000) * (f + 3000) / 1.6e5);
        assertThat(p).isGreaterThan(4000);
        ArrestResult a = solve(fall(2.5, worker("A", 120, curve)));
        compare(a, p, x.applyAsDouble(p));
        assertThat(a.bottomedOut()).isTrue();
    }

    @Test
    void bottomedOutAgainstARigidStop() {
        LoadingCurve curve = LoadingCurve.through(List.of(new Corner(0, 3000), new Corner(0.5, 3000)), RIGID, RIGID);
        double p = force(120, 2.5, f -> 0.5, f -> 1500);
        ArrestResult a = solve(fall(2.5, worker("A", 120, curve)));
        compare(a, p, 0.5);
        assertThat(a.bottomedOut()).isTrue();
    }

    @Test
    void stoppedExactlyAtTheEndOfThePlateau() {
        StraightLegs.Shape s = LEGS.running(5000);
        double x = (100 * G * (1.8 + s.drop()) - (s.energy() - STORED)) / (5000 - 100 * G);
        for (double share : new double[] {1 - 1e-6, 1 + 1e-6}) {
            LoadingCurve curve =
                    LoadingCurve.through(List.of(new Corner(0, 5000), new Corner(x * share, 5000)), RIGID, 1e9);
            ArrestResult a = solve(fall(1.8, worker("A", 100, curve)));
            assertThat(a.bottomedOut()).isEqualTo(share < 1);
            assertThat(a.deployment()).isCloseTo(x, within(2e-6 * x));
        }
    }

    @Test
    void withoutAnAbsorber() {
        LoadingCurve spring = LoadingCurve.spring(5e4);
        double p = force(100, 1.2, f -> f / 5e4, f -> f * f / 1e5);
        Worker w = Worker.builder("A")
                .mass(100)
                .walkingLevel(6.5)
                .connection(Connection.plainLanyard(1.2, spring))
                .build();
        ArrestResult a = solve(fall(1.2, w));
        compare(a, p, p / 5e4);
        assertThat(a.bottomedOut()).isFalse();
        // And with the free fall from geometry: line 8 m, harness 8 m, lanyard 1.2 m.
        ArrestResult b = EnergyBalance.withDefaults()
                .solve(line(), Fall.builder("f").at(Place.of(1, 6)).faller(w).build());
        assertThat(b.freeFall()).isCloseTo(1.2, within(1e-12));
        assertThat(b.lineLoad()).isCloseTo(p, within(1e-8 * p));
    }

    @Test
    void withoutFreeFallASuddenLoad() {
        // Thomson, Vibration Theory and Applications, p. 102: a suddenly applied load gives twice the static force. The
        // taut line is not linear, but a soft spring on a nearly rigid line is.
        Lifeline stiff = Lifeline.builder()
                .cable(Cable.builder()
                        .weightPerLength(0)
                        .elongation(LoadElongation.linear(1e12))
                        .build())
                .endAnchor("a", Point.of(0, 0, 8))
                .endAnchor("b", Point.of(RUN, 0, 8))
                .pretension(1e9)
                .build();
        Fall f = fall(0, worker("A", 100, LoadingCurve.spring(1e3)));
        ArrestResult a = EnergyBalance.withDefaults().solve(stiff, f);
        assertThat(a.lineLoad()).isCloseTo(2 * 100 * G, within(1e-5 * 100 * G));
        assertThat(a.deployment()).isCloseTo(2 * 100 * G / 1e3, within(1e-5));
    }

    @Test
    void alikeTogetherShareTheExtension() {
        LoadingCurve curve = LoadingCurve.through(List.of(new Corner(0, 3250), new Corner(2, 3250)), RIGID, 1e5);
        StraightLegs.Shape s = LEGS.running(6500);
        double x = (190 * G * (1.5 + s.drop()) - (s.energy() - STORED)) / (6500 - 190 * G);
        assertThat(x).isBetween(0.05, 1.95);
        ArrestResult a = solve(fall(1.5, worker("A", 95, curve), worker("B", 95, curve)));
        compare(a, 6500, x);
        assertThat(a.isBound()).isFalse();
        assertThat(a.arrestForce()).isCloseTo(3250, within(1e-9));
        assertThat(a.energy().connection()).isCloseTo(6500 * x, within(1e-6));
        assertThat(a.firstFaller().id()).isEqualTo("A");
    }

    @Test
    void alikeTogetherBottomOutTogether() {
        LoadingCurve curve = LoadingCurve.through(List.of(new Corner(0, 3000), new Corner(0.3, 3000)), RIGID, 5e4);
        DoubleUnaryOperator x = f -> f <= 6000 ? 0.3 : 0.3 + (f - 6000) / 1e5;
        double p = force(190, 1.5, x, f -> {
            double over = x.applyAsDouble(f) - 0.3;
            return 6000 * (0.3 + over) + 5e4 * over * over;
        });
        ArrestResult a = solve(fall(1.5, worker("A", 95, curve), worker("B", 95, curve)));
        compare(a, p, x.applyAsDouble(p));
        assertThat(a.bottomedOut()).isTrue();
        assertThat(a.arrestForce()).isCloseTo(p / 2, within(1e-5));
    }

    /** Workers of other masses, curves and free falls: a bound, for each of them not below that of himself alone. */
    @Test
    void unlikeTogetherAreABound() {
        LoadingCurve one = LoadingCurve.through(List.of(new Corner(0, 4000), new Corner(2, 4000)), RIGID, 1e5);
        LoadingCurve two = LoadingCurve.through(List.of(new Corner(0, 2500), new Corner(0.3, 2500)), RIGID, 5e4);
        Worker low = Worker.builder("low")
                .mass(120)
                .walkingLevel(6.5)
                .connection(Connection.givenCurve(1.0, one))
                .build();
        Worker high = Worker.builder("high")
                .mass(60)
                .walkingLevel(7.5)
                .connection(Connection.givenCurve(1.0, two))
                .build();
        Place place = Place.of(1, 6);
        EnergyBalance balance = EnergyBalance.withDefaults();
        ArrestResult pair = balance.solve(
                line(), Fall.builder("pair").at(place).faller(low).faller(high).build());
        List<Worker> workers = List.of(low, high);
        assertThat(pair.isBound()).isTrue();
        // Line 8 m: the lower harness at 8 m falls 1 m, the higher at 9 m falls 2 m.
        assertThat(pair.freeFall()).isCloseTo(2, within(1e-12));
        assertThat(pair.energy().residual()).isLessThanOrEqualTo(0);
        for (int i = 0; i < workers.size(); i++) {
            Worker w = workers.get(i);
            ArrestResult alone = balance.solve(
                    line(), Fall.builder("alone").at(place).faller(w).build());
            assertThat(pair.deployments().get(i)).as(w.id()).isGreaterThanOrEqualTo(alone.deployment());
            assertThat(pair.arrestForce()).as(w.id()).isGreaterThanOrEqualTo(alone.arrestForce());
            assertThat(pair.lineLoad()).as(w.id()).isGreaterThan(alone.lineLoad());
        }
    }

    @Test
    void aSlackLineThatFirstStraightens() {
        // Hardly any weight, 2 % slack: the descent counts from the inextensible catenary, whose depth depends on the
        // length alone, down to the two straight legs.
        double length = RUN * 1.02;
        Lifeline slack = Lifeline.builder()
                .cable(Cable.builder()
                        .weightPerLength(1e-5)
                        .axialStiffness(STIFFNESS)
                        .build())
                .endAnchor("a", Point.of(0, 0, 8))
                .endAnchor("b", Point.of(RUN, 0, 8))
                .installed(Installed.unstretchedLength(length))
                .build();
        // sinh(u)/u = 1.02, depth = (L/2u)(cosh u − 1).
        double u = StraightLegs.solve(v -> Math.sinh(v) / v - 1.02, 1e-3, 2);
        double depth = RUN / (2 * u) * (Math.cosh(u) - 1);
        StraightLegs legs = new StraightLegs(RUN, 0, length, STIFFNESS);
        StraightLegs.Shape s = legs.running(5000);
        double descent = s.drop() - depth;
        double x = (100 * G * (1.0 + descent) - s.energy()) / (5000 - 100 * G);
        assertThat(x).isBetween(0.05, 1.95);
        LoadingCurve curve = LoadingCurve.through(List.of(new Corner(0, 5000), new Corner(2, 5000)), RIGID, 1e5);
        ArrestResult a = EnergyBalance.withDefaults().solve(slack, fall(1.0, worker("A", 100, curve)));
        assertThat(a.before().span(1).sag()).isCloseTo(depth, within(1e-6));
        assertThat(a.lineDescent()).isCloseTo(descent, within(1e-6));
        assertThat(a.deployment()).isCloseTo(x, within(1e-6));
        assertThat(a.maximumTension()).isCloseTo(s.firstTension(), within(1e-6 * s.firstTension()));
        Arrests.closes("slack", a);
    }

    @Test
    void oneHangsAlready() {
        // Two equal spans over a free post: one worker hangs in the middle of the second, one falls in the middle of
        // the
        // first. One tension T everywhere; in each span two legs of half its length, sin β = P/2T.
        Lifeline two = Lifeline.builder()
                .cable(Cable.builder()
                        .weightPerLength(0)
                        .axialStiffness(STIFFNESS)
                        .build())
                .endAnchor("a", Point.of(0, 0, 8))
                .intermediateAnchor("post", Point.of(RUN, 0, 8), Passage.free())
                .endAnchor("b", Point.of(2 * RUN, 0, 8))
                .pretension(PRETENSION)
                .build();
        double hangs = 80 * G;
        double[] before = tensionAndDrops(0, hangs);
        double[] peak = tensionAndDrops(5000, hangs);
        double descent = peak[1];
        double stored = (peak[0] * peak[0] - before[0] * before[0]) * 2 * LENGTH / (2 * STIFFNESS);
        double lifted = hangs * (before[2] - peak[2]);
        double x = (100 * G * (1.8 + descent) - stored - lifted) / (5000 - 100 * G);
        assertThat(x).isBetween(0.05, 1.95);
        assertThat(lifted).isPositive();
        LoadingCurve curve = LoadingCurve.through(List.of(new Corner(0, 5000), new Corner(2, 5000)), RIGID, 1e5);
        Fall f = Fall.builder("f")
                .at(Place.of(1, RUN / 2))
                .faller(worker("A", 100, curve))
                .hanging(worker("B", 80, curve), Place.of(2, RUN / 2))
                .freeFall(1.8)
                .build();
        ArrestResult a = EnergyBalance.withDefaults().solve(two, f);
        assertThat(a.before().firstTension()).isCloseTo(before[0], within(1e-9 * before[0]));
        assertThat(a.maximumTension()).isCloseTo(peak[0], within(1e-9 * peak[0]));
        assertThat(a.lineDescent()).isCloseTo(descent, within(1e-9));
        assertThat(a.deployment()).isCloseTo(x, within(1e-9 * x));
        assertThat(a.energy().hanging()).isCloseTo(lifted, within(1e-8 * lifted));
        assertThat(a.slip(1)).isPositive();
        assertThat(a.before().loads()).hasSize(1);
        assertThat(a.peak().loads()).hasSize(2);
        Arrests.closes("hanging", a);
        Arrests.balances("hanging", a.peak());
    }

    /** Common tension, and the drops in the two spans. */
    private static double[] tensionAndDrops(double first, double second) {
        double t = StraightLegs.solve(
                x -> 2 * LENGTH * (1 + x / STIFFNESS) - legs(first, x) - legs(second, x),
                Math.max(PRETENSION, 0.5001 * Math.max(first, second)),
                1e6);
        return new double[] {t, drop(first, t), drop(second, t)};
    }

    private static double legs(double force, double tension) {
        double sin = force / (2 * tension);
        return RUN / Math.sqrt(1 - sin * sin);
    }

    private static double drop(double force, double tension) {
        double sin = force / (2 * tension);
        return RUN / 2 * sin / Math.sqrt(1 - sin * sin);
    }

    @Test
    void theSideOfTheForceRange() {
        Worker w = Worker.builder("A")
                .mass(100)
                .walkingLevel(6.5)
                .connection(Connection.lanyard(
                        1.5,
                        Connection.PersonalAbsorber.builder()
                                .clearanceForce(3500)
                                .maximumForce(5000)
                                .maximumExtension(3)
                                .build()))
                .build();
        EnergyBalance analysis = EnergyBalance.withDefaults();
        ArrestResult high = analysis.solve(line(), fall(1.5, w));
        ArrestResult low = analysis.withSide(DeploymentForce.CLEARANCE).solve(line(), fall(1.5, w));
        assertThat(high.side()).isEqualTo(DeploymentForce.MAXIMUM);
        assertThat(low.side()).isEqualTo(DeploymentForce.CLEARANCE);
        assertThat(high.lineLoad()).isEqualTo(5000);
        assertThat(low.lineLoad()).isEqualTo(3500);
        assertThat(low.totalFallDistance()).isGreaterThan(high.totalFallDistance());
    }

    @Test
    void notArrestedByAnAbsorberThatIsTooWeak() {
        // 600 N for ever under 981 N of weight: it runs to its stop.
        LoadingCurve weak = LoadingCurve.through(List.of(new Corner(0, 600), new Corner(1, 600)), RIGID, 1e5);
        DoubleUnaryOperator x = f -> 1 + (f - 600) / 1e5;
        double p = force(100, 0.5, x, f -> 600 + (f - 600) * (f + 600) / 2e5);
        ArrestResult a = solve(fall(0.5, worker("A", 100, weak)));
        compare(a, p, x.applyAsDouble(p));
        assertThat(a.bottomedOut()).isTrue();
    }
}
