package org.lifeline.house;

import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.lang.ArchRule;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** Each house rule can fail, finds what it is made to find, and lets a well-behaved class pass. */
class HouseRulesTest {
    private static final String FIXTURE = "org.lifeline.housefixture";
    private static final JavaClasses BAD = new ClassFileImporter().importPackages(FIXTURE + ".bad");
    private static final JavaClasses GOOD = new ClassFileImporter().importPackages(FIXTURE + ".good");

    static List<String> ruleNames() {
        return List.copyOf(HouseRules.all(FIXTURE).keySet());
    }

    @ParameterizedTest
    @MethodSource("ruleNames")
    void everyRuleFailsOnTheBadBuilding(String name) {
        assertThat(rule(name, "bad").evaluate(BAD).hasViolation()).isTrue();
    }

    @ParameterizedTest
    @MethodSource("ruleNames")
    void everyRulePassesOnTheGoodBuilding(String name) {
        assertThat(GOOD).isNotEmpty();
        assertThat(rule(name, "good").evaluate(GOOD).getFailureReport().getDetails())
                .isEmpty();
    }

    @ParameterizedTest
    @CsvSource({
        "verify.BorrowedCheck, internal.line.Element",
        "internal.line.LooksAhead, internal.path.Follower",
        "verify.BorrowedCheck, internal.numeric.Solver",
        "base.Foundation, model.Beam",
        "model.Beam, analysis.Statics",
        "model.Beam, internal.numeric.Solver",
        "design.Sweep, verify.BorrowedCheck",
        "design.Sweep, report.Sheet",
    })
    void floorsRuleFindsEveryLookUpwardsOrSideways(String from, String to) {
        assertThat(findings("floors"))
                .anySatisfy(finding -> assertThat(finding).contains(FIXTURE + ".bad." + from, FIXTURE + ".bad." + to));
    }

    @ParameterizedTest
    @CsvSource({
        "analysis.Leaks extends, org.apache.commons.math3.analysis.solvers.BrentSolver",
        "analysis.Leaks implements, internal.line.Hidden",
        "analysis.Leaks has a type parameter of, internal.line.Element",
        "analysis.Leaks has field shared of, internal.numeric.Solver",
        "analysis.Leaks has field forHeirs of, org.ejml.data.DMatrixRMaj",
        "analysis.Leaks.<init> takes, internal.numeric.Solver",
        "analysis.Leaks.returned returns, internal.line.Element",
        "analysis.Leaks.inList returns, internal.line.Element",
        "analysis.Leaks.inArray returns, internal.line.Element",
        "analysis.Leaks.taken takes, org.ejml.data.DMatrixRMaj",
        "analysis.Leaks.bounded has a type parameter of, internal.line.Hidden",
        "analysis.Leaks.thrown throws, org.apache.commons.math3.exception.TooManyEvaluationsException",
        "analysis.Leaks.heirsOnly returns, internal.line.Element",
        "analysis.Leaks$Nested.returned returns, internal.line.Element",
        "analysis.Heir.handedDown returns, internal.line.Element",
        "analysis.Heir through FIXTURE.analysis.HiddenParent.handedDown returns, internal.line.Element",
        "analysis.Heir through FIXTURE.analysis.HiddenParent implements, internal.line.Hidden",
    })
    void leakRuleFindsEveryPlaceOfASignature(String place, String type) {
        String root = FIXTURE + ".bad";
        String named = type.startsWith("org.") ? type : root + "." + type;
        assertThat(findings("noLeaks")).contains(root + "." + place.replace("FIXTURE", root) + " " + named);
    }

    @Test
    void leakRuleLeavesHiddenMembersAlone() {
        assertThat(findings("noLeaks"))
                .noneMatch(finding -> finding.contains("ofNoConcern"))
                .hasSize(17);
    }

    @ParameterizedTest
    @CsvSource({
        "noStandardStreams, prints",
        "noStandardStreams, printsTrace",
        "noLogging, logs",
        "noFiles, readsFile",
        "noFiles, writesFile",
        "noThreads, startsThread",
        "noThreads, makesPool",
        "noThreads, streamsInParallel",
        "noThreads, borrowsCommonPool",
        "noHiddenInputs, readsClock",
        "noHiddenInputs, readsNanoClock",
        "noHiddenInputs, readsToday",
        "noHiddenInputs, readsDefaultLocale",
        "noHiddenInputs, formatsInDefaultLocale",
        "noHiddenInputs, lowersInDefaultLocale",
        "noHiddenInputs, readsEnvironment",
        "noHiddenInputs, rollsDice",
        "noHiddenInputs, rollsDiceByReference",
        "noStaticState, counter",
        "noStaticState, CACHE",
        "noStaticState, TABLE",
        "noStaticState, TALLY",
        "typedExceptions, throwsAnything",
        "codedViolations, refusesInWords",
        "codedViolations, addsInWords",
        "codedViolations, requiresInWords",
        "codedViolations, takesTheCatchAll",
    })
    void quietRulesFindEveryNoise(String name, String member) {
        assertThat(findings(name))
                .anySatisfy(finding -> assertThat(finding).contains(FIXTURE + ".bad.analysis.Noisy." + member));
    }

    @Test
    void onlyAResultMayCallTheWritersOfItsCalculation() {
        assertThat(findings("noCycles"))
                .anySatisfy(finding -> assertThat(finding)
                        .contains(
                                FIXTURE + ".bad.analysis.Caller.call()",
                                FIXTURE + ".bad.analysis.explain.Explanations.of()"));
    }

    private static List<String> findings(String name) {
        return rule(name, "bad").evaluate(BAD).getFailureReport().getDetails();
    }

    private static ArchRule rule(String name, String building) {
        ArchRule rule = HouseRules.all(FIXTURE + "." + building).get(name);
        assertThat(rule).as(name).isNotNull();
        return rule;
    }
}
