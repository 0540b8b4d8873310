package org.lifeline.internal.path;

import org.lifeline.internal.line.Equilibrium;
import org.lifeline.model.Lifeline;

/** The path of one load with its parts at hand, and a solver of its own beside it. */
final class PathOfALoad {
    final LineModel model;
    final int load;
    final PathEnergy.Datum datum;
    final EquilibriumPath path;
    final Equilibrium beside;

    private PathOfALoad(LineModel model, LineModel.Load load) {
        this.model = model;
        double energy = model.energy().line() + model.energy().hanging();
        new LoadPlacement(model).activate(load);
        this.load = load.index();
        this.datum = new PathEnergy.Datum(10, energy);
        this.path = new EquilibriumPath(
                model, new PathParameter.Weight(this.load), new EquilibriumPath.Scale(datum, 1000, 0));
        this.beside = new Equilibrium(model.system(), model.work());
    }

    static PathOfALoad gripped(Lifeline line, int span, double station) {
        return gripped(new LineModel(line), span, station);
    }

    static PathOfALoad gripped(LineModel model, int span, double station) {
        return new PathOfALoad(model, model.hook(span, station, true));
    }

    /** Goes on to a force; nothing ends the path. */
    PathOfALoad to(double force) {
        path.advance(force, null, 0);
        return this;
    }

    PathPoint now() {
        return path.now();
    }

    /** What passes places at which the line gives way, as the path itself has one. */
    SnapThrough snap() {
        PathEnergy energy = new PathEnergy(model.system(), load, path.isFollowed(), path.coordinate(), datum);
        return new SnapThrough(path, beside, load, energy);
    }

    /** The path ends where a depth is left of the descent. */
    static EquilibriumPath.End descent(double depth) {
        return Ends.of(point -> depth - point.descent, point -> -point.descentRate);
    }
}
