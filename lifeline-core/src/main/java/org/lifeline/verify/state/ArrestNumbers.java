package org.lifeline.verify.state;

import java.util.ArrayList;
import java.util.List;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.state.AppliedLoad;
import org.lifeline.analysis.state.EnergyAccount;
import org.lifeline.base.Point;
import org.lifeline.base.Violations;
import org.lifeline.model.Attachment;
import org.lifeline.model.Fall;
import org.lifeline.model.absorber.DeploymentForce;

/**
 * An arrest as plain numbers. Immutable and thread-safe.
 *
 * @param fall the fall
 * @param side side of the absorber's force range
 * @param attachment how the connection held on to the line
 * @param before the line before the fall
 * @param peak the line at the lowest point
 * @param attachmentBefore where the attachment was
 * @param attachmentAtPeak where the attachment is at the lowest point
 * @param freeFall free fall [m]
 * @param deployment extension of the connecting subsystems, the largest [m]
 * @param deployments extension of each connecting subsystem, in the order of those who fall [m]
 * @param bound true where forces and distances are bounds
 * @param arrestForce force on one worker [N]
 * @param lineLoad force on the line [N]
 * @param bottomedOut whether a connecting subsystem is said to have been used up
 * @param energy the energy account
 * @param pathWork work along the path [J]; NaN where it was not followed
 * @param clearance the clearance account
 * @param distances what is derived from the rest
 * @since 1.0.0
 */
public record ArrestNumbers(
        Fall fall,
        DeploymentForce side,
        Attachment attachment,
        StateNumbers before,
        StateNumbers peak,
        Point attachmentBefore,
        Point attachmentAtPeak,
        double freeFall,
        double deployment,
        List<Double> deployments,
        boolean bound,
        double arrestForce,
        double lineLoad,
        boolean bottomedOut,
        EnergyAccount energy,
        double pathWork,
        ClearanceNumbers clearance,
        Distances distances) {
    /**
     * Copies the lists.
     *
     * @param fall the fall
     * @param side side of the absorber's force range
     * @param attachment how the connection held on to the line
     * @param before the line before the fall
     * @param peak the line at the lowest point
     * @param attachmentBefore where the attachment was
     * @param attachmentAtPeak where the attachment is at the lowest point
     * @param freeFall free fall [m]
     * @param deployment extension of the connecting subsystems, the largest [m]
     * @param deployments extension of each connecting subsystem, in the order of those who fall [m]
     * @param bound true where forces and distances are bounds
     * @param arrestForce force on one worker [N]
     * @param lineLoad force on the line [N]
     * @param bottomedOut whether a connecting subsystem is said to have been used up
     * @param energy the energy account
     * @param pathWork work along the path [J]; NaN where it was not followed
     * @param clearance the clearance account
     * @param distances what is derived from the rest
     * @throws org.lifeline.base.InvalidInputException if something is missing
     */
    public ArrestNumbers {
        Violations.required("fall", fall);
        Violations.required("side", side);
        Violations.required("attachment", attachment);
        Violations.required("before", before);
        Violations.required("peak", peak);
        Violations.required("attachmentBefore", attachmentBefore);
        Violations.required("attachmentAtPeak", attachmentAtPeak);
        deployments = List.copyOf(Violations.requiredAll("deployments", deployments));
        Violations.required("energy", energy);
        Violations.required("clearance", clearance);
        Violations.required("distances", distances);
    }

    /**
     * What the result derives from the rest. Immutable and thread-safe.
     *
     * @param sag sag at the load [m]
     * @param lineDescent descent of the attachment [m]
     * @param loadX horizontal distance of the load from the first support [m]
     * @param totalFallDistance total fall distance [m]
     * @param slip slip toward the fall at each support [m]
     * @since 1.0.0
     */
    public record Distances(double sag, double lineDescent, double loadX, double totalFallDistance, List<Double> slip) {
        /**
         * Copies the list.
         *
         * @param sag sag at the load [m]
         * @param lineDescent descent of the attachment [m]
         * @param loadX horizontal distance of the load from the first support [m]
         * @param totalFallDistance total fall distance [m]
         * @param slip slip toward the fall at each support [m]
         * @throws org.lifeline.base.InvalidInputException if the list or a number of it is missing
         */
        public Distances {
            slip = List.copyOf(Violations.requiredAll("slip", slip));
        }
    }

    /**
     * Reads a result.
     *
     * @param r the result
     * @return its numbers
     * @throws org.lifeline.base.InvalidInputException if there is no result
     */
    public static ArrestNumbers of(ArrestResult r) {
        Violations.required("result", r);
        List<Double> slip = new ArrayList<>();
        for (int i = 0; i < r.supports().size(); i++) {
            slip.add(r.slip(i));
        }
        return new ArrestNumbers(
                r.fall(),
                r.side(),
                r.attachment(),
                StateNumbers.of(r.before()),
                StateNumbers.of(r.peak()),
                r.attachmentBefore(),
                r.attachmentAtPeak(),
                r.freeFall(),
                r.deployment(),
                r.deployments(),
                r.isBound(),
                r.arrestForce(),
                r.lineLoad(),
                r.bottomedOut(),
                r.energy(),
                r.pathWork(),
                ClearanceNumbers.of(r.clearance()),
                new Distances(r.sag(), r.lineDescent(), r.loadX(), r.totalFallDistance(), List.copyOf(slip)));
    }

    /**
     * Those who hang already, as loads.
     *
     * @return the loads, in the order in which they fell
     */
    public List<AppliedLoad> hanging() {
        double g = peak.line().gravity();
        return fall.hanging().stream()
                .map(h -> new AppliedLoad(
                        h.place(), h.worker().attachment(), h.worker().mass() * g))
                .toList();
    }

    /**
     * Those who hang already and the fall, as loads.
     *
     * @return the loads; the fall is the last
     */
    public List<AppliedLoad> loadsAtPeak() {
        List<AppliedLoad> list = new ArrayList<>(hanging());
        list.add(fallLoad(lineLoad));
        return list;
    }

    /**
     * The fall as a load at rest.
     *
     * @param force downward force on the line [N]
     * @return the load
     */
    public AppliedLoad fallLoad(double force) {
        return new AppliedLoad(fall.place(), attachment, force);
    }

    /**
     * Weight of those who fall.
     *
     * @return weight [N]
     */
    public double weight() {
        return fall.fallingMass() * peak.line().gravity();
    }

    /**
     * Height by which the attachment goes down, from its two places.
     *
     * @return height [m], positive down
     */
    public double descent() {
        return attachmentBefore.z() - attachmentAtPeak.z();
    }

    /**
     * Length to which rounding of elevations is relative: the largest elevation, at least 1 m.
     *
     * @return length [m]
     */
    public double levelScale() {
        double most = Math.max(Math.abs(attachmentBefore.z()), Math.abs(attachmentAtPeak.z()));
        double walking = fall.fallers().stream()
                .mapToDouble(w -> Math.abs(w.walkingLevel()))
                .max()
                .orElse(0);
        return Math.max(1, Math.max(most, walking));
    }
}
