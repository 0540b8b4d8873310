package org.lifeline.file.output;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class OutputSetTest {
    private static final String RESULT = "{\n  \"format\" : \"org.lifeline.result/1\"";
    private static final String DESIGN = "{ \"title\": \"x\",\n  \"format\": \"org.lifeline.design/1\" }";

    @TempDir
    private Path folder;

    private List<String> names() throws IOException {
        try (Stream<Path> list = Files.list(folder)) {
            return list.map(p -> p.getFileName().toString()).sorted().toList();
        }
    }

    private static void write(boolean overwrite, Path target, String text, Path... inputs) throws IOException {
        try (OutputSet set = OutputSet.of(overwrite, inputs)) {
            set.claim(target.toString(), FileKind.RESULT).put(text);
            set.commit();
        }
    }

    private static void assertRefused(boolean overwrite, Path target, String why, Path... inputs) {
        assertRefused(overwrite, target.toString(), why, inputs);
    }

    private static void assertRefused(boolean overwrite, String target, String why, Path... inputs) {
        OutputException e = catchThrowableOfType(OutputException.class, () -> {
            try (OutputSet set = OutputSet.of(overwrite, inputs)) {
                set.claim(target, FileKind.RESULT);
            }
        });
        assertThat(e).as("refused: %s", target).isNotNull();
        assertThat(e.isRefused()).isTrue();
        assertThat(e).hasMessage(target + ": " + why);
    }

    @Test
    void writesAndReplacesAndLeavesNothingBeside() throws IOException {
        Path file = folder.resolve("a.result.json");
        write(false, file, RESULT + "1");
        assertThat(file).hasContent(RESULT + "1");
        write(false, file, RESULT + "2");
        assertThat(file).hasContent(RESULT + "2");
        assertThat(names()).containsExactly("a.result.json");
    }

    @Test
    void nothingLandsUnlessItIsCommitted() throws IOException {
        Path old = Files.writeString(folder.resolve("old"), RESULT);
        try (OutputSet set = OutputSet.of(false)) {
            set.claim(old.toString(), FileKind.RESULT).put("new");
            set.claim(folder.resolve("other").toString(), FileKind.RESULT).put("new");
            set.claimFolder(folder.resolve("a/b").toString()).put("table-001.csv", "x");
        }
        assertThat(names()).containsExactly("old");
        assertThat(old).hasContent(RESULT);
    }

    @Test
    void anInputIsNeverAnOutputThroughWhateverLink() throws IOException {
        Path input = Files.writeString(folder.resolve("in.json"), RESULT);
        Path link = Files.createSymbolicLink(folder.resolve("link"), input);
        Path inner = Files.createDirectory(folder.resolve("inner"));
        Path hard = Files.createLink(folder.resolve("hard"), input);
        String why = "must not be an input of the same command";
        for (boolean overwrite : new boolean[] {false, true}) {
            assertRefused(overwrite, input, why, input);
            assertRefused(overwrite, link, why, input);
            assertRefused(overwrite, input, why, link);
            assertRefused(overwrite, hard, why, input);
            assertRefused(overwrite, inner.resolve("../in.json"), why, input);
        }
    }

    @Test
    void twoOutputsNeverShareAPlaceThroughWhateverLink() throws IOException {
        Path there = Files.writeString(folder.resolve("there"), RESULT);
        Path link = Files.createSymbolicLink(folder.resolve("link"), there);
        Files.createSymbolicLink(folder.resolve("again"), folder);
        for (boolean overwrite : new boolean[] {false, true}) {
            for (Path[] pair : new Path[][] {
                {there, link},
                {there, there},
                {folder.resolve("new"), folder.resolve("new")},
                {folder.resolve("new"), folder.resolve("again/new")},
                {folder.resolve("again/./new"), folder.resolve("new")}
            }) {
                try (OutputSet set = OutputSet.of(overwrite)) {
                    set.claim(pair[0].toString(), FileKind.RESULT);
                    assertThatThrownBy(() -> set.claim(pair[1].toString(), FileKind.RESULT))
                            .hasMessage(pair[1] + ": must not be the place of two outputs");
                }
            }
        }
    }

    @Test
    void aFileThatIsNoFormerOutputIsReplacedOnlyWhenAsked() throws IOException {
        for (String text :
                List.of("notes", "{}", "<html>", " ", "{\"format\": \"org.lifeline.other/1\"}", "\u0000\u00ff")) {
            Path file = Files.writeString(folder.resolve("file"), text, StandardCharsets.ISO_8859_1);
            assertRefused(false, file, "is there already and is no result file; --overwrite replaces it");
            write(true, file, RESULT);
            assertThat(file).hasContent(RESULT);
        }
        Path empty = Files.createFile(folder.resolve("empty"));
        write(false, empty, RESULT);
        assertThat(empty).hasContent(RESULT);
    }

    @Test
    void aDesignIsNeverReplaced() throws IOException {
        for (String text : List.of(DESIGN, "\uFEFF" + DESIGN, "  \n" + DESIGN, DESIGN + "behind", "{" + DESIGN)) {
            Path file = Files.writeString(folder.resolve("file"), text);
            for (boolean overwrite : new boolean[] {false, true}) {
                assertRefused(overwrite, file, "is a design file, which no output replaces");
            }
        }
    }

    @Test
    void whatCannotBeWrittenIsRefusedWithItsReason() throws IOException {
        Path inner = Files.createDirectory(folder.resolve("inner"));
        Path file = Files.writeString(folder.resolve("file"), RESULT);
        Path nowhere = Files.createSymbolicLink(folder.resolve("nowhere"), folder.resolve("none"));
        Path loop = folder.resolve("loop");
        Files.createSymbolicLink(loop, loop);
        assertRefused(true, inner, "is a folder");
        assertRefused(true, folder.resolve("none/a"), "its folder does not exist");
        assertRefused(true, nowhere, "is a link that leads nowhere");
        assertRefused(true, nowhere.resolve("a"), "its folder does not exist");
        assertRefused(true, "", "the name of a file must not be empty");
        OutputException e = catchThrowableOfType(OutputException.class, () -> write(true, file.resolve("a"), "x"));
        assertThat(e.isRefused()).isTrue();
        assertThatThrownBy(() -> write(true, loop, "x")).isInstanceOf(OutputException.class);
        assertThatThrownBy(() -> write(true, folder.resolve("n".repeat(300)), "x"))
                .isInstanceOf(OutputException.class)
                .hasMessageContaining("nnn: ");
        assertThat(names()).containsExactly("file", "inner", "loop", "nowhere");
    }

    @Test
    void aFileThatNobodyMayWriteStaysAndSoDoesOneInAFolderOfThatKind() throws IOException {
        assumePosix();
        Path file = Files.writeString(folder.resolve("file"), RESULT);
        Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("r--r--r--"));
        assertRefused(true, file, "is read-only");
        Path inner = Files.createDirectory(folder.resolve("inner"));
        Files.setPosixFilePermissions(inner, PosixFilePermissions.fromString("r-xr-xr-x"));
        assertRefused(true, inner.resolve("new"), "its folder is read-only");
        assertThatThrownBy(() -> OutputSet.of(true).claimFolder(inner.toString()))
                .hasMessage(inner + ": is read-only");
        Files.setPosixFilePermissions(inner, PosixFilePermissions.fromString("rwxr-xr-x"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"rw-------", "rw-rw-rw-", "rwxr-x---", "rw-r--r--"})
    void theModeOfAFileIsKept(String mode) throws IOException {
        assumePosix();
        Path file = Files.writeString(folder.resolve("file"), RESULT);
        Files.setPosixFilePermissions(file, PosixFilePermissions.fromString(mode));
        Object owner = Files.getAttribute(file, "posix:owner");
        write(false, file, RESULT + "new");
        assertThat(file).hasContent(RESULT + "new");
        assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(file)))
                .isEqualTo(mode);
        assertThat(Files.getAttribute(file, "posix:owner")).isEqualTo(owner);
    }

    private static void assumePosix() {
        assumeTrue(FileSystems.getDefault().supportedFileAttributeViews().contains("posix"), "files have a mode");
    }

    @Test
    void aLinkStaysALinkAndWhatItLeadsToIsReplaced() throws IOException {
        Path real = Files.writeString(folder.resolve("real"), RESULT);
        Path link = Files.createSymbolicLink(folder.resolve("link"), Path.of("real"));
        write(false, link, RESULT + "new");
        assertThat(Files.isSymbolicLink(link)).isTrue();
        assertThat(real).hasContent(RESULT + "new");
        assertThat(names()).containsExactly("link", "real");
    }

    @Test
    void aFullDeviceIsAFailureThatNamesTheDevice() throws IOException {
        Path full = Path.of("/dev/full");
        assumeTrue(Files.exists(full), "the system has a device that is always full");
        Object before = Files.getAttribute(full, "unix:mode");
        OutputException e = catchThrowableOfType(OutputException.class, () -> write(true, full, RESULT));
        assertThat(e.isRefused()).isFalse();
        assertThat(e).hasMessageStartingWith("/dev/full: ");
        try (OutputSet set = OutputSet.of(false)) {
            Output output = set.claim("/dev/full", FileKind.CASES);
            assertThatThrownBy(() -> {
                        try (OutputStream out = output.open()) {
                            out.write(new byte[1 << 16]);
                        }
                    })
                    .hasMessageStartingWith("/dev/full: ");
        }
        assertThat(Files.getAttribute(full, "unix:mode")).isEqualTo(before);
    }

    /** A set with a device that is full and a file: the file does not land either. */
    @Test
    void aSetDoesNotLandWhereOneOfItsDevicesIsFull() throws IOException {
        assumeTrue(Files.exists(Path.of("/dev/full")), "the system has a device that is always full");
        Path old = Files.writeString(folder.resolve("old"), RESULT);
        try (OutputSet set = OutputSet.of(false)) {
            set.claim(old.toString(), FileKind.RESULT).put("new");
            set.claim("/dev/full", FileKind.RESULT).put("new");
            assertThatThrownBy(set::commit).hasMessageStartingWith("/dev/full: ");
        }
        assertThat(names()).containsExactly("old");
        assertThat(old).hasContent(RESULT);
    }

    @Test
    void aFifoIsWrittenToAndStaysOne() throws Exception {
        Path fifo = folder.resolve("fifo");
        assumeTrue(mkfifo(fifo), "the system has FIFOs");
        ExecutorService reader = Executors.newSingleThreadExecutor();
        try {
            Future<String> read = reader.submit(() -> Files.readString(fifo));
            write(false, fifo, "through");
            assertThat(read.get()).isEqualTo("through");
        } finally {
            reader.shutdownNow();
        }
        assertThat(Files.readAttributes(fifo, java.nio.file.attribute.BasicFileAttributes.class)
                        .isOther())
                .isTrue();
        assertThat(names()).containsExactly("fifo");
    }

    private static boolean mkfifo(Path path) throws InterruptedException {
        try {
            return new ProcessBuilder("mkfifo", path.toString()).start().waitFor() == 0;
        } catch (IOException e) {
            return false;
        }
    }

    @Test
    void aFileThatAppearsMeanwhileIsNotReplaced() throws IOException {
        Path file = folder.resolve("file");
        try (OutputSet set = OutputSet.of(false)) {
            set.claim(file.toString(), FileKind.RESULT).put("new");
            Files.writeString(file, "somebody else's");
            assertThatThrownBy(set::commit)
                    .isInstanceOfSatisfying(
                            OutputException.class,
                            e -> assertThat(e.isRefused()).isTrue());
        }
        assertThat(file).hasContent("somebody else's");
        assertThat(names()).containsExactly("file");
    }

    @Test
    void aFolderOfPartsIsKnownByItsList() throws IOException {
        Path parts = folder.resolve("parts");
        try (OutputSet set = OutputSet.of(false)) {
            OutputFolder out = set.claimFolder(parts.toString());
            out.put("table-001.csv", "one");
            out.put("table-002.csv", "two");
            out.put(OutputFolder.INDEX, "file,section,holds\r\ntable-001.csv,a,b\r\ntable-002.csv,a,b\r\n");
            set.commit();
        }
        Path mine = Files.writeString(parts.resolve("mine.csv"), "mine");
        try (OutputSet set = OutputSet.of(false)) {
            OutputFolder out = set.claimFolder(parts.toString());
            out.put("table-001.csv", "new");
            out.put(OutputFolder.INDEX, "file,section,holds\r\ntable-001.csv,a,b\r\n");
            set.commit();
        }
        assertThat(parts.resolve("table-001.csv")).hasContent("new");
        assertThat(parts.resolve("table-002.csv")).doesNotExist();
        assertThat(mine).hasContent("mine");

        Path other = Files.createDirectory(folder.resolve("other"));
        Path table = Files.writeString(other.resolve("table-001.csv"), "mine");
        assertThatThrownBy(() -> OutputSet.of(false).claimFolder(other.toString()))
                .hasMessageContaining("--overwrite replaces them");
        assertThat(table).hasContent("mine");
        assertThatThrownBy(() -> OutputSet.of(true).claimFolder(table.toString()))
                .hasMessage(table + ": is no folder");
    }

    /** Somebody who types a separator at the end means a folder, which a path does not remember. */
    @Test
    void aNameThatEndsLikeAFolderIsRefused() throws IOException {
        Path file = Files.writeString(folder.resolve("file"), RESULT);
        assertRefused(true, file + "/", "is no folder");
        assertRefused(true, folder.resolve("new") + "/", "is the name of a folder");
        assertThat(names()).containsExactly("file");
        assertThat(file).hasContent(RESULT);
    }
}
