package org.lifeline.examples.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.lifeline.examples.TestFiles;
import org.lifeline.examples.programs.Programs;

/** The commands reproduce, report and example. */
class ReproduceAndReportTest {
    @TempDir
    private Path folder;

    private final ByteArrayOutputStream outBytes = new ByteArrayOutputStream();
    private final ByteArrayOutputStream errBytes = new ByteArrayOutputStream();
    private Path design = Path.of("unset");
    private Path result = Path.of("unset");

    private int run(String... args) {
        outBytes.reset();
        errBytes.reset();
        return CommandLines.run(
                new PrintStream(outBytes, true, StandardCharsets.UTF_8),
                new PrintStream(errBytes, true, StandardCharsets.UTF_8),
                args);
    }

    private String out() {
        return outBytes.toString(StandardCharsets.UTF_8);
    }

    private String err() {
        return errBytes.toString(StandardCharsets.UTF_8);
    }

    @BeforeEach
    void analyzeTheDemonstration() throws IOException {
        design = Files.write(folder.resolve("line.json"), TestFiles.bytes("demo-design.json"));
        result = folder.resolve("line.result.json");
        assertThat(run("analyze", "--no-motion", design.toString())).isZero();
        assertThat(result).exists();
    }

    @Test
    void anUntouchedResultIsReproduced() {
        assertThat(run("reproduce", result.toString(), design.toString())).isZero();
        assertThat(out())
                .contains(": 0 differ")
                .contains("0 fail")
                .contains("all hold")
                .contains("\nreproduced");
        // On a slow machine it says how far it is.
        assertThat(err().lines().filter(l -> !l.startsWith("computing: "))).isEmpty();
    }

    @Test
    void aTamperedResultIsNot() throws IOException {
        String text = Files.readString(result).replaceFirst("\"lineLoad\" : [0-9.]+", "\"lineLoad\" : 1234.5");
        Files.writeString(result, text);
        assertThat(run("reproduce", result.toString(), design.toString())).isEqualTo(4);
        assertThat(out())
                .contains("arrests[0].lineLoad: stored 1234.5, recomputed")
                .contains("supports carry the load")
                .contains("NOT reproduced: numbers were changed");
    }

    @Test
    void aCutOffResultAndAChangedDesignAreToldApart() throws IOException {
        byte[] whole = Files.readAllBytes(result);
        Files.write(result, java.util.Arrays.copyOf(whole, whole.length / 2));
        assertThat(run("reproduce", result.toString(), design.toString())).isEqualTo(4);
        assertThat(out()).contains("the file is cut off");
        Files.write(result, whole);
        String text = Files.readString(design);
        Files.writeString(design, text.replace("\"1.2 kN\"", "\"1.3 kN\""));
        assertThat(run("reproduce", result.toString(), design.toString())).isEqualTo(4);
        assertThat(out()).contains("belongs to another design file");
    }

    @Test
    void whiteSpaceAndWrongOrderAreTold() throws IOException {
        Files.writeString(design, Files.readString(design) + "\n \n");
        assertThat(run("reproduce", result.toString(), design.toString())).isZero();
        assertThat(out()).contains("its white space differs, or").contains("not compared: how iterations went");

        assertThat(run("reproduce", design.toString(), result.toString())).isEqualTo(2);
        assertThat(err()).contains("the files stand in the wrong order");
    }

    @Test
    void badFilesAndCommandLinesExitWithTwo() {
        assertThat(run("reproduce", folder.resolve("none").toString(), design.toString()))
                .isEqualTo(2);
        assertThat(err()).contains("cannot be read").contains("none");
        assertThat(run("reproduce", result.toString(), result.toString())).isEqualTo(2);
        assertThat(err()).contains("cannot be used");
        assertThat(run("reproduce", result.toString(), design.toString(), "--tolerance", "-1"))
                .isEqualTo(2);
        assertThat(run("reproduce", result.toString())).isEqualTo(2);
        assertThat(run("report", design.toString(), "--units", "furlongs")).isEqualTo(2);
        assertThat(run("report", folder.resolve("none").toString())).isEqualTo(2);
    }

    @Test
    void theReportIsWrittenAsHtmlAndText() throws IOException {
        Path html = folder.resolve("line.html");
        Path text = folder.resolve("line.txt");
        assertThat(run(
                        "report",
                        design.toString(),
                        "--html",
                        html.toString(),
                        "--text",
                        text.toString(),
                        "--date",
                        "25 November",
                        "--by",
                        "J. <b>Doe</b>"))
                .isZero();
        assertThat(Files.readString(html))
                .startsWith("<!DOCTYPE html>")
                .contains("Flour mill")
                .contains("J. &lt;b&gt;Doe&lt;/b&gt;")
                .contains("25 November");
        assertThat(Files.readString(text))
                .contains("Calculation report: Flour mill")
                .contains("Cautions");
        assertThat(Files.readString(text))
                .contains("Envelope along the line")
                .contains("In time: ")
                .contains("Independent check")
                .contains("MET");
        assertThat(run(
                        "report",
                        design.toString(),
                        "--detail",
                        "short",
                        "--units",
                        "us",
                        "--no-transient",
                        "--no-envelope"))
                .isZero();
        String results = out().substring(out().indexOf("Installed state"));
        assertThat(results).contains("lbf").doesNotContain(" kN").doesNotContain("Envelope along");
        assertThat(run("report", design.toString(), "--detail", "novel")).isEqualTo(2);
        assertThat(err()).contains("--detail novel: must be short, governing or full");
    }

    @Test
    void anArrestThatCannotBeFollowedInTimeIsNamed() throws IOException {
        Path massless = folder.resolve("massless.json");
        Files.writeString(
                massless, TestFiles.gallery("\"massPerLength\": \"0.576 kg/m\"", "\"weightPerLength\": \"0 N/m\""));
        assertThat(run("report", massless.toString(), "--detail", "short", "--no-envelope"))
                .as(err())
                .isZero();
        assertThat(out().replaceAll("\\s+", " "))
                .contains("could not be followed in time: cable.massPerLength")
                .doesNotContain("Peaks beside the energy balance");
        assertThat(err()).contains("could not be followed in time");
    }

    @Test
    void thePartsOfAReportAreFilesOfTheirOwn() throws IOException {
        Path parts = folder.resolve("parts");
        assertThat(run("report", design.toString(), "--parts", parts.toString(), "--no-transient", "--no-envelope"))
                .isZero();
        assertThat(out()).isEmpty();
        List<String> index = Files.readAllLines(parts.resolve("index.csv"));
        assertThat(index.get(0)).isEqualTo("file,section,holds");
        for (String line : index.subList(1, index.size())) {
            Path part = parts.resolve(line.substring(0, line.indexOf(',')));
            assertThat(part).isNotEmptyFile();
            if (part.toString().endsWith(".svg")) {
                assertThat(Files.readString(part)).startsWith("<svg");
            }
        }
        assertThat(index).filteredOn(l -> l.startsWith("calculation-")).hasSizeGreaterThanOrEqualTo(8);
        assertThat(index).filteredOn(l -> l.startsWith("picture-")).hasSizeGreaterThanOrEqualTo(4);
    }

    @Test
    void helpListsTheExamplesAndTheyRun() {
        assertThat(run("help")).isZero();
        String help = out();
        Programs.all().forEach(p -> assertThat(help.replaceAll("\\s+", " ")).contains(p.name()));
        assertThat(help).contains("reproduce").contains("report").contains("example");
        assertThat(run("example")).isZero();
        Programs.all().forEach(p -> assertThat(out()).contains(p.name()).contains(p.task()));
        assertThat(run("example", "no-such")).isEqualTo(2);
        assertThat(err()).contains("must be one of").contains("single-span");
    }
}
