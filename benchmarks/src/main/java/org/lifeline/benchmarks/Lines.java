package org.lifeline.benchmarks;

import java.util.List;
import java.util.SplittableRandom;
import org.lifeline.analysis.LoadedSpans;
import org.lifeline.base.Point;
import org.lifeline.model.Attachment;
import org.lifeline.model.Connection;
import org.lifeline.model.Fall;
import org.lifeline.model.InlineAbsorber;
import org.lifeline.model.Installed;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Passage;
import org.lifeline.model.Place;
import org.lifeline.model.Stiffness;
import org.lifeline.model.Support;
import org.lifeline.model.Worker;
import org.lifeline.model.absorber.LoadingCurve;
import org.lifeline.model.cable.Cable;

/** The lines that the benchmarks solve. */
final class Lines {
    private static final double[] LENGTHS = {12, 9, 10, 12, 8};

    private Lines() {}

    /** The span of the bare kernel: 30 m, w 4 N/m, EA 5 MN, slack 0.2 %. */
    static Lifeline loadedSpan() {
        return Lifeline.builder()
                .cable(Cable.builder().weightPerLength(4).axialStiffness(5e6).build())
                .endAnchor("a", Point.of(0, 0, 10))
                .endAnchor("b", Point.of(30, 0, 10))
                .installed(Installed.unstretchedLength(30 * 1.002))
                .build();
    }

    /** A line of several spans; rough: friction at the posts, yielding ends, an in-line absorber at the far one. */
    static Lifeline spans(int count, boolean rough) {
        Lifeline.Builder b = Lifeline.builder()
                .cable(Cable.builder()
                        .weightPerLength(5.6)
                        .axialStiffness(4.9e6)
                        .build())
                .pretension(1500);
        Stiffness end = rough ? Stiffness.alongX(4e5) : Stiffness.rigid();
        b.support(Support.end("a", Point.of(0, 0, 10)).withStiffness(end));
        double x = 0;
        for (int i = 1; i < count; i++) {
            x += LENGTHS[(i - 1) % LENGTHS.length];
            b.intermediateAnchor("p" + i, Point.of(x, 0, 10), rough ? Passage.friction(0.15) : Passage.free());
        }
        x += LENGTHS[(count - 1) % LENGTHS.length];
        Support last = Support.end("b", Point.of(x, 0, 10)).withStiffness(end);
        b.support(rough ? last.withInlineAbsorber(inline()) : last);
        return b.build();
    }

    /** Spans about that of the bare kernel, no two alike. */
    static LoadedSpans batch(int rows) {
        SplittableRandom random = new SplittableRandom(7);
        double[] run = new double[rows];
        double[] rise = new double[rows];
        double[] weight = new double[rows];
        double[] stiffness = new double[rows];
        double[] length = new double[rows];
        double[] share = new double[rows];
        double[] load = new double[rows];
        for (int i = 0; i < rows; i++) {
            run[i] = 10 + 40 * random.nextDouble();
            rise[i] = 2 * random.nextDouble() - 1;
            weight[i] = 2 + 6 * random.nextDouble();
            stiffness[i] = 1e6 * (2 + 8 * random.nextDouble());
            length[i] = Math.hypot(run[i], rise[i]) * (1 + 0.005 * random.nextDouble());
            share[i] = 0.1 + 0.8 * random.nextDouble();
            load[i] = 1000 + 9000 * random.nextDouble();
        }
        return LoadedSpans.builder()
                .run(run)
                .rise(rise)
                .weightPerLength(weight)
                .axialStiffness(stiffness)
                .unstretchedLength(length)
                .loadShare(share)
                .load(load)
                .build();
    }

    private static InlineAbsorber inline() {
        return InlineAbsorber.of(LoadingCurve.through(
                List.of(new LoadingCurve.Corner(0, 9000), new LoadingCurve.Corner(0.8, 9000)), 8e6, 2.2e5));
    }

    static Connection absorber() {
        return Connection.lanyard(
                1.8,
                Connection.PersonalAbsorber.builder()
                        .clearanceForce(3200)
                        .maximumForce(6000)
                        .maximumExtension(1.2)
                        .initialStiffness(1e5)
                        .stopStiffness(2e5)
                        .build());
    }

    static Connection plain() {
        return Connection.plainLanyard(1.8, LoadingCurve.spring(6e4));
    }

    static Fall fall(int span, double station, Connection connection) {
        Worker worker = Worker.builder("A")
                .mass(100)
                .walkingLevel(8.5)
                .attachment(Attachment.GRIPPED)
                .connection(connection)
                .build();
        return Fall.builder("fall").at(Place.of(span, station)).faller(worker).build();
    }
}
