package org.lifeline.analysis;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.lifeline.analysis.motion.MeshRun;
import org.lifeline.analysis.motion.MotionHistory;
import org.lifeline.analysis.motion.MotionPeaks;

/**
 * An arrest in time: the arrest with the quantities that it shares with the energy balance, histories, peaks of the first
 * catch and of the whole run, what the meshes agreed on, how well the energy account closes, and the energy balance beside
 * it.
 *
 * <p>In {@link #arrest()} the state at the lowest point is a moving line cut into straight segments, and no equilibrium:
 * positions, slip and energies are those of that moment; arrest force, tensions, forces on supports and extensions are the
 * peaks of the first catch, each at its own time.
 *
 * <p>Immutable and thread-safe.
 */
public final class TransientResult {
    private final Numbers n;

    TransientResult(Numbers numbers) {
        this.n = numbers;
    }

    /** What the analysis hands over. */
    record Numbers(
            ArrestResult arrest,
            MotionHistory history,
            MotionPeaks firstCatch,
            MotionPeaks wholeRun,
            List<MeshRun> meshes,
            double accuracy,
            double energyDrift,
            boolean firstCatchOver,
            double dampingTime,
            double timeStep,
            Optional<ArrestResult> balance) {}

    /**
     * The arrest: the first catch of those who fall at the start.
     *
     * @return the arrest, its method the transient one
     */
    public ArrestResult arrest() {
        return n.arrest;
    }

    /**
     * Histories from the start of the fall to the end of the run.
     *
     * @return the histories
     */
    public MotionHistory history() {
        return n.history;
    }

    /**
     * Peaks of the first catch: from the first taut subsystem until all who fell at the start hang slack after their
     * lowest point, or begin to fall again.
     *
     * @return the peaks
     */
    public MotionPeaks firstCatch() {
        return n.firstCatch;
    }

    /**
     * Peaks of the whole run, rebounds and later falls included.
     *
     * @return the peaks
     */
    public MotionPeaks wholeRun() {
        return n.wholeRun;
    }

    /**
     * Tells whether the first catch was over before the run ended; if not, peaks may lie outside it.
     *
     * @return true if it was over
     */
    public boolean firstCatchOver() {
        return n.firstCatchOver;
    }

    /**
     * The meshes that were tried; histories and peaks are those of the last.
     *
     * @return from the coarsest to the finest; unmodifiable
     */
    public List<MeshRun> meshes() {
        return List.copyOf(n.meshes);
    }

    /**
     * Largest relative change of arrest force, tension and lowest point from the last mesh but one to the last. A peak of
     * tension is only as sharp as the mesh.
     *
     * @return change [-]; NaN if only one mesh was asked for
     */
    public double spread() {
        return n.meshes.get(n.meshes.size() - 1).spread();
    }

    /**
     * Tells whether the accuracy asked for was reached.
     *
     * @return true if the spread is not larger
     */
    public boolean accurate() {
        return spread() <= n.accuracy;
    }

    /**
     * Largest deviation of the sum of all energies from its value at the start.
     *
     * @return drift [J], not negative
     */
    public double energyDrift() {
        return n.energyDrift;
    }

    /**
     * The same as a share of the energy set free by the fall down to its lowest point.
     *
     * @return drift [-], not negative
     */
    public double relativeDrift() {
        return n.energyDrift / n.arrest.energy().fall();
    }

    /**
     * Internal damping time that was computed with: the one stated, the default, or on a coarse mesh the least that the
     * mesh needs.
     *
     * @return τ [s]
     */
    public double dampingTime() {
        return n.dampingTime;
    }

    /**
     * Length of the last step.
     *
     * @return step [s]
     */
    public double timeStep() {
        return n.timeStep;
    }

    /**
     * The same fall by energy balance.
     *
     * @return the arrest; empty where the energy balance finds none
     */
    public Optional<ArrestResult> energyBalance() {
        return n.balance;
    }

    /**
     * Largest tension over that of the energy balance: the overshoot.
     *
     * @return ratio [-], if there is an energy balance
     */
    public OptionalDouble tensionRatio() {
        return ratio(n.arrest.maximumTension(), n.balance.map(ArrestResult::maximumTension));
    }

    /**
     * Arrest force over that of the energy balance.
     *
     * @return ratio [-], if there is an energy balance
     */
    public OptionalDouble forceRatio() {
        return ratio(n.arrest.arrestForce(), n.balance.map(ArrestResult::arrestForce));
    }

    /**
     * Total fall distance over that of the energy balance.
     *
     * @return ratio [-], if there is an energy balance
     */
    public OptionalDouble fallDistanceRatio() {
        return ratio(n.arrest.totalFallDistance(), n.balance.map(ArrestResult::totalFallDistance));
    }

    private static OptionalDouble ratio(double value, Optional<Double> to) {
        return to.isPresent() ? OptionalDouble.of(value / to.get()) : OptionalDouble.empty();
    }
}
