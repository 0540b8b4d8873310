package org.lifeline.examples.programs;

import static org.lifeline.base.Units.kN;
import static org.lifeline.base.Units.kNPerMetre;
import static org.lifeline.base.Units.meganewtons;

import java.util.Locale;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.EnergyBalance;
import org.lifeline.base.Point;
import org.lifeline.model.Connection;
import org.lifeline.model.Fall;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Passage;
import org.lifeline.model.Place;
import org.lifeline.model.Stiffness;
import org.lifeline.model.Support;
import org.lifeline.model.Worker;
import org.lifeline.model.cable.Cable;

/** End posts that yield: the softer they are, the lower the load and the longer the way down. */
public final class YieldingPosts {
    private YieldingPosts() {}

    /**
     * Prints anchor load and clearance over the stiffness of the end posts.
     *
     * @param args none
     */
    public static void main(String[] args) {
        Worker worker = Worker.builder("rigger")
                .mass(100)
                .walkingLevel(3.6)
                .connection(Connection.lanyard(
                        1.5,
                        Connection.PersonalAbsorber.builder()
                                .clearanceForce(kN(3.2))
                                .maximumForce(kN(6))
                                .maximumExtension(1.2)
                                .initialStiffness(kNPerMetre(100))
                                .build()))
                .build();
        Fall fall = Fall.builder("middle bay").at(Place.of(2, 4)).faller(worker).build();
        System.out.println(
                "Posts give way along the line. As installed their springs hold the pretension of 1 kN already:");
        System.out.println("anchor load = 1 kN + stiffness × way of the top.");
        System.out.println("stiffness of the end posts   anchor load   top moves   required below the line");
        for (double stiffness : new double[] {Double.POSITIVE_INFINITY, 2e6, 5e5, 2e5, 5e4}) {
            Stiffness post = Stiffness.alongX(stiffness);
            Lifeline line = Lifeline.builder()
                    .cable(Cable.builder()
                            .massPerLength(0.41)
                            .axialStiffness(meganewtons(3.3))
                            .build())
                    .support(Support.end("left", Point.of(0, 0, 5)).withStiffness(post))
                    .intermediateAnchor("post 1", Point.of(8, 0, 5), Passage.free())
                    .intermediateAnchor("post 2", Point.of(16, 0, 5), Passage.free())
                    .support(Support.end("right", Point.of(24, 0, 5)).withStiffness(post))
                    .pretension(kN(1))
                    .build();
            ArrestResult r = EnergyBalance.withDefaults().solve(line, fall);
            System.out.printf(
                    Locale.ROOT,
                    "%-26s   %8.2f kN   %6.1f mm   %8.2f m%n",
                    Double.isInfinite(stiffness) ? "rigid" : String.format(Locale.ROOT, "%.0f kN/m", stiffness / 1000),
                    r.endAnchorLoad() / 1000,
                    1000 * r.supports().get(0).displacement().magnitude(),
                    r.clearance().requiredBelowLine());
        }
    }
}
