package org.lifeline.model;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.lifeline.base.PlausibleRange;
import org.lifeline.base.Violations;
import org.lifeline.base.canonical.Canonical;
import org.lifeline.base.canonical.CanonicalForm;

/**
 * What the clearance account needs beside the arrest: harness stretch, margin, obstructions.
 *
 * <p>Immutable and thread-safe.
 *
 * @param harnessStretch stretch of the harness with the body's shift in it [m], not negative
 * @param margin safety margin below the lowest point of the worker [m], not negative
 * @param obstructions what lies below
 * @since 1.0.0
 */
public record ClearanceRules(double harnessStretch, double margin, List<Obstruction> obstructions)
        implements Canonical {
    private static final ClearanceRules COMMON = new ClearanceRules(0.3, 0.6, List.of());

    /**
     * Checks the numbers and copies the list.
     *
     * @param harnessStretch stretch of the harness with the body's shift in it [m], not negative
     * @param margin safety margin below the lowest point of the worker [m], not negative
     * @param obstructions what lies below
     * @throws org.lifeline.base.InvalidInputException if a length is negative or not finite
     */
    public ClearanceRules {
        Violations v = new Violations();
        PlausibleRange.LENGTH.check(v, "harnessStretch", harnessStretch);
        PlausibleRange.LENGTH.check(v, "margin", margin);
        PlausibleRange.checkCount(
                v,
                "obstructions",
                Violations.requiredAll("obstructions", obstructions).size());
        v.throwIfAny();
        obstructions = List.copyOf(obstructions);
    }

    /**
     * Harness stretch 0.3 m and margin 0.6 m (common practice, no source), nothing below.
     *
     * @return the rules
     */
    public static ClearanceRules commonPractice() {
        return COMMON;
    }

    /**
     * The same with another harness stretch.
     *
     * @param value stretch [m], not negative
     * @return the new rules
     */
    public ClearanceRules withHarnessStretch(double value) {
        return new ClearanceRules(value, margin, obstructions);
    }

    /**
     * The same with another margin.
     *
     * @param value margin [m], not negative
     * @return the new rules
     */
    public ClearanceRules withMargin(double value) {
        return new ClearanceRules(harnessStretch, value, obstructions);
    }

    /**
     * The same with other obstructions.
     *
     * @param value the obstructions
     * @return the new rules
     */
    public ClearanceRules withObstructions(List<Obstruction> value) {
        Violations.requiredAll("obstructions", value);
        return new ClearanceRules(harnessStretch, margin, value);
    }

    /**
     * Where in a span a fall has to be looked at so that no obstruction is passed over: the middle of each and both
     * its ends. Between these what stands below changes nowhere.
     *
     * @param line the line
     * @param span number of the span, from 1
     * @return stations within the span [m], each once, those of one obstruction after the other; unmodifiable
     * @throws org.lifeline.base.InvalidInputException if the line has no such span
     */
    public List<Double> obstructionStations(Lifeline line, int span) {
        Violations.required("line", line);
        double run = line.run(span);
        double start = line.along(Place.of(span, 0));
        Set<Double> set = new LinkedHashSet<>();
        for (Obstruction o : obstructions) {
            for (double along : new double[] {0.5 * (o.from() + o.to()), o.from(), o.to()}) {
                if (along - start > 0 && along - start < run) {
                    set.add(along - start);
                }
            }
        }
        return List.copyOf(set);
    }

    @Override
    public CanonicalForm canonicalForm() {
        return ModelForms.of(this);
    }
}
