package org.lifeline.internal.path;

import org.jspecify.annotations.Nullable;
import org.lifeline.base.NoEquilibriumException;
import org.lifeline.internal.line.LineEnergy;

/**
 * The path along which one load on a line grows: force, descent of the load, energy taken up by the line.
 *
 * <p>Not thread-safe.
 */
public final class LoadPath {
    /** A quantity that starts at or above zero and at whose first root along the path it ends. */
    @FunctionalInterface
    public interface EndCondition {
        /**
         * The quantity.
         *
         * @param path the path, at a point
         * @return the quantity [J]
         */
        double at(LoadPath path);

        /**
         * Its derivative by the force, which speeds up the search; need not hold at corners.
         *
         * @param force force [N]
         * @param descentRate derivative of the descent by the force [m/N]
         * @return derivative [J/N]; NaN if it is not known
         */
        default double slope(double force, double descentRate) {
            return Double.NaN;
        }
    }

    private final EquilibriumPath path;
    private final LineEnergy energyBefore;

    /** The point that is looked at while an end condition is asked. */
    private @Nullable PathPoint shown;

    /**
     * A path that starts at the model's current state.
     *
     * @param model the line; follows the path
     * @param load the load that grows; takes part from now on
     * @param startHeight elevation from which the descent of the load counts [m]
     * @param energyScale an energy against which errors of the path are measured [J], above zero
     */
    public LoadPath(LineModel model, LineModel.Load load, double startHeight, double energyScale) {
        this.energyBefore = model.energy();
        double others = energyBefore.hanging() - model.energyOf(load);
        new LoadPlacement(model).activate(load);
        PathEnergy.Datum datum = new PathEnergy.Datum(startHeight, energyBefore.line() + others);
        this.path = new EquilibriumPath(
                model,
                new PathParameter.Weight(load.index()),
                new EquilibriumPath.Scale(datum, energyScale, PathTolerances.OF_WHAT_COMES));
    }

    private PathPoint point() {
        return shown == null ? path.now() : shown;
    }

    /**
     * Energies of the line before the load took part.
     *
     * @return the parts
     */
    public LineEnergy energyBefore() {
        return energyBefore;
    }

    /**
     * Force at the current point.
     *
     * @return force [N]
     */
    public double force() {
        return point().value;
    }

    /**
     * Largest force so far on the path: above {@link #force} only while the line gives way.
     *
     * @return force [N]
     */
    public double peakForce() {
        return Math.max(force(), path.peak());
    }

    /**
     * Tells whether the line gave way somewhere on the path, at a force that fell while the load went down.
     *
     * @return true if it did
     */
    public boolean gaveWay() {
        return path.jumped();
    }

    /**
     * Descent of the load at the current point.
     *
     * @return descent from the start height [m], positive down
     */
    public double descent() {
        return point().descent;
    }

    /**
     * Energy that the line has taken up since the start: stored, turned to heat, or lent to loads that it lifted.
     *
     * @return energy [J]
     */
    public double work() {
        return PathEnergy.taken(point());
    }

    /**
     * Heat of friction at the supports since the start.
     *
     * @return heat [J]
     */
    public double frictionHeat() {
        return point().frictionHeat;
    }

    /**
     * Work done by the load, by quadrature over the steps taken.
     *
     * @return ∫P dδ [J]; NaN unless the path is followed, since only then steps are kept short, and NaN where the line
     *     gave way
     */
    public double pathWork() {
        return path.isFollowed() && !gaveWay() ? path.now().loadWork : Double.NaN;
    }

    /**
     * Tells whether the state depends on the way to it, as with friction, so that the path is followed step by step.
     *
     * @return true if it does
     */
    public boolean isFollowed() {
        return path.isFollowed();
    }

    /**
     * An exception for a search along the path that came to nothing.
     *
     * @param what what was sought
     * @return the exception
     */
    public NoEquilibriumException failure(String what) {
        return path.failure(what, 0);
    }

    /**
     * Goes on to a force, unless the end comes first.
     *
     * @param target force to go to [N], not lower than the current one
     * @param end must be continuous along the path
     * @param watchFrom force below which the end is not looked for [N]
     * @return true if the end was met
     */
    public boolean advance(double target, EndCondition end, double watchFrom) {
        return path.advance(target, new Shown(end), watchFrom);
    }

    /** Asks an end condition about points that are not the current one. */
    private final class Shown implements EquilibriumPath.End {
        private final EndCondition end;

        Shown(EndCondition end) {
            this.end = end;
        }

        @Override
        public double value(PathPoint point) {
            shown = point;
            double value = end.at(LoadPath.this);
            shown = null;
            return value;
        }

        @Override
        public double slope(PathPoint point) {
            return end.slope(point.value, point.descentRate);
        }
    }
}
