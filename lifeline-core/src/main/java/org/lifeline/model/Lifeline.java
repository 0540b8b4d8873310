package org.lifeline.model;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.function.Supplier;
import java.util.function.UnaryOperator;
import org.jspecify.annotations.Nullable;
import org.lifeline.base.GivenValue;
import org.lifeline.base.InputRule;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.PlausibleRange;
import org.lifeline.base.Point;
import org.lifeline.base.Units;
import org.lifeline.base.Violation;
import org.lifeline.base.Violations;
import org.lifeline.base.canonical.Canonical;
import org.lifeline.base.canonical.CanonicalForm;
import org.lifeline.model.cable.Cable;

/**
 * A horizontal lifeline: a cable between two end anchors, carried by intermediate anchors, as it was installed.
 *
 * <p>Immutable and thread-safe. Build with {@link #builder()}.
 *
 * @since 1.0.0
 */
public final class Lifeline implements Canonical {
    private final Cable cable;
    private final List<Support> supports;
    private final Installed installed;
    private final double gravity;

    private Lifeline(Cable cable, List<Support> supports, Installed installed, double gravity) {
        this.cable = cable;
        this.supports = List.copyOf(supports);
        this.installed = installed;
        this.gravity = gravity;
    }

    /**
     * Starts a line.
     *
     * @return an empty builder
     */
    public static Builder builder() {
        return new Builder();
    }

    /**
     * The cable.
     *
     * @return the cable
     */
    public Cable cable() {
        return cable;
    }

    /**
     * The supports in the order of the line.
     *
     * @return supports 0 … n; unmodifiable
     */
    public List<Support> supports() {
        return supports;
    }

    /**
     * How the line was tensioned.
     *
     * @return the installed state
     */
    public Installed installed() {
        return installed;
    }

    /**
     * Acceleration of gravity.
     *
     * @return g [m/s²]
     */
    public double gravity() {
        return gravity;
    }

    /**
     * Weight of the cable per unstretched length.
     *
     * @return w [N/m]
     */
    public double weightPerLength() {
        return cable.weightPerLength(gravity);
    }

    /**
     * Number of spans.
     *
     * @return n, at least 1
     */
    public int spans() {
        return supports.size() - 1;
    }

    /**
     * Horizontal distance between the two supports of a span, as installed.
     *
     * @param span number of the span, from 1
     * @return distance [m]
     * @throws InvalidInputException if there is no such span
     */
    public double run(int span) {
        requireSpan(span);
        return supports.get(span - 1)
                .position()
                .horizontalDistance(supports.get(span).position());
    }

    /**
     * Rise from the first to the second support of a span, as installed.
     *
     * @param span number of the span, from 1
     * @return rise [m], positive when the second support is higher
     * @throws InvalidInputException if there is no such span
     */
    public double rise(int span) {
        requireSpan(span);
        return supports.get(span).position().z()
                - supports.get(span - 1).position().z();
    }

    /** Asked for by every step of a solution: nothing is made unless it is wrong. */
    private void requireSpan(int span) {
        if (span < 1 || span > spans()) {
            throw new InvalidInputException(LineRules.spanNumber("span", span, spans()));
        }
    }

    /**
     * Horizontal distance along the line from the first support to a place.
     *
     * @param place the place
     * @return distance [m]
     */
    public double along(Place place) {
        Violations.required("place", place);
        double sum = stationOf(place);
        for (int i = 1; i < spanOf(place); i++) {
            sum += run(i);
        }
        return sum;
    }

    /**
     * Elevation of the straight line between the supports of a span, as installed, or of a support.
     *
     * @param place the place, on this line
     * @return elevation [m]
     */
    public double chordElevation(Place place) {
        Violations.required("place", place);
        int span = spanOf(place);
        return supports.get(span - 1).position().z() + stationOf(place) / run(span) * rise(span);
    }

    /**
     * The span in which a place lies. A support belongs to the span behind it, the last one to the span before it.
     *
     * @param place a place on this line
     * @return number of the span, from 1
     * @throws InvalidInputException if the place is at a support that the line does not have
     */
    public int spanOf(Place place) {
        Violations.required("place", place);
        return place.isAtSupport() ? Math.min(supportOf(place) + 1, spans()) : place.span();
    }

    /**
     * Horizontal distance of a place from the first support of {@linkplain #spanOf its span}.
     *
     * @param place a place on this line
     * @return station [m]; at the last support the run of the span
     * @throws InvalidInputException if the place is at a support that the line does not have
     */
    public double stationOf(Place place) {
        Violations.required("place", place);
        if (!place.isAtSupport()) {
            return place.station();
        }
        return supportOf(place) < spans() ? 0 : run(spans());
    }

    /**
     * Number of the support at which a place is.
     *
     * @param place a place at a support
     * @return number, from 0
     * @throws InvalidInputException if the place is on the cable, or the line does not have the support
     */
    public int supportOf(Place place) {
        Violations.required("place", place);
        String id = place.support().orElse("");
        int number = indexOf(id);
        if (number < 0) {
            GivenValue given = GivenValue.text(place.toString());
            throw new InvalidInputException(List.of(Violation.of("place", given, InputRule.NO_SUCH_SUPPORT)));
        }
        return number;
    }

    private int indexOf(String id) {
        for (int i = 0; i < supports.size(); i++) {
            if (supports.get(i).id().equals(id)) {
                return i;
            }
        }
        return -1;
    }

    /**
     * Checks that a place lies on this line.
     *
     * @param place the place
     * @return the violations; empty if there is none
     */
    public List<Violation> check(Place place) {
        Violations.required("place", place);
        return LineRules.place(this, place);
    }

    /**
     * The same line tensioned in another way.
     *
     * @param value the installed state
     * @return the new line
     */
    public Lifeline withInstalled(Installed value) {
        Builder b = toBuilder();
        return b.installed(value).build();
    }

    /**
     * The same line with its supports replaced.
     *
     * @param change what replaces each support
     * @return the new line
     * @throws InvalidInputException if the new supports do not make a line
     */
    public Lifeline withSupports(UnaryOperator<Support> change) {
        Violations.required("change", change);
        Builder b = toBuilder();
        b.supports.replaceAll(s -> Violations.required("support", change.apply(s)));
        return b.build();
    }

    /**
     * The same line with another cable.
     *
     * @param value the cable
     * @return the new line
     */
    public Lifeline withCable(Cable value) {
        return toBuilder().cable(value).build();
    }

    /**
     * A builder that starts from this line.
     *
     * @return a builder with cable, supports, installed state and gravity of this line
     */
    public Builder toBuilder() {
        Builder b = builder().cable(cable).installed(installed).gravity(gravity);
        supports.forEach(b::support);
        return b;
    }

    @Override
    public CanonicalForm canonicalForm() {
        return ModelForms.of(this);
    }

    /**
     * Compares values.
     *
     * @param other another object
     * @return true for a line with the same cable, supports, installed state and gravity
     */
    @Override
    public boolean equals(@Nullable Object other) {
        return other instanceof Lifeline l
                && cable.equals(l.cable)
                && supports.equals(l.supports)
                && installed.equals(l.installed)
                && Double.compare(gravity, l.gravity) == 0;
    }

    @Override
    public int hashCode() {
        return Objects.hash(cable, supports, installed, gravity);
    }

    @Override
    public String toString() {
        return supports.get(0).id() + " to " + supports.get(spans()).id() + ", " + spans()
                + (spans() == 1 ? " span, " : " spans, ") + cable + ", " + installed;
    }

    /**
     * Collects what is known of a line; what is wrong with it is reported by {@link #build}, all of it together. Paths of
     * violations name the methods of this builder; one that adds a support carries the support's number along the line,
     * from 0: {@code intermediateAnchor[1].passage}. Not thread-safe.
     *
     * @since 1.0.0
     */
    public static final class Builder {
        private static final String SUPPORT = "support";

        private @Nullable Cable cable;
        private final List<Support> supports = new ArrayList<>();
        private final List<String> addedBy = new ArrayList<>();
        private final Violations early = new Violations();
        private @Nullable Installed installed;
        private String installedBy = "installed";
        private double gravity = Units.STANDARD_GRAVITY;

        private Builder() {}

        /**
         * The cable.
         *
         * @param value the cable
         * @return this
         */
        public Builder cable(Cable value) {
            cable = value;
            return this;
        }

        /**
         * Adds the next support along the line.
         *
         * @param value the support
         * @return this
         */
        public Builder support(Support value) {
            return add(SUPPORT, () -> Violations.required("", value));
        }

        /**
         * Adds a rigid end anchor.
         *
         * @param id name, unique on the line
         * @param position as-installed position
         * @return this
         */
        public Builder endAnchor(String id, Point position) {
            return add("endAnchor", () -> Support.end(id, position));
        }

        /**
         * Adds a rigid intermediate anchor.
         *
         * @param id name, unique on the line
         * @param position as-installed position
         * @param passage how the cable passes
         * @return this
         */
        public Builder intermediateAnchor(String id, Point position, Passage passage) {
            return add("intermediateAnchor", () -> Support.intermediate(id, position, passage));
        }

        /**
         * How the line was tensioned.
         *
         * @param value the installed state
         * @return this
         */
        public Builder installed(Installed value) {
            installed = value;
            installedBy = "installed";
            return this;
        }

        /** Adds a support; one that cannot be made is reported when the line is built. */
        private Builder add(String method, Supplier<Support> made) {
            try {
                supports.add(made.get());
            } catch (InvalidInputException e) {
                early.addAll(e.violations(), method + "[" + addedBy.size() + "]");
            }
            addedBy.add(method);
            return this;
        }

        /**
         * Tensioned to a force at the first end anchor: short for {@link #installed} with
         * {@link Installed#pretension}.
         *
         * @param tension magnitude of the cable tension at end anchor 0 [N], above zero
         * @return this
         */
        public Builder pretension(double tension) {
            try {
                installed = Installed.pretension(tension);
                installedBy = "";
            } catch (InvalidInputException e) {
                early.addAll(e.violations(), "");
                installed = Installed.pretension(1000); // stands in while the rest is checked
            }
            return this;
        }

        /**
         * Acceleration of gravity; 9.80665 m/s² unless set.
         *
         * @param value g [m/s²], above zero
         * @return this
         */
        public Builder gravity(double value) {
            gravity = value;
            return this;
        }

        /**
         * Checks everything and makes the line.
         *
         * @return the line
         * @throws InvalidInputException with all violations
         */
        public Lifeline build() {
            Violations v = new Violations();
            if (cable == null) {
                v.missing("cable");
            }
            early.list().forEach(v::add);
            if (installed == null) {
                v.missing("installed");
            }
            PlausibleRange.GRAVITY.check(v, "gravity", gravity);
            PlausibleRange.checkCount(v, SUPPORT, addedBy.size());
            int n = addedBy.size();
            if (supports.size() == n) {
                new LineRules(supports, this::path).check(v);
            } else if (n < 2) {
                v.add(SUPPORT, GivenValue.countOf(n, "supports"), InputRule.TOO_FEW_SUPPORTS);
            }
            if (installed != null && n > 0 && installed.span() > n - 1) {
                LineRules.spanNumber("installed.span", installed.span(), n - 1).forEach(v::add);
            }
            v.throwIfAny();
            Lifeline line =
                    new Lifeline(Objects.requireNonNull(cable), supports, Objects.requireNonNull(installed), gravity);
            InstalledLimits.check(line, installedBy, v);
            v.throwIfAny();
            return line;
        }

        private String path(int support) {
            return addedBy.get(support) + "[" + support + "]";
        }
    }
}
