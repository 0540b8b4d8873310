package org.lifeline.analysis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.lifeline.analysis.state.EnergyAccount;
import org.lifeline.model.Fall;
import org.lifeline.model.Place;
import org.lifeline.model.PlausibleLine;

/** Over plausible lines: the account closes, rows have the sign they must have, equilibrium before and at the peak. */
class EnergyAccountTest {
    private static final int CASES = Boolean.getBoolean("lifeline.long") ? 5000 : 300;

    @Test
    void closes() {
        int heated = 0;
        int yielded = 0;
        for (long seed = 1; seed <= CASES; seed++) {
            PlausibleLine p = new PlausibleLine(seed, seed % 2 == 0);
            SplittableRandom r = new SplittableRandom(seed);
            p.fallers = r.nextInt(1, 3);
            Fall fall = p.fall();
            if (r.nextInt(3) == 0) {
                int other = r.nextInt(1, p.points.size());
                double run = p.line().run(other);
                Fall.Builder b =
                        Fall.builder("with one who hangs").at(fall.place()).freeFall(p.freeFall);
                fall.fallers().forEach(b::faller);
                fall = b.hanging(p.worker("hangs"), Place.of(other, run * r.nextDouble(0.3, 0.7)))
                        .build();
            }
            ArrestResult a = EnergyBalance.withDefaults()
                    .withTemperature(r.nextDouble(-30, 40))
                    .solve(p.line(), fall);
            Arrests.closes(p.toString(), a);
            Arrests.balances(p + ": before", a.before());
            Arrests.balances(p + ": peak", a.peak());
            EnergyAccount e = a.energy();
            double g = p.line().gravity();
            assertThat(e.fall())
                    .as(p.toString())
                    .isCloseTo(
                            fall.fallingMass() * g * (a.freeFall() + a.lineDescent() + a.deployment()),
                            within(1e-9 * e.fall()));
            assertThat(e.friction()).as(p + ": heat").isGreaterThan(-1e-7 * e.fall());
            assertThat(e.inlineAbsorbers()).as(p + ": absorbers").isGreaterThan(-1e-9 * e.fall());
            assertThat(e.connection()).as(p + ": connection").isNotNegative();
            assertThat(e.lineWork())
                    .isCloseTo(
                            e.cable() + e.hanging() + e.friction() + e.inlineAbsorbers() + e.anchors(),
                            within(1e-12 * e.fall()));
            heated += e.friction() > 1e-3 * e.fall() ? 1 : 0;
            yielded += e.inlineAbsorbers() > 1e-3 * e.fall() ? 1 : 0;
        }
        assertThat(heated).isGreaterThan(CASES / 30);
        assertThat(yielded).isGreaterThan(CASES / 30);
    }
}
