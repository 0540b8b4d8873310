package org.lifeline.examples.handover;

import java.io.IOException;
import java.util.Locale;
import org.lifeline.base.InertText;
import org.lifeline.base.Vector3;
import org.lifeline.design.assessment.Assessment;
import org.lifeline.design.assessment.AssessmentResult;
import org.lifeline.design.structure.GoverningReaction;
import org.lifeline.design.structure.LoadEffect;
import org.lifeline.design.structure.SupportLoads;
import org.lifeline.design.structure.SupportLoadsResult;
import org.lifeline.examples.shared.DesignArgument;
import org.lifeline.file.DesignFile;

/** Loads for those who design the steel: every load case with its partners, and pulls to the side. */
public final class StructureLoads {
    private StructureLoads() {}

    /**
     * Prints the loads, by energy balance.
     *
     * @param args a design file, or nothing for the demonstration design
     * @throws IOException if the file cannot be read
     */
    public static void main(String[] args) throws IOException {
        DesignFile file = DesignArgument.read(args);
        AssessmentResult assessment = Assessment.withDefaults().withoutMotion().solve(file.design());
        SupportLoadsResult loads =
                file.handover().structure().orElse(SupportLoads.withDefaults()).solve(assessment);
        System.out.println("Forces of the line on its supports [kN], z up; service loads by energy balance.");
        System.out.println("Largest resultant on each support, with what acts on the others at the same moment:");
        file.design()
                .line()
                .supports()
                .forEach(
                        s -> loads.byEnergyBalance(s.id(), LoadEffect.RESULTANT).ifPresent(StructureLoads::print));
        System.out.println(String.format(
                Locale.ROOT,
                "Largest across the line, the pull up to %.0f° to either side:",
                Math.toDegrees(loads.angle())));
        for (GoverningReaction r : loads.byEnergyBalance()) {
            if (r.effect() == LoadEffect.PLUS_Y || r.effect() == LoadEffect.MINUS_Y) {
                System.out.println(String.format(
                        Locale.ROOT,
                        "  %-12s %-15s %7.2f",
                        InertText.name(r.support().id()),
                        r.effect().words(),
                        r.value() / 1000));
            }
        }
    }

    private static void print(GoverningReaction r) {
        StringBuilder b = new StringBuilder(String.format(
                Locale.ROOT, "  %-12s %6.2f ", InertText.name(r.support().id()), r.value() / 1000));
        for (Vector3 v : r.forces()) {
            b.append(String.format(Locale.ROOT, " (%6.2f %5.2f %6.2f)", v.x() / 1000, v.y() / 1000, v.z() / 1000));
        }
        System.out.println(
                b.append(String.format(Locale.ROOT, "  %.1f °C", r.fallCase().temperature())));
    }
}
