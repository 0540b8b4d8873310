package org.lifeline.examples.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.lifeline.examples.Main;
import org.lifeline.examples.TestFiles;

/** The program as a process of its own, with streams and signals of the system. */
@Timeout(120)
class ProcessTest {
    @TempDir
    private Path folder;

    private Path design = Path.of("");

    @BeforeEach
    void writeDesign() throws IOException {
        assumeTrue(File.separatorChar == '/', "streams and signals are those of POSIX");
        design = Files.writeString(
                folder.resolve("d.json"), TestFiles.text("independent/silo-roof-gripped-middle.design.json"));
    }

    private ProcessBuilder program(String... args) {
        List<String> line = new ArrayList<>(List.of(
                ProcessHandle.current().info().command().orElse("java"),
                "-XX:TieredStopAtLevel=1",
                "-cp",
                ProgramClassPath.text(),
                Main.class.getName()));
        line.addAll(List.of(args));
        return new ProcessBuilder(line)
                .directory(folder.toFile())
                .redirectError(folder.resolve("err").toFile());
    }

    private List<String> names() throws IOException {
        try (Stream<Path> list = Files.list(folder)) {
            return list.map(p -> p.getFileName().toString()).sorted().toList();
        }
    }

    @Test
    void aFullDeviceAsStandardOutputEndsWithOneLineAndOne() throws Exception {
        assumeTrue(Files.exists(Path.of("/dev/full")), "the system has a device that is always full");
        int code = program("example", "single-span")
                .redirectOutput(new File("/dev/full"))
                .start()
                .waitFor();
        assertThat(code).isEqualTo(1);
        assertThat(folder.resolve("err")).hasContent(CommandLines.LOST);
    }

    @Test
    void aBrokenPipeEndsWithOneLineAndOne() throws Exception {
        Process process = program("example", "single-span").start();
        process.getInputStream().close();
        assertThat(process.waitFor()).isEqualTo(1);
        assertThat(folder.resolve("err")).hasContent(CommandLines.LOST);
    }

    @Test
    void theResultIsNotWrittenOverTheStandardOutput() throws Exception {
        Path out = folder.resolve("out");
        int code = program("analyze", "--no-motion", design.toString(), "--result", out.toString())
                .redirectOutput(out.toFile())
                .start()
                .waitFor();
        assumeTrue(Files.exists(Path.of("/proc/self/fd/1")), "the system tells where the standard output goes");
        assertThat(code).isEqualTo(2);
        assertThat(folder.resolve("err")).content().contains("is where the standard output of this command goes");
        assertThat(out).isEmptyFile();
    }

    /** Stopped while it writes cases: neither the file nor an unfinished one is left. */
    @Test
    void aSignalLeavesNothingUnfinished() throws Exception {
        Process process = program("example", "study", design.toString(), "100000000", "cases.csv")
                .redirectOutput(folder.resolve("out").toFile())
                .start();
        try {
            while (process.isAlive() && names().stream().noneMatch(n -> n.endsWith(".part"))) {
                Thread.sleep(20);
            }
            assertThat(process.isAlive()).as("it has begun to write").isTrue();
            process.destroy();
            assertThat(process.waitFor(60, TimeUnit.SECONDS)).isTrue();
        } finally {
            process.destroyForcibly();
        }
        assertThat(process.exitValue()).as("128 and the number of the signal").isEqualTo(143);
        assertThat(names()).containsExactly("d.json", "err", "out");
    }

    /** The messages of a command would go with the file that is replaced. */
    @Test
    void aResultIsNotWrittenOverTheStandardError() throws Exception {
        assumeTrue(Files.exists(Path.of("/proc/self/fd/2")), "the system tells where the standard error goes");
        for (String name : List.of("/dev/stderr", folder.resolve("err").toString())) {
            int code = program("analyze", "--no-motion", design.toString(), "--result", name)
                    .redirectOutput(folder.resolve("out").toFile())
                    .start()
                    .waitFor();
            assertThat(code).isEqualTo(2);
            assertThat(folder.resolve("err")).content().contains("is where the standard error of this command goes");
        }
    }

    /** The name of a stream says nothing of where its design came from. */
    @Test
    void aDesignFromAStreamHasNoResultBesideIt() throws Exception {
        Path stream = Path.of("/dev/stdin");
        assumeTrue(Files.exists(stream), "the standard input has a name");
        int code = program("analyze", "--no-motion", stream.toString())
                .redirectInput(design.toFile())
                .redirectOutput(folder.resolve("out").toFile())
                .start()
                .waitFor();
        assertThat(code).isZero();
        assertThat(folder.resolve("out")).content().contains("Silo roof").doesNotContain("Result file");
    }

    /** An example that meets the end of the memory says so in words, as a command does. */
    @Test
    void tooLittleMemoryIsToldInWords() throws Exception {
        Path old = folder.resolve("cases.csv");
        Files.write(old, ("case,x,failure\n" + " ".repeat(11_000_000)).getBytes(StandardCharsets.UTF_8));
        ProcessBuilder example = program("example", "study", design.toString(), "1", old.toString());
        example.command().add(1, "-Xmx16m");
        int code =
                example.redirectOutput(folder.resolve("out").toFile()).start().waitFor();
        assertThat(code).isEqualTo(1);
        assertThat(folder.resolve("err"))
                .content()
                .startsWith("The memory that this program may use is not enough")
                .doesNotContain("\tat ");
        assertThat(names()).containsExactly("cases.csv", "d.json", "err", "out");
    }
}
