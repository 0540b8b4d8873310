package org.lifeline.internal.balance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.lifeline.base.NoEquilibriumException;
import org.lifeline.base.Point;
import org.lifeline.internal.path.LineModel;
import org.lifeline.internal.path.LoadPath;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Stiffness;
import org.lifeline.model.Support;
import org.lifeline.model.absorber.LoadingCurve;
import org.lifeline.model.cable.Cable;

/**
 * The balance of a fall whose connection hangs on a support: what is left of the line is one vertical spring, so the
 * textbooks' closed forms for a weight that falls on a spring hold.
 */
class FallBalanceTest {
    private static final double RIGID = Double.POSITIVE_INFINITY;
    private static final int CASES = Integer.getInteger("lifeline.cases", 200);

    /**
     * What the cable adds to the vertical stiffness of its end: T/L = 0.1 N/m, and EA δ²/2L³ of stretch, at most as much,
     * beside supports of 20 kN/m and more [-].
     */
    private static final double CABLE_SHARE = 1e-5;

    /** A path whose load pulls on a support of a vertical stiffness [N/m]. */
    private static LoadPath onSupport(double stiffness) {
        Lifeline line = Lifeline.builder()
                .cable(Cable.builder().massPerLength(0.001).axialStiffness(1e4).build())
                .support(Support.end("a", Point.of(0, 0, 8))
                        .withStiffness(Stiffness.rigid().withZ(stiffness)))
                .endAnchor("b", Point.of(100, 0, 8))
                .pretension(10)
                .build();
        LineModel model = new LineModel(line);
        LineModel.Load load = model.hookAtSupport(0);
        return new LoadPath(model, load, model.support(0).z(), 1000);
    }

    /** Two springs one behind the other: 1/k = 1/a + 1/b. */
    private static double inSeries(double a, double b) {
        return Double.isInfinite(a) ? b : a * b / (a + b);
    }

    /**
     * F = G + √(G² + 2 k G h), the impact of a weight on a spring: S. P. Timoshenko, Strength of Materials, part I, on
     * stresses produced by a falling weight (recalled).
     */
    private static double impact(double weight, double stiffness, double fall) {
        return weight + Math.sqrt(weight * weight + 2 * stiffness * weight * fall);
    }

    @Test
    void onARigidSupportASpringTakesTheForceOfTheTextbook() {
        for (long seed = 1; seed <= CASES; seed++) {
            SplittableRandom r = new SplittableRandom(seed);
            double weight = r.nextDouble(500, 1500);
            double stiffness = Math.exp(r.nextDouble(Math.log(2e3), Math.log(1e6)));
            double fall = r.nextDouble(0, 4);
            LoadPath path = onSupport(RIGID);
            double x = new FallBalance(weight, LoadingCurve.spring(stiffness), fall).solve(path);
            double force = impact(weight, stiffness, fall);
            assertThat(path.peakForce()).as("seed %d", seed).isCloseTo(force, within(1e-9 * force));
            assertThat(x).as("seed %d", seed).isCloseTo(force / stiffness, within(1e-9 * force / stiffness));
        }
    }

    @Test
    void aWeightThatIsLetGoWithoutAFallPullsTwiceItsWeight() {
        for (double stiffness : new double[] {2e4, 1e5, 1e7}) {
            LoadPath path = onSupport(stiffness);
            new FallBalance(1000, LoadingCurve.spring(stiffness), 0).solve(path);
            assertThat(path.peakForce()).as("stiffness %s", stiffness).isCloseTo(2000, within(2000 * CABLE_SHARE));
        }
    }

    @Test
    void aSupportThatYieldsIsASpringBehindTheConnection() {
        for (long seed = 1; seed <= CASES; seed++) {
            SplittableRandom r = new SplittableRandom(seed);
            double weight = r.nextDouble(500, 1500);
            double support = Math.exp(r.nextDouble(Math.log(2e4), Math.log(1e6)));
            double lanyard = Math.exp(r.nextDouble(Math.log(5e3), Math.log(1e6)));
            double fall = r.nextDouble(0.1, 3);
            LoadPath path = onSupport(support);
            double x = new FallBalance(weight, LoadingCurve.spring(lanyard), fall).solve(path);
            double force = impact(weight, inSeries(support, lanyard), fall);
            assertThat(path.peakForce()).as("seed %d", seed).isCloseTo(force, within(CABLE_SHARE * force));
            assertThat(x).as("seed %d", seed).isCloseTo(force / lanyard, within(CABLE_SHARE * force / lanyard));
            assertThat(path.descent())
                    .as("seed %d", seed)
                    .isCloseTo(force / support, within(CABLE_SHARE * force / support));
        }
    }

    /** On a plateau the force is known and the extension follows: G (h + x) = F x. */
    @Test
    void aPlateauOnARigidSupportExtendsByTheEnergyOverTheSpareForce() {
        for (long seed = 1; seed <= CASES; seed++) {
            SplittableRandom r = new SplittableRandom(seed);
            double weight = r.nextDouble(500, 1500);
            double force = r.nextDouble(3000, 6000);
            double fall = r.nextDouble(0.1, 1.5);
            LoadingCurve curve = LoadingCurve.through(
                    List.of(new LoadingCurve.Corner(0, force), new LoadingCurve.Corner(20, force)), RIGID, 1e6);
            LoadPath path = onSupport(RIGID);
            double x = new FallBalance(weight, curve, fall).solve(path);
            assertThat(x).as("seed %d", seed).isCloseTo(weight * fall / (force - weight), within(1e-9 * (fall + 1)));
            assertThat(path.peakForce()).as("seed %d", seed).isCloseTo(force, within(1e-6));
        }
    }

    /** Past the plateau of length p the stop is a spring k: G (h + p + y) = F p + F y + k y²/2. */
    @Test
    void anAbsorberThatBottomsOutEndsOnTheSpringOfItsStop() {
        double force = 4000;
        double weight = 1000;
        double plateau = 0.5;
        double stop = 5e4;
        LoadingCurve curve = LoadingCurve.through(
                List.of(new LoadingCurve.Corner(0, force), new LoadingCurve.Corner(plateau, force)), RIGID, stop);
        double spare = force - weight;
        for (double fall : new double[] {1.6, 2, 4}) {
            double surplus = weight * fall - spare * plateau;
            double beyond = (-spare + Math.sqrt(spare * spare + 2 * stop * surplus)) / stop;
            LoadPath path = onSupport(RIGID);
            double x = new FallBalance(weight, curve, fall).solve(path);
            assertThat(x).as("fall %s", fall).isCloseTo(plateau + beyond, within(1e-9));
            assertThat(path.peakForce()).as("fall %s", fall).isCloseTo(force + stop * beyond, within(1e-4));
        }
    }

    @Test
    void aFallThatIsJustTakenUpByThePlateauIsContinuousWithOneThatIsNot() {
        LoadingCurve curve = LoadingCurve.through(
                List.of(new LoadingCurve.Corner(0, 4000), new LoadingCurve.Corner(0.5, 4000)), RIGID, 5e4);
        double just = 1.5; // 3000 N spare over half a metre, by a weight of 1000 N
        double before = new FallBalance(1000, curve, just - 1e-9).solve(onSupport(RIGID));
        double behind = new FallBalance(1000, curve, just + 1e-9).solve(onSupport(RIGID));
        assertThat(before).isCloseTo(0.5, within(1e-8)).isLessThanOrEqualTo(behind);
        assertThat(behind).isCloseTo(0.5, within(1e-8));
    }

    @Test
    void forceAndExtensionGrowWithTheFallAndTheWeight() {
        double lastForce = 0;
        double lastExtension = 0;
        for (double fall = 0; fall <= 3; fall += 0.25) {
            LoadPath path = onSupport(2e5);
            double x = new FallBalance(900, LoadingCurve.spring(3e4), fall).solve(path);
            assertThat(path.peakForce()).as("fall %s", fall).isGreaterThan(lastForce);
            assertThat(x).as("fall %s", fall).isGreaterThan(lastExtension);
            lastForce = path.peakForce();
            lastExtension = x;
        }
        lastForce = 0;
        for (double weight = 500; weight <= 2000; weight += 250) {
            LoadPath path = onSupport(2e5);
            new FallBalance(weight, LoadingCurve.spring(3e4), 1).solve(path);
            assertThat(path.peakForce()).as("weight %s", weight).isGreaterThan(lastForce);
            lastForce = path.peakForce();
        }
    }

    /** Energy in other units of length and force: all forces times a factor, all lengths times another. */
    @Test
    void theBalanceScalesWithTheUnits() {
        double x = new FallBalance(900, LoadingCurve.spring(3e4), 1.2).solve(onSupport(2e5));
        LoadPath path = onSupport(2e5 * 3 / 2);
        double scaled = new FallBalance(900 * 3, LoadingCurve.spring(3e4 * 3 / 2), 1.2 * 2).solve(path);
        assertThat(scaled).isCloseTo(2 * x, within(2 * x * CABLE_SHARE));
    }

    @Test
    void aForceOfOthersOnARigidSupportChangesNothingForTheOneWhoFalls() {
        LoadPath alone = onSupport(RIGID);
        LoadPath together = onSupport(RIGID);
        FallBalance first = new FallBalance(900, LoadingCurve.spring(3e4), 1.2);
        FallBalance second = new FallBalance(900, LoadingCurve.spring(3e4), 1.2);
        double x = first.solve(alone);
        second.pulledBy(together, 5000);
        assertThat(second.solve(together)).isCloseTo(x, within(1e-9));
        assertThat(together.peakForce() - 5000).isCloseTo(alone.peakForce(), within(1e-5));
    }

    /** Whoever falls when the others have drawn the support down already falls that much farther before the catch. */
    @Test
    void aForceOfOthersOnALinearSupportLengthensTheFallByWhatTheyDrawItDown() {
        double drawn = 5000 / 1e5;
        LoadPath alone = onSupport(1e5);
        LoadPath together = onSupport(1e5);
        double x = new FallBalance(900, LoadingCurve.spring(3e4), 1.2 + drawn).solve(alone);
        FallBalance pulled = new FallBalance(900, LoadingCurve.spring(3e4), 1.2);
        pulled.pulledBy(together, 5000);
        assertThat(pulled.solve(together)).isCloseTo(x, within(x * CABLE_SHARE));
        assertThat(together.descent() - alone.descent()).isCloseTo(drawn, within(CABLE_SHARE));
    }

    @Test
    void aRigidConnectionOnARigidSupportIsRefusedWithTheReason() {
        LoadingCurve rigid = LoadingCurve.through(
                List.of(new LoadingCurve.Corner(0, 4000), new LoadingCurve.Corner(0.1, 4000)), RIGID, RIGID);
        FallBalance balance = new FallBalance(1000, rigid, 2);
        LoadPath path = onSupport(RIGID);
        assertThatThrownBy(() -> balance.solve(path))
                .isInstanceOf(NoEquilibriumException.class)
                .hasMessageContaining("state the stiffness of the stop");
    }
}
