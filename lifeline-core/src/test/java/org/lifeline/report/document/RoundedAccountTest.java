package org.lifeline.report.document;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.lifeline.base.UnitSystem;

/** Rows add up as printed, and every number is close to what it stands for. */
class RoundedAccountTest {
    @Test
    void stepsRunDownAsPrinted() {
        SplittableRandom random = new SplittableRandom(30);
        int exact = 0;
        for (int i = 0; i < 3000; i++) {
            double start = random.nextDouble(2, 40);
            List<Double> steps = new ArrayList<>(List.of(1.8, 0.3, 1.5, 0.6));
            steps.add(0, random.nextDouble(0, 2));
            steps.add(2, random.nextDouble(0, 1.3));
            for (UnitSystem s : UnitSystem.values()) {
                RoundedAccount a = RoundedAccount.down(start, steps, QuantityKind.LENGTH, s);
                BigDecimal z = a.totals().get(0);
                double unrounded = start;
                for (int k = 0; k < steps.size(); k++) {
                    z = z.subtract(a.rows().get(k));
                    unrounded -= steps.get(k);
                    assertThat(a.totals().get(k + 1)).isEqualByComparingTo(z);
                    double off = Math.abs(z.doubleValue() - QuantityKind.LENGTH.in(unrounded, s));
                    double unit = Math.pow(10, -z.scale());
                    // The last total is the correctly rounded one, whatever the rows; no number has more digits than
                    // usual.
                    // The last but one is the lowest point, which a report also states by itself.
                    boolean last = k >= steps.size() - 2;
                    assertThat(off).isLessThan(last ? 0.5001 * unit : 3 * unit);
                    assertThat(z.scale()).isEqualTo(3);
                    assertThat(Math.abs(a.rows().get(k).doubleValue() - QuantityKind.LENGTH.in(steps.get(k), s)))
                            .isLessThan(a.isExact() ? 0.5001 * unit : 1.0001 * unit);
                }
                exact += a.isExact() && s == UnitSystem.SI ? 1 : 0;
            }
        }
        assertThat(exact)
                .as("accounts in metres in which every number is rounded correctly")
                .isGreaterThan(900);
    }

    @Test
    void sumsAddUpAsPrinted() {
        SplittableRandom random = new SplittableRandom(31);
        for (int i = 0; i < 3000; i++) {
            List<Double> parts = new ArrayList<>();
            for (int k = random.nextInt(2, 8); k > 0; k--) {
                parts.add(random.nextDouble(-500, 5000));
            }
            for (UnitSystem s : UnitSystem.values()) {
                RoundedAccount a = RoundedAccount.sum(parts, QuantityKind.ENERGY, s);
                BigDecimal sum = a.rows().stream().reduce(BigDecimal.ZERO, BigDecimal::add);
                assertThat(a.totals().get(0)).isEqualByComparingTo(sum);
                double whole = parts.stream().mapToDouble(p -> p).sum();
                assertThat(Math.abs(sum.doubleValue() - QuantityKind.ENERGY.in(whole, s)))
                        .isLessThan(0.5001);
            }
        }
    }

    @Test
    void shortNumbersStayShort() {
        RoundedAccount a = RoundedAccount.down(12.4, List.of(1.8, 0.3), QuantityKind.LENGTH, UnitSystem.SI);
        assertThat(a.isExact()).isTrue();
        assertThat(a.totals()).extracting(BigDecimal::toPlainString).containsExactly("12.400", "10.600", "10.300");
    }
}
