package org.lifeline.design.criteria;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.lifeline.base.GivenValue;
import org.lifeline.base.InputRule;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.PlausibleRange;
import org.lifeline.base.Violation;
import org.lifeline.base.Violations;
import org.lifeline.design.envelope.Quantity;

/**
 * What a criterion compares with its limit: a quantity of the arrests at its worst, or a fact of the design.
 *
 * <p>Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public final class CheckedQuantity {
    private static final String OF_STRENGTH = "%s × largest load against strength";

    /** Strength over load, of the cable and of every anchor; the smallest is the worst. */
    public static final CheckedQuantity STRENGTH_FACTOR = new CheckedQuantity(
                    "strengthFactor", "strength over load", "-", LimitType.AT_LEAST, Strengths::all)
            .compared(OF_STRENGTH);
    /** Minimum breaking strength with its termination over the largest tension. */
    public static final CheckedQuantity CABLE_STRENGTH_FACTOR = new CheckedQuantity(
                    "cableStrengthFactor",
                    "strength of the cable over its tension",
                    "-",
                    LimitType.AT_LEAST,
                    Strengths::cable)
            .compared(OF_STRENGTH);
    /** Capacity over load of every anchor; the smallest is the worst. */
    public static final CheckedQuantity ANCHOR_STRENGTH_FACTOR = new CheckedQuantity(
                    "anchorStrengthFactor",
                    "capacity over load of an anchor",
                    "-",
                    LimitType.AT_LEAST,
                    Strengths::anchors)
            .compared(OF_STRENGTH);
    /**
     * Strength of cable and anchors over their load when twice the potential impact energy is arrested, see 29 CFR
     * 1926.502(d)(16)(v); the smallest is the worst.
     */
    public static final CheckedQuantity IMPACT_STRENGTH = new CheckedQuantity(
                    "impactStrength",
                    "strength over load with twice the impact energy",
                    "-",
                    LimitType.AT_LEAST,
                    ImpactStrength::values)
            .compared("load with twice the potential impact energy against strength");
    /** Stated capacity of every anchor [N]; the smallest is the worst. */
    public static final CheckedQuantity ANCHOR_CAPACITY = new CheckedQuantity(
            "anchorCapacity",
            "capacity of an anchor",
            "N",
            LimitType.AT_LEAST,
            s -> Strengths.capacities(s, x -> true));
    /** Stated capacity of the end anchors [N]; the smaller is the worst. */
    public static final CheckedQuantity END_ANCHOR_CAPACITY = new CheckedQuantity(
            "endAnchorCapacity",
            "capacity of an end anchor",
            "N",
            LimitType.AT_LEAST,
            s -> Strengths.capacities(s, x -> x.isEnd()));
    /** Stated capacity of the intermediate anchors [N]; the smallest is the worst. */
    public static final CheckedQuantity INTERMEDIATE_ANCHOR_CAPACITY = new CheckedQuantity(
            "intermediateAnchorCapacity",
            "capacity of an intermediate anchor",
            "N",
            LimitType.AT_LEAST,
            s -> Strengths.capacities(s, x -> !x.isEnd()));
    /** Diameter of the cable [m]. */
    public static final CheckedQuantity CABLE_DIAMETER = new CheckedQuantity(
            "cableDiameter", "diameter of the cable", "m", LimitType.AT_LEAST, DesignProperties::diameter);
    /** Horizontal length of every span [m]; the longest is the worst. */
    public static final CheckedQuantity SPAN_LENGTH =
            new CheckedQuantity("spanLength", "length of a span", "m", LimitType.AT_MOST, DesignProperties::spans);
    /** Horizontal distance along the line between the end anchors [m]. */
    public static final CheckedQuantity LINE_LENGTH = new CheckedQuantity(
            "lineLength", "distance between the end anchors", "m", LimitType.AT_MOST, DesignProperties::length);
    /** Number of spans. */
    public static final CheckedQuantity SPANS =
            new CheckedQuantity("spans", "number of spans", "-", LimitType.AT_MOST, DesignProperties::numberOfSpans);
    /**
     * Slope of the installed cable: sag over half the horizontal length of the span, that of the straight line from a
     * support to the lowest point of a level span [-]; the smallest is the worst.
     */
    public static final CheckedQuantity INITIAL_SLOPE = new CheckedQuantity(
            "initialSlope", "slope of the installed cable", "-", LimitType.AT_LEAST, s -> DesignProperties.sags(s, 2));
    /** Sag of the installed cable over the horizontal length of the span [-]; the smallest is the worst. */
    public static final CheckedQuantity INITIAL_SAG_RATIO = new CheckedQuantity(
            "initialSagRatio",
            "initial sag over length of the span",
            "-",
            LimitType.AT_LEAST,
            s -> DesignProperties.sags(s, 1));
    /** Angle of the chord of every span from the horizontal [rad]; the steepest is the worst. */
    public static final CheckedQuantity CHORD_ANGLE = new CheckedQuantity(
            "chordAngle", "angle of a span from the horizontal", "rad", LimitType.AT_MOST, DesignProperties::chords);
    /**
     * Steepest slope of the line from the horizontal, at any point along it, without anybody on it and over the temperatures
     * in service [rad].
     */
    public static final CheckedQuantity LINE_SLOPE = new CheckedQuantity(
            "lineSlope", "slope of the line from the horizontal", "rad", LimitType.AT_MOST, DesignProperties::slopes);
    /** Angle by which the line turns at an intermediate anchor, in plan and elevation together [rad]; the largest is the worst. */
    public static final CheckedQuantity LINE_TURN = new CheckedQuantity(
            "lineTurn",
            "turn of the line at an intermediate anchor",
            "rad",
            LimitType.AT_MOST,
            DesignProperties::turns);
    /** Number of workers on the line at once, those who fall and hang included. */
    public static final CheckedQuantity WORKERS =
            new CheckedQuantity("workers", "number of workers", "-", LimitType.AT_MOST, DesignProperties::workers);
    /** Most workers in one span: all on the line, since nothing keeps two from sharing a span. */
    public static final CheckedQuantity WORKERS_IN_ONE_SPAN = new CheckedQuantity(
            "workersInOneSpan", "number of workers in one span", "-", LimitType.AT_MOST, DesignProperties::workers);
    /** Mass of the heaviest worker with clothing and tools [kg]; it must stay below its limit. */
    public static final CheckedQuantity WORKER_MASS = new CheckedQuantity(
            "workerMass", "largest mass of a worker", "kg", LimitType.BELOW, DesignProperties::heaviest);
    /** Share of the intermediate anchors that hold the cable fast [-]. */
    public static final CheckedQuantity FIXED_POSTS = new CheckedQuantity(
            "fixedPosts",
            "share of the posts that hold the cable",
            "-",
            LimitType.AT_LEAST,
            DesignProperties::fixedPosts);
    /** Span length over (40/11)(H − 4 m), H the height of the working floor that carries the posts above what lies below [-]. */
    public static final CheckedQuantity SPAN_FOR_HEIGHT = new CheckedQuantity(
            "spanForHeight", "length of a span", "-", LimitType.AT_MOST, DesignProperties::spanForHeight);
    /** Lowest point of a falling worker against the top of what lies below, without any margin [m]. */
    public static final CheckedQuantity FREE_HEIGHT = new CheckedQuantity(
                    "freeHeight",
                    "height that is left below the feet",
                    "m",
                    LimitType.AT_LEAST,
                    DesignProperties::freeHeight)
            .compared("distance to the lowest point against distance to the lower level, both below the line");

    /** Margin below the feet that the design states [m]. */
    public static final CheckedQuantity STATED_MARGIN = new CheckedQuantity(
            "statedMargin", "stated margin", "m", LimitType.AT_LEAST, DesignProperties::statedMargin);
    /** Harness stretch that the design states [m]. */
    public static final CheckedQuantity STATED_HARNESS_STRETCH = new CheckedQuantity(
            "statedHarnessStretch",
            "stated harness stretch",
            "m",
            LimitType.AT_LEAST,
            DesignProperties::statedHarnessStretch);

    private static final List<CheckedQuantity> OF_THE_DESIGN = List.of(
            STRENGTH_FACTOR,
            CABLE_STRENGTH_FACTOR,
            ANCHOR_STRENGTH_FACTOR,
            IMPACT_STRENGTH,
            ANCHOR_CAPACITY,
            END_ANCHOR_CAPACITY,
            INTERMEDIATE_ANCHOR_CAPACITY,
            CABLE_DIAMETER,
            SPAN_LENGTH,
            LINE_LENGTH,
            SPANS,
            INITIAL_SLOPE,
            INITIAL_SAG_RATIO,
            CHORD_ANGLE,
            LINE_SLOPE,
            LINE_TURN,
            WORKERS,
            WORKERS_IN_ONE_SPAN,
            WORKER_MASS,
            FIXED_POSTS,
            SPAN_FOR_HEIGHT,
            FREE_HEIGHT,
            STATED_MARGIN,
            STATED_HARNESS_STRETCH);

    private static final Set<String> OF_ANCHORS =
            Set.of("anchorStrengthFactor", "anchorCapacity", "endAnchorCapacity", "intermediateAnchorCapacity");

    private final String key;
    private final String words;
    private final String unit;
    private final LimitType limitType;
    private final Function<CheckedDesign, List<CheckedValue>> values;
    private final String comparison;
    private final @Nullable String support;

    private CheckedQuantity(
            String key,
            String words,
            String unit,
            LimitType limitType,
            Function<CheckedDesign, List<CheckedValue>> values) {
        this.key = key;
        this.words = words;
        this.unit = unit;
        this.limitType = limitType;
        this.values = values;
        this.comparison = "";
        this.support = null;
    }

    private CheckedQuantity(CheckedQuantity other, String comparison, @Nullable String support) {
        this.key = other.key;
        this.words = other.words;
        this.unit = other.unit;
        this.limitType = other.limitType;
        this.values = other.values;
        this.comparison = comparison;
        this.support = support;
    }

    /**
     * The worst value of a quantity of the arrests. A clearance margin is to be at least its limit, everything else at most.
     *
     * @param quantity the quantity
     * @return the quantity
     * @throws InvalidInputException for the required elevation: elevations have no ratio; use the clearance margin
     */
    public static CheckedQuantity of(Quantity quantity) {
        Violations.required("quantity", quantity);
        if (quantity == Quantity.REQUIRED_ELEVATION) {
            throw new InvalidInputException(List.of(Violation.of(
                    "quantity", GivenValue.text(quantity.key()), InputRule.NO_RATIO, Quantity.CLEARANCE_MARGIN.key())));
        }
        CheckedQuantity checked = new CheckedQuantity(
                quantity.key(),
                quantity.words(),
                quantity.unit(),
                quantity.largestIsWorst() ? LimitType.AT_MOST : LimitType.AT_LEAST,
                s -> List.of(DesignProperties.quantity(s, quantity)));
        return quantity == Quantity.CLEARANCE_MARGIN
                ? checked.compared(
                        "clearance required below the line, with the wanted margin, against what is available")
                : checked;
    }

    /**
     * The largest force on one support [N].
     *
     * @param supportId the support
     * @return the quantity
     */
    public static CheckedQuantity loadOnSupport(String supportId) {
        Violations.required("supportId", supportId);
        CheckedQuantity load = new CheckedQuantity(
                "supportLoad",
                "load on the support",
                "N",
                LimitType.AT_MOST,
                s -> List.of(DesignProperties.support(s, supportId)));
        return new CheckedQuantity(load, "", supportId);
    }

    /**
     * The quantity of a name in a design file.
     *
     * @param key for example {@code "endAnchorLoad"} or {@code "strengthFactor"}
     * @return the quantity, if there is one
     */
    public static Optional<CheckedQuantity> ofKey(String key) {
        Violations.required("key", key);
        return all().stream().filter(d -> d.key.equals(key)).findFirst();
    }

    /**
     * All of them: the quantities of the arrests, then the facts of the design.
     *
     * @return the quantities; unmodifiable
     */
    public static List<CheckedQuantity> all() {
        List<CheckedQuantity> list = new ArrayList<>();
        for (Quantity q : Quantity.values()) {
            if (q != Quantity.REQUIRED_ELEVATION) {
                list.add(of(q));
            }
        }
        list.addAll(OF_THE_DESIGN);
        return List.copyOf(list);
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
     * The SI unit of a limit on this quantity.
     *
     * @return {@code "N"}, {@code "m"}, {@code "kg"}, {@code "rad"}, or {@code "-"} for a bare number
     */
    public String unit() {
        return unit;
    }

    /**
     * Which side of a limit is allowed.
     *
     * @return at most for what must stay small, at least for what must be large
     */
    public LimitType limitType() {
        return limitType;
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
     * The support that a load is on.
     *
     * @return its id; empty where the quantity is not that of one support
     */
    public Optional<String> support() {
        return Optional.ofNullable(support);
    }

    /** The same with words of its own for what is compared with what; "%s" stands for the limit. */
    private CheckedQuantity compared(String value) {
        return new CheckedQuantity(this, value, support);
    }

    /** What is compared with what, in words. */
    String comparison(double limit) {
        if (comparison.isEmpty()) {
            return limitType != LimitType.AT_LEAST
                    ? words + " against limit"
                    : "least " + words + " wanted against what is there";
        }
        return comparison.replace("%s", Requirement.number(limit));
    }

    /** Which limits on it are plausible; negative ones where a distance has to be left. */
    PlausibleRange limits() {
        return switch (unit) {
            case "N" -> PlausibleRange.CRITERION_FORCE;
            case "m" ->
                limitType == LimitType.AT_LEAST ? PlausibleRange.CRITERION_MARGIN : PlausibleRange.CRITERION_LENGTH;
            case "kg" -> PlausibleRange.WORKER_MASS;
            case "rad" -> PlausibleRange.CRITERION_ANGLE;
            default -> PlausibleRange.CRITERION_NUMBER;
        };
    }

    /** Tells whether its values are those of single anchors. */
    boolean isOfAnchors() {
        return OF_ANCHORS.contains(key);
    }

    List<CheckedValue> values(CheckedDesign design) {
        return values.apply(design);
    }

    @Override
    public String toString() {
        return key;
    }
}
