package org.lifeline.design.occupancy;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.Point;
import org.lifeline.design.envelope.Designs;
import org.lifeline.model.Attachment;
import org.lifeline.model.Fall;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Passage;
import org.lifeline.model.Worker;

/** Who falls and who hangs where, by counting. */
class ArrangementsTest {
    private static final Lifeline ONE = Designs.line(1, Passage.clamped());
    private static final Lifeline THREE = Designs.line(3, Passage.clamped());

    private static List<Worker> crew(double... masses) {
        List<Worker> list = new ArrayList<>();
        for (double each : masses) {
            list.add(Designs.worker("W" + list.size(), Attachment.GRIPPED).withMass(each));
        }
        return list;
    }

    private static List<Fall> inOneSpan(Lifeline line, int span, List<Worker> selection) {
        Arrangements a = new Arrangements(line, span);
        a.inOneSpan(selection);
        return a.falls();
    }

    private static List<Fall> over(int span, List<Worker> selection, int... capacity) {
        Arrangements a = new Arrangements(THREE, span);
        a.overTheLine(selection, new int[] {0, capacity[0], capacity[1], capacity[2]});
        return a.falls();
    }

    private static String kind(Fall f) {
        return f.id().substring(f.id().indexOf(": ") + 2);
    }

    /** Number of workers in each span of three when the fall happens, the fallers among them. */
    private static int[] filled(Fall f) {
        int[] n = new int[4];
        n[f.place().span()] += f.fallers().size();
        f.hanging().forEach(h -> n[h.place().span()]++);
        return n;
    }

    @Test
    void oneAloneFallsAlone() {
        assertThat(inOneSpan(ONE, 1, crew(100))).singleElement().satisfies(f -> {
            assertThat(f.id()).isEqualTo("1: one worker alone");
            assertThat(f.fallers()).hasSize(1);
            assertThat(f.hanging()).isEmpty();
            // Not at midspan, where the others would hang.
            assertThat(f.place().station()).isEqualTo(3.6, within(1e-12));
        });
    }

    /** n who are alike: all together, and n − 1 numbers of those who hang; n who differ: each of them last. */
    @ParameterizedTest
    @CsvSource({"2, 2, 3", "3, 3, 7", "4, 4, 13"})
    void thereAreAsManyArrangementsAsCounted(int n, int alike, int different) {
        double[] same = new double[n];
        double[] rising = new double[n];
        for (int i = 0; i < n; i++) {
            same[i] = 100;
            rising[i] = 70 + 10 * i;
        }
        assertThat(inOneSpan(ONE, 1, crew(same))).hasSize(alike);
        assertThat(inOneSpan(ONE, 1, crew(rising))).hasSize(different);
    }

    @Test
    void everybodyOfTheSelectionIsThereOnce() {
        List<Worker> four = crew(100, 90, 80, 70);
        List<Fall> falls = inOneSpan(ONE, 1, four);
        assertThat(falls).extracting(Fall::id).doesNotHaveDuplicates();
        for (Fall f : falls) {
            assertThat(Stream.concat(f.fallers().stream(), f.hanging().stream().map(Fall.Hanging::worker)))
                    .as(f.id())
                    .containsExactlyInAnyOrderElementsOf(four);
        }
        assertThat(falls)
                .filteredOn(f -> kind(f).equals(ArrangementKind.TOGETHER.words()))
                .singleElement()
                .satisfies(f -> assertThat(f.fallers()).isEqualTo(four));
        // One after the other: each of the four is the last once.
        assertThat(falls)
                .filteredOn(f -> kind(f).equals(ArrangementKind.IN_SEQUENCE.words()))
                .allMatch(f -> f.fallers().size() == 1 && f.hanging().size() == 3)
                .extracting(f -> f.fallers().get(0).mass())
                .containsExactly(100.0, 90.0, 80.0, 70.0);
        assertThat(falls)
                .filteredOn(f -> kind(f).equals(ArrangementKind.SOME_TOGETHER.words()))
                .hasSize(8)
                .allMatch(f -> f.fallers().size() > 1 && !f.hanging().isEmpty());
    }

    /** From the middle outward by 0.6 m, to both sides in turn. */
    @Test
    void thoseWhoHangAreSideBySideAroundTheMiddle() {
        Fall last = inOneSpan(ONE, 1, crew(100, 100, 100, 100, 100)).get(4);
        assertThat(last.hanging()).hasSize(4);
        double[] expected = {6, 5.4, 6.6, 4.8};
        for (int i = 0; i < 4; i++) {
            assertThat(last.hanging().get(i).place().station()).isEqualTo(expected[i], within(1e-12));
        }
    }

    /** A span of 2 m with three who hang: 2 m/(2 · 3 + 2) = 0.25 m apart, so that all are inside. */
    @Test
    void inAShortSpanTheyAreCloserTogether() {
        Lifeline shortSpan = Lifeline.builder()
                .cable(ONE.cable())
                .endAnchor("a", Point.of(0, 0, 12.4))
                .endAnchor("b", Point.of(2, 0, 12.4))
                .pretension(1500)
                .build();
        Fall last = inOneSpan(shortSpan, 1, crew(100, 100, 100, 100)).get(3);
        assertThat(last.hanging()).extracting(h -> h.place().station()).containsExactly(1.0, 0.75, 1.25);
    }

    /** Two who are attached in different ways do not fall at one place: only one after the other is left. */
    @Test
    void thoseWhoAreAttachedInDifferentWaysDoNotFallTogether() {
        Worker runs = Designs.worker("R", Attachment.FREE_RUNNING);
        List<Fall> falls = inOneSpan(ONE, 1, List.of(crew(100).get(0), runs));
        assertThat(falls).hasSize(2).allMatch(f -> f.fallers().size() == 1);
        assertThat(falls).extracting(ArrangementsTest::kind).containsOnly(ArrangementKind.IN_SEQUENCE.words());
    }

    /** What a fall refuses for another reason is not hidden: one worker cannot fall in a span that does not exist. */
    @Test
    void otherMistakesAreNotHidden() {
        assertThatThrownBy(() -> inOneSpan(ONE, 2, crew(100))).isInstanceOf(InvalidInputException.class);
    }

    // Over the line.

    @Test
    void noSpanHoldsMoreThanItTakes() {
        int[][] capacities = {{1, 1, 1}, {2, 1, 2}, {2, 2, 2}, {3, 0, 1}, {1, 3, 2}};
        for (int[] c : capacities) {
            for (int span = 1; span <= 3; span++) {
                for (int n = 1; n <= c[0] + c[1] + c[2] && c[span - 1] > 0; n++) {
                    double[] masses = new double[n];
                    Arrays.fill(masses, 100);
                    for (Fall f : over(span, crew(masses), c)) {
                        int[] filled = filled(f);
                        assertThat(filled[1] + filled[2] + filled[3]).as(f.id()).isEqualTo(n);
                        for (int s = 1; s <= 3; s++) {
                            assertThat(filled[s]).as("span %d, %s", s, f.id()).isLessThanOrEqualTo(c[s - 1]);
                        }
                        assertThat(f.place().span()).isEqualTo(span);
                    }
                }
            }
        }
    }

    /** Five of six over capacities of two: the first span full, then the second, then one in the third. */
    @Test
    void theNearestSpansAreFilledFirst() {
        List<Fall> falls = over(1, crew(100, 100, 100, 100, 100), 2, 2, 2);
        assertThat(falls)
                .filteredOn(f -> kind(f).equals(ArrangementKind.FULL_SPAN.words()))
                .hasSize(2)
                .allSatisfy(f -> assertThat(filled(f)).containsExactly(0, 2, 2, 1))
                .extracting(f -> f.fallers().size())
                .containsExactly(1, 2);
        assertThat(falls)
                .filteredOn(f -> kind(f).equals(ArrangementKind.NEIGHBOURS.words()))
                .singleElement()
                .satisfies(f -> assertThat(filled(f)).containsExactly(0, 1, 2, 2));
    }

    /** From the middle span the one after it comes before the one in front of it. */
    @Test
    void onBothSidesTheLaterSpanComesFirst() {
        List<Fall> falls = over(2, crew(100, 100), 1, 1, 1);
        assertThat(falls).hasSize(2);
        assertThat(falls).allSatisfy(f -> assertThat(filled(f)).containsExactly(0, 0, 1, 1));
        // Three: both neighbours.
        assertThat(over(2, crew(100, 100, 100), 1, 1, 1))
                .hasSize(2)
                .allSatisfy(f -> assertThat(filled(f)).containsExactly(0, 1, 1, 1));
    }

    /** Of six in capacities of two, one alone in a span leaves room for four: that arrangement is left out. */
    @Test
    void anArrangementForWhichThereIsNoRoomIsLeftOut() {
        List<Fall> falls = over(2, crew(100, 100, 100, 100, 100, 100), 2, 2, 2);
        assertThat(falls).extracting(ArrangementsTest::kind).containsOnly(ArrangementKind.FULL_SPAN.words());
        assertThat(falls).hasSize(2).allSatisfy(f -> assertThat(filled(f)).containsExactly(0, 2, 2, 2));
        assertThat(over(2, crew(100, 100, 100), 1, 1, 0)).as("no room at all").isEmpty();
    }

    @Test
    void oneWorkerOverTheLineFallsAloneInAFullSpan() {
        List<Fall> falls = over(3, crew(100), 1, 1, 1);
        assertThat(falls).singleElement().satisfies(f -> {
            assertThat(kind(f)).isEqualTo(ArrangementKind.FULL_SPAN.words());
            assertThat(f.place().span()).isEqualTo(3);
            assertThat(f.hanging()).isEmpty();
        });
    }

    @Test
    void kindsAreToldApartByTheirWords() {
        assertThat(ArrangementKind.values())
                .extracting(ArrangementKind::words)
                .doesNotHaveDuplicates()
                .hasSize(6);
        assertThat(ArrangementKind.NEIGHBOURS.words()).isEqualTo("the others hang in the neighbouring spans");
    }
}
