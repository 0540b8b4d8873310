package org.lifeline.internal.path;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.lifeline.model.Lifeline;
import org.lifeline.model.PlausibleLine;

/** Friction of next to nothing is followed as any other, and in the limit the line is the one that runs freely. */
class FaintFrictionPathTest {
    private static final int CASES =
            Integer.getInteger("lifeline.cases", Boolean.getBoolean("lifeline.long") ? 2000 : 60);

    /** Friction at the supports adds up to this share of the tension along six spans. */
    private static final double AGREE = 1e-6;

    private static LineModel loaded(long seed, double friction) {
        SplittableRandom r = new SplittableRandom(23 * seed);
        PlausibleLine p = PathInPartsTest.line(seed, r);
        p.friction.replaceAll(mu -> friction);
        LineModel m = new LineModel(p.line());
        for (int i = r.nextInt(1, 4); i > 0; i--) {
            Lifeline line = m.line();
            int span = r.nextInt(line.spans());
            m.hang(m.hook(span, line.run(span + 1) * r.nextDouble(0.1, 0.9), true), r.nextDouble(300, 4000));
        }
        return m;
    }

    @Test
    void theLimitIsTheFreeLine() {
        int ran = 0;
        for (long seed = 1; seed <= CASES; seed++) {
            double mu = StrictMath.pow(10, -7 - (int) (seed % 6));
            LineModel faint = loaded(seed, mu);
            LineModel free = loaded(seed, 0);
            for (int i = 0; i <= free.line().spans(); i++) {
                String name = "seed " + seed + ", μ = " + mu + ", anchor " + i;
                double reaction = free.reaction(i).magnitude();
                assertThat(faint.reaction(i).minus(free.reaction(i)).magnitude())
                        .as(name)
                        .isLessThan(AGREE * (100 + reaction));
                assertThat(Math.abs(faint.slip(i) - free.slip(i))).as(name).isLessThan(AGREE);
                ran += Math.abs(free.slip(i)) > 1e-3 ? 1 : 0;
            }
            for (int e = 0; e < 2; e++) {
                assertThat(Math.abs(faint.extension(e) - free.extension(e)))
                        .as("seed %d, end %d", seed, e)
                        .isLessThan(AGREE);
            }
        }
        assertThat(ran).as("anchors over which the cable ran").isGreaterThan(CASES);
    }
}
