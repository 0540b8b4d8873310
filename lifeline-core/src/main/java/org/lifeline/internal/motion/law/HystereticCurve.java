package org.lifeline.internal.motion.law;

import java.util.List;
import org.lifeline.model.absorber.LoadingCurve;

/**
 * Force against extension of an absorber or a lanyard that remembers how far it was torn open.
 *
 * <p>On first loading it follows its curve. Below the largest extension reached so far it unloads and reloads along a
 * straight line with the unloading stiffness, down to no force; what is left is permanent and is never given back.
 * Beyond the last corner the stop is an elastic spring. The unloading stiffness is the initial one, or the steepest
 * piece of the curve if that is steeper, so that no cycle gives back more than it took.
 *
 * <p>Rigid starts and stops get a large finite stiffness, and nothing is steeper. Mutable, not thread-safe.
 */
public final class HystereticCurve {
    private final double[] x;
    private final double[] f;
    private final double stop;
    private final double unloading;
    private double yielded;
    private double yieldForce;
    private int piece;

    /**
     * A curve that nothing has happened to.
     *
     * @param curve force on first loading
     * @param stiffest stiffness that stands for a rigid start or stop [N/m]; steeper parts get it as well
     */
    public HystereticCurve(LoadingCurve curve, double stiffest) {
        List<LoadingCurve.Corner> corners = curve.corners();
        int n = corners.size();
        boolean rigidStart = curve.rigidForce() > 0;
        int shift = rigidStart ? 1 : 0;
        x = new double[n + shift];
        f = new double[n + shift];
        for (int i = 0; i < n; i++) {
            x[i + shift] = corners.get(i).extension();
            f[i + shift] = corners.get(i).force();
        }
        if (rigidStart) {
            double room = n > 1 ? 0.5 * x[2] : Double.POSITIVE_INFINITY;
            x[1] = Math.min(f[1] / stiffest, room);
            for (int i = 2; i < x.length; i++) {
                x[i] = Math.max(x[i], x[i - 1]);
            }
        }
        double shifted = 0;
        for (int i = 1; i < x.length; i++) {
            // Loading and unloading must be limited alike, or a cycle would give back more than it took.
            double run = x[i] + shifted - x[i - 1];
            double least = (f[i] - f[i - 1]) / stiffest;
            x[i] = x[i - 1] + Math.max(run, least);
            shifted += Math.max(0, least - run);
        }
        stop = Math.min(curve.stopStiffness(), stiffest);
        double steepest = Math.min(curve.initialStiffness(), stiffest);
        if (curve.initialStiffness() == Double.POSITIVE_INFINITY && !rigidStart) {
            steepest = 0;
        }
        for (int i = 1; i < x.length; i++) {
            steepest = Math.max(steepest, (f[i] - f[i - 1]) / (x[i] - x[i - 1]));
        }
        unloading = steepest > 0 ? Math.min(steepest, stiffest) : stop;
    }

    /**
     * Largest finite stiffness of a curve, of its start and of its pieces.
     *
     * @param curve the curve
     * @return stiffness [N/m]; 0 if all are rigid or flat
     */
    public static double stiffest(LoadingCurve curve) {
        double most = finite(curve.initialStiffness());
        for (int i = 0; i < curve.pieces(); i++) {
            most = Math.max(most, finite(curve.slopeOfPiece(i)));
        }
        return most;
    }

    private static double finite(double stiffness) {
        return stiffness < Double.POSITIVE_INFINITY ? stiffness : 0;
    }

    /**
     * Extension at which the stop takes over.
     *
     * @return extension [m]
     */
    public double end() {
        return x[x.length - 1];
    }

    /**
     * Largest slope anywhere.
     *
     * @return slope [N/m]
     */
    public double steepest() {
        return Math.max(unloading, stop);
    }

    /**
     * Extension that would remain without force.
     *
     * @return extension [m], not negative
     */
    public double permanent() {
        return Math.max(0, yielded - yieldForce / unloading);
    }

    /**
     * Takes an extension as one that was reached before.
     *
     * @param extension extension [m]
     */
    public void tear(double extension) {
        force(extension);
    }

    /** Force on the curve of first loading [N]. */
    private double loading(int i, double y) {
        return f[i] + (f[i + 1] - f[i]) / (x[i + 1] - x[i]) * (y - x[i]);
    }

    /**
     * Force at an extension, which is remembered.
     *
     * @param y extension beyond the taut length [m], any sign
     * @return force [N], not negative
     */
    public double force(double y) {
        int last = x.length - 1;
        if (y >= yielded) {
            while (piece < last && y > x[piece + 1]) {
                piece++;
            }
            if (piece == last) {
                yielded = x[last];
                yieldForce = f[last];
                return f[last] + stop * (y - x[last]);
            }
            yielded = y;
            yieldForce = loading(piece, y);
            return yieldForce;
        }
        return Math.max(0, yieldForce - unloading * (yielded - y));
    }

    /**
     * The straight line that holds at an extension.
     *
     * @param y extension [m]
     * @return −1 for the line of unloading, otherwise the piece of the curve
     */
    public int lineAt(double y) {
        if (y <= yielded) {
            return -1;
        }
        int i = piece;
        while (i < x.length - 1 && y > x[i + 1]) {
            i++;
        }
        return i;
    }

    /**
     * The line of the stop.
     *
     * @return its number
     */
    public int stopLine() {
        return x.length - 1;
    }

    /**
     * Slope of a line.
     *
     * @param line see {@link #lineAt}
     * @return slope [N/m]
     */
    public double slopeOf(int line) {
        if (line < 0) {
            return unloading;
        }
        return line == x.length - 1 ? stop : (f[line + 1] - f[line]) / (x[line + 1] - x[line]);
    }

    /**
     * Force on a line, also beyond its ends.
     *
     * @param line see {@link #lineAt}
     * @param y extension [m]
     * @return force [N], of any sign
     */
    public double forceOn(int line, double y) {
        return line < 0 ? yieldForce - unloading * (yielded - y) : f[line] + slopeOf(line) * (y - x[line]);
    }

    /**
     * Force at an extension that is only thought of: what was torn open so far stays as it is.
     *
     * @param y extension beyond the taut length [m], any sign
     * @return force [N], not negative
     */
    public double forceIf(double y) {
        return Math.max(0, forceOn(lineAt(y), y));
    }

    /**
     * Least extension at which a force is held on the way up.
     *
     * @param force force [N]
     * @return extension [m]
     */
    public double extensionFor(double force) {
        double y = yielded - (yieldForce - force) / unloading;
        if (y <= yielded) {
            return y;
        }
        for (int i = piece; i < x.length - 1; i++) {
            if (force <= f[i + 1]) {
                return x[i] + (force - f[i]) / slopeOf(i);
            }
        }
        return x[x.length - 1] + (force - f[x.length - 1]) / stop;
    }
}
