package org.lifeline.internal.path;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;
import org.lifeline.internal.line.Equilibrium;
import org.lifeline.internal.line.LineRates;
import org.lifeline.internal.line.LineState;
import org.lifeline.internal.line.LineSystem;
import org.lifeline.internal.line.ResidualRates;
import org.lifeline.model.cable.LoadElongation;

/** The tangent of a path at its points, and the rates that follow from it. Not thread-safe. */
final class PathTangent {
    private final LineSystem system;
    private final Equilibrium equilibrium;
    private final PathParameter parameter;
    private final boolean followed;
    private final LineRates rates;
    private final ResidualRates residualRates;

    /** A state a little further along the last tangent, and how much further the parameter is there. */
    private @Nullable LineState ahead;

    private double aheadBy;

    PathTangent(Equilibrium equilibrium, PathParameter parameter, boolean followed) {
        this.equilibrium = equilibrium;
        this.system = equilibrium.system;
        this.parameter = parameter;
        this.followed = followed;
        this.residualRates = new ResidualRates(system);
        this.rates = new LineRates(system, parameter.load());
    }

    /** Finds the derivative of the unknowns by the parameter; a point at which there is none has no tangent. */
    void find(PathPoint point) {
        boolean fine = equilibrium.factorAt(point.state);
        if (fine) {
            parameter.residualRate(residualRates, point.state, point.tangent);
            for (int i = 0; i < point.tangent.length; i++) {
                point.tangent[i] = -point.tangent[i];
            }
            equilibrium.assembly.equations.matrix.solve(point.tangent);
            for (double v : point.tangent) {
                fine &= Double.isFinite(v);
            }
        }
        if (!fine) {
            Arrays.fill(point.tangent, 0);
        }
        point.hasTangent = fine;
    }

    /** The tangent, and the rates of descent, slip and slip force that follow from it. */
    void findRates(PathPoint point) {
        find(point);
        findRatesAlong(point);
    }

    /** Rates of descent, slip and slip force along the tangent. */
    void findRatesAlong(PathPoint point) {
        LineState s = point.state;
        if (parameter.load() >= 0) {
            point.descentRate = -rates.height(s, point.tangent);
        }
        for (int i = 1; followed && i < system.spans; i++) {
            if (system.friction[i] > 0 && !system.clamped[i]) {
                LoadElongation law = system.law;
                double a = system.forces.startSideTension(s, i);
                double b = system.forces.endSideTension(s, i);
                double rateA = rates.startSideTension(s, point.tangent, i);
                double rateB = rates.endSideTension(s, point.tangent, i);
                point.slipRate[i] = rates.slip(point.tangent, i);
                point.slipForce[i] = PathEnergy.slipForce(law, a, b);
                point.slipForceRate[i] = rateB - rateA + law.strain(b) * rateB - law.strain(a) * rateA;
            }
        }
    }

    private LineState ahead() {
        LineState s = ahead;
        if (s == null) {
            s = new LineState(system.spans, system.loads);
            ahead = s;
        }
        return s;
    }

    /** Sets the state ahead along a point's tangent. */
    void lookAhead(PathPoint point, PathCoordinate coordinate) {
        aheadBy = PathTolerances.AHEAD * Math.max(point.value, PathTolerances.AHEAD_LEAST * coordinate.scale());
        LineState s = ahead();
        s.set(point.state);
        equilibrium.apply(s, point.state, aheadBy, point.tangent);
        parameter.set(s, point.value + aheadBy);
    }

    /** Rise of the parameter until the tangent at a point meets an event; may be infinite. */
    double untilEvent(PathPoint point, PathEvents events, PathCoordinate coordinate) {
        if (!point.hasTangent) {
            return Double.POSITIVE_INFINITY;
        }
        lookAhead(point, coordinate);
        return aheadBy * events.steps(point.state, ahead());
    }

    /** Rate by the parameter at which what is watched nears its limit, after {@link #lookAhead}. */
    double rateOfEvent(PathPoint point, PathEvents events, LineState later) {
        return (events.beyond(ahead(), later) - events.beyond(point.state, later)) / aheadBy;
    }

    /** Tells whether a support goes further beyond its limit of friction along the tangent, after {@link #lookAhead}. */
    boolean excessGrows(PathPoint point, int support) {
        return equilibrium.modes.excess(ahead(), support) > equilibrium.modes.excess(point.state, support);
    }
}
