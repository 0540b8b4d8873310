package org.lifeline.base;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.ObjectInputStream;
import java.io.ObjectOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Properties;
import java.util.ResourceBundle;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Passage;
import org.lifeline.model.cable.Cable;

/** What a program reads from a refusal: path, code, number, unit, range; in another language; from another process. */
class InputErrorsTest {
    private static List<ViolationCode> codes() {
        return Stream.<ViolationCode>concat(Arrays.stream(InputRule.values()), Arrays.stream(PlausibleRange.values()))
                .toList();
    }

    /** All that is wrong with a line, in one exception, at the names of the methods that took it. */
    @Test
    void aBuilderCollectsEverythingToTheEnd() {
        InvalidInputException e = catchThrowableOfType(
                InvalidInputException.class,
                () -> Lifeline.builder()
                        .endAnchor(" ", Point.of(0, Double.NaN, 0))
                        .intermediateAnchor("post", Point.of(10, 0, 2e6), Passage.free())
                        .endAnchor("south", Point.of(20, 0, 0))
                        .pretension(-3)
                        .gravity(1e9)
                        .build());
        assertThat(e.violations())
                .extracting(v -> v.path() + " " + v.code().key())
                .containsExactlyInAnyOrder(
                        "cable MISSING",
                        "endAnchor[0].id BLANK",
                        "endAnchor[0].position POSITION_NOT_FINITE",
                        "intermediateAnchor[1].position[2] RANGE_COORDINATE",
                        "pretension NOT_ABOVE_ZERO",
                        "gravity RANGE_GRAVITY");
    }

    @Test
    void numbersCarryUnitAndAllowedRange() {
        Violation v = catchThrowableOfType(
                        InvalidInputException.class,
                        () -> Cable.builder()
                                .massPerLength(0.4)
                                .axialStiffness(3e6)
                                .terminationEfficiency(1.5)
                                .breakingStrength(1e12)
                                .build())
                .violations()
                .get(0);
        assertThat(v.path()).isEqualTo("breakingStrength");
        assertThat(v.code()).isEqualTo(PlausibleRange.STRENGTH);
        assertThat(v.number()).hasValue(1e12);
        assertThat(v.unit()).isEqualTo("N");
        assertThat(v.allowed()).contains(AllowedRange.within(Interval.of(1, 1e9)));
        assertThat(v.allowed().orElseThrow().contains(1)).isTrue();
        assertThat(v.allowed().orElseThrow().contains(1e12)).isFalse();
    }

    @Test
    void rangesSayWhatTheyTake() {
        assertThat(AllowedRange.above(0).contains(0)).isFalse();
        assertThat(AllowedRange.above(0).upTo(1).contains(1)).isTrue();
        assertThat(AllowedRange.atLeast(0).contains(0)).isTrue();
        assertThat(AllowedRange.atMost(2).contains(2.5)).isFalse();
        assertThat(AllowedRange.finite().contains(Double.POSITIVE_INFINITY)).isFalse();
        assertThat(AllowedRange.finite().contains(Double.NaN)).isFalse();
        assertThat(AllowedRange.inside(Interval.of(0, 1))).hasToString("(0.0, 1.0)");
        assertThat(AllowedRange.above(0).upTo(1)).hasToString("(0.0, 1.0]");
    }

    @Test
    void anotherLanguageFromABundle() {
        ResourceBundle bundle = ResourceBundle.getBundle("org.lifeline.base.messages_test", Locale.GERMAN);
        MessageTexts german = BundleTexts.of(bundle);
        Violation span = Violation.of("span", GivenValue.count(4), InputRule.NO_SUCH_SPAN, 3);
        assertThat(span.rule()).isEqualTo("must be a span from 1 to 3");
        assertThat(span.rule(german)).isEqualTo("muss ein Feld von 1 bis 3 sein");
        Violation mass = catchThrowableOfType(
                        InvalidInputException.class, () -> PlausibleRange.WORKER_MASS.required("mass", 1))
                .violations()
                .get(0);
        assertThat(mass.rule(german)).startsWith("muss zwischen 10 kg und 10 000 kg liegen");
        assertThat(Violation.of("x", GivenValue.missing(), InputRule.BLANK).rule(german))
                .as("a rule that the bundle does not hold stays English")
                .isEqualTo("must not be blank");
        assertThat(span.rule(MessageTexts.english())).isEqualTo(span.rule());
    }

    /** The file from which a translator starts holds exactly the sentences that are built in. */
    @Test
    void theEnglishBundleAgreesWithTheCodes() throws IOException {
        Properties file = new Properties();
        try (var in = InputRule.class.getResourceAsStream("/org/lifeline/base/messages.properties")) {
            file.load(new java.io.InputStreamReader(in, StandardCharsets.UTF_8));
        }
        for (ViolationCode each : codes()) {
            assertThat(file.remove(each.key())).as(each.key()).isEqualTo(each.english());
        }
        assertThat(file).isEmpty();
    }

    @Test
    void keysAreUnique() {
        assertThat(codes().stream().map(ViolationCode::key)).doesNotHaveDuplicates();
    }

    @Test
    void exceptionsSurviveSerialization() throws IOException, ClassNotFoundException {
        List<Violation> found = new ArrayList<>();
        found.add(Violation.of("pretension", GivenValue.number(-3, "N"), InputRule.NOT_ABOVE_ZERO)
                .allowing(AllowedRange.above(0)));
        found.add(Violation.of("support[3].id", GivenValue.text("a"), InputRule.ID_TAKEN, "support[1]"));
        found.add(new Violation("x", "y", "must be z"));
        InvalidInputException input = copy(new InvalidInputException(found));
        assertThat(input.violations()).isEqualTo(found);
        assertThat(input).hasMessage(new InvalidInputException(found).getMessage());

        Convergence c = new Convergence(17, 3e-5, 1e-11);
        NoEquilibriumException lost =
                copy(new NoEquilibriumException("span 3", new NoEquilibriumException.Reached(0.25, 4500), c));
        assertThat(lost.where()).isEqualTo("span 3");
        assertThat(lost.loadFactor()).isEqualTo(0.25);
        assertThat(lost.load()).hasValue(4500);
        assertThat(lost.convergence()).isEqualTo(c);
        assertThat(lost).hasMessageContaining("load 4500.0 N");
        assertThat(copy(new NoEquilibriumException("installed line", 0, c)).load())
                .isEmpty();
    }

    @SuppressWarnings("unchecked")
    private static <T> T copy(T original) throws IOException, ClassNotFoundException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ObjectOutputStream out = new ObjectOutputStream(bytes)) {
            out.writeObject(original);
        }
        try (ObjectInputStream in = new ObjectInputStream(new ByteArrayInputStream(bytes.toByteArray()))) {
            return (T) in.readObject();
        }
    }
}
