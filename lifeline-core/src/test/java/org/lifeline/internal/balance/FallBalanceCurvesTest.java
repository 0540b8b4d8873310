package org.lifeline.internal.balance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.lifeline.base.Point;
import org.lifeline.internal.path.LineModel;
import org.lifeline.internal.path.LoadPath;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Stiffness;
import org.lifeline.model.Support;
import org.lifeline.model.absorber.LoadingCurve;
import org.lifeline.model.absorber.LoadingCurve.Corner;
import org.lifeline.model.cable.Cable;

/**
 * Connections with curves of many pieces on a support that is a vertical spring c, against the balance written out:
 * G (h + F/c + x) = F²/2c + ∫F dx, with F = F(x), by bisection over the extension and the area under the corners.
 */
class FallBalanceCurvesTest {
    private static final double RIGID = Double.POSITIVE_INFINITY;
    private static final int CASES = Integer.getInteger("lifeline.cases", 200);

    /** What the cable adds to the stiffness of its end, as in {@link FallBalanceTest} [-]. */
    private static final double CABLE_SHARE = 1e-5;

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

    /** Corners with a first force from a rigid start on, rising pieces and plateaus, and a stop. */
    private record Written(List<Corner> corners, double stop) {
        LoadingCurve curve() {
            return LoadingCurve.through(corners, RIGID, stop);
        }

        double force(double x) {
            for (int i = 1; i < corners.size(); i++) {
                Corner a = corners.get(i - 1);
                Corner b = corners.get(i);
                if (x <= b.extension()) {
                    return a.force() + (b.force() - a.force()) * (x - a.extension()) / (b.extension() - a.extension());
                }
            }
            Corner last = corners.get(corners.size() - 1);
            return last.force() + stop * (x - last.extension());
        }

        double work(double x) {
            double sum = 0;
            double from = 0;
            for (Corner c : corners) {
                double to = Math.min(x, c.extension());
                if (to > from) {
                    sum += 0.5 * (force(from) + force(to)) * (to - from);
                    from = to;
                }
            }
            return x > from ? sum + 0.5 * (force(from) + force(x)) * (x - from) : sum;
        }

        /** Extension and force at the lowest point. */
        double[] solve(double weight, double fall, double stiffness) {
            double first = corners.get(0).force();
            if (left(weight, fall, stiffness, first, 0) < 0) {
                // The support alone stops the weight: F = G + √(G² + 2 c G h).
                return new double[] {0, weight + Math.sqrt(weight * weight + 2 * stiffness * weight * fall)};
            }
            double low = 0;
            double high = 100;
            for (int i = 0; i < 200; i++) {
                double middle = 0.5 * (low + high);
                boolean left = left(weight, fall, stiffness, force(middle), middle) > 0;
                low = left ? middle : low;
                high = left ? high : middle;
            }
            return new double[] {low, force(low)};
        }

        private double left(double weight, double fall, double stiffness, double force, double x) {
            double descent = Double.isInfinite(stiffness) ? 0 : force / stiffness;
            return weight * (fall + descent + x) - 0.5 * force * descent - work(x);
        }
    }

    private static Written random(SplittableRandom r, double first) {
        List<Corner> corners = new ArrayList<>(List.of(new Corner(0, first)));
        double x = 0;
        double force = first;
        for (int i = r.nextInt(1, 5); i > 0; i--) {
            x += r.nextDouble(0.05, 0.5);
            force += r.nextBoolean() ? 0 : r.nextDouble(200, 2000);
            corners.add(new Corner(x, force));
        }
        return new Written(corners, Math.exp(r.nextDouble(Math.log(2e4), Math.log(1e6))));
    }

    private static void compare(long seed, Written w, double weight, double fall, double support) {
        double[] want = w.solve(weight, fall, support);
        LoadPath path = onSupport(support);
        double x = new FallBalance(weight, w.curve(), fall).solve(path);
        double share = Double.isInfinite(support) ? 1e-9 : 2 * CABLE_SHARE;
        // On a plateau an error of the energy is one of the extension over the spare force, which is at least a third.
        assertThat(x).as("extension, seed %d, %s", seed, w).isCloseTo(want[0], within(share * (3 * want[0] + fall)));
        assertThat(path.peakForce()).as("force, seed %d, %s", seed, w).isCloseTo(want[1], within(share * want[1] * 3));
    }

    @Test
    void curvesOfManyPiecesOnARigidSupport() {
        for (long seed = 1; seed <= CASES; seed++) {
            SplittableRandom r = new SplittableRandom(seed);
            double weight = r.nextDouble(500, 1500);
            compare(seed, random(r, weight * r.nextDouble(1.5, 4)), weight, r.nextDouble(0.05, 3), RIGID);
        }
    }

    @Test
    void curvesOfManyPiecesOnASupportThatYields() {
        for (long seed = 1; seed <= CASES; seed++) {
            SplittableRandom r = new SplittableRandom(seed);
            double weight = r.nextDouble(500, 1500);
            double support = Math.exp(r.nextDouble(Math.log(2e4), Math.log(1e6)));
            compare(seed, random(r, weight * r.nextDouble(1.5, 4)), weight, r.nextDouble(0.05, 3), support);
        }
    }

    /** Tear-out below the weight: the weight goes on falling through it, whatever energy is left. */
    @Test
    void aPlateauBelowTheWeightIsPassedAndAccelerates() {
        for (double fall : new double[] {0, 0.2, 1}) {
            for (double low : new double[] {300, 999, 1000}) {
                Written w = new Written(List.of(new Corner(0, low), new Corner(0.4, low), new Corner(0.5, 4000)), 3e4);
                compare(0, w, 1000, fall, RIGID);
                // On a support that yields the tear-out begins where the support carries that much.
                compare(0, w, 1000, fall, 2e5);
            }
        }
    }

    /** A fall so short that the support stops it below the force at which a rigid connection begins to give. */
    @Test
    void belowItsActivationARigidConnectionDoesNotGive() {
        Written w = new Written(List.of(new Corner(0, 4000), new Corner(1, 4000)), 5e4);
        double support = 2e4;
        for (double fall : new double[] {0, 0.01, 0.05}) {
            LoadPath path = onSupport(support);
            double force = 1000 + Math.sqrt(1e6 + 2 * support * 1000 * fall);
            assertThat(new FallBalance(1000, w.curve(), fall).solve(path)).isZero();
            assertThat(path.peakForce())
                    .isCloseTo(force, within(force * CABLE_SHARE))
                    .isLessThan(4000);
        }
        // 1000 (0.2 + 0.2) J = 400 J are what the support takes up to 4 kN: from a fall of 0.2 m on it gives.
        assertThat(new FallBalance(1000, w.curve(), 0.2005).solve(onSupport(support)))
                .isPositive()
                .isLessThan(1e-3);
        assertThat(new FallBalance(1000, w.curve(), 0.1995).solve(onSupport(support)))
                .isZero();
    }

    /**
     * A piece that rises by 1e-8 to 3 N over a metre: its force says hardly where on it the fall ends, the energy does, by
     * the square k x²/2 + (F − G) x = G h.
     */
    @Test
    void onAPieceThatHardlyRisesTheEnergyTellsTheExtension() {
        for (double rate : new double[] {1e-8, 1e-6, 1e-4, 1e-2, 1, 3}) {
            for (double fall = 0.3; fall < 2.1; fall += 0.2) {
                LoadingCurve curve =
                        LoadingCurve.through(List.of(new Corner(0, 4000), new Corner(1, 4000 + rate)), RIGID, 5e4);
                double root = Math.sqrt(3000.0 * 3000 + 2 * rate * 1000 * fall);
                double want = 2 * 1000 * fall / (3000 + root);
                double x = new FallBalance(1000, curve, fall).solve(onSupport(RIGID));
                assertThat(x).as("rate %s N/m, fall %s m", rate, fall).isCloseTo(want, within(2e-9));
                // Others on a support that does not yield change nothing, but for the rounding of the sum of forces.
                FallBalance beside = new FallBalance(1000, curve, fall);
                LoadPath path = onSupport(RIGID);
                beside.pulledBy(path, 12345.678);
                assertThat(beside.solve(path))
                        .as("beside others, rate %s N/m, fall %s m", rate, fall)
                        .isCloseTo(want, within(2e-9));
            }
        }
    }

    /** On a span as well: a rise that nobody measures changes the extension by as little. */
    @Test
    void aPieceThatHardlyRisesIsAPlateau() {
        Lifeline line = Lifeline.builder()
                .cable(Cable.builder().massPerLength(0.4).axialStiffness(4e6).build())
                .endAnchor("a", Point.of(0, 0, 8))
                .endAnchor("b", Point.of(12, 0, 8))
                .pretension(1000)
                .build();
        double[] want = null;
        for (double rate : new double[] {0, 1e-8, 1e-6, 1e-4, 1e-2}) {
            LineModel model = new LineModel(line);
            LoadPath path = new LoadPath(
                    model, model.hook(0, 5, true), model.pointAtStation(0, 5).z(), 1000);
            LoadingCurve curve =
                    LoadingCurve.through(List.of(new Corner(0, 4000), new Corner(1, 4000 + rate)), RIGID, 5e4);
            double x = new FallBalance(1000, curve, 1.1).solve(path);
            double[] have = {x, path.peakForce(), path.descent()};
            want = want == null ? have : want;
            assertThat(x).isBetween(0.3, 0.6);
            // The work of the rise, rate x²/2, over the spare force of 3 kN, and the line gives less than 0.1 mm/N.
            assertThat(x).as("rate %s", rate).isCloseTo(want[0], within(rate * x * (x / 6000 + 1e-4) + 2e-8));
            assertThat(path.peakForce()).as("rate %s", rate).isCloseTo(4000 + rate * x, within(1e-5));
            assertThat(path.descent()).as("rate %s", rate).isCloseTo(want[2], within(rate * x * 1e-4 + 1e-7));
        }
    }

    /** The same under the force of others, which draws the support down by Q/c before. */
    @Test
    void othersLengthenTheFallOfAnAbsorberToo() {
        double support = 1e5;
        for (long seed = 1; seed <= Math.min(CASES, 40); seed++) {
            SplittableRandom r = new SplittableRandom(seed);
            double weight = r.nextDouble(500, 1500);
            Written w = random(r, weight * r.nextDouble(1.5, 4));
            double fall = r.nextDouble(0.05, 2);
            double others = r.nextDouble(500, 6000);
            double[] want = w.solve(weight, fall + others / support, support);
            LoadPath path = onSupport(support);
            FallBalance balance = new FallBalance(weight, w.curve(), fall);
            balance.pulledBy(path, others);
            double x = balance.solve(path);
            double share = 4 * CABLE_SHARE;
            assertThat(x).as("seed %d, %s", seed, w).isCloseTo(want[0], within(share * (3 * want[0] + fall)));
            assertThat(path.peakForce() - others)
                    .as("seed %d, %s", seed, w)
                    .isCloseTo(want[1], within(3 * share * (want[1] + others)));
        }
    }
}
