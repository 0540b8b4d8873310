package org.lifeline.model;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.lifeline.base.Point;
import org.lifeline.base.Refusal;
import org.lifeline.model.cable.Cable;
import org.lifeline.model.cable.LoadElongation;

/** Installed states beyond what cable and terminations hold, or beyond the model, are refused before anything is solved. */
class InstalledLimitsTest {
    private static Cable.Builder cable() {
        return Cable.builder().weightPerLength(5).axialStiffness(4.9e6);
    }

    private static Lifeline.Builder line(Cable cable) {
        return Lifeline.builder()
                .cable(cable)
                .endAnchor("a", Point.of(0, 0, 12))
                .intermediateAnchor("post", Point.of(15, 0, 12), Passage.free())
                .endAnchor("b", Point.of(30, 0, 12));
    }

    private static List<String> refusal(Cable cable, Installed installed) {
        return Refusal.of(() -> line(cable).installed(installed).build());
    }

    @Test
    void tensionAboveWhatTheCableHolds() {
        Cable c = cable().breakingStrength(90e3).terminationEfficiency(0.9).build();

        assertThat(refusal(c, Installed.pretension(81_000))).isEmpty();
        assertThat(refusal(c, Installed.pretension(81_001)))
                .containsExactly("installed.pretension: 81001.0 N: is more than cable and terminations hold, 81000.0 N"
                        + " (breaking strength 90000.0 N times termination efficiency 0.9)");
        assertThat(refusal(c, Installed.horizontalTension(9e7)))
                .hasSize(2)
                .allSatisfy(v -> assertThat(v).startsWith("installed.horizontalTension: 9.0E7 N: "));
        assertThat(Refusal.paths(() -> Installed.pretension(9e14))).containsExactly("pretension");
    }

    @Test
    void anUnstatedEfficiencyIsTheLowest() {
        Cable c = cable().breakingStrength(90e3).build();

        assertThat(c.terminationStrength().orElseThrow()).isEqualTo(0.8 * 90e3);
        assertThat(refusal(c, Installed.pretension(72_001))).hasSize(1);
        assertThat(refusal(c, Installed.pretension(72_000))).isEmpty();
    }

    /** T = EA ε: 5 % of 1e5 N is 5 kN. */
    @Test
    void strainOfACableGivenByItsStiffness() {
        Cable soft = cable().axialStiffness(1e5).build();

        assertThat(refusal(soft, Installed.pretension(4999))).isEmpty();
        assertThat(refusal(soft, Installed.pretension(5001)))
                .singleElement()
                .asString()
                .contains("5.001", "axialStiffness");
        assertThat(refusal(soft, Installed.unstretchedLength(30 / 1.0499))).isEmpty();
        assertThat(refusal(soft, Installed.unstretchedLength(30 / 1.0501)))
                .singleElement()
                .asString()
                .startsWith("installed.unstretchedLength: 28.56");
    }

    /** A parabola: H = w l²/8f; 5 kN at w = 5 N/m over 15 m is a sag of 28.125 mm. */
    @Test
    void strainFromASag() {
        Cable soft = cable().axialStiffness(1e5).build();

        assertThat(refusal(soft, Installed.initialSag(2, 0.0282))).isEmpty();
        assertThat(refusal(soft, Installed.initialSag(2, 0.0281))).hasSize(1);
    }

    @Test
    void aCurveSaysItselfHowFarItHolds() {
        Cable rope = Cable.builder()
                .weightPerLength(1)
                .elongation(LoadElongation.curve(List.of(
                        new LoadElongation.Corner(0, 0),
                        new LoadElongation.Corner(0.1, 5000),
                        new LoadElongation.Corner(0.15, 9000))))
                .build();

        assertThat(refusal(rope, Installed.pretension(5000))).isEmpty();
    }

    @Test
    void aSagBeyondTheSpan() {
        Cable c = cable().build();

        assertThat(refusal(c, Installed.initialSag(1, 15))).isEmpty();
        assertThat(refusal(c, Installed.initialSag(1, 100)))
                .containsExactly("installed.initialSag: 100.0 m: must be at most the span of 15.0 m");
        assertThat(refusal(c, Installed.unstretchedLength(75))).isEmpty();
        assertThat(refusal(c, Installed.unstretchedLength(76)))
                .containsExactly("installed.unstretchedLength: 76.0 m: must be at most 2.5 times the distance along the"
                        + " supports of 30.0 m");
    }

    @Test
    void aStiffnessTypedInTheWrongUnit() {
        assertThat(Refusal.of(() -> cable().axialStiffness(3300).build()))
                .containsExactly(
                        "axialStiffness: 3300.0 N: must lie from 5000.0 N to 1.0E9 N: softer than a mountaineering"
                                + " rope or stiffer than an 80 mm steel bar");
        assertThat(Refusal.paths(() -> Cable.builder()
                        .weightPerLength(5)
                        .elasticModulus(1e8)
                        .metallicArea(1e-5)
                        .build()))
                .containsExactly("axialStiffness");
    }
}
