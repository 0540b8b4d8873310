package org.lifeline.internal.svg;

import java.util.Arrays;
import org.lifeline.internal.svg.AxisScale.Range;

/**
 * Moves labels apart that would overlap.
 *
 * @param gap least distance between two [user units]
 * @param room lowest and highest place [user units]
 */
public record LabelSpacing(double gap, Range room) {

    /**
     * Places for labels in one column.
     *
     * @param wanted where they would stand best, in any order
     * @return places, in the order of wanted
     */
    public double[] spread(double[] wanted) {
        int n = wanted.length;
        Integer[] order = new Integer[n];
        Arrays.setAll(order, i -> i);
        Arrays.sort(order, (a, b) -> Double.compare(wanted[a], wanted[b]));
        double[] at = new double[n];
        double next = room.from();
        for (int i = 0; i < n; i++) {
            at[i] = Math.max(wanted[order[i]], next);
            next = at[i] + gap;
        }
        double most = room.to();
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
