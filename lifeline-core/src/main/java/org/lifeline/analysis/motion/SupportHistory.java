package org.lifeline.analysis.motion;

/**
 * One support in time: tension of the cable on both sides, material that passed, force of the line, displacement.
 *
 * <p>Immutable and thread-safe.
 */
public final class SupportHistory {
    private final String id;
    private final double[][] columns;

    /**
     * The history, as an analysis hands it over.
     *
     * @param id the support
     * @param columns tension before and behind [N], slip toward the fall [m], x, y, z of the force of the line [N], x, y,
     *     z of the displacement since installation [m], extension of its in-line absorber [m]
     */
    public SupportHistory(String id, double[][] columns) {
        this.id = id;
        this.columns = Columns.copy(columns);
    }

    /**
     * The support.
     *
     * @return the id
     */
    public String id() {
        return id;
    }

    /**
     * Tension of the cable that comes to the support from the start of the line.
     *
     * @return tension at each time [N], not negative; 0 at the first support
     */
    public double[] tensionBefore() {
        return columns[0].clone();
    }

    /**
     * Tension of the cable that leaves the support toward the end of the line.
     *
     * @return tension at each time [N], not negative; 0 at the last support
     */
    public double[] tensionBehind() {
        return columns[1].clone();
    }

    /**
     * Unstretched length of cable that has passed the support since the start of the fall.
     *
     * @return slip at each time [m], positive toward the span of the fall
     */
    public double[] slip() {
        return columns[2].clone();
    }

    /**
     * Force of the line on the support.
     *
     * @return magnitude at each time [N]
     */
    public double[] force() {
        double[] f = new double[columns[3].length];
        for (int i = 0; i < f.length; i++) {
            f[i] = Math.sqrt(
                    columns[3][i] * columns[3][i] + columns[4][i] * columns[4][i] + columns[5][i] * columns[5][i]);
        }
        return f;
    }

    /**
     * Force of the line on the support along an axis.
     *
     * @param axis 0, 1, 2 for x, y, z
     * @return component at each time [N]
     */
    public double[] forceAlong(int axis) {
        return columns[3 + axis].clone();
    }

    /**
     * Displacement of the support since installation along an axis.
     *
     * @param axis 0, 1, 2 for x, y, z
     * @return component at each time [m]
     */
    public double[] displacement(int axis) {
        return columns[6 + axis].clone();
    }

    /**
     * Extension of the in-line energy absorber at this end anchor.
     *
     * @return extension at each time [m]; 0 where there is none
     */
    public double[] inlineExtension() {
        return columns[9].clone();
    }
}
