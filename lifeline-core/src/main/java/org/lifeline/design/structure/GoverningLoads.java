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
        // The line at rest with a rescuer is an equilibrium, as the lowest point of an energy balance is.
        Method method = arrest.method() == Method.RESCUE_AT_REST ? Method.ENERGY_BALANCE : arrest.method();
        List<Map<LoadEffect, GoverningReaction>> known = worst.getOrDefault(method, List.of());
        for (double angle : angles) {
            Forces forces = forces(arrest, angle);
            for (int i = 0; i < known.size(); i++) {
                add(known.get(i), i, forces, new GoverningReaction.Pulled(computed, angle));
            }
        }
    }

    /** Forces on the supports and what the mesh of an arrest in time may hide of each [N], both with the model factor. */
    private record Forces(List<Vector3> vectors, List<Double> hidden) {
        /** With all that may be hidden in the direction of each force, so that every resultant is as verdicts have it. */
        List<Vector3> enlarged() {
            List<Vector3> list = new ArrayList<>();
            for (int i = 0; i < vectors.size(); i++) {
                Vector3 v = vectors.get(i);
                list.add(hidden.get(i) == 0 || v.magnitude() == 0 ? v : v.times(1 + hidden.get(i) / v.magnitude()));
            }
            return list;
        }
    }

    private Forces forces(ArrestResult arrest, double angle) {
        double factor = design.modelFactors().force();
        List<Vector3> list = new ArrayList<>();
        SidePull.forces(arrest, angle).forEach(v -> list.add(v.times(factor)));
        List<Double> hidden = new ArrayList<>();
        for (Support s : design.line().supports()) {
            hidden.add(factor * MeshAllowance.of(arrest, s.id()));
        }
        return new Forces(list, hidden);
    }

    private void add(
            Map<LoadEffect, GoverningReaction> known, int number, Forces forces, GoverningReaction.Pulled pulled) {
        Support support = design.line().supports().get(number);
        Vector3 plain = forces.vectors.get(number);
        for (LoadEffect effect : LoadEffect.values()) {
            Vector3 force = MeshAllowance.added(v -> effect.of(support, v), plain, forces.hidden.get(number));
            double value = effect.of(support, force);
            GoverningReaction old = known.get(effect);
            if (!Double.isNaN(value) && (old == null || isLarger(value, old.value()))) {
                List<Vector3> all = forces.enlarged();
                all.set(number, force);
                GoverningReaction.Subject subject = new GoverningReaction.Subject(number, support, effect);
                known.put(effect, new GoverningReaction(subject, value, pulled, all));
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
