package org.lifeline.contract;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.DynamicTest.dynamicTest;

import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.lang.reflect.Modifier;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.Violation;
import org.lifeline.model.cable.Cable;

/**
 * A number that is refused is refused by its name: the path of the violation has the word of the setter, the value stands
 * in the message as it was given, and the rule says what is wanted.
 */
class SettersNameTheirFieldTest {
    private static final double[] BAD = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY};

    private static List<Method> setters(Class<?> type) {
        List<Method> list = new ArrayList<>();
        boolean builder = type.getSimpleName().endsWith("Builder");
        for (Method m : type.getDeclaredMethods()) {
            if (Modifier.isPublic(m.getModifiers())
                    && !Modifier.isStatic(m.getModifiers())
                    && m.getParameterCount() == 1
                    && m.getParameterTypes()[0] == double.class
                    && m.getReturnType() == type
                    && (builder || m.getName().matches("with[A-Z].*"))) {
                list.add(m);
            }
        }
        list.sort(java.util.Comparator.comparing(Method::toString));
        return list;
    }

    private static List<Class<?>> types() {
        List<Class<?>> list = new ArrayList<>(SetterSamples.objects().keySet());
        list.add(Cable.Builder.class);
        return list;
    }

    private static List<Violation> violations(Class<?> type, Method setter, double bad)
            throws ReflectiveOperationException {
        Supplier<Object> sample = SetterSamples.objects().get(type);
        Object owner = type == Cable.Builder.class
                ? SetterSamples.cableBuilder(setter.getName())
                : Objects.requireNonNull(sample).get();
        try {
            Object result = setter.invoke(owner, bad);
            if (type.getSimpleName().endsWith("Builder")) {
                type.getMethod("build").invoke(result);
            }
            return List.of();
        } catch (InvocationTargetException e) {
            if (e.getCause() instanceof InvalidInputException refused) {
                return refused.violations();
            }
            throw e;
        }
    }

    @TestFactory
    Stream<DynamicTest> theFieldIsNamed() {
        List<DynamicTest> tests = new ArrayList<>();
        for (Class<?> type : types()) {
            for (Method setter : setters(type)) {
                for (double bad : BAD) {
                    String name = type.getName().replaceAll(".*\\.", "") + "." + setter.getName() + "(" + bad + ")";
                    tests.add(dynamicTest(name, () -> named(type, setter, bad)));
                }
            }
        }
        return tests.stream();
    }

    private static void named(Class<?> type, Method setter, double bad) throws ReflectiveOperationException {
        List<Violation> found = violations(type, setter, bad);
        if (found.isEmpty()) {
            // What an infinite number means is told where the contract of setters lists it: rigid.
            assertThat(Double.isInfinite(bad) && bad > 0).as("taken").isTrue();
            assertThat(setter.getName().toLowerCase(Locale.ROOT)).containsAnyOf("stiffness", "withx", "withy", "withz");
            return;
        }
        // Files write out what the second moment is of.
        String word = setter.getName()
                .replaceFirst("^with", "")
                .replace("secondMoment", "secondMomentOfArea")
                .toLowerCase(Locale.ROOT);
        String parameter = setter.getParameters()[0].getName().toLowerCase(Locale.ROOT);
        assertThat(found)
                .as("paths of %s", found)
                .anySatisfy(v -> assertThat(v.path().replace(".", "").toLowerCase(Locale.ROOT))
                        .containsAnyOf(word, parameter));
        assertThat(found).allSatisfy(v -> {
            assertThat(v.rule()).isNotBlank();
            assertThat(v.toString()).contains(v.path()).contains(v.rule());
        });
        assertThat(found).anySatisfy(v -> assertThat(v.value()).contains(Double.isNaN(bad) ? "NaN" : "Infinity"));
    }

    @Test
    void manyNumbersAreTried() {
        assertThat(types().stream().mapToInt(t -> setters(t).size()).sum()).isGreaterThan(35);
    }
}
