package org.lifeline.internal.mechanics;

/** A point of a {@link LoadPath}: the state, what it took to come there, and rates by the force. Not thread-safe. */
final class PathNode {
    final LineState state;
    final double[] tangent;
    final double[] slipRate;
    final double[] drop;
    final double[] dropRate;
    boolean hasTangent;
    double force;
    double descent;
    double descentRate;
    double energy;

    /** Magnitude of the parts whose differences make the energy: how far rounding can matter [J]. */
    double size;

    double heat;
    double pathWork;

    PathNode(LineSystem s) {
        state = new LineState(s.spans, s.loads);
        tangent = new double[s.unknowns()];
        slipRate = new double[s.spans + 1];
        drop = new double[s.spans + 1];
        dropRate = new double[s.spans + 1];
    }
}
