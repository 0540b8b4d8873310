package org.lifeline.base;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.lifeline.model.Installed;
import org.lifeline.model.Obstruction;
import org.lifeline.model.Stiffness;
import org.lifeline.model.Support;
import org.lifeline.model.absorber.LoadingCurve;

class PlausibleRangeTest {
    private static Violations check(PlausibleRange range, double value) {
        Violations v = new Violations();
        range.check(v, "path", value);
        return v;
    }

    @ParameterizedTest
    @EnumSource(PlausibleRange.class)
    void takesItsBoundsAndNothingBeyond(PlausibleRange range) {
        assertThat(range.lowest()).isLessThan(range.highest());
        assertThat(range.reason()).isNotBlank();
        boolean open = range == PlausibleRange.TEMPERATURE;
        assertThat(check(range, range.lowest()).isEmpty()).isEqualTo(!open);
        assertThat(check(range, range.highest()).isEmpty()).isEqualTo(!open);
        assertThat(check(range, 0.5 * (range.lowest() + range.highest())).isEmpty())
                .isTrue();
        for (double bad : new double[] {
            Math.nextDown(range.lowest()),
            Math.nextUp(range.highest()),
            Double.NaN,
            Double.POSITIVE_INFINITY,
            Double.NEGATIVE_INFINITY
        }) {
            assertThat(check(range, bad).list())
                    .as("%s", bad)
                    .singleElement()
                    .satisfies(v -> assertThat(v.path()).isEqualTo("path"))
                    .satisfies(v -> assertThat(v.value()).isEqualTo(Violations.show(bad, range.unit())))
                    .satisfies(v -> assertThat(v.rule()).isNotBlank());
        }
    }

    @Test
    void saysWhatIsWrong() {
        assertThat(check(PlausibleRange.WORKER_MASS, 1e12).list())
                .extracting(Violation::toString)
                .containsExactly("path: 1.0E12 kg: must lie from 10.0 kg to 10000.0 kg: workers with tools and the"
                        + " test masses of the trade have 30 to 300 kg");
        assertThat(check(PlausibleRange.WORKER_MASS, 0).list())
                .extracting(Violation::rule)
                .containsExactly("must be a finite number above zero");
        assertThat(check(PlausibleRange.LENGTH, -1).list())
                .extracting(Violation::rule)
                .containsExactly("must be a finite number that is not negative");
        assertThat(check(PlausibleRange.COORDINATE, Double.NaN).list())
                .extracting(Violation::rule)
                .containsExactly("must be a finite number");
    }

    @Test
    void rigidIsInfinite() {
        Violations v = new Violations();
        PlausibleRange.STIFFNESS.checkOrRigid(v, "k", Double.POSITIVE_INFINITY);
        assertThat(v.isEmpty()).isTrue();
        PlausibleRange.STIFFNESS.checkOrRigid(v, "k", Double.NEGATIVE_INFINITY);
        PlausibleRange.STIFFNESS.checkOrRigid(v, "k", 1e16);
        assertThat(v.list()).hasSize(2);
    }

    /** Magnitudes at which doubles no longer carry the answer: an anchor 1e9 m aside, a worker of 1e12 kg, 1e200 N. */
    @Test
    void magnitudesThatWereComputedOnce() {
        assertThat(Refusal.paths(() -> Support.end("a", Point.of(1e9, 0, 0)))).containsExactly("position[0]");
        assertThat(Refusal.paths(() -> Support.end("a", Point.of(0, -2e6, 3e6))))
                .containsExactly("position[1]", "position[2]");
        assertThat(Refusal.paths(() -> Installed.pretension(1e200))).containsExactly("pretension");
        assertThat(Refusal.paths(() -> Stiffness.alongX(1e-9))).containsExactly("x");
        assertThat(Refusal.paths(() -> new Obstruction(0, 1e7, 0))).containsExactly("to");
        assertThat(Refusal.paths(() -> LoadingCurve.spring(1e20))).containsExactly("stopStiffness");
    }
}
