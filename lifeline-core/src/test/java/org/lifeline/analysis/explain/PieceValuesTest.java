package org.lifeline.analysis.explain;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.lifeline.base.Point;
import org.lifeline.base.UnitSystem;
import org.lifeline.base.Vector3;
import org.lifeline.base.unit.Dimension;
import org.lifeline.model.Installed;
import org.lifeline.model.Lifeline;
import org.lifeline.model.cable.Cable;
import org.lifeline.model.cable.LoadElongation;
import org.lifeline.samples.SampleDesigns;
import org.lifeline.verify.state.CableIntegration;
import org.lifeline.verify.state.PieceNumbers;
import org.lifeline.verify.state.PieceShape;

/** The closed forms of the sheet for a piece of cable against quadrature along it, which shares no formula with them. */
class PieceValuesTest {
    private static final LoadElongation BENT = LoadElongation.curve(List.of(
            new LoadElongation.Corner(0, 0),
            new LoadElongation.Corner(0.02, 1200),
            new LoadElongation.Corner(0.05, 6000),
            new LoadElongation.Corner(0.09, 18_000)));

    /** A piece written down, with what quadrature makes of it. */
    private record Written(Map<String, CalculationStep> by, PieceShape shape, double length) {
        double of(String symbol) {
            return java.util.Objects.requireNonNull(by.get(symbol), symbol).value();
        }
    }

    private static Written write(Cable cable, double h, double v, double length) {
        Lifeline line = SampleDesigns.single(cable, Installed.pretension(1000));
        CalculationSheet sheet = new CalculationSheet(UnitSystem.SI);
        CableFigures figures = CableFigures.cable(sheet, line);
        Figure horizontal = sheet.given("H", "horizontal tension", h, Dimension.FORCE, "test");
        Figure vertical = sheet.given("V", "vertical tension", v, Dimension.FORCE, "test");
        Figure s = sheet.given("S", "unstretched length", length, Dimension.LENGTH, "test");
        new PieceExplanation(sheet, figures, horizontal, true).write("p", vertical, s);
        double w = line.weightPerLength();
        PieceNumbers piece = new PieceNumbers(
                Point.of(0, 0, 0),
                Point.of(0, 0, 0),
                new Vector3(h, 0, v),
                new Vector3(h, 0, v + w * length),
                length,
                w,
                0);
        return new Written(
                Reviewer.bySymbol(sheet.finish()), CableIntegration.of(cable).shape(piece), length);
    }

    private static Cable linear(double weight) {
        return Cable.builder().weightPerLength(weight).axialStiffness(4e5).build();
    }

    private static Cable bent(double weight) {
        return Cable.builder().weightPerLength(weight).elongation(BENT).build();
    }

    /** Complementary energy ∫∫ε dT ds = ∫T (1 + ε) ds − ∫T ds − strain energy; here by its definition, from quadrature. */
    private static double strainEnergy(Written p, double h, double v, double w, double rise, double run) {
        // V₂ Z − w·∫z ds + H X is ∫T (1 + ε) ds; less the complementary energy and ∫T ds it is the strain energy.
        double work = (v + w * p.length()) * rise + h * run;
        double height = p.shape().weightEnergy(0);
        return work - height - p.of("C_p");
    }

    private static void check(Cable cable, SplittableRandom r, long seed) {
        double h = r.nextDouble(300, 9000);
        double v = r.nextDouble(-3000, 3000);
        double length = r.nextDouble(1, 40);
        double w = cable.weightPerLength(9.80665);
        Written p = write(cable, h, v, length);
        double run = p.shape().run(length);
        double rise = p.shape().rise(length);
        assertThat(p.of("X_p")).as("run, seed %d", seed).isCloseTo(run, within(1e-9 * length));
        assertThat(p.of("Z_p")).as("rise, seed %d", seed).isCloseTo(rise, within(1e-9 * length));
        double scale = Math.hypot(h, Math.abs(v) + w * length) * length;
        assertThat(strainEnergy(p, h, v, w, rise, run))
                .as("strain energy, seed %d", seed)
                .isCloseTo(p.shape().strainEnergy(), within(1e-9 * scale));
    }

    @Test
    void anElasticCatenaryIsThatOfQuadrature() {
        for (long seed = 1; seed <= 60; seed++) {
            SplittableRandom r = new SplittableRandom(seed);
            check(linear(r.nextDouble(0.5, 60)), r, seed);
        }
    }

    @Test
    void aCableByItsCurveIsCutAtTheCornersAndAddsUp() {
        for (long seed = 1; seed <= 60; seed++) {
            SplittableRandom r = new SplittableRandom(seed);
            double weight = r.nextDouble(5, 120);
            Cable cable = bent(weight);
            check(cable, r, seed);
        }
        // Through the corner at 1200 N down to the lowest point and up again: three parts.
        Written p = write(bent(100), 1000, -1500, 30);
        assertThat(p.by())
                .containsKeys("S_pa", "S_pb", "S_pc", "V_pac", "V_pbc")
                .doesNotContainKey("S_pd");
        assertThat(p.of("S_pa") + p.of("S_pb") + p.of("S_pc")).isCloseTo(30, within(1e-9));
        assertThat(Math.hypot(1000, p.of("V_pac"))).isCloseTo(1200, within(1e-9));
        assertThat(p.of("V_pbc")).isCloseTo(-p.of("V_pac"), within(1e-9));
        assertThat(p.of("X_pa") + p.of("X_pb") + p.of("X_pc")).isCloseTo(p.of("X_p"), within(1e-9));
        assertThat(p.of("Z_pa") + p.of("Z_pb") + p.of("Z_pc")).isCloseTo(p.of("Z_p"), within(1e-9));
        assertThat(p.of("C_pa") + p.of("C_pb") + p.of("C_pc")).isCloseTo(p.of("C_p"), within(1e-6));
    }

    @Test
    void aWeightlessPieceIsStraight() {
        Written p = write(linear(0), 3000, 4000, 10);
        // Five kilonewtons stretch ten metres of 400 kN by an eighth of a metre.
        assertThat(p.of("X_p")).isCloseTo(0.6 * 10.125, within(1e-9));
        assertThat(p.of("Z_p")).isCloseTo(0.8 * 10.125, within(1e-9));
        assertThat(p.of("T_p")).isCloseTo(5000, within(1e-9));
        assertThat(p.of("T′_p")).isCloseTo(5000, within(1e-9));
        assertThat(p.of("V′_p")).isEqualTo(4000);
        // T²S/2EA.
        assertThat(p.of("C_p") - p.of("I_p")).isCloseTo(5000.0 * 5000 * 10 / (2 * 4e5), within(1e-6));
    }

    @Test
    void endTensionsFollowFromTheWeightBetweenThem() {
        Written p = write(linear(50), 1200, -900, 40);
        assertThat(p.of("V′_p")).isEqualTo(1100);
        assertThat(p.of("T_p")).isCloseTo(1500, within(1e-9));
        assertThat(p.of("T′_p")).isCloseTo(Math.hypot(1200, 1100), within(1e-9));
        assertThat(p.of("q_p")).isCloseTo(2000 / (1500 + Math.hypot(1200, 1100)), within(1e-12));
        // Michalos and others: ∫ds/T = (1/w) ln((T′ + V′)/(T + V)).
        double integral = Math.log((Math.hypot(1200, 1100) + 1100) / (1500 - 900)) / 50;
        assertThat(p.of("A_p")).isCloseTo(integral, within(1e-12));
    }

    @Test
    void theEnergiesOfThePieceAreIntegralsAlongIt() {
        double h = 1200;
        double v = -900;
        double w = 50;
        Written p = write(linear(w), h, v, 40);
        double first = 0;
        double second = 0;
        int n = 20_000;
        for (int i = 0; i < n; i++) {
            double t = Math.hypot(h, v + w * 40 * (i + 0.5) / n);
            first += t * 40 / n;
            second += t * t * 40 / n;
        }
        assertThat(p.of("I_p")).isCloseTo(first, within(1e-6 * first));
        assertThat(p.of("J_p")).isCloseTo(second, within(1e-6 * second));
    }
}
