package org.lifeline.explorer.engine.stand;

/** Stands in for the JSON library's own way to read numbers out of texts. */
public final class NumberInput {
    private NumberInput() {}

    /**
     * A whole number.
     *
     * @param text its digits
     * @return the number
     */
    public static int parseInt(String text) {
        return Integer.parseInt(text);
    }

    /**
     * A whole number in a text.
     *
     * @param text the text
     * @param other what is taken if it is none
     * @return the number
     */
    public static int parseAsInt(String text, int other) {
        return (int) parseAsDouble(text, other);
    }

    /**
     * A whole number in a text.
     *
     * @param text the text
     * @param other what is taken if it is none
     * @return the number
     */
    public static long parseAsLong(String text, long other) {
        return (long) parseAsDouble(text, (double) other);
    }

    /**
     * A number in a text.
     *
     * @param text the text
     * @param other what is taken if it is none [-]
     * @return the number [-]
     */
    public static double parseAsDouble(String text, double other) {
        try {
            return Double.parseDouble(text.trim());
        } catch (NumberFormatException e) {
            return other;
        }
    }

    /**
     * A number in a text.
     *
     * @param text the text
     * @param other what is taken if it is none [-]
     * @param fast of no effect
     * @return the number [-]
     */
    public static double parseAsDouble(String text, double other, boolean fast) {
        return parseAsDouble(text, other);
    }
}
