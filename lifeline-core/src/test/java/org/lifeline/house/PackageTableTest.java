package org.lifeline.house;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** The table of floors in DEVELOPERS.md names every package of the core, and no other. */
class PackageTableTest {
    private static final Path SOURCES = Path.of("src/main/java/org/lifeline");
    private static final Pattern ROW = Pattern.compile("^\\| \\d[a-z]? \\| ([^|]*) \\|");
    private static final Pattern NAME = Pattern.compile("`([a-z.]+)`");

    /** Names in the second column of the rows of floors; a name that begins with a point is a part of the one before it. */
    static Set<String> named(List<String> lines) {
        Set<String> names = new TreeSet<>();
        for (String line : lines) {
            ROW.matcher(line).results().forEach(row -> {
                String[] whole = {""};
                NAME.matcher(row.group(1)).results().map(m -> m.group(1)).forEach(name -> {
                    whole[0] = name.startsWith(".") ? whole[0] : name;
                    names.add(name.startsWith(".") ? whole[0] + name : name);
                });
            });
        }
        return names;
    }

    @Test
    void theTableNamesEveryPackage() throws IOException {
        Set<String> packages = SourceHabits.javaFiles(SOURCES).stream()
                .map(file -> SOURCES.relativize(file.getParent()).toString().replaceAll("[/\\\\]", "."))
                .collect(Collectors.toCollection(TreeSet::new));

        assertThat(packages).hasSizeGreaterThan(20);
        assertThat(named(Files.readAllLines(Path.of("../DEVELOPERS.md")))).isEqualTo(packages);
    }

    @Test
    void partsOfAPackageAreRead() {
        assertThat(named(List.of("| 3d | `a.b` (`.c`, `.d`), `e` | `f` | `g` |", "| place | `h` |")))
                .containsExactly("a.b", "a.b.c", "a.b.d", "e");
    }
}
