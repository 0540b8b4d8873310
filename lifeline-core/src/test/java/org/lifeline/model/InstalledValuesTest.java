package org.lifeline.model;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.lifeline.model.ModelParts.threeSpans;

import java.util.List;
import java.util.function.DoubleFunction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.lifeline.base.AllowedRange;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.Point;
import org.lifeline.base.Refusal;
import org.lifeline.base.Violation;
import org.lifeline.model.Installed.Form;
import org.lifeline.model.Installed.TensioningEnd;
import org.lifeline.model.cable.Cable;

/** Installed states as values, and the limits that a line sets to them, inclined spans with them. */
@SuppressWarnings("NullAway") // Null is handed over to be refused, and what is there is taken as there.
class InstalledValuesTest {
    @Test
    void eachWayToStateItKeepsFormValueAndSpan() {
        assertThat(Installed.pretension(1500).form()).isEqualTo(Form.PRETENSION);
        assertThat(Installed.horizontalTension(1500).form()).isEqualTo(Form.HORIZONTAL_TENSION);
        assertThat(Installed.unstretchedLength(24.1).form()).isEqualTo(Form.UNSTRETCHED_LENGTH);
        Installed sag = Installed.initialSag(3, 0.12);
        assertThat(sag.form()).isEqualTo(Form.INITIAL_SAG);
        assertThat(sag.value()).isEqualTo(0.12);
        assertThat(sag.span()).isEqualTo(3);
        assertThat(sag.temperature()).isEqualTo(15).isEqualTo(Installed.DEFAULT_TEMPERATURE);
        assertThat(sag.tensionedFrom()).isEmpty();
        assertThat(Installed.pretension(1500).span()).isEqualTo(1);
    }

    @Test
    void copiesChangeOneThing() {
        Installed base = Installed.horizontalTension(1500)
                .tensionedFrom(TensioningEnd.LAST)
                .atTemperature(-5);
        assertThat(base.tensionedFrom()).contains(TensioningEnd.LAST);
        assertThat(base.temperature()).isEqualTo(-5);
        Installed other = base.inSpan(2);
        assertThat(other.span()).isEqualTo(2);
        assertThat(other.tensionedFrom()).contains(TensioningEnd.LAST);
        assertThat(other.temperature()).isEqualTo(-5);
        assertThat(other.inSpan(1)).isEqualTo(base).hasSameHashCodeAs(base);
        Installed tensioned = other.withPretension(2000);
        assertThat(tensioned.form()).isEqualTo(Form.PRETENSION);
        assertThat(tensioned.span())
                .as("a pretension is that of the first span")
                .isEqualTo(1);
        assertThat(tensioned.temperature()).isEqualTo(-5);
        assertThat(tensioned.tensionedFrom()).contains(TensioningEnd.LAST);
    }

    @Test
    void tensionedLikeAnotherTakesItsTemperatureAndEnd() {
        Installed other = Installed.pretension(1).atTemperature(30).tensionedFrom(TensioningEnd.FIRST);
        Installed like = Installed.initialSag(2, 0.1).tensionedLike(other);
        assertThat(like)
                .isEqualTo(Installed.initialSag(2, 0.1).atTemperature(30).tensionedFrom(TensioningEnd.FIRST));
        assertThat(like.tensionedLike(Installed.pretension(1))).isEqualTo(Installed.initialSag(2, 0.1));
        assertThat(Refusal.paths(() -> like.tensionedLike(null))).containsExactly("other");
        assertThat(Refusal.paths(() -> like.tensionedFrom(null))).containsExactly("tensionedFrom");
    }

    @Test
    void statesAreEqualWhenAllThatWasStatedIs() {
        Installed base = Installed.pretension(1500);
        for (Installed other : List.of(
                Installed.horizontalTension(1500),
                Installed.pretension(1501),
                base.inSpan(2),
                base.atTemperature(16),
                base.tensionedFrom(TensioningEnd.FIRST))) {
            assertThat(other).isNotEqualTo(base);
            assertThat(other.hashCode()).isNotEqualTo(base.hashCode());
            assertThat(other.fingerprint()).isNotEqualTo(base.fingerprint());
        }
        assertThat(base.tensionedFrom(TensioningEnd.FIRST)).isNotEqualTo(base.tensionedFrom(TensioningEnd.LAST));
        assertThat(base).isNotEqualTo("pretension");
    }

    @Test
    void statesArePrintedWithTheirUnits() {
        assertThat(Installed.pretension(1500)).hasToString("pretension 1500.0 N at 15.0 °C");
        assertThat(Installed.horizontalTension(1500).inSpan(2))
                .hasToString("horizontal tension 1500.0 N in span 2 at 15.0 °C");
        assertThat(Installed.initialSag(3, 0.1).tensionedFrom(TensioningEnd.LAST))
                .hasToString("sag 0.1 m in span 3 at 15.0 °C, tensioned from end LAST");
        assertThat(Installed.unstretchedLength(24.1).atTemperature(-5))
                .hasToString("unstretched length 24.1 m at -5.0 °C");
    }

    @Test
    void theFormGivesForcesInNewtonAndLengthsInMetres() {
        assertThat(Installed.horizontalTension(1500).canonicalForm())
                .hasToString("installed\nform: HORIZONTAL_TENSION\nvalue: 1500.0 N\nspan: 1.0\ntemperature: 15.0 °C");
        assertThat(Installed.initialSag(2, 0.1)
                        .tensionedFrom(TensioningEnd.FIRST)
                        .canonicalForm())
                .hasToString("installed\nform: INITIAL_SAG\nvalue: 0.1 m\nspan: 2.0\ntemperature: 15.0 °C"
                        + "\ntensionedFrom: FIRST");
        assertThat(Installed.unstretchedLength(9).canonicalForm().toString()).contains("value: 9.0 m\n");
        assertThat(Installed.pretension(9).canonicalForm().toString()).contains("value: 9.0 N\n");
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, -1, Double.NaN, Double.POSITIVE_INFINITY})
    void whatIsInstalledIsFiniteAndAboveZero(double value) {
        assertThat(Refusal.of(() -> Installed.pretension(value)))
                .containsExactly("pretension: " + value + " N: must be a finite number above zero");
        assertThat(Refusal.of(() -> Installed.horizontalTension(value)))
                .containsExactly("horizontalTension: " + value + " N: must be a finite number above zero");
        assertThat(Refusal.of(() -> Installed.initialSag(1, value)))
                .containsExactly("initialSag: " + value + " m: must be a finite number above zero");
        assertThat(Refusal.of(() -> Installed.unstretchedLength(value)))
                .containsExactly("unstretchedLength: " + value + " m: must be a finite number above zero");
    }

    @Test
    void spansAndTemperaturesAreChecked() {
        assertThat(Refusal.of(() -> Installed.initialSag(0, 0.1))).containsExactly("span: 0: must be 1 or more");
        assertThat(Refusal.paths(() -> Installed.pretension(1).inSpan(-3))).containsExactly("span");
        assertThat(Refusal.paths(() -> Installed.pretension(1).atTemperature(-273.15)))
                .containsExactly("temperature");
        assertThat(Refusal.paths(() -> Installed.pretension(1).atTemperature(1000)))
                .containsExactly("temperature");
        assertThat(Refusal.paths(() -> Installed.initialSag(0, -1))).containsExactly("initialSag", "span");
        InvalidInputException e = catchThrowableOfType(InvalidInputException.class, () -> Installed.initialSag(0, 0.1));
        assertThat(e.violations().get(0).allowed()).contains(AllowedRange.atLeast(1));
    }

    /** One inclined span: run 8 m, rise 6 m, chord 10 m. */
    private static List<Violation> inclined(Cable cable, Installed state) {
        try {
            Lifeline.builder()
                    .cable(cable)
                    .endAnchor("a", Point.of(0, 0, 0))
                    .endAnchor("b", Point.of(8, 0, 6))
                    .installed(state)
                    .build();
            return List.of();
        } catch (InvalidInputException e) {
            return e.violations();
        }
    }

    @ParameterizedTest
    @CsvSource({"sag, 10, 10.001, SAG_ABOVE_SPAN", "length, 25, 25.001, LENGTH_TOO_LONG"})
    void limitsOfAnInclinedSpanAreThoseOfItsChord(String form, double good, double bad, String rule) {
        Cable stiff = Cable.builder().weightPerLength(5).axialStiffness(5e6).build();
        DoubleFunction<Installed> state =
                form.equals("sag") ? x -> Installed.initialSag(1, x) : Installed::unstretchedLength;
        assertThat(inclined(stiff, state.apply(good))).isEmpty();
        Violation v = inclined(stiff, state.apply(bad)).get(0);
        assertThat(v.code().key()).isEqualTo(rule);
        assertThat(v.allowed().orElseThrow().contains(good)).isTrue();
        assertThat(v.allowed().orElseThrow().contains(bad)).isFalse();
    }

    /** H = w c l/(8 f): at w 5 N/m, c 10 m, l 8 m and a sag of 10 mm, 5 kN: 5 % of a cable of EA 100 kN. */
    @Test
    void theStrainFromASagOfAnInclinedSpan() {
        Cable soft = Cable.builder().weightPerLength(5).axialStiffness(1e5).build();
        assertThat(inclined(soft, Installed.initialSag(1, 0.01001))).isEmpty();
        Violation v = inclined(soft, Installed.initialSag(1, 0.00999)).get(0);
        assertThat(v.code().key()).isEqualTo("STRAIN_AT_INSTALLATION");
        assertThat(v.path()).isEqualTo("installed.initialSag");
        assertThat(v.value()).isEqualTo("0.00999 m");
        assertThat(v.rule()).contains("would stretch the cable by 5.005", "up to 5.0 %");
    }

    /** A chord of 10 m on a shorter cable is a strain of 10/L - 1: 5 % at 9.5238 m. A longer one hangs slack. */
    @Test
    void theStrainFromALengthShorterThanTheChord() {
        Cable soft = Cable.builder().weightPerLength(5).axialStiffness(1e5).build();
        assertThat(inclined(soft, Installed.unstretchedLength(10 / 1.0499))).isEmpty();
        assertThat(inclined(soft, Installed.unstretchedLength(10 / 1.0501)))
                .extracting(v -> v.code().key())
                .containsExactly("STRAIN_AT_INSTALLATION");
        assertThat(inclined(soft, Installed.unstretchedLength(10))).isEmpty();
        assertThat(inclined(soft, Installed.unstretchedLength(12))).isEmpty();
    }

    @Test
    void aPretensionGivenToTheBuilderIsRefusedByItsOwnName() {
        Cable weak = Cable.builder()
                .weightPerLength(5)
                .axialStiffness(5e6)
                .breakingStrength(1e4)
                .terminationEfficiency(0.9)
                .build();
        assertThat(Refusal.paths(() -> threeSpans().cable(weak).pretension(9001).build()))
                .containsExactly("pretension");
        assertThat(Refusal.paths(() -> threeSpans()
                        .cable(weak)
                        .installed(Installed.pretension(9001))
                        .build()))
                .containsExactly("installed.pretension");
        assertThat(Refusal.paths(() -> threeSpans()
                        .cable(weak)
                        .installed(Installed.horizontalTension(9001))
                        .build()))
                .containsExactly("installed.horizontalTension");
        assertThat(threeSpans().cable(weak).pretension(9000).build().installed().value())
                .isEqualTo(9000);
    }
}
