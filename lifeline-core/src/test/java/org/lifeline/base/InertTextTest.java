package org.lifeline.base;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.lifeline.report.Hostile;

/** Text of unknown origin comes out harmless. */
class InertTextTest {
    @Test
    void nothingSteersADisplay() {
        for (String text : Hostile.texts()) {
            String plain = InertText.plain(text);
            assertThat(plain.length()).isLessThan(4 * InertText.LONGEST);
            assertThat(plain.codePoints()).allMatch(c -> c >= 0x20 && c != 0x7F);
            assertThat(plain.codePoints())
                    .noneMatch(c -> Character.getType(c) == Character.FORMAT
                            || Character.getType(c) == Character.CONTROL
                            || Character.getType(c) == Character.SURROGATE
                            || Character.getType(c) == Character.LINE_SEPARATOR);
        }
    }

    @Test
    void whatIsReplacedCanBeSeen() {
        assertThat(InertText.plain("\u001b[2J")).isEqualTo("␛[2J");
        assertThat(InertText.plain("a\u202Eb")).isEqualTo("a⟨U+202E⟩b");
        assertThat(InertText.plain("a\r\nb")).isEqualTo("a  b");
        assertThat(InertText.plain("\uD800")).isEqualTo("⟨U+D800⟩");
    }

    @Test
    void ordinaryTextOfAnyScriptIsLeftAlone() {
        for (String text : new String[] {"Förderbrücke 2, Achse §4", "桥 2", "גשר", "مسار", "𝛿 = 3 m", "a–b … °C ²"}) {
            assertThat(InertText.plain(text)).isEqualTo(text);
        }
    }

    @Test
    void aMegabyteIsCutAndSaysSo() {
        assertThat(InertText.name("x".repeat(1 << 20))).hasSizeLessThan(200).endsWith("… (1048576 characters)");
        assertThat(InertText.plain("x".repeat(InertText.LONGEST))).hasSize(InertText.LONGEST);
    }

    @Test
    void markupIsEntities() {
        for (String text : Hostile.texts()) {
            assertThat(InertText.markup(text)).doesNotContain("<", ">", "\"", "'");
        }
        assertThat(InertText.markup("a & b < c")).isEqualTo("a &amp; b &lt; c");
    }

    @Test
    void noFieldOfATableIsAFormula() {
        for (String text : Hostile.texts()) {
            String field = InertText.csv(text);
            String content = field.startsWith("\"")
                    ? field.substring(1, field.length() - 1).replace("\"\"", "\"")
                    : field;
            assertThat(content.strip()).doesNotStartWith("=").doesNotStartWith("@");
            assertThat(content.strip()).doesNotStartWith("+").doesNotStartWith("-");
            assertThat(field).doesNotContain("\n", "\r");
        }
        assertThat(InertText.csv("  =1+1")).isEqualTo("'  =1+1");
        assertThat(InertText.csv("a,\"b\"")).isEqualTo("\"a,\"\"b\"\"\"");
        assertThat(InertText.csvNumber(-3.5)).isEqualTo("-3.5");
        assertThat(InertText.csvNumber(Double.NaN)).isEmpty();
    }
}
