package org.lifeline.benchmarks;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.lifeline.benchmarks.RatioComparison.Verdict;

/** The check of ratios says what it compared, and lets nothing that is stored go unmeasured. */
class RatioComparisonTest {
    private static final Map<String, Double> STORED =
            Map.of("kernel", 400.0, "staticSpan", 4.0, "staticSpan.bytes", 7000.0, "scriptedSpan", 4.1);

    @TempDir
    private Path folder;

    private static Map<String, Double> with(String name, double value) {
        Map<String, Double> map = new TreeMap<>(STORED);
        map.put(name, value);
        return map;
    }

    private static Map<String, Double> without(String name) {
        Map<String, Double> map = new TreeMap<>(STORED);
        map.remove(name);
        return map;
    }

    private static Verdict verdict(RatioComparison comparison, String name) {
        return comparison.rows().stream()
                .filter(r -> r.name().equals(name))
                .findFirst()
                .orElseThrow()
                .verdict();
    }

    @Test
    void theSameRatiosPass() {
        RatioComparison c = RatioComparison.of(STORED, STORED);
        assertThat(c.passes()).isTrue();
        assertThat(c.rows()).hasSize(4).allMatch(r -> r.verdict() == Verdict.FINE);
        assertThat(c.text())
                .contains("staticSpan                                4.000   stored        4.000\n")
                .endsWith("0 slower, 0 stored but not measured, 0 measured but not stored: passed\n");
    }

    /** What the harness leaves of an operation that allocates nothing is no growth. */
    @Test
    void lessThanAByteIsNothing() {
        Map<String, Double> stored = Map.of("nodeStep.bytes", 0.0002);
        assertThat(RatioComparison.of(stored, Map.of("nodeStep.bytes", 0.9)).passes())
                .isTrue();
        assertThat(RatioComparison.of(stored, Map.of("nodeStep.bytes", 1.1)).passes())
                .isFalse();
    }

    @Test
    void aQuarterMoreIsTheMost() {
        for (String name : new String[] {"staticSpan", "staticSpan.bytes"}) {
            double before = STORED.getOrDefault(name, Double.NaN);
            assertThat(RatioComparison.of(STORED, with(name, 1.249 * before)).passes())
                    .isTrue();
            RatioComparison c = RatioComparison.of(STORED, with(name, 1.251 * before));
            assertThat(c.passes()).isFalse();
            assertThat(verdict(c, name)).isEqualTo(Verdict.SLOWER);
            assertThat(c.text()).contains("   SLOWER\n").contains("1 slower, ").endsWith("FAILED\n");
        }
    }

    @Test
    void kernelAndScriptsMayGrow() {
        assertThat(RatioComparison.of(STORED, with("kernel", 4000)).passes()).isTrue();
        assertThat(RatioComparison.of(STORED, with("scriptedSpan", 41)).passes())
                .isTrue();
    }

    /** A benchmark that was renamed, left out or ended in an error has no result; one over no kernel has no number. */
    @Test
    void whatIsStoredMustBeMeasured() {
        for (String name : STORED.keySet()) {
            for (Map<String, Double> now :
                    List.of(without(name), with(name, Double.NaN), with(name, Double.POSITIVE_INFINITY))) {
                RatioComparison c = RatioComparison.of(STORED, now);
                assertThat(c.passes()).as(name).isFalse();
                assertThat(verdict(c, name)).isEqualTo(Verdict.NOT_MEASURED);
                assertThat(c.text())
                        .contains("   NOT MEASURED\n")
                        .contains(", 1 stored but not measured, ")
                        .endsWith("FAILED\n");
            }
        }
    }

    @Test
    void whatIsNotStoredIsNamed() {
        RatioComparison c = RatioComparison.of(without("staticSpan"), STORED);
        assertThat(c.passes()).isTrue();
        assertThat(verdict(c, "staticSpan")).isEqualTo(Verdict.NOT_STORED);
        assertThat(c.text())
                .containsPattern("staticSpan +4.000   stored +–   NOT STORED\n")
                .endsWith(", 1 measured but not stored: passed\n");
    }

    @Test
    void nothingStoredIsNoComparison() {
        assertThat(RatioComparison.of(Map.of(), STORED).passes()).isFalse();
        assertThat(RatioComparison.of(Map.of(), Map.of()).passes()).isFalse();
        assertThat(RatioComparison.of(STORED, Map.of()).passes()).isFalse();
    }

    @Test
    void whatIsWrittenIsReadAgainButForWhatIsNoNumber() throws IOException {
        Path file = folder.resolve("ratios.json");
        Files.writeString(file, RatioCheck.json(with("exponent", Double.NaN), "a \"CPU\" of 2 cores"));
        assertThat(RatioCheck.read(file)).isEqualTo(STORED);
    }

    /** The stored file is read whole: as many ratios as it has lines with a number. */
    @Test
    void theStoredFileIsRead() throws IOException {
        Path file = Path.of("results/ratios.json");
        long lines = Files.readAllLines(file).stream()
                .filter(l -> l.matches("  \".*\": [0-9].*"))
                .count();
        assertThat(RatioCheck.read(file))
                .hasSize((int) lines)
                .containsKeys("kernel", "exponent", "envelope.free-running.rough.bytes", "monteCarloCase.1");
    }
}
