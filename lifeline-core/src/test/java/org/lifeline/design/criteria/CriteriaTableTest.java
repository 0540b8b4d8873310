package org.lifeline.design.criteria;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.lifeline.base.Refusal;

/**
 * The built-in criteria against the collected values from regulations, standards and the trade, each with its mark (published,
 * recalled, common practice), and the sources that they name.
 */
@SuppressWarnings("NullAway") // Null is handed over to be refused, and what is there is taken as there.
class CriteriaTableTest {
    private static Criterion of(String id) {
        return Criteria.of(id).orElseThrow();
    }

    /** Limits as the texts state them; pounds and feet in SI by 4.4482216152605 N, 0.3048 m and 0.45359237 kg, by hand. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "us-osha-hll-factor|strengthFactor ≥ 2.0",
                "us-osha-maf|arrestForce ≤ 8006.7989 N",
                "us-osha-free-fall|freeFall ≤ 1.8288 m; freeHeight ≥ 0.0 m",
                "us-osha-deceleration|deployment ≤ 1.0668 m",
                "us-osha-anchorage|anchorCapacity ≥ 22241.108 N per worker; anchorStrengthFactor ≥ 2.0",
                "us-osha-impact|impactStrength ≥ 1.0",
                "us-osha-mass|workerMass < 140.6136 kg",
                "us-osha-general-industry|strengthFactor ≥ 2.0; anchorCapacity ≥ 22241.108 N per worker; anchorStrengthFactor ≥ 2.0; arrestForce ≤ 8006.7989 N; deployment ≤ 1.0668 m; freeFall ≤ 1.8288 m",
                "qc-hll-prescriptive|cableDiameter ≥ 0.012 m; initialSlope ≥ 0.083333; lineLength ≤ 12.0 m; endAnchorCapacity ≥ 90000.0 N; workers ≤ 2.0",
                "qc-swing|swingDisplacement ≤ 3.0 m; swingAngle ≤ 0.383972 rad",
                "qc-maf|arrestForce ≤ 6000.0 N; freeFall ≤ 1.8 m",
                "qc-anchor|anchorCapacity ≥ 18000.0 N; anchorStrengthFactor ≥ 2.0",
                "ab-absorber-classes|workerMass ≥ 45.0 kg; workerMass ≤ 115.0 kg; deploymentForce ≤ 6000.0 N; workerMass ≥ 90.0 kg; workerMass ≤ 175.0 kg; deploymentForce ≤ 8000.0 N",
                "ab-anchor|anchorCapacity ≥ 16000.0 N per worker; anchorStrengthFactor ≥ 2.0",
                "on-maf|arrestForce ≤ 8000.0 N; freeHeight ≥ 0.0 m",
                "bc-anchor|anchorCapacity ≥ 22000.0 N per worker; anchorStrengthFactor ≥ 2.0",
                "mb-anchor|anchorCapacity ≥ 22200.0 N per worker",
                "sg-rope-factor|cableStrengthFactor ≥ 2.0",
                "sg-rope-factor-fibre|cableStrengthFactor ≥ 3.0",
                "eu-slope|lineSlope ≤ 0.261799 rad",
                "eu-maf|arrestForce ≤ 6000.0 N; deployment ≤ 1.75 m",
                "jp-span|spanLength ≤ 10.0 m; spanForHeight ≤ 1.0; workersInOneSpan ≤ 1.0; fixedPosts ≥ 1.0",
                "nz-sag|initialSagRatio ≥ 0.03; endAnchorCapacity ≥ 44000.0 N; intermediateAnchorCapacity ≥ 12000.0 N; lineTurn ≤ 0.261799 rad; workersInOneSpan ≤ 1.0",
                "iso-users|workers ≤ 3.0",
                "anchor-arrest-16kN|anchorCapacity ≥ 16000.0 N",
                "anchor-restraint-3.5kN|anchorCapacity ≥ 3500.0 N",
                "clearance-margin|statedMargin ≥ 0.6 m",
                "harness-stretch|statedHarnessStretch ≥ 0.3 m"
            })
    void eachCriterionHasTheLimitsOfItsText(String id, String limits) {
        List<Limit> list = of(id).limits();
        String[] expected = limits.split("; ");
        assertThat(list).hasSameSizeAs(expected);
        for (int i = 0; i < expected.length; i++) {
            String[] words = expected[i].split(" ", 4);
            Limit l = list.get(i);
            assertThat(l.quantity()).isEqualTo(words[0]);
            assertThat(l.type().symbol()).isEqualTo(words[1]);
            double value = Double.parseDouble(words[2]);
            assertThat(l.value()).isCloseTo(value, within(6e-6 * value));
            assertThat(l.unit()).isEqualTo(words.length > 3 ? words[3] : "-");
        }
    }

    @ParameterizedTest
    @CsvSource({
        "us-osha-maf, UNITED_STATES, PUBLISHED",
        "us-osha-general-industry, UNITED_STATES, RECALLED",
        "qc-swing, QUEBEC, PUBLISHED",
        "ab-anchor, ALBERTA, PUBLISHED",
        "on-maf, ONTARIO, RECALLED",
        "bc-anchor, BRITISH_COLUMBIA, RECALLED",
        "mb-anchor, MANITOBA, PUBLISHED",
        "sg-rope-factor, SINGAPORE, PUBLISHED",
        "eu-slope, EUROPE, PUBLISHED",
        "eu-maf, EUROPE, PUBLISHED",
        "jp-span, JAPAN, PUBLISHED",
        "nz-sag, NEW_ZEALAND, PUBLISHED",
        "iso-users, INTERNATIONAL, PUBLISHED",
        "anchor-arrest-16kN, PRACTICE, COMMON_PRACTICE",
        "harness-stretch, PRACTICE, COMMON_PRACTICE",
        "us-osha-sag-angle, UNITED_STATES, PUBLISHED",
        "human-surrogate, UNITED_STATES, RECALLED",
        "csa-documents, INTERNATIONAL, PUBLISHED",
        "absorber-average, PRACTICE, PUBLISHED",
        "dring-height, PRACTICE, COMMON_PRACTICE"
    })
    void whereEachValueComesFromAndHowSureItIs(String id, Jurisdiction where, SourceKind kind) {
        assertThat(of(id).source().jurisdiction()).isEqualTo(where);
        assertThat(of(id).source().kind()).isEqualTo(kind);
        assertThat(of(id).id()).isEqualTo(id);
        assertThat(of(id)).hasToString(id + ": " + of(id).title());
    }

    @Test
    void aSetHoldsTheCriteriaOfItsJurisdictionInTheirOrder() {
        assertThat(Criteria.in(Jurisdiction.UNITED_STATES))
                .extracting(Criterion::id)
                .containsExactly(
                        "us-osha-hll-factor",
                        "us-osha-maf",
                        "us-osha-free-fall",
                        "us-osha-deceleration",
                        "us-osha-anchorage",
                        "us-osha-impact",
                        "us-osha-mass");
        assertThat(Criteria.in(Jurisdiction.ONTARIO))
                .as("recalled values are in no set")
                .isEmpty();
        assertThat(Criteria.in(Jurisdiction.DESIGN))
                .as("the designer states those")
                .isEmpty();
        for (Jurisdiction each : Jurisdiction.values()) {
            assertThat(Criteria.in(each))
                    .allSatisfy(c -> assertThat(c.source().jurisdiction()).isEqualTo(each))
                    .allSatisfy(c -> assertThat(c.source().kind()).isNotEqualTo(SourceKind.RECALLED));
        }
    }

    @Test
    void nothingRecalledIsLeftAndNothingElseIsTaken() {
        List<Criterion> kept = Criteria.withoutRecalled(Criteria.builtIn());
        assertThat(Criteria.builtIn())
                .filteredOn(c -> !kept.contains(c))
                .extracting(Criterion::id)
                .containsExactly("us-osha-general-industry", "on-maf", "bc-anchor");
        assertThat(Criteria.withoutRecalled(List.of())).isEmpty();
    }

    @Test
    void idsAreThoseOfCriteriaAndThenOfFacts() {
        assertThat(Criteria.ids())
                .hasSize(Criteria.builtIn().size() + ReferenceValue.all().size())
                .startsWith("us-osha-hll-factor")
                .endsWith("csa-clearance-force");
        assertThatThrownBy(() -> Criteria.builtIn().clear()).isInstanceOf(UnsupportedOperationException.class);
        assertThatThrownBy(() -> ReferenceValue.all().clear()).isInstanceOf(UnsupportedOperationException.class);
        assertThat(ReferenceValue.of("dring-height").orElseThrow().text()).contains("1.5 m (5 ft)");
        assertThat(ReferenceValue.of("us-osha-maf")).as("a limit is no fact").isEmpty();
    }

    @Test
    void whatIsAskedOfNothingIsRefused() {
        assertThat(Refusal.paths(() -> Criteria.of(null))).containsExactly("id");
        assertThat(Refusal.paths(() -> Criteria.in(null))).containsExactly("where");
        assertThat(Refusal.paths(() -> Criteria.withoutRecalled(null))).containsExactly("criteria");
        assertThat(Refusal.paths(() -> Criteria.check(Arrays.asList(of("us-osha-maf"), null), null)))
                .containsExactly("criteria[1]");
        assertThat(Refusal.paths(() -> Criteria.check(List.of(), null))).containsExactly("extremes");
        assertThat(Refusal.paths(() -> of("us-osha-maf").check(null))).containsExactly("extremes");
        assertThat(Refusal.paths(() -> ReferenceValue.of(null))).containsExactly("id");
        assertThat(Refusal.paths(() -> Criterion.stated("a", null, 1, "x"))).containsExactly("quantity");
        assertThat(Refusal.paths(() -> Criterion.stated("a", CheckedQuantity.WORKERS, 1, null)))
                .containsExactly("citation");
        assertThat(Refusal.paths(() -> Criterion.composed("a", null, "x"))).containsExactly("requirement");
        assertThat(Refusal.of(() -> Criterion.composed(null, Requirement.limit(CheckedQuantity.WORKERS, 1), "x")))
                .containsExactly("id: missing: must be given");
    }

    @Test
    void aCriterionOfTheDesignerCitesWhatWasGiven() {
        Requirement r = Requirement.limit(CheckedQuantity.WORKERS, 2);
        Criterion c = Criterion.composed("own", r, "client 7.2");
        assertThat(c.requirement()).isSameAs(r);
        assertThat(c.source()).isEqualTo(Source.stated("client 7.2"));
        assertThat(c.source().citation()).isEqualTo("client 7.2");
        assertThat(c.title()).isEqualTo("workers at most 2.0");
        assertThat(c).hasToString("own: workers at most 2.0");
    }

    @Test
    void aCitationJoinsWhatIsStated() {
        Source.Work work = new Source.Work("title", "2020", "p. 3");
        assertThat(new Source("body", work, Jurisdiction.EUROPE, SourceKind.PUBLISHED).citation())
                .isEqualTo("body, title, 2020, p. 3");
        assertThat(new Source("", work, Jurisdiction.EUROPE, SourceKind.RECALLED).citation())
                .isEqualTo("title, 2020, p. 3");
        assertThat(new Source("body", new Source.Work("", "", "p. 3"), Jurisdiction.EUROPE, SourceKind.RECALLED)
                        .citation())
                .isEqualTo("body, p. 3");
        assertThat(Source.commonPractice().citation()).isEqualTo("common practice, no source");
        assertThat(of("us-osha-maf").source().citation())
                .isEqualTo("US Occupational Safety and Health Administration, 29 CFR 1926.502, fall protection systems"
                        + " criteria, in force, (d)(16)(ii)");
    }

    @Test
    void aPublishedValueNamesBodyTitleYearAndPlace() {
        assertThat(Refusal.of(() ->
                        new Source(" ", new Source.Work("", "\t", ""), Jurisdiction.EUROPE, SourceKind.PUBLISHED)))
                .containsExactly(
                        "body: \" \": must be named for a published value",
                        "title: \"\": must be named for a published value",
                        "year: \"\t\": must be named for a published value",
                        "place: \"\": must be named for a published value");
        assertThat(Refusal.of(() ->
                        new Source("", new Source.Work("", "", ""), Jurisdiction.EUROPE, SourceKind.COMMON_PRACTICE)))
                .as("only what was published can be looked up")
                .isEmpty();
    }

    @Test
    void partsOfASourceAreNeeded() {
        Source.Work work = new Source.Work("title", "2020", "p. 3");
        assertThat(Refusal.paths(() -> new Source(null, work, Jurisdiction.EUROPE, SourceKind.RECALLED)))
                .containsExactly("body");
        assertThat(Refusal.paths(() -> new Source("b", null, Jurisdiction.EUROPE, SourceKind.RECALLED)))
                .containsExactly("work");
        assertThat(Refusal.paths(() -> new Source("b", work, null, SourceKind.RECALLED)))
                .containsExactly("jurisdiction");
        assertThat(Refusal.paths(() -> new Source("b", work, Jurisdiction.EUROPE, null)))
                .containsExactly("kind");
        assertThat(Refusal.paths(() -> Source.stated(null))).containsExactly("text");
    }

    @ParameterizedTest
    @EnumSource(Jurisdiction.class)
    void keysOfJurisdictionsAreUniqueAndStartTheIdsOfTheirCriteria(Jurisdiction where) {
        assertThat(Arrays.stream(Jurisdiction.values()).filter(j -> j.key().equals(where.key())))
                .containsExactly(where);
        if (where != Jurisdiction.PRACTICE) {
            assertThat(Criteria.in(where)).allSatisfy(c -> assertThat(c.id()).startsWith(where.key() + "-"));
        }
    }

    @Test
    void marksAndOutcomesHaveTheirWords() {
        assertThat(SourceKind.values())
                .extracting(SourceKind::words)
                .containsExactly("published", "recalled", "common practice", "stated in the design");
        assertThat(Status.values()).extracting(Status::words).containsExactly("MET", "NOT MET", "NOT EVALUATED");
        assertThat(LimitType.values()).extracting(LimitType::symbol).containsExactly("≤", "<", "≥");
    }

    /** T = F/(2 sin θ) of two straight legs (statics by hand): half the load at 90°, the load at 30°, 2.88 times at 10°. */
    @ParameterizedTest
    @CsvSource({"90, 0.5", "30, 1", "10, 2.87939", "5, 5.73686", "1, 28.6494"})
    void tensionOfTwoStraightLegs(double degrees, double ratio) {
        assertThat(ReferenceValue.tensionOverLoad(Math.toRadians(degrees))).isCloseTo(ratio, within(5e-6 * ratio));
    }

    /** Rounding of a few last digits, 1e-12 of the limit, is no failure; more than that is. */
    @ParameterizedTest
    @CsvSource({
        "1, AT_MOST, MET",
        "1.0000000000009, AT_MOST, MET",
        "1.0000000000011, AT_MOST, NOT_MET",
        "1, BELOW, NOT_MET",
        "0.9999999999989, BELOW, MET",
        "0.9999999999991, BELOW, NOT_MET",
        "1.0000000000009, AT_LEAST, MET",
        "-1, AT_MOST, MET",
        "Infinity, AT_LEAST, NOT_MET",
        "NaN, AT_MOST, NOT_EVALUATED"
    })
    void aRatioAtTheLimit(double ratio, LimitType type, Status status) {
        assertThat(Status.of(ratio, type)).isEqualTo(status);
        if (type == LimitType.AT_MOST) {
            assertThat(Status.of(ratio)).isEqualTo(status);
        }
    }

    @Test
    void limitsArePrinted() {
        assertThat(new Limit("spanLength", LimitType.AT_MOST, 10, "m")).hasToString("spanLength ≤ 10.0 m");
        assertThat(new Limit("workers", LimitType.BELOW, 3, "-")).hasToString("workers < 3.0");
    }
}
