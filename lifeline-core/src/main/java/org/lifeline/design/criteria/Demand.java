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
public final class Demand {
    private static final String OF_STRENGTH = "%s × largest load against strength";

    /** Strength over load, of the cable and of every anchor; the smallest is the worst. */
    public static final Demand STRENGTH_FACTOR = new Demand(
                    "strengthFactor", "strength over load", "-", Sense.AT_LEAST, DesignFacts.of(Strengths::all))
            .compared(OF_STRENGTH);
    /** Minimum breaking strength with its termination over the largest tension. */
    public static final Demand CABLE_STRENGTH_FACTOR = new Demand(
                    "cableStrengthFactor",
                    "strength of the cable over its tension",
                    "-",
                    Sense.AT_LEAST,
                    DesignFacts.of(Strengths::cable))
            .compared(OF_STRENGTH);
    /** Capacity over load of every anchor; the smallest is the worst. */
    public static final Demand ANCHOR_STRENGTH_FACTOR = new Demand(
                    "anchorStrengthFactor",
                    "capacity over load of an anchor",
                    "-",
                    Sense.AT_LEAST,
                    DesignFacts.of(Strengths::anchors))
            .compared(OF_STRENGTH);
    /** Stated capacity of every anchor [N]; the smallest is the worst. */
    public static final Demand ANCHOR_CAPACITY = new Demand(
            "anchorCapacity",
            "capacity of an anchor",
            "N",
            Sense.AT_LEAST,
            DesignFacts.of(s -> Strengths.capacities(s, x -> true)));
    /** Stated capacity of the end anchors [N]; the smaller is the worst. */
    public static final Demand END_ANCHOR_CAPACITY = new Demand(
            "endAnchorCapacity",
            "capacity of an end anchor",
            "N",
            Sense.AT_LEAST,
            DesignFacts.of(s -> Strengths.capacities(s, x -> x.isEnd())));
    /** Stated capacity of the intermediate anchors [N]; the smallest is the worst. */
    public static final Demand INTERMEDIATE_ANCHOR_CAPACITY = new Demand(
            "intermediateAnchorCapacity",
            "capacity of an intermediate anchor",
            "N",
            Sense.AT_LEAST,
            DesignFacts.of(s -> Strengths.capacities(s, x -> !x.isEnd())));
    /** Diameter of the cable [m]. */
    public static final Demand CABLE_DIAMETER = new Demand(
            "cableDiameter", "diameter of the cable", "m", Sense.AT_LEAST, DesignFacts.of(DesignFacts::diameter));
    /** Horizontal length of every span [m]; the longest is the worst. */
    public static final Demand SPAN_LENGTH =
            new Demand("spanLength", "length of a span", "m", Sense.AT_MOST, DesignFacts.of(DesignFacts::spans));
    /** Horizontal distance along the line between the end anchors [m]. */
    public static final Demand LINE_LENGTH = new Demand(
            "lineLength", "distance between the end anchors", "m", Sense.AT_MOST, DesignFacts.of(DesignFacts::length));
    /** Number of spans. */
    public static final Demand SPANS =
            new Demand("spans", "number of spans", "-", Sense.AT_MOST, DesignFacts.of(DesignFacts::numberOfSpans));
    /**
     * Slope of the installed cable: sag over half the horizontal length of the span, that of the straight line from a
     * support to the lowest point of a level span [-]; the smallest is the worst.
     */
    public static final Demand INITIAL_SLOPE = new Demand(
            "initialSlope",
            "slope of the installed cable",
            "-",
            Sense.AT_LEAST,
            DesignFacts.of(s -> DesignFacts.sags(s, 2)));
    /** Sag of the installed cable over the horizontal length of the span [-]; the smallest is the worst. */
    public static final Demand INITIAL_SAG_RATIO = new Demand(
            "initialSagRatio",
            "initial sag over length of the span",
            "-",
            Sense.AT_LEAST,
            DesignFacts.of(s -> DesignFacts.sags(s, 1)));
    /** Angle of the chord of every span from the horizontal [rad]; the steepest is the worst. */
    public static final Demand CHORD_ANGLE = new Demand(
            "chordAngle",
            "angle of a span from the horizontal",
            "rad",
            Sense.AT_MOST,
            DesignFacts.of(DesignFacts::chords));
    /** Number of workers on the line. */
    public static final Demand WORKERS =
            new Demand("workers", "number of workers", "-", Sense.AT_MOST, DesignFacts.of(DesignFacts::workers));
    /** Most workers in one span. */
    public static final Demand WORKERS_IN_ONE_SPAN = new Demand(
            "workersInOneSpan",
            "number of workers in one span",
            "-",
            Sense.AT_MOST,
            DesignFacts.of(DesignFacts::workersInOneSpan));
    /** Mass of the heaviest worker with clothing and tools [kg]. */
    public static final Demand WORKER_MASS = new Demand(
            "workerMass", "largest mass of a worker", "kg", Sense.AT_MOST, DesignFacts.of(DesignFacts::heaviest));
    /** Share of the intermediate anchors that hold the cable fast [-]. */
    public static final Demand FIXED_POSTS = new Demand(
            "fixedPosts",
            "share of the posts that hold the cable",
            "-",
            Sense.AT_LEAST,
            DesignFacts.of(DesignFacts::fixedPosts));
    /** Span length over (40/11)(H − 4 m), H the height of the lower support above what lies below [-]. */
    public static final Demand SPAN_FOR_HEIGHT = new Demand(
            "spanForHeight", "length of a span", "-", Sense.AT_MOST, DesignFacts.of(DesignFacts::spanForHeight));
    /** Lowest point of a falling worker against the top of what lies below, without any margin [m]. */
    public static final Demand FREE_HEIGHT = new Demand(
                    "freeHeight",
                    "height that is left below the feet",
                    "m",
                    Sense.AT_LEAST,
                    DesignFacts.of(DesignFacts::freeHeight))
            .compared("distance to the lowest point against distance to the lower level, both below the line");

    /** Margin below the feet that the design states [m]. */
    public static final Demand STATED_MARGIN =
            new Demand("statedMargin", "stated margin", "m", Sense.AT_LEAST, DesignFacts.of(DesignFacts::statedMargin));
    /** Harness stretch that the design states [m]. */
    public static final Demand STATED_HARNESS_STRETCH = new Demand(
            "statedHarnessStretch",
            "stated harness stretch",
            "m",
            Sense.AT_LEAST,
            DesignFacts.of(DesignFacts::statedHarnessStretch));

    private static final List<Demand> OF_THE_DESIGN = List.of(
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
    private final Sense sense;
    private final Function<Situation, List<Item>> items;
    private final String comparison;

    private Demand(String key, String words, String unit, Sense sense, Function<Situation, List<Item>> items) {
        this.key = key;
        this.words = words;
        this.unit = unit;
        this.sense = sense;
        this.items = items;
        this.comparison = "";
    }

    private Demand(Demand other, String comparison) {
        this.key = other.key;
        this.words = other.words;
        this.unit = other.unit;
        this.sense = other.sense;
        this.items = other.items;
        this.comparison = comparison;
    }

    /**
     * The worst value of a quantity of the arrests. A clearance margin is to be at least its limit, everything else at most.
     *
     * @param quantity the quantity
     * @return the demand
     * @throws IllegalArgumentException for the required elevation: elevations have no ratio; use the clearance margin
     */
    public static Demand of(Quantity quantity) {
        if (quantity == Quantity.REQUIRED_ELEVATION) {
            throw new IllegalArgumentException("an elevation is no demand; use " + Quantity.CLEARANCE_MARGIN.key());
        }
        Demand demand = new Demand(
                quantity.key(),
                quantity.words(),
                quantity.unit(),
                quantity.largestIsWorst() ? Sense.AT_MOST : Sense.AT_LEAST,
                s -> List.of(DesignFacts.quantity(s, quantity)));
        return quantity == Quantity.CLEARANCE_MARGIN
                ? demand.compared(
                        "clearance required below the line, with the wanted margin, against what is available")
                : demand;
    }

    /**
     * The largest force on one support [N].
     *
     * @param supportId the support
     * @return the demand
     */
    public static Demand loadOnSupport(String supportId) {
        return new Demand(
                "supportLoad",
                "load on the support",
                "N",
                Sense.AT_MOST,
                s -> List.of(DesignFacts.support(s, supportId)));
    }

    /**
     * The demand of a name in a design file.
     *
     * @param key for example {@code "endAnchorLoad"} or {@code "strengthFactor"}
     * @return the demand, if there is one
     */
    public static Optional<Demand> ofKey(String key) {
        return all().stream().filter(d -> d.key.equals(key)).findFirst();
    }

    /**
     * All demands: the quantities of the arrests, then the facts of the design.
     *
     * @return the demands; unmodifiable
     */
    public static List<Demand> all() {
        List<Demand> list = new ArrayList<>();
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
     * The SI unit of a limit on this demand.
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
    public Sense sense() {
        return sense;
    }

    /**
     * The demand in the trade's words.
     *
     * @return for example {@code "end anchor load"}
     */
    public String words() {
        return words;
    }

    /** The same with words of its own for what is compared with what; "%s" stands for the limit. */
    private Demand compared(String value) {
        return new Demand(this, value);
    }

    /** What is compared with what, in words. */
    String comparison(double limit) {
        if (comparison.isEmpty()) {
            return sense == Sense.AT_MOST
                    ? words + " against limit"
                    : "least " + words + " wanted against what is there";
        }
        String number = limit == Math.rint(limit) ? Long.toString((long) limit) : Double.toString(limit);
        return comparison.replace("%s", number);
    }

    List<Item> items(Situation situation) {
        return items.apply(situation);
    }

    @Override
    public String toString() {
        return key;
    }
}
