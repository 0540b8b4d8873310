package org.lifeline.internal.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.lifeline.internal.motion.law.HystereticCurve;
import org.lifeline.model.absorber.LoadingCurve;

/** The absorber in the outermost segment: its link, its step with the cable beside it, its work. */
class InlineElementTest {
    private static final double PLATEAU = 6000;
    private static final double UNLOADING = 8e5;

    private static LoadingCurve plateau() {
        return LoadingCurve.through(
                List.of(new LoadingCurve.Corner(0, PLATEAU), new LoadingCurve.Corner(1, PLATEAU)), UNLOADING, 2e5);
    }

    private static LumpedMassChain chain() {
        return Chains.through(
                0, 1.001, new double[] {0, 0, 0}, new double[] {2, 0, 0}, new double[] {4, 0, 0}, new double[] {6, 0, 0
                });
    }

    private static InlineElement element(LumpedMassChain c, boolean first, double installed) {
        return new InlineElement(c, first, new HystereticCurve(plateau(), 1e9), installed);
    }

    @Test
    void theLinkIsTheExtensionSinceInstallation() {
        for (boolean first : new boolean[] {true, false}) {
            LumpedMassChain c = chain();
            InlineElement e = element(c, first, 0.05);
            e.start(0.3, 0.3);
            assertThat(e.link()).isCloseTo(0.25, within(1e-15));
            assertThat(first ? c.firstLink : c.lastLink).isCloseTo(0.25, within(1e-15));
            assertThat(first ? c.lastLink : c.firstLink).isZero();
            assertThat(e.force).isCloseTo(PLATEAU, within(1e-6));
        }
    }

    /** Drawn back from 0.3 m by 2 mm along its unloading line. */
    @Test
    void itStartsOnItsUnloadingLine() {
        InlineElement e = element(chain(), true, 0);
        e.start(0.3, 0.298);
        assertThat(e.force).isCloseTo(PLATEAU - 2e-3 * UNLOADING, within(1.0));
        assertThat(e.forceIf(0.3)).isCloseTo(PLATEAU, within(1.0));
        assertThat(e.forceIf(0.9)).isCloseTo(PLATEAU, within(1.0));
        assertThat(e.forceIf(0)).isZero();
        assertThat(e.extension).as("only thought of").isEqualTo(0.298);
    }

    @Test
    void theLinkIsNoPartOfTheStretchedCable() {
        for (boolean first : new boolean[] {true, false}) {
            LumpedMassChain c = chain();
            int j = first ? 0 : 2;
            InlineElement e = element(c, first, 0);
            e.start(0.1, 0.1);
            c.setLength(j, 1.899);
            ChainStep.geometry(c);
            e.shorten();
            assertThat(c.stretched[j]).isCloseTo(1.9, within(1e-12));
            assertThat(c.elastic[j]).isCloseTo(Chains.EA * (1.9 / 1.899 - 1), within(1e-6));
            assertThat(c.slope[j]).isEqualTo(Chains.EA);
            assertThat(c.stretched[1]).as("the middle segment is as before").isCloseTo(2, within(1e-12));
            assertThat(e.settlingHeat).isZero();
        }
    }

    /**
     * The cable goes slack by s while the absorber is still stretched: they settle where both pull alike, two springs
     * one after the other, F′ = F k/(k + u) less what the slack takes; a part of the energy is lost.
     */
    @Test
    void aStretchedAbsorberDrawsInASlackCable() {
        LumpedMassChain c = chain();
        InlineElement e = element(c, true, 0);
        e.start(0.3, 0.3);
        double slack = 1e-3;
        double length = 2 - 0.3 + slack;
        c.setLength(0, length);
        ChainStep.geometry(c);
        double was = e.force;
        e.shorten();
        double k = Chains.EA / length;
        double drawn = (was + k * slack) / (UNLOADING + k);
        assertThat(0.3 - e.extension).isCloseTo(drawn, within(1e-9));
        assertThat(e.force).isCloseTo(was - UNLOADING * drawn, within(1e-3));
        assertThat(c.elastic[0]).as("both pull alike").isCloseTo(e.force, within(1e-3));
        double given = 0.5 * (was + e.force) * drawn;
        assertThat(e.work).isCloseTo(-given, within(1e-9));
        double held = 0.5 * c.elastic[0] * c.elastic[0] / k;
        assertThat(e.settlingHeat).as("the rest is lost").isPositive().isCloseTo(given - held, within(1e-6));
    }

    @Test
    void anAbsorberThatHasGivenBackAllDrawsInNoMore() {
        LumpedMassChain c = chain();
        InlineElement e = element(c, true, 0);
        e.start(0.3, 0.3);
        c.setLength(0, 5);
        ChainStep.geometry(c);
        e.shorten();
        assertThat(e.extension).as("what stays: 0.3 m less F/u").isCloseTo(0.3 - PLATEAU / UNLOADING, within(1e-6));
        assertThat(e.force).isCloseTo(0, within(1e-3));
        assertThat(c.elastic[0]).isZero();
        double work = e.work;
        ChainStep.geometry(c);
        e.shorten();
        assertThat(e.work).isEqualTo(work);
        assertThat(e.settlingHeat).isZero();
    }

    /** Within a step tension, force of the absorber and its extension agree on its curve, and its work is ∫F dx. */
    @Test
    void inEveryStepItPullsAsTheCableDoes() {
        MotionSystem s = new MotionSystem(MotionCases.setup(MotionCases.withAbsorber(plateau()), 4, true), 0.5, 1);
        s.time = Math.sqrt(2 / MotionCases.G) - 1e-3;
        InlineElement e = s.inline[0];
        assertThat(e).isNotNull();
        double longest = 0;
        double work = e.work;
        int yielding = 0;
        while (s.time < 0.75) {
            double before = e.extension;
            double was = e.force;
            s.kick();
            if (e.extension > longest && e.extension > 0.01) {
                assertThat(s.chain.tension[0]).isCloseTo(e.force, within(1e-3 * PLATEAU));
                assertThat(e.force).isCloseTo(PLATEAU, within(1e-3));
                yielding++;
            }
            longest = Math.max(longest, e.extension);
            work += 0.5 * (was + e.force) * (e.extension - before);
            assertThat(e.work).isCloseTo(work, within(1e-6 * (1 + work)));
            assertThat(s.chain.firstLink).isEqualTo(e.link());
            s.move();
        }
        assertThat(yielding).isGreaterThan(20);
        assertThat(e.work).isCloseTo(PLATEAU * longest, within(0.05 * PLATEAU * longest + 50));
    }
}
