package org.lifeline.analysis.motion;

import java.util.List;
import org.lifeline.base.InputRule;
import org.lifeline.base.Point;
import org.lifeline.base.Violations;

/**
 * Extremes of a motion within a window of time: the first catch, or the whole run.
 *
 * <p>Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public final class MotionPeaks {
    private final Peak tension;
    private final double filteredTension;
    private final Point place;
    private final List<WorkerPeaks> workers;
    private final List<SupportPeaks> supports;

    /**
     * The extremes, as an analysis hands them over.
     *
     * @param tension largest tension, its value in [N]
     * @param filteredTension the same behind a low-pass filter of 100 Hz [N]
     * @param place where in the cable it was met
     * @param workers extremes of the workers
     * @param supports extremes of the supports, in the order of the line
     */
    public MotionPeaks(
            Peak tension, double filteredTension, Point place, List<WorkerPeaks> workers, List<SupportPeaks> supports) {
        Violations.requiredAll("workers", workers);
        Violations.requiredAll("supports", supports);
        this.tension = tension;
        this.filteredTension = filteredTension;
        this.place = place;
        this.workers = List.copyOf(workers);
        this.supports = List.copyOf(supports);
    }

    /**
     * Largest tension anywhere in the cable.
     *
     * @return the peak, its value in [N]
     */
    public Peak tension() {
        return tension;
    }

    /**
     * Largest tension in the cable behind a second-order low-pass filter of 100 Hz, as laboratories record forces (recalled
     * from test standards, not seen). Criteria use the force as it is unless the engineer chooses otherwise.
     *
     * @return tension [N], not negative
     */
    public double filteredTension() {
        return filteredTension;
    }

    /**
     * Where in the cable the largest tension was met.
     *
     * @return the point
     */
    public Point tensionPlace() {
        return place;
    }

    /**
     * The workers: those who hang, those who fall, those who fall later.
     *
     * @return their extremes; unmodifiable
     */
    public List<WorkerPeaks> workers() {
        return workers;
    }

    /**
     * One worker.
     *
     * @param id the worker
     * @return the extremes
     * @throws IllegalArgumentException if there is no such worker
     */
    public WorkerPeaks worker(String id) {
        return workers.stream()
                .filter(w -> w.id().equals(id))
                .findFirst()
                .orElseThrow(() -> Columns.unknown(id, InputRule.NO_SUCH_WORKER));
    }

    /**
     * The supports in the order of the line.
     *
     * @return their extremes; unmodifiable
     */
    public List<SupportPeaks> supports() {
        return supports;
    }

    /**
     * One support.
     *
     * @param id the support
     * @return the extremes
     * @throws IllegalArgumentException if there is no such support
     */
    public SupportPeaks support(String id) {
        return supports.stream()
                .filter(s -> s.id().equals(id))
                .findFirst()
                .orElseThrow(() -> Columns.unknown(id, InputRule.NO_SUCH_SUPPORT));
    }
}
