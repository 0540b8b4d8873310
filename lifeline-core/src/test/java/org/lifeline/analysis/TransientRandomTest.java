package org.lifeline.analysis;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.NoEquilibriumException;
import org.lifeline.testing.ArrestCase;
import org.lifeline.testing.RandomLines;

/** Random lines over the whole model run through catch, slack and rebound without a failure. */
class TransientRandomTest {
    private static final int SEEDS = Boolean.getBoolean("lifeline.long") ? 400 : 24;
    private static final double MOST_LENGTH = 400;

    @Test
    void randomLinesRunThrough() {
        List<String> failures = new ArrayList<>();
        int run = 0;
        for (int seed = 5000; run < SEEDS; seed++) {
            ArrestCase c = RandomLines.of(seed);
            double length = 0;
            for (int i = 1; i <= c.line().spans(); i++) {
                length += c.line().run(i);
            }
            if (length > MOST_LENGTH || !stands(c)) {
                continue;
            }
            try {
                TransientResult r = TransientArrest.withDefaults()
                        .withTemperature(c.temperature())
                        .withSide(c.side())
                        .withRefinements(0)
                        .withDuration(2)
                        .solve(c.line(), c.fall());
                run++;
                if (!(r.relativeDrift() < 0.01) || !Double.isFinite(r.arrest().maximumTension())) {
                    failures.add("seed " + seed + ": drift " + r.relativeDrift());
                }
            } catch (InvalidInputException e) {
                // A cable without mass, or a free fall of more than two seconds.
                assertThat(e.getMessage()).as("seed %d", seed).matches(".*(massPerLength|duration).*");
            }
        }
        assertThat(failures).isEmpty();
    }

    private static boolean stands(ArrestCase c) {
        try {
            Statics.withDefaults().withTemperature(c.temperature()).solve(c.line(), List.of());
            EnergyBalance.withDefaults()
                    .withTemperature(c.temperature())
                    .withSide(c.side())
                    .solve(c.line(), c.fall());
            return true;
        } catch (InvalidInputException | NoEquilibriumException e) {
            return false;
        }
    }
}
