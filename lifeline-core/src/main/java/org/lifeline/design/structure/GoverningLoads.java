package org.lifeline.design.structure;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.Method;
import org.lifeline.base.Vector3;
import org.lifeline.design.envelope.ComputedCase;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Support;

/** Gathers the largest of every effect on every support, by each method. Not thread-safe. */
final class GoverningLoads {
    /** How much larger an effect must be to take the place of an equal one, over the larger [-]: rounding, no mechanics. */
    private static final double ROUNDING = 1e-12;

    private final LifelineDesign design;
    private final double[] angles;
    private final Map<Method, List<Map<LoadEffect, GoverningReaction>>> worst = new EnumMap<>(Method.class);

    GoverningLoads(LifelineDesign design, double[] angles) {
        this.design = design;
        this.angles = angles.clone();
        int supports = design.line().supports().size();
        for (Method each : Method.values()) {
            List<Map<LoadEffect, GoverningReaction>> known = new ArrayList<>();
            for (int i = 0; i < supports; i++) {
                known.add(new EnumMap<>(LoadEffect.class));
            }
            worst.put(each, known);
        }
    }

    void add(ComputedCase computed) {
        ArrestResult arrest = computed.arrest();
        List<Map<LoadEffect, GoverningReaction>> known = worst.getOrDefault(arrest.method(), List.of());
        for (double angle : angles) {
            List<Vector3> forces = forces(arrest, angle);
            for (int i = 0; i < known.size(); i++) {
                add(known.get(i), i, forces, new GoverningReaction.Pulled(computed, angle));
            }
        }
    }

    private List<Vector3> forces(ArrestResult arrest, double angle) {
        double factor = design.modelFactors().force();
        List<Vector3> list = new ArrayList<>();
        SidePull.forces(arrest, angle).forEach(v -> list.add(v.times(factor)));
        return list;
    }

    private void add(
            Map<LoadEffect, GoverningReaction> known,
            int number,
            List<Vector3> forces,
            GoverningReaction.Pulled pulled) {
        Support support = design.line().supports().get(number);
        for (LoadEffect effect : LoadEffect.values()) {
            double value = effect.of(support, forces.get(number));
            GoverningReaction old = known.get(effect);
            if (!Double.isNaN(value) && (old == null || isLarger(value, old.value()))) {
                GoverningReaction.Subject subject = new GoverningReaction.Subject(number, support, effect);
                known.put(effect, new GoverningReaction(subject, value, pulled, forces));
            }
        }
    }

    private static boolean isLarger(double value, double old) {
        return value > old + ROUNDING * Math.max(Math.abs(value), Math.abs(old));
    }

    /** The largest effects by a method, support by support; effects that pull nowhere are left out. */
    List<GoverningReaction> rows(Method method) {
        List<GoverningReaction> list = new ArrayList<>();
        for (Map<LoadEffect, GoverningReaction> ofSupport : worst.getOrDefault(method, List.of())) {
            for (GoverningReaction each : ofSupport.values()) {
                if (each.value() > 0) {
                    list.add(each);
                }
            }
        }
        return list;
    }
}
