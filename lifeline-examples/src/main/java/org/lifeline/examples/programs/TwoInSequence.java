package org.lifeline.examples.programs;

import static org.lifeline.base.Units.kN;
import static org.lifeline.base.Units.kNPerMetre;
import static org.lifeline.base.Units.meganewtons;

import java.util.Locale;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.EnergyBalance;
import org.lifeline.base.Point;
import org.lifeline.model.Attachment;
import org.lifeline.model.Connection;
import org.lifeline.model.Fall;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Passage;
import org.lifeline.model.Place;
import org.lifeline.model.Worker;
import org.lifeline.model.cable.Cable;

/** One worker falls and hangs; then a second one falls on the line that the first has left taut and low. */
public final class TwoInSequence {
    private TwoInSequence() {}

    private static Worker worker(String id, double mass) {
        return Worker.builder(id)
                .mass(mass)
                .walkingLevel(10.5)
                .attachment(Attachment.GRIPPED)
                .connection(Connection.lanyard(
                        1.8,
                        Connection.PersonalAbsorber.builder()
                                .clearanceForce(kN(3.2))
                                .maximumForce(kN(6))
                                .maximumExtension(1.2)
                                .initialStiffness(kNPerMetre(100))
                                .build()))
                .build();
    }

    /**
     * Prints the two falls.
     *
     * @param args none
     */
    public static void main(String[] args) {
        Lifeline line = Lifeline.builder()
                .cable(Cable.builder()
                        .massPerLength(0.58)
                        .axialStiffness(meganewtons(4.9))
                        .build())
                .endAnchor("north", Point.of(0, 0, 12))
                .intermediateAnchor("post", Point.of(10, 0, 12), Passage.free())
                .endAnchor("south", Point.of(20, 0, 12))
                .pretension(kN(1.5))
                .build();
        Worker first = worker("first", 100);
        Worker second = worker("second", 85);
        Place left = Place.of(1, 5);
        Place right = Place.of(2, 5);
        EnergyBalance balance = EnergyBalance.withDefaults();
        ArrestResult one =
                balance.solve(line, Fall.builder("first").at(left).faller(first).build());
        ArrestResult alone = balance.solve(
                line, Fall.builder("second alone").at(right).faller(second).build());
        ArrestResult two = balance.solve(
                line,
                Fall.builder("second while the first hangs")
                        .at(right)
                        .faller(second)
                        .hanging(first, left)
                        .build());
        System.out.printf("%-28s %10s %9s %11s %12s%n", "", "line at", "free fall", "end anchor", "lowest point");
        for (ArrestResult r : new ArrestResult[] {one, alone, two}) {
            System.out.printf(
                    Locale.ROOT,
                    "%-28s %8.3f m %7.2f m %8.2f kN %10.2f m%n",
                    r.fall().id(),
                    r.attachmentBefore().z(),
                    r.freeFall(),
                    r.endAnchorLoad() / 1000,
                    r.clearance().lowestPoint());
        }
    }
}
