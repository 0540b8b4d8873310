package org.lifeline.file.result;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.design.criteria.CapacityCheck;
import org.lifeline.design.criteria.CheckedQuantity;
import org.lifeline.design.criteria.Criteria;
import org.lifeline.design.criteria.Criterion;
import org.lifeline.design.criteria.SourceKind;
import org.lifeline.design.criteria.Status;
import org.lifeline.design.envelope.Quantity;
import org.lifeline.examples.TestFiles;
import org.lifeline.file.DesignFile;
import org.lifeline.model.ModelFactors;

class CriteriaCheckTest {
    private static final DesignFile GALLERY = TestFiles.design("independent/conveyor-gallery.design.json");
    private static final DesignRun RUN = DesignRun.of(GALLERY.design());

    private static List<PrintedComparison> evaluate(String id) {
        return CriteriaCheck.evaluate(RUN, List.of(Criteria.of(id).orElseThrow()));
    }

    /** The extreme of a quantity, looked for here a second time. */
    private static double most(Quantity quantity) {
        return RUN.arrests().stream()
                .mapToDouble(r -> quantity.value(r, ModelFactors.none()))
                .max()
                .orElseThrow();
    }

    private static double load(String support) {
        return RUN.arrests().stream()
                .mapToDouble(r -> r.anchorLoad(support))
                .max()
                .orElseThrow();
    }

    static List<String> ids() {
        return Criteria.ids();
    }

    @ParameterizedTest
    @MethodSource("ids")
    void everyBuiltInCriterionSaysWhereItComesFromAndComparesOrSaysWhyNot(String id) {
        List<PrintedComparison> results = evaluate(id);
        assertThat(results).isNotEmpty().allSatisfy(r -> {
            assertThat(r.criterion().id()).isEqualTo(id);
            assertThat(r.criterion().source().citation()).isNotBlank();
            assertThat(r.criterion().source().kind()).isNotEqualTo(SourceKind.STATED);
            assertThat(r.mark()).isNotBlank();
            assertThat(r.evaluated()).isEqualTo(!r.text().startsWith("not evaluated: "));
            assertThat(r.met().isPresent()).isEqualTo(r.evaluated());
            assertThat(r.text().toLowerCase(Locale.ROOT)).doesNotContain("compl");
        });
    }

    /** Values of 29 CFR 1926.502(d): 1,800 lbf, 6 ft, 3.5 ft, 310 lb; of EN 355 6 kN; ISO 16024; CEN/TS 16415; published. */
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
        PrintedComparison r = evaluate(id).get(0);
        assertThat(r.capacity()).isCloseTo(limit, within(1e-3 * limit));
        assertThat(r.unit()).isEqualTo(unit);
    }

    @Test
    void theFactorOfTwoIsOnTheForce() {
        List<PrintedComparison> results = evaluate("us-osha-hll-factor");
        assertThat(results).hasSize(5);
        PrintedComparison cable = results.get(0);
        double tension = most(Quantity.MAXIMUM_TENSION);
        assertThat(cable.demand()).isCloseTo(2 * tension, within(2e-9 * tension));
        assertThat(cable.capacity()).isCloseTo(90.7e3 * 0.9, within(1e-6));
        assertThat(cable.ratio()).isCloseTo(2 * tension / 81_630, within(1e-12));
        assertThat(cable.met()).contains(true);
        ArrestResult governs = cable.governs().orElseThrow();
        assertThat(governs.maximumTension()).isCloseTo(tension, within(1e-9 * tension));
        PrintedComparison north = results.get(1);
        assertThat(north.demand()).isCloseTo(2 * load("north"), within(2e-9 * load("north")));
        assertThat(north.capacity()).isCloseTo(45e3, within(1e-9));
        assertThat(results.get(3).evaluated()).as("post 2 states no capacity").isFalse();
        assertThat(results.get(3).text()).contains("post 2: its capacity is not given");
    }

    /** Neither way can be checked to the end, since post 2 states no capacity; the easier one is laid out. */
    @Test
    void anAnchorageHoldsAForcePerWorkerOrTwiceTheLoad() {
        PrintedComparison north = evaluate("us-osha-anchorage").get(0);
        int workers = GALLERY.design().workers().size();
        boolean force = north.text().contains("capacity of an anchor");
        assertThat(north.demand()).isCloseTo(force ? workers * 22_241.1 : 2 * load("north"), within(0.1));
        assertThat(north.capacity()).isCloseTo(45e3, within(1e-9));
    }

    @Test
    void ofTwoWaysTheEasierOneCounts() {
        PrintedComparison r = evaluate("qc-maf").get(0);
        double force = most(Quantity.ARREST_FORCE) / 6e3;
        double fall = most(Quantity.FREE_FALL) / 1.8;
        assertThat(evaluate("qc-maf")).hasSize(1);
        assertThat(r.ratio()).isCloseTo(Math.min(force, fall), within(1e-12));
    }

    @Test
    void ownLimitsAreMetOnTheirSide() {
        double margin = RUN.arrests().stream()
                .mapToDouble(r -> r.clearance().margin().orElseThrow())
                .min()
                .orElseThrow();
        assertThat(own(Quantity.CLEARANCE_MARGIN, margin / 2).met()).contains(true);
        assertThat(own(Quantity.CLEARANCE_MARGIN, margin * 2).met()).contains(false);
        PrintedComparison just = own(Quantity.CLEARANCE_MARGIN, margin);
        assertThat(just.ratio()).isCloseTo(1, within(1e-12));
        for (Quantity each : Quantity.values()) {
            boolean limited = each.largestIsWorst() && most(each) > 0;
            if (limited) {
                assertThat(own(each, most(each) * 0.99).met()).as(each.key()).contains(false);
                assertThat(own(each, most(each) * 1.01).met()).as(each.key()).contains(true);
            }
        }
    }

    private static PrintedComparison own(Quantity quantity, double limit) {
        List<PrintedComparison> results = CriteriaCheck.evaluate(
                RUN, List.of(Criterion.stated("own", CheckedQuantity.of(quantity), limit, "site rule 3")));
        assertThat(results).hasSize(1);
        assertThat(results.get(0).mark()).isEqualTo("stated in the design file");
        return results.get(0);
    }

    /** Model factors scale what is compared, not what was computed; checked on the sums by hand. */
    @Test
    void modelFactorsScaleTheDemand() {
        DesignFile file = TestFiles.read(
                TestFiles.gallery("\"force\": 1.0, \"distance\": 1.0", "\"force\": 1.2, \"distance\": 1.5"));
        DesignRun run = DesignRun.of(file.design());
        assertThat(run.arrests().get(0).maximumTension())
                .isEqualTo(RUN.arrests().get(0).maximumTension());
        List<PrintedComparison> maf =
                CriteriaCheck.evaluate(run, List.of(Criteria.of("us-osha-maf").orElseThrow()));
        assertThat(maf.get(0).demand()).isCloseTo(1.2 * most(Quantity.ARREST_FORCE), within(1e-9));
        List<PrintedComparison> fall = CriteriaCheck.evaluate(
                run, List.of(Criterion.stated("f", CheckedQuantity.of(Quantity.TOTAL_FALL_DISTANCE), 9, "site rule")));
        double expected = RUN.arrests().stream()
                .mapToDouble(r -> r.totalFallDistance() + 0.5 * (r.deployment() + r.lineDescent()))
                .max()
                .orElseThrow();
        assertThat(fall.get(0).demand()).isCloseTo(expected, within(1e-9));
    }

    @Test
    void aNegativeCapacityOfClearanceIsBeyondEveryLimit() {
        double ratio = CapacityCheck.ratioOf(0.5, -0.2);
        assertThat(ratio).isInfinite();
        assertThat(Status.of(ratio)).isEqualTo(Status.NOT_MET);
    }
}
