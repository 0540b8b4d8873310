package org.lifeline.examples.arrests;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.SupportReaction;
import org.lifeline.model.ModelFactors;

/** A quantity of an arrest that a limit can be put on. */
public enum Demand {
    /** The larger of the two end anchor loads [N]. */
    END_ANCHOR_LOAD("endAnchorLoad", "N", "end anchor load"),
    /** The largest load on any support [N]. */
    SUPPORT_LOAD("supportLoad", "N", "load on a support"),
    /** Largest tension in the cable [N]. */
    MAXIMUM_TENSION("maximumTension", "N", "maximum tension of the cable"),
    /** Maximum arrest force on one worker [N]. */
    ARREST_FORCE("arrestForce", "N", "maximum arrest force"),
    /** Free fall distance [m]. */
    FREE_FALL("freeFall", "m", "free fall distance"),
    /** Deployment of the connecting subsystem [m]. */
    DEPLOYMENT("deployment", "m", "deployment"),
    /** Sag at the load [m]. */
    SAG("sag", "m", "sag at the load"),
    /** Descent of the attachment [m]. */
    LINE_DESCENT("lineDescent", "m", "descent of the line"),
    /** Total fall distance [m]. */
    TOTAL_FALL_DISTANCE("totalFallDistance", "m", "total fall distance"),
    /** Clearance that remains above the highest obstruction [m]; the only one where more is better. */
    CLEARANCE_MARGIN("clearanceMargin", "m", "clearance margin"),
    /** Clearance required below the line [m]. */
    REQUIRED_BELOW_LINE("requiredBelowLine", "m", "clearance required below the line");

    private final String key;
    private final String unit;
    private final String words;

    Demand(String key, String unit, String words) {
        this.key = key;
        this.unit = unit;
        this.words = words;
    }

    /**
     * The demand of a key in a design file.
     *
     * @param key for example {@code "endAnchorLoad"}
     * @return the demand, if there is one
     */
    public static Optional<Demand> of(String key) {
        return Arrays.stream(values()).filter(d -> d.key.equals(key)).findFirst();
    }

    /**
     * The keys of all demands.
     *
     * @return the keys; unmodifiable
     */
    public static List<String> keys() {
        return Arrays.stream(values()).map(Demand::key).toList();
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
     * The SI unit.
     *
     * @return {@code "N"} or {@code "m"}
     */
    public String unit() {
        return unit;
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
     * Tells whether the limit is a least value.
     *
     * @return true only for the clearance margin
     */
    public boolean atLeast() {
        return this == CLEARANCE_MARGIN;
    }

    /**
     * The computed value of the demand in an arrest, no model factor applied.
     *
     * @param r the arrest
     * @return the value [unit of the demand], if the arrest has one
     */
    public OptionalDouble of(ArrestResult r) {
        return switch (this) {
            case END_ANCHOR_LOAD -> OptionalDouble.of(r.endAnchorLoad());
            case SUPPORT_LOAD ->
                r.supports().stream().mapToDouble(SupportReaction::force).max();
            case MAXIMUM_TENSION -> OptionalDouble.of(r.maximumTension());
            case ARREST_FORCE -> OptionalDouble.of(r.arrestForce());
            case FREE_FALL -> OptionalDouble.of(r.freeFall());
            case DEPLOYMENT -> OptionalDouble.of(r.deployment());
            case SAG -> OptionalDouble.of(r.sag());
            case LINE_DESCENT -> OptionalDouble.of(r.lineDescent());
            case TOTAL_FALL_DISTANCE -> OptionalDouble.of(r.totalFallDistance());
            case CLEARANCE_MARGIN -> r.clearance().margin();
            case REQUIRED_BELOW_LINE -> OptionalDouble.of(r.clearance().requiredBelowLine());
        };
    }

    /**
     * A computed value with the engineer's model factors applied: forces times the factor on force, computed distances
     * (deployment, sag, descent of the line, also where they are part of a sum) times the factor on distance. Free fall
     * follows from geometry and is not scaled.
     *
     * @param computed the computed value [unit of the demand]
     * @param r the arrest in which it occurs
     * @param factors the factors
     * @return the value to compare with a limit [unit of the demand]
     */
    public double factored(double computed, ArrestResult r, ModelFactors factors) {
        double more = (factors.distance() - 1) * (r.deployment() + r.lineDescent());
        return switch (this) {
            case END_ANCHOR_LOAD, SUPPORT_LOAD, MAXIMUM_TENSION, ARREST_FORCE -> computed * factors.force();
            case DEPLOYMENT, SAG, LINE_DESCENT -> computed * factors.distance();
            case FREE_FALL -> computed;
            case TOTAL_FALL_DISTANCE, REQUIRED_BELOW_LINE -> computed + more;
            case CLEARANCE_MARGIN -> computed - more;
        };
    }
}
