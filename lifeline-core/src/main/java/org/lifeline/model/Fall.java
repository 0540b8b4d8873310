package org.lifeline.model;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.UnaryOperator;
import org.jspecify.annotations.Nullable;
import org.lifeline.base.GivenValue;
import org.lifeline.base.InputRule;
import org.lifeline.base.PlausibleRange;
import org.lifeline.base.Violation;
import org.lifeline.base.Violations;
import org.lifeline.base.canonical.Canonical;
import org.lifeline.base.canonical.CanonicalForm;
import org.lifeline.model.absorber.AbsorberCondition;
import org.lifeline.model.absorber.DeploymentForce;

/**
 * One fall: who falls where, together with whom, and who hangs on the line already.
 *
 * <p>Immutable and thread-safe. Build with {@link #builder}.
 *
 * @since 1.0.0
 */
public final class Fall implements Canonical {
    private final String id;
    private final Place place;
    private final List<Worker> fallers;
    private final List<Hanging> hanging;
    private final @Nullable Double freeFall;

    /**
     * A worker who fell before and hangs at rest.
     *
     * @param worker the worker
     * @param place where on the line
     * @since 1.0.0
     */
    public record Hanging(Worker worker, Place place) {
        /**
         * Checks that both are given.
         *
         * @param worker the worker
         * @param place where on the line
         * @throws org.lifeline.base.InvalidInputException if one is missing
         */
        public Hanging {
            Violations.required("worker", worker);
            Violations.required("place", place);
        }
    }

    private Fall(Builder b, Place place) {
        this.id = Objects.requireNonNull(b.id);
        this.place = place;
        this.fallers = List.copyOf(b.fallers);
        this.hanging = List.copyOf(b.hanging);
        this.freeFall = b.freeFall;
    }

    /**
     * Starts a fall.
     *
     * @param id name, unique in a design
     * @return a builder
     */
    public static Builder builder(String id) {
        return new Builder(id);
    }

    /**
     * The fall's name.
     *
     * @return the id
     */
    public String id() {
        return id;
    }

    /**
     * Where the fallers are hooked on.
     *
     * @return the place
     */
    public Place place() {
        return place;
    }

    /**
     * Those who fall together at one place.
     *
     * @return at least one worker; unmodifiable
     */
    public List<Worker> fallers() {
        return fallers;
    }

    /**
     * Tells whether the attachment of those who fall can run along the cable.
     *
     * @return true for a free-running attachment in a span; false for one that grips the cable or pulls on a support
     */
    public boolean canRun() {
        return !place.isAtSupport() && fallers.get(0).attachment() == Attachment.FREE_RUNNING;
    }

    /**
     * Those who fell before and hang at rest, in the order in which they fell.
     *
     * @return the hanging workers; unmodifiable
     */
    public List<Hanging> hanging() {
        return hanging;
    }

    /**
     * The conditions under which the absorbers of those who fall give the force of a side.
     *
     * @param side clearance side or maximum side
     * @param temperature temperature of the arrest [°C]
     * @return the condition by the id of the worker, in the order of the fallers; without those whose force is that of the dry;
     *     unmodifiable
     * @throws org.lifeline.base.InvalidInputException if it is no temperature
     */
    public Map<String, AbsorberCondition> conditions(DeploymentForce side, double temperature) {
        Map<String, AbsorberCondition> map = new LinkedHashMap<>();
        for (Worker w : fallers) {
            w.connection().deployment().condition(side, temperature).ifPresent(c -> map.put(w.id(), c));
        }
        return Collections.unmodifiableMap(map);
    }

    /**
     * Tells whether a worker takes part in the fall.
     *
     * @param worker id of the worker
     * @return true for one who falls or hangs already
     */
    public boolean names(String worker) {
        return fallers.stream().anyMatch(w -> w.id().equals(worker))
                || hanging.stream().anyMatch(h -> h.worker().id().equals(worker));
    }

    /**
     * The same fall with one more worker who falls at its place.
     *
     * @param worker the further worker
     * @return the new fall
     * @throws org.lifeline.base.InvalidInputException if he takes part already, or is attached in another way
     */
    public Fall withFaller(Worker worker) {
        Builder b = builder(id).at(place);
        b.fallers.addAll(fallers);
        b.faller(worker);
        b.hanging.addAll(hanging);
        b.freeFall = freeFall;
        return b.build();
    }

    /**
     * Free fall that overrides the one from geometry.
     *
     * @return free fall [m], if stated
     */
    public OptionalDouble freeFall() {
        return freeFall == null ? OptionalDouble.empty() : OptionalDouble.of(freeFall);
    }

    /**
     * Mass of those who fall.
     *
     * @return sum of the masses [kg]
     */
    public double fallingMass() {
        double sum = 0;
        for (Worker each : fallers) {
            sum += each.mass();
        }
        return sum;
    }

    /**
     * How far from the vertical plane of the line those who fall stand.
     *
     * @return the largest of their distances [m], not negative
     */
    public double largestOffset() {
        double most = 0;
        for (Worker each : fallers) {
            most = Math.max(most, each.offset());
        }
        return most;
    }

    /**
     * Checks that those who fall reach the line with their connections, and that a stated free fall is one that the
     * connections can give.
     *
     * <p>A line overhead must not be farther from the harness than the taut connection is long. A line below can be lifted
     * by hand, up to the straight line between its supports. Nobody falls farther than from one connection above the lifted
     * line to one connection below the line at rest. A self-retracting device pays out as much as is needed.
     *
     * @param line the line
     * @param lineElevation elevation of the line at the place of the fall, just before the fall [m]
     * @return the violations, with both lengths; empty if there is none
     */
    public List<Violation> checkReach(Lifeline line, double lineElevation) {
        Violations.required("line", line);
        return new Reach(this, lineElevation, line.chordElevation(place)).check();
    }

    /**
     * The same fall at another place.
     *
     * @param value the place
     * @return the new fall
     */
    public Fall at(Place value) {
        Builder b = builder(id).at(value);
        b.fallers.addAll(fallers);
        b.hanging.addAll(hanging);
        b.freeFall = freeFall;
        return b.build();
    }

    /**
     * The same fall with its workers replaced.
     *
     * @param change what replaces each of those who fall and hang
     * @return the new fall
     * @throws org.lifeline.base.InvalidInputException if the new workers cannot fall like this
     */
    public Fall withWorkers(UnaryOperator<Worker> change) {
        Violations.required("change", change);
        Builder b = builder(id).at(place);
        fallers.forEach(w -> b.faller(change.apply(w)));
        hanging.forEach(each -> b.hanging(change.apply(each.worker()), each.place()));
        b.freeFall = freeFall;
        return b.build();
    }

    @Override
    public CanonicalForm canonicalForm() {
        return ModelForms.of(this);
    }

    /**
     * Compares values.
     *
     * @param other another object
     * @return true for a fall of the same id at the same place with the same workers and free fall
     */
    @Override
    public boolean equals(@Nullable Object other) {
        return other instanceof Fall f
                && id.equals(f.id)
                && place.equals(f.place)
                && fallers.equals(f.fallers)
                && hanging.equals(f.hanging)
                && Objects.equals(freeFall, f.freeFall);
    }

    @Override
    public int hashCode() {
        return Objects.hash(id, place, fallers, hanging, freeFall);
    }

    @Override
    public String toString() {
        return id + ": " + fallers.stream().map(Worker::id).toList() + " at " + place
                + (hanging.isEmpty()
                        ? ""
                        : ", " + hanging.stream().map(h -> h.worker().id()).toList() + " hanging")
                + (freeFall == null ? "" : ", free fall " + freeFall + " m");
    }

    /**
     * Collects what is known of a fall. Not thread-safe.
     *
     * @since 1.0.0
     */
    public static final class Builder {
        private final @Nullable String id;
        private @Nullable Place place;

        /** In the order in which they were given; null stands for one that was null: the others keep their numbers. */
        private final List<@Nullable Worker> fallers = new ArrayList<>();

        private final List<@Nullable Hanging> hanging = new ArrayList<>();
        private final Violations early = new Violations();
        private @Nullable Double freeFall;

        private Builder(@Nullable String id) {
            this.id = id;
        }

        /**
         * Where the fallers are hooked on.
         *
         * @param value the place
         * @return this
         */
        public Builder at(Place value) {
            place = value;
            return this;
        }

        /**
         * Adds one who falls.
         *
         * @param worker the worker
         * @return this
         */
        public Builder faller(Worker worker) {
            if (worker == null) {
                early.missing("faller[" + fallers.size() + "]");
            }
            fallers.add(worker);
            return this;
        }

        /**
         * Adds one who fell before and hangs at rest.
         *
         * @param worker the worker
         * @param value where on the line
         * @return this
         */
        public Builder hanging(Worker worker, Place value) {
            String path = "hanging[" + hanging.size() + "]";
            if (worker == null) {
                early.missing(path + ".worker");
            }
            if (value == null) {
                early.missing(path + ".place");
            }
            hanging.add(worker == null || value == null ? null : new Hanging(worker, value));
            return this;
        }

        /**
         * Overrides the free fall that follows from geometry.
         *
         * @param value free fall [m], not negative
         * @return this
         */
        public Builder freeFall(double value) {
            freeFall = value;
            return this;
        }

        /**
         * Checks everything and makes the fall.
         *
         * @return the fall
         * @throws org.lifeline.base.InvalidInputException with all violations
         */
        public Fall build() {
            Violations v = new Violations();
            v.named("id", id);
            early.list().forEach(v::add);
            if (fallers.isEmpty()) {
                v.add("faller", GivenValue.text("[]"), InputRule.EMPTY, "worker");
            }
            if (freeFall != null) {
                PlausibleRange.LENGTH.check(v, "freeFall", freeFall);
            }
            checkWorkers(v);
            Place p = place;
            if (p == null) {
                v.missing("at");
            }
            v.throwIfAny();
            if (p == null) {
                throw new IllegalStateException("unreachable: a missing place has been reported");
            }
            return new Fall(this, p);
        }

        /** Everybody takes part once, and those who fall at one place are attached alike. */
        private void checkWorkers(Violations v) {
            Set<String> seen = new HashSet<>(2 * (fallers.size() + hanging.size()));
            Worker first = null;
            for (int i = 0; i < fallers.size(); i++) {
                Worker worker = fallers.get(i);
                if (worker == null) {
                    continue;
                }
                first = first == null ? worker : first;
                if (!seen.add(worker.id())) {
                    v.add("faller[" + i + "]", GivenValue.text(worker.id()), InputRule.WORKER_TWICE);
                }
                if (worker.attachment() != first.attachment()) {
                    v.add("faller[" + i + "]", GivenValue.text(worker.id()), InputRule.ATTACHMENT_DIFFERS);
                }
            }
            for (int i = 0; i < hanging.size(); i++) {
                Hanging each = hanging.get(i);
                if (each != null && !seen.add(each.worker().id())) {
                    v.add(
                            "hanging[" + i + "].worker",
                            GivenValue.text(each.worker().id()),
                            InputRule.WORKER_TWICE);
                }
            }
        }
    }
}
