package org.lifeline.housefixture.bad.model;

import org.lifeline.housefixture.bad.analysis.Statics;
import org.lifeline.housefixture.bad.base.Foundation;
import org.lifeline.housefixture.bad.internal.numeric.Solver;

/** Looks up to the analysis and into the numerics. */
public final class Beam {
    @Override
    public String toString() {
        return Statics.name() + Solver.name() + Foundation.class.getSimpleName();
    }
}
