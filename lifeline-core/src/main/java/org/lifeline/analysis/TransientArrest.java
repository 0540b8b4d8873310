package org.lifeline.analysis;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import org.lifeline.analysis.state.Outcome;
import org.lifeline.base.AllowedRange;
import org.lifeline.base.Convergence;
import org.lifeline.base.GivenValue;
import org.lifeline.base.InputRule;
import org.lifeline.base.NoEquilibriumException;
import org.lifeline.base.PlausibleRange;
import org.lifeline.base.Point;
import org.lifeline.base.ProgressListener;
import org.lifeline.base.Violation;
import org.lifeline.base.Violations;
import org.lifeline.base.canonical.Canonical;
import org.lifeline.base.canonical.CanonicalForm;
import org.lifeline.internal.motion.MeshRefinement;
import org.lifeline.internal.motion.Motion;
import org.lifeline.internal.motion.MotionSetup;
import org.lifeline.internal.numeric.WatchedWork;
import org.lifeline.internal.path.LineModel;
import org.lifeline.model.Attachment;
import org.lifeline.model.ClearanceRules;
import org.lifeline.model.Fall;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Place;
import org.lifeline.model.Worker;
import org.lifeline.model.absorber.DeploymentForce;

/**
 * The arrest of a fall in time: free fall, catch, rebound, and what follows, of workers, connecting subsystems and line.
 *
 * <p>The cable is a chain of lumped masses on tension-only segments with internal damping, T = EA(ε + τ dε/dt), nothing
 * below zero; material runs through intermediate anchors freely, against friction, or not at all. A worker is a point mass
 * on a massless connecting subsystem that remembers how far it was torn open. Mesh and step are chosen, and halved until
 * the peaks of the first catch change by less than the accuracy asked for; the result says what was reached. There is no
 * drag of the air, and the cable has no bending stiffness. See {@code src/docs/theory/transient.md}.
 *
 * <p>Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public final class TransientArrest implements Canonical {
    /**
     * Damping time τ of a cable that states none [s]: no source. It makes 0.6 % of critical damping at 10 Hz and 6 % at
     * 100 Hz; the theory page shows how little the peaks depend on it.
     */
    public static final double DAMPING_TIME = 2e-4;

    /** Bound of the peaks that is asked for by default [-]: what three meshes reach as a rule. */
    private static final double ACCURACY = 0.06;

    /**
     * How often mesh and step may be halved by default: three meshes are the least that bound an error, and one more follows
     * where they do not reach the accuracy.
     */
    private static final int REFINEMENTS = 3;

    /** Time that is followed by default [s]: catch and the first rebounds. */
    private static final double DURATION = 3;

    /** Interval of the histories by default [s]: ten samples in a period at 100 Hz. */
    private static final double SAMPLING = 1e-3;

    /** Most samples of a history: with some tens of columns they take about a quarter of a gigabyte. */
    private static final int MOST_SAMPLES = 1_000_000;

    /** Most halvings of mesh and step: each takes four times as long. */
    private static final int MOST_REFINEMENTS = 12;

    /** Drift of the energies, as a share of the energy of the fall, beyond which a motion is lost [-]. */
    private static final double LOST = 0.1;

    private final Conditions conditions;
    private final MeshRefinement.Request numerics;
    private final boolean held;
    private final List<Timed> later;
    private final ProgressListener listener;

    /** A fall and when it begins [s]: the first, whose catch is followed, or another one. */
    private record Timed(Fall fall, double time, boolean first) {}

    /**
     * Under what conditions somebody falls; without a temperature, at that of the installation [°C]. Of those who fall at the
     * place of the first fall, delays of some by their ids [s].
     */
    private record Conditions(
            OptionalDouble temperature, DeploymentForce side, ClearanceRules clearance, Map<String, Double> delays) {
        Conditions at(OptionalDouble value) {
            return new Conditions(value, side, clearance, delays);
        }
    }

    private TransientArrest(
            Conditions conditions,
            MeshRefinement.Request numerics,
            boolean held,
            List<Timed> later,
            ProgressListener listener) {
        this.listener = listener;
        this.conditions = conditions;
        this.numerics = numerics;
        this.held = held;
        this.later = List.copyOf(later);
    }

    /**
     * At the temperature of installation, with the maximum deployment force and the clearance rules of common practice;
     * 3 s, sampled every millisecond, peaks to 6 %.
     *
     * @return the analysis
     */
    public static TransientArrest withDefaults() {
        return new TransientArrest(
                new Conditions(
                        OptionalDouble.empty(), DeploymentForce.MAXIMUM, ClearanceRules.commonPractice(), Map.of()),
                new MeshRefinement.Request(
                        ACCURACY,
                        REFINEMENTS,
                        OptionalDouble.empty(),
                        new MeshRefinement.Course(new Motion.Sampling(DURATION, SAMPLING), OptionalDouble.empty())),
                false,
                List.of(),
                ProgressListener.none());
    }

    private TransientArrest with(Conditions value) {
        return new TransientArrest(value, numerics, held, later, listener);
    }

    private TransientArrest with(MeshRefinement.Request value) {
        return new TransientArrest(conditions, value, held, later, listener);
    }

    private TransientArrest with(MeshRefinement.Course value) {
        return with(new MeshRefinement.Request(numerics.accuracy(), numerics.refinements(), numerics.segment(), value));
    }

    /**
     * The same at the temperature at which the line was installed.
     *
     * @return the new analysis
     */
    public TransientArrest atInstalledTemperature() {
        return with(conditions.at(OptionalDouble.empty()));
    }

    /**
     * The same at a temperature.
     *
     * @param value temperature [°C], above absolute zero and below 1000
     * @return the new analysis
     * @throws org.lifeline.base.InvalidInputException if it lies outside
     */
    public TransientArrest withTemperature(double value) {
        double plausible = PlausibleRange.TEMPERATURE.required("temperature", value);
        return with(conditions.at(OptionalDouble.of(plausible)));
    }

    /**
     * The same on one side of the absorber's force range.
     *
     * @param value clearance side or maximum side
     * @return the new analysis
     */
    public TransientArrest withSide(DeploymentForce value) {
        Violations.required("side", value);
        return with(new Conditions(conditions.temperature, value, conditions.clearance, conditions.delays));
    }

    /**
     * The same with other clearance rules.
     *
     * @param value harness stretch, margin, obstructions
     * @return the new analysis
     */
    public TransientArrest withClearance(ClearanceRules value) {
        Violations.required("clearance", value);
        return with(new Conditions(conditions.temperature, conditions.side, value, conditions.delays));
    }

    /**
     * The same over another time.
     *
     * @param value time from the start of the fall [s], from 1e-3 to 600, and at most a million samples
     * @return the new analysis
     * @throws org.lifeline.base.InvalidInputException if it is out of range
     */
    public TransientArrest withDuration(double value) {
        PlausibleRange.DURATION.required("duration", value);
        double interval = numerics.course().sampling().interval();
        notTooMany("duration", value, value / interval);
        return with(numerics.course().sampled(new Motion.Sampling(value, interval)));
    }

    /**
     * The same, but not followed farther than a time after the first catch: what is asked for when only the peaks of the
     * first catch count. They are the same; histories and peaks of the whole run end sooner. A later fall cannot be
     * followed so.
     *
     * @param value time after the end of the first catch [s], not negative
     * @return the new analysis
     * @throws org.lifeline.base.InvalidInputException if it is negative
     */
    public TransientArrest withEndAfterFirstCatch(double value) {
        new Violations().notNegative("endAfterFirstCatch", value, "s").throwIfAny();
        return with(numerics.course().endedAfterCatch(value));
    }

    /**
     * The same with steps twice as long, axial elasticity implicit: for a survey of many cases. It loses short peaks, which the
     * energies do not show: a tension may be some per cent low.
     *
     * @return the new analysis
     */
    public TransientArrest withLongSteps() {
        return with(numerics.course().inLongSteps());
    }

    /**
     * The same with histories sampled at another interval. Peaks are taken at every step all the same.
     *
     * @param value time between two samples [s], from 1e-6 to 10, and at most a million samples
     * @return the new analysis
     * @throws org.lifeline.base.InvalidInputException if it is out of range
     */
    public TransientArrest withSampling(double value) {
        PlausibleRange.SAMPLING.required("sampling", value);
        double duration = numerics.course().sampling().duration();
        notTooMany("sampling", value, duration / value);
        return with(numerics.course().sampled(new Motion.Sampling(duration, value)));
    }

    private static void notTooMany(String path, double value, double samples) {
        new Violations()
                .require(
                        samples <= MOST_SAMPLES,
                        path,
                        GivenValue.number(value, "s"),
                        InputRule.TOO_MANY_SAMPLES,
                        MOST_SAMPLES)
                .throwIfAny();
    }

    /**
     * The same to another accuracy: mesh and step are halved until a bound says that ever finer ones change no peak of the
     * first catch by more than this; see {@link TransientResult#uncertainty()}.
     *
     * @param value relative bound [-], above zero
     * @return the new analysis
     * @throws org.lifeline.base.InvalidInputException if it is not above zero
     */
    public TransientArrest withAccuracy(double value) {
        new Violations().positive("accuracy", value, "").throwIfAny();
        return with(new MeshRefinement.Request(value, numerics.refinements(), numerics.segment(), numerics.course()));
    }

    /**
     * The same starting from another mesh.
     *
     * @param value length that segments of the first mesh should have in the spans where somebody falls [m], from 1e-3 to 1000
     * @return the new analysis
     * @throws org.lifeline.base.InvalidInputException if it is out of range
     */
    public TransientArrest withSegmentLength(double value) {
        PlausibleRange.SEGMENT_LENGTH.required("segmentLength", value);
        return with(new MeshRefinement.Request(
                numerics.accuracy(), numerics.refinements(), OptionalDouble.of(value), numerics.course()));
    }

    /**
     * The same with another limit of refinement.
     *
     * @param most how often mesh and step may be halved, from 0 to 12; below 2 nothing is known of the error, and every
     *     allowance of the result is infinite
     * @return the new analysis
     * @throws org.lifeline.base.InvalidInputException if it is out of range
     */
    public TransientArrest withRefinements(int most) {
        new Violations()
                .atLeast("refinements", most, 0)
                .require(
                        most <= MOST_REFINEMENTS,
                        "refinements",
                        GivenValue.count(most),
                        InputRule.ABOVE_MOST,
                        MOST_REFINEMENTS)
                .throwIfAny();
        return with(new MeshRefinement.Request(numerics.accuracy(), most, numerics.segment(), numerics.course()));
    }

    /**
     * The same with attachments of those who fall that are held on the cable at the station of the fall: a free-running
     * connector does not run, as if it were caught at a fitting. It makes no difference to a gripped one.
     *
     * @return the new analysis
     */
    public TransientArrest withAttachmentHeld() {
        return new TransientArrest(conditions, numerics, true, later, listener);
    }

    /**
     * The same with a fall that begins later, or elsewhere at the same time: workers who stand on the line at first and
     * load it with nothing. Arrest force, force on the line, fall distances and clearance stay those of the first fall;
     * tensions and forces on supports are those of the line with all who fall.
     *
     * @param fall who falls where; those who hang on the line are named by the first fall
     * @param time when it begins, after the start of the first [s], not negative
     * @return the new analysis
     * @throws org.lifeline.base.InvalidInputException if the time is negative, or the fall names workers who hang
     */
    public TransientArrest withLaterFall(Fall fall, double time) {
        Violations.required("laterFall", fall);
        Violations v = new Violations().notNegative("laterFall.time", time, "s");
        int hanging = fall.hanging().size();
        if (hanging > 0) {
            v.add("laterFall.hanging", GivenValue.countOf(hanging, "workers"), InputRule.HANGING_IN_LATER_FALL);
        }
        v.throwIfAny();
        List<Timed> list = new ArrayList<>(later);
        list.add(new Timed(fall, time, false));
        return new TransientArrest(conditions, numerics, held, list, listener);
    }

    /**
     * The same with a delay of one of those who fall at the place of the fall: falls that nearly coincide. Unlike
     * {@linkplain #withLaterFall a later fall} it is a part of the fall: the first catch lasts until all of them have been
     * caught, peaks are those of all, and the clearance is that of the one who needs the most.
     *
     * @param worker id of one of those who fall
     * @param delay time from the start of the fall until this worker begins to fall [s], not negative
     * @return the new analysis
     * @throws org.lifeline.base.InvalidInputException if the delay is negative
     */
    public TransientArrest withDelay(String worker, double delay) {
        Violations.required("delay.worker", worker);
        new Violations().notNegative("delay", delay, "s").throwIfAny();
        Map<String, Double> all = new TreeMap<>(conditions.delays);
        all.put(worker, delay);
        return with(new Conditions(conditions.temperature, conditions.side, conditions.clearance, Map.copyOf(all)));
    }

    /**
     * The same with a listener that hears when the line before the fall, the motion, and the energy balance beside it are done,
     * and again and again while a long line is brought to rest. It can end the analysis, which then has no result; while the
     * motion or the balance is under way, an interrupt of the thread does.
     *
     * @param value the listener
     * @return the new analysis
     */
    public TransientArrest withProgress(ProgressListener value) {
        return new TransientArrest(conditions, numerics, held, later, Violations.required("progress", value));
    }

    /**
     * Follows one fall in time. At a support the connection pulls on the anchor itself, on the anchor side of an in-line
     * absorber; the line takes part by what the support yields.
     *
     * @param line the line; its cable must have a mass
     * @param fall the fall
     * @return histories, peaks and the arrest
     * @throws org.lifeline.base.InvalidInputException if a place does not lie on the line, the line cannot hang as
     *     stated, the cable has no mass, a worker cannot reach the line or takes part twice, a fall is not caught within the duration, a later
     *     fall is asked for together with an end after the first catch, or a delay is that of somebody who does not fall
     * @throws NoEquilibriumException if the line before the fall has no equilibrium, or the motion is lost: its energies do not add up
     * @throws java.util.concurrent.CancellationException if the thread is interrupted, whose flag stays set, or the listener
     *     ended the work
     */
    public TransientResult solve(Lifeline line, Fall fall) {
        Violations.required("line", line);
        Violations.required("fall", fall);
        check(line, fall);
        double t = conditions.temperature.orElse(line.installed().temperature());
        WatchedWork work = new WatchedWork(3, listener);
        LineModel model = new LineModel(line, work);
        model.bringTo(t);
        double tau = line.cable().dampingTime().orElse(DAMPING_TIME);
        MotionSetup setup = new MotionSetup(model, tau);
        TransientCase c = new TransientCase(fall, conditions.side, conditions.clearance, t);
        EnergyBalance.hang(model, fall.hanging());
        c.before(model);
        hang(c, setup, model.loads());
        Violations v = new Violations();
        attach(c, setup, new Timed(fall, 0, true), "duration", v);
        for (int i = 0; i < later.size(); i++) {
            attach(c, setup, later.get(i), "laterFall[" + i + "].time", v);
        }
        v.throwIfAny();
        work.partDone();
        MeshRefinement motion = MeshRefinement.run(setup, numerics);
        work.partDone();
        ArrestResult balance = balance(line, fall, t);
        work.partDone();
        return closed(
                c.result(motion, numerics, balance), motion.motion().counts().steps());
    }

    /** The result of a run of so many steps, if its energies add up; an exception if its motion is lost. */
    static TransientResult closed(TransientResult result, long steps) {
        if (!(result.relativeDrift() <= LOST)) {
            throw new NoEquilibriumException(
                    "motion of the line, whose energies drifted apart by more than a tenth of what the fall set free",
                    0,
                    new Convergence((int) Math.min(steps, Integer.MAX_VALUE), result.relativeDrift(), LOST));
        }
        return result;
    }

    /** The energy balance of the same fall; null where it finds none. */
    private @Nullable ArrestResult balance(Lifeline line, Fall fall, double t) {
        try {
            return EnergyBalance.withDefaults()
                    .withTemperature(t)
                    .withSide(conditions.side)
                    .withClearance(conditions.clearance)
                    .solve(line, fall);
        } catch (NoEquilibriumException e) {
            return null;
        }
    }

    private void check(Lifeline line, Fall fall) {
        EnergyBalance.checkPlaces(line, fall);
        Violations v = new Violations();
        v.positive("cable.massPerLength", line.cable().massPerLength(line.gravity()), "kg/m");
        if (!later.isEmpty() && numerics.course().afterCatch().isPresent()) {
            GivenValue given = GivenValue.countOf(later.size(), "later falls");
            v.add("endAfterFirstCatch", given, InputRule.EXCLUDES, "later falls");
        }
        for (String id : new TreeSet<>(conditions.delays.keySet())) {
            boolean falls = fall.fallers().stream().anyMatch(w -> w.id().equals(id));
            v.require(falls, "delay.worker", GivenValue.text(id), InputRule.NOT_A_FALLER);
        }
        List<String> seen = new ArrayList<>();
        fall.fallers().forEach(w -> seen.add(w.id()));
        fall.hanging().forEach(h -> seen.add(h.worker().id()));
        for (int i = 0; i < later.size(); i++) {
            String path = "laterFall[" + i + "]";
            v.addAll(line.check(later.get(i).fall.place()), path + ".at");
            for (Worker w : later.get(i).fall.fallers()) {
                if (seen.contains(w.id())) {
                    v.add(path + ".faller", GivenValue.text(w.id()), InputRule.TAKES_PART_TWICE);
                }
                seen.add(w.id());
            }
        }
        v.throwIfAny();
    }

    private void hang(TransientCase c, MotionSetup setup, List<LineModel.Load> hooks) {
        LineModel model = c.model();
        List<Fall.Hanging> hanging = c.fall().hanging();
        for (int i = 0; i < hooks.size(); i++) {
            Fall.Hanging each = hanging.get(i);
            boolean atSupport = each.place().isAtSupport();
            if (!atSupport && model.restsOn(hooks.get(i)) >= 0) {
                continue;
            }
            Worker w = each.worker();
            Point at = model.position(hooks.get(i));
            double taut = w.connection().tautLength(Math.max(0, at.z() - w.harnessElevation()));
            List<MotionSetup.Person> person = List.of(new MotionSetup.Person(
                    w.mass(),
                    w.connection().curve(conditions.side, c.temperature()),
                    taut,
                    MotionSetup.Timing.hanging()));
            if (atSupport) {
                setup.attachToSupport(model.line().supportOf(each.place()), person);
            } else {
                setup.attach(each.place().span() - 1, at, w.attachment() == Attachment.GRIPPED, person);
            }
            c.add(w, at, taut);
        }
    }

    /** Attaches those of a fall; complains at a path if they are not caught before the run ends. */
    private void attach(TransientCase c, MotionSetup setup, Timed each, String path, Violations v) {
        Fall fall = each.fall;
        boolean first = each.first;
        LineModel model = c.model();
        Place place = fall.place();
        boolean gripped = fall.fallers().get(0).attachment() == Attachment.GRIPPED;
        Point at = pointOf(model, place, gripped);
        EnergyBalance.checkReach(model.line(), fall, at);
        List<MotionSetup.Person> people = new ArrayList<>();
        for (Worker w : fall.fallers()) {
            double above = at.z() - w.harnessElevation();
            double taut = Math.max(w.connection().tautLength(above), above);
            double free = fall.freeFall().orElseGet(() -> w.connection().freeFall(above));
            double begins = each.time + (first ? conditions.delays.getOrDefault(w.id(), 0.0) : 0);
            people.add(new MotionSetup.Person(
                    w.mass(),
                    w.connection().curve(conditions.side, c.temperature()),
                    taut,
                    new MotionSetup.Timing(begins, free, first)));
            if (first) {
                c.addFirst(w, at, taut, free);
            } else {
                c.add(w, at, taut);
            }
            double caught = begins + Math.sqrt(2 * free / model.line().gravity());
            double end = numerics.course().sampling().duration();
            if (!(caught < end)) {
                String rule = first
                        ? "longer than the free fall, " + caught + " s"
                        : "early enough for " + w.id() + ", who is caught at " + caught
                                + " s, to be caught before the run ends at " + end + " s";
                v.add(Violation.of(
                                path, GivenValue.number(first ? end : each.time, "s"), InputRule.TIME_TOO_SHORT, rule)
                        .allowing(first ? AllowedRange.above(caught) : AllowedRange.atMost(end - caught + each.time)));
            }
        }
        if (place.isAtSupport()) {
            setup.attachToSupport(model.line().supportOf(place), people);
        } else {
            setup.attach(place.span() - 1, at, gripped || held, people);
        }
    }

    /** The point that a connection pulls on before the fall. */
    private static Point pointOf(LineModel model, Place place, boolean gripped) {
        if (place.isAtSupport()) {
            return model.support(model.line().supportOf(place));
        }
        int span = place.span() - 1;
        return gripped
                ? model.materialPoint(model.hook(span, place.station(), true))
                : model.pointAtStation(span, place.station());
    }

    /**
     * The same without throwing: for tables and searches, in which one bad case must not end the others.
     *
     * @param line the line
     * @param fall the first fall
     * @return the result, or what was wrong with the input, or how far the analysis came
     * @throws java.util.concurrent.CancellationException if the thread is interrupted, whose flag stays set, or the listener
     *     ended the work
     */
    public Outcome<TransientResult> attempt(Lifeline line, Fall fall) {
        return Outcome.of(() -> solve(line, fall));
    }

    @Override
    public CanonicalForm canonicalForm() {
        CanonicalForm.Builder b = CanonicalForm.builder("arrest in time")
                .number("temperature", conditions.temperature, "°C")
                .text("side", conditions.side.name())
                .part("clearance", conditions.clearance)
                .number("accuracy", numerics.accuracy(), "")
                .number("refinements", numerics.refinements(), "")
                .number("segmentLength", numerics.segment(), "m")
                .number("duration", numerics.course().sampling().duration(), "s")
                .number("sampling", numerics.course().sampling().interval(), "s")
                .number("endAfterFirstCatch", numerics.course().afterCatch(), "s")
                .text("attachmentHeld", held);
        new TreeMap<>(conditions.delays)
                .forEach((id, delay) -> b.number(CanonicalForm.Builder.element("delay", id), delay, "s"));
        for (int i = 0; i < later.size(); i++) {
            String path = CanonicalForm.Builder.element("laterFall", i);
            b.part(path + ".fall", later.get(i).fall).number(path + ".time", later.get(i).time, "s");
        }
        return b.build();
    }
}
