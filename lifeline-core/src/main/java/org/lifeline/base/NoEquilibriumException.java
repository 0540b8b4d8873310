package org.lifeline.base;

import java.util.OptionalDouble;

/**
 * No equilibrium was found. Says where the search was, how far it came and what was left over.
 *
 * <p>Survives serialization. Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public final class NoEquilibriumException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    /** What was being solved. */
    private final String where;

    /** Share of the load that was reached [-]. */
    private final double loadFactor;

    /** The load that was reached [N]; NaN where no load was being put on. */
    private final double load;

    /** Iterations, residual and tolerance at the end. */
    private final Convergence convergence;

    /**
     * An exception with the numbers of the failed search.
     *
     * @param where what was being solved, in words
     * @param loadFactor share of the load that was reached [-], from 0 to 1
     * @param convergence iterations, residual and tolerance at the end
     */
    public NoEquilibriumException(String where, double loadFactor, Convergence convergence) {
        this(where, new Reached(loadFactor, Double.NaN), convergence);
    }

    /**
     * An exception with the numbers of a search that had come as far as a load.
     *
     * @param where what was being solved, in words
     * @param reached how far the load came
     * @param convergence iterations, residual and tolerance at the end
     */
    public NoEquilibriumException(String where, Reached reached, Convergence convergence) {
        super("no equilibrium: " + where + "; last load factor " + reached.share
                + (Double.isNaN(reached.load) ? "" : ", load " + reached.load + " N") + ", residual "
                + convergence.residual() + " (tolerance " + convergence.tolerance() + ") after "
                + convergence.iterations() + " iterations");
        this.where = where;
        this.loadFactor = reached.share;
        this.load = reached.load;
        this.convergence = convergence;
    }

    /**
     * How far a load came before equilibrium was lost.
     *
     * @param share share of the load [-], from 0 to 1; 0 where the whole load was not known
     * @param load the load that was still carried [N], not negative; NaN where no load was being put on
     * @since 1.0.0
     */
    public record Reached(double share, double load) {}

    /**
     * What was being solved.
     *
     * @return the place in words
     */
    public String where() {
        return where;
    }

    /**
     * Share of the load that was reached.
     *
     * @return the last load factor [-], from 0 to 1; 0 where the whole load was not known
     */
    public double loadFactor() {
        return loadFactor;
    }

    /**
     * The load on the line up to which equilibria were found.
     *
     * @return the load [N]; empty where no load was being put on: at installation, at another temperature, in a motion
     */
    public OptionalDouble load() {
        return Double.isNaN(load) ? OptionalDouble.empty() : OptionalDouble.of(load);
    }

    /**
     * Numbers of the failed iteration.
     *
     * @return iterations, residual and tolerance
     */
    public Convergence convergence() {
        return convergence;
    }
}
