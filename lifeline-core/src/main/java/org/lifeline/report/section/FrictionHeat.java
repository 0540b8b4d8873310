package org.lifeline.report.section;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.LineEquilibrium;
import org.lifeline.analysis.Statics;
import org.lifeline.analysis.state.AppliedLoad;
import org.lifeline.model.Fall;
import org.lifeline.model.cable.LoadElongation;

/**
 * Heat of friction of an arrest as a sum over steps of the static load path, for a reader to follow; the analysis itself
 * takes finer steps.
 */
final class FrictionHeat {
    /** Steps of the force on the line. */
    static final int STEPS = 10;

    /**
     * The end of a step.
     *
     * @param force force on the line [N]
     * @param drop by support: drop of Ψ from the side of the start of the line to the other [N]
     * @param passed by support: unstretched length that has passed toward the start since before the fall [m]
     * @param heat by support: heat since before the fall [J]
     */
    record Step(double force, Map<Integer, Double> drop, Map<Integer, Double> passed, Map<Integer, Double> heat) {}

    private final List<Step> steps;

    private FrictionHeat(List<Step> steps) {
        this.steps = steps;
    }

    static FrictionHeat of(ArrestResult r) {
        double g = r.line().gravity();
        List<AppliedLoad> hanging = new ArrayList<>();
        for (Fall.Hanging h : r.fall().hanging()) {
            hanging.add(new AppliedLoad(
                    h.place(), h.worker().attachment(), h.worker().mass() * g));
        }
        Statics statics = Statics.withDefaults().withTemperature(r.temperature());
        List<Step> steps = new ArrayList<>();
        for (int k = 0; k <= STEPS; k++) {
            // The square makes the steps fine where the line is soft.
            double share = (double) k / STEPS;
            double force = r.lineLoad() * share * share;
            LineEquilibrium state = k == 0 ? r.before() : r.peak();
            if (k > 0 && k < STEPS) {
                List<AppliedLoad> all = new ArrayList<>(hanging);
                all.add(new AppliedLoad(
                        r.fall().place(), r.fall().fallers().get(0).attachment(), force));
                state = statics.solve(r.line(), all);
            }
            steps.add(step(r, state, force, steps));
        }
        return new FrictionHeat(steps);
    }

    private static Step step(ArrestResult r, LineEquilibrium state, double force, List<Step> before) {
        Map<Integer, Double> drop = new LinkedHashMap<>();
        Map<Integer, Double> passed = new LinkedHashMap<>();
        Map<Integer, Double> heat = new LinkedHashMap<>();
        for (int i : DerivationSection.rough(r.line())) {
            double d = worth(r, DerivationSection.tension(state, i, true))
                    - worth(r, DerivationSection.tension(state, i, false));
            double p = DerivationSection.passed(r, state, i);
            drop.put(i, d);
            passed.put(i, p);
            double sum = 0;
            if (!before.isEmpty()) {
                Step last = before.get(before.size() - 1);
                sum = of(last.heat(), i) + 0.5 * (d + of(last.drop(), i)) * (p - of(last.passed(), i));
            }
            heat.put(i, sum);
        }
        return new Step(force, drop, passed, heat);
    }

    /** The value of a support in one of the maps of a step; 0 where it has none. */
    static double of(Map<Integer, Double> values, int support) {
        return values.getOrDefault(support, 0.0);
    }

    /** Ψ = T + ∫ε dT. */
    private static double worth(ArrestResult r, double tension) {
        LoadElongation law = r.line().cable().elongation();
        return tension + law.complementaryEnergy(tension);
    }

    List<Step> steps() {
        return steps;
    }

    double total() {
        return steps.get(steps.size() - 1).heat().values().stream()
                .mapToDouble(v -> v)
                .sum();
    }
}
