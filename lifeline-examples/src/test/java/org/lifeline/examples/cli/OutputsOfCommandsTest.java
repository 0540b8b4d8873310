package org.lifeline.examples.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Isolated;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.lifeline.examples.TestFiles;

/** No command and no example destroys a file that it should not, and lost output is reported. */
@Isolated("it redirects the standard output")
class OutputsOfCommandsTest {
    private static final String DESIGN = TestFiles.text("independent/silo-roof-gripped-middle.design.json");

    /** The map wants criteria, and a coarse design keeps it quick. */
    private static final String SHORT = " --no-envelope --no-transient --detail short";

    @TempDir
    private Path folder;

    private Path design = Path.of("");
    private String err = "";
    private String out = "";

    @BeforeEach
    void writeDesign() throws IOException {
        design = Files.writeString(folder.resolve("d.json"), DESIGN);
    }

    /** Runs a command line; {@code @} before a name stands for the folder. */
    private int run(String line) {
        String[] args = Stream.of(line.split(" ", -1))
                .map(a -> a.startsWith("@") ? folder.resolve(a.substring(1)).toString() : a)
                .toArray(String[]::new);
        ByteArrayOutputStream outBytes = new ByteArrayOutputStream();
        ByteArrayOutputStream errBytes = new ByteArrayOutputStream();
        PrintStream before = System.out;
        PrintStream to = new PrintStream(outBytes, true, StandardCharsets.UTF_8);
        try {
            System.setOut(to);
            return CommandLines.run(to, new PrintStream(errBytes, true, StandardCharsets.UTF_8), args);
        } finally {
            System.setOut(before);
            out = outBytes.toString(StandardCharsets.UTF_8);
            err = withoutProgress(errBytes.toString(StandardCharsets.UTF_8));
        }
    }

    /** On a slow machine lines come in between that say how far the computation is. */
    private static String withoutProgress(String text) {
        return text.replaceAll("(?m)^computing: .*\\R", "");
    }

    private List<String> names() throws IOException {
        try (Stream<Path> list = Files.list(folder)) {
            return list.map(p -> p.getFileName().toString()).sorted().toList();
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "analyze @d.json --result @d.json",
                "analyze @d.json --result @link.json",
                "analyze @link.json --result @d.json --overwrite",
                "report @d.json --html @d.json",
                "report @d.json --text @d.json --overwrite",
                "report @d.json --text @link.json",
                "report @d.json --html @sub/../d.json",
                "example study @d.json 5 @link.csv",
                "example study @d.json 5 @link.csv --overwrite",
                "example histories @d.json @link.csv @new.svg",
                "example histories @d.json @new.csv @link.svg --overwrite",
                "example map @d.json @link.svg",
            })
    void theDesignOfACommandIsNeverItsOutput(String line) throws IOException {
        Files.createDirectory(folder.resolve("sub"));
        for (String link : List.of("link.csv", "link.json", "link.svg")) {
            Files.createSymbolicLink(folder.resolve(link), design);
        }
        assertThat(run(line)).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(err).contains("must not be an input of the same command").hasLineCount(1);
        assertThat(out).isEmpty();
        assertThat(design).hasContent(DESIGN);
        assertThat(names()).containsExactly("d.json", "link.csv", "link.json", "link.svg", "sub");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "analyze @d.json --result @other.json --overwrite",
                "analyze --result @other.json",
                "report @d.json --html @other.json --overwrite",
                "report @d.json --parts @other.json",
                "example span-study @other.json --overwrite",
                "example study @d.json 5 @other.json",
            })
    void anotherDesignIsNoOutputEither(String line) throws IOException {
        String text = TestFiles.text("independent/conveyor-gallery.design.json");
        Path other = Files.writeString(folder.resolve("other.json"), text);
        assertThat(run(line)).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(err).contains("other.json").hasLineCount(1);
        assertThat(out).isEmpty();
        assertThat(other).hasContent(text);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "report @d.json --html @x --text @x",
                "report @d.json --html @p/table-001.csv --parts @p",
            })
    void twoOutputsInOnePlaceAreRefused(String line) throws IOException {
        Files.createDirectory(folder.resolve("p"));
        assertThat(run(line + (line.startsWith("report") ? SHORT : ""))).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(err).contains("must not be the place of two outputs");
        assertThat(names()).containsExactly("d.json", "p");
        assertThat(folder.resolve("p")).isEmptyDirectory();
    }

    @Test
    void aFormerOutputIsReplacedAndAnyOtherFileOnlyWhenAsked() throws IOException {
        List<String> lines = List.of(
                "analyze @d.json --result @x",
                "report @d.json --html @x" + SHORT,
                "report @d.json --text @x" + SHORT,
                "example span-study @x.svg",
                "example study @d.json 5 @x.csv",
                "example histories @d.json @x.csv");
        for (String line : lines) {
            Path x = folder.resolve(line.contains(".svg") ? "x.svg" : line.contains(".csv") ? "x.csv" : "x");
            Files.deleteIfExists(x);
            assertThat(run(line)).as(line + err).isZero();
            String first = Files.readString(x);
            assertThat(run(line)).as("again: " + line + err).isZero();
            assertThat(x).hasContent(first);
            Files.writeString(x, "somebody's notes");
            assertThat(run(line)).as(line).isEqualTo(ExitCode.BAD_INPUT);
            assertThat(err).contains("--overwrite replaces it");
            assertThat(x).hasContent("somebody's notes");
            assertThat(run(line + " --overwrite")).as(line + err).isZero();
            assertThat(x).hasContent(first);
        }
        assertThat(run("report @d.json --parts @p" + SHORT)).isZero();
        assertThat(run("report @d.json --parts @p" + SHORT)).as(err).isZero();
        assertThat(names()).containsExactly("d.json", "p", "x", "x.csv", "x.svg");
    }

    @Test
    void aSetOfReportsLandsAsAWholeOrNotAtAll() throws IOException {
        assumeTrue(Files.exists(Path.of("/dev/full")), "the system has a device that is always full");
        assertThat(run("report @d.json --html @x --text /dev/full --parts @p" + SHORT))
                .isEqualTo(ExitCode.FAULT);
        assertThat(err).contains("An output could not be written: /dev/full: ").hasLineCount(1);
        assertThat(names()).containsExactly("d.json");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "analyze @d.json --result @no/where.json",
                "analyze @d.json --result=",
                "analyze @d.json --result @folder",
                "report @d.json --html @no/where.html",
                "report @d.json --text=",
                "report @d.json --parts @d.json/p",
                "example study @d.json 5 @no/where.csv",
                "example span-study @folder",
                "analyze @none.json",
                "reproduce @none.json @d.json",
                "example stringing @none.json",
                "example single-span --overwrite",
                "analyze ",
            })
    void whatCannotBeReadOrWrittenIsABadCommandLine(String line) throws IOException {
        Files.createDirectory(folder.resolve("folder"));
        assertThat(run(line)).as(err).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(out).isEmpty();
        assertThat(err).doesNotContain("Exception", "java.", "NoSuchFile");
        assertThat(names()).containsExactly("d.json", "folder");
    }

    /** A stream that takes some bytes and then none: a disk that becomes full, or a pipe whose reader has gone. */
    private static final class Filling extends OutputStream {
        private int room;

        Filling(int room) {
            this.room = room;
        }

        @Override
        public void write(int b) throws IOException {
            if (room-- <= 0) {
                throw new IOException("No space left on device");
            }
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "analyze @d.json --no-motion --no-result",
                "report @d.json --no-envelope --no-transient",
                "example single-span",
                "example",
                "help",
                "reproduce @d.result.json @d.json"
            })
    void lostOutputIsAFault(String line) {
        assertThat(run("analyze @d.json --no-motion")).isZero();
        String[] args = Stream.of(line.split(" ", -1))
                .map(a -> a.startsWith("@") ? folder.resolve(a.substring(1)).toString() : a)
                .toArray(String[]::new);
        for (int room : new int[] {0, 40}) {
            ByteArrayOutputStream errBytes = new ByteArrayOutputStream();
            PrintStream before = System.out;
            PrintStream to = new PrintStream(new Filling(room), true, StandardCharsets.UTF_8);
            try {
                System.setOut(to);
                assertThat(CommandLines.run(to, new PrintStream(errBytes, true, StandardCharsets.UTF_8), args))
                        .as(line)
                        .isEqualTo(ExitCode.FAULT);
            } finally {
                System.setOut(before);
            }
            assertThat(withoutProgress(errBytes.toString(StandardCharsets.UTF_8)))
                    .isEqualTo(CommandLines.LOST + System.lineSeparator());
        }
    }
}
