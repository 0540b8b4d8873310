package org.lifeline.design.occupancy;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.lifeline.design.occupancy.Crews.anchors;
import static org.lifeline.design.occupancy.Crews.design;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.lifeline.base.Interval;
import org.lifeline.base.InvalidInputException;
import org.lifeline.design.assessment.Assessment;
import org.lifeline.design.assessment.Basis;
import org.lifeline.design.criteria.CheckedQuantity;
import org.lifeline.design.criteria.Criterion;
import org.lifeline.design.criteria.CriterionResult;
import org.lifeline.design.envelope.Designs;
import org.lifeline.design.envelope.Envelope;
import org.lifeline.design.envelope.Quantity;
import org.lifeline.design.envelope.Tolerances;
import org.lifeline.model.LifelineDesign;

/** What holds of the number of workers whatever the numbers are; limits taken from what the analysis itself found. */
@SuppressWarnings("NullAway") // Null is handed over to be refused, and what is there is taken as there.
class OccupancyTruthsTest {
    private static Criterion clearance(double limit) {
        return Criterion.stated("clearance", CheckedQuantity.of(Quantity.REQUIRED_BELOW_LINE), limit, "brief 2");
    }

    /** Demand of a number of workers: its ratio to a limit that nothing meets. */
    private static double demand(LifelineDesign d) {
        TriedNumber one =
                Occupancy.meeting(List.of(anchors(1))).solve(d).tried().get(0);
        return one.notMet().get(0).ratio();
    }

    private static int number(LifelineDesign d, double limit) {
        return Occupancy.meeting(List.of(anchors(limit))).solve(d).inAll();
    }

    @Test
    void aLimitThatNobodyMeetsLeavesTheLineEmpty() {
        OccupancyResult r = Occupancy.meeting(List.of(anchors(1))).solve(design(1, 100, 100));
        assertThat(r.inAll()).isZero();
        assertThat(r.inSpan(1)).isZero();
        // The search ends at the first number that is not met, and does not go on over the line.
        assertThat(r.tried()).singleElement().satisfies(t -> {
            assertThat(t.number()).isEqualTo(1);
            assertThat(t.span()).isEqualTo(1);
            assertThat(t.isMet()).isFalse();
        });
    }

    /** Exactly at the limit the criterion is met, a hair below it is not. */
    @Test
    void theLimitItselfIsMet() {
        LifelineDesign d = design(1, 100, 100);
        double one = demand(d);
        assertThat(number(d, one * (1 + 1e-12))).isEqualTo(1);
        assertThat(number(d, one * (1 - 1e-9))).isZero();
    }

    @Test
    void aHigherLimitNeverAdmitsFewer() {
        LifelineDesign d = design(1, 100, 100, 100);
        double one = demand(d);
        int before = 0;
        for (double factor : new double[] {0.9, 1.01, 1.2, 1.5, 3}) {
            int n = number(d, factor * one);
            assertThat(n).as("%s times the load of one", factor).isGreaterThanOrEqualTo(before);
            before = n;
        }
        assertThat(before).as("all three").isEqualTo(3);
    }

    @Test
    void aHeavierCrewIsNeverAdmittedInLargerNumber() {
        double limit = 1.02 * demand(design(1, 100));
        int light = number(design(1, 70, 70, 70), limit);
        int middle = number(design(1, 100, 100, 100), limit);
        int heavy = number(design(1, 140, 140, 140), limit);
        assertThat(light).isGreaterThanOrEqualTo(middle);
        assertThat(middle).isGreaterThanOrEqualTo(heavy).isEqualTo(1);
        assertThat(heavy).isZero();
    }

    @Test
    void theOrderInWhichTheCrewIsStatedDoesNotMatter() {
        double limit = 1.3 * demand(design(1, 100));
        OccupancyResult a = Occupancy.meeting(List.of(anchors(limit))).solve(design(1, 60, 100, 140));
        OccupancyResult b = Occupancy.meeting(List.of(anchors(limit))).solve(design(1, 140, 60, 100));
        assertThat(a.inAll()).isEqualTo(b.inAll());
        assertThat(a.tried())
                .extracting(TriedNumber::arrangements)
                .isEqualTo(b.tried().stream().map(TriedNumber::arrangements).toList());
    }

    /** Every broken criterion is named, each once, though several arrangements break it. */
    @Test
    void everyBrokenCriterionIsNamedOnce() {
        OccupancyResult r = Occupancy.meeting(List.of(anchors(1), clearance(100), clearance(0.1)))
                .solve(design(1, 60, 100));
        // The second criterion bears the name of the third; it is met.
        assertThat(r.tried().get(0).notMet())
                .extracting(c -> c.criterion().id())
                .containsExactly("anchors", "clearance");
    }

    /** Five who differ: of the ten pairs four are tried, so six are left out; of one alone, one. */
    @Test
    void selectionsThatAreLeftOutAreCounted() {
        LifelineDesign d = design(1, 60, 70, 80, 90, 100);
        double one = demand(d);
        assertThat(Occupancy.MOST_CREWS).isEqualTo(4);
        OccupancyResult none = Occupancy.meeting(List.of(anchors(0.5 * one))).solve(d);
        assertThat(none.selectionsLeftOut()).isEqualTo(1);
        assertThat(none.tried().get(0).arrangements())
                .as("the four heaviest, each alone")
                .isEqualTo(4);
        OccupancyResult pairs =
                Occupancy.meeting(List.of(anchors(1.0001 * one))).solve(d);
        assertThat(pairs.inAll()).isEqualTo(1);
        assertThat(pairs.selectionsLeftOut()).isEqualTo(6);
    }

    /** A crew of one in two clamped spans: each takes one, the line no more than the crew. */
    @Test
    void thereAreNoMoreThanTheCrew() {
        OccupancyResult r = Occupancy.meeting(List.of(anchors(1e6))).solve(design(2, 100));
        assertThat(r.inSpan(1)).isEqualTo(1);
        assertThat(r.inSpan(2)).isEqualTo(1);
        assertThat(r.inAll()).isEqualTo(1);
        assertThat(r.tried()).hasSize(3);
    }

    /** A slacker line loads its anchors less, a tighter one more: pretensions of both may only lower the number. */
    @Test
    void tolerancesNeverRaiseTheNumber() {
        LifelineDesign d = design(1, 100, 100);
        double limit = 1.001 * demand(d);
        Envelope wide = Envelope.withDefaults().withTolerances(Tolerances.none().withPretension(Interval.of(0.8, 1.5)));
        Occupancy plain = Occupancy.meeting(List.of(anchors(limit)));
        assertThat(plain.solve(d).inAll()).isEqualTo(1);
        assertThat(plain.withEnvelope(wide).solve(d).inAll()).isZero();
    }

    /** An assessment of the same falls by the same method confirms the number, and says so. */
    @Test
    void anAssessmentByEnergyBalanceConfirmsTheNumber() {
        LifelineDesign d = design(1, 100, 100);
        double limit = 1.01 * demand(d);
        Assessment balance =
                Assessment.withDefaults().withBasis(Basis.ENERGY_BALANCE).withoutMotion();
        OccupancyResult r =
                Occupancy.meeting(List.of(anchors(limit))).confirmedBy(balance).solve(d);
        assertThat(r.isConfirmed()).isTrue();
        assertThat(r.inAll()).isEqualTo(1);
        // Without arrests in time the larger of both cannot be told: then nobody is admitted.
        OccupancyResult unknown = Occupancy.meeting(List.of(anchors(limit)))
                .confirmedBy(Assessment.withDefaults().withoutMotion())
                .solve(d);
        assertThat(unknown.inSpan(1)).isEqualTo(1);
        assertThat(unknown.inAll()).isZero();
        assertThat(unknown.tried().get(unknown.tried().size() - 1).notMet())
                .extracting(CriterionResult::reason)
                .allMatch(s -> s.contains("not followed in time"));
    }

    /** A stop without stiffness is arrested by nothing at a rigid support: then nobody is admitted, and the cause is said. */
    @Test
    void whatCannotBeComputedCountsAsNotMet() {
        OccupancyResult r = Occupancy.meeting(List.of(anchors(1e9))).solve(Designs.rigidStop());
        assertThat(r.inAll()).isZero();
        assertThat(r.tried().get(0).notMet())
                .singleElement()
                .satisfies(c -> assertThat(c.reason()).contains("cases could not be computed"));
    }

    @Test
    void whatIsMissingIsNamed() {
        Occupancy o = Occupancy.meeting(List.of(anchors(1)));
        assertThatThrownBy(() -> o.solve(null))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("design");
        assertThatThrownBy(() -> o.withEnvelope(null)).isInstanceOf(InvalidInputException.class);
        assertThatThrownBy(() -> o.confirmedBy(null)).isInstanceOf(InvalidInputException.class);
        assertThatThrownBy(() -> Occupancy.meeting(List.of()))
                .hasMessage("criteria: []: must name at least one: without any, every number is met");
    }
}
