package org.lifeline.verify.state;

import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.DoubleStream;
import org.lifeline.base.Point;
import org.lifeline.base.Vector3;
import org.lifeline.base.Violations;

/**
 * Shape and energy of a piece of cable, integrated over its unstretched length s from the tension at its start alone:
 * the tension vector is t(s) = t(0) + w s up, an element ds points along it and is stretched to (1 + ε(|t|)) ds.
 *
 * <p>The range is cut at the lowest point, where a slack cable turns sharply, and where the tension passes a corner of
 * the load–elongation law; between the cuts the integrands are smooth. Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public final class PieceShape {
    private final PieceNumbers piece;
    private final ElongationTable law;
    private final Quadrature quadrature;
    private final double horizontal;
    private final double[] cuts;

    /**
     * The shape of a piece.
     *
     * @param piece the piece
     * @param law strain by tension
     * @param quadrature what to integrate with
     * @throws org.lifeline.base.InvalidInputException if one is missing
     */
    public PieceShape(PieceNumbers piece, ElongationTable law, Quadrature quadrature) {
        this.piece = Violations.required("piece", piece);
        this.law = Violations.required("law", law);
        this.quadrature = Violations.required("quadrature", quadrature);
        this.horizontal = piece.startTension().horizontal();
        this.cuts = cuts();
    }

    private double[] cuts() {
        double s = piece.length();
        double low = -piece.startTension().z() / piece.weight();
        DoubleStream inner = Arrays.stream(law.cornerTensions())
                .filter(t -> t > horizontal)
                .map(t -> Math.sqrt((t - horizontal) * (t + horizontal)) / piece.weight())
                .flatMap(d -> DoubleStream.of(low - d, low + d));
        return DoubleStream.concat(DoubleStream.of(0, low, s), inner)
                .filter(x -> x >= 0 && x <= s)
                .sorted()
                .distinct()
                .toArray();
    }

    private double vertical(double s) {
        return piece.startTension().z() + piece.weight() * s;
    }

    private double tension(double s) {
        double v = vertical(s);
        return Math.sqrt(horizontal * horizontal + v * v);
    }

    private double integrate(DoubleUnaryOperator f, double to) {
        double sum = 0;
        for (int i = 1; i < cuts.length && cuts[i - 1] < to; i++) {
            sum += quadrature.integrate(f, cuts[i - 1], Math.min(cuts[i], to));
        }
        return sum;
    }

    /** Stretched length over unstretched length, by tension. */
    private double stretch(double s) {
        double t = tension(s);
        return (1 + law.strain(t)) / t;
    }

    /**
     * Horizontal distance of the point at an unstretched length from the start.
     *
     * @param s unstretched length from the start [m]
     * @return distance [m]
     */
    public double run(double s) {
        return integrate(u -> horizontal * stretch(u), s);
    }

    /**
     * Elevation of the point at an unstretched length above the start.
     *
     * @param s unstretched length from the start [m]
     * @return rise [m], positive up
     */
    public double rise(double s) {
        return integrate(u -> vertical(u) * stretch(u), s);
    }

    /**
     * The point at an unstretched length from the start.
     *
     * @param s unstretched length from the start [m]
     * @return the point
     */
    public Point at(double s) {
        double run = run(s) / horizontal;
        Vector3 t = piece.startTension();
        return piece.start().plus(new Vector3(run * t.x(), run * t.y(), rise(s)));
    }

    /**
     * The vector from start to end that the tensions ask for.
     *
     * @return vector, components in [m]
     */
    public Vector3 span() {
        return at(piece.length()).minus(piece.start());
    }

    /**
     * The unstretched length from the start at which a horizontal distance is reached: Newton's method, bracketed.
     *
     * @param distance horizontal distance [m], not negative
     * @return length [m]
     */
    public double lengthAtRun(double distance) {
        double low = 0;
        double high = piece.length();
        double s = high * Math.min(1, distance / run(high));
        for (int k = 0; k < StateTolerances.MOST_RUN_STEPS; k++) {
            double error = run(s) - distance;
            if (error > 0) {
                high = s;
            } else {
                low = s;
            }
            double next = s - error / (horizontal * stretch(s));
            if (!(next > low && next < high)) {
                next = 0.5 * (low + high);
            }
            if (Math.abs(next - s) <= StateTolerances.RUN * piece.length() || next == low || next == high) {
                return next;
            }
            s = next;
        }
        return s;
    }

    /**
     * Strain energy of the piece.
     *
     * @return energy [J], not negative
     */
    public double strainEnergy() {
        return integrate(s -> law.energy(tension(s)), piece.length());
    }

    /**
     * Potential energy of the piece's weight above a level, w ∫(z − level) ds, integrated by parts.
     *
     * @param level elevation that heights count from [m]
     * @return energy [J]
     */
    public double weightEnergy(double level) {
        double s = piece.length();
        double lever = integrate(u -> (s - u) * vertical(u) * stretch(u), s);
        return piece.weight() * (s * (piece.start().z() - level) + lever);
    }
}
