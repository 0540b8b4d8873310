package org.lifeline.design.envelope;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.lifeline.base.GivenValue;
import org.lifeline.base.InputRule;
import org.lifeline.base.Interval;
import org.lifeline.base.Violations;
import org.lifeline.base.canonical.Canonical;
import org.lifeline.base.canonical.CanonicalForm;

/**
 * What may deviate from the design: mass of the workers, pretension, friction. An envelope goes over the combinations of
 * these ranges.
 *
 * <p>Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public final class Tolerances implements Canonical {
    private static final Tolerances NONE = new Tolerances(null, null, null);

    private final @Nullable Interval mass;
    private final @Nullable Interval pretension;
    private final @Nullable Interval friction;

    private Tolerances(@Nullable Interval mass, @Nullable Interval pretension, @Nullable Interval friction) {
        this.mass = mass;
        this.pretension = pretension;
        this.friction = friction;
    }

    /**
     * Everything as designed.
     *
     * @return no tolerance
     */
    public static Tolerances none() {
        return NONE;
    }

    /**
     * The same with a range of masses: all workers have the same mass, at either end of it. Of those who fall together the one with the
     * smaller mass can be arrested harder beside a heavier one than beside one of his own mass; state unequal masses as workers of the design.
     *
     * @param range masses [kg], above zero
     * @return the new tolerances
     * @throws org.lifeline.base.InvalidInputException if the range reaches down to zero
     */
    public Tolerances withMass(Interval range) {
        Violations.required("mass", range);
        new Violations().positive("mass.low", range.low(), "kg").throwIfAny();
        return new Tolerances(range, pretension, friction);
    }

    /**
     * The same with a range of pretension, as factors on the tension that the installed line of the design has at its
     * first end anchor.
     *
     * @param factors factors on the pretension [-], above zero, for example 0.8 to 1.2
     * @return the new tolerances
     * @throws org.lifeline.base.InvalidInputException if the range reaches down to zero
     */
    public Tolerances withPretension(Interval factors) {
        Violations.required("pretension", factors);
        new Violations().positive("pretension.low", factors.low(), "").throwIfAny();
        return new Tolerances(mass, factors, friction);
    }

    /**
     * The same with a range of friction: every intermediate anchor that has friction may have any coefficient in it.
     * Free and clamped anchors stay as they are.
     *
     * @param coefficients coefficients of friction μ [-], from 0 to 2
     * @return the new tolerances
     * @throws org.lifeline.base.InvalidInputException if the range leaves 0 to 2
     */
    public Tolerances withFriction(Interval coefficients) {
        Violations.required("friction", coefficients);
        new Violations()
                .require(
                        coefficients.low() >= 0 && coefficients.high() <= 2,
                        "friction",
                        GivenValue.text(coefficients.toString()),
                        InputRule.OUTSIDE_RANGE,
                        0,
                        2)
                .throwIfAny();
        return new Tolerances(mass, pretension, coefficients);
    }

    /**
     * Range of the workers' masses.
     *
     * @return masses [kg], if not those of the design
     */
    public Optional<Interval> mass() {
        return Optional.ofNullable(mass);
    }

    /**
     * Range of the pretension.
     *
     * @return factors [-], if not 1
     */
    public Optional<Interval> pretension() {
        return Optional.ofNullable(pretension);
    }

    /**
     * Range of the friction.
     *
     * @return coefficients of friction [-], if not those of the design
     */
    public Optional<Interval> friction() {
        return Optional.ofNullable(friction);
    }

    @Override
    public CanonicalForm canonicalForm() {
        CanonicalForm.Builder b = CanonicalForm.builder("tolerances");
        range(b, "mass", mass, "kg");
        range(b, "pretension", pretension, "");
        range(b, "friction", friction, "");
        return b.build();
    }

    private static void range(CanonicalForm.Builder b, String path, @Nullable Interval range, String unit) {
        if (range != null) {
            b.number(path + ".low", range.low(), unit).number(path + ".high", range.high(), unit);
        }
    }
}
