package org.lifeline.base;

/**
 * No equilibrium was found. Says where the search was, how far it came and what was left over.
 *
 * <p>Immutable and thread-safe.
 */
public final class NoEquilibriumException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    /** What was being solved. */
    private final String where;

    /** Share of the load that was reached [-]. */
    private final double loadFactor;

    private final transient Convergence convergence;

    /**
     * An exception with the numbers of the failed search.
     *
     * @param where what was being solved, in words
     * @param loadFactor share of the load that was reached [-], from 0 to 1
     * @param convergence iterations, residual and tolerance at the end
     */
    public NoEquilibriumException(String where, double loadFactor, Convergence convergence) {
        super("no equilibrium: " + where + "; last load factor " + loadFactor + ", residual " + convergence.residual()
                + " (tolerance " + convergence.tolerance() + ") after " + convergence.iterations() + " iterations");
        this.where = where;
        this.loadFactor = loadFactor;
        this.convergence = convergence;
    }

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
     * @return the last load factor [-], from 0 to 1
     */
    public double loadFactor() {
        return loadFactor;
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
