package org.lifeline.internal.path;

import org.lifeline.internal.line.LineState;
import org.lifeline.internal.line.LineSystem;

/** A point of a {@link LoadPath}: the state, what it took to come there, and rates by the force. Not thread-safe. */
final class PathNode {
    /** Stands for a point that there is not yet; is never written to. */
    static final PathNode NONE = new PathNode(0, 0, 0, 0);

    final LineState state;
    final double[] tangent;
    final double[] slipRate;
    final double[] drop;
    final double[] dropRate;
    boolean hasTangent;
    double force;

    /** See {@link PathRates}; belongs to the force. */
    double way;

    double descent;
    double descentRate;
    double energy;

    /** Magnitude of the parts whose differences make the energy: how far rounding can matter [J]. */
    double size;

    double heat;
    double pathWork;

    /** Order in the step of the error of heat and work. */
    int order = 5;

    /** A point; with the rates that friction needs, if the path is followed. */
    PathNode(LineSystem s, boolean follow) {
        this(s.spans, s.loads, s.unknowns(), follow ? s.spans + 1 : 0);
    }

    private PathNode(int spans, int loads, int unknowns, int supports) {
        state = new LineState(spans, loads);
        tangent = new double[unknowns];
        slipRate = new double[supports];
        drop = new double[supports];
        dropRate = new double[supports];
    }

    void set(PathNode from) {
        state.set(from.state);
        System.arraycopy(from.tangent, 0, tangent, 0, tangent.length);
        System.arraycopy(from.slipRate, 0, slipRate, 0, slipRate.length);
        System.arraycopy(from.drop, 0, drop, 0, drop.length);
        System.arraycopy(from.dropRate, 0, dropRate, 0, dropRate.length);
        hasTangent = from.hasTangent;
        force = from.force;
        way = from.way;
        descent = from.descent;
        descentRate = from.descentRate;
        energy = from.energy;
        size = from.size;
        heat = from.heat;
        pathWork = from.pathWork;
        order = from.order;
    }
}
