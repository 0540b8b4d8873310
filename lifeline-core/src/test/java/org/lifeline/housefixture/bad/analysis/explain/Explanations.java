package org.lifeline.housefixture.bad.analysis.explain;

import org.lifeline.housefixture.bad.analysis.Statics;

/** Reads a result. */
public final class Explanations {
    private Explanations() {}

    public static String of() {
        return Statics.name();
    }
}
