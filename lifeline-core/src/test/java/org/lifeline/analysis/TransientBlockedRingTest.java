package org.lifeline.analysis;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.lifeline.testing.ArrestCase;
import org.lifeline.testing.RandomLines;

/**
 * A ring that runs up to another attachment, where no more material can pass: it once swung across the cable with the mass of
 * the ring alone, and the motion of seed 5186 was lost within 0.2 s.
 */
class TransientBlockedRingTest {
    @Test
    void aRingBesideAnotherAttachmentStaysStable() {
        ArrestCase c = RandomLines.of(5186);
        TransientResult r = TransientArrest.withDefaults()
                .withTemperature(c.temperature())
                .withSide(c.side())
                .withRefinements(0)
                .withEndAfterFirstCatch(0)
                .solve(c.line(), c.fall());
        assertThat(r.relativeDrift()).isLessThan(1e-3);
        // By energy balance, every one of those who fall together pulling at once.
        double balance = r.energyBalance().orElseThrow().arrestForce();
        assertThat(r.arrest().arrestForce()).isBetween(0.5 * balance, 2 * balance);
    }
}
