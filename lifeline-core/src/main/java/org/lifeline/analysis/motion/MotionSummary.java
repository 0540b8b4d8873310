package org.lifeline.analysis.motion;

/**
 * What stands behind the numbers of an arrest in time: the last mesh, the peaks of the whole run, how well the energy
 * account closes.
 *
 * <p>Immutable and thread-safe.
 *
 * @param mesh the last mesh; its spread says how much the peaks changed when mesh and step were halved last
 * @param wholeRun peaks of the whole run, rebounds and later falls included
 * @param relativeDrift largest deviation of the sum of all energies, as a share of the energy of the fall [-]
 * @param harnessFall how far the harness attachment falls in the first catch, without stretch of the harness [m]; of several
 *     who fall, the largest
 * @param firstCatchOver true if the first catch was over before the run ended
 */
public record MotionSummary(
        MeshRun mesh, MotionPeaks wholeRun, double relativeDrift, double harnessFall, boolean firstCatchOver) {}
