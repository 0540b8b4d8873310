package org.lifeline.base;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** One violation: its parts, its sentence, its copies, and when two are the same. */
@SuppressWarnings("NullAway") // Null is handed over to be refused, and what is there is taken as there.
class ViolationValueTest {
    private static final Violation MASS = Violation.of("mass", GivenValue.number(-3, "kg"), InputRule.NOT_ABOVE_ZERO)
            .allowing(AllowedRange.above(0));

    /** A rule of a reader outside of the library. */
    private record Told(String key, String english) implements ViolationCode {}

    private static String filled(String sentence, Object... arguments) {
        return Violation.of("p", GivenValue.text("x"), new Told("TOLD", sentence), arguments)
                .rule();
    }

    @Test
    void everythingGivenComesBack() {
        assertThat(MASS.path()).isEqualTo("mass");
        assertThat(MASS.value()).isEqualTo("-3.0 kg");
        assertThat(MASS.number()).hasValue(-3);
        assertThat(MASS.unit()).isEqualTo("kg");
        assertThat(MASS.code()).isEqualTo(InputRule.NOT_ABOVE_ZERO);
        assertThat(MASS.allowed()).contains(AllowedRange.above(0));
        assertThat(MASS.arguments()).isEmpty();
        assertThat(MASS.rule()).isEqualTo("must be a finite number above zero");
        assertThat(MASS).hasToString("mass: -3.0 kg: must be a finite number above zero");
    }

    @Test
    void aStatedViolationHasTextOnly() {
        Violation v = new Violation("cable", "blue", "must be of steel");
        assertThat(v.code()).isEqualTo(InputRule.STATED);
        assertThat(v.arguments()).containsExactly("must be of steel");
        assertThat(v.rule()).isEqualTo("must be of steel");
        assertThat(v.number()).isEmpty();
        assertThat(v.unit()).isEmpty();
        assertThat(v.allowed()).isEmpty();
    }

    @Test
    void theValueAsWrittenReplacesTheTextAlone() {
        Violation v = MASS.written("-3 000 g");
        assertThat(v.value()).isEqualTo("-3 000 g");
        assertThat(v.number()).hasValue(-3);
        assertThat(v.unit()).isEqualTo("kg");
        assertThat(v.allowed()).isEqualTo(MASS.allowed());
        assertThat(v.path()).isEqualTo("mass");
        assertThat(MASS.value()).as("the original stays").isEqualTo("-3.0 kg");
    }

    @Test
    void aCopyElsewhereKeepsAllButThePlace() {
        Violation there = MASS.at("workers[0].mass");
        assertThat(there.path()).isEqualTo("workers[0].mass");
        assertThat(there.at("mass")).isEqualTo(MASS);
        assertThat(MASS.below("workers[0]")).isEqualTo(there);
        assertThat(MASS.below("")).isSameAs(MASS);
    }

    @ParameterizedTest
    @CsvSource({
        "cable, diameter, cable.diameter",
        "supports, [2].id, supports[2].id",
        "cable, '', cable",
        "'', diameter, diameter",
        "a.b, c.d, a.b.c.d"
    })
    void aPathIsJoinedToItsParent(String parent, String path, String joined) {
        assertThat(new Violation(path, "x", "y").below(parent).path()).isEqualTo(joined);
    }

    @Test
    void argumentsAreTextsInTheOrderOfTheirNumbers() {
        Violation v = Violation.of("sag", GivenValue.number(9, "m"), InputRule.NOT_INSIDE_RANGE, 0, 2.5);
        assertThat(v.arguments()).containsExactly("0", "2.5");
        assertThat(v.rule()).isEqualTo("must lie above 0 and below 2.5");
        assertThat(filled("{1} before {0} before {1}", "b", "a")).isEqualTo("a before b before a");
        assertThat(filled("{0}", (Object) null)).isEqualTo("null");
    }

    @Test
    void tenArgumentsHaveOneDigitEach() {
        Object[] ten = {"a", "b", "c", "d", "e", "f", "g", "h", "i", "j"};
        assertThat(filled("{9}{8}{0}", ten)).isEqualTo("jia");
        assertThat(filled("{10}", ten)).as("there is no eleventh").isEqualTo("{10}");
    }

    @Test
    void bracesAroundAnythingElseStay() {
        for (String sentence : List.of("{}", "{a}", "{1}", "{-}", "a { b", "a } b", "{", "}", "{0", "{/}", "{{x}}")) {
            assertThat(filled(sentence, "only one")).isEqualTo(sentence);
        }
        assertThat(filled("{{0}}", "x")).isEqualTo("{x}");
        assertThat(filled("{0}")).as("no argument at all").isEqualTo("{0}");
    }

    @Test
    void bracesWithinAnArgumentAreNotFilledAgain() {
        assertThat(filled("{0} and {1}", "{1}", "{0}")).isEqualTo("{1} and {0}");
    }

    @Test
    void anotherLanguageTakesTheSameArguments() {
        Violation v = Violation.of("span", GivenValue.count(9), InputRule.NO_SUCH_SPAN, 3);
        assertThat(v.rule(code -> code == InputRule.NO_SUCH_SPAN ? "1 … {0}" : "?"))
                .isEqualTo("1 … 3");
        assertThat(v.rule(MessageTexts.english())).isEqualTo("must be a span from 1 to 3");
    }

    @Test
    void violationsAreEqualWhenEveryPartIs() {
        Violation twin = Violation.of("mass", GivenValue.number(-3, "kg"), InputRule.NOT_ABOVE_ZERO)
                .allowing(AllowedRange.above(0));
        assertThat(twin).isEqualTo(MASS).hasSameHashCodeAs(MASS);
        assertThat(MASS.at("length")).isNotEqualTo(MASS);
        assertThat(MASS.written("-3 kg")).isNotEqualTo(MASS);
        assertThat(MASS.allowing(AllowedRange.atLeast(0))).isNotEqualTo(MASS);
        assertThat(Violation.of("mass", GivenValue.number(-3, "kg"), InputRule.NOT_ABOVE_ZERO))
                .isNotEqualTo(MASS);
        assertThat(Violation.of("mass", GivenValue.number(-3, "kg"), InputRule.NEGATIVE)
                        .allowing(AllowedRange.above(0)))
                .isNotEqualTo(MASS);
        assertThat(MASS).isNotEqualTo("mass: -3.0 kg: must be a finite number above zero");
        assertThat(MASS).isNotEqualTo(null);
    }

    @Test
    void argumentsAreComparedAsWell() {
        Violation three = Violation.of("span", GivenValue.count(9), InputRule.NO_SUCH_SPAN, 3);
        Violation four = Violation.of("span", GivenValue.count(9), InputRule.NO_SUCH_SPAN, 4);
        assertThat(three).isEqualTo(Violation.of("span", GivenValue.count(9), InputRule.NO_SUCH_SPAN, "3"));
        assertThat(three).isNotEqualTo(four);
        assertThat(three.hashCode()).isNotEqualTo(four.hashCode());
    }

    @Test
    void whatWasGivenIsShownWithItsUnitAndKeptAsANumber() {
        assertThat(GivenValue.number(1.5, "kN")).isEqualTo(new GivenValue("1.5 kN", 1.5, "kN"));
        assertThat(GivenValue.number(1.5, "")).isEqualTo(new GivenValue("1.5", 1.5, ""));
        assertThat(GivenValue.number(Double.NaN, "m").number()).isEmpty();
        assertThat(GivenValue.number(Double.POSITIVE_INFINITY, "m").number()).hasValue(Double.POSITIVE_INFINITY);
        assertThat(GivenValue.count(-4)).isEqualTo(new GivenValue("-4", -4, ""));
        assertThat(GivenValue.countOf(3, "corners")).isEqualTo(new GivenValue("3 corners", 3, ""));
        assertThat(GivenValue.text("blue").text()).isEqualTo("blue");
        assertThat(GivenValue.text("7").number()).as("a text is no number").isEmpty();
        assertThat(GivenValue.quoted(" ").text()).isEqualTo("\" \"");
        assertThat(GivenValue.missing().text()).isEqualTo("missing");
        assertThat(GivenValue.missing().number()).isEmpty();
    }
}
