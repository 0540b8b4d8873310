package org.lifeline.base.canonical;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

/** A number in another unit is another quantity: no difference of the two numbers is one. */
class DifferenceUnitsTest {
    private static Difference of(double before, String unit, double after, String other) {
        List<Difference> all = Difference.between(
                CanonicalForm.builder("x").number("value", before, unit).build(),
                CanonicalForm.builder("x").number("value", after, other).build());
        assertThat(all).hasSize(1);
        return all.get(0);
    }

    @Test
    void forceToLengthIsNoChangeOfANumber() {
        Difference d = of(1500, "N", 30, "m");
        assertThat(d.change()).isEmpty();
        assertThat(d.isBeyond(0.01)).isTrue();
        assertThat(d.toString()).endsWith("1500.0 N → 30.0 m");
        assertThat(of(5, "N", 5, "m").isBeyond(0.5)).isTrue();
    }

    @Test
    void inOneUnitItIs() {
        assertThat(of(1500, "N", 1530, "N").change()).hasValue(30);
        assertThat(of(1500, "N", 1530, "N").isBeyond(0.1)).isFalse();
    }
}
