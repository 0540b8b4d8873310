package org.lifeline.internal.line;

import org.lifeline.internal.numeric.BandMatrix;

/** Residuals and tangent of a {@link LineSystem} while they are being assembled. Not thread-safe. */
public final class LineEquations {
    private final LineSystem system;
    private final Unknowns unknowns;
    public final BandMatrix matrix;
    public final double[] residual;

    /** The largest residual over its scale [-]. */
    public double worst;

    /** Sum of the squares of the residuals over their scales [-]. */
    public double merit;

    LineEquations(LineSystem system) {
        this.system = system;
        this.unknowns = system.unknowns;
        this.matrix = new BandMatrix(unknowns.count(), unknowns.lower, unknowns.upper);
        this.residual = new double[unknowns.count()];
    }

    void clear(boolean tangent) {
        if (tangent) {
            matrix.clear();
        }
        worst = 0;
        merit = 0;
    }

    /** Takes a residual and the scale that it is judged by. */
    void put(int row, double value, double scale) {
        residual[row] = value;
        double r = value / scale;
        merit += r * r;
        worst = Math.max(worst, Math.abs(r));
    }

    /** Adds the derivatives of the equations of a span by one unknown. */
    void add3(int row, int column, double x, double y, double z) {
        matrix.add(row, column, x);
        if (!unknowns.planar) {
            matrix.add(row + 1, column, y);
        }
        matrix.add(row + unknowns.up, column, z);
    }

    /** Adds the derivatives of one equation by the components of a tension. */
    void addByTension(int row, int column, double x, double y, double z) {
        matrix.add(row, column, x);
        if (!unknowns.planar) {
            matrix.add(row, column + 1, y);
        }
        matrix.add(row, column + unknowns.up, z);
    }

    /** Adds factor · ∂endZ[span]/∂slip. */
    void addEndWeight(int row, int span, double factor) {
        int a = unknowns.slipColumn(span);
        int b = unknowns.slipColumn(span + 1);
        if (a >= 0) {
            matrix.add(row, a, -factor * system.weight);
        }
        if (b >= 0) {
            matrix.add(row, b, factor * system.weight);
        }
    }
}
