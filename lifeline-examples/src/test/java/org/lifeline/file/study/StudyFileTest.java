package org.lifeline.file.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.lifeline.base.Interval;
import org.lifeline.base.InvalidInputException;
import org.lifeline.design.envelope.Quantity;
import org.lifeline.design.study.Distribution;
import org.lifeline.design.study.Evaluation;
import org.lifeline.design.study.MonteCarlo;
import org.lifeline.design.study.UncertainVariable;
import org.lifeline.design.study.partial.StudyPartial;
import org.lifeline.design.variable.DesignVariables;
import org.lifeline.file.DesignFile;
import org.lifeline.file.DesignReader;
import org.lifeline.model.absorber.DeploymentForce;

class StudyFileTest {
    private static final DesignFile FILE = file();

    /** Light workers are drawn out of bounds, so that some cases fail. */
    private static final List<UncertainVariable> VARIABLES = List.of(
            new UncertainVariable(DesignVariables.workerMass(Interval.of(80, 200)), Distribution.normal(100, 12)),
            new UncertainVariable(
                    DesignVariables.axialStiffness(Interval.of(1e5, 1e8)), Distribution.logNormal(3e6, 0.1)));

    private static final Evaluation LOADS =
            Evaluation.firstFall(DeploymentForce.MAXIMUM, List.of(Quantity.END_ANCHOR_LOAD, Quantity.CLEARANCE_MARGIN));

    private static DesignFile file() {
        try {
            return new DesignReader()
                    .read(
                            Files.readAllBytes(
                                    Path.of(
                                            "src/test/resources/org/lifeline/examples/independent/silo-roof-gripped-middle.design.json")));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static StudyPartial part(long first, long last) {
        return MonteCarlo.withSeed(3)
                .withCases(first, last)
                .ofStudy(FILE.sha256())
                .solve(FILE.design(), VARIABLES, LOADS);
    }

    @Test
    void whatIsReadIsWhatWasWritten() {
        StudyPartial part = part(1, 120);
        assertThat(part.failures().count()).isPositive();
        byte[] bytes = StudyFile.write(part);

        StudyPartial read = StudyFile.read(bytes);

        assertThat(read).isEqualTo(part);
        assertThat(StudyFile.write(read)).isEqualTo(bytes);
    }

    /** Stored parts, put together after they were read, are the part that one machine stores. */
    @Test
    void storedPartsAreOneStudy() {
        StudyPartial a = StudyFile.read(StudyFile.write(part(1, 40)));
        StudyPartial b = StudyFile.read(StudyFile.write(part(41, 90)));
        StudyPartial c = StudyFile.read(StudyFile.write(part(91, 120)));
        byte[] whole = StudyFile.write(part(1, 120));

        assertThat(StudyFile.write(c.merge(a).merge(b))).isEqualTo(whole);
        assertThat(StudyFile.write(b.merge(StudyFile.read(StudyFile.write(a.merge(c))))))
                .isEqualTo(whole);
    }

    private static void refused(String file, String path, String rule) {
        assertThatThrownBy(() -> StudyFile.read(file.getBytes(StandardCharsets.UTF_8)))
                .as(file)
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining(path)
                .hasMessageContaining(rule);
    }

    @Test
    void whatIsWrongIsNamed() {
        String good = new String(StudyFile.write(part(1, 12)), StandardCharsets.UTF_8);
        refused("", "file", "JSON");
        refused("[]", "file", "object");
        refused(good + "{}", "line 2, column 1", "is not JSON");
        refused(good.replace("\"seed\":3", "\"seed\":3,\"seed\":4"), "line 1, column ", "a key is given twice");
        refused(
                good.replace("org.lifeline.study/1", "org.lifeline.study/2"),
                "format",
                "must be \"org.lifeline.study/1\"");
        refused(good.replace("\"seed\":3", "\"seed\":3.5"), "seed", "whole number");
        refused(good.replace("\"cases\":[[1,12]]", "\"cases\":[[1,12],[12,13]]"), "cases", "must not be drawn twice");
        refused(good.replace("\"cases\":[[1,12]]", "\"cases\":[[1]]"), "cases[0]", "first and the last");
        refused(good.replace("\"cases\":[[1,12]]", "\"cases\":[[1,2]]"), "responses", "at most the cases");
        refused(good.replaceFirst("\"sums\":\\[\"", "\"sums\":[\"q"), "sums", "must be sums");
        refused(good.replaceFirst("\"positive\":\\{\"[0-9]+\"", "\"positive\":{\"99999999\""), "positive", "bin");
        refused(good.replaceFirst("\"zeros\":0", "\"zeros\":1"), "count", "must be that of the bins");
        refused(good.replaceFirst("\"count\"", "\"number\""), "failed.count", "whole number");
    }
}
