package org.lifeline.internal.path;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.lifeline.base.Point;
import org.lifeline.base.Vector3;
import org.lifeline.internal.line.Piece;
import org.lifeline.model.Attachment;
import org.lifeline.model.Installed;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Passage;
import org.lifeline.model.PlausibleLine;
import org.lifeline.model.Stiffness;
import org.lifeline.model.Support;
import org.lifeline.model.cable.Cable;

/** A line through its history: heat and cold, loads one after the other, where things are. */
class LineModelTest {
    private static final int CASES =
            Integer.getInteger("lifeline.cases", Boolean.getBoolean("lifeline.long") ? 1000 : 60);

    private static PlausibleLine free(long seed) {
        return new PlausibleLine(seed, true).withoutInlineAbsorbers().allFree();
    }

    private static void same(String name, LineModel a, LineModel b, double share) {
        for (int i = 0; i < a.line().spans(); i++) {
            Vector3 t = a.pieces(i).get(0).startTension();
            Vector3 u = b.pieces(i).get(0).startTension();
            assertThat(t.minus(u).magnitude()).as(name + ", span " + i).isLessThan(share * t.magnitude());
            assertThat(a.slip(i)).as(name + ", slip " + i).isCloseTo(b.slip(i), within(share));
        }
    }

    @Test
    void warmAndBackAgain() {
        for (long seed = 1; seed <= CASES; seed++) {
            PlausibleLine p = free(seed);
            LineModel still = new LineModel(p.line());
            LineModel there = new LineModel(p.line());
            there.bringTo(50);
            there.bringTo(-30);
            there.bringTo(15);
            same(p.toString(), still, there, 1e-9);
        }
    }

    @Test
    void theOrderOfLoadsDoesNotMatterWithoutFriction() {
        for (long seed = 1; seed <= CASES; seed++) {
            PlausibleLine p = free(seed);
            SplittableRandom r = new SplittableRandom(seed);
            int n = 3;
            int[] span = new int[n];
            double[] station = new double[n];
            double[] force = new double[n];
            for (int i = 0; i < n; i++) {
                span[i] = r.nextInt(p.line().spans());
                station[i] = p.line().run(span[i] + 1) * r.nextDouble(0.1, 0.9);
                force[i] = r.nextDouble(300, 3000);
            }
            LineModel a = new LineModel(p.line());
            LineModel b = new LineModel(p.line());
            LineModel.Load[] la = new LineModel.Load[n];
            LineModel.Load[] lb = new LineModel.Load[n];
            for (int i = 0; i < n; i++) {
                la[i] = a.hook(span[i], station[i], true);
                a.hang(la[i], force[i]);
                int k = n - 1 - i;
                lb[k] = b.hook(span[k], station[k], true);
                b.hang(lb[k], force[k]);
            }
            same(p.toString(), a, b, 1e-8);
            for (int i = 0; i < n; i++) {
                assertThat(a.position(la[i]).distance(b.position(lb[i])))
                        .as(p + ", load " + i)
                        .isLessThan(1e-8);
            }
        }
    }

    @Test
    void aLoadOfNoWeightChangesNothing() {
        for (long seed = 1; seed <= CASES; seed++) {
            PlausibleLine p = new PlausibleLine(seed, true);
            LineModel still = new LineModel(p.line());
            LineModel m = new LineModel(p.line());
            Point before = m.pointAtStation(p.span - 1, p.place().station());
            boolean gripped = p.attachment == Attachment.GRIPPED;
            LineModel.Load load = m.hook(p.span - 1, p.place().station(), gripped);
            m.hang(load, 0);
            same(p.toString(), still, m, 1e-9);
            if (gripped) {
                assertThat(m.position(load).distance(before)).as(p.toString()).isLessThan(1e-9);
                assertThat(m.materialPoint(load).distance(before)).isLessThan(1e-9);
            } else {
                // It runs to the lowest point of the cable, or to the lower support.
                for (double share = 0; share <= 1; share += 0.05) {
                    Point other = m.pointAtStation(p.span - 1, share * p.line().run(p.span));
                    assertThat(m.position(load).z()).as(p.toString()).isLessThan(other.z() + 1e-9);
                }
            }
        }
    }

    @Test
    void reactionsHoldTheLoads() {
        for (long seed = 1; seed <= CASES; seed++) {
            PlausibleLine p = new PlausibleLine(seed, true);
            LineModel m = new LineModel(p.line());
            m.bringTo(-10);
            LineModel.Load load = m.hook(p.span - 1, p.place().station(), p.attachment == Attachment.GRIPPED);
            m.hang(load, 2500);
            Vector3 sum = Vector3.ZERO;
            double weight = 0;
            for (int i = 0; i <= p.line().spans(); i++) {
                sum = sum.plus(m.reaction(i));
                if (i < p.line().spans()) {
                    for (Piece piece : m.pieces(i)) {
                        weight += piece.length() * piece.weight();
                    }
                }
                Vector3 moved = m.displacement(i);
                assertThat(m.support(i).minus(p.points.get(i)).minus(moved).magnitude())
                        .isLessThan(1e-12);
            }
            assertThat(sum.minus(new Vector3(0, 0, -2500 - weight)).magnitude())
                    .as(p.toString())
                    .isLessThan(1e-8);
            // The cable does not come and go: what left one span is in another.
            double length = 0;
            LineModel installed = new LineModel(p.line());
            double was = 0;
            for (int i = 0; i < p.line().spans(); i++) {
                length += m.pieces(i).stream().mapToDouble(Piece::length).sum();
                was += installed.pieces(i).get(0).length();
            }
            assertThat(length).as(p.toString()).isCloseTo(was * (1 - 25 * 12e-6), within(1e-9 * was));
        }
    }

    @Test
    void piecesFollowOneAnother() {
        for (long seed = 1; seed <= CASES; seed++) {
            PlausibleLine p = free(seed);
            LineModel m = new LineModel(p.line());
            int s = p.span - 1;
            double run = p.line().run(p.span);
            LineModel.Load a = m.hook(s, 0.3 * run, true);
            m.hang(a, 800);
            LineModel.Load b = m.hook(s, 0.6 * run, true);
            m.hang(b, 1200);
            List<Piece> pieces = m.pieces(s);
            assertThat(pieces).hasSize(3);
            assertThat(pieces.get(0).end().distance(m.position(a))).isLessThan(1e-9);
            assertThat(pieces.get(1).end().distance(m.position(b))).isLessThan(1e-9);
            assertThat(pieces.get(2).end().distance(m.support(s + 1))).isLessThan(1e-9);
            assertThat(pieces.get(0).load()).isEqualTo(800);
            assertThat(pieces.get(1).load()).isEqualTo(1200);
            assertThat(pieces.get(2).load()).isZero();
            for (int k = 0; k < 2; k++) {
                Vector3 jump =
                        pieces.get(k + 1).startTension().minus(pieces.get(k).endTension());
                assertThat(jump.minus(new Vector3(0, 0, pieces.get(k).load())).magnitude())
                        .as(p.toString())
                        .isLessThan(1e-9);
            }
            for (Piece piece : pieces) {
                assertThat(piece.at(0).distance(piece.start())).isLessThan(1e-12);
                assertThat(piece.at(piece.length()).distance(piece.end())).isLessThan(1e-12);
                double half = piece.lengthAtRun(0.5 * piece.start().horizontalDistance(piece.end()));
                Point middle = piece.at(half);
                assertThat(middle.horizontalDistance(piece.start()))
                        .isCloseTo(middle.horizontalDistance(piece.end()), within(1e-11 * run));
            }
            for (double share = 0.05; share < 1; share += 0.1) {
                if (p.endStiffness > 1e12 && p.postStiffness > 1e12) {
                    Point at = m.pointAtStation(s, share * run);
                    assertThat(at.horizontalDistance(p.points.get(s)))
                            .as(p.toString())
                            .isCloseTo(share * run, within(1e-9 * run));
                }
            }
        }
    }

    @Test
    void freeRunningLoadsOfOneBayRunTogether() {
        PlausibleLine p = new PlausibleLine(5, false).withoutInlineAbsorbers().allFree();
        LineModel m = new LineModel(p.line());
        double run = p.line().run(1);
        LineModel.Load a = m.hook(0, 0.2 * run, false);
        m.hang(a, 900);
        LineModel.Load b = m.hook(0, 0.8 * run, false);
        m.hang(b, 700);
        assertThat(m.position(a).distance(m.position(b))).isLessThan(1e-12);
        LineModel one = new LineModel(p.line());
        LineModel.Load both = one.hook(0, 0.5 * run, false);
        one.hang(both, 1600);
        assertThat(m.position(a).distance(one.position(both))).isLessThan(1e-9);
        same("together", m, one, 1e-9);
    }

    @Test
    void aFreeRunningLoadRestsOnTheLowerSupport() {
        Lifeline line = Lifeline.builder()
                .cable(Cable.builder().massPerLength(0.5).axialStiffness(4e6).build())
                .support(Support.end("low", Point.of(0, 0, 5))
                        .withStiffness(Stiffness.rigid().withZ(1e5)))
                .endAnchor("high", Point.of(12, 0, 9))
                .pretension(4000)
                .build();
        LineModel m = new LineModel(line);
        LineModel.Load runs = m.hook(0, 9, false);
        m.hang(runs, 300);
        assertThat(m.restsOn(runs)).isZero();
        assertThat(m.position(runs).distance(m.support(0))).isLessThan(1e-9);
        // The load is on the anchor: it sinks by what it carries more than as installed.
        LineModel bare = new LineModel(line);
        double more = m.reaction(0).z() - bare.reaction(0).z();
        assertThat(m.displacement(0).z()).isCloseTo(more / 1e5, within(1e-12));
        assertThat(m.reaction(0).z())
                .isCloseTo(m.pieces(0).get(0).startTension().z() - 300, within(1e-9));
        // Heavy enough, it leaves the anchor: both legs then hang below it.
        LineModel heavy = new LineModel(line);
        LineModel.Load big = heavy.hook(0, 9, false);
        heavy.hang(big, 5000);
        assertThat(heavy.restsOn(big)).isEqualTo(-1);
        assertThat(heavy.position(big).x()).isPositive();
    }

    @Test
    void aGripCannotBeDrawnOverASupport() {
        // The grip is 20 cm before the free post; a great load in the next span draws cable, and the grip with it.
        Lifeline line = Lifeline.builder()
                .cable(Cable.builder().massPerLength(0.5).axialStiffness(2e5).build())
                .endAnchor("a", Point.of(0, 0, 5))
                .intermediateAnchor("post", Point.of(30, 0, 5), Passage.free())
                .endAnchor("b", Point.of(45, 0, 5))
                .installed(Installed.pretension(1000))
                .build();
        LineModel m = new LineModel(line);
        LineModel.Load grip = m.hook(0, 29.8, true);
        m.hang(grip, 100);
        LineModel.Load load = m.hook(1, 7, true);
        m.hang(load, 12_000);
        assertThat(m.position(grip).distance(m.support(1))).isLessThan(1e-9);
        assertThat(-m.slip(1)).isGreaterThan(0.15);
        // It jams: the tension toward the fall is higher than what pulls from the other side.
        double before = m.pieces(0).get(1).endTension().magnitude();
        double behind = m.pieces(1).get(0).startTension().magnitude();
        assertThat(behind).isGreaterThan(before * 1.01);
    }

    @Test
    void theGripIsOnThePointThatHangsAtTheStationAsInstalled() {
        for (long seed = 1; seed <= CASES; seed++) {
            PlausibleLine p = free(seed);
            LineModel still = new LineModel(p.line());
            LineModel.Load early = still.hook(p.span - 1, p.place().station(), true);
            LineModel moved = new LineModel(p.line());
            moved.bringTo(40);
            LineModel.Load late = moved.hook(p.span - 1, p.place().station(), true);
            still.bringTo(40);
            assertThat(moved.materialPoint(late).distance(still.materialPoint(early)))
                    .as(p.toString())
                    .isLessThan(1e-9);
        }
    }
}
