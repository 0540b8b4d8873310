package org.lifeline.analysis;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import org.lifeline.analysis.clearance.Clearance;
import org.lifeline.analysis.clearance.ClearanceAccount;
import org.lifeline.analysis.clearance.ClearanceAccount.Levels;
import org.lifeline.base.Point;
import org.lifeline.base.Violation;
import org.lifeline.base.Violations;
import org.lifeline.internal.line.LineEnergy;
import org.lifeline.internal.path.LineModel;
import org.lifeline.internal.path.LoadPath;
import org.lifeline.model.Attachment;
import org.lifeline.model.ClearanceRules;
import org.lifeline.model.DeploymentForce;
import org.lifeline.model.Fall;
import org.lifeline.model.Lifeline;
import org.lifeline.model.LoadingCurve;
import org.lifeline.model.Place;
import org.lifeline.model.PlausibleRange;
import org.lifeline.model.Worker;

/**
 * The arrest of a fall by energy balance.
 *
 * <p>Workers of mass M in all fall h, the connecting subsystems extend by x under the force F(x), the line goes down by δ
 * under P = F(x): M g (h + δ + x) = ∫P dδ + ∫F dx, with the static path δ(P) of the line. The root is the lowest point.
 * Several who fall together share one extension x; each keeps their own free fall.
 *
 * <p>Immutable and thread-safe.
 */
public final class EnergyBalance {
    private final @Nullable Double temperature;
    private final DeploymentForce side;
    private final ClearanceRules clearance;

    private EnergyBalance(@Nullable Double temperature, DeploymentForce side, ClearanceRules clearance) {
        this.temperature = temperature;
        this.side = side;
        this.clearance = clearance;
    }

    /**
     * At the temperature of installation, with the maximum deployment force and the clearance rules of common practice.
     *
     * @return the analysis
     */
    public static EnergyBalance withDefaults() {
        return new EnergyBalance(null, DeploymentForce.MAXIMUM, ClearanceRules.commonPractice());
    }

    /**
     * The same at the temperature at which the line was installed.
     *
     * @return the new analysis
     */
    public EnergyBalance atInstalledTemperature() {
        return new EnergyBalance(null, side, clearance);
    }

    /**
     * The same at a temperature.
     *
     * @param value temperature [°C], above absolute zero and below 1000
     * @return the new analysis
     * @throws org.lifeline.base.InvalidInputException if it lies outside
     */
    public EnergyBalance withTemperature(double value) {
        return new EnergyBalance(PlausibleRange.TEMPERATURE.required("temperature", value), side, clearance);
    }

    /**
     * The same on one side of the absorber's force range.
     *
     * @param value clearance side or maximum side
     * @return the new analysis
     */
    public EnergyBalance withSide(DeploymentForce value) {
        return new EnergyBalance(temperature, Violations.required("side", value), clearance);
    }

    /**
     * The same with other clearance rules.
     *
     * @param value harness stretch, margin, obstructions
     * @return the new analysis
     */
    public EnergyBalance withClearance(ClearanceRules value) {
        return new EnergyBalance(temperature, side, Violations.required("clearance", value));
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
     */
    public ArrestResult solve(Lifeline line, Fall fall) {
        checkPlaces(line, fall);
        double t = temperature == null ? line.installed().temperature() : temperature;
        LineModel model = new LineModel(line);
        model.bringTo(t);
        double g = line.gravity();
        List<LineModel.Load> hooks = new ArrayList<>();
        for (Fall.Hanging each : fall.hanging()) {
            LineModel.Load hook =
                    Statics.hook(model, each.place(), each.worker().attachment());
            model.hang(hook, each.worker().mass() * g);
            hooks.add(hook);
        }
        List<LineEquilibrium.Hung> hung = hanging(model, fall, hooks);
        LineEquilibrium before = LineEquilibrium.of(model, t, hung);
        Place place = fall.place();
        Attachment attachment = fall.fallers().get(0).attachment();
        LineModel.Load load = Statics.hook(model, place, attachment);
        Point start = place.isAtSupport() || attachment == Attachment.GRIPPED
                ? model.materialPoint(load)
                : model.pointAtStation(place.span() - 1, place.station());
        checkReach(line, fall, start);
        Balance balance = new Balance(fall, side, g, start.z());
        double scale = balance.mass * g * (balance.meanFreeFall + 1);
        LoadPath path = new LoadPath(model, load, start.z(), scale);
        LineEnergy energyBefore = path.energyBefore();
        double x = balance.solve(path);
        LineEnergy energyAtPeak = model.energy();

        double p = path.force();
        hung.add(new LineEquilibrium.Hung(load, Statics.spanOnCable(place), p));
        LineEquilibrium peak = LineEquilibrium.of(model, t, hung);
        Point end = peak.loads().get(hooks.size()).point();
        double lifted = 0;
        for (int i = 0; i < hooks.size(); i++) {
            LoadPosition now = peak.loads().get(i);
            lifted += now.force()
                    * (now.point().z() - before.loads().get(i).point().z());
        }
        EnergyAccount account = new EnergyAccount(
                balance.mass * g * (balance.meanFreeFall + path.descent() + x),
                energyAtPeak.strain() + energyAtPeak.weight() - energyBefore.strain() - energyBefore.weight(),
                lifted,
                balance.connection(x),
                path.frictionHeat(),
                energyAtPeak.inlineAbsorbers() - energyBefore.inlineAbsorbers(),
                energyAtPeak.springs() - energyBefore.springs());
        double held = energyAtPeak.strain() + Math.abs(energyAtPeak.weight()) + Math.abs(energyAtPeak.springs());
        if (!(Math.abs(account.residual())
                <= Tolerances.CLOSURE * account.fall() + Tolerances.ROUNDING * (held + Tolerances.LEAST_ENERGY))) {
            throw path.failure(
                    "the energy account of the fall does not close: " + account.residual() + " J are left over");
        }
        return new ArrestResult.Builder(new ArrestResult.Conditions(fall, side, Method.ENERGY_BALANCE))
                .before(before)
                .peak(peak)
                .attachmentBefore(start)
                .attachmentAtPeak(end)
                .freeFall(balance.longestFreeFall)
                .deployment(x)
                .arrestForce(balance.arrestForce(p, x))
                .lineLoad(p)
                .bottomedOut(balance.bottomedOut(p, x))
                .energy(account)
                .pathWork(path.pathWork())
                .clearance(account(
                        line,
                        fall,
                        x,
                        new Levels(start.z(), end.z(), OptionalDouble.empty(), place.isAtSupport()),
                        end))
                .harnessStretch(clearance.harnessStretch())
                .build();
    }

    /** Checks that those who fall reach the line where they are hooked on. */
    static void checkReach(Lifeline line, Fall fall, Point attachment) {
        Violations v = new Violations();
        fall.checkReach(line, attachment.z()).forEach(v::add);
        v.throwIfAny();
    }

    /** The workers who hang on the line before the fall. */
    static List<LineEquilibrium.Hung> hanging(LineModel model, Fall fall, List<LineModel.Load> hooks) {
        List<LineEquilibrium.Hung> list = new ArrayList<>(hooks.size() + 1);
        for (int i = 0; i < hooks.size(); i++) {
            Fall.Hanging each = fall.hanging().get(i);
            double force = each.worker().mass() * model.line().gravity();
            list.add(new LineEquilibrium.Hung(hooks.get(i), Statics.spanOnCable(each.place()), force));
        }
        return list;
    }

    static void checkPlaces(Lifeline line, Fall fall) {
        Violations v = new Violations();
        for (Violation each : line.check(fall.place())) {
            v.add(each.below("fall"));
        }
        for (int i = 0; i < fall.hanging().size(); i++) {
            for (Violation each : line.check(fall.hanging().get(i).place())) {
                v.add(each.below("fall.hanging[" + i + "]"));
            }
        }
        v.throwIfAny();
    }

    private Clearance account(Lifeline line, Fall fall, double x, Levels levels, Point atPeak) {
        Point first = line.supports().get(line.spanOf(fall.place()) - 1).position();
        double along = line.along(fall.place()) - line.stationOf(fall.place()) + first.horizontalDistance(atPeak);
        OptionalDouble below = ClearanceAccount.highest(clearance, line, fall, along);
        Clearance worst = null;
        for (Worker each : fall.fallers()) {
            double above = levels.lineBefore() - each.harnessElevation();
            // A subsystem that is shorter than the distance it spans is taken as reaching: no free fall, no slack.
            double taut = Math.max(each.connection().tautLength(above), above);
            Clearance c = ClearanceAccount.draw(clearance, each, levels, new ClearanceAccount.Reach(taut, x), below);
            if (worst == null || c.requiredElevation() < worst.requiredElevation()) {
                worst = c;
            }
        }
        if (worst == null) {
            throw new IllegalStateException("unreachable: a fall has at least one faller");
        }
        return worst;
    }

    /** The energy balance of one fall: one unknown, the extension. */
    private static final class Balance {
        private final List<LoadingCurve> curves = new ArrayList<>();
        private final LoadingCurve curve;
        private final Fall fall;
        private final double g;
        private final double mass;
        private double meanFreeFall;
        private double longestFreeFall;

        Balance(Fall fall, DeploymentForce side, double g, double lineElevation) {
            this.fall = fall;
            this.g = g;
            this.mass = fall.fallingMass();
            for (Worker each : fall.fallers()) {
                curves.add(each.connection().curve(side));
                double h = fall.freeFall()
                        .orElseGet(() -> each.connection().freeFall(lineElevation - each.harnessElevation()));
                longestFreeFall = Math.max(longestFreeFall, h);
                meanFreeFall += h * each.mass() / mass;
            }
            this.curve = LoadingCurve.parallel(curves);
        }

        /** Energy set free less energy taken, at a point of the path and an extension [J]. */
        private double gap(LoadPath path, double x) {
            return mass * g * (meanFreeFall + path.descent() + x) - path.work() - curve.work(x);
        }

        /** Follows the path to the lowest point; the extension there [m]. */
        double solve(LoadPath path) {
            double weight = mass * g;
            double x = 0;
            for (LoadingCurve.Corner corner : curve.corners()) {
                if (corner.force() > path.force() * (1 + Tolerances.FLAT)) {
                    if (path.advance(corner.force(), new Shortfall(false), weight)) {
                        return closed(path, curve.nearExtension(path.peakForce()));
                    }
                    x = curve.nearExtension(path.peakForce());
                }
                if (corner.extension() > x) {
                    // A plateau: the line stands still while the subsystem extends.
                    double spare = gap(path, x);
                    double force = path.force();
                    if (force > weight && spare <= (force - weight) * (corner.extension() - x)) {
                        return x + Math.max(0, spare) / (force - weight);
                    }
                    x = corner.extension();
                }
            }
            double target = Math.max(4 * weight, 2 * path.force());
            while (true) {
                if (path.advance(target, new Shortfall(true), weight)) {
                    return closed(path, curve.farExtension(path.peakForce()));
                }
                target *= 2;
                if (target > Tolerances.LARGEST_FORCE) {
                    throw path.failure(
                            "the fall is not arrested by any force up to " + Tolerances.LARGEST_FORCE + " N" + rigid());
                }
            }
        }

        private String rigid() {
            return fall.place().isAtSupport() && Double.isInfinite(curve.stopStiffness())
                    ? ": behind its last corner the connection is rigid, and the support does not yield; state the stiffness"
                            + " of the stop"
                    : "";
        }

        /**
         * The extension that closes the balance at the force found. On a piece that rises hardly at all the force says
         * little about the extension; there this is the better of the two, and elsewhere it changes nothing.
         */
        private double closed(LoadPath path, double x) {
            double force = path.peakForce();
            if (x == 0 && force < curve.rigidForce()) {
                return x; // nothing deploys below a rigid start
            }
            double change = gap(path, x) / (force - mass * g);
            int piece = curve.piece(x);
            boolean onPiece = Math.abs(curve.forceOnPiece(piece, x) - force) <= Tolerances.ON_PIECE * force;
            boolean flat = Math.abs(change) * curve.slopeOfPiece(piece) <= Tolerances.FLAT * force;
            return onPiece && flat ? Math.max(0, x + change) : x;
        }

        /** The gap along the path, with the extension that goes with the force. */
        private final class Shortfall implements LoadPath.EndCondition {
            private final boolean far;

            Shortfall(boolean far) {
                this.far = far;
            }

            private double extension(double force) {
                return far ? curve.farExtension(force) : curve.nearExtension(force);
            }

            @Override
            public double at(LoadPath path) {
                return gap(path, extension(path.peakForce()));
            }

            @Override
            public double slope(double force, double descentRate) {
                double stiffness =
                        force > curve.rigidForce() ? curve.slope(extension(force)) : Double.POSITIVE_INFINITY;
                double extensionRate = stiffness > 0 ? 1 / stiffness : 0;
                return (mass * g - force) * (descentRate + extensionRate);
            }
        }

        double connection(double x) {
            return curve.work(x);
        }

        /** Share of the line load that one worker carries; the largest of them [N]. */
        double arrestForce(double p, double x) {
            if (fall.fallers().size() == 1) {
                return p;
            }
            double sum = 0;
            double most = 0;
            for (LoadingCurve each : curves) {
                double f = Math.max(each.force(x), x <= 0 ? each.rigidForce() : 0);
                sum += f;
                most = Math.max(most, f);
            }
            return sum > 0 && Double.isFinite(sum) ? p * most / sum : p / curves.size();
        }

        boolean bottomedOut(double p, double x) {
            for (int i = 0; i < curves.size(); i++) {
                double most = fall.fallers().get(i).connection().maximumExtension();
                double last = curves.get(i).lastForce();
                if (x > most || (x == most && arrestForce(p, x) > last * (1 + Tolerances.FLAT))) {
                    return true;
                }
            }
            return false;
        }
    }
}
