package org.lifeline.design.envelope;

import java.util.Optional;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.base.Direction;
import org.lifeline.base.unit.SignificantDigits;

/**
 * The worst value of a quantity, with the case that governs it.
 *
 * <p>Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public final class Extreme {
    private final Subject subject;
    private final Values values;
    private final FallCase fallCase;
    private final ArrestResult arrest;
    private final String lacking;

    Extreme(Subject subject, Values values, ComputedCase governing, String lacking) {
        this.subject = subject;
        this.values = values;
        this.fallCase = governing.fallCase();
        this.arrest = governing.arrest();
        this.lacking = lacking;
    }

    /** What the value is of: a quantity of the whole line, or one of a single support or obstruction. */
    record Subject(String name, String unit, Optional<Quantity> quantity, Optional<String> support) {
        static Subject of(Quantity quantity) {
            return new Subject(quantity.key(), quantity.unit(), Optional.of(quantity), Optional.empty());
        }

        static Subject load(String support) {
            return new Subject("load on " + support, "N", Optional.of(Quantity.SUPPORT_LOAD), Optional.of(support));
        }

        static Subject component(String support, Direction direction) {
            return new Subject(
                    "load on " + support + " along " + direction.symbol(), "N", Optional.empty(), Optional.of(support));
        }

        static Subject margin(int obstruction) {
            return new Subject(
                    "margin above obstruction " + (obstruction + 1), "m", Optional.empty(), Optional.empty());
        }
    }

    /**
     * The value of the governing arrest.
     *
     * @param computed without the model factors [unit of the quantity]
     * @param allowance what the mesh may hide of it [unit of the quantity], not negative
     * @param factored with allowance and model factors [unit of the quantity]
     */
    record Values(double computed, double allowance, double factored) {}

    /**
     * The quantity.
     *
     * @return its name, for example {@code "endAnchorLoad"} or {@code "load on north"}
     */
    public String name() {
        return subject.name();
    }

    /**
     * The quantity that was compared.
     *
     * @return the quantity; empty for a component of a load and for the margin above one obstruction
     */
    public Optional<Quantity> quantity() {
        return subject.quantity();
    }

    /**
     * The support that a load belongs to.
     *
     * @return its id; empty for a value of the whole line
     */
    public Optional<String> support() {
        return subject.support();
    }

    /**
     * The SI unit of the value.
     *
     * @return {@code "N"}, {@code "m"} or {@code "rad"}
     */
    public String unit() {
        return subject.unit();
    }

    /**
     * The worst value, with the model factors of the design in it. A value in time has its {@link #allowance()} in it as well,
     * where that is finite.
     *
     * @return the value [N], [m] or [rad], by {@link #unit()}
     */
    public double value() {
        return values.factored();
    }

    /**
     * The value of the governing arrest as computed, without model factors and allowance.
     *
     * @return the value [N], [m] or [rad], by {@link #unit()}
     */
    public double computed() {
        return values.computed();
    }

    /**
     * What the mesh of an arrest in time may hide of the value: a bound of what ever finer ones would change, without model
     * factors.
     *
     * @return allowance [N], [m] or [rad], not negative; 0 by energy balance, positive infinity where fewer than three meshes
     *     were followed
     */
    public double allowance() {
        return values.allowance();
    }

    /**
     * The case that governs.
     *
     * @return the case
     */
    public FallCase fallCase() {
        return fallCase;
    }

    /**
     * The arrest that governs, as computed, without model factors.
     *
     * @return the arrest
     */
    public ArrestResult arrest() {
        return arrest;
    }

    /**
     * Why the value does not yet say that every case keeps the limit that it keeps.
     *
     * @return what would have to be computed as well, in words; empty where nothing would
     */
    public String lacking() {
        return lacking;
    }

    @Override
    public String toString() {
        return name() + " " + SignificantDigits.of(value(), 6) + " " + unit() + ": " + fallCase.describe();
    }
}
