package org.lifeline.examples.json;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class AtomicFileTest {
    @TempDir
    private Path folder;

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    private long files() throws IOException {
        try (Stream<Path> list = Files.list(folder)) {
            return list.count();
        }
    }

    @Test
    void writesAndReplacesAndLeavesNothingBeside() throws IOException {
        Path file = folder.resolve("a.result.json");
        AtomicFile.write(file, bytes("one"));
        assertThat(file).hasContent("one");
        AtomicFile.write(file, bytes("two"));
        assertThat(file).hasContent("two");
        assertThat(files()).isEqualTo(1);
    }

    @Test
    void aFolderThatIsMissingIsAnErrorAndNothingIsLeft() throws IOException {
        assertThatThrownBy(() -> AtomicFile.write(folder.resolve("no/a.json"), bytes("x")))
                .isInstanceOf(IOException.class);
        assertThat(files()).isZero();
    }

    @Test
    void aFolderIsNotReplaced() throws IOException {
        Path inner = Files.createDirectory(folder.resolve("inner"));
        assertThatThrownBy(() -> AtomicFile.write(inner, bytes("x"))).isInstanceOf(IOException.class);
        assertThat(inner).isDirectory();
        assertThat(files()).isEqualTo(1);
    }

    @Test
    void aLinkStaysALink() throws IOException {
        Path real = Files.writeString(folder.resolve("real.json"), "old");
        Path link = Files.createSymbolicLink(folder.resolve("link.json"), real);
        AtomicFile.write(link, bytes("new"));
        assertThat(Files.isSymbolicLink(link)).isTrue();
        assertThat(real).hasContent("new");
    }
}
