package org.lifeline.model;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import org.jspecify.annotations.Nullable;
import org.lifeline.base.PlausibleRange;
import org.lifeline.base.Violation;
import org.lifeline.base.Violations;

/**
 * A whole design: the line, those who work on it, the falls to look at, and what lies below.
 *
 * <p>Immutable and thread-safe. Build with {@link #builder}.
 */
public final class LifelineDesign {
    private final String title;
    private final Lifeline line;
    private final List<Double> temperatures;
    private final List<Worker> workers;
    private final List<Fall> falls;
    private final ClearanceRules clearance;
    private final ModelFactors modelFactors;
    private final @Nullable Double workingFloor;

    private LifelineDesign(Builder b, Lifeline line) {
        this.title = b.title;
        this.line = line;
        this.temperatures =
                b.temperatures.isEmpty() ? List.of(line.installed().temperature()) : List.copyOf(b.temperatures);
        this.workers = List.copyOf(b.workers);
        this.falls = List.copyOf(b.falls);
        this.clearance = b.clearance;
        this.modelFactors = b.modelFactors;
        this.workingFloor = b.workingFloor;
    }

    /**
     * Starts a design.
     *
     * @param title title of the design
     * @return a builder
     */
    public static Builder builder(String title) {
        return new Builder(title);
    }

    /**
     * Title of the design.
     *
     * @return the title
     */
    public String title() {
        return title;
    }

    /**
     * The line.
     *
     * @return the line
     */
    public Lifeline line() {
        return line;
    }

    /**
     * Temperatures in service; that of installation if none was stated.
     *
     * @return at least one temperature [°C]; unmodifiable
     */
    public List<Double> temperatures() {
        return temperatures;
    }

    /**
     * Those who work on the line.
     *
     * @return the workers; unmodifiable
     */
    public List<Worker> workers() {
        return workers;
    }

    /**
     * The falls to look at. Empty: the worst place is to be looked for.
     *
     * @return the falls; unmodifiable
     */
    public List<Fall> falls() {
        return falls;
    }

    /**
     * Harness stretch, margin and obstructions.
     *
     * @return the rules of the clearance account
     */
    public ClearanceRules clearance() {
        return clearance;
    }

    /**
     * The engineer's factors on force and distance.
     *
     * @return the factors
     */
    public ModelFactors modelFactors() {
        return modelFactors;
    }

    /**
     * The working floor that carries the posts of the line.
     *
     * @return elevation of its top [m]; empty where it is not stated
     */
    public OptionalDouble workingFloor() {
        return workingFloor == null ? OptionalDouble.empty() : OptionalDouble.of(workingFloor);
    }

    /**
     * A builder that starts from this design.
     *
     * @return a builder with all parts of this design
     */
    public Builder toBuilder() {
        Builder b = builder(title).line(line).clearance(clearance).modelFactors(modelFactors);
        b.temperatures.addAll(temperatures);
        b.workers.addAll(workers);
        b.falls.addAll(falls);
        b.workingFloor = workingFloor;
        return b;
    }

    /**
     * The same design with another line.
     *
     * @param value the line
     * @return the new design
     * @throws org.lifeline.base.InvalidInputException if a fall does not lie on it
     */
    public LifelineDesign withLine(Lifeline value) {
        return toBuilder().line(value).build();
    }

    /**
     * The same design at other temperatures in service.
     *
     * @param values temperatures, each [°C]; that of installation if there is none
     * @return the new design
     * @throws org.lifeline.base.InvalidInputException if one is out of range
     */
    public LifelineDesign withTemperatures(List<Double> values) {
        Builder b = toBuilder();
        b.temperatures.clear();
        for (Double each : Violations.required("service.temperatures", values)) {
            b.temperature(Violations.required("service.temperatures", each));
        }
        return b.build();
    }

    /**
     * The same design with its workers replaced, in the list of workers and in every fall.
     *
     * @param change what replaces each worker
     * @return the new design
     * @throws org.lifeline.base.InvalidInputException if the new workers do not fit the falls
     */
    public LifelineDesign withWorkers(UnaryOperator<Worker> change) {
        Violations.required("change", change);
        Builder b = toBuilder();
        b.workers.replaceAll(w -> Violations.required("workers", change.apply(w)));
        b.falls.replaceAll(f -> f.withWorkers(change));
        return b.build();
    }

    /**
     * The same design with other falls.
     *
     * @param values the falls; none for a search for the worst place
     * @return the new design
     * @throws org.lifeline.base.InvalidInputException if one does not lie on the line
     */
    public LifelineDesign withFalls(List<Fall> values) {
        Builder b = toBuilder();
        b.falls.clear();
        Violations.required("falls", values).forEach(b::fall);
        return b.build();
    }

    /** Collects the parts of a design. Not thread-safe. */
    public static final class Builder {
        private final String title;
        private @Nullable Lifeline line;
        private final List<Double> temperatures = new ArrayList<>();
        private final List<Worker> workers = new ArrayList<>();
        private final List<Fall> falls = new ArrayList<>();
        private ClearanceRules clearance = ClearanceRules.commonPractice();
        private ModelFactors modelFactors = ModelFactors.none();
        private @Nullable Double workingFloor;

        private Builder(String title) {
            this.title = Violations.required("title", title);
        }

        /**
         * The line.
         *
         * @param value the line
         * @return this
         */
        public Builder line(Lifeline value) {
            line = Violations.required("line", value);
            return this;
        }

        /**
         * Adds a temperature in service.
         *
         * @param value temperature [°C]
         * @return this
         */
        public Builder temperature(double value) {
            temperatures.add(value);
            return this;
        }

        /**
         * Adds a worker.
         *
         * @param value the worker
         * @return this
         */
        public Builder worker(Worker value) {
            workers.add(Violations.required("workers[" + workers.size() + "]", value));
            return this;
        }

        /**
         * Adds a fall.
         *
         * @param value the fall
         * @return this
         */
        public Builder fall(Fall value) {
            falls.add(Violations.required("falls[" + falls.size() + "]", value));
            return this;
        }

        /**
         * Harness stretch, margin and obstructions; common practice unless set.
         *
         * @param value the rules
         * @return this
         */
        public Builder clearance(ClearanceRules value) {
            clearance = Violations.required("clearance", value);
            return this;
        }

        /**
         * The engineer's factors; 1 unless set.
         *
         * @param value the factors
         * @return this
         */
        public Builder modelFactors(ModelFactors value) {
            modelFactors = Violations.required("modelFactors", value);
            return this;
        }

        /**
         * The working floor that carries the posts of the line, for criteria that measure a height from it.
         *
         * @param elevation elevation of its top [m]
         * @return this
         */
        public Builder workingFloor(double elevation) {
            workingFloor = elevation;
            return this;
        }

        /**
         * Checks everything and makes the design.
         *
         * @return the design
         * @throws org.lifeline.base.InvalidInputException with all violations
         */
        public LifelineDesign build() {
            Violations v = new Violations();
            v.require(line != null, "line", "missing", "must be given");
            v.require(!workers.isEmpty(), "workers", "[]", "must name at least one worker");
            for (int i = 0; i < temperatures.size(); i++) {
                PlausibleRange.TEMPERATURE.check(v, "service.temperatures[" + i + "]", temperatures.get(i));
            }
            PlausibleRange.checkCount(v, "service.temperatures", temperatures.size());
            if (workingFloor != null) {
                PlausibleRange.COORDINATE.check(v, "clearance.workingFloor", workingFloor);
            }
            PlausibleRange.checkCount(v, "workers", workers.size());
            PlausibleRange.checkCount(v, "falls", falls.size());
            unique(v, "workers", workers, Worker::id);
            unique(v, "falls", falls, Fall::id);
            checkFallers(v);
            if (line != null) {
                for (int i = 0; i < falls.size(); i++) {
                    checkPlaces(v, line, i, falls.get(i));
                }
            }
            v.throwIfAny();
            return new LifelineDesign(this, Objects.requireNonNull(line));
        }

        /** Those who fall and hang are those of the design: what falls is what criteria judge. */
        private void checkFallers(Violations v) {
            Map<String, Worker> byId = new HashMap<>();
            workers.forEach(w -> byId.putIfAbsent(w.id(), w));
            for (int i = 0; i < falls.size(); i++) {
                Fall fall = falls.get(i);
                for (int j = 0; j < fall.fallers().size(); j++) {
                    checkWorker(
                            v,
                            "falls[" + i + "].fallers[" + j + "]",
                            fall.fallers().get(j),
                            byId);
                }
                for (int j = 0; j < fall.hanging().size(); j++) {
                    String path = "falls[" + i + "].hanging[" + j + "].worker";
                    checkWorker(v, path, fall.hanging().get(j).worker(), byId);
                }
            }
        }

        private static void checkWorker(Violations v, String path, Worker worker, Map<String, Worker> byId) {
            Worker listed = byId.get(worker.id());
            if (listed == null) {
                v.add(path, worker.id(), "is not among the workers of the design");
            } else if (!listed.equals(worker)) {
                v.add(
                        path,
                        worker.id() + ", " + Violations.show(worker.mass(), "kg"),
                        "has other data than the worker of this id in the design, "
                                + Violations.show(listed.mass(), "kg"));
            }
        }

        private static <T> void unique(Violations v, String path, List<T> list, Function<T, String> idOf) {
            if (list.size() < 2) {
                return;
            }
            Set<String> seen = new HashSet<>();
            for (int i = 0; i < list.size(); i++) {
                String id = idOf.apply(list.get(i));
                if (!seen.add(id)) {
                    v.add(path + "[" + i + "].id", id, "must not be used twice");
                }
            }
        }

        private static void checkPlaces(Violations v, Lifeline line, int number, Fall fall) {
            for (Violation each : line.check(fall.place())) {
                v.add(each.below("falls[" + number + "]"));
            }
            for (int j = 0; j < fall.hanging().size(); j++) {
                for (Violation each : line.check(fall.hanging().get(j).place())) {
                    v.add(each.below("falls[" + number + "].hanging[" + j + "]"));
                }
            }
        }
    }
}
