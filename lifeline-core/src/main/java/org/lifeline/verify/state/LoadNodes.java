package org.lifeline.verify.state;

import java.util.List;
import org.lifeline.analysis.state.LoadPosition;
import org.lifeline.base.Violations;

/**
 * Which load hangs at which node of a span.
 *
 * @since 1.0.0
 */
public final class LoadNodes {
    private LoadNodes() {}

    /**
     * The node of each load: pairs are made by the smallest difference of place, and of force where loads touch.
     *
     * @param span the span
     * @param loads the loads of the span
     * @return for each load the number of the piece, from 0, at whose end it hangs
     * @throws org.lifeline.base.InvalidInputException if something is missing, or if there are fewer pieces than loads
     */
    public static int[] of(SpanNumbers span, List<LoadPosition> loads) {
        Violations.required("span", span);
        int n = Violations.requiredAll("loads", loads).size();
        new Violations().atLeast("span.pieces", span.pieces().size(), n).throwIfAny();
        int[] node = new int[n];
        boolean[] placed = new boolean[n];
        boolean[] taken = new boolean[n];
        double chord = span.first().distance(span.second());
        for (int round = 0; round < n; round++) {
            double best = Double.POSITIVE_INFINITY;
            int load = -1;
            int at = -1;
            for (int i = 0; i < n; i++) {
                for (int k = 0; k < n; k++) {
                    if (!placed[i] && !taken[k]) {
                        double d = mismatch(span.pieces().get(k), loads.get(i), chord);
                        if (load < 0 || d < best) {
                            best = d;
                            load = i;
                            at = k;
                        }
                    }
                }
            }
            node[load] = at;
            placed[load] = true;
            taken[at] = true;
        }
        return node;
    }

    private static double mismatch(PieceNumbers p, LoadPosition load, double chord) {
        double carried = load.restsOn().isPresent() ? 0 : load.force();
        double most = Math.max(Math.max(p.load(), load.force()), Double.MIN_NORMAL);
        return p.end().distance(load.point()) / chord + Math.abs(p.load() - carried) / most;
    }
}
