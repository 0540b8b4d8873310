package org.lifeline.report.document;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** Lines are as full as they may be, and no character but spaces is lost. */
class LineBreaksTest {
    /** Words without digits, so that no unit holds on to its number. */
    private static String words(SplittableRandom random, int longest) {
        StringBuilder text = new StringBuilder();
        int n = random.nextInt(1, 40);
        for (int i = 0; i < n; i++) {
            text.append(i == 0 ? "" : " ").append("w".repeat(random.nextInt(1, longest + 1)));
        }
        return text.toString();
    }

    /** The same by counting words: each goes to the line before it where there is room. */
    private static List<String> byWords(String text, int width, String indent) {
        List<String> lines = new ArrayList<>();
        String line = "";
        for (String word : text.split(" ", -1)) {
            boolean empty = line.isBlank();
            if (!empty && line.length() + 1 + word.length() > width) {
                lines.add(line);
                line = indent + word;
            } else {
                line = empty ? line + word : line + " " + word;
            }
        }
        lines.add(line);
        return lines;
    }

    @Test
    void linesAreThoseFoundWordByWord() {
        for (long seed = 1; seed <= 300; seed++) {
            SplittableRandom random = new SplittableRandom(seed);
            int width = random.nextInt(8, 60);
            String indent = " ".repeat(random.nextInt(4));
            String text = words(random, 2 * width);
            assertThat(new LineBreaks(width, indent, false).lines(text))
                    .as("seed %d", seed)
                    .isEqualTo(byWords(text, width, indent));
        }
    }

    @Test
    void whereWordsMayBreakNoLineIsTooLong() {
        for (long seed = 1; seed <= 300; seed++) {
            SplittableRandom random = new SplittableRandom(seed);
            int width = random.nextInt(1, 30);
            String text = words(random, 3 * width);
            List<String> lines = LineBreaks.at(width).lines(text);
            int most = width;
            assertThat(lines).as("seed %d", seed).allMatch(line -> line.length() <= most);
            assertThat(String.join("", lines).replace(" ", "")).isEqualTo(text.replace(" ", ""));
        }
    }

    @Test
    void aNumberStaysWithItsUnit() {
        assertThat(LineBreaks.at(12).lines("a load of 12.5 kN")).containsExactly("a load of", "12.5 kN");
        assertThat(LineBreaks.at(12).lines("at about −5 °C")).containsExactly("at about", "−5 °C");
        assertThat(LineBreaks.at(5).lines("1234 kN")).as("no other space").containsExactly("1234", "kN");
        assertThat(LineBreaks.at(9).lines("on page 7 (see there)"))
                .as("a bracket is no unit")
                .containsExactly("on page 7", "(see", "there)");
    }

    /** The id of a criterion in a narrow column: between its parts, not one letter before its end. */
    @Test
    void aLongWordBreaksBehindAHyphen() {
        assertThat(LineBreaks.at(17).lines("us-osha-hll-factor, and: 2 × load"))
                .containsExactly("us-osha-hll-", "factor, and: 2 ×", "load");
        assertThat(LineBreaks.at(6).lines("1.25E-11x"))
                .as("a number has no parts")
                .containsExactly("1.25E-", "11x");
        assertThat(LineBreaks.at(5).lines("1.25E-11x")).containsExactly("1.25E", "-11x");
        assertThat(LineBreaks.at(4).lines("-abcdef")).as("no part before it").containsExactly("-abc", "def");
    }

    @Test
    void aSpaceAtTheEndBehindANumberIsNoUnit() {
        assertThat(LineBreaks.at(6).lines("aaaa 5 ")).containsExactly("aaaa 5", "");
    }

    @Test
    void aCodePointCountsAsOneCharacter() {
        String pair = "\uD835\uDC65"; // x of mathematics, two chars
        assertThat(LineBreaks.at(3).lines(pair.repeat(7))).containsExactly(pair.repeat(3), pair.repeat(3), pair);
    }

    @Test
    void aWidthWithoutRoomIsRefused() {
        assertThatIllegalArgumentException().isThrownBy(() -> LineBreaks.at(0)).withMessageContaining("width 0");
        assertThatIllegalArgumentException().isThrownBy(() -> new LineBreaks(4, "    ", true));
    }
}
