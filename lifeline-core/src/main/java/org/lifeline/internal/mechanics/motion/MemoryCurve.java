package org.lifeline.internal.mechanics.motion;

import java.util.List;
import org.lifeline.model.LoadingCurve;

/**
 * Force against extension of an absorber or a lanyard that remembers how far it was torn open.
 *
 * <p>On first loading it follows its curve. Below the largest extension reached so far it unloads and reloads along a
 * straight line with the unloading stiffness, down to no force; what is left is permanent and is never given back.
 * Beyond the last corner the stop is an elastic spring. The unloading stiffness is the initial one, or the steepest
 * piece of the curve if that is steeper, so that no cycle gives back more than it took.
 *
 * <p>Rigid starts and stops get a large finite stiffness. Mutable, not thread-safe.
 */
final class MemoryCurve {
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
     * @param stiffest stiffness that stands for a rigid start or stop [N/m]
     */
    MemoryCurve(LoadingCurve curve, double stiffest) {
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

    /** Extension at which the stop takes over [m]. */
    double end() {
        return x[x.length - 1];
    }

    /** Largest slope anywhere [N/m]. */
    double steepest() {
        return Math.max(unloading, stop);
    }

    /** Extension that would remain without force [m]. */
    double permanent() {
        return Math.max(0, yielded - yieldForce / unloading);
    }

    /** Takes an extension as one that was reached before. */
    void tear(double extension) {
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
    double force(double y) {
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
     * Extension at which the force agrees with one that falls linearly with the extension: F(y) = a − b (y − from).
     * Nothing is remembered.
     *
     * @param a force at the extension it starts from [N]
     * @param b fall of that force with the extension [N/m], above zero
     * @param from extension it starts from [m]
     * @return the extension [m]; the permanent one if nothing pulls
     */
    double meet(double a, double b, double from) {
        double y = (a + b * from - yieldForce + unloading * yielded) / (b + unloading);
        if (y <= yielded) {
            return Math.max(y, permanent());
        }
        int last = x.length - 1;
        for (int i = piece; i < last; i++) {
            double slope = (f[i + 1] - f[i]) / (x[i + 1] - x[i]);
            y = (a + b * from - f[i] + slope * x[i]) / (b + slope);
            if (y <= x[i + 1]) {
                return Math.max(y, yielded);
            }
        }
        return (a + b * from - f[last] + stop * x[last]) / (b + stop);
    }
}
