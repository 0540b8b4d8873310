package org.lifeline.file;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.databind.JsonNode;
import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.UnitSystem;
import org.lifeline.design.assessment.Assessment;
import org.lifeline.examples.TestFiles;
import org.lifeline.examples.print.FirstScreen;
import org.lifeline.file.result.AssessedRun;
import org.lifeline.file.result.CriteriaCheck;
import org.lifeline.file.result.IndependentCheck;
import org.lifeline.file.result.ResultProvenance;
import org.lifeline.file.result.ResultWriter;
import org.lifeline.model.LifelineDesign;
import org.lifeline.report.CalculationReport;
import org.lifeline.report.TextReport;

/** A design file that states a second fall and a rescuer: read, written, refused, assessed, reported. */
class SecondFallFileTest {
    private static final String TEXT = read(Path.of("designs/second-fall-and-rescue.design.json"));
    private static final DesignFile FILE = TestFiles.read(TEXT.getBytes(StandardCharsets.UTF_8));
    private static final AssessedRun RUN =
            AssessedRun.of(FILE.design(), Assessment.withDefaults().withCriteria(FILE.criteria()));

    private static String read(Path path) {
        try {
            return Files.readString(path);
        } catch (IOException e) {
            throw new AssertionError(path.toString(), e);
        }
    }

    private static Schema schema(String name) {
        return SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                .getSchema(TestFiles.text(name), InputFormat.JSON);
    }

    @Test
    void theDesignHasThemAndComesBack() {
        LifelineDesign design = FILE.design();
        assertThat(design.secondFall().orElseThrow().worker()).isEqualTo("B");
        assertThat(design.secondFall().orElseThrow().delays()).containsExactly(0.0, 0.2, 0.4, 0.7, 1.0);
        assertThat(design.rescuerMass()).hasValue(100);
        byte[] written = DesignWriter.write(design);
        assertThat(new DesignReader().read(written).design()).isEqualTo(design);
        String text = new String(written, StandardCharsets.UTF_8);
        assertThat(schema("design-1.schema.json").validate(text, InputFormat.JSON))
                .isEmpty();
        assertThat(schema("design-1.schema.json").validate(TEXT, InputFormat.JSON))
                .isEmpty();
    }

    @Test
    void withoutDelaysTheUsualOnesAreTaken() {
        String text = TEXT.replaceAll(", \"delays\": \\[[^]]*]", "");
        assertThat(TestFiles.read(text.getBytes(StandardCharsets.UTF_8))
                        .design()
                        .secondFall()
                        .orElseThrow()
                        .delays())
                .hasSize(8);
    }

    @Test
    void whatIsWrongIsNamed() {
        refused("\"worker\": \"B\", \"delays\"", "\"worker\": \"Z\", \"delays\"", "secondFall.worker");
        refused("\"worker\": \"B\", \"delays\"", "\"worker\": \"A\", \"delays\"", "secondFall.worker");
        refused("\"worker\": \"B\", \"delays\"", "\"delays\"", "secondFall.worker");
        refused("\"0.7 s\"", "\"1.2 s\"", "secondFall.delays[3]");
        refused("\"0.7 s\"", "\"0.4 s\"", "secondFall.delays[3]");
        refused("\"0.7 s\"", "\"0.7 m\"", "secondFall.delays[3]");
        refused("\"0.7 s\"", "\"-0.7 s\"", "secondFall.delays[3]");
        refused("\"rescuerMass\": \"100 kg\"", "\"rescuerMass\": \"2 kg\"", "rescue.rescuerMass");
        refused("\"rescuerMass\": \"100 kg\"", "", "rescue.rescuerMass");
        refused("\"rescuerMass\": \"100 kg\"", "\"rescuerMas\": \"100 kg\"", "rescue.rescuerMas");
    }

    private static void refused(String from, String to, String path) {
        assertThat(TEXT).contains(from);
        byte[] bytes = TEXT.replace(from, to).getBytes(StandardCharsets.UTF_8);
        assertThatThrownBy(() -> new DesignReader().read(bytes))
                .as(to)
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining(path);
    }

    @Test
    void theResultFileHasThemAndFollowsItsSchema() {
        byte[] bytes = new ResultWriter("1", FILE.sha256())
                .write(
                        RUN,
                        CriteriaCheck.evaluate(RUN.run(), FILE.criteria()),
                        IndependentCheck.of(RUN.run().arrests()),
                        ResultProvenance.of(
                                "unknown",
                                Map.of("motion", "followed"),
                                FILE.hashes().content()));
        assertThat(schema("result-2.schema.json").validate(new String(bytes, StandardCharsets.UTF_8), InputFormat.JSON))
                .isEmpty();
        JsonNode assessment = TestFiles.tree(bytes).path("assessment");
        assertThat(assessment.path("secondFall").path("arrests").asInt()).isPositive();
        assertThat(assessment.path("secondFall").path("governing")).isNotEmpty();
        assertThat(assessment.path("rescue").path("rescuerMass").asDouble()).isEqualTo(100);
        assertThat(assessment.path("rescue").path("governing")).isNotEmpty();
        JsonNode load = assessment.path("governing").path(0);
        assertThat(load.path("quantity").asText()).isEqualTo("endAnchorLoad");
        assertThat(load.path("laterFall").path("worker").asText()).isEqualTo("B");
        assertThat(load.path("factored").asDouble())
                .isEqualTo(assessment
                        .path("secondFall")
                        .path("governing")
                        .path(0)
                        .path("factored")
                        .asDouble());
    }

    @Test
    void reportAndScreenSayThem() {
        String report =
                TextReport.write(CalculationReport.of(FILE.design(), RUN.run().arrests())
                        .withAssessment(RUN.assessment())
                        .build());
        assertThat(report)
                .contains("Second fall and rescue")
                .contains("Worst with a second fall")
                .contains("Worst of the line at rest with a rescuer")
                .contains("Falls that nearly coincide at different places of the line.")
                .contains("What moves in a rescue: raising, lowering, swing.")
                .doesNotContain("not half a second apart")
                .doesNotContain("Loads of rescue.");
        assertThat(FirstScreen.of(RUN.assessment(), UnitSystem.SI))
                .contains("With a second fall, B")
                .contains("At rest with a rescuer of 100 kg: ")
                .contains("End anchor load (MAL)");
    }
}
