package org.lifeline.design.assessment;

import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.Method;
import org.lifeline.base.Interval;
import org.lifeline.design.envelope.Extreme;
import org.lifeline.design.envelope.FallCase;
import org.lifeline.design.envelope.Quantity;

/**
 * A worst value over the whole line, by both methods, with the case that governs it.
 *
 * <p>The value of each method is the worst that the method gives anywhere; which of the two counts is the basis of the
 * assessment. Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public final class GoverningValue {
    private final Extreme extreme;
    private final @Nullable Extreme balance;
    private final @Nullable Extreme inTime;
    private final @Nullable Interval damping;

    GoverningValue(Extreme extreme, Optional<Extreme> balance, Optional<Extreme> inTime, Optional<Interval> damping) {
        this.extreme = extreme;
        this.balance = balance.orElse(null);
        this.inTime = inTime.orElse(null);
        this.damping = damping.orElse(null);
    }

    /**
     * The value and its case, as the criteria see it.
     *
     * @return the extreme that governs
     */
    public Extreme extreme() {
        return extreme;
    }

    /**
     * The quantity by name.
     *
     * @return for example {@code "endAnchorLoad"}, or {@code "load on north"} for one support
     */
    public String name() {
        return extreme.name();
    }

    /**
     * The quantity.
     *
     * @return the quantity; empty for the margin above one obstruction
     */
    public Optional<Quantity> quantity() {
        return extreme.quantity();
    }

    /**
     * The support that a load belongs to.
     *
     * @return its id; empty for a value of the whole line
     */
    public Optional<String> support() {
        return extreme.support();
    }

    /**
     * SI unit of the values.
     *
     * @return {@code "N"}, {@code "m"} or {@code "rad"}
     */
    public String unit() {
        return extreme.unit();
    }

    /**
     * The value without model factors and without allowance.
     *
     * @return value [N], [m] or [rad], by {@link #unit()}
     */
    public double value() {
        return extreme.computed();
    }

    /**
     * The value with the model factors of the design, and with the allowance of its mesh if it comes from an arrest in time:
     * what criteria are judged on.
     *
     * @return value [N], [m] or [rad], by {@link #unit()}
     */
    public double factored() {
        return extreme.value();
    }

    /**
     * The method that the value comes from.
     *
     * @return energy balance or transient
     */
    public Method method() {
        return extreme.arrest().method();
    }

    /**
     * The worst anywhere by energy balance, without model factors.
     *
     * @return value [N], [m] or [rad]; empty if no case could be computed
     */
    public OptionalDouble energyBalance() {
        return balance == null ? OptionalDouble.empty() : OptionalDouble.of(balance.computed());
    }

    /**
     * The worst of the arrests that were followed in time, without model factors.
     *
     * @return value [N], [m] or [rad]; empty if none was followed
     */
    public OptionalDouble inTime() {
        return inTime == null ? OptionalDouble.empty() : OptionalDouble.of(inTime.computed());
    }

    /**
     * What the mesh may hide of the worst in time, without model factors; {@link Extreme#value()} has it in it.
     *
     * @return allowance [N], [m] or [rad], not negative; empty if none was followed
     */
    public OptionalDouble allowance() {
        return inTime == null ? OptionalDouble.empty() : OptionalDouble.of(inTime.allowance());
    }

    /**
     * The worst by energy balance with its case.
     *
     * @return the extreme, if there is one
     */
    public Optional<Extreme> balanceExtreme() {
        return Optional.ofNullable(balance);
    }

    /**
     * The worst in time with its case.
     *
     * @return the extreme, if there is one
     */
    public Optional<Extreme> inTimeExtreme() {
        return Optional.ofNullable(inTime);
    }

    /**
     * The worst in time over the worst by energy balance.
     *
     * @return ratio [-]; empty if either is missing or the energy balance gives zero
     */
    public OptionalDouble ratio() {
        return balance == null || inTime == null || balance.computed() == 0
                ? OptionalDouble.empty()
                : OptionalDouble.of(inTime.computed() / balance.computed());
    }

    /**
     * The range of the value in time when the cable has a quarter and four times its damping time, for which no source is
     * known; the value itself is in the range.
     *
     * @return lowest and highest value [N], [m] or [rad], without model factors; empty where the arrest was not followed
     */
    public Optional<Interval> dampingRange() {
        return Optional.ofNullable(damping);
    }

    /**
     * The case that governs.
     *
     * @return fall, place, temperature, side
     */
    public FallCase fallCase() {
        return extreme.fallCase();
    }

    /**
     * The arrest that governs.
     *
     * @return the arrest, without model factors
     */
    public ArrestResult arrest() {
        return extreme.arrest();
    }

    @Override
    public String toString() {
        return extreme + ", " + method().label();
    }
}
