package org.lifeline.design.study;

/**
 * A quantile from a sample, with the range in which the true one lies with a confidence of 95 %.
 *
 * <p>The range holds whatever the distribution (order statistics; H. A. David and H. N. Nagaraja, <i>Order Statistics</i>,
 * 3rd ed., Wiley 2003, section 7.1). Beside it every value is known to 0.01 % of itself only, since values are counted in
 * bins of that width. Immutable and thread-safe.
 *
 * @param share share of the distribution below the quantile [-]
 * @param value the quantile of the sample [unit of the response]
 * @param low lower end of the range [unit of the response]; −∞ when the sample is too small to tell
 * @param high upper end of the range [unit of the response]; ∞ when the sample is too small to tell
 * @since 1.0.0
 */
public record QuantileEstimate(double share, double value, double low, double high) {}
