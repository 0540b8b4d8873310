package org.lifeline.design.criteria;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Checks of several parts follow the three-valued logic of Kleene (Introduction to Metamathematics, 1952, section 64): what
 * could not be evaluated leaves the whole open only where it could change it.
 */
class CapacityCheckTest {
    private static final int CASES = 1000;

    /** A tree of checks beside the status that it must have, found by ordering: not met, open, met. */
    private record Tree(CapacityCheck check, int truth) {}

    private static CapacityCheck leaf(String title, double value, LimitType type, double limit) {
        return CapacityCheck.of(title, CheckedValue.of("a", value), new Limit("q", type, limit, "N"), true);
    }

    private static Tree random(SplittableRandom r, int depth) {
        int kind = r.nextInt(depth == 0 ? 3 : 6);
        if (kind == 0) {
            return new Tree(CapacityCheck.missing("m", "not given"), 0);
        }
        if (kind < 3) {
            double ratio = r.nextDouble(0.2, 1.8);
            return new Tree(leaf("l", 1000 * ratio, LimitType.AT_MOST, 1000), ratio <= 1 ? 1 : -1);
        }
        List<CapacityCheck> parts = new ArrayList<>();
        boolean all = r.nextBoolean();
        int truth = all ? 1 : -1;
        int n = r.nextInt(1, 4);
        for (int i = 0; i < n; i++) {
            Tree part = random(r, depth - 1);
            parts.add(part.check);
            truth = all ? Math.min(truth, part.truth) : Math.max(truth, part.truth);
        }
        return new Tree(all ? CapacityCheck.all("all", parts) : CapacityCheck.any("any", parts), truth);
    }

    private static Status status(int truth) {
        return truth > 0 ? Status.MET : truth < 0 ? Status.NOT_MET : Status.NOT_EVALUATED;
    }

    @Test
    void partsAreJoinedByThreeValuedLogic() {
        int[] seen = new int[3];
        for (long seed = 1; seed <= CASES; seed++) {
            Tree tree = random(new SplittableRandom(seed), 4);
            assertThat(tree.check.status()).as("seed %d", seed).isEqualTo(status(tree.truth));
            if (tree.truth == 0) {
                assertThat(tree.check.reason()).as("seed %d", seed).contains("not given");
            }
            assertThat(tree.check.leaves()).as("seed %d", seed).containsAll(tree.check.deciding());
            seen[tree.truth + 1]++;
        }
        assertThat(Arrays.stream(seen).min().orElseThrow())
                .as("every outcome occurs")
                .isGreaterThan(CASES / 20);
    }

    @Test
    void theOrderOfPartsDoesNotMatter() {
        for (long seed = 1; seed <= CASES; seed++) {
            SplittableRandom r = new SplittableRandom(seed);
            List<CapacityCheck> parts = new ArrayList<>();
            for (int i = 0; i < 4; i++) {
                parts.add(random(r, 1).check);
            }
            List<CapacityCheck> turned = new ArrayList<>(parts);
            Collections.shuffle(turned, new Random(seed));
            CapacityCheck a = CapacityCheck.all("t", parts);
            CapacityCheck b = CapacityCheck.all("t", turned);
            assertThat(b.status()).as("seed %d", seed).isEqualTo(a.status());
            assertThat(b.ratio()).as("seed %d", seed).isEqualTo(Double.valueOf(a.ratio()));
            assertThat(CapacityCheck.any("t", turned).ratio())
                    .as("seed %d", seed)
                    .isEqualTo(Double.valueOf(CapacityCheck.any("t", parts).ratio()));
        }
    }

    @Test
    void ofAllTheLargestRatioGovernsOfAlternativesTheLeast() {
        List<CapacityCheck> parts = List.of(
                leaf("a", 800, LimitType.AT_MOST, 1000),
                CapacityCheck.missing("m", "not given"),
                leaf("b", 1500, LimitType.AT_MOST, 1000),
                leaf("c", 300, LimitType.AT_MOST, 1000));
        assertThat(CapacityCheck.all("t", parts).ratio()).isCloseTo(1.5, within(1e-15));
        assertThat(CapacityCheck.all("t", parts).demand()).isEqualTo(1500);
        assertThat(CapacityCheck.any("t", parts).ratio()).isCloseTo(0.3, within(1e-15));
        assertThat(CapacityCheck.any("t", parts).deciding())
                .extracting(CapacityCheck::demand)
                .containsExactly(300.0);
    }

    @Test
    void aSinglePartIsTheCheckItselfAndNoPartsAreNothing() {
        CapacityCheck one = leaf("a", 1, LimitType.AT_MOST, 2);
        assertThat(CapacityCheck.all("t", List.of(one))).isSameAs(one);
        assertThat(CapacityCheck.any("t", List.of(one))).isSameAs(one);
        assertThat(CapacityCheck.all("t", List.of()).status()).isEqualTo(Status.NOT_EVALUATED);
        assertThat(CapacityCheck.any("t", List.of()).status()).isEqualTo(Status.NOT_EVALUATED);
    }

    /** At the limit, and one part in a million beside it: the three sides that a limit may have. */
    @ParameterizedTest
    @CsvSource({
        "AT_MOST, 1000, MET",
        "AT_MOST, 1000.001, NOT_MET",
        "AT_MOST, 999.999, MET",
        "BELOW, 1000, NOT_MET",
        "BELOW, 999.999, MET",
        "AT_LEAST, 1000, MET",
        "AT_LEAST, 999.999, NOT_MET",
        "AT_LEAST, 1000.001, MET",
    })
    void theSideOfALimit(LimitType type, double value, Status status) {
        assertThat(leaf("t", value, type, 1000).status()).isEqualTo(status);
    }

    @ParameterizedTest
    @CsvSource({
        "2, 4, 0.5",
        "0, 0, 0",
        "1, 0, Infinity",
        "0, 3, 0",
        "1, -2, Infinity",
        "-4, -2, 2",
        "NaN, 1, NaN",
        "1, NaN, NaN",
    })
    void ratios(double demand, double capacity, double ratio) {
        assertThat(CapacityCheck.ratioOf(demand, capacity)).isEqualTo(Double.valueOf(ratio));
    }
}
