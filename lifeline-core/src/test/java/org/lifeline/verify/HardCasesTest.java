package org.lifeline.verify;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.lifeline.testing.ArrestCase;
import org.lifeline.testing.CaseText;

/** Cases that random lines found to be hard, or that once came out wrong; each file says what it is about. */
class HardCasesTest {
    private static final Path FOLDER = Path.of("src", "test", "resources", "org", "lifeline", "hard");

    static List<Path> files() throws IOException {
        try (Stream<Path> folder = Files.list(FOLDER)) {
            return folder.sorted().toList();
        }
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("files")
    void isSolvedAndVerified(Path file) throws IOException {
        List<String> lines = Files.readAllLines(file);
        assertThat(lines.get(0)).as("what the case is about").startsWith("# ");
        ArrestCase each = CaseText.read(lines);

        assertThat(Verifier.withDefaults().arrest(each.solve()).failures()).isEmpty();
    }

    @Test
    void theFolderIsNotEmpty() throws IOException {
        assertThat(files()).hasSizeGreaterThan(20);
    }
}
