package org.lifeline.explorer.engine;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.stream.LongStream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.lifeline.examples.TestFiles;

/** The script that a page runs gives what the JVM gives: the same reader, the same digits, the same refusals. */
class ScriptDigitsTest {
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final long FIRST = 20_261_128;

    private static EngineScript script;

    @BeforeAll
    static void begin() throws Exception {
        script = new EngineScript();
    }

    @AfterAll
    static void end() {
        script.close();
    }

    /**
     * A few here, since this engine has no compiler on a plain JDK and takes half a second for each; the test of the page does
     * the same with 200 in a browser, and 200 are done here in long runs.
     */
    @Test
    void randomDesignsHaveTheDigitsOfTheJvm() throws Exception {
        int count = Boolean.getBoolean("lifeline.long") ? 200 : 12;
        int solved = 0;
        for (long seed : LongStream.range(FIRST, FIRST + count).toArray()) {
            String design = RandomDesigns.of(seed);
            JsonNode here = JSON.readTree(Engine.numbers(design, 0, Double.NaN));
            JsonNode there = JSON.readTree(script.call("numbers", design, 0, Double.NaN));
            Digits digits = new Digits().compare(here, there);
            assertThat(digits.differences()).as("seed %d: %s", seed, design).isEmpty();
            solved += here.has("maximum") ? 1 : 0;
        }
        assertThat(solved).as("designs that were solved, not refused").isGreaterThan(count * 9 / 10);
    }

    @ParameterizedTest
    @ValueSource(strings = {"elastic-posts-corner", "one-hangs-second-falls"})
    void sampleDesignsAreReadAndDrawnTheSame(String name) throws Exception {
        String design = TestFiles.text("independent/" + name + ".design.json");
        agree(Engine.arrest(design, 0, Double.NaN), script.call("arrest", design, 0, Double.NaN));
    }

    @ParameterizedTest
    @ValueSource(strings = {"designs/every-alternative.json"})
    void designsWithEveryAlternativeAreReadTheSame(String name) throws Exception {
        String design = TestFiles.text(name);
        agree(Engine.arrest(design, 0, 20), script.call("arrest", design, 0, 20));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "[]",
                "{\"format\": 1}",
                "{\"format\": \"org.lifeline.design/1\", \"format\": 2}",
                "{\"title\": \"a",
                "{\"title\": 01}",
                "{\"title\": tru}",
                "{} {}",
                "{\"a\": \"\\q\"}"
            })
    void whatIsNoDesignIsRefusedInTheSameLine(String text) throws Exception {
        JsonNode here = JSON.readTree(Engine.arrest(text, 0, Double.NaN)).path("refused");
        JsonNode there =
                JSON.readTree(script.call("arrest", text, 0, Double.NaN)).path("refused");
        assertThat(there).isNotEmpty().hasSameSizeAs(here);
        // The two parsers may stop a few characters apart.
        assertThat(begin(there, "path")).isEqualTo(begin(here, "path"));
        assertThat(begin(there, "rule").substring(0, 7))
                .isEqualTo(begin(here, "rule").substring(0, 7));
    }

    private static String begin(JsonNode refused, String member) {
        return refused.get(0).path(member).asText().split(",", 2)[0];
    }

    @Test
    void wrongValuesAreRefusedInTheSameWords() throws Exception {
        String good = TestFiles.text("demo-design.json");
        assertThat(good).contains("kg/m");
        for (String[] change : new String[][] {
            {"\"0.41 kg/m\"", "\"0.41 kg\""},
            {"\"3.3 MN\"", "\"-3.3 MN\""},
            {"\"1.2 kN\"", "1200"},
            {"\"friction\": 0.1", "\"friction\": -2"},
            {"\"walkingLevel\"", "\"walkingLevle\""},
            {"\"fallers\": [\"sampler\"]", "\"fallers\": [\"smapler\"]"},
            {"\"100 kg\"", "\"1e9 kg\""}
        }) {
            String bad = good.replace(change[0], change[1]);
            assertThat(bad).as("%s is in the file", change[0]).isNotEqualTo(good);
            String here = Engine.arrest(bad, 0, Double.NaN);
            assertThat(here).contains("refused");
            agree(here, script.call("arrest", bad, 0, Double.NaN));
        }
    }

    private static void agree(String here, String there) throws Exception {
        Digits digits = new Digits().compare(JSON.readTree(here), JSON.readTree(there));
        assertThat(digits.differences()).isEmpty();
    }
}
