package org.lifeline.design.clearance;

import java.util.ArrayList;
import java.util.List;
import org.lifeline.base.Interval;
import org.lifeline.model.LifelineDesign;

/**
 * Clearance along a line, stretch by stretch.
 *
 * <p>Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public final class ClearanceAlongLineResult {
    private final LifelineDesign design;
    private final StationSteps steps;
    private final List<ClearanceStretch> stretches;
    private final Addition addition;

    /** What arrests in time need beyond the energy balance [m], and of how many it is the largest. */
    record Addition(double distance, int arrests) {}

    ClearanceAlongLineResult(
            LifelineDesign design, StationSteps steps, List<ClearanceStretch> stretches, Addition addition) {
        this.design = design;
        this.steps = steps;
        this.stretches = List.copyOf(stretches);
        this.addition = addition;
    }

    /**
     * The design.
     *
     * @return the design
     */
    public LifelineDesign design() {
        return design;
    }

    /**
     * Step and rounding.
     *
     * @return the steps
     */
    public StationSteps steps() {
        return steps;
    }

    /**
     * The stretches in the order of the line.
     *
     * @return the stretches; unmodifiable
     */
    public List<ClearanceStretch> stretches() {
        return stretches;
    }

    /**
     * What is added to every stretch because an arrest in time came down further than its energy balance.
     *
     * @return distance [m], not negative; it is in the required elevations already
     */
    public double additionInTime() {
        return addition.distance;
    }

    /**
     * How many arrests in time the addition comes from.
     *
     * @return number; 0 if none was followed
     */
    public int arrestsInTime() {
        return addition.arrests;
    }

    /**
     * Where the line must not be used, neighbouring stretches joined.
     *
     * @return distances along the line [m]; unmodifiable
     */
    public List<Interval> mustNotBeUsed() {
        List<Interval> list = new ArrayList<>();
        for (ClearanceStretch each : stretches) {
            if (!each.mustNotBeUsed()) {
                continue;
            }
            int last = list.size() - 1;
            if (last >= 0 && each.along().low() <= list.get(last).high()) {
                list.set(last, Interval.of(list.get(last).low(), each.along().high()));
            } else {
                list.add(each.along());
            }
        }
        return List.copyOf(list);
    }

    /**
     * The largest clearance required below the line anywhere.
     *
     * @return distance [m], rounded up
     */
    public double largestBelowLine() {
        return steps.up(stretches.stream()
                .mapToDouble(ClearanceStretch::requiredBelowLine)
                .max()
                .orElse(0));
    }
}
