package org.lifeline.examples.programs;

import static org.lifeline.base.Units.kN;
import static org.lifeline.base.Units.kNPerMetre;
import static org.lifeline.base.Units.meganewtons;

import java.util.Locale;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.EnergyBalance;
import org.lifeline.analysis.RescueLoad;
import org.lifeline.analysis.TransientArrest;
import org.lifeline.base.Point;
import org.lifeline.model.Attachment;
import org.lifeline.model.Connection;
import org.lifeline.model.Fall;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Place;
import org.lifeline.model.Worker;
import org.lifeline.model.cable.Cable;

/**
 * Two workers at one place: the second falls within the first second. Then a rescuer hangs on the line with one who has fallen.
 * A design file states both by {@code secondFall} and {@code rescue}, and the assessment looks along the whole line.
 */
public final class SecondFallAndRescue {
    private SecondFallAndRescue() {}

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
                                .maximumExtension(1.75)
                                .initialStiffness(kNPerMetre(100))
                                .build()))
                .build();
    }

    /**
     * Prints loads and lowest points.
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
                .endAnchor("south", Point.of(12, 0, 12))
                .pretension(kN(1.5))
                .build();
        Worker first = worker("first", 100);
        Worker second = worker("second", 85);
        Fall alone = Fall.builder("alone").at(Place.of(1, 5)).faller(first).build();
        Fall both = alone.withFaller(second);
        TransientArrest inTime = TransientArrest.withDefaults().withSegmentLength(0.4);
        System.out.printf("%-30s %10s %12s%n", "in time", "end anchor", "lowest point");
        row("the first alone", inTime.solve(line, alone).arrest());
        for (double delay : new double[] {0, 0.2, 0.4, 0.6, 1}) {
            ArrestResult r = inTime.withDelay("second", delay).solve(line, both).arrest();
            row(String.format(Locale.ROOT, "the second %.1f s later", delay), r);
        }
        System.out.printf("%n%-30s %10s %12s%n", "by equilibrium", "end anchor", "lowest point");
        ArrestResult arrest = EnergyBalance.withDefaults().solve(line, alone);
        row("lowest point of the first", arrest);
        row("at rest with a rescuer, 100 kg", RescueLoad.ofRescuer(100).solve(arrest));
    }

    private static void row(String name, ArrestResult r) {
        System.out.printf(
                Locale.ROOT,
                "%-30s %7.2f kN %10.2f m%n",
                name,
                r.endAnchorLoad() / 1000,
                r.clearance().lowestPoint());
    }
}
