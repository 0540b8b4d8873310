package org.lifeline.design.envelope;

/** Every tolerance of the search for the worst values, with its reason and its unit. */
final class EnvelopeTolerances {
    /**
     * Share by which a value must exceed another one to be worse [-]. Equilibria are solved to a relative residual far below it,
     * so that cases of equal value, as the two halves of a symmetric line give, are told apart by the stated order of the
     * cases and not by rounding.
     */
    static final double TIE = 1e-9;

    /** Distance between two samples below which no third is placed between them [m]; the envelope promises 1 mm. */
    static final double FINEST = 1e-3;

    /** Least distance of two first stations over the length of the span [-]; slopes between nearer ones would be noise. */
    static final double STATIONS_APART = 1e-3;

    /** Least distance of the second station from the first over the length of the span [-]; above that, or it would be left out. */
    static final double SECOND_STATION = 1.5 * STATIONS_APART;

    /** Least distance of two places at which the other combinations are tried [m]; nearer ones give the same value. */
    static final double PLACES_APART = 0.02;

    /** Samples that one quantity may ask for on one span [-]; ends a search that does not close in. */
    static final int MOST_SAMPLES = 48;

    /** Part of an interval next to each end in which no sample is placed [-], so that intervals shrink on both sides. */
    static final double INTERVAL_MARGIN = 0.1;

    /** Part of the gain by which a combination must be worse at a tried place to be searched along the line [-]. */
    static final double PROBE_SHARE = 0.5;

    /** Gain that is not looked for in an elevation or a margin [m]: a tenth of a millimetre, which no site measures. */
    static final double ELEVATION_GAIN = 1e-4;

    /**
     * Share of a value below which a gain is not looked for any further [-]: a tenth of the 0.1 % that is promised, so that
     * the search for a root over several envelopes sees a smooth curve.
     */
    private static final double SHARE = 1e-4;

    /** Least gain in a force [N]; below the printed digit. */
    private static final double FORCE_GAIN = 0.1;

    /** Least gain in a length [m] or an angle [rad]; below the printed digit. */
    private static final double SMALL_GAIN = 1e-5;

    private EnvelopeTolerances() {}

    /** Tells whether a value is worse than another one by more than rounding; larger is worse. */
    static boolean isWorse(double value, double known) {
        return value > known + TIE * Math.abs(known);
    }

    /** Gain over a value that is too small to be looked for [unit of the value]. */
    static double gain(String unit, double value) {
        return Math.max(SHARE * Math.abs(value), unit.equals("N") ? FORCE_GAIN : SMALL_GAIN);
    }
}
