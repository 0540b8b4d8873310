package org.lifeline.file;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.withinPercentage;

import com.fasterxml.jackson.databind.JsonNode;
import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.Test;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.UnitSystem;
import org.lifeline.design.assessment.Assessment;
import org.lifeline.design.envelope.DesignAnalysis;
import org.lifeline.design.envelope.Envelope;
import org.lifeline.design.envelope.Quantity;
import org.lifeline.examples.TestFiles;
import org.lifeline.examples.print.FirstScreen;
import org.lifeline.file.reproduce.Reproduction;
import org.lifeline.file.reproduce.Verdict;
import org.lifeline.file.result.AssessedRun;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.absorber.AbsorberCondition;
import org.lifeline.model.absorber.DeploymentForce;
import org.lifeline.report.CalculationReport;
import org.lifeline.report.TextReport;

/** A design file that states forces of wet, cold and hot absorbers: read, written, refused, assessed, reported. */
class AbsorberConditionsFileTest {
    private static final String TEXT = read(Path.of("designs/absorber-conditions.design.json"));
    private static final DesignFile FILE = TestFiles.read(TEXT.getBytes(StandardCharsets.UTF_8));
    private static final AssessedRun RUN =
            AssessedRun.of(FILE.design(), Assessment.withDefaults().withCriteria(FILE.criteria()));
    private static final byte[] RESULT = ResultFile.of(FILE, RUN.assessment()).bytes();

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

    private static List<AbsorberCondition> conditions(LifelineDesign design) {
        return design.workers().get(0).connection().deployment().conditions();
    }

    private static void comesBack(LifelineDesign design, String asStated) {
        byte[] written = DesignWriter.write(design);
        assertThat(new DesignReader().read(written).design()).isEqualTo(design);
        String text = new String(written, StandardCharsets.UTF_8);
        assertThat(schema("design-1.schema.json").validate(text, InputFormat.JSON))
                .isEmpty();
        assertThat(schema("design-1.schema.json").validate(asStated, InputFormat.JSON))
                .isEmpty();
    }

    @Test
    void theDesignHasThemAndComesBack() {
        LifelineDesign design = FILE.design();
        assertThat(conditions(design))
                .extracting(AbsorberCondition::toString)
                .containsExactly(
                        "wet, 2600.0 to 5000.0 N (wet drops, test report 12)",
                        "cold, 3600.0 to 6300.0 N, up to -10.0 °C (drops at -35 °C, test report 12)",
                        "hot, 3100.0 to 4900.0 N, from 35.0 °C (drops at 50 °C, test report 12)");
        assertThat(design.temperatures()).containsExactly(-25.0, 15.0, 35.0, -10.0);
        comesBack(design, TEXT);
    }

    @Test
    void theBrakeOfADeviceMayHaveThemToo() {
        String text = TEXT.replaceAll(
                "\"tautLength\": \"1.5 m\",\\s*\"absorber\": \\{ \"clearanceForce\": \"3.4 kN\", \"maximumForce\": \"5.2 kN\",",
                "\"retractable\": { \"lockDistance\": \"0.6 m\", \"brakeForce\":"
                        + " { \"clearance\": \"3.4 kN\", \"maximum\": \"5.2 kN\" },");
        assertThat(text).contains("retractable");
        LifelineDesign design =
                TestFiles.read(text.getBytes(StandardCharsets.UTF_8)).design();
        assertThat(conditions(design)).isEqualTo(conditions(FILE.design()));
        comesBack(design, text);
    }

    @Test
    void whatIsWrongIsNamed() {
        String at = "workers[0].connection.absorber.conditions.";
        refused("\"2.6 kN\"", "\"5.1 kN\"", at + "wet.maximumForce", "must not be lower than clearanceForce");
        refused("\"2.6 kN\"", "\"NaN kN\"", at + "wet.clearanceForce", "");
        refused("\"2.6 kN\"", "\"-2.6 kN\"", at + "wet.clearanceForce", "above zero");
        refused("\"2.6 kN\"", "\"2.6 m\"", at + "wet.clearanceForce", "");
        refused("\"clearanceForce\": \"2.6 kN\", ", "", at + "wet.clearanceForce", "must be given");
        refused("\"wet\": {", "\"iced\": {", at + "iced", "wet, cold, hot");
        refused("\"wet\": {", "\"dry\": {", at + "dry", "wet, cold, hot");
        refused("\"wet\": {", "\"wet\": { \"temperature\": \"5 °C\",", at + "wet.temperature", "at any temperature");
        refused("\"-10 °C\"", "\"-10 m\"", at + "cold.temperature", "");
        refused("\"-10 °C\"", "\"-300 °C\"", at + "cold.temperature", "absolute zero");
        refused("\"wet drops, test report 12\"", "\" \"", at + "wet.source", "nobody's");
        refused(", \"source\": \"wet drops, test report 12\"", "", at + "wet.source", "must be given");
        refused("\"wet drops, test report 12\"", "12", at + "wet.source", "");
        refused("\"wet\": {", "\"wet\": { \"clearanceForc\": \"1 kN\",", at + "wet.clearanceForc", "did you mean");
    }

    private static void refused(String from, String to, String path, String rule) {
        assertThat(TEXT).contains(from);
        byte[] bytes = TEXT.replace(from, to).getBytes(StandardCharsets.UTF_8);
        assertThatThrownBy(() -> new DesignReader().read(bytes))
                .as(to)
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining(path)
                .hasMessageContaining(rule);
    }

    /** What governs by energy balance is that of the design whose pair was set by hand to what applies in the cold. */
    @Test
    void theResultFileSaysUnderWhichConditionAndFollowsItsSchema() {
        assertThat(schema("result-2.schema.json")
                        .validate(new String(RESULT, StandardCharsets.UTF_8), InputFormat.JSON))
                .isEmpty();
        JsonNode result = TestFiles.tree(RESULT);
        JsonNode load = result.path("assessment").path("governing").path(0);
        assertThat(load.path("quantity").asText()).isEqualTo("endAnchorLoad");
        assertThat(load.path("absorberConditions").toString())
                .isEqualTo("[{\"worker\":\"rigger\",\"condition\":\"cold\"}]");
        assertThat(StreamSupport.stream(result.path("arrests").spliterator(), false)
                        .map(a -> a.path("temperature").asDouble() + " "
                                + a.path("force").asText() + " "
                                + a.path("absorberConditions")
                                        .path(0)
                                        .path("condition")
                                        .asText("dry")))
                .containsExactly(
                        "-25.0 clearance wet",
                        "-25.0 maximum cold",
                        "15.0 clearance wet",
                        "15.0 maximum dry",
                        "35.0 clearance wet",
                        "35.0 maximum dry",
                        "-10.0 clearance wet",
                        "-10.0 maximum cold");
        LifelineDesign byHand = TestFiles.read(
                        TEXT.replaceAll("(?s),\\s*\"conditions\": \\{.*?\\}\\s*\\} \\} \\} \\}", " } } }")
                                .replace("\"3.4 kN\"", "\"2.6 kN\"")
                                .replace("\"5.2 kN\"", "\"6.3 kN\"")
                                .replace("[\"-25 °C\", \"15 °C\", \"35 °C\"]", "[\"-25 °C\"]")
                                .getBytes(StandardCharsets.UTF_8))
                .design();
        assertThat(conditions(byHand)).isEmpty();
        double wanted = Envelope.withDefaults()
                .solve(byHand)
                .extremes()
                .of(Quantity.END_ANCHOR_LOAD)
                .orElseThrow()
                .value();
        // The search looks at other cases besides, so that it may stop elsewhere within the millimetre to which places
        // are found.
        assertThat(load.path("energyBalance").asDouble()).isCloseTo(wanted, withinPercentage(1e-4));
    }

    @Test
    void theResultIsReproduced() {
        assertThat(Reproduction.withDefaults().check(FILE, RESULT).verdict()).isEqualTo(Verdict.REPRODUCED);
    }

    @Test
    void reportAndScreenSayThem() {
        String report =
                TextReport.write(CalculationReport.of(FILE.design(), RUN.run().arrests())
                        .withAssessment(RUN.assessment())
                        .build());
        assertThat(report.replaceAll("\\s+", " "))
                .contains("deployment forces as stated by condition")
                .contains("at or below −10 °C")
                .contains("at or above 35 °C")
                .contains("at every temperature")
                .contains("wet drops,")
                .contains("−10 °C (14 °F), where a stated condition of an absorber ends or begins")
                .contains("−25 °C (−13 °F), maximum deployment force (cold)")
                .contains("clearance deployment force (wet)")
                .contains("design, absorber cold: drops at -35 °C, test report 12")
                .contains("Energy absorbers under other conditions than those that are stated for them")
                .doesNotContain("Wet, iced or cold energy absorbers");
        assertThat(FirstScreen.of(RUN.assessment(), UnitSystem.SI))
                .contains("−25 °C max cold")
                .contains("35 °C clr wet");
    }

    /** Run with {@code -Dlifeline.writeDocs=true} to write what the screen says into README.md anew. */
    @Test
    void theReadmeShowsTheScreen() throws IOException {
        Path readme = Path.of("README.md");
        String text = Files.readString(readme);
        int from = text.indexOf("```text\n", text.indexOf("A design with `conditions`")) + "```text\n".length();
        String screen = FirstScreen.of(RUN.assessment(), UnitSystem.SI);
        String shown = screen.substring(screen.indexOf("WHAT GOVERNS"), screen.indexOf("Load on "));
        if (Boolean.getBoolean("lifeline.writeDocs")) {
            text = text.substring(0, from) + shown + text.substring(text.indexOf("```", from));
            Files.writeString(readme, text);
        }
        assertThat(text.substring(from, text.indexOf("```", from))).isEqualTo(shown);
    }

    @Test
    void aDesignWithoutThemSaysNothingOfThem() throws IOException {
        LifelineDesign design = TestFiles.read(Files.readAllBytes(Path.of("designs/loading-roof-raised.design.json")))
                .design();
        assertThat(new String(DesignWriter.write(design), StandardCharsets.UTF_8))
                .doesNotContain("conditions");
        assertThat(design.workers().get(0).connection().curve(DeploymentForce.CLEARANCE, 10))
                .isEqualTo(design.workers().get(0).connection().curve(DeploymentForce.CLEARANCE));
        String report = TextReport.write(CalculationReport.of(
                        design, DesignAnalysis.withDefaults().solve(design).arrests())
                .build());
        assertThat(report).doesNotContain("by condition").contains("Wet, iced or cold energy absorbers");
    }
}
