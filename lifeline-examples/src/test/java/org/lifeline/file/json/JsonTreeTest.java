package org.lifeline.file.json;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.Violation;
import org.lifeline.file.FileRule;

class JsonTreeTest {

    private static byte[] utf8(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    private static JsonTree.Parsed parse(byte[] bytes) {
        return JsonTree.parse(bytes, rule -> FileRule.valueOf(rule.name()));
    }

    private static Violation refused(byte[] bytes) {
        InvalidInputException e = catchThrowableOfType(InvalidInputException.class, () -> parse(bytes));
        assertThat(e).isNotNull();
        assertThat(e.violations()).hasSize(1);
        return e.violations().get(0);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '~',
            value = {
                "{ \"a\": 1,, }|line 1, column 10",
                "{\\n  \"a\": tru\\n}|line 2, column 8",
                "{\\n  \"a\": 1\\n|line 3",
                "{\\n\\n  a: 1 }|line 3, column 3",
                "{ \"a\": 01 }|line 1, column 9",
                "{ \"a\": \"x\\ny\" }|line 1",
                "{ \"a\": 1 } { }|line 1, column 12",
                "{ 'a': 1 }|line 1, column 3",
                "{ \"a\": 1 /* no */ }|line 1",
                "[1, 2|line 1",
            })
    void textThatIsNoJsonGivesOneViolationWithItsPlace(String text, String place) {
        Violation v = refused(utf8(text.replace("\\n", "\n")));
        assertThat(v.path()).startsWith(place);
        assertThat(v.rule()).isNotBlank().doesNotContain("\n");
    }

    @Test
    void anEmptyFileIsRefused() {
        assertThat(refused(new byte[0]).path()).isEqualTo("file");
        assertThat(refused(utf8(" \n ")).path()).isEqualTo("file");
    }

    @Test
    void textThatIsNotUtf8IsRefusedWithItsPlace() {
        byte[] bytes = "{\n\"a\": \"gr\u00fc\u00df\" }".getBytes(StandardCharsets.ISO_8859_1);
        Violation v = refused(bytes);
        assertThat(v.path()).isEqualTo("line 2, column 9");
        assertThat(v.value()).isEqualTo("byte 0xFC");
        assertThat(v.rule()).isEqualTo("is not UTF-8");
    }

    @Test
    void otherEncodingsAreNotGuessed() {
        assertThat(refused("{\"a\": 1}".getBytes(StandardCharsets.UTF_16)).rule())
                .isEqualTo("is not UTF-8");
        assertThat(refused("{\"a\": 1}".getBytes(StandardCharsets.UTF_16LE)).rule())
                .startsWith("is not JSON");
    }

    @Test
    void anOpenObjectIsNamedByWhereItStarts() {
        assertThat(refused(utf8("{\n\"a\": {")).rule())
                .isEqualTo("is not JSON: the text ends before the object that begins at line 2, column 6 is closed");
    }

    @Test
    void aByteOrderMarkIsSkipped() {
        assertThat(parse(utf8("\ufeff{\"a\": 1}")).root().get("a").intValue()).isEqualTo(1);
    }

    @Test
    void keysGivenTwiceAreCollectedAndTheFirstCounts() {
        JsonTree.Parsed parsed =
                parse(utf8("{\"a\": {\"b\": 1, \"b\": 2},\n \"list\": [{}, {\"c\": 1, \"c\": \"x\", \"c\": 3}]}"));
        assertThat(parsed.duplicates()).extracting(Violation::path).containsExactly("a.b", "list[1].c", "list[1].c");
        assertThat(parsed.duplicates()).extracting(Violation::value).containsExactly("2", "\"x\"", "3");
        assertThat(parsed.duplicates().get(1).rule()).contains("line 2");
        assertThat(parsed.root().at("/a/b").intValue()).isEqualTo(1);
    }

    @Test
    void depthIsLimited() {
        int deep = JsonTree.DEEPEST + 5;
        assertThat(refused(utf8("[".repeat(deep) + "]".repeat(deep))).rule()).contains("limit");
        assertThat(refused(utf8("{\"a\":".repeat(100_000))).rule()).contains("limit");
    }

    @Test
    void sizeIsLimited() {
        byte[] bytes = new byte[JsonTree.LARGEST + 1];
        assertThat(refused(bytes).rule()).contains("must not be larger than");
    }

    @Test
    void longNumbersAreRefused() {
        assertThat(refused(utf8("{\"a\": " + "9".repeat(5000) + "}")).rule()).contains("limit");
    }

    @Test
    void numbersKeepTheDigitsThatWereWritten() {
        JsonTree.Parsed parsed = parse(utf8("{\"a\": 1.80, \"b\": 100, \"c\": NaN}"));
        assertThat(Findings.written(parsed.root().get("a"))).isEqualTo("1.80");
        assertThat(Findings.written(parsed.root().get("b"))).isEqualTo("100");
        assertThat(Findings.written(parsed.root().get("c"))).isEqualTo("NaN");
    }

    /** Every fault is told in words of this program. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '~',
            value = {
                "{ \"a\": tru }|\"tru\" is no value; a text stands in double quotes",
                "{ \"a\": 1,, }|the character , is not expected here",
                "{ 'a': 1 }|the character ' is not expected here",
                "{ \"a\": 01 }|a number must not begin with a needless zero",
                "{ \"a\": \"x\\ny\" }|a text in quotes holds a line break or another control character",
                "{ \"a\": \"\\q\" }|there is no such escape behind a backslash",
                "{ \"a\": -x }|",
                "{ \"a\": 1e }|",
                "{ \"a\": \u0007 }|a control character is not expected here",
                "[1, [2|the text ends before the array that begins at line 1, column 5 is closed",
                "{ \"a\": \"b|the text ends before the object that begins at line 1, column 1 is closed",
                "\"a|the text ends before its value is whole"
            })
    void faultsAreToldInWords(String text, @org.jspecify.annotations.Nullable String words) {
        String rule = refused(utf8(text.replace("\\n", "\n").replace("\\u0007", "\u0007")))
                .rule();
        assertThat(rule).startsWith("is not JSON: ").doesNotContain("com.fasterxml", "CTRL-CHAR", "expecting", "token");
        if (words != null) {
            assertThat(rule).isEqualTo("is not JSON: " + words);
        }
    }

    @Test
    void aLongKeyIsRefusedAndAMillionOfThemAreCounted() {
        assertThat(refused(utf8("{\"" + "k".repeat(20_000) + "\": 1}")).rule()).contains("limit");
        JsonTree.Parsed parsed = parse(utf8("{" + "\"a\": 1,".repeat(500) + "\"a\": 1}"));
        assertThat(parsed.duplicates()).hasSize(Findings.MOST);
        assertThat(parsed.furtherDuplicates()).isEqualTo(400);
    }
}
