package org.lifeline.explorer.engine.stand;

import org.teavm.jso.JSBody;

/** Stands in for the way numbers are written: the browser prints the fewest digits that tell a number from its neighbours. */
public final class JsonNumber {
    private JsonNumber() {}

    /**
     * Writes a number.
     *
     * @param out where it goes
     * @param value the number [-], finite
     */
    public static void append(StringBuilder out, double value) {
        out.append(text(value));
    }

    @JSBody(
            params = {"value"},
            script = "var t = '' + value; return /^-?[0-9]+$/.test(t) ? t + '.0' : t;")
    private static native String text(double value);
}
