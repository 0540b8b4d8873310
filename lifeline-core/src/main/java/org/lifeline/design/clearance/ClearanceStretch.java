package org.lifeline.design.clearance;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.lifeline.base.Interval;
import org.lifeline.design.envelope.FallCase;

/**
 * One stretch of a line with the clearance that it needs and has.
 *
 * <p>Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public final class ClearanceStretch {
    private final Extent extent;
    private final Needs needs;
    private final OptionalDouble obstruction;
    private final Swing swing;
    private final List<String> reasons;

    /** Which part of the line it is: span, stations from its first support, distances along the line [m]. */
    record Extent(int span, Interval stations, Interval along) {}

    /** Elevations [m] and distances [m] as computed. */
    record Needs(Interval line, double requiredElevation, double belowWalkingLevel, Optional<FallCase> governing) {}

    /**
     * The largest swing of falls in a stretch.
     *
     * @param displacement horizontal displacement of the harness attachment in all [m]
     * @param amplitude horizontal reach of the pendulum about where the attachment is held or comes to rest [m]
     * @param angle largest angle of the pendulum [rad]
     * @param drop drop in the swing [m]
     * @since 1.0.0
     */
    public record Swing(double displacement, double amplitude, double angle, double drop) {}

    ClearanceStretch(Extent extent, Needs needs, OptionalDouble obstruction, Swing swing, List<String> reasons) {
        this.extent = extent;
        this.needs = needs;
        this.obstruction = obstruction;
        this.swing = swing;
        this.reasons = List.copyOf(reasons);
    }

    /**
     * The span.
     *
     * @return number, from 1
     */
    public int span() {
        return extent.span;
    }

    /**
     * Where the stretch begins and ends, as stations of its span.
     *
     * @return horizontal distances from the first support of the span [m]
     */
    public Interval stations() {
        return extent.stations;
    }

    /**
     * Where the stretch begins and ends, along the whole line.
     *
     * @return horizontal distances along the line from its first support [m]
     */
    public Interval along() {
        return extent.along;
    }

    /**
     * Elevation of the line as installed within the stretch.
     *
     * @return lowest and highest [m]
     */
    public Interval lineElevation() {
        return needs.line;
    }

    /**
     * Elevation below which everything must be free, the lowest of all falls in the stretch, with the model factor on distance
     * and what an arrest in time adds.
     *
     * @return elevation [m]
     */
    public double requiredElevation() {
        return needs.requiredElevation;
    }

    /**
     * Clearance required below the line as installed, counted from its highest point in the stretch.
     *
     * @return distance [m]
     */
    public double requiredBelowLine() {
        return needs.line.high() - needs.requiredElevation;
    }

    /**
     * Clearance required below the walking level, the largest of all workers.
     *
     * @return distance [m]
     */
    public double requiredBelowWalkingLevel() {
        return needs.belowWalkingLevel;
    }

    /**
     * Top of the highest obstruction that falls in the stretch can reach on their way.
     *
     * @return elevation [m]; empty if none is stated there
     */
    public OptionalDouble obstruction() {
        return obstruction;
    }

    /**
     * Clearance that is available below the line as installed, counted from its lowest point in the stretch.
     *
     * @return distance [m]; empty if no obstruction is stated there
     */
    public OptionalDouble availableBelowLine() {
        return obstruction.isPresent()
                ? OptionalDouble.of(needs.line.low() - obstruction.getAsDouble())
                : OptionalDouble.empty();
    }

    /**
     * Required elevation above the obstruction.
     *
     * @return margin [m], negative where the worker would strike; empty if no obstruction is stated there
     */
    public OptionalDouble margin() {
        return obstruction.isPresent()
                ? OptionalDouble.of(needs.requiredElevation - obstruction.getAsDouble())
                : OptionalDouble.empty();
    }

    /**
     * The largest swing.
     *
     * @return the swing
     */
    public Swing swing() {
        return swing;
    }

    /**
     * The case that needs the lowest elevation.
     *
     * @return the case; empty if none could be computed
     */
    public Optional<FallCase> governing() {
        return needs.governing;
    }

    /**
     * Why the line must not be used in this stretch.
     *
     * @return reasons; empty if none was found, which is no permission; unmodifiable
     */
    public List<String> reasons() {
        return reasons;
    }

    /**
     * Tells whether the line must not be used in this stretch.
     *
     * @return true if there is a reason
     */
    public boolean mustNotBeUsed() {
        return !reasons.isEmpty();
    }
}
