package org.lifeline.model;

import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import org.lifeline.base.GivenValue;
import org.lifeline.base.InputRule;
import org.lifeline.base.PlausibleRange;
import org.lifeline.base.Point;
import org.lifeline.base.Violations;
import org.lifeline.base.canonical.Canonical;
import org.lifeline.base.canonical.CanonicalForm;

/**
 * An anchor that carries the line: an end anchor, or an intermediate anchor that the cable passes.
 *
 * <p>Immutable and thread-safe; each {@code with…} method returns a new support.
 *
 * @since 1.0.0
 */
public final class Support implements Canonical {
    private final String id;
    private final boolean end;
    private final Point position;
    private final Passage passage;
    private final Stiffness stiffness;
    private final @Nullable InlineAbsorber inlineAbsorber;
    private final @Nullable Double capacity;
    private final @Nullable Post post;

    private Support(Support s, Stiffness stiffness, @Nullable InlineAbsorber absorber, @Nullable Double capacity) {
        this(s, s.position, s.passage, stiffness, absorber, capacity);
    }

    private Support(
            Support s,
            Point position,
            Passage passage,
            Stiffness stiffness,
            @Nullable InlineAbsorber absorber,
            @Nullable Double capacity) {
        this.id = s.id;
        this.end = s.end;
        this.position = position;
        this.passage = passage;
        this.stiffness = stiffness;
        this.inlineAbsorber = absorber;
        this.capacity = capacity;
        this.post = s.post;
    }

    private Support(Support s, Stiffness stiffness, Post post) {
        this.id = s.id;
        this.end = s.end;
        this.position = s.position;
        this.passage = s.passage;
        this.stiffness = stiffness;
        this.inlineAbsorber = s.inlineAbsorber;
        this.capacity = s.capacity;
        this.post = post;
    }

    private Support(String id, boolean end, Point position, Passage passage) {
        this.id = id;
        this.end = end;
        this.position = position;
        this.passage = passage;
        this.stiffness = Stiffness.rigid();
        this.inlineAbsorber = null;
        this.capacity = null;
        this.post = null;
        Violations v = new Violations().named("id", id);
        if (passage == null) {
            v.missing("passage");
        }
        checkPosition(v, position);
        v.throwIfAny();
    }

    private static void checkPosition(Violations v, @Nullable Point p) {
        if (p == null) {
            v.missing("position");
        } else if (p.isFinite()) {
            PlausibleRange.COORDINATE.check(v, "position[0]", p.x());
            PlausibleRange.COORDINATE.check(v, "position[1]", p.y());
            PlausibleRange.COORDINATE.check(v, "position[2]", p.z());
        } else {
            v.add("position", GivenValue.text(p.toString()), InputRule.POSITION_NOT_FINITE);
        }
    }

    /**
     * A rigid end anchor.
     *
     * @param id name, unique on the line
     * @param position as-installed position
     * @return the support
     * @throws org.lifeline.base.InvalidInputException if the id is blank or a coordinate is not finite
     */
    public static Support end(String id, Point position) {
        return new Support(id, true, position, Passage.clamped());
    }

    /**
     * A rigid intermediate anchor.
     *
     * @param id name, unique on the line
     * @param position as-installed position
     * @param passage how the cable passes
     * @return the support
     * @throws org.lifeline.base.InvalidInputException if the id is blank or a coordinate is not finite
     */
    public static Support intermediate(String id, Point position, Passage passage) {
        return new Support(id, false, position, passage);
    }

    /**
     * The same support on an elastic structure.
     *
     * @param value stiffness along x, y, z
     * @return the new support
     */
    public Support withStiffness(Stiffness value) {
        return new Support(this, Violations.required("stiffness", value), inlineAbsorber, capacity);
    }

    /**
     * The same end anchor with an energy absorber between it and the cable.
     *
     * @param value the absorber
     * @return the new support
     * @throws org.lifeline.base.InvalidInputException if this is an intermediate anchor
     */
    public Support withInlineAbsorber(InlineAbsorber value) {
        if (!end) {
            new Violations()
                    .add("inlineAbsorber", GivenValue.text("given"), InputRule.INLINE_ABSORBER_INSIDE)
                    .throwIfAny();
        }
        return new Support(this, stiffness, Violations.required("inlineAbsorber", value), capacity);
    }

    /**
     * The same on a post. Where the post states a section, the support gets the stiffness of its top; where it states none,
     * the stiffness stays as it is.
     *
     * @param value the post
     * @return the new support
     */
    public Support withPost(Post value) {
        Violations.required("post", value);
        return new Support(this, value.hasSection() ? value.stiffness() : stiffness, value);
    }

    /**
     * The same support with a stated strength.
     *
     * @param force capacity of the anchor [N], above zero
     * @return the new support
     * @throws org.lifeline.base.InvalidInputException if the force is not above zero
     */
    public Support withCapacity(double force) {
        Violations v = new Violations();
        PlausibleRange.STRENGTH.check(v, "capacity", force);
        v.throwIfAny();
        return new Support(this, stiffness, inlineAbsorber, force);
    }

    /**
     * The same support at another place.
     *
     * @param value as-installed position
     * @return the new support
     * @throws org.lifeline.base.InvalidInputException if a coordinate is not finite
     */
    public Support withPosition(Point value) {
        Violations v = new Violations();
        checkPosition(v, value);
        v.throwIfAny();
        return new Support(this, value, passage, stiffness, inlineAbsorber, capacity);
    }

    /**
     * The same intermediate anchor with another passage.
     *
     * @param value how the cable passes
     * @return the new support
     * @throws org.lifeline.base.InvalidInputException if this is an end anchor, which holds the cable
     */
    public Support withPassage(Passage value) {
        Violations.required("passage", value);
        if (end) {
            new Violations()
                    .add("passage", GivenValue.text(value.toString()), InputRule.PASSAGE_AT_END)
                    .throwIfAny();
        }
        return new Support(this, position, value, stiffness, inlineAbsorber, capacity);
    }

    /**
     * The support's name.
     *
     * @return the id, unique on the line
     */
    public String id() {
        return id;
    }

    /**
     * Tells an end anchor from an intermediate anchor.
     *
     * @return true for an end anchor
     */
    public boolean isEnd() {
        return end;
    }

    /**
     * As-installed position.
     *
     * @return the position
     */
    public Point position() {
        return position;
    }

    /**
     * How the cable passes. An end anchor holds it: clamped.
     *
     * @return the passage
     */
    public Passage passage() {
        return passage;
    }

    /**
     * Stiffness of the structure under the anchor.
     *
     * @return the stiffness
     */
    public Stiffness stiffness() {
        return stiffness;
    }

    /**
     * The energy absorber between this end anchor and the cable.
     *
     * @return the absorber, if there is one
     */
    public Optional<InlineAbsorber> inlineAbsorber() {
        return Optional.ofNullable(inlineAbsorber);
    }

    /**
     * The post that carries the support.
     *
     * @return the post, if one is stated
     */
    public Optional<Post> post() {
        return Optional.ofNullable(post);
    }

    /**
     * Stated strength of the anchor.
     *
     * @return capacity [N], if stated
     */
    public OptionalDouble capacity() {
        return capacity == null ? OptionalDouble.empty() : OptionalDouble.of(capacity);
    }

    @Override
    public CanonicalForm canonicalForm() {
        return ModelForms.of(this);
    }

    /**
     * Compares values.
     *
     * @param other another object
     * @return true for a support of the same id with the same data
     */
    @Override
    public boolean equals(@Nullable Object other) {
        return other instanceof Support s
                && id.equals(s.id)
                && end == s.end
                && position.equals(s.position)
                && passage.equals(s.passage)
                && stiffness.equals(s.stiffness)
                && Objects.equals(inlineAbsorber, s.inlineAbsorber)
                && Objects.equals(capacity, s.capacity)
                && Objects.equals(post, s.post);
    }

    @Override
    public int hashCode() {
        return Objects.hash(id, end, position, passage, stiffness, inlineAbsorber, capacity, post);
    }

    @Override
    public String toString() {
        return (end ? "end anchor " : "intermediate anchor ") + id + " at " + position + (end ? "" : ", " + passage)
                + (stiffness.isRigid() ? "" : ", " + stiffness)
                + (inlineAbsorber == null ? "" : ", " + inlineAbsorber)
                + (capacity == null ? "" : ", capacity " + capacity + " N")
                + (post == null ? "" : ", " + post);
    }
}
