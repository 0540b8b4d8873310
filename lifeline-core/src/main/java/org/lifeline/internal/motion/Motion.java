package org.lifeline.internal.motion;

import java.util.OptionalDouble;
import java.util.concurrent.CancellationException;
import java.util.stream.IntStream;
import org.lifeline.base.Convergence;
import org.lifeline.base.NoEquilibriumException;

/**
 * One run of a motion on one mesh, from the first catch on; free fall before it is put in front in closed form, since
 * nothing else moves.
 *
 * <p>Not thread-safe.
 */
public final class Motion {
    private static final int FREE = 0;
    private static final int CAUGHT = 1;
    private static final int RISING = 2;
    private static final int DONE = 3;

    private final MotionSystem system;
    private final PeakValues first;
    private final PeakValues whole;
    private final MeasuredForces measured;
    private final TimeHistory history;
    private final MotionState lowest;
    private final int[] stage;
    private final double start;
    private final double[] parts = new double[MotionState.Energy.PARTS];
    private final boolean staggered;
    private double lowestLine = Double.POSITIVE_INFINITY;
    private boolean caught;
    private boolean fresh = true;
    private double startEnergy;
    private double drift;
    private final double[] startParts = new double[MotionState.Energy.PARTS];

    /**
     * A run.
     *
     * @param setup line and workers
     * @param target length that segments should have [m]
     * @param stepScale part of the explicit step to take [-]; above 1 axial elasticity is implicit
     * @param sampling duration and interval of the histories [s]
     */
    public Motion(MotionSetup setup, double target, double stepScale, Sampling sampling) {
        system = new MotionSystem(setup, target, stepScale);
        int bodies = system.bodies.length;
        int supports = system.anchors.length;
        first = new PeakValues(bodies, supports);
        whole = new PeakValues(bodies, supports);
        measured = new MeasuredForces(bodies, supports);
        history = new TimeHistory(sampling.duration, sampling.interval, bodies, supports);
        lowest = new MotionState(system.chain.x.length, supports, bodies);
        stage = new int[bodies];
        double soonest = Double.POSITIVE_INFINITY;
        for (int k = 0; k < bodies; k++) {
            FallingBody b = system.bodies[k];
            if (b.start > Double.NEGATIVE_INFINITY) {
                double h = Math.max(0, b.startZ - (system.chain.z[b.joint.node] - b.tautLength));
                soonest = Math.min(soonest, b.start + Math.sqrt(2 * h / setup.gravity));
            }
            stage[k] = b.first ? FREE : DONE;
        }
        staggered = firstFallers()
                        .mapToDouble(k -> system.bodies[k].start)
                        .distinct()
                        .count()
                > 1;
        start = soonest < Double.POSITIVE_INFINITY ? soonest : 0;
        system.time = start;
    }

    MotionSystem system() {
        return system;
    }

    /**
     * How histories are sampled.
     *
     * @param duration longest time [s]
     * @param interval time between samples [s]
     */
    public record Sampling(double duration, double interval) {}

    /**
     * Runs until the first catch is over: every one who fell at the start has come to rest, risen, and either hangs on
     * a slack subsystem or begins to fall again.
     *
     * @param limit time at which to stop at the latest [s]
     * @return true if the catch is over
     */
    public boolean runFirstCatch(double limit) {
        while (!caught && system.time < limit) {
            stopIfInterrupted();
            step();
        }
        return caught;
    }

    /**
     * Runs on to a time.
     *
     * @param until time [s]
     */
    public void run(double until) {
        while (system.time < until) {
            stopIfInterrupted();
            step();
        }
        if (Double.isNaN(lowest.time())) {
            // Nobody has come to rest yet: the end is the lowest that there is.
            system.remember();
            lowest.take(system);
        }
    }

    /** Ends the run if the thread was interrupted; its interrupt flag stays set. */
    private void stopIfInterrupted() {
        if (Thread.currentThread().isInterrupted()) {
            throw new CancellationException("the motion was interrupted at " + system.time + " s");
        }
    }

    /** One step. */
    public void step() {
        MotionSystem s = system;
        boolean due = history.due(s.time) || fresh;
        if (due) {
            s.remember();
        }
        s.kick();
        if (s.steps % NumericalParameters.STEPS_BETWEEN_BOUNDS == 0 && s.hasRunAway()) {
            throw lost();
        }
        measured.record(s);
        if (caught) {
            whole.look(s);
            whole.look(measured);
        } else {
            first.look(s);
            first.look(measured);
            follow();
            if (caught) {
                whole.copy(first);
            }
        }
        if (due) {
            account();
        }
        s.move();
    }

    private NoEquilibriumException lost() {
        return new NoEquilibriumException(
                "motion of the line at " + system.time + " s, step " + system.step() + " s",
                0,
                new Convergence((int) Math.min(system.steps, Integer.MAX_VALUE), Double.NaN, 0));
    }

    private void account() {
        MotionSystem s = system;
        s.energies(parts);
        double sum = 0;
        for (double each : parts) {
            sum += each;
        }
        if (!Double.isFinite(sum)) {
            throw lost();
        }
        if (fresh) {
            startEnergy = sum;
            System.arraycopy(parts, 0, startParts, 0, parts.length);
        }
        drift = Math.max(drift, Math.abs(sum - startEnergy));
        history.sample(s);
        if (fresh) {
            fresh = false;
            history.prepend(s, start);
        }
    }

    /** Follows those who fell at the start through their first catch. */
    private void follow() {
        boolean turned = false;
        boolean all = true;
        for (int k = 0; k < stage.length; k++) {
            FallingBody b = system.bodies[k];
            if (stage[k] == FREE && b.force > 0) {
                stage[k] = CAUGHT;
            } else if (stage[k] == CAUGHT && b.vz >= 0) {
                stage[k] = RISING;
                turned = true;
            } else if (stage[k] == RISING && (b.force == 0 || b.vz < 0)) {
                stage[k] = DONE;
            }
            all &= stage[k] == DONE;
        }
        if (turned && isLowest()) {
            system.remember();
            lowest.take(system);
        }
        caught = all;
    }

    /**
     * Tells whether the line counts as at its lowest now that somebody has come to rest: of those who fall at one time the last
     * to come to rest decides, of those who fall one after the other the one at whose turn the line hangs lowest.
     */
    private boolean isLowest() {
        if (!staggered) {
            return true;
        }
        double line = firstFallers()
                .mapToDouble(k -> system.chain.z[system.bodies[k].joint.node])
                .min()
                .orElseThrow();
        boolean lower = line < lowestLine;
        lowestLine = Math.min(line, lowestLine);
        return lower;
    }

    /** Largest arrest force of those who fall first [N]. */
    double forceOf(PeakValues peaks) {
        return largestOfFirst(peaks.force);
    }

    /** Largest arrest force of those who fall first behind the low-pass filter [N]. */
    double filteredForceOf(PeakValues peaks) {
        return largestOfFirst(peaks.filteredForce);
    }

    private double largestOfFirst(double[] force) {
        double most = 0;
        for (int k = 0; k < force.length; k++) {
            most = system.bodies[k].first ? Math.max(most, force[k]) : most;
        }
        return most;
    }

    /** Numbers of those who fall first. */
    IntStream firstFallers() {
        return IntStream.range(0, stage.length).filter(k -> system.bodies[k].first);
    }

    /** Force in the subsystem of a worker if it were extended so far [N]. */
    double forceIf(int body, double extension) {
        return system.bodies[body].curve.forceIf(extension);
    }

    /** Force of the in-line absorber at an end of the line if it were extended so far [N]; empty where there is none. */
    OptionalDouble inlineForceIf(int end, double extension) {
        InlineElement element = system.inline[end];
        return element == null ? OptionalDouble.empty() : OptionalDouble.of(element.forceIf(extension));
    }

    /** Lowest elevation of a harness attachment of those who fall first [m]. */
    double lowestOf(PeakValues peaks) {
        double low = Double.POSITIVE_INFINITY;
        for (int k = 0; k < peaks.lowest.length; k++) {
            low = system.bodies[k].first ? Math.min(low, peaks.lowest[k]) : low;
        }
        return low;
    }

    /** Longest distance that one who falls first has gone down in the first catch [m]. */
    double fallDistance() {
        double most = 0;
        for (int k = 0; k < stage.length; k++) {
            if (system.bodies[k].first) {
                most = Math.max(most, system.bodies[k].startZ - first.lowest[k]);
            }
        }
        return most;
    }

    /** Steps times nodes of a run of a duration [s]. */
    double estimatedWork(double duration) {
        return (duration - start) / system.step() * system.chain.nodes;
    }

    /**
     * Peaks of the first catch.
     *
     * @return the log
     */
    public PeakValues firstCatch() {
        return first;
    }

    /**
     * Peaks of the whole run.
     *
     * @return the log
     */
    public PeakValues whole() {
        return caught ? whole : first;
    }

    /**
     * Histories.
     *
     * @return the history
     */
    public TimeHistory history() {
        return history;
    }

    /**
     * The line when those who fell first are at their lowest in the first catch; if the run ended before that, the line
     * at its end.
     *
     * @return the snapshot
     */
    public MotionState lowest() {
        return lowest;
    }

    /**
     * The line as it is now. Unlike what the steps keep, it is made anew.
     *
     * @return the snapshot
     */
    public MotionState present() {
        MotionState s = new MotionState(system.chain.x.length, system.anchors.length, system.bodies.length);
        system.remember();
        s.take(system);
        return s;
    }

    /**
     * Time at which the first connecting subsystem is taut.
     *
     * @return time [s]
     */
    public double catchTime() {
        return start;
    }

    /**
     * Present time.
     *
     * @return time [s]
     */
    public double time() {
        return system.time;
    }

    /**
     * Largest deviation of the sum of all energies from what it was at the start.
     *
     * @return deviation [J]
     */
    public double energyDrift() {
        return drift;
    }

    /**
     * A part of the energy account at the first catch.
     *
     * @param part see {@link MotionState.Energy}
     * @return energy [J]
     */
    public double startEnergy(int part) {
        return startParts[part];
    }

    /**
     * Elevation of a worker's harness attachment before any fall.
     *
     * @param number the worker
     * @return elevation [m]
     */
    public double startElevation(int number) {
        return system.bodies[number].startZ;
    }

    /**
     * Tells whether the first catch is over.
     *
     * @return true if it is
     */
    public boolean firstCatchOver() {
        return caught;
    }

    /**
     * Internal damping time of the cable as it is on this mesh.
     *
     * @return τ [s]
     */
    public double dampingTime() {
        return system.chain.dampingTime;
    }

    /**
     * How much a run did.
     *
     * @param steps steps taken
     * @param nodeSteps sum of the nodes over all steps
     * @param remeshings how often a node was merged away or split off
     * @param nodes nodes at present
     */
    public record Counts(long steps, long nodeSteps, long remeshings, long nodes) {}

    /**
     * Counts of the run.
     *
     * @return the counts so far
     */
    public Counts counts() {
        return new Counts(system.steps, system.work, system.remeshing.changes, system.chain.nodes);
    }

    /**
     * Length of the last step.
     *
     * @return step [s]
     */
    public double stepLength() {
        return system.step();
    }
}
