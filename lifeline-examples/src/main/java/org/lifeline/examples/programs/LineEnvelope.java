package org.lifeline.examples.programs;

import java.io.IOException;
import java.util.Locale;
import org.lifeline.base.InertText;
import org.lifeline.base.Interval;
import org.lifeline.base.Vector3;
import org.lifeline.design.criteria.Criteria;
import org.lifeline.design.criteria.CriterionResult;
import org.lifeline.design.envelope.Envelope;
import org.lifeline.design.envelope.EnvelopeResult;
import org.lifeline.design.envelope.Extreme;
import org.lifeline.design.envelope.Extremes;
import org.lifeline.design.envelope.Quantity;
import org.lifeline.design.envelope.Tolerances;
import org.lifeline.examples.shared.DesignArgument;
import org.lifeline.examples.shared.LineScope;
import org.lifeline.examples.shared.Lines;
import org.lifeline.file.DesignFile;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Support;

/**
 * The worst that can happen anywhere on a line: the falls of a design moved along all of it, at every temperature, on both sides
 * of the force range, with pretension 20 % lower and higher and friction from 0.05 to 0.2.
 */
public final class LineEnvelope {
    private LineEnvelope() {}

    /**
     * Prints worst values, what governs them, and the criteria of the design.
     *
     * @param args a design file, or nothing for the demonstration design
     * @throws IOException if the file cannot be read
     */
    public static void main(String[] args) throws IOException {
        DesignFile file = DesignArgument.read(args);
        LifelineDesign design = file.design();
        EnvelopeResult result = Envelope.withDefaults()
                .withTolerances(
                        Tolerances.none().withPretension(Interval.of(0.8, 1.2)).withFriction(Interval.of(0.05, 0.2)))
                .solve(design);
        Extremes worst = result.extremes();
        System.out.println(InertText.name(design.title()));
        System.out.println(
                "Pretension × 0.8 to 1.2, friction 0.05 to 0.2; values carry the model factors of the design.");
        System.out.println(LineScope.words(false));
        System.out.println();
        for (Quantity q : Quantity.values()) {
            worst.of(q).ifPresent(e -> print(q.words(), e));
        }
        System.out.println();
        for (Support s : design.line().supports()) {
            worst.onSupport(s.id()).ifPresent(e -> {
                Vector3 v = e.arrest()
                        .peak()
                        .support(s.id())
                        .vector()
                        .times(design.modelFactors().force());
                System.out.println(String.format(
                        Locale.ROOT,
                        "load on %-12s %9s   x %9s   y %9s   z %9s",
                        InertText.name(s.id()),
                        Lines.value("N", e.value()),
                        Lines.value("N", v.x()),
                        Lines.value("N", v.y()),
                        Lines.value("N", v.z())));
            });
        }
        System.out.println();
        for (int i = 0; i < design.clearance().obstructions().size(); i++) {
            int number = i + 1;
            worst.overObstruction(i).ifPresent(e -> print("margin above obstruction " + number, e));
        }
        System.out.println();
        for (CriterionResult each : Criteria.check(file.criteria(), worst)) {
            System.out.println(Lines.criterion(each));
        }
        System.out.println();
        System.out.println(
                result.failures().isEmpty()
                        ? "Every case was computed. Ratios are for a qualified person to judge."
                        : result.failures().size() + " cases could not be computed, such as "
                                + InertText.plain(result.failures().get(0).toString()));
    }

    private static void print(String what, Extreme e) {
        System.out.println(String.format(Locale.ROOT, "%-41s %9s", what, Lines.value(e.unit(), e.value())));
        System.out.println("    " + Lines.fallCase(e.fallCase()));
    }
}
