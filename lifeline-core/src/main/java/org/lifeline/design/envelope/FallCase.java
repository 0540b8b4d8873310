package org.lifeline.design.envelope;

import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.state.AttachmentLimit;
import org.lifeline.base.GivenValue;
import org.lifeline.base.InputRule;
import org.lifeline.base.Violations;
import org.lifeline.model.Fall;
import org.lifeline.model.Place;
import org.lifeline.model.Worker;
import org.lifeline.model.absorber.AbsorberCondition;
import org.lifeline.model.absorber.DeploymentForce;

/**
 * One case that was computed: which fall, where, at which temperature, on which side of the force range, and how line
 * and workers deviate from the design.
 *
 * <p>Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public final class FallCase {
    private final Fall fall;
    private final double temperature;
    private final DeploymentForce side;
    private final Deviation deviation;
    private final AttachmentLimit limit;
    private final @Nullable Later later;

    FallCase(Fall fall, double temperature, DeploymentForce side, Deviation deviation, AttachmentLimit limit) {
        this.fall = fall;
        this.temperature = temperature;
        this.side = side;
        this.deviation = deviation;
        this.limit = limit;
        this.later = null;
    }

    private FallCase(FallCase other, Fall fall, @Nullable Later later) {
        this.fall = fall;
        this.temperature = other.temperature;
        this.side = other.side;
        this.deviation = other.deviation;
        this.limit = other.limit;
        this.later = later;
    }

    /**
     * One of those who fall at the place of the fall, but later than the others.
     *
     * @param worker id of the worker
     * @param delay time after the start of the fall [s], from 0 to 1
     * @since 1.0.0
     */
    public record Later(String worker, double delay) {
        /**
         * Checks the worker.
         *
         * @param worker id of the worker
         * @param delay time after the start of the fall [s], from 0 to 1
         * @throws org.lifeline.base.InvalidInputException if there is no worker, or the delay is negative
         */
        public Later {
            Violations.required("worker", worker);
            new Violations().notNegative("delay", delay, "s").throwIfAny();
        }
    }

    /** How a case deviates from the design; NaN where it does not. */
    record Deviation(double pretension, double friction, double mass) {
        static final Deviation NONE = new Deviation(Double.NaN, Double.NaN, Double.NaN);
    }

    /** The case of an arrest of the design as it stands. */
    static FallCase asDesigned(ArrestResult arrest) {
        return new FallCase(
                arrest.fall(),
                arrest.temperature(),
                arrest.side(),
                Deviation.NONE,
                arrest.attachmentLimit().orElse(AttachmentLimit.RUNNING));
    }

    /**
     * The fall at its place.
     *
     * @return the fall
     */
    public Fall fall() {
        return fall;
    }

    /**
     * Temperature of the line.
     *
     * @return temperature [°C]
     */
    public double temperature() {
        return temperature;
    }

    /**
     * Side of the absorber's force range.
     *
     * @return clearance side or maximum side
     */
    public DeploymentForce side() {
        return side;
    }

    /**
     * The conditions under which the absorbers of those who fall have the force of the case.
     *
     * @return the condition by the id of the worker; without those whose force is that of the dry; unmodifiable
     */
    public Map<String, AbsorberCondition> conditions() {
        return fall.conditions(side, temperature);
    }

    /**
     * The limit of a free-running attachment.
     *
     * @return running or held; empty for an attachment that grips the cable or pulls on a support
     */
    public Optional<AttachmentLimit> attachmentLimit() {
        return fall.canRun() ? Optional.of(limit) : Optional.empty();
    }

    /**
     * Factor on the pretension of the design, where a tolerance is examined.
     *
     * @return factor [-], if it is not that of the design
     */
    public OptionalDouble pretensionFactor() {
        return optional(deviation.pretension());
    }

    /**
     * Coefficient of friction at the anchors that have friction, where a tolerance is examined.
     *
     * @return μ [-], if it is not that of the design
     */
    public OptionalDouble friction() {
        return optional(deviation.friction());
    }

    /**
     * Mass of every worker, where a range is examined.
     *
     * @return mass [kg], if it is not that of the design
     */
    public OptionalDouble mass() {
        return optional(deviation.mass());
    }

    /**
     * The further worker who falls within the first second.
     *
     * @return who, and how much later than the first; empty where nobody does
     */
    public Optional<Later> later() {
        return Optional.ofNullable(later);
    }

    /**
     * The fall without the further worker.
     *
     * @return the fall of those who fall first; the fall itself where nobody falls later
     */
    public Fall firstFall() {
        Later late = later;
        if (late == null) {
            return fall;
        }
        Fall.Builder b = Fall.builder(fall.id()).at(fall.place());
        fall.fallers().stream().filter(w -> !w.id().equals(late.worker())).forEach(b::faller);
        fall.hanging().forEach(h -> b.hanging(h.worker(), h.place()));
        fall.freeFall().ifPresent(b::freeFall);
        return b.build();
    }

    /**
     * The same case with a further worker who falls at the place of the fall, later than those of the case. Only an analysis
     * in time can compute it.
     *
     * @param worker the worker, who has the mass of the case where one is examined
     * @param delay time after the start of the fall [s], not negative
     * @return the new case; its fall names the further worker last
     * @throws org.lifeline.base.InvalidInputException if the delay is negative, or the worker takes part already or is attached
     *     in another way
     */
    public FallCase withLater(Worker worker, double delay) {
        Violations.required("worker", worker);
        Worker his = mass().isPresent() ? worker.withMass(mass().getAsDouble()) : worker;
        return new FallCase(this, fall.withFaller(his), new Later(worker.id(), delay));
    }

    /**
     * The same case with another delay of the further worker.
     *
     * @param delay time after the start of the fall [s], not negative
     * @return the new case
     * @throws org.lifeline.base.InvalidInputException if the delay is negative, or nobody falls later
     */
    public FallCase delayed(double delay) {
        new Violations()
                .require(later != null, "later", GivenValue.text(describe()), InputRule.NOT_A_FALLER)
                .throwIfAny();
        return new FallCase(this, fall, new Later(Objects.requireNonNull(later).worker(), delay));
    }

    /**
     * The same case at another place.
     *
     * @param place where the fall is
     * @return the new case; its fall has the same name, workers and free fall
     */
    public FallCase at(Place place) {
        return new FallCase(this, fall.at(place), later);
    }

    /**
     * The case in words, for a report.
     *
     * @return for example {@code "fall A, span 2, station 6.000 m, -30.0 °C, maximum deployment force"}
     */
    public String describe() {
        StringBuilder b = new StringBuilder(String.format(
                Locale.ROOT,
                "fall %s, %s, %.1f °C, %s deployment force%s",
                fall.id(),
                where(fall.place()),
                temperature,
                side == DeploymentForce.MAXIMUM ? "maximum" : "clearance",
                inBrackets(conditions())));
        later().ifPresent(l -> b.append(String.format(Locale.ROOT, ", %s falls %.3f s later", l.worker(), l.delay())));
        attachmentLimit().filter(l -> l == AttachmentLimit.HELD).ifPresent(l -> b.append(", attachment held"));
        pretensionFactor().ifPresent(f -> b.append(String.format(Locale.ROOT, ", pretension × %.3f", f)));
        friction().ifPresent(f -> b.append(String.format(Locale.ROOT, ", friction %.3f", f)));
        mass().ifPresent(m -> b.append(String.format(Locale.ROOT, ", mass %.1f kg", m)));
        return b.toString();
    }

    private String inBrackets(Map<String, AbsorberCondition> conditions) {
        return conditions.isEmpty()
                ? ""
                : " (" + AbsorberCondition.words(conditions, fall.fallers().size()) + ")";
    }

    private static String where(Place place) {
        return place.support()
                .map(id -> "at " + id)
                .orElseGet(() -> String.format(Locale.ROOT, "span %d, station %.3f m", place.span(), place.station()));
    }

    private static OptionalDouble optional(double value) {
        return Double.isNaN(value) ? OptionalDouble.empty() : OptionalDouble.of(value);
    }

    @Override
    public String toString() {
        return describe();
    }
}
