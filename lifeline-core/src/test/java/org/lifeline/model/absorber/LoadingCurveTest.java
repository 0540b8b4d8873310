package org.lifeline.model.absorber;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.lifeline.base.Refusal;
import org.lifeline.model.absorber.LoadingCurve.Corner;

class LoadingCurveTest {
    private static final double RIGID = Double.POSITIVE_INFINITY;

    /** 6 kN plateau over 1.2 m, rise 100 kN/m, stop 200 kN/m. */
    private static final LoadingCurve ABSORBER =
            LoadingCurve.through(List.of(new Corner(0, 6000), new Corner(1.2, 6000)), 1e5, 2e5);

    @Test
    void anAbsorberWithAnElasticRise() {
        assertThat(ABSORBER.corners()).containsExactly(new Corner(0, 0), new Corner(0.06, 6000), new Corner(1.2, 6000));
        assertThat(ABSORBER.pieces()).isEqualTo(3);
        assertThat(ABSORBER.maximumExtension()).isEqualTo(1.2);
        assertThat(ABSORBER.activationForce()).isEqualTo(6000);
        assertThat(ABSORBER.rigidForce()).isZero();
        assertThat(ABSORBER.initialStiffness()).isEqualTo(1e5);
        assertThat(ABSORBER.stopStiffness()).isEqualTo(2e5);
        assertThat(ABSORBER.firstYieldPiece()).isEqualTo(1);
        assertThat(ABSORBER.force(0)).isZero();
        assertThat(ABSORBER.force(-1)).isZero();
        assertThat(ABSORBER.force(0.03)).isCloseTo(3000, within(1e-9));
        assertThat(ABSORBER.force(0.06)).isEqualTo(6000);
        assertThat(ABSORBER.force(0.7)).isEqualTo(6000);
        assertThat(ABSORBER.force(1.2)).isEqualTo(6000);
        assertThat(ABSORBER.force(1.21)).isCloseTo(8000, within(1e-9));
        assertThat(ABSORBER.work(0)).isZero();
        assertThat(ABSORBER.work(-0.5)).isZero();
        assertThat(ABSORBER.work(0.06)).isCloseTo(180, within(1e-12));
        assertThat(ABSORBER.work(1.2)).isCloseTo(180 + 6000 * 1.14, within(1e-10));
        assertThat(ABSORBER.work(1.21)).isCloseTo(180 + 6000 * 1.14 + 70, within(1e-10));
        assertThat(ABSORBER.slope(0)).isCloseTo(1e5, within(1e-9));
        assertThat(ABSORBER.slope(0.06)).isZero();
        assertThat(ABSORBER.slope(1.2)).isEqualTo(2e5);
    }

    @Test
    void nearAndFarEndOfAPlateau() {
        assertThat(ABSORBER.nearExtension(0)).isZero();
        assertThat(ABSORBER.farExtension(0)).isZero();
        assertThat(ABSORBER.nearExtension(3000)).isCloseTo(0.03, within(1e-16));
        assertThat(ABSORBER.farExtension(3000)).isCloseTo(0.03, within(1e-16));
        assertThat(ABSORBER.nearExtension(6000)).isEqualTo(0.06);
        assertThat(ABSORBER.farExtension(6000)).isEqualTo(1.2);
        assertThat(ABSORBER.nearExtension(8000)).isCloseTo(1.21, within(1e-15));
        assertThat(ABSORBER.farExtension(8000)).isCloseTo(1.21, within(1e-15));
    }

    @Test
    void aRigidStart() {
        LoadingCurve c = LoadingCurve.through(List.of(new Corner(0, 4000), new Corner(1, 5000)), RIGID, RIGID);
        assertThat(c.rigidForce()).isEqualTo(4000);
        assertThat(c.activationForce()).isEqualTo(4000);
        assertThat(c.firstYieldPiece()).isZero();
        assertThat(c.initialStiffness()).isInfinite();
        assertThat(c.force(0)).isZero();
        assertThat(c.force(1e-9)).isCloseTo(4000, within(1e-5));
        assertThat(c.force(0.5)).isEqualTo(4500);
        assertThat(c.force(1.0001)).isInfinite();
        assertThat(c.work(1)).isEqualTo(4500);
        assertThat(c.nearExtension(3999)).isZero();
        assertThat(c.farExtension(3999)).isZero();
        assertThat(c.nearExtension(4000)).isZero();
        assertThat(c.farExtension(4000)).isZero();
        assertThat(c.nearExtension(4500)).isEqualTo(0.5);
        assertThat(c.nearExtension(9000)).isEqualTo(1);
        assertThat(c.farExtension(9000)).isEqualTo(1);
        assertThat(c.slope(0.2)).isCloseTo(1000, within(1e-9));
        assertThat(c.slope(1)).isInfinite();
    }

    @Test
    void aCurveFromNoForceOn() {
        LoadingCurve c = LoadingCurve.through(
                List.of(new Corner(0, 0), new Corner(0.05, 5000), new Corner(1.25, 5000)), RIGID, 1e5);
        assertThat(c.activationForce()).isZero();
        assertThat(c.rigidForce()).isZero();
        assertThat(c.firstYieldPiece()).isZero();
        assertThat(c.corners()).hasSize(3);
        assertThat(c.force(0.025)).isCloseTo(2500, within(1e-9));
    }

    @Test
    void aSpring() {
        LoadingCurve c = LoadingCurve.spring(3e4);
        assertThat(c.force(0.1)).isCloseTo(3000, within(1e-9));
        assertThat(c.work(0.1)).isCloseTo(150, within(1e-10));
        assertThat(c.nearExtension(3000)).isCloseTo(0.1, within(1e-16));
        assertThat(c.maximumExtension()).isZero();
        assertThat(c.pieces()).isEqualTo(1);
        assertThat(c.slope(5)).isEqualTo(3e4);
        assertThat(c.pieceStart(0)).isZero();
        assertThat(c.pieceStart(1)).isInfinite();
    }

    @Test
    void theInitialStiffnessMeetsARisingCurve() {
        // 4 kN + 1 kN/m · x against 9 kN/m · x: at 0.5 m, 4.5 kN.
        LoadingCurve c =
                LoadingCurve.through(List.of(new Corner(0, 4000), new Corner(1, 5000), new Corner(2, 9000)), 9000, 1e5);
        assertThat(c.corners())
                .containsExactly(new Corner(0, 0), new Corner(0.5, 4500), new Corner(1, 5000), new Corner(2, 9000));
        assertThat(c.activationForce()).isEqualTo(4500);
        assertThat(c.firstYieldPiece()).isEqualTo(1);
    }

    @Test
    void theInitialStiffnessMeetsALaterPiece() {
        // 4.9 kN/m passes below (1 m, 5 kN) and meets the plateau of 5 kN.
        LoadingCurve c =
                LoadingCurve.through(List.of(new Corner(0, 4000), new Corner(1, 5000), new Corner(2, 5000)), 4900, 1e5);
        assertThat(c.corners()).hasSize(3);
        assertThat(c.corners().get(1).extension()).isCloseTo(5000 / 4900.0, within(1e-15));
        assertThat(c.corners().get(1).force()).isCloseTo(5000, within(1e-9));
        assertThat(c.corners().get(2)).isEqualTo(new Corner(2, 5000));
    }

    @Test
    void theInitialStiffnessMeetsTheLastCorner() {
        LoadingCurve c = LoadingCurve.through(List.of(new Corner(0, 4000), new Corner(1, 4000)), 4000, 1e5);
        assertThat(c.corners()).containsExactly(new Corner(0, 0), new Corner(1, 4000));
        assertThat(c.maximumExtension()).isEqualTo(1);
    }

    @Test
    void anInitialStiffnessTooLow() {
        assertThat(Refusal.of(() -> LoadingCurve.through(List.of(new Corner(0, 4000), new Corner(1, 4000)), 3999, 1e5)))
                .containsExactly("initialStiffness: 3999.0 N/m: is so low that the deployment force is not reached"
                        + " within the maximum extension");
    }

    @Test
    void piecesOfACurve() {
        assertThat(ABSORBER.piece(0)).isZero();
        assertThat(ABSORBER.piece(0.0599)).isZero();
        assertThat(ABSORBER.piece(0.06)).isEqualTo(1);
        assertThat(ABSORBER.piece(1.2)).isEqualTo(2);
        assertThat(ABSORBER.piece(5)).isEqualTo(2);
        assertThat(ABSORBER.pieceStart(1)).isEqualTo(0.06);
        assertThat(ABSORBER.pieceStart(2)).isEqualTo(1.2);
        assertThat(ABSORBER.pieceStart(3)).isInfinite();
        assertThat(ABSORBER.slopeOfPiece(0)).isCloseTo(1e5, within(1e-9));
        assertThat(ABSORBER.slopeOfPiece(1)).isZero();
        assertThat(ABSORBER.slopeOfPiece(2)).isEqualTo(2e5);
        assertThat(ABSORBER.forceOnPiece(0, 0.1)).isCloseTo(10_000, within(1e-9));
        assertThat(ABSORBER.forceOnPiece(1, 9)).isEqualTo(6000);
        assertThat(ABSORBER.forceOnPiece(2, 1.1)).isCloseTo(6000 - 20_000, within(1e-8));
    }

    private static LoadingCurve random(SplittableRandom r) {
        List<Corner> corners = new ArrayList<>();
        double x = 0;
        double f = r.nextInt(3) == 0 ? 0 : r.nextDouble(500, 5000);
        corners.add(new Corner(0, f));
        for (int i = r.nextInt(0, 5); i > 0; i--) {
            x += r.nextDouble(0.01, 0.6);
            f += r.nextInt(3) == 0 ? 0 : r.nextDouble(0, 4000);
            corners.add(new Corner(x, f));
        }
        boolean elastic = r.nextBoolean() && corners.size() > 1;
        double steep = elastic ? 20 * (f + 1) / 0.01 : RIGID;
        double stop = f > 0 && r.nextInt(4) == 0 ? RIGID : Math.exp(r.nextDouble(9, 13));
        return LoadingCurve.through(corners, steep, stop);
    }

    @Test
    void forceExtensionAndWorkBelongTogether() {
        for (long seed = 1; seed <= 500; seed++) {
            SplittableRandom r = new SplittableRandom(seed);
            LoadingCurve c = random(r);
            double most = c.maximumExtension() + (Double.isInfinite(c.stopStiffness()) ? 0 : 0.3);
            double before = 0;
            double previous = 0;
            double sum = 0;
            int n = 2000;
            for (int i = 1; i <= n && most > 0; i++) {
                double x = i == n ? most : most * i / n;
                double f = c.force(x);
                assertThat(f).as("seed " + seed).isGreaterThanOrEqualTo(before - 1e-9);
                assertThat(c.nearExtension(f)).as("seed " + seed).isLessThanOrEqualTo(x + 1e-9);
                assertThat(c.farExtension(f)).as("seed " + seed).isGreaterThanOrEqualTo(x - 1e-9);
                assertThat(c.forceOnPiece(c.piece(x), x)).as("seed " + seed).isCloseTo(f, within(1e-8 * (1 + f)));
                double middle = 0.5 * (x + previous);
                sum += c.force(middle) * (x - previous);
                before = f;
                previous = x;
            }
            double scale = c.force(most) * most + 1;
            assertThat(c.work(most)).as("seed " + seed).isCloseTo(sum, within(2e-3 * scale));
            double h = 1e-6;
            double x = most * r.nextDouble(0.01, 0.99);
            if (most > 0 && c.piece(x - h) == c.piece(x + h)) {
                assertThat((c.work(x + h) - c.work(x - h)) / (2 * h))
                        .as("seed " + seed)
                        .isCloseTo(c.force(x), within(1e-6 * scale));
                assertThat((c.force(x + h) - c.force(x - h)) / (2 * h))
                        .as("seed " + seed)
                        .isCloseTo(c.slope(x), within(1e-5 * (c.slope(x) + 1)));
            }
        }
    }

    @Test
    void curvesSideBySideAddTheirForces() {
        for (long seed = 1; seed <= 500; seed++) {
            SplittableRandom r = new SplittableRandom(seed);
            List<LoadingCurve> curves = new ArrayList<>();
            for (int i = r.nextInt(1, 4); i > 0; i--) {
                curves.add(random(r));
            }
            LoadingCurve sum = LoadingCurve.parallel(curves);
            double end = curves.stream()
                    .filter(c -> Double.isInfinite(c.stopStiffness()))
                    .mapToDouble(LoadingCurve::maximumExtension)
                    .min()
                    .orElse(4);
            for (int i = 1; i < 50; i++) {
                double x = end * i / 50;
                double force = curves.stream().mapToDouble(c -> c.force(x)).sum();
                double work = curves.stream().mapToDouble(c -> c.work(x)).sum();
                assertThat(sum.force(x)).as("seed " + seed + " at " + x).isCloseTo(force, within(1e-10 * force));
                assertThat(sum.work(x)).as("seed " + seed + " at " + x).isCloseTo(work, within(1e-10 * work));
            }
            assertThat(sum.rigidForce())
                    .isCloseTo(
                            curves.stream()
                                    .mapToDouble(LoadingCurve::rigidForce)
                                    .sum(),
                            within(1e-9));
            if (end < 4) {
                assertThat(sum.stopStiffness()).isInfinite();
                assertThat(sum.maximumExtension()).isEqualTo(end);
            } else {
                double stop =
                        curves.stream().mapToDouble(LoadingCurve::stopStiffness).sum();
                assertThat(sum.stopStiffness()).isCloseTo(stop, within(1e-9 * stop));
            }
        }
    }

    @Test
    void oneCurveStaysItself() {
        assertThat(LoadingCurve.parallel(List.of(ABSORBER))).isSameAs(ABSORBER);
    }

    @Test
    void refusals() {
        assertThat(Refusal.of(() -> LoadingCurve.through(List.of(), RIGID, RIGID)))
                .containsExactly("curve: []: must have at least one corner");
        assertThat(Refusal.of(() -> LoadingCurve.through(List.of(new Corner(0.1, 5)), RIGID, RIGID)))
                .containsExactly("curve[0][0]: 0.1 m: must start at extension 0");
        assertThat(Refusal.of(() -> LoadingCurve.through(
                        List.of(new Corner(0, 5), new Corner(0, 4), new Corner(-1, Double.NaN)), 0, -1)))
                .containsExactly(
                        "curve[1][0]: 0.0 m: must be larger than the extension before it",
                        "curve[1][1]: 4.0 N: must not be lower than the force before it",
                        "curve[2][0]: -1.0 m: must be a finite number that is not negative",
                        "curve[2][1]: NaN N: must be a finite number that is not negative",
                        "curve[2][0]: -1.0 m: must be larger than the extension before it",
                        "initialStiffness: 0.0 N/m: must be above zero (leave it out for a rigid start)",
                        "stopStiffness: -1.0 N/m: must be above zero (leave it out for a rigid stop)");
        assertThat(Refusal.paths(() -> LoadingCurve.through(List.of(new Corner(0, 5)), Double.NaN, Double.NaN)))
                .containsExactly("initialStiffness", "stopStiffness");
        assertThat(Refusal.of(() -> LoadingCurve.through(List.of(new Corner(0, 0), new Corner(1, 0)), RIGID, RIGID)))
                .containsExactly("curve: 2 corners: must reach a force above zero");
        assertThat(Refusal.paths(() -> LoadingCurve.spring(0))).containsExactly("stopStiffness");
    }
}
