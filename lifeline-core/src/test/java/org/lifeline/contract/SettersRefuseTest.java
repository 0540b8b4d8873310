package org.lifeline.contract;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.lang.reflect.Modifier;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.lifeline.base.InvalidInputException;
import org.lifeline.model.Worker;
import org.lifeline.model.cable.Cable;

/**
 * Every public {@code with…} method and every setter of a public builder refuses NaN, infinity, what is negative, and
 * null, with the exception of the library that names the place; or the value is in the list of those that have a meaning.
 */
class SettersRefuseTest {
    /** Packages whose setters are held to the contract. */
    private static final List<String> PACKAGES = List.of("analysis", "model", "verify");

    /** Values that have a meaning: infinite is rigid, negative is below zero of an axis or of a scale. */
    private static final Set<String> LEGAL = Set.of(
            "Stiffness.withX(Infinity)",
            "Stiffness.withY(Infinity)",
            "Stiffness.withZ(Infinity)",
            "AbsorberBuilder.initialStiffness(Infinity)",
            "AbsorberBuilder.stopStiffness(Infinity)",
            "Worker.Builder.walkingLevel(-1.0E-5)",
            "Cable.Builder.thermalExpansion(-1.0E-5)",
            "AbsorberCondition.Builder.temperature(-1.0E-5)",
            "LifelineDesign.Builder.temperature(-1.0E-5)",
            "LifelineDesign.Builder.workingFloor(-1.0E-5)",
            "EnergyBalance.withTemperature(-1.0E-5)",
            "Statics.withTemperature(-1.0E-5)",
            "TransientArrest.withTemperature(-1.0E-5)");

    /** What no setter takes unless it is listed; the negative number is small, so that it is refused for its sign. */
    private static final double[] BAD = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY, -1e-5};

    /** A setter with one bad argument. */
    record Case(Method setter, int parameter, @Nullable Object bad) {
        @Override
        public String toString() {
            Class<?> c = setter.getDeclaringClass();
            String owner = c.getSimpleName().equals("Builder")
                    ? c.getEnclosingClass().getSimpleName() + ".Builder"
                    : c.getSimpleName();
            String which = setter.getParameterCount() == 1 ? "" : "#" + parameter + " ";
            return owner + "." + setter.getName() + "(" + which + bad + ")";
        }
    }

    static List<Case> cases() throws IOException, URISyntaxException, ClassNotFoundException {
        List<Case> list = new ArrayList<>();
        for (Method setter : setters()) {
            for (int i = 0; i < setter.getParameterCount(); i++) {
                Class<?> type = setter.getParameterTypes()[i];
                if (type == double.class) {
                    for (double bad : BAD) {
                        list.add(new Case(setter, i, bad));
                    }
                } else if (type == int.class) {
                    list.add(new Case(setter, i, -1));
                } else {
                    list.add(new Case(setter, i, null));
                }
            }
        }
        return list;
    }

    private static List<Method> setters() throws IOException, URISyntaxException, ClassNotFoundException {
        Path root = Path.of(
                Worker.class.getProtectionDomain().getCodeSource().getLocation().toURI());
        List<Method> list = new ArrayList<>();
        for (String each : PACKAGES) {
            try (Stream<Path> files = Files.walk(root.resolve("org/lifeline").resolve(each))) {
                for (Path file : files.filter(f -> f.toString().endsWith(".class"))
                        .sorted()
                        .toList()) {
                    String name = root.relativize(file)
                            .toString()
                            .replace(".class", "")
                            .replace('/', '.')
                            .replace('\\', '.');
                    if (!name.endsWith("package-info")) {
                        Class<?> c = Class.forName(name);
                        Arrays.stream(c.getDeclaredMethods())
                                .filter(m -> isPublic(c) && isSetter(c, m))
                                .forEach(list::add);
                    }
                }
            }
        }
        return list;
    }

    private static boolean isPublic(Class<?> c) {
        return Modifier.isPublic(c.getModifiers())
                && (c.getEnclosingClass() == null || isPublic(c.getEnclosingClass()));
    }

    private static boolean isSetter(Class<?> c, Method m) {
        boolean builder = c.getSimpleName().endsWith("Builder") && m.getReturnType() == c;
        return Modifier.isPublic(m.getModifiers())
                && !Modifier.isStatic(m.getModifiers())
                && !m.isSynthetic()
                && m.getParameterCount() > 0
                && (builder || m.getName().matches("with[A-Z].*"));
    }

    private static void call(Method setter, @Nullable Object[] arguments) throws Throwable {
        try {
            Class<?> type = setter.getDeclaringClass();
            Supplier<Object> sample = SetterSamples.objects().get(type);
            Object owner = type == Cable.Builder.class
                    ? SetterSamples.cableBuilder(setter.getName())
                    : java.util.Objects.requireNonNull(sample, () -> "no sample of " + type)
                            .get();
            Object result = setter.invoke(owner, arguments);
            if (type.getSimpleName().endsWith("Builder")) {
                type.getMethod("build").invoke(result);
            }
        } catch (InvocationTargetException e) {
            throw e.getCause();
        }
    }

    private static Object[] legalArguments(Method setter) {
        Map<Class<?>, Object> arguments = SetterSamples.arguments();
        return Arrays.stream(setter.getParameterTypes())
                .map(t -> java.util.Objects.requireNonNull(arguments.get(t), () -> "no argument of " + t))
                .toArray();
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("cases")
    void refusesOrMeansIt(Case each) throws Throwable {
        @Nullable Object[] arguments = legalArguments(each.setter());
        arguments[each.parameter()] = each.bad();
        try {
            call(each.setter(), arguments);
            assertThat(LEGAL).as("taken without a word").contains(each.toString());
        } catch (InvalidInputException e) {
            assertThat(LEGAL).as("refused: " + e.getMessage()).doesNotContain(each.toString());
            assertThat(e.violations()).isNotEmpty().allSatisfy(v -> {
                assertThat(v.path()).isNotBlank();
                assertThat(v.rule()).isNotBlank();
            });
        }
    }

    @Test
    void manySettersAreFound() throws IOException, URISyntaxException, ClassNotFoundException {
        assertThat(setters()).hasSizeGreaterThan(60);
        assertThat(setters()).extracting(Method::getName).contains("withMass", "diameter", "withPathWork");
    }
}
