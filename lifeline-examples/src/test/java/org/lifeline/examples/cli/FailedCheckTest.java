package org.lifeline.examples.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.lang.reflect.Field;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.design.assessment.Assessment;
import org.lifeline.file.result.AssessedRun;
import picocli.CommandLine;

/** A result that breaks a law ends the program with a code of its own, is named, and is flagged in the result file. */
class FailedCheckTest {
    private final ByteArrayOutputStream out = new ByteArrayOutputStream();
    private final ByteArrayOutputStream err = new ByteArrayOutputStream();

    private int analyze(Path result, boolean tamper) {
        AnalyzeCommand command = new AnalyzeCommand(
                new PrintStream(out, true, StandardCharsets.UTF_8),
                new PrintStream(err, true, StandardCharsets.UTF_8),
                (design, listener, choice) -> {
                    AssessedRun run = AssessedRun.of(
                            design.design(), Assessment.withDefaults().withoutMotion());
                    if (tamper) {
                        moreFreeFall(run.run().arrests().get(0));
                    }
                    return run;
                });
        return new CommandLine(command).execute("--full", "--result", result.toString());
    }

    private static void moreFreeFall(ArrestResult arrest) {
        try {
            Field field = ArrestResult.class.getDeclaredField("freeFall");
            field.setAccessible(true);
            field.setDouble(arrest, arrest.freeFall() + 0.01);
        } catch (ReflectiveOperationException e) {
            throw new LinkageError(e.getMessage(), e);
        }
    }

    @Test
    void aBrokenLaw(@TempDir Path folder) throws IOException {
        Path result = folder.resolve("result.json");

        assertThat(analyze(result, true)).isEqualTo(ExitCode.CHECK_FAILED).isEqualTo(4);
        assertThat(err.toString(StandardCharsets.UTF_8))
                .contains("Independent check: arrest 1: FAILED  FREE_FALL")
                .contains("The independent check FAILED");
        String text = Files.readString(result);
        assertThat(text.split("\"independentCheck\" : \"failed\"", -1)).hasSize(2);
        assertThat(text).contains("\"independentCheck\" : \"passed\"");
        assertThat(out.toString(StandardCharsets.UTF_8).replaceAll("\\s+", " "))
                .contains("the independent check FAILED");
    }

    @Test
    void nothingBroken(@TempDir Path folder) throws IOException {
        Path result = folder.resolve("result.json");

        assertThat(analyze(result, false)).isZero();
        assertThat(err.toString(StandardCharsets.UTF_8)).doesNotContain("ndependent check");
        assertThat(Files.readString(result))
                .contains("\"independentCheck\" : \"passed\"")
                .doesNotContain("\"failed\"");
    }
}
