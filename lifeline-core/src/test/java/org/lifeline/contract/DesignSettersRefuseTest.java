package org.lifeline.contract;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowable;
import static org.junit.jupiter.api.DynamicTest.dynamicTest;

import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.lang.reflect.Modifier;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.Violation;
import org.lifeline.design.assessment.Assessment;
import org.lifeline.design.criteria.Criteria;
import org.lifeline.design.envelope.DesignAnalysis;
import org.lifeline.design.envelope.Envelope;
import org.lifeline.design.envelope.Tolerances;
import org.lifeline.design.field.FieldCheck;
import org.lifeline.design.field.StringingTable;
import org.lifeline.design.study.MonteCarlo;
import org.lifeline.design.study.Sweep;
import org.lifeline.design.variable.DesignMap;
import org.lifeline.design.variable.FeasibleSearch;
import org.lifeline.report.CalculationReport;

/**
 * Every {@code with…} method of the design floor and of the report refuses null, and numbers that mean nothing, with the
 * exception of the library that names the field.
 */
class DesignSettersRefuseTest {
    private static Map<Class<?>, Supplier<Object>> objects() {
        Map<Class<?>, Supplier<Object>> map = new LinkedHashMap<>();
        map.put(Assessment.class, Assessment::withDefaults);
        map.put(DesignAnalysis.class, DesignAnalysis::withDefaults);
        map.put(Envelope.class, Envelope::withDefaults);
        map.put(Tolerances.class, Tolerances::none);
        map.put(FieldCheck.class, FieldCheck::withDefaults);
        map.put(StringingTable.class, StringingTable::withDefaults);
        map.put(MonteCarlo.class, () -> MonteCarlo.withSeed(1));
        map.put(Sweep.class, Sweep::withDefaults);
        map.put(DesignMap.class, () -> DesignMap.withCriteria(Criteria.builtIn()));
        map.put(FeasibleSearch.class, () -> FeasibleSearch.withCriteria(Criteria.builtIn()));
        map.put(
                CalculationReport.class,
                () -> CalculationReport.of(SetterSamples.design().build(), List.of()));
        return map;
    }

    private static List<Method> setters(Class<?> type) {
        List<Method> list = new ArrayList<>();
        for (Method m : type.getDeclaredMethods()) {
            if (Modifier.isPublic(m.getModifiers())
                    && !Modifier.isStatic(m.getModifiers())
                    && m.getName().matches("with[A-Z].*")
                    && m.getParameterCount() == 1) {
                list.add(m);
            }
        }
        list.sort(java.util.Comparator.comparing(Method::toString));
        return list;
    }

    private static List<@Nullable Object> bad(Class<?> type) {
        if (type == double.class) {
            return Arrays.asList(Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY, -1.0);
        }
        return type == int.class ? List.of(-1, 0) : Arrays.asList((Object) null);
    }

    @TestFactory
    Stream<DynamicTest> refuse() {
        List<DynamicTest> tests = new ArrayList<>();
        objects().forEach((type, sample) -> {
            for (Method setter : setters(type)) {
                for (Object value : bad(setter.getParameterTypes()[0])) {
                    tests.add(dynamicTest(
                            type.getSimpleName() + "." + setter.getName() + "(" + value + ")",
                            () -> refuses(sample.get(), setter, value)));
                }
            }
        });
        return tests.stream();
    }

    private static void refuses(Object owner, Method setter, @Nullable Object value) {
        Throwable thrown = catchThrowable(() -> {
            try {
                setter.invoke(owner, value);
            } catch (InvocationTargetException e) {
                throw e.getCause();
            }
        });
        assertThat(thrown).as("thrown").isInstanceOf(InvalidInputException.class);
        List<Violation> violations = ((InvalidInputException) thrown).violations();
        String field = setter.getName().substring("with".length()).toLowerCase(Locale.ROOT);
        assertThat(violations).hasSize(1);
        // The word of the setter stands in the path, the rule says what is wanted.
        assertThat(violations.get(0).path().toLowerCase(Locale.ROOT)).contains(field.substring(0, 4));
        assertThat(violations.get(0).rule()).isNotBlank();
    }

    /** A type whose setters were renamed would be passed over in silence. */
    @Test
    void everyTypeHasSettersThatAreTried() {
        objects()
                .keySet()
                .forEach(type -> assertThat(setters(type)).as(type.getName()).isNotEmpty());
    }
}
