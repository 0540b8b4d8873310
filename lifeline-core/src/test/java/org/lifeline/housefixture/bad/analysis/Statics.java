package org.lifeline.housefixture.bad.analysis;

/** A place to look at. */
public final class Statics {
    private Statics() {}

    public static String name() {
        return "statics";
    }
}
