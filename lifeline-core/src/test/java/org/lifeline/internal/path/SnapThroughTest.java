package org.lifeline.internal.path;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.lifeline.base.NoEquilibriumException;
import org.lifeline.base.Point;
import org.lifeline.base.Vector3;
import org.lifeline.internal.line.LineState;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Passage;
import org.lifeline.model.Stiffness;
import org.lifeline.model.Support;
import org.lifeline.model.cable.Cable;

/**
 * A descent that is prescribed, on lines that would carry by themselves: the force that follows is that of the path of a
 * growing force.
 */
class SnapThroughTest {
    private static PathOfALoad loaded(Passage passage, double force) {
        return PathOfALoad.gripped(SmallLines.model(passage, 2), 0, 4).to(force);
    }

    /** The path stands where it did, but has carried more before: what is left of a line that has given way. */
    private static void hasCarried(PathOfALoad p, double peak) {
        p.now().value = peak;
    }

    @Test
    void aLineThatCarriesGoesOnAtOnce() {
        PathOfALoad p = loaded(Passage.free(), 2000);
        SnapThrough snap = p.snap();
        assertThat(snap.happened()).isFalse();
        assertThat(snap.peak()).isZero();
        double from = p.now().descent;
        assertThat(snap.pass(null, 0)).isFalse();
        assertThat(snap.happened()).isTrue();
        assertThat(snap.peak()).isEqualTo(2000);
        assertThat(p.now().value).isGreaterThan(2000);
        assertThat(p.now().descent - from)
                .as("one drop, a ten thousandth of the span")
                .isCloseTo(1e-4 * SmallLines.SPAN, within(1e-11));
        assertThat(p.now().state.force[p.load]).isEqualTo(p.now().value);
    }

    /** The peak is the largest force so far, not the last one. */
    @Test
    void thePeakStays() {
        PathOfALoad p = loaded(Passage.free(), 2000);
        SnapThrough snap = p.snap();
        hasCarried(p, 2500);
        snap.pass(null, 0);
        double first = snap.peak();
        hasCarried(p, 2100);
        snap.pass(null, 0);
        assertThat(first).isEqualTo(2500);
        assertThat(snap.peak()).isEqualTo(2500);
        assertThat(p.now().value).isGreaterThan(2500);
    }

    /** Down to where the line carries again what it once carried, in steps that grow half as long again up to 2 %. */
    @ParameterizedTest
    @ValueSource(doubles = {2100, 4000, 6000})
    void theDescentGoesOnUntilTheLineCarriesAgain(double peak) {
        PathOfALoad p = loaded(Passage.free(), 2000);
        hasCarried(p, peak);
        double descent = p.now().descent;
        double before = descent;
        double drop = 1e-4 * SmallLines.SPAN;
        double needed = loaded(Passage.free(), peak).now().descent;
        while (descent <= needed) {
            before = descent;
            descent += drop;
            drop = Math.min(1.5 * drop, 0.02 * SmallLines.SPAN);
        }
        assertThat(p.snap().pass(null, 0)).isFalse();
        assertThat(p.now().descent).isCloseTo(descent, within(1e-9)).isGreaterThan(before);
        PathOfALoad plain = loaded(Passage.free(), p.now().value);
        assertThat(p.now().descent).isCloseTo(plain.now().descent, within(1e-10));
        assertThat(p.now().energy).isCloseTo(plain.now().energy, within(1e-6));
        assertThat(p.now().w).isEqualTo(p.path.coordinate().w(p.now().value));
    }

    /** Work by the mean force over the descent, energy and heat of friction agree over one short drop. */
    @ParameterizedTest
    @ValueSource(doubles = {1500, 6000})
    void theWorkOfTheDropIsTakenUp(double force) {
        PathOfALoad p = loaded(Passage.friction(0.1), force);
        double work = p.now().loadWork;
        double heat = p.now().frictionHeat;
        double taken = PathEnergy.taken(p.now());
        double descent = p.now().descent;
        double slip = p.now().state.slip[1];
        assertThat(slip).as("it runs").isPositive();
        p.snap().pass(null, 0);
        double done = p.now().loadWork - work;
        double drop = p.now().descent - descent;
        assertThat(done).isCloseTo(0.5 * (force + p.now().value) * drop, within(1e-9 * done));
        assertThat(PathEnergy.taken(p.now()) - taken).isCloseTo(done, within(1e-3 * done));
        double warmth = p.now().frictionHeat - heat;
        double pull = PathEnergy.slipForce(
                p.model.system().law,
                p.model.system().forces.startSideTension(p.now().state, 1),
                p.model.system().forces.endSideTension(p.now().state, 1));
        double moved = p.now().state.slip[1] - slip;
        assertThat(moved).isPositive();
        assertThat(warmth).isCloseTo(-pull * moved, within(0.01 * warmth));
    }

    /** A cable that is bent over a high post lets go during the drop: as on the plain path to the same force. */
    @Test
    void aSupportBeginsToSlipOnTheWayDown() {
        List<Support> supports = new ArrayList<>(SmallLines.supports(Passage.friction(0.6), 2));
        supports.set(1, Support.intermediate("s1", Point.of(10, 0, 11.5), Passage.friction(0.6)));
        PathOfALoad p =
                PathOfALoad.gripped(SmallLines.line(supports, 0.4), 0, 4).to(30);
        assertThat(p.now().state.slip[1]).isZero();
        hasCarried(p, 3000);
        p.snap().pass(null, 0);
        PathOfALoad plain =
                PathOfALoad.gripped(SmallLines.line(supports, 0.4), 0, 4).to(p.now().value);
        assertThat(plain.now().state.slip[1]).isPositive();
        assertThat(p.now().state.passage[1]).isEqualTo(plain.now().state.passage[1]);
        assertThat(p.now().state.slip[1])
                .isCloseTo(plain.now().state.slip[1], within(1e-3 * plain.now().state.slip[1]));
        assertThat(p.now().descent).isCloseTo(plain.now().descent, within(1e-3 * plain.now().descent));
        assertThat(p.now().frictionHeat).isCloseTo(plain.now().frictionHeat, within(0.05 * plain.now().frictionHeat));
    }

    /** One drop across the limit of a support: what lets go stands on the limit of the capstan at its end, not beyond it. */
    @Test
    void aDropThatPassesALimitEndsOnIt() {
        double mu = 0.6;
        List<Support> supports = new ArrayList<>(SmallLines.supports(Passage.friction(mu), 2));
        supports.set(1, Support.intermediate("s1", Point.of(10, 0, 11.5), Passage.friction(mu)));
        double force = 20;
        PathOfALoad p =
                PathOfALoad.gripped(SmallLines.line(supports, 0.4), 0, 4).to(force);
        while (p.to(force + 1).now().state.slip[1] == 0) {
            force++;
        }
        PathOfALoad q =
                PathOfALoad.gripped(SmallLines.line(supports, 0.4), 0, 4).to(force);
        assertThat(q.now().state.slip[1]).isZero();
        q.snap().pass(null, 0);
        LineState s = q.now().state;
        assertThat(s.slip[1]).isPositive();
        double before = q.model.system().forces.startSideTension(s, 1);
        double behind = q.model.system().forces.endSideTension(s, 1);
        double ratio = Math.max(before / behind, behind / before);
        assertThat(Math.log(ratio)).isCloseTo(mu * q.model.system().forces.turned(s, 1), within(1e-9));
    }

    /** Within the drop that passes it the end is closed in on: some three places, each of a few Newton steps. */
    @ParameterizedTest
    @CsvSource({"3e-4, 6", "0.05, 33", "0.2, 46"})
    void theEndIsFoundOnTheWayDown(double deeper, int most) {
        PathOfALoad p = loaded(Passage.free(), 2000);
        hasCarried(p, 9000);
        double depth = p.now().descent + deeper;
        assertThat(p.snap().pass(PathOfALoad.descent(depth), 0)).isTrue();
        assertThat(p.now().descent).isCloseTo(depth, within(1e-11));
        assertThat(p.beside.iterations).as("it closes in fast").isLessThanOrEqualTo(most);
        assertThat(p.now().descent).as("the end is not passed").isLessThanOrEqualTo(depth);
        PathOfALoad plain = loaded(Passage.free(), p.now().value);
        assertThat(plain.now().descent).isCloseTo(depth, within(1e-9));
    }

    /** An end that is no straight line of the descent: energy taken up. */
    @Test
    void theEndByEnergyIsThatOfThePlainPath() {
        EquilibriumPath.End end = Ends.of(point -> 600 - point.energy);
        PathOfALoad p = loaded(Passage.free(), 2000);
        assertThat(p.now().energy).isLessThan(600);
        hasCarried(p, 9000);
        assertThat(p.snap().pass(end, 0)).isTrue();
        assertThat(p.now().energy).isCloseTo(600, within(1e-8));
        assertThat(p.beside.iterations).as("it closes in fast").isLessThanOrEqualTo(43);
        PathOfALoad plain = PathOfALoad.gripped(SmallLines.model(Passage.free(), 2), 0, 4);
        assertThat(plain.path.advance(9000, end, 0)).isTrue();
        assertThat(p.now().value).isCloseTo(plain.now().value, within(1e-6));
    }

    /** Below the force from which it is watched for, the end is gone past; at that force too. */
    @Test
    void anEndIsNotLookedForBelowTheWatchedForce() {
        for (double watchFrom : new double[] {3000, 5000}) {
            PathOfALoad p = loaded(Passage.free(), 2000);
            hasCarried(p, 3000);
            double depth = p.now().descent + 0.01;
            assertThat(p.snap().pass(PathOfALoad.descent(depth), watchFrom)).isFalse();
            assertThat(p.now().value).isGreaterThan(3000);
        }
    }

    /** A post that is low and soft along the line is pulled over by a load near it; the line then carries what it is asked to. */
    @ParameterizedTest
    @CsvSource({
        "1.2, 1051, 3015, 8, -1.8, 8750", "0.22, 130, 2302, 9, -3.7, 6250",
        "0.43, 148, 2736, 8, -1.3, 3750", "0.86, 198, 1522, 7, -1.0, 3000"
    })
    void aSoftPostIsPulledOver(double mu, double k, double pretension, double station, double rise, double force) {
        Lifeline line = Lifeline.builder()
                .cable(Cable.builder().massPerLength(0.4).axialStiffness(2e6).build())
                .endAnchor("a", Point.of(0, 0, 10))
                .support(Support.intermediate("post", Point.of(10, 0, 10 + rise), Passage.friction(mu))
                        .withStiffness(Stiffness.alongX(k)))
                .endAnchor("b", Point.of(20, 0, 10))
                .pretension(pretension)
                .build();
        PathOfALoad p = PathOfALoad.gripped(line, 0, station);
        double peak = 0;
        for (double f = 250; f <= force; f += 250) {
            p.to(f);
            assertThat(p.path.peak()).isGreaterThanOrEqualTo(peak);
            peak = p.path.peak();
        }
        assertThat(p.path.jumped()).isTrue();
        double taken = PathEnergy.taken(p.now());
        assertThat(p.now().loadWork).isCloseTo(taken, within(1e-4 * taken));
        Vector3 down = p.model.reaction(0).plus(p.model.reaction(1)).plus(p.model.reaction(2));
        assertThat(-down.z()).isCloseTo(force + 9.80665 * 0.4 * p.model.installedLength(), within(1.0));
    }

    /** A cable of 2 MN that is asked for a thousand spans of descent breaks the bounds of what is looked for. */
    @Test
    void aLoadThatNeverIsCarriedIsLost() {
        PathOfALoad p = loaded(Passage.free(), 2000);
        hasCarried(p, Double.MAX_VALUE);
        assertThatThrownBy(() -> p.snap().pass(null, 0))
                .isInstanceOf(NoEquilibriumException.class)
                .hasMessageContaining("line that gives way under the arrest load");
    }

    /** With no force on the line there is none to change: it says so. */
    @Test
    void theFirstOfALoadIsNotTakenUp() {
        PathOfALoad p = PathOfALoad.gripped(SmallLines.model(Passage.free(), 2), 0, 4);
        assertThatThrownBy(() -> p.snap().pass(null, 0))
                .isInstanceOf(NoEquilibriumException.class)
                .hasMessageContaining("line that does not take up the first of a load");
        int tries = 1;
        for (double drop = 0.25 * 1e-4; drop >= 1e-13; drop *= 0.25) {
            tries++;
        }
        assertThat(p.beside.iterations)
                .as("one step for each drop, which is quartered down to 1e-13 of the span")
                .isEqualTo(tries);
    }
}
