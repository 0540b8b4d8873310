package org.lifeline.analysis;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import org.lifeline.analysis.clearance.Clearance;
import org.lifeline.analysis.clearance.ClearanceAccount;
import org.lifeline.analysis.motion.MeshRun;
import org.lifeline.analysis.motion.MotionSummary;
import org.lifeline.analysis.motion.PeakAllowances;
import org.lifeline.analysis.state.EnergyAccount;
import org.lifeline.analysis.state.LoadPosition;
import org.lifeline.analysis.state.SupportReaction;
import org.lifeline.base.Convergence;
import org.lifeline.base.Point;
import org.lifeline.base.Vector3;
import org.lifeline.internal.line.Piece;
import org.lifeline.internal.motion.MeshRefinement;
import org.lifeline.internal.motion.Motion;
import org.lifeline.internal.motion.MotionState;
import org.lifeline.internal.motion.PeakValues;
import org.lifeline.internal.path.LineModel;
import org.lifeline.model.ClearanceRules;
import org.lifeline.model.Fall;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Worker;
import org.lifeline.model.absorber.DeploymentForce;

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

    /** One who takes part, in the order of the motion's numbers. */
    record Person(Worker worker, Point attachment, double taut, boolean falls) {}

    double temperature() {
        return temperature;
    }

    TransientCase(Fall fall, DeploymentForce side, ClearanceRules clearance, double temperature) {
        this.fall = fall;
        this.side = side;
        this.clearance = clearance;
        this.temperature = temperature;
    }

    /** Takes the line as it is now for the state before the fall. */
    void before(LineModel line) {
        model = line;
        before = LineEquilibrium.of(line, temperature, EnergyBalance.hanging(line, fall.hanging()));
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

    /** Takes one who hangs, or falls beside the first fall or later. */
    void add(Worker worker, Point attachment, double taut) {
        people.add(new Person(worker, attachment, taut, false));
    }

    /** Takes one of the first fall, whose first catch is followed. */
    void addFirst(Worker worker, Point attachment, double taut, double freeFall) {
        people.add(new Person(worker, attachment, taut, true));
        longest = Math.max(longest, freeFall);
    }

    TransientResult result(MeshRefinement refined, MeshRefinement.Request request, @Nullable ArrestResult balance) {
        Motion motion = refined.motion();
        MotionRecords records = new MotionRecords(model().line(), fall, people);
        PeakAllowances allowances = records.allowances(refined);
        return new TransientResult(
                arrest(refined, request, records),
                new TransientResult.Course(
                        records.history(motion.history()),
                        records.peaks(motion.firstCatch()),
                        records.peaks(motion.whole()),
                        motion.firstCatchOver()),
                new TransientResult.Quality(
                        MotionRecords.meshes(refined),
                        allowances,
                        request.accuracy(),
                        motion.energyDrift(),
                        new TransientResult.Step(motion.dampingTime(), motion.stepLength())),
                Optional.ofNullable(balance));
    }

    private ArrestResult arrest(MeshRefinement refined, MeshRefinement.Request request, MotionRecords records) {
        Motion motion = refined.motion();
        PeakValues log = motion.firstCatch();
        MotionState lowest = motion.lowest();
        int first = -1;
        int hardest = -1;
        List<Double> deployments = new ArrayList<>();
        double harnessFall = 0;
        boolean bottomed = false;
        for (int k = 0; k < people.size(); k++) {
            Person p = people.get(k);
            if (p.falls()) {
                first = first < 0 ? k : first;
                hardest = hardest < 0 || log.force[k] > log.force[hardest] ? k : hardest;
                deployments.add(Math.max(0, log.extension[k]));
                harnessFall = Math.max(harnessFall, motion.startElevation(k) - log.lowest[k]);
                bottomed |= log.extension[k] > p.worker().connection().maximumExtension();
            }
        }
        Point end = point(lowest, lowest.attachmentNode(first));
        List<MeshRun> meshes = MotionRecords.meshes(refined);
        Convergence convergence = new Convergence(
                (int) Math.min(
                        Integer.MAX_VALUE,
                        meshes.stream().mapToLong(MeshRun::steps).sum()),
                refined.uncertainty(),
                request.accuracy());
        LineEquilibrium peak = LineEquilibrium.moving(
                before(),
                new LineEquilibrium.Moving(spans(lowest), supports(log, lowest), loads(lowest, log)),
                new LineEquilibrium.Peaks(log.tension, log.inline[0], log.inline[1], convergence));
        EnergyAccount account = account(motion, lowest);
        MotionSummary summary = new MotionSummary(
                new MotionSummary.Quality(
                        meshes.get(meshes.size() - 1),
                        records.allowances(refined),
                        motion.energyDrift() / account.fall()),
                records.peaks(motion.whole()),
                harnessFall,
                motion.firstCatchOver());
        WorkerClearance lowestReaching = clearance(log, end);
        return new ArrestResultBuilder(new ArrestResult.Conditions(fall, side, Method.TRANSIENT, Optional.empty()))
                .before(before())
                .peak(peak)
                .attachmentBefore(people.get(first).attachment())
                .attachmentAtPeak(end)
                .freeFall(longest)
                .deployments(deployments)
                .arrestForce(log.force[hardest])
                .lineLoad(log.together)
                .bottomedOut(bottomed)
                .energy(account)
                .hardestArrested(people.get(hardest).worker())
                .clearance(lowestReaching.account)
                .clearanceWorker(lowestReaching.worker)
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
            if (each.restsOn().isPresent() && each.span() > 0) {
                // It came to rest on a support before, and no body of the motion stands for it.
                list.add(each);
            } else {
                Point at = point(s, s.attachmentNode(hanging++));
                list.add(new LoadPosition(each.span(), at, each.force(), each.restsOn()));
            }
        }
        int first = hanging;
        list.add(new LoadPosition(
                Statics.spanOnCable(fall.place()),
                point(s, s.attachmentNode(first)),
                log.together,
                fall.place().support()));
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
        double cable = change(motion, s, MotionState.Energy.STRAIN)
                + change(motion, s, MotionState.Energy.WEIGHT)
                + change(motion, s, MotionState.Energy.CABLE_MOTION)
                + change(motion, s, MotionState.Energy.DAMPING)
                + change(motion, s, MotionState.Energy.MESH);
        return new EnergyAccount(
                free,
                cable,
                lifted + s.energy(MotionState.Energy.WORKER_MOTION),
                change(motion, s, MotionState.Energy.CONNECTIONS),
                change(motion, s, MotionState.Energy.FRICTION),
                change(motion, s, MotionState.Energy.INLINE),
                change(motion, s, MotionState.Energy.ANCHORS));
    }

    private static double change(Motion motion, MotionState s, int part) {
        return s.energy(part) - motion.startEnergy(part);
    }

    /** An account of clearance and whose it is. */
    private record WorkerClearance(Worker worker, Clearance account) {}

    private WorkerClearance clearance(PeakValues log, Point end) {
        Lifeline line = model().line();
        Point support = line.supports().get(line.spanOf(fall.place()) - 1).position();
        double along = line.along(fall.place()) - line.stationOf(fall.place()) + support.horizontalDistance(end);
        OptionalDouble below = ClearanceAccount.highest(clearance, line, fall, along);
        WorkerClearance worst = null;
        for (int k = 0; k < people.size(); k++) {
            Person p = people.get(k);
            if (p.falls()) {
                Clearance c = ClearanceAccount.draw(
                        clearance,
                        p.worker(),
                        new ClearanceAccount.Levels(
                                p.attachment().z(),
                                log.lineAtLowest[k],
                                OptionalDouble.of(log.lowest[k]),
                                fall.place().isAtSupport()),
                        new ClearanceAccount.Reach(p.taut(), log.extensionAtLowest[k]),
                        below);
                if (worst == null || c.requiredElevation() < worst.account.requiredElevation()) {
                    worst = new WorkerClearance(p.worker(), c);
                }
            }
        }
        if (worst == null) {
            throw new IllegalStateException("unreachable: a fall has at least one faller");
        }
        return worst;
    }
}
