package org.lifeline.model.cable;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.lifeline.base.Refusal;

class CableTest {
    private static Cable.Builder plain() {
        return Cable.builder().massPerLength(0.5).axialStiffness(4.9e6);
    }

    @Test
    void everythingGivenComesBack() {
        Cable c = Cable.builder()
                .name("12 mm")
                .diameter(0.012)
                .massPerLength(0.576)
                .axialStiffness(4.9e6)
                .breakingStrength(90_700)
                .terminationEfficiency(0.9)
                .thermalExpansion(16e-6)
                .dampingTime(4e-4)
                .build();
        assertThat(c.name()).isEqualTo("12 mm");
        assertThat(c.diameter()).hasValue(0.012);
        assertThat(c.massPerLength(5)).isEqualTo(0.576);
        assertThat(c.weightPerLength(10)).isEqualTo(5.76);
        assertThat(c.elongation().initialStiffness()).isCloseTo(4.9e6, within(1e-8));
        assertThat(c.breakingStrength()).hasValue(90_700);
        assertThat(c.terminationEfficiency()).isEqualTo(0.9);
        assertThat(c.thermalExpansion()).isEqualTo(16e-6);
        assertThat(c.dampingTime()).hasValue(4e-4);
        assertThat(c).hasToString("12 mm, w " + 0.576 * 9.80665 + " N/m");
    }

    @Test
    void whatIsNotGiven() {
        Cable c = plain().build();
        assertThat(c.name()).isEmpty();
        assertThat(c.diameter()).isEmpty();
        assertThat(c.breakingStrength()).isEmpty();
        assertThat(c.dampingTime()).isEmpty();
        assertThat(c.isTerminationEfficiencyStated()).isFalse();
        assertThat(c.terminationEfficiency()).isEqualTo(Cable.LOWEST_TERMINATION_EFFICIENCY);
        assertThat(c.terminationStrength()).isEmpty();
        assertThat(c.thermalExpansion()).isEqualTo(12e-6);
        assertThat(c.toString()).startsWith("cable, w ");
    }

    @Test
    void weightInsteadOfMass() {
        Cable c = Cable.builder().weightPerLength(5).axialStiffness(1e6).build();
        assertThat(c.weightPerLength(9.81)).isEqualTo(5);
        assertThat(c.massPerLength(10)).isEqualTo(0.5);
        assertThat(Cable.builder()
                        .weightPerLength(0)
                        .axialStiffness(1e6)
                        .build()
                        .weightPerLength(9.81))
                .isZero();
    }

    @Test
    void threeWaysToStateTheStretch() {
        LoadElongation law =
                LoadElongation.curve(List.of(new LoadElongation.Corner(0, 0), new LoadElongation.Corner(0.01, 1e4)));
        assertThat(Cable.builder()
                        .massPerLength(1)
                        .elasticModulus(131e9)
                        .metallicArea(548.39e-6)
                        .build()
                        .elongation()
                        .initialStiffness())
                .isCloseTo(131e9 * 548.39e-6, within(1e-6));
        assertThat(Cable.builder().massPerLength(1).elongation(law).build().elongation())
                .isSameAs(law);
        assertThat(plain().metallicArea(1e-4).build().elongation().initialStiffness())
                .isCloseTo(4.9e6, within(1e-8));
    }

    @Test
    void aRopeClassFillsWhatIsMissing() {
        Cable c = Cable.builder()
                .ropeClass(RopeClass.C6X19_STEEL)
                .diameter(0.012)
                .tensileGrade(1770e6)
                .elasticModulus(100e9)
                .build();
        assertThat(c.massPerLength(9.81)).isEqualTo(RopeClass.C6X19_STEEL.massPerLength(0.012));
        assertThat(c.breakingStrength()).hasValue(RopeClass.C6X19_STEEL.minimumBreakingForce(0.012, 1770e6));
        assertThat(c.elongation().initialStiffness())
                .isCloseTo(100e9 * RopeClass.C6X19_STEEL.metallicArea(0.012), within(1e-6));
    }

    @Test
    void aRopeClassGivesWayToWhatIsGiven() {
        Cable c = Cable.builder()
                .ropeClass(RopeClass.C7X7)
                .diameter(0.008)
                .tensileGrade(1570e6)
                .weightPerLength(3)
                .metallicArea(30e-6)
                .elasticModulus(1e11)
                .breakingStrength(12_345)
                .build();
        assertThat(c.weightPerLength(9.81)).isEqualTo(3);
        assertThat(c.elongation().initialStiffness()).isCloseTo(3e6, within(1e-6));
        assertThat(c.breakingStrength()).hasValue(12_345);
        assertThat(Cable.builder()
                        .ropeClass(RopeClass.C7X7)
                        .diameter(0.008)
                        .massPerLength(0.2)
                        .axialStiffness(1e6)
                        .build()
                        .breakingStrength())
                .isEmpty();
    }

    /** Between the limit of no weight and the lightest ropes lies what 16 digits do not carry. */
    @Test
    void nextToNoWeightIsRefused() {
        for (double value : new double[] {1e-300, 1e-11, 9e-10}) {
            assertThat(Refusal.of(() -> plain().massPerLength(value).build()))
                    .singleElement()
                    .asString()
                    .startsWith("massPerLength: ")
                    .contains("must be 0 or at least 1.0E-9 kg/m: 16 digits do not carry");
            assertThat(Refusal.of(() -> Cable.builder()
                            .weightPerLength(value)
                            .axialStiffness(1e6)
                            .build()))
                    .singleElement()
                    .asString()
                    .startsWith("weightPerLength: ")
                    .contains("must be 0 or at least 1.0E-8 N/m: 16 digits do not carry");
        }
        assertThat(plain().massPerLength(1e-9).build().weightPerLength(10)).isCloseTo(1e-8, within(1e-21));
        assertThat(plain().massPerLength(0).build().weightPerLength(10)).isZero();
    }

    @Test
    void nothingGiven() {
        assertThat(Refusal.of(() -> Cable.builder().build()))
                .containsExactly(
                        "massPerLength: missing: give exactly one of massPerLength and weightPerLength"
                                + " (or a ropeClass with diameter)",
                        "axialStiffness: missing: give exactly one of axialStiffness, elasticModulus with metallicArea,"
                                + " and loadElongation");
    }

    @Test
    void everythingWrongAtOnce() {
        assertThat(Refusal.of(() -> Cable.builder()
                        .diameter(-1)
                        .massPerLength(-2)
                        .weightPerLength(-3)
                        .axialStiffness(-4)
                        .elasticModulus(-5)
                        .metallicArea(-6)
                        .elongation(LoadElongation.linear(1))
                        .breakingStrength(-7)
                        .terminationEfficiency(1.1)
                        .thermalExpansion(Double.POSITIVE_INFINITY)
                        .dampingTime(-8)
                        .build()))
                .containsExactly(
                        "diameter: -1.0 m: must be a finite number above zero",
                        "massPerLength: given twice: give exactly one of massPerLength and weightPerLength"
                                + " (or a ropeClass with diameter)",
                        "massPerLength: -2.0 kg/m: must be a finite number that is not negative",
                        "weightPerLength: -3.0 N/m: must be a finite number that is not negative",
                        "axialStiffness: given more than once: give exactly one of axialStiffness, elasticModulus with"
                                + " metallicArea, and loadElongation",
                        "axialStiffness: -4.0 N: must be a finite number above zero",
                        "elasticModulus: -5.0 Pa: must be a finite number above zero",
                        "metallicArea: -6.0 m²: must be a finite number above zero",
                        "breakingStrength: -7.0 N: must be a finite number above zero",
                        "terminationEfficiency: 1.1: must be above 0 and at most 1",
                        "thermalExpansion: Infinity 1/K: must be a finite number",
                        "dampingTime: -8.0 s: must be a finite number that is not negative");
    }

    @Test
    void partsThatNeedEachOther() {
        assertThat(Refusal.of(() ->
                        Cable.builder().massPerLength(1).elasticModulus(1e11).build()))
                .containsExactly("metallicArea: missing: must be given together with elasticModulus");
        assertThat(Refusal.of(() -> plain().tensileGrade(1770e6).build()))
                .containsExactly("tensileGrade: 1.77E9 Pa: is of use only together with a ropeClass");
        assertThat(Refusal.of(() -> plain().ropeClass(RopeClass.C6X7_FIBRE).build()))
                .containsExactly("ropeClass: 6x7 fibre core: needs the diameter as well");
        assertThat(Refusal.of(() -> plain().ropeClass(RopeClass.C6X7_FIBRE)
                        .diameter(0.01)
                        .tensileGrade(0)
                        .build()))
                .containsExactly("tensileGrade: 0.0 Pa: must be a finite number above zero");
    }

    @Test
    void efficiencyBounds() {
        assertThat(plain().terminationEfficiency(1).build().terminationEfficiency())
                .isEqualTo(1);
        for (double bad : new double[] {0, -0.1, 1.0001, Double.NaN}) {
            assertThat(Refusal.paths(() -> plain().terminationEfficiency(bad).build()))
                    .containsExactly("terminationEfficiency");
        }
    }

    @Test
    void classesObeyTheirFormulas() {
        for (RopeClass each : RopeClass.values()) {
            double d = 0.01;
            // F = K d² R/1000 kN, A = C d² mm², mass W d²/100 kg/m, d in mm, R in N/mm² (Feyrer, Wire Ropes, table
            // 1.9):
            // the three grow with the square of the diameter, and the wires cannot carry more than area times grade.
            assertThat(each.metallicArea(2 * d)).isCloseTo(4 * each.metallicArea(d), within(1e-18));
            assertThat(each.massPerLength(2 * d)).isCloseTo(4 * each.massPerLength(d), within(1e-15));
            assertThat(each.minimumBreakingForce(d, 1770e6)).isLessThan(each.metallicArea(d) * 1770e6);
            assertThat(each.minimumBreakingForce(d, 1960e6) / each.minimumBreakingForce(d, 1770e6))
                    .isCloseTo(1960.0 / 1770, within(1e-14));
            // Steel of 7850 kg/m³ in the metallic area, the lay and the core's lubricant a little more.
            assertThat(each.massPerLength(d) / (7850 * each.metallicArea(d))).isBetween(1.0, 1.3);
            assertThat(each.designation()).isNotBlank();
        }
        // Worked by hand from the printed factors: 6x19 steel core, 12 mm, 1770 N/mm².
        assertThat(RopeClass.C6X19_STEEL.metallicArea(0.012)).isCloseTo(0.449 * 144e-6, within(1e-18));
        assertThat(RopeClass.C6X19_STEEL.massPerLength(0.012)).isCloseTo(0.400 * 144 / 100, within(1e-14));
        assertThat(RopeClass.C6X19_STEEL.minimumBreakingForce(0.012, 1770e6))
                .isCloseTo(0.356 * 144 * 1770, within(1e-9));
    }
}
