package org.lifeline.examples.programs;

import static org.lifeline.base.Units.kN;
import static org.lifeline.base.Units.kNPerMetre;
import static org.lifeline.base.Units.meganewtons;

import java.util.Locale;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.EnergyBalance;
import org.lifeline.analysis.state.SupportReaction;
import org.lifeline.base.Point;
import org.lifeline.model.Connection;
import org.lifeline.model.Fall;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Passage;
import org.lifeline.model.Place;
import org.lifeline.model.Worker;
import org.lifeline.model.cable.Cable;

/** A line that turns a corner and climbs: the corner bracket is pulled inward by both its spans. */
public final class CornerLine {
    private CornerLine() {}

    /**
     * Prints the force on every bracket as a vector.
     *
     * @param args none
     */
    public static void main(String[] args) {
        Lifeline line = Lifeline.builder()
                .cable(Cable.builder()
                        .massPerLength(0.41)
                        .axialStiffness(meganewtons(3.3))
                        .build())
                .endAnchor("gate", Point.of(0, 0, 8))
                .intermediateAnchor("corner", Point.of(11, 0, 8), Passage.friction(0.15))
                .endAnchor("tower", Point.of(11, 9, 8.8))
                .pretension(kN(1.5))
                .build();
        Worker worker = Worker.builder("painter")
                .mass(90)
                .walkingLevel(6.5)
                .connection(Connection.lanyard(
                        1.5,
                        Connection.PersonalAbsorber.builder()
                                .clearanceForce(kN(3.2))
                                .maximumForce(kN(6))
                                .maximumExtension(1.2)
                                .initialStiffness(kNPerMetre(100))
                                .build()))
                .build();
        Fall fall = Fall.builder("behind the corner")
                .at(Place.of(2, 4))
                .faller(worker)
                .build();
        ArrestResult r = EnergyBalance.withDefaults().solve(line, fall);
        for (SupportReaction s : r.supports()) {
            System.out.printf(
                    Locale.ROOT,
                    "%-7s %6.2f kN   x %7.2f  y %7.2f  z %6.2f kN%n",
                    s.id(),
                    s.force() / 1000,
                    s.vector().x() / 1000,
                    s.vector().y() / 1000,
                    s.vector().z() / 1000);
        }
        double before = r.peak().span(1).pieces().get(0).endTension().magnitude();
        double behind = r.peak().span(2).pieces().get(0).startTension().magnitude();
        System.out.printf(
                Locale.ROOT,
                "tension at the corner: %.2f kN before it, %.2f kN behind it, ratio %.3f; e^(0.15·π/2) = %.3f%n",
                before / 1000,
                behind / 1000,
                behind / before,
                StrictMath.exp(0.15 * Math.PI / 2));
        System.out.printf(Locale.ROOT, "cable passed the corner: %.1f mm%n", 1000 * r.slip(1));
    }
}
