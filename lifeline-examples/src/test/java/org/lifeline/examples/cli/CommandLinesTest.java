package org.lifeline.examples.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.lifeline.base.Convergence;
import org.lifeline.base.NoEquilibriumException;
import org.lifeline.examples.TestFiles;

class CommandLinesTest {
    @TempDir
    private Path folder;

    private final ByteArrayOutputStream outBytes = new ByteArrayOutputStream();
    private final ByteArrayOutputStream errBytes = new ByteArrayOutputStream();
    private final PrintStream out = new PrintStream(outBytes, true, StandardCharsets.UTF_8);
    private final PrintStream err = new PrintStream(errBytes, true, StandardCharsets.UTF_8);

    private int run(String... args) {
        return CommandLines.run(out, err, args);
    }

    private String out() {
        return outBytes.toString(StandardCharsets.UTF_8);
    }

    private String err() {
        return errBytes.toString(StandardCharsets.UTF_8);
    }

    private Path file(String name, String content) throws IOException {
        return Files.writeString(folder.resolve(name), content);
    }

    private List<String> names() throws IOException {
        try (Stream<Path> list = Files.list(folder)) {
            return list.map(p -> p.getFileName().toString()).sorted().toList();
        }
    }

    @Test
    void withoutArgumentsTheDemonstrationIsAnalyzedAndNothingIsWritten() throws IOException {
        List<String> before = listWorkingFolder();
        assertThat(run()).isZero();
        assertThat(out())
                .contains("Flour mill, loading roof over the wagon siding")
                .contains("ASSESSMENT: ", "WHAT GOVERNS", "CRITERIA", "WARNINGS")
                .doesNotContain("Result file");
        assertThat(err().lines()).allMatch(l -> l.startsWith("computing: "));
        assertThat(listWorkingFolder()).isEqualTo(before);
    }

    private static List<String> listWorkingFolder() throws IOException {
        try (Stream<Path> list = Files.list(Path.of("."))) {
            return list.map(Path::toString).sorted().toList();
        }
    }

    @Test
    void theDemonstrationWritesItsResultWhereItIsTold() {
        Path result = folder.resolve("demo.out");
        assertThat(run("analyze", "--no-motion", "--result", result.toString())).isZero();
        assertThat(TestFiles.tree(read(result)).get("format").textValue()).isEqualTo("org.lifeline.result/2");
        assertThat(out()).contains("Result file: " + result);
    }

    private static byte[] read(Path path) {
        try {
            return Files.readAllBytes(path);
        } catch (IOException e) {
            throw new AssertionError(e);
        }
    }

    @Test
    void aDesignIsAnalyzedAndItsResultStandsBesideIt() throws IOException {
        Path design = file("gallery.json", TestFiles.text("independent/conveyor-gallery.design.json"));
        assertThat(run("analyze", "--no-motion", design.toString())).isZero();
        assertThat(names()).containsExactly("gallery.json", "gallery.result.json");
        assertThat(TestFiles.tree(read(folder.resolve("gallery.result.json"))).get("arrests"))
                .hasSize(6);
        assertThat(out()).contains("Conveyor gallery, walkway line 2");
        assertThat(err().lines()).allMatch(l -> l.startsWith("computing: "));
    }

    @ParameterizedTest
    @ValueSource(strings = {"--no-result", "--result=-"})
    void aResultFileCanBeLeftOut(String option) throws IOException {
        Path design = file("gallery.json", TestFiles.text("independent/conveyor-gallery.design.json"));
        assertThat(run("analyze", "--no-motion", design.toString(), option)).isZero();
        assertThat(names()).containsExactly("gallery.json");
    }

    @Test
    void aNameWithoutEndingGetsOne() throws IOException {
        Path design = file("gallery", TestFiles.text("independent/silo-roof-gripped-middle.design.json"));
        assertThat(run("analyze", "--no-motion", design.toString())).isZero();
        assertThat(names()).containsExactly("gallery", "gallery.result.json");
    }

    @Test
    void theDesignItselfIsNeverOverwritten() throws IOException {
        String text = TestFiles.text("independent/silo-roof-gripped-middle.design.json");
        Path design = file("d.json", text);
        assertThat(run("analyze", "--no-motion", design.toString(), "--result", design.toString()))
                .isEqualTo(2);
        assertThat(design).hasContent(text);
        assertThat(out()).isEmpty();
        assertThat(err()).contains("must not be an input of the same command");
    }

    @ParameterizedTest
    @CsvSource({"both, true, true", "si, true, false", "us, false, true"})
    void unitsAreChosen(String units, boolean si, boolean us) {
        assertThat(run("analyze", "--no-motion", "--full", "--units", units)).isZero();
        String results = out().substring(out().indexOf("Installed state"), out().indexOf("Documents of the plan"));
        assertThat(results.contains(" kN")).isEqualTo(si);
        assertThat(results.contains(" lbf")).isEqualTo(us);
    }

    /** Ten bad files: exit code, every path and value and rule on standard error, nothing on standard output. */
    static List<BadFile> badFiles() {
        return List.of(
                bad("\"1.5 kN\"", "\"1.5 m\"", "installed.pretension: \"1.5 m\": is a length (m); must be a force"),
                bad("\"100 kg\"", "100", "workers[0].mass: 100: must be a text with a number and its unit"),
                bad("\"mass\"", "\"mas\"", "workers[0].mas: \"100 kg\": is an unknown key; did you mean \"mass\"?"),
                bad(
                        "\"fallers\": [\"A\"]",
                        "\"fallers\": [\"C\"]",
                        "falls[0].fallers[0]: \"C\": is not the id of a worker"),
                bad(
                        "0.12",
                        "\"slippery\"",
                        "supports[1].passage.friction: \"slippery\": must be a number without unit"),
                bad("\"6 m\"", "\"16 m\"", "falls[0].station: \"16 m\": must lie inside the span"),
                bad(
                        "\"title\"",
                        "\"title\": \"a\", \"title\"",
                        "title: \"Conveyor gallery, walkway line 2\": is given twice"),
                bad(
                        "\"15 °C\"",
                        "\"fifteen °C\"",
                        "installed.temperature: \"fifteen °C\": must be a number followed by its unit"),
                bad("\"format\": \"org.lifeline.design/1\",", "", "format: missing: must be given"),
                bad("\"falls\": [", "\"falls\": [[", "is not JSON"),
                bad("\"1.5 kN\"", "\"0.1 N\"", "installed.pretension: \"0.1 N\": "));
    }

    record BadFile(String text, String message) {}

    private static BadFile bad(String what, String by, String message) {
        return new BadFile(TestFiles.gallery(what, by), message);
    }

    @ParameterizedTest
    @MethodSource("badFiles")
    void aBadFileExitsWithTwo(BadFile bad) throws IOException {
        Path design = file("bad.json", bad.text());
        assertThat(run("analyze", "--no-motion", design.toString())).isEqualTo(2);
        assertThat(out()).isEmpty();
        assertThat(err()).contains(bad.message()).contains("violation").doesNotContain("\tat ");
        assertThat(names()).containsExactly("bad.json");
    }

    @Test
    void anOldResultStaysWhenTheDesignIsBad() throws IOException {
        file("bad.result.json", "old");
        Path design = file("bad.json", TestFiles.gallery("\"100 kg\"", "\"-1 kg\""));
        assertThat(run("analyze", "--no-motion", design.toString())).isEqualTo(2);
        assertThat(folder.resolve("bad.result.json")).hasContent("old");
    }

    @Test
    void aMissingFileExitsWithTwo() {
        assertThat(run("analyze", "--no-motion", folder.resolve("none.json").toString()))
                .isEqualTo(2);
        assertThat(out()).isEmpty();
        assertThat(err()).contains("cannot be read").contains("none.json");
        assertThat(run("analyze", "--no-motion", folder.toString())).isEqualTo(2);
    }

    @Test
    void aFileThatIsTooLargeExitsWithTwo() throws IOException {
        Path design = folder.resolve("large.json");
        Files.write(design, new byte[11_000_000]);
        assertThat(run("analyze", "--no-motion", design.toString())).isEqualTo(2);
        assertThat(err()).contains("file: more than 10000000 bytes: must not be larger than");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "analyse",
                "analyze --units metric",
                "analyze --method guess",
                "analyze --nothing",
                "analyze a b c"
            })
    void aBadCommandLineExitsWithTwo(String line) {
        assertThat(run(line.split(" ", -1))).isEqualTo(2);
        assertThat(out()).isEmpty();
        assertThat(err()).contains("Bad command line").doesNotContain("\tat ");
    }

    @Test
    void aResultWithoutAFolderIsRefusedAndNothingIsPrinted() {
        assertThat(run(
                        "analyze",
                        "--no-motion",
                        "--result",
                        folder.resolve("no/where.json").toString()))
                .isEqualTo(2);
        assertThat(out()).isEmpty();
        assertThat(err()).contains("no/where.json: its folder does not exist");
    }

    @Test
    void noEquilibriumExitsWithThreeAndSaysHowFarItCame() {
        AnalyzeCommand analyze = new AnalyzeCommand(out, err, (design, listener, method) -> {
            throw new NoEquilibriumException("span 2 under the load", 0.375, new Convergence(77, 1.25e-3, 1e-11));
        });
        assertThat(CommandLines.run(analyze, out, err, "analyze")).isEqualTo(3);
        assertThat(out()).isEmpty();
        assertThat(err())
                .contains("span 2 under the load")
                .contains("0.375")
                .contains("0.00125")
                .contains("77 iterations");
    }

    @Test
    void aFaultExitsWithOneWithoutAStackTraceUnlessAsked() {
        AnalyzeCommand analyze = new AnalyzeCommand(out, err, (design, listener, method) -> {
            throw new IllegalStateException("a wheel came off");
        });
        assertThat(CommandLines.run(analyze, out, err, "analyze")).isEqualTo(1);
        assertThat(out()).isEmpty();
        assertThat(err()).contains("a wheel came off").doesNotContain("\tat ");

        AnalyzeCommand again = new AnalyzeCommand(out, err, (design, listener, method) -> {
            throw new IllegalStateException("a wheel came off");
        });
        assertThat(CommandLines.run(again, out, err, "analyze", "--stack-trace"))
                .isEqualTo(1);
        assertThat(err()).contains("\tat ");
    }

    @Test
    void everyCommandTellsWhatItTakes() {
        assertThat(run("--help")).isZero();
        assertThat(out()).contains("Commands:", "report");
        for (String command : List.of("analyze", "report", "reproduce", "example")) {
            outBytes.reset();
            assertThat(run(command, "--help")).as(command).isZero();
            assertThat(out()).as(command).contains("Usage: lifeline " + command, "--help");
            assertThat(err()).isEmpty();
        }
    }

    @Test
    void helpExplains() {
        assertThat(run("help")).isZero();
        assertThat(out()).contains("analyze").contains("demonstration");
        assertThat(run("help", "analyze")).isZero();
        assertThat(out()).contains("--result").contains("--units").contains("Exit codes");
        assertThat(err()).isEmpty();
    }

    @Test
    void theOutputIsTheSameInEveryLocale() {
        Locale before = Locale.getDefault();
        try {
            Locale.setDefault(Locale.ROOT);
            run();
            String root = out();
            outBytes.reset();
            for (String tag : List.of("de-DE", "ar-EG-u-nu-arab", "hi-IN-u-nu-deva", "tr-TR")) {
                Locale.setDefault(Locale.forLanguageTag(tag));
                run();
                assertThat(out()).as(tag).isEqualTo(root);
                outBytes.reset();
            }
        } finally {
            Locale.setDefault(before);
        }
    }

    @Test
    void controlCharactersOfADesignDoNotReachTheTerminal() throws IOException {
        String text = TestFiles.gallery(
                        "Conveyor gallery, walkway line 2", "red \\u001b[31m\\u202etxt\\u0007 \\u009b2J")
                .replace("\"middle of bay 2\"", "\"bay\\r\\n 2\"");
        Path design = file("inert.json", text);
        assertThat(run("analyze", "--no-motion", design.toString(), "--no-result", "--full"))
                .isZero();
        assertThat(out()).contains("red ␛[31m⟨U+202E⟩txt␇ ⟨U+009B⟩2J").contains("bay   2");
        assertThat(out().chars().filter(c -> c != '\n')).noneMatch(Character::isISOControl);

        Path bad = file("bad.json", TestFiles.gallery("\"mass\"", "\"\\u001b[2Jmass\""));
        assertThat(run("analyze", "--no-motion", bad.toString())).isEqualTo(2);
        assertThat(err()).contains("␛[2Jmass");
        assertThat(err().chars().filter(c -> c != '\n')).noneMatch(Character::isISOControl);
    }

    @Test
    void aWorstPlaceIsLookedForWhereNoFallsAreNamed() throws IOException {
        String text = TestFiles.text("independent/conveyor-gallery.design.json")
                .replace("\"falls\": [", "\"falls\": [],\n\"criteria\": []}");
        Path design = file("search.json", text.substring(0, text.indexOf("\"criteria\": []}") + 15));
        assertThat(run("analyze", "--no-motion", "--full", design.toString())).isZero();
        assertThat(out()).contains("The design names no falls").contains("worker A, span 1");
        assertThat(TestFiles.tree(read(folder.resolve("search.result.json")))
                        .get("fallsSearched")
                        .booleanValue())
                .isTrue();
    }

    @Test
    void aToleranceIsANumber() {
        assertThat(run("reproduce", "a", "b", "--tolerance", "small")).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(err()).contains("\"small\" must be a number").doesNotContain("double");
    }

    @Test
    void theFileThatCannotBeReadIsNamed() throws IOException {
        String design = file("d.json", TestFiles.text("independent/silo-roof-gripped-middle.design.json"))
                .toString();
        assertThat(run("reproduce", folder.toString(), design)).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(err()).startsWith("A file cannot be read: " + folder + ": ");
        errBytes.reset();
        assertThat(run("example", "envelope", folder.toString())).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(err()).startsWith("A file cannot be read: " + folder + ": ");
    }
}
