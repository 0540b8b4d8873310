package org.lifeline.examples;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.lifeline.design.envelope.Envelope;
import org.lifeline.design.envelope.Extremes;
import org.lifeline.design.envelope.Quantity;

/** The code block and the output at the top of README.md are those of {@link FirstArrest}. */
class ReadmeTest {
    private static final Path README = Path.of("../README.md");
    private static final Path SOURCE = Path.of("src/main/java/org/lifeline/examples/FirstArrest.java");

    @Test
    void theCodeInReadmeIsTheProgramThatRuns() throws IOException {
        String source = Files.readString(SOURCE);
        String[] parts = source.split(" *// README\n");
        assertThat(parts).hasSize(3);
        String code = parts[1].lines()
                .map(line -> line.isEmpty() ? line : line.substring(8))
                .collect(Collectors.joining("\n"));
        assertThat(Files.readString(README)).contains("```java\n" + code + "\n```");
    }

    @Test
    void theOutputInReadmeIsWhatItPrints() throws IOException {
        PrintStream before = System.out;
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try {
            System.setOut(new PrintStream(bytes, true, StandardCharsets.UTF_8));
            FirstArrest.main(new String[0]);
        } finally {
            System.setOut(before);
        }
        String output = bytes.toString(StandardCharsets.UTF_8).replace("\r\n", "\n");
        assertThat(output.lines()).hasSize(5);
        assertThat(Files.readString(README)).contains("```text\n" + output + "```");
    }

    /** The tutorial for the reviewer: which temperature governs what on the demonstration line. */
    @Test
    void theTemperaturesOfTheReviewersTutorialGovern() throws IOException {
        String text = Files.readString(Path.of("../lifeline-core/src/docs/tutorials/reviewer.md"))
                .replaceAll("\\s+", " ");
        assertThat(text).contains("the end anchor load governs at −20 °C and the loads on the posts at 38 °C");
        Extremes worst = Envelope.withDefaults()
                .solve(TestFiles.design("demo-design.json").design())
                .extremes();
        assertThat(worst.of(Quantity.END_ANCHOR_LOAD).orElseThrow().fallCase().temperature())
                .isEqualTo(-20);
        for (String post : List.of("post 1", "post 2")) {
            assertThat(worst.onSupport(post).orElseThrow().fallCase().temperature())
                    .isEqualTo(38);
        }
    }
}
