package org.lifeline.internal.path;

import org.lifeline.internal.line.LineState;
import org.lifeline.internal.line.LineSystem;
import org.lifeline.internal.line.ResidualRates;

/** The one number that is changed along a path, while everything else about the line follows. */
sealed interface PathParameter {
    /** Value in a state [unit of the parameter]; never falls along a path. */
    double value(LineState s);

    /** Gives it a value. */
    void set(LineState s, double value);

    /** Derivative of the residuals by it, at fixed unknowns; replaces what {@code out} holds. */
    void residualRate(ResidualRates rates, LineState s, double[] out);

    /** The value about which the line's response turns from that of a taut line to that of one that gives. */
    double scale(LineSystem system, LineState s);

    /** Number of the load that it is the weight of, or −1. */
    int load();

    /**
     * The weight of a load [N].
     *
     * @param load number of the load
     */
    record Weight(int load) implements PathParameter {
        /** Scale of a line that carries nothing and has no tension [N]. */
        private static final double LEAST = 1e-3;

        @Override
        public double value(LineState s) {
            return s.force[load];
        }

        @Override
        public void set(LineState s, double value) {
            s.force[load] = value;
        }

        @Override
        public void residualRate(ResidualRates rates, LineState s, double[] out) {
            rates.byForce(s, load, out);
        }

        /**
         * Some twice the P₀ of the span alone (see {@link PathCoordinate}), since the cable beside it and its anchors give;
         * and where the load outweighs the span, which is what counts when it is slack.
         */
        @Override
        public double scale(LineSystem system, LineState s) {
            int span = system.loadSpan[load];
            double tension = system.forces.endSideTension(s, span);
            double taut = 2 * tension * Math.sqrt(tension * system.law.compliance(0));
            return taut + 0.5 * system.weight * system.chord[span] + LEAST;
        }
    }

    /**
     * Temperature, as the change since the start of the factor on unstretched lengths [-].
     *
     * @param from the factor at the start
     * @param sign 1 for a line that grows warmer, −1 for one that cools
     */
    record Thermal(double from, int sign) implements PathParameter {
        /** Scale of a line without tension and weight [-]. */
        private static final double LEAST = 1e-9;

        @Override
        public double value(LineState s) {
            return sign * (s.thermal - from);
        }

        @Override
        public void set(LineState s, double value) {
            s.thermal = from + sign * value;
        }

        @Override
        public void residualRate(ResidualRates rates, LineState s, double[] out) {
            rates.byTemperature(s, out);
            for (int i = 0; i < out.length; i++) {
                out[i] *= sign;
            }
        }

        /** The strain of the tension and the slack of the parabola, w²l²/24T²: what the first span can give. */
        @Override
        public double scale(LineSystem system, LineState s) {
            double tension = system.forces.endSideTension(s, 0);
            double sag = system.weight * system.chord[0] / tension;
            return system.law.strain(tension) + sag * sag / 24 + LEAST;
        }

        @Override
        public int load() {
            return -1;
        }
    }
}
