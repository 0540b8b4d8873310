package org.lifeline.file;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.Violation;
import org.lifeline.examples.TestFiles;

/** How much a design may ask for, and how much is said of what is wrong with it. */
class DesignLimitsTest {
    private static List<Violation> violations(String text) {
        InvalidInputException e = catchThrowableOfType(InvalidInputException.class, () -> TestFiles.read(text));
        assertThat(e).as("refused").isNotNull();
        return e.violations();
    }

    private static String silo(String what, String by) {
        String text = TestFiles.text("independent/silo-roof-gripped-middle.design.json");
        assertThat(text).contains(what);
        return text.replace(what, by);
    }

    private static String many(int count, String element) {
        return IntStream.range(0, count)
                .mapToObj(i -> element.replace("#", Integer.toString(i)))
                .collect(Collectors.joining(", "));
    }

    private static final String FALL = "{\"id\": \"f#\", \"span\": 1, \"station\": \"7.5 m\", \"fallers\": [\"A\"]}";

    private static String falls(int count) {
        String text = TestFiles.text("independent/silo-roof-gripped-middle.design.json");
        int at = text.indexOf("\"falls\"");
        int end = text.lastIndexOf(']', text.indexOf("\"clearance\""));
        return text.substring(0, at) + "\"falls\": [" + many(count, FALL) + text.substring(end);
    }

    @Test
    void aHundredViolationsAreListedAndTheOthersCounted() {
        String text = silo("\"title\"", many(250, "\"wrong key #\": \"x\"") + ", \"title\"");
        List<Violation> found = violations(text);
        assertThat(found).hasSize(101);
        assertThat(found.get(0).path()).isEqualTo("[\"wrong key 0\"]");
        assertThat(found.get(100).value()).isEqualTo("150 further violations");
        assertThat(violations(silo("\"title\"", many(100, "\"wrong #\": 1") + ", \"title\"")))
                .hasSize(100);
    }

    @Test
    void aLongKeyIsCut() {
        Violation found = violations(silo("\"title\"", "\"" + "k".repeat(9000) + "\": 1, \"title\""))
                .get(0);
        assertThat(found.path()).hasSize("[\"\"]".length() + 101);
        assertThat(found.rule()).startsWith("is an unknown key");
    }

    @Test
    void listsHaveTheirLimit() {
        List<Violation> found = violations(falls(10_002));
        assertThat(found).hasSize(1);
        assertThat(found.get(0).path()).isEqualTo("falls");
        assertThat(found.get(0).value()).isEqualTo("10002 elements");
        assertThat(found.get(0).rule()).isEqualTo("must not have more than 10001; split the design");
    }

    @Test
    void arrestsHaveTheirLimit() {
        assertThat(TestFiles.read(falls(5000)).design().falls()).hasSize(5000);
        List<Violation> found = violations(falls(5000)
                .replace(
                        "\"temperatures\": [",
                        "\"temperatures\": [" + many(20, "\"# °C\"").replace("\"20 °C\"", "\"21 °C\"") + ","));
        assertThat(found).hasSize(1);
        assertThat(found.get(0).code()).isEqualTo(FileRule.TOO_LARGE);
        assertThat(found.get(0))
                .hasToString("falls: 5000 falls at 21 temperatures with both forces: "
                        + "must not come to more than 20000 arrests; split the design");
    }

    @Test
    void searchesHaveTheirLimit() {
        String text = falls(0);
        assertThat(TestFiles.read(text).design().falls()).isEmpty();
        List<Violation> found = violations(
                text.replace("\"temperatures\": [", "\"temperatures\": [" + many(2000, "\"0.0# °C\"") + ","));
        assertThat(found).hasSize(1);
        assertThat(found.get(0).value()).isEqualTo("1 spans, 1 workers and 2001 temperatures to be searched");
    }

    @Test
    void aWholeLineHasItsLimit() {
        String support = "{\"id\": \"p#\", \"type\": \"intermediate\", \"position\": [\"#.5 m\", \"0 m\", \"8 m\"]}";
        String text = silo("\"15 m\"", "\"500 m\"").replace("\"7.5 m\"", "\"0.2 m\"");
        int second = text.lastIndexOf('{', text.indexOf("\"S1\""));
        DesignFile shorter = TestFiles.read(text);
        assertThat(shorter.exceededByWholeLine()).isEmpty();
        DesignFile longer =
                TestFiles.read(text.substring(0, second) + many(450, support) + "," + text.substring(second));
        assertThat(longer.exceededByWholeLine()).hasValueSatisfying(v -> {
            assertThat(v.value()).startsWith("451 spans, along which 1 falls are moved at ");
            assertThat(v.rule()).contains("200000", "report --no-envelope");
        });
    }

    @Test
    void anIdGivenTwiceNamesTheFirst() {
        String support = "{\"id\": \"p#\", \"type\": \"intermediate\", \"position\": [\"1.# m\", \"0 m\", \"8 m\"]}";
        String text =
                silo("{\n   \"id\": \"S1\"", many(9, support) + "," + support.replace("#", "3") + ",{\"id\": \"S1\"");
        assertThat(violations(text))
                .filteredOn(v -> v.path().equals("supports[10].id"))
                .extracting(Violation::rule)
                .contains("is the id of supports[4] as well");
    }

    /** Magnitudes that no line has are refused, whatever the field; none of them reaches the solver. */
    @ParameterizedTest
    @CsvSource({
        "1.2 kN, 1e200 N",
        "100 kg, 1e12 kg",
        "100 kg, 1e30 kg",
        "15 m, 1e9 m",
        "15 m, 1e300 m",
        "3.2 MN, 1e200 N",
        "0.4 kg/m, 1e20 kg/m",
        "12e-6 /K, 1e9 /K",
        "1.8 m, 1e12 m",
        "6 kN, 1e150 N",
        "100 kN/m, 1e300 N/m",
        "0.3 m, 1e30 m",
        "6.5 m, -1e30 m",
        "20 °C, 1e30 °C",
    })
    void magnitudesThatNoLineHasAreRefused(String what, String by) {
        List<Violation> found = violations(silo('"' + what + '"', '"' + by + '"'));
        assertThat(found).isNotEmpty();
        assertThat(found).anyMatch(v -> v.value().contains(by));
    }
}
