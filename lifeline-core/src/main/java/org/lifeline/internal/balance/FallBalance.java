package org.lifeline.internal.balance;

import org.lifeline.internal.path.LoadPath;
import org.lifeline.model.absorber.LoadingCurve;

/**
 * The energy balance of what falls under one extension: weight G, free fall h, force F(x) of the connection, on a line that
 * others pull with a force Q already.
 *
 * <p>G (h + δ + x) = ∫F dδ + ∫F dx with F = P − Q and δ(P) the path of the line; ∫F dδ counts from where Q alone has drawn
 * it. Without others Q = 0. Not thread-safe.
 */
public final class FallBalance {
    private final double weight;
    private final double freeFall;
    private final LoadingCurve curve;
    private double others;
    private double workOfOthers;
    private double descentOfOthers;

    /**
     * A balance.
     *
     * @param weight weight of those who fall [N]
     * @param curve force of the connections against the extension
     * @param freeFall free fall, weighted by mass [m]
     */
    public FallBalance(double weight, LoadingCurve curve, double freeFall) {
        this.weight = weight;
        this.freeFall = freeFall;
        this.curve = curve;
    }

    /** Draws the line down by the force of others first. */
    void pulledBy(LoadPath path, double force) {
        path.advance(force, p -> Double.POSITIVE_INFINITY, 0);
        others = force;
        workOfOthers = path.work();
        descentOfOthers = path.descent();
    }

    /** Own force at a point of the path [N]. */
    private double own(double force) {
        return Math.max(0, force - others);
    }

    /** Energy set free less energy taken, at a point of the path and an extension [J]. */
    private double gap(LoadPath path, double x) {
        double line = path.work() - workOfOthers - others * (path.descent() - descentOfOthers);
        return weight * (freeFall + path.descent() + x) - line - curve.work(x);
    }

    /**
     * Follows the path to the lowest point.
     *
     * @param path the path of the line; ends there
     * @return extension at the lowest point [m]
     * @throws org.lifeline.base.NoEquilibriumException if there is none
     */
    public double solve(LoadPath path) {
        double watch = others + weight;
        double x = 0;
        for (LoadingCurve.Corner corner : curve.corners()) {
            double target = others + corner.force();
            if (target > path.force() * (1 + BalanceTolerances.FLAT)) {
                if (path.advance(target, new Remaining(false, corner.force()), watch)) {
                    return closed(path, curve.nearExtension(Math.min(own(path.peakForce()), corner.force())));
                }
                x = curve.nearExtension(Math.min(own(path.peakForce()), corner.force()));
            }
            // Up to the corner is a plateau, or rounding: the line stands still while the subsystem extends.
            double spare = gap(path, x);
            double force = own(path.force());
            if (force > weight && spare <= (force - weight) * (corner.extension() - x)) {
                return x + Math.max(0, spare) / (force - weight);
            }
            x = corner.extension();
        }
        double target = Math.max(others + 4 * weight, 2 * path.force());
        while (true) {
            if (path.advance(target, new Remaining(true, curve.lastForce()), watch)) {
                return closed(path, curve.farExtension(own(path.peakForce())));
            }
            target *= 2;
            if (target > BalanceTolerances.LARGEST_FORCE) {
                throw path.failure("the fall is not arrested by any force up to " + BalanceTolerances.LARGEST_FORCE
                        + " N"
                        + (Double.isInfinite(curve.stopStiffness())
                                ? ": behind its last corner the connection is rigid; on a support or a line that does not"
                                        + " yield, state the stiffness of the stop"
                                : ""));
            }
        }
    }

    /**
     * The extension that closes the balance at the force found. On a piece that rises hardly at all the force says
     * little about the extension; there this is the better of the two, and elsewhere it changes nothing.
     */
    private double closed(LoadPath path, double x) {
        double force = own(path.peakForce());
        double change = gap(path, x) / (force - weight);
        int piece = curve.piece(x);
        boolean onPiece = Math.abs(curve.forceOnPiece(piece, x) - force) <= BalanceTolerances.ON_PIECE * force;
        boolean flat = Math.abs(change) * curve.slopeOfPiece(piece) <= BalanceTolerances.CLOSES * force;
        return onPiece && flat ? Math.max(0, x + change) : x;
    }

    /** The gap along the path, with the extension that goes with the force. */
    final class Remaining implements LoadPath.EndCondition {
        private final boolean far;
        private final double corner;

        /** Up to a corner, or, if far, from the last one on: P − Q is off that force by rounding, and a plateau is long. */
        Remaining(boolean far, double corner) {
            this.far = far;
            this.corner = corner;
        }

        private double extension(double force) {
            return far ? curve.farExtension(Math.max(force, corner)) : curve.nearExtension(Math.min(force, corner));
        }

        @Override
        public double at(LoadPath path) {
            return gap(path, extension(own(path.peakForce())));
        }

        @Override
        public double slope(double force, double descentRate) {
            double own = own(force);
            double stiffness = own > curve.rigidForce() ? curve.slope(extension(own)) : Double.POSITIVE_INFINITY;
            double extensionRate = stiffness > 0 ? 1 / stiffness : 0;
            return (weight - own) * (descentRate + extensionRate);
        }
    }
}
