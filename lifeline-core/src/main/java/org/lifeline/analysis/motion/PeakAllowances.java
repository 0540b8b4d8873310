package org.lifeline.analysis.motion;

import java.util.LinkedHashMap;
import java.util.Map;
import org.lifeline.base.InputRule;
import org.lifeline.base.Violations;

/**
 * What the last mesh may hide of the peaks of the first catch: bounds of what ever finer meshes would change. A load with
 * its allowance added is on the safe side of the mesh.
 *
 * <p>A bound is the largest of 2.5 times the last but one change from mesh to mesh, or four times the last if that is larger, where a
 * force rises, of what it has fallen from a coarser mesh, of what a wave front may hide that is as wide as the mesh makes it, and, for a
 * force as it is, of 1.5 times what the filter takes off it;
 * measured, not derived: {@code src/docs/theory/transient.md}, section 3. The force in a connecting subsystem, and that on an
 * end behind an in-line absorber, changes by no more than the loading curve does within the bound of the extension. It speaks of the mesh alone, not of what the model leaves out, and not of rebounds and later falls. Where fewer than three meshes
 * were followed nothing is known, and every allowance is positive infinity.
 *
 * <p>Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public final class PeakAllowances {
    private final Force tension;
    private final Force arrestForce;
    private final Map<String, Force> supports;
    private final Bounds bounds;

    /**
     * Allowance of a force.
     *
     * @param force for the force as it is [N], not negative
     * @param filteredForce for the force behind the 100 Hz low-pass filter [N], not negative
     * @since 1.0.0
     */
    public record Force(double force, double filteredForce) {}

    /**
     * Bounds that are no forces.
     *
     * @param lowest of the lowest elevation of the harness attachments [m], not negative
     * @param extensions of the largest extensions
     * @param relative the largest bound of all, of a force over that force or the arrest force, whichever is larger, and
     *     of the lowest elevation over the fall [-], not negative
     * @since 1.0.0
     */
    public record Bounds(double lowest, Extensions extensions, double relative) {}

    /**
     * Bounds of the largest extensions.
     *
     * @param connection of the connecting subsystems of those who fall [m], not negative
     * @param inline of the in-line absorbers [m], not negative, 0 where there are none
     * @since 1.0.0
     */
    public record Extensions(double connection, double inline) {}

    /**
     * The allowances, as an analysis hands them over.
     *
     * @param tension of the largest tension
     * @param arrestForce of the arrest force
     * @param supports of the force on each support, by its id
     * @param bounds of everything else
     */
    public PeakAllowances(Force tension, Force arrestForce, Map<String, Force> supports, Bounds bounds) {
        Violations.required("supports", supports);
        this.tension = tension;
        this.arrestForce = arrestForce;
        this.supports = new LinkedHashMap<>(supports);
        this.bounds = bounds;
    }

    /**
     * Allowance of the largest tension anywhere in the cable.
     *
     * @return the allowance
     */
    public Force tension() {
        return tension;
    }

    /**
     * Allowance of the largest arrest force.
     *
     * @return the allowance
     */
    public Force arrestForce() {
        return arrestForce;
    }

    /**
     * Allowance of the force of the line on a support.
     *
     * @param id the support
     * @return the allowance
     * @throws IllegalArgumentException if there is no such support
     */
    public Force support(String id) {
        Force force = supports.get(id);
        if (force == null) {
            throw Columns.unknown(id, InputRule.NO_SUCH_SUPPORT);
        }
        return force;
    }

    /**
     * Allowance of the lowest elevation of those who fall, and so of the fall distance.
     *
     * @return allowance [m], not negative
     */
    public double lowest() {
        return bounds.lowest;
    }

    /**
     * Allowances of the largest extensions.
     *
     * @return the allowances
     */
    public Extensions extensions() {
        return bounds.extensions;
    }

    /**
     * Tells whether anything is known: fewer than three meshes bound nothing.
     *
     * @return true if every allowance is finite
     */
    public boolean known() {
        return Double.isFinite(bounds.relative);
    }

    /**
     * The largest bound of all, of a force over that force or the arrest force, whichever is larger, and of the lowest
     * elevation over the fall.
     *
     * @return bound [-], not negative
     */
    public double relative() {
        return bounds.relative;
    }
}
