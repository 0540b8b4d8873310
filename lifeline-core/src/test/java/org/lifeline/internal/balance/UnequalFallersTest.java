package org.lifeline.internal.balance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.Supplier;
import org.junit.jupiter.api.Test;
import org.lifeline.base.NoEquilibriumException;
import org.lifeline.base.Point;
import org.lifeline.internal.path.LineModel;
import org.lifeline.internal.path.LoadPath;
import org.lifeline.model.Lifeline;
import org.lifeline.model.absorber.LoadingCurve;
import org.lifeline.model.cable.Cable;

/** Bounds of those who fall together, on a rigid support, where nobody feels the others, and on a span, where they do. */
class UnequalFallersTest {
    private static final int CASES = Integer.getInteger("lifeline.cases", 20);

    private static final double STIFFNESS = 4e6;

    private static Lifeline line(double stiffness) {
        return Lifeline.builder()
                .cable(Cable.builder()
                        .massPerLength(0.4)
                        .axialStiffness(stiffness)
                        .build())
                .endAnchor("a", Point.of(0, 0, 8))
                .endAnchor("b", Point.of(12, 0, 8))
                .pretension(1000)
                .build();
    }

    private static LoadPath onSupport() {
        LineModel model = new LineModel(line(STIFFNESS));
        LineModel.Load load = model.hookAtSupport(0);
        return new LoadPath(model, load, 8, 1000);
    }

    private static LoadPath onSpan() {
        return onSpan(STIFFNESS);
    }

    private static LoadPath onSpan(double stiffness) {
        LineModel model = new LineModel(line(stiffness));
        LineModel.Load load = model.hook(0, 6, true);
        return new LoadPath(model, load, model.pointAtStation(0, 6).z(), 1000);
    }

    private static UnequalFallers.Faller faller(double weight, double stiffness, double fall) {
        return new UnequalFallers.Faller(weight, LoadingCurve.spring(stiffness), fall);
    }

    private static List<UnequalFallers.Bound> solve(Supplier<LoadPath> start, UnequalFallers.Faller... fallers) {
        return new UnequalFallers(List.of(fallers), start).solve();
    }

    @Test
    void onARigidSupportEachTakesTheImpactOfTheTextbookAlone() {
        for (long seed = 1; seed <= CASES; seed++) {
            SplittableRandom r = new SplittableRandom(seed);
            List<UnequalFallers.Faller> fallers = new ArrayList<>();
            for (int i = 0; i < 3; i++) {
                fallers.add(faller(r.nextDouble(600, 1400), r.nextDouble(1e4, 1e5), r.nextDouble(0.1, 2)));
            }
            List<UnequalFallers.Bound> bounds = new UnequalFallers(fallers, UnequalFallersTest::onSupport).solve();
            for (int i = 0; i < 3; i++) {
                double g = fallers.get(i).weight();
                double k = fallers.get(i).curve().slope(0.01);
                // S. P. Timoshenko, Strength of Materials, part I, stresses produced by a falling weight (recalled).
                double force = g + Math.sqrt(g * g + 2 * k * g * fallers.get(i).freeFall());
                assertThat(bounds.get(i).force()).as("seed %d", seed).isCloseTo(force, within(1e-8 * force));
                assertThat(bounds.get(i).extension())
                        .as("seed %d", seed)
                        .isCloseTo(force / k, within(1e-8 * force / k));
            }
        }
    }

    @Test
    void oneAloneIsTheBalanceOfOne() {
        LoadPath path = onSpan();
        double x = new FallBalance(900, LoadingCurve.spring(4e4), 1.5).solve(path);
        UnequalFallers.Bound bound =
                solve(UnequalFallersTest::onSpan, faller(900, 4e4, 1.5)).get(0);
        assertThat(bound.force()).isCloseTo(path.peakForce(), within(1e-9 * path.peakForce()));
        assertThat(bound.extension()).isCloseTo(x, within(1e-9));
    }

    @Test
    void theOrderOfTheListDoesNotMatter() {
        for (long seed = 1; seed <= CASES; seed++) {
            SplittableRandom r = new SplittableRandom(seed);
            List<UnequalFallers.Faller> fallers = new ArrayList<>();
            for (int i = 0; i < 3; i++) {
                fallers.add(faller(r.nextDouble(600, 1400), r.nextDouble(1e4, 1e5), r.nextDouble(0.1, 2)));
            }
            List<UnequalFallers.Bound> forth = new UnequalFallers(fallers, UnequalFallersTest::onSpan).solve();
            Collections.reverse(fallers);
            List<UnequalFallers.Bound> back = new UnequalFallers(fallers, UnequalFallersTest::onSpan).solve();
            for (int i = 0; i < 3; i++) {
                double force = forth.get(i).force();
                assertThat(back.get(2 - i).force()).as("seed %d", seed).isCloseTo(force, within(1e-7 * force));
            }
        }
    }

    /** Held down by the other already, the line gives less under each: a stiffer seat, a larger force. */
    @Test
    void nobodyIsBoundedBelowWhatTheyWouldFeelAlone() {
        UnequalFallers.Faller light = faller(700, 3e4, 0.6);
        UnequalFallers.Faller heavy = faller(1300, 6e4, 1.8);
        double lightAlone = solve(UnequalFallersTest::onSpan, light).get(0).force();
        double heavyAlone = solve(UnequalFallersTest::onSpan, heavy).get(0).force();
        List<UnequalFallers.Bound> both = solve(UnequalFallersTest::onSpan, light, heavy);
        assertThat(both.get(0).force()).isGreaterThan(lightAlone);
        assertThat(both.get(1).force()).isGreaterThan(heavyAlone);
        assertThat(UnequalFallers.total(both))
                .isEqualTo(both.get(0).force() + both.get(1).force());
    }

    @Test
    void twoWhoAreAlikeHaveTheSameBound() {
        UnequalFallers.Faller each = faller(950, 3e4, 1);
        List<UnequalFallers.Bound> both = solve(UnequalFallersTest::onSpan, each, each);
        assertThat(both.get(0).force())
                .isCloseTo(both.get(1).force(), within(1e-8 * both.get(1).force()));
        assertThat(both.get(0).extension()).isCloseTo(both.get(1).extension(), within(1e-8));
    }

    @Test
    void theListOfFallersIsCopied() {
        List<UnequalFallers.Faller> list = new ArrayList<>(List.of(faller(900, 4e4, 1)));
        UnequalFallers problem = new UnequalFallers(list, UnequalFallersTest::onSupport);
        list.clear();
        assertThat(problem.solve()).hasSize(1);
    }

    /** On a line with friction no path gives the digits of the one before: here another stiffness takes their place. */
    private static List<UnequalFallers.Bound> onPathsOff(double share) {
        SplittableRandom r = new SplittableRandom(4);
        Supplier<LoadPath> start = () -> onSpan(STIFFNESS * (1 + share * r.nextDouble(-1, 1)));
        return solve(start, faller(900, 4e4, 1.5), faller(1100, 3e4, 1.2), faller(700, 2e4, 0.8));
    }

    @Test
    void forcesThatWanderInTheLastDigitsAreTheLargestOfThem() {
        List<UnequalFallers.Bound> steady = onPathsOff(0);
        List<UnequalFallers.Bound> wandering = onPathsOff(1e-7);
        for (int i = 0; i < 3; i++) {
            double force = steady.get(i).force();
            double extension = steady.get(i).extension();
            assertThat(wandering.get(i).force()).isBetween(force, force * (1 + 2e-7));
            assertThat(wandering.get(i).extension()).isBetween(extension, extension * (1 + 2e-7));
        }
    }

    @Test
    void forcesThatWanderFartherHaveNoBound() {
        assertThatThrownBy(() -> onPathsOff(1e-4))
                .isInstanceOf(NoEquilibriumException.class)
                .hasMessageContaining("the forces of those who fall together find no common bound");
    }
}
