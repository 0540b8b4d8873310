package org.lifeline.internal.line;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.lifeline.base.Point;
import org.lifeline.model.Passage;
import org.lifeline.model.Stiffness;
import org.lifeline.model.Support;

/** The equations while they are put together, the numbers of a line, and the rates of its residuals by heat. */
class LineEquationsTest {
    private static final Support A = Support.end("a", Point.of(0, 0, 0));
    private static final Support B = Support.end("b", Point.of(20, 0, 3));

    /** Two spans with a corner, so that tension has three components. */
    private static LineSystem corner(LoadSlot... slots) {
        Support post = Support.intermediate("p", Point.of(10, 2, 1), Passage.friction(0.3))
                .withStiffness(new Stiffness(1e5, 2e5, Double.POSITIVE_INFINITY));
        return Lines.of(List.of(A, post, B), 1500, 4, slots);
    }

    @Test
    void residualsAreJudgedByTheirScales() {
        LineEquations e = new LineEquations(Lines.level(1000, 4, Passage.free(), 2));
        e.put(0, 3, 10);
        e.put(1, -8, 10);
        e.put(2, 1, 2);
        assertThat(e.worst).isEqualTo(0.8);
        assertThat(e.merit).isCloseTo(0.09 + 0.64 + 0.25, within(1e-15));
        assertThat(e.residual[1]).isEqualTo(-8);
        e.clear(false);
        assertThat(e.worst).isZero();
        assertThat(e.merit).isZero();
    }

    @Test
    void derivativesOfASpanStandInTwoOrThreeRows() {
        LineEquations flat = new LineEquations(Lines.level(1000, 4, Passage.free(), 2));
        flat.add3(0, 0, 1, 2, 3);
        flat.addByTension(2, 0, 4, 5, 6);
        assertThat(flat.matrix.get(0, 0)).isEqualTo(1);
        assertThat(flat.matrix.get(1, 0)).isEqualTo(3);
        assertThat(flat.matrix.get(2, 0)).isEqualTo(4);
        assertThat(flat.matrix.get(2, 1)).isEqualTo(6);
        LineEquations space = new LineEquations(corner());
        space.add3(0, 1, 1, 2, 3);
        space.addByTension(3, 0, 4, 5, 6);
        for (int k = 0; k < 3; k++) {
            assertThat(space.matrix.get(k, 1)).isEqualTo(k + 1);
            assertThat(space.matrix.get(3, k)).isEqualTo(k + 4);
        }
        space.clear(true);
        assertThat(space.matrix.get(3, 2)).isZero();
    }

    /** endZ of a span grows by its weight with the cable that comes in behind, and falls with what leaves before. */
    @Test
    void theWeightAtTheEndOfASpanGoesWithTheSlips() {
        LineSystem sys = Lines.level(1000, 4, Passage.free(), 3);
        LineEquations e = new LineEquations(sys);
        int row = sys.unknowns.slipIndex(2);
        e.addEndWeight(row, 1, 0.5);
        assertThat(e.matrix.get(row, sys.unknowns.slipIndex(1))).isEqualTo(-2);
        assertThat(e.matrix.get(row, sys.unknowns.slipIndex(2))).isEqualTo(2);
        int first = sys.unknowns.tensionIndex(0);
        e.addEndWeight(first, 0, 1);
        assertThat(e.matrix.get(first, sys.unknowns.slipIndex(1)))
                .as("no slip at the end")
                .isEqualTo(4);
        int last = sys.unknowns.tensionIndex(2);
        e.addEndWeight(last, 2, 1);
        assertThat(e.matrix.get(last, sys.unknowns.slipIndex(2))).isEqualTo(-4);
    }

    @Test
    void theNumbersOfALineAreThoseOfItsSupports() {
        LineSystem sys = corner();
        assertThat(sys.spans).isEqualTo(2);
        assertThat(sys.chord[0]).isCloseTo(Math.sqrt(105), within(1e-12));
        assertThat(sys.coordinate(1, 0)).isEqualTo(10);
        assertThat(sys.coordinate(1, 1)).isEqualTo(2);
        assertThat(sys.coordinate(2, 2)).isEqualTo(3);
        assertThat(sys.compliance[3]).isEqualTo(1e-5);
        assertThat(sys.compliance[4]).isEqualTo(5e-6);
        assertThat(sys.compliance[5]).isZero();
        assertThat(sys.elastic).isTrue();
        assertThat(sys.yields(1)).isTrue();
        assertThat(sys.yields(0)).isFalse();
        assertThat(sys.friction).containsExactly(0, 0.3, 0);
        assertThat(sys.clamped[1]).isFalse();
        assertThat(Lines.level(1, 0, Passage.clamped(), 2).clamped[1]).isTrue();
        assertThat(Lines.level(1, 0, Passage.clamped(), 2).elastic).isFalse();
    }

    @Test
    void loadsStandInTheOrderOfTheirSpans() {
        LineSystem sys = Lines.level(
                1000,
                4,
                Passage.free(),
                3,
                new LoadSlot(0, true, 1),
                new LoadSlot(0, false, 2),
                new LoadSlot(2, true, 3),
                LoadSlot.atSupport(3, 2));
        assertThat(sys.firstLoad).containsExactly(0, 2, 2, 4);
        assertThat(sys.loadSpan).containsExactly(0, 0, 2, 2);
        assertThat(sys.gripped).containsExactly(true, false, true, true);
        assertThat(sys.pulledSupport).containsExactly(-1, -1, -1, 3);
        assertThat(sys.pullsOnSupports()).isTrue();
        assertThat(Lines.level(1000, 4, Passage.free(), 1, new LoadSlot(0, true, 0))
                        .pullsOnSupports())
                .isFalse();
    }

    /** Central differences over the factor on unstretched lengths, on random states of every mode. */
    @Test
    void ratesByTemperatureAreDifferenceQuotients() {
        for (long seed = 1; seed <= 120; seed++) {
            RandomSystem random = new RandomSystem(seed);
            LineSystem sys = random.system;
            double[] rate = new double[sys.unknowns.count()];
            rate[0] = 99;
            new ResidualRates(sys).byTemperature(random.state, rate);
            double h = 1e-5;
            LineState warm = random.state.copy();
            LineState cold = random.state.copy();
            warm.thermal += h;
            cold.thermal -= h;
            double[] up = Lines.residual(sys, warm);
            double[] down = Lines.residual(sys, cold);
            for (int i = 0; i < sys.spans; i++) {
                for (int c = 0; c <= sys.unknowns.up; c++) {
                    int row = sys.unknowns.tensionIndex(i) + c;
                    double want = (up[row] - down[row]) / (2 * h);
                    assertThat(rate[row])
                            .as("seed %d, row %d", seed, row)
                            .isCloseTo(want, within(1e-6 * sys.length[i]));
                }
            }
        }
    }
}
