package org.lifeline.internal.path;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.lifeline.base.NoEquilibriumException;
import org.lifeline.base.Vector3;
import org.lifeline.internal.line.Equilibrium;
import org.lifeline.internal.line.LineAssembly;
import org.lifeline.model.Passage;

/** Paths that come to where there is no equilibrium, paths of a temperature, and loads that move nothing. */
class EquilibriumPathTest {
    private static final Passage[] PASSAGES = {Passage.free(), Passage.friction(0.2), Passage.clamped()};

    private static EquilibriumPath warmed(LineModel model) {
        return new EquilibriumPath(model, new PathParameter.Thermal(1, 1), null);
    }

    /** A straight cable without weight is slack when α ΔT has taken its strain T/EA, and has no shape from there on. */
    @ParameterizedTest
    @ValueSource(doubles = {63, 90, 300})
    void aWeightlessCableIsLostWhereWarmthHasTakenItsStrain(double temperature) {
        double slack = SmallLines.TENSION / SmallLines.EA / 12e-6;
        for (Passage passage : PASSAGES) {
            LineModel m = new LineModel(SmallLines.line(SmallLines.supports(passage, 2), 0));
            double rise = temperature + 20 - m.line().installed().temperature();
            assertThatThrownBy(() -> m.bringTo(temperature + 20))
                    .hasMessageContaining("at another temperature")
                    .isInstanceOfSatisfying(NoEquilibriumException.class, e -> {
                        assertThat(e.loadFactor()).isCloseTo(slack / rise, within(1e-6));
                        assertThat(e.load()).as("it is no load").isEmpty();
                    });
            assertThat(m.pieces(0).get(0).endTension().magnitude())
                    .as("the model stands where the cable was last taut")
                    .isLessThan(1e-3 * SmallLines.TENSION);
            LineModel taut = new LineModel(SmallLines.line(SmallLines.supports(passage, 2), 0));
            taut.bringTo(m.line().installed().temperature() + 0.9 * slack);
            assertThat(taut.pieces(1).get(0).endTension().magnitude())
                    .isCloseTo(0.1 * SmallLines.TENSION, within(1e-3 * SmallLines.TENSION));
        }
    }

    /** Warmth alone loads nothing and pulls nothing over. */
    @Test
    void aTemperatureIsItsOwnPeak() {
        for (Passage passage : PASSAGES) {
            EquilibriumPath path = warmed(SmallLines.model(passage, 3));
            assertThat(path.advance(4e-4, null, 0)).isFalse();
            assertThat(path.now().value).isEqualTo(4e-4);
            assertThat(path.peak()).isEqualTo(4e-4);
            assertThat(path.jumped()).isFalse();
            assertThat(path.now().state.thermal).isEqualTo(1 + 4e-4);
        }
    }

    /** A limit that is passed between one double and the next, as by a switch: the path of a temperature ends there. */
    @Test
    void aTemperatureEndsAtASwitchToo() {
        EquilibriumPath path = warmed(SmallLines.model(Passage.friction(0.2), 3));
        EquilibriumPath.End end = Ends.of(point -> point.value < 2.5e-4 ? 1 : -1);
        assertThat(path.advance(4e-4, end, 0)).isTrue();
        assertThat(path.now().value).isCloseTo(2.5e-4, within(1e-14));
        assertThat(path.jumped()).isFalse();
    }

    /** Where a path ends, at its goal or before, the nodes are in equilibrium to rounding, whatever it allowed on its way. */
    @Test
    void whereAPathEndsTheLineIsInEquilibriumToRounding() {
        for (Passage passage : PASSAGES) {
            for (double ends : new double[] {Double.POSITIVE_INFINITY, 2300}) {
                LineModel m = SmallLines.model(passage, 3);
                LoadPath path = new LoadPath(m, m.hook(1, 3, true), 10, 1000);
                assertThat(path.advance(5000, p -> ends - p.force(), 0)).isEqualTo(ends < 5000);
                LineAssembly assembly = new LineAssembly(m.system());
                assertThat(assembly.assemble(m.state(), false)).isTrue();
                assertThat(assembly.equations.worst).isLessThan(0.01 * Equilibrium.CONVERGED);
                double weight = path.force() + 9.80665 * 0.4 * m.installedLength();
                Vector3 sum =
                        m.reaction(0).plus(m.reaction(1)).plus(m.reaction(2)).plus(m.reaction(3));
                assertThat(sum.plus(new Vector3(0, 0, weight)).magnitude()).isLessThan(1e-9 * weight);
            }
        }
    }

    /** The anchor at an end, the last one, and one between: what hangs on a rigid one leaves a rough line as it is. */
    @ParameterizedTest
    @CsvSource({"0", "1", "2"})
    void noRigidAnchorMoves(int support) {
        LineModel m = SmallLines.model(Passage.friction(0.2), 2);
        double tension = m.pieces(0).get(0).endTension().magnitude();
        LoadPath path = new LoadPath(m, m.hookAtSupport(support), 11, 1000);
        assertThat(path.isFollowed()).as("there is no way to remember").isFalse();
        // A connection that extends far while its force hardly rises looks like a jump from the line.
        assertThat(path.advance(6000, p -> p.force() < 2000 ? 500 : -500, 0)).isTrue();
        assertThat(path.force()).isCloseTo(2000, within(2e-11));
        assertThat(path.gaveWay()).isFalse();
        assertThat(path.advance(6000, p -> 1, 0)).isFalse();
        assertThat(path.force()).isEqualTo(6000);
        assertThat(path.peakForce()).isEqualTo(6000);
        assertThat(path.gaveWay()).isFalse();
        assertThat(path.descent()).isCloseTo(1, within(1e-12));
        assertThat(path.work()).isCloseTo(0, within(1e-9));
        assertThat(m.pieces(0).get(0).endTension().magnitude()).isCloseTo(tension, within(1e-9 * tension));
        assertThat(-m.reaction(support).z()).isGreaterThan(6000);
    }

    /** A line whose cable has all run out of a span does not begin to be loaded. */
    @Test
    void aLineThatDoesNotHangIsNotLoaded() {
        LineModel m = SmallLines.model(Passage.free(), 2);
        LineModel.Load load = m.hook(0, 4, true);
        m.state().slip[1] = 11;
        assertThatThrownBy(() -> new LoadPath(m, load, 10, 1000))
                .isInstanceOf(NoEquilibriumException.class)
                .hasMessageContaining("line at the start of a change");
    }
}
