package org.lifeline.verify.state;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.lifeline.model.absorber.LoadingCurve;
import org.lifeline.model.absorber.LoadingCurve.Corner;

class LoadingTableTest {
    private static final double INF = Double.POSITIVE_INFINITY;

    private static LoadingTable numbers(LoadingCurve curve) {
        return new LoadingTable(curve, new Quadrature(12, 1e-13));
    }

    private static LoadingCurve plateau(double initial, double stop) {
        return LoadingCurve.through(List.of(new Corner(0, 6000), new Corner(1.2, 6000)), initial, stop);
    }

    @Test
    void verticalPiecesGiveARange() {
        LoadingTable rigid = numbers(plateau(INF, INF));

        assertThat(rigid.lower(0)).isZero();
        assertThat(rigid.upper(0)).isEqualTo(6000);
        assertThat(rigid.lower(0.5)).isEqualTo(6000);
        assertThat(rigid.upper(0.5)).isEqualTo(6000);
        assertThat(rigid.lower(1.2)).isEqualTo(6000);
        assertThat(rigid.upper(1.2)).isInfinite();
        assertThat(rigid.lower(1.3)).isInfinite();
    }

    @Test
    void workIsTheAreaBelowTheCurve() {
        LoadingTable curve = numbers(plateau(1e5, 2e5));

        assertThat(curve.work(0)).isZero();
        assertThat(curve.work(0.03)).isCloseTo(0.5 * 1e5 * 0.03 * 0.03, within(1e-9));
        assertThat(curve.work(1.2)).isCloseTo(180 + 6000 * 1.14, within(1e-9));
        assertThat(curve.work(1.21)).isCloseTo(180 + 6000 * 1.15 + 10, within(1e-9));
    }

    @Test
    void aSpringHasNoPlateau() {
        LoadingTable spring = numbers(LoadingCurve.spring(5e4));

        assertThat(spring.upper(0)).isZero();
        assertThat(spring.lower(0.2)).isEqualTo(1e4);
        assertThat(spring.work(0.2)).isCloseTo(1000, within(1e-10));
    }

    @Test
    void anUnloadedAbsorberIsTracedBackToItsCurve() {
        LoadingTable curve = numbers(plateau(1e5, 2e4));

        // On the curve, along the plateau, and behind its end.
        assertThat(curve.unloadedFrom(0.5, 6000, 1e5)).isEqualTo(0.5);
        assertThat(curve.unloadedFrom(0.5, 4000, 1e5)).isCloseTo(0.52, within(1e-15));
        assertThat(curve.unloadedFrom(1.19, 5000, 1e5)).isCloseTo(1.2, within(1e-15));
        assertThat(curve.unloadedFrom(0.5, 4000, INF)).isEqualTo(0.5);
    }

    @Test
    void whatIsOnAStopComesFromTheLastCorner() {
        for (double stop : new double[] {2e4, 2e5, INF}) {
            LoadingTable curve = numbers(plateau(1e5, stop));
            assertThat(curve.unloadedFrom(1.2 + 3000 / stop, 9000, 1e5))
                    .as("stop %s", stop)
                    .isEqualTo(1.2);
            assertThat(curve.beyondReach(1.2 + 3000 / stop, 9000, 1e5)).isCloseTo(0, within(1e-15));
            assertThat(curve.beyondReach(1.19, 5000, 1e5)).isCloseTo(0, within(1e-15));
        }
    }

    /** It was infinity over infinity, which condemned right and wrong alike. */
    @Test
    void anExtensionThatNoForceComesWithIsNamed() {
        LoadingTable rigid = numbers(plateau(1e5, INF));
        assertThat(rigid.unloadedFrom(1.25, 9000, 1e5)).isEqualTo(1.2);
        assertThat(rigid.beyondReach(1.25, 9000, 1e5)).isCloseTo(0.05, within(1e-15));
        assertThat(rigid.beyondReach(1.2, 9000, 1e5)).isZero();
        // Below the line of unloading from the last corner.
        assertThat(rigid.beyondReach(1.19, 4000, 1e5)).isCloseTo(0.01, within(1e-15));
    }
}
