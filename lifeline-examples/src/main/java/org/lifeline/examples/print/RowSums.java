package org.lifeline.examples.print;

/**
 * Rounds the rows of an account so that the printed rows add up to the printed sum: each row is rounded up or down, those
 * with the largest remainders up.
 */
final class RowSums {
    private RowSums() {}

    /**
     * Rounds rows.
     *
     * @param rows the rows
     * @param decimals decimals that are printed
     * @return the rounded rows; their sum is the rounded sum of the rows
     */
    static double[] round(double[] rows, int decimals) {
        double scale = Math.pow(10, decimals);
        long[] units = new long[rows.length];
        double[] remainder = new double[rows.length];
        double sum = 0;
        long given = 0;
        for (int i = 0; i < rows.length; i++) {
            double scaled = rows[i] * scale;
            double near = Math.rint(scaled);
            double exact = Math.abs(scaled - near) < 1e-6 ? near : scaled;
            units[i] = (long) Math.floor(exact);
            remainder[i] = exact - units[i];
            sum += exact;
            given += units[i];
        }
        for (long left = Math.round(sum) - given; left > 0; left--) {
            int most = 0;
            for (int i = 1; i < rows.length; i++) {
                most = remainder[i] > remainder[most] ? i : most;
            }
            units[most]++;
            remainder[most] = -1;
        }
        double[] rounded = new double[rows.length];
        for (int i = 0; i < rows.length; i++) {
            rounded[i] = units[i] / scale;
        }
        return rounded;
    }
}
