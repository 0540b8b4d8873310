package org.lifeline.model.cable;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** Rope classes against the printed factors, row by row, and against printed ropes. */
class RopeTableTest {
    /** K. Feyrer, Wire Ropes, Table 1.9 after EN 12385-4 (published): W, C, K with d in mm and R in N/mm². */
    @ParameterizedTest
    @CsvSource({
        "C6X7_FIBRE, 6x7 fibre core, 0.345, 0.369, 0.332",
        "C6X7_STEEL, 6x7 steel core, 0.384, 0.432, 0.359",
        "C7X7, 7x7, 0.384, 0.432, 0.388",
        "C6X19_FIBRE, 6x19 fibre core, 0.359, 0.384, 0.330",
        "C6X19_STEEL, 6x19 steel core, 0.400, 0.449, 0.356",
        "C6X36_FIBRE, 6x36 fibre core, 0.367, 0.393, 0.330",
        "C6X36_STEEL, 6x36 steel core, 0.409, 0.460, 0.356",
        "C6X19M_FIBRE, 6x19M fibre core, 0.346, 0.357, 0.307",
        "C6X19M_STEEL, 6x19M steel core, 0.381, 0.418, 0.332",
        "C7X19, 7x19, 0.381, 0.418, 0.362",
        "C18X7_FIBRE, 18x7 fibre core, 0.382, 0.408, 0.328",
        "C18X7_STEEL, 18x7 steel core, 0.401, 0.433, 0.328"
    })
    void aRopeOfTenMillimetresOfEachClass(RopeClass type, String name, double w, double c, double k) {
        assertThat(type.designation()).isEqualTo(name);
        // d = 10 mm: W d²/100 kg/m = W kg/m, C d² mm² = 100 C mm², K d² R/1000 kN = 177 K kN for 1770 N/mm².
        assertThat(type.massPerLength(0.010)).isCloseTo(w, within(1e-15));
        assertThat(type.metallicArea(0.010)).isCloseTo(100 * c * 1e-6, within(1e-19));
        assertThat(type.minimumBreakingForce(0.010, 1770e6)).isCloseTo(177_000 * k, within(1e-9));
    }

    /** ISO 10425 Annex C, 6x7 fibre core (published), printed with three digits. */
    @ParameterizedTest
    @CsvSource({"8, 1770, 22.1, 37.6", "8, 1960, 22.1, 41.6", "12, 1770, 49.7, 84.6", "12, 1960, 49.7, 93.7"})
    void printedRopesComeOutOfTheFactors(
            double millimetres, double grade, double kilogramsOfAHundredMetres, double kilonewtons) {
        Cable c = Cable.builder()
                .ropeClass(RopeClass.C6X7_FIBRE)
                .diameter(millimetres / 1000)
                .tensileGrade(grade * 1e6)
                .elasticModulus(1e11)
                .build();
        assertThat(100 * c.massPerLength(9.81)).isCloseTo(kilogramsOfAHundredMetres, within(0.05));
        assertThat(c.breakingStrength().orElseThrow() / 1000).isCloseTo(kilonewtons, within(0.05));
        assertThat(c.isGivenByMass()).isTrue();
        assertThat(c.diameter()).hasValue(millimetres / 1000);
    }

    @ParameterizedTest
    @EnumSource(RopeClass.class)
    void aSteelCoreCarriesMoreThanAFibreCore(RopeClass type) {
        if (type.name().endsWith("_FIBRE")) {
            RopeClass steel = RopeClass.valueOf(type.name().replace("_FIBRE", "_STEEL"));
            assertThat(steel.metallicArea(0.01)).isGreaterThan(type.metallicArea(0.01));
            assertThat(steel.massPerLength(0.01)).isGreaterThan(type.massPerLength(0.01));
            assertThat(steel.minimumBreakingForce(0.01, 1e9))
                    .isGreaterThanOrEqualTo(type.minimumBreakingForce(0.01, 1e9));
        }
        assertThat(type.minimumBreakingForce(0.01, 2e9)).isEqualTo(2 * type.minimumBreakingForce(0.01, 1e9));
    }

    /** A strand core gives 0.388/0.359 and 0.362/0.332 of the strength of a steel core at the same mass and area. */
    @Test
    void strandCoresDifferInStrengthAlone() {
        assertThat(RopeClass.C7X7.massPerLength(0.01)).isEqualTo(RopeClass.C6X7_STEEL.massPerLength(0.01));
        assertThat(RopeClass.C7X7.metallicArea(0.01)).isEqualTo(RopeClass.C6X7_STEEL.metallicArea(0.01));
        assertThat(RopeClass.C7X7.minimumBreakingForce(0.01, 1e9)
                        / RopeClass.C6X7_STEEL.minimumBreakingForce(0.01, 1e9))
                .isCloseTo(0.388 / 0.359, within(1e-14));
        assertThat(RopeClass.C7X19.minimumBreakingForce(0.01, 1e9)
                        / RopeClass.C6X19M_STEEL.minimumBreakingForce(0.01, 1e9))
                .isCloseTo(0.362 / 0.332, within(1e-14));
    }
}
