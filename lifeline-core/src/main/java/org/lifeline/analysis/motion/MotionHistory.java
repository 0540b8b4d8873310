package org.lifeline.analysis.motion;

import java.util.List;
import org.lifeline.base.InputRule;
import org.lifeline.base.Violations;

/**
 * Histories of an arrest in time.
 *
 * <p>Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public final class MotionHistory {
    private final double[] times;
    private final List<WorkerHistory> workers;
    private final List<SupportHistory> supports;
    private final EnergyHistory energies;

    /**
     * The histories, as an analysis hands them over.
     *
     * @param times times of the samples [s]
     * @param workers histories of the workers
     * @param supports histories of the supports, in the order of the line
     * @param energies the energy account
     */
    public MotionHistory(
            double[] times, List<WorkerHistory> workers, List<SupportHistory> supports, EnergyHistory energies) {
        Violations.required("times", times);
        Violations.requiredAll("workers", workers);
        Violations.requiredAll("supports", supports);
        this.times = times.clone();
        this.workers = List.copyOf(workers);
        this.supports = List.copyOf(supports);
        this.energies = energies;
    }

    /**
     * Times of the samples, from the start of the fall on.
     *
     * @return times [s], rising
     */
    public double[] times() {
        return times.clone();
    }

    /**
     * The workers: those who hang, those who fall, those who fall later.
     *
     * @return their histories; unmodifiable
     */
    public List<WorkerHistory> workers() {
        return workers;
    }

    /**
     * One worker.
     *
     * @param id the worker
     * @return the history
     * @throws IllegalArgumentException if there is no such worker
     */
    public WorkerHistory worker(String id) {
        return workers.stream()
                .filter(w -> w.id().equals(id))
                .findFirst()
                .orElseThrow(() -> Columns.unknown(id, InputRule.NO_SUCH_WORKER));
    }

    /**
     * The supports in the order of the line.
     *
     * @return their histories; unmodifiable
     */
    public List<SupportHistory> supports() {
        return supports;
    }

    /**
     * One support.
     *
     * @param id the support
     * @return the history
     * @throws IllegalArgumentException if there is no such support
     */
    public SupportHistory support(String id) {
        return supports.stream()
                .filter(s -> s.id().equals(id))
                .findFirst()
                .orElseThrow(() -> Columns.unknown(id, InputRule.NO_SUCH_SUPPORT));
    }

    /**
     * The energy account in time.
     *
     * @return its histories
     */
    public EnergyHistory energies() {
        return energies;
    }
}
