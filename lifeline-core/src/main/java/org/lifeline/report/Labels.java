package org.lifeline.report;

import java.util.Arrays;

/** Moves labels apart that would overlap. */
final class Labels {
    private Labels() {}

    /**
     * Places for labels in one column.
     *
     * @param wanted where they would stand best, in any order
     * @param gap least distance between two
     * @param low lowest place
     * @param high highest place
     * @return places, in the order of wanted
     */
    static double[] spread(double[] wanted, double gap, double low, double high) {
        int n = wanted.length;
        Integer[] order = new Integer[n];
        Arrays.setAll(order, i -> i);
        Arrays.sort(order, (a, b) -> Double.compare(wanted[a], wanted[b]));
        double[] at = new double[n];
        double next = low;
        for (int i = 0; i < n; i++) {
            at[i] = Math.max(wanted[order[i]], next);
            next = at[i] + gap;
        }
        double most = high;
        for (int i = n - 1; i >= 0; i--) {
            at[i] = Math.min(at[i], most);
            most = at[i] - gap;
        }
        double[] result = new double[n];
        for (int i = 0; i < n; i++) {
            result[order[i]] = at[i];
        }
        return result;
    }
}
