package org.lifeline.house;

import static com.tngtech.archunit.base.DescribedPredicate.describe;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.fields;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.Architectures.layeredArchitecture;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.lang.ArchRule;
import com.tngtech.archunit.library.GeneralCodingRules;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;

/**
 * The rules that the classes of the library keep, each for a root package: {@link FloorsTest} holds the library to
 * them, {@link HouseRulesTest} shows on a small bad building that each of them can fail.
 */
final class HouseRules {
    private HouseRules() {}

    /** All rules by name. */
    static Map<String, ArchRule> all(String root) {
        Map<String, ArchRule> rules = new LinkedHashMap<>();
        rules.put("floors", floors(root));
        rules.put("reportFloors", reportFloors(root));
        rules.put("everyClassHasAFloor", everyClassHasAFloor(root));
        rules.put("noCycles", noCycles(root));
        rules.put("thirdPartyOnlyInNumeric", thirdPartyOnlyInNumeric(root));
        rules.put("onlyKnownLibraries", onlyKnownLibraries(root));
        rules.put("noLeaks", noLeaks(root));
        rules.put("noStandardStreams", noStandardStreams());
        rules.put("noLogging", noLogging());
        rules.put("noFiles", noFiles());
        rules.put("noThreads", noThreads());
        rules.put("noHiddenInputs", noHiddenInputs());
        rules.put("noStaticState", noStaticState());
        rules.put("typedExceptions", typedExceptions());
        rules.put("codedViolations", codedViolations());
        return rules;
    }

    /** Who may look at whom. A floor that is not built yet is no violation. */
    static ArchRule floors(String root) {
        return layeredArchitecture()
                .consideringOnlyDependenciesInAnyPackage(root + "..")
                .withOptionalLayers(true)
                .layer("report")
                .definedBy(root + ".report..")
                .layer("handover")
                .definedBy(
                        root + ".design.structure..",
                        root + ".design.clearance..",
                        root + ".design.installation..",
                        root + ".design.occupancy..",
                        root + ".design.handover..")
                .layer("assessment")
                .definedBy(root + ".design.assessment..")
                .layer("design")
                .definedBy(
                        root + ".design",
                        root + ".design.envelope..",
                        root + ".design.criteria..",
                        root + ".design.variable..",
                        root + ".design.study..",
                        root + ".design.field..")
                .layer("verify")
                .definedBy(root + ".verify..")
                .layer("analysis")
                .definedBy(root + ".analysis..")
                .layer("motion")
                .definedBy(root + ".internal.motion..")
                .layer("balance")
                .definedBy(root + ".internal.balance..")
                .layer("path")
                .definedBy(root + ".internal.path..")
                .layer("line")
                .definedBy(root + ".internal.line..")
                .layer("catenary")
                .definedBy(root + ".internal.catenary..")
                .layer("model")
                .definedBy(root + ".model..")
                .layer("numeric")
                .definedBy(root + ".internal.numeric..")
                .layer("svg")
                .definedBy(root + ".internal.svg..")
                .layer("base")
                .definedBy(root + ".base..")
                .whereLayer("report")
                .mayNotBeAccessedByAnyLayer()
                .whereLayer("handover")
                .mayOnlyBeAccessedByLayers("report")
                .whereLayer("assessment")
                .mayOnlyBeAccessedByLayers("report", "handover")
                .whereLayer("design")
                .mayOnlyBeAccessedByLayers("report", "handover", "assessment")
                .whereLayer("verify")
                .mayOnlyBeAccessedByLayers("report", "assessment")
                .whereLayer("analysis")
                .mayOnlyBeAccessedByLayers("report", "handover", "assessment", "design", "verify")
                .whereLayer("motion")
                .mayOnlyBeAccessedByLayers("analysis")
                .whereLayer("path")
                .mayOnlyBeAccessedByLayers("analysis", "motion", "balance")
                .whereLayer("balance")
                .mayOnlyBeAccessedByLayers("analysis")
                .whereLayer("line")
                .mayOnlyBeAccessedByLayers("analysis", "motion", "path")
                .whereLayer("catenary")
                .mayOnlyBeAccessedByLayers("analysis", "motion", "path", "line")
                .whereLayer("model")
                .mayOnlyBeAccessedByLayers(
                        "report",
                        "handover",
                        "assessment",
                        "design",
                        "verify",
                        "analysis",
                        "motion",
                        "balance",
                        "path",
                        "line",
                        "catenary")
                .whereLayer("numeric")
                .mayOnlyBeAccessedByLayers(
                        "handover", "assessment", "design", "analysis", "motion", "path", "line", "catenary")
                .whereLayer("svg")
                .mayOnlyBeAccessedByLayers("report")
                .because("a floor builds on the floors below it, and a check that reuses the solver proves nothing");
    }

    /** Who may look at whom within the report. */
    static ArchRule reportFloors(String root) {
        return layeredArchitecture()
                .consideringOnlyDependenciesInAnyPackage(root + ".report..")
                .withOptionalLayers(true)
                .layer("report")
                .definedBy(root + ".report")
                .layer("section")
                .definedBy(root + ".report.section..", root + ".report.handover..")
                .layer("picture")
                .definedBy(root + ".report.picture..", root + ".report.chart..")
                .layer("appendix")
                .definedBy(root + ".report.appendix..")
                .layer("document")
                .definedBy(root + ".report.document..")
                .whereLayer("report")
                .mayNotBeAccessedByAnyLayer()
                .whereLayer("section")
                .mayOnlyBeAccessedByLayers("report")
                .whereLayer("appendix")
                .mayOnlyBeAccessedByLayers("report")
                .whereLayer("picture")
                .mayOnlyBeAccessedByLayers("report", "section")
                .because("what a report is made of knows neither what it says nor how it is written");
    }

    static ArchRule everyClassHasAFloor(String root) {
        return classes()
                .should()
                .resideInAnyPackage(
                        root + ".report..",
                        root + ".design..",
                        root + ".verify..",
                        root + ".analysis..",
                        root + ".internal.motion..",
                        root + ".internal.balance..",
                        root + ".internal.path..",
                        root + ".internal.line..",
                        root + ".internal.catenary..",
                        root + ".model..",
                        root + ".internal.numeric..",
                        root + ".internal.svg..",
                        root + ".base..")
                .because("the floors rule sees only classes that stand on a floor")
                .allowEmptyShould(true);
    }

    /** No circles of packages, but for a result that calls the writers of its own calculation: decision 31. */
    static ArchRule noCycles(String root) {
        String analysis = root + ".analysis.";
        return slices().matching(root + ".(**)")
                .should()
                .beFreeOfCycles()
                .ignoreDependency(
                        describe(
                                "results that explain themselves",
                                c -> Set.of(analysis + "ArrestResult", analysis + "LineEquilibrium")
                                        .contains(c.getName())),
                        describe(
                                "the entry of the calculation sheet",
                                c -> Set.of(analysis + "explain.Explanations", analysis + "explain.CalculationStep")
                                        .contains(c.getName())))
                .allowEmptyShould(true);
    }

    static ArchRule thirdPartyOnlyInNumeric(String root) {
        return noClasses()
                .that()
                .resideOutsideOfPackage(root + ".internal.numeric..")
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage("org.ejml..", "org.apache.commons.math3..")
                .because("internal.numeric is the only door to them")
                .allowEmptyShould(true);
    }

    static ArchRule onlyKnownLibraries(String root) {
        return classes()
                .should()
                .onlyDependOnClassesThat()
                .resideInAnyPackage(root + "..", "java..", "org.ejml..", "org.apache.commons.math3..", "org.jspecify..")
                .because("the core stands on the JDK and two libraries")
                .allowEmptyShould(true);
    }

    /** Nothing that a caller can see names a type that a caller should not know. */
    static ArchRule noLeaks(String root) {
        return classes()
                .should(new NotLeak(root))
                .because("what is internal must stay free to change")
                .allowEmptyShould(true);
    }

    static ArchRule noStandardStreams() {
        return GeneralCodingRules.NO_CLASSES_SHOULD_ACCESS_STANDARD_STREAMS.allowEmptyShould(true);
    }

    static ArchRule noLogging() {
        return noClasses()
                .should()
                .dependOnClassesThat(describe(
                        "log",
                        c -> c.getPackageName().startsWith("java.util.logging")
                                || c.getName().startsWith("java.lang.System$Logger")))
                .because("a result says what happened; the caller decides what to log")
                .allowEmptyShould(true);
    }

    static ArchRule noFiles() {
        return noClasses()
                .should()
                .dependOnClassesThat(describe(
                        "open files or connections",
                        c -> c.getPackageName().startsWith("java.nio.file")
                                || c.getPackageName().equals("java.net")
                                || c.getName().matches("java\\.io\\.(File.*|RandomAccessFile)")))
                .because("reading and writing files is the caller's")
                .allowEmptyShould(true);
    }

    static ArchRule noThreads() {
        return noClasses()
                .should()
                .accessTargetWhere(QuietTargets.STARTS_THREADS)
                .because("parallel work runs on an executor that the caller passes")
                .allowEmptyShould(true);
    }

    static ArchRule noHiddenInputs() {
        return noClasses()
                .should()
                .accessTargetWhere(QuietTargets.READS_HIDDEN_INPUTS)
                .because("the same arguments give the same result on every machine and day")
                .allowEmptyShould(true);
    }

    static ArchRule noStaticState() {
        return fields().that()
                .areStatic()
                .and()
                .doNotHaveModifier(JavaModifier.SYNTHETIC)
                .should()
                .beFinal()
                .andShould(new HoldNoMutableObject())
                .because("results must not depend on what ran before")
                .allowEmptyShould(true);
    }

    /** Rules in words of their own are for callers; the library has a code for each of its rules. */
    static ArchRule codedViolations() {
        return noClasses()
                .should()
                .accessTargetWhere(QuietTargets.STATES_A_RULE_WITHOUT_CODE)
                .because("a program that reads what is wrong needs a code")
                .allowEmptyShould(true);
    }

    static ArchRule typedExceptions() {
        return GeneralCodingRules.NO_CLASSES_SHOULD_THROW_GENERIC_EXCEPTIONS.allowEmptyShould(true);
    }
}
