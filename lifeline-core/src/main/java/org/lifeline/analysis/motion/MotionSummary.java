package org.lifeline.analysis.motion;

/**
 * What stands behind the numbers of an arrest in time: how far they can be trusted, the peaks of the whole run, how far
 * the harness falls.
 *
 * <p>Immutable and thread-safe.
 *
 * @param quality the last mesh, what it may hide, how well the energy account closes
 * @param wholeRun peaks of the whole run, rebounds and later falls included
 * @param harnessFall how far the harness attachment falls in the first catch, without stretch of the harness [m]; of several
 *     who fall, the largest
 * @param firstCatchOver true if the first catch was over before the run ended
 * @since 1.0.0
 */
public record MotionSummary(Quality quality, MotionPeaks wholeRun, double harnessFall, boolean firstCatchOver) {
    /**
     * How far the numbers of a motion can be trusted.
     *
     * @param mesh the last mesh; its spread says how much the peaks changed when mesh and step were halved last
     * @param allowances what that mesh may hide of the peaks
     * @param relativeDrift largest deviation of the sum of all energies, as a share of the energy of the fall [-]
     * @since 1.0.0
     */
    public record Quality(MeshRun mesh, PeakAllowances allowances, double relativeDrift) {}

    /**
     * The last mesh; its spread says how much the peaks changed when mesh and step were halved last.
     *
     * @return the mesh and what came out on it
     */
    public MeshRun mesh() {
        return quality.mesh;
    }

    /**
     * What the last mesh may hide of the peaks of the first catch.
     *
     * @return the allowances
     */
    public PeakAllowances allowances() {
        return quality.allowances;
    }

    /**
     * Largest deviation of the sum of all energies, as a share of the energy of the fall.
     *
     * @return drift [-], not negative
     */
    public double relativeDrift() {
        return quality.relativeDrift;
    }
}
