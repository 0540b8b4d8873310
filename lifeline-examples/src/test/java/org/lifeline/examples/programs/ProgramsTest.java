package org.lifeline.examples.programs;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.DynamicTest.dynamicTest;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Isolated;

/**
 * Every example program runs, and README.md shows what it prints. Run with {@code -Dlifeline.writeDocs=true} to write the
 * outputs into README.md anew.
 */
@Isolated("it redirects the standard output")
class ProgramsTest {
    private static final Path README = Path.of("README.md");

    @TempDir
    private Path folder;

    private static String output(Programs.Main main, String... args) {
        PrintStream before = System.out;
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try {
            System.setOut(new PrintStream(bytes, true, StandardCharsets.UTF_8));
            main.run(args);
        } catch (Exception e) {
            throw new AssertionError("the example failed", e);
        } finally {
            System.setOut(before);
        }
        return bytes.toString(StandardCharsets.UTF_8).replace("\r\n", "\n");
    }

    private static String block(String readme, String name) {
        String head = "\n### `" + name + "`\n";
        int at = readme.indexOf(head);
        assertThat(at).as("README.md has a section %s", name).isNotNegative();
        int start = readme.indexOf("```text\n", at) + "```text\n".length();
        return readme.substring(start, readme.indexOf("```", start));
    }

    @TestFactory
    Stream<DynamicTest> readmeShowsWhatIsPrinted() throws IOException {
        if (Boolean.getBoolean("lifeline.writeDocs")) {
            String readme = Files.readString(README);
            for (Programs.Program p : Programs.all()) {
                String old = block(readme, p.name());
                int at = readme.indexOf("```text\n" + old + "```", readme.indexOf("\n### `" + p.name() + "`\n"));
                readme = readme.substring(0, at) + "```text\n" + output(p.main())
                        + readme.substring(at + "```text\n".length() + old.length());
            }
            Files.writeString(README, readme);
        }
        String readme = Files.readString(README);
        return Programs.all().stream()
                .map(p -> dynamicTest(p.name(), () -> {
                    String printed = output(p.main());
                    assertThat(block(readme, p.name())).isEqualTo(printed);
                    assertThat(printed.lines())
                            .filteredOn(line -> line.codePointCount(0, line.length()) > 80)
                            .as("lines that a terminal breaks")
                            .isEmpty();
                }));
    }

    @Test
    void longLinesAreBrokenBetweenWordsAndShortOnesKept() {
        String rest = "word ".repeat(20).strip();
        Programs.Program p = new Programs.Program("x", "task", List.of(), args -> {
            System.out.println("short");
            System.out.println("  " + rest);
            System.out.print("no end");
        });
        assertThat(output(p.main()).lines())
                .containsExactly(
                        "short",
                        "  " + "word ".repeat(15).strip(),
                        "      " + "word ".repeat(5).strip(),
                        "no end");
    }

    @Test
    void programsAreShortAndDescribed() throws IOException {
        String readme = Files.readString(README);
        for (Programs.Program p : Programs.all()) {
            assertThat(p.task()).isNotBlank();
            assertThat(readme).contains("| `" + p.name() + "` |");
        }
        try (Stream<Path> sources = Files.list(Path.of("src/main/java/org/lifeline/examples/programs"))) {
            for (Path source : sources.toList()) {
                assertThat(Files.readAllLines(source)).as(source.toString()).hasSizeLessThan(210);
            }
        }
    }

    @Test
    void resultsStayWhatTheyTeach() {
        Map<String, String> out = new HashMap<>();
        Programs.all().stream()
                .filter(p -> List.of("single-span", "yielding-posts", "corner", "synthetic-rope", "embedding")
                        .contains(p.name()))
                .forEach(p -> out.put(p.name(), output(p.main())));
        assertThat(numbers(out, "single-span", "arrest force on the worker")).containsExactly(3.20, 6.00);
        // Softer posts: less load, more clearance.
        double rigid = numbers(out, "yielding-posts", "rigid")[0];
        double soft = numbers(out, "yielding-posts", "50 kN/m")[1];
        assertThat(soft).isLessThan(rigid);
        // The corner bracket is pulled by both spans.
        assertThat(numbers(out, "corner", "corner ")[0])
                .isGreaterThan(numbers(out, "corner", "gate")[0])
                .isGreaterThan(numbers(out, "corner", "tower")[0]);
        // A soft rope: less load at the anchor, more descent.
        double[] steel = numbers(out, "synthetic-rope", "steel ");
        double[] synthetic = numbers(out, "synthetic-rope", "synthetic ");
        assertThat(synthetic[0]).isLessThan(steel[0]);
        assertThat(synthetic[2]).isGreaterThan(steel[2]);
        assertThat(out.getOrDefault("embedding", ""))
                .contains("refused: fall.at.station: 45.0 m")
                .contains("9 of 9");
    }

    /** The numbers of a line behind a word. */
    private static double[] numbers(Map<String, String> out, String program, String word) {
        String line = out.getOrDefault(program, "")
                .lines()
                .filter(l -> l.contains(word))
                .findFirst()
                .orElseThrow();
        String rest = line.substring(line.indexOf(word) + (Character.isDigit(word.charAt(0)) ? 0 : word.length()));
        return Stream.of(rest.split("[^0-9.-]+", -1))
                .filter(s -> s.matches("-?[0-9]+(\\.[0-9]+)?"))
                .mapToDouble(Double::parseDouble)
                .toArray();
    }

    @Test
    void codeOfTheTutorialIsCodeOfAProgram() throws IOException {
        String tutorial = Files.readString(Path.of("../lifeline-core/src/docs/tutorials/engineer.md"));
        String code = tutorial.substring(tutorial.indexOf("Lifeline.builder()"), tutorial.indexOf(".pretension("));
        String program = Files.readString(Path.of("src/main/java/org/lifeline/examples/programs/EmbeddingHost.java"));
        assertThat(code).contains("intermediateAnchor");
        assertThat(program.replaceAll("\\s+", "")).contains(code.replaceAll("\\s+", ""));
    }

    @Test
    void studyDrawsItsPicture() throws IOException {
        Path picture = folder.resolve("study.svg");
        output(SpanStudy::main, picture.toString());
        assertThat(Files.readString(picture))
                .startsWith("<svg")
                .contains("anchor load")
                .endsWith("</svg>\n");
    }
}
