package org.lifeline.housefixture.bad.analysis;

import org.lifeline.housefixture.bad.analysis.explain.Explanations;

/** Is no result, and calls the writers all the same. */
public final class Caller {
    private Caller() {}

    public static String call() {
        return Explanations.of();
    }
}
