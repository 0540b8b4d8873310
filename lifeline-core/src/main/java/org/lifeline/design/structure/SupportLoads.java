package org.lifeline.design.structure;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.lifeline.analysis.Method;
import org.lifeline.base.Direction;
import org.lifeline.base.GivenValue;
import org.lifeline.base.InputRule;
import org.lifeline.base.Violations;
import org.lifeline.design.assessment.AssessmentResult;
import org.lifeline.design.assessment.Basis;
import org.lifeline.design.assessment.FollowedArrest;
import org.lifeline.design.envelope.ComputedCase;
import org.lifeline.design.envelope.Envelope;
import org.lifeline.design.envelope.Extreme;
import org.lifeline.design.envelope.Extremes;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Support;

/**
 * Loads for the structure that carries a line, from its assessment: for every support the largest of each effect with its
 * simultaneous partner loads, as service loads and with the user's factors.
 *
 * <p>Looks at the stated falls, at all cases that govern by either method, and by energy balance once more along the whole
 * line for what the envelope does not search; the line at rest with a rescuer is among what stands under energy balance. Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public final class SupportLoads {
    /**
     * Angle of the pull across the line that is taken where none is stated [rad]: 15° to either side. An assumption that
     * every report names; no source is known.
     */
    public static final double ASSUMED_ANGLE = Math.toRadians(15);

    /** A pull flatter than this is no fall [rad]. */
    private static final double FLATTEST = Math.toRadians(80);

    private final double angle;
    private final boolean assumed;
    private final List<StatedFactor> factors;

    private SupportLoads(double angle, boolean assumed, List<StatedFactor> factors) {
        this.angle = angle;
        this.assumed = assumed;
        this.factors = factors;
    }

    /**
     * With pulls up to {@link #ASSUMED_ANGLE} to either side and without factors.
     *
     * @return the analysis
     */
    public static SupportLoads withDefaults() {
        return new SupportLoads(ASSUMED_ANGLE, true, List.of());
    }

    /**
     * The same with another range of the pull's angle across the line.
     *
     * @param value largest angle from the vertical to either side [rad], from 0 to 80°
     * @return the new analysis
     * @throws org.lifeline.base.InvalidInputException if it lies outside
     */
    public SupportLoads withAngle(double value) {
        new Violations()
                .require(
                        value >= 0 && value <= FLATTEST,
                        "pullAngle",
                        GivenValue.number(Math.toDegrees(value), "°"),
                        InputRule.OUTSIDE_RANGE,
                        0,
                        "80°")
                .throwIfAny();
        return new SupportLoads(value, false, factors);
    }

    /**
     * The same with factors.
     *
     * @param value the user's factors, each with its source
     * @return the new analysis
     */
    public SupportLoads withFactors(List<StatedFactor> value) {
        Violations.requiredAll("value", value);
        return new SupportLoads(angle, assumed, List.copyOf(value));
    }

    /**
     * The range of the pull's angle across the line, where it was stated.
     *
     * @return largest angle from the vertical to either side [rad]; empty where {@link #ASSUMED_ANGLE} is taken
     */
    public OptionalDouble statedAngle() {
        return assumed ? OptionalDouble.empty() : OptionalDouble.of(angle);
    }

    /**
     * The user's factors.
     *
     * @return the factors, each with its source; unmodifiable
     */
    public List<StatedFactor> factors() {
        return factors;
    }

    /**
     * Draws up the loads.
     *
     * @param assessment the assessment of the design
     * @return the loads
     */
    public SupportLoadsResult solve(AssessmentResult assessment) {
        Violations.required("assessment", assessment);
        LifelineDesign design = assessment.design();
        GoverningLoads loads = new GoverningLoads(design, angles());
        assessment.stated().cases().forEach(loads::add);
        addExtremes(assessment.balance(), loads);
        addExtremes(assessment.inTime(), loads);
        assessment.followed().stream().map(SupportLoads::computed).forEach(loads::add);
        assessment.rescueStates().forEach(loads::add);
        EffectScan scan = new EffectScan(
                design,
                Envelope.withDefaults().withTolerances(assessment.envelope().tolerances()));
        scan.run(loads);
        boolean inTime = assessment.basis() != Basis.ENERGY_BALANCE;
        return new SupportLoadsResult(
                design,
                new SupportLoadsResult.Asked(angle, assumed, factors),
                loads.rows(Method.ENERGY_BALANCE),
                inTime ? loads.rows(Method.TRANSIENT) : List.of());
    }

    private static ComputedCase computed(FollowedArrest followed) {
        return new ComputedCase(followed.fallCase(), followed.arrest());
    }

    private static void addExtremes(Extremes extremes, GoverningLoads loads) {
        List<Extreme> list = new ArrayList<>();
        for (Support each : extremes.design().line().supports()) {
            extremes.onSupport(each.id()).ifPresent(list::add);
            for (Direction d : Direction.values()) {
                extremes.onSupportToward(each.id(), d).ifPresent(list::add);
            }
        }
        list.forEach(e -> loads.add(new ComputedCase(e.fallCase(), e.arrest())));
    }

    private double[] angles() {
        if (angle == 0) {
            return new double[] {0};
        }
        int n = ScanParameters.ANGLES;
        double[] list = new double[n];
        // Upright first: an effect that does not grow with the angle belongs to the upright pull.
        int at = 1;
        for (int i = 0; i < n; i++) {
            double a = angle * (2.0 * i / (n - 1) - 1);
            if (i != n / 2) {
                list[at++] = a;
            }
        }
        return list;
    }
}
