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
import org.lifeline.model.Place;
import org.lifeline.model.Worker;
import org.lifeline.model.cable.Cable;

/** Falls at one place that nearly coincide, against falls together, one after the other, and one alone. */
class DelayedFallTest {
    private static final double G = 9.80665;
    private static final TransientArrest QUICK = TransientArrest.withDefaults()
            .withSegmentLength(0.4)
            .withRefinements(0)
            .withDuration(5);
    private static final Place PLACE = Place.of(1, 4);

    private static Lifeline line() {
        return Lifeline.builder()
                .cable(Cable.builder().massPerLength(0.5).axialStiffness(3e6).build())
                .endAnchor("a", Point.of(0, 0, 10))
                .endAnchor("b", Point.of(10, 0, 10))
                .pretension(1500)
                .build();
    }

    private static Worker worker(String id) {
        return Worker.builder(id)
                .mass(100)
                .walkingLevel(8.5)
                .attachment(Attachment.GRIPPED)
                .connection(Connection.lanyard(
                        1.8,
                        Connection.PersonalAbsorber.builder()
                                .clearanceForce(4000)
                                .maximumForce(6000)
                                .maximumExtension(1.75)
                                .initialStiffness(1e5)
                                .build()))
                .build();
    }

    private static Fall fall(String... workers) {
        Fall.Builder b = Fall.builder("fall").at(PLACE).freeFall(1.5);
        for (String each : workers) {
            b.faller(worker(each));
        }
        return b.build();
    }

    /** Without delay it is the fall together that there was before, to the last digit. */
    @Test
    void withoutDelayTheyFallTogether() {
        TransientResult together = QUICK.solve(line(), fall("one", "two"));
        TransientResult delayed = QUICK.withDelay("two", 0).solve(line(), fall("one", "two"));
        assertThat(delayed.arrest().canonicalForm()).isEqualTo(together.arrest().canonicalForm());
        assertThat(delayed.arrest().maximumTension())
                .isEqualTo(together.arrest().maximumTension());
    }

    /**
     * Begun long after the first catch it is the same motion as a later fall, which is followed to the end of the run: what
     * counts there in the whole run counts here in the first catch of all.
     */
    @Test
    void longAfterTheFirstCatchItIsALaterFall() {
        double time = 2.5;
        TransientResult alone = QUICK.solve(line(), fall("one"));
        assertThat(alone.firstCatchOver()).isTrue();
        Fall second = Fall.builder("second")
                .at(PLACE)
                .freeFall(1.5)
                .faller(worker("two"))
                .build();
        TransientResult later = QUICK.withLaterFall(second, time).solve(line(), fall("one"));
        TransientResult delayed = QUICK.withDelay("two", time).solve(line(), fall("one", "two"));
        assertThat(delayed.firstCatchOver()).isTrue();
        // The run goes on after the catch of the second; its largest tension is that of this catch.
        double caught = time + Math.sqrt(2 * 1.5 / G);
        assertThat(later.wholeRun().tension().time()).isGreaterThan(caught);
        assertThat(delayed.arrest().maximumTension())
                .isCloseTo(
                        later.wholeRun().tension().value(),
                        within(1e-9 * later.wholeRun().tension().value()));
        assertThat(delayed.arrest().maximumTension())
                .isGreaterThan(alone.arrest().maximumTension());
        assertThat(delayed.firstCatch().worker("two").force().time())
                .isEqualTo(later.wholeRun().worker("two").force().time());
        for (String each : new String[] {"one", "two"}) {
            assertThat(delayed.firstCatch().worker(each).force().value())
                    .isEqualTo(later.wholeRun().worker(each).force().value(), within(1e-6));
        }
        assertThat(delayed.relativeDrift()).isLessThan(1e-3);
    }

    /** The further worker stands until his time has come, and then falls freely; the clearance is that of who needs the most. */
    @Test
    void theFurtherWorkerFallsFreelyFromHisOwnStart() {
        double time = 0.3;
        TransientResult r = QUICK.withDelay("two", time).solve(line(), fall("one", "two"));
        double[] t = r.history().times();
        double[] z = r.history().worker("two").z();
        double caught = time + Math.sqrt(2 * 1.4 / G);
        for (int i = 0; i < t.length && t[i] < caught; i++) {
            double gone = Math.max(0, t[i] - time);
            assertThat(z[i]).as("at %s s", t[i]).isCloseTo(z[0] - 0.5 * G * gone * gone, within(1e-6));
        }
        double low = Math.min(
                r.firstCatch().worker("one").lowest().value(),
                r.firstCatch().worker("two").lowest().value());
        double stretch = r.arrest().harnessStretch();
        assertThat(r.arrest().clearance().lowestPoint())
                .isCloseTo(low - stretch - worker("one").attachmentHeight(), within(1e-9));
        assertThat(r.arrest().lineLoad()).isBetween(6000.0, 12000.0 + 1e-6);
        // The lowest place of the attachment that is reported is not above where the first alone brings it.
        TransientResult alone = QUICK.solve(line(), fall("one"));
        assertThat(r.arrest().lineDescent())
                .isGreaterThanOrEqualTo(0.95 * alone.arrest().lineDescent());
    }

    /** The end after the first catch waits for all of them. */
    @Test
    void theCatchIsOverWhenAllAreCaught() {
        TransientResult r = QUICK.withEndAfterFirstCatch(0).withDelay("two", 1).solve(line(), fall("one", "two"));
        assertThat(r.firstCatchOver()).isTrue();
        assertThat(r.firstCatch().worker("two").force().value()).isPositive();
        TransientResult whole = QUICK.withDelay("two", 1).solve(line(), fall("one", "two"));
        assertThat(r.arrest().maximumTension()).isEqualTo(whole.arrest().maximumTension());
    }

    @Test
    void aDelayOfSomebodyElseAndANegativeOneAreRefused() {
        assertThatThrownBy(() -> QUICK.withDelay("three", 0.1).solve(line(), fall("one", "two")))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("delay.worker: three")
                .hasMessageContaining("must be the id of one of those who fall");
        assertThatThrownBy(() -> QUICK.withDelay("two", -0.1))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("delay");
        assertThatThrownBy(() -> QUICK.withDelay("two", 4.9).solve(line(), fall("one", "two")))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("duration");
    }
}
