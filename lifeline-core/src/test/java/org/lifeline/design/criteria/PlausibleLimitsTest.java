package org.lifeline.design.criteria;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.lifeline.base.PlausibleRange;
import org.lifeline.base.Refusal;
import org.lifeline.design.envelope.Quantity;

/** A limit or a factor that no criterion of the trade has is a slip of the pen, and refused with its rule. */
class PlausibleLimitsTest {
    private static final CheckedQuantity LOAD = CheckedQuantity.of(Quantity.END_ANCHOR_LOAD);

    static java.util.List<CheckedQuantity> quantities() {
        return CheckedQuantity.all();
    }

    @ParameterizedTest
    @MethodSource("quantities")
    void limitsBeyondTheRangeAreRefusedAndItsBoundsTaken(CheckedQuantity quantity) {
        PlausibleRange range = quantity.limits();
        String unit = quantity.unit().equals("-") ? "" : quantity.unit();
        assertThat(range.unit()).isEqualTo(unit);
        for (double bad : new double[] {1e300, range.highest() * 1.001}) {
            String shown = unit.isEmpty() ? bad + "" : bad + " " + unit;
            assertThat(Refusal.of(() -> Requirement.limit(quantity, bad)))
                    .containsExactly("capacity: " + shown + ": " + range.english());
        }
        if (range != PlausibleRange.CRITERION_MARGIN) {
            assertThat(Refusal.paths(() -> Requirement.limit(quantity, 1e-300))).containsExactly("capacity");
        }
        for (double good : new double[] {range.lowest(), range.highest()}) {
            assertThat(Requirement.limit(quantity, good)
                            .comparison()
                            .orElseThrow()
                            .limit())
                    .isEqualTo(good);
        }
    }

    @ParameterizedTest
    @ValueSource(doubles = {1e300, 101, 0.0099, 1e-300})
    void aFactorOnALoadIsNeitherHugeNorNothing(double factor) {
        assertThat(Refusal.of(() -> Requirement.factoredLoad(LOAD, new Requirement.Factor(factor), 30e3)))
                .containsExactly("factor: " + factor + ": " + PlausibleRange.CRITERION_FACTOR.english());
    }

    @ParameterizedTest
    @CsvSource({"0.01, 1", "100, 1e9", "2, 30e3"})
    void factorsAndLimitsOfTheTradeAreTaken(double factor, double limit) {
        assertThat(Requirement.factoredLoad(LOAD, new Requirement.Factor(factor), limit)
                        .comparison())
                .contains(new Requirement.Comparison(LOAD, limit, false, factor));
    }

    @Test
    void bothAreToldTogetherAndPerWorkerToo() {
        assertThat(Refusal.paths(() -> Requirement.factoredLoad(LOAD, new Requirement.Factor(1e300), 1e-300)))
                .containsExactly("factor", "capacity");
        assertThat(Refusal.of(() -> Requirement.limitPerWorker(CheckedQuantity.ANCHOR_CAPACITY, 1e10)))
                .containsExactly("capacity: 1.0E10 N: " + PlausibleRange.CRITERION_FORCE.english());
    }
}
