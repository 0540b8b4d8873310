package org.lifeline.file.json;

/** Numbers as they stand in a JSON text. */
final class JsonNumber {
    private JsonNumber() {}

    /**
     * Writes a number.
     *
     * @param out where it goes
     * @param value the number [-], finite
     */
    static void append(StringBuilder out, double value) {
        out.append(value);
    }
}
