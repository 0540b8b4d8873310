package org.lifeline.verify.state;

import java.util.List;
import org.lifeline.base.Violations;
import org.lifeline.model.absorber.LoadingCurve;

/**
 * A loading curve read off its corners. A vertical piece, at a rigid start or a rigid stop, gives a range of forces.
 *
 * <p>Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public final class LoadingTable {
    private final List<LoadingCurve.Corner> corners;
    private final double stop;
    private final Quadrature quadrature;

    /**
     * The table of a curve.
     *
     * @param curve the curve
     * @param quadrature what to integrate with
     * @throws org.lifeline.base.InvalidInputException if one is missing
     */
    public LoadingTable(LoadingCurve curve, Quadrature quadrature) {
        this.corners = Violations.required("curve", curve).corners();
        this.stop = curve.stopStiffness();
        this.quadrature = Violations.required("quadrature", quadrature);
    }

    /**
     * The last corner, where the stop begins.
     *
     * @return the corner
     */
    public LoadingCurve.Corner last() {
        return corners.get(corners.size() - 1);
    }

    /**
     * Least force at an extension.
     *
     * @param x extension [m]
     * @return force [N]; infinite behind a rigid stop; not a number where the extension is none
     */
    public double lower(double x) {
        if (Double.isNaN(x)) {
            return Double.NaN;
        }
        if (x <= 0) {
            return 0;
        }
        if (x > last().extension()) {
            return last().force() + stop * (x - last().extension());
        }
        int i = 1;
        while (corners.get(i).extension() < x) {
            i++;
        }
        return between(corners.get(i - 1), corners.get(i), x);
    }

    /**
     * Greatest force at an extension.
     *
     * @param x extension [m]
     * @return force [N]; infinite at a rigid stop
     */
    public double upper(double x) {
        if (x == last().extension() && Double.isInfinite(stop)) {
            return Double.POSITIVE_INFINITY;
        }
        return x == 0 ? corners.get(0).force() : lower(x);
    }

    /**
     * Work up to an extension.
     *
     * @param x extension [m]
     * @return ∫F dx [J]
     */
    public double work(double x) {
        double sum = 0;
        double from = 0;
        for (LoadingCurve.Corner corner : corners) {
            double to = Math.min(x, corner.extension());
            if (to > from) {
                sum += quadrature.integrate(this::lower, from, to);
                from = to;
            }
        }
        return x > from ? sum + quadrature.integrate(this::lower, from, x) : sum;
    }

    /**
     * The point of the curve from which a thing that was unloaded along a straight line came: the extension y, not
     * below x, with F(y) − k (y − x) = force.
     *
     * @param x extension [m]
     * @param force force now [N]
     * @param k stiffness of the straight line [N/m]
     * @return y [m]; x itself where the force is on or above the curve; the last corner for a point on the stop, which is
     *     elastic or rigid and leaves nothing, and for one that no unloading leads to
     */
    public double unloadedFrom(double x, double force, double k) {
        double end = last().extension();
        if (Double.isInfinite(k) || x >= end || lower(x) * (1 - StateTolerances.ON_CURVE) <= force) {
            return Math.min(x, end);
        }
        double a = x;
        for (LoadingCurve.Corner corner : corners) {
            double b = corner.extension();
            if (b > a) {
                double atA = lower(a) - k * (a - x) - force;
                double atB = lower(b) - k * (b - x) - force;
                if (atB <= StateTolerances.ON_CURVE * lower(b)) {
                    return atB <= 0 ? a + (b - a) * atA / (atA - atB) : b;
                }
                a = b;
            }
        }
        return end;
    }

    /**
     * How far an extension lies beyond all that its force can come with: the stop, or the line of unloading from the last
     * corner.
     *
     * @param x extension [m]
     * @param force force [N]
     * @param k stiffness of unloading [N/m]
     * @return excess [m]; 0 where there is none
     */
    public double beyondReach(double x, double force, double k) {
        double over = force - last().force();
        double reach = last().extension() + over / (over > 0 ? stop : k);
        return Math.max(0, x - reach);
    }

    private static double between(LoadingCurve.Corner a, LoadingCurve.Corner b, double x) {
        return a.force() + (x - a.extension()) * (b.force() - a.force()) / (b.extension() - a.extension());
    }
}
