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
    private static final int SEEDS = Boolean.getBoolean("lifeline.long") ? 400 : 16;
    private static final double SECONDS = 3;

    /** Nodes times steps above which a case is left out: long lines, cables of a few grams. */
    private static final double MOST_WORK = 3e7;

    /** About how many nodes times steps a case takes. */
    private static double work(ArrestCase c) {
        double length = 0;
        for (int i = 1; i <= c.line().spans(); i++) {
            length += c.line().run(i);
        }
        double mass = c.line().cable().massPerLength(c.line().gravity());
        double speed = Math.sqrt(1 / (mass * c.line().cable().elongation().compliance(0)));
        double segment = Math.min(0.25, c.line().run(c.fall().place().span()) / 64);
        return length / segment * SECONDS * speed / segment;
    }

    @Test
    void randomLinesRunThrough() {
        List<String> failures = new ArrayList<>();
        int run = 0;
        for (int seed = 5000; run < SEEDS; seed++) {
            ArrestCase c = RandomLines.of(seed);
            if (work(c) > MOST_WORK || !stands(c)) {
                continue;
            }
            try {
                TransientResult r = TransientArrest.withDefaults()
                        .withTemperature(c.temperature())
                        .withSide(c.side())
                        .withRefinements(0)
                        .withDuration(SECONDS)
                        .solve(c.line(), c.fall());
                run++;
                if (!(r.relativeDrift() >= 0 && r.relativeDrift() < 0.005)
                        || !Double.isFinite(r.arrest().maximumTension())) {
                    failures.add("seed " + seed + ": drift " + r.relativeDrift());
                }
            } catch (InvalidInputException e) {
                // A cable without mass, or a free fall of more than three seconds.
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
