package org.lifeline.model;

import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.lifeline.base.AllowedRange;
import org.lifeline.base.GivenValue;
import org.lifeline.base.InputRule;
import org.lifeline.base.Interval;
import org.lifeline.base.Violation;
import org.lifeline.base.Violations;

/**
 * How the cable passes an intermediate anchor.
 *
 * <p>Free: runs without friction, the tension magnitude is continuous. Friction: the capstan rule, the cable sticks
 * while the ratio of the two tensions lies within e^(±μθ), θ the angle turned at the anchor in space (Euler 1769;
 * Eytelwein 1808). Clamped: no material passes once the line has been tensioned.
 *
 * <p>Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public final class Passage {
    /** Largest coefficient of friction [-]: beyond it nothing slips that a clamp would not hold. */
    private static final double LARGEST_FRICTION = 2;

    private static final Passage FREE = new Passage(Kind.FREE, 0);
    private static final Passage CLAMPED = new Passage(Kind.CLAMPED, Double.POSITIVE_INFINITY);

    /**
     * The three kinds of passage.
     *
     * @since 1.0.0
     */
    public enum Kind {
        /** Runs without friction. */
        FREE,
        /** Runs against friction, or sticks. */
        FRICTION,
        /** No material passes. */
        CLAMPED
    }

    private final Kind kind;
    private final double friction;

    private Passage(Kind kind, double friction) {
        this.kind = kind;
        this.friction = friction;
    }

    /**
     * A passage without friction.
     *
     * @return the passage
     */
    public static Passage free() {
        return FREE;
    }

    /**
     * A passage with friction between cable and anchor.
     *
     * @param coefficient coefficient of friction μ [-], from 0 to 2; 0 is the free passage
     * @return the passage
     * @throws org.lifeline.base.InvalidInputException if μ is out of range
     */
    public static Passage friction(double coefficient) {
        if (!(coefficient >= 0 && coefficient <= LARGEST_FRICTION)) {
            new Violations()
                    .add(Violation.of("friction", GivenValue.number(coefficient, ""), InputRule.FRICTION_RANGE)
                            .allowing(AllowedRange.within(Interval.of(0, LARGEST_FRICTION))))
                    .throwIfAny();
        }
        return coefficient == 0 ? FREE : new Passage(Kind.FRICTION, coefficient);
    }

    /**
     * A clamp, closed after the line has been tensioned.
     *
     * @return the passage
     */
    public static Passage clamped() {
        return CLAMPED;
    }

    /**
     * Which kind of passage this is.
     *
     * @return the kind
     */
    public Kind kind() {
        return kind;
    }

    /**
     * Coefficient of friction.
     *
     * @return μ [-]; 0 when free, infinite when clamped
     */
    public double friction() {
        return friction;
    }

    /**
     * Compares values.
     *
     * @param other another object
     * @return true for the same kind with the same friction
     */
    @Override
    public boolean equals(@Nullable Object other) {
        return other instanceof Passage p && kind == p.kind && Double.compare(friction, p.friction) == 0;
    }

    @Override
    public int hashCode() {
        return Objects.hash(kind, friction);
    }

    @Override
    public String toString() {
        return switch (kind) {
            case FREE -> "free";
            case FRICTION -> "friction " + friction;
            case CLAMPED -> "clamped";
        };
    }
}
