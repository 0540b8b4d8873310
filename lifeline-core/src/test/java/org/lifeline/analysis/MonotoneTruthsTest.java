package org.lifeline.analysis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.lifeline.analysis.MonotoneTruthsTest.Result.DEPLOYMENT;
import static org.lifeline.analysis.MonotoneTruthsTest.Result.FAR_FIRST;
import static org.lifeline.analysis.MonotoneTruthsTest.Result.FAR_LAST;
import static org.lifeline.analysis.MonotoneTruthsTest.Result.FIRST_TENSION;
import static org.lifeline.analysis.MonotoneTruthsTest.Result.LAST_TENSION;
import static org.lifeline.analysis.MonotoneTruthsTest.Result.LINE_LOAD;
import static org.lifeline.analysis.MonotoneTruthsTest.Result.LOADED_TENSION;
import static org.lifeline.analysis.MonotoneTruthsTest.Result.MAXIMUM_TENSION;
import static org.lifeline.analysis.MonotoneTruthsTest.Result.REACH;
import static org.lifeline.analysis.MonotoneTruthsTest.Result.SAG;
import static org.lifeline.analysis.MonotoneTruthsTest.Result.TOTAL_FALL;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.lifeline.model.Attachment;
import org.lifeline.model.PlausibleLine;

/**
 * What engineers say of lifelines, over random plausible lines: one number is turned, and a result must not move the
 * wrong way. Truths that hold only with a condition carry it; {@code src/docs/theory/monotone-truths.md} has the
 * counterexamples without it.
 */
class MonotoneTruthsTest {
    private static final int CASES = Boolean.getBoolean("lifeline.long") ? 5000 : 200;

    /** A move counts when it is more than this share of the size of the result: friction paths are followed to 1e-6. */
    private static final double COUNTS = 2e-5;

    private static final double CLAMPED = Double.POSITIVE_INFINITY;

    /** Results, each with the size against which a move counts. */
    @SuppressWarnings("ImmutableEnumChecker") // the functions hold nothing
    enum Result {
        LINE_LOAD(ArrestResult::lineLoad, ArrestResult::lineLoad),
        DEPLOYMENT(ArrestResult::deployment, ArrestResult::totalFallDistance),
        SAG(ArrestResult::sag, ArrestResult::totalFallDistance),
        TOTAL_FALL(ArrestResult::totalFallDistance, ArrestResult::totalFallDistance),
        REACH(a -> -a.clearance().lowestPoint(), ArrestResult::totalFallDistance),
        MAXIMUM_TENSION(ArrestResult::maximumTension, ArrestResult::maximumTension),
        LOADED_TENSION(a -> a.peak().span(a.fall().place().span()).maximumTension(), ArrestResult::maximumTension),
        FIRST_TENSION(a -> a.peak().firstTension(), ArrestResult::maximumTension),
        LAST_TENSION(a -> a.peak().lastTension(), ArrestResult::maximumTension),
        FAR_FIRST(a -> a.fall().place().span() == 1 ? 0 : a.peak().firstTension(), ArrestResult::maximumTension),
        FAR_LAST(
                a -> a.fall().place().span() == a.line().spans() ? 0 : a.peak().lastTension(),
                ArrestResult::maximumTension);

        final ToDoubleFunction<ArrestResult> value;
        final ToDoubleFunction<ArrestResult> size;

        Result(ToDoubleFunction<ArrestResult> value, ToDoubleFunction<ArrestResult> size) {
            this.value = value;
            this.size = size;
        }
    }

    /** On which lines a truth is looked at. */
    enum Lines {
        /** Rows of posts on one level, and lines with corners and climbs. */
        ALL,
        /** Rows of posts on one level. */
        LEVEL,
        /** All, where both falls end on the plateau of the absorber, so that the force on the line is the same. */
        PLATEAU
    }

    /** A truth: with the second change the results rise, or fall, against the first. */
    record Truth(String says, Lines lines, Turn turn, List<Result> rise, List<Result> fall) {
        Truth(String says, Turn turn, List<Result> rise, List<Result> fall) {
            this(says, Lines.ALL, turn, rise, fall);
        }

        @Override
        public String toString() {
            return says;
        }
    }

    /** What both lines have, and what tells them apart. */
    record Turn(Consumer<PlausibleLine> both, Consumer<PlausibleLine> first, Consumer<PlausibleLine> second) {}

    private static Turn on(Consumer<PlausibleLine> both, Consumer<PlausibleLine> second) {
        return new Turn(both, p -> {}, second);
    }

    static Stream<Truth> truths() {
        Consumer<PlausibleLine> any = p -> {};
        Consumer<PlausibleLine> plain = PlausibleLine::withoutInlineAbsorbers;
        Consumer<PlausibleLine> geometric = p -> p.withoutInlineAbsorbers().freeFallStated = false;
        // An absorber that cannot bottom out.
        Consumer<PlausibleLine> roomy = p -> p.withoutInlineAbsorbers().maximumExtension = 10;
        List<Result> tensions = List.of(MAXIMUM_TENSION, FIRST_TENSION, LAST_TENSION);
        List<Result> none = List.of();
        return Stream.of(
                new Truth(
                        "stiffer end anchors raise the loads and lower the sag",
                        new Turn(plain, p -> p.endStiffness = 1e5, p -> p.endStiffness = 1e6),
                        tensions,
                        List.of(SAG)),
                new Truth(
                        "stiffer posts that clamp raise the loads and lower the sag",
                        new Turn(
                                p -> p.withoutInlineAbsorbers().friction.replaceAll(m -> CLAMPED),
                                p -> p.postStiffness = 1e5,
                                p -> p.postStiffness = 1e6),
                        List.of(MAXIMUM_TENSION),
                        List.of(SAG)),
                new Truth(
                        "more friction raises the tension in the span of the fall and lowers the sag",
                        Lines.PLATEAU,
                        new Turn(plain, p -> p.friction.replaceAll(m -> 0.1), p -> p.friction.replaceAll(m -> 0.3)),
                        List.of(LOADED_TENSION),
                        List.of(SAG)),
                new Truth(
                        "more friction on the way to the last support lowers the load there",
                        new Turn(plain, p -> behindTheFall(p, 0.1), p -> behindTheFall(p, 0.3)),
                        List.of(LOADED_TENSION),
                        List.of(FAR_LAST)),
                new Truth(
                        "more friction in a level row lowers the loads at both far ends of a free-running attachment",
                        Lines.LEVEL,
                        new Turn(
                                p -> p.withoutInlineAbsorbers().attachment = Attachment.FREE_RUNNING,
                                p -> p.friction.replaceAll(m -> 0.1),
                                p -> p.friction.replaceAll(m -> 0.3)),
                        List.of(LOADED_TENSION),
                        List.of(FAR_FIRST, FAR_LAST, SAG)),
                new Truth(
                        "clamps on rigid posts instead of free passages raise the tension in the span of the fall, not"
                                + " the far ends', and lower the sag",
                        new Turn(
                                p -> p.withoutInlineAbsorbers().postStiffness = Double.POSITIVE_INFINITY,
                                PlausibleLine::allFree,
                                p -> p.friction.replaceAll(m -> CLAMPED)),
                        List.of(LOADED_TENSION),
                        List.of(FAR_FIRST, FAR_LAST, SAG)),
                new Truth(
                        "a longer free fall raises everything",
                        on(plain, p -> p.freeFall += 0.5),
                        List.of(Result.values()),
                        none),
                new Truth(
                        "a longer free fall raises load, deployment, sag and total fall, in-line absorbers or not",
                        on(any, p -> p.freeFall += 0.5),
                        List.of(LINE_LOAD, DEPLOYMENT, SAG, TOTAL_FALL),
                        none),
                new Truth(
                        "a higher deployment force raises the loads and lowers the deployment",
                        on(roomy, p -> p.deploymentForce *= 1.3),
                        List.of(LINE_LOAD, MAXIMUM_TENSION, FIRST_TENSION, LAST_TENSION, SAG),
                        List.of(DEPLOYMENT, TOTAL_FALL)),
                new Truth(
                        "a heavier worker raises everything",
                        on(plain, p -> p.mass *= 1.3),
                        List.of(Result.values()),
                        none),
                new Truth(
                        "two who fall together load the line more than one",
                        on(plain, p -> p.fallers = 2),
                        List.of(LINE_LOAD, MAXIMUM_TENSION, FIRST_TENSION, LAST_TENSION, SAG),
                        none),
                new Truth(
                        "more pretension raises the tensions and lowers sag and reach",
                        Lines.PLATEAU,
                        on(geometric, p -> p.pretension *= 1.3),
                        tensions,
                        List.of(SAG, REACH)),
                new Truth(
                        "cold raises the tensions and lowers sag and reach",
                        Lines.PLATEAU,
                        new Turn(geometric, p -> p.temperature = 30, p -> p.temperature = -20),
                        tensions,
                        List.of(SAG, REACH)),
                new Truth(
                        "an in-line absorber lowers the loads",
                        on(plain, p -> p.inline[1] = Math.max(6000, 2 * p.pretension)),
                        List.of(SAG),
                        tensions),
                new Truth(
                        "a stiffer cable raises the loads and lowers the sag",
                        on(plain, p -> p.axialStiffness *= 2),
                        tensions,
                        List.of(SAG)),
                new Truth(
                        "a free-running attachment sags no less than a gripped one, in a level row",
                        Lines.LEVEL,
                        new Turn(
                                plain,
                                p -> p.attachment = Attachment.GRIPPED,
                                p -> p.attachment = Attachment.FREE_RUNNING),
                        List.of(SAG),
                        none));
    }

    /** Friction at the posts between the fall and the last support. */
    private static void behindTheFall(PlausibleLine p, double mu) {
        for (int i = p.span - 1; i < p.friction.size(); i++) {
            p.friction.set(i, mu);
        }
    }

    @ParameterizedTest
    @MethodSource("truths")
    void holds(Truth truth) {
        List<String> broken = new ArrayList<>();
        int looked = 0;
        for (long seed = 1; seed <= CASES; seed++) {
            boolean corners = seed % 2 == 0 && truth.lines != Lines.LEVEL;
            PlausibleLine p = new PlausibleLine(seed, corners);
            PlausibleLine q = new PlausibleLine(seed, corners);
            truth.turn.both.accept(p);
            truth.turn.both.accept(q);
            truth.turn.first.accept(p);
            truth.turn.second.accept(q);
            ArrestResult a = Arrests.solve(p);
            ArrestResult b = Arrests.solve(q);
            if (truth.lines == Lines.PLATEAU && Math.abs(b.lineLoad() - a.lineLoad()) > 1e-9 * a.lineLoad()) {
                continue;
            }
            looked++;
            truth.rise.forEach(each -> check(broken, p, each, a, b));
            truth.fall.forEach(each -> check(broken, p, each, b, a));
        }
        assertThat(looked).isGreaterThan(CASES / 3);
        assertThat(broken).as(truth.says).isEmpty();
    }

    private static void check(
            List<String> broken, PlausibleLine p, Result result, ArrestResult lower, ArrestResult higher) {
        double low = result.value.applyAsDouble(lower);
        double high = result.value.applyAsDouble(higher);
        if (high - low < -COUNTS * result.size.applyAsDouble(lower)) {
            broken.add("seed " + p.seed + ": " + result + " " + low + " against " + high);
        }
    }
}
