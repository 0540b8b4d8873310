package org.lifeline.file.embedding;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.lifeline.base.InvalidInputException;
import org.lifeline.design.assessment.Assessment;
import org.lifeline.design.assessment.AssessmentResult;
import org.lifeline.design.assessment.Basis;
import org.lifeline.file.DesignFile;
import org.lifeline.file.DesignReader;
import org.lifeline.file.DesignWriter;
import org.lifeline.file.LibraryVersion;
import org.lifeline.file.ResultFile;
import org.lifeline.file.reproduce.Reproduction;
import org.lifeline.file.reproduce.Verdict;

/** Reads a design, assesses it, stores the result and reproduces it, as a program does that has only the library. */
class FilesFromJavaTest {
    private static final Path DESIGN =
            Path.of("src/test/resources/org/lifeline/examples/designs/every-alternative.json");

    private static AssessmentResult assess(DesignFile file) {
        return Assessment.withDefaults()
                .withCriteria(file.criteria())
                .withBasis(file.basis())
                .withoutMotion()
                .solve(file.design());
    }

    @Test
    void aResultIsStoredAndReproduced(@TempDir Path folder) throws IOException {
        DesignFile file = new DesignReader().read(Files.readAllBytes(DESIGN));
        ResultFile result = ResultFile.of(file, assess(file));
        assertThat(result.failedChecks()).isEmpty();
        Path stored = folder.resolve("stored.result.json");
        Files.write(stored, result.bytes());

        Reproduction.Outcome outcome = Reproduction.withDefaults().check(file, Files.readAllBytes(stored));

        assertThat(outcome.verdict()).as("%s", outcome).isEqualTo(Verdict.REPRODUCED);
        assertThat(outcome.compared()).isGreaterThan(100);
        assertThat(outcome.differences()).isEmpty();
    }

    /** A number that somebody has altered is found, by the recomputation and named by its path. */
    @Test
    void anAlteredNumberIsFound() throws IOException {
        DesignFile file = new DesignReader().read(Files.readAllBytes(DESIGN));
        String text = new String(ResultFile.of(file, assess(file)).bytes(), StandardCharsets.UTF_8);
        String altered = text.replaceFirst("\"freeFall\" : [0-9.]+", "\"freeFall\" : 0.123");
        assertThat(altered).isNotEqualTo(text);

        Reproduction.Outcome outcome =
                Reproduction.withDefaults().check(file, altered.getBytes(StandardCharsets.UTF_8));

        assertThat(outcome.verdict()).isEqualTo(Verdict.ALTERED);
        assertThat(outcome.differences()).anyMatch(d -> d.path().endsWith("freeFall"));
    }

    @Test
    void aDesignThatIsWrittenIsReadAgainWithTheSameAnswer() throws IOException {
        DesignFile file = new DesignReader().read(Files.readAllBytes(DESIGN));

        DesignFile again = new DesignReader().read(DesignWriter.write(file.design(), file.criteria(), file.project()));

        assertThat(assess(again).governing().toString())
                .isEqualTo(assess(file).governing().toString());
    }

    @Test
    void everythingThatIsWrongIsReportedTogetherWithItsPath() {
        byte[] bad = "{\"format\": \"org.lifeline.design/1\", \"titel\": \"\"}".getBytes(StandardCharsets.UTF_8);

        assertThatThrownBy(() -> new DesignReader().read(bad))
                .isInstanceOfSatisfying(
                        InvalidInputException.class,
                        e -> assertThat(e.violations())
                                .hasSizeGreaterThan(2)
                                .anyMatch(v -> v.path().contains("titel")));
    }

    /** A file must not say that its criteria were judged on another basis than they were. */
    @Test
    void anAssessmentOnAnotherBasisIsRefused() throws IOException {
        DesignFile file = new DesignReader().read(Files.readAllBytes(DESIGN));
        Basis other = file.basis() == Basis.ENERGY_BALANCE ? Basis.LARGER_OF_BOTH : Basis.ENERGY_BALANCE;
        AssessmentResult assessment =
                Assessment.withDefaults().withBasis(other).withoutMotion().solve(file.design());

        assertThatThrownBy(() -> ResultFile.of(file, assessment))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("basis")
                .hasMessageContaining(other.key());
    }

    @Test
    void theVersionIsKnown() {
        assertThat(LibraryVersion.text()).isNotBlank();
    }
}
