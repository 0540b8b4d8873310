package org.lifeline.explorer.engine.stand;

/** Stands in for the JSON library's own way to print numbers: the platform has one. */
public final class NumberOutput {
    private NumberOutput() {}

    /**
     * A whole number as text.
     *
     * @param value the number [-]
     * @return its digits
     */
    public static String toString(int value) {
        return Integer.toString(value);
    }

    /**
     * A whole number as text.
     *
     * @param value the number [-]
     * @return its digits
     */
    public static String toString(long value) {
        return Long.toString(value);
    }

    /**
     * A number as text.
     *
     * @param value the number [-]
     * @return as many digits as tell it from its neighbours
     */
    public static String toString(double value) {
        return Double.toString(value);
    }

    /**
     * A number as text.
     *
     * @param value the number [-]
     * @return as many digits as tell it from its neighbours
     */
    public static String toString(float value) {
        return Float.toString(value);
    }

    /**
     * Tells whether a number has a place in JSON.
     *
     * @param value the number [-]
     * @return true if it is not finite
     */
    public static boolean notFinite(double value) {
        return !Double.isFinite(value);
    }

    /**
     * Tells whether a number has a place in JSON.
     *
     * @param value the number [-]
     * @return true if it is not finite
     */
    public static boolean notFinite(float value) {
        return !Float.isFinite(value);
    }
}
