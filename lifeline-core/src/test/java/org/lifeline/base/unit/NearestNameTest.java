package org.lifeline.base.unit;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class NearestNameTest {

    /** Damerau–Levenshtein distances, counted by hand. */
    @ParameterizedTest
    @CsvSource({
        "mass, mass, 0",
        "mas, mass, 1",
        "mass, moss, 1",
        "masss, mass, 1",
        "amss, mass, 1",
        "kitten, sitting, 3",
        "'', abc, 3"
    })
    void countsEdits(String a, String b, int edits) {
        assertThat(NearestName.distance(a, b)).isEqualTo(edits);
        assertThat(NearestName.distance(b, a)).isEqualTo(edits);
    }

    @Test
    void findsTheNearestAndNothingThatIsFar() {
        List<String> known = List.of("walkingLevel", "attachmentHeight", "attachment", "mass");
        assertThat(NearestName.of("walkinglevel", known)).contains("walkingLevel");
        assertThat(NearestName.of("attachmentHight", known)).contains("attachmentHeight");
        assertThat(NearestName.of("colour", known)).isEmpty();
        assertThat(NearestName.of("x".repeat(1_000_000), known)).isEmpty();
    }
}
