package org.lifeline.examples.criteria;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.examples.TestFiles;
import org.lifeline.examples.arrests.Demand;
import org.lifeline.examples.arrests.DesignAnalysis;
import org.lifeline.examples.arrests.DesignRun;
import org.lifeline.examples.criteria.CriterionResult.Mark;
import org.lifeline.examples.json.DesignFile;

class CriteriaCheckTest {
    private static final DesignFile GALLERY = TestFiles.design("independent/conveyor-gallery.design.json");
    private static final DesignRun RUN = DesignAnalysis.withDefaults().solve(GALLERY.design());

    private static List<CriterionResult> evaluate(String id) {
        return CriteriaCheck.evaluate(RUN, List.of(new Criterion.BuiltIn(id)));
    }

    private static double most(Demand demand) {
        return RUN.arrests().stream()
                .mapToDouble(r -> demand.of(r).orElseThrow())
                .max()
                .orElseThrow();
    }

    static List<String> ids() {
        return List.copyOf(BuiltInCriteria.ids());
    }

    @ParameterizedTest
    @MethodSource("ids")
    void everyBuiltInCriterionSaysWhereItComesFromAndComparesOrSaysWhyNot(String id) {
        List<CriterionResult> results = evaluate(id);
        assertThat(results).isNotEmpty().allSatisfy(r -> {
            assertThat(r.limit().id()).isEqualTo(id);
            assertThat(r.limit().origin().source()).isNotBlank();
            assertThat(r.limit().origin().mark()).isNotEqualTo(Mark.STATED);
            assertThat(r.evaluated()).isEqualTo(!r.limit().comparison().startsWith("not evaluated"));
            assertThat(r.met().isPresent()).isEqualTo(r.evaluated());
            assertThat(r.limit().comparison().toLowerCase(java.util.Locale.ROOT))
                    .doesNotContain("compl");
        });
    }

    /** Values of 29 CFR 1926.502(d): 1,800 lbf, 6 ft, 3.5 ft, 310 lb, 5,000 lbf; of EN 355 and Québec 6 kN; published. */
    @ParameterizedTest
    @CsvSource({
        "us-osha-maf, 8006.8, N",
        "us-osha-free-fall, 1.8288, m",
        "us-osha-deceleration, 1.0668, m",
        "us-osha-mass, 140.61, kg",
        "eu-maf, 6000, N",
        "iso-users, 3, ''",
        "eu-slope, 15, °"
    })
    void limitsAreThoseOfTheSource(String id, double limit, String unit) {
        CriterionResult r = evaluate(id).get(0);
        assertThat(r.capacity()).isCloseTo(limit, within(1e-3 * limit));
        assertThat(r.limit().unit()).isEqualTo(unit);
    }

    @Test
    void theFactorOfTwoIsOnTheForce() {
        List<CriterionResult> results = evaluate("us-osha-hll-factor");
        assertThat(results).hasSize(5);
        CriterionResult cable = results.get(0);
        assertThat(cable.demand()).isEqualTo(2 * most(Demand.MAXIMUM_TENSION));
        assertThat(cable.capacity()).isCloseTo(90.7e3 * 0.9, within(1e-6));
        assertThat(cable.ratio()).isCloseTo(2 * most(Demand.MAXIMUM_TENSION) / 81_630, within(1e-12));
        assertThat(cable.met()).contains(true);
        ArrestResult governs = Objects.requireNonNull(cable.governs());
        assertThat(governs.maximumTension()).isEqualTo(most(Demand.MAXIMUM_TENSION));
        CriterionResult north = results.get(1);
        double load = RUN.arrests().stream()
                .mapToDouble(r -> r.anchorLoad("north"))
                .max()
                .orElseThrow();
        assertThat(north.demand()).isEqualTo(2 * load);
        assertThat(north.capacity()).isEqualTo(45e3);
        assertThat(results.get(3).evaluated()).as("post 2 states no capacity").isFalse();
    }

    @Test
    void anAnchorageHoldsAForcePerWorkerOrTwiceTheLoad() {
        CriterionResult north = evaluate("us-osha-anchorage").get(0);
        double twice = 2
                * RUN.arrests().stream()
                        .mapToDouble(r -> r.anchorLoad("north"))
                        .max()
                        .orElseThrow();
        assertThat(north.demand()).isCloseTo(Math.min(22_241.1, twice), within(0.1));
        assertThat(north.limit().comparison()).startsWith("2 × load");
    }

    @Test
    void ofTwoWaysTheEasierOneCounts() {
        CriterionResult r = evaluate("qc-maf").get(0);
        double force = most(Demand.ARREST_FORCE) / 6e3;
        double fall = most(Demand.FREE_FALL) / 1.8;
        assertThat(r.ratio()).isCloseTo(Math.min(force, fall), within(1e-12));
    }

    @Test
    void theClearanceMarginIsTheOnlyDemandWhereMoreIsBetter() {
        double margin = RUN.arrests().stream()
                .mapToDouble(r -> r.clearance().margin().orElseThrow())
                .min()
                .orElseThrow();
        CriterionResult enough = own(Demand.CLEARANCE_MARGIN, margin / 2);
        assertThat(enough.met()).contains(true);
        assertThat(enough.ratio()).isCloseTo(0.5, within(1e-12));
        assertThat(own(Demand.CLEARANCE_MARGIN, margin * 2).met()).contains(false);
        for (Demand each : Demand.values()) {
            if (each != Demand.CLEARANCE_MARGIN) {
                assertThat(own(each, most(each) * 0.99).met()).as(each.key()).contains(false);
                assertThat(own(each, most(each) * 1.01).met()).as(each.key()).contains(true);
            }
        }
    }

    private static CriterionResult own(Demand demand, double limit) {
        List<CriterionResult> results = CriteriaCheck.evaluate(
                RUN, List.of(new Criterion.Own("own", demand, new Criterion.Limit(limit, ""), "site rule 3")));
        assertThat(results).hasSize(1);
        assertThat(results.get(0).limit().origin().mark()).isEqualTo(Mark.STATED);
        return results.get(0);
    }

    /** Model factors scale what is compared, not what was computed; checked on the sums by hand. */
    @Test
    void modelFactorsScaleTheDemand() {
        DesignFile file = TestFiles.read(
                TestFiles.gallery("\"force\": 1.0, \"distance\": 1.0", "\"force\": 1.2, \"distance\": 1.5"));
        DesignRun run = DesignAnalysis.withDefaults().solve(file.design());
        assertThat(run.arrests().get(0).maximumTension())
                .isEqualTo(RUN.arrests().get(0).maximumTension());
        List<CriterionResult> maf = CriteriaCheck.evaluate(run, List.of(new Criterion.BuiltIn("us-osha-maf")));
        assertThat(maf.get(0).demand()).isCloseTo(1.2 * most(Demand.ARREST_FORCE), within(1e-9));
        List<CriterionResult> fall = CriteriaCheck.evaluate(
                run,
                List.of(new Criterion.Own("f", Demand.TOTAL_FALL_DISTANCE, new Criterion.Limit(9, ""), "site rule")));
        double expected = RUN.arrests().stream()
                .mapToDouble(r -> r.totalFallDistance() + 0.5 * (r.deployment() + r.lineDescent()))
                .max()
                .orElseThrow();
        assertThat(fall.get(0).demand()).isCloseTo(expected, within(1e-9));
    }

    @Test
    void aNegativeCapacityOfClearanceIsBeyondEveryLimit() {
        CriterionResult r = new CriterionResult(evaluate("us-osha-maf").get(0).limit(), 0.5, -0.2, null);
        assertThat(r.met()).contains(false);
        assertThat(r.ratio()).isInfinite();
    }
}
