package org.lifeline.design.structure;

import org.lifeline.base.Direction;
import org.lifeline.base.Vector3;
import org.lifeline.base.Violations;
import org.lifeline.model.Post;
import org.lifeline.model.Support;

/**
 * An effect of the line on a support whose largest value is handed over.
 *
 * @since 1.0.0
 */
public enum LoadEffect {
    /** Force toward +x [N]. */
    PLUS_X("force along +x", "N"),
    /** Force toward −x [N]. */
    MINUS_X("force along −x", "N"),
    /** Force toward +y [N]. */
    PLUS_Y("force along +y", "N"),
    /** Force toward −y [N]. */
    MINUS_Y("force along −y", "N"),
    /** Force upward [N]. */
    UP("force upward", "N"),
    /** Force downward [N]. */
    DOWN("force downward", "N"),
    /** Resultant force [N]. */
    RESULTANT("resultant force", "N"),
    /** Horizontal force: the shear at the base of a post [N]. */
    SHEAR("shear at the base", "N"),
    /** Moment about horizontal axes at the base of a post [N·m]. */
    BASE_MOMENT("bending moment at the base", "N·m"),
    /** Moment about the upright axis at the base of a post, either way [N·m]. */
    BASE_TORSION("torsion at the base", "N·m"),
    /**
     * Share of the stated elastic moments of resistance that is used at the base, both directions added [-]; only the
     * directions count for which one is stated.
     */
    ELASTIC_SHARE("share of the elastic moment of resistance", "-");

    private final String words;
    private final String unit;

    LoadEffect(String words, String unit) {
        this.words = words;
        this.unit = unit;
    }

    /**
     * The effect in words.
     *
     * @return for example {@code "force along +x"}
     */
    public String words() {
        return words;
    }

    /**
     * SI unit of the effect.
     *
     * @return {@code "N"}, {@code "N·m"} or {@code "-"}
     */
    public String unit() {
        return unit;
    }

    /**
     * Tells whether the effect needs a base, which a post states.
     *
     * @return true for shear, moment, torsion and elastic share at the base
     */
    public boolean needsBase() {
        return this == SHEAR || this == BASE_MOMENT || this == BASE_TORSION || this == ELASTIC_SHARE;
    }

    /**
     * The effect of a force on a support.
     *
     * @param support the support
     * @param force force of the line on it, components in [N]
     * @return value [N], [N·m] or [-]; NaN for an effect at a base, or of a resistance, that the support does not state
     */
    public double of(Support support, Vector3 force) {
        Violations.required("support", support);
        Violations.required("force", force);
        return switch (this) {
            case PLUS_X -> Direction.PLUS_X.component(force);
            case MINUS_X -> Direction.MINUS_X.component(force);
            case PLUS_Y -> Direction.PLUS_Y.component(force);
            case MINUS_Y -> Direction.MINUS_Y.component(force);
            case UP -> Direction.UP.component(force);
            case DOWN -> Direction.DOWN.component(force);
            case RESULTANT -> force.magnitude();
            case SHEAR -> support.post().isPresent() ? force.horizontal() : Double.NaN;
            case BASE_MOMENT ->
                support.post().map(p -> moment(p, force).horizontal()).orElse(Double.NaN);
            case BASE_TORSION ->
                support.post().map(p -> Math.abs(moment(p, force).z())).orElse(Double.NaN);
            case ELASTIC_SHARE -> support.post().map(p -> share(p, force)).orElse(Double.NaN);
        };
    }

    private static double share(Post post, Vector3 force) {
        if (post.momentOfResistanceX().isEmpty() && post.momentOfResistanceY().isEmpty()) {
            return Double.NaN;
        }
        Vector3 m = moment(post, force);
        // Forces along x bend about y, those along y about x.
        double x = post.momentOfResistanceX().isPresent()
                ? Math.abs(m.y()) / post.momentOfResistanceX().getAsDouble()
                : 0;
        double y = post.momentOfResistanceY().isPresent()
                ? Math.abs(m.x()) / post.momentOfResistanceY().getAsDouble()
                : 0;
        return x + y;
    }

    /**
     * Moment of a force at the top of a post about its base: r × F with r from the base to the seat of the cable.
     *
     * @param post the post
     * @param force force at the seat, components in [N]
     * @return moment about x, y, z [N·m], right-handed
     */
    public static Vector3 moment(Post post, Vector3 force) {
        Violations.required("post", post);
        Violations.required("force", force);
        Vector3 arm = new Vector3(post.eccentricity().x(), post.eccentricity().y(), post.height());
        return arm.cross(force);
    }
}
