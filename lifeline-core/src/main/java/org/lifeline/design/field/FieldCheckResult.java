package org.lifeline.design.field;

import java.util.List;
import java.util.Optional;
import org.lifeline.base.Interval;
import org.lifeline.design.envelope.Extreme;
import org.lifeline.design.envelope.Extremes;
import org.lifeline.design.envelope.Quantity;
import org.lifeline.model.LifelineDesign;

/**
 * A line as it was found in the field.
 *
 * <p>Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public final class FieldCheckResult {
    private final Measurement measurement;
    private final AsDesigned asDesigned;
    private final List<Double> pretensions;
    private final List<LifelineDesign> designs;
    private final List<Extremes> extremes;

    /**
     * What the line of the design has.
     *
     * @param pretension tension at the first end anchor at the temperature of installation [N]
     * @param reading what would be read at the temperature of the measurement [N] or [m]
     */
    record AsDesigned(double pretension, double reading) {}

    FieldCheckResult(
            Measurement measurement,
            AsDesigned asDesigned,
            List<Double> pretensions,
            List<LifelineDesign> designs,
            List<Extremes> extremes) {
        this.measurement = measurement;
        this.asDesigned = asDesigned;
        this.pretensions = List.copyOf(pretensions);
        this.designs = List.copyOf(designs);
        this.extremes = List.copyOf(extremes);
    }

    /**
     * What was measured.
     *
     * @return the measurement
     */
    public Measurement measurement() {
        return measurement;
    }

    /**
     * Pretension of the design at its temperature of installation.
     *
     * @return tension at the first end anchor [N]
     */
    public double pretensionOfDesign() {
        return asDesigned.pretension();
    }

    /**
     * What the design would have given in the field, at the temperature of the measurement.
     *
     * @return reading [N] or [m]
     */
    public double readingOfDesign() {
        return asDesigned.reading();
    }

    /**
     * The pretension that the line has now: what it would have at its first end anchor at the temperature of installation of
     * the design.
     *
     * @return tension [N]
     */
    public double pretensionNow() {
        return pretensions.get(0);
    }

    /**
     * Range of the pretension that the line has now, from the uncertainty of the measurement.
     *
     * @return tensions [N]
     */
    public Interval pretensionRange() {
        double low = pretensions.stream().mapToDouble(Double::doubleValue).min().orElseThrow();
        double high =
                pretensions.stream().mapToDouble(Double::doubleValue).max().orElseThrow();
        return Interval.of(low, high);
    }

    /**
     * The design with the pretension that it has now.
     *
     * @return the design
     */
    public LifelineDesign designNow() {
        return designs.get(0);
    }

    /**
     * Worst values with the pretension that the line has now.
     *
     * @return the extremes
     */
    public Extremes extremes() {
        return extremes.get(0);
    }

    /**
     * Worst values now, at the ends of the uncertainty as well.
     *
     * @return one, or three with an uncertainty: as measured, slackest, tightest; unmodifiable
     */
    public List<Extremes> analyses() {
        return extremes;
    }

    /**
     * The worst value of a quantity over the uncertainty of the measurement.
     *
     * @param quantity the quantity
     * @return value and case, if there is one
     */
    public Optional<Extreme> worst(Quantity quantity) {
        Optional<Extreme> worst = Optional.empty();
        for (Extremes e : extremes) {
            Optional<Extreme> x = e.of(quantity);
            if (x.isPresent()
                    && (worst.isEmpty()
                            || (quantity.largestIsWorst()
                                    ? x.get().value() > worst.get().value()
                                    : x.get().value() < worst.get().value()))) {
                worst = x;
            }
        }
        return worst;
    }
}
