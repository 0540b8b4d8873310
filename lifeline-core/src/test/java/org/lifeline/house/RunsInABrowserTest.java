package org.lifeline.house;

import static com.tngtech.archunit.base.DescribedPredicate.describe;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaAccess;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;
import java.util.HexFormat;
import java.util.Set;
import java.util.concurrent.FutureTask;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * The core can be compiled for a browser by TeaVM 0.16: it keeps away from what that compiler's class library lacks. The one
 * class that needs threads is reached only by who names an executor. The page of the examples is the proof that the compiler
 * takes it; this rule says early, and where.
 */
@AnalyzeClasses(packages = "org.lifeline", importOptions = ImportOption.DoNotIncludeTests.class)
class RunsInABrowserTest {
    private static final String WITH_THREADS = "org.lifeline.internal.numeric.SharedWork";

    /** Hashes with the JDK's algorithm; the page takes the browser's own. */
    private static final String WITH_HASH = "org.lifeline.base.canonical.Fingerprint";

    /** Types of {@code java.util.concurrent} that the compiler has. */
    private static final Set<String> CONCURRENT = Set.of(
            "java.util.concurrent.Executor",
            "java.util.concurrent.CancellationException",
            "java.util.concurrent.Callable",
            "java.util.concurrent.TimeUnit",
            "java.util.concurrent.ConcurrentHashMap",
            "java.util.concurrent.ConcurrentMap");

    private static final Set<String> MISSING = Set.of(
            "java.util.HexFormat",
            "java.util.UUID",
            "java.security.MessageDigest",
            "java.text.Normalizer",
            "java.lang.ClassLoader");

    /** Methods that are missing from classes that are there. */
    private static final Set<String> METHODS = Set.of(
            "java.lang.String.lines()",
            "java.lang.Character.toString(int)",
            "java.lang.Class.forName(java.lang.String)");

    @ArchTest
    static final ArchRule NOTHING_THAT_A_BROWSER_LACKS = rule();

    private static ArchRule rule() {
        return noClasses()
                .that()
                .doNotHaveFullyQualifiedName(WITH_THREADS)
                .and()
                .doNotHaveFullyQualifiedName(WITH_HASH)
                .should()
                .dependOnClassesThat(describe("a browser lacks", RunsInABrowserTest::isMissing))
                .orShould()
                .accessTargetWhere(describe(
                        "a browser lacks",
                        (JavaAccess<?> a) -> METHODS.contains(a.getTarget().getFullName())))
                .because("the compiler for browsers has no such class or method");
    }

    private static boolean isMissing(JavaClass type) {
        String name = type.getFullName();
        boolean concurrent = name.startsWith("java.util.concurrent.") && !CONCURRENT.contains(name);
        return concurrent
                || MISSING.contains(name)
                || Stream.of("java.net.", "java.nio.file.", "java.lang.reflect.", "javax.", "java.sql.", "java.awt.")
                        .anyMatch(name::startsWith);
    }

    /** What the rule must catch. */
    static final class Offenders {
        private Offenders() {}

        static final class Threads {
            private Threads() {}

            static FutureTask<String> task() {
                return new FutureTask<>(() -> "");
            }
        }

        static final class Hex {
            private Hex() {}

            static String of(byte[] bytes) {
                return HexFormat.of().formatHex(bytes);
            }
        }

        static final class Lines {
            private Lines() {}

            static long of(String text) {
                return text.lines().count();
            }
        }
    }

    @Test
    void eachOffenderIsCaught() {
        for (Class<?> each : new Class<?>[] {Offenders.Threads.class, Offenders.Hex.class, Offenders.Lines.class}) {
            assertThat(rule().evaluate(new ClassFileImporter().importClasses(each))
                            .hasViolation())
                    .as(each.getName())
                    .isTrue();
        }
    }
}
