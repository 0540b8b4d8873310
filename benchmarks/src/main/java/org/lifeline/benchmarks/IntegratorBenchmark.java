package org.lifeline.benchmarks;

import java.util.concurrent.TimeUnit;
import org.apache.commons.math3.ode.AbstractIntegrator;
import org.apache.commons.math3.ode.events.EventHandler;
import org.apache.commons.math3.ode.nonstiff.DormandPrince54Integrator;
import org.apache.commons.math3.ode.nonstiff.DormandPrince853Integrator;
import org.apache.commons.math3.ode.sampling.StepHandler;
import org.apache.commons.math3.ode.sampling.StepInterpolator;
import org.lifeline.internal.motion.Motion;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * The library's own scheme beside adaptive integrators of Commons Math: half a second from the catch on of a fall without
 * an absorber on a single span, the same mesh, the same forces. {@link #main} prints what the peaks of each differ by and
 * how often each evaluates the forces.
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 2, time = 2)
@Measurement(iterations = 3, time = 2)
@Fork(1)
public class IntegratorBenchmark {
    private static final double SECONDS = 0.5;

    /** Tolerance of positions [m] and velocities [m/s]; relative tolerance. */
    private static final double TOLERANCE = 1e-5;

    private static final double LONGEST = 1e-3;
    private static final double EVENT_PRECISION = 1e-9;

    /** Number of segments. */
    @Param({"64", "128"})
    private int segments;

    /**
     * The library's own explicit scheme.
     *
     * @return largest force [N]
     */
    @Benchmark
    public double own() {
        return own(segments);
    }

    /**
     * Dormand and Prince of order 8, adaptive.
     *
     * @return largest force [N]
     */
    @Benchmark
    public double dormandPrince853() {
        return adaptive(new DormandPrince853Integrator(1e-12, LONGEST, TOLERANCE, TOLERANCE), segments, false)
                .peak();
    }

    /**
     * The same with an event where the lanyard becomes taut or slack.
     *
     * @return largest force [N]
     */
    @Benchmark
    public double dormandPrince853Events() {
        return adaptive(new DormandPrince853Integrator(1e-12, LONGEST, TOLERANCE, TOLERANCE), segments, true)
                .peak();
    }

    /**
     * Dormand and Prince of order 5, adaptive.
     *
     * @return largest force [N]
     */
    @Benchmark
    public double dormandPrince54() {
        return adaptive(new DormandPrince54Integrator(1e-12, LONGEST, TOLERANCE, TOLERANCE), segments, false)
                .peak();
    }

    private static double own(int segments) {
        Motion motion = Motions.singleSpan(segments, 2);
        motion.run(motion.catchTime() + SECONDS);
        return motion.whole().force[0];
    }

    private static Bounce adaptive(AbstractIntegrator integrator, int segments, boolean events) {
        Bounce equations = new Bounce(Motions.singleSpan(segments, 2).present(), segments);
        integrator.addStepHandler(new Peaks(equations));
        if (events) {
            integrator.addEventHandler(new Taut(equations), 0.01, EVENT_PRECISION, 100);
        }
        double[] state = equations.start();
        integrator.integrate(equations, 0, state, SECONDS, state);
        return equations;
    }

    /** Looks at the force after every accepted step. */
    private record Peaks(Bounce equations) implements StepHandler {
        @Override
        public void init(double t0, double[] y0, double t) {
            equations.keep(y0);
        }

        @Override
        public void handleStep(StepInterpolator interpolator, boolean isLast) {
            equations.keep(interpolator.getInterpolatedState());
        }
    }

    /** The lanyard becomes taut or slack. */
    private record Taut(Bounce equations) implements EventHandler {
        @Override
        public void init(double t0, double[] y0, double t) {
            equations.keep(y0);
        }

        @Override
        public double g(double t, double[] y) {
            return equations.stretch(y);
        }

        @Override
        public Action eventOccurred(double t, double[] y, boolean increasing) {
            return Action.RESET_DERIVATIVES;
        }

        @Override
        public void resetState(double t, double[] y) {
            equations.keep(y);
        }
    }

    /**
     * Prints peaks and numbers of evaluations.
     *
     * @param args nothing
     */
    public static void main(String[] args) {
        for (int n : new int[] {64, 128}) {
            Motion motion = Motions.singleSpan(n, 2);
            motion.run(motion.catchTime() + SECONDS);
            System.out.println(n + " segments: own " + motion.whole().force[0] + " N, "
                    + motion.counts().steps() + " steps");
            for (double tolerance : new double[] {1e-5, 1e-8}) {
                Bounce five = adaptive(new DormandPrince54Integrator(1e-12, LONGEST, tolerance, tolerance), n, false);
                Bounce eight = adaptive(new DormandPrince853Integrator(1e-12, LONGEST, tolerance, tolerance), n, false);
                Bounce events = adaptive(new DormandPrince853Integrator(1e-12, LONGEST, tolerance, tolerance), n, true);
                System.out.println(n + " segments, tolerance " + tolerance + ": order 5 " + five.peak() + " N, "
                        + five.evaluations() + " evaluations; order 8 " + eight.peak() + " N, " + eight.evaluations()
                        + "; with events " + events.peak() + " N, " + events.evaluations());
            }
        }
    }
}
