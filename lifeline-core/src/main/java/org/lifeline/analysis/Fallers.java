package org.lifeline.analysis;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.function.Supplier;
import org.lifeline.internal.balance.FallBalance;
import org.lifeline.internal.balance.UnequalFallers;
import org.lifeline.internal.path.LoadPath;
import org.lifeline.model.Fall;
import org.lifeline.model.Worker;
import org.lifeline.model.absorber.DeploymentForce;
import org.lifeline.model.absorber.LoadingCurve;

/** Those who fall together at one place: alike, under one extension; or not, each under their own. */
final class Fallers {
    private final Fall fall;
    private final List<UnequalFallers.Faller> list = new ArrayList<>();
    private final double weight;
    private final double meanFreeFall;

    /** The loading curve of all connections side by side. */
    private final LoadingCurve together;

    Fallers(Fall fall, Sided at, double gravity, double lineElevation) {
        this.fall = fall;
        double moments = 0;
        for (Worker each : fall.fallers()) {
            double h = fall.freeFall()
                    .orElseGet(() -> each.connection().freeFall(lineElevation - each.harnessElevation()));
            list.add(new UnequalFallers.Faller(
                    each.mass() * gravity, each.connection().curve(at.side(), at.temperature()), h));
            moments += h * each.mass() / fall.fallingMass();
        }
        this.weight = fall.fallingMass() * gravity;
        this.meanFreeFall = moments;
        List<LoadingCurve> curves = new ArrayList<>(list.size());
        for (UnequalFallers.Faller each : list) {
            curves.add(each.curve());
        }
        this.together = LoadingCurve.parallel(curves);
    }

    /**
     * What the curve of each depends on.
     *
     * @param side side of the force range
     * @param temperature temperature of the arrest [°C]
     */
    record Sided(DeploymentForce side, double temperature) {}

    /**
     * Force on the line, and extension and force of each, at the lowest point.
     *
     * @param force force on the line [N]
     * @param extensions extension of each connection [m]
     * @param forces force of each connection [N]
     * @param isBound true if they are bounds on the safe side
     */
    record LowestPoint(double force, List<Double> extensions, List<Double> forces, boolean isBound) {
        double largestForce() {
            return Collections.max(forces);
        }
    }

    /** Tells whether all have the same weight, free fall and connection: then one extension is exact. */
    boolean areAlike() {
        for (int i = 1; i < list.size(); i++) {
            if (!list.get(i).equals(list.get(0))) {
                return false;
            }
        }
        return true;
    }

    double longestFreeFall() {
        double longest = 0;
        for (UnequalFallers.Faller each : list) {
            longest = Math.max(longest, each.freeFall());
        }
        return longest;
    }

    double energyScale() {
        return weight * (meanFreeFall + 1);
    }

    /** Follows the path to the lowest point under one extension. */
    LowestPoint together(LoadPath path) {
        double x = new FallBalance(weight, together, meanFreeFall).solve(path);
        double p = path.force();
        int n = list.size();
        return new LowestPoint(p, Collections.nCopies(n, x), Collections.nCopies(n, p / n), false);
    }

    /** Bounds for those who are not alike, from paths that each start before the fall. */
    LowestPoint bound(Supplier<LoadPath> paths) {
        List<UnequalFallers.Bound> bounds = new UnequalFallers(list, paths).solve();
        return new LowestPoint(
                UnequalFallers.total(bounds),
                bounds.stream().map(UnequalFallers.Bound::extension).toList(),
                bounds.stream().map(UnequalFallers.Bound::force).toList(),
                true);
    }

    /** Energy set free by all, down to the lowest point [J]. */
    double energy(double descent, LowestPoint found) {
        if (!found.isBound()) {
            return weight * (meanFreeFall + descent + found.extensions().get(0));
        }
        double sum = 0;
        for (int i = 0; i < list.size(); i++) {
            sum += list.get(i).weight()
                    * (list.get(i).freeFall() + descent + found.extensions().get(i));
        }
        return sum;
    }

    /** Work taken by the connections [J]. */
    double connection(LowestPoint found) {
        if (!found.isBound()) {
            return together.work(found.extensions().get(0));
        }
        double sum = 0;
        for (int i = 0; i < list.size(); i++) {
            sum += list.get(i).curve().work(found.extensions().get(i));
        }
        return sum;
    }

    boolean bottomedOut(LowestPoint found) {
        for (int i = 0; i < list.size(); i++) {
            double most = fall.fallers().get(i).connection().maximumExtension();
            double x = found.extensions().get(i);
            double last = list.get(i).curve().lastForce();
            if (x > most || (x == most && found.forces().get(i) > last * (1 + Tolerances.FLAT))) {
                return true;
            }
        }
        return false;
    }
}
