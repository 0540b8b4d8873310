package org.lifeline.analysis.warning;

import java.util.List;

/**
 * What the model leaves out, in one list for reports; the theory page on the arrest has the same.
 *
 * @since 1.0.0
 */
public final class ModelLimits {
    /** The limit that loads for the supporting structure go beyond. */
    public static final String SIDE_PULL = "pull across the line, out of its vertical plane";

    private static final List<String> LIST = List.of(
            "creep and constructional stretch of the cable",
            "wet, iced or cold energy absorbers, whose forces differ",
            "edges that the connection or the cable runs over",
            "falls that nearly coincide: together or in sequence is computed, not half a second apart",
            "wind and ice on the line",
            "loads of rescue",
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
