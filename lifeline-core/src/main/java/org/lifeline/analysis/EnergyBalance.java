package org.lifeline.analysis;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import org.lifeline.analysis.clearance.Clearance;
import org.lifeline.analysis.clearance.ClearanceAccount;
import org.lifeline.analysis.clearance.ClearanceAccount.Levels;
import org.lifeline.analysis.state.AttachmentLimit;
import org.lifeline.analysis.state.EnergyAccount;
import org.lifeline.analysis.state.LoadPosition;
import org.lifeline.analysis.state.Outcome;
import org.lifeline.base.PlausibleRange;
import org.lifeline.base.Point;
import org.lifeline.base.Violations;
import org.lifeline.base.canonical.Canonical;
import org.lifeline.base.canonical.CanonicalForm;
import org.lifeline.internal.line.LineEnergy;
import org.lifeline.internal.path.LineModel;
import org.lifeline.internal.path.LoadPath;
import org.lifeline.model.Attachment;
import org.lifeline.model.ClearanceRules;
import org.lifeline.model.Fall;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Place;
import org.lifeline.model.Worker;
import org.lifeline.model.absorber.DeploymentForce;

/**
 * The arrest of a fall by energy balance.
 *
 * <p>Workers of mass M in all fall h, the connecting subsystems extend by x under the force F(x), the line goes down by δ
 * under P = F(x): M g (h + δ + x) = ∫P dδ + ∫F dx, with the static path δ(P) of the line. The root is the lowest point.
 * Several who fall together and are alike share one extension x. Several who are not have one extension each; their forces
 * and extensions are bounds on the safe side, see decision 33 and {@link ArrestResult#isBound()}.
 *
 * <p>Immutable and thread-safe. It keeps the line as it was before the last falls, so that falls at other places of the same
 * line cost less when one analysis, or those made from it at the same temperature, solve them all; no digit depends on that.
 *
 * @since 1.0.0
 */
public final class EnergyBalance implements Canonical {
    private final @Nullable Double temperature;
    private final DeploymentForce side;
    private final ClearanceRules clearance;
    private final AttachmentLimit limit;
    private final LinesBefore linesBefore;

    private EnergyBalance(@Nullable Double temperature, EnergyBalance other) {
        this(temperature, other.side, other.clearance, other.limit, new LinesBefore());
    }

    private EnergyBalance(
            @Nullable Double temperature,
            DeploymentForce side,
            ClearanceRules clearance,
            AttachmentLimit limit,
            LinesBefore linesBefore) {
        this.temperature = temperature;
        this.side = side;
        this.clearance = clearance;
        this.limit = limit;
        this.linesBefore = linesBefore;
    }

    /** A line before the fall, with those who hang; the model is only copied from. */
    private record LineBefore(Lifeline line, List<Fall.Hanging> hanging, LineModel model, LineEquilibrium state) {}

    /** The last lines before a fall at one temperature. Thread-safe: what two threads find at once may be found twice. */
    private static final class LinesBefore {
        /** How many are kept: falls differ in who hangs, and two limits of an attachment come in turn. */
        private static final int KEPT = 4;

        private volatile List<LineBefore> recent = List.of();

        /** What is kept of a line, which has to be the same object: to compare two lines part by part costs what it spares. */
        @SuppressWarnings("ReferenceEquality")
        @Nullable
        LineBefore find(Lifeline line, List<Fall.Hanging> hanging) {
            for (LineBefore each : recent) {
                if (each.line == line && each.hanging.equals(hanging)) {
                    return each;
                }
            }
            return null;
        }

        void keep(LineBefore found) {
            List<LineBefore> list = new ArrayList<>(KEPT);
            list.add(found);
            List<LineBefore> old = recent;
            list.addAll(old.subList(0, Math.min(KEPT - 1, old.size())));
            recent = List.copyOf(list);
        }
    }

    /**
     * At the temperature of installation, with the maximum deployment force and the clearance rules of common practice.
     *
     * @return the analysis
     */
    public static EnergyBalance withDefaults() {
        return new EnergyBalance(
                null,
                DeploymentForce.MAXIMUM,
                ClearanceRules.commonPractice(),
                AttachmentLimit.RUNNING,
                new LinesBefore());
    }

    /**
     * The same at the temperature at which the line was installed.
     *
     * @return the new analysis
     */
    public EnergyBalance atInstalledTemperature() {
        return new EnergyBalance(null, this);
    }

    /**
     * The same at a temperature.
     *
     * @param value temperature [°C], above absolute zero and below 1000
     * @return the new analysis
     * @throws org.lifeline.base.InvalidInputException if it lies outside
     */
    public EnergyBalance withTemperature(double value) {
        return new EnergyBalance(PlausibleRange.TEMPERATURE.required("temperature", value), this);
    }

    /**
     * The same on one side of the absorber's force range.
     *
     * @param value clearance side or maximum side
     * @return the new analysis
     */
    public EnergyBalance withSide(DeploymentForce value) {
        return new EnergyBalance(temperature, Violations.required("side", value), clearance, limit, linesBefore);
    }

    /**
     * The same with other clearance rules.
     *
     * @param value harness stretch, margin, obstructions
     * @return the new analysis
     */
    public EnergyBalance withClearance(ClearanceRules value) {
        return new EnergyBalance(temperature, side, Violations.required("clearance", value), limit, linesBefore);
    }

    /**
     * The same with a free-running attachment at one of its limits; it runs unless set. Loads near a support need both,
     * see {@link #solveLimits}.
     *
     * @param value running or held
     * @return the new analysis
     */
    public EnergyBalance withAttachmentLimit(AttachmentLimit value) {
        return new EnergyBalance(
                temperature, side, clearance, Violations.required("attachmentLimit", value), linesBefore);
    }

    /**
     * Solves one fall at both limits of its attachment.
     *
     * @param line the line
     * @param fall the fall
     * @return both arrests; the same one twice where the attachment grips the cable or pulls on a support
     * @throws org.lifeline.base.InvalidInputException as for {@link #solve}
     * @throws org.lifeline.base.NoEquilibriumException if no equilibrium was found
     * @throws java.util.concurrent.CancellationException if the thread is interrupted; its interrupt flag stays set
     */
    public AttachmentLimits solveLimits(Lifeline line, Fall fall) {
        Violations.required("line", line);
        Violations.required("fall", fall);
        ArrestResult running = withAttachmentLimit(AttachmentLimit.RUNNING).solve(line, fall);
        return new AttachmentLimits(
                running,
                running.attachmentLimit().isEmpty()
                        ? running
                        : withAttachmentLimit(AttachmentLimit.HELD).solve(line, fall));
    }

    /**
     * Solves one fall.
     *
     * @param line the line
     * @param fall the fall
     * @return the arrest
     * @throws org.lifeline.base.InvalidInputException if a place does not lie on the line, the line cannot hang as
     *     stated, or a worker cannot reach it
     * @throws org.lifeline.base.NoEquilibriumException if no equilibrium was found
     * @throws java.util.concurrent.CancellationException if the thread is interrupted; its interrupt flag stays set
     */
    public ArrestResult solve(Lifeline line, Fall fall) {
        Violations.required("line", line);
        Violations.required("fall", fall);
        checkPlaces(line, fall);
        Start start = start(line, fall);
        checkReach(line, fall, start.point());
        Fallers fallers = new Fallers(
                fall,
                new Fallers.Sided(side, start.before().temperature()),
                line.gravity(),
                start.point().z());
        LoadPath path = start.path(fallers);
        Fallers.LowestPoint found;
        if (fallers.areAlike()) {
            found = fallers.together(path);
        } else {
            found = fallers.bound(() -> start(line, fall).path(fallers));
            path.advance(found.force(), p -> Double.POSITIVE_INFINITY, 0);
        }
        LineModel model = start.model();
        LineEnergy energyBefore = path.energyBefore();
        LineEnergy energyAtPeak = model.energy();

        Place place = fall.place();
        double p = path.force();
        List<LineEquilibrium.Hung> hung = new ArrayList<>(start.hung());
        hung.add(new LineEquilibrium.Hung(start.load(), Statics.spanOnCable(place), p));
        LineEquilibrium peak = LineEquilibrium.of(model, start.before().temperature(), hung);
        Point end = peak.loads().get(start.hung().size()).point();
        EnergyAccount account = new EnergyAccount(
                fallers.energy(path.descent(), found),
                energyAtPeak.strain() + energyAtPeak.weight() - energyBefore.strain() - energyBefore.weight(),
                lifted(start.before(), peak, start.hung().size()),
                fallers.connection(found),
                path.frictionHeat(),
                energyAtPeak.inlineAbsorbers() - energyBefore.inlineAbsorbers(),
                energyAtPeak.springs() - energyBefore.springs());
        double held = energyAtPeak.strain() + Math.abs(energyAtPeak.weight()) + Math.abs(energyAtPeak.springs());
        double open = found.isBound() ? Math.max(0, account.residual()) : Math.abs(account.residual());
        if (!(open <= Tolerances.CLOSURE * account.fall() + Tolerances.ROUNDING * (held + Tolerances.LEAST_ENERGY))) {
            throw path.failure(
                    "the energy account of the fall does not close: " + account.residual() + " J are left over");
        }
        Worker hardest = fall.fallers().get(found.forces().indexOf(found.largestForce()));
        Levels levels = new Levels(start.point().z(), end.z(), OptionalDouble.empty(), place.isAtSupport());
        WorkerClearance needed = account(line, fall, found.extensions(), levels, end);
        return new ArrestResultBuilder(
                        new ArrestResult.Conditions(fall, side, Method.ENERGY_BALANCE, attachmentLimit(fall)))
                .before(start.before())
                .peak(peak)
                .attachmentBefore(start.point())
                .attachmentAtPeak(end)
                .freeFall(fallers.longestFreeFall())
                .deployments(found.extensions())
                .arrestForce(found.largestForce())
                .lineLoad(p)
                .bottomedOut(fallers.bottomedOut(found))
                .bound(found.isBound())
                .energy(account)
                .pathWork(path.pathWork())
                .clearance(needed.account())
                .clearanceWorker(needed.worker())
                .hardestArrested(hardest)
                .harnessStretch(clearance.harnessStretch())
                .build();
    }

    private Optional<AttachmentLimit> attachmentLimit(Fall fall) {
        return fall.canRun() ? Optional.of(limit) : Optional.empty();
    }

    /** The line before the fall, with those who hang, and the load that is to grow. */
    private record Start(
            LineModel model,
            LineEquilibrium before,
            List<LineEquilibrium.Hung> hung,
            LineModel.Load load,
            Point point) {
        LoadPath path(Fallers fallers) {
            return new LoadPath(model, load, point.z(), fallers.energyScale());
        }
    }

    private LineBefore before(Lifeline line, List<Fall.Hanging> hanging) {
        LineBefore known = linesBefore.find(line, hanging);
        if (known != null) {
            return known;
        }
        double t = temperature == null ? line.installed().temperature() : temperature;
        LineModel model = new LineModel(line);
        model.bringTo(t);
        hang(model, hanging);
        LineBefore found = new LineBefore(line, hanging, model, LineEquilibrium.of(model, t, hanging(model, hanging)));
        linesBefore.keep(found);
        return found;
    }

    private Start start(Lifeline line, Fall fall) {
        LineBefore lineBefore = before(line, fall.hanging());
        LineModel model = lineBefore.model.copy();
        List<LineEquilibrium.Hung> hung = hanging(model, fall.hanging());
        Place place = fall.place();
        Attachment attachment = attachmentLimit(fall).equals(Optional.of(AttachmentLimit.HELD))
                ? Attachment.GRIPPED
                : fall.fallers().get(0).attachment();
        LineModel.Load load = Statics.hook(model, place, attachment);
        Point point = place.isAtSupport() || attachment == Attachment.GRIPPED
                ? model.materialPoint(load)
                : model.pointAtStation(place.span() - 1, place.station());
        return new Start(model, lineBefore.state, hung, load, point);
    }

    /** Potential energy by which those who hang were lifted [J]. */
    private static double lifted(LineEquilibrium before, LineEquilibrium peak, int hanging) {
        double lifted = 0;
        for (int i = 0; i < hanging; i++) {
            LoadPosition now = peak.loads().get(i);
            lifted += now.force()
                    * (now.point().z() - before.loads().get(i).point().z());
        }
        return lifted;
    }

    /** Checks that those who fall reach the line where they are hooked on. */
    static void checkReach(Lifeline line, Fall fall, Point attachment) {
        Violations v = new Violations();
        fall.checkReach(line, attachment.z()).forEach(v::add);
        v.throwIfAny();
    }

    /** Lets workers hang on a line, one after the other. */
    static void hang(LineModel model, List<Fall.Hanging> hanging) {
        for (Fall.Hanging each : hanging) {
            LineModel.Load hook =
                    Statics.hook(model, each.place(), each.worker().attachment());
            model.hang(hook, each.worker().mass() * model.line().gravity());
        }
    }

    /** The workers who hang on the line before the fall; the loads of the model are theirs, in their order. */
    static List<LineEquilibrium.Hung> hanging(LineModel model, List<Fall.Hanging> hanging) {
        List<LineModel.Load> hooks = model.loads();
        List<LineEquilibrium.Hung> list = new ArrayList<>(hooks.size() + 1);
        for (int i = 0; i < hooks.size(); i++) {
            Fall.Hanging each = hanging.get(i);
            double force = each.worker().mass() * model.line().gravity();
            list.add(new LineEquilibrium.Hung(hooks.get(i), Statics.spanOnCable(each.place()), force));
        }
        return list;
    }

    static void checkPlaces(Lifeline line, Fall fall) {
        Violations v = new Violations();
        v.addAll(line.check(fall.place()), "fall.at");
        for (int i = 0; i < fall.hanging().size(); i++) {
            v.addAll(line.check(fall.hanging().get(i).place()), "fall.hanging[" + i + "].place");
        }
        v.throwIfAny();
    }

    /** The worker who needs the most clearance, with the account. */
    private record WorkerClearance(Worker worker, Clearance account) {}

    private WorkerClearance account(Lifeline line, Fall fall, List<Double> x, Levels levels, Point atPeak) {
        Point first = line.supports().get(line.spanOf(fall.place()) - 1).position();
        double along = line.along(fall.place()) - line.stationOf(fall.place()) + first.horizontalDistance(atPeak);
        OptionalDouble below = ClearanceAccount.highest(clearance, line, fall, along);
        WorkerClearance worst = null;
        for (int i = 0; i < fall.fallers().size(); i++) {
            Worker each = fall.fallers().get(i);
            double above = levels.lineBefore() - each.harnessElevation();
            // A subsystem that is shorter than the distance it spans is taken as reaching: no free fall, no slack.
            double taut = Math.max(each.connection().tautLength(above), above);
            Clearance c =
                    ClearanceAccount.draw(clearance, each, levels, new ClearanceAccount.Reach(taut, x.get(i)), below);
            if (worst == null || c.requiredElevation() < worst.account().requiredElevation()) {
                worst = new WorkerClearance(each, c);
            }
        }
        if (worst == null) {
            throw new IllegalStateException("unreachable: a fall has at least one faller");
        }
        return worst;
    }

    /**
     * The same without throwing: for tables and searches, in which one bad case must not end the others.
     *
     * @param line the line
     * @param fall the fall
     * @return the result, or what was wrong with the input, or how far the analysis came
     */
    public Outcome<ArrestResult> attempt(Lifeline line, Fall fall) {
        return Outcome.of(() -> solve(line, fall));
    }

    @Override
    public CanonicalForm canonicalForm() {
        CanonicalForm.Builder b = CanonicalForm.builder("energy balance");
        if (temperature != null) {
            b.number("temperature", temperature, "°C");
        }
        return b.text("side", side.name())
                .part("clearance", clearance)
                .text("attachmentLimit", limit.name())
                .build();
    }
}
