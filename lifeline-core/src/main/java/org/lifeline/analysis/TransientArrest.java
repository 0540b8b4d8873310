package org.lifeline.analysis;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.lifeline.base.Convergence;
import org.lifeline.base.NoEquilibriumException;
import org.lifeline.base.Point;
import org.lifeline.base.Violation;
import org.lifeline.base.Violations;
import org.lifeline.internal.motion.MeshRefinement;
import org.lifeline.internal.motion.Motion;
import org.lifeline.internal.motion.MotionSetup;
import org.lifeline.internal.path.LineModel;
import org.lifeline.model.Attachment;
import org.lifeline.model.ClearanceRules;
import org.lifeline.model.DeploymentForce;
import org.lifeline.model.Fall;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Place;
import org.lifeline.model.Worker;

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
 */
public final class TransientArrest {
    /**
     * Damping time τ of a cable that states none [s]: no source. It makes 0.6 % of critical damping at 10 Hz and 6 % at
     * 100 Hz; the theory page shows how little the peaks depend on it.
     */
    public static final double DAMPING_TIME = 2e-4;

    /** Drift of the energies, as a share of the energy of the fall, beyond which a motion is lost [-]. */
    private static final double LOST = 0.1;

    private final double temperature;
    private final DeploymentForce side;
    private final ClearanceRules clearance;
    private final Numerics numerics;
    private final List<Later> later;

    /** A fall that begins after the first. */
    private record Later(Fall fall, double time) {}

    /** How the motion is followed. */
    private record Numerics(double duration, double sampling, double accuracy, double segment, int refinements) {
        static final Numerics DEFAULT = new Numerics(3, 1e-3, 0.01, Double.NaN, 3);
    }

    private TransientArrest(
            double temperature, DeploymentForce side, ClearanceRules clearance, Numerics numerics, List<Later> later) {
        this.temperature = temperature;
        this.side = side;
        this.clearance = clearance;
        this.numerics = numerics;
        this.later = List.copyOf(later);
    }

    /**
     * At the temperature of installation, with the maximum deployment force and the clearance rules of common practice;
     * 3 s, sampled every millisecond, peaks to 1 %.
     *
     * @return the analysis
     */
    public static TransientArrest withDefaults() {
        return new TransientArrest(
                Double.NaN, DeploymentForce.MAXIMUM, ClearanceRules.commonPractice(), Numerics.DEFAULT, List.of());
    }

    /**
     * The same at a temperature.
     *
     * @param value temperature [°C]
     * @return the new analysis
     */
    public TransientArrest withTemperature(double value) {
        return new TransientArrest(value, side, clearance, numerics, later);
    }

    /**
     * The same on one side of the absorber's force range.
     *
     * @param value clearance side or maximum side
     * @return the new analysis
     */
    public TransientArrest withSide(DeploymentForce value) {
        return new TransientArrest(temperature, value, clearance, numerics, later);
    }

    /**
     * The same with other clearance rules.
     *
     * @param value harness stretch, margin, obstructions
     * @return the new analysis
     */
    public TransientArrest withClearance(ClearanceRules value) {
        return new TransientArrest(temperature, side, value, numerics, later);
    }

    private TransientArrest with(Numerics value) {
        return new TransientArrest(temperature, side, clearance, value, later);
    }

    /**
     * The same over another time.
     *
     * @param value time from the start of the fall [s], above zero
     * @return the new analysis
     * @throws org.lifeline.base.InvalidInputException if it is not above zero
     */
    public TransientArrest withDuration(double value) {
        new Violations().positive("duration", value, "s").throwIfAny();
        return with(new Numerics(value, numerics.sampling, numerics.accuracy, numerics.segment, numerics.refinements));
    }

    /**
     * The same with histories sampled at another interval. Peaks are taken at every step all the same.
     *
     * @param value time between two samples [s], above zero
     * @return the new analysis
     * @throws org.lifeline.base.InvalidInputException if it is not above zero
     */
    public TransientArrest withSampling(double value) {
        new Violations().positive("sampling", value, "s").throwIfAny();
        return with(new Numerics(numerics.duration, value, numerics.accuracy, numerics.segment, numerics.refinements));
    }

    /**
     * The same to another accuracy: halving mesh and step once more may change arrest force, tension and lowest point of
     * the first catch by no more than this.
     *
     * @param value relative change [-], above zero
     * @return the new analysis
     * @throws org.lifeline.base.InvalidInputException if it is not above zero
     */
    public TransientArrest withAccuracy(double value) {
        new Violations().positive("accuracy", value, "").throwIfAny();
        return with(new Numerics(numerics.duration, numerics.sampling, value, numerics.segment, numerics.refinements));
    }

    /**
     * The same starting from another mesh.
     *
     * @param value length that segments of the first mesh should have in the spans where somebody falls [m], above zero
     * @return the new analysis
     * @throws org.lifeline.base.InvalidInputException if it is not above zero
     */
    public TransientArrest withSegmentLength(double value) {
        new Violations().positive("segmentLength", value, "m").throwIfAny();
        return with(new Numerics(numerics.duration, numerics.sampling, numerics.accuracy, value, numerics.refinements));
    }

    /**
     * The same with another limit of refinement.
     *
     * @param most how often mesh and step may be halved, not negative; 0 for one mesh, whose error nobody knows
     * @return the new analysis
     * @throws org.lifeline.base.InvalidInputException if it is negative
     */
    public TransientArrest withRefinements(int most) {
        new Violations()
                .require(most >= 0, "refinements", Integer.toString(most), "must not be negative")
                .throwIfAny();
        return with(new Numerics(numerics.duration, numerics.sampling, numerics.accuracy, numerics.segment, most));
    }

    /**
     * The same with a fall that begins later: workers who stand on the line at first and load it with nothing.
     *
     * @param fall who falls where; those who hang on the line are named by the first fall
     * @param time when it begins, after the start of the first [s], not negative
     * @return the new analysis
     * @throws org.lifeline.base.InvalidInputException if the time is negative, or the fall names workers who hang
     */
    public TransientArrest withLaterFall(Fall fall, double time) {
        new Violations()
                .notNegative("laterFall.time", time, "s")
                .require(
                        fall.hanging().isEmpty(),
                        "laterFall.hanging",
                        fall.hanging().size() + " workers",
                        "must be named by the first fall")
                .throwIfAny();
        List<Later> list = new ArrayList<>(later);
        list.add(new Later(fall, time));
        return new TransientArrest(temperature, side, clearance, numerics, list);
    }

    /**
     * Follows one fall in time.
     *
     * @param line the line; its cable must have a mass
     * @param fall the fall
     * @return histories, peaks and the arrest
     * @throws org.lifeline.base.InvalidInputException if a place does not lie on the line, the line cannot hang as
     *     stated, the cable has no mass, a worker takes part twice, or the free fall outlasts the duration
     * @throws NoEquilibriumException if the line before the fall has no equilibrium, or the motion is lost: its energies do not add up
     */
    public TransientResult solve(Lifeline line, Fall fall) {
        check(line, fall);
        double t = Double.isNaN(temperature) ? line.installed().temperature() : temperature;
        LineModel model = new LineModel(line);
        model.bringTo(t);
        double tau = line.cable().dampingTime().orElse(DAMPING_TIME);
        MotionSetup setup = new MotionSetup(model, tau);
        TransientCase c = new TransientCase(fall, side, clearance, t);
        List<LineModel.Load> hooks = new ArrayList<>();
        for (Fall.Hanging each : fall.hanging()) {
            LineModel.Load hook = model.hook(
                    each.place().span() - 1,
                    each.place().station(),
                    each.worker().attachment() == Attachment.GRIPPED);
            model.hang(hook, each.worker().mass() * line.gravity());
            hooks.add(hook);
        }
        c.before(model, hooks);
        hang(c, setup, hooks);
        attach(c, setup, fall, 0);
        for (Later each : later) {
            attach(c, setup, each.fall, each.time);
        }
        MeshRefinement.Request request = new MeshRefinement.Request(
                numerics.accuracy,
                numerics.refinements,
                numerics.segment,
                new Motion.Sampling(numerics.duration, numerics.sampling));
        new Violations()
                .require(
                        c.soonestCatch(line.gravity()) < numerics.duration,
                        "duration",
                        Violations.show(numerics.duration, "s"),
                        "must be longer than the free fall, " + c.soonestCatch(line.gravity()) + " s")
                .throwIfAny();
        MeshRefinement motion = MeshRefinement.run(setup, request);
        return closed(
                c.result(motion, request, balance(line, fall, t)),
                motion.motion().counts().steps());
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
                    .withSide(side)
                    .withClearance(clearance)
                    .solve(line, fall);
        } catch (NoEquilibriumException e) {
            return null;
        }
    }

    private void check(Lifeline line, Fall fall) {
        EnergyBalance.checkPlaces(line, fall);
        Violations v = new Violations();
        refuseSupport(v, "fall", fall.place());
        for (int i = 0; i < fall.hanging().size(); i++) {
            refuseSupport(v, "fall.hanging[" + i + "]", fall.hanging().get(i).place());
        }
        for (int i = 0; i < later.size(); i++) {
            refuseSupport(v, "laterFalls[" + i + "]", later.get(i).fall.place());
        }
        v.positive("cable.massPerLength", line.cable().massPerLength(line.gravity()), "kg/m");
        List<String> seen = new ArrayList<>();
        fall.fallers().forEach(w -> seen.add(w.id()));
        fall.hanging().forEach(h -> seen.add(h.worker().id()));
        for (int i = 0; i < later.size(); i++) {
            String path = "laterFalls[" + i + "]";
            for (Violation each : line.check(later.get(i).fall.place())) {
                v.add(each.below(path));
            }
            for (Worker w : later.get(i).fall.fallers()) {
                v.require(!seen.contains(w.id()), path + ".fallers", w.id(), "must take part only once");
                seen.add(w.id());
            }
        }
        v.throwIfAny();
    }

    private static void refuseSupport(Violations v, String path, Place place) {
        place.support().ifPresent(id -> v.add(path + ".support", id, "must be a station of a span in an arrest in time"));
    }

    private void hang(TransientCase c, MotionSetup setup, List<LineModel.Load> hooks) {
        LineModel model = c.model();
        List<Fall.Hanging> hanging = c.fall().hanging();
        for (int i = 0; i < hooks.size(); i++) {
            Fall.Hanging each = hanging.get(i);
            if (model.restsOn(hooks.get(i)) >= 0) {
                continue;
            }
            Worker w = each.worker();
            Point at = model.position(hooks.get(i));
            double taut = w.connection().tautLength(Math.max(0, at.z() - w.harnessElevation()));
            MotionSetup.Person person =
                    new MotionSetup.Person(w.mass(), w.connection().curve(side), taut, MotionSetup.Timing.hanging());
            setup.attach(each.place().span() - 1, at, w.attachment() == Attachment.GRIPPED, List.of(person));
            c.add(w, at, taut, Double.NEGATIVE_INFINITY);
        }
    }

    private void attach(TransientCase c, MotionSetup setup, Fall fall, double time) {
        LineModel model = c.model();
        int span = fall.place().span() - 1;
        boolean gripped = fall.fallers().get(0).attachment() == Attachment.GRIPPED;
        Point at = gripped
                ? model.materialPoint(model.hook(span, fall.place().station(), true))
                : model.pointAtStation(span, fall.place().station());
        List<MotionSetup.Person> people = new ArrayList<>();
        for (Worker w : fall.fallers()) {
            double above = at.z() - w.harnessElevation();
            double taut = Math.max(w.connection().tautLength(above), above);
            double free = fall.freeFall().orElseGet(() -> w.connection().freeFall(above));
            people.add(new MotionSetup.Person(
                    w.mass(), w.connection().curve(side), taut, new MotionSetup.Timing(time, free)));
            c.add(w, at, taut, time);
            c.freeFall(time, free);
        }
        setup.attach(span, at, gripped, people);
    }
}
