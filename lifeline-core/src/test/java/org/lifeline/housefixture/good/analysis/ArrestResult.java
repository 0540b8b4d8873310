package org.lifeline.housefixture.good.analysis;

import org.lifeline.housefixture.good.analysis.explain.Explanations;

/** A result that explains itself. */
public final class ArrestResult {
    public String name() {
        return "arrest";
    }

    public String explain() {
        return Explanations.of(this);
    }
}
