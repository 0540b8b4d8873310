package org.lifeline.house;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaField;
import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.lang.ArchCondition;
import com.tngtech.archunit.lang.ConditionEvents;
import com.tngtech.archunit.lang.SimpleConditionEvent;
import java.text.Format;
import java.util.AbstractCollection;
import java.util.AbstractMap;
import java.util.List;
import java.util.random.RandomGenerator;

/** A static field is not of a type that is made to be changed. A private array counts as a constant table. */
final class HoldNoMutableObject extends ArchCondition<JavaField> {
    private static final List<Class<?>> MUTABLE = List.of(
            AbstractCollection.class,
            AbstractMap.class,
            RandomGenerator.class,
            Format.class,
            ThreadLocal.class,
            StringBuilder.class);

    HoldNoMutableObject() {
        super("hold no mutable object");
    }

    @Override
    public void check(JavaField field, ConditionEvents events) {
        JavaClass type = field.getRawType();
        boolean openArray = type.isArray() && !field.getModifiers().contains(JavaModifier.PRIVATE);
        boolean mutable = type.getPackageName().equals("java.util.concurrent.atomic")
                || MUTABLE.stream().anyMatch(type::isAssignableTo);
        events.add(new SimpleConditionEvent(
                field, !openArray && !mutable, field.getDescription() + " holds a " + type.getName()));
    }
}
