package org.lifeline.internal.line;

/**
 * Which unknown of a {@link LineSystem} stands where, and how wide the band of its tangent is.
 *
 * <p>Span by span: the tension vector at the span's first support (3, or 2 where the line is {@link #planar}), the
 * coordinates of its free-running loads, and the slip at its second support; the extension of an in-line absorber stands
 * after the first tension vector and at the end of the list. The equations stand in the same order: the span fits between
 * its supports, each free-running load has equal tension on both sides or rests against its bound, the cable sticks at the
 * support or the ratio of tensions is on its limit, an in-line absorber is elastic, on its curve or at its stop. The width
 * of the band does not grow with the number of spans. Immutable and thread-safe.
 */
public final class Unknowns {
    private final LineSystem system;
    private final int count;
    private final int[] block;
    private final int[] loadIndex;

    /**
     * Tells whether the line is straight in plan and no support can leave its vertical plane. A tension vector then counts
     * as two unknowns, along the line in plan and up, and a span has two equations.
     */
    public final boolean planar;

    /** Direction of a planar line in plan [-]. */
    public final double ux;

    public final double uy;

    /** Where the vertical component of a tension vector stands after its first one. */
    public final int up;

    /** Number of diagonals of the tangent below and above the main one. */
    public final int lower;

    public final int upper;

    Unknowns(LineSystem system, boolean planar) {
        this.system = system;
        this.planar = planar;
        double x = system.px[system.spans] - system.px[0];
        double y = system.py[system.spans] - system.py[0];
        double run = Math.sqrt(x * x + y * y);
        ux = x / run;
        uy = y / run;
        up = planar ? 1 : 2;
        loadIndex = new int[system.loads];
        block = new int[system.spans + 1];
        count = number();
        lower = reachToLeft();
        upper = reachToRight();
    }

    /** Tells whether a line is straight in plan and stays in its vertical plane. */
    static boolean isPlanar(LineSystem line) {
        double x = line.px[line.spans] - line.px[0];
        double y = line.py[line.spans] - line.py[0];
        for (int i = 0; i < line.spans; i++) {
            double dx = line.px[i + 1] - line.px[i];
            double dy = line.py[i + 1] - line.py[i];
            // Nor is a line that ends above its start.
            if (!(Math.abs(dx * y - dy * x) < LineTolerances.STRAIGHT * (dx * x + dy * y))) {
                return false;
            }
        }
        boolean alongAxis = x == 0 || y == 0;
        for (int i = 0; i <= line.spans; i++) {
            if (!alongAxis && line.compliance[3 * i] != line.compliance[3 * i + 1]) {
                return false;
            }
        }
        return true;
    }

    /** Numbers the unknowns; returns how many there are. */
    private int number() {
        int at = 0;
        for (int i = 0; i < system.spans; i++) {
            block[i] = at;
            at += up + (i == 0 && system.absorbers[0] != null ? 2 : 1);
            for (int j = system.firstLoad[i]; j < system.firstLoad[i + 1]; j++) {
                loadIndex[j] = system.gripped[j] ? -1 : at++;
            }
            if (i < system.spans - 1) {
                at++;
            }
        }
        block[system.spans] = at;
        return at + (system.absorbers[1] == null ? 0 : 1);
    }

    /** Largest distance from the diagonal of a derivative that is not zero, to the left. */
    private int reachToLeft() {
        int most = Math.max(up, count - 1 - slipBefore(system.spans - 1));
        for (int i = 0; i < system.spans; i++) {
            // The slip behind a span by the slip before it, or by its first tension.
            most = Math.max(most, block[i + 1] - 1 - slipBefore(i));
            if (i > 0 && system.yields(i)) {
                most = Math.max(most, block[i] - block[i - 1]);
            }
            if (i > 1 && system.compliance[3 * i + 2] != 0) {
                // A support that yields vertically moves by the weight of the whole span before it.
                most = Math.max(most, block[i] + up - slipBefore(i - 1));
            }
        }
        return most;
    }

    /** The same to the right. */
    private int reachToRight() {
        int most = count - 1 - block[system.spans - 1];
        for (int i = 0; i < system.spans; i++) {
            most = Math.max(most, block[i + 1] - 1 - block[i]);
            if (i > 0 && system.yields(i)) {
                // An elastic support joins the tensions of two spans.
                most = Math.max(most, block[i] - block[i - 1]);
            }
        }
        return most;
    }

    private int slipBefore(int span) {
        return span > 0 ? block[span] - 1 : 0;
    }

    /** How many unknowns there are. */
    public int count() {
        return count;
    }

    /** Index of the tension vector of a span in the list of unknowns. */
    public int tensionIndex(int span) {
        return block[span];
    }

    /** Index of the slip at an intermediate support (1 … n−1); −1 at the first one. */
    public int slipIndex(int support) {
        return block[support] - 1;
    }

    /** Index of the coordinate of a free-running load. */
    public int loadIndex(int load) {
        return loadIndex[load];
    }

    /** Index of the extension of the absorber at an end (0 or 1). */
    public int extensionIndex(int end) {
        return end == 0 ? up + 1 : count - 1;
    }

    /** Index of the slip at any support, or −1 at an end. */
    public int slipColumn(int support) {
        return support == system.spans ? -1 : slipIndex(support);
    }

    /** First component of the tension of a span as an unknown [N]: along a planar line, else along x. */
    public double along(LineState s, int span) {
        return planar ? ux * s.tension[3 * span] + uy * s.tension[3 * span + 1] : s.tension[3 * span];
    }

    /** Second component of the tension of a span [N]: along y; none where the line is planar. */
    public double across(LineState s, int span) {
        return planar ? 0 : s.tension[3 * span + 1];
    }

    /** Compliance of a support in the direction of an unknown component of tension [m/N]. */
    public double compliance(int support, int component) {
        double x = system.compliance[3 * support];
        double y = system.compliance[3 * support + 1];
        return component == up
                ? system.compliance[3 * support + 2]
                : planar ? ux * ux * x + uy * uy * y : component == 0 ? x : y;
    }

    /** The same component in a list of the unknowns or of their derivatives. */
    public double across(double[] unknowns, int span) {
        return planar ? 0 : unknowns[tensionIndex(span) + 1];
    }
}
