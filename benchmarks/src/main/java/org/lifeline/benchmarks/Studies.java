package org.lifeline.benchmarks;

import java.util.List;
import org.lifeline.base.Interval;
import org.lifeline.design.envelope.Quantity;
import org.lifeline.design.study.Distribution;
import org.lifeline.design.study.Evaluation;
import org.lifeline.design.study.UncertainVariable;
import org.lifeline.design.variable.DesignVariables;
import org.lifeline.model.Attachment;
import org.lifeline.model.ClearanceRules;
import org.lifeline.model.Fall;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Obstruction;
import org.lifeline.model.Place;
import org.lifeline.model.Worker;
import org.lifeline.model.absorber.DeploymentForce;

/** The designs that the benchmarks of envelopes and studies work on. */
final class Studies {
    private static final Interval ANY = Interval.of(1, 1e7);

    private Studies() {}

    static LifelineDesign fiveSpans(boolean rough, boolean gripped) {
        return LifelineDesign.builder("five spans")
                .line(Lines.spans(5, rough))
                .temperature(-30)
                .temperature(15)
                .temperature(40)
                .worker(worker(gripped))
                .clearance(ClearanceRules.commonPractice().withObstructions(List.of(new Obstruction(0, 100, 2))))
                .build();
    }

    private static Worker worker(boolean gripped) {
        return Worker.builder("A")
                .mass(100)
                .walkingLevel(8.5)
                .attachment(gripped ? Attachment.GRIPPED : Attachment.FREE_RUNNING)
                .connection(Lines.absorber())
                .build();
    }

    static LifelineDesign singleSpan() {
        Worker worker = worker(true);
        return LifelineDesign.builder("single span")
                .line(Lines.spans(1, false))
                .worker(worker)
                .fall(Fall.builder("middle").at(Place.of(1, 6)).faller(worker).build())
                .build();
    }

    static List<UncertainVariable> uncertain() {
        return List.of(
                new UncertainVariable(DesignVariables.pretension(ANY), Distribution.logNormal(1500, 0.15)),
                new UncertainVariable(DesignVariables.axialStiffness(ANY), Distribution.normal(4.9e6, 3e5)),
                new UncertainVariable(
                        DesignVariables.workerMass(ANY), Distribution.truncatedNormal(95, 12, Interval.of(60, 140))),
                new UncertainVariable(DesignVariables.deploymentForce(ANY), Distribution.normal(5500, 350)));
    }

    static Evaluation load() {
        return Evaluation.firstFall(
                DeploymentForce.MAXIMUM, List.of(Quantity.END_ANCHOR_LOAD, Quantity.TOTAL_FALL_DISTANCE));
    }
}
