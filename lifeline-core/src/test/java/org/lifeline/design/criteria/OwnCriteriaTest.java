package org.lifeline.design.criteria;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.lifeline.design.criteria.MiddleFall.analyse;
import static org.lifeline.design.criteria.MiddleFall.check;
import static org.lifeline.design.criteria.MiddleFall.design;

import org.junit.jupiter.api.Test;
import org.lifeline.base.Interval;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.Point;
import org.lifeline.design.envelope.Envelope;
import org.lifeline.design.envelope.Extremes;
import org.lifeline.design.envelope.Quantity;
import org.lifeline.design.envelope.Tolerances;
import org.lifeline.model.ClearanceRules;
import org.lifeline.model.Fall;
import org.lifeline.model.Lifeline;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.ModelFactors;
import org.lifeline.model.Place;
import org.lifeline.model.Support;
import org.lifeline.model.Worker;

/** Criteria of a firm's own, and what a check says: in words, of alternatives, of what is missing. */
class OwnCriteriaTest {
    @Test
    void clearanceIsRequiredAgainstAvailableBelowTheLine() {
        LifelineDesign d = design(1);
        Extremes e = analyse(d);
        double margin = e.of(Quantity.CLEARANCE_MARGIN).orElseThrow().value();
        double required = Quantity.REQUIRED_BELOW_LINE.value(
                e.of(Quantity.CLEARANCE_MARGIN).orElseThrow().arrest(), ModelFactors.none());
        CriterionResult r = Criterion.stated("own", CheckedQuantity.of(Quantity.CLEARANCE_MARGIN), 0.25, "client 7.2")
                .check(e);
        assertThat(r.demand()).isEqualTo(required + 0.25, within(1e-12));
        assertThat(r.capacity()).isEqualTo(required + margin, within(1e-12));
        assertThat(r.isMet()).isEqualTo(margin >= 0.25);
        LifelineDesign none =
                d.toBuilder().clearance(ClearanceRules.commonPractice()).build();
        assertThat(Criterion.stated("own", CheckedQuantity.of(Quantity.CLEARANCE_MARGIN), 0, "client 7.2")
                        .check(analyse(none))
                        .reason())
                .isEqualTo("no obstruction is given");
    }

    @Test
    void modelFactorsStandInForcesAndDistances() {
        LifelineDesign d = design(1);
        LifelineDesign scaled =
                d.toBuilder().modelFactors(new ModelFactors(1.17, 1.1)).build();
        Extremes plain = analyse(d);
        Extremes e = analyse(scaled);
        for (Quantity q : Quantity.values()) {
            if (q.isForce() && plain.of(q).isPresent()) {
                assertThat(e.of(q).orElseThrow().value())
                        .as(q.key())
                        .isEqualTo(1.17 * plain.of(q).orElseThrow().value(), within(1e-6));
            }
        }
        assertThat(e.of(Quantity.DEPLOYMENT).orElseThrow().value())
                .isEqualTo(1.1 * plain.of(Quantity.DEPLOYMENT).orElseThrow().value(), within(1e-12));
        assertThat(e.of(Quantity.FREE_FALL).orElseThrow().value())
                .isEqualTo(plain.of(Quantity.FREE_FALL).orElseThrow().value(), within(1e-12));
        var worst = plain.of(Quantity.TOTAL_FALL_DISTANCE).orElseThrow();
        assertThat(e.of(Quantity.TOTAL_FALL_DISTANCE).orElseThrow().value())
                .isEqualTo(
                        worst.value()
                                + 0.1
                                        * (worst.arrest().deployment()
                                                + worst.arrest().lineDescent()),
                        within(1e-12));
        CriterionResult own = Criterion.stated("own", CheckedQuantity.of(Quantity.END_ANCHOR_LOAD), 30e3, "client 7.2")
                .check(e);
        assertThat(own.demand())
                .isEqualTo(
                        1.17 * plain.of(Quantity.END_ANCHOR_LOAD).orElseThrow().value(), within(1e-6));
    }

    @Test
    void aRangeOfMassesIsCheckedAtItsHeavyEnd() {
        LifelineDesign d = design(1);
        Extremes e = Envelope.withDefaults()
                .withTolerances(Tolerances.none().withMass(Interval.of(60, 150)))
                .solve(d)
                .extremes();
        CriterionResult r = Criteria.of("us-osha-mass").orElseThrow().check(e);
        assertThat(r.status()).as("150 kg is beyond the condition of 310 lb").isEqualTo(Status.NOT_EVALUATED);
        CriterionResult own =
                Criterion.stated("own", CheckedQuantity.WORKER_MASS, 150, "x").check(e);
        assertThat(own.demand()).isEqualTo(150);
        assertThat(own.status()).as("a mass stays below its limit").isEqualTo(Status.NOT_MET);
        CriterionResult classes =
                Criteria.of("ab-absorber-classes").orElseThrow().check(e);
        assertThat(classes.status()).as("60 kg fits E4 only, 150 kg E6 only").isEqualTo(Status.NOT_MET);
    }

    @Test
    void slopeOfASpan() {
        LifelineDesign d = design(1);
        for (double degrees : new double[] {14.9, 15.1}) {
            double rise = 12 * Math.tan(Math.toRadians(degrees));
            Lifeline steep = d.line()
                    .withSupports(s -> s.id().equals("south") ? s.withPosition(Point.of(12, 0, 12.4 + rise)) : s);
            CriterionResult r = check("eu-slope", d.withLine(steep));
            CriterionResult own = Criterion.composed(
                            "chord", Requirement.limit(CheckedQuantity.CHORD_ANGLE, Math.toRadians(15)), "x")
                    .check(analyse(d.withLine(steep)));
            assertThat(own.isMet()).isEqualTo(degrees < 15);
            assertThat(Math.toDegrees(own.demand())).isEqualTo(degrees, within(1e-9));
            assertThat(r.demand()).as("the cable is steeper than its chord").isGreaterThan(own.demand());
            assertThat(r.isMet()).isFalse();
        }
    }

    @Test
    void ownLimitOnOneSupport() {
        LifelineDesign d = design(2);
        Extremes e = analyse(d);
        CriterionResult r = Criterion.stated("post", CheckedQuantity.loadOnSupport("post 1"), 12e3, "client 7.3")
                .check(e);
        assertThat(r.demand()).isEqualTo(e.onSupport("post 1").orElseThrow().value());
        assertThat(Criterion.stated("post", CheckedQuantity.loadOnSupport("nowhere"), 12e3, "x")
                        .check(e)
                        .reason())
                .contains("no support has this id");
    }

    @Test
    void badOwnCriteriaAreRefused() {
        assertThatThrownBy(() -> Criterion.stated(" ", CheckedQuantity.WORKERS, 1, "x"))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("id");
        assertThatThrownBy(() -> Criterion.stated("a", CheckedQuantity.WORKERS, -1, "x"))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("capacity");
        assertThatThrownBy(() -> CheckedQuantity.of(Quantity.REQUIRED_ELEVATION))
                .isInstanceOf(IllegalArgumentException.class);
        assertThat(CheckedQuantity.ofKey("nothing")).isEmpty();
        assertThat(CheckedQuantity.all())
                .extracting(CheckedQuantity::key)
                .doesNotHaveDuplicates()
                .contains("strengthFactor", "sag");
    }

    @Test
    void casesThatFailedLeaveACriterionOpen() {
        LifelineDesign d = design(1);
        Worker first = d.workers().get(0);
        Worker low = first.toBuilder("out of reach")
                .walkingLevel(first.walkingLevel() - 5)
                .build();
        LifelineDesign odd = d.toBuilder()
                .worker(low)
                .fall(Fall.builder("impossible").at(Place.of(1, 3)).faller(low).build())
                .build();
        Extremes e = analyse(odd);
        assertThat(e.failures()).isNotEmpty();
        CriterionResult r = Criterion.stated("own", CheckedQuantity.of(Quantity.FREE_FALL), 100, "x")
                .check(e);
        assertThat(r.status()).isEqualTo(Status.NOT_EVALUATED);
        assertThat(r.reason()).contains("not every case");
    }

    @Test
    void aFactMayBeCitedAndIsNotEvaluated() {
        CriterionResult r = check("us-osha-sag-angle", design(1));
        assertThat(r.status()).isEqualTo(Status.NOT_EVALUATED);
        assertThat(r.reason()).isEqualTo("it is a fact of the trade, not a limit");
        assertThat(r.criterion().limits()).isEmpty();
        assertThat(Criteria.ids()).contains("us-osha-maf", "us-osha-sag-angle").doesNotHaveDuplicates();
        assertThat(Criteria.ids()).allSatisfy(id -> assertThat(Criteria.of(id)).isPresent());
        assertThat(Criteria.of("nothing")).isEmpty();
    }

    @Test
    void ofAlternativesTheOneThatIsMetBestDecides() {
        LifelineDesign d = design(1);
        CriterionResult r = check("us-osha-anchorage", d);
        assertThat(r.check().isOfAlternatives()).as("each anchor by itself").isFalse();
        assertThat(r.check().parts()).hasSize(2).allMatch(c -> c.isOfAlternatives());
        assertThat(r.comparisons()).hasSize(4);
        assertThat(r.check().deciding()).hasSize(2).allMatch(c -> c.status() == Status.MET);
        assertThat(check("us-osha-free-fall", d).check().deciding())
                .extracting(CapacityCheck::quantityKey)
                .containsExactly("freeFall", "freeHeight");
    }

    @Test
    void comparisonsAreInWords() {
        assertThat(check("us-osha-hll-factor", design(1)).comparisons())
                .extracting(CapacityCheck::title)
                .containsExactly(
                        "2 × largest load against strength, cable",
                        "2 × largest load against strength, north",
                        "2 × largest load against strength, south");
        assertThat(check("us-osha-maf", design(1)).comparisons().get(0).title())
                .isEqualTo("maximum arrest force against limit");
        assertThat(check("clearance-margin", design(1)).comparisons().get(0).title())
                .isEqualTo("least stated margin wanted against what is there");
    }

    @Test
    void supportsWithoutCapacity() {
        LifelineDesign d = design(1);
        Lifeline bare = Lifeline.builder()
                .cable(d.line().cable())
                .support(Support.end("a", Point.of(0, 0, 12.4)))
                .support(Support.end("b", Point.of(12, 0, 12.4)))
                .pretension(1500)
                .build();
        assertThat(check("anchor-arrest-16kN", d.withLine(bare)).reason())
                .contains("a: its capacity is not given", "b: its capacity is not given");
    }
}
