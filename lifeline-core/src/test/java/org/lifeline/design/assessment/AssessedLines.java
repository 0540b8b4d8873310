package org.lifeline.design.assessment;

import static org.lifeline.base.Units.kN;

import java.util.List;
import org.lifeline.base.Point;
import org.lifeline.design.envelope.Designs;
import org.lifeline.model.Attachment;
import org.lifeline.model.ClearanceRules;
import org.lifeline.model.Fall;
import org.lifeline.model.InlineAbsorber;
import org.lifeline.model.Lifeline;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Obstruction;
import org.lifeline.model.Passage;
import org.lifeline.model.Place;
import org.lifeline.model.Support;
import org.lifeline.model.Worker;
import org.lifeline.model.absorber.LoadingCurve;

/** Invented lines for the tests of assessments, one temperature each. */
final class AssessedLines {
    private AssessedLines() {}

    /** A single span; four spans that the cable passes freely; three rough ones with an in-line absorber. */
    static LifelineDesign of(String name) {
        return switch (name) {
            case "single" -> design(line(1, Passage.free(), false), Attachment.FREE_RUNNING);
            case "four free" -> design(line(4, Passage.free(), false), Attachment.FREE_RUNNING);
            case "three rough" -> design(line(3, Passage.friction(0.2), true), Attachment.FREE_RUNNING);
            default -> throw new IllegalArgumentException(name);
        };
    }

    private static Lifeline line(int spans, Passage passage, boolean absorber) {
        Support end = Support.end("south", Point.of(10 * spans, 0, 12.4)).withCapacity(kN(45));
        Lifeline.Builder b = Lifeline.builder()
                .cable(Designs.cable())
                .support(Support.end("north", Point.of(0, 0, 12.4)).withCapacity(kN(45)));
        for (int i = 1; i < spans; i++) {
            b.support(Support.intermediate("post " + i, Point.of(10 * i, 0, 12.4), passage)
                    .withCapacity(kN(16)));
        }
        return b.support(absorber ? end.withInlineAbsorber(absorber()) : end)
                .pretension(1500)
                .build();
    }

    private static InlineAbsorber absorber() {
        return InlineAbsorber.of(LoadingCurve.through(
                List.of(new LoadingCurve.Corner(0, 9000), new LoadingCurve.Corner(0.8, 9000)), 8e6, 2.2e5));
    }

    private static LifelineDesign design(Lifeline line, Attachment attachment) {
        Worker worker = Designs.worker("A", attachment);
        return LifelineDesign.builder("assessed line")
                .line(line)
                .worker(worker)
                .fall(Fall.builder("stated").at(Place.of(1, 3)).faller(worker).build())
                .clearance(ClearanceRules.commonPractice().withObstructions(List.of(new Obstruction(0, 100, 4))))
                .build();
    }
}
