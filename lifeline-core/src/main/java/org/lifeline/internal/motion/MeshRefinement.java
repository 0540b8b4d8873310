package org.lifeline.internal.motion;

import java.util.ArrayList;
import java.util.List;

/**
 * A motion on meshes that are halved, step and all, until the peaks of the first catch change by less than an accuracy.
 * Coarser meshes are followed through the first catch only, the last one to the end.
 */
public final class MeshRefinement {
    private final Motion motion;
    private final List<Level> levels;

    private MeshRefinement(Motion motion, List<Level> levels) {
        this.motion = motion;
        this.levels = List.copyOf(levels);
    }

    /**
     * What is asked for.
     *
     * @param accuracy relative change of the peaks that is accepted [-]
     * @param refinements how often the mesh may be halved
     * @param segment length of the segments of the first mesh [m]; NaN for an automatic one
     * @param sampling duration and interval of the histories
     */
    public record Request(double accuracy, int refinements, double segment, Motion.Sampling sampling) {}

    /**
     * One mesh and what came out on it.
     *
     * @param segment length of its segments in the spans where somebody falls [m]
     * @param nodes number of nodes
     * @param steps steps to the end of the first catch
     * @param peaks what came out
     * @param spread largest relative change of the peaks since the mesh before [-]; NaN on the first
     */
    public record Level(double segment, long nodes, long steps, Peaks peaks, double spread) {}

    /**
     * Peaks of the first catch.
     *
     * @param force largest arrest force [N]
     * @param tension largest tension [N]
     * @param lowest lowest harness attachment [m]
     */
    public record Peaks(double force, double tension, double lowest) {}

    /**
     * Runs.
     *
     * @param setup line and workers
     * @param request what is asked for
     * @return the motion on the last mesh
     */
    public static MeshRefinement run(MotionSetup setup, Request request) {
        double span = setup.shortestSpan();
        double segment = Double.isNaN(request.segment)
                ? Math.min(NumericalParameters.FIRST_LENGTH, span / NumericalParameters.FIRST_SEGMENTS)
                : Math.min(request.segment, span / 2);
        List<Level> levels = new ArrayList<>();
        while (true) {
            Motion motion = new Motion(setup, segment, 1, request.sampling);
            motion.runFirstCatch(request.sampling.duration());
            Level level = level(motion, segment, levels);
            levels.add(level);
            int done = levels.size() - 1;
            boolean fine = level.spread <= request.accuracy;
            boolean automatic = Double.isNaN(request.segment);
            boolean last = done >= request.refinements
                    || (automatic && done > 0 && 0.5 * segment < NumericalParameters.FINEST)
                    || 8 * motion.estimatedWork(request.sampling.duration()) > NumericalParameters.MOST_WORK;
            if (fine || last) {
                motion.run(request.sampling.duration());
                return new MeshRefinement(motion, levels);
            }
            segment *= 0.5;
        }
    }

    private static Level level(Motion motion, double segment, List<Level> before) {
        Peaks peaks = motion.measures();
        double spread = Double.NaN;
        if (!before.isEmpty()) {
            Peaks old = before.get(before.size() - 1).peaks;
            spread = Math.max(change(old.force, peaks.force), change(old.tension, peaks.tension));
            spread = Math.max(spread, Math.abs(old.lowest - peaks.lowest) / motion.fallDistance());
        }
        Motion.Counts counts = motion.counts();
        return new Level(segment, counts.nodes(), counts.steps(), peaks, spread);
    }

    private static double change(double from, double to) {
        return to == from ? 0 : Math.abs(from - to) / Math.abs(to);
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
     * Relative change of the peaks from the last mesh but one to the last.
     *
     * @return change [-]; NaN if there was one mesh only
     */
    public double spread() {
        return levels.get(levels.size() - 1).spread;
    }
}
