package org.lifeline.internal.path;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.lifeline.base.Point;
import org.lifeline.internal.line.Piece;
import org.lifeline.model.Attachment;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Passage;
import org.lifeline.model.PlausibleLine;
import org.lifeline.model.cable.Cable;

/** The path of one growing load: work against quadrature, roots, events of friction, and the way back of nothing. */
class LoadPathTest {
    private static final int CASES =
            Integer.getInteger("lifeline.cases", Boolean.getBoolean("lifeline.long") ? 1000 : 60);
    private static final double[] NODE = {0.1834346424956498, 0.5255324099163290, 0.7966664774136267, 0.9602898564975363
    };
    private static final double[] WEIGHT = {
        0.3626837833783620, 0.3137066458778873, 0.2223810344533745, 0.1012285362903763
    };

    private static LoadPath path(Lifeline line, PlausibleLine p, double energy) {
        LineModel m = new LineModel(line);
        LineModel.Load load = m.hook(p.span - 1, p.place().station(), p.attachment == Attachment.GRIPPED);
        return new LoadPath(m, load, 10, energy);
    }

    private static LoadPath path(PlausibleLine p) {
        return path(p.line(), p, 3000);
    }

    private static double never(LoadPath p) {
        return p.force() >= 0 ? 1 : Double.NaN;
    }

    /** ∫P dδ = P δ − ∫δ dP, the integral by Gauss-Legendre over panels between two forces. */
    @Test
    void withoutFrictionTheWorkIsWhatTheLineTakesUp() {
        for (long seed = 1; seed <= CASES; seed++) {
            PlausibleLine p =
                    new PlausibleLine(seed, true).withoutInlineAbsorbers().allFree();
            // A free-running load leaves a lower support at some force, which would be a kink for the quadrature.
            p.attachment = Attachment.GRIPPED;
            LoadPath path = path(p);
            double from = 1500;
            double to = 6000;
            path.advance(from, LoadPathTest::never, 0);
            double work = path.work();
            double boundary = -from * path.descent();
            double integral = 0;
            int panels = 4;
            double half = 0.5 * (to - from) / panels;
            for (int k = 0; k < panels; k++) {
                double middle = from + (2 * k + 1) * half;
                for (int i = NODE.length - 1; i >= -NODE.length; i--) {
                    int j = i >= 0 ? i : -i - 1;
                    double force = middle + (i >= 0 ? -1 : 1) * half * NODE[j];
                    path.advance(force, LoadPathTest::never, 0);
                    assertThat(path.force()).isEqualTo(force);
                    integral += half * WEIGHT[j] * path.descent();
                }
            }
            path.advance(to, LoadPathTest::never, 0);
            boundary += to * path.descent();
            assertThat(path.frictionHeat()).isZero();
            assertThat(path.pathWork()).isNaN();
            assertThat(path.isFollowed()).isFalse();
            assertThat(path.work() - work)
                    .as(p.toString())
                    .isCloseTo(boundary - integral, within(1e-7 * (boundary - integral)));
        }
    }

    @Test
    void withFrictionTheWorkAgreesWithEnergyAndHeat() {
        int slipped = 0;
        for (long seed = 1; seed <= CASES; seed++) {
            PlausibleLine p = new PlausibleLine(seed, true);
            if (p.friction.stream().noneMatch(mu -> mu > 0 && mu < 1)) {
                continue;
            }
            LoadPath path = path(p);
            double heat = 0;
            for (double force = 500; force <= 8000; force += 500) {
                path.advance(force, LoadPathTest::never, 0);
                assertThat(path.isFollowed()).isTrue();
                if (!path.gaveWay()) {
                    assertThat(path.pathWork()).as(p.toString()).isCloseTo(path.work(), within(1e-6 * 3000));
                }
                assertThat(path.frictionHeat()).as(p.toString()).isGreaterThan(heat - 1e-7 * 3000);
                heat = path.frictionHeat();
            }
            slipped += heat > 1 ? 1 : 0;
        }
        assertThat(slipped).isGreaterThan(CASES / 5);
    }

    @Test
    void stopsAtTheRootOfTheGap() {
        for (long seed = 1; seed <= CASES; seed++) {
            PlausibleLine p = new PlausibleLine(seed, true);
            double want = 2345.678;
            LoadPath path = path(p);
            assertThat(path.advance(9000, q -> want - q.force(), 0)).isTrue();
            assertThat(path.force()).as(p.toString()).isCloseTo(want, within(1e-9 * want));
            // A gap in the descent, not in the force.
            double deeper = path.descent() + 0.05;
            assertThat(path.advance(1e6, q -> deeper - q.descent(), 0)).isTrue();
            assertThat(path.descent()).as(p.toString()).isCloseTo(deeper, within(1e-9));
            assertThat(path.force()).isGreaterThan(want);
            assertThat(path.peakForce()).isGreaterThanOrEqualTo(path.force());
        }
    }

    @Test
    void doesNotLookBelowTheWatchedForce() {
        PlausibleLine p = new PlausibleLine(3, false);
        LoadPath path = path(p);
        assertThat(path.advance(1000, q -> -1, 1000)).isFalse();
        assertThat(path.force()).isEqualTo(1000);
        assertThat(path.advance(2000, q -> -1, 1500)).isTrue();
        assertThat(path.force()).isBetween(1000.0, 1501.0);
    }

    @Test
    void theRouteDoesNotMatterWithoutFriction() {
        for (long seed = 1; seed <= CASES; seed++) {
            PlausibleLine p =
                    new PlausibleLine(seed, true).withoutInlineAbsorbers().allFree();
            LoadPath once = path(p);
            once.advance(5000, LoadPathTest::never, 0);
            LoadPath often = path(p);
            for (double f = 100; f <= 5000; f += 100) {
                often.advance(f, LoadPathTest::never, 0);
            }
            assertThat(often.descent()).as(p.toString()).isCloseTo(once.descent(), within(1e-10));
            assertThat(often.work()).as(p.toString()).isCloseTo(once.work(), within(1e-9 * (1 + once.work())));
        }
    }

    /** Two spans of a level row over one rough post; nothing slips until the ratio of tensions is e^(μθ). */
    @Test
    void theFirstSlipComesOnTheLimitOfTheCapstan() {
        double mu = 0.2;
        Lifeline line = Lifeline.builder()
                .cable(Cable.builder().massPerLength(0.5).axialStiffness(4e6).build())
                .endAnchor("a", Point.of(0, 0, 10))
                .intermediateAnchor("post", Point.of(12, 0, 10), Passage.friction(mu))
                .endAnchor("b", Point.of(24, 0, 10))
                .pretension(3000)
                .build();
        LineModel m = new LineModel(line);
        LoadPath path = new LoadPath(m, m.hook(0, 6, true), 10, 3000);
        boolean slips = false;
        for (double force = 50; force <= 6000; force += 50) {
            path.advance(force, LoadPathTest::never, 0);
            List<Piece> first = m.pieces(0);
            var before = first.get(first.size() - 1).endTension();
            var behind = m.pieces(1).get(0).startTension();
            double ratio = Math.log(before.magnitude() / behind.magnitude());
            double limit = mu * before.angleTo(behind);
            if (m.slip(1) == 0) {
                assertThat(slips).as("it sticks again under a growing load").isFalse();
                assertThat(ratio).isLessThan(limit * (1 + 1e-6));
                assertThat(path.frictionHeat()).isZero();
            } else {
                slips = true;
                assertThat(ratio).as("at " + force).isCloseTo(limit, within(1e-9));
                // The cable is drawn toward the fall, to the start of the line.
                assertThat(m.slip(1)).isPositive();
                assertThat(path.frictionHeat()).isPositive();
            }
        }
        assertThat(slips).isTrue();
    }

    @Test
    void theDescentGrowsWithTheLoad() {
        for (long seed = 1; seed <= CASES; seed++) {
            PlausibleLine p = new PlausibleLine(seed, true);
            LoadPath path = path(p);
            double last = Double.NEGATIVE_INFINITY;
            // What rests on an end hangs on its in-line absorber, whose small extension turns with the cable.
            boolean inline = p.attachment == Attachment.FREE_RUNNING
                    && !(Double.isNaN(p.inline[0]) && Double.isNaN(p.inline[1]));
            for (double f = 200; f <= 8000; f *= 1.3) {
                path.advance(f, LoadPathTest::never, 0);
                assertThat(path.descent()).as(p.toString()).isGreaterThan(last - (inline ? 1e-5 : 1e-12));
                last = path.descent();
            }
        }
    }
}
