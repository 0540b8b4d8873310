package org.lifeline.design.installation;

import java.util.List;
import org.lifeline.design.field.StringingRow;
import org.lifeline.model.LifelineDesign;

/**
 * What those need who install a line.
 *
 * <p>Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public final class InstallationResult {
    private final LifelineDesign design;
    private final InstallationRequest request;
    private final List<CutLength> lengths;
    private final Tensioning tensioning;
    private final List<ReadingEffect> readings;

    /** How it is tensioned. */
    record Tensioning(List<TakeUp> takeUps, List<StretchEffect> stretch, List<StringingRow> stringing) {}

    InstallationResult(
            LifelineDesign design,
            InstallationRequest request,
            List<CutLength> lengths,
            Tensioning tensioning,
            List<ReadingEffect> readings) {
        this.design = design;
        this.request = request;
        this.lengths = List.copyOf(lengths);
        this.tensioning = tensioning;
        this.readings = List.copyOf(readings);
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
     * How it is to be installed.
     *
     * @return the request
     */
    public InstallationRequest request() {
        return request;
    }

    /**
     * Stress-free cable in each span as installed.
     *
     * @return one row a span; unmodifiable
     */
    public List<CutLength> lengths() {
        return lengths;
    }

    /**
     * Stress-free cable between the end anchors, at the temperature of installation of the design.
     *
     * @return sum of the lengths [m], without what terminations and tensioner take
     */
    public double totalLength() {
        double sum = 0;
        for (CutLength each : lengths) {
            sum += each.unstretched();
        }
        return sum;
    }

    /**
     * The same measured at another temperature.
     *
     * @param temperature temperature of the cable [°C]
     * @return length [m]
     */
    public double totalLengthAt(double temperature) {
        double warmer = temperature - design.line().installed().temperature();
        return totalLength() * (1 + design.line().cable().thermalExpansion() * warmer);
    }

    /**
     * What the tensioner takes up at the lowest temperature, at that of the design if it lies between, and at the highest.
     *
     * @return one row a temperature; unmodifiable
     */
    public List<TakeUp> takeUps() {
        return tensioning.takeUps;
    }

    /**
     * Travel that a tensioner must have: the largest take-up, and what re-tensioning adds after the largest constructional
     * stretch.
     *
     * @return travel [m]
     */
    public double tensionerTravel() {
        double up = takeUps().stream().mapToDouble(TakeUp::total).max().orElse(0);
        double again =
                stretch().stream().mapToDouble(StretchEffect::retension).max().orElse(0);
        return up + again;
    }

    /**
     * What the constructional stretch leaves of the pretension, at the ends of its range.
     *
     * @return the rows; empty if no stretch is stated; unmodifiable
     */
    public List<StretchEffect> stretch() {
        return tensioning.stretch;
    }

    /**
     * What is read while the line is tensioned, with its tolerance.
     *
     * @return temperatures in order, each with every span; unmodifiable
     */
    public List<StringingRow> stringing() {
        return tensioning.stringing;
    }

    /**
     * What other pretensions mean: that of the design first, then the ends of the tolerance, readings outside it, and what a
     * constructional stretch leaves.
     *
     * @return the rows; empty if they were left out; unmodifiable
     */
    public List<ReadingEffect> readings() {
        return readings;
    }
}
