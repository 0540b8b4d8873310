package org.lifeline.file.result;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.examples.TestFiles;
import org.lifeline.file.DesignFile;

class ResultWriterTest {

    private static DesignRun run(DesignFile file) {
        return DesignRun.of(file.design());
    }

    private static JsonNode result(DesignFile file, DesignRun run) {
        return TestFiles.tree(
                new ResultWriter("1.2.3", file.sha256()).write(run, CriteriaCheck.evaluate(run, file.criteria())));
    }

    @Test
    void namesTheFormatTheVersionAndTheDesign() {
        DesignFile file = TestFiles.design("demo-design.json");
        JsonNode root = result(file, run(file));
        assertThat(root.get("format").textValue()).isEqualTo("org.lifeline.result/1");
        assertThat(root.get("libraryVersion").textValue()).isEqualTo("1.2.3");
        assertThat(root.get("designSha256").textValue()).isEqualTo(file.sha256());
        assertThat(root.get("installed").get("spans")).hasSize(3);
        assertThat(root.get("installed").get("endTension")).hasSize(2);
        assertThat(root.get("installed").get("endTension").get(0).doubleValue()).isCloseTo(1200, within(1e-6));
    }

    /** Each fall at every temperature with both forces; every number is the one that was computed, to the last digit. */
    @Test
    void numbersAreUnrounded() {
        DesignFile file = TestFiles.design("demo-design.json");
        DesignRun run = run(file);
        JsonNode arrests = result(file, run).get("arrests");
        assertThat(arrests).hasSize(2 * 2 * 2);
        for (int i = 0; i < arrests.size(); i++) {
            ArrestResult r = run.arrests().get(i);
            JsonNode a = arrests.get(i);
            assertThat(a.get("fall").textValue()).isEqualTo(r.fall().id());
            assertThat(a.get("temperature").doubleValue()).isEqualTo(r.temperature());
            assertThat(a.get("force").textValue())
                    .isEqualToIgnoringCase(r.side().toString());
            assertThat(a.get("method").textValue()).isEqualTo("energy balance");
            assertThat(a.get("deployment").doubleValue()).isEqualTo(r.deployment());
            assertThat(a.get("sag").doubleValue()).isEqualTo(r.sag());
            assertThat(a.get("lineDescent").doubleValue()).isEqualTo(r.lineDescent());
            assertThat(a.get("maximumTension").doubleValue()).isEqualTo(r.maximumTension());
            assertThat(a.get("totalFallDistance").doubleValue()).isEqualTo(r.totalFallDistance());
            for (int k = 0; k < r.supports().size(); k++) {
                JsonNode s = a.get("supports").get(k);
                assertThat(s.get("force").doubleValue())
                        .isEqualTo(r.supports().get(k).force());
                assertThat(s.get("vector").get(2).doubleValue())
                        .isEqualTo(r.supports().get(k).vector().z());
                assertThat(s.get("slip").doubleValue()).isEqualTo(r.slip(k));
            }
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "demo-design.json",
                "designs/every-alternative.json",
                "independent/pipe-bridge-friction.design.json"
            })
    void accountsAddUp(String name) {
        DesignFile file = TestFiles.design(name);
        for (JsonNode a : result(file, run(file)).get("arrests")) {
            JsonNode e = a.get("energy");
            double sum = 0;
            for (String key : List.of("line", "connection", "friction", "inlineAbsorbers", "anchors", "residual")) {
                sum += e.get(key).doubleValue();
            }
            double fall = e.get("fall").doubleValue();
            assertThat(sum).isCloseTo(fall, within(1e-9 * fall));
            assertThat(e.get("line").doubleValue())
                    .isCloseTo(e.get("cable").doubleValue() + e.get("hanging").doubleValue(), within(1e-9 * fall));
            JsonNode rows = a.get("clearance").get("rows");
            for (int i = 1; i < rows.size(); i++) {
                assertThat(rows.get(i).get("elevation").doubleValue())
                        .isCloseTo(
                                rows.get(i - 1).get("elevation").doubleValue()
                                        - rows.get(i).get("value").doubleValue(),
                                within(1e-9));
            }
            double line = rows.get(0).get("elevation").doubleValue();
            double last = rows.get(rows.size() - 1).get("elevation").doubleValue();
            assertThat(a.get("clearance").get("requiredBelowLine").doubleValue())
                    .isCloseTo(line - last, within(1e-9));
        }
    }

    private static List<JsonNode> all(JsonNode root) {
        List<JsonNode> list = new ArrayList<>();
        root.get("arrests").forEach(list::add);
        root.path("heldArrests").forEach(list::add);
        return list;
    }

    /** The extremes, looked for here a second time in the written arrests; a tie is a share of 1e-9 wide. */
    @Test
    void whatGovernsIsTheExtremeOfTheArrests() {
        DesignFile file = TestFiles.design("demo-design.json");
        JsonNode root = result(file, run(file));
        for (String key : List.of("maximumTension", "arrestForce", "freeFall", "deployment", "sag", "lineDescent")) {
            double most = 0;
            for (JsonNode a : all(root)) {
                most = Math.max(most, a.get(key).doubleValue());
            }
            JsonNode g = root.get("governing").get(key);
            assertThat(g.get("value").doubleValue()).as(key).isCloseTo(most, within(1e-9 * most));
            assertThat(same(root, g).get(key).doubleValue()).as(key).isCloseTo(most, within(1e-9 * most));
        }
        JsonNode margin = root.get("governing").get("clearanceMargin");
        double least = Double.POSITIVE_INFINITY;
        double hoist = 0;
        for (JsonNode a : all(root)) {
            least = Math.min(least, a.get("clearance").get("margin").doubleValue());
            hoist = Math.max(hoist, a.get("supports").get(3).get("force").doubleValue());
        }
        assertThat(margin.get("value").doubleValue()).isCloseTo(least, within(1e-9));
        JsonNode support = root.get("governing").get("supportLoad").get("hoist tower");
        assertThat(support.get("value").doubleValue()).isCloseTo(hoist, within(1e-9 * hoist));
        assertThat(root.get("governing").get("endAnchorLoad").get("force").textValue())
                .isEqualTo("maximum");
    }

    private static JsonNode same(JsonNode root, JsonNode which) {
        for (JsonNode a : all(root)) {
            if (List.of("fall", "temperature", "force", "attachmentLimit").stream()
                    .allMatch(k -> a.path(k).equals(which.path(k)))) {
                return a;
            }
        }
        throw new AssertionError("no such arrest: " + which);
    }

    @Test
    void criteriaCarryDemandCapacityRatioSourceAndMark() {
        DesignFile file = TestFiles.design("independent/conveyor-gallery.design.json");
        JsonNode root = result(file, run(file));
        JsonNode own = root.get("criteria").get(root.get("criteria").size() - 1);
        assertThat(own.get("id").textValue()).isEqualTo("client anchor limit");
        double demand = root.get("governing").get("endAnchorLoad").get("value").doubleValue();
        assertThat(own.get("demand").doubleValue()).isEqualTo(demand);
        assertThat(own.get("capacity").doubleValue()).isEqualTo(30e3);
        assertThat(own.get("unit").textValue()).isEqualTo("N");
        assertThat(own.get("ratio").doubleValue()).isEqualTo(demand / 30e3);
        assertThat(own.get("met").booleanValue()).isTrue();
        assertThat(own.get("source").textValue()).isEqualTo("client specification 7.2");
        assertThat(own.get("arrest").get("fall").textValue()).isEqualTo("middle of bay 2");
    }

    /** What is not known is left out: there is no number for it in JSON. */
    @Test
    void whatIsNotKnownIsLeftOut() {
        DesignFile file = TestFiles.design("independent/silo-roof-gripped-middle.design.json");
        byte[] bytes = new ResultWriter("1", file.sha256()).write(run(file), List.of());
        assertThat(new String(bytes, StandardCharsets.UTF_8))
                .doesNotContain("NaN")
                .doesNotContain("Infinity")
                .doesNotContain("-0.0,");
        JsonNode clearance = TestFiles.tree(bytes).get("arrests").get(0).get("clearance");
        assertThat(clearance.has("margin")).isFalse();
        assertThat(clearance.has("obstruction")).isFalse();
        assertThat(TestFiles.tree(bytes).get("governing").has("clearanceMargin"))
                .isFalse();
    }
}
