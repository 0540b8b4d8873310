package org.lifeline.verify;

/**
 * The kinds of check, each with what it demands and the limit that it holds unless another is set.
 *
 * <p>Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public enum Check {
    /** Every number of the result is finite. */
    FINITE("numbers that are not finite", "1", 0),
    /** The loads of the result hang where the cable has its kinks, with the same forces. */
    LOADS("distance or difference of force between a load and its joint of the cable, relative to chord or load", 1e-9),
    /** The tension vectors left and right of a load differ by the load. */
    LOAD_EQUILIBRIUM("force that a joint at a load is out of balance, relative to the largest load", 1e-9),
    /** The tension vectors at the ends of a piece differ by its weight. */
    PIECE_EQUILIBRIUM("force that a piece of cable is out of balance, relative to the largest load", 1e-9),
    /** The force on a support is the sum of the tensions on it. */
    SUPPORT_REACTION("reaction less sum of the tensions on the support, relative to the largest load", 1e-9),
    /** Reactions, weight and loads of the whole line add up to nothing. */
    GLOBAL_EQUILIBRIUM("force that the whole line is out of balance, relative to the largest load", 1e-9),
    /** The weight of the cable is conserved when it is heated. */
    WEIGHT("weight per length against the cable's at the temperature, relative", 1e-12),
    /** Each piece spans from its start to its end: its stretched vector by quadrature. */
    STRETCH("stretched vector of a piece less end minus start, relative to the chord of the span", 1e-9),
    /** Pieces join, spans end at their supports or at the link of an in-line absorber. */
    CONTINUITY("gap between pieces, or between cable and support, relative to the chord of the span", 1e-9),
    /** Elastic anchors obey their springs, rigid ones stand. */
    ANCHOR_SPRING("displacement less change of reaction over stiffness, relative to the chord, or the force", 1e-9),
    /** The unstretched length of the whole cable is that of installation, times thermal expansion. */
    LENGTH("unstretched length of the line against the installed one, relative", 1e-12),
    /** Span lengths follow from the slip at the supports. */
    SLIP("unstretched length of a span less what slip leaves in it, relative to the chord", 1e-9),
    /** The installed state is the stated one, the cable running freely while it is tensioned. */
    INSTALLED("installed state against the stated one, relative", 1e-9),
    /** The tension magnitude is continuous across a free passage. */
    PASSAGE_FREE("difference of tension across a free passage, relative", 1e-8),
    /** The tensions at a passage with friction obey the capstan inequality. */
    PASSAGE_FRICTION("excess of |ln(T2/T1)| over the friction times the angle turned", "-", 1e-8),
    /** No material passes a clamp. */
    PASSAGE_CLAMPED("slip through a clamp since installation, relative to the length of the line", 1e-12),
    /** The tension is the same on both sides of a free-running load, or it is pulled against what it rests on. */
    FREE_RUNNING("difference of tension at a free-running load that nothing holds, relative", 1e-8),
    /** A gripped load holds the material point that hung at its station in the installed state. */
    GRIPPED(
            "cable between the start of the line and a gripped load against the installed one, relative to chord",
            1e-9),
    /** The tension at an in-line absorber does not exceed its curve. */
    ABSORBER_LAW("excess of tension over the curve of an in-line absorber, relative", 1e-8),
    /** Extension of an in-line absorber that is not elastic grows only, and only on the curve. */
    ABSORBER_GROWTH("extension given back, or grown below the curve, relative to chord or tension", 1e-8),
    /** What is left of an in-line absorber. */
    ABSORBER_REMAINING("remaining extension against maximum less extension", "m", 1e-12),
    /** Where the attachment was before the fall. */
    ATTACHMENT_BEFORE("attachment before the fall against the cable at its place, relative to the chord", 1e-9),
    /** Where the attachment is at the lowest point. */
    ATTACHMENT_AT_PEAK("attachment at the lowest point against the load there, relative to the chord", 1e-12),
    /** Free fall from geometry. */
    FREE_FALL("free fall against the geometry, relative to the elevations", 1e-12),
    /** Force and extension of the connecting subsystem lie on its loading curve. */
    CONNECTION_FORCE("line load outside the loading curve at the deployment, relative", 1e-8),
    /** Arrest force on one worker. */
    ARREST_FORCE("arrest force against the worker's share of the line load, relative", 1e-8),
    /** Bottoming out is reported where it happens and only there. */
    BOTTOMED_OUT("wrong statements on bottoming out", "1", 0),
    /** Before the lowest point the fall must have passed the load at which the workers' weight is carried. */
    PEAK("share of the fallers' weight that the line load does not reach", "-", 1e-9),
    /** Derived distances and slips agree with the states that they are derived from. */
    DERIVED("derived distance against the states, relative to the elevations", 1e-12),
    /** Energy set free, from masses and heights. */
    ENERGY_FALL("energy of the fall against M g (h + descent + deployment), relative", 1e-9),
    /** Growth of strain energy and of the weight's potential energy, by quadrature. */
    ENERGY_CABLE("energy of the cable against quadrature, relative to the fall", 1e-8),
    /** Potential energy of those who hang. */
    ENERGY_HANGING("energy of the hanging against their heights, relative to the fall", 1e-8),
    /** Growth of spring energy of the anchors. */
    ENERGY_ANCHORS("energy of the anchors against reaction times displacement, relative to the fall", 1e-8),
    /** Work of the in-line absorbers, by quadrature of their curves. */
    ENERGY_ABSORBERS("work of the in-line absorbers against quadrature, relative to the fall", 1e-8),
    /** Work of the connecting subsystems, by quadrature of their curves. */
    ENERGY_CONNECTION("work of the connecting subsystems against quadrature, relative to the fall", 1e-8),
    /** Heat of friction: none without friction, some where cable slipped against it, never negative. */
    ENERGY_FRICTION("heat of friction where none can be, or missing, relative to the fall", 1e-9),
    /** The account closes. */
    ENERGY_RESIDUAL("what the energy account leaves over, relative to the fall", 1e-8),
    /** Work along the path that the analysis followed, against the account. */
    PATH_WORK("path work given by the result against the work on the line, relative", 1e-6),
    /** Work along a path of static states, against the account. */
    STATIC_PATH_WORK("quadrature of P over the descent, through static states, against the work on the line", 1e-6),
    /** The clearance account adds up and describes the arrest. */
    CLEARANCE("clearance row or level against the sum that it must be, relative to the elevations", 1e-12);

    private final String what;
    private final String unit;
    private final double limit;

    Check(String what, double limit) {
        this(what, "-", limit);
    }

    Check(String what, String unit, double limit) {
        this.what = what;
        this.unit = unit;
        this.limit = limit;
    }

    /**
     * What is measured.
     *
     * @return the quantity in words
     */
    public String what() {
        return what;
    }

    /**
     * Unit of value and limit.
     *
     * @return "m", "1" for a count, "-" for a relative value
     */
    public String unit() {
        return unit;
    }

    /**
     * The limit unless another is set.
     *
     * @return limit [unit of the check], not negative
     */
    public double defaultLimit() {
        return limit;
    }
}
