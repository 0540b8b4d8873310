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
    private double damped;
    private double gain;
    private double half;
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
     * Begins a step of all signals.
     *
     * @param step time since the values before [s]
     */
    public void step(double step) {
        damped = 0.5 * omega * step * (Math.sqrt(2) + 0.5 * omega * step);
        gain = step * omega * omega;
        half = 0.5 * step;
    }

    /**
     * Takes the value of a signal at the end of the step.
     *
     * @param signal number of the signal
     * @param value its value [unit of the signal]
     */
    public void take(int signal, double value) {
        if (!started) {
            input[signal] = value;
            output[signal] = value;
            return;
        }
        double middle = 0.5 * (input[signal] + value);
        double before = rate[signal];
        double after = ((1 - damped) * before + gain * (middle - output[signal])) / (1 + damped);
        rate[signal] = after;
        output[signal] += half * (before + after);
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
