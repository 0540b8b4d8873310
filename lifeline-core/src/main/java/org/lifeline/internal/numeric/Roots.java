package org.lifeline.internal.numeric;

import java.util.function.DoubleUnaryOperator;
import org.apache.commons.math3.analysis.solvers.AllowedSolution;
import org.apache.commons.math3.analysis.solvers.BracketingNthOrderBrentSolver;
import org.apache.commons.math3.exception.MathIllegalArgumentException;
import org.apache.commons.math3.exception.TooManyEvaluationsException;
import org.apache.commons.math3.optim.MaxEval;
import org.apache.commons.math3.optim.nonlinear.scalar.GoalType;
import org.apache.commons.math3.optim.univariate.BrentOptimizer;
import org.apache.commons.math3.optim.univariate.SearchInterval;
import org.apache.commons.math3.optim.univariate.UnivariateObjectiveFunction;
import org.lifeline.base.Convergence;
import org.lifeline.base.NoEquilibriumException;

/** Roots and minima of functions of one variable, by Commons Math. Thread-safe: each call makes its own solver. */
public final class Roots {
    private static final int EVALUATIONS = 300;

    /** Rounding of a root, relative [-]. */
    private static final double ROUNDING = 1e-15;

    /** Accuracy of a minimum, relative [-], and over the larger end of its search: the square root of rounding is 1e-8. */
    private static final double MINIMUM = 1e-9;

    private static final double MINIMUM_ABSOLUTE = 1e-12;

    /** Accuracy of a minimum that costs much, relative [-]: its absolute one is the caller's. */
    private static final double ROUGH = 1e-10;

    /** Width of a bracket, over the first one, that is taken as a jump [-]. */
    private static final double JUMP = 1e-9;

    private Roots() {}

    /**
     * A root between two places at which the function has different signs.
     *
     * @param where what is being solved, for the exception
     * @param f the function
     * @param low lower end of the bracket
     * @param high upper end of the bracket
     * @return the root, to about 1e-15 relative
     */
    public static double bracketed(String where, DoubleUnaryOperator f, double low, double high) {
        double relative = ROUNDING;
        double absolute = ROUNDING * Math.max(Math.abs(low), Math.abs(high)) + Double.MIN_NORMAL;
        BracketingNthOrderBrentSolver solver = new BracketingNthOrderBrentSolver(relative, absolute, 0, 5);
        try {
            return solver.solve(EVALUATIONS, f::applyAsDouble, low, high, AllowedSolution.ANY_SIDE);
        } catch (TooManyEvaluationsException | MathIllegalArgumentException e) {
            double residual = Math.min(Math.abs(f.applyAsDouble(low)), Math.abs(f.applyAsDouble(high)));
            NoEquilibriumException failure =
                    new NoEquilibriumException(where, 0, new Convergence(EVALUATIONS, residual, absolute));
            failure.initCause(e);
            throw failure;
        }
    }

    /**
     * The place of a minimum of a function with a single minimum.
     *
     * @param f the function
     * @param low lower end of the search
     * @param high upper end of the search
     * @return where the function is least
     */
    public static double minimum(DoubleUnaryOperator f, double low, double high) {
        return new BrentOptimizer(
                        MINIMUM, MINIMUM_ABSOLUTE * Math.max(Math.abs(low), Math.abs(high)) + Double.MIN_NORMAL)
                .optimize(
                        new UnivariateObjectiveFunction(f::applyAsDouble),
                        GoalType.MINIMIZE,
                        new SearchInterval(low, high),
                        new MaxEval(EVALUATIONS))
                .getPoint();
    }

    /**
     * Where a function that costs much crosses zero, on the side where it is not above zero.
     *
     * @param where what is being solved, for the exception
     * @param f the function; different signs at the ends
     * @param low lower end of the bracket
     * @param high upper end of the bracket
     * @param accuracy the search ends when the function lies within this of zero on both sides, or when the bracket is shorter
     *     than 1e-9 of the first one: a jump
     * @return the end of the last bracket at which the function is zero or less
     */
    public static double crossing(String where, DoubleUnaryOperator f, double low, double high, double accuracy) {
        double absolute = JUMP * Math.abs(high - low);
        BracketingNthOrderBrentSolver solver = new BracketingNthOrderBrentSolver(ROUNDING, absolute, accuracy, 5);
        try {
            return solver.solve(EVALUATIONS, f::applyAsDouble, low, high, AllowedSolution.BELOW_SIDE);
        } catch (TooManyEvaluationsException | MathIllegalArgumentException e) {
            double residual = Math.min(Math.abs(f.applyAsDouble(low)), Math.abs(f.applyAsDouble(high)));
            NoEquilibriumException failure =
                    new NoEquilibriumException(where, 0, new Convergence(EVALUATIONS, residual, accuracy));
            failure.initCause(e);
            throw failure;
        }
    }

    /**
     * The place of a minimum of a function that costs much.
     *
     * @param f the function
     * @param low lower end of the search
     * @param high upper end of the search
     * @param share accuracy as a share of the width of the search
     * @return where the function is least
     */
    public static double roughMinimum(DoubleUnaryOperator f, double low, double high, double share) {
        return new BrentOptimizer(ROUGH, share * Math.abs(high - low))
                .optimize(
                        new UnivariateObjectiveFunction(f::applyAsDouble),
                        GoalType.MINIMIZE,
                        new SearchInterval(low, high),
                        new MaxEval(EVALUATIONS))
                .getPoint();
    }
}
