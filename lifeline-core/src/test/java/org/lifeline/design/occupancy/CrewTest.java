package org.lifeline.design.occupancy;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.lifeline.base.InvalidInputException;
import org.lifeline.design.criteria.CriterionResult;
import org.lifeline.design.envelope.Designs;
import org.lifeline.model.Attachment;
import org.lifeline.model.Passage;
import org.lifeline.model.Worker;

/** Selections of a crew against all subsets, and the small records of what was tried. */
class CrewTest {
    private static List<Worker> crew(double... masses) {
        List<Worker> list = new ArrayList<>();
        for (double each : masses) {
            list.add(Designs.worker("W" + list.size(), Attachment.GRIPPED).withMass(each));
        }
        return list;
    }

    private static List<Double> masses(List<Worker> workers) {
        return workers.stream().map(Worker::mass).toList();
    }

    /** Second way: every subset of the crew by bits, as a sorted list of masses, equal ones once. */
    @Test
    void selectionsAreAllSubsetsThatDiffer() {
        List<Worker> all = crew(80, 100, 80, 120, 100);
        for (int size = 1; size <= 5; size++) {
            TreeSet<String> expected = new TreeSet<>();
            for (int bits = 0; bits < 32; bits++) {
                if (Integer.bitCount(bits) == size) {
                    List<Double> chosen = new ArrayList<>();
                    for (int i = 0; i < 5; i++) {
                        if ((bits >> i & 1) == 1) {
                            chosen.add(all.get(i).mass());
                        }
                    }
                    chosen.sort(null);
                    expected.add(chosen.toString());
                }
            }
            List<String> found = new Crew(all)
                    .selections(size).stream()
                            .map(s -> s.stream()
                                    .map(Worker::mass)
                                    .sorted()
                                    .collect(Collectors.toList())
                                    .toString())
                            .toList();
            assertThat(found)
                    .as("%d of five", size)
                    .doesNotHaveDuplicates()
                    .containsExactlyInAnyOrderElementsOf(expected);
        }
    }

    /** n of m who all differ: m!/(n! (m − n)!). */
    @ParameterizedTest
    @CsvSource({"1, 5", "2, 10", "3, 10", "4, 5", "5, 1", "6, 0"})
    void thereAreAsManySelectionsAsCombinations(int size, int number) {
        Crew c = new Crew(crew(60, 70, 80, 90, 100));
        assertThat(c.size()).isEqualTo(5);
        assertThat(c.selections(size)).hasSize(number).allMatch(s -> s.size() == size);
    }

    @Test
    void theHeaviestSelectionComesFirst() {
        Crew c = new Crew(crew(60, 140, 80, 100));
        assertThat(masses(c.selections(2).get(0))).containsExactly(140.0, 100.0);
        assertThat(masses(c.selections(3).get(0))).containsExactly(140.0, 100.0, 80.0);
        assertThat(c.selections(1)).extracting(s -> s.get(0).mass()).containsExactly(140.0, 100.0, 80.0, 60.0);
    }

    @Test
    void thoseWhoDifferByTheirNamesOnlyCountAsOne() {
        List<Worker> three = crew(100, 100, 100);
        assertThat(new Crew(three).selections(2)).hasSize(1);
        assertThat(Crew.different(three)).containsExactly(three.get(0));
        List<Worker> mixed = crew(100, 90, 100);
        assertThat(Crew.different(mixed)).containsExactly(mixed.get(0), mixed.get(1));
        // The same mass standing elsewhere is another worker.
        Worker aside = three.get(1).toBuilder("W1").offset(0.5).build();
        assertThat(Crew.different(List.of(three.get(0), aside))).hasSize(2);
    }

    // What was tried.

    private static TriedNumber met(int number, int span) {
        return new TriedNumber(number, span, 4, List.of());
    }

    private static OccupancyResult result(List<TriedNumber> inSpans, List<TriedNumber> inAll) {
        return new OccupancyResult(
                Designs.design(2, Passage.free(), Attachment.GRIPPED),
                inSpans,
                inAll,
                new OccupancyResult.Scope(true, 7));
    }

    @Test
    void theLargestNumberOfEachSpanIsItsOwn() {
        OccupancyResult r = result(List.of(met(1, 1), met(2, 1), met(1, 2)), List.of(met(1, 0), met(2, 0), met(3, 0)));
        assertThat(r.inSpan(1)).isEqualTo(2);
        assertThat(r.inSpan(2)).isEqualTo(1);
        assertThat(r.inSpan(3)).as("no such span was tried").isZero();
        assertThat(r.inAll()).isEqualTo(3);
        assertThat(r.tried()).hasSize(6).startsWith(met(1, 1)).endsWith(met(3, 0));
        assertThat(r.isConfirmed()).isTrue();
        assertThat(r.selectionsLeftOut()).isEqualTo(7);
    }

    @Test
    void whereNobodyMayBeTheNumberIsNought() {
        OccupancyResult r = result(List.of(), List.of());
        assertThat(r.inSpan(1)).isZero();
        assertThat(r.inAll()).isZero();
        assertThat(r.tried()).isEmpty();
    }

    @Test
    void aTriedNumberIsMetIfNothingIsBroken() {
        assertThat(met(2, 1).isMet()).isTrue();
        assertThatThrownBy(() -> new TriedNumber(1, 1, 1, Arrays.asList((CriterionResult) null)))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("notMet[0]");
    }
}
