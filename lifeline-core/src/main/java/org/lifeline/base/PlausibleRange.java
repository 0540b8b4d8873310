package org.lifeline.base;

/**
 * Bounds of plausibility of what can be stated of a line, each with its reason. A value outside is a slip of the pen or a
 * unit mistaken, or lies where 16 digits no longer carry the answer; it is refused, not computed.
 *
 * <p>The bounds are common practice, no source, except where one is named. Each is also the code of the violation of a value
 * outside. Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public enum PlausibleRange implements ViolationCode {
    /** Coordinates and elevations [m]. */
    COORDINATE(-1e6, 1e6, "m", "farther out the position is lost in rounding; count from a nearer origin"),
    /** Straight distance between two supports [m]. */
    SPAN_LENGTH(1e-3, 1e5, "m", "no lifeline has such a span"),
    /** Lengths of connecting subsystems, free falls and other lengths near a worker [m]. */
    LENGTH(0, 1000, "m", "no connecting subsystem is as long"),
    /** Height of the harness attachment above the feet [m]. */
    ATTACHMENT_HEIGHT(0.05, 10, "m", "the attachment is on the worker's harness"),
    /** Mass of a worker with tools, or of a test mass [kg]. */
    WORKER_MASS(10, 1e4, "kg", "workers with tools and the test masses of the trade have 30 to 300 kg"),
    /** Nominal diameter of a rope [m]. */
    ROPE_DIAMETER(1e-4, 0.5, "m", "no rope has such a diameter"),
    /** Mass per length of a rope [kg/m]. */
    MASS_PER_LENGTH(0, 500, "kg/m", "a steel rope of 0.3 m has as much"),
    /** Weight per length of a rope [N/m]. */
    WEIGHT_PER_LENGTH(0, 5000, "N/m", "a steel rope of 0.3 m has as much"),
    /**
     * Axial stiffness EA of a rope [N]. A single mountaineering rope, the softest rope that is made to hold people, may
     * stretch by 10 % under 80 kg (EN 892, recalled): EA 7.8 kN. A solid steel bar of 80 mm has 1 GN.
     */
    AXIAL_STIFFNESS(5e3, 1e9, "N", "softer than a mountaineering rope or stiffer than an 80 mm steel bar"),
    /** Effective modulus of a rope [Pa]; the stiffest fibre has half of the bound. */
    ELASTIC_MODULUS(1e6, 1e12, "Pa", "no rope material has such a modulus"),
    /** Metallic cross-section [m²]. */
    METALLIC_AREA(1e-8, 0.2, "m²", "no rope has such a cross-section"),
    /** Tensile grade of wires [Pa]; rope wires have 1370 to 2160 MPa. */
    TENSILE_GRADE(1e8, 1e10, "Pa", "rope wires have 1.4e9 to 2.2e9 Pa"),
    /** Second moment of area of a post [m⁴]. */
    SECOND_MOMENT(1e-13, 10, "m⁴", "no post has such a section"),
    /** Elastic moment of resistance of a post [N·m]. */
    MOMENT(1e-3, 1e9, "N·m", "no post of a lifeline resists such a moment"),
    /** Strength of a cable or an anchor [N]. */
    STRENGTH(1, 1e9, "N", "no rope or anchor of a lifeline has such a strength"),
    /** Coefficient of thermal expansion [1/K]; aramid has −5e-6, polyethylene 2e-4. */
    THERMAL_EXPANSION(-1e-4, 1e-3, "1/K", "no rope material expands like this"),
    /** Internal damping time of a rope [s]. */
    DAMPING_TIME(0, 1, "s", "the stress would lag behind the whole arrest"),
    /** Tension at installation [N]; what cable and terminations hold bounds it further where that is stated. */
    TENSION(1e-12, 1e12, "N", "no lifeline is tensioned like this"),
    /** Time over which a fall is followed [s]; the first catch of the longest lines takes some seconds. */
    DURATION(1e-3, 600, "s", "a fall is over in seconds"),
    /** Interval between two samples of a history [s]; a motion is followed in steps of some microseconds. */
    SAMPLING(1e-6, 10, "s", "a history cannot be finer than its steps, and coarser says nothing"),
    /** Length of the segments of a cable in motion [m]. */
    SEGMENT_LENGTH(1e-3, 1e3, "m", "finer segments are no longer than their rope is thick, and coarser are no cable"),
    /** Force of an absorber, a brake or a point of a loading curve [N]. */
    ARREST_FORCE(0, 1e9, "N", "no absorber takes such a force"),
    /**
     * Stiffness of an anchor, a lanyard, an absorber or its stop [N/m]; what is stiffer is left out, which means rigid. One
     * newton draws out the softest by 100 m; below it rounding of the tensions moves an anchor by more than 1e-10 of a span.
     */
    STIFFNESS(1e-2, 1e15, "N/m", "16 digits do not carry others; leave it out where rigid"),
    /** Temperatures [°C]: above absolute zero; steel ropes lose their strength far below the upper bound. */
    TEMPERATURE(-273.15, 1000, "°C", "must lie between absolute zero and 1000 °C"),
    /** Acceleration of gravity [m/s²]. */
    GRAVITY(1e-6, 1e3, "m/s²", "no body on which lines are built has such a gravity"),
    /** Factor on forces or distances [-]. */
    MODEL_FACTOR(0.5, 10, "", "a method that far off is no method"),
    /** Limit of a criterion on a force [N]; the largest is the largest strength. */
    CRITERION_FORCE(1, 1e9, "N", "no force of a lifeline is limited like this"),
    /** Limit of a criterion on a length that is above zero [m]; a line of 10 000 long spans has as much. */
    CRITERION_LENGTH(1e-6, 1e6, "m", "no length of a lifeline is limited like this"),
    /** Least that a criterion wants of a margin or a height [m]; negative where less than nothing will do. */
    CRITERION_MARGIN(-1e6, 1e6, "m", "no margin of a lifeline is as large"),
    /** Limit of a criterion on an angle [rad]. */
    CRITERION_ANGLE(1e-6, Math.PI, "rad", "no angle of a lifeline is limited like this"),
    /** Limit of a criterion on a number without unit: a factor of strength, a slope, how many there are [-]. */
    CRITERION_NUMBER(1e-6, 1e6, "", "neither a factor nor a slope nor a number of things is limited like this"),
    /** Factor of a criterion on a load [-]. */
    CRITERION_FACTOR(0.01, 100, "", "no load is compared with so many times its size, or so little of it"),
    /** Number of supports, workers, falls, obstructions or temperatures in a list [-]. */
    COUNT(0, 10_001, "", "more are not computed in one piece; split the design"),
    /** Number of corners of a curve [-]. */
    CORNERS(0, 1000, "", "a curve needs no more corners");

    private final double lowest;
    private final double highest;
    private final String unit;
    private final String reason;

    PlausibleRange(double lowest, double highest, String unit, String reason) {
        this.lowest = lowest;
        this.highest = highest;
        this.unit = unit;
        this.reason = reason;
    }

    /**
     * The smallest value that is taken.
     *
     * @return bound [unit of the range]
     */
    public double lowest() {
        return lowest;
    }

    /**
     * The largest value that is taken.
     *
     * @return bound [unit of the range]
     */
    public double highest() {
        return highest;
    }

    /**
     * The unit of the bounds.
     *
     * @return for example {@code "kg"}; empty for a number without unit
     */
    public String unit() {
        return unit;
    }

    /**
     * Why what lies outside is refused.
     *
     * @return the reason, as it is shown
     */
    public String reason() {
        return reason;
    }

    /**
     * Requires a value within the bounds; what is not finite, negative where only positive values are taken, or zero is
     * named as such.
     *
     * @param v where a violation is added
     * @param path the place of the value, in the words of the input
     * @param value the value [unit of the range]
     */
    public void check(Violations v, String path, double value) {
        // The words are put together only where they are needed: most values are good, and numbers take long to print.
        if (this == TEMPERATURE) {
            if (!(value > lowest && value < highest)) {
                v.add(violation(path, value).allowing(AllowedRange.inside(Interval.of(lowest, highest))));
            }
        } else if (lowest == 0 && !(value >= 0 && Double.isFinite(value))) {
            v.notNegative(path, value, unit);
        } else if (lowest > 0 && !(value > 0 && Double.isFinite(value))) {
            v.positive(path, value, unit);
        } else if (!Double.isFinite(value)) {
            v.finite(path, value, unit);
        } else if (value < lowest || value > highest) {
            v.add(violation(path, value).allowing(AllowedRange.within(Interval.of(lowest, highest))));
        }
    }

    /**
     * Requires a value within the bounds, alone.
     *
     * @param path the place of the value, in the words of the input
     * @param value the value [unit of the range]
     * @return the value [unit of the range]
     * @throws org.lifeline.base.InvalidInputException if it lies outside
     */
    public double required(String path, double value) {
        Violations v = new Violations();
        check(v, path, value);
        v.throwIfAny();
        return value;
    }

    /**
     * The same for a number of things, of which there must not be more than what is computed in one piece.
     *
     * @param v where a violation goes
     * @param path name of the list
     * @param count how many there are
     */
    public static void checkCount(Violations v, String path, int count) {
        if (count > COUNT.highest) {
            v.add(Violation.of(path, GivenValue.count(count), COUNT).allowing(AllowedRange.atMost(COUNT.highest)));
        }
    }

    /**
     * The same for a number of things of this range, such as {@link #CORNERS}.
     *
     * @param v where a violation goes
     * @param path name of the list
     * @param count how many there are
     */
    public void checkNumber(Violations v, String path, int count) {
        if (count > highest) {
            v.add(Violation.of(path, GivenValue.countOf(count, "corners"), this)
                    .allowing(AllowedRange.atMost(highest)));
        }
    }

    /**
     * The same for a value that may be infinite, which stands for rigid.
     *
     * @param v where a violation goes
     * @param path name of the value
     * @param value the value [unit of the range], or infinite
     */
    public void checkOrRigid(Violations v, String path, double value) {
        if (value != Double.POSITIVE_INFINITY) {
            check(v, path, value);
        }
    }

    private Violation violation(String path, double value) {
        return Violation.of(path, GivenValue.number(value, unit), this);
    }

    @Override
    public String key() {
        return "RANGE_" + name();
    }

    @Override
    public String english() {
        return switch (this) {
            case TEMPERATURE, CORNERS -> reason;
            case COUNT -> "must be at most " + (int) highest + " in number: " + reason;
            default ->
                "must lie from " + Violations.show(lowest, unit) + " to " + Violations.show(highest, unit) + ": "
                        + reason;
        };
    }
}
