package org.lifeline.analysis.explain;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.lifeline.base.Point;
import org.lifeline.base.UnitSystem;
import org.lifeline.model.Installed;
import org.lifeline.model.Lifeline;
import org.lifeline.model.cable.Cable;
import org.lifeline.model.cable.LoadElongation;

/** The figures of a cable against the law of its rope: stiffness, offsets, energies by quadrature. */
class CableFiguresTest {
    private static final LoadElongation CURVE = LoadElongation.curve(List.of(
            new LoadElongation.Corner(0, 0),
            new LoadElongation.Corner(0.01, 2000),
            new LoadElongation.Corner(0.02, 9000),
            new LoadElongation.Corner(0.03, 25000)));

    private static Lifeline line(Cable cable) {
        return Lifeline.builder()
                .cable(cable)
                .endAnchor("a", Point.of(0, 0, 8))
                .endAnchor("b", Point.of(10, 0, 8))
                .installed(Installed.pretension(1000).atTemperature(10))
                .build();
    }

    private static Cable linear() {
        return Cable.builder()
                .weightPerLength(4.2)
                .axialStiffness(4.9e6)
                .thermalExpansion(12e-6)
                .build();
    }

    private static Cable curved() {
        return Cable.builder().weightPerLength(1.1).elongation(CURVE).build();
    }

    private static Map<String, CalculationStep> steps(Lifeline line, double temperature) {
        CalculationSheet sheet = new CalculationSheet(UnitSystem.SI);
        CableFigures.write(sheet, line, temperature);
        return sheet.finish().stream().collect(Collectors.toMap(CalculationStep::symbol, s -> s));
    }

    private static double value(Map<String, CalculationStep> steps, String symbol) {
        CalculationStep step = steps.get(symbol);
        assertThat(step).as(symbol).isNotNull();
        return step == null ? Double.NaN : step.value();
    }

    @Test
    void aLinearRopeHasAWeightAndAStiffness() {
        Map<String, CalculationStep> steps = steps(line(linear()), 10);
        assertThat(steps).containsOnlyKeys("w", "EA");
        assertThat(value(steps, "w")).isEqualTo(4.2);
        assertThat(value(steps, "EA")).isCloseTo(4.9e6, within(1e-6));
    }

    @Test
    void atAnotherTemperatureTheMassStaysAndTheLengthGrows() {
        Map<String, CalculationStep> steps = steps(line(linear()), 60);
        assertThat(value(steps, "λ")).isCloseTo(1 + 12e-6 * 50, within(1e-15));
        assertThat(value(steps, "w_t") * value(steps, "λ")).isCloseTo(4.2, within(1e-14));
        assertThat(value(steps, "t_i")).isEqualTo(10);
        assertThat(value(steps, "t")).isEqualTo(60);
        Map<String, CalculationStep> cold = steps(line(linear()), -40);
        assertThat(value(cold, "w_t")).isGreaterThan(4.2);
    }

    @Test
    void aRopeWithoutWeightHasNoLineForIt() {
        Lifeline weightless =
                line(Cable.builder().weightPerLength(0).axialStiffness(4.9e6).build());
        assertThat(steps(weightless, 10)).doesNotContainKey("w");
        assertThat(steps(weightless, 40)).containsKey("λ").doesNotContainKey("w_t");
    }

    /** On each piece ε = a + T/EA. */
    @Test
    void piecesOfACurveReproduceItsStrain() {
        Map<String, CalculationStep> steps = steps(line(curved()), 10);
        SplittableRandom r = new SplittableRandom(7);
        for (int k = 1; k <= 3; k++) {
            double low = CURVE.corners().get(k - 1).tension();
            double high = CURVE.corners().get(k).tension();
            for (int i = 0; i < 20; i++) {
                double tension = r.nextDouble(low, high);
                double a = k == 1 ? 0 : value(steps, "a_" + k);
                assertThat(a + tension / value(steps, "EA_" + k))
                        .as("piece %d at %s N, seed 7", k, tension)
                        .isCloseTo(CURVE.strain(tension), within(1e-15));
            }
        }
    }

    /** ∫ε dT up to a corner by the rule of trapezoids, which is exact between corners. */
    @Test
    void energiesOfCornersAreTheAreasBesideTheCurve() {
        Map<String, CalculationStep> steps = steps(line(curved()), 10);
        assertThat(value(steps, "B_1")).isCloseTo(0.5 * 0.01 * 2000, within(1e-12));
        assertThat(value(steps, "B_2")).isCloseTo(0.5 * 0.01 * 2000 + 0.015 * 7000, within(1e-11));
        assertThat(steps).doesNotContainKey("B_3");
        assertThat(value(steps, "B_2")).isCloseTo(CURVE.complementaryEnergy(9000), within(1e-11));
    }

    /** c + a T + T²/2EA is the complementary energy on a piece. */
    @Test
    void constantsOfPiecesMakeTheEnergyContinuous() {
        Map<String, CalculationStep> steps = steps(line(curved()), 10);
        for (int k = 2; k <= 3; k++) {
            double t = CURVE.corners().get(k).tension();
            double byPiece =
                    value(steps, "c_" + k) + value(steps, "a_" + k) * t + t * t / (2 * value(steps, "EA_" + k));
            assertThat(byPiece).as("piece %d", k).isCloseTo(CURVE.complementaryEnergy(t), within(1e-10));
        }
    }
}
