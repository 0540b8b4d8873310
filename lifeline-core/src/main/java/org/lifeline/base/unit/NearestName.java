package org.lifeline.base.unit;

import java.util.Collection;
import java.util.Locale;
import java.util.Optional;

/**
 * Finds the known name that a misspelled one is closest to.
 *
 * @since 1.0.0
 */
public final class NearestName {
    private NearestName() {}

    /**
     * The closest known name.
     *
     * @param name the name as written
     * @param known the known names
     * @return the one at the smallest edit distance, unless that is more than half of the name
     */
    public static Optional<String> of(String name, Collection<String> known) {
        String best = null;
        int least = Integer.MAX_VALUE;
        if (name.length() <= 60) {
            for (String each : known) {
                int d = 2 * distance(name.toLowerCase(Locale.ROOT), each.toLowerCase(Locale.ROOT))
                        + (name.equalsIgnoreCase(each) ? 0 : 1);
                if (d < least) {
                    least = d;
                    best = each;
                }
            }
        }
        return least <= Math.max(3, name.length()) + 1 ? Optional.ofNullable(best) : Optional.empty();
    }

    /** Edit distance with swaps of neighbours (optimal string alignment). */
    static int distance(String a, String b) {
        int[][] d = new int[a.length() + 1][b.length() + 1];
        for (int i = 0; i <= a.length(); i++) {
            d[i][0] = i;
        }
        for (int j = 0; j <= b.length(); j++) {
            d[0][j] = j;
        }
        for (int i = 1; i <= a.length(); i++) {
            for (int j = 1; j <= b.length(); j++) {
                int cost = a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1;
                d[i][j] = Math.min(Math.min(d[i - 1][j], d[i][j - 1]) + 1, d[i - 1][j - 1] + cost);
                if (i > 1 && j > 1 && a.charAt(i - 1) == b.charAt(j - 2) && a.charAt(i - 2) == b.charAt(j - 1)) {
                    d[i][j] = Math.min(d[i][j], d[i - 2][j - 2] + 1);
                }
            }
        }
        return d[a.length()][b.length()];
    }
}
