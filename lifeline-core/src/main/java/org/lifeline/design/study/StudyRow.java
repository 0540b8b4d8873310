package org.lifeline.design.study;

import java.util.Arrays;
import org.lifeline.base.Violations;

/**
 * One case of a study: values of the variables, and either the responses or the reason why there are none.
 *
 * <p>Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public final class StudyRow {
    private final long number;
    private final double[] inputs;
    private final double[] outputs;
    private final String reason;

    StudyRow(long number, double[] inputs, double[] outputs, String reason) {
        this.number = number;
        this.inputs = inputs;
        this.outputs = outputs;
        this.reason = reason;
    }

    /**
     * Number of the case.
     *
     * @return the number, from 1
     */
    public long number() {
        return number;
    }

    /**
     * Value of a variable.
     *
     * @param variable number of the variable, from 0
     * @return the value [unit of the variable]
     */
    public double input(int variable) {
        return inputs[Violations.requiredIndex("variable", variable, inputs.length)];
    }

    /**
     * Value of a response.
     *
     * @param response number of the response, from 0
     * @return the value [unit of the response]; NaN where the case failed or has none
     */
    public double output(int response) {
        return outputs.length == 0
                ? Double.NaN
                : outputs[Violations.requiredIndex("response", response, outputs.length)];
    }

    /**
     * Tells whether the case has no result.
     *
     * @return true if it failed
     */
    public boolean failed() {
        return !reason.isEmpty();
    }

    /**
     * Why the case has no result.
     *
     * @return the reason; empty when it has one
     */
    public String reason() {
        return reason;
    }

    double[] inputs() {
        return inputs;
    }

    double[] outputs() {
        return outputs;
    }

    @Override
    public String toString() {
        return number + ": " + Arrays.toString(inputs) + " → " + (failed() ? reason : Arrays.toString(outputs));
    }
}
