package org.lifeline.internal.path;

import org.jspecify.annotations.Nullable;
import org.lifeline.internal.line.Equilibrium;
import org.lifeline.internal.line.FreeLineStart;
import org.lifeline.internal.numeric.RootBracket;
import org.lifeline.internal.numeric.RootBracket.Sample;

/**
 * Where the end of a path is about to come on a long line that runs freely over its intermediate anchors: by the two unknowns
 * of {@link FreeLineStart}, whose cost does not grow with the number of spans, instead of by equilibria of the whole line. Only
 * where the search begins depends on it, not what it finds.
 *
 * <p>In w of {@link PathCoordinate} the descent is nearly straight from step to step, which leaves ∫P dw, a polynomial, for
 * the energy. Not thread-safe.
 */
final class PathForecast {
    private final PathCoordinate coordinate;
    private final FreeLineStart line;

    /** Stands for a point of the path when its end is asked for. */
    private final PathPoint point;

    /** Height at which the load would hang with no descent, by the two unknowns [m]. */
    private double datum;

    /** The last point before the end that was looked at. */
    private double w;

    private double descent;
    private double energy;

    private final RootBracket bracket = new RootBracket();

    private PathForecast(PathCoordinate coordinate, FreeLineStart line, PathPoint point) {
        this.coordinate = coordinate;
        this.line = line;
        this.point = point;
    }

    /** The forecast of a path; null where the line is short, or another one. */
    static @Nullable PathForecast of(EquilibriumPath path, Equilibrium equilibrium) {
        boolean served = equilibrium.system.spans >= PathTolerances.MANY_SPANS;
        FreeLineStart line = served ? equilibrium.freeLine(path.now().state) : null;
        return line == null
                ? null
                : new PathForecast(path.coordinate(), line, new PathPoint(equilibrium.system, false));
    }

    /**
     * The value at which the end comes, roughly.
     *
     * @param now where the path is
     * @param target value up to which it is looked for
     * @param end the end
     * @param watchFrom value below which it is not
     * @return the value; NaN if there is none, or it cannot be foreseen
     */
    double end(PathPoint now, double target, EquilibriumPath.End end, double watchFrom) {
        if (!line.solve(now.value)) {
            return Double.NaN;
        }
        datum = line.height() + now.descent;
        descent = now.descent;
        energy = now.energy;
        w = now.w;
        double step = (coordinate.w(target) - w) / PathTolerances.FORECAST_STEPS;
        double left = Double.NaN;
        for (int k = 0; k < PathTolerances.FORECAST_STEPS; k++) {
            if (!look(w + step)) {
                return Double.NaN;
            }
            double value = end.value(point);
            if (point.value > watchFrom && value < 0) {
                Sample beyond = new Sample(w + step, value, Double.NaN);
                double found = left > 0 ? between(end, new Sample(w, left, Double.NaN), beyond) : point.value;
                return Math.max(watchFrom, found);
            }
            left = value;
            keep(w + step);
        }
        return Double.NaN;
    }

    private double between(EquilibriumPath.End end, Sample low, Sample high) {
        bracket.begin(low, high);
        for (int k = 0; k < PathTolerances.FORECAST_ROUNDS; k++) {
            double at = bracket.next();
            if (!look(at)) {
                return Double.NaN;
            }
            Sample sample = new Sample(at, end.value(point), Double.NaN);
            boolean beyond = sample.value() < 0;
            bracket.add(sample, beyond);
            if (!beyond) {
                keep(at);
            }
        }
        return coordinate.value(bracket.next());
    }

    /** Sets the point at a place further on than the kept one; false where nothing was found. */
    private boolean look(double at) {
        point.w = at;
        point.value = coordinate.value(at);
        if (!line.solve(point.value)) {
            return false;
        }
        point.descent = datum - line.height();
        double descentRate = (point.descent - descent) / (at - w);
        point.energy = energy + descentRate * (coordinate.integral(at) - coordinate.integral(w));
        return true;
    }

    /** Goes on to the point that was looked at. */
    private void keep(double at) {
        w = at;
        descent = point.descent;
        energy = point.energy;
    }
}
