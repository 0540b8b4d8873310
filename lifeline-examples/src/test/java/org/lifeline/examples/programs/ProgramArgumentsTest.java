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

    /** A sag without its span, or a variable without its bounds, is refused: the example would take values of its own instead. */
    @Test
    void whatGoesTogetherIsRefusedInPart() {
        List<String> reading = List.of("design.json", "1", "40 mm", "5 mm", "15 °C");
        List<String> variable = List.of("design.json", "pretension", "1 kN", "2 kN");
        for (int i = 1; i < 5; i++) {
            assertThat(program("field-check").problem(reading.subList(0, i)))
                    .hasValueSatisfying(p -> assertThat(p).contains("DESIGN, SPAN, SAG, ACCURACY, TEMPERATURE"));
        }
        for (int i = 2; i < 4; i++) {
            assertThat(program("solve-for").problem(variable.subList(0, i)))
                    .hasValueSatisfying(p -> assertThat(p).contains("DESIGN, VARIABLE, FROM, TO"));
        }
        assertThat(program("field-check").problem(reading)).isEmpty();
        assertThat(program("solve-for").problem(variable)).isEmpty();
        assertThat(program("solve-for").problem(List.of("design.json"))).isEmpty();
    }

    @Test
    void everyArgumentSaysWhatItIs() {
        for (Program each : Programs.all()) {
            assertThat(each.takes()).as(each.name()).allMatch(t -> t.contains("  ") && t.length() <= 78);
        }
    }
}
