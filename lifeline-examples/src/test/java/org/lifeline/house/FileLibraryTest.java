package org.lifeline.house;

import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.lang.conditions.ArchConditions.dependOnClassesThat;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaAccess;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaMethod;
import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.lang.ArchRule;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** The library of files stands on its own: the command line uses it, and never the other way. */
class FileLibraryTest {
    private static final JavaClasses CLASSES = new ClassFileImporter()
            .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
            .importPackages("org.lifeline.file", "org.lifeline.examples");

    /** What a caller may use; everything else of the library is its own affair. */
    private static final Set<String> PUBLIC =
            Set.of("org.lifeline.file", "org.lifeline.file.reproduce", "org.lifeline.file.study");

    private static final ArchRule ALONE = noClasses()
            .that(resideInAnyPackage("org.lifeline.file.."))
            .should(dependOnClassesThat(resideInAnyPackage("org.lifeline.examples..", "picocli..")));

    private static final ArchRule WITHOUT_INTERNALS_OF_THE_CORE = classes()
            .that(resideInAnyPackage("org.lifeline.file.."))
            .should()
            .onlyDependOnClassesThat(new InPublicPackages());

    /** Neither {@code org.lifeline.internal} nor the pages of a report; of these only the data of the project. */
    private static final class InPublicPackages extends DescribedPredicate<JavaClass> {
        InPublicPackages() {
            super("are public in the core, and not its reports");
        }

        @Override
        public boolean test(JavaClass c) {
            String p = c.getPackageName();
            return !p.startsWith("org.lifeline.internal")
                    && (!p.startsWith("org.lifeline.report") || c.getFullName().startsWith(PROJECT_DATA));
        }
    }

    private static final String PROJECT_DATA = "org.lifeline.report.document.ProjectData";

    @Test
    void theCommandLineUsesTheLibraryAndNeverTheOtherWay() {
        ALONE.check(CLASSES);
        ArchRule turned = noClasses()
                .that(resideInAnyPackage("org.lifeline.examples.."))
                .should(dependOnClassesThat(resideInAnyPackage("org.lifeline.file..")));
        assertThat(turned.evaluate(CLASSES).hasViolation())
                .as("the same rule the other way round is broken by the command line")
                .isTrue();
    }

    private static ArchRule withoutCircles(String root) {
        return slices().matching(root + ".(**)").should().beFreeOfCycles();
    }

    /** Every package can be read and changed with those that it uses, and none of these uses it. */
    @Test
    void noPackagesUseEachOther() {
        withoutCircles("org.lifeline").check(CLASSES.that(resideInAPackage("org.lifeline.file..")));
        JavaClasses circle = new ClassFileImporter().importClasses(Iterable.class, Iterator.class, Object.class);
        assertThat(withoutCircles("java").evaluate(circle).hasViolation())
                .as("the same rule finds the circle of two packages of the JDK")
                .isTrue();
    }

    @Test
    void itUsesNothingInternalAndNoReport() {
        WITHOUT_INTERNALS_OF_THE_CORE.check(CLASSES);
    }

    /** Whatever the files, the command line or the page refuse has a code of its own: none states its rule in words only. */
    @Test
    void noReaderProducesTheCatchAll() {
        JavaClasses all = new ClassFileImporter()
                .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
                .importPackages("org.lifeline.file", "org.lifeline.examples", "org.lifeline.explorer");
        Stream<? extends JavaAccess<?>> accesses =
                all.stream().filter(c -> !c.getName().contains("Test")).flatMap(c -> c.getAccessesFromSelf().stream());
        List<String> told = accesses.map(a -> a.getTarget().getFullName()).toList();
        assertThat(told)
                .contains("org.lifeline.base.Violation.of(java.lang.String, org.lifeline.base.GivenValue,"
                        + " org.lifeline.base.ViolationCode, [Ljava.lang.Object;)")
                .doesNotContain(
                        "org.lifeline.base.Violation.<init>(java.lang.String, java.lang.String, java.lang.String)",
                        "org.lifeline.base.Violations.add(java.lang.String, java.lang.String, java.lang.String)",
                        "org.lifeline.base.Violations.require(boolean, java.lang.String, java.lang.String,"
                                + " java.lang.String)",
                        "org.lifeline.base.InputRule.STATED");
    }

    /** A caller is never handed a type that the module keeps to itself, nor one of the JSON parser. */
    @Test
    void itsPublicSurfaceIsClosed() {
        List<String> leaks = new ArrayList<>();
        Set<String> surface = new TreeSet<>();
        for (JavaClass c : CLASSES) {
            if (!PUBLIC.contains(c.getPackageName()) || !c.getModifiers().contains(JavaModifier.PUBLIC)) {
                continue;
            }
            surface.add(c.getName());
            for (JavaMethod m : c.getMethods()) {
                if (m.getModifiers().contains(JavaModifier.PUBLIC)) {
                    List<JavaClass> seen = new ArrayList<>(m.getRawParameterTypes());
                    seen.add(m.getRawReturnType());
                    seen.stream()
                            .filter(FileLibraryTest::isKeptBack)
                            .forEach(t -> leaks.add(m.getFullName() + " shows " + t.getName()));
                }
            }
        }
        assertThat(leaks).isEmpty();
        assertThat(surface).contains("org.lifeline.file.ResultFile", "org.lifeline.file.DesignReader");
        assertThat(surface.size()).as("public types: %s", surface).isLessThanOrEqualTo(25);
    }

    /** The page of questions names public methods of the files, and an entry into each of their packages. */
    @Test
    void thePageOfQuestionsHasItsEntries() throws IOException {
        String page = Files.readString(Path.of("../lifeline-core/src/docs/questions.md"));
        List<MatchResult> answers = Pattern.compile("`((org\\.lifeline\\.file[a-z.]*)\\.[A-Z]\\w*)#(\\w+)`")
                .matcher(page)
                .results()
                .toList();
        assertThat(answers).extracting(m -> m.group(2)).containsAll(PUBLIC);
        for (MatchResult each : answers) {
            assertThat(CLASSES.get(each.group(1)).getMethods())
                    .as(each.group())
                    .filteredOn(m -> m.getModifiers().contains(JavaModifier.PUBLIC))
                    .extracting(JavaMethod::getName)
                    .contains(each.group(3));
        }
    }

    private static boolean isKeptBack(JavaClass type) {
        String p = type.getBaseComponentType().getPackageName();
        return p.startsWith("com.fasterxml") || (p.startsWith("org.lifeline.file") && !PUBLIC.contains(p));
    }
}
