package org.lifeline.house;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** All modules keep the habits of {@link SourceHabits}, and breaking one is noticed. */
class SourceHabitsTest {
    static List<Path> roots() {
        return Stream.of("lifeline-core", "lifeline-examples", "benchmarks")
                .flatMap(module -> Stream.of("main", "test").map(kind -> Path.of("..", module, "src", kind, "java")))
                .filter(Files::exists)
                .toList();
    }

    static List<Path> mainRoots() {
        return roots().stream().filter(root -> root.endsWith("main/java")).toList();
    }

    @ParameterizedTest
    @MethodSource("roots")
    void habitsAreKept(Path root) throws IOException {
        assertThat(SourceHabits.javaFiles(root)).isNotEmpty();
        assertThat(SourceHabits.findings(root)).isEmpty();
    }

    @ParameterizedTest
    @MethodSource("mainRoots")
    void everyPackageIsDescribedAndNullMarked(Path root) throws IOException {
        assertThat(SourceHabits.packageFindings(root)).isEmpty();
    }

    @ParameterizedTest
    @MethodSource("mainRoots")
    void noPackageIsCrowded(Path root) throws IOException {
        assertThat(SourceHabits.crowdedPackages(root)).isEmpty();
    }

    @Test
    void aCrowdedPackageIsFound(@TempDir Path root) throws IOException {
        Path full = Files.createDirectory(root.resolve("full"));
        Path crowded = Files.createDirectory(root.resolve("crowded"));
        for (Path each : List.of(full, crowded)) {
            Files.writeString(each.resolve("package-info.java"), "");
            for (int i = 1; i <= 20; i++) {
                Files.writeString(each.resolve("T" + i + ".java"), "");
            }
        }
        Files.writeString(crowded.resolve("T21.java"), "");
        Files.writeString(Files.createDirectory(full.resolve("below")).resolve("T.java"), "");

        assertThat(SourceHabits.crowdedPackages(root)).containsExactly(crowded + " holds 21 types, more than 20");
    }

    @ParameterizedTest
    @ValueSource(strings = {"lifeline-core", "lifeline-examples"})
    void everyTypeThatAModuleHandsOutSaysSinceWhen(String module) throws IOException {
        assertThat(SourceHabits.undatedTypes(Path.of("..", module))).isEmpty();
    }

    @Test
    void aTypeWithoutItsVersionIsFound(@TempDir Path module) throws IOException {
        Path descriptor = Files.createDirectories(module.resolve("src/main/module"));
        Files.writeString(descriptor.resolve("module-info.java"), "module m {\n    exports a;\n}\n");
        Path a = Files.createDirectories(module.resolve("src/main/java/a"));
        Path kept = Files.createDirectories(a.resolve("kept"));
        Files.writeString(kept.resolve("K.java"), "public class K {}\n");
        Files.writeString(a.resolve("Small.java"), "class Small {}\n");
        String dated = "/**\n * A.\n *\n * @since 1.0.0\n */\n@Fine\n";
        Path file = Files.writeString(
                a.resolve("A.java"),
                dated + "public sealed interface A {\n    /** B. */\n    record B(int c) {}\n\n    int d();\n}\n");
        Path other = Files.writeString(
                a.resolve("E.java"),
                dated + "public final class E {\n    class F {}\n\n    public enum G {\n    }\n}\n");

        assertThat(SourceHabits.undatedTypes(module))
                .containsExactly(file + " does not date B", other + " does not date G");
    }

    /** The numbers of the core are the same on every Java machine (decision 53). */
    @Test
    void theCoreCallsFunctionsWithDigitsLaidDown(@TempDir Path root) throws IOException {
        assertThat(SourceHabits.looseFunctions(Path.of("src/main/java"))).isEmpty();

        Path loose = Files.writeString(
                root.resolve("A.java"), "class A { double a = StrictMath.exp(1) + Math.sqrt(2) + Math.exp(1); }");
        assertThat(SourceHabits.looseFunctions(root))
                .containsExactly(loose + " calls Math.exp; StrictMath has it, too");
    }

    /** The kernel runs in a browser, too, with the same digits (decision 48); no picture is drawn there. */
    @Test
    void theKernelAsksForNothingThatAPlatformLacks(@TempDir Path root) throws IOException {
        Path main = Path.of("src/main/java/org/lifeline");
        for (String each : List.of("base", "model", "internal", "analysis", "verify", "design")) {
            assertThat(SourceHabits.platformFindings(main.resolve(each)))
                    .filteredOn(f -> !f.contains("internal/svg"))
                    .filteredOn(f -> each.equals("internal") || each.equals("analysis") || f.contains("%"))
                    .isEmpty();
        }

        Path file = Files.writeString(
                root.resolve("A.java"), "class A { double a = StrictMath.sinh(1); String b = format(\"%.3g\", a); }");
        assertThat(SourceHabits.platformFindings(root))
                .containsExactly(
                        file + " has StrictMath.sinh; not every platform has it in full",
                        file + " has \"%.3g; not every platform has it in full");
    }

    @Test
    void anAuthorIsFound(@TempDir Path root) throws IOException {
        Path file = Files.writeString(root.resolve("A.java"), "/**\n * A.\n *\n * @author someone\n */\nclass A {}\n");

        assertThat(SourceHabits.findings(root)).containsExactly(file + " names an author");
    }

    @Test
    void aLongClassIsFound(@TempDir Path root) throws IOException {
        Files.writeString(root.resolve("A.java"), "\n".repeat(600));
        Path tooLong = Files.writeString(root.resolve("B.java"), "\n".repeat(601));

        assertThat(SourceHabits.findings(root)).containsExactly(tooLong + " has 601 lines, more than 600");
    }

    @Test
    void aPackageWithoutInfoIsFound(@TempDir Path root) throws IOException {
        Path a = Files.createDirectory(root.resolve("a"));
        Files.writeString(a.resolve("A.java"), "package a;\n\nclass A {}\n");
        Path b = Files.createDirectory(root.resolve("b"));
        Path info = Files.writeString(b.resolve("package-info.java"), "package b;\n");
        Path c = Files.createDirectory(root.resolve("c"));
        Files.writeString(c.resolve("package-info.java"), "/** C. */\n@NullMarked\npackage c;\n");

        assertThat(SourceHabits.packageFindings(root))
                .containsExactly(
                        a + " has no package-info.java",
                        info + " says nothing about the package",
                        info + " lacks @NullMarked");
    }
}
