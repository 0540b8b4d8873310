package org.lifeline.house;

import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;

/** The library keeps its floors, hides what is internal, and is quiet. */
@AnalyzeClasses(packages = FloorsTest.ROOT, importOptions = ImportOption.DoNotIncludeTests.class)
class FloorsTest {
    static final String ROOT = "org.lifeline";

    @ArchTest
    static final ArchRule FLOORS = HouseRules.floors(ROOT);

    @ArchTest
    static final ArchRule REPORT_FLOORS = HouseRules.reportFloors(ROOT);

    @ArchTest
    static final ArchRule EVERY_CLASS_HAS_A_FLOOR = HouseRules.everyClassHasAFloor(ROOT);

    @ArchTest
    static final ArchRule NO_CYCLES = HouseRules.noCycles(ROOT);

    @ArchTest
    static final ArchRule THIRD_PARTY_ONLY_IN_NUMERIC = HouseRules.thirdPartyOnlyInNumeric(ROOT);

    @ArchTest
    static final ArchRule ONLY_KNOWN_LIBRARIES = HouseRules.onlyKnownLibraries(ROOT);

    @ArchTest
    static final ArchRule NO_LEAKS = HouseRules.noLeaks(ROOT);

    @ArchTest
    static final ArchRule NO_STANDARD_STREAMS = HouseRules.noStandardStreams();

    @ArchTest
    static final ArchRule NO_LOGGING = HouseRules.noLogging();

    @ArchTest
    static final ArchRule NO_FILES = HouseRules.noFiles();

    @ArchTest
    static final ArchRule NO_THREADS = HouseRules.noThreads();

    @ArchTest
    static final ArchRule NO_HIDDEN_INPUTS = HouseRules.noHiddenInputs();

    @ArchTest
    static final ArchRule NO_STATIC_STATE = HouseRules.noStaticState();

    @ArchTest
    static final ArchRule TYPED_EXCEPTIONS = HouseRules.typedExceptions();

    @ArchTest
    static final ArchRule CODED_VIOLATIONS = HouseRules.codedViolations();

    @ArchTest
    static void theLibraryWasSeen(JavaClasses library) {
        assertThat(library.contain(ROOT + ".base.Units")).isTrue();
    }
}
