package org.lifeline.internal.path;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.lifeline.base.Point;
import org.lifeline.model.InlineAbsorber;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Passage;
import org.lifeline.model.Stiffness;
import org.lifeline.model.Support;
import org.lifeline.model.absorber.LoadingCurve;
import org.lifeline.model.cable.Cable;

/** Lines as they stand on roofs, of one kind each, whose numbers come from a seed. */
final class CountedLine {
    /**
     * Posts that are pulled over, of random ones: coefficient of friction, stiffness [N/m], pretension [N], rise [m], station of the load
     * [m], its force [N].
     */
    private static final double[][] LOW_POSTS = {
        {1.2, 1051, 3015, -1.8, 8, 8750},
        {0.22, 130, 2302, -3.7, 9, 6250},
        {0.43, 148, 2736, -1.3, 8, 3750},
        {0.86, 198, 1522, -1, 7, 3000}
    };

    private final double[] low;
    private final String kind;
    private final SplittableRandom r;
    private final int spans;
    private final double pretension;

    CountedLine(String kind, long seed) {
        this.kind = kind;
        this.low = LOW_POSTS[(int) (seed % LOW_POSTS.length)];
        this.r = new SplittableRandom(seed);
        this.spans = has("single") ? 1 : has("long") ? r.nextInt(40, 60) : r.nextInt(2, 6);
        this.pretension = has("slack") ? r.nextDouble(80, 200) : r.nextDouble(800, 4000);
    }

    private boolean has(String word) {
        return kind.contains(word);
    }

    Lifeline line() {
        if (has("gives way")) {
            return lowPost();
        }
        List<Support> supports = new ArrayList<>();
        double x = 0;
        double y = 0;
        double z = 10;
        double heading = 0;
        for (int i = 0; i <= spans; i++) {
            boolean end = i == 0 || i == spans;
            Point at = Point.of(x, y, z);
            Support s = end ? Support.end("s" + i, at) : Support.intermediate("s" + i, at, passage());
            if (has(end ? "soft ends" : "soft posts")) {
                double k = StrictMath.pow(10, r.nextDouble(4.5, 6.5));
                s = s.withStiffness(new Stiffness(
                        k,
                        has("corners") ? k : Double.POSITIVE_INFINITY,
                        has("sinks") ? 20 * k : Double.POSITIVE_INFINITY));
            }
            if ((i == spans && has("absorber")) || (i == 0 && has("absorbers"))) {
                s = s.withInlineAbsorber(absorber());
            }
            supports.add(s);
            double run = r.nextDouble(5, 15);
            heading += has("corners") ? r.nextDouble(-0.7, 0.7) : 0;
            x += run * StrictMath.cos(heading);
            y += run * StrictMath.sin(heading);
            z += has("climbs") ? r.nextDouble(0, 0.4) * run : r.nextDouble(-0.3, 0.3);
        }
        Lifeline.Builder b = Lifeline.builder()
                .cable(Cable.builder()
                        .massPerLength(has("weightless") ? 0 : r.nextDouble(0.3, 0.8))
                        .axialStiffness(r.nextDouble(2e6, 8e6))
                        .thermalExpansion(12e-6)
                        .build())
                .pretension(pretension);
        supports.forEach(b::support);
        return b.build();
    }

    /** A post that stands below its neighbours and is soft along the line: it is pulled over by a load near it. */
    private Lifeline lowPost() {
        return Lifeline.builder()
                .cable(Cable.builder().massPerLength(0.4).axialStiffness(2e6).build())
                .endAnchor("a", Point.of(0, 0, 10))
                .support(Support.intermediate("post", Point.of(10, 0, 10 + low[3]), Passage.friction(low[0]))
                        .withStiffness(Stiffness.alongX(low[1])))
                .endAnchor("b", Point.of(20, 0, 10))
                .pretension(low[2])
                .build();
    }

    private Passage passage() {
        double mu = r.nextDouble(0.05, 0.4);
        return has("mixed")
                ? List.of(Passage.free(), Passage.friction(mu), Passage.clamped())
                        .get(r.nextInt(3))
                : has("rough") ? Passage.friction(mu) : has("clamped") ? Passage.clamped() : Passage.free();
    }

    private InlineAbsorber absorber() {
        double force = pretension * r.nextDouble(1.3, 4);
        double length = r.nextDouble(0.1, 0.5);
        return InlineAbsorber.of(LoadingCurve.through(
                List.of(
                        new LoadingCurve.Corner(0, force),
                        new LoadingCurve.Corner(0.5 * length, 1.2 * force),
                        new LoadingCurve.Corner(length, 1.3 * force)),
                StrictMath.pow(10, r.nextDouble(5.6, 7)),
                r.nextInt(3) == 0 ? Double.POSITIVE_INFINITY : StrictMath.pow(10, r.nextDouble(4, 7))));
    }

    /** The line with what hangs on it already, and with the load that is to grow hooked on: the last one. */
    LineModel hooked() {
        LineModel model = new LineModel(line());
        if (has("carries")) {
            hook(model, has("running"));
            model.hang(model.loads().get(0), r.nextDouble(300, 1500));
        }
        if (has("cold")) {
            model.bringTo(-20);
        }
        if (has("anchor")) {
            model.hookAtSupport(r.nextInt(spans + 1));
        } else {
            hook(model, has("runs"));
        }
        return model;
    }

    private void hook(LineModel model, boolean running) {
        int span = has("gives way") ? 0 : r.nextInt(spans);
        model.hook(span, has("gives way") ? low[4] : model.line().run(span + 1) * r.nextDouble(0.1, 0.9), !running);
    }

    /** A force that such a line is loaded with at an arrest [N]. */
    double force() {
        return has("gives way") ? low[5] : r.nextDouble(3000, 9000);
    }
}
