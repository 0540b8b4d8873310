package org.lifeline.internal.catenary;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.lifeline.model.cable.LoadElongation;

/**
 * A very taut span given by its sag was not found: the sag's error was measured in chords, so the line search of
 * Newton's method preferred the fit of the ends and crept for 60 steps without end.
 */
class TautSpanFromItsSagTest {
    @Test
    void sagOfAHundredNanometres() {
        double run = 4.032348954162255;
        double rise = 0.8898474508968367;
        double sag = 1.661210153325321e-7;
        double w = 0.1254560095361888;
        SpanFinder f = new SpanFinder(LoadElongation.linear(1.0261353344754106e8), w, run, rise);
        assertThat(f.find(SpanFinder.Known.SAG, sag)).isTrue();
        // A parabola to 1e-6: sag = w' L run/(8 H), w' the weight per stretched length, L the chord.
        double chord = Math.hypot(run, rise);
        double stretched = w * f.s / chord;
        assertThat(stretched * chord * run / (8 * f.h)).isCloseTo(sag, within(1e-6 * sag));
    }

    @Test
    void everySagFromAMillimetreDownToThreePercentStrain() {
        for (double sag = 1e-3; sag > 2e-8; sag *= 0.5) {
            SpanFinder f = new SpanFinder(LoadElongation.linear(1e8), 0.05, 3, 0);
            assertThat(f.find(SpanFinder.Known.SAG, sag)).as("sag " + sag).isTrue();
            double stretched = 0.05 * f.s / 3;
            // The ends are known to the rounding of 3 m, and so is the sag.
            assertThat(stretched * 9 / (8 * f.h)).as("sag " + sag).isCloseTo(sag, within(1e-6 * sag + 2e-15));
        }
    }
}
