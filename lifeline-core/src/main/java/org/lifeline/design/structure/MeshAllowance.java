package org.lifeline.design.structure;

import java.util.function.ToDoubleFunction;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.base.Vector3;

/**
 * What the mesh of an arrest in time may hide of the force on a support, put where it makes an effect largest. A peak with its
 * allowance is on the safe side of the mesh, and is what verdicts rest on.
 */
final class MeshAllowance {
    /** Step of the one-sided difference, over the force [-]: the effects are linear in the force or norms of such. */
    private static final double STEP = 1e-6;

    /** Below this share of the force a component is rounding: the line does not pull that way at all [-]. */
    private static final double ABSENT = 1e-9;

    private MeshAllowance() {}

    /**
     * The allowance of a support.
     *
     * @param arrest the arrest
     * @param support id of the support
     * @return allowance [N]; 0 by energy balance, and where fewer than three meshes leave it unknown
     */
    static double of(ArrestResult arrest, String support) {
        return arrest.motion()
                .filter(m -> m.allowances().known())
                .map(m -> m.allowances().support(support).force())
                .orElse(0.0);
    }

    /**
     * A force that is larger by an allowance, in the direction in which an effect grows most. Every effect is convex in the
     * force, so that the effect grows by no less than its slope times the allowance.
     *
     * @param effect the effect of a force
     * @param force the force, components in [N]
     * @param allowance what is added [N], not negative
     * @return the larger force, components in [N]; the force itself where nothing is to be added
     */
    static Vector3 added(ToDoubleFunction<Vector3> effect, Vector3 force, double allowance) {
        double magnitude = force.magnitude();
        double here = effect.applyAsDouble(force);
        if (allowance == 0 || magnitude == 0 || Double.isNaN(here)) {
            return force;
        }
        double step = STEP * magnitude;
        double least = ABSENT * magnitude;
        Vector3 slope = new Vector3(
                Math.abs(force.x()) < least ? 0 : effect.applyAsDouble(force.plus(new Vector3(step, 0, 0))) - here,
                Math.abs(force.y()) < least ? 0 : effect.applyAsDouble(force.plus(new Vector3(0, step, 0))) - here,
                Math.abs(force.z()) < least ? 0 : effect.applyAsDouble(force.plus(new Vector3(0, 0, step))) - here);
        return slope.magnitude() == 0 ? force : force.plus(slope.times(allowance / slope.magnitude()));
    }
}
