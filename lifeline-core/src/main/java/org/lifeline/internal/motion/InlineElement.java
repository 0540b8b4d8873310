package org.lifeline.internal.motion;

import org.lifeline.internal.motion.law.HystereticCurve;

/**
 * An in-line energy absorber: a massless link in the outermost segment, in line with it.
 *
 * <p>With its extension e the cable of the segment has the strain (ℓ − e)/L − 1. Within a step e grows by Δ until the
 * tension is the absorber's force: T = F + s Δ on one straight line of its curve, and
 * T = T₀ + κ (ℓ̇ − Δ/h) − k Δ in the cable, with k = EA/L and κ = EA τ/L. Eliminating Δ leaves a row of the damping
 * forces' system, so that the neighbours feel the absorber yield within the step. If Δ leads off the line, the step is
 * solved again on the next one.
 *
 * <p>Mutable, not thread-safe.
 */
final class InlineElement {
    private final LumpedMassChain chain;
    private final boolean first;
    private final HystereticCurve curve;

    /** Extension as installed: positions are as installed, so the geometry counts from it [m]. */
    private final double installed;

    /** Extension [m] and force [N]. */
    double extension;

    double force;

    /** Work taken [J]; heat of damping that its motion takes out of the last step [J]. */
    double work;

    double dampingHeat;

    /** Energy lost when it drew in a slack cable at the last step [J]. */
    double settlingHeat;

    private boolean settled;
    private int line;
    private int changes;
    private double slope;
    private double lineForce;
    private double stiffness;
    private double addedDiagonal;
    private double addedRate;

    InlineElement(LumpedMassChain chain, boolean first, HystereticCurve curve, double installed) {
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

    /** Force at an extension that is only thought of [N]. */
    double forceIf(double thought) {
        return curve.forceIf(thought);
    }

    /** Takes a largest extension at which it yielded, and its present one. */
    void start(double yielded, double present) {
        curve.tear(yielded);
        extension = present;
        force = curve.force(present);
        line = -1;
        keepLink();
    }

    /**
     * Takes the link out of the stretched length of the segment. Where the cable has gone slack while the absorber is
     * still stretched, the absorber draws it in until both pull alike, or until it has given back what it can.
     */
    void shorten() {
        int j = segment();
        double cable = chain.stretched[j] - link();
        double e = cable * chain.perLength[j] - 1;
        settled = e < 0 && extension > curve.permanent();
        settlingHeat = 0;
        if (settled) {
            double given = settle(chain.law.stiffness * chain.perLength[j], -e * chain.length[j]);
            cable = chain.stretched[j] - link();
            e = cable * chain.perLength[j] - 1;
            work -= given;
            settlingHeat = given - chain.length[j] * chain.law.energy(e);
        }
        chain.stretched[j] = cable;
        chain.elastic[j] = chain.law.tension(e);
        chain.slope[j] = chain.law.slope(e);
        keepLink();
    }

    /** Draws in slack [m] of a cable of a stiffness [N/m], by the stop first if it is used; tells what that gives back [J]. */
    private double settle(double k, double slack) {
        double before = extension;
        double given = 0;
        if (before > curve.end()) {
            given = draw(curve.slopeOf(curve.stopLine()), curve.end(), k, slack);
        }
        if (extension <= curve.end()) {
            given += draw(curve.slopeOf(-1), curve.permanent(), k, slack - (before - extension));
        }
        line = curve.lineAt(extension);
        return given;
    }

    private double draw(double steepness, double least, double k, double slack) {
        double from = extension;
        double was = force;
        extension = Math.max(least, from - Math.max(0, (was + k * slack) / (steepness + k)));
        force = curve.force(extension);
        return 0.5 * (was + force) * (from - extension);
    }

    private void keepLink() {
        if (first) {
            chain.firstLink = link();
        } else {
            chain.lastLink = link();
        }
    }

    /** Puts its yielding into the row of its segment. */
    void addRow(double kick) {
        int j = segment();
        stiffness = chain.slope[j] * chain.perLength[j];
        addedDiagonal = 0;
        addedRate = 0;
        changes = 0;
        if (chain.elastic[j] > 0) {
            writeRow(kick);
        }
    }

    private void writeRow(double kick) {
        int j = segment();
        slope = Math.max(curve.slopeOf(line), NumericalParameters.FLAT_SLOPE * stiffness);
        lineForce = curve.forceOn(line, extension);
        double soft = (1 / chain.dampingTime + 1 / kick) / slope;
        double off = -soft * (chain.elastic[j] - lineForce);
        chain.diagonal[j] += soft - addedDiagonal;
        chain.rate[j] += off - addedRate;
        addedDiagonal = soft;
        addedRate = off;
    }

    private double moved() {
        return (chain.tension[segment()] - lineForce) / slope;
    }

    /** Looks whether the extension that came out lies on the line that was assumed. */
    boolean revise(double kick) {
        int j = segment();
        if (chain.elastic[j] <= 0 || changes > NumericalParameters.MOST_LINE_CHANGES) {
            return false;
        }
        int wish = curve.lineAt(extension + moved());
        if (wish == line) {
            return false;
        }
        line = wish;
        changes++;
        writeRow(kick);
        return true;
    }

    /**
     * Takes the extension of the step.
     *
     * @param kick length of the step [s]
     * @param anchor the anchor that it is fixed to
     * @param neighbour the next joint along the cable, which may be the other end of the segment
     */
    void finish(double kick, Joint anchor, Joint neighbour) {
        int j = segment();
        double before = extension;
        double was = force;
        boolean taut = chain.elastic[j] > 0;
        double next = taut ? Math.max(before + moved(), curve.permanent()) : Math.min(before, curve.permanent());
        double delta = next - before;
        extension = next;
        force = curve.force(next);
        work += 0.5 * (was + force) * delta;
        line = curve.lineAt(
                next * (1 + NumericalParameters.EXTENSION_ROUNDING) + NumericalParameters.EXTENSION_ROUNDING);
        // The cable slackens elastically within the step: that part of the tension is not damping.
        double old = chain.elastic[j];
        double fresh = Math.max(0, old - stiffness * delta);
        double change = fresh - old;
        int free = first ? 1 : j;
        // A pull that comes all at once acts from the present positions on, which is half of the kick.
        double pull = settled ? change - 0.5 * fresh : change;
        if (neighbour.node == free) {
            neighbour.retension(j, pull, kick);
        } else {
            chain.retension(free, j, kick * chain.mobility[free] * pull);
        }
        anchor.retension(j, pull, kick);
        chain.elastic[j] = fresh;
        chain.excess[j] = chain.tension[j] - fresh;
        dampingHeat = -chain.excess[j] * delta;
        keepLink();
        if (first) {
            chain.firstLinkRate = delta / kick;
        } else {
            chain.lastLinkRate = delta / kick;
        }
    }
}
