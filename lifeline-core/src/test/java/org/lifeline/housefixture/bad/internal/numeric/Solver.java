package org.lifeline.housefixture.bad.internal.numeric;

/** An internal type. */
public final class Solver {
    public static String name() {
        return "solver";
    }
}
