package org.lifeline.model;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import org.jspecify.annotations.Nullable;
import org.lifeline.base.GivenValue;
import org.lifeline.base.InputRule;
import org.lifeline.base.PlausibleRange;
import org.lifeline.base.Violations;
import org.lifeline.base.canonical.Canonical;
import org.lifeline.base.canonical.CanonicalForm;
import org.lifeline.model.absorber.AbsorberCondition;
import org.lifeline.model.incident.SecondFall;

/**
 * A whole design: the line, those who work on it, the falls to look at, and what lies below.
 *
 * <p>Immutable and thread-safe. Build with {@link #builder}.
 *
 * @since 1.0.0
 */
public final class LifelineDesign implements Canonical {
    private final String title;
    private final Lifeline line;
    private final List<Double> temperatures;
    private final List<Worker> workers;
    private final List<Fall> falls;
    private final ClearanceRules clearance;
    private final ModelFactors modelFactors;
    private final @Nullable Double workingFloor;
    private final @Nullable SecondFall secondFall;
    private final @Nullable Double rescuerMass;

    private LifelineDesign(Builder b, Lifeline line) {
        this.title = Objects.requireNonNull(b.title);
        this.line = line;
        this.workers = List.copyOf(b.workers);
        this.temperatures = withLimits(
                b.temperatures.isEmpty() ? List.of(line.installed().temperature()) : b.temperatures, workers);
        this.falls = List.copyOf(b.falls);
        this.clearance = Objects.requireNonNull(b.clearance);
        this.modelFactors = Objects.requireNonNull(b.modelFactors);
        this.workingFloor = b.workingFloor;
        this.secondFall = b.secondFall;
        this.rescuerMass = b.rescuerMass;
    }

    /**
     * The temperatures in service with the limits of cold and hot absorbers that lie between them. A force that applies up to a
     * limit meets the slackest or tightest line there, which no other temperature encloses.
     */
    private static List<Double> withLimits(List<Double> stated, List<Worker> workers) {
        double coldest = Collections.min(stated);
        double hottest = Collections.max(stated);
        Set<Double> all = new LinkedHashSet<>();
        for (Worker w : workers) {
            for (AbsorberCondition c : w.connection().deployment().conditions()) {
                double t = c.temperature().orElse(Double.NaN);
                if (t > coldest && t < hottest && !stated.contains(t)) {
                    all.add(t);
                }
            }
        }
        List<Double> list = new ArrayList<>(stated);
        list.addAll(all);
        return List.copyOf(list);
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
     * Temperatures in service; that of installation if none was stated. Those up to which a worker's absorber counts as cold, or
     * from which on it counts as hot, belong to them where they lie between: cases may govern there.
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
     * A further worker who may fall within the first second of a fall.
     *
     * @return the second fall; empty where none is stated, and none is looked at
     */
    public Optional<SecondFall> secondFall() {
        return Optional.ofNullable(secondFall);
    }

    /**
     * Mass of a rescuer who hangs on the line together with those who have fallen.
     *
     * @return mass [kg]; empty where none is stated, and no rescue is looked at
     */
    public OptionalDouble rescuerMass() {
        return rescuerMass == null ? OptionalDouble.empty() : OptionalDouble.of(rescuerMass);
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
        b.secondFall = secondFall;
        b.rescuerMass = rescuerMass;
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
        for (Double each : Violations.required("temperatures", values)) {
            b.temperature(Violations.required("temperatures", each));
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
        b.otherFalls = true;
        Violations.required("falls", values).forEach(b::fall);
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
     * @return true for a design of which every part is equal
     */
    @Override
    public boolean equals(@Nullable Object other) {
        return other instanceof LifelineDesign d
                && title.equals(d.title)
                && line.equals(d.line)
                && temperatures.equals(d.temperatures)
                && workers.equals(d.workers)
                && falls.equals(d.falls)
                && clearance.equals(d.clearance)
                && modelFactors.equals(d.modelFactors)
                && Objects.equals(workingFloor, d.workingFloor)
                && Objects.equals(secondFall, d.secondFall)
                && Objects.equals(rescuerMass, d.rescuerMass);
    }

    @Override
    public int hashCode() {
        List<Object> service = List.of(temperatures, workers, falls, clearance, modelFactors);
        return Objects.hash(title, line, service, workingFloor, secondFall, rescuerMass);
    }

    @Override
    public String toString() {
        return title + ": " + line + "; " + workers.size() + " workers, " + falls.size() + " falls, at " + temperatures
                + " °C";
    }

    /**
     * Collects the parts of a design. Not thread-safe.
     *
     * @since 1.0.0
     */
    public static final class Builder {
        private final @Nullable String title;
        private @Nullable Lifeline line;
        private final Violations early = new Violations();
        private final List<Double> temperatures = new ArrayList<>();

        /** In the order in which they were given; null stands for one that was null: the others keep their numbers. */
        private final List<@Nullable Worker> workers = new ArrayList<>();

        private final List<@Nullable Fall> falls = new ArrayList<>();
        private @Nullable ClearanceRules clearance = ClearanceRules.commonPractice();
        private @Nullable ModelFactors modelFactors = ModelFactors.none();
        private @Nullable Double workingFloor;
        private @Nullable SecondFall secondFall;
        private @Nullable Double rescuerMass;

        /** Set where falls take the place of those that were stated: a search moves some of them alone. */
        private boolean otherFalls;

        private Builder(@Nullable String title) {
            this.title = title;
        }

        /**
         * The line.
         *
         * @param value the line
         * @return this
         */
        public Builder line(Lifeline value) {
            line = value;
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
            if (value == null) {
                early.missing("worker[" + workers.size() + "]");
            }
            workers.add(value);
            return this;
        }

        /**
         * Adds a fall.
         *
         * @param value the fall
         * @return this
         */
        public Builder fall(Fall value) {
            if (value == null) {
                early.missing("fall[" + falls.size() + "]");
            }
            falls.add(value);
            return this;
        }

        /**
         * Harness stretch, margin and obstructions; common practice unless set.
         *
         * @param value the rules
         * @return this
         */
        public Builder clearance(ClearanceRules value) {
            clearance = value;
            return this;
        }

        /**
         * The engineer's factors; 1 unless set.
         *
         * @param value the factors
         * @return this
         */
        public Builder modelFactors(ModelFactors value) {
            modelFactors = value;
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
         * A further worker who may fall within the first second of a fall, at its place. The assessment follows both in time.
         *
         * @param value who, and after which delays
         * @return this
         */
        public Builder secondFall(SecondFall value) {
            if (value == null) {
                early.missing("secondFall");
            }
            secondFall = value;
            return this;
        }

        /**
         * Mass of a rescuer who hangs on the line together with those who have fallen, at the place of their fall. The
         * assessment computes the line at rest under all of them.
         *
         * @param value mass with the rescue equipment [kg]
         * @return this
         */
        public Builder rescuerMass(double value) {
            rescuerMass = value;
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
            if (title == null) {
                v.missing("title");
            }
            if (line == null) {
                v.missing("line");
            }
            early.list().forEach(v::add);
            if (clearance == null) {
                v.missing("clearance");
            }
            if (modelFactors == null) {
                v.missing("modelFactors");
            }
            if (workers.isEmpty()) {
                v.add("worker", GivenValue.text("[]"), InputRule.EMPTY, "worker");
            }
            for (int i = 0; i < temperatures.size(); i++) {
                PlausibleRange.TEMPERATURE.check(v, "temperature[" + i + "]", temperatures.get(i));
            }
            PlausibleRange.checkCount(v, "temperature", temperatures.size());
            if (workingFloor != null) {
                PlausibleRange.COORDINATE.check(v, "workingFloor", workingFloor);
            }
            if (rescuerMass != null) {
                PlausibleRange.WORKER_MASS.check(v, "rescuerMass", rescuerMass);
            }
            PlausibleRange.checkCount(v, "worker", workers.size());
            PlausibleRange.checkCount(v, "fall", falls.size());
            unique(v, "worker", workers, Worker::id);
            unique(v, "fall", falls, Fall::id);
            checkFallers(v);
            checkSecondFall(v);
            if (line != null) {
                for (int i = 0; i < falls.size(); i++) {
                    Fall fall = falls.get(i);
                    if (fall != null) {
                        checkPlaces(v, line, i, fall);
                    }
                }
            }
            v.throwIfAny();
            return new LifelineDesign(this, Objects.requireNonNull(line));
        }

        /** Those who fall and hang are those of the design: what falls is what criteria judge. */
        private void checkFallers(Violations v) {
            Map<String, Worker> byId = new HashMap<>();
            given(workers).forEach(w -> byId.putIfAbsent(w.id(), w));
            for (int i = 0; i < falls.size(); i++) {
                Fall fall = falls.get(i);
                if (fall == null) {
                    continue;
                }
                for (int j = 0; j < fall.fallers().size(); j++) {
                    checkWorker(
                            v,
                            "fall[" + i + "].faller[" + j + "]",
                            fall.fallers().get(j),
                            byId);
                }
                for (int j = 0; j < fall.hanging().size(); j++) {
                    String path = "fall[" + i + "].hanging[" + j + "].worker";
                    checkWorker(v, path, fall.hanging().get(j).worker(), byId);
                }
            }
        }

        /** The further worker is one of the design, and at least one fall happens without him, at a place that both can share. */
        private void checkSecondFall(Violations v) {
            SecondFall second = secondFall;
            if (second == null) {
                return;
            }
            String path = "secondFall.worker";
            GivenValue given = GivenValue.text(second.worker());
            Worker worker = given(workers).stream()
                    .filter(w -> w.id().equals(second.worker()))
                    .findFirst()
                    .orElse(null);
            if (worker == null) {
                v.add(path, given, InputRule.WORKER_UNKNOWN);
                return;
            }
            List<Worker> first = new ArrayList<>();
            if (falls.isEmpty()) {
                given(workers).stream().filter(w -> !w.id().equals(worker.id())).forEach(first::add);
            }
            given(falls).stream()
                    .filter(f -> !f.names(worker.id()))
                    .forEach(f -> first.add(f.fallers().get(0)));
            if (first.isEmpty() && !otherFalls) {
                v.add(path, given, InputRule.NO_FALL_WITHOUT);
            } else if (first.stream().anyMatch(w -> w.attachment() != worker.attachment())) {
                v.add(path, given, InputRule.ATTACHMENT_DIFFERS);
            }
        }

        private static void checkWorker(Violations v, String path, Worker worker, Map<String, Worker> byId) {
            Worker listed = byId.get(worker.id());
            if (listed == null) {
                v.add(path, GivenValue.text(worker.id()), InputRule.WORKER_UNKNOWN);
            } else if (!listed.equals(worker)) {
                v.add(
                        path,
                        GivenValue.text(worker.id() + ", " + Violations.show(worker.mass(), "kg")),
                        InputRule.WORKER_DIFFERS,
                        Violations.show(listed.mass(), "kg"));
            }
        }

        /** Those of a list that are not null. */
        private static <T> List<T> given(List<@Nullable T> list) {
            List<T> found = new ArrayList<>();
            for (T each : list) {
                if (each != null) {
                    found.add(each);
                }
            }
            return found;
        }

        private static <T> void unique(Violations v, String path, List<@Nullable T> list, Function<T, String> idOf) {
            if (list.size() < 2) {
                return;
            }
            Set<String> seen = new HashSet<>();
            for (int i = 0; i < list.size(); i++) {
                T each = list.get(i);
                if (each != null && !seen.add(idOf.apply(each))) {
                    v.add(path + "[" + i + "].id", GivenValue.text(idOf.apply(each)), InputRule.NOT_UNIQUE);
                }
            }
        }

        private static void checkPlaces(Violations v, Lifeline line, int number, Fall fall) {
            v.addAll(line.check(fall.place()), "fall[" + number + "].at");
            for (int j = 0; j < fall.hanging().size(); j++) {
                v.addAll(line.check(fall.hanging().get(j).place()), "fall[" + number + "].hanging[" + j + "].place");
            }
        }
    }
}
