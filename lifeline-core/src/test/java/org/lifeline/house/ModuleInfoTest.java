package org.lifeline.house;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** The module exports every public package and nothing else. */
class ModuleInfoTest {
    private static final Path DESCRIPTOR = Path.of("src/main/module/module-info.java");
    private static final Path SOURCES = Path.of("src/main/java");

    private static Set<String> stated(String word) throws IOException {
        return Pattern.compile("(?m)^    " + word + " (?:static )?([a-z.0-9]+);")
                .matcher(Files.readString(DESCRIPTOR))
                .results()
                .map((MatchResult m) -> m.group(1))
                .collect(Collectors.toCollection(TreeSet::new));
    }

    @Test
    void whatIsExportedIsWhatIsPublic() throws IOException {
        Set<String> packages;
        try (Stream<Path> files = Files.walk(SOURCES)) {
            packages = files.filter(f -> f.endsWith("package-info.java"))
                    .map(f -> SOURCES.relativize(f.getParent())
                            .toString()
                            .replace('/', '.')
                            .replace('\\', '.'))
                    .filter(p -> !p.startsWith("org.lifeline.internal"))
                    .collect(Collectors.toCollection(TreeSet::new));
        }
        assertThat(packages).hasSizeGreaterThan(20);
        assertThat(stated("exports")).isEqualTo(packages);
    }

    /** Anything more would have to be there, with a name, on every module path. */
    @Test
    void itRequiresWhatItComputesWith() throws IOException {
        assertThat(stated("requires"))
                .containsExactlyInAnyOrder("commons.math3", "ejml.core", "ejml.ddense", "org.jspecify");
    }
}
