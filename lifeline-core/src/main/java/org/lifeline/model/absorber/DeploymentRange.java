package org.lifeline.model.absorber;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import org.lifeline.base.PlausibleRange;
import org.lifeline.base.Violations;

/**
 * How a connecting subsystem deploys: force against extension on both sides of its force range, in the dry and under the
 * conditions that are stated besides.
 *
 * <p>The clearance side takes the curve of the lowest deployment force of the conditions that apply, the maximum side that of
 * the highest, the dry one among them: the envelope, which is on the safe side for distances and for loads. Where a condition
 * gives the same force as the dry, the dry counts as what governs.
 *
 * <p>Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public final class DeploymentRange {
    private final LoadingCurve clearance;
    private final LoadingCurve maximum;
    private final List<Stated> stated;

    private DeploymentRange(LoadingCurve clearance, LoadingCurve maximum, List<Stated> stated) {
        this.clearance = clearance;
        this.maximum = maximum;
        this.stated = List.copyOf(stated);
    }

    /** A condition with its curves. */
    private record Stated(AbsorberCondition condition, LoadingCurve clearance, LoadingCurve maximum) {
        LoadingCurve curve(DeploymentForce side) {
            return side == DeploymentForce.CLEARANCE ? clearance : maximum;
        }
    }

    /**
     * A range without other conditions than dry.
     *
     * @param clearance curve of the clearance deployment force
     * @param maximum curve of the maximum deployment force
     * @return the range
     */
    public static DeploymentRange of(LoadingCurve clearance, LoadingCurve maximum) {
        return new DeploymentRange(
                Violations.required("clearance", clearance), Violations.required("maximum", maximum), List.of());
    }

    /**
     * The same with a further condition.
     *
     * @param condition the condition
     * @param low curve of its clearance deployment force
     * @param high curve of its maximum deployment force
     * @return the new range
     */
    public DeploymentRange with(AbsorberCondition condition, LoadingCurve low, LoadingCurve high) {
        List<Stated> all = new ArrayList<>(stated);
        all.add(new Stated(
                Violations.required("condition", condition),
                Violations.required("low", low),
                Violations.required("high", high)));
        return new DeploymentRange(clearance, maximum, all);
    }

    /**
     * Force against extension in the dry.
     *
     * @param side clearance side or maximum side
     * @return the curve
     */
    public LoadingCurve dry(DeploymentForce side) {
        Violations.required("side", side);
        return side == DeploymentForce.CLEARANCE ? clearance : maximum;
    }

    /**
     * The conditions that are stated besides the dry.
     *
     * @return the conditions; unmodifiable
     */
    public List<AbsorberCondition> conditions() {
        return stated.stream().map(Stated::condition).toList();
    }

    /**
     * Force against extension on the safe side of all stated conditions, at whatever temperature.
     *
     * @param side clearance side or maximum side
     * @return the curve
     */
    public LoadingCurve curve(DeploymentForce side) {
        return worst(side, c -> true).map(s -> s.curve(side)).orElseGet(() -> dry(side));
    }

    /**
     * Force against extension on the safe side of the conditions that apply at a temperature.
     *
     * @param side clearance side or maximum side
     * @param temperature temperature of the arrest [°C]
     * @return the curve
     * @throws org.lifeline.base.InvalidInputException if it is no temperature
     */
    public LoadingCurve curve(DeploymentForce side, double temperature) {
        return worst(side, temperature).map(s -> s.curve(side)).orElseGet(() -> dry(side));
    }

    /**
     * The condition that gives the curve of an arrest.
     *
     * @param side clearance side or maximum side
     * @param temperature temperature of the arrest [°C]
     * @return the condition; empty where it is the dry one
     * @throws org.lifeline.base.InvalidInputException if it is no temperature
     */
    public Optional<AbsorberCondition> condition(DeploymentForce side, double temperature) {
        return worst(side, temperature).map(Stated::condition);
    }

    private Optional<Stated> worst(DeploymentForce side, double temperature) {
        PlausibleRange.TEMPERATURE.required("temperature", temperature);
        return worst(side, c -> c.appliesAt(temperature));
    }

    /** The condition beyond the dry on a side, of those that apply; of equal ones the first. */
    private Optional<Stated> worst(DeploymentForce side, Predicate<AbsorberCondition> applies) {
        double farthest = dry(side).activationForce();
        Stated worst = null;
        for (Stated each : stated) {
            double force = each.curve(side).activationForce();
            boolean beyond = side == DeploymentForce.CLEARANCE ? force < farthest : force > farthest;
            if (beyond && applies.test(each.condition)) {
                farthest = force;
                worst = each;
            }
        }
        return Optional.ofNullable(worst);
    }

    /**
     * The same range with all forces multiplied, those of every condition as well; extensions stay.
     *
     * @param factor factor on every force and stiffness [-], above zero
     * @return the new range
     * @throws org.lifeline.base.InvalidInputException if the factor is not above zero
     */
    public DeploymentRange scaled(double factor) {
        DeploymentRange range = of(clearance.scaled(factor), maximum.scaled(factor));
        for (Stated each : stated) {
            range = range.with(
                    each.condition.scaled(factor), each.clearance.scaled(factor), each.maximum.scaled(factor));
        }
        return range;
    }

    /**
     * Compares values.
     *
     * @param other another object
     * @return true for a range of the same curves and conditions
     */
    @Override
    public boolean equals(@Nullable Object other) {
        return other instanceof DeploymentRange r
                && clearance.equals(r.clearance)
                && maximum.equals(r.maximum)
                && stated.equals(r.stated);
    }

    @Override
    public int hashCode() {
        return Objects.hash(clearance, maximum, stated);
    }

    @Override
    public String toString() {
        StringBuilder b = new StringBuilder();
        b.append(clearance.equals(maximum) ? maximum.toString() : clearance + " to " + maximum);
        stated.forEach(s -> b.append("; ").append(s.condition));
        return b.toString();
    }
}
