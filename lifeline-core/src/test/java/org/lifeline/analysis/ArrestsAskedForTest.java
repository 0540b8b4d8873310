package org.lifeline.analysis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.lifeline.analysis.motion.WorkerHistory;
import org.lifeline.base.AllowedRange;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.Point;
import org.lifeline.base.Refusal;
import org.lifeline.base.Violation;
import org.lifeline.model.Attachment;
import org.lifeline.model.Connection;
import org.lifeline.model.Fall;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Passage;
import org.lifeline.model.Place;
import org.lifeline.model.Worker;
import org.lifeline.model.cable.Cable;
import org.lifeline.testing.PlainParts;

/** What is asked of an arrest, by energy balance and in time, reaches it; what cannot be is refused with what could. */
class ArrestsAskedForTest {
    private static final double G = 9.80665;

    private static final TransientArrest QUICK = TransientArrest.withDefaults()
            .withSegmentLength(0.4)
            .withRefinements(0)
            .withDuration(0.9);

    private static Lifeline line(double rise) {
        return Lifeline.builder()
                .cable(Cable.builder()
                        .massPerLength(0.5)
                        .axialStiffness(3e6)
                        .thermalExpansion(1.2e-5)
                        .build())
                .endAnchor("a", Point.of(0, 0, 10))
                .intermediateAnchor("p", Point.of(10, 0, 10), Passage.free())
                .endAnchor("b", Point.of(20, 0, 10 + rise))
                .pretension(1500)
                .build();
    }

    private static Worker worker(String id, double level, Attachment attachment) {
        return Worker.builder(id)
                .mass(100)
                .walkingLevel(level)
                .attachment(attachment)
                .connection(PlainParts.sixKilonewtons())
                .build();
    }

    private static Worker worker(String id) {
        return worker(id, 8.5, Attachment.GRIPPED);
    }

    private static Fall.Builder fall(String id) {
        return Fall.builder(id).at(Place.of(1, 4));
    }

    private static Violation refusal(Runnable call) {
        InvalidInputException e = catchThrowableOfType(InvalidInputException.class, call::run);
        assertThat(e).isNotNull();
        assertThat(e.violations()).hasSize(1);
        return e.violations().get(0);
    }

    /** The temperature of the arrest is that of the line before it, whose tension is that of the line at rest. */
    @Test
    void theTemperatureIsThatOfTheLineBeforeTheFall() {
        Fall fall = fall("f").faller(worker("w")).build();
        double installed = line(0).installed().temperature();
        double cold = Statics.withDefaults()
                .withTemperature(-30)
                .solve(line(0), List.of())
                .firstTension();
        assertThat(cold).isGreaterThan(2500);
        for (ArrestResult r : List.of(
                EnergyBalance.withDefaults().withTemperature(-30).solve(line(0), fall),
                QUICK.withTemperature(-30).solve(line(0), fall).arrest())) {
            assertThat(r.temperature()).isEqualTo(-30);
            assertThat(r.before().temperature()).isEqualTo(-30);
            assertThat(r.before().firstTension()).isCloseTo(cold, within(1e-6 * cold));
        }
        for (ArrestResult r : List.of(
                EnergyBalance.withDefaults().solve(line(0), fall),
                QUICK.solve(line(0), fall).arrest(),
                EnergyBalance.withDefaults()
                        .withTemperature(-30)
                        .atInstalledTemperature()
                        .solve(line(0), fall),
                QUICK.withTemperature(-30)
                        .atInstalledTemperature()
                        .solve(line(0), fall)
                        .arrest())) {
            assertThat(r.temperature()).isEqualTo(installed);
            assertThat(r.before().firstTension()).isCloseTo(1500, within(1e-6));
        }
    }

    /** Standing far below the line nobody can be hooked on to it. */
    @Test
    void whoCannotReachTheLineIsRefused() {
        Fall below = fall("f").faller(worker("low", 2, Attachment.GRIPPED)).build();
        Fall near = fall("g").faller(worker("near")).build();
        List<String> refused = Refusal.paths(() -> EnergyBalance.withDefaults().solve(line(0), below));
        assertThat(refused).containsExactly("faller[0].connection.tautLength");
        assertThat(Refusal.paths(() -> QUICK.solve(line(0), below))).isEqualTo(refused);
        assertThat(Refusal.paths(() -> QUICK.withLaterFall(below, 0.1).solve(line(0), near)))
                .isEqualTo(refused);
    }

    /** Each setting that changes what is computed is in the canonical form, and so changes the fingerprint. */
    @Test
    void everySettingIsInTheFingerprint() {
        EnergyBalance balance = EnergyBalance.withDefaults();
        assertThat(balance.withTemperature(-30).canonicalForm().toString()).contains("temperature", "-30");
        assertThat(balance.withTemperature(-30).fingerprint())
                .isNotEqualTo(balance.fingerprint())
                .isNotEqualTo(balance.withTemperature(-29).fingerprint());
        assertThat(balance.withTemperature(-30).atInstalledTemperature().fingerprint())
                .isEqualTo(balance.fingerprint());
        Fall later = fall("later").faller(worker("w")).build();
        Fall other = fall("other").faller(worker("w")).build();
        TransientArrest two = QUICK.withLaterFall(later, 0.2).withLaterFall(other, 0.3);
        assertThat(List.of(
                        QUICK,
                        QUICK.withDelay("w", 0.1),
                        QUICK.withDelay("w", 0.2),
                        QUICK.withDelay("v", 0.1),
                        QUICK.withDelay("v", 0.1).withDelay("w", 0.1),
                        QUICK.withLaterFall(later, 0.2),
                        QUICK.withLaterFall(other, 0.2),
                        QUICK.withLaterFall(later, 0.3),
                        two,
                        QUICK.withLaterFall(other, 0.3).withLaterFall(later, 0.2)))
                .extracting(TransientArrest::fingerprint)
                .doesNotHaveDuplicates();
        assertThat(two.fingerprint())
                .isEqualTo(QUICK.withLaterFall(later, 0.2)
                        .withLaterFall(other, 0.3)
                        .fingerprint());
    }

    /** A history has a million samples at most: exactly so many are accepted, one more is not. */
    @Test
    void aMillionSamplesAndTwelveHalvingsAreTheMost() {
        TransientArrest defaults = TransientArrest.withDefaults();
        TransientArrest most = defaults.withDuration(1).withSampling(1e-6);
        assertThat(defaults.withDuration(500).withSampling(5e-4).fingerprint()).isNotEqualTo(most.fingerprint());
        assertThat(Refusal.paths(() -> most.withDuration(1.01))).containsExactly("duration");
        assertThat(Refusal.paths(() -> defaults.withDuration(600).withSampling(5e-4)))
                .containsExactly("sampling");
        assertThat(Refusal.paths(() -> defaults.withSampling(5e-4).withDuration(600)))
                .containsExactly("duration");
        assertThat(defaults.withRefinements(12).fingerprint()).isNotEqualTo(defaults.fingerprint());
        assertThat(Refusal.paths(() -> defaults.withRefinements(13))).containsExactly("refinements");
    }

    /** A run must be longer than the fall until the connection is taut, √(2h/g), and a later fall begin so early. */
    @Test
    void aRefusalSaysHowLongARunMustBe() {
        double caught = Math.sqrt(2 * 1.5 / G);
        Fall fall = fall("f").faller(worker("w")).freeFall(1.5).build();
        Violation tooShort = refusal(() -> QUICK.withDuration(0.5).solve(line(0), fall));
        assertThat(tooShort.path()).isEqualTo("duration");
        assertThat(tooShort.number()).hasValue(0.5);
        assertThat(tooShort.unit()).isEqualTo("s");
        AllowedRange longer = tooShort.allowed().orElseThrow();
        assertThat(longer.lowest().value()).isCloseTo(caught, within(1e-12));
        assertThat(longer.contains(0.6)).isTrue();

        Fall second = Fall.builder("s")
                .at(Place.of(2, 5))
                .faller(worker("v"))
                .freeFall(1.5)
                .build();
        Violation tooLate =
                refusal(() -> QUICK.withDuration(2).withLaterFall(second, 1.7).solve(line(0), fall));
        assertThat(tooLate.path()).isEqualTo("laterFall[0].time");
        assertThat(tooLate.number()).hasValue(1.7);
        AllowedRange earlier = tooLate.allowed().orElseThrow();
        assertThat(earlier.highest().value()).isCloseTo(2 - caught, within(1e-9));
        assertThat(earlier.contains(1.4)).isTrue();
        assertThat(earlier.contains(1.5)).isFalse();
    }

    /** Whoever hangs on the line does not fall from it later. */
    @Test
    void whoHangsDoesNotFallLater() {
        Fall first = fall("f")
                .faller(worker("w"))
                .hanging(worker("h"), Place.of(2, 5))
                .build();
        Fall again = Fall.builder("s").at(Place.of(2, 5)).faller(worker("h")).build();
        assertThat(Refusal.paths(() -> QUICK.withLaterFall(again, 0.1).solve(line(0), first)))
                .containsExactly("laterFall[0].faller");
    }

    /** One who hangs from a device that pays out hangs by the length at lock-up, and a little by what it gives. */
    @Test
    void whoHangsOnADeviceHangsByWhatItPaidOut() {
        double stiffness = 4e4;
        Worker hanging = Worker.builder("h")
                .mass(80)
                .walkingLevel(7)
                .attachment(Attachment.GRIPPED)
                .connection(Connection.selfRetracting(
                        0.6,
                        Connection.PersonalAbsorber.builder()
                                .clearanceForce(4000)
                                .maximumForce(4000)
                                .maximumExtension(1)
                                .initialStiffness(stiffness)
                                .build()))
                .build();
        Fall fall = fall("f")
                .faller(worker("w"))
                .hanging(hanging, Place.of(2, 5))
                .freeFall(1.5)
                .build();
        TransientResult r = QUICK.solve(line(0), fall);
        Point at = r.arrest().before().loads().get(0).point();
        double paidOut = at.z() - hanging.harnessElevation() + 0.6;
        double[] z = r.history().worker("h").z();
        assertThat(z[0]).isCloseTo(at.z() - paidOut - 80 * G / stiffness, within(1e-6));
        assertThat(r.history().worker("h").force()[0]).isCloseTo(80 * G, within(1e-3));
    }

    private static double way(Attachment attachment) {
        Fall fall = Fall.builder("f")
                .at(Place.of(1, 8))
                .faller(worker("w"))
                .hanging(worker("h", 8.5, attachment), Place.of(1, 5))
                .freeFall(1.5)
                .build();
        WorkerHistory h = QUICK.solve(line(0), fall).history().worker("h");
        double way = 0;
        for (double x : h.lineX()) {
            way = Math.max(way, Math.abs(x - h.lineX()[0]));
        }
        return way;
    }

    /** The ring of one who hangs runs when another falls beside him; a grip goes only where the cable goes. */
    @Test
    void theRingOfOneWhoHangsRunsAndAGripDoesNot() {
        double gripped = way(Attachment.GRIPPED);
        assertThat(way(Attachment.FREE_RUNNING)).isGreaterThan(1.5 * gripped);
    }

    /** On a steep span a ring runs down to the post and rests there: the post carries him, and no body moves for him. */
    @Test
    void whoCameToRestOnAPostTakesNoPartInTheMotion() {
        Worker resting = worker("h", 13, Attachment.FREE_RUNNING);
        Fall fall = fall("f")
                .faller(worker("w"))
                .hanging(resting, Place.of(2, 5))
                .freeFall(1.5)
                .build();
        TransientResult r = QUICK.solve(line(9), fall);
        assertThat(r.arrest().before().loads().get(0).restsOn()).contains("p");
        assertThat(r.history().workers()).extracting(WorkerHistory::id).containsExactly("w");
        assertThat(r.arrest().peak().loads()).hasSize(2);
        assertThat(r.arrest().peak().loads().get(0))
                .isEqualTo(r.arrest().before().loads().get(0));
        assertThat(r.arrest().peak().loads().get(1).force())
                .isEqualTo(r.arrest().lineLoad());
    }
}
