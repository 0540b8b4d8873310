package org.lifeline.design.handover;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.lifeline.base.Interval;
import org.lifeline.design.assessment.Assessment;
import org.lifeline.design.assessment.AssessmentResult;
import org.lifeline.design.assessment.Basis;
import org.lifeline.design.criteria.CheckedQuantity;
import org.lifeline.design.criteria.Criterion;
import org.lifeline.design.criteria.Status;
import org.lifeline.design.envelope.Designs;
import org.lifeline.design.envelope.Quantity;
import org.lifeline.design.envelope.Tolerances;
import org.lifeline.model.Attachment;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Passage;

/**
 * The number of workers that is handed over holds over the ranges of the assessment: where one worker alone breaks a criterion at an end of a
 * range, nobody may be on the line. The ranges were left out of the search for the number.
 */
class NumberOfWorkersWithTolerancesTest {
    private static final LifelineDesign DESIGN =
            Designs.design(1, Passage.free(), Attachment.GRIPPED).withTemperatures(List.of(15.0));

    private static AssessmentResult assessed(Tolerances ranges, double limit) {
        return Assessment.withDefaults()
                .withCriteria(List.of(
                        Criterion.stated("anchors", CheckedQuantity.of(Quantity.END_ANCHOR_LOAD), limit, "brief 1")))
                .withTolerances(ranges)
                .withBasis(Basis.ENERGY_BALANCE)
                .withoutMotion()
                .solve(DESIGN);
    }

    private static int users(AssessmentResult assessment) {
        return Handover.of(HandoverRequest.nothing().withNumberOfWorkers())
                .solve(assessment)
                .dataSheet()
                .users()
                .orElseThrow();
    }

    @Test
    void aWorkerWhoBreaksACriterionAtAnEndOfTheRangeIsNotPermitted() {
        Tolerances tighter = Tolerances.none().withPretension(Interval.of(0.5, 4));
        double designed = assessed(Tolerances.none(), 1e6)
                .governing("endAnchorLoad")
                .orElseThrow()
                .factored();
        double tight =
                assessed(tighter, 1e6).governing("endAnchorLoad").orElseThrow().factored();
        assertThat(tight).isGreaterThan(1.02 * designed);
        double limit = 0.5 * (designed + tight);
        AssessmentResult met = assessed(Tolerances.none(), limit);
        AssessmentResult broken = assessed(tighter, limit);
        assertThat(met.criteria().get(0).result().status()).isEqualTo(Status.MET);
        assertThat(broken.criteria().get(0).result().status()).isEqualTo(Status.NOT_MET);
        assertThat(users(met)).isEqualTo(1);
        assertThat(users(broken)).isZero();
    }
}
