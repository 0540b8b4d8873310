package org.lifeline.internal.numeric;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.apache.commons.math3.special.Erf;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Quantiles against the closed forms of the distributions. */
class InverseCdfTest {
    @ParameterizedTest
    @ValueSource(doubles = {1e-6, 0.01, 0.3, 0.5, 0.8, 0.999})
    void quantilesAreTheClosedForms(double p) {
        assertThat(InverseCdf.weibull(2.5, 7).at(p))
                .as("Weibull: λ (−ln(1 − p))^(1/k)")
                .isCloseTo(7 * Math.pow(-Math.log1p(-p), 1 / 2.5), within(1e-12));
        assertThat(InverseCdf.gumbel(20, 3).at(p))
                .as("Gumbel: μ − β ln(−ln p)")
                .isCloseTo(20 - 3 * Math.log(-Math.log(p)), within(1e-12));
        assertThat(0.5 * (1 + Erf.erf((InverseCdf.normal(5, 2).at(p) - 5) / (2 * Math.sqrt(2)))))
                .as("normal: the share below it is p")
                .isCloseTo(p, within(1e-12));
    }

    @Test
    void theTriangleIsARootOnEitherSideOfItsMode() {
        InverseCdf t = InverseCdf.triangular(2, 5, 6);
        // Below the mode the share is (x − a)² / ((b − a)(c − a)), above it 1 − (b − x)² / ((b − a)(b − c)).
        assertThat(t.at(0.3)).isCloseTo(2 + Math.sqrt(0.3 * 4 * 3), within(1e-12));
        assertThat(t.at(0.75)).isCloseTo(5, within(1e-12));
        assertThat(t.at(0.9)).isCloseTo(6 - Math.sqrt(0.1 * 4 * 1), within(1e-12));
    }

    @Test
    void normalQuantilesAreSymmetricAndScale() {
        InverseCdf unit = InverseCdf.normal(0, 1);
        InverseCdf wide = InverseCdf.normal(-4, 10);
        // The quantile of 97.5 % as tables have it: 1.959964 (recalled).
        assertThat(unit.at(0.975)).isCloseTo(1.959964, within(1e-6));
        for (double p : new double[] {0.001, 0.2, 0.5}) {
            assertThat(unit.at(p)).isCloseTo(-unit.at(1 - p), within(1e-9));
            assertThat(wide.at(p)).isCloseTo(-4 + 10 * unit.at(p), within(1e-9));
        }
    }

    @Test
    void aWholeDistributionHasTheShareOfOne() {
        assertThat(InverseCdf.normal(1, 2).share()).isEqualTo(1);
        assertThat(InverseCdf.weibull(1, 2).share()).isEqualTo(1);
        assertThat(InverseCdf.gumbel(1, 2).share()).isEqualTo(1);
        assertThat(InverseCdf.triangular(1, 2, 3).share()).isEqualTo(1);
    }

    /** An exponential distribution (Weibull of shape 1) cut off at 1 and 3: the share between is e⁻¹ − e⁻³. */
    @Test
    void aCutOffDistributionStaysWithinItsEnds() {
        InverseCdf cut = InverseCdf.weibull(1, 1).truncated(1, 3);
        double share = Math.exp(-1) - Math.exp(-3);
        assertThat(cut.share()).isCloseTo(share, within(1e-15));
        for (double p : new double[] {1e-9, 0.25, 0.5, 0.75, 1 - 1e-9}) {
            assertThat(cut.at(p))
                    .isCloseTo(-Math.log(Math.exp(-1) - p * share), within(1e-12))
                    .isBetween(1.0, 3.0);
        }
        assertThat(cut.at(1e-12)).isCloseTo(1, within(1e-10));
        assertThat(cut.at(1 - 1e-12)).isCloseTo(3, within(1e-10));
    }

    @Test
    void aCutThatTakesNothingChangesNothing() {
        InverseCdf whole = InverseCdf.normal(0, 1);
        InverseCdf cut = whole.truncated(-40, 40);
        assertThat(cut.share()).isCloseTo(1, within(1e-15));
        assertThat(cut.at(0.3)).isCloseTo(whole.at(0.3), within(1e-12));
    }
}
