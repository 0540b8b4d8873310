package org.lifeline.internal.path;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.lifeline.internal.line.LineAssembly;
import org.lifeline.internal.line.LineState;
import org.lifeline.internal.line.LineSystem;
import org.lifeline.internal.line.ResidualRates;
import org.lifeline.model.Passage;

/** What is changed along a path: its value, its effect on the residuals, its scale. And points and coordinates. */
class PathParameterTest {
    private final LineModel model = SmallLines.model(Passage.free(), 2);
    private final LineModel.Load load = model.hook(0, 4, true);

    PathParameterTest() {
        model.hang(load, 900);
    }

    private static double[] residual(LineSystem sys, LineState s) {
        LineAssembly a = new LineAssembly(sys);
        assertThat(a.assemble(s, false)).isTrue();
        return a.equations.residual.clone();
    }

    private void isDifferenceQuotient(PathParameter p, double step) {
        LineSystem sys = model.system();
        LineState s = model.state();
        double[] rate = new double[sys.unknowns.count()];
        p.residualRate(new ResidualRates(sys), s, rate);
        LineState up = s.copy();
        LineState down = s.copy();
        p.set(up, p.value(s) + step);
        p.set(down, p.value(s) - step);
        double[] high = residual(sys, up);
        double[] low = residual(sys, down);
        double size = 0;
        for (double r : rate) {
            size = Math.max(size, Math.abs(r));
        }
        assertThat(size).isPositive();
        for (int i = 0; i < rate.length; i++) {
            assertThat(rate[i]).isCloseTo((high[i] - low[i]) / (2 * step), within(1e-6 * size));
        }
    }

    @Test
    void aWeightIsTheForceOfItsLoad() {
        PathParameter p = new PathParameter.Weight(0);
        assertThat(p.load()).isZero();
        assertThat(p.value(model.state())).isEqualTo(900);
        isDifferenceQuotient(p, 0.1);
        LineState s = model.state().copy();
        p.set(s, 1234);
        assertThat(s.force[0]).isEqualTo(1234);
    }

    /** 2 T √(T/EA), and half of the weight of the span where that is more than nothing. */
    @Test
    void theScaleOfAWeightIsThatOfATautSpan() {
        LineSystem sys = model.system();
        LineState s = model.state();
        double t = sys.forces.endSideTension(s, 0);
        double want = 2 * t * Math.sqrt(t / SmallLines.EA) + 0.5 * sys.weight * SmallLines.SPAN;
        assertThat(new PathParameter.Weight(0).scale(sys, s)).isCloseTo(want, within(2e-3));
    }

    @Test
    void warmthCountsFromWhereThePathBegins() {
        LineState s = model.state().copy();
        s.thermal = 1.0003;
        PathParameter warmer = new PathParameter.Thermal(1.0001, 1);
        PathParameter colder = new PathParameter.Thermal(1.0005, -1);
        assertThat(warmer.value(s)).isCloseTo(2e-4, within(1e-15));
        assertThat(colder.value(s)).isCloseTo(2e-4, within(1e-15));
        colder.set(s, 1e-4);
        assertThat(s.thermal).isCloseTo(1.0004, within(1e-15));
        warmer.set(s, 1e-4);
        assertThat(s.thermal).isCloseTo(1.0002, within(1e-15));
        assertThat(warmer.load()).isEqualTo(-1);
        isDifferenceQuotient(new PathParameter.Thermal(1, 1), 1e-6);
        isDifferenceQuotient(new PathParameter.Thermal(1, -1), 1e-6);
    }

    /** The strain of the tension and the slack of the parabola, w² l²/24 T². */
    @Test
    void theScaleOfWarmthIsWhatASpanCanGive() {
        LineSystem sys = model.system();
        LineState s = model.state();
        double t = sys.forces.endSideTension(s, 0);
        double want = t / SmallLines.EA + Math.pow(sys.weight * SmallLines.SPAN / t, 2) / 24;
        assertThat(new PathParameter.Thermal(1, 1).scale(sys, s)).isCloseTo(want, within(2e-9));
    }

    @Test
    void distancesInTheCoordinateAreDifferencesOfIt() {
        PathCoordinate c = new PathCoordinate(300);
        PathPoint from = new PathPoint(model.system(), false);
        for (double a : new double[] {0, 10, 4000}) {
            from.value = a;
            from.w = c.w(a);
            for (double b : new double[] {a + 50, a + 20_000}) {
                assertThat(c.distance(from, b, c.w(b))).isCloseTo(c.w(b) - c.w(a), within(1e-12 * (1 + c.w(b))));
            }
            double h = 1e-3 * (1 + a);
            double quotient = 2 * h / (c.w(a + h) - c.w(a - h));
            assertThat(c.perW(from)).isCloseTo(quotient, within(1e-5 * quotient));
        }
    }

    @Test
    void aPointTakesOverAllOfAnother() {
        PathPoint from = new PathPoint(model.system(), true);
        double[][] arrays = {from.tangent, from.slipRate, from.slipForce, from.slipForceRate};
        double next = 1;
        for (double[] each : arrays) {
            for (int i = 0; i < each.length; i++) {
                each[i] = next++;
            }
        }
        from.state.set(model.state());
        from.hasTangent = true;
        from.value = 101;
        from.w = 102;
        from.descent = 103;
        from.descentRate = 104;
        from.energy = 105;
        from.energySize = 106;
        from.frictionHeat = 107;
        from.loadWork = 108;
        from.error = 109;
        from.order = 7;
        PathPoint to = new PathPoint(model.system(), true);
        to.set(from);
        assertThat(to).usingRecursiveComparison().isEqualTo(from);
        to.tangent[0] = -1;
        assertThat(from.tangent[0]).as("its own").isEqualTo(1);
        assertThat(from.slipRate).as("one for each support").hasSize(3);
        assertThat(new PathPoint(model.system(), false).slipRate).isEmpty();
    }
}
