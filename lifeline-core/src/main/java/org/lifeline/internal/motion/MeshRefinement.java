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
     * @param steps length of the steps, in those that axial waves allow where elasticity is explicit [-]
     */
    public record Course(Motion.Sampling sampling, OptionalDouble afterCatch, double steps) {
        /** Length of the steps of a survey: four times as long fails on some lines. */
        private static final double LONG = 2;

        /**
         * In steps that follow every axial wave.
         *
         * @param sampling duration and interval of the histories
         * @param afterCatch time after the first catch at which to end [s]; empty to go on to the end of the duration
         */
        public Course(Motion.Sampling sampling, OptionalDouble afterCatch) {
            this(sampling, afterCatch, 1);
        }

        /**
         * The same, sampled otherwise.
         *
         * @param value duration and interval
         * @return the course
         */
        public Course sampled(Motion.Sampling value) {
            return new Course(value, afterCatch, steps);
        }

        /**
         * The same, ended after the first catch.
         *
         * @param time time after the first catch [s]
         * @return the course
         */
        public Course endedAfterCatch(double time) {
            return new Course(sampling, OptionalDouble.of(time), steps);
        }

        /**
         * The same in steps twice as long, axial elasticity implicit.
         *
         * @return the course
         */
        public Course inLongSteps() {
            return new Course(sampling, afterCatch, LONG);
        }
    }

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
            Motion motion = new Motion(setup, segment, request.course.steps, request.course.sampling);
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
    public record Force(ToDoubleFunction<PeakValues> raw, ToDoubleFunction<PeakValues> filtered) {
        /**
         * The largest tension of the cable.
         *
         * @return the force
         */
        public static Force tension() {
            return new Force(p -> p.tension, p -> p.filteredTension);
        }

        /**
         * The force of the line on a support.
         *
         * @param number the support
         * @return the force
         */
        public static Force onSupport(int number) {
            return new Force(p -> p.support[number], p -> p.filteredSupport[number]);
        }
    }

    /**
     * Bound of what ever finer meshes would change in a force of the first catch.
     *
     * @param force the force
     * @return bound of it as it is [N]; positive infinity on fewer than three meshes
     */
    public double bound(Force force) {
        return bound(force, size(force.raw.applyAsDouble(motion.firstCatch())));
    }

    private double bound(Force force, double size) {
        PeakValues last = motion.firstCatch();
        double spike = force.raw.applyAsDouble(last) - force.filtered.applyAsDouble(last);
        return RefinementBound.ofLoad(values(force.raw), RefinementBound.least(size, segments, spike));
    }

    /**
     * Bound of what ever finer meshes would change in a filtered force of the first catch.
     *
     * @param force the force
     * @return bound of it behind the low-pass filter [N]; positive infinity on fewer than three meshes
     */
    public double filteredBound(Force force) {
        double value = force.filtered.applyAsDouble(motion.firstCatch());
        return RefinementBound.ofLoad(values(force.filtered), RefinementBound.leastFiltered(size(value), segments));
    }

    /**
     * Bound of what ever finer meshes would change in the largest arrest force. The force is that of the loading curve at
     * the largest extension, so it changes by no more than the curve does within the bound of that extension: on a plateau
     * by nothing.
     *
     * @return bound of it as it is [N]; positive infinity on fewer than three meshes
     */
    public double arrestForceBound() {
        double plain = bound(new Force(motion::forceOf, motion::filteredForceOf));
        double force = motion.forceOf(motion.firstCatch());
        double most = motion.firstFallers()
                .mapToDouble(k -> motion.forceIf(k, farthest(p -> p.extension[k])))
                .max()
                .orElse(Double.POSITIVE_INFINITY);
        return Math.min(plain, Math.max(0, most - force));
    }

    /**
     * Bound of what ever finer meshes would change in the force of the line on a support. Where the line pulls on an end
     * through an in-line absorber, and nothing else does, it is bounded by the absorber's curve as an arrest force is, and by
     * what the support carries beside that force: half a segment of cable, of which finer meshes have less.
     *
     * @param number the support
     * @return bound of it as it is [N]; positive infinity on fewer than three meshes
     */
    public double supportBound(int number) {
        double plain = bound(Force.onSupport(number), sizeOfSupport(number));
        int last = motion.firstCatch().support.length - 1;
        if (number != 0 && number != last) {
            return plain;
        }
        int end = number == 0 ? 0 : 1;
        double force = motion.firstCatch().support[number];
        OptionalDouble inline = motion.inlineForceIf(end, motion.firstCatch().inline[end]);
        if (inline.isEmpty() || force > (1 + NumericalParameters.SAME_FORCE) * inline.getAsDouble()) {
            return plain;
        }
        double here = inline.getAsDouble();
        double most = motion.inlineForceIf(end, farthest(p -> p.inline[end])).orElseThrow();
        return Math.min(plain, Math.max(0, most - here) + Math.abs(force - here));
    }

    /** The largest extension that ever finer meshes might bring, as cautiously as a peak of force [m]. */
    private double farthest(ToDoubleFunction<PeakValues> extension) {
        double x = extension.applyAsDouble(motion.firstCatch());
        return x + bound(extension, RefinementBound.front(x, segments));
    }

    /**
     * Bound of what ever finer meshes would change in the largest extension of the subsystems of those who fall first.
     *
     * @return bound [m]; positive infinity on fewer than three meshes
     */
    public double extensionBound() {
        return motion.firstFallers()
                .mapToDouble(k -> lengthBound(p -> p.extension[k]))
                .max()
                .orElse(Double.POSITIVE_INFINITY);
    }

    /**
     * Bound of what ever finer meshes would change in the largest extension of the in-line absorbers.
     *
     * @return bound [m]; 0 where there are none, positive infinity on fewer than three meshes
     */
    public double inlineBound() {
        return Math.max(lengthBound(p -> p.inline[0]), lengthBound(p -> p.inline[1]));
    }

    /**
     * Bound of what ever finer meshes would change in the lowest elevation of those who fall first.
     *
     * @return bound [m]; positive infinity on fewer than three meshes
     */
    public double lowestBound() {
        return bound(motion::lowestOf, RefinementBound.leastLength(motion.fallDistance(), segments));
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

    /** Bound of an extension, which starts at nothing [m]. */
    private double lengthBound(ToDoubleFunction<PeakValues> extension) {
        double size = extension.applyAsDouble(motion.firstCatch());
        return bound(extension, RefinementBound.leastLength(size, segments));
    }

    private double bound(ToDoubleFunction<PeakValues> peak, double least) {
        return RefinementBound.of(values(peak), least);
    }

    private double[] values(ToDoubleFunction<PeakValues> peak) {
        return levels.stream().mapToDouble(l -> peak.applyAsDouble(l.peaks)).toArray();
    }

    /** What the bound of the force on a support is compared with [N]. */
    private double sizeOfSupport(int number) {
        PeakValues last = motion.firstCatch();
        return RefinementBound.sizeOfSupport(size(last.support[number]), last.tension);
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
        Force arrest = new Force(motion::forceOf, motion::filteredForceOf);
        PeakValues last = motion.firstCatch();
        most = Math.max(most, share(arrest, arrestForceBound() / size(motion.forceOf(last))));
        Force tension = Force.tension();
        most = Math.max(most, share(tension, bound(tension) / size(last.tension)));
        for (int i = 0; i < last.support.length; i++) {
            most = Math.max(most, share(Force.onSupport(i), supportBound(i) / sizeOfSupport(i)));
        }
        return most;
    }

    /** The larger of a bound as a share of its force and that of the same force behind the filter [-]. */
    private double share(Force force, double raw) {
        return Math.max(raw, filteredBound(force) / size(force.filtered.applyAsDouble(motion.firstCatch())));
    }
}
