package org.lifeline.internal.path;

import org.lifeline.internal.line.LineEnergies;
import org.lifeline.internal.line.LineState;
import org.lifeline.internal.line.LineSystem;
import org.lifeline.model.cable.LoadElongation;

/**
 * Energy that the line has taken up along the path of a load, heat of friction and work of the load; their agreement is
 * the error of a step. Not thread-safe.
 */
final class PathEnergy {
    private final LineSystem system;
    private final int load;
    private final boolean followed;
    private final PathCoordinate coordinate;
    private final LineEnergies energies;
    private final double startHeight;
    private final double startEnergy;

    /** Value and slope at three points of what is integrated, and of what by. */
    private final double[] of = new double[6];

    private final double[] by = new double[6];

    /**
     * Energies from a start.
     *
     * @param system the line
     * @param load the load that grows
     * @param followed true if the path is followed step by step
     * @param coordinate of the path
     * @param start where it starts
     */
    PathEnergy(LineSystem system, int load, boolean followed, PathCoordinate coordinate, Datum start) {
        this.system = system;
        this.load = load;
        this.followed = followed;
        this.coordinate = coordinate;
        this.energies = new LineEnergies(system);
        this.startHeight = start.height - system.pz[0];
        this.startEnergy = start.energy;
    }

    /**
     * Where descents and energies count from.
     *
     * @param height elevation [m]
     * @param energy energy of the line and of all that hangs on it but the load that grows [J]
     */
    record Datum(double height, double energy) {}

    /** Height above the first support at which the load has come down by a descent [m]. */
    double height(double descent) {
        return startHeight - descent;
    }

    /** Works out descent and energy of a point. */
    void find(PathPoint point) {
        energies.evaluate(point.state);
        double height = energies.height(point.state, load);
        point.descent = startHeight - height;
        double hanging = energies.hanging - point.state.force[load] * height;
        double held = energies.springs + energies.inlineAbsorbers;
        point.energy = energies.strain + energies.weight + held + hanging - startEnergy;
        point.energySize =
                Math.abs(energies.strain) + Math.abs(energies.weight) + Math.abs(energies.springs) + Math.abs(hanging);
    }

    /**
     * Adds to a point what the step from the point before it takes in heat and does in work.
     *
     * @param from the point before
     * @param to the point; its modes are still those of the step
     * @param third a third point of the path, used if it has the same modes
     */
    void accumulate(PathPoint from, PathPoint to, PathPoint third) {
        to.frictionHeat = from.frictionHeat;
        to.loadWork = from.loadWork;
        if (!followed) {
            return;
        }
        double step = coordinate.distance(from, to.value, to.w);
        double at = coordinate.distance(from, third.value, third.w) / step;
        boolean three = PathQuadrature.isOfUse(at)
                && third.hasTangent
                && third.state.hasModesOf(from.state)
                && to.state.hasModesOf(from.state);
        to.order = three ? PathQuadrature.ORDER_OF_THREE : PathQuadrature.ORDER_OF_TWO;
        double a = step * coordinate.perW(from);
        double b = step * coordinate.perW(to);
        double c = step * coordinate.perW(third);
        fill(of, 0, from.value, a);
        fill(of, 1, to.value, b);
        fill(of, 2, third.value, c);
        fill(by, 0, from.descent, from.descentRate * a);
        fill(by, 1, to.descent, to.descentRate * b);
        fill(by, 2, third.descent, third.descentRate * c);
        boolean kinked = three && bends(from.state, to.state);
        to.loadWork += integral(three, at);
        to.kink = kinked ? kink(at) : 0;
        for (int i = 1; i < system.spans; i++) {
            if (from.state.slip[i] != to.state.slip[i] && system.friction[i] > 0) {
                fill(of, 0, from.slipForce[i], from.slipForceRate[i] * a);
                fill(of, 1, to.slipForce[i], to.slipForceRate[i] * b);
                fill(by, 0, from.state.slip[i], from.slipRate[i] * a);
                fill(by, 1, to.state.slip[i], to.slipRate[i] * b);
                if (three) {
                    fill(of, 2, third.slipForce[i], third.slipForceRate[i] * c);
                    fill(by, 2, third.state.slip[i], third.slipRate[i] * c);
                }
                to.frictionHeat -= to.state.thermal * integral(three, at);
                if (kinked) {
                    to.kink = Math.max(to.kink, kink(at));
                }
            }
        }
    }

    private double integral(boolean three, double third) {
        return three ? PathQuadrature.integral(of, by, third) : PathQuadrature.integral(1, of, by);
    }

    /** How differently two quadratures take a step with a kink [J]. */
    private double kink(double third) {
        return Math.abs(integral(true, third) - integral(false, third));
    }

    private static void fill(double[] a, int point, double value, double slope) {
        a[2 * point] = value;
        a[2 * point + 1] = slope;
    }

    /**
     * Tells whether on a step a tension passes a corner of the cable's characteristic, or cable that slips is straight at its
     * support, where the angle turned is least. Heat and work have a kink there, and errors that can cancel.
     */
    private boolean bends(LineState from, LineState to) {
        LoadElongation law = system.law;
        for (int i = 0; law.pieces() > 1 && i < system.spans; i++) {
            int piece = law.piece(system.forces.endSideTension(from, i));
            if (piece != law.piece(system.forces.endSideTension(to, i))
                    || piece != law.piece(system.forces.startSideTension(to, i + 1))) {
                return true;
            }
        }
        for (int i = 1; i < system.spans; i++) {
            boolean slips = system.friction[i] > 0 && Math.abs(from.passage[i]) == 1;
            if (slips && !system.forces.turnsAlike(from, to, i)) {
                return true;
            }
        }
        return false;
    }

    /** How far the energy taken up over a step is from the work done on the line over it, or may be [J]. */
    static double error(PathPoint from, PathPoint to) {
        double byEnergy = taken(to) - taken(from);
        double byWork = to.loadWork - from.loadWork;
        return Math.max(Math.abs(byEnergy - byWork), to.kink);
    }

    /** Energy that the line has taken up: held, lent or turned to heat [J]. */
    static double taken(PathPoint point) {
        return point.energy + point.frictionHeat;
    }

    /** Adds to a point what it takes to come there from a state at the same force, by the trapezoidal rule. */
    void addJump(LineState from, PathPoint to, double fall) {
        if (!followed) {
            return;
        }
        to.loadWork += 0.5 * (from.force[load] + to.value) * fall;
        for (int i = 1; i < system.spans; i++) {
            double moved = to.state.slip[i] - from.slip[i];
            if (moved != 0 && system.friction[i] > 0) {
                to.frictionHeat -= 0.5 * to.state.thermal * moved * (slipForce(from, i) + slipForce(to.state, i));
            }
        }
    }

    /** Difference of T + ∫ε dT across a support [N]: what a unit of cable that slips there turns to heat. */
    private double slipForce(LineState s, int i) {
        return slipForce(system.law, system.forces.startSideTension(s, i), system.forces.endSideTension(s, i));
    }

    /** The same from the tensions on the start side and on the end side [N]. */
    static double slipForce(LoadElongation law, double start, double end) {
        return end - start + law.complementaryEnergy(end) - law.complementaryEnergy(start);
    }
}
