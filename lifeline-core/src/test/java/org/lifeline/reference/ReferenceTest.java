package org.lifeline.reference;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.api.DynamicTest.dynamicTest;

import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** Holds the library against published numbers; sources, marks and reasons stand in the data files. */
class ReferenceTest {
    @TestFactory
    Stream<DynamicTest> meetsPublishedNumbers() {
        return ReferenceCases.checks().stream()
                .map(c -> dynamicTest(
                        c.title() + ": " + c.quantity() + " " + c.expected() + " " + c.unit() + " (" + c.mark() + ")",
                        () -> assertThat(Math.abs(c.difference()))
                                .as(
                                        "%s: %s: published %s %s, computed %s",
                                        c.source(), c.quantity(), c.expected(), c.unit(), c.computed())
                                .isLessThanOrEqualTo(c.tolerance())));
    }

    /** Author or body, work, year and place: each is missed when it is not there. */
    @Test
    void aCaseWithoutANamedSourceIsRefused() {
        Map<String, String> whole = Map.of(
                "case", "x", "author", "A. Author", "work", "Cables", "year", "1999", "place", "p. 7", "title", "t");
        assertThat(ReferenceCases.source(whole)).isEqualTo("A. Author, Cables, 1999, p. 7");
        for (String column : List.of("author", "work", "year", "place")) {
            Map<String, String> lacking = new HashMap<>(whole);
            lacking.put(column, " ");
            assertThatThrownBy(() -> ReferenceCases.source(lacking))
                    .isInstanceOf(IllegalStateException.class)
                    .hasMessageContaining("names no " + column);
        }
        assertThat(ReferenceCases.checks())
                .extracting(ReferenceCheck::source)
                .allSatisfy(s -> assertThat(s.toLowerCase(Locale.ROOT))
                        .doesNotContain("published worked example", "public set", "public use", "open transmission"));
    }

    @Test
    void everyNumberNamesItsSourceAndAReason() {
        List<ReferenceCheck> checks = ReferenceCases.checks();
        assertThat(checks).hasSizeGreaterThan(80);
        assertThat(checks).allSatisfy(c -> {
            assertThat(c.source()).isNotBlank();
            assertThat(c.reason()).isNotBlank();
            assertThat(c.mark()).isIn("published", "computed", "recalled");
            assertThat(c.tolerance()).isLessThan(0.06);
        });
    }

    @Test
    void noCaseIsLeftOut() {
        Map<String, Long> byCase = Csv.rows("expected.csv").stream()
                .collect(Collectors.groupingBy(row -> row.get("case"), Collectors.counting()));
        List<String> cases =
                Csv.rows("cases.csv").stream().map(row -> row.get("case")).toList();
        assertThat(byCase.keySet()).containsExactlyInAnyOrderElementsOf(cases);
    }
}
