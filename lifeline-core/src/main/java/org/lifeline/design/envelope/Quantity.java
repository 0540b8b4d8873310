package org.lifeline.design.envelope;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.Method;
import org.lifeline.analysis.state.InlineAbsorberState;
import org.lifeline.analysis.state.SupportReaction;
import org.lifeline.base.Violations;
import org.lifeline.model.ModelFactors;

/**
 * A quantity of an arrest whose worst value is looked for. Computed forces carry the model factor on force, computed
 * distances (deployment, sag, descent of the line) the one on distance; lengths that the design states (free fall,
 * lanyard, harness stretch, body, margin) carry none.
 *
 * @since 1.0.0
 */
public enum Quantity {
    /** The larger of the two end anchor loads [N]. */
    END_ANCHOR_LOAD("endAnchorLoad", "end anchor load", Unit.FORCE),
    /** The largest load on an intermediate anchor [N]; absent on a single span. */
    INTERMEDIATE_ANCHOR_LOAD("intermediateAnchorLoad", "load on an intermediate anchor", Unit.FORCE),
    /** The largest load on any support [N]. */
    SUPPORT_LOAD("supportLoad", "load on a support", Unit.FORCE),
    /** Largest tension in the cable [N]. */
    MAXIMUM_TENSION("maximumTension", "maximum tension of the cable", Unit.FORCE),
    /** Maximum arrest force on one worker [N]. */
    ARREST_FORCE("arrestForce", "maximum arrest force", Unit.FORCE),
    /** Vertical force on the line at the place of the fall [N]. */
    LINE_LOAD("lineLoad", "force on the line", Unit.FORCE),
    /** Free fall distance [m]. */
    FREE_FALL("freeFall", "free fall distance", Unit.LENGTH),
    /** Deployment of the connecting subsystem [m]. */
    DEPLOYMENT("deployment", "deployment", Unit.LENGTH),
    /** Sag at the load, below the chord of the span [m]. */
    SAG("sag", "sag at the load", Unit.LENGTH),
    /** Descent of the attachment from its position before the fall [m]. */
    LINE_DESCENT("lineDescent", "descent of the line", Unit.LENGTH),
    /** Extension of an in-line energy absorber [m]; absent without one. */
    INLINE_EXTENSION("inlineExtension", "extension of an in-line absorber", Unit.LENGTH),
    /** Total fall distance [m]. */
    TOTAL_FALL_DISTANCE("totalFallDistance", "total fall distance", Unit.LENGTH),
    /** Clearance required below the line, as it hangs at the station before the fall [m]. */
    REQUIRED_BELOW_LINE("requiredBelowLine", "clearance required below the line", Unit.LENGTH),
    /** Clearance required below the walking level [m]. */
    REQUIRED_BELOW_WALKING_LEVEL(
            "requiredBelowWalkingLevel", "clearance required below the walking level", Unit.LENGTH),
    /** Elevation below which nothing may stand [m]; the lowest is the worst. */
    REQUIRED_ELEVATION("requiredElevation", "elevation below which nothing may stand", Unit.ELEVATION),
    /** What remains above the highest obstruction below [m], negative where it does not suffice; the least is the worst. */
    CLEARANCE_MARGIN("clearanceMargin", "clearance margin", Unit.ELEVATION),
    /** Horizontal displacement of the harness attachment in the swing [m]. */
    SWING_DISPLACEMENT("swingDisplacement", "horizontal displacement in the swing", Unit.LENGTH),
    /** Angle of the connecting subsystem from the vertical when it becomes taut [rad]. */
    SWING_ANGLE("swingAngle", "angle of the swing", Unit.ANGLE),
    /** Drop of the harness attachment in the swing [m]. */
    SWING_DROP("swingDrop", "drop in the swing", Unit.LENGTH);

    private enum Unit {
        FORCE("N", true),
        LENGTH("m", true),
        ANGLE("rad", true),
        ELEVATION("m", false);

        private final String symbol;
        private final boolean largest;

        Unit(String symbol, boolean largest) {
            this.symbol = symbol;
            this.largest = largest;
        }
    }

    private final String key;
    private final String words;
    private final Unit unit;

    Quantity(String key, String words, Unit unit) {
        this.key = key;
        this.words = words;
        this.unit = unit;
    }

    /**
     * The quantity of a name in a design file.
     *
     * @param key for example {@code "endAnchorLoad"}
     * @return the quantity, if there is one
     */
    public static Optional<Quantity> of(String key) {
        Violations.required("key", key);
        return Arrays.stream(values()).filter(q -> q.key.equals(key)).findFirst();
    }

    /**
     * The names of all quantities.
     *
     * @return the keys in the order of the constants; unmodifiable
     */
    public static List<String> keys() {
        return Arrays.stream(values()).map(Quantity::key).toList();
    }

    /**
     * The name in design and result files.
     *
     * @return the key
     */
    public String key() {
        return key;
    }

    /**
     * The quantity in the trade's words.
     *
     * @return for example {@code "end anchor load"}
     */
    public String words() {
        return words;
    }

    /**
     * The SI unit.
     *
     * @return {@code "N"}, {@code "m"} or {@code "rad"}
     */
    public String unit() {
        return unit.symbol;
    }

    /**
     * Tells which end of the range is the worst.
     *
     * @return true if the largest value is the worst, false if the smallest is
     */
    public boolean largestIsWorst() {
        return unit.largest;
    }

    /**
     * Tells a force from a distance or an angle.
     *
     * @return true for a force
     */
    public boolean isForce() {
        return unit == Unit.FORCE;
    }

    /**
     * The value in an arrest, with the model factors.
     *
     * @param arrest the arrest
     * @param factors the engineer's factors
     * @return the value [N], [m] or [rad]; NaN where the arrest has none
     */
    public double value(ArrestResult arrest, ModelFactors factors) {
        Violations.required("arrest", arrest);
        Violations.required("factors", factors);
        if (arrest.method() == Method.RESCUE_AT_REST && isOfFall()) {
            return Double.NaN;
        }
        return isForce() ? factors.force() * force(arrest) : length(arrest, factors.distance());
    }

    /** Tells whether it is a quantity of the fall itself, which the line at rest afterwards does not have. */
    private boolean isOfFall() {
        return switch (this) {
            case ARREST_FORCE,
                    FREE_FALL,
                    DEPLOYMENT,
                    TOTAL_FALL_DISTANCE,
                    SWING_DISPLACEMENT,
                    SWING_ANGLE,
                    SWING_DROP -> true;
            default -> false;
        };
    }

    private double force(ArrestResult r) {
        return switch (this) {
            case END_ANCHOR_LOAD -> r.endAnchorLoad();
            case INTERMEDIATE_ANCHOR_LOAD -> intermediate(r);
            case SUPPORT_LOAD ->
                r.supports().stream().mapToDouble(SupportReaction::force).max().orElse(Double.NaN);
            case MAXIMUM_TENSION -> r.maximumTension();
            case ARREST_FORCE -> r.arrestForce();
            case LINE_LOAD -> r.lineLoad();
            default -> throw new IllegalStateException(key + " is not a force");
        };
    }

    private double length(ArrestResult r, double factor) {
        double allowance = (factor - 1) * (r.deployment() + r.lineDescent());
        return switch (this) {
            case FREE_FALL -> r.freeFall();
            case DEPLOYMENT -> factor * r.deployment();
            case SAG -> factor * r.sag();
            case LINE_DESCENT -> factor * r.lineDescent();
            case INLINE_EXTENSION -> factor * inline(r);
            case TOTAL_FALL_DISTANCE -> r.totalFallDistance() + allowance;
            case REQUIRED_BELOW_LINE -> r.clearance().requiredBelowLine() + allowance;
            case REQUIRED_BELOW_WALKING_LEVEL -> r.clearance().requiredBelowWalkingLevel() + allowance;
            case REQUIRED_ELEVATION -> r.clearance().requiredElevation() - allowance;
            case CLEARANCE_MARGIN -> r.clearance().margin().orElse(Double.NaN) - allowance;
            case SWING_DISPLACEMENT -> SwingFall.of(r).displacement();
            case SWING_ANGLE -> SwingFall.of(r).angle();
            case SWING_DROP -> SwingFall.of(r).drop();
            default -> throw new IllegalStateException(key + " is not a length or an angle");
        };
    }

    private static double intermediate(ArrestResult r) {
        List<SupportReaction> all = r.supports();
        double most = Double.NaN;
        for (int i = 1; i < all.size() - 1; i++) {
            most = Double.isNaN(most)
                    ? all.get(i).force()
                    : Math.max(most, all.get(i).force());
        }
        return most;
    }

    private static double inline(ArrestResult r) {
        return r.inlineAbsorbers().stream()
                .mapToDouble(InlineAbsorberState::extension)
                .max()
                .orElse(Double.NaN);
    }
}
