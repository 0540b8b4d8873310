package org.lifeline.base;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What each format does with each kind of character, and where long text is cut. */
class InertTextFormatsTest {
    /** Unicode block "Control Pictures": U+2400 and on for U+0000 to U+001F, U+2421 for DEL. */
    @Test
    void controlCharactersBecomeTheirPictures() {
        for (char c = 0; c < 0x20; c++) {
            boolean blank = c == '\n' || c == '\r' || c == '\t';
            assertThat(InertText.plain("a" + c + "b"))
                    .as("U+%04X", (int) c)
                    .isEqualTo("a" + (blank ? ' ' : (char) (0x2400 + c)) + "b");
        }
        assertThat(InertText.plain("\u007f")).isEqualTo("\u2421");
        assertThat(InertText.plain(" ~")).as("the printable neighbours").isEqualTo(" ~");
    }

    @ParameterizedTest
    @ValueSource(strings = {"\u2028", "\u2029", "\u0085", "\n", "\r", "\t"})
    void everyBreakIsOneSpace(String separator) {
        assertThat(InertText.plain("a" + separator + "b")).isEqualTo("a b");
    }

    @ParameterizedTest
    @CsvSource({
        "0080, C1 control",
        "009F, the last C1 control",
        "200B, zero width space",
        "200E, left-to-right mark",
        "202E, right-to-left override",
        "2066, left-to-right isolate",
        "FEFF, byte order mark",
        "00AD, soft hyphen",
        "E000, private use",
        "0378, unassigned",
        "D800, half a pair",
        "DFFF, the other half",
        "E0001, language tag"
    })
    void whatCannotBeSeenIsNamedByItsNumber(String code, String what) {
        String text = new String(Character.toChars(Integer.parseInt(code, 16)));
        assertThat(InertText.plain("x" + text)).as(what).isEqualTo("x⟨U+" + code + "⟩");
    }

    @Test
    void charactersBeyondTheBasicPlaneAreWhole() {
        assertThat(InertText.plain("a\uD835\uDEFFb")).isEqualTo("a\uD835\uDEFFb");
        assertThat(InertText.plain("\uDEFF\uD835"))
                .as("two halves in the wrong order")
                .isEqualTo("⟨U+DEFF⟩⟨U+D835⟩");
    }

    @Test
    void textIsCutOneCharacterBeyondTheLongest() {
        String longest = "x".repeat(InertText.LONGEST);
        assertThat(InertText.plain(longest)).isEqualTo(longest);
        assertThat(InertText.plain(longest + "y")).isEqualTo(longest + "… (2001 characters)");
        String name = "n".repeat(InertText.LONGEST_NAME);
        assertThat(InertText.name(name)).isEqualTo(name);
        assertThat(InertText.name(name + "m")).isEqualTo(name + "… (161 characters)");
        assertThat(InertText.name("")).isEmpty();
    }

    @Test
    void lengthIsCountedInCharactersNotInHalves() {
        String pair = "\uD835\uDEFF";
        assertThat(InertText.name(pair.repeat(160))).isEqualTo(pair.repeat(160));
        assertThat(InertText.name(pair.repeat(161)))
                .startsWith(pair.repeat(160))
                .contains("…");
    }

    @Test
    void theFiveCharactersOfMarkupBecomeEntities() {
        assertThat(InertText.escape("&<>\"'")).isEqualTo("&amp;&lt;&gt;&quot;&#39;");
        assertThat(InertText.escape("&amp;")).as("entities are text").isEqualTo("&amp;amp;");
        assertThat(InertText.escape("a b/c=d`e")).isEqualTo("a b/c=d`e");
        assertThat(InertText.escape("a\nb")).as("known to be harmless").isEqualTo("a\nb");
        assertThat(InertText.markup("a\n<b>")).isEqualTo("a &lt;b&gt;");
    }

    @ParameterizedTest
    @ValueSource(strings = {"=1+1", "+1", "-1", "@sum", "|cmd", "％1", "＝1", "＋1", "－1", "＠a"})
    void whatASpreadsheetTakesForAFormulaGetsAnApostrophe(String formula) {
        assertThat(InertText.csv(formula)).isEqualTo("'" + formula);
        assertThat(InertText.csv("a" + formula)).isEqualTo("a" + formula);
    }

    @Test
    void blanksBeforeAFormulaDoNotHideIt() {
        assertThat(InertText.csv(" =1 ")).isEqualTo("\"' =1 \"");
        assertThat(InertText.csv("\t=1")).isEqualTo("' =1");
        assertThat(InertText.csv("   ")).as("blanks alone are no formula").isEqualTo("\"   \"");
        assertThat(InertText.csv("")).isEmpty();
    }

    @ParameterizedTest
    @CsvSource(
            quoteCharacter = '`',
            delimiter = '|',
            value = {
                "a,b|\"a,b\"",
                "a;b|\"a;b\"",
                "a\"b|\"a\"\"b\"",
                "` a`|\" a\"",
                "`a `|\"a \"",
                "a b|a b",
                "a.b:c|a.b:c",
                "=a,b|\"'=a,b\""
            })
    void aFieldIsQuotedWhereItNeedsIt(String text, String field) {
        assertThat(InertText.csv(text)).isEqualTo(field);
    }

    @Test
    void aFieldThatStartsWithASeparatorIsQuotedToo() {
        assertThat(InertText.csv(",a")).isEqualTo("\",a\"");
        assertThat(InertText.csv(";a")).isEqualTo("\";a\"");
        assertThat(InertText.csv("\"a")).isEqualTo("\"\"\"a\"");
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, -0.0, 1e-300, -3.5, 1.7976931348623157e308, 4.9e-324, 0.1})
    void aNumberOfATableIsReadBackAsItself(double value) {
        assertThat(Double.parseDouble(InertText.csvNumber(value))).isEqualTo(value);
    }

    @Test
    void aNumberThatIsNoneLeavesTheFieldEmpty() {
        assertThat(InertText.csvNumber(Double.NaN)).isEmpty();
        assertThat(InertText.csvNumber(Double.POSITIVE_INFINITY)).isEmpty();
        assertThat(InertText.csvNumber(Double.NEGATIVE_INFINITY)).isEmpty();
    }
}
