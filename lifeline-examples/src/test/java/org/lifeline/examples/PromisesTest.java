package org.lifeline.examples;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Every promise of README.md names a test, and the test is there. */
class PromisesTest {
    private static final List<Path> SOURCES =
            List.of(Path.of("src/test/java"), Path.of("../lifeline-core/src/test/java"));

    @Test
    void everyPromiseIsATest() throws IOException {
        String readme = Files.readString(Path.of("README.md"));
        String page =
                readme.substring(readme.indexOf("## What the program promises"), readme.indexOf("## Example programs"));
        int promises = 0;
        for (String line : page.lines().filter(l -> l.startsWith("| ")).toList()) {
            if (line.startsWith("| promise")) {
                continue;
            }
            Matcher m = Pattern.compile("\\| .*[.] \\| `(\\w+)[.](\\w+)` \\|").matcher(line);
            assertThat(m.matches()).as(line).isTrue();
            String source = source(m.group(1));
            int at = source.indexOf(" void " + m.group(2) + "(");
            assertThat(at).as(line).isPositive();
            String before = source.substring(source.lastIndexOf("\n    }\n", at) + 1, at);
            assertThat(before).as(line).containsAnyOf("@Test", "@ParameterizedTest");
            promises++;
        }
        assertThat(promises).isGreaterThan(30);
    }

    private static String source(String name) throws IOException {
        for (Path root : SOURCES) {
            try (Stream<Path> files = Files.walk(root)) {
                List<Path> found = files.filter(p -> p.endsWith(name + ".java")).toList();
                if (!found.isEmpty()) {
                    return Files.readString(found.get(0));
                }
            }
        }
        throw new AssertionError("no test class " + name);
    }
}
