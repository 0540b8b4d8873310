package org.lifeline.design.criteria;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.lifeline.design.envelope.Quantity;

/**
 * What a criterion compares with its limit: a quantity of the arrests at its worst, or a fact of the design.
 *
 * <p>Immutable and thread-safe.
 */
public final class CheckedQuantity {
    private static final String OF_STRENGTH = "%s × largest load against strength";

    /** Strength over load, of the cable and of every anchor; the smallest is the worst. */
    public static final CheckedQuantity STRENGTH_FACTOR = new CheckedQuantity(
                    "strengthFactor",
                    "strength over load",
                    "-",
                    LimitType.AT_LEAST,
                    DesignProperties.of(Strengths::all))
            .compared(OF_STRENGTH);
    /** Minimum breaking strength with its termination over the largest tension. */
    public static final CheckedQuantity CABLE_STRENGTH_FACTOR = new CheckedQuantity(
                    "cableStrengthFactor",
                    "strength of the cable over its tension",
                    "-",
                    LimitType.AT_LEAST,
                    DesignProperties.of(Strengths::cable))
            .compared(OF_STRENGTH);
    /** Capacity over load of every anchor; the smallest is the worst. */
    public static final CheckedQuantity ANCHOR_STRENGTH_FACTOR = new CheckedQuantity(
                    "anchorStrengthFactor",
                    "capacity over load of an anchor",
                    "-",
                    LimitType.AT_LEAST,
                    DesignProperties.of(Strengths::anchors))
            .compared(OF_STRENGTH);
    /** Stated capacity of every anchor [N]; the smallest is the worst. */
    public static final CheckedQuantity ANCHOR_CAPACITY = new CheckedQuantity(
            "anchorCapacity",
            "capacity of an anchor",
            "N",
            LimitType.AT_LEAST,
            DesignProperties.of(s -> Strengths.capacities(s, x -> true)));
    /** Stated capacity of the end anchors [N]; the smaller is the worst. */
    public static final CheckedQuantity END_ANCHOR_CAPACITY = new CheckedQuantity(
            "endAnchorCapacity",
            "capacity of an end anchor",
            "N",
            LimitType.AT_LEAST,
            DesignProperties.of(s -> Strengths.capacities(s, x -> x.isEnd())));
    /** Stated capacity of the intermediate anchors [N]; the smallest is the worst. */
    public static final CheckedQuantity INTERMEDIATE_ANCHOR_CAPACITY = new CheckedQuantity(
            "intermediateAnchorCapacity",
            "capacity of an intermediate anchor",
            "N",
            LimitType.AT_LEAST,
            DesignProperties.of(s -> Strengths.capacities(s, x -> !x.isEnd())));
    /** Diameter of the cable [m]. */
    public static final CheckedQuantity CABLE_DIAMETER = new CheckedQuantity(
            "cableDiameter",
            "diameter of the cable",
            "m",
            LimitType.AT_LEAST,
            DesignProperties.of(DesignProperties::diameter));
    /** Horizontal length of every span [m]; the longest is the worst. */
    public static final CheckedQuantity SPAN_LENGTH = new CheckedQuantity(
            "spanLength", "length of a span", "m", LimitType.AT_MOST, DesignProperties.of(DesignProperties::spans));
    /** Horizontal distance along the line between the end anchors [m]. */
    public static final CheckedQuantity LINE_LENGTH = new CheckedQuantity(
            "lineLength",
            "distance between the end anchors",
            "m",
            LimitType.AT_MOST,
            DesignProperties.of(DesignProperties::length));
    /** Number of spans. */
    public static final CheckedQuantity SPANS = new CheckedQuantity(
            "spans", "number of spans", "-", LimitType.AT_MOST, DesignProperties.of(DesignProperties::numberOfSpans));
    /**
     * Slope of the installed cable: sag over half the horizontal length of the span, that of the straight line from a
     * support to the lowest point of a level span [-]; the smallest is the worst.
     */
    public static final CheckedQuantity INITIAL_SLOPE = new CheckedQuantity(
            "initialSlope",
            "slope of the installed cable",
            "-",
            LimitType.AT_LEAST,
            DesignProperties.of(s -> DesignProperties.sags(s, 2)));
    /** Sag of the installed cable over the horizontal length of the span [-]; the smallest is the worst. */
    public static final CheckedQuantity INITIAL_SAG_RATIO = new CheckedQuantity(
            "initialSagRatio",
            "initial sag over length of the span",
            "-",
            LimitType.AT_LEAST,
            DesignProperties.of(s -> DesignProperties.sags(s, 1)));
    /** Angle of the chord of every span from the horizontal [rad]; the steepest is the worst. */
    public static final CheckedQuantity CHORD_ANGLE = new CheckedQuantity(
            "chordAngle",
            "angle of a span from the horizontal",
            "rad",
            LimitType.AT_MOST,
            DesignProperties.of(DesignProperties::chords));
    /** Number of workers on the line. */
    public static final CheckedQuantity WORKERS = new CheckedQuantity(
            "workers", "number of workers", "-", LimitType.AT_MOST, DesignProperties.of(DesignProperties::workers));
    /** Most workers in one span. */
    public static final CheckedQuantity WORKERS_IN_ONE_SPAN = new CheckedQuantity(
            "workersInOneSpan",
            "number of workers in one span",
            "-",
            LimitType.AT_MOST,
            DesignProperties.of(DesignProperties::workersInOneSpan));
    /** Mass of the heaviest worker with clothing and tools [kg]. */
    public static final CheckedQuantity WORKER_MASS = new CheckedQuantity(
            "workerMass",
            "largest mass of a worker",
            "kg",
            LimitType.AT_MOST,
            DesignProperties.of(DesignProperties::heaviest));
    /** Share of the intermediate anchors that hold the cable fast [-]. */
    public static final CheckedQuantity FIXED_POSTS = new CheckedQuantity(
            "fixedPosts",
            "share of the posts that hold the cable",
            "-",
            LimitType.AT_LEAST,
            DesignProperties.of(DesignProperties::fixedPosts));
    /** Span length over (40/11)(H − 4 m), H the height of the lower support above what lies below [-]. */
    public static final CheckedQuantity SPAN_FOR_HEIGHT = new CheckedQuantity(
            "spanForHeight",
            "length of a span",
            "-",
            LimitType.AT_MOST,
            DesignProperties.of(DesignProperties::spanForHeight));
    /** Lowest point of a falling worker against the top of what lies below, without any margin [m]. */
    public static final CheckedQuantity FREE_HEIGHT = new CheckedQuantity(
                    "freeHeight",
                    "height that is left below the feet",
                    "m",
                    LimitType.AT_LEAST,
                    DesignProperties.of(DesignProperties::freeHeight))
            .compared("distance to the lowest point against distance to the lower level, both below the line");

    /** Margin below the feet that the design states [m]. */
    public static final CheckedQuantity STATED_MARGIN = new CheckedQuantity(
            "statedMargin",
            "stated margin",
            "m",
            LimitType.AT_LEAST,
            DesignProperties.of(DesignProperties::statedMargin));
    /** Harness stretch that the design states [m]. */
    public static final CheckedQuantity STATED_HARNESS_STRETCH = new CheckedQuantity(
            "statedHarnessStretch",
            "stated harness stretch",
            "m",
            LimitType.AT_LEAST,
            DesignProperties.of(DesignProperties::statedHarnessStretch));

    private static final List<CheckedQuantity> OF_THE_DESIGN = List.of(
            STRENGTH_FACTOR,
            CABLE_STRENGTH_FACTOR,
            ANCHOR_STRENGTH_FACTOR,
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
            WORKERS,
            WORKERS_IN_ONE_SPAN,
            WORKER_MASS,
            FIXED_POSTS,
            SPAN_FOR_HEIGHT,
            FREE_HEIGHT,
            STATED_MARGIN,
            STATED_HARNESS_STRETCH);

    private final String key;
    private final String words;
    private final String unit;
    private final LimitType limitType;
    private final Function<CheckedDesign, List<CheckedValue>> values;
    private final String comparison;

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
    }

    private CheckedQuantity(CheckedQuantity other, String comparison) {
        this.key = other.key;
        this.words = other.words;
        this.unit = other.unit;
        this.limitType = other.limitType;
        this.values = other.values;
        this.comparison = comparison;
    }

    /**
     * The worst value of a quantity of the arrests. A clearance margin is to be at least its limit, everything else at most.
     *
     * @param quantity the quantity
     * @return the quantity
     * @throws IllegalArgumentException for the required elevation: elevations have no ratio; use the clearance margin
     */
    public static CheckedQuantity of(Quantity quantity) {
        if (quantity == Quantity.REQUIRED_ELEVATION) {
            throw new IllegalArgumentException(
                    "an elevation is no checked quantity; use " + Quantity.CLEARANCE_MARGIN.key());
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
        return new CheckedQuantity(
                "supportLoad",
                "load on the support",
                "N",
                LimitType.AT_MOST,
                s -> List.of(DesignProperties.support(s, supportId)));
    }

    /**
     * The quantity of a name in a design file.
     *
     * @param key for example {@code "endAnchorLoad"} or {@code "strengthFactor"}
     * @return the quantity, if there is one
     */
    public static Optional<CheckedQuantity> ofKey(String key) {
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

    /** The same with words of its own for what is compared with what; "%s" stands for the limit. */
    private CheckedQuantity compared(String value) {
        return new CheckedQuantity(this, value);
    }

    /** What is compared with what, in words. */
    String comparison(double limit) {
        if (comparison.isEmpty()) {
            return limitType == LimitType.AT_MOST
                    ? words + " against limit"
                    : "least " + words + " wanted against what is there";
        }
        String number = limit == Math.rint(limit) ? Long.toString((long) limit) : Double.toString(limit);
        return comparison.replace("%s", number);
    }

    List<CheckedValue> values(CheckedDesign design) {
        return values.apply(design);
    }

    @Override
    public String toString() {
        return key;
    }
}
