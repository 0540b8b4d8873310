package org.lifeline.analysis.warning;

import java.util.List;

/**
 * What the model leaves out, in one list for reports; the theory page on the arrest has the same.
 *
 * @since 1.0.0
 */
public final class ModelLimits {
    /** The limit that a design goes beyond where it states forces of its absorbers for such conditions. */
    public static final String WET_OR_COLD = "wet, iced or cold energy absorbers, whose forces differ";

    /** What is left of {@link #WET_OR_COLD} where the design states such forces. */
    public static final String WET_OR_COLD_ELSEWHERE =
            "energy absorbers under other conditions than those that are stated for them; several conditions at once";

    /** The limit that loads for the supporting structure go beyond. */
    public static final String SIDE_PULL = "pull across the line, out of its vertical plane";

    /** The limit that an assessment goes beyond where the design states a second fall within the first second. */
    public static final String NEAR_FALLS =
            "falls that nearly coincide: together or in sequence is computed, not half a second apart";

    /** What is left of {@link #NEAR_FALLS} where the design states a second fall within the first second. */
    public static final String NEAR_FALLS_ELSEWHERE = "falls that nearly coincide at different places of the line";

    /** The limit that an assessment goes beyond where the design states a rescuer. */
    public static final String RESCUE = "loads of rescue";

    /** What is left of {@link #RESCUE} where the design states a rescuer. */
    public static final String RESCUE_IN_MOTION = "what moves in a rescue: raising, lowering, swing";

    private static final List<String> LIST = List.of(
            "creep and constructional stretch of the cable",
            WET_OR_COLD,
            "edges that the connection or the cable runs over",
            NEAR_FALLS,
            "what an earlier fall leaves behind under those who hang: they hang at rest on a line with new in-line absorbers; and how"
                    + " far a later fall draws down those who hang already",
            "wind and ice on the line",
            RESCUE,
            SIDE_PULL,
            "dependence of absorbers on the speed of deployment",
            "damage, wear, corrosion, fatigue, bad terminations, and what was overloaded before",
            "strength of the structure behind the anchors, of brackets, fasteners, connectors, harness and body",
            "swing of the worker, except where it is stated; contact with edges, structure or others on the way down",
            "friction of a free-running attachment on the cable, and its passage over intermediate supports",
            "what suspension does to a worker before the rescue");

    private ModelLimits() {}

    /**
     * The limits.
     *
     * @return one clause each; unmodifiable
     */
    public static List<String> list() {
        return LIST;
    }
}
