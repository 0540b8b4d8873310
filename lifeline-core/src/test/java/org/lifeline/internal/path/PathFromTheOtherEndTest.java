package org.lifeline.internal.path;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Collections;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.lifeline.base.Point;
import org.lifeline.model.Lifeline;
import org.lifeline.model.PlausibleLine;

/** A level line, with corners, counted from its one end and from its other is one line: loads lower it, run, rub and yield the same. */
class PathFromTheOtherEndTest {
    private static final int CASES =
            Integer.getInteger("lifeline.cases", Boolean.getBoolean("lifeline.long") ? 2000 : 60);

    /** As in {@link PathInPartsTest}: the steps of the two are not the same. */
    private static final double AGREE = 1e-6;

    /** A line that loads hang on, whose spans count from one end or the other. */
    private static final class Counted {
        final boolean reversed;
        final LineModel model;

        Counted(PlausibleLine p, boolean reversed) {
            this.reversed = reversed;
            // The pretension is that at the first support: a line that climbs would be another from its other end.
            p.points.replaceAll(at -> Point.of(at.x(), at.y(), 10));
            if (reversed) {
                Collections.reverse(p.points);
                Collections.reverse(p.friction);
                double first = p.inline[0];
                p.inline[0] = p.inline[1];
                p.inline[1] = first;
            }
            this.model = new LineModel(p.line());
        }

        LineModel.Load hook(int span, double share, int kind) {
            Lifeline line = model.line();
            int i = reversed ? line.spans() - 1 - span : span;
            double station = line.run(i + 1) * (reversed ? 1 - share : share);
            return kind == 0
                    ? model.hookAtSupport(reversed ? line.spans() - span : span)
                    : model.hook(i, station, kind < 4);
        }

        double slip(int support) {
            return reversed ? -model.slip(model.line().spans() - support) : model.slip(support);
        }

        double extension(int end) {
            return model.extension(reversed ? 1 - end : end);
        }

        double reaction(int support) {
            return model.reaction(reversed ? model.line().spans() - support : support)
                    .magnitude();
        }
    }

    private static LoadPath loaded(Counted c, SplittableRandom r) {
        int spans = c.model.line().spans();
        for (int i = r.nextInt(3); i > 0; i--) {
            c.model.hang(c.hook(r.nextInt(spans), r.nextDouble(0.1, 0.9), r.nextInt(6)), r.nextDouble(300, 1500));
        }
        LoadPath path = new LoadPath(c.model, c.hook(r.nextInt(spans), r.nextDouble(0.1, 0.9), r.nextInt(6)), 10, 3000);
        path.advance(r.nextDouble(2000, 9000), p -> 1, 0);
        return path;
    }

    @Test
    void theLineIsTheSameFromBothEnds() {
        int rough = 0;
        int yielded = 0;
        for (long seed = 1; seed <= CASES; seed++) {
            String name = "seed " + seed;
            Counted a = new Counted(PathInPartsTest.line(seed, new SplittableRandom(17 * seed)), false);
            Counted b = new Counted(PathInPartsTest.line(seed, new SplittableRandom(17 * seed)), true);
            LoadPath p = loaded(a, new SplittableRandom(19 * seed));
            LoadPath q = loaded(b, new SplittableRandom(19 * seed));
            if (p.gaveWay() || q.gaveWay()) {
                continue;
            }
            double scale = Math.max(1, q.work());
            assertThat(Math.abs(p.descent() - q.descent())).as(name).isLessThan(AGREE);
            assertThat(Math.abs(p.work() - q.work())).as(name).isLessThan(AGREE * scale);
            assertThat(Math.abs(p.frictionHeat() - q.frictionHeat())).as(name).isLessThan(AGREE * scale);
            for (int i = 0; i <= a.model.line().spans(); i++) {
                double reaction = b.reaction(i);
                assertThat(Math.abs(a.reaction(i) - reaction))
                        .as("%s, anchor %d", name, i)
                        .isLessThan(AGREE * (100 + reaction));
                assertThat(Math.abs(a.slip(i) - b.slip(i)))
                        .as("%s, slip %d", name, i)
                        .isLessThan(AGREE);
            }
            for (int e = 0; e < 2; e++) {
                assertThat(Math.abs(a.extension(e) - b.extension(e))).as(name).isLessThan(AGREE);
                yielded += a.model.yieldedExtension(e) > 0 ? 1 : 0;
            }
            rough += p.frictionHeat() > 1 ? 1 : 0;
        }
        assertThat(rough).isGreaterThan(CASES / 3);
        assertThat(yielded).isGreaterThan(CASES / 4);
    }
}
