package org.lifeline.internal.path;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.lifeline.internal.line.LoadSlot;
import org.lifeline.model.Passage;
import org.lifeline.model.Stiffness;
import org.lifeline.model.Support;

/** Paths of loads on small lines, where force, descent and energy are known in closed form. */
class SmallLoadPathTest {
    private static double never(LoadPath p) {
        return p.force() >= 0 ? 1 : Double.NaN;
    }

    private static LoadPath path(LineModel model, double station) {
        return new LoadPath(model, model.hook(0, station, true), 10, 1000);
    }

    /** The V of a light cable: T = EA (l/l₀ − 1), P = 2 T sin φ, energy EA l₀ ε²/2. */
    @ParameterizedTest
    @ValueSource(doubles = {100, 3000, 20_000})
    void aLightSpanTakesUpTheStrainEnergyOfItsTwoLegs(double force) {
        LineModel model = new LineModel(SmallLines.line(SmallLines.supports(Passage.clamped(), 1), 0.01));
        LoadPath path = path(model, 5);
        assertThat(path.advance(force, SmallLoadPathTest::never, 0)).isFalse();
        assertThat(path.force()).isEqualTo(force);
        assertThat(path.isFollowed()).isFalse();
        assertThat(path.pathWork()).isNaN();
        assertThat(path.frictionHeat()).isZero();
        assertThat(path.gaveWay()).isFalse();
        assertThat(path.peakForce()).isEqualTo(force);
        double leg = Math.hypot(5, path.descent());
        double unstretched = 5 / (1 + SmallLines.TENSION / SmallLines.EA);
        double strain = leg / unstretched - 1;
        double up = 2 * SmallLines.EA * strain * path.descent() / leg;
        assertThat(up).isCloseTo(force, within(2 + 1e-3 * force));
        double before = Math.pow(SmallLines.TENSION, 2) / SmallLines.EA * unstretched;
        double energy = SmallLines.EA * strain * strain * unstretched - before;
        assertThat(path.work()).isCloseTo(energy, within(0.1 + 2e-3 * energy));
    }

    /** What the load does is stored or turned to heat: quadrature over the steps against the energies of the states. */
    @ParameterizedTest
    @ValueSource(doubles = {0.05, 0.3})
    void withFrictionTheWorkIsStoredOrTurnedToHeat(double friction) {
        LoadPath path = path(SmallLines.model(Passage.friction(friction), 3), 4);
        path.advance(9000, SmallLoadPathTest::never, 0);
        assertThat(path.isFollowed()).isTrue();
        assertThat(path.frictionHeat()).isPositive().isLessThan(path.work());
        assertThat(path.pathWork()).isCloseTo(path.work(), within(1e-6 * path.work()));
        assertThat(path.descent() * 9000)
                .as("more than the work of a force that rises")
                .isGreaterThan(path.work());
    }

    @Test
    void moreFrictionHoldsMoreAndLowersLess() {
        double last = Double.POSITIVE_INFINITY;
        for (Passage passage : List.of(
                Passage.free(),
                Passage.friction(0.1),
                Passage.friction(0.3),
                Passage.friction(0.9),
                Passage.clamped())) {
            LoadPath path = path(SmallLines.model(passage, 3), 4);
            path.advance(6000, SmallLoadPathTest::never, 0);
            assertThat(path.descent()).isLessThan(last);
            last = path.descent();
        }
    }

    /** Mirror symmetry: a load at 4 m from one end of a level line, and at 4 m from the other. */
    @Test
    void fromBothEndsThePathIsTheSame() {
        LineModel left = SmallLines.model(Passage.friction(0.2), 2);
        LineModel right = SmallLines.model(Passage.friction(0.2), 2);
        LoadPath a = new LoadPath(left, left.hook(0, 4, true), 10, 1000);
        LoadPath b = new LoadPath(right, right.hook(1, 6, true), 10, 1000);
        a.advance(6000, SmallLoadPathTest::never, 0);
        b.advance(6000, SmallLoadPathTest::never, 0);
        assertThat(b.descent()).isCloseTo(a.descent(), within(1e-6 * a.descent()));
        assertThat(b.work()).isCloseTo(a.work(), within(1e-6 * a.work()));
        assertThat(b.frictionHeat()).isCloseTo(a.frictionHeat(), within(1e-5 * a.work()));
    }

    /** The path ends where the line has taken up what was asked for, whether followed or not, with a slope or without. */
    @Test
    void thePathEndsAtTheRootOfItsEnd() {
        for (Passage passage : List.of(Passage.free(), Passage.friction(0.2))) {
            double[] forces = new double[2];
            for (int k = 0; k < 2; k++) {
                boolean sloped = k == 0;
                LoadPath path = path(SmallLines.model(passage, 2), 4);
                LoadPath.EndCondition end = new LoadPath.EndCondition() {
                    @Override
                    public double at(LoadPath p) {
                        return 1500 - p.work();
                    }

                    @Override
                    public double slope(double force, double descentRate) {
                        return sloped ? -force * descentRate : Double.NaN;
                    }
                };
                assertThat(path.advance(1e5, end, 0)).isTrue();
                assertThat(path.work()).isCloseTo(1500, within(1e-6));
                forces[k] = path.force();
            }
            assertThat(forces[1]).isCloseTo(forces[0], within(1e-6 * forces[0]));
        }
    }

    @Test
    void anEndBelowTheWatchedForceIsNotSeen() {
        LoadPath path = path(SmallLines.model(Passage.friction(0.2), 2), 4);
        assertThat(path.advance(5000, p -> 2000 - p.force(), 6000)).isFalse();
        assertThat(path.force()).isEqualTo(5000);
        LoadPath watched = path(SmallLines.model(Passage.friction(0.2), 2), 4);
        assertThat(watched.advance(5000, p -> 2000 - p.force(), 0)).isTrue();
        assertThat(watched.force()).isCloseTo(2000, within(1e-6));
    }

    @Test
    void inTwoPartsThePathIsTheSame() {
        LoadPath once = path(SmallLines.model(Passage.friction(0.2), 2), 4);
        once.advance(6000, SmallLoadPathTest::never, 0);
        LoadPath parts = path(SmallLines.model(Passage.friction(0.2), 2), 4);
        for (double to : new double[] {700, 2500, 6000}) {
            parts.advance(to, SmallLoadPathTest::never, 0);
            assertThat(parts.force()).isEqualTo(to);
        }
        assertThat(parts.descent()).isCloseTo(once.descent(), within(1e-6 * once.descent()));
        assertThat(parts.work()).isCloseTo(once.work(), within(1e-6 * once.work()));
    }

    /** A load on an anchor: rigid it stays where it is, elastic it goes down by P/k, and the line hardly takes part. */
    @Test
    void aLoadOnAnAnchorLowersItByItsSpring() {
        for (double stiffness : new double[] {Double.POSITIVE_INFINITY, 1e5}) {
            List<Support> supports = new ArrayList<>(SmallLines.supports(Passage.free(), 2));
            double rigid = Double.POSITIVE_INFINITY;
            supports.set(1, supports.get(1).withStiffness(new Stiffness(rigid, rigid, stiffness)));
            LineModel model = new LineModel(SmallLines.line(supports, 0.4));
            LoadPath path = new LoadPath(model, model.hookAtSupport(1), 10, 1000);
            path.advance(1000, SmallLoadPathTest::never, 0);
            double sinks = 1000 / stiffness;
            assertThat(path.descent()).isCloseTo(sinks, within(0.05 * sinks));
            assertThat(path.descent()).as("the cable holds a little of it").isLessThanOrEqualTo(sinks);
            assertThat(model.support(1).z()).isCloseTo(10 - path.descent(), within(1e-9));
        }
    }

    @Test
    void linesWithFrictionOrWithMemoryAreFollowed() {
        LoadSlot one = new LoadSlot(0, true, 4);
        LoadSlot other = new LoadSlot(0, true, 6);
        assertThat(EquilibriumPath.remembers(SmallLines.system(Passage.free(), 3, one)))
                .isFalse();
        assertThat(EquilibriumPath.remembers(SmallLines.system(Passage.clamped(), 3, one)))
                .isFalse();
        assertThat(EquilibriumPath.remembers(SmallLines.system(Passage.friction(0.1), 2, one)))
                .isTrue();
        assertThat(EquilibriumPath.remembers(SmallLines.system(Passage.friction(0.1), 1, one)))
                .as("no post")
                .isFalse();
        List<Support> ends = new ArrayList<>(SmallLines.supports(Passage.free(), 1));
        for (int e = 0; e < 2; e++) {
            List<Support> single = new ArrayList<>(ends);
            single.set(e, single.get(e).withInlineAbsorber(SmallLines.absorber()));
            assertThat(EquilibriumPath.remembers(SmallLines.system(single, one)))
                    .isFalse();
            assertThat(EquilibriumPath.remembers(SmallLines.system(single, one, other)))
                    .isTrue();
            assertThat(EquilibriumPath.remembers(SmallLines.system(single, LoadSlot.atSupport(1, 0))))
                    .isTrue();
        }
        List<Support> both = ends.stream()
                .map(s -> s.withInlineAbsorber(SmallLines.absorber()))
                .toList();
        assertThat(EquilibriumPath.remembers(SmallLines.system(both))).isTrue();
        assertThat(EquilibriumPath.remembers(SmallLines.system(ends, one, other)))
                .isFalse();
    }

    /** An absorber at its plateau of 6 kN: the tension at its end stays there while the load goes down. */
    @Test
    void anAbsorberHoldsTheTensionAtItsPlateau() {
        List<Support> ends = new ArrayList<>(SmallLines.supports(Passage.free(), 1));
        ends.set(0, ends.get(0).withInlineAbsorber(SmallLines.absorber()));
        LineModel model = new LineModel(SmallLines.line(ends, 0.4));
        LoadPath path = path(model, 5);
        double last = 0;
        for (double force : new double[] {1000, 3000, 4000}) {
            path.advance(force, SmallLoadPathTest::never, 0);
            double tension = model.pieces(0).get(0).startTension().magnitude();
            double extension = model.extension(0);
            assertThat(extension).isGreaterThanOrEqualTo(last);
            assertThat(tension).isLessThanOrEqualTo(6000 * (1 + 1e-9));
            if (model.yieldedExtension(0) > 0) {
                assertThat(tension).isCloseTo(6000, within(1e-5));
            }
            last = extension;
        }
        assertThat(model.yieldedExtension(0)).isPositive();
    }

    /** Warmth takes EA α ΔT from the tension of a taut cable, but for its sag; cold adds as much. */
    @Test
    void warmthSlackensAndColdTightens() {
        LineModel warm = new LineModel(SmallLines.line(SmallLines.supports(Passage.clamped(), 1), 0.01));
        LineModel cold = new LineModel(SmallLines.line(SmallLines.supports(Passage.clamped(), 1), 0.01));
        double from = warm.line().installed().temperature();
        warm.bringTo(from + 20);
        cold.bringTo(from - 20);
        double change = SmallLines.EA * 12e-6 * 20;
        double tension = warm.pieces(0).get(0).startTension().magnitude();
        assertThat(tension).isCloseTo(SmallLines.TENSION - change, within(0.01 * change));
        double tight = cold.pieces(0).get(0).startTension().magnitude();
        assertThat(tight).isCloseTo(SmallLines.TENSION + change, within(0.01 * change));
        LineModel still = new LineModel(SmallLines.line(SmallLines.supports(Passage.clamped(), 1), 0.01));
        double before = still.pieces(0).get(0).startTension().magnitude();
        still.bringTo(from);
        assertThat(still.pieces(0).get(0).startTension().magnitude()).isEqualTo(before);
    }

    @Test
    void pointsOfTheCableAreFoundByTheirLength() {
        LineModel model = SmallLines.model(Passage.free(), 3);
        double whole = model.installedLength();
        assertThat(model.installedPoint(0.5 * whole)).hasValueSatisfying(p -> {
            assertThat(p.span()).isEqualTo(1);
            assertThat(p.point().x()).isCloseTo(15, within(1e-6));
        });
        assertThat(model.installedPoint(0)).hasValueSatisfying(p -> {
            assertThat(p.span()).isZero();
            assertThat(p.point()).isEqualTo(model.support(0));
        });
        assertThat(model.installedPoint(whole * (1 + 1e-12))).isEmpty();
    }
}
