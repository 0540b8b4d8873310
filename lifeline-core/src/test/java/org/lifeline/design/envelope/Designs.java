package org.lifeline.design.envelope;

import static org.lifeline.base.Units.kN;

import java.util.List;
import org.lifeline.base.Point;
import org.lifeline.model.Attachment;
import org.lifeline.model.ClearanceRules;
import org.lifeline.model.Connection;
import org.lifeline.model.Fall;
import org.lifeline.model.Lifeline;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Obstruction;
import org.lifeline.model.Passage;
import org.lifeline.model.Place;
import org.lifeline.model.Support;
import org.lifeline.model.Worker;
import org.lifeline.model.cable.Cable;
import org.lifeline.testing.PlainParts;

/** Plain designs for tests: an invented walkway line. */
public final class Designs {
    private Designs() {}

    /** A worker of 100 kg on a 1.8 m lanyard with an absorber of 3.2 to 6 kN. */
    public static Worker worker(String id, Attachment attachment) {
        return Worker.builder(id)
                .mass(100)
                .walkingLevel(10.9)
                .attachment(attachment)
                .connection(Connection.lanyard(
                        1.8,
                        Connection.PersonalAbsorber.builder()
                                .clearanceForce(3200)
                                .maximumForce(6000)
                                .maximumExtension(1.2)
                                .initialStiffness(1e5)
                                .stopStiffness(2e5)
                                .build()))
                .build();
    }

    /** A steel rope of 12 mm, all data given. */
    public static Cable cable() {
        return Cable.builder()
                .diameter(0.012)
                .massPerLength(0.576)
                .axialStiffness(4.9e6)
                .breakingStrength(90.7e3)
                .terminationEfficiency(0.9)
                .build();
    }

    /** Level spans of 12 m at elevation 12.4 m, all data given. */
    public static Lifeline line(int spans, Passage passage) {
        Lifeline.Builder b = Lifeline.builder()
                .cable(cable())
                .support(Support.end("north", Point.of(0, 0, 12.4)).withCapacity(kN(45)));
        for (int i = 1; i < spans; i++) {
            b.support(Support.intermediate("post " + i, Point.of(12 * i, 0, 12.4), passage)
                    .withCapacity(kN(16)));
        }
        return b.support(Support.end("south", Point.of(12 * spans, 0, 12.4)).withCapacity(kN(45)))
                .pretension(1500)
                .build();
    }

    /** One worker on such a line, ground at elevation 4 m, no falls. */
    public static LifelineDesign design(int spans, Passage passage, Attachment attachment) {
        return LifelineDesign.builder("walkway")
                .line(line(spans, passage))
                .temperature(-30)
                .temperature(15)
                .temperature(40)
                .worker(worker("A", attachment))
                .clearance(ClearanceRules.commonPractice().withObstructions(List.of(new Obstruction(0, 12 * spans, 4))))
                .build();
    }

    /** The same with an absorber whose force on average is closer to the largest than absorbers were found to be. */
    public static Worker narrow(String id) {
        return worker(id, Attachment.GRIPPED).toBuilder(id)
                .connection(PlainParts.lanyard(5500, 6000, 1.2))
                .build();
    }

    /** A walkway of one worker, without falls. */
    public static LifelineDesign withWorker(Lifeline line) {
        return LifelineDesign.builder("line")
                .line(line)
                .worker(worker("A", Attachment.GRIPPED))
                .build();
    }

    /** One span at 15 °C, and the fall of its worker in the middle. */
    public static LifelineDesign fallInTheMiddle() {
        return fallInTheMiddle(design(1, Passage.free(), Attachment.GRIPPED).withTemperatures(List.of(15.0)));
    }

    /** A design with one fall, that of its first worker in the middle of the first span. */
    public static LifelineDesign fallInTheMiddle(LifelineDesign design) {
        return design.withFalls(List.of(Fall.builder("middle")
                .at(Place.of(1, 6))
                .faller(design.workers().get(0))
                .build()));
    }

    /** A span of 8 m and an absorber that is used up, with a stop that is rigid: at a rigid anchor nothing arrests the fall. */
    public static LifelineDesign rigidStop() {
        return LifelineDesign.builder("rigid stop")
                .line(PlainParts.span(
                        Cable.builder()
                                .weightPerLength(4.2)
                                .axialStiffness(4.9e6)
                                .build(),
                        8,
                        6,
                        1500))
                .worker(Worker.builder("w")
                        .mass(100)
                        .walkingLevel(4.5)
                        .connection(PlainParts.lanyard(4000, 6000, 0.2))
                        .build())
                .build();
    }
}
