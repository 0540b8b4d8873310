package org.lifeline.house;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import javax.tools.JavaFileObject;
import javax.tools.SimpleJavaFileObject;
import javax.tools.StandardJavaFileManager;
import javax.tools.ToolProvider;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Every double of the public API says its unit in its Javadoc. */
class UnitsGateTest {
    private static final Path MAIN = Path.of("src", "main", "java");

    @Test
    void everyDoubleOfTheApiSaysItsUnit() throws IOException {
        try (StandardJavaFileManager files =
                        ToolProvider.getSystemJavaCompiler().getStandardFileManager(null, null, null);
                Stream<Path> tree = Files.walk(MAIN)) {
            List<Path> api = tree.filter(p -> p.toString().endsWith(".java"))
                    .filter(p -> !p.startsWith(MAIN.resolve(Path.of("org", "lifeline", "internal"))))
                    .toList();

            UnitsGate.Report report = UnitsGate.read(files.getJavaFileObjectsFromPaths(api));

            assertThat(report.findings()).isEmpty();
            assertThat(report.doubles()).as("doubles looked at").isGreaterThan(150);
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "[N]",
                "[m]",
                "[-]",
                "[%]",
                "[°C]",
                "[°]",
                "[rad]",
                "[kN/m]",
                "[1/K]",
                "[mm²]",
                "[m/s²]",
                "[m/s^2]",
                "[N·m]",
                "[N·s/m]",
                "[N/(m·s)]",
                "[kg/m]",
                "[J]",
                "[lbf]",
                "[K⁻¹]",
                "[unit of the tolerance]",
            })
    void bracketsOfAUnitCount(String text) {
        assertThat(UnitsGate.saysUnit("the value " + text + ", positive down")).isTrue();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"N", "(N)", "[]", "[0, 1]", "[1]", "[1, 5]", "[newton]", "[the force]", "[i]", "[N", "[/m]"})
    void otherBracketsDoNot(String text) {
        assertThat(UnitsGate.saysUnit("the value " + text + ", positive down")).isFalse();
    }

    @Test
    void doublesWithoutAUnitAreFound() throws IOException {
        UnitsGate.Report report = UnitsGate.read(List.of(source("""
                /** Bad. */
                public final class Bad {
                    /** A limit. */
                    public static final double LIMIT = 1;
                    public Bad(double bare) {}
                    /**
                     * Sag.
                     *
                     * @return the sag
                     */
                    public double sag() { return 1; }
                    /** The unit is said at the wrong place [m]. */
                    public double[] shape() { return new double[0]; }
                    /**
                     * Loads.
                     *
                     * @return the loads by support
                     */
                    public java.util.Map<String, Double> loads() { return java.util.Map.of(); }
                    /**
                     * Load.
                     *
                     * @param force a force [N]
                     * @param length a length
                     * @param factors factors
                     */
                    public void load(double force, double length, double... factors) {}
                    /** Nested. */
                    interface Shape {
                        double at(int i);
                    }
                    /**
                     * A record.
                     *
                     * @param x coordinate [m]
                     * @param y coordinate
                     */
                    public record Place(double x, double y) {
                        static final double HIDDEN = 1;
                        public Place(double radius) { this(radius, 0); }
                    }
                }
                """)));

        assertThat(report.findings())
                .containsExactly(
                        "/Source.java:4 LIMIT is a double without a unit",
                        "/Source.java:5 <init> takes double bare without a unit",
                        "/Source.java:11 sag returns a double without a unit",
                        "/Source.java:13 shape returns a double without a unit",
                        "/Source.java:19 loads returns a double without a unit",
                        "/Source.java:27 load takes double length without a unit",
                        "/Source.java:27 load takes double factors without a unit",
                        "/Source.java:30 at returns a double without a unit",
                        "/Source.java:38 Place takes double y without a unit",
                        "/Source.java:40 <init> takes double radius without a unit");
        assertThat(report.doubles()).isEqualTo(12);
    }

    @Test
    void doublesWithAUnitAndDoublesOfNoConcernPass() throws IOException {
        UnitsGate.Report report = UnitsGate.read(List.of(source("""
                /** Good. */
                public final class Good implements java.util.function.DoubleSupplier {
                    /** A limit [N]. */
                    public static final double LIMIT = 1;
                    private static final double HIDDEN = 1;
                    private final double field = 1;
                    Good(double hidden) {}
                    /** {@return the sag [m], positive down} */
                    public double sag() { return 1; }
                    /**
                     * Elongation.
                     *
                     * @param <T> kind
                     * @param force a force [N]
                     * @return the elongation [-]
                     */
                    public <T> double elongation(double force) {
                        double local = force;
                        return new Object() { public double hidden() { return local; } }.hidden();
                    }
                    @Override
                    public double getAsDouble() { return 1; }
                    /**
                     * A record.
                     *
                     * @param x coordinate [m]
                     */
                    public record Place(double x) {
                        /** Checks. */
                        public Place {}
                    }
                    private record Hidden(double x) {
                        public double twice() { return 2 * x; }
                    }
                }
                """)));

        assertThat(report.findings()).isEmpty();
        assertThat(report.doubles()).isEqualTo(5);
    }

    private static JavaFileObject source(String text) {
        return new SimpleJavaFileObject(URI.create("string:///Source.java"), JavaFileObject.Kind.SOURCE) {
            @Override
            public CharSequence getCharContent(boolean ignoreEncodingErrors) {
                return text;
            }
        };
    }
}
