package org.lifeline.examples.programs;

import static org.lifeline.base.Units.kN;
import static org.lifeline.base.Units.kNPerMetre;

import java.util.List;
import java.util.Locale;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.EnergyBalance;
import org.lifeline.base.Point;
import org.lifeline.model.Connection;
import org.lifeline.model.Fall;
import org.lifeline.model.Installed;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Place;
import org.lifeline.model.Worker;
import org.lifeline.model.cable.Cable;
import org.lifeline.model.cable.LoadElongation;

/** A temporary line of synthetic rope, soft at first and stiffer later, beside one of steel. */
public final class SyntheticRope {
    private SyntheticRope() {}

    /**
     * Prints the same fall on both ropes.
     *
     * @param args none
     */
    public static void main(String[] args) {
        Cable synthetic = Cable.builder()
                .name("16 mm synthetic")
                .massPerLength(0.16)
                .elongation(LoadElongation.curve(List.of(
                        new LoadElongation.Corner(0, 0),
                        new LoadElongation.Corner(0.02, kN(1.2)),
                        new LoadElongation.Corner(0.05, kN(6)),
                        new LoadElongation.Corner(0.09, kN(18)))))
                .build();
        Cable steel = Cable.builder()
                .name("10 mm steel")
                .massPerLength(0.41)
                .axialStiffness(3.3e6)
                .build();
        Worker worker = Worker.builder("scaffolder")
                .mass(100)
                .walkingLevel(18)
                .connection(Connection.lanyard(
                        1.5,
                        Connection.PersonalAbsorber.builder()
                                .clearanceForce(kN(3.2))
                                .maximumForce(kN(6))
                                .maximumExtension(1.2)
                                .initialStiffness(kNPerMetre(100))
                                .build()))
                .build();
        Fall fall = Fall.builder("middle").at(Place.of(1, 6)).faller(worker).build();
        for (Cable cable : new Cable[] {steel, synthetic}) {
            Lifeline line = Lifeline.builder()
                    .cable(cable)
                    .endAnchor("column A", Point.of(0, 0, 19.5))
                    .endAnchor("column B", Point.of(12, 0, 19.5))
                    .installed(Installed.initialSag(1, 0.12))
                    .build();
            ArrestResult r = EnergyBalance.withDefaults().solve(line, fall);
            System.out.printf(
                    Locale.ROOT,
                    "%-15s anchor %5.2f kN arrest %.2f kN descent %.2f m clearance %.2f m%n",
                    cable.name(),
                    r.endAnchorLoad() / 1000,
                    r.arrestForce() / 1000,
                    r.lineDescent(),
                    r.clearance().requiredBelowLine());
        }
    }
}
