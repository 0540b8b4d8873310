package org.lifeline.internal.path;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.lifeline.internal.line.Equilibrium;
import org.lifeline.internal.line.LineEnergies;
import org.lifeline.internal.line.LineState;
import org.lifeline.internal.line.LineSystem;
import org.lifeline.internal.numeric.WatchedWork;
import org.lifeline.model.Passage;

/** Rates along a path against differences of equilibria, and the descent held while the force follows. */
class PathTangentTest {
    private static final double STEP = 0.5;

    private static PathPoint point(LineModel model, PathTangent tangent, double value, PathCoordinate coordinate) {
        PathPoint p = new PathPoint(model.system(), true);
        p.state.set(model.state());
        p.value = value;
        p.w = coordinate.w(value);
        tangent.findRates(p);
        assertThat(p.hasTangent).isTrue();
        return p;
    }

    /** The equilibrium at a value, with the modes held. */
    private static LineState at(LineModel model, PathParameter p, double value) {
        LineState s = model.state().copy();
        p.set(s, value);
        assertThat(new Equilibrium(model.system(), WatchedWork.alone()).newton(s))
                .isTrue();
        return s;
    }

    @Test
    void ratesAreDifferencesOfEquilibria() {
        for (Passage passage : List.of(Passage.free(), Passage.friction(0.05), Passage.clamped())) {
            LineModel model = SmallLines.model(passage, 2);
            LineModel.Load load = model.hook(0, 4, true);
            model.hang(load, 5000);
            LineSystem sys = model.system();
            PathParameter weight = new PathParameter.Weight(0);
            PathTangent tangent = new PathTangent(new Equilibrium(sys, WatchedWork.alone()), weight, true);
            PathPoint p = point(model, tangent, 5000, new PathCoordinate(100));
            LineState more = at(model, weight, 5000 + STEP);
            LineState less = at(model, weight, 5000 - STEP);
            LineEnergies e = new LineEnergies(sys);
            double descent = (e.height(less, 0) - e.height(more, 0)) / (2 * STEP);
            assertThat(p.descentRate).isPositive().isCloseTo(descent, within(1e-5 * descent));
            for (int i = 0; i < 2; i++) {
                double rise = (more.tension[3 * i] - less.tension[3 * i]) / (2 * STEP);
                assertThat(p.tangent[sys.unknowns.tensionIndex(i)]).isCloseTo(rise, within(1e-5));
            }
            double slip = (more.slip[1] - less.slip[1]) / (2 * STEP);
            assertThat(p.tangent[sys.unknowns.slipIndex(1)]).isCloseTo(slip, within(1e-10));
            if (passage.friction() > 0 && !sys.clamped[1]) {
                assertThat(p.slipRate[1]).isCloseTo(slip, within(1e-10));
                assertThat(p.slipForce[1]).isEqualTo(slipForce(sys, model.state()));
                double rate = (slipForce(sys, more) - slipForce(sys, less)) / (2 * STEP);
                assertThat(p.slipForceRate[1]).isCloseTo(rate, within(1e-5));
            } else {
                assertThat(p.slipRate[1]).as("nobody asks").isZero();
            }
        }
    }

    private static double slipForce(LineSystem sys, LineState s) {
        return PathEnergy.slipForce(sys.law, sys.forces.startSideTension(s, 1), sys.forces.endSideTension(s, 1));
    }

    @Test
    void ratesByWarmthAreDifferencesToo() {
        LineModel model = SmallLines.model(Passage.clamped(), 1);
        PathParameter warmth = new PathParameter.Thermal(1, 1);
        PathTangent tangent = new PathTangent(new Equilibrium(model.system(), WatchedWork.alone()), warmth, true);
        PathPoint p = point(model, tangent, 0, new PathCoordinate(1e-3));
        double h = 1e-7;
        double rate = (at(model, warmth, h).tension[0] - at(model, warmth, -h).tension[0]) / (2 * h);
        assertThat(p.tangent[0]).isNegative().isCloseTo(rate, within(1e-4 * Math.abs(rate)));
        // The cable stretches and sags: dα/dT = −(1/EA + w² l²/12 T³), of the parabola.
        double sag = Math.pow(model.system().weight * SmallLines.SPAN, 2) / (12 * Math.pow(SmallLines.TENSION, 3));
        double want = -1 / (1 / SmallLines.EA + sag);
        assertThat(p.tangent[0]).isCloseTo(want, within(3e-3 * SmallLines.EA));
        assertThat(p.descentRate).as("no load goes down").isZero();
    }

    @Test
    void aSingularTangentIsNone() {
        LineModel model = SmallLines.model(Passage.clamped(), 1);
        PathTangent tangent = new PathTangent(
                new Equilibrium(model.system(), WatchedWork.alone()), new PathParameter.Thermal(1, 1), true);
        PathPoint p = new PathPoint(model.system(), true);
        p.state.set(model.state());
        p.state.tension[0] = Double.NaN;
        p.tangent[0] = 5;
        tangent.find(p);
        assertThat(p.hasTangent).isFalse();
        assertThat(p.tangent).containsOnly(0);
        Equilibrium e = new Equilibrium(model.system(), WatchedWork.alone());
        assertThat(tangent.untilEvent(p, new PathEvents(model.system(), e), new PathCoordinate(1)))
                .isInfinite();
    }

    /** The force at which the post begins to slip, as the tangent foresees it, nears the true one. */
    @Test
    void aSlipIsForeseenTheBetterTheNearerItIs() {
        double slips = forceOfSlip();
        // The post turns the cable by w l/T, so it holds μ w l. By the parabola a load P at 4 m lengthens the cable by
        // w P x (l − x)/2 T², which a tension less stretch and sag takes up.
        double weight = SmallLines.model(Passage.free(), 2).system().weight;
        double t = SmallLines.TENSION;
        double soft = SmallLines.SPAN * (1 / SmallLines.EA + Math.pow(weight * SmallLines.SPAN, 2) / (12 * t * t * t));
        double estimate = 0.2 * weight * SmallLines.SPAN * soft * 2 * t * t / (weight * 4 * 6);
        assertThat(slips).isCloseTo(estimate, within(0.1 * estimate));
        double last = Double.POSITIVE_INFINITY;
        for (double share : new double[] {0.8, 0.95, 0.99}) {
            LineModel model = SmallLines.model(Passage.friction(0.2), 2);
            LineModel.Load load = model.hook(0, 4, true);
            double force = share * slips;
            model.hang(load, force);
            Equilibrium e = new Equilibrium(model.system(), WatchedWork.alone());
            PathTangent tangent = new PathTangent(e, new PathParameter.Weight(0), true);
            PathCoordinate c = new PathCoordinate(100);
            PathPoint p = point(model, tangent, force, c);
            double rise = tangent.untilEvent(p, new PathEvents(model.system(), e), c);
            double miss = Math.abs(force + rise - slips) / slips;
            assertThat(miss).as("at %s of it", share).isLessThan(last);
            last = miss;
            assertThat(tangent.excessGrows(p, 1)).isTrue();
        }
        assertThat(last).isLessThan(2e-3);
    }

    private static double forceOfSlip() {
        double low = 1;
        double high = 40_000;
        while (high - low > 1e-4) {
            double middle = 0.5 * (low + high);
            LineModel model = SmallLines.model(Passage.friction(0.2), 2);
            model.hang(model.hook(0, 4, true), middle);
            if (model.slip(1) == 0) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return low;
    }

    /** Descent held, force sought: the inverse of the path. */
    @Test
    void theForceAtADescentIsThatOfThePath() {
        LineModel model = SmallLines.model(Passage.free(), 2);
        LineModel.Load load = model.hook(0, 4, true);
        model.hang(load, 3000);
        LineSystem sys = model.system();
        double height = new LineEnergies(sys).height(model.state(), 0);
        LineModel other = SmallLines.model(Passage.free(), 2);
        other.hang(other.hook(0, 4, true), 2600);
        DescentControl control = new DescentControl(sys, new Equilibrium(sys, WatchedWork.alone()), 0);
        LineState s = other.state().copy();
        assertThat(control.solve(s, height)).isTrue();
        assertThat(s.force[0]).isCloseTo(3000, within(1e-5));
        assertThat(new LineEnergies(sys).height(s, 0)).isCloseTo(height, within(1e-12));
        assertThat(s.tension).containsExactly(model.state().tension, within(1e-5));
        LineState far = other.state().copy();
        assertThat(control.solve(far, height - 9))
                .as("much too far in one step")
                .isFalse();
    }

    /** The rate at which a slip comes nearer is the difference of what is beyond its limit in two equilibria. */
    @Test
    void theRateOfAnEventIsADifferenceOfEquilibria() {
        double slips = forceOfSlip();
        LineModel model = SmallLines.model(Passage.friction(0.2), 2);
        model.hang(model.hook(0, 4, true), 0.9 * slips);
        PathParameter weight = new PathParameter.Weight(0);
        Equilibrium e = new Equilibrium(model.system(), WatchedWork.alone());
        PathEvents events = new PathEvents(model.system(), e);
        PathTangent tangent = new PathTangent(e, weight, true);
        PathCoordinate c = new PathCoordinate(100);
        PathPoint p = point(model, tangent, 0.9 * slips, c);
        LineState later = at(model, weight, 1.2 * slips);
        double share = events.share(model.state(), later);
        assertThat(share).as("it slips a third of the way").isBetween(0.2, 0.5);
        tangent.lookAhead(p, c);
        double h = 1e-3 * slips;
        double rate = (events.beyond(at(model, weight, 0.9 * slips + h), later)
                        - events.beyond(at(model, weight, 0.9 * slips - h), later))
                / (2 * h);
        assertThat(tangent.rateOfEvent(p, events, later)).isPositive().isCloseTo(rate, within(1e-2 * rate));
        double foreseen = -events.beyond(model.state(), later) / rate;
        assertThat(tangent.untilEvent(p, events, c)).isCloseTo(foreseen, within(0.02 * foreseen));
    }

    /** A load beyond the post takes from the difference of tensions that the load before it has made. */
    @Test
    void aLoadOnTheOtherSideRelievesThePost() {
        LineModel model = SmallLines.model(Passage.friction(0.2), 2);
        double first = 0.9 * forceOfSlip();
        model.hang(model.hook(0, 4, true), first);
        LineModel.Load other = model.hook(1, 4, true);
        model.hang(other, 0.1 * first);
        for (int load = 0; load < 2; load++) {
            Equilibrium e = new Equilibrium(model.system(), WatchedWork.alone());
            PathTangent tangent = new PathTangent(e, new PathParameter.Weight(load), true);
            PathCoordinate c = new PathCoordinate(100);
            PathPoint p = point(model, tangent, load == 0 ? first : 0.1 * first, c);
            tangent.lookAhead(p, c);
            assertThat(tangent.excessGrows(p, 1)).as("load %d", load).isEqualTo(load == 0);
        }
    }
}
