package org.lifeline.analysis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.lifeline.base.Units.kN;
import static org.lifeline.base.Units.meganewtons;

import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.lifeline.base.Point;
import org.lifeline.model.Attachment;
import org.lifeline.model.Connection;
import org.lifeline.model.Connection.PersonalAbsorber;
import org.lifeline.model.Fall;
import org.lifeline.model.InlineAbsorber;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Passage;
import org.lifeline.model.Place;
import org.lifeline.model.Support;
import org.lifeline.model.Worker;
import org.lifeline.model.absorber.LoadingCurve;
import org.lifeline.model.cable.Cable;
import org.lifeline.verify.Verifier;

/** Two who fall together and are not alike: one extension each, bounds on the safe side. */
class UnequalFallersTest {
    /** What the inertia of the line adds to the arrest force of the bound, as measured on the pairs below: 0.4 % at most. */
    private static final double INERTIA = 1.01;

    private static final Lifeline SPAN = line(14);

    private static Lifeline line(double... x) {
        Lifeline.Builder b = Lifeline.builder()
                .cable(Cable.builder()
                        .weightPerLength(4.2)
                        .axialStiffness(meganewtons(4.9))
                        .build())
                .endAnchor("a", Point.of(0, 0, 6))
                .pretension(kN(1.5));
        for (int i = 0; i + 1 < x.length; i++) {
            b.intermediateAnchor("p" + i, Point.of(x[i], 0, 6), Passage.friction(0.12));
        }
        return b.endAnchor("b", Point.of(x[x.length - 1], 0, 6)).build();
    }

    private static Worker worker(String id, double mass, double force) {
        return worker(id, mass, force, 1.2, 4.5);
    }

    private static Worker worker(String id, double mass, double force, double extension, double level) {
        return Worker.builder(id)
                .mass(mass)
                .walkingLevel(level)
                .attachment(Attachment.GRIPPED)
                .connection(Connection.lanyard(
                        1.8,
                        PersonalAbsorber.builder()
                                .clearanceForce(force)
                                .maximumForce(force)
                                .maximumExtension(extension)
                                .initialStiffness(1e5)
                                .stopStiffness(2e5)
                                .build()))
                .build();
    }

    private static Fall fall(Place place, Worker... workers) {
        Fall.Builder b = Fall.builder("f").at(place);
        List.of(workers).forEach(b::faller);
        return b.build();
    }

    private static ArrestResult solve(Lifeline line, Fall fall) {
        return EnergyBalance.withDefaults().solve(line, fall);
    }

    @Test
    void equalWorkersShareOneExtensionExactly() {
        ArrestResult r = solve(SPAN, fall(Place.of(1, 7), worker("a", 100, 3200), worker("b", 100, 3200)));
        ArrestResult heavy =
                solve(SPAN, fall(Place.of(1, 7), worker("a", 200, 3200).withConnection(doubled())));

        assertThat(r.isBound()).isFalse();
        assertThat(r.deployments()).hasSize(2).containsOnly(r.deployment());
        assertThat(r.deployment()).isCloseTo(heavy.deployment(), within(1e-9));
        assertThat(r.arrestForce()).isCloseTo(0.5 * heavy.arrestForce(), within(1e-6));
        assertThat(r.energy().residual()).isCloseTo(0, within(1e-6));
        assertThat(r.warnings()).isEmpty();
    }

    private static Connection doubled() {
        return worker("x", 100, 3200).connection().withForcesScaled(2);
    }

    /** The finding: with one common extension 80 and 130 kg came to 3.20 kN and did not bottom out. */
    @Test
    void aColleagueDoesNotSoftenTheFallOfTheHeavierOne() {
        ArrestResult pair = solve(SPAN, fall(Place.of(1, 7), worker("a", 80, 3200), worker("b", 130, 3200)));
        ArrestResult alone = solve(SPAN, fall(Place.of(1, 7), worker("b", 130, 3200)));

        assertThat(pair.isBound()).isTrue();
        assertThat(pair.bottomedOut()).isTrue();
        assertThat(pair.arrestForce()).isGreaterThan(alone.arrestForce()).isBetween(7900.0, 8100.0);
        assertThat(pair.clearance().requiredElevation())
                .isLessThan(alone.clearance().requiredElevation());
        assertThat(pair.deployments().get(0)).isLessThan(pair.deployments().get(1));
        assertThat(pair.energy().residual()).isNegative();
        assertThat(Verifier.withDefaults().arrest(pair).failures()).isEmpty();
    }

    /**
     * Each alone on the same line is never worse than the pair: 30 random pairs of mass, force, height and place, on one
     * span and on three with friction.
     */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void neverBetterThanEachAlone(long seed) {
        SplittableRandom chance = new SplittableRandom(seed);
        for (int k = 0; k < 10; k++) {
            Lifeline line = chance.nextBoolean() ? SPAN : line(9, 20, 28);
            Place place = Place.of(1, line.run(1) * chance.nextDouble(0.1, 0.9));
            Worker a = worker("a", chance.nextDouble(60, 140), chance.nextDouble(3000, 6000));
            Worker b = worker("b", chance.nextDouble(60, 140), chance.nextDouble(3000, 6000)).toBuilder("b")
                    .walkingLevel(chance.nextDouble(4, 4.6))
                    .build();
            String what = "seed " + seed + ", case " + k;
            ArrestResult pair = solve(line, fall(place, a, b));
            for (Worker each : List.of(a, b)) {
                ArrestResult alone = solve(line, fall(place, each));
                int i = each.equals(a) ? 0 : 1;
                assertThat(pair.deployments().get(i)).as(what).isGreaterThanOrEqualTo(alone.deployment() - 1e-9);
                assertThat(pair.arrestForce()).as(what).isGreaterThanOrEqualTo(alone.arrestForce() * (1 - 1e-9));
                assertThat(pair.clearance().requiredElevation())
                        .as(what)
                        .isLessThanOrEqualTo(alone.clearance().requiredElevation() + 1e-9);
                assertThat(pair.endAnchorLoad()).as(what).isGreaterThanOrEqualTo(alone.endAnchorLoad());
            }
            assertThat(pair.energy().residual()).as(what).isLessThanOrEqualTo(1e-6);
            assertThat(Verifier.withDefaults().arrest(pair).failures()).as(what).isEmpty();
        }
    }

    /**
     * An in-line absorber of 14 kN that two workers draw out together spares each of them; the one who is caught first has it not
     * drawn out by the other, and bottoms out with 8.89 kN. With the other's pull held all the time it came to 7.20 kN.
     */
    @Test
    void anInLineAbsorberThatBothDrawOutDoesNotSoftenTheFallOfOne() {
        LoadingCurve curve = LoadingCurve.through(
                List.of(new LoadingCurve.Corner(0, 14_000), new LoadingCurve.Corner(1.5, 14_000)), 5e6, 1.3e6);
        Lifeline line = Lifeline.builder()
                .cable(SPAN.cable())
                .support(Support.end("a", Point.of(0, 0, 6)).withInlineAbsorber(InlineAbsorber.of(curve)))
                .endAnchor("b", Point.of(9, 0, 6))
                .pretension(kN(1.8))
                .build();
        Worker a = worker("a", 120, 2100, 0.65, 5.4);
        Worker b = worker("b", 125, 7200, 1.4, 5.2);
        for (double station : new double[] {1, 2, 3, 4.5}) {
            Place place = Place.of(1, station);
            ArrestResult pair = solve(line, fall(place, a, b));
            ArrestResult first = solve(line, fall(place, a));
            ArrestResult second = solve(line, fall(place, b));
            assertThat(pair.arrestForce())
                    .isGreaterThanOrEqualTo(Math.max(first.arrestForce(), second.arrestForce()) * (1 - 1e-9));
            assertThat(pair.deployments().get(0)).isGreaterThanOrEqualTo(first.deployment() - 1e-9);
            assertThat(pair.deployments().get(1)).isGreaterThanOrEqualTo(second.deployment() - 1e-9);
            assertThat(pair.bottomedOut()).isTrue();
            assertThat(Verifier.withDefaults().arrest(pair).failures()).isEmpty();
        }
        assertThat(solve(line, fall(Place.of(1, 1), a, b)).arrestForce()).isBetween(8885.0, 8905.0);
    }

    /** The bound lies above the motion, but for what the inertia of the line adds to the force. */
    @ParameterizedTest
    @CsvSource({
        "80, 3200, 130, 3200, 4.5",
        "90, 3200, 110, 3200, 4.5",
        "80, 3200, 120, 3200, 4.5",
        "60, 3200, 140, 3200, 4.5",
        "100, 3200, 100, 6000, 4.5",
        "90, 4000, 110, 4000, 4.0",
    })
    void noMotionGoesBeyondTheBound(double mass, double force, double otherMass, double otherForce, double level) {
        if (otherMass != 130 && !Boolean.getBoolean("lifeline.long")) {
            return;
        }
        Worker a = worker("a", mass, force);
        Worker b = worker("b", otherMass, otherForce).toBuilder("b")
                .walkingLevel(level)
                .build();
        Fall pair = fall(Place.of(1, 7), a, b);
        ArrestResult bound = solve(SPAN, pair);
        ArrestResult time = TransientArrest.withDefaults()
                .withDuration(1.2)
                .withSampling(0.01)
                .withRefinements(0)
                .solve(SPAN, pair)
                .arrest();

        assertThat(time.arrestForce()).isLessThanOrEqualTo(INERTIA * bound.arrestForce());
        assertThat(time.deployment()).isLessThanOrEqualTo(bound.deployment() + 1e-3);
        assertThat(time.clearance().requiredElevation())
                .isGreaterThanOrEqualTo(bound.clearance().requiredElevation() - 1e-3);
    }

    @Test
    void threeMayFallTogether() {
        Fall three = fall(Place.of(1, 7), worker("a", 70, 3500), worker("b", 100, 3500), worker("c", 120, 3500));
        ArrestResult r = solve(SPAN, three);

        assertThat(r.deployments()).hasSize(3);
        assertThat(r.deployments().get(0)).isLessThan(r.deployments().get(1));
        assertThat(r.deployments().get(1)).isLessThan(r.deployments().get(2));
        assertThat(Verifier.withDefaults().arrest(r).failures()).isEmpty();
    }
}
