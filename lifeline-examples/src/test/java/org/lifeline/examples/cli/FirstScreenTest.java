package org.lifeline.examples.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.lifeline.examples.TestFiles;

/** The first command of the README: what its one screen says of the demonstration design. */
class FirstScreenTest {
    @TempDir
    private Path folder;

    @Test
    void theDemonstrationSaysWhatGovernsAndWhichCriteriaAreNotMet() throws IOException {
        Path result = folder.resolve("result.json");
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        PrintStream out = new PrintStream(bytes, true, StandardCharsets.UTF_8);
        int code = CommandLines.run(
                out,
                new PrintStream(new ByteArrayOutputStream(), true, StandardCharsets.UTF_8),
                "analyze",
                "--result",
                result.toString());
        assertThat(code).isZero();
        List<String> all = bytes.toString(StandardCharsets.UTF_8).lines().toList();
        int head =
                (int) all.stream().takeWhile(l -> !l.startsWith("ASSESSMENT: ")).count();
        List<String> screen = all.subList(head, all.size());
        assertThat(screen).hasSizeLessThanOrEqualTo(50).allMatch(l -> l.length() <= 80);
        List<String> notMet =
                screen.stream().filter(l -> l.startsWith("NOT MET")).toList();
        assertThat(notMet).anyMatch(l -> l.contains("us-osha-free-fall"));
        assertThat(notMet).anyMatch(l -> l.contains("us-osha-deceleration"));
        assertThat(notMet).anyMatch(l -> l.contains("siding clearance"));
        // Twice the load of post 1 in time passes its 16 kN only with what the mesh may hide.
        assertThat(notMet).anyMatch(l -> l.contains("us-osha-hll-factor")).hasSize(4);

        JsonNode assessment = TestFiles.tree(Files.readAllBytes(result)).path("assessment");
        for (JsonNode each : assessment.path("governing")) {
            switch (each.path("quantity").asText()) {
                case "endAnchorLoad" -> {
                    assertThat(each.path("value").asDouble()).isGreaterThan(10.9e3);
                    assertThat(each.path("method").asText()).isEqualTo("transient");
                    double shown = each.path("value").asDouble()
                            + each.path("transientAllowance").asDouble();
                    String row = String.format(Locale.ROOT, "%.2f kN*", shown / 1e3);
                    assertThat(screen).anyMatch(l -> l.startsWith("End anchor load") && l.contains(row));
                }
                case "arrestForce" -> assertThat(each.path("value").asDouble()).isGreaterThan(5.1e3);
                case "clearanceMargin" ->
                    assertThat(each.path("value").asDouble()).isLessThan(0.0602);
                default -> assertThat(each.path("unit").asText()).isNotEmpty();
            }
        }
    }
}
