package org.lifeline.file.reproduce;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.DoubleNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.databind.node.TextNode;
import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Consumer;
import org.junit.jupiter.api.Test;
import org.lifeline.design.assessment.Assessment;
import org.lifeline.examples.TestFiles;
import org.lifeline.file.DesignFile;
import org.lifeline.file.ResultFile;
import org.lifeline.file.result.AssessedRun;
import org.lifeline.file.result.CriteriaCheck;
import org.lifeline.file.result.IndependentCheck;
import org.lifeline.file.result.ResultProvenance;
import org.lifeline.file.result.ResultWriter;

/** The result file with an assessment: its schema, and that a change anywhere in it is found. */
class AssessedResultTest {
    private static final DesignFile FILE = TestFiles.design("independent/silo-roof-gripped-middle.design.json");
    private static final AssessedRun RUN =
            AssessedRun.of(FILE.design(), Assessment.withDefaults().withCriteria(FILE.criteria()));
    private static final byte[] BYTES = new ResultWriter("1", FILE.sha256())
            .write(
                    RUN,
                    CriteriaCheck.evaluate(RUN.run(), FILE.criteria()),
                    IndependentCheck.of(RUN.run().arrests()),
                    ResultProvenance.of(
                            "unknown",
                            Map.of("motion", "followed"),
                            FILE.hashes().content()));

    @Test
    void theFileFollowsItsSchema() {
        Schema schema = SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                .getSchema(TestFiles.text("result-2.schema.json"), InputFormat.JSON);
        assertThat(schema.validate(new String(BYTES, StandardCharsets.UTF_8), InputFormat.JSON))
                .isEmpty();
        assertThat(schema.validate("{\"format\": \"org.lifeline.result/2\"}", InputFormat.JSON))
                .isNotEmpty();
    }

    @Test
    void itHoldsWhatTheContractNames() {
        JsonNode root = TestFiles.tree(BYTES);
        assertThat(root.path("format").asText()).isEqualTo("org.lifeline.result/2");
        assertThat(root.path("provenance").path("jdk").asText()).isNotEmpty();
        JsonNode assessment = root.path("assessment");
        assertThat(assessment.path("motion").path("scope").asText()).isEqualTo("followed");
        assertThat(assessment.path("motion").path("arrests").asInt())
                .isEqualTo(assessment.path("arrestsInTime").size())
                .isPositive();
        for (JsonNode g : assessment.path("governing")) {
            double value = g.path("value").asDouble();
            boolean balance = g.path("method").asText().equals("energy balance");
            assertThat(value)
                    .isEqualTo(g.path(balance ? "energyBalance" : "transient").asDouble());
        }
    }

    @Test
    void aChangedDigitAnywhereInTheAssessmentIsFound() {
        JsonNode whole = TestFiles.tree(BYTES).path("assessment");
        Map<String, Consumer<JsonNode>> changes = new TreeMap<>();
        changes("", whole, changes);
        assertThat(changes).hasSizeGreaterThan(200);
        changes.forEach((path, change) -> {
            JsonNode copy = whole.deepCopy();
            change.accept(copy);
            assertThat(new Comparison(Reproduction.DEFAULT_TOLERANCE, false)
                            .run(copy, whole)
                            .differences())
                    .as(path)
                    .isNotEmpty();
        });
    }

    /** A change of every value below a node: of a number by its fourth digit, of a text by a letter. */
    private static void changes(String pointer, JsonNode node, Map<String, Consumer<JsonNode>> changes) {
        if (node.isObject()) {
            node.properties().forEach(e -> changes(pointer + "/" + e.getKey(), e.getValue(), changes));
        } else if (node.isArray()) {
            for (int i = 0; i < node.size(); i++) {
                changes(pointer + "/" + i, node.get(i), changes);
            }
        } else {
            JsonNode other = node.isNumber()
                    ? DoubleNode.valueOf(node.doubleValue() * 1.0001 + 1e-3)
                    : TextNode.valueOf(node.asText() + "x");
            changes.put(pointer, root -> put(root, pointer, other));
        }
    }

    private static void put(JsonNode root, String pointer, JsonNode value) {
        int cut = pointer.lastIndexOf('/');
        JsonNode parent = root.at(pointer.substring(0, cut));
        String key = pointer.substring(cut + 1);
        if (parent instanceof ObjectNode o) {
            o.set(key, value);
        } else if (parent instanceof ArrayNode a) {
            a.set(Integer.parseInt(key), value);
        }
    }

    @Test
    void anUntouchedFileIsReproducedAndAChangedOneIsNot() {
        assertThat(Reproduction.by("1").check(FILE, BYTES).verdict()).isEqualTo(Verdict.REPRODUCED);
        ObjectNode changed = (ObjectNode) TestFiles.tree(BYTES);
        ObjectNode first = (ObjectNode) changed.at("/assessment/governing/0");
        first.put("transient", first.path("transient").asDouble() * 1.001);
        assertThat(Reproduction.by("1")
                        .check(FILE, changed.toString().getBytes(StandardCharsets.UTF_8))
                        .verdict())
                .isEqualTo(Verdict.ALTERED);
    }

    /** What was asked for is stored beside what was done; a file in which the two differ was changed. */
    @Test
    void optionsThatContradictTheResultAreNamed() {
        ResultFile file = ResultFile.of(FILE, RUN.assessment());
        Reproduction here = Reproduction.withDefaults();
        assertThat(here.check(FILE, file.bytes()).verdict()).isEqualTo(Verdict.REPRODUCED);
        Map<String, String> changed =
                Map.of("options/motion", "left out", "options/basis", "energy-balance", "options/method", "transient");
        changed.forEach((key, value) -> {
            ObjectNode root = (ObjectNode) TestFiles.tree(file.bytes());
            String[] steps = key.split("/", -1);
            ((ObjectNode) root.at("/provenance/" + steps[0])).put(steps[1], value);
            Reproduction.Outcome o = here.check(FILE, root.toString().getBytes(StandardCharsets.UTF_8));
            assertThat(o.verdict()).as(key).isEqualTo(Verdict.ALTERED);
            assertThat(o.broken())
                    .singleElement()
                    .satisfies(c -> assertThat(c.where()).isEqualTo("provenance." + key.replace('/', '.')));
        });
    }

    @Test
    void theFormerFormatIsStillReproduced() {
        byte[] former = new ResultWriter("1", FILE.sha256())
                .write(RUN.run(), CriteriaCheck.evaluate(RUN.run(), FILE.criteria()));
        assertThat(TestFiles.tree(former).path("format").asText()).isEqualTo("org.lifeline.result/1");
        assertThat(Reproduction.by("1").check(FILE, former).verdict()).isEqualTo(Verdict.REPRODUCED);
    }
}
