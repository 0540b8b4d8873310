package org.lifeline.design.criteria;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.lifeline.design.criteria.MiddleFall.analyse;
import static org.lifeline.design.criteria.MiddleFall.check;
import static org.lifeline.design.criteria.MiddleFall.design;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.lifeline.base.Point;
import org.lifeline.base.Units;
import org.lifeline.design.envelope.Designs;
import org.lifeline.design.envelope.Extremes;
import org.lifeline.design.envelope.Quantity;
import org.lifeline.model.Attachment;
import org.lifeline.model.ClearanceRules;
import org.lifeline.model.Fall;
import org.lifeline.model.Installed;
import org.lifeline.model.Lifeline;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Obstruction;
import org.lifeline.model.Passage;
import org.lifeline.model.Place;
import org.lifeline.model.Worker;
import org.lifeline.model.cable.Cable;

class CriteriaTest {
    @Test
    void idsAreUniqueAndEveryCriterionSaysWhereItComesFrom() {
        Set<String> ids = new HashSet<>();
        for (Criterion c : Criteria.builtIn()) {
            assertThat(ids.add(c.id())).as(c.id()).isTrue();
            assertThat(c.source().citation()).as(c.id()).isNotBlank();
            assertThat(c.title()).as(c.id()).isNotBlank();
            assertThat(c.limits()).as(c.id()).isNotEmpty();
            assertThat(c.limits())
                    .as(c.id())
                    .allSatisfy(l -> assertThat(l.value()).isFinite());
        }
        for (ReferenceValue f : ReferenceValue.all()) {
            assertThat(ids.add(f.id())).as(f.id()).isTrue();
        }
    }

    @Test
    void nothingSaysCompliant() {
        for (Criterion c : Criteria.builtIn()) {
            assertThat(c.title().toLowerCase(java.util.Locale.ROOT)).doesNotContain("complian", "complies", "conform");
            assertThat(c.check(analyse(design(1))).toString().toLowerCase(java.util.Locale.ROOT))
                    .doesNotContain("complian", "complies", "conform");
        }
    }

    @Test
    void setsHoldOneJurisdictionAndNothingRecalled() {
        assertThat(Criteria.in(Jurisdiction.UNITED_STATES))
                .extracting(Criterion::id)
                .contains("us-osha-maf");
        assertThat(Criteria.in(Jurisdiction.PRACTICE))
                .extracting(Criterion::id)
                .containsExactly("anchor-arrest-16kN", "anchor-restraint-3.5kN", "clearance-margin", "harness-stretch");
        Criterion recalled = new Criterion(
                "recalled",
                "a limit from memory",
                new Source("", new Source.Work("memory", "", ""), Jurisdiction.PRACTICE, SourceKind.RECALLED),
                Requirement.limit(CheckedQuantity.WORKERS, 1));
        assertThat(Criteria.withoutRecalled(List.of(recalled))).isEmpty();
    }

    /** 29 CFR 1926 Subpart M App. C part II: about 2:1 at 15° and about 6:1 at 5° (published). */
    @Test
    void tensionAgainstSagAngle() {
        assertThat(ReferenceValue.tensionOverLoad(Units.degrees(15))).isEqualTo(1.932, within(5e-4)); // computed
        assertThat(Math.rint(ReferenceValue.tensionOverLoad(Units.degrees(15)))).isEqualTo(2);
        assertThat(ReferenceValue.tensionOverLoad(Units.degrees(5))).isEqualTo(5.737, within(5e-4)); // computed
        assertThat(Math.rint(ReferenceValue.tensionOverLoad(Units.degrees(5)))).isEqualTo(6);
    }

    /**
     * S-2.1, r. 4, s. 2.10.15: 1 vertical to 12 horizontal, which it also calls 5°; a line of 12 m. The slope of the straight leg
     * from support to lowest point makes a sag of 6 m/12 = 0.5 m, and atan(1/12) = 4.76°, the 5° of the text.
     */
    @Test
    void twelveMetresAtOneInTwelve() {
        LifelineDesign d = design(1);
        double sag = 6.0 / 12;
        for (double factor : new double[] {0.99, 1.01}) {
            LifelineDesign changed = d.withLine(d.line()
                    .withInstalled(Installed.initialSag(1, sag * factor))
                    .withSupports(s -> s.withCapacity(90e3)));
            CriterionResult r = check("qc-hll-prescriptive", changed);
            assertThat(r.isMet()).as("sag %s", sag * factor).isEqualTo(factor > 1);
            CapacityCheck slope = r.comparisons().stream()
                    .filter(c -> c.quantityKey().equals("initialSlope"))
                    .findFirst()
                    .orElseThrow();
            assertThat(slope.ratio()).isEqualTo(1 / factor, within(1e-9));
        }
        assertThat(Math.toDegrees(Math.atan(1.0 / 12))).isEqualTo(5, within(0.5));
    }

    @Test
    void prescriptiveRuleNamesEachPartThatIsNotMet() {
        CriterionResult r = check("qc-hll-prescriptive", design(3));
        assertThat(r.status()).isEqualTo(Status.NOT_MET);
        assertThat(r.comparisons().stream().filter(c -> c.status() == Status.NOT_MET))
                .extracting(CapacityCheck::quantityKey)
                .containsExactly(
                        "initialSlope",
                        "initialSlope",
                        "initialSlope",
                        "lineLength",
                        "endAnchorCapacity",
                        "endAnchorCapacity");
    }

    /** Approval standard ch. 25 as quoted: L ≤ (40/11)(H − 4): a span of 10 m needs H = 4 + 10·11/40 = 6.75 m (published). */
    @Test
    void tenMetresNeedSixSeventyFive() {
        for (double excess : new double[] {-0.01, 0, 0.01}) {
            Worker w = Designs.worker("A", Attachment.GRIPPED);
            double height = 6.75 + excess;
            LifelineDesign d = LifelineDesign.builder("span")
                    .line(Lifeline.builder()
                            .cable(Designs.line(1, Passage.free()).cable())
                            .endAnchor("a", Point.of(0, 0, height + 1))
                            .intermediateAnchor("b", Point.of(10, 0, height + 1), Passage.clamped())
                            .endAnchor("c", Point.of(20, 0, height + 1))
                            .pretension(1500)
                            .build())
                    .worker(w)
                    .workingFloor(height)
                    .fall(Fall.builder("f").at(Place.of(1, 5)).faller(w).build())
                    .clearance(ClearanceRules.commonPractice().withObstructions(List.of(new Obstruction(0, 20, 0))))
                    .build();
            CriterionResult r = check("jp-span", d);
            assertThat(r.isMet()).as("height %s", height).isEqualTo(excess >= 0);
            CapacityCheck rule = r.comparisons().stream()
                    .filter(c -> c.quantityKey().equals("spanForHeight")
                            && c.component().equals("span 1"))
                    .findFirst()
                    .orElseThrow();
            assertThat(rule.demand()).isEqualTo(10, within(1e-12));
            assertThat(rule.capacity()).isEqualTo(40.0 / 11 * (height - 4), within(1e-12));
            assertThat(rule.unit()).isEqualTo("m");
        }
    }

    @Test
    void postsThatLetTheRopeRunAreNotFixed() {
        CriterionResult r = check("jp-span", design(2));
        assertThat(r.comparisons().stream().filter(c -> c.quantityKey().equals("fixedPosts")))
                .allMatch(c -> c.ratio() == Double.POSITIVE_INFINITY);
    }

    @Test
    void safetyFactorComparesTwiceTheLoadWithTheStrengthOfEveryPart() {
        LifelineDesign d = design(2);
        Extremes e = analyse(d);
        CriterionResult r = Criteria.of("us-osha-hll-factor").orElseThrow().check(e);
        double tension = e.of(Quantity.MAXIMUM_TENSION).orElseThrow().value();
        assertThat(r.comparisons()).hasSize(4);
        CapacityCheck cable = r.comparisons().get(0);
        assertThat(cable.demand()).isEqualTo(2 * tension, within(1e-6));
        assertThat(cable.capacity()).isEqualTo(0.9 * 90.7e3, within(1e-6));
        assertThat(cable.unit()).isEqualTo("N");
        double worst =
                r.comparisons().stream().mapToDouble(CapacityCheck::ratio).max().orElseThrow();
        assertThat(r.ratio()).isEqualTo(worst);
        assertThat(r.governing()).isPresent();
    }

    @Test
    void missingStrengthIsNotEvaluatedAndSaysSo() {
        LifelineDesign d = design(1);
        Cable bare = Cable.builder().massPerLength(0.576).axialStiffness(4.9e6).build();
        Lifeline strong = d.line().withCable(bare).withSupports(s -> s.withCapacity(90e3));
        CriterionResult r = check("us-osha-hll-factor", d.withLine(strong));
        assertThat(r.status()).isEqualTo(Status.NOT_EVALUATED);
        assertThat(r.reason()).contains("breaking strength is not given");
        assertThat(r.ratio()).as("the anchors were evaluated").isPositive();
        assertThat(check("sg-rope-factor", d.withLine(d.line().withCable(bare))).ratio())
                .isNaN();
    }

    @Test
    void aPartThatFailsFailsEvenWhenAnotherIsMissing() {
        LifelineDesign d = design(1);
        Cable bare = Cable.builder().massPerLength(0.576).axialStiffness(4.9e6).build();
        Lifeline weak = d.line().withCable(bare).withSupports(s -> s.withCapacity(10e3));
        assertThat(check("us-osha-hll-factor", d.withLine(weak)).status()).isEqualTo(Status.NOT_MET);
    }

    @Test
    void eitherAlternativeOfAnAnchorageDoes() {
        LifelineDesign d = design(1);
        CriterionResult factor = check("us-osha-anchorage", d);
        assertThat(factor.isMet()).isTrue();
        LifelineDesign weak = d.withLine(d.line().withSupports(s -> s.withCapacity(Units.poundsForce(5000))));
        CriterionResult strength = check("us-osha-anchorage", weak);
        assertThat(strength.isMet()).isTrue();
        assertThat(strength.ratio()).isEqualTo(1, within(1e-12));
        Worker second = Designs.worker("B", Attachment.GRIPPED);
        LifelineDesign two = weak.toBuilder().worker(second).build();
        assertThat(check("us-osha-anchorage", two).isMet())
                .as("10,000 lbf for two workers")
                .isFalse();
    }

    @Test
    void contactWithALowerLevelLeavesTheMarginOut() {
        LifelineDesign d = design(1);
        double margin = analyse(d).of(Quantity.CLEARANCE_MARGIN).orElseThrow().value();
        // The feet just reach the obstruction once the margin of 0.6 m is used up as well.
        double touch = 4 + margin + 0.6;
        for (double off : new double[] {-1e-3, 1e-3}) {
            LifelineDesign moved = d.toBuilder()
                    .clearance(d.clearance().withObstructions(List.of(new Obstruction(0, 12, touch + off))))
                    .build();
            CapacityCheck contact =
                    check("us-osha-free-fall", moved).comparisons().get(1);
            assertThat(contact.status()).isEqualTo(off < 0 ? Status.MET : Status.NOT_MET);
        }
    }

    @Test
    void absorberClassesTakeMassAndForce() {
        LifelineDesign d = design(1);
        assertThat(check("ab-absorber-classes", d).isMet()).isTrue();
        assertThat(check("ab-absorber-classes", d.withWorkers(w -> w.withMass(130)))
                        .isMet())
                .as("130 kg fits E6 only, 6 kN is within its 8 kN")
                .isTrue();
        assertThat(check("ab-absorber-classes", d.withWorkers(w -> w.withMass(180)))
                        .isMet())
                .isFalse();
        assertThat(check("ab-absorber-classes", d.withWorkers(w -> w.withMass(40)))
                        .isMet())
                .isFalse();
        assertThat(check(
                                "ab-absorber-classes",
                                d.withWorkers(
                                        w -> w.withConnection(w.connection().withForcesScaled(1.2))))
                        .isMet())
                .as("7.2 kN is past E4, and 100 kg within E6")
                .isTrue();
    }

    @Test
    void rulesForTwoOrThreeSpansSayNothingOfOthers() {
        assertThat(check("nz-sag", design(1)).reason()).isEqualTo("it is stated for lines of 2 to 3 spans, not of 1");
        assertThat(check("nz-sag", design(2)).status()).isEqualTo(Status.NOT_MET);
    }
}
