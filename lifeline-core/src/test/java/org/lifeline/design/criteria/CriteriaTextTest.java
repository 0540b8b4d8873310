package org.lifeline.design.criteria;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.EnergyBalance;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.Point;
import org.lifeline.base.Units;
import org.lifeline.design.envelope.DesignAnalysis;
import org.lifeline.design.envelope.Designs;
import org.lifeline.design.envelope.Extreme;
import org.lifeline.design.envelope.Extremes;
import org.lifeline.design.envelope.Quantity;
import org.lifeline.model.Attachment;
import org.lifeline.model.Connection;
import org.lifeline.model.Fall;
import org.lifeline.model.Installed;
import org.lifeline.model.Lifeline;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Passage;
import org.lifeline.model.Place;
import org.lifeline.model.Worker;
import org.lifeline.model.absorber.DeploymentForce;

/** Built-in criteria against the words of their texts, at and beside the limits. */
class CriteriaTextTest {
    private static LifelineDesign design(int spans) {
        LifelineDesign d = Designs.design(spans, Passage.friction(0.12), Attachment.GRIPPED);
        return falling(d.withTemperatures(List.of(15.0)), d.workers().get(0));
    }

    private static LifelineDesign falling(LifelineDesign d, Worker... workers) {
        Fall.Builder b = Fall.builder("middle").at(Place.of(1, 6));
        for (Worker each : workers) {
            b.faller(each);
        }
        return d.withFalls(List.of(b.build()));
    }

    private static Extremes analyse(LifelineDesign design) {
        return DesignAnalysis.withDefaults().solve(design).extremes();
    }

    private static CriterionResult check(String id, LifelineDesign design) {
        return Criteria.of(id).orElseThrow().check(analyse(design));
    }

    private static List<CapacityCheck> of(CriterionResult r, String key) {
        return r.comparisons().stream().filter(c -> c.quantityKey().equals(key)).toList();
    }

    /** S-2.1, r. 4, s. 2.10.15: "cannot be moved horizontally by more than 3 m or an angle of 22°": either is too much. */
    @ParameterizedTest
    @CsvSource({"0.5, 1.8, MET, MET", "0.9, 1.8, MET, NOT_MET", "3.2, 4, NOT_MET, NOT_MET", "3.2, 9, NOT_MET, MET"})
    void swingIsTooMuchByDistanceOrByAngle(double offset, double length, Status distance, Status angle) {
        LifelineDesign d = design(1)
                .withWorkers(w -> w.toBuilder(w.id())
                        .offset(offset)
                        .connection(Connection.lanyard(
                                length,
                                Connection.PersonalAbsorber.builder()
                                        .clearanceForce(3200)
                                        .maximumForce(6000)
                                        .maximumExtension(6)
                                        .build()))
                        .build());
        CriterionResult r = check("qc-swing", d);
        assertThat(of(r, "swingDisplacement")).extracting(CapacityCheck::status).containsExactly(distance);
        assertThat(of(r, "swingAngle")).extracting(CapacityCheck::status).containsExactly(angle);
        assertThat(r.isMet()).isEqualTo(distance == Status.MET && angle == Status.MET);
        assertThat(of(r, "swingDisplacement").get(0).demand()).isEqualTo(offset, within(1e-6));
        assertThat(of(r, "swingAngle").get(0).demand()).isEqualTo(Math.asin(offset / length), within(1e-6));
    }

    /** The height counts from the working floor, not from the support: 7 m span, floor 5 m above the obstruction: 3.64 m. */
    @ParameterizedTest
    @CsvSource({"6, 7.2727, NOT_MET", "5, 3.6364, NOT_MET", "7.3, 12, MET"})
    void heightOfAJapaneseSpanIsThatOfTheWorkingFloor(double height, double allowed, Status status) {
        LifelineDesign d = design(1);
        LifelineDesign floored = d.toBuilder()
                .workingFloor(4 + height)
                .line(d.line()
                        .withSupports(
                                s -> s.isEnd() && s.id().equals("south") ? s.withPosition(Point.of(9.99, 0, 12.4)) : s))
                .build();
        CriterionResult r = check("jp-span", floored);
        CapacityCheck span = of(r, "spanForHeight").get(0);
        assertThat(span.capacity()).isEqualTo(40.0 / 11 * (height - 4), within(1e-9));
        assertThat(span.capacity()).isCloseTo(allowed, within(1.0));
        assertThat(span.demand()).isEqualTo(9.99, within(1e-9));
        assertThat(span.status()).isEqualTo(status);
        assertThat(r.status()).isEqualTo(status);
    }

    @Test
    void aFloorThatIsNotGivenOrTooLowLeavesNoSpan() {
        CriterionResult open = check("jp-span", design(1));
        assertThat(of(open, "spanForHeight").get(0).reason())
                .contains("the elevation of the working floor that carries the posts is not given");
        LifelineDesign low = design(1).toBuilder().workingFloor(7.9).build();
        assertThat(of(check("jp-span", low), "spanForHeight").get(0).ratio()).isInfinite();
        LifelineDesign free = design(1).toBuilder()
                .workingFloor(10.9)
                .clearance(design(1).clearance().withObstructions(List.of()))
                .build();
        assertThat(of(check("jp-span", free), "spanForHeight").get(0).reason())
                .contains("no obstruction is given below it");
        assertThatThrownBy(() -> design(1).toBuilder().workingFloor(Double.NaN).build())
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("workingFloor");
    }

    /** Leaflet of 2010: the line turns by at most 15° at an intermediate anchorage; a corner in plan is a turn. */
    @ParameterizedTest
    @CsvSource({"14.9, 0, MET", "15.1, 0, NOT_MET", "90, 0, NOT_MET", "0, 14.9, MET", "0, 15.1, NOT_MET"})
    void theLineTurnsAtAnAnchor(double plan, double elevation, Status status) {
        double a = Math.toRadians(plan);
        double e = Math.toRadians(elevation);
        LifelineDesign d = design(2);
        Lifeline turned = d.line()
                .withSupports(s -> s.id().equals("south")
                        ? s.withPosition(Point.of(
                                12 + 12 * Math.cos(a) * Math.cos(e),
                                12 * Math.sin(a) * Math.cos(e),
                                12.4 + 12 * Math.sin(e)))
                        : s);
        CapacityCheck turn = of(check("nz-sag", d.withLine(turned)), "lineTurn").get(0);
        assertThat(Math.toDegrees(turn.demand())).isEqualTo(Math.max(plan, elevation), within(1e-6));
        assertThat(turn.component()).isEqualTo("post 1");
        assertThat(turn.status()).isEqualTo(status);
    }

    /** CEN/TS 16415: at any point along its length. A slack level span is steep at its ends though its chord is level. */
    @Test
    void theSlopeOfASlackLineIsThatAtItsEnds() {
        LifelineDesign d = design(1);
        for (double sag : new double[] {0.78, 0.83}) {
            LifelineDesign slack = d.withLine(d.line().withInstalled(Installed.initialSag(1, sag)));
            CriterionResult r = check("eu-slope", slack);
            // Parabola of sag f over the span L: slope 4 f/L at the ends; the catenary is steeper by less than 2 %.
            double parabola = Math.atan(4 * sag / 12);
            assertThat(r.demand()).isBetween(parabola, 1.02 * parabola);
            assertThat(r.isMet()).as("sag %s", sag).isEqualTo(sag < 0.8);
            assertThat(of(r, "lineSlope")).hasSize(1);
        }
    }

    /** 29 CFR 1926.502(d)(15), each anchorage by itself: one by its strength, the other by the factor of 2. */
    @Test
    void eachAnchorMeetsOneAlternativeByItself() {
        LifelineDesign d = design(1);
        double load = analyse(d).onSupport("north").orElseThrow().value();
        LifelineDesign mixed = d.withLine(d.line()
                .withSupports(s -> s.withCapacity(s.id().equals("north") ? Units.poundsForce(5000) : 2.001 * load)));
        double south = analyse(mixed).onSupport("south").orElseThrow().value();
        assertThat(Units.poundsForce(5000)).as("north is below twice its load").isLessThan(2 * load);
        for (String id : List.of("us-osha-anchorage", "ab-anchor", "qc-anchor")) {
            CriterionResult r = check(id, mixed);
            assertThat(r.isMet()).as(id).isTrue();
            assertThat(r.comparisons()).as(id).hasSize(4);
        }
        LifelineDesign weak = d.withLine(d.line()
                .withSupports(s -> s.withCapacity(
                        s.id().equals("north") ? Units.poundsForce(5000) : Math.min(1.99 * south, 15_900))));
        CriterionResult r = check("us-osha-anchorage", weak);
        assertThat(r.status()).isEqualTo(Status.NOT_MET);
        assertThat(r.check().deciding()).extracting(CapacityCheck::status).containsExactly(Status.MET, Status.NOT_MET);
        assertThat(check("qc-anchor", weak).status()).isEqualTo(Status.NOT_MET);
    }

    /** S-2.1, r. 4, s. 2.10.15: 18 kN; M.R. 128/2019, s. 14.14: 22.2 kN for each worker. */
    @ParameterizedTest
    @CsvSource({
        "qc-anchor, 18000, 1, MET",
        "qc-anchor, 17999, 1, NOT_MET",
        "mb-anchor, 22200, 1, MET",
        "mb-anchor, 22199, 1, NOT_MET",
        "mb-anchor, 44400, 2, MET",
        "mb-anchor, 44399, 2, NOT_MET",
        "ab-anchor, 16000, 1, MET",
        "ab-anchor, 15999, 1, NOT_MET",
        "us-osha-anchorage, 22240, 1, NOT_MET",
        "us-osha-anchorage, 22242, 1, MET"
    })
    void capacitiesAtTheLimit(String id, double capacity, int workers, Status status) {
        LifelineDesign d = design(1);
        LifelineDesign.Builder b = d.withLine(d.line().withSupports(s -> s.withCapacity(capacity))).toBuilder()
                .modelFactors(new org.lifeline.model.ModelFactors(3, 1));
        for (int i = 1; i < workers; i++) {
            b.worker(Designs.worker("W" + i, Attachment.GRIPPED));
        }
        assertThat(check(id, b.build()).status()).isEqualTo(status);
    }

    /** 29 CFR 1926.502(d)(16), note: less than 310 lb, a condition of the values and not a limit. */
    @Test
    void heavierThanTheConditionIsNotEvaluatedAndSaysWhy() {
        LifelineDesign d = design(1);
        double condition = Units.pounds(310);
        CriterionResult lighter = check("us-osha-mass", d.withWorkers(w -> w.withMass(condition - 0.01)));
        assertThat(lighter.isMet()).isTrue();
        assertThat(lighter.demand()).isEqualTo(condition - 0.01, within(1e-9));
        for (double mass : new double[] {condition, condition + 10}) {
            CriterionResult r = check("us-osha-mass", d.withWorkers(w -> w.withMass(mass)));
            assertThat(r.status()).isEqualTo(Status.NOT_EVALUATED);
            assertThat(r.reason()).contains("310 lb", "other proof");
            assertThat(r.ratio()).isNaN();
            assertThat(r.toString()).contains("NOT EVALUATED");
        }
        assertThat(lighter.criterion().limits())
                .containsExactly(new Limit("workerMass", LimitType.BELOW, condition, "kg"));
    }

    /** 29 CFR 1926.502(d)(16)(v): the arrest of twice the energy computed here a second time. */
    @Test
    void strengthForTwiceTheImpactEnergy() {
        // 340 kg on this absorber bottom out; the harness stands below the line, so that the free fall is below 6 ft.
        LifelineDesign d = design(2)
                .withWorkers(
                        w -> w.toBuilder(w.id()).mass(170).walkingLevel(10.5).build());
        Extremes e = analyse(d);
        CriterionResult r = Criteria.of("us-osha-impact").orElseThrow().check(e);
        assertThat(r.comparisons())
                .extracting(CapacityCheck::component)
                .containsExactly("cable", "north", "post 1", "south");
        Extreme tension = e.of(Quantity.MAXIMUM_TENSION).orElseThrow();
        double tensionOfTwice = 0;
        double northOfTwice = 0;
        for (DeploymentForce side : DeploymentForce.values()) {
            ArrestResult twice = EnergyBalance.withDefaults()
                    .withTemperature(15)
                    .withSide(side)
                    .withClearance(d.clearance())
                    .solve(d.line(), d.falls().get(0).withWorkers(w -> w.withMass(340)));
            tensionOfTwice = Math.max(tensionOfTwice, twice.maximumTension());
            northOfTwice = Math.max(northOfTwice, twice.anchorLoad("north"));
        }
        assertThat(tensionOfTwice).isGreaterThan(1.05 * tension.value());
        assertThat(r.comparisons().get(0).demand()).isEqualTo(tensionOfTwice, within(1e-6));
        assertThat(r.comparisons().get(0).capacity()).isEqualTo(0.9 * 90.7e3, within(1e-6));
        assertThat(r.comparisons().get(1).demand()).isEqualTo(northOfTwice, within(1e-6));
        assertThat(r.comparisons().get(1).governing()).isPresent();
        LifelineDesign factored = d.toBuilder()
                .modelFactors(new org.lifeline.model.ModelFactors(1.25, 1))
                .build();
        assertThat(check("us-osha-impact", factored).comparisons().get(0).demand())
                .isEqualTo(1.25 * tensionOfTwice, within(1e-6));
    }

    /** Of a free fall longer than 6 ft the rule asks for 6 ft only; no strength, no check. */
    @Test
    void theImpactEnergyIsThatOfSixFeetAtMost() {
        LifelineDesign d = design(1);
        Fall far = Fall.builder("far")
                .at(Place.of(1, 6))
                .faller(d.workers().get(0))
                .freeFall(3)
                .build();
        Fall six = Fall.builder("six")
                .at(Place.of(1, 6))
                .faller(d.workers().get(0))
                .freeFall(Units.feet(6))
                .build();
        assertThat(check("us-osha-impact", d.withFalls(List.of(far)))
                        .comparisons()
                        .get(0)
                        .demand())
                .isEqualTo(
                        check("us-osha-impact", d.withFalls(List.of(six)))
                                .comparisons()
                                .get(0)
                                .demand(),
                        within(1e-6));
        Lifeline bare = Lifeline.builder()
                .cable(org.lifeline.model.cable.Cable.builder()
                        .massPerLength(0.576)
                        .axialStiffness(4.9e6)
                        .build())
                .support(org.lifeline.model.Support.end("a", Point.of(0, 0, 12.4)))
                .support(org.lifeline.model.Support.end("b", Point.of(12, 0, 12.4)))
                .pretension(1500)
                .build();
        assertThat(check("us-osha-impact", d.withLine(bare)).reason())
                .contains("cable: its minimum breaking strength is not given", "a: its capacity is not given");
    }

    /** What falls is what is judged: users, those who share a span, masses, capacity for each worker. */
    @Test
    void allWhoUseTheLineAreCounted() {
        LifelineDesign d = design(3);
        Worker b = Designs.worker("B", Attachment.GRIPPED).withMass(135);
        Worker c = Designs.worker("C", Attachment.GRIPPED);
        LifelineDesign three = d.toBuilder().worker(b).worker(c).build();
        CriterionResult users = check("iso-users", three);
        assertThat(users.demand()).isEqualTo(3);
        assertThat(users.isMet()).isTrue();
        assertThat(check(
                                "iso-users",
                                three.toBuilder()
                                        .worker(Designs.worker("D", Attachment.GRIPPED))
                                        .build())
                        .isMet())
                .isFalse();
        assertThat(of(check("jp-span", three), "workersInOneSpan").get(0).demand())
                .as("nothing keeps three workers from one of the three spans")
                .isEqualTo(3);
        assertThat(check("us-osha-mass", three).demand()).isEqualTo(135);
        assertThat(check("mb-anchor", three).demand()).isEqualTo(3 * 22_200.0, within(1e-6));
        CriterionResult classes = check("ab-absorber-classes", three);
        assertThat(classes.comparisons()).extracting(CapacityCheck::component).contains("A", "B", "C");
    }

    /** Arrests that were computed for somebody else than the workers of the design are judged by who fell in them. */
    @Test
    void whoFellInTheArrestsIsJudged() {
        LifelineDesign d = design(1);
        Worker heavy = Designs.worker("A", Attachment.GRIPPED).withMass(300);
        Fall.Builder four = Fall.builder("four").at(Place.of(1, 6)).faller(heavy);
        for (String id : List.of("B", "C", "D")) {
            four.faller(Designs.worker(id, Attachment.GRIPPED));
        }
        ArrestResult arrest = EnergyBalance.withDefaults().withTemperature(15).solve(d.line(), four.build());
        Extremes e = Extremes.of(d, List.of(arrest));
        assertThat(Criteria.of("us-osha-mass").orElseThrow().check(e).status()).isEqualTo(Status.NOT_EVALUATED);
        assertThat(Criteria.of("iso-users").orElseThrow().check(e).demand()).isEqualTo(4);
        assertThat(Criteria.of("iso-users").orElseThrow().check(e).isMet()).isFalse();
        assertThat(Criteria.of("mb-anchor").orElseThrow().check(e).demand()).isEqualTo(4 * 22_200.0, within(1e-6));
        assertThat(Criteria.of("ab-absorber-classes").orElseThrow().check(e).status())
                .isEqualTo(Status.NOT_MET);
    }

    @Test
    void generalIndustryIsRecalledAndInNoSet() {
        Criterion c = Criteria.of("us-osha-general-industry").orElseThrow();
        assertThat(c.source().kind()).isEqualTo(SourceKind.RECALLED);
        assertThat(Criteria.in(Jurisdiction.UNITED_STATES)).doesNotContain(c).isNotEmpty();
        assertThat(c.limits())
                .extracting(Limit::quantity)
                .containsExactly(
                        "strengthFactor",
                        "anchorCapacity",
                        "anchorStrengthFactor",
                        "arrestForce",
                        "deployment",
                        "freeFall");
        CriterionResult r = c.check(analyse(design(1)));
        assertThat(r.comparisons()).hasSize(3 + 4 + 3);
        assertThat(r.ratio()).isPositive();
    }

    /** Every value names who, what, when and where, or says that it is recalled or common practice. */
    @Test
    void everyValueNamesItsSource() {
        List<Source> sources = java.util.stream.Stream.concat(
                        Criteria.builtIn().stream().map(Criterion::source),
                        ReferenceValue.all().stream().map(ReferenceValue::source))
                .toList();
        assertThat(sources).hasSizeGreaterThan(30);
        for (Source s : sources) {
            if (s.kind() == SourceKind.PUBLISHED) {
                assertThat(List.of(
                                s.body(),
                                s.work().title(),
                                s.work().year(),
                                s.work().place()))
                        .as(s.citation())
                        .noneMatch(String::isBlank);
                assertThat(s.citation())
                        .contains(
                                s.body(),
                                s.work().title(),
                                s.work().year(),
                                s.work().place());
                assertThat(s.citation().toLowerCase(Locale.ROOT)).doesNotContain("common practice");
            } else {
                assertThat(s.kind()).isIn(SourceKind.RECALLED, SourceKind.COMMON_PRACTICE);
            }
        }
        assertThatThrownBy(() -> new Source(
                        "", new Source.Work("a leaflet", " ", ""), Jurisdiction.PRACTICE, SourceKind.PUBLISHED))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("body")
                .hasMessageContaining("year")
                .hasMessageContaining("place");
        assertThat(Source.stated("client 7.2").citation()).isEqualTo("client 7.2");
        assertThat(Source.commonPractice().citation()).isEqualTo("common practice, no source");
        assertThat(Criteria.of("ab-anchor").orElseThrow().source().citation()).endsWith("s. 152");
        assertThat(Criteria.of("nz-sag").orElseThrow().source().citation())
                .contains("AS/NZS 1891.2", "the leaflet, not the standard, was read");
    }
}
