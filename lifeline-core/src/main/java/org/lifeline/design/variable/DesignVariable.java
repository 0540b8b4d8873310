package org.lifeline.design.variable;

import org.lifeline.analysis.Statics;
import org.lifeline.base.GivenValue;
import org.lifeline.base.InputRule;
import org.lifeline.base.Interval;
import org.lifeline.base.Violations;
import org.lifeline.model.LifelineDesign;

/**
 * Something in a design that can be chosen: its name, unit and bounds, and how a value changes the design. Changes by
 * different variables can be applied one after the other.
 *
 * <p>Immutable and thread-safe, if the change is a pure function. {@link DesignVariables} has the common ones.
 *
 * @since 1.0.0
 */
public final class DesignVariable {
    private final String name;
    private final String unit;
    private final Interval bounds;
    private final Scale scale;
    private final Change change;

    /** How values are spread over the bounds. */
    private enum Scale {
        LINEAR,
        LOGARITHMIC,
        WHOLE
    }

    private DesignVariable(String name, String unit, Interval bounds, Scale scale, Change change) {
        this.name = name;
        this.unit = unit;
        this.bounds = bounds;
        this.scale = scale;
        this.change = change;
        new Violations()
                .named("name", name)
                .require(
                        scale != Scale.LOGARITHMIC || bounds.low() > 0,
                        "bounds",
                        GivenValue.text(bounds.toString()),
                        InputRule.NOT_LOGARITHMIC)
                .require(
                        scale != Scale.WHOLE || firstWhole() <= lastWhole(),
                        "bounds",
                        GivenValue.text(bounds.toString()),
                        InputRule.NO_WHOLE_NUMBER)
                .throwIfAny();
    }

    /**
     * A variable.
     *
     * @param name what is varied, with its unit behind it in tables
     * @param unit SI unit, {@code "-"} for a bare number
     * @param bounds lowest and highest value to consider [unit of the variable]
     * @param change how a value changes the design
     * @return the variable
     */
    public static DesignVariable of(String name, String unit, Interval bounds, Change change) {
        Violations.required("unit", unit);
        Violations.required("bounds", bounds);
        Violations.required("change", change);
        return new DesignVariable(name, unit, bounds, Scale.LINEAR, change);
    }

    /**
     * The same variable, its values spread evenly in the logarithm: for stiffnesses and the like.
     *
     * @return the new variable
     * @throws org.lifeline.base.InvalidInputException if the bounds do not lie above zero
     */
    public DesignVariable logarithmic() {
        return new DesignVariable(name, unit, bounds, Scale.LOGARITHMIC, change);
    }

    /**
     * The same variable, taking whole numbers only: those within its bounds, which need not be whole themselves.
     *
     * @return the new variable
     * @throws org.lifeline.base.InvalidInputException if no whole number lies within the bounds
     */
    public DesignVariable whole() {
        return new DesignVariable(name, unit, bounds, Scale.WHOLE, change);
    }

    /**
     * The same variable within other bounds.
     *
     * @param value lowest and highest value to consider [unit of the variable]
     * @return the new variable
     * @throws org.lifeline.base.InvalidInputException if the scale of the variable has no values within them: they reach down to
     *     zero or below for a logarithmic one, or hold no whole number for one of whole numbers
     */
    public DesignVariable within(Interval value) {
        Violations.required("value", value);
        return new DesignVariable(name, unit, value, scale, change);
    }

    /**
     * The same variable of a line between elastic supports that stand: what was built stays where it stands when nothing pulls at
     * it, and every value lets the supports yield anew. Without this the positions as installed stay, so that the supports are
     * built elsewhere for every value.
     *
     * @return the new variable; a value for which the supports find no place to rest throws a
     *     {@link org.lifeline.base.NoEquilibriumException} in {@link #apply}
     * @since 1.0.0
     */
    public DesignVariable yielding() {
        return new DesignVariable(name, unit, bounds, scale, (base, value) -> {
            LifelineDesign changed = change.apply(base.withLine(Statics.withUnloadedSupports(base.line())), value);
            return changed.withLine(Statics.withYieldedSupports(changed.line()));
        });
    }

    /**
     * What is varied.
     *
     * @return the name
     */
    public String name() {
        return name;
    }

    /**
     * Unit of the values.
     *
     * @return SI unit, {@code "-"} for a bare number
     */
    public String unit() {
        return unit;
    }

    /**
     * Lowest and highest value to consider.
     *
     * @return the bounds [unit of the variable]
     */
    public Interval bounds() {
        return bounds;
    }

    /**
     * Tells whether the variable takes whole numbers only.
     *
     * @return true for a count
     */
    public boolean isWhole() {
        return scale == Scale.WHOLE;
    }

    /**
     * A value from its share of the way between the bounds, on the scale of the variable.
     *
     * @param share 0 for the lower bound, 1 for the upper [-]; of a variable that takes whole numbers for the lowest and the
     *     highest of them
     * @return the value [unit of the variable], within the bounds
     */
    public double at(double share) {
        if (share <= 0) {
            return scale == Scale.WHOLE ? firstWhole() : bounds.low();
        }
        if (share >= 1) {
            return scale == Scale.WHOLE ? lastWhole() : bounds.high();
        }
        return switch (scale) {
            case LINEAR -> bounds.low() + share * bounds.width();
            case LOGARITHMIC -> bounds.low() * StrictMath.pow(bounds.high() / bounds.low(), share);
            case WHOLE ->
                Math.max(firstWhole(), Math.min(lastWhole(), Math.rint(bounds.low() + share * bounds.width())));
        };
    }

    /** The lowest whole number within the bounds; a zero without sign, so that it is one value with the other zero. */
    double firstWhole() {
        return Math.ceil(bounds.low()) + 0.0;
    }

    /** The highest whole number within the bounds. */
    double lastWhole() {
        return Math.floor(bounds.high()) + 0.0;
    }

    /**
     * The design with this variable set.
     *
     * @param base the design to start from
     * @param value the value [unit of the variable]; need not lie within the bounds
     * @return the changed design
     * @throws org.lifeline.base.InvalidInputException if the value makes no design
     */
    public LifelineDesign apply(LifelineDesign base, double value) {
        Violations.required("base", base);
        return change.apply(base, value);
    }

    /** The same variable in a design in which another one has been set before. */
    DesignVariable after(DesignVariable other, double value) {
        return new DesignVariable(
                name, unit, bounds, scale, (base, v) -> change.apply(other.change.apply(base, value), v));
    }

    @Override
    public String toString() {
        return unit.equals("-") ? name : name + " [" + unit + "]";
    }
}
