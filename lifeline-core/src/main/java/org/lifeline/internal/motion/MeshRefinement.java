package org.lifeline.internal.motion;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import org.lifeline.internal.motion.peak.RefinementBound;

/**
 * A motion on meshes that are halved, step and all, until a bound of what ever finer meshes would change is within an
 * accuracy. Coarser meshes are followed through the first catch only, the last one to the end.
 */
public final class MeshRefinement {
    private final Motion motion;
    private final List<Level> levels;
    private final double segments;

    private MeshRefinement(Motion motion, List<Level> levels, double segments) {
        this.motion = motion;
        this.levels = List.copyOf(levels);
        this.segments = segments;
    }

    /**
     * What is asked for.
     *
     * @param accuracy relative bound of the peaks that is accepted [-]
     * @param refinements how often the mesh may be halved
     * @param segment length of the segments of the first mesh [m]; empty for an automatic one
     * @param course how long the last mesh is followed
     */
    public record Request(double accuracy, int refinements, OptionalDouble segment, Course course) {}

    /**
     * How long a motion is followed.
     *
     * @param sampling duration and interval of the histories
     * @param afterCatch time after the first catch at which to end [s]; empty to go on to the end of the duration
     */
    public record Course(Motion.Sampling sampling, OptionalDouble afterCatch) {}

    /**
     * One mesh and what came out on it.
     *
     * @param segment length of its segments in the spans where somebody falls [m]
     * @param nodes number of nodes
     * @param steps steps to the end of the first catch
     * @param peaks what came out in the first catch
     */
    public record Level(double segment, long nodes, long steps, PeakValues peaks) {}

    /**
     * Runs.
     *
     * @param setup line and workers
     * @param request what is asked for
     * @return the motion on the last mesh
     */
    public static MeshRefinement run(MotionSetup setup, Request request) {
        double span = setup.shortestSpan();
        double duration = request.course.sampling.duration();
        boolean automatic = request.segment.isEmpty();
        double segment = Math.min(request.segment.orElse(NumericalParameters.firstLength(span)), span / 2);
        List<Level> levels = new ArrayList<>();
        while (true) {
            Motion motion = new Motion(setup, segment, 1, request.course.sampling);
            motion.runFirstCatch(duration);
            Motion.Counts counts = motion.counts();
            levels.add(new Level(segment, counts.nodes(), counts.steps(), motion.firstCatch()));
            MeshRefinement refined = new MeshRefinement(motion, levels, span / segment);
            int done = levels.size() - 1;
            boolean last = done >= request.refinements
                    || (automatic && done > 1 && 0.5 * segment < NumericalParameters.FINEST)
                    || 8 * motion.estimatedWork(duration) > NumericalParameters.MOST_WORK;
            if (last || refined.uncertainty() <= request.accuracy) {
                double end = request.course.afterCatch.isPresent() && motion.firstCatchOver()
                        ? Math.min(duration, motion.time() + request.course.afterCatch.getAsDouble())
                        : duration;
                motion.run(end);
                return refined;
            }
            segment *= 0.5;
        }
    }

    /**
     * The motion on the last mesh.
     *
     * @return the run
     */
    public Motion motion() {
        return motion;
    }

    /**
     * The meshes that were tried.
     *
     * @return from the coarsest to the finest, at least one; unmodifiable
     */
    public List<Level> levels() {
        return levels;
    }

    /**
     * A force of the first catch, as it is and behind the low-pass filter.
     *
     * @param raw reads it as it is
     * @param filtered reads it behind the filter
     */
    public record Force(ToDoubleFunction<PeakValues> raw, ToDoubleFunction<PeakValues> filtered) {}

    /**
     * Bound of what ever finer meshes would change in a force of the first catch.
     *
     * @param force the force
     * @return bound of it as it is [N]; positive infinity on fewer than three meshes
     */
    public double bound(Force force) {
        PeakValues last = motion.firstCatch();
        double value = force.raw.applyAsDouble(last);
        double spike = value - force.filtered.applyAsDouble(last);
        return bound(force.raw, RefinementBound.least(size(value), segments, spike));
    }

    /**
     * Bound of what ever finer meshes would change in a filtered force of the first catch.
     *
     * @param force the force
     * @return bound of it behind the low-pass filter [N]; positive infinity on fewer than three meshes
     */
    public double filteredBound(Force force) {
        double value = force.filtered.applyAsDouble(motion.firstCatch());
        return bound(force.filtered, RefinementBound.leastFiltered(size(value), segments));
    }

    /**
     * Bound of what ever finer meshes would change in the lowest elevation of those who fall first.
     *
     * @return bound [m]; positive infinity on fewer than three meshes
     */
    public double lowestBound() {
        return bound(motion::lowestOf, 0);
    }

    /**
     * Largest arrest force of those who fall first.
     *
     * @param peaks what came out on a mesh
     * @return force [N]
     */
    public double arrestForce(PeakValues peaks) {
        return motion.forceOf(peaks);
    }

    /**
     * Largest arrest force of those who fall first behind the low-pass filter.
     *
     * @param peaks what came out on a mesh
     * @return force [N]
     */
    public double filteredArrestForce(PeakValues peaks) {
        return motion.filteredForceOf(peaks);
    }

    /**
     * Lowest elevation of a harness attachment of those who fall first.
     *
     * @param peaks what came out on a mesh
     * @return elevation [m]
     */
    public double lowest(PeakValues peaks) {
        return motion.lowestOf(peaks);
    }

    /**
     * Longest distance that one who falls first has gone down in the first catch.
     *
     * @return distance [m]
     */
    public double fallDistance() {
        return motion.fallDistance();
    }

    private double bound(ToDoubleFunction<PeakValues> peak, double least) {
        double[] values =
                levels.stream().mapToDouble(l -> peak.applyAsDouble(l.peaks)).toArray();
        return RefinementBound.of(values, least);
    }

    /** What a bound is compared with [N]: at least the arrest force, so that idle supports decide nothing. */
    private double size(double force) {
        return Math.max(force, motion.forceOf(motion.firstCatch()));
    }

    /**
     * The largest of all bounds of the first catch, forces as they are and filtered, each over the force or the arrest
     * force, whichever is larger, and the lowest elevation over the fall.
     *
     * @return bound [-]; positive infinity on fewer than three meshes
     */
    public double uncertainty() {
        if (levels.size() < RefinementBound.LEAST_MESHES) {
            return Double.POSITIVE_INFINITY;
        }
        double most = lowestBound() / motion.fallDistance();
        most = Math.max(most, share(new Force(motion::forceOf, motion::filteredForceOf)));
        most = Math.max(most, share(new Force(p -> p.tension, p -> p.filteredTension)));
        for (int i = 0; i < motion.firstCatch().support.length; i++) {
            int number = i;
            most = Math.max(most, share(new Force(p -> p.support[number], p -> p.filteredSupport[number])));
        }
        return most;
    }

    private double share(Force force) {
        PeakValues last = motion.firstCatch();
        return Math.max(
                bound(force) / size(force.raw.applyAsDouble(last)),
                filteredBound(force) / size(force.filtered.applyAsDouble(last)));
    }
}
