package org.lifeline.examples.criteria;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.SupportReaction;

/** A quantity of an arrest that a limit can be put on. */
public enum Demand {
    /** The larger of the two end anchor loads [N]. */
    END_ANCHOR_LOAD("endAnchorLoad", "N", r -> OptionalDouble.of(r.endAnchorLoad())),
    /** The largest load on any support [N]. */
    SUPPORT_LOAD(
            "supportLoad", "N", r -> r.supports().stream().mapToDouble(SupportReaction::force).max()),
    /** Largest tension in the cable [N]. */
    MAXIMUM_TENSION("maximumTension", "N", r -> OptionalDouble.of(r.maximumTension())),
    /** Maximum arrest force on one worker [N]. */
    ARREST_FORCE("arrestForce", "N", r -> OptionalDouble.of(r.arrestForce())),
    /** Free fall distance [m]. */
    FREE_FALL("freeFall", "m", r -> OptionalDouble.of(r.freeFall())),
    /** Deployment of the connecting subsystem [m]. */
    DEPLOYMENT("deployment", "m", r -> OptionalDouble.of(r.deployment())),
    /** Sag at the load [m]. */
    SAG("sag", "m", r -> OptionalDouble.of(r.sag())),
    /** Descent of the attachment [m]. */
    LINE_DESCENT("lineDescent", "m", r -> OptionalDouble.of(r.lineDescent())),
    /** Total fall distance [m]. */
    TOTAL_FALL_DISTANCE("totalFallDistance", "m", r -> OptionalDouble.of(r.totalFallDistance())),
    /** Clearance that remains above the highest obstruction [m]; the only one where more is better. */
    CLEARANCE_MARGIN("clearanceMargin", "m", r -> r.clearance().margin()),
    /** Clearance required below the line [m]. */
    REQUIRED_BELOW_LINE(
            "requiredBelowLine", "m", r -> OptionalDouble.of(r.clearance().requiredBelowLine()));

    private final String key;
    private final String unit;
    private final Function<ArrestResult, OptionalDouble> value;

    Demand(String key, String unit, Function<ArrestResult, OptionalDouble> value) {
        this.key = key;
        this.unit = unit;
        this.value = value;
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
     * Tells whether the limit is a least value.
     *
     * @return true only for the clearance margin
     */
    public boolean atLeast() {
        return this == CLEARANCE_MARGIN;
    }

    /**
     * The value of the demand in an arrest.
     *
     * @param result the arrest
     * @return the value in SI, if the arrest has one
     */
    public OptionalDouble of(ArrestResult result) {
        return value.apply(result);
    }
}
