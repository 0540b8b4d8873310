package org.lifeline.model.cable;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.lifeline.base.Refusal;
import org.lifeline.model.cable.LoadElongation.Corner;

class LoadElongationTest {
    private static final LoadElongation BENT =
            LoadElongation.curve(List.of(new Corner(0, 0), new Corner(0.004, 8000), new Corner(0.01, 10_000)));

    private static LoadElongation random(SplittableRandom r) {
        List<Corner> corners = new ArrayList<>(List.of(new Corner(0, 0)));
        double strain = 0;
        double tension = 0;
        for (int i = r.nextInt(1, 6); i > 0; i--) {
            strain += Math.exp(r.nextDouble(-9, -3));
            tension += Math.exp(r.nextDouble(3, 10));
            corners.add(new Corner(strain, tension));
        }
        return LoadElongation.curve(corners);
    }

    @Test
    void aLinearRope() {
        LoadElongation law = LoadElongation.linear(4.9e6);
        assertThat(law.isLinear()).isTrue();
        assertThat(law.pieces()).isEqualTo(1);
        assertThat(law.strain(4900)).isCloseTo(1e-3, within(1e-18));
        assertThat(law.tension(1e-3)).isCloseTo(4900, within(1e-9));
        assertThat(law.tension(0)).isZero();
        assertThat(law.tension(-0.1)).isZero();
        assertThat(law.compliance(0)).isEqualTo(1 / 4.9e6);
        assertThat(law.offset(0)).isZero();
        assertThat(law.initialStiffness()).isCloseTo(4.9e6, within(1e-8));
        assertThat(law.strainEnergy(4900)).isCloseTo(4900 * 1e-3 / 2, within(1e-14));
        assertThat(law.complementaryEnergy(4900)).isCloseTo(4900 * 1e-3 / 2, within(1e-14));
        assertThat(law.corners()).containsExactly(new Corner(0, 0), new Corner(1, 4.9e6));
    }

    @Test
    void aBentRope() {
        assertThat(BENT.isLinear()).isFalse();
        assertThat(BENT.pieces()).isEqualTo(2);
        assertThat(BENT.lowerTension(0)).isZero();
        assertThat(BENT.lowerTension(1)).isEqualTo(8000);
        assertThat(BENT.piece(7999)).isZero();
        assertThat(BENT.piece(8000)).isEqualTo(1);
        assertThat(BENT.piece(1e9)).isEqualTo(1);
        assertThat(BENT.compliance(0)).isCloseTo(5e-7, within(1e-21));
        assertThat(BENT.compliance(1)).isCloseTo(3e-6, within(1e-20));
        assertThat(BENT.offset(1)).isCloseTo(0.004 - 8000 * 3e-6, within(1e-17));
        assertThat(BENT.strain(4000)).isCloseTo(0.002, within(1e-17));
        assertThat(BENT.strain(9000)).isCloseTo(0.007, within(1e-17));
        assertThat(BENT.tension(0.007)).isCloseTo(9000, within(1e-9));
        assertThat(BENT.initialStiffness()).isCloseTo(2e6, within(1e-8));
        // The last piece goes on: 6 ‰ and 2 kN more.
        assertThat(BENT.strain(12_000)).isCloseTo(0.016, within(1e-17));
        assertThat(BENT.tension(0.016)).isCloseTo(12_000, within(1e-8));
        // Areas by hand: ½ 8 kN 4 ‰ = 16 J/m, then 9 kN 6 ‰ = 54 J/m; over the curve 10 kN 10 ‰ less 70.
        assertThat(BENT.strainEnergy(10_000)).isCloseTo(70, within(1e-12));
        assertThat(BENT.complementaryEnergy(10_000)).isCloseTo(30, within(1e-12));
        assertThat(BENT.corners()).hasSize(3).contains(new Corner(0.004, 8000));
    }

    @Test
    void tensionAndStrainAreInverse() {
        for (long seed = 1; seed <= 300; seed++) {
            SplittableRandom r = new SplittableRandom(seed);
            LoadElongation law = random(r);
            double most = 2 * law.corners().get(law.corners().size() - 1).tension();
            for (int i = 0; i < 20; i++) {
                double t = r.nextDouble(most);
                assertThat(law.tension(law.strain(t))).as("seed " + seed).isCloseTo(t, within(1e-9 * most));
            }
            for (Corner c : law.corners()) {
                assertThat(law.strain(c.tension())).as("seed " + seed).isCloseTo(c.strain(), within(1e-15));
                assertThat(law.tension(c.strain())).as("seed " + seed).isCloseTo(c.tension(), within(1e-9 * most));
            }
        }
    }

    @Test
    void energiesAreTheAreasBesideTheCurve() {
        for (long seed = 1; seed <= 100; seed++) {
            SplittableRandom r = new SplittableRandom(seed);
            LoadElongation law = random(r);
            double t = 2
                    * r.nextDouble()
                    * law.corners().get(law.corners().size() - 1).tension();
            // Midpoint rule over small steps of tension; kinks cost a little.
            int n = 20_000;
            double sum = 0;
            for (int i = 0; i < n; i++) {
                sum += law.strain(t * (i + 0.5) / n) * t / n;
            }
            double whole = t * law.strain(t);
            assertThat(law.complementaryEnergy(t)).as("seed " + seed).isCloseTo(sum, within(1e-6 * whole));
            assertThat(law.strainEnergy(t)).as("seed " + seed).isCloseTo(whole - sum, within(1e-6 * whole));
            assertThat(law.strainEnergy(t) + law.complementaryEnergy(t)).isCloseTo(whole, within(1e-14 * whole));
        }
    }

    @Test
    void piecesAreTheStraightLinesOfTheCurve() {
        for (long seed = 1; seed <= 100; seed++) {
            SplittableRandom r = new SplittableRandom(seed);
            LoadElongation law = random(r);
            double most = 2 * law.corners().get(law.corners().size() - 1).tension();
            for (int i = 0; i < 20; i++) {
                double t = r.nextDouble(most);
                int j = law.piece(t);
                assertThat(law.lowerTension(j)).isLessThanOrEqualTo(t);
                assertThat(law.offset(j) + law.compliance(j) * t)
                        .as("seed " + seed)
                        .isCloseTo(law.strain(t), within(1e-14));
            }
        }
    }

    @Test
    void refusals() {
        assertThat(Refusal.of(() -> LoadElongation.linear(0)))
                .containsExactly("axialStiffness: 0.0 N: must be a finite number above zero");
        assertThat(Refusal.of(() -> LoadElongation.linear(Double.NaN))).hasSize(1);
        assertThat(Refusal.of(() -> LoadElongation.curve(List.of(new Corner(0, 0)))))
                .containsExactly("loadElongation: 1 corners: must have at least two corners");
        assertThat(Refusal.of(() -> LoadElongation.curve(List.of()))).hasSize(1);
        assertThat(Refusal.of(() -> LoadElongation.curve(List.of(new Corner(0.001, 0), new Corner(0.002, 5)))))
                .containsExactly("loadElongation[0]: 0.001, 0.0 N: must start at no strain and no tension");
        assertThat(Refusal.of(() -> LoadElongation.curve(List.of(new Corner(0, 1), new Corner(0.002, 5)))))
                .containsExactly("loadElongation[0]: 0.0, 1.0 N: must start at no strain and no tension");
    }

    @Test
    void allRefusalsTogether() {
        List<Corner> corners =
                List.of(new Corner(0, 0), new Corner(0.01, 5), new Corner(0.01, 5), new Corner(Double.NaN, -1));
        assertThat(Refusal.of(() -> LoadElongation.curve(corners)))
                .containsExactly(
                        "loadElongation[2][0]: 0.01: must be larger than the strain before it",
                        "loadElongation[2][1]: 5.0 N: must be larger than the tension before it",
                        "loadElongation[3][0]: NaN: must be a finite number",
                        "loadElongation[3][1]: -1.0 N: must be larger than the tension before it");
        assertThat(Refusal.paths(() ->
                        LoadElongation.curve(List.of(new Corner(0, 0), new Corner(0.1, Double.POSITIVE_INFINITY)))))
                .containsExactly("loadElongation[1][1]");
    }
}
