package org.lifeline.internal.path;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.lifeline.base.Point;
import org.lifeline.model.InlineAbsorber;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Passage;
import org.lifeline.model.Support;
import org.lifeline.model.absorber.LoadingCurve;
import org.lifeline.model.absorber.LoadingCurve.Corner;
import org.lifeline.model.cable.Cable;

/**
 * An in-line absorber that comes to its stop: the elastic branch went on beyond a rigid stop, so that an absorber of 0.1 m
 * was drawn out to 0.15 m and the tension was 7 % too low; and a stop stiffer than the start left a negative permanent
 * extension.
 */
class InlineStopTest {
    private static final double START = 1e5;
    private static final double LENGTH = 0.1;
    private static final double FORCE = 9000;

    private static Lifeline line(double stop, double friction) {
        LoadingCurve curve =
                LoadingCurve.through(List.of(new Corner(0, FORCE), new Corner(LENGTH, FORCE)), START, stop);
        return Lifeline.builder()
                .cable(Cable.builder().massPerLength(0.4).axialStiffness(4e6).build())
                .endAnchor("a", Point.of(0, 0, 10))
                .intermediateAnchor("post", Point.of(10, 0, 10), Passage.friction(friction))
                .support(Support.end("b", Point.of(20, 0, 10)).withInlineAbsorber(InlineAbsorber.of(curve)))
                .pretension(2000)
                .build();
    }

    private static LineModel loaded(double stop, double friction, double force) {
        LineModel m = new LineModel(line(stop, friction));
        m.hang(m.hook(1, 5, true), force);
        return m;
    }

    private static double tension(LineModel m) {
        var pieces = m.pieces(1);
        return pieces.get(pieces.size() - 1).endTension().magnitude();
    }

    @Test
    void aRigidStopIsTheLimitOfAStiffOne() {
        for (double friction : new double[] {0, 0.15}) {
            LineModel rigid = loaded(Double.POSITIVE_INFINITY, friction, 8000);
            LineModel stiff = loaded(1e9, friction, 8000);
            assertThat(rigid.extension(1)).isCloseTo(LENGTH, within(1e-12));
            assertThat(tension(rigid)).isGreaterThan(1.2 * FORCE);
            assertThat(stiff.extension(1)).isCloseTo(LENGTH + (tension(stiff) - FORCE) / 1e9, within(1e-12));
            // What 1000 MN/m gives, some 10 μm in 20 m of cable of 4 MN.
            assertThat(tension(rigid)).isCloseTo(tension(stiff), within(2e-3 * tension(stiff)));
            LineModel stiffer = loaded(1e12, friction, 8000);
            assertThat(tension(rigid)).isCloseTo(tension(stiffer), within(2e-6 * tension(stiffer)));
        }
    }

    @Test
    void beforeTheStopNothingDependsOnIt() {
        double atRigid = tension(loaded(Double.POSITIVE_INFINITY, 0.15, 2000));
        assertThat(atRigid).isCloseTo(tension(loaded(1e9, 0.15, 2000)), within(1e-9 * atRigid));
    }

    @Test
    void offTheStopItGivesBackWhatIsElasticAndNoMore() {
        for (double stop : new double[] {Double.POSITIVE_INFINITY, 1e9, 3e4}) {
            LineModel m = loaded(stop, 0.15, 3000);
            assertThat(tension(m)).isGreaterThan(1.02 * FORCE);
            m.bringTo(500);
            double t = tension(m);
            assertThat(t).as("stop %s", stop).isLessThan(FORCE);
            double permanent = LENGTH - FORCE / START;
            assertThat(m.extension(1)).isCloseTo(permanent + t / START, within(1e-9));
            assertThat(m.yieldedExtension(1)).isCloseTo(LENGTH, within(1e-12));
            m.bringTo(15);
            assertThat(tension(m)).isGreaterThan(FORCE);
            double least = Double.isInfinite(stop) ? LENGTH : LENGTH + (tension(m) - FORCE) / stop;
            assertThat(m.extension(1)).isCloseTo(least, within(1e-9));
        }
    }

    @Test
    void theWorkIsThatOfTheCurve() {
        for (double stop : new double[] {Double.POSITIVE_INFINITY, 1e9, 3e4}) {
            LineModel m = new LineModel(line(stop, 0));
            LoadPath path = new LoadPath(m, m.hook(1, 5, true), 10, 3000);
            double before = path.energyBefore().inlineAbsorbers();
            path.advance(8000, p -> 1, 0);
            double over = m.extension(1) - LENGTH;
            double beyond = Double.isInfinite(stop) ? 0 : over * (FORCE + 0.5 * stop * over);
            double curve = FORCE * LENGTH - 0.5 * FORCE * FORCE / START;
            double installed = tension(new LineModel(line(stop, 0)));
            assertThat(before).isCloseTo(0.5 * installed * installed / START, within(1e-9));
            assertThat(m.energy().inlineAbsorbers()).isCloseTo(curve + beyond, within(1e-6));
        }
    }
}
