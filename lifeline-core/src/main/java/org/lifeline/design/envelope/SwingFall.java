package org.lifeline.design.envelope;

import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.SpanState;
import org.lifeline.base.Point;
import org.lifeline.base.Vector3;
import org.lifeline.base.Violations;
import org.lifeline.model.Connection;
import org.lifeline.model.Worker;

/**
 * The swing of a worker who stands off the line, or whose attachment runs along the line while it is loaded.
 *
 * <p>The harness attachment hangs on a pendulum of length ℓ, the taut length of the connecting subsystem, below the place where
 * the attachment is held or comes to rest. Two things make it swing:
 *
 * <ul>
 *   <li>the worker stands off the vertical plane of the line by d: the pendulum starts at the angle asin(d/ℓ) and drops by ℓ −
 *       √(ℓ² − d²) (geometry of the pendulum); where d is not less than ℓ it starts level and drops by ℓ;
 *   <li>the attachment runs from the station to its place of rest and takes the worker along. On a cable of given length it
 *       runs on an ellipse with the two supports as foci (the sum of the two straight legs stays; definition of the ellipse), and
 *       the worker comes down by the difference in height between station and rest on it. If the attachment stops there, that
 *       height is what the pendulum can swing up by.
 * </ul>
 *
 * <p>Both drops are added, and the angle θ of the swing follows from ℓ (1 − cos θ) = drop, at most 90°. Taking the length before
 * deployment gives the larger angle. Limits: no losses, which is on the safe side; the weight of the cable and what feeds in
 * from other spans while the attachment runs change the ellipse a little; an attachment that trails behind a worker who walks
 * ahead of it is a distance along the line that the design does not state. Compared with arrests in time in the tests.
 *
 * <p>Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public final class SwingFall {
    /** A way along the line below which nothing runs [m]: what rounding leaves of a place. */
    private static final double NO_TRAVEL = 1e-9;

    private final Worker worker;
    private final Way way;
    private final double length;
    private final double gravity;

    /** How far the worker goes [m]: distance from the line, way along it, and how much that comes down. */
    private record Way(double offset, double travel, double descent) {}

    private SwingFall(Worker worker, Way way, double length, double gravity) {
        this.worker = worker;
        this.way = way;
        this.length = length;
        this.gravity = gravity;
    }

    /**
     * The swing in an arrest; of several who fall together, that of the worker with the largest displacement, and of those that
     * with the largest drop over length.
     *
     * @param arrest the arrest
     * @return the swing
     */
    public static SwingFall of(ArrestResult arrest) {
        Violations.required("arrest", arrest);
        Point before = arrest.attachmentBefore();
        double travel = before.horizontalDistance(arrest.attachmentAtPeak());
        double descent = travel > NO_TRAVEL && !arrest.fall().place().isAtSupport() ? descent(arrest) : 0;
        SwingFall worst = null;
        for (Worker each : arrest.fall().fallers()) {
            double above = before.z() - each.harnessElevation();
            Connection c = each.connection();
            double length = c.tautLength(above);
            if (c.kind() == Connection.Kind.SELF_RETRACTING) {
                // A device follows the worker: paid out along the slope to where the worker stands.
                length += StrictMath.hypot(each.offset(), above) - Math.abs(above);
            }
            Way way = new Way(each.offset(), travel, descent);
            SwingFall swing = new SwingFall(each, way, length, arrest.line().gravity());
            if (worst == null || swing.isWorseThan(worst)) {
                worst = swing;
            }
        }
        if (worst == null) {
            throw new IllegalStateException("unreachable: a fall has at least one faller");
        }
        return worst;
    }

    private boolean isWorseThan(SwingFall other) {
        return displacement() > other.displacement()
                || (displacement() == other.displacement() && angle() > other.angle());
    }

    /**
     * Height between the station and the place of rest on the ellipse through the place of rest with the supports as foci.
     *
     * <p>In the plane of the chord from the first support, x along, z up, second focus (X, Z): p = √(x² + z²) and q to the second
     * focus with p + q = Λ give p = α + β z, α = (Λ² − X² − Z² + 2 X x)/(2 Λ), β = Z/Λ, and with p² = x² + z² the lower root.
     */
    private static double descent(ArrestResult arrest) {
        SpanState span = arrest.peak().span(arrest.span());
        Point a = span.firstSupport();
        Vector3 chord = span.secondSupport().minus(a);
        double run = chord.horizontal();
        Point rest = arrest.attachmentAtPeak();
        double legs = a.distance(rest) + span.secondSupport().distance(rest);
        Vector3 from = arrest.attachmentBefore().minus(a);
        double x = Math.max(0, Math.min(run, (from.x() * chord.x() + from.y() * chord.y()) / run));
        double alpha = (legs * legs - run * run - chord.z() * chord.z() + 2 * run * x) / (2 * legs);
        double beta = chord.z() / legs;
        double open = alpha * alpha * beta * beta + (1 - beta * beta) * (alpha * alpha - x * x);
        double z = (alpha * beta - Math.sqrt(Math.max(0, open))) / (1 - beta * beta);
        return Math.max(0, a.z() + z - rest.z());
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
     * Horizontal displacement of the harness attachment in all: from where the worker stood to below the place of rest.
     *
     * @return √(offset² + travel²) [m], not negative
     */
    public double displacement() {
        return StrictMath.hypot(way.offset, way.travel);
    }

    /**
     * How far the attachment runs along the line, and the worker with it.
     *
     * @return travel [m], not negative
     */
    public double travel() {
        return way.travel;
    }

    /**
     * Horizontal reach of the pendulum about the place where the attachment is held or comes to rest.
     *
     * @return ℓ sin θ [m], from 0 to ℓ
     */
    public double amplitude() {
        double up = Math.min(drop(), length);
        return Math.sqrt(up * (2 * length - up));
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
     * Largest angle of the pendulum from the vertical.
     *
     * @return angle θ [rad], from 0 to π/2
     */
    public double angle() {
        return StrictMath.atan2(amplitude(), length - Math.min(drop(), length));
    }

    /**
     * Drop of the harness attachment in the swing.
     *
     * @return drop [m], not negative
     */
    public double drop() {
        return offLine() + way.descent;
    }

    /** Drop of a pendulum that starts off the line [m]. */
    private double offLine() {
        double d = way.offset;
        if (d >= length) {
            return d > 0 ? length : 0;
        }
        // ℓ − √(ℓ² − d²) without cancellation
        return d * d / (length + Math.sqrt(length * length - d * d));
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
