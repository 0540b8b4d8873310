package org.lifeline.contract;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.DynamicTest.dynamicTest;

import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.lang.reflect.Modifier;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.lifeline.base.InvalidInputException;
import org.lifeline.model.cable.Cable;

/**
 * What was built stays as it is whatever happens to its builder afterwards, and a {@code with…} method leaves the object
 * that it is called on alone: every public setter of the samples is called on a builder or an object that is looked at
 * again.
 */
class BuildersUsedTwiceTest {
    private static boolean isBuilder(Class<?> type) {
        return type.getSimpleName().endsWith("Builder");
    }

    private static List<Method> setters(Class<?> type) {
        List<Method> list = new ArrayList<>();
        for (Method m : type.getDeclaredMethods()) {
            boolean returnsItsKind = m.getReturnType() == type;
            if (Modifier.isPublic(m.getModifiers())
                    && !Modifier.isStatic(m.getModifiers())
                    && !m.isSynthetic()
                    && m.getParameterCount() > 0
                    && returnsItsKind
                    && (isBuilder(type) || m.getName().matches("with[A-Z].*"))) {
                list.add(m);
            }
        }
        list.sort(java.util.Comparator.comparing(Method::toString));
        return list;
    }

    private static Object[] legalArguments(Method setter) {
        return Arrays.stream(setter.getParameterTypes())
                .map(t -> Objects.requireNonNull(SetterSamples.arguments().get(t), () -> "no argument of " + t))
                .toArray();
    }

    private static Object build(Object builder) throws ReflectiveOperationException {
        return Objects.requireNonNull(builder.getClass().getMethod("build").invoke(builder));
    }

    /** Calls a setter with a legal argument; one that does not fit the sample is refused, which changes nothing either. */
    private static void call(Object owner, Method setter) throws ReflectiveOperationException {
        try {
            setter.invoke(owner, legalArguments(setter));
        } catch (InvocationTargetException e) {
            assertThat(e.getCause()).isInstanceOf(InvalidInputException.class);
        }
    }

    private static List<Class<?>> types() {
        List<Class<?>> list = new ArrayList<>(SetterSamples.objects().keySet());
        list.add(Cable.Builder.class);
        return list;
    }

    private static Supplier<Object> sample(Class<?> type) {
        return type == Cable.Builder.class
                ? () -> SetterSamples.cableBuilder("")
                : Objects.requireNonNull(SetterSamples.objects().get(type));
    }

    @TestFactory
    Stream<DynamicTest> whatWasBuiltStays() {
        List<DynamicTest> tests = new ArrayList<>();
        for (Class<?> type : types()) {
            for (Method setter : setters(type)) {
                String name = type.getName().replaceAll(".*\\.", "") + "." + setter.getName();
                tests.add(dynamicTest(name, () -> stays(type, setter)));
            }
        }
        return tests.stream();
    }

    private static void stays(Class<?> type, Method setter) throws ReflectiveOperationException {
        Object owner = sample(type).get();
        Object fresh = sample(type).get();
        Object first = isBuilder(type) ? build(owner) : owner;
        Object expected = isBuilder(type) ? build(fresh) : fresh;
        assertThat(first).as("two samples").usingRecursiveComparison().isEqualTo(expected);
        call(owner, setter);
        assertThat(first).as("after the setter").usingRecursiveComparison().isEqualTo(expected);
    }

    @TestFactory
    Stream<DynamicTest> builtTwiceItIsTheSameAndAnother() {
        return types().stream()
                .filter(BuildersUsedTwiceTest::isBuilder)
                .map(type -> dynamicTest(type.getName(), () -> {
                    Object builder = sample(type).get();
                    Object first = build(builder);
                    Object second = build(builder);
                    assertThat(second).usingRecursiveComparison().isEqualTo(first);
                }));
    }

    @Test
    void manySettersAreTried() {
        assertThat(types().stream().mapToInt(t -> setters(t).size()).sum()).isGreaterThan(60);
        assertThat(types().stream().filter(BuildersUsedTwiceTest::isBuilder)).hasSizeGreaterThan(5);
    }
}
