package org.lifeline.design.assessment;

import static org.lifeline.base.Units.kN;

import java.util.List;
import java.util.SplittableRandom;
import org.lifeline.base.Point;
import org.lifeline.design.envelope.Designs;
import org.lifeline.model.Attachment;
import org.lifeline.model.ClearanceRules;
import org.lifeline.model.Connection;
import org.lifeline.model.Fall;
import org.lifeline.model.InlineAbsorber;
import org.lifeline.model.Lifeline;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Obstruction;
import org.lifeline.model.Passage;
import org.lifeline.model.Place;
import org.lifeline.model.Stiffness;
import org.lifeline.model.Support;
import org.lifeline.model.Worker;
import org.lifeline.model.absorber.LoadingCurve;
import org.lifeline.model.cable.Cable;

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

    /**
     * Up to four spans of 5 to 14 m over posts that cable passes freely or with friction, some between ends that yield, some with
     * an in-line absorber; a lanyard with or without an absorber, in two of three gripped.
     */
    static LifelineDesign random(long seed) {
        SplittableRandom r = new SplittableRandom(seed);
        int spans = 1 + r.nextInt(4);
        Lifeline.Builder b = Lifeline.builder()
                .cable(Cable.builder()
                        .weightPerLength(r.nextDouble(3, 8))
                        .axialStiffness(r.nextDouble(2e6, 8e6))
                        .build())
                .pretension(r.nextDouble(600, 4000));
        Passage passage = r.nextBoolean() ? Passage.free() : Passage.friction(r.nextDouble(0.05, 0.3));
        boolean absorber = r.nextInt(4) == 0;
        Stiffness ends = r.nextBoolean() ? Stiffness.rigid() : Stiffness.alongX(r.nextDouble(3e5, 3e6));
        b.support(Support.end("north", Point.of(0, 0, 12)).withStiffness(ends));
        double x = 0;
        for (int i = 1; i < spans; i++) {
            x += r.nextDouble(5, 14);
            b.support(Support.intermediate("post " + i, Point.of(x, 0, 12 + r.nextDouble(-0.3, 0.3)), passage));
        }
        x += r.nextDouble(5, 14);
        Support last = Support.end("south", Point.of(x, 0, 12)).withStiffness(ends);
        b.support(absorber ? last.withInlineAbsorber(absorber()) : last);
        Connection connection = r.nextInt(4) == 0
                ? Connection.plainLanyard(2, LoadingCurve.spring(r.nextDouble(3e4, 9e4)))
                : Connection.lanyard(
                        2,
                        Connection.PersonalAbsorber.builder()
                                .clearanceForce(3200)
                                .maximumForce(6000)
                                .maximumExtension(1.2)
                                .initialStiffness(1e5)
                                .stopStiffness(2e5)
                                .build());
        Worker worker = Worker.builder("A")
                .mass(r.nextDouble(80, 130))
                .walkingLevel(10.6)
                .attachment(r.nextInt(3) > 0 ? Attachment.GRIPPED : Attachment.FREE_RUNNING)
                .connection(connection)
                .build();
        return LifelineDesign.builder("random line " + seed)
                .line(b.build())
                .worker(worker)
                .fall(Fall.builder("stated").at(Place.of(1, 3)).faller(worker).build())
                .clearance(ClearanceRules.commonPractice())
                .build();
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
