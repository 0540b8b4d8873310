package org.lifeline.examples.programs;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.lifeline.examples.programs.Programs.Program;

/** Arguments of the example programs are looked at before anything is computed or written. */
class ProgramArgumentsTest {
    private static Program program(String name) {
        return Programs.all().stream()
                .filter(p -> p.name().equals(name))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void aFileWithTheWrongEndingIsRefused() {
        assertThat(program("span-study").problem(List.of("--hlep")))
                .hasValueSatisfying(p -> assertThat(p).contains("argument 1", "--hlep", ".svg"));
        assertThat(program("map").problem(List.of("design.json", "picture.csv")))
                .isPresent();
        assertThat(program("map").problem(List.of("design.json", "picture.svg")))
                .isEmpty();
        assertThat(program("study").problem(List.of("design.json", "400", "cases.csv")))
                .isEmpty();
    }

    @Test
    void argumentsThatNobodyTakesAreRefused() {
        for (Program each : Programs.all()) {
            assertThat(each.problem(List.of())).isEmpty();
            List<String> more = java.util.Collections.nCopies(each.takes().size() + 1, "x.json");
            assertThat(each.problem(more)).as(each.name()).isPresent();
        }
    }

    @Test
    void everyArgumentSaysWhatItIs() {
        for (Program each : Programs.all()) {
            assertThat(each.takes()).as(each.name()).allMatch(t -> t.contains("  ") && t.length() <= 78);
        }
    }
}
