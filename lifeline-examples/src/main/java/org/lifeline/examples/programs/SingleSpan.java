package org.lifeline.examples.programs;

import static org.lifeline.base.Units.kN;
import static org.lifeline.base.Units.kNPerMetre;
import static org.lifeline.base.Units.meganewtons;

import java.util.Locale;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.EnergyBalance;
import org.lifeline.base.Point;
import org.lifeline.model.Cable;
import org.lifeline.model.Connection;
import org.lifeline.model.DeploymentForce;
import org.lifeline.model.Fall;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Place;
import org.lifeline.model.Worker;

/** A fall in the middle of a single span: loads from the one side of the absorber's range, distances from the other. */
public final class SingleSpan {
    private SingleSpan() {}

    /**
     * Prints both sides of one fall.
     *
     * @param args none
     */
    public static void main(String[] args) {
        Cable cable = Cable.builder()
                .massPerLength(0.41)
                .axialStiffness(meganewtons(3.3))
                .breakingStrength(kN(58))
                .build();
        Lifeline line = Lifeline.builder()
                .cable(cable)
                .endAnchor("west wall", Point.of(0, 0, 6.5))
                .endAnchor("east wall", Point.of(14, 0, 6.5))
                .pretension(kN(1))
                .build();
        Worker worker = Worker.builder("roofer")
                .mass(95)
                .walkingLevel(5)
                .connection(Connection.lanyard(
                        1.5,
                        Connection.PersonalAbsorber.builder()
                                .clearanceForce(kN(3.2))
                                .maximumForce(kN(6))
                                .maximumExtension(1.2)
                                .initialStiffness(kNPerMetre(100))
                                .build()))
                .build();
        Fall fall = Fall.builder("middle").at(Place.of(1, 7)).faller(worker).build();
        for (DeploymentForce side : DeploymentForce.values()) {
            ArrestResult r = EnergyBalance.withDefaults().withSide(side).solve(line, fall);
            System.out.printf(
                    Locale.ROOT,
                    "%-9s  arrest %.2f kN  anchor %.2f kN  sag %.2f m  deployment %.2f m  below the line %.2f m%n",
                    side,
                    r.arrestForce() / 1000,
                    r.endAnchorLoad() / 1000,
                    r.sag(),
                    r.deployment(),
                    r.clearance().requiredBelowLine());
        }
        System.out.println("Loads take the maximum side, distances the clearance side.");
    }
}
