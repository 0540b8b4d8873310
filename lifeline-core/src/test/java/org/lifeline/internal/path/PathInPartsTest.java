package org.lifeline.internal.path;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.lifeline.internal.line.Piece;
import org.lifeline.model.Lifeline;
import org.lifeline.model.PlausibleLine;

/**
 * A load and a temperature that change at once and in forty parts: the same tensions, slips, work and heat on lines with
 * friction, absorbers at either end that yield, come to their stop and give back, and loads that hang there already, gripped,
 * running or at an anchor. What ends a step, and how far it goes, is other in each; what the line has gone through is not.
 */
class PathInPartsTest {
    private static final int CASES =
            Integer.getInteger("lifeline.cases", Boolean.getBoolean("lifeline.long") ? 2000 : 60);
    private static final int PARTS = 40;

    /** As for {@link OneFollowerTest}: slips are differences of lengths of ten metres. */
    private static final double AGREE = 1e-6;

    /** Of the work of the load against what the line takes up: steps may each add a twentieth of a millionth. */
    private static final double CLOSED = 1e-7;

    /** A line with a load that has grown in parts. */
    static final class Grown {
        final SplittableRandom r;
        final LineModel model;
        final LoadPath path;
        boolean onlyGripped = true;
        double temperature;

        Grown(long seed, int parts) {
            r = new SplittableRandom(31 * seed);
            model = new LineModel(line(seed, r).line());
            temperature = model.line().installed().temperature();
            for (int i = r.nextInt(3); i > 0; i--) {
                model.hang(hook(), r.nextDouble(300, 1500));
            }
            if (r.nextInt(3) == 0) {
                temperature = r.nextDouble(-30, 50);
                model.bringTo(temperature);
            }
            path = new LoadPath(model, hook(), 10, 3000);
            double force = r.nextDouble(2000, 9000);
            for (int k = 1; k <= parts; k++) {
                path.advance(force * k / parts, p -> 1, 0);
            }
        }

        private LineModel.Load hook() {
            Lifeline line = model.line();
            int span = r.nextInt(line.spans());
            double station = line.run(span + 1) * r.nextDouble(0.1, 0.9);
            int kind = r.nextInt(6);
            onlyGripped &= kind > 0 && kind < 4;
            return kind == 0 ? model.hookAtSupport(span) : model.hook(span, station, kind < 4);
        }

        /** Then another temperature. */
        Grown warmed(double to, int parts) {
            for (int k = 1; k <= parts; k++) {
                model.bringTo(temperature + (to - temperature) * k / parts);
            }
            return this;
        }

        /** Tensions [N]. */
        List<Double> tensions() {
            List<Double> list = new ArrayList<>();
            for (int i = 0; i < model.line().spans(); i++) {
                for (Piece each : model.pieces(i)) {
                    list.add(each.endTension().magnitude());
                }
            }
            return list;
        }

        /** Cable that has passed the supports, and what absorbers have given out [m]. */
        List<Double> lengths() {
            List<Double> list = new ArrayList<>(List.of(model.extension(0), model.extension(1)));
            for (int i = 1; i < model.line().spans(); i++) {
                list.add(model.slip(i));
            }
            return list;
        }
    }

    static PlausibleLine line(long seed, SplittableRandom r) {
        PlausibleLine p = new PlausibleLine(seed, true);
        p.friction.replaceAll(mu -> r.nextInt(6) == 0 ? 0 : r.nextDouble(0.05, 0.6));
        p.inlineExtension = r.nextDouble(0.1, 0.5);
        p.inlineStop = r.nextInt(3) == 0 ? Double.POSITIVE_INFINITY : Math.pow(10, r.nextDouble(4, 7));
        p.inlineStiffness = Math.pow(10, r.nextDouble(5.6, 7));
        for (int e = 0; e < 2; e++) {
            p.inline[e] = r.nextBoolean() ? p.pretension * r.nextDouble(1.3, 5) : Double.NaN;
        }
        return p;
    }

    private static void sameState(Grown a, Grown b, String name) {
        List<Double> tensions = b.tensions();
        for (int k = 0; k < tensions.size(); k++) {
            double t = tensions.get(k);
            assertThat(Math.abs(a.tensions().get(k) - t)).as(name).isLessThan(AGREE * t);
        }
        List<Double> lengths = b.lengths();
        for (int k = 0; k < lengths.size(); k++) {
            assertThat(Math.abs(a.lengths().get(k) - lengths.get(k))).as(name).isLessThan(0.1 * AGREE);
        }
    }

    private static void closes(Grown g, String name) {
        assertThat(Math.abs(g.path.pathWork() - g.path.work()))
                .as("%s, ∫P dδ against what the line took up", name)
                .isLessThan(CLOSED * Math.max(1, g.path.work()));
    }

    /** Returns whether the path could be compared: it was followed, and did not jump. */
    private static boolean growsAlike(long seed) {
        Grown once = new Grown(seed, 1);
        Grown often = new Grown(seed, PARTS);
        String name = "seed " + seed;
        if (once.onlyGripped) {
            assertThat(once.path.gaveWay() || often.path.gaveWay())
                    .as("%s: what is gripped does not jump", name)
                    .isFalse();
        }
        if (!once.path.isFollowed() || once.path.gaveWay() || often.path.gaveWay()) {
            return false;
        }
        sameState(once, often, name);
        double scale = AGREE * Math.max(1, often.path.work());
        assertThat(Math.abs(once.path.work() - often.path.work())).as(name).isLessThan(scale);
        assertThat(Math.abs(once.path.frictionHeat() - often.path.frictionHeat()))
                .as(name)
                .isLessThan(scale);
        closes(once, name);
        closes(often, name);
        return true;
    }

    @Test
    void aLoadAtOnceIsAsInFortyParts() {
        int compared = 0;
        for (long seed = 1; seed <= CASES; seed++) {
            compared += growsAlike(seed) ? 1 : 0;
        }
        assertThat(compared).isGreaterThan(CASES / 2);
    }

    /** Of the first 600 those on which a step that runs on beyond what comes to rest in it is seen most. */
    @ParameterizedTest
    @ValueSource(longs = {7, 13, 29, 60, 81, 329, 496, 500, 565})
    void whatComesToRestIsMet(long seed) {
        assertThat(growsAlike(seed)).isTrue();
    }

    /** A load that leaves an anchor with friction jumps, however short the steps: there ∫P dδ is not what was taken up. */
    @ParameterizedTest
    @ValueSource(longs = {25, 126, 256})
    void aJumpIsOneInAnySteps(long seed) {
        Grown once = new Grown(seed, 1);
        assertThat(once.onlyGripped).isFalse();
        for (int parts : new int[] {1, 7, PARTS}) {
            Grown grown = new Grown(seed, parts);
            assertThat(grown.path.isFollowed()).isTrue();
            assertThat(grown.path.gaveWay()).as("%d parts", parts).isTrue();
            assertThat(grown.path.pathWork()).as("%d parts", parts).isNaN();
            sameState(grown, once, "seed " + seed + " in " + parts + " parts");
        }
    }

    private static boolean warmsAlike(long seed) {
        Grown once = new Grown(seed, 1);
        if (once.path.gaveWay()) {
            return false;
        }
        double to = once.r.nextBoolean() ? 60 : -40;
        sameState(
                once.warmed(to, 1),
                new Grown(seed, 1).warmed(to, PARTS),
                "seed " + seed + ", from " + once.temperature + " to " + to + " °C");
        return true;
    }

    @Test
    void aTemperatureAtOnceIsAsInFortyParts() {
        int compared = 0;
        for (long seed = 1; seed <= CASES; seed++) {
            compared += warmsAlike(seed) ? 1 : 0;
        }
        assertThat(compared).isGreaterThan(CASES / 2);
    }

    /** Of the first 1500 those on which one step for the whole change would be farthest off. */
    @ParameterizedTest
    @ValueSource(longs = {759, 1210, 1354})
    void aTemperatureIsFollowedInStepsThatAreShortEnough(long seed) {
        assertThat(warmsAlike(seed)).isTrue();
    }
}
