package org.lifeline.internal.mechanics.motion;

/**
 * An in-line energy absorber: a massless link in the outermost segment, in line with it.
 *
 * <p>Its extension is found from the tension of the segment at the end of each step: the segment slackens by the
 * extension, elastically and in its rate, and the absorber resists by its curve; where the two agree is its extension.
 * Mutable, not thread-safe.
 */
final class InlineElement {
    private final Chain chain;
    private final boolean first;
    private final MemoryCurve curve;

    /** Extension as installed: positions are as installed, so the geometry counts from it [m]. */
    private final double installed;

    /** Extension [m] and force [N]. */
    double extension;

    double force;

    /** Work taken [J]; heat of damping that its motion accounts for in the last step [J]. */
    double work;

    double dampingHeat;

    InlineElement(Chain chain, boolean first, MemoryCurve curve, double installed) {
        this.chain = chain;
        this.first = first;
        this.curve = curve;
        this.installed = installed;
    }

    private int segment() {
        return first ? 0 : chain.nodes - 2;
    }

    /** Length of the link between anchor and cable [m]. */
    double link() {
        return extension - installed;
    }

    /** Takes a largest extension at which it yielded, and its present one. */
    void start(double yielded, double present) {
        curve.tear(yielded);
        extension = present;
        force = curve.force(present);
    }

    /** Takes the link out of the stretched length of the segment. */
    void shorten() {
        int j = segment();
        double cable = chain.stretched[j] - link();
        chain.stretched[j] = cable;
        double e = cable * chain.perLength[j] - 1;
        chain.elastic[j] = chain.law.tension(e);
        if (!chain.law.linear) {
            chain.slope[j] = chain.law.slope(e);
        }
    }

    /** Extends by what the tension of the segment asks for, and lowers that tension to the absorber's force. */
    void yield(double step) {
        int j = segment();
        double before = extension;
        double trial = chain.tension[j];
        double slope = chain.law.linear ? chain.law.stiffness : chain.slope[j];
        boolean taut = chain.elastic[j] > 0;
        double stiffness = slope * chain.perLength[j];
        double whole = stiffness * (1 + (taut ? chain.dampingTime / step : 0));
        double next = taut ? curve.meet(trial, whole, before) : Math.min(before, curve.permanent());
        double was = force;
        force = curve.force(next);
        extension = next;
        double moved = next - before;
        double tension = taut ? Math.max(0, trial - whole * moved) : 0;
        double damping = tension - Math.max(0, chain.elastic[j] - stiffness * moved);
        dampingHeat = taut ? -damping * moved : 0;
        work += 0.5 * (was + force) * moved;
        chain.tension[j] = tension;
        chain.excess[j] = tension - chain.elastic[j];
    }
}
