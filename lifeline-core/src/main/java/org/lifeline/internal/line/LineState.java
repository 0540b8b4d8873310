package org.lifeline.internal.line;

import java.util.Arrays;

/**
 * A state of a whole line: the unknowns, what is held, and what the past has left behind. Mutable, internal, not
 * thread-safe.
 */
public final class LineState {
    /** The cable does not move through the support. */
    public static final int STUCK = 0;
    /** The cable runs through the support; no friction, or toward the span behind it (T behind is higher). */
    public static final int RUNS_ON = 1;
    /** The cable runs through the support toward the span before it (T before is higher). */
    public static final int RUNS_BACK = -1;

    /** A gripped load behind the support has come up to it: no more cable runs toward the start. */
    public static final int JAMMED_BACK = -2;
    /** A gripped load before the support has come up to it: no more cable runs toward the end. */
    public static final int JAMMED_ON = 2;

    /** A load that holds a material point. */
    public static final int GRIPPED = 0;
    /** A load that is free to run and does. */
    public static final int RUNNING = 1;
    /** A free-running load that rests against what bounds it at its start side. */
    public static final int AT_START = 2;
    /** A free-running load that rests against what bounds it at its end side. */
    public static final int AT_END = 3;
    /** A free-running load that stays with the free-running load before it. */
    public static final int FOLLOWS = 4;

    /** Tension vectors at the first support of each span, x, y, z one after the other [N]. */
    public final double[] tension;

    /** Unstretched length that has passed each support since installation, positive toward the start [m]. */
    public final double[] slip;

    /** How the cable passes each support now. */
    public final int[] passage;

    /** Downward force of each load [N]. */
    public final double[] force;

    /** Material coordinate of each load within its span as installed [m]. */
    public final double[] coordinate;

    /** Mode of each load. */
    public final int[] mode;

    /** Tells which loads take part. */
    public final boolean[] active;

    /** Extension of the in-line absorbers at the two ends [m]. */
    public final double[] extension = new double[2];

    /** Largest yield extension so far of the in-line absorbers [m]. */
    public final double[] yielded = new double[2];

    /** Tells whether an in-line absorber is being pulled along its curve. */
    public final boolean[] yielding = new boolean[2];

    /** The straight piece of its curve on which an in-line absorber yields. */
    public final int[] piece = new int[2];

    /** Factor on unstretched lengths by temperature [-]. */
    public double thermal = 1;

    public LineState(int spans, int loads) {
        tension = new double[3 * spans];
        slip = new double[spans + 1];
        passage = new int[spans + 1];
        force = new double[loads];
        coordinate = new double[loads];
        mode = new int[loads];
        active = new boolean[loads];
    }

    public void set(LineState from) {
        System.arraycopy(from.tension, 0, tension, 0, tension.length);
        System.arraycopy(from.slip, 0, slip, 0, slip.length);
        System.arraycopy(from.passage, 0, passage, 0, passage.length);
        System.arraycopy(from.force, 0, force, 0, force.length);
        System.arraycopy(from.coordinate, 0, coordinate, 0, coordinate.length);
        System.arraycopy(from.mode, 0, mode, 0, mode.length);
        System.arraycopy(from.active, 0, active, 0, active.length);
        for (int i = 0; i < 2; i++) {
            extension[i] = from.extension[i];
            yielded[i] = from.yielded[i];
            yielding[i] = from.yielding[i];
            piece[i] = from.piece[i];
        }
        thermal = from.thermal;
    }

    /** Takes over what an iteration changes. */
    public void setUnknowns(LineState from) {
        System.arraycopy(from.tension, 0, tension, 0, tension.length);
        System.arraycopy(from.slip, 0, slip, 0, slip.length);
        System.arraycopy(from.coordinate, 0, coordinate, 0, coordinate.length);
        extension[0] = from.extension[0];
        extension[1] = from.extension[1];
    }

    public LineState copy() {
        LineState c = new LineState(tension.length / 3, force.length);
        c.set(this);
        return c;
    }

    /** Tells whether both states hold the same and let go of the same. */
    public boolean hasModesOf(LineState other) {
        return Arrays.equals(passage, other.passage)
                && Arrays.equals(mode, other.mode)
                && Arrays.equals(active, other.active)
                && Arrays.equals(yielding, other.yielding)
                && Arrays.equals(piece, other.piece);
    }
}
