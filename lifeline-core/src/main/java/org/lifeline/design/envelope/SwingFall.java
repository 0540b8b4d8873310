package org.lifeline.design.envelope;

import org.lifeline.analysis.ArrestResult;
import org.lifeline.base.Point;
import org.lifeline.model.Connection;
import org.lifeline.model.Worker;

/**
 * The swing of a worker who stands off the line, or off the place where the attachment comes to rest.
 *
 * <p>The harness attachment hangs on a pendulum of length ℓ, the taut length of the connecting subsystem, below the
 * place where the attachment comes to rest at the lowest point of the arrest. Its horizontal displacement is
 * D = √(offset² + along²), offset the worker's distance from the vertical plane of the span, along the distance in that
 * plane from the station where the worker stood to the place of rest. The subsystem becomes taut at the angle
 * asin(D/ℓ) from the vertical, and the pendulum drops by ℓ − √(ℓ² − D²) (geometry of the pendulum). Taking the length
 * before deployment gives the larger angle and the larger drop. Where D is not less than ℓ the worker is taken to swing
 * from the horizontal: angle π/2, drop ℓ.
 *
 * <p>Immutable and thread-safe.
 */
public final class SwingFall {
    private final Worker worker;
    private final double displacement;
    private final double length;
    private final double gravity;

    private SwingFall(Worker worker, double displacement, double length, double gravity) {
        this.worker = worker;
        this.displacement = displacement;
        this.length = length;
        this.gravity = gravity;
    }

    /**
     * The swing in an arrest; of several who fall together, that of the worker with the largest displacement.
     *
     * @param arrest the arrest
     * @return the swing
     */
    public static SwingFall of(ArrestResult arrest) {
        Point before = arrest.attachmentBefore();
        double along = before.horizontalDistance(arrest.attachmentAtPeak());
        SwingFall worst = null;
        for (Worker each : arrest.fall().fallers()) {
            double d = Math.hypot(each.offset(), along);
            double above = before.z() - each.harnessElevation();
            Connection c = each.connection();
            double length = c.tautLength(above);
            if (c.kind() == Connection.Kind.SELF_RETRACTING) {
                // A device follows the worker: paid out along the slope to where the worker stands.
                length += Math.hypot(each.offset(), above) - Math.abs(above);
            }
            SwingFall swing = new SwingFall(each, d, length, arrest.line().gravity());
            if (worst == null || swing.displacement > worst.displacement) {
                worst = swing;
            }
        }
        if (worst == null) {
            throw new IllegalStateException("unreachable: a fall has at least one faller");
        }
        return worst;
    }

    /**
     * Who swings.
     *
     * @return the worker
     */
    public Worker worker() {
        return worker;
    }

    /**
     * Horizontal displacement of the harness attachment.
     *
     * @return D [m], not negative
     */
    public double displacement() {
        return displacement;
    }

    /**
     * Length of the pendulum: that of the connecting subsystem when it becomes taut.
     *
     * @return ℓ [m]
     */
    public double length() {
        return length;
    }

    /**
     * Angle of the connecting subsystem from the vertical when it becomes taut.
     *
     * @return angle [rad], from 0 to π/2
     */
    public double angle() {
        return displacement >= length ? (displacement > 0 ? Math.PI / 2 : 0) : Math.asin(displacement / length);
    }

    /**
     * Drop of the harness attachment in the swing.
     *
     * @return drop [m], not negative
     */
    public double drop() {
        if (displacement >= length) {
            return displacement > 0 ? length : 0;
        }
        // ℓ − √(ℓ² − D²) without cancellation
        return displacement * displacement / (length + Math.sqrt(length * length - displacement * displacement));
    }

    /**
     * Speed at the lowest point of the swing, without losses.
     *
     * @return √(2 g drop) [m/s]
     */
    public double speed() {
        return Math.sqrt(2 * gravity * drop());
    }
}
