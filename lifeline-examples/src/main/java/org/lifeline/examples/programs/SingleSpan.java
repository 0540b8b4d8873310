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
import org.lifeline.model.Place;
import org.lifeline.model.Worker;
import org.lifeline.model.absorber.DeploymentForce;
import org.lifeline.model.cable.Cable;

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
        EnergyBalance balance = EnergyBalance.withDefaults();
        ArrestResult low = balance.withSide(DeploymentForce.CLEARANCE).solve(line, fall);
        ArrestResult high = balance.withSide(DeploymentForce.MAXIMUM).solve(line, fall);
        System.out.println("deployment force               clearance     maximum");
        row("arrest force on the worker", "kN", low.arrestForce() / 1000, high.arrestForce() / 1000);
        row("load on each end anchor", "kN", low.endAnchorLoad() / 1000, high.endAnchorLoad() / 1000);
        row("free fall", "m", low.freeFall(), high.freeFall());
        row("deployment", "m", low.deployment(), high.deployment());
        row("descent of the line", "m", low.lineDescent(), high.lineDescent());
        row("sag at the load", "m", low.sag(), high.sag());
        double least = low.clearance().requiredBelowLine();
        row("clearance required below line", "m", least, high.clearance().requiredBelowLine());
        System.out.println("Take the loads from the maximum side, the distances from the clearance side.");
    }

    private static void row(String what, String unit, double clearance, double maximum) {
        System.out.printf(Locale.ROOT, "%-29s  %7.2f %-2s  %7.2f %s%n", what, clearance, unit, maximum, unit);
    }
}
