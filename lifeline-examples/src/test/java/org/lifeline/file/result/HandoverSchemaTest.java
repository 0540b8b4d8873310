package org.lifeline.file.result;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.networknt.schema.Error;
import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.lifeline.design.assessment.Assessment;
import org.lifeline.examples.TestFiles;
import org.lifeline.file.DesignFile;

/** A result file with everything that a design can hand over follows its schema, and the schema is no open door. */
class HandoverSchemaTest {
    private static final Schema SCHEMA = SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
            .getSchema(TestFiles.text("result-2.schema.json"), InputFormat.JSON);

    private static final String HANDOVER = """
            {"structure": {"factors": [{"name": "ultimate", "factor": 1.5, "source": "structural brief, 3.1"}]},
             "clearanceAlongLine": {"step": "4 m", "rounding": "50 mm"},
             "installation": {"lowestTemperature": "-5 °C", "highestTemperature": "30 °C", "handTight": "100 N",
               "tolerance": "12 %", "constructionalStretch": "steel core"},
             "numberOfWorkers": true}
            """;

    private static final ObjectNode RESULT = result();

    private static ObjectNode result() {
        ObjectNode design =
                (ObjectNode) TestFiles.tree(TestFiles.bytes("independent/silo-roof-gripped-middle.design.json"));
        design.set("handover", TestFiles.tree(HANDOVER.getBytes(StandardCharsets.UTF_8)));
        design.putArray("criteria")
                .addObject()
                .put("id", "end walls")
                .put("demand", "endAnchorLoad")
                .put("capacity", "60 kN")
                .put("source", "wall calculation");
        DesignFile file = TestFiles.read(design.toString().getBytes(StandardCharsets.UTF_8));
        AssessedRun run = AssessedRun.of(
                        file.design(), Assessment.withDefaults().withoutMotion().withCriteria(file.criteria()))
                .handingOver(file.handover());
        return (ObjectNode) TestFiles.tree(new ResultWriter("1", file.sha256())
                .write(
                        run,
                        CriteriaCheck.evaluate(run.run(), file.criteria()),
                        IndependentCheck.of(run.run().arrests()),
                        ResultProvenance.of(
                                "unknown",
                                Map.of("motion", "left out"),
                                file.hashes().content())));
    }

    private static List<Error> errors(JsonNode node) {
        return SCHEMA.validate(node.toString(), InputFormat.JSON);
    }

    @Test
    void everyPartThatIsHandedOverFollowsTheSchema() {
        JsonNode handover = RESULT.path("handover");
        assertThat(handover.path("structure").path("governing")).isNotEmpty();
        assertThat(handover.path("clearanceAlongLine").path("stretches")).isNotEmpty();
        assertThat(handover.path("installation")).isNotEmpty();
        assertThat(handover.path("numberOfWorkers")).isNotEmpty();
        assertThat(handover.path("dataSheet")).isNotEmpty();
        assertThat(handover.path("notComputed")).isEmpty();
        assertThat(errors(RESULT)).isEmpty();
    }

    /** Each part with an unknown member, and without each of its own members in turn, where the schema requires it. */
    @Test
    void theSchemaRefusesWhatIsNotHandedOver() {
        int required = 0;
        for (String part : List.of("structure", "clearanceAlongLine", "installation", "numberOfWorkers", "dataSheet")) {
            ObjectNode more = RESULT.deepCopy();
            ((ObjectNode) more.path("handover").path(part)).put("unheardOf", 1);
            assertThat(errors(more)).as(part).isNotEmpty();
            for (Map.Entry<String, JsonNode> each :
                    RESULT.path("handover").path(part).properties()) {
                ObjectNode less = RESULT.deepCopy();
                ((ObjectNode) less.path("handover").path(part)).remove(each.getKey());
                required += errors(less).isEmpty() ? 0 : 1;
                ObjectNode other = RESULT.deepCopy();
                ((ObjectNode) other.path("handover").path(part)).putNull(each.getKey());
                assertThat(errors(other)).as(part + "." + each.getKey()).isNotEmpty();
            }
        }
        assertThat(required).isGreaterThan(10);
    }
}
