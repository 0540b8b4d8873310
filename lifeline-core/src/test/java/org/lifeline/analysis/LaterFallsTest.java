package org.lifeline.analysis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.Point;
import org.lifeline.model.Attachment;
import org.lifeline.model.Connection;
import org.lifeline.model.Fall;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Passage;
import org.lifeline.model.Place;
import org.lifeline.model.Worker;
import org.lifeline.model.cable.Cable;
import org.lifeline.testing.PlainParts;

/** Falls beside the first or after it: what they add, what they do not, and when they are refused. */
class LaterFallsTest {
    private static final double G = 9.80665;
    private static final TransientArrest QUICK =
            TransientArrest.withDefaults().withSegmentLength(0.4).withRefinements(0);

    private static Lifeline line() {
        return Lifeline.builder()
                .cable(Cable.builder().massPerLength(0.5).axialStiffness(3e6).build())
                .endAnchor("a", Point.of(0, 0, 10))
                .intermediateAnchor("p", Point.of(10, 0, 10), Passage.friction(0.1))
                .endAnchor("b", Point.of(20, 0, 10))
                .pretension(1500)
                .build();
    }

    private static Fall fall(String id, Place place, double freeFall) {
        Worker worker = Worker.builder(id)
                .mass(100)
                .walkingLevel(8.5)
                .attachment(Attachment.GRIPPED)
                .connection(PlainParts.sixKilonewtons())
                .build();
        return Fall.builder("fall of " + id)
                .at(place)
                .faller(worker)
                .freeFall(freeFall)
                .build();
    }

    /** Two who fall at once in different spans load two places with 6 kN each, and no place with 12 kN. */
    @Test
    void atTheSameTimeElsewhereIsNoLoadAtOnePlace() {
        Fall first = fall("one", Place.of(1, 4), 1.5);
        Fall second = fall("two", Place.of(2, 6), 1.5);
        TransientResult r = QUICK.withLaterFall(second, 0).solve(line(), first);
        TransientResult soon = QUICK.withLaterFall(second, 1e-3).solve(line(), first);
        assertThat(r.arrest().lineLoad()).isCloseTo(6000, within(1e-6));
        assertThat(r.arrest().lineLoad()).isCloseTo(soon.arrest().lineLoad(), within(1e-6));
        assertThat(r.firstCatch().worker("two").force().value()).isCloseTo(6000, within(1e-6));
        assertThat(r.arrest().maximumTension() / soon.arrest().maximumTension()).isBetween(0.97, 1.03);
    }

    /** Force and clearance stay those of the first fall, also where one who falls at once is caught harder and lower. */
    @Test
    void anotherFallAtTheSameTimeDoesNotTakeTheFirstOnesPlace() {
        Fall first = fall("one", Place.of(1, 4), 0.5);
        Fall second = fall("two", Place.of(2, 6), 1.8);
        TransientResult alone = QUICK.solve(line(), first);
        TransientResult r = QUICK.withLaterFall(second, 0).solve(line(), first);
        assertThat(r.arrest().fall().id()).isEqualTo("fall of one");
        assertThat(r.arrest().freeFall()).isEqualTo(0.5);
        assertThat(r.arrest().arrestForce())
                .isEqualTo(r.firstCatch().worker("one").force().value());
        assertThat(r.arrest().deployment())
                .isCloseTo(r.firstCatch().worker("one").extension(), within(1e-12));
        assertThat(r.arrest().deployment())
                .isLessThan(r.wholeRun().worker("two").extension());
        assertThat(r.arrest().totalFallDistance() / alone.arrest().totalFallDistance())
                .isBetween(0.8, 1.2);
    }

    /** One who falls later but is caught sooner is caught when the subsystem is taut, not when the first one's is. */
    @Test
    void oneWhoFallsLaterMayBeCaughtSooner() {
        Fall first = fall("one", Place.of(1, 4), 1.8);
        Fall second = fall("two", Place.of(2, 6), 0.2);
        TransientResult r = QUICK.withLaterFall(second, 0.1).solve(line(), first);
        double[] t = r.history().times();
        double[] force = r.history().worker("two").force();
        double[] z = r.history().worker("two").z();
        double caught = 0.1 + Math.sqrt(2 * 0.2 / G);
        assertThat(caught).isLessThan(Math.sqrt(2 * 1.8 / G));
        for (int i = 0; i < t.length && t[i] < caught - 1e-3; i++) {
            double gone = Math.max(0, t[i] - 0.1);
            assertThat(force[i]).isZero();
            assertThat(z[i]).as("at %s s", t[i]).isCloseTo(z[0] - 0.5 * G * gone * gone, within(1e-6));
        }
        assertThat(r.wholeRun().worker("two").force().time()).isGreaterThan(caught);
        assertThat(r.wholeRun().worker("two").force().value()).isLessThanOrEqualTo(6000 * (1 + 1e-9));
        assertThat(r.relativeDrift()).isLessThan(1e-3);
    }

    /** A later fall that is not caught before the run ends is refused, and said why. */
    @Test
    void aLaterFallBeyondTheEndIsRefused() {
        Fall first = fall("one", Place.of(1, 4), 1.5);
        Fall second = fall("two", Place.of(2, 6), 1.5);
        for (double time : new double[] {1.6, 3, 100}) {
            assertThatThrownBy(() ->
                            QUICK.withDuration(2).withLaterFall(second, time).solve(line(), first))
                    .as("at %s s", time)
                    .isInstanceOf(InvalidInputException.class)
                    .hasMessageContaining("laterFall[0].time")
                    .hasMessageContaining("before the run ends");
        }
        assertThat(QUICK.withDuration(2)
                        .withLaterFall(second, 1.4)
                        .solve(line(), first)
                        .wholeRun()
                        .worker("two")
                        .force()
                        .value())
                .isPositive();
    }

    /** Who ends after the first catch cannot follow a later fall. */
    @Test
    void anEndAfterTheFirstCatchExcludesLaterFalls() {
        Fall first = fall("one", Place.of(1, 4), 1.5);
        Fall second = fall("two", Place.of(2, 6), 1.5);
        assertThatThrownBy(() -> QUICK.withEndAfterFirstCatch(0.1)
                        .withLaterFall(second, 0.5)
                        .solve(line(), first))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("endAfterFirstCatch");
        assertThatThrownBy(() -> QUICK.withEndAfterFirstCatch(-0.1))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("endAfterFirstCatch");
    }

    /**
     * Two who fall together: arrest force is that of the one who is arrested hardest and clearance that of the one who
     * needs the lowest level, and the result says who; the first named is neither.
     */
    @Test
    void theResultSaysForWhomForceAndClearanceAre() {
        Worker light = Worker.builder("light")
                .mass(60)
                .walkingLevel(8.5)
                .attachment(Attachment.GRIPPED)
                .connection(absorber(3000))
                .build();
        Worker heavy = Worker.builder("heavy")
                .mass(130)
                .walkingLevel(8.5)
                .attachment(Attachment.GRIPPED)
                .connection(absorber(5000))
                .build();
        Fall pair = Fall.builder("pair")
                .at(Place.of(1, 5))
                .faller(light)
                .faller(heavy)
                .freeFall(1.5)
                .build();
        TransientResult r = QUICK.solve(line(), pair);
        assertThat(r.arrest().firstFaller().id()).isEqualTo("light");
        assertThat(r.arrest().hardestArrested().id()).isEqualTo("heavy");
        assertThat(r.arrest().arrestForce())
                .isEqualTo(r.firstCatch().worker("heavy").force().value())
                .isGreaterThan(r.firstCatch().worker("light").force().value());
        double low = r.firstCatch().worker("light").lowest().value();
        double lower = r.firstCatch().worker("heavy").lowest().value();
        String deepest = low < lower ? "light" : "heavy";
        assertThat(r.arrest().clearanceWorker().id()).isEqualTo(deepest);
        assertThat(r.arrest().lineLoad()).isCloseTo(8000, within(1.0));
    }

    private static Connection absorber(double force) {
        return Connection.lanyard(
                1.8,
                Connection.PersonalAbsorber.builder()
                        .clearanceForce(force)
                        .maximumForce(force)
                        .maximumExtension(1.75)
                        .initialStiffness(1e5)
                        .build());
    }
}
