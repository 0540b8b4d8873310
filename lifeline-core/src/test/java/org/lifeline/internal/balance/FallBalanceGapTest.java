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
import org.lifeline.model.absorber.LoadingCurve;
import org.lifeline.model.absorber.LoadingCurve.Corner;
import org.lifeline.model.cable.Cable;

/** The energy that is left on the way down a span: its derivative, and what force and extension have to do with each other. */
class FallBalanceGapTest {
    private static final double RIGID = Double.POSITIVE_INFINITY;
    private static final double WEIGHT = 1000;
    private static final int CASES = Integer.getInteger("lifeline.cases", 40);

    private static LineModel line() {
        return new LineModel(Lifeline.builder()
                .cable(Cable.builder().massPerLength(0.4).axialStiffness(4e6).build())
                .endAnchor("a", Point.of(0, 0, 8))
                .endAnchor("b", Point.of(12, 0, 8))
                .pretension(1000)
                .build());
    }

    private static LoadPath onSpan() {
        LineModel model = line();
        return new LoadPath(
                model, model.hook(0, 5, true), model.pointAtStation(0, 5).z(), 1000);
    }

    private static LoadPath at(double force) {
        LoadPath path = onSpan();
        path.advance(force, p -> 1, 0);
        return path;
    }

    /** Rigid up to 2 kN, two slopes, a plateau at 5 kN between them, and a stop. */
    private static final LoadingCurve CURVE = LoadingCurve.through(
            List.of(new Corner(0, 2000), new Corner(0.1, 5000), new Corner(0.4, 5000), new Corner(0.45, 8000)),
            RIGID,
            2e5);

    /** Of what is left at a force, by differences along the path; nothing extends below the 2 kN. */
    @Test
    void itsDerivativeIsThatOfDifferencesAlongThePath() {
        for (double others : new double[] {0, 1500}) {
            for (double own : new double[] {500, 1500, 2500, 4000, 6000, 7500, 9000}) {
                FallBalance balance = new FallBalance(WEIGHT, CURVE, 1.3);
                balance.pulledBy(onSpan(), others);
                boolean far = own > 5000;
                FallBalance.Remaining left = balance.new Remaining(far, far ? 5000 : 4999);
                double force = others + own;
                double d = 1;
                LoadPath below = at(force - d);
                LoadPath above = at(force + d);
                double rate = (above.descent() - below.descent()) / (2 * d);
                double slope = (left.at(above) - left.at(below)) / (2 * d);
                assertThat(left.slope(force, rate))
                        .as("own force %s N beside %s N", own, others)
                        .isCloseTo(slope, within(1e-5 * Math.abs(slope)));
            }
        }
    }

    /** At the corners themselves it is that of one side or the other, and never infinite. */
    @Test
    void itsDerivativeIsANumberAtTheCornersToo() {
        FallBalance balance = new FallBalance(WEIGHT, CURVE, 1.3);
        double rate = 1e-5;
        for (boolean far : new boolean[] {false, true}) {
            for (double corner : new double[] {2000, 5000, 8000}) {
                double slope = balance.new Remaining(far, corner).slope(corner, rate);
                double rigid = (WEIGHT - corner) * rate;
                assertThat(slope).as("corner at %s N", corner).isBetween(rigid * 10, rigid);
            }
        }
        // Where the connection only begins to give there is no extension yet.
        assertThat(balance.new Remaining(false, 2000).slope(2000, rate)).isEqualTo((WEIGHT - 2000) * rate);
    }

    /** The two results are a point of the curve wherever it rises. */
    @Test
    void forceAndExtensionAreAPointOfTheCurve() {
        for (long seed = 1; seed <= CASES; seed++) {
            SplittableRandom r = new SplittableRandom(seed);
            double first = r.nextDouble(0, 3000);
            double second = first + r.nextDouble(500, 4000);
            LoadingCurve curve = LoadingCurve.through(
                    List.of(new Corner(0, first), new Corner(r.nextDouble(0.05, 0.5), second)),
                    RIGID,
                    r.nextDouble(1e4, 1e5));
            LoadPath path = onSpan();
            double x = new FallBalance(WEIGHT, curve, r.nextDouble(0.1, 2)).solve(path);
            assertThat(x).as("seed %d", seed).isPositive();
            assertThat(curve.force(x))
                    .as("seed %d", seed)
                    .isCloseTo(path.peakForce(), within(1.1 * BalanceTolerances.CLOSES * path.peakForce()));
        }
    }

    /** √(2 k G h) is 4e12 N here, and the search ends at 1e12 N; no stop is to blame. */
    @Test
    void aFallThatNoForceArrestsIsRefusedWithoutAWordOfStops() {
        FallBalance balance = new FallBalance(WEIGHT, LoadingCurve.spring(1e9), 1e13);
        LineModel model = line();
        LoadPath path = new LoadPath(model, model.hookAtSupport(0), 8, 1000);
        assertThatThrownBy(() -> balance.solve(path))
                .isInstanceOf(NoEquilibriumException.class)
                .hasMessageContaining("not arrested by any force")
                .hasMessageNotContaining("stop");
    }
}
