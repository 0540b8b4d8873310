package org.lifeline.internal.path;

import org.lifeline.internal.line.LineState;
import org.lifeline.internal.line.LineSystem;

/** A point of a path: the state, what it took to come there, and rates by the parameter. Not thread-safe. */
final class PathPoint {
    /** Stands for a point that there is not yet; is never written to. */
    static final PathPoint NONE = new PathPoint(0, 0, 0, 0);

    final LineState state;

    /** Derivatives of the unknowns. */
    final double[] tangent;

    /** Derivative of the cable that has passed each support [m by the parameter]. */
    final double[] slipRate;

    /** Difference of T + ∫ε dT across each support, end side less start side [N], and its derivative. */
    final double[] slipForce;

    final double[] slipForceRate;
    boolean hasTangent;

    /** The parameter [its unit], and its {@link PathCoordinate} [-]. */
    double value;

    double w;

    /** Descent of the load [m], and its derivative. */
    double descent;

    double descentRate;

    /** Energy that the line holds since the start of the path, without the load that grows [J]. */
    double energy;

    /** Magnitude of the parts whose differences make the energy: how far rounding can matter [J]. */
    double energySize;

    /** Heat of friction since the start of the path [J]. */
    double frictionHeat;

    /** ∫P dδ since the start of the path, by quadrature [J]. */
    double loadWork;

    /** How far heat and work of the step that led here may be off by a kink that two quadratures take differently [J]. */
    double kink;

    /** Error by the trapezoidal rule of the step that led here, where there is no work to judge by [-]. */
    double error;

    /** Order in the step of that error. */
    int order = PathQuadrature.ORDER_OF_TWO;

    /** A point; with the rates at supports, if the path is followed. */
    PathPoint(LineSystem s, boolean followed) {
        this(s.spans, s.loads, s.unknowns.count(), followed ? s.spans + 1 : 0);
    }

    private PathPoint(int spans, int loads, int unknowns, int supports) {
        state = new LineState(spans, loads);
        tangent = new double[unknowns];
        slipRate = new double[supports];
        slipForce = new double[supports];
        slipForceRate = new double[supports];
    }

    void set(PathPoint from) {
        state.set(from.state);
        System.arraycopy(from.tangent, 0, tangent, 0, tangent.length);
        System.arraycopy(from.slipRate, 0, slipRate, 0, slipRate.length);
        System.arraycopy(from.slipForce, 0, slipForce, 0, slipForce.length);
        System.arraycopy(from.slipForceRate, 0, slipForceRate, 0, slipForceRate.length);
        hasTangent = from.hasTangent;
        value = from.value;
        w = from.w;
        descent = from.descent;
        descentRate = from.descentRate;
        energy = from.energy;
        energySize = from.energySize;
        frictionHeat = from.frictionHeat;
        loadWork = from.loadWork;
        kink = from.kink;
        error = from.error;
        order = from.order;
    }
}
