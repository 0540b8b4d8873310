package org.lifeline.internal.numeric;

import java.util.Arrays;
import org.apache.commons.math3.distribution.BinomialDistribution;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.stat.correlation.SpearmansCorrelation;

/** Statistics of ranks and counts, by Commons Math. */
public final class Ranks {
    private Ranks() {}

    /**
     * Rank correlations (Spearman) of several quantities with the last one, ties at their mean rank.
     *
     * @param readings one row for each reading, with the values of all quantities
     * @return one for each quantity but the last, from −1 to 1; NaN for fewer than two readings, or where one does not vary
     */
    public static double[] correlations(double[][] readings) {
        int last = readings.length == 0 ? 0 : readings[0].length - 1;
        double[] r = new double[last];
        if (readings.length < 2) {
            Arrays.fill(r, Double.NaN);
            return r;
        }
        RealMatrix all = new SpearmansCorrelation().computeCorrelationMatrix(readings);
        for (int k = 0; k < last; k++) {
            r[k] = all.getEntry(k, last);
        }
        return r;
    }

    /**
     * Ranks between which a quantile lies with a confidence, whatever the distribution (H. A. David and H. N. Nagaraja,
     * <i>Order Statistics</i>, 3rd ed., Wiley 2003, section 7.1): the number of values below the quantile is binomial.
     *
     * @param count number of values
     * @param share share of the distribution below the quantile, above 0 and below 1
     * @param confidence confidence, above 0 and below 1
     * @return lower and upper rank in rising order, from 1; 0 or count + 1 where no value is far enough out
     */
    public static long[] quantileRanks(long count, double share, double confidence) {
        double tail = 0.5 * (1 - confidence);
        if (count <= 10_000) {
            BinomialDistribution below = new BinomialDistribution(null, (int) count, share);
            return new long[] {
                below.inverseCumulativeProbability(tail), below.inverseCumulativeProbability(1 - tail) + 1L
            };
        }
        double z = -new NormalDistribution(null, 0, 1).inverseCumulativeProbability(tail);
        double half = z * Math.sqrt(count * share * (1 - share));
        return new long[] {
            Math.max(0, (long) Math.floor(count * share - half)),
            Math.min(count + 1, (long) Math.ceil(count * share + half) + 1)
        };
    }

    /**
     * The number of standard deviations of a normal distribution on both sides of its mean that hold a confidence.
     *
     * @param confidence confidence, above 0 and below 1
     * @return half width of the interval in standard deviations
     */
    public static double deviations(double confidence) {
        return -new NormalDistribution(null, 0, 1).inverseCumulativeProbability(0.5 * (1 - confidence));
    }
}
