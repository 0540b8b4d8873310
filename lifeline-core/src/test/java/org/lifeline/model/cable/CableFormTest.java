package org.lifeline.model.cable;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.Refusal;
import org.lifeline.model.cable.LoadElongation.Corner;

/** Cables as values: their canonical form, their changed copies, the bounds of what is taken, and laws of stretch. */
@SuppressWarnings("NullAway") // Null is handed over to be refused, and what is there is taken as there.
class CableFormTest {
    private static final LoadElongation BENT =
            LoadElongation.curve(List.of(new Corner(0, 0), new Corner(0.004, 8000), new Corner(0.01, 10_000)));

    private static Cable.Builder full() {
        return Cable.builder()
                .name("rope")
                .diameter(0.012)
                .massPerLength(0.5)
                .axialStiffness(3e6)
                .breakingStrength(6e4)
                .terminationEfficiency(0.9)
                .thermalExpansion(16e-6)
                .dampingTime(1e-3);
    }

    private static Cable.Builder plain() {
        return Cable.builder().massPerLength(0.5).axialStiffness(3e6);
    }

    @Test
    void theFormTellsAllThatIsGiven() {
        assertThat(full().build().canonicalForm())
                .hasToString(
                        "cable\nname: rope\ndiameter: 0.012 m\nmassPerLength: 0.5 kg/m\naxialStiffness: 3000000.0 N"
                                + "\nbreakingStrength: 60000.0 N\nterminationEfficiency: 0.9\nthermalExpansion: 1.6E-5 1/K"
                                + "\ndampingTime: 0.001 s");
    }

    @Test
    void theFormLeavesOutWhatIsNot() {
        Cable c = Cable.builder().weightPerLength(5).elongation(BENT).build();
        assertThat(c.canonicalForm())
                .hasToString("cable\nname: \nweightPerLength: 5.0 N/m"
                        + "\nelongation[0].strain: 0.0\nelongation[0].tension: 0.0 N"
                        + "\nelongation[1].strain: 0.004\nelongation[1].tension: 8000.0 N"
                        + "\nelongation[2].strain: 0.01\nelongation[2].tension: 10000.0 N"
                        + "\nthermalExpansion: 1.2E-5 1/K");
    }

    /** An efficiency that was not stated and the same one stated are two cables, but of the same strength. */
    @Test
    void statingTheDefaultIsAStatement() {
        Cable stated = plain().breakingStrength(5e4).terminationEfficiency(0.8).build();
        Cable silent = plain().breakingStrength(5e4).build();
        assertThat(stated).isNotEqualTo(silent);
        assertThat(stated.fingerprint()).isNotEqualTo(silent.fingerprint());
        assertThat(stated.terminationStrength())
                .isEqualTo(silent.terminationStrength())
                .hasValue(40_000);
        assertThat(stated.isTerminationEfficiencyStated()).isTrue();
        assertThat(silent.isTerminationEfficiencyStated()).isFalse();
    }

    @Test
    void aCopyThroughTheBuilderIsTheSame() {
        for (Cable c : List.of(
                full().build(),
                plain().build(),
                Cable.builder().weightPerLength(5).elongation(BENT).build(),
                Cable.builder().weightPerLength(0).axialStiffness(1e6).build())) {
            Cable copy = c.toBuilder().build();
            assertThat(copy).isEqualTo(c).hasSameHashCodeAs(c).hasToString(c.toString());
            assertThat(copy.fingerprint()).isEqualTo(c.fingerprint());
            assertThat(copy.isGivenByMass()).isEqualTo(c.isGivenByMass());
        }
    }

    @Test
    void aCopyDiffersInWhatWasChangedAlone() {
        Cable c = full().build();
        assertThat(c.withElongation(BENT).elongation()).isSameAs(BENT);
        assertThat(c.withElongation(BENT).withElongation(c.elongation())).isEqualTo(c);
        assertThat(c.withBreakingStrength(7e4).breakingStrength()).hasValue(7e4);
        assertThat(c.differences(c.withBreakingStrength(7e4)))
                .extracting(Object::toString)
                .containsExactly("breakingStrength: 60000.0 N → 70000.0 N (+10000.0)");
        assertThat(Refusal.paths(() -> c.withBreakingStrength(0))).containsExactly("breakingStrength");
    }

    @Test
    void cablesAreEqualWhenAllThatWasStatedIs() {
        Cable c = full().build();
        assertThat(c)
                .isEqualTo(full().build())
                .hasSameHashCodeAs(full().build())
                .isNotEqualTo("rope");
        for (Cable other : List.of(
                full().name("other").build(),
                full().diameter(0.013).build(),
                full().massPerLength(0.6).build(),
                full().axialStiffness(4e6).build(),
                full().breakingStrength(7e4).build(),
                full().terminationEfficiency(0.85).build(),
                full().thermalExpansion(12e-6).build(),
                full().dampingTime(2e-3).build())) {
            assertThat(other).isNotEqualTo(c);
            assertThat(other.hashCode()).isNotEqualTo(c.hashCode());
            assertThat(other.fingerprint()).isNotEqualTo(c.fingerprint());
        }
        Cable five = Cable.builder().weightPerLength(5).axialStiffness(3e6).build();
        Cable six = Cable.builder().weightPerLength(6).axialStiffness(3e6).build();
        assertThat(five).isNotEqualTo(six);
    }

    @Test
    void massAndWeightAreRelatedByGravity() {
        Cable byMass = plain().build();
        Cable byWeight = Cable.builder().weightPerLength(5).axialStiffness(3e6).build();
        for (double g : new double[] {1.62, 9.81}) {
            assertThat(byMass.weightPerLength(g)).isEqualTo(0.5 * g);
            assertThat(byMass.massPerLength(g)).isEqualTo(0.5);
            assertThat(byWeight.weightPerLength(g)).isEqualTo(5);
            assertThat(byWeight.massPerLength(g)).isEqualTo(5 / g);
        }
        assertThat(byWeight.isGivenByMass()).isFalse();
        assertThat(byWeight).hasToString("cable, w 5.0 N/m");
    }

    /** Each number at its bounds and just beyond them: name of the field, and whether it is taken. */
    @ParameterizedTest
    @CsvSource({
        "1e-4, 0.5, diameter",
        "0, 500, massPerLength",
        "5e3, 1e9, axialStiffness",
        "1, 1e9, breakingStrength",
        "-1e-4, 1e-3, thermalExpansion",
        "0, 1, dampingTime"
    })
    void boundsAreTakenAndWhatIsBeyondIsNot(double low, double high, String field) {
        for (double good : new double[] {low, high}) {
            assertThat(Refusal.of(() -> with(field, good).build()))
                    .as("%s %s", field, good)
                    .isEmpty();
        }
        for (double bad : new double[] {Math.nextDown(low), Math.nextUp(high), Double.NaN}) {
            assertThat(Refusal.paths(() -> with(field, bad).build()))
                    .as("%s %s", field, bad)
                    .containsExactly(field);
        }
    }

    private static Cable.Builder with(String field, double value) {
        return switch (field) {
            case "diameter" -> plain().diameter(value);
            case "massPerLength" -> plain().massPerLength(value);
            case "axialStiffness" -> plain().axialStiffness(value);
            case "breakingStrength" -> plain().breakingStrength(value);
            case "thermalExpansion" -> plain().thermalExpansion(value);
            default -> plain().dampingTime(value);
        };
    }

    @Test
    void modulusAndAreaAreCheckedByThemselvesAndTogether() {
        Cable.Builder b = Cable.builder().weightPerLength(5);
        // 1e6 Pa on 5e-3 m² is exactly the least stiffness of 5 kN, 1e12 Pa on 1e-3 m² the largest of 1 GN.
        assertThat(b.elasticModulus(1e6).metallicArea(5e-3).build().elongation().tension(1))
                .isCloseTo(5e3, within(1e-11));
        assertThat(b.elasticModulus(1e12)
                        .metallicArea(1e-3)
                        .build()
                        .elongation()
                        .tension(1))
                .isCloseTo(1e9, within(1e-6));
        assertThat(Refusal.of(() -> b.elasticModulus(1e6).metallicArea(4.99e-3).build()))
                .singleElement()
                .asString()
                .startsWith("axialStiffness: 4990.0 N: must lie from 5000.0 N to 1.0E9 N");
        assertThat(Refusal.paths(
                        () -> b.elasticModulus(0.9e6).metallicArea(5e-3).build()))
                .containsExactly("elasticModulus");
        assertThat(Refusal.paths(() -> b.elasticModulus(1e9).metallicArea(0.3).build()))
                .containsExactly("metallicArea");
        assertThat(Refusal.paths(() -> Cable.builder().axialStiffness(1e6).build()))
                .containsExactly("massPerLength");
        assertThat(Refusal.paths(() -> plain().weightPerLength(5).build())).containsExactly("massPerLength");
        assertThat(Refusal.paths(
                        () -> plain().elasticModulus(1e11).metallicArea(1e-4).build()))
                .containsExactly("axialStiffness");
        assertThat(Refusal.paths(() -> plain().elongation(BENT).build())).containsExactly("axialStiffness");
    }

    @Test
    void aNameIsNeededButMayBeEmpty() {
        assertThat(Refusal.of(() -> plain().name(null).build())).containsExactly("name: missing: must be given");
        assertThat(plain().name("").build()).isEqualTo(plain().build());
    }

    @ParameterizedTest
    @ValueSource(doubles = {1e8, 1e10})
    void gradesAreTakenAtTheirBounds(double grade) {
        Cable.Builder b =
                Cable.builder().ropeClass(RopeClass.C7X7).diameter(0.01).axialStiffness(3e6);
        assertThat(b.tensileGrade(grade).build().breakingStrength().orElseThrow())
                .isCloseTo(0.388 * 1e-4 * grade, within(1e-9));
        double beyond = grade == 1e8 ? Math.nextDown(grade) : Math.nextUp(grade);
        assertThat(Refusal.paths(() -> b.tensileGrade(beyond).build())).containsExactly("tensileGrade");
    }

    @Test
    void aClassNeedsItsDiameterAndAGradeItsClass() {
        assertThat(Refusal.of(() -> Cable.builder()
                        .ropeClass(RopeClass.C7X19)
                        .elasticModulus(1e11)
                        .tensileGrade(5)
                        .build()))
                .contains("ropeClass: 7x19: needs the diameter as well")
                .anySatisfy(v -> assertThat(v).startsWith("tensileGrade: 5.0 Pa: must lie from 1.0E8 Pa"));
    }

    @Test
    void strainTensionAndPieceAtTheCorners() {
        assertThat(BENT.strain(0)).isZero();
        assertThat(BENT.strain(8000)).isEqualTo(0.004);
        assertThat(BENT.tension(0.004)).isEqualTo(8000);
        assertThat(BENT.tension(4.9e-324)).as("the smallest stretch").isNotNegative();
        assertThat(BENT.piece(0)).isZero();
        assertThat(BENT.piece(Math.nextDown(8000.0))).isZero();
        assertThat(BENT.piece(8000)).isEqualTo(1);
        // Below no tension the first piece goes on: compliance 0.004/8000 = 5e-7 /N.
        assertThat(BENT.strain(-2000)).isCloseTo(-0.001, within(1e-18));
        assertThat(BENT.tension(-0.001)).as("a rope does not push").isZero();
        assertThat(BENT.strainEnergy(0)).isZero();
        // Triangle below 4 kN: half of 4 kN times 2 ‰ on both sides of the line.
        assertThat(BENT.strainEnergy(4000)).isCloseTo(4, within(1e-14));
        assertThat(BENT.complementaryEnergy(4000)).isCloseTo(4, within(1e-14));
        assertThat(BENT.complementaryEnergy(8000)).isCloseTo(16, within(1e-13));
        assertThat(BENT.strainEnergy(8000)).isCloseTo(16, within(1e-13));
    }

    @ParameterizedTest
    @ValueSource(ints = {-1, 2, 3})
    void thereIsNoPieceBeyondTheLast(int piece) {
        assertThatThrownBy(() -> BENT.compliance(piece)).isInstanceOf(InvalidInputException.class);
        assertThatThrownBy(() -> BENT.offset(piece)).isInstanceOf(InvalidInputException.class);
        assertThatThrownBy(() -> BENT.lowerTension(piece))
                .hasMessage("piece: " + piece + ": must be a number from 0 to 1");
    }

    @Test
    void lawsOfStretchAreEqualByTheirCorners() {
        LoadElongation straight = LoadElongation.curve(List.of(new Corner(0, 0), new Corner(1, 3e6)));
        assertThat(straight.isLinear()).isTrue();
        assertThat(straight.isStiffnessAlone())
                .as("a curve says how far it holds")
                .isFalse();
        assertThat(straight).isNotEqualTo(LoadElongation.linear(3e6));
        assertThat(LoadElongation.linear(3e6).isStiffnessAlone()).isTrue();
        assertThat(LoadElongation.linear(3e6)).hasToString("EA 3000000.0 N");
        assertThat(BENT).hasToString("[0.0, 8000.0, 10000.0] N at strains [0.0, 0.004, 0.01]");
        assertThat(BENT.hashCode())
                .isNotEqualTo(straight.hashCode())
                .isEqualTo(LoadElongation.curve(BENT.corners()).hashCode());
        assertThat(BENT).isEqualTo(LoadElongation.curve(BENT.corners())).isNotEqualTo("EA");
        assertThatThrownBy(() -> BENT.corners().clear()).isInstanceOf(UnsupportedOperationException.class);
    }

    @Test
    void aLawTakesAThousandCornersAndNoNulls() {
        List<Corner> corners = new ArrayList<>();
        for (int i = 0; i < 1000; i++) {
            corners.add(new Corner(1e-5 * i, 10.0 * i));
        }
        assertThat(LoadElongation.curve(corners).pieces()).isEqualTo(999);
        corners.add(new Corner(0.01, 10_000));
        assertThat(Refusal.of(() -> LoadElongation.curve(corners)))
                .containsExactly("loadElongation: 1001 corners: a curve needs no more corners");
        assertThat(Refusal.of(() -> LoadElongation.curve(Arrays.asList(new Corner(0, 0), null))))
                .containsExactly("loadElongation[1]: null: must be given");
        assertThat(Refusal.of(() -> LoadElongation.curve(null))).containsExactly("loadElongation: null: must be given");
    }
}
