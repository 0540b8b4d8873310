package org.lifeline.design.envelope;

import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.EnergyBalance;
import org.lifeline.analysis.TransientArrest;
import org.lifeline.analysis.state.AttachmentLimit;
import org.lifeline.base.Violations;
import org.lifeline.model.ClearanceRules;
import org.lifeline.model.Fall;
import org.lifeline.model.Lifeline;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Place;
import org.lifeline.model.absorber.DeploymentForce;

/**
 * One combination of the ranges: a temperature, a side of the force range, a deviation, and the line that goes with it.
 *
 * <p>Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public final class LoadCombination {
    private final Lifeline line;
    private final double temperature;
    private final DeploymentForce side;
    private final FallCase.Deviation deviation;
    private final ClearanceRules clearance;
    private final EnergyBalance analysis;
    private final AttachmentLimit limit;

    LoadCombination(
            LifelineDesign design,
            Lifeline line,
            double temperature,
            DeploymentForce side,
            FallCase.Deviation deviation) {
        this.line = line;
        this.temperature = temperature;
        this.side = side;
        this.deviation = deviation;
        this.clearance = design.clearance();
        this.analysis = EnergyBalance.withDefaults()
                .withTemperature(temperature)
                .withSide(side)
                .withClearance(clearance);
        this.limit = AttachmentLimit.RUNNING;
    }

    private LoadCombination(LoadCombination other, AttachmentLimit limit) {
        this.line = other.line;
        this.temperature = other.temperature;
        this.side = other.side;
        this.deviation = other.deviation;
        this.clearance = other.clearance;
        this.limit = limit;
        this.analysis = other.analysis.withAttachmentLimit(limit);
    }

    /**
     * The same with a free-running attachment that does not run.
     *
     * @return the new combination
     */
    public LoadCombination held() {
        return new LoadCombination(this, AttachmentLimit.HELD);
    }

    AttachmentLimit limit() {
        return limit;
    }

    /**
     * The line with the pretension and the friction of the combination.
     *
     * @return the line
     */
    public Lifeline line() {
        return line;
    }

    /**
     * Temperature of the line.
     *
     * @return temperature [°C]
     */
    public double temperature() {
        return temperature;
    }

    /**
     * Side of the absorber's force range.
     *
     * @return clearance side or maximum side
     */
    public DeploymentForce side() {
        return side;
    }

    FallCase.Deviation deviation() {
        return deviation;
    }

    FallCase at(MovingFall movingFall, Place place) {
        return of(movingFall.fall().at(place));
    }

    /**
     * A fall in this combination.
     *
     * @param fall the fall
     * @return the case
     */
    public FallCase of(Fall fall) {
        Violations.required("fall", fall);
        Fall f = Double.isNaN(deviation.mass()) ? fall : fall.withWorkers(w -> w.withMass(deviation.mass()));
        return new FallCase(f, temperature, side, deviation, limit);
    }

    ArrestResult solve(FallCase fallCase) {
        return analysis.solve(line, fallCase.fall());
    }

    /** The same case in time. */
    ArrestResult solveInTime(FallCase fallCase) {
        return TransientArrest.withDefaults()
                .withTemperature(temperature)
                .withSide(side)
                .withClearance(clearance)
                .solve(line, fallCase.fall())
                .arrest();
    }
}
