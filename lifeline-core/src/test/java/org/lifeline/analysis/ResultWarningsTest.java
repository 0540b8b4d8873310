package org.lifeline.analysis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.lifeline.analysis.state.AppliedLoad;
import org.lifeline.analysis.state.InlineAbsorberState;
import org.lifeline.analysis.warning.Warning;
import org.lifeline.base.Point;
import org.lifeline.base.Vector3;
import org.lifeline.model.Attachment;
import org.lifeline.model.Fall;
import org.lifeline.model.InlineAbsorber;
import org.lifeline.model.Installed;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Place;
import org.lifeline.model.Support;
import org.lifeline.model.Worker;
import org.lifeline.model.absorber.LoadingCurve;
import org.lifeline.model.cable.Cable;
import org.lifeline.testing.PlainParts;

/** Each warning stands from its limit on: not at the limit itself, and at the next number beyond. */
class ResultWarningsTest {
    private static final List<AppliedLoad> LOAD = List.of(new AppliedLoad(Place.of(1, 6), Attachment.GRIPPED, 6000));

    private static Lifeline line(double breaking, double efficiency, double capacity) {
        return Lifeline.builder()
                .cable(Cable.builder()
                        .massPerLength(0.4)
                        .axialStiffness(3e6)
                        .breakingStrength(breaking)
                        .terminationEfficiency(efficiency)
                        .build())
                .support(Support.end("west", Point.of(0, 0, 12)).withCapacity(capacity))
                .support(Support.end("east", Point.of(12, 0, 12)).withCapacity(1e6))
                .pretension(1500)
                .build();
    }

    private static List<Warning> at(Lifeline line) {
        return Statics.withDefaults().solve(line, LOAD).warnings();
    }

    @Test
    void anAnchorIsWarnedOfBeyondItsCapacity() {
        double force = Statics.withDefaults()
                .solve(line(1e6, 1, 1e6), LOAD)
                .support("west")
                .force();
        assertThat(at(line(1e6, 1, force))).isEmpty();
        double less = Math.nextDown(force);
        assertThat(at(line(1e6, 1, less))).singleElement().satisfies(w -> {
            assertThat(w.code()).isEqualTo(Warning.Code.ANCHOR_CAPACITY);
            assertThat(w.subject()).isEqualTo("west");
            assertThat(w.value()).isEqualTo(force);
            assertThat(w.limit()).isEqualTo(less);
            assertThat(w.unit()).isEqualTo("N");
        });
    }

    /** What the terminations leave of the strength counts: half of twice the tension is the tension. */
    @Test
    void aCableIsWarnedOfBeyondItsStrengthAtTheTerminations() {
        double tension = Statics.withDefaults().solve(line(1e6, 1, 1e6), LOAD).maximumTension();
        assertThat(at(line(2 * tension, 0.5, 1e6))).isEmpty();
        double less = Math.nextDown(2 * tension);
        assertThat(at(line(less, 0.5, 1e6))).singleElement().satisfies(w -> {
            assertThat(w.code()).isEqualTo(Warning.Code.CABLE_STRENGTH);
            assertThat(w.subject()).isEqualTo("cable");
            assertThat(w.value()).isEqualTo(tension);
            assertThat(w.limit()).isEqualTo(0.5 * less);
        });
    }

    private static double steepest(SpanState span) {
        return span.pieces().stream()
                .flatMap(p -> Stream.of(p.startTension(), p.endTension()))
                .mapToDouble(ResultWarningsTest::slope)
                .max()
                .orElseThrow();
    }

    private static double slope(Vector3 tension) {
        return Math.atan(Math.abs(tension.z()) / tension.horizontal());
    }

    /** A longer and longer cable hangs steeper at its ends; it is warned of where it is steeper than 80 degrees. */
    @Test
    void aCableIsWarnedOfWhereItIsSteep() {
        int steep = 0;
        int flat = 0;
        for (double length : List.of(4.5, 6.0, 8.0, 9.2, 9.3, 9.35, 9.4, 9.7, 9.99)) {
            Lifeline line = Lifeline.builder()
                    .cable(Cable.builder()
                            .massPerLength(0.4)
                            .axialStiffness(3e6)
                            .build())
                    .endAnchor("west", Point.of(0, 0, 30))
                    .endAnchor("east", Point.of(4, 0, 30))
                    .installed(Installed.unstretchedLength(length))
                    .build();
            LineEquilibrium state = Statics.withDefaults().solve(line, List.of());
            double slope = steepest(state.span(1));
            if (slope > Math.toRadians(80)) {
                steep++;
                assertThat(state.warnings()).singleElement().satisfies(w -> {
                    assertThat(w.code()).isEqualTo(Warning.Code.CABLE_SLOPE);
                    assertThat(w.subject()).isEqualTo("span 1");
                    assertThat(w.unit()).isEqualTo("rad");
                    assertThat(w.limit()).isCloseTo(80 * Math.PI / 180, within(1e-12));
                    assertThat(w.value()).isCloseTo(slope, within(1e-9));
                });
            } else {
                flat++;
                assertThat(state.warnings()).as("%s m, %s rad", length, slope).isEmpty();
            }
        }
        // sinh u = tan 80° at the ends, so that the cable is sinh u / u = 2.33 times as long as the span.
        assertThat(steep).isBetween(3, 4);
        assertThat(flat).isBetween(5, 6);
    }

    private static Worker worker(String id, double mass, double most) {
        return Worker.builder(id)
                .mass(mass)
                .walkingLevel(10.5)
                .attachment(Attachment.GRIPPED)
                .connection(PlainParts.lanyard(3200, 6000, most))
                .build();
    }

    private static ArrestResult arrest(Lifeline line, Place place, Worker... workers) {
        Fall.Builder fall = Fall.builder("f").at(place);
        for (Worker each : workers) {
            fall.faller(each);
        }
        return EnergyBalance.withDefaults().solve(line, fall.build());
    }

    private static Warning of(ArrestResult r, Warning.Code code) {
        List<Warning> list = r.warnings().stream().filter(w -> w.code() == code).toList();
        assertThat(list).hasSize(1);
        return list.get(0);
    }

    private static Worker freeRunning(Worker worker) {
        return worker.toBuilder("free").attachment(Attachment.FREE_RUNNING).build();
    }

    /** Of several who fall, the one with the shortest absorber is named, wherever he stands in the list. */
    @Test
    void theShortestAbsorberIsNamedWhenOneIsUsedUp() {
        Worker near = worker("short", 100, 0.05);
        Worker far = worker("long", 100, 0.3);
        for (List<Worker> order : List.of(List.of(near, far), List.of(far, near))) {
            ArrestResult r = arrest(line(1e6, 1, 1e6), Place.of(1, 6), order.get(0), order.get(1));
            assertThat(r.bottomedOut()).isTrue();
            Warning w = of(r, Warning.Code.BOTTOMED_OUT);
            assertThat(w.subject()).isEqualTo("short");
            assertThat(w.limit()).isEqualTo(0.05);
            assertThat(w.value()).isEqualTo(r.deployment());
            assertThat(w.unit()).isEqualTo("m");
        }
    }

    /** The ratio of the largest mass to the smallest, wherever they stand in the list. */
    @Test
    void unequalFallersAreWarnedOfWithTheRatioOfTheirMasses() {
        Worker light = worker("light", 60, 1.2);
        Worker middle = worker("middle", 80, 1.2);
        Worker heavy = worker("heavy", 120, 1.2);
        for (List<Worker> order : List.of(List.of(light, middle, heavy), List.of(heavy, light, middle))) {
            ArrestResult r = arrest(line(1e6, 1, 1e6), Place.of(1, 6), order.toArray(new Worker[0]));
            Warning w = of(r, Warning.Code.UNEQUAL_FALLERS);
            assertThat(w.value()).isEqualTo(2);
            assertThat(w.limit()).isEqualTo(1);
            assertThat(w.subject()).isEqualTo("fallers");
        }
        ArrestResult alike = arrest(line(1e6, 1, 1e6), Place.of(1, 6), light, worker("twin", 60, 1.2));
        assertThat(alike.warnings()).isEmpty();
    }

    /** A ring that runs is warned of beyond half a metre, with the way that it ran in plan. */
    @Test
    void aRingThatRunsIsWarnedOfBeyondHalfAMetre() {
        int warned = 0;
        int quiet = 0;
        for (double station : List.of(2.0, 4.0, 5.4, 5.6, 5.9, 6.3, 7.0)) {
            ArrestResult r = arrest(line(1e6, 1, 1e6), Place.of(1, station), freeRunning(worker("w", 100, 1.2)));
            double run =
                    Math.abs(r.attachmentAtPeak().x() - r.attachmentBefore().x());
            if (run > 0.5) {
                warned++;
                Warning w = of(r, Warning.Code.ATTACHMENT_RUNS);
                assertThat(w.value()).isCloseTo(run, within(1e-12));
                assertThat(w.limit()).isEqualTo(0.5);
                assertThat(w.subject()).isEqualTo("span 1");
            } else {
                quiet++;
                assertThat(r.warnings()).isEmpty();
            }
        }
        assertThat(warned).isGreaterThan(1);
        assertThat(quiet).isGreaterThan(1);
        assertThat(arrest(line(1e6, 1, 1e6), Place.of(1, 3), worker("w", 100, 1.2))
                        .warnings())
                .isEmpty();
    }

    /** An in-line absorber of 5 cm that is driven into its stop: the warning says how far, and where the stop begins. */
    @Test
    void anInLineAbsorberIsWarnedOfBeyondItsStop() {
        Lifeline line = line(1e6, 1, 1e6)
                .withSupports(s -> s.id().equals("east")
                        ? s.withInlineAbsorber(InlineAbsorber.of(LoadingCurve.through(
                                List.of(new LoadingCurve.Corner(0, 3000), new LoadingCurve.Corner(0.05, 3000)),
                                5e6,
                                5e6)))
                        : s);
        ArrestResult r = arrest(line, Place.of(1, 6), worker("w", 100, 1.2));
        Warning w = of(r, Warning.Code.INLINE_BOTTOMED_OUT);
        InlineAbsorberState state = r.peak().inlineAbsorbers().get(0);
        assertThat(w.subject()).isEqualTo("east");
        assertThat(w.unit()).isEqualTo("m");
        assertThat(w.value()).isEqualTo(state.extension()).isGreaterThan(0.05);
        assertThat(w.limit()).isCloseTo(0.05, within(1e-12));
        LineEquilibrium quiet = Statics.withDefaults().solve(line, List.of());
        assertThat(quiet.inlineAbsorbers().get(0).bottomedOut()).isFalse();
        assertThat(quiet.warnings()).isEmpty();
    }

    /** Absorbers at both ends, each with the end of its own curve. */
    @Test
    void eachInLineAbsorberIsMeasuredByItsOwnStop() {
        Lifeline line = line(1e6, 1, 1e6)
                .withSupports(s -> s.withInlineAbsorber(InlineAbsorber.of(LoadingCurve.through(
                        List.of(
                                new LoadingCurve.Corner(0, 3000),
                                new LoadingCurve.Corner(s.id().equals("east") ? 0.05 : 0.03, 3000)),
                        5e6,
                        5e6))));
        ArrestResult r = arrest(line, Place.of(1, 6), worker("w", 100, 1.2));
        assertThat(r.warnings())
                .filteredOn(w -> w.code() == Warning.Code.INLINE_BOTTOMED_OUT)
                .extracting(w -> w.subject() + " " + w.limit())
                .containsExactly("west 0.03", "east 0.05");
    }

    /** A motion is warned of as rough while its meshes differ by more than is asked for, and then no more. */
    @Test
    void aMotionThatIsRoughIsWarnedOf() {
        Fall fall = Fall.builder("the fall")
                .at(Place.of(1, 6))
                .faller(worker("w", 100, 1.2))
                .build();
        TransientArrest motion =
                TransientArrest.withDefaults().withSegmentLength(2).withDuration(1.6);
        TransientResult once = motion.withRefinements(0).solve(line(1e6, 1, 1e6), fall);
        assertThat(once.accurate()).isFalse();
        assertThat(once.warnings())
                .filteredOn(w -> w.code() == Warning.Code.MOTION_NOT_ACCURATE)
                .singleElement()
                .satisfies(w -> assertThat(w.subject()).isEqualTo("the fall"));
        TransientResult refined = motion.withRefinements(3).withAccuracy(0.2).solve(line(1e6, 1, 1e6), fall);
        assertThat(refined.accurate()).isTrue();
        assertThat(refined.uncertainty()).isLessThanOrEqualTo(0.2);
        assertThat(refined.warnings()).noneMatch(w -> w.code() == Warning.Code.MOTION_NOT_ACCURATE);
    }

    /** A run that ends while the connection still pays out has not shown the peaks; a longer one has. */
    @Test
    void aMotionThatEndsTooEarlyIsWarnedOf() {
        Fall fall = Fall.builder("the fall")
                .at(Place.of(1, 6))
                .faller(worker("w", 100, 1.2))
                .build();
        int early = 0;
        int whole = 0;
        for (double duration : List.of(0.65, 1.6)) {
            TransientResult r = TransientArrest.withDefaults()
                    .withSegmentLength(2)
                    .withRefinements(0)
                    .withDuration(duration)
                    .solve(line(1e6, 1, 1e6), fall);
            List<Warning> list = r.warnings().stream()
                    .filter(w -> w.code() == Warning.Code.FIRST_CATCH_NOT_OVER)
                    .toList();
            assertThat(list).hasSize(r.firstCatchOver() ? 0 : 1);
            assertThat(list).allSatisfy(w -> assertThat(w.subject()).isEqualTo("the fall"));
            early += r.firstCatchOver() ? 0 : 1;
            whole += r.firstCatchOver() ? 1 : 0;
        }
        assertThat(early).isEqualTo(1);
        assertThat(whole).isEqualTo(1);
    }
}
