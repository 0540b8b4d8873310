package org.lifeline.house;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaCodeUnit;
import com.tngtech.archunit.core.domain.JavaField;
import com.tngtech.archunit.core.domain.JavaMember;
import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.core.domain.JavaType;
import com.tngtech.archunit.core.domain.PackageMatcher;
import com.tngtech.archunit.lang.ArchCondition;
import com.tngtech.archunit.lang.ConditionEvents;
import com.tngtech.archunit.lang.SimpleConditionEvent;
import java.util.Collection;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * A class of the public API names no internal and no third-party type where a caller can see it: supertypes, type
 * parameters, and the return types, parameters, thrown exceptions and field types of public and protected members, type
 * arguments and array components included. What a hidden supertype hands down counts as the class's own.
 */
final class NotLeak extends ArchCondition<JavaClass> {
    private final PackageMatcher own;
    private final PackageMatcher internal;
    private final List<PackageMatcher> hidden;

    NotLeak(String root) {
        super("not show internal, EJML or Commons Math types to a caller");
        own = PackageMatcher.of(root + "..");
        internal = PackageMatcher.of(root + "..internal..");
        hidden = List.of(internal, PackageMatcher.of("org.ejml.."), PackageMatcher.of("org.apache.commons.math3.."));
    }

    @Override
    public void check(JavaClass owner, ConditionEvents events) {
        if (isApi(owner)) {
            Stream.concat(Stream.of(owner), handDownToApi(owner)).forEach(c -> checkDeclared(owner, c, events));
        }
    }

    private void checkDeclared(JavaClass owner, JavaClass c, ConditionEvents events) {
        String where = owner.equals(c) ? owner.getName() : owner.getName() + " through " + c.getName();
        c.getSuperclass().ifPresent(type -> check(owner, where + " extends", List.of(type), events));
        check(owner, where + " implements", c.getInterfaces(), events);
        check(owner, where + " has a type parameter of", c.getTypeParameters(), events);
        for (JavaField field : c.getFields()) {
            if (isVisible(field)) {
                check(owner, where + " has field " + field.getName() + " of", List.of(field.getType()), events);
            }
        }
        for (JavaCodeUnit unit : c.getCodeUnits()) {
            if (isVisible(unit)) {
                String signature = where + "." + unit.getName();
                check(owner, signature + " returns", List.of(unit.getReturnType()), events);
                check(owner, signature + " takes", unit.getParameterTypes(), events);
                check(owner, signature + " has a type parameter of", unit.getTypeParameters(), events);
                check(owner, signature + " throws", unit.getThrowsClause().getTypes(), events);
            }
        }
    }

    private void check(JavaClass owner, String role, Collection<? extends JavaType> types, ConditionEvents events) {
        Set<String> leaked = types.stream()
                .flatMap(type -> type.getAllInvolvedRawTypes().stream())
                .filter(raw -> hidden.stream().anyMatch(p -> p.matches(raw.getPackageName())))
                .map(JavaClass::getName)
                .collect(Collectors.toSet());
        for (String name : leaked) {
            events.add(SimpleConditionEvent.violated(owner, role + " " + name));
        }
    }

    /** Supertypes of ours that a caller cannot name, whose members he calls all the same. */
    private Stream<JavaClass> handDownToApi(JavaClass c) {
        return Stream.concat(c.getAllRawSuperclasses().stream(), c.getAllRawInterfaces().stream())
                .filter(s -> own.matches(s.getPackageName()) && !internal.matches(s.getPackageName()) && !isApi(s));
    }

    private boolean isApi(JavaClass c) {
        return !internal.matches(c.getPackageName())
                && isVisible(c.getModifiers())
                && c.getEnclosingClass().map(this::isApi).orElse(true);
    }

    private static boolean isVisible(JavaMember member) {
        return isVisible(member.getModifiers());
    }

    private static boolean isVisible(Set<JavaModifier> modifiers) {
        return modifiers.contains(JavaModifier.PUBLIC) || modifiers.contains(JavaModifier.PROTECTED);
    }
}
