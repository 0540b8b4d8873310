package org.lifeline.model;

import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.lifeline.base.PlausibleRange;
import org.lifeline.base.Violations;
import org.lifeline.base.canonical.Canonical;
import org.lifeline.base.canonical.CanonicalForm;

/**
 * A worker hooked on to the line.
 *
 * <p>Immutable and thread-safe. Build with {@link #builder}.
 *
 * @since 1.0.0
 */
public final class Worker implements Canonical {
    private final String id;
    private final double mass;
    private final double walkingLevel;
    private final double attachmentHeight;
    private final Attachment attachment;
    private final Connection connection;
    private final double offset;

    private Worker(Builder b) {
        this.id = Objects.requireNonNull(b.id);
        this.mass = Objects.requireNonNull(b.mass);
        this.walkingLevel = Objects.requireNonNull(b.walkingLevel);
        this.attachmentHeight = b.attachmentHeight;
        this.attachment = Objects.requireNonNull(b.attachment);
        this.connection = Objects.requireNonNull(b.connection);
        this.offset = b.offset;
    }

    /**
     * Starts a worker.
     *
     * @param id name, unique in a design
     * @return a builder
     */
    public static Builder builder(String id) {
        return new Builder(id);
    }

    /**
     * The worker's name in the design.
     *
     * @return the id
     */
    public String id() {
        return id;
    }

    /**
     * Mass with clothing and tools.
     *
     * @return mass [kg], above zero
     */
    public double mass() {
        return mass;
    }

    /**
     * Elevation of the surface on which the worker stands.
     *
     * @return elevation [m]
     */
    public double walkingLevel() {
        return walkingLevel;
    }

    /**
     * Height of the harness attachment above the feet.
     *
     * @return height [m], above zero
     */
    public double attachmentHeight() {
        return attachmentHeight;
    }

    /**
     * Elevation of the harness attachment while the worker stands.
     *
     * @return walking level + attachment height [m]
     */
    public double harnessElevation() {
        return walkingLevel + attachmentHeight;
    }

    /**
     * How the connecting subsystem holds on to the line.
     *
     * @return the attachment
     */
    public Attachment attachment() {
        return attachment;
    }

    /**
     * The connecting subsystem.
     *
     * @return the connection
     */
    public Connection connection() {
        return connection;
    }

    /**
     * Horizontal distance of the worker from the vertical plane of the span, for the swing.
     *
     * @return distance [m], not negative
     */
    public double offset() {
        return offset;
    }

    /**
     * A builder that starts from this worker.
     *
     * @param name name of the new worker; the same id stands for a changed version of this one
     * @return a builder with everything of this worker but the name
     */
    public Builder toBuilder(String name) {
        return builder(name)
                .mass(mass)
                .walkingLevel(walkingLevel)
                .attachmentHeight(attachmentHeight)
                .attachment(attachment)
                .connection(connection)
                .offset(offset);
    }

    /**
     * The same worker with another mass.
     *
     * @param value mass [kg], above zero
     * @return the new worker
     * @throws org.lifeline.base.InvalidInputException if the mass is not above zero
     */
    public Worker withMass(double value) {
        return toBuilder(id).mass(value).build();
    }

    /**
     * The same worker with another connecting subsystem.
     *
     * @param value the connection
     * @return the new worker
     */
    public Worker withConnection(Connection value) {
        return toBuilder(id).connection(value).build();
    }

    /**
     * Collects what is known of a worker. Not thread-safe.
     *
     * @since 1.0.0
     */
    public static final class Builder {
        private final @Nullable String id;
        private @Nullable Double mass;
        private @Nullable Double walkingLevel;
        private double attachmentHeight = 1.5;
        private @Nullable Attachment attachment = Attachment.FREE_RUNNING;
        private @Nullable Connection connection;
        private double offset;

        private Builder(@Nullable String id) {
            this.id = id;
        }

        /**
         * Mass with clothing and tools.
         *
         * @param value mass [kg], above zero
         * @return this
         */
        public Builder mass(double value) {
            mass = value;
            return this;
        }

        /**
         * Elevation of the surface on which the worker stands.
         *
         * @param value elevation [m]
         * @return this
         */
        public Builder walkingLevel(double value) {
            walkingLevel = value;
            return this;
        }

        /**
         * Height of the harness attachment above the feet; 1.5 m unless set (common practice, no source).
         *
         * @param value height [m], above zero
         * @return this
         */
        public Builder attachmentHeight(double value) {
            attachmentHeight = value;
            return this;
        }

        /**
         * How the connecting subsystem holds on to the line; free-running unless set.
         *
         * @param value the attachment
         * @return this
         */
        public Builder attachment(Attachment value) {
            attachment = value;
            return this;
        }

        /**
         * The connecting subsystem.
         *
         * @param value the connection
         * @return this
         */
        public Builder connection(Connection value) {
            connection = value;
            return this;
        }

        /**
         * Horizontal distance from the vertical plane of the span; 0 unless set.
         *
         * @param value distance [m], not negative
         * @return this
         */
        public Builder offset(double value) {
            // No minus zero: it would make another worker of the same one.
            offset = value + 0.0;
            return this;
        }

        /**
         * Checks everything and makes the worker.
         *
         * @return the worker
         * @throws org.lifeline.base.InvalidInputException with all violations
         */
        public Worker build() {
            Violations v = new Violations();
            v.named("id", id);
            given(v, PlausibleRange.WORKER_MASS, "mass", mass);
            given(v, PlausibleRange.COORDINATE, "walkingLevel", walkingLevel);
            PlausibleRange.ATTACHMENT_HEIGHT.check(v, "attachmentHeight", attachmentHeight);
            PlausibleRange.LENGTH.check(v, "offset", offset);
            if (attachment == null) {
                v.missing("attachment");
            }
            if (connection == null) {
                v.missing("connection");
            }
            v.throwIfAny();
            return new Worker(this);
        }

        private static void given(Violations v, PlausibleRange range, String path, @Nullable Double value) {
            if (value == null) {
                v.missing(path);
            } else {
                range.check(v, path, value);
            }
        }
    }

    /**
     * Compares values.
     *
     * @param other another object
     * @return true for a worker with the same id and the same data
     */
    @Override
    public boolean equals(@Nullable Object other) {
        return other instanceof Worker w
                && id.equals(w.id)
                && Double.compare(mass, w.mass) == 0
                && Double.compare(walkingLevel, w.walkingLevel) == 0
                && Double.compare(attachmentHeight, w.attachmentHeight) == 0
                && attachment == w.attachment
                && Double.compare(offset, w.offset) == 0
                && connection.equals(w.connection);
    }

    @Override
    public int hashCode() {
        return Objects.hash(id, mass, walkingLevel, attachmentHeight, attachment, offset, connection);
    }

    @Override
    public String toString() {
        return id + ", " + mass + " kg, walking level " + walkingLevel + " m, " + connection;
    }

    @Override
    public CanonicalForm canonicalForm() {
        return ModelForms.of(this);
    }
}
