package org.lifeline.file.output;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Every step of writing a set of outputs fails once, and is interrupted once: all of the set lands or nothing of it. */
class OutputFaultTest {
    private static final String OLD = "{ \"format\": \"org.lifeline.result/1\", \"old\": true }";
    private static final String NEW = "{ \"format\": \"org.lifeline.result/1\", \"new\": true }";

    @TempDir
    private Path folder;

    /** What happens at the step. */
    enum Fault {
        FULL,
        INTERRUPT
    }

    /** Lets one step fail. */
    private static final class Injector implements FileSteps {
        private final Fault fault;
        private final int at;
        private int count;
        private String hit = "none";

        Injector(Fault fault, int at) {
            this.fault = fault;
            this.at = at;
        }

        @Override
        public void before(Step step, Path path) throws IOException {
            if (count++ == at) {
                hit = step + " " + path.getFileName();
                if (fault == Fault.FULL) {
                    throw new IOException("No space left on device");
                }
                Thread.currentThread().interrupt();
            }
        }
    }

    private Map<String, String> contents() throws IOException {
        Map<String, String> map = new TreeMap<>();
        try (Stream<Path> list = Files.walk(folder)) {
            for (Path each : list.toList()) {
                map.put(folder.relativize(each).toString(), Files.isRegularFile(each) ? Files.readString(each) : "");
            }
        }
        return map;
    }

    private void set(FileSteps steps) throws IOException {
        try (OutputSet set = new OutputSet(false, List.of(), steps)) {
            Output old = set.claim(folder.resolve("old").toString(), FileKind.RESULT);
            Output second = set.claim(folder.resolve("second").toString(), FileKind.RESULT);
            Output fresh = set.claim(folder.resolve("fresh").toString(), FileKind.RESULT);
            OutputFolder parts = set.claimFolder(folder.resolve("a/b").toString());
            old.put(NEW);
            second.put(NEW);
            try (OutputStream out = fresh.open()) {
                for (int i = 0; i < 5; i++) {
                    out.write(new byte[10_000]);
                }
            }
            parts.put("table-001.csv", "x");
            parts.put(OutputFolder.INDEX, "file,section,holds\n");
            set.commit();
        }
    }

    private void reset() throws IOException {
        for (String each : List.of("a/b/table-001.csv", "a/b/index.csv", "a/b", "a", "fresh")) {
            Files.deleteIfExists(folder.resolve(each));
        }
        Files.writeString(folder.resolve("old"), OLD);
        Files.writeString(folder.resolve("second"), OLD);
    }

    @ParameterizedTest
    @EnumSource
    void allOrNothing(Fault fault) throws IOException {
        reset();
        Map<String, String> before = contents();
        Injector counting = new Injector(fault, -1);
        set(counting);
        Map<String, String> after = contents();
        assertThat(after)
                .containsEntry("old", NEW)
                .containsKeys("a/b/table-001.csv", "fresh")
                .hasSize(8);
        assertThat(counting.count).isGreaterThan(25);
        int failed = 0;
        for (int at = 0; at < counting.count; at++) {
            reset();
            assertThat(contents()).isEqualTo(before);
            Injector injector = new Injector(fault, at);
            boolean landed = true;
            try {
                set(injector);
            } catch (OutputException e) {
                landed = false;
                failed++;
                assertThat(e.isRefused()).isFalse();
                assertThat(e.getMessage())
                        .contains(fault == Fault.FULL ? "No space left on device" : "interrupted")
                        .contains(folder.toString())
                        .doesNotContain(".part");
            } finally {
                Thread.interrupted();
            }
            assertThat(contents())
                    .as("fault %s at step %d: %s", fault, at, injector.hit)
                    .isEqualTo(landed ? after : before);
            assertThat(landed && fault == Fault.FULL)
                    .as("step %d: %s", at, injector.hit)
                    .isFalse();
        }
        assertThat(failed).isGreaterThan(15);
    }

    @Test
    void aFaultWhereNothingIsPutBackLeavesNothing() throws IOException {
        Injector last = new Injector(Fault.FULL, 0);
        try (OutputSet set = new OutputSet(false, List.of(), last)) {
            Output fresh = set.claim(folder.resolve("fresh").toString(), FileKind.RESULT);
            assertThat(org.assertj.core.api.Assertions.catchThrowable(() -> fresh.put(NEW)))
                    .hasMessage(folder.resolve("fresh") + ": No space left on device");
        }
        assertThat(contents()).hasSize(1);
    }

    /** A user who may write a file may not always make one for its owner. */
    @Test
    void anOwnerThatCannotBeKeptIsToldAndTheFileStays() throws IOException {
        Path old = Files.writeString(folder.resolve("old"), OLD);
        assumeTrue(Files.getFileStore(old).supportsFileAttributeView("posix"), "files have an owner");
        FileSteps steps = (step, path) -> {
            if (step == FileSteps.Step.KEEP_OWNER) {
                throw new FileSystemException(path.toString(), null, "Operation not permitted");
            }
        };
        try (OutputSet set = new OutputSet(false, List.of(), steps)) {
            Output output = set.claim(old.toString(), FileKind.RESULT);
            OutputException e = catchThrowableOfType(OutputException.class, () -> output.put(NEW));
            assertThat(e.isRefused()).isTrue();
            assertThat(e)
                    .hasMessageStartingWith(old + ": belongs to user ")
                    .hasMessageEndingWith(", for whom this user cannot make a file in its place");
        }
        assertThat(old).hasContent(OLD);
        assertThat(contents()).hasSize(2);
    }
}
