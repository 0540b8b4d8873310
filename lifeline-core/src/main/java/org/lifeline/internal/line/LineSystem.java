package org.lifeline.internal.line;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.lifeline.model.InlineAbsorber;
import org.lifeline.model.Support;
import org.lifeline.model.cable.LoadElongation;

/**
 * The numbers of a line: supports, spans, cable and the places of its loads. Which unknown stands where is told by
 * {@link Unknowns}, what follows from a state by {@link LineForces}. Lengths and references are filled in by
 * {@code Installation} and do not change afterwards. Not thread-safe until then.
 */
public final class LineSystem {
    public final int spans;

    /** Weight per unstretched length at the temperature of installation [N/m]. */
    public final double weight;

    public final LoadElongation law;

    /** Positions of the supports as installed [m]. */
    public final double[] px;

    public final double[] py;
    public final double[] pz;

    /** Compliance of the supports [m/N] and the force that they hold as installed [N], by x, y, z one after the other. */
    public final double[] compliance;

    public final double[] reference;

    /** Coefficient of friction of the supports [-]; 0 where the cable is clamped. */
    public final double[] friction;

    public final boolean[] clamped;

    /** Unstretched lengths of the spans as installed, and chords between their supports [m]. */
    public final double[] length;

    public final double[] chord;
    public final @Nullable InlineAbsorber[] absorbers;

    /** Extension of the in-line absorbers as installed; positions are as installed, so the geometry counts from it. */
    public final double[] installedExtension;

    /** The loads in their order along the cable: span of each, first one of each span, whether it grips the cable. */
    public final int loads;

    public final int[] loadSpan;
    public final int[] firstLoad;
    public final boolean[] gripped;

    /** Support on which a load pulls; −1 for a load on the cable. A load at a support never takes part in the cable. */
    public final int[] pulledSupport;

    /** Tells whether any support yields. */
    public final boolean elastic;

    public final Unknowns unknowns;
    public final LineForces forces;

    /** A line without loads. */
    public LineSystem(List<Support> supports, double weight, LoadElongation law) {
        this.spans = supports.size() - 1;
        this.weight = weight;
        this.law = law;
        int n = supports.size();
        px = new double[n];
        py = new double[n];
        pz = new double[n];
        compliance = new double[3 * n];
        reference = new double[3 * n];
        friction = new double[n];
        clamped = new boolean[n];
        length = new double[spans];
        chord = new double[spans];
        boolean yields = false;
        for (int i = 0; i < n; i++) {
            Support s = supports.get(i);
            px[i] = s.position().x();
            py[i] = s.position().y();
            pz[i] = s.position().z();
            compliance[3 * i] = 1 / s.stiffness().x();
            compliance[3 * i + 1] = 1 / s.stiffness().y();
            compliance[3 * i + 2] = 1 / s.stiffness().z();
            yields |= !s.stiffness().isRigid();
            clamped[i] = Double.isInfinite(s.passage().friction());
            friction[i] = clamped[i] ? 0 : s.passage().friction();
            if (i > 0) {
                chord[i - 1] = s.position().distance(supports.get(i - 1).position());
            }
        }
        elastic = yields;
        absorbers = new @Nullable InlineAbsorber[2];
        installedExtension = new double[2];
        absorbers[0] = supports.get(0).inlineAbsorber().orElse(null);
        absorbers[1] = supports.get(n - 1).inlineAbsorber().orElse(null);
        loads = 0;
        loadSpan = new int[0];
        gripped = new boolean[0];
        pulledSupport = new int[0];
        firstLoad = new int[spans + 1];
        unknowns = new Unknowns(this, Unknowns.isPlanar(this));
        forces = new LineForces(this);
    }

    /** The same line with loads; shares everything else with the line that it is made from. */
    public LineSystem(LineSystem line, List<LoadSlot> slots) {
        spans = line.spans;
        weight = line.weight;
        law = line.law;
        px = line.px;
        py = line.py;
        pz = line.pz;
        compliance = line.compliance;
        reference = line.reference;
        friction = line.friction;
        clamped = line.clamped;
        length = line.length;
        chord = line.chord;
        elastic = line.elastic;
        absorbers = line.absorbers;
        installedExtension = line.installedExtension;
        loads = slots.size();
        loadSpan = new int[loads];
        gripped = new boolean[loads];
        pulledSupport = new int[loads];
        firstLoad = new int[spans + 1];
        for (int j = 0; j < loads; j++) {
            loadSpan[j] = slots.get(j).span();
            gripped[j] = slots.get(j).gripped();
            pulledSupport[j] = slots.get(j).support();
        }
        for (int i = 0, j = 0; i <= spans; i++) {
            while (j < loads && loadSpan[j] < i) {
                j++;
            }
            firstLoad[i] = j;
        }
        unknowns = new Unknowns(this, line.unknowns.planar);
        forces = new LineForces(this);
    }

    /** Tells whether a support yields. */
    boolean yields(int support) {
        return compliance[3 * support] != 0 || compliance[3 * support + 1] != 0 || compliance[3 * support + 2] != 0;
    }

    /** Coordinate (0, 1, 2) of a support as installed [m]. */
    public double coordinate(int support, int c) {
        return c == 0 ? px[support] : c == 1 ? py[support] : pz[support];
    }

    /** Tells whether a load pulls on a support and not on the cable. */
    public boolean pullsOnSupports() {
        for (int support : pulledSupport) {
            if (support >= 0) {
                return true;
            }
        }
        return false;
    }
}
