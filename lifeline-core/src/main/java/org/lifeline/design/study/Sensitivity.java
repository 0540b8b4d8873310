package org.lifeline.design.study;

import org.lifeline.design.variable.DesignVariable;

/**
 * How much a response depends on a variable.
 *
 * <p>Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public final class Sensitivity {
    private final DesignVariable variable;
    private final double regression;
    private final double correlation;
    private final double rankCorrelation;

    Sensitivity(DesignVariable variable, double regression, double correlation, double rankCorrelation) {
        this.variable = variable;
        this.regression = regression;
        this.correlation = correlation;
        this.rankCorrelation = rankCorrelation;
    }

    /**
     * The variable.
     *
     * @return the variable
     */
    public DesignVariable variable() {
        return variable;
    }

    /**
     * Standardised regression coefficient: by how many of its standard deviations the response moves when the variable moves by
     * one of its own. Its square is the share of the variance that the variable explains, as far as the response is linear and
     * the variables are independent.
     *
     * @return coefficient [-]; NaN where it cannot be told
     */
    public double regression() {
        return regression;
    }

    /**
     * Correlation (Pearson) of response and variable.
     *
     * @return from −1 to 1 [-]; NaN where one does not vary
     */
    public double correlation() {
        return correlation;
    }

    /**
     * Rank correlation (Spearman), which also sees a dependence that is not a straight line as long as it rises or falls
     * throughout; from the first 4,096 cases with a value.
     *
     * @return from −1 to 1 [-]; NaN where one does not vary
     */
    public double rankCorrelation() {
        return rankCorrelation;
    }

    @Override
    public String toString() {
        return variable.name() + ": regression " + regression + ", rank correlation " + rankCorrelation;
    }
}
