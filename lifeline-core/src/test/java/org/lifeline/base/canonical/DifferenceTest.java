package org.lifeline.base.canonical;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Canonical forms as values, their entries, and the differences of two of them. */
class DifferenceTest {
    private static CanonicalForm number(double value) {
        return CanonicalForm.builder("k").number("a", value, "N").build();
    }

    private static CanonicalForm text(String value) {
        return CanonicalForm.builder("k").text("a", value).build();
    }

    private static Difference only(CanonicalForm before, CanonicalForm after) {
        List<Difference> list = Difference.between(before, after);
        assertThat(list).hasSize(1);
        return list.get(0);
    }

    /** Change, share of the first number, and text, by hand; the share is empty where there is nothing to compare with. */
    @ParameterizedTest
    @CsvSource({
        "100, 125, 25, 0.25, a: 100.0 N → 125.0 N (+25.0)",
        "125, 100, -25, -0.2, a: 125.0 N → 100.0 N (-25.0)",
        "-100, -50, 50, 0.5, a: -100.0 N → -50.0 N (+50.0)",
        "-50, 50, 100, 2, a: -50.0 N → 50.0 N (+100.0)",
        "0, 5, 5, , a: 0.0 N → 5.0 N (+5.0)",
        "5, 0, -5, -1, a: 5.0 N → 0.0 N (-5.0)",
        "-0.0, 0.0, 0, , a: -0.0 N → 0.0 N (0.0)",
        "5, NaN, , , a: 5.0 N → NaN N",
        "Infinity, 5, , , a: Infinity N → 5.0 N"
    })
    void byHowMuchANumberChanged(double before, double after, Double change, Double share, String shown) {
        Difference d = only(number(before), number(after));
        assertThat(d.change()).isEqualTo(change == null ? OptionalDouble.empty() : OptionalDouble.of(change));
        assertThat(d.relativeChange()).isEqualTo(share == null ? OptionalDouble.empty() : OptionalDouble.of(share));
        assertThat(d).hasToString(shown);
    }

    /** The tolerance is a share of the larger of the two magnitudes: 8 and 10 differ by 0.2 of 10, whichever is first. */
    @ParameterizedTest
    @CsvSource({
        "8, 10, 0.2, false",
        "8, 10, 0.1999, true",
        "10, 8, 0.2, false",
        "10, 8, 0.1999, true",
        "-8, -10, 0.2, false",
        "-8, 8, 2, false",
        "-8, 8, 1.999, true",
        "0, 10, 0.999, true",
        "0, 10, 1, false",
        "3, NaN, 100, true",
        "3, Infinity, 100, true"
    })
    void roundingIsAShareOfTheLargerNumber(double before, double after, double tolerance, boolean beyond) {
        assertThat(only(number(before), number(after)).isBeyond(tolerance)).isEqualTo(beyond);
    }

    @Test
    void aTextThatChangedIsBeyondEveryTolerance() {
        Difference d = only(text("red"), text("blue"));
        assertThat(d.change()).isEmpty();
        assertThat(d.relativeChange()).isEmpty();
        assertThat(d.isBeyond(1e9)).isTrue();
        assertThat(d).hasToString("a: red → blue");
    }

    @Test
    void whatCameAndWhatWentIsBeyondEveryTolerance() {
        CanonicalForm none = CanonicalForm.builder("k").build();
        Difference came = only(none, number(3));
        assertThat(came).hasToString("a: none → 3.0 N");
        assertThat(came.before()).isEmpty();
        assertThat(came.isBeyond(1e9)).isTrue();
        Difference went = only(number(3), none);
        assertThat(went).hasToString("a: 3.0 N → none");
        assertThat(went.after()).isEmpty();
        assertThat(went.isBeyond(1e9)).isTrue();
    }

    @Test
    void whatChangedAndWentComesFirstAndThenWhatCame() {
        CanonicalForm before = CanonicalForm.builder("k")
                .text("gone", "x")
                .number("same", 1, "m")
                .number("changed", 1, "m")
                .build();
        CanonicalForm after = CanonicalForm.builder("k")
                .text("new", "y")
                .number("changed", 2, "m")
                .number("same", 1, "m")
                .build();
        assertThat(Difference.between(before, after))
                .extracting(Difference::path)
                .containsExactly("gone", "changed", "new");
        assertThat(Difference.between(after, before))
                .extracting(Difference::path)
                .containsExactly("new", "changed", "gone");
        assertThat(Difference.between(before, before)).isEmpty();
        assertThatThrownBy(() -> Difference.between(before, after).clear())
                .isInstanceOf(UnsupportedOperationException.class);
    }

    @Test
    void formsAreEqualWhenKindAndEntriesAre() {
        assertThat(number(3)).isEqualTo(number(3)).hasSameHashCodeAs(number(3));
        assertThat(number(3))
                .isNotEqualTo(number(4))
                .isNotEqualTo(text("3.0 N"))
                .isNotEqualTo("k");
        CanonicalForm otherKind =
                CanonicalForm.builder("other").number("a", 3, "N").build();
        assertThat(otherKind).isNotEqualTo(number(3));
        assertThat(otherKind.hashCode()).isNotEqualTo(number(3).hashCode());
        assertThat(number(3).hashCode()).isNotEqualTo(number(4).hashCode());
        assertThat(otherKind.fingerprint()).isNotEqualTo(number(3).fingerprint());
        assertThat(number(3).hashCode())
                .as("kind and entries as lists are hashed")
                .isEqualTo(31 * "k".hashCode() + number(3).entries().hashCode());
    }

    @Test
    void aFormIsWrittenAnEntryALine() {
        CanonicalForm form = CanonicalForm.builder("cable")
                .text("name", "rope")
                .number("mass", 0.5, "kg/m")
                .number("factor", 2, "")
                .build();
        assertThat(form).hasToString("cable\nname: rope\nmass: 0.5 kg/m\nfactor: 2.0");
        assertThat(CanonicalForm.builder("empty").build()).hasToString("empty");
    }

    @Test
    void anEntryIsANumberOrAText() {
        List<CanonicalForm.Entry> entries = CanonicalForm.builder("k")
                .number("n", 1.5, "m")
                .number("given", OptionalDouble.of(2), "s")
                .number("absent", OptionalDouble.empty(), "s")
                .text("t", 7)
                .build()
                .entries();
        assertThat(entries).extracting(CanonicalForm.Entry::path).containsExactly("n", "given", "t");
        assertThat(entries).extracting(CanonicalForm.Entry::isNumber).containsExactly(true, true, false);
        assertThat(entries).extracting(CanonicalForm.Entry::shown).containsExactly("1.5 m", "2.0 s", "7");
        assertThat(entries.get(2).number()).isNaN();
        assertThatThrownBy(entries::clear).isInstanceOf(UnsupportedOperationException.class);
    }

    @Test
    void aPartIsPutBelowItsPath() {
        Canonical part = () -> number(3);
        CanonicalForm whole = CanonicalForm.builder("whole")
                .part("first", part)
                .part("second", part)
                .build();
        assertThat(whole).hasToString("whole\nfirst.a: 3.0 N\nsecond.a: 3.0 N");
        assertThatThrownBy(() -> CanonicalForm.builder("w").part("x", part).part("x", part))
                .isInstanceOf(IllegalStateException.class)
                .hasMessage("x.a has been added before");
    }

    @Test
    void aBuilderUsedTwiceLeavesTheFirstFormAlone() {
        CanonicalForm.Builder b = CanonicalForm.builder("k").text("a", 1);
        CanonicalForm first = b.build();
        CanonicalForm second = b.text("b", 2).build();
        assertThat(first.entries()).hasSize(1);
        assertThat(second.entries()).hasSize(2);
    }

    /** Brackets of an id must not be taken for those of the path: a] and [b, and a backslash before them. */
    @ParameterizedTest
    @CsvSource({"post, s[post]", "a[0], s[a\\[0\\]]", "a\\, s[a\\\\]", "'', s[]"})
    void theIdOfAnElementIsEscaped(String id, String path) {
        assertThat(CanonicalForm.Builder.element("s", id)).isEqualTo(path);
    }

    /** Same bytes, same print: one number as text, with another unit, at another path, and as -0.0 are all others. */
    @Test
    void everyPartOfAnEntryIsInTheFingerprint() {
        Fingerprint base = number(0).fingerprint();
        assertThat(number(0).fingerprint()).isEqualTo(base).hasSameHashCodeAs(base);
        assertThat(base.version()).isEqualTo(Fingerprint.VERSION);
        assertThat(base.sha256()).hasSize(64).matches("[0-9a-f]+");
        for (CanonicalForm other : List.of(
                number(-0.0),
                number(4.9e-324),
                text("0.0"),
                CanonicalForm.builder("k").number("a", 0, "kN").build(),
                CanonicalForm.builder("k").number("b", 0, "N").build(),
                CanonicalForm.builder("l").number("a", 0, "N").build(),
                CanonicalForm.builder("k").build())) {
            assertThat(other.fingerprint()).as("%s", other).isNotEqualTo(base);
        }
        assertThat(number(Double.NaN).fingerprint())
                .as("every NaN is the same")
                .isEqualTo(number(Double.longBitsToDouble(0x7ff8000000000001L)).fingerprint());
    }

    @Test
    void aCombinationOfOneIsNotThatOneItself() {
        Canonical one = () -> number(1);
        Canonical two = () -> number(2);
        Fingerprint both = Fingerprint.combined(List.of(one, two));
        assertThat(both).isEqualTo(Fingerprint.combined(List.of(one, two)));
        assertThat(both).isNotEqualTo(Fingerprint.combined(List.of(two, one)));
        assertThat(both).isNotEqualTo(Fingerprint.combined(List.of(one)));
        assertThat(Fingerprint.combined(List.of(one))).isNotEqualTo(one.fingerprint());
        assertThatThrownBy(() -> Fingerprint.combined(List.of())).hasMessage("parts: 0: must be at least 1");
    }
}
