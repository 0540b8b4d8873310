package org.lifeline.report.document;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.lifeline.base.UnitSystem;

/** Accounts of random numbers add up as printed, and no row is farther off than one in its last digit. */
class RoundedAccountRandomTest {
    private static final int CASES = 1000;
    private static final QuantityKind[] KINDS = {QuantityKind.LENGTH, QuantityKind.ENERGY, QuantityKind.FORCE};

    private static void nearEnough(String what, List<Double> exact, RoundedAccount account, Kind kind) {
        int changed = 0;
        for (int i = 0; i < exact.size(); i++) {
            BigDecimal row = account.rows().get(i);
            BigDecimal value = kind.kind.exact(exact.get(i), kind.system);
            BigDecimal unit = BigDecimal.ONE.movePointLeft(row.scale());
            assertThat(row.subtract(value).abs()).as(what + ", row " + i).isLessThan(unit);
            changed += row.compareTo(value.setScale(row.scale(), RoundingMode.HALF_UP)) == 0 ? 0 : 1;
        }
        assertThat(account.isExact()).as(what).isEqualTo(changed == 0);
    }

    private record Kind(QuantityKind kind, UnitSystem system) {
        static Kind of(SplittableRandom r) {
            return new Kind(KINDS[r.nextInt(KINDS.length)], UnitSystem.values()[r.nextInt(2)]);
        }
    }

    @Test
    void runningAccountsAddUp() {
        int unequal = 0;
        for (long seed = 1; seed <= CASES; seed++) {
            SplittableRandom r = new SplittableRandom(seed);
            Kind kind = Kind.of(r);
            double size = kind.kind == QuantityKind.LENGTH ? 1 : 1000;
            double start = size * r.nextDouble(5, 20);
            List<Double> steps = new ArrayList<>();
            for (int i = r.nextInt(1, 9); i > 0; i--) {
                steps.add(size * r.nextDouble(-0.5, 2));
            }
            RoundedAccount account = RoundedAccount.down(start, steps, kind.kind, kind.system);
            assertThat(account.totals()).hasSize(steps.size() + 1);
            for (int i = 0; i < steps.size(); i++) {
                assertThat(account.totals().get(i).subtract(account.rows().get(i)))
                        .as("seed %d", seed)
                        .isEqualByComparingTo(account.totals().get(i + 1));
            }
            BigDecimal end = kind.kind.exact(start, kind.system);
            for (double step : steps) {
                end = end.subtract(kind.kind.exact(step, kind.system));
            }
            BigDecimal last = account.totals().get(steps.size());
            assertThat(last).as("seed %d", seed).isEqualByComparingTo(end.setScale(last.scale(), RoundingMode.HALF_UP));
            nearEnough("seed " + seed, steps, account, kind);
            unequal += account.isExact() ? 0 : 1;
        }
        assertThat(unequal).as("accounts in which a row was turned").isBetween(CASES / 20, CASES - CASES / 20);
    }

    @Test
    void sumsAddUp() {
        for (long seed = 1; seed <= CASES; seed++) {
            SplittableRandom r = new SplittableRandom(seed);
            Kind kind = Kind.of(r);
            List<Double> parts = new ArrayList<>();
            for (int i = r.nextInt(1, 9); i > 0; i--) {
                parts.add(r.nextDouble(-200, 2000));
            }
            RoundedAccount account = RoundedAccount.sum(parts, kind.kind, kind.system);
            assertThat(account.totals()).hasSize(1);
            assertThat(account.rows().stream().reduce(BigDecimal.ZERO, BigDecimal::add))
                    .as("seed %d", seed)
                    .isEqualByComparingTo(account.totals().get(0));
            nearEnough("seed " + seed, parts, account, kind);
        }
    }

    @Test
    void theSumOfNothingIsZero() {
        RoundedAccount account = RoundedAccount.sum(List.of(), QuantityKind.FORCE, UnitSystem.SI);
        assertThat(account.rows()).isEmpty();
        assertThat(account.totals().get(0)).isEqualByComparingTo("0");
        assertThat(account.isExact()).isTrue();
    }

    /** Three thirds of 0.001 m: each rounds to nothing, the sum does not; one row carries it. */
    @Test
    void oneRowCarriesWhatTheRoundedRowsLose() {
        double third = 0.001 / 3;
        RoundedAccount account = RoundedAccount.sum(List.of(third, third, third), QuantityKind.LENGTH, UnitSystem.SI);
        assertThat(account.totals().get(0)).isEqualByComparingTo("0.001");
        assertThat(account.rows().stream().filter(r -> r.signum() > 0)).hasSize(1);
        assertThat(account.isExact()).isFalse();
    }
}
