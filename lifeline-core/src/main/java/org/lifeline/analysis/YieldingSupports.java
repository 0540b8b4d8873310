package org.lifeline.analysis;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.lifeline.base.Convergence;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.NoEquilibriumException;
import org.lifeline.base.Point;
import org.lifeline.base.Vector3;
import org.lifeline.internal.numeric.DenseSystem;
import org.lifeline.internal.path.LineModel;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Stiffness;
import org.lifeline.model.Support;

/**
 * Where elastic supports come to stand when a line is tensioned between them: displacement u with u = R(u)/k in every elastic
 * direction, R the reaction of the installed line on the displaced supports. Newton's method, its tangent from differences.
 */
final class YieldingSupports {
    /** Step of the difference quotients, over the span [-]: about the root of rounding. */
    private static final double DIFFERENCE = 1e-7;

    /** Displacement still missing, over the span, that counts as none [-]. */
    private static final double CONVERGED = 1e-11;

    private static final int MOST_STEPS = 40;

    /** Shortest share of a step that is tried [-]. */
    private static final double SHORTEST = 1e-4;

    private final Lifeline line;
    private final List<Direction> directions = new ArrayList<>();
    private final double scale;

    /** An elastic direction of a support: its number, axis (0, 1, 2) and stiffness [N/m]. */
    private record Direction(int support, int axis, double stiffness) {}

    YieldingSupports(Lifeline line) {
        this.line = line;
        for (int i = 0; i < line.supports().size(); i++) {
            Stiffness k = line.supports().get(i).stiffness();
            double[] axes = {k.x(), k.y(), k.z()};
            for (int c = 0; c < 3; c++) {
                if (!Double.isInfinite(axes[c])) {
                    directions.add(new Direction(i, c, axes[c]));
                }
            }
        }
        this.scale = line.run(1);
    }

    Lifeline yielded() {
        double[] u = new double[directions.size()];
        double[] missing = missing(u);
        if (missing == null) {
            // Says why it cannot hang even between supports that do not yield.
            missing = reactions(at(u), u);
        }
        int steps = 0;
        while (worst(missing) > CONVERGED * scale) {
            double[] next = steps++ < MOST_STEPS ? step(u, missing) : null;
            double[] left = next == null ? null : missing(next);
            if (next == null || left == null) {
                throw new NoEquilibriumException(
                        "supports that yield as the line is tensioned",
                        0,
                        new Convergence(steps, worst(missing) / scale, CONVERGED));
            }
            u = next;
            missing = left;
        }
        return at(u);
    }

    /** The positions before, of a line whose positions are those as installed: back by R/k in every elastic direction. */
    Lifeline unloaded() {
        // With no displacements yet, what is missing is −R/k.
        return at(reactions(line, new double[directions.size()]));
    }

    /** The next displacements, from a full Newton step or the part of it that comes nearer; null where none does. */
    private double @Nullable [] step(double[] u, double[] missing) {
        int n = u.length;
        double[][] tangent = new double[n][n];
        double h = DIFFERENCE * scale;
        for (int j = 0; j < n; j++) {
            double[] moved = u.clone();
            moved[j] += h;
            double[] there = missing(moved);
            if (there == null) {
                return null;
            }
            for (int i = 0; i < n; i++) {
                tangent[i][j] = (there[i] - missing[i]) / h;
            }
        }
        double[] change = missing.clone();
        if (!DenseSystem.solve(tangent, change)) {
            return null;
        }
        for (double share = 1; share >= SHORTEST; share /= 2) {
            double[] next = u.clone();
            for (int i = 0; i < n; i++) {
                next[i] -= share * change[i];
            }
            double[] left = missing(next);
            if (left != null && worst(left) < worst(missing)) {
                return next;
            }
        }
        return null;
    }

    /** How far each displacement is from what the reactions make [m]; null where the line cannot hang so. */
    private double @Nullable [] missing(double[] u) {
        try {
            return reactions(at(u), u);
        } catch (InvalidInputException e) {
            return null;
        }
    }

    private double[] reactions(Lifeline moved, double[] u) {
        LineModel model = new LineModel(moved);
        double[] missing = new double[u.length];
        for (int i = 0; i < u.length; i++) {
            Direction d = directions.get(i);
            Vector3 r = model.reaction(d.support);
            missing[i] = u[i] - (d.axis == 0 ? r.x() : d.axis == 1 ? r.y() : r.z()) / d.stiffness;
        }
        return missing;
    }

    private Lifeline at(double[] u) {
        double[][] shift = new double[line.supports().size()][3];
        for (int i = 0; i < u.length; i++) {
            shift[directions.get(i).support][directions.get(i).axis] = u[i];
        }
        int[] number = {0};
        return line.withSupports(s -> moved(s, shift[number[0]++]));
    }

    private static Support moved(Support s, double[] by) {
        Point p = s.position();
        return s.withPosition(Point.of(p.x() + by[0], p.y() + by[1], p.z() + by[2]));
    }

    private static double worst(double[] values) {
        double most = 0;
        for (double each : values) {
            most = Math.max(most, Math.abs(each));
        }
        return most;
    }
}
