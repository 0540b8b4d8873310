package org.lifeline.design.handover;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.concurrent.CancellationException;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.EnergyBalance;
import org.lifeline.analysis.TransientArrest;
import org.lifeline.analysis.explain.Explanations;
import org.lifeline.base.Interval;
import org.lifeline.base.UnitSystem;
import org.lifeline.design.assessment.Assessment;
import org.lifeline.design.assessment.AssessmentResult;
import org.lifeline.design.clearance.ClearanceAlongLine;
import org.lifeline.design.criteria.Criteria;
import org.lifeline.design.criteria.Criterion;
import org.lifeline.design.envelope.Designs;
import org.lifeline.design.installation.InstallationPlan;
import org.lifeline.design.installation.InstallationRequest;
import org.lifeline.design.occupancy.Occupancy;
import org.lifeline.design.structure.SupportLoads;
import org.lifeline.model.Attachment;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Passage;
import org.lifeline.report.CalculationReport;
import org.lifeline.verify.Verifier;

/** An assessment that is interrupted keeps what is complete and says so; checks, calculations, reports and parts to hand over, which mean all of it, have no result. */
@Timeout(120)
class LongCallsEndTest {
    private static final List<Criterion> CRITERIA =
            List.of(Criteria.of("us-osha-hll-factor").orElseThrow());

    private static LifelineDesign design() {
        return Designs.fallInTheMiddle(
                Designs.design(2, Passage.free(), Attachment.FREE_RUNNING).withTemperatures(List.of(15.0)));
    }

    @AfterEach
    void clear() {
        Thread.interrupted();
    }

    @Test
    void anAssessmentKeepsWhatIsComplete() {
        AssessmentResult r = Assessment.withDefaults()
                .withCriteria(CRITERIA)
                .withProgress((done, total) -> {
                    if (done == 3) {
                        Thread.currentThread().interrupt();
                    }
                    return true;
                })
                .solve(design());

        assertThat(Thread.interrupted()).isTrue();
        assertThat(r.isComplete()).isFalse();
        assertThat(r.notComputed()).anyMatch(n -> n.why().contains("ended early"));
    }

    @Test
    void whatMeansAllOfItHasNoResult() {
        LifelineDesign design = design();
        AssessmentResult assessment =
                Assessment.withDefaults().withCriteria(CRITERIA).withoutMotion().solve(design);
        ArrestResult arrest =
                EnergyBalance.withDefaults().solve(design.line(), design.falls().get(0));
        List<Runnable> calls = List.of(
                () -> Occupancy.meeting(CRITERIA).solve(design),
                () -> ClearanceAlongLine.withDefaults().solve(assessment),
                () -> SupportLoads.withDefaults().solve(assessment),
                () -> InstallationPlan.of(InstallationRequest.between(Interval.of(-5, 30)))
                        .solve(design),
                () -> TransientArrest.withDefaults()
                        .solve(design.line(), design.falls().get(0)),
                () -> Verifier.withDefaults().arrest(arrest),
                () -> Explanations.of(arrest, UnitSystem.SI),
                () -> CalculationReport.of(design, List.of(arrest)).build());
        for (int i = 0; i < calls.size(); i++) {
            Thread.currentThread().interrupt();
            assertThatThrownBy(calls.get(i)::run).as("call %d", i).isInstanceOf(CancellationException.class);
            assertThat(Thread.interrupted()).as("call %d", i).isTrue();
        }
    }
}
