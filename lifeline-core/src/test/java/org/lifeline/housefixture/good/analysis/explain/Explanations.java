package org.lifeline.housefixture.good.analysis.explain;

import org.lifeline.housefixture.good.analysis.ArrestResult;

/** Reads a result. */
public final class Explanations {
    private Explanations() {}

    public static String of(ArrestResult result) {
        return result.name();
    }
}
