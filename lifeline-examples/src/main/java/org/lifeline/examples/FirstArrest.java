package org.lifeline.examples;

import static org.lifeline.base.Units.kN;
import static org.lifeline.base.Units.kNPerMetre;
import static org.lifeline.base.Units.meganewtons;
import static org.lifeline.base.Units.toKN;

import java.util.Locale;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.EnergyBalance;
import org.lifeline.base.Point;
import org.lifeline.model.Connection;
import org.lifeline.model.Connection.PersonalAbsorber;
import org.lifeline.model.Fall;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Passage;
import org.lifeline.model.Place;
import org.lifeline.model.Worker;
import org.lifeline.model.absorber.DeploymentForce;
import org.lifeline.model.cable.Cable;

/** One fall on a line of two spans: the example at the top of README.md. */
public final class FirstArrest {
    private FirstArrest() {}

    /**
     * Prints the arrest of one fall.
     *
     * @param args none
     */
    public static void main(String[] args) {
        // README
        Lifeline line = Lifeline.builder()
                .cable(Cable.builder()
                        .massPerLength(0.41)
                        .axialStiffness(meganewtons(3.3))
                        .build())
                .endAnchor("north", Point.of(0, 0, 12.4))
                .intermediateAnchor("post", Point.of(12, 0, 12.4), Passage.friction(0.12))
                .endAnchor("south", Point.of(21, 0, 12.4))
                .pretension(kN(1.5))
                .build();
        PersonalAbsorber absorber = PersonalAbsorber.builder()
                .clearanceForce(kN(3.2))
                .maximumForce(kN(6))
                .maximumExtension(1.2)
                .initialStiffness(kNPerMetre(100))
                .build();
        Connection lanyard = Connection.lanyard(1.8, absorber);
        Worker worker = Worker.builder("A")
                .mass(100)
                .walkingLevel(10.9)
                .connection(lanyard)
                .build();
        Fall fall = Fall.builder("middle of span 1")
                .at(Place.of(1, 6))
                .faller(worker)
                .build();
        EnergyBalance balance = EnergyBalance.withDefaults();
        ArrestResult loads = balance.withSide(DeploymentForce.MAXIMUM).solve(line, fall);
        ArrestResult distances = balance.withSide(DeploymentForce.CLEARANCE).solve(line, fall);
        print("load on the north anchor  %7.2f kN", toKN(loads.anchorLoad("north")));
        print("load on the post          %7.2f kN", toKN(loads.anchorLoad("post")));
        print("deployment                %7.3f m", distances.deployment());
        print("descent of the line       %7.3f m", distances.lineDescent());
        print("clearance below the line  %7.3f m", distances.clearance().requiredBelowLine());
        // README
    }

    private static void print(String format, double value) {
        System.out.println(String.format(Locale.ROOT, format, value));
    }
}
