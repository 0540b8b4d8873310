package org.lifeline.analysis;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.lifeline.analysis.motion.MeshRun;
import org.lifeline.analysis.motion.MotionHistory;
import org.lifeline.analysis.motion.MotionPeaks;
import org.lifeline.analysis.motion.PeakAllowances;
import org.lifeline.analysis.warning.Warning;
import org.lifeline.base.canonical.Canonical;
import org.lifeline.base.canonical.CanonicalForm;

/**
 * An arrest in time: the arrest with the quantities that it shares with the energy balance, histories, peaks of the first
 * catch and of the whole run, what the meshes agreed on, how well the energy account closes, and the energy balance beside
 * it.
 *
 * <p>In {@link #arrest()} the state at the lowest point is a moving line cut into straight segments, and no equilibrium:
 * positions, slip and energies are those of that moment; arrest force, tensions, forces on supports and extensions are the
 * peaks of the first catch, each at its own time.
 *
 * <p>Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public final class TransientResult implements Canonical {
    private final ArrestResult arrest;
    private final Course course;
    private final Quality quality;
    private final Optional<ArrestResult> balance;

    TransientResult(ArrestResult arrest, Course course, Quality quality, Optional<ArrestResult> balance) {
        this.arrest = arrest;
        this.course = course;
        this.quality = quality;
        this.balance = balance;
    }

    /** What happened. */
    record Course(MotionHistory history, MotionPeaks firstCatch, MotionPeaks wholeRun, boolean firstCatchOver) {}

    /** How well it was followed. */
    record Quality(List<MeshRun> meshes, PeakAllowances allowances, double accuracy, double energyDrift, Step step) {}

    /** The internal damping time τ on the last mesh [s], and the last step on it [s]. */
    record Step(double dampingTime, double length) {}

    /**
     * The arrest: the first catch of those who fall at the start.
     *
     * @return the arrest, its method the transient one
     */
    public ArrestResult arrest() {
        return arrest;
    }

    /**
     * Histories from the start of the fall to the end of the run.
     *
     * @return the histories
     */
    public MotionHistory history() {
        return course.history;
    }

    /**
     * Peaks of the first catch: from the first taut subsystem until all who fell at the start hang slack after their
     * lowest point, or begin to fall again.
     *
     * @return the peaks
     */
    public MotionPeaks firstCatch() {
        return course.firstCatch;
    }

    /**
     * Peaks of the whole run, rebounds and later falls included.
     *
     * @return the peaks
     */
    public MotionPeaks wholeRun() {
        return course.wholeRun;
    }

    /**
     * Tells whether the first catch was over before the run ended; if not, peaks may lie outside it.
     *
     * @return true if it was over
     */
    public boolean firstCatchOver() {
        return course.firstCatchOver;
    }

    /**
     * The meshes that were tried; histories and peaks are those of the last.
     *
     * @return from the coarsest to the finest; unmodifiable
     */
    public List<MeshRun> meshes() {
        return List.copyOf(quality.meshes);
    }

    /**
     * Largest relative change of arrest force, tension and lowest point from the last mesh but one to the last. It is no
     * measure of the error: meshes that do not resolve a wave front agree with each other. See {@link #uncertainty()}.
     *
     * @return change [-]; NaN if only one mesh was asked for
     */
    public double spread() {
        return quality.meshes.get(quality.meshes.size() - 1).spread();
    }

    /**
     * Tells whether the accuracy asked for was reached: whether no peak of the first catch, as it is or filtered, changes
     * on ever finer meshes by more than that, by the bounds of {@link #allowances()}.
     *
     * @return true if {@link #uncertainty()} is not larger
     */
    public boolean accurate() {
        return uncertainty() <= quality.accuracy;
    }

    /**
     * The accuracy that was asked for.
     *
     * @return relative bound of the peaks [-]
     */
    public double accuracy() {
        return quality.accuracy;
    }

    /**
     * The largest bound of what ever finer meshes would change: of each force over that force or the arrest force,
     * whichever is larger, and of the lowest elevation over the fall.
     *
     * @return bound [-]; positive infinity if fewer than three meshes were followed
     */
    public double uncertainty() {
        return quality.allowances.relative();
    }

    /**
     * What the last mesh may hide of each peak of the first catch.
     *
     * @return the allowances
     */
    public PeakAllowances allowances() {
        return quality.allowances;
    }

    /**
     * What is to be added to {@link ArrestResult#maximumTension()} to be on the safe side of the mesh.
     *
     * @return allowance [N], not negative; positive infinity if fewer than three meshes were followed
     */
    public double tensionAllowance() {
        return quality.allowances.tension().force();
    }

    /**
     * What is to be added to {@link ArrestResult#arrestForce()} to be on the safe side of the mesh.
     *
     * @return allowance [N], not negative; positive infinity if fewer than three meshes were followed
     */
    public double arrestForceAllowance() {
        return quality.allowances.arrestForce().force();
    }

    /**
     * What is to be added to the force of the line on a support, or to the tension there, to be on the safe side of the
     * mesh.
     *
     * @param id the support
     * @return allowance [N], not negative; positive infinity if fewer than three meshes were followed
     * @throws IllegalArgumentException if there is no such support
     */
    public double supportAllowance(String id) {
        return quality.allowances.support(id).force();
    }

    /**
     * What is to be added to the fall distance, and taken from clearances, to be on the safe side of the mesh.
     *
     * @return allowance [m], not negative; positive infinity if fewer than three meshes were followed
     */
    public double fallDistanceAllowance() {
        return quality.allowances.lowest();
    }

    /**
     * Largest deviation of the sum of all energies from its value at the start.
     *
     * @return drift [J], not negative
     */
    public double energyDrift() {
        return quality.energyDrift;
    }

    /**
     * The same as a share of the energy set free by the fall down to its lowest point.
     *
     * @return drift [-], not negative
     */
    public double relativeDrift() {
        return quality.energyDrift / arrest.energy().fall();
    }

    /**
     * Internal damping time that was computed with: the one stated, the default, or on a coarse mesh the least that the
     * mesh needs.
     *
     * @return τ [s]
     */
    public double dampingTime() {
        return quality.step.dampingTime;
    }

    /**
     * Length of the last step.
     *
     * @return step [s]
     */
    public double timeStep() {
        return quality.step.length;
    }

    /**
     * The same fall by energy balance.
     *
     * @return the arrest; empty where the energy balance finds none
     */
    public Optional<ArrestResult> energyBalance() {
        return balance;
    }

    /**
     * Largest tension over that of the energy balance: the overshoot.
     *
     * @return ratio [-], if there is an energy balance
     */
    public OptionalDouble tensionRatio() {
        return ratio(arrest.maximumTension(), balance.map(ArrestResult::maximumTension));
    }

    /**
     * Arrest force over that of the energy balance.
     *
     * @return ratio [-], if there is an energy balance
     */
    public OptionalDouble forceRatio() {
        return ratio(arrest.arrestForce(), balance.map(ArrestResult::arrestForce));
    }

    /**
     * Total fall distance over that of the energy balance.
     *
     * @return ratio [-], if there is an energy balance
     */
    public OptionalDouble fallDistanceRatio() {
        return ratio(arrest.totalFallDistance(), balance.map(ArrestResult::totalFallDistance));
    }

    private static OptionalDouble ratio(double value, Optional<Double> to) {
        return to.isPresent() ? OptionalDouble.of(value / to.get()) : OptionalDouble.empty();
    }

    /**
     * Where the result goes beyond what it is valid for, or beyond what cable, anchors and absorbers hold; and where the
     * motion was not followed to the end of the first catch, or not as accurately as asked for.
     *
     * @return the warnings; unmodifiable, empty if there is nothing to say
     */
    public List<Warning> warnings() {
        return ResultWarnings.of(this);
    }

    @Override
    public CanonicalForm canonicalForm() {
        return ResultForms.of(this);
    }
}
