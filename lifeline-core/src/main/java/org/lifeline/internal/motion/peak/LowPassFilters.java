package org.lifeline.internal.motion.peak;

/**
 * Several signals through second-order low-pass filters of Butterworth's kind, y″ + √2 ω y′ + ω² y = ω² u (Butterworth,
 * Wireless Engineer 7, 1930), each stepped by the trapezoidal rule with steps of any length.
 *
 * <p>A filter starts at rest at the first value that it is given. No step allocates anything. Mutable, not thread-safe.
 */
public final class LowPassFilters {
    /** Corner frequency of force records in laboratories [Hz]: near 100 Hz, recalled from test standards, not seen. */
    public static final double LABORATORY = 100;

    private final double omega;
    private final double[] input;
    private final double[] output;
    private final double[] rate;
    private boolean started;

    /**
     * Filters at rest.
     *
     * @param corner corner frequency, at which the amplitude is 1/√2 [Hz]
     * @param signals number of signals
     */
    public LowPassFilters(double corner, int signals) {
        omega = 2 * Math.PI * corner;
        input = new double[signals];
        output = new double[signals];
        rate = new double[signals];
    }

    /**
     * Takes the value of a signal for the coming step.
     *
     * @param signal number of the signal
     * @param value its value [unit of the signal]
     * @param step time since the value before [s]
     */
    public void take(int signal, double value, double step) {
        if (!started) {
            input[signal] = value;
            output[signal] = value;
            return;
        }
        double middle = 0.5 * (input[signal] + value);
        double damped = 0.5 * omega * step * (Math.sqrt(2) + 0.5 * omega * step);
        double before = rate[signal];
        double after = ((1 - damped) * before + step * omega * omega * (middle - output[signal])) / (1 + damped);
        rate[signal] = after;
        output[signal] += 0.5 * step * (before + after);
        input[signal] = value;
    }

    /** Says that every signal has been given its first value. */
    public void start() {
        started = true;
    }

    /**
     * Value of a filtered signal.
     *
     * @param signal number of the signal
     * @return value [unit of the signal]
     */
    public double value(int signal) {
        return output[signal];
    }
}
