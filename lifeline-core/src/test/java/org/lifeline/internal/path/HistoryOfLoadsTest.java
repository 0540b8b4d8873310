package org.lifeline.internal.path;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.lifeline.base.Vector3;
import org.lifeline.internal.line.Piece;
import org.lifeline.model.Lifeline;
import org.lifeline.model.PlausibleLine;

/** Loads that are hooked on in any order stand in the order of the line, and keep what they weigh. */
class HistoryOfLoadsTest {
    private static final int CASES =
            Integer.getInteger("lifeline.cases", Boolean.getBoolean("lifeline.long") ? 600 : 40);

    @Test
    void piecesStandInTheOrderOfTheStations() {
        for (long seed = 1; seed <= CASES; seed++) {
            SplittableRandom r = new SplittableRandom(seed);
            Lifeline line = new PlausibleLine(seed, true)
                    .withoutInlineAbsorbers()
                    .allFree()
                    .line();
            LineModel m = new LineModel(line);
            List<LineModel.Load> loads = new ArrayList<>();
            List<Double> weights = new ArrayList<>();
            for (int i = 0; i < 4; i++) {
                int span = r.nextInt(line.spans());
                loads.add(m.hook(span, line.run(span + 1) * r.nextDouble(0.1, 0.9), true));
                weights.add(r.nextDouble(100, 1500));
                m.hang(loads.get(i), weights.get(i));
            }
            for (int span = 0; span < line.spans(); span++) {
                List<Piece> pieces = m.pieces(span);
                double sum = 0;
                for (Piece p : pieces) {
                    assertThat(p.length()).as("seed %d", seed).isPositive();
                    sum += p.load();
                }
                double expected = 0;
                for (int i = 0; i < loads.size(); i++) {
                    expected += loads.get(i).span == span ? weights.get(i) : 0;
                }
                assertThat(sum).as("seed %d, span %d", seed, span).isCloseTo(expected, within(1e-9));
            }
            for (LineModel.Load load : loads) {
                assertThat(m.position(load).distance(m.materialPoint(load)))
                        .as("seed %d", seed)
                        .isLessThan(1e-9);
            }
        }
    }

    /** Each load in two halves at its place: nothing can tell. */
    @Test
    void aLoadInTwoStepsIsTheLoadAtOnceWithoutFriction() {
        for (long seed = 1; seed <= CASES; seed++) {
            SplittableRandom r = new SplittableRandom(seed);
            Lifeline line = new PlausibleLine(seed, true)
                    .withoutInlineAbsorbers()
                    .allFree()
                    .line();
            int span = r.nextInt(line.spans());
            double station = line.run(span + 1) * r.nextDouble(0.1, 0.9);
            double force = r.nextDouble(500, 5000);
            LineModel once = new LineModel(line);
            once.hang(once.hook(span, station, true), force);
            LineModel twice = new LineModel(line);
            LineModel.Load load = twice.hook(span, station, true);
            twice.hang(load, 0.4 * force);
            twice.hang(load, force);
            for (int i = 0; i <= line.spans(); i++) {
                Vector3 reaction = once.reaction(i);
                assertThat(reaction.minus(twice.reaction(i)).magnitude())
                        .as("seed %d, support %d", seed, i)
                        .isLessThan(1e-8 * (force + reaction.magnitude()));
            }
        }
    }

    /** A load is a vertical force: the horizontal components along a bay stay the same through its pieces. */
    @Test
    void theHorizontalTensionDoesNotChangeAtALoad() {
        for (long seed = 1; seed <= CASES; seed++) {
            PlausibleLine p = new PlausibleLine(seed, true);
            LineModel m = new LineModel(p.line());
            m.hang(m.hook(p.span - 1, p.place().station(), true), 3000);
            for (int i = 0; i < p.line().spans(); i++) {
                Vector3 first = m.pieces(i).get(0).startTension();
                for (Piece piece : m.pieces(i)) {
                    assertThat(piece.endTension().x())
                            .as("seed %d", seed)
                            .isCloseTo(first.x(), within(1e-9 * first.magnitude()));
                    assertThat(piece.endTension().y())
                            .as("seed %d", seed)
                            .isCloseTo(first.y(), within(1e-9 * first.magnitude()));
                }
            }
        }
    }

    /** On rigid supports a load draws an elastic line down and never up, and more load draws it down farther. */
    @Test
    void moreLoadHangsLower() {
        for (long seed = 1; seed <= CASES; seed++) {
            PlausibleLine p = new PlausibleLine(seed, true);
            LineModel m = new LineModel(p.line());
            LineModel.Load load = m.hook(p.span - 1, p.place().station(), true);
            double last = m.materialPoint(load).z();
            for (double force = 250; force <= 8000; force *= 2) {
                m.hang(load, force);
                double z = m.position(load).z();
                assertThat(z).as("seed %d at %s N", seed, force).isLessThan(last);
                last = z;
            }
        }
    }

    /** Loads at an anchor pull on it and leave the cable of rigid supports alone. */
    @Test
    void aLoadOnARigidSupportLeavesTheCableAlone() {
        for (long seed = 1; seed <= CASES; seed++) {
            PlausibleLine p = new PlausibleLine(seed, true).withoutInlineAbsorbers();
            p.endStiffness = Double.POSITIVE_INFINITY;
            p.postStiffness = Double.POSITIVE_INFINITY;
            LineModel still = new LineModel(p.line());
            LineModel m = new LineModel(p.line());
            int support = (int) (seed % (p.line().spans() + 1));
            LineModel.Load load = m.hookAtSupport(support);
            m.hang(load, 4000);
            Vector3 more = m.reaction(support).minus(still.reaction(support));
            assertThat(more.minus(new Vector3(0, 0, -4000)).magnitude())
                    .as("seed %d", seed)
                    .isLessThan(1e-6);
            for (int i = 0; i < p.line().spans(); i++) {
                Vector3 a = m.pieces(i).get(0).startTension();
                Vector3 b = still.pieces(i).get(0).startTension();
                assertThat(a.minus(b).magnitude()).as("seed %d", seed).isLessThan(1e-9 * b.magnitude());
            }
            assertThat(m.position(load)).isEqualTo(m.support(support));
        }
    }
}
