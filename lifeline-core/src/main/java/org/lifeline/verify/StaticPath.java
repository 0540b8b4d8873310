package org.lifeline.verify;

import java.util.ArrayList;
import java.util.List;
import org.lifeline.analysis.LineEquilibrium;
import org.lifeline.analysis.Statics;
import org.lifeline.analysis.state.AppliedLoad;
import org.lifeline.model.Passage;
import org.lifeline.verify.state.ArrestNumbers;
import org.lifeline.verify.state.Quadrature;

/**
 * Work on the line through states at rest under a rising load: W = P δ(P) − ∫ δ dP, δ from a new solution of statics at
 * every point of an adaptive quadrature. The load is P u², so that a slack line's quick first descent is resolved.
 */
final class StaticPath {
    private final ArrestNumbers arrest;
    private final int most;
    private int solutions;

    StaticPath(ArrestNumbers arrest, int most) {
        this.arrest = arrest;
        this.most = most;
    }

    /** Tells whether the states do not depend on the path, so that statics meets them. */
    static boolean isUnique(ArrestNumbers arrest) {
        return arrest.peak().line().supports().stream()
                .noneMatch(s -> s.passage().kind() == Passage.Kind.FRICTION);
    }

    /** The work [J]; NaN when it takes more solutions than allowed. */
    double work() {
        double p = arrest.lineLoad();
        double area = new Quadrature(CheckTolerances.PATH_POINTS, CheckTolerances.PATH)
                .integrate(u -> 2 * u * p * descent(p * u * u), 0, 1);
        return p * descent(p) - area;
    }

    private double descent(double load) {
        if (solutions++ > most) {
            return Double.NaN;
        }
        List<AppliedLoad> loads = new ArrayList<>(arrest.hanging());
        loads.add(arrest.fallLoad(load));
        LineEquilibrium state = Statics.withDefaults()
                .withTemperature(arrest.peak().temperature())
                .solve(arrest.peak().line(), loads);
        return arrest.attachmentBefore().z()
                - state.loads().get(loads.size() - 1).point().z();
    }
}
