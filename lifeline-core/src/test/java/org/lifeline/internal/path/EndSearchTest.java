package org.lifeline.internal.path;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.lifeline.base.NoEquilibriumException;
import org.lifeline.model.Passage;

/** Ends of paths where a closed form, or the path itself looked at again, says where they are. */
class EndSearchTest {
    private static PathOfALoad path(Passage passage) {
        return PathOfALoad.gripped(SmallLines.model(passage, 2), 0, 4);
    }

    /** Fall of a weight from a height: the line has taken up what the weight lost. */
    private static EquilibriumPath.End fall(double weight, double height) {
        return Ends.of(
                p -> weight * (height + p.descent) - PathEnergy.taken(p), p -> (weight - p.value) * p.descentRate);
    }

    @ParameterizedTest
    @ValueSource(doubles = {1e-6, 0.01, 1, 200, 3000, 7999.99999})
    void anEndByTheForceIsThatForce(double force) {
        for (Passage passage : new Passage[] {Passage.free(), Passage.friction(0.2), Passage.clamped()}) {
            PathOfALoad p = path(passage);
            assertThat(p.path.advance(8000, Ends.of(q -> force - q.value, q -> -1), 0))
                    .isTrue();
            assertThat(p.now().value).isCloseTo(force, within(1e-11 + 2e-12 * force));
            assertThat(p.now().state.force[p.load]).isEqualTo(p.now().value);
            assertThat(p.model.state().force[p.load]).isEqualTo(p.now().value);
        }
    }

    /** Where the end lies, the plain path to that force has the same energy and the same descent. */
    @ParameterizedTest
    @CsvSource({"900, 0.3", "900, 2", "300, 4", "3000, 0.1"})
    void theEnergyOfAFallIsTakenUpAtTheEnd(double weight, double height) {
        for (Passage passage : new Passage[] {Passage.free(), Passage.friction(0.2), Passage.clamped()}) {
            PathOfALoad p = path(passage);
            assertThat(p.path.advance(1e5, fall(weight, height), weight)).isTrue();
            double left = fall(weight, height).value(p.now());
            assertThat(left).isCloseTo(0, within(1e-11 * weight * (height + p.now().descent)));
            assertThat(p.now().value).isGreaterThan(weight);
            PathOfALoad plain = path(passage).to(p.now().value);
            double same = passage.equals(Passage.friction(0.2)) ? 1e-6 : 1e-9;
            assertThat(fall(weight, height).value(plain.now()))
                    .isCloseTo(0, within(same * weight * (height + p.now().descent)));
            assertThat(plain.now().descent).isCloseTo(p.now().descent, within(same));
        }
    }

    /** The slope helps, and does not decide: with none, with the true one, and with one of a wrong size. */
    @Test
    void theSlopeDoesNotMoveTheEnd() {
        for (Passage passage : new Passage[] {Passage.free(), Passage.friction(0.2)}) {
            double[] forces = new double[3];
            for (int k = 0; k < 3; k++) {
                double factor = new double[] {Double.NaN, 1, 3}[k];
                PathOfALoad p = path(passage);
                EquilibriumPath.End end =
                        Ends.of(q -> 1000 - PathEnergy.taken(q), q -> -factor * q.value * q.descentRate);
                assertThat(p.path.advance(2e4, end, 0)).isTrue();
                forces[k] = p.now().value;
            }
            assertThat(forces[1]).isCloseTo(forces[0], within(1e-9 * forces[0]));
            assertThat(forces[2]).isCloseTo(forces[0], within(1e-9 * forces[0]));
        }
    }

    /** An end that lies below the force from which it is watched for is met at that force, not before it. */
    @Test
    void whatIsPassedAlreadyIsMetWhereTheWatchBegins() {
        for (Passage passage : new Passage[] {Passage.free(), Passage.friction(0.2)}) {
            PathOfALoad p = path(passage);
            assertThat(p.path.advance(6000, Ends.of(q -> 1000 - q.value, q -> -1), 2500))
                    .isTrue();
            assertThat(p.now().value).isCloseTo(2500, within(1e-9));
        }
    }

    /** A corner in the end, where the slope jumps tenfold. */
    @ParameterizedTest
    @ValueSource(doubles = {500, 1000, 1500})
    void aCornerDoesNotStopTheSearch(double force) {
        PathOfALoad p = path(Passage.free());
        EquilibriumPath.End end =
                Ends.of(q -> force - q.value + 10 * Math.max(0, 1000 - q.value), q -> q.value < 1000 ? -11 : -1);
        double root = force >= 1000 ? force : (force + 10_000) / 11;
        assertThat(p.path.advance(6000, end, 0)).isTrue();
        assertThat(p.now().value).isCloseTo(root, within(1e-8));
    }

    /** A flat root, at which the slope vanishes as well. */
    @Test
    void aFlatEndIsFoundAsFarAsItCanBeTold() {
        PathOfALoad p = path(Passage.free());
        assertThat(p.path.advance(6000, Ends.of(q -> Math.pow(2000 - q.value, 3)), 0))
                .isTrue();
        assertThat(p.now().value).isCloseTo(2000, within(0.1));
    }

    /** An end that jumps from above zero to below it has no root; no line jumps there, so that its descent goes on over it. */
    @Test
    void anEndThatJumpsIsPassedByTheDescent() {
        PathOfALoad p = path(Passage.free());
        assertThat(p.path.advance(6000, Ends.of(q -> q.value < 2000 ? 1 : -1), 0))
                .isTrue();
        assertThat(p.now().value).isCloseTo(2000, within(1e-6));
    }

    /** From a step that ends far beyond, a little and next to it. */
    @Test
    void theEndIsTheSameFromAnyStep() {
        double first = 0;
        for (double step : new double[] {6000, 2100, 2001}) {
            PathOfALoad p = path(Passage.friction(0.3));
            p.to(1500);
            assertThat(p.path.advance(step, Ends.of(q -> 2000 - q.value, q -> -1), 0))
                    .isTrue();
            assertThat(p.now().value).isCloseTo(2000, within(1e-8));
            first = first == 0 ? p.now().descent : first;
            assertThat(p.now().descent).isCloseTo(first, within(1e-6 * first));
        }
    }

    /** From a value near the end, below it or above, the end is that force, and the plain path leads to it. */
    @ParameterizedTest
    @ValueSource(doubles = {2000, 2900, 2999.9999, 3000.0001, 3100, 4000})
    void anEndIsFoundFromAValueNearIt(double aim) {
        for (Passage passage : new Passage[] {Passage.free(), Passage.clamped()}) {
            PathOfALoad p = path(passage);
            assertThat(new EndSearch(p.path, Ends.of(q -> 3000 - q.value, q -> -1)).findNear(aim, 8000, 0))
                    .isTrue();
            assertThat(p.now().value).isCloseTo(3000, within(1e-8));
            PathOfALoad plain = path(passage).to(3000);
            assertThat(p.now().descent).isCloseTo(plain.now().descent, within(1e-11));
            assertThat(p.now().energy).isCloseTo(plain.now().energy, within(1e-8 * plain.now().energy));
        }
    }

    /** What Newton's step from a value does not reach within the target, or falls short of, is not near: the path stays there. */
    @ParameterizedTest
    @CsvSource({"-1, 2950", "-1, 3000", "-2, 8000", "-1000, 8000", "1, 8000"})
    void whatIsNotNearIsNotFoundAndThePathStays(double slope, double target) {
        PathOfALoad p = path(Passage.free());
        assertThat(new EndSearch(p.path, Ends.of(q -> 3000 - q.value, q -> slope)).findNear(2900, target, 0))
                .isFalse();
        assertThat(p.now().value).isEqualTo(2900);
        assertThat(p.now().descent).isCloseTo(path(Passage.free()).to(2900).now().descent, within(1e-9));
        assertThat(p.path.advance(8000, Ends.of(q -> 3000 - q.value, q -> -1), 0))
                .isTrue();
        assertThat(p.now().value).isCloseTo(3000, within(1e-8));
    }

    /** An end is not looked for below a value, from wherever it is foreseen. */
    @Test
    void noEndIsFoundBelowTheWatchedValue() {
        for (double aim : new double[] {2500, 3500}) {
            PathOfALoad p = path(Passage.free());
            EquilibriumPath.End end = Ends.of(q -> q.value < 2000 ? -1 : 3000 - q.value, q -> -1);
            assertThat(new EndSearch(p.path, end).findNear(aim, 8000, 2000)).isTrue();
            assertThat(p.now().value).isCloseTo(3000, within(1e-8));
        }
    }

    /** A cable without weight that grows warm: beyond the strain of its tension there is no equilibrium. */
    private static EquilibriumPath warmed() {
        return new EquilibriumPath(
                new LineModel(SmallLines.line(SmallLines.supports(Passage.free(), 2), 0)),
                new PathParameter.Thermal(1, 1),
                null);
    }

    private static final double SLACK = SmallLines.TENSION / SmallLines.EA;

    /** What cannot be reached is not near, be it the value itself or what Newton's step from it leads to. */
    @ParameterizedTest
    @CsvSource({"1.5, 1, 0", "0.5, 1.5, 0.5", "0.5, 2.5, 0.5", "0.5, 0.52, 0.5"})
    void whatIsBeyondTheLastEquilibriumIsNotNear(double aim, double root, double reached) {
        EquilibriumPath path = warmed();
        EquilibriumPath.End end = Ends.of(q -> root * SLACK - q.value, q -> -1);
        boolean found = new EndSearch(path, end).findNear(aim * SLACK, 2 * SLACK, 0);
        assertThat(found).isEqualTo(root < 1);
        assertThat(path.now().value).isCloseTo((found ? root : reached) * SLACK, within(1e-9 * SLACK));
    }

    /** The value from which an end is watched is beyond the last equilibrium: the search says how far it came. */
    @Test
    void aWatchBeyondTheLastEquilibriumIsLost() {
        EquilibriumPath path = warmed();
        path.step(0.25 * SLACK);
        path.accept();
        path.step(0.5 * SLACK);
        EndSearch search = new EndSearch(path, Ends.of(q -> -1));
        assertThatThrownBy(() -> search.find(2 * SLACK))
                .hasMessageContaining("at another temperature")
                .isInstanceOfSatisfying(
                        NoEquilibriumException.class,
                        e -> assertThat(e.loadFactor()).isCloseTo(0.25 / 2, within(1e-9)));
    }

    /** Cable that has left the span when the end was passed: the search looks nearer by forty times, and says how far it came. */
    @Test
    void aSearchThatIsLostSaysHowFarItCame() {
        PathOfALoad p = path(Passage.clamped()).to(1000);
        int before = p.path.tried();
        EquilibriumPath.End end = Ends.of(q -> {
            p.now().state.slip[1] = q.value > 2000 ? 11 : p.now().state.slip[1];
            return 3000 - q.value;
        });
        assertThatThrownBy(() -> p.path.advance(8000, end, 0))
                .hasMessageContaining("line under a growing load")
                .isInstanceOfSatisfying(NoEquilibriumException.class, e -> {
                    assertThat(e.loadFactor()).isCloseTo(1000.0 / 8000, within(1e-12));
                    assertThat(e.load()).hasValueCloseTo(1000.0, within(1e-9));
                });
        assertThat(p.path.tried() - before)
                .as("one beyond the end, one within, forty nearer by")
                .isEqualTo(42);
    }

    /** With its slope a root that is nearly a straight line of the force takes a few steps; without, some more. */
    @Test
    void fewStepsLeadToTheEnd() {
        for (Passage passage : new Passage[] {Passage.free(), Passage.clamped()}) {
            PathOfALoad p = path(passage);
            assertThat(p.path.advance(8000, Ends.of(q -> 3000 - q.value, q -> -1), 0))
                    .isTrue();
            assertThat(p.path.tried()).as("there, across the root, at it").isLessThanOrEqualTo(3);
            PathOfALoad q = path(passage);
            assertThat(q.path.advance(1e5, fall(900, 2), 900)).isTrue();
            assertThat(q.path.tried()).as("a fall").isLessThanOrEqualTo(8);
        }
    }

    /** What is left where a fall ends is rounding of the energies, of some 1e-14 of it. */
    @Test
    void whatIsLeftAtTheEndIsRounding() {
        for (double height : new double[] {0.2, 0.7, 1.3, 2.9, 5.5}) {
            PathOfALoad p = path(Passage.free());
            EquilibriumPath.End end = fall(1000, height);
            assertThat(p.path.advance(1e5, end, 1000)).isTrue();
            double rounding = 1e-14 * 1000 + 4e-16 * p.now().energySize;
            double last = -end.slope(p.now()) * p.now().value * 1e-12;
            assertThat(Math.abs(end.value(p.now()))).isLessThanOrEqualTo(Math.max(rounding, last));
        }
    }
}
