package org.lifeline.model;

import java.util.Objects;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import org.lifeline.base.GivenValue;
import org.lifeline.base.InputRule;
import org.lifeline.base.PlausibleRange;
import org.lifeline.base.Violation;
import org.lifeline.base.Violations;

/**
 * The post that carries a support: an upright cantilever, fixed at its base, with the cable's seat at its top.
 *
 * <p>Its stiffness follows from its section: the top of a cantilever of height h yields by F h³/(3 E I) under a force F across
 * it (Gere &amp; Goodno, <i>Mechanics of Materials</i>, table of deflections of cantilevers; recalled), so k = 3 E I/h³. Bending
 * alone counts: a base that rotates, a slab that yields and shear make it softer, which a stated stiffness can hold. Along its
 * axis it is taken as rigid. Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public final class Post {
    private static final Eccentricity CENTRED = new Eccentricity(0, 0);

    private final double height;
    private final Eccentricity eccentricity;
    private final @Nullable Double modulus;
    private final Sections secondMoment;
    private final Sections resistance;

    /**
     * Where the seat of the cable is, seen from the axis of the post.
     *
     * @param x distance along x [m], positive toward +x
     * @param y distance along y [m], positive toward +y
     * @since 1.0.0
     */
    public record Eccentricity(double x, double y) {
        /**
         * Checks both.
         *
         * @param x distance along x [m]
         * @param y distance along y [m]
         */
        public Eccentricity {
            Violations v = new Violations();
            PlausibleRange.COORDINATE.check(v, "x", x);
            PlausibleRange.COORDINATE.check(v, "y", y);
            v.throwIfAny();
        }
    }

    /** A value for bending along x and one for bending along y. */
    private record Sections(@Nullable Double x, @Nullable Double y) {
        static final Sections NONE = new Sections(null, null);

        Sections withX(double value) {
            return new Sections(value, y);
        }

        Sections withY(double value) {
            return new Sections(x, value);
        }
    }

    private Post(Builder b) {
        this.height = b.height;
        this.eccentricity = b.eccentricity;
        this.modulus = b.modulus;
        this.secondMoment = b.secondMoment;
        this.resistance = b.resistance;
    }

    /**
     * Starts a post.
     *
     * @param height height of the cable's seat above the base [m], above zero
     * @return a builder
     */
    public static Builder ofHeight(double height) {
        return new Builder(height);
    }

    /**
     * Height of the cable's seat above the base.
     *
     * @return height h [m], above zero
     */
    public double height() {
        return height;
    }

    /**
     * Where the seat of the cable is, seen from the axis of the post.
     *
     * @return the eccentricity
     */
    public Eccentricity eccentricity() {
        return eccentricity;
    }

    /**
     * Modulus of elasticity of the post.
     *
     * @return E [Pa]; empty where no section is stated
     */
    public OptionalDouble elasticModulus() {
        return optional(modulus);
    }

    /**
     * Second moment of area that resists a deflection along x (bending about y).
     *
     * @return I [m⁴]; empty where it is not stated
     */
    public OptionalDouble secondMomentX() {
        return optional(secondMoment.x);
    }

    /**
     * Second moment of area that resists a deflection along y (bending about x).
     *
     * @return I [m⁴]; empty where it is not stated
     */
    public OptionalDouble secondMomentY() {
        return optional(secondMoment.y);
    }

    /**
     * Elastic moment of resistance against forces along x (bending about y), as its engineer states it.
     *
     * @return moment [N·m]; empty where it is not stated
     */
    public OptionalDouble momentOfResistanceX() {
        return optional(resistance.x);
    }

    /**
     * Elastic moment of resistance against forces along y (bending about x), as its engineer states it.
     *
     * @return moment [N·m]; empty where it is not stated
     */
    public OptionalDouble momentOfResistanceY() {
        return optional(resistance.y);
    }

    /**
     * Tells whether a section is stated, from which the stiffness of the support follows.
     *
     * @return true if modulus and a second moment of area are stated
     */
    public boolean hasSection() {
        return modulus != null;
    }

    /**
     * Stiffness of the top: 3 E I/h³ along x and along y, rigid upright and where no second moment of area is stated.
     *
     * @return the stiffness
     */
    public Stiffness stiffness() {
        return new Stiffness(bending(secondMoment.x), bending(secondMoment.y), Double.POSITIVE_INFINITY);
    }

    private double bending(@Nullable Double secondMomentOfArea) {
        return modulus == null || secondMomentOfArea == null
                ? Double.POSITIVE_INFINITY
                : 3 * modulus * secondMomentOfArea / (height * height * height);
    }

    /** What the section gives at this height. The height may be as much to blame, but the section is what can be left out. */
    private void checkStiffness(Violations v, String path, @Nullable Double secondMomentOfArea) {
        PlausibleRange range = PlausibleRange.STIFFNESS;
        double k = bending(secondMomentOfArea);
        if (secondMomentOfArea != null && !(k >= range.lowest() && k <= range.highest())) {
            v.add(Violation.of(
                    path,
                    GivenValue.number(secondMomentOfArea, "m⁴"),
                    InputRule.POST_STIFFNESS,
                    k,
                    height,
                    range.lowest(),
                    range.highest()));
        }
    }

    private static OptionalDouble optional(@Nullable Double value) {
        return value == null ? OptionalDouble.empty() : OptionalDouble.of(value);
    }

    /**
     * Compares values.
     *
     * @param other another object
     * @return true for a post with the same data
     */
    @Override
    public boolean equals(@Nullable Object other) {
        return other instanceof Post p
                && Double.compare(height, p.height) == 0
                && eccentricity.equals(p.eccentricity)
                && Objects.equals(modulus, p.modulus)
                && secondMoment.equals(p.secondMoment)
                && resistance.equals(p.resistance);
    }

    @Override
    public int hashCode() {
        return Objects.hash(height, eccentricity, modulus, secondMoment, resistance);
    }

    @Override
    public String toString() {
        return "post of " + height + " m" + (modulus == null ? "" : ", E " + modulus + " Pa")
                + (secondMoment.equals(Sections.NONE) ? "" : ", I " + secondMoment.x + ", " + secondMoment.y + " m⁴")
                + (resistance.equals(Sections.NONE) ? "" : ", M " + resistance.x + ", " + resistance.y + " N·m")
                + (eccentricity.equals(CENTRED) ? "" : ", off axis " + eccentricity.x + ", " + eccentricity.y + " m");
    }

    /**
     * Collects what is known of a post. Not thread-safe.
     *
     * @since 1.0.0
     */
    public static final class Builder {
        private final double height;
        private Eccentricity eccentricity = CENTRED;
        private @Nullable Double modulus;
        private Sections secondMoment = Sections.NONE;
        private Sections resistance = Sections.NONE;

        private Builder(double height) {
            this.height = height;
        }

        /**
         * Where the seat of the cable is, seen from the axis of the post; on the axis unless set.
         *
         * @param value the eccentricity
         * @return this
         */
        public Builder eccentricity(Eccentricity value) {
            eccentricity = Violations.required("eccentricity", value);
            return this;
        }

        /**
         * Modulus of elasticity.
         *
         * @param value E [Pa], above zero
         * @return this
         */
        public Builder elasticModulus(double value) {
            modulus = value;
            return this;
        }

        /**
         * Second moment of area that resists a deflection along x; the post is rigid along x unless set.
         *
         * @param value I [m⁴], above zero
         * @return this
         */
        public Builder secondMomentX(double value) {
            secondMoment = secondMoment.withX(value);
            return this;
        }

        /**
         * Second moment of area that resists a deflection along y; the post is rigid along y unless set.
         *
         * @param value I [m⁴], above zero
         * @return this
         */
        public Builder secondMomentY(double value) {
            secondMoment = secondMoment.withY(value);
            return this;
        }

        /**
         * Elastic moment of resistance against forces along x.
         *
         * @param value moment [N·m], above zero
         * @return this
         */
        public Builder momentOfResistanceX(double value) {
            resistance = resistance.withX(value);
            return this;
        }

        /**
         * Elastic moment of resistance against forces along y.
         *
         * @param value moment [N·m], above zero
         * @return this
         */
        public Builder momentOfResistanceY(double value) {
            resistance = resistance.withY(value);
            return this;
        }

        /**
         * Checks everything and makes the post.
         *
         * @return the post
         * @throws org.lifeline.base.InvalidInputException with all violations
         */
        public Post build() {
            Violations v = new Violations();
            if (height > 0) {
                PlausibleRange.LENGTH.check(v, "height", height);
            } else {
                v.positive("height", height, "m");
            }
            check(v, PlausibleRange.ELASTIC_MODULUS, "elasticModulus", modulus);
            check(v, PlausibleRange.SECOND_MOMENT, "secondMomentOfArea.x", secondMoment.x);
            check(v, PlausibleRange.SECOND_MOMENT, "secondMomentOfArea.y", secondMoment.y);
            check(v, PlausibleRange.MOMENT, "momentOfResistance.x", resistance.x);
            check(v, PlausibleRange.MOMENT, "momentOfResistance.y", resistance.y);
            boolean area = secondMoment.x != null || secondMoment.y != null;
            v.require(modulus != null || !area, "elasticModulus", GivenValue.missing(), InputRule.MODULUS_NEEDED);
            v.require(
                    modulus == null || area,
                    "secondMomentOfArea",
                    GivenValue.missing(),
                    InputRule.SECOND_MOMENT_NEEDED);
            v.throwIfAny();
            Post post = new Post(this);
            post.checkStiffness(v, "secondMomentOfArea.x", secondMoment.x);
            post.checkStiffness(v, "secondMomentOfArea.y", secondMoment.y);
            v.throwIfAny();
            return post;
        }

        private static void check(Violations v, PlausibleRange range, String path, @Nullable Double value) {
            if (value != null) {
                range.check(v, path, value);
            }
        }
    }
}
