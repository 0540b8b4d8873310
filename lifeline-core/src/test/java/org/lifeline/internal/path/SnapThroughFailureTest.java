package org.lifeline.internal.path;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import org.lifeline.analysis.EnergyBalance;
import org.lifeline.base.NoEquilibriumException;
import org.lifeline.testing.ArrestCase;
import org.lifeline.testing.RandomLines;

/** What a path says that is lost: how far it came, and what was pulled out of place there. */
class SnapThroughFailureTest {
    @Test
    void theFailureTellsThePointThatWasReached() {
        ArrestCase c = RandomLines.of(81);
        assertThatThrownBy(() -> EnergyBalance.withDefaults()
                        .withTemperature(c.temperature())
                        .withSide(c.side())
                        .solve(c.line(), c.fall()))
                .isInstanceOf(NoEquilibriumException.class)
                .hasMessageContaining("too soft for this load")
                .isInstanceOfSatisfying(NoEquilibriumException.class, e -> {
                    // Once 0, with the anchor where it was long before: the point that was reached was not handed over.
                    assertThat(e.loadFactor()).isBetween(0.5, 0.7);
                    assertThat(e.getMessage()).contains("gives way under the arrest load", "0.83004");
                });
    }
}
