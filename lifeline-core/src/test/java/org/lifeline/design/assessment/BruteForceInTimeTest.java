package org.lifeline.design.assessment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.LongStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.lifeline.design.envelope.Envelope;
import org.lifeline.design.envelope.Extreme;
import org.lifeline.design.envelope.Extremes;
import org.lifeline.design.envelope.LoadCombination;
import org.lifeline.model.Fall;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Place;

/**
 * Every place of a grid followed in time finds nothing worse than the assessment by more than 1 % of a force, or 1 % of the
 * total fall distance for a distance. 25 places a span with the system property {@code lifeline.long}, few otherwise.
 */
class BruteForceInTimeTest {
    private static final int PLACES = Boolean.getBoolean("lifeline.long") ? 25 : 3;

    /** Share by which something worse may be found [-]. */
    private static final double MISSED = 0.01;

    /** The same on random lines, of a peak as computed, and of one with what the meshes may hide [-]. */
    private static final double PEAK_MISSED = 0.04;

    private static final double VALUE_MISSED = 0.1;

    @ParameterizedTest
    @ValueSource(strings = {"single", "four free", "three rough"})
    void nothingWorseIsFound(String name) {
        assumeTrue(Boolean.getBoolean("lifeline.long") || name.equals("single"), "long runs only");
        LifelineDesign design = AssessedLines.of(name);
        AssessmentResult result = Assessment.withDefaults().solve(design);
        assertThat(result.notComputed()).isEmpty();

        Follower follower = new Follower(design.clearance());
        List<String> worse = new ArrayList<>();
        StringBuilder found = new StringBuilder();
        Extremes grid = Extremes.ofCases(design, grid(design, follower));
        for (Extreme e : AssessmentResult.governing(design, grid)) {
            GoverningValue known = result.governing(e.name()).orElseThrow();
            boolean least = e.quantity().map(q -> !q.largestIsWorst()).orElse(false);
            double more = least ? known.factored() - e.value() : e.value() - known.factored();
            double scale = e.unit().equals("N")
                    ? known.factored()
                    : result.governing("totalFallDistance").orElseThrow().factored();
            found.append(String.format(
                    Locale.ROOT,
                    "%s: assessment %.5g (%s), grid in time %.5g: %+.2f %%%n",
                    e.name(),
                    known.factored(),
                    known.method().label(),
                    e.value(),
                    100 * more / scale));
            if (more > MISSED * scale) {
                worse.add(e.name());
            }
        }
        assertThat(worse).as(name + ", " + PLACES + " places a span\n" + found).isEmpty();
    }

    /**
     * On random lines no peak of a grid is larger than the largest of the assessment by more than 4 %, since peaks vary by some
     * per cent from place to place; and with what the meshes may hide, which varies more than the peaks and which no survey on one
     * mesh knows, none by more than 10 %. Of 20 lines with 25 places a span: 2.9 % (an end) and 8.0 % (an end whose peak is the
     * same).
     */
    @ParameterizedTest
    @MethodSource("seeds")
    void peaksOfRandomLines(long seed) {
        LifelineDesign design = AssessedLines.random(seed);
        AssessmentResult result = Assessment.withDefaults().solve(design);
        Extremes grid = Extremes.ofCases(design, grid(design, new Follower(design.clearance())));
        int forces = 0;
        for (Extreme e : AssessmentResult.governing(design, grid)) {
            if (!e.unit().equals("N")) {
                continue;
            }
            GoverningValue known = result.governing(e.name()).orElseThrow();
            double inTime = known.inTimeExtreme().map(Extreme::computed).orElse(0.0);
            double balance = known.balanceExtreme().map(Extreme::computed).orElse(0.0);
            String name = "seed " + seed + ", " + e.name() + " at "
                    + e.fallCase().fall().place();
            assertThat(e.computed() / Math.max(inTime, balance)).as(name).isLessThan(1 + PEAK_MISSED);
            assertThat(e.value() / known.factored()).as(name).isLessThan(1 + VALUE_MISSED);
            forces++;
        }
        assertThat(forces).as("forces that were compared").isGreaterThan(3);
    }

    static LongStream seeds() {
        return Boolean.getBoolean("lifeline.long") ? LongStream.rangeClosed(1, 20) : LongStream.of(2);
    }

    private static List<org.lifeline.design.envelope.ComputedCase> grid(LifelineDesign design, Follower follower) {
        List<org.lifeline.design.envelope.ComputedCase> cases = new ArrayList<>();
        for (LoadCombination combination : Envelope.withDefaults().combinations(design)) {
            for (Fall fall : Envelope.movingFalls(design)) {
                for (int span = 1; span <= design.line().spans(); span++) {
                    for (int i = 0; i < PLACES; i++) {
                        double station = (i + 0.5) / PLACES * design.line().run(span);
                        Follower.Attempt a = follower.fine(
                                Follower.Task.of(combination.of(fall.at(Place.of(span, station))), combination.line()));
                        Optional.ofNullable(a.arrest()).ifPresent(f -> cases.add(f.computed()));
                    }
                }
            }
        }
        return cases;
    }
}
