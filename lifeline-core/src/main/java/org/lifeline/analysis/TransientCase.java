package org.lifeline.analysis;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import org.lifeline.analysis.clearance.Clearance;
import org.lifeline.analysis.clearance.ClearanceAccount;
import org.lifeline.analysis.motion.EnergyHistory;
import org.lifeline.analysis.motion.MeshRun;
import org.lifeline.analysis.motion.MotionHistory;
import org.lifeline.analysis.motion.MotionPeaks;
import org.lifeline.analysis.motion.MotionSummary;
import org.lifeline.analysis.motion.Peak;
import org.lifeline.analysis.motion.SupportHistory;
import org.lifeline.analysis.motion.SupportPeaks;
import org.lifeline.analysis.motion.WorkerHistory;
import org.lifeline.analysis.motion.WorkerPeaks;
import org.lifeline.base.Convergence;
import org.lifeline.base.Point;
import org.lifeline.base.Vector3;
import org.lifeline.internal.line.Piece;
import org.lifeline.internal.motion.MeshRefinement;
import org.lifeline.internal.motion.Motion;
import org.lifeline.internal.motion.MotionEnergy;
import org.lifeline.internal.motion.MotionState;
import org.lifeline.internal.motion.PeakValues;
import org.lifeline.internal.motion.TimeHistory;
import org.lifeline.internal.path.LineModel;
import org.lifeline.model.ClearanceRules;
import org.lifeline.model.DeploymentForce;
import org.lifeline.model.Fall;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Support;
import org.lifeline.model.Worker;

/** Gathers one fall in time, and puts its result together. Not thread-safe; made and used within one call. */
final class TransientCase {
    private static final double LEAST_TENSION = 1e-3;

    private final Fall fall;
    private final DeploymentForce side;
    private final ClearanceRules clearance;
    private final double temperature;
    private final List<Person> people = new ArrayList<>();
    private @Nullable LineModel model;
    private @Nullable LineEquilibrium before;
    private double longest;
    private double soonest = Double.POSITIVE_INFINITY;

    /** One who takes part, in the order of the motion's numbers. */
    private record Person(Worker worker, Point attachment, double taut, double start) {
        boolean falls() {
            return start == 0;
        }
    }

    TransientCase(Fall fall, DeploymentForce side, ClearanceRules clearance, double temperature) {
        this.fall = fall;
        this.side = side;
        this.clearance = clearance;
        this.temperature = temperature;
    }

    /** Takes the line as it is now for the state before the fall. */
    void before(LineModel line, List<LineModel.Load> hooks) {
        model = line;
        before = LineEquilibrium.of(line, temperature, EnergyBalance.hanging(line, fall, hooks));
    }

    Fall fall() {
        return fall;
    }

    LineModel model() {
        LineModel m = model;
        if (m == null) {
            throw new IllegalStateException("unreachable: the line comes first");
        }
        return m;
    }

    private LineEquilibrium before() {
        LineEquilibrium b = before;
        if (b == null) {
            throw new IllegalStateException("unreachable: the line comes first");
        }
        return b;
    }

    void add(Worker worker, Point attachment, double taut, double start) {
        people.add(new Person(worker, attachment, taut, start));
    }

    void freeFall(double start, double height) {
        if (start == 0) {
            longest = Math.max(longest, height);
            soonest = Math.min(soonest, height);
        }
    }

    /** When the first subsystem is taut [s]. */
    double soonestCatch(double gravity) {
        return Math.sqrt(2 * soonest / gravity);
    }

    TransientResult result(MeshRefinement refined, MeshRefinement.Request request, @Nullable ArrestResult balance) {
        Motion motion = refined.motion();
        return new TransientResult(new TransientResult.Numbers(
                arrest(refined, request),
                history(motion.history()),
                peaks(motion.firstCatch()),
                peaks(motion.whole()),
                meshes(refined),
                request.accuracy(),
                motion.energyDrift(),
                motion.firstCatchOver(),
                motion.dampingTime(),
                motion.stepLength(),
                Optional.ofNullable(balance)));
    }

    private static List<MeshRun> meshes(MeshRefinement refined) {
        List<MeshRun> list = new ArrayList<>();
        for (MeshRefinement.Level each : refined.levels()) {
            list.add(new MeshRun(
                    new MeshRun.Mesh(each.segment(), each.nodes()),
                    each.steps(),
                    new MeshRun.Peaks(
                            each.peaks().force(),
                            each.peaks().tension(),
                            each.peaks().lowest()),
                    each.spread()));
        }
        return list;
    }

    private MotionHistory history(TimeHistory record) {
        List<WorkerHistory> workers = new ArrayList<>();
        for (int k = 0; k < people.size(); k++) {
            Map<WorkerHistory.Quantity, double[]> values = new EnumMap<>(WorkerHistory.Quantity.class);
            int number = 0;
            for (WorkerHistory.Quantity each : WorkerHistory.Quantity.values()) {
                values.put(each, record.body(k, number++));
            }
            workers.add(new WorkerHistory(people.get(k).worker().id(), values));
        }
        List<SupportHistory> supports = new ArrayList<>();
        List<Support> given = model().line().supports();
        for (int i = 0; i < given.size(); i++) {
            Map<SupportHistory.Quantity, double[]> values = new EnumMap<>(SupportHistory.Quantity.class);
            int number = 0;
            for (SupportHistory.Quantity each : SupportHistory.Quantity.values()) {
                if (each != SupportHistory.Quantity.INLINE_EXTENSION) {
                    values.put(each, record.support(i, number++));
                }
            }
            if (i >= fall.place().span()) {
                double[] slip = values.getOrDefault(SupportHistory.Quantity.SLIP, new double[0]);
                for (int k = 0; k < slip.length; k++) {
                    slip[k] = 0.0 - slip[k];
                }
            }
            values.put(
                    SupportHistory.Quantity.INLINE_EXTENSION,
                    i == 0
                            ? record.inline(0)
                            : i == given.size() - 1 ? record.inline(1) : new double[record.samples()]);
            supports.add(new SupportHistory(given.get(i).id(), values));
        }
        Map<EnergyHistory.Part, double[]> energies = new EnumMap<>(EnergyHistory.Part.class);
        int energy = 0;
        for (EnergyHistory.Part part : EnergyHistory.Part.values()) {
            energies.put(part, record.energy(energy++));
        }
        return new MotionHistory(record.times(), workers, supports, new EnergyHistory(energies));
    }

    private MotionPeaks peaks(PeakValues log) {
        List<WorkerPeaks> workers = new ArrayList<>();
        for (int k = 0; k < people.size(); k++) {
            workers.add(new WorkerPeaks(
                    people.get(k).worker().id(),
                    new Peak(log.force[k], log.forceTime[k]),
                    new Peak(log.lowest[k], log.lowestTime[k]),
                    Math.max(0, log.extension[k])));
        }
        List<SupportPeaks> supports = new ArrayList<>();
        List<Support> given = model().line().supports();
        for (int i = 0; i < given.size(); i++) {
            supports.add(new SupportPeaks(
                    given.get(i).id(),
                    new Peak(log.support[i], log.supportTime[i]),
                    log.supportTension[2 * i],
                    log.supportTension[2 * i + 1]));
        }
        Point place = Point.of(log.tensionPlace[0], log.tensionPlace[1], log.tensionPlace[2]);
        return new MotionPeaks(new Peak(log.tension, log.tensionTime), place, workers, supports);
    }

    private ArrestResult arrest(MeshRefinement refined, MeshRefinement.Request request) {
        Motion motion = refined.motion();
        PeakValues log = motion.firstCatch();
        MotionState lowest = motion.lowest();
        int first = -1;
        int hardest = -1;
        double deployment = 0;
        double harnessFall = 0;
        boolean bottomed = false;
        for (int k = 0; k < people.size(); k++) {
            Person p = people.get(k);
            if (p.falls()) {
                first = first < 0 ? k : first;
                hardest = hardest < 0 || log.force[k] > log.force[hardest] ? k : hardest;
                deployment = Math.max(deployment, log.extension[k]);
                harnessFall = Math.max(harnessFall, motion.startElevation(k) - log.lowest[k]);
                bottomed |= log.extension[k] > p.worker().connection().maximumExtension();
            }
        }
        Point end = point(lowest, lowest.attachmentNode(first));
        List<MeshRun> meshes = meshes(refined);
        Convergence convergence = new Convergence(
                (int) Math.min(
                        Integer.MAX_VALUE,
                        meshes.stream().mapToLong(MeshRun::steps).sum()),
                refined.spread(),
                request.accuracy());
        LineEquilibrium peak = LineEquilibrium.moving(
                before(),
                new LineEquilibrium.Moving(spans(lowest), supports(log, lowest), loads(lowest, log)),
                new LineEquilibrium.Peaks(log.tension, log.inline[0], log.inline[1], convergence));
        EnergyAccount account = account(motion, lowest);
        MotionSummary summary = new MotionSummary(
                meshes.get(meshes.size() - 1),
                peaks(motion.whole()),
                motion.energyDrift() / account.fall(),
                harnessFall,
                motion.firstCatchOver());
        return new ArrestResult.Builder(new ArrestResult.Conditions(fall, side, Method.TRANSIENT))
                .before(before())
                .peak(peak)
                .attachmentBefore(people.get(first).attachment())
                .attachmentAtPeak(end)
                .freeFall(longest)
                .deployment(deployment)
                .arrestForce(log.force[hardest])
                .lineLoad(log.together)
                .bottomedOut(bottomed)
                .energy(account)
                .clearance(clearance(log, end))
                .harnessStretch(clearance.harnessStretch())
                .motion(summary)
                .build();
    }

    private static Point point(MotionState s, int node) {
        return Point.of(s.position(node, 0), s.position(node, 1), s.position(node, 2));
    }

    /** The spans at the lowest point, each segment a straight piece. */
    private List<SpanState> spans(MotionState s) {
        Lifeline line = model().line();
        List<SpanState> spans = new ArrayList<>();
        for (int i = 0; i < line.spans(); i++) {
            List<CablePiece> pieces = new ArrayList<>();
            int from = s.supportNode(i);
            int to = s.supportNode(i + 1);
            for (int j = from; j < to; j++) {
                Point a = point(s, j);
                Point b = point(s, j + 1);
                Vector3 chord = b.minus(a);
                double length = Math.max(chord.magnitude(), Double.MIN_NORMAL);
                Vector3 t = chord.times(Math.max(s.tension(j), LEAST_TENSION) / length);
                pieces.add(new CablePiece(
                        new Piece(line.cable().elongation(), new Piece.Start(a, t), s.length(j), 0, b, t, 0)));
            }
            spans.add(new SpanState(i + 1, point(s, from), point(s, to), pieces));
        }
        return spans;
    }

    private List<SupportReaction> supports(PeakValues log, MotionState s) {
        double thermal = 1
                + model().line().cable().thermalExpansion()
                        * (temperature - model().line().installed().temperature());
        List<SupportReaction> list = new ArrayList<>();
        List<SupportReaction> old = before().supports();
        for (int i = 0; i < old.size(); i++) {
            list.add(new SupportReaction(
                    old.get(i).id(),
                    new Vector3(log.supportVector[3 * i], log.supportVector[3 * i + 1], log.supportVector[3 * i + 2]),
                    new Vector3(
                            log.supportDisplacement[3 * i],
                            log.supportDisplacement[3 * i + 1],
                            log.supportDisplacement[3 * i + 2]),
                    old.get(i).slip() - s.passed(i) / thermal));
        }
        return list;
    }

    private List<LoadPosition> loads(MotionState s, PeakValues log) {
        List<LoadPosition> list = new ArrayList<>();
        int hanging = 0;
        for (LoadPosition each : before().loads()) {
            if (each.restsOn().isPresent()) {
                list.add(each);
            } else {
                Point at = point(s, s.attachmentNode(hanging++));
                list.add(new LoadPosition(each.span(), at, each.force(), Optional.empty()));
            }
        }
        int first = hanging;
        list.add(new LoadPosition(
                fall.place().span(), point(s, s.attachmentNode(first)), log.together, Optional.empty()));
        return list;
    }

    /** The energy account at the lowest point, counted from the start of the fall. */
    private EnergyAccount account(Motion motion, MotionState s) {
        double g = model().line().gravity();
        double free = 0;
        double lifted = 0;
        for (int k = 0; k < people.size(); k++) {
            double weight = people.get(k).worker().mass() * g;
            double moved = s.body(k, 2) - motion.startElevation(k);
            if (people.get(k).falls()) {
                free -= weight * moved;
            } else {
                lifted += weight * moved;
            }
        }
        double cable = change(motion, s, MotionEnergy.STRAIN)
                + change(motion, s, MotionEnergy.WEIGHT)
                + change(motion, s, MotionEnergy.CABLE_MOTION)
                + change(motion, s, MotionEnergy.DAMPING)
                + change(motion, s, MotionEnergy.MESH);
        return new EnergyAccount(
                free,
                cable,
                lifted + s.energy(MotionEnergy.WORKER_MOTION),
                change(motion, s, MotionEnergy.CONNECTIONS),
                change(motion, s, MotionEnergy.FRICTION),
                change(motion, s, MotionEnergy.INLINE),
                change(motion, s, MotionEnergy.ANCHORS));
    }

    private static double change(Motion motion, MotionState s, int part) {
        return s.energy(part) - motion.startEnergy(part);
    }

    private Clearance clearance(PeakValues log, Point end) {
        Lifeline line = model().line();
        Point support = line.supports().get(fall.place().span() - 1).position();
        double along = line.along(fall.place()) - fall.place().station() + support.horizontalDistance(end);
        OptionalDouble below = ClearanceAccount.highest(clearance, line, fall, along);
        Clearance worst = null;
        for (int k = 0; k < people.size(); k++) {
            Person p = people.get(k);
            if (p.falls()) {
                Clearance c = ClearanceAccount.draw(
                        clearance,
                        p.worker(),
                        new ClearanceAccount.Levels(
                                p.attachment().z(), log.lineAtLowest[k], OptionalDouble.of(log.lowest[k]), false),
                        new ClearanceAccount.Reach(p.taut(), log.extensionAtLowest[k]),
                        below);
                if (worst == null || c.requiredElevation() < worst.requiredElevation()) {
                    worst = c;
                }
            }
        }
        if (worst == null) {
            throw new IllegalStateException("unreachable: a fall has at least one faller");
        }
        return worst;
    }
}
