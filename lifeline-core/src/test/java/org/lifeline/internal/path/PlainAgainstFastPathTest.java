package org.lifeline.internal.path;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.lifeline.base.Point;
import org.lifeline.model.Attachment;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Passage;
import org.lifeline.model.PlausibleLine;
import org.lifeline.model.cable.Cable;

/** The load path against the plain one, on random lines. */
class PlainAgainstFastPathTest {
    private static final int CASES =
            Integer.getInteger("lifeline.cases", Boolean.getBoolean("lifeline.long") ? 1000 : 60);
    private static final double[] FORCES = {400, 2500, 6000};

    private static LineModel.Load hook(LineModel m, PlausibleLine p) {
        return m.hook(p.span - 1, p.place().station(), p.attachment == Attachment.GRIPPED);
    }

    /**
     * How far the fast path is from the plain one at a force, relative to the work there; no less than 1 J of it, since it
     * is a difference of energies of many kilojoules.
     */
    private static double worst(LoadPath fast, PlainLoadPath plain) {
        double work = Math.abs(fast.work() - plain.work);
        double heat = Math.abs(fast.frictionHeat() - plain.heat);
        double descent = plain.force * Math.abs(fast.descent() - plain.descent);
        return Math.max(work, Math.max(heat, descent)) / Math.max(plain.work, 1);
    }

    @Test
    void withoutFrictionBothAreTheSame() {
        for (long seed = 1; seed <= CASES; seed++) {
            PlausibleLine p =
                    new PlausibleLine(seed, true).withoutInlineAbsorbers().allFree();
            LineModel a = new LineModel(p.line());
            LineModel b = new LineModel(p.line());
            LoadPath fast = new LoadPath(a, hook(a, p), 10, 3000);
            PlainLoadPath plain = new PlainLoadPath(b, hook(b, p), 10);
            for (double force : FORCES) {
                fast.advance(force, path -> 1, 0);
                plain.advance(force, 40);
                assertThat(worst(fast, plain)).as(p + " at " + force).isLessThan(1e-9);
            }
        }
    }

    @Test
    void withFrictionBothAgreeAsFarAsThePlainOneGoes() {
        int rough = 0;
        for (long seed = 1; seed <= CASES; seed++) {
            PlausibleLine p = new PlausibleLine(seed, true);
            LineModel a = new LineModel(p.line());
            LineModel b = new LineModel(p.line());
            LoadPath fast = new LoadPath(a, hook(a, p), 10, 3000);
            PlainLoadPath plain = new PlainLoadPath(b, hook(b, p), 10);
            for (double force : FORCES) {
                fast.advance(force, path -> 1, 0);
                plain.advance(force, 1000);
                if (!fast.gaveWay()) {
                    rough += fast.frictionHeat() > 1 ? 1 : 0;
                    assertThat(worst(fast, plain)).as(p + " at " + force).isLessThan(1e-5);
                }
            }
        }
        assertThat(rough).isGreaterThan(CASES / 3);
    }

    /** Rows of free spans long enough that the first guess matters, level and climbing, cold and hot. */
    @Test
    void longFreeLinesNeedFewStepsAndEndWhereThePlainPathEnds() {
        SplittableRandom r = new SplittableRandom(11);
        for (int k = 0; k < CASES / 2; k++) {
            int spans = r.nextInt(2, 60);
            Lifeline line = row(r, spans);
            int span = r.nextInt(spans);
            double station = line.run(span + 1) * r.nextDouble(0.1, 0.9);
            LineModel a = new LineModel(line);
            LineModel b = new LineModel(line);
            double temperature = r.nextDouble(-30, 60);
            a.bringTo(temperature);
            b.bringTo(temperature);
            LoadPath fast = new LoadPath(a, a.hook(span, station, true), 10, 3000);
            PlainLoadPath plain = new PlainLoadPath(b, b.hook(span, station, true), 10);
            double force = r.nextDouble(500, 9000);
            fast.advance(force, path -> 1, 0);
            plain.advance(force, 60);
            assertThat(worst(fast, plain)).as("row %d of %d spans", k, spans).isLessThan(1e-9);
            assertThat(a.convergence().iterations()).as("row %d", k).isLessThan(20);
        }
    }

    private static Lifeline row(SplittableRandom r, int spans) {
        Lifeline.Builder b = Lifeline.builder()
                .cable(Cable.builder()
                        .weightPerLength(r.nextDouble(1, 8))
                        .axialStiffness(r.nextDouble(1e6, 1e7))
                        .build())
                .pretension(r.nextDouble(800, 5000));
        double x = 0;
        double z = 0;
        b.endAnchor("a", Point.of(x, 0, z));
        for (int i = 1; i <= spans; i++) {
            x += r.nextDouble(5, 15);
            z += r.nextDouble(-0.5, 0.5);
            if (i < spans) {
                b.intermediateAnchor("p" + i, Point.of(x, 0, z), Passage.free());
            }
        }
        return b.endAnchor("b", Point.of(x, 0, z)).build();
    }
}
