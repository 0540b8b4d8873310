package org.lifeline.design.study.partial;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.lifeline.base.InvalidInputException;

class CaseRangeTest {
    @Test
    void aRangeCountsBothOfItsEnds() {
        assertThat(new CaseRange(1, 1).size()).isEqualTo(1);
        assertThat(new CaseRange(7, 10).size()).isEqualTo(4);
        assertThat(new CaseRange(1, Long.MAX_VALUE).size()).isEqualTo(Long.MAX_VALUE);
        assertThat(new CaseRange(7, 10)).hasToString("7 … 10");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "0 | 4 | first: 0: must be at least 1",
                "-3 | 4 | first: -3: must be at least 1",
                "5 | 4 | last: 4: must be at least the first, 5",
                "0 | -1 | first: 0: must be at least 1; last: -1: must be at least the first, 0"
            })
    void aRangeWithoutACaseIsRefused(long first, long last, String message) {
        assertThatThrownBy(() -> new CaseRange(first, last))
                .isInstanceOf(InvalidInputException.class)
                .hasMessage(message);
    }

    /** Each case in one part, in order, the parts as equal as whole numbers can be, larger ones first. */
    @Test
    void partsCoverEveryCaseOnceAndDifferByOneAtMost() {
        for (long cases = 1; cases <= 40; cases++) {
            for (int parts = 1; parts <= cases; parts++) {
                List<CaseRange> list = CaseRange.parts(cases, parts);
                assertThat(list).hasSize(parts);
                long next = 1;
                for (CaseRange each : list) {
                    assertThat(each.first())
                            .as("%d cases in %d parts", cases, parts)
                            .isEqualTo(next);
                    next = each.last() + 1;
                }
                assertThat(next).isEqualTo(cases + 1);
                long largest = list.get(0).size();
                assertThat(largest).isEqualTo((cases + parts - 1) / parts);
                assertThat(list.get(parts - 1).size()).isEqualTo(cases / parts);
                assertThat(list).isSortedAccordingTo((a, b) -> Long.compare(b.size(), a.size()));
            }
        }
    }

    @Test
    void moreCasesThanAnIntegerHoldsAreCutAsWell() {
        List<CaseRange> list = CaseRange.parts(10_000_000_001L, 2);

        assertThat(list)
                .containsExactly(new CaseRange(1, 5_000_000_001L), new CaseRange(5_000_000_002L, 10_000_000_001L));
        assertThatThrownBy(() -> list.add(new CaseRange(1, 2))).isInstanceOf(UnsupportedOperationException.class);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "3 | 4 | parts: 4: must be a number from 1 to 3",
                "3 | 0 | parts: 0: must be a number from 1 to 3",
                "0 | 1 | cases: 0: must be at least 1; parts: 1: must be a number from 1 to 0"
            })
    void morePartsThanCasesAreRefused(long cases, int parts, String message) {
        assertThatThrownBy(() -> CaseRange.parts(cases, parts))
                .isInstanceOf(InvalidInputException.class)
                .hasMessage(message);
    }

    @Test
    void neighboursAreJoinedAndGapsStay() {
        List<CaseRange> ranges =
                List.of(new CaseRange(21, 30), new CaseRange(1, 10), new CaseRange(12, 15), new CaseRange(11, 11));

        assertThat(CaseRange.joined(ranges)).containsExactly(new CaseRange(1, 15), new CaseRange(21, 30));
        assertThat(CaseRange.joined(List.of())).isEmpty();
        // One case between two ranges is a gap.
        assertThat(CaseRange.joined(List.of(new CaseRange(1, 2), new CaseRange(4, 5))))
                .hasSize(2);
    }

    /** Whatever the order in which the parts of a study come back, they join to the whole. */
    @Test
    void thePartsJoinToTheWholeInAnyOrder() {
        List<CaseRange> parts = new ArrayList<>(CaseRange.parts(97, 9));
        for (long seed = 0; seed < 50; seed++) {
            Collections.shuffle(parts, new Random(seed));
            assertThat(CaseRange.joined(parts)).containsExactly(new CaseRange(1, 97));
        }
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "1 | 10 | 10 | 12 | cases: 10 … 12: must not be drawn twice: 1 … 10 are there already",
                "5 | 6 | 1 | 9 | cases: 5 … 6: must not be drawn twice: 1 … 9 are there already",
                "3 | 3 | 3 | 3 | cases: 3 … 3: must not be drawn twice: 3 … 3 are there already"
            })
    void aCaseInTwoRangesIsNamed(long a, long b, long c, long d, String message) {
        assertThatThrownBy(() -> CaseRange.joined(List.of(new CaseRange(a, b), new CaseRange(c, d))))
                .isInstanceOf(InvalidInputException.class)
                .hasMessage(message);
    }

    /** A short range inside an earlier, longer one that had been joined from two. */
    @Test
    void aCaseInsideJoinedRangesIsNamedToo() {
        assertThatThrownBy(() -> CaseRange.joined(
                        List.of(new CaseRange(1, 5), new CaseRange(6, 20), new CaseRange(7, 8), new CaseRange(30, 31))))
                .hasMessage("cases: 7 … 8: must not be drawn twice: 1 … 20 are there already");
    }
}
