package org.lifeline.examples;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.lifeline.file.DesignFile;
import org.lifeline.file.result.DesignRun;
import org.lifeline.file.result.ResultWriter;

/**
 * Result files against those of an independent bar-chain program with energy minimisation, whose accuracy is 1e-6 (see
 * {@code independent/README.txt}); hence the tolerance of 1e-5.
 */
class IndependentDesignsTest {
    private static final double TOLERANCE = 1e-5;

    /** The two programs differ in what they call the installed length beside an in-line absorber; see the README. */
    private static final double INSTALLED_TOLERANCE = 5e-5;

    private static final List<String> NUMBERS = List.of(
            "freeFall",
            "deployment",
            "arrestForce",
            "lineLoad",
            "sag",
            "lineDescent",
            "loadX",
            "maximumTension",
            "totalFallDistance");

    static List<String> names() {
        return TestFiles.INDEPENDENT;
    }

    @ParameterizedTest
    @MethodSource("names")
    void agrees(String name) {
        DesignFile file = TestFiles.design("independent/" + name + ".design.json");
        DesignRun run = DesignRun.of(file.design());
        JsonNode mine = TestFiles.tree(new ResultWriter("test", file.sha256()).write(run, List.of()));
        JsonNode other = TestFiles.tree("independent/" + name + ".result.json");
        List<String> differences = new ArrayList<>();

        installed(differences, mine.get("installed"), other.get("installed"));
        assertThat(mine.get("arrests").size()).isEqualTo(other.get("arrests").size());
        for (int i = 0; i < other.get("arrests").size(); i++) {
            JsonNode b = other.get("arrests").get(i);
            JsonNode a = same(mine.get("arrests"), b);
            arrest(differences, a, b);
        }
        assertThat(differences).isEmpty();
    }

    private static JsonNode same(JsonNode arrests, JsonNode wanted) {
        for (JsonNode each : arrests) {
            if (each.get("fall").equals(wanted.get("fall"))
                    && each.get("force").equals(wanted.get("force"))
                    && Math.abs(each.get("temperature").asDouble()
                                    - wanted.get("temperature").asDouble())
                            < 1e-9) {
                return each;
            }
        }
        throw new AssertionError("no arrest like " + wanted.get("fall"));
    }

    private static void installed(List<String> differences, JsonNode a, JsonNode b) {
        for (int i = 0; i < b.get("spans").size(); i++) {
            for (String key : List.of("sag", "horizontalTension", "unstretchedLength")) {
                double x = a.get("spans").get(i).get(key).asDouble();
                double y = b.get("spans").get(i).get(key).asDouble();
                near(
                        differences,
                        "installed span " + (i + 1) + " " + key,
                        new double[] {x, y},
                        INSTALLED_TOLERANCE * y);
            }
        }
        for (int i = 0; i < 2; i++) {
            double x = a.get("endTension").get(i).asDouble();
            double y = b.get("endTension").get(i).asDouble();
            near(differences, "installed end tension " + i, new double[] {x, y}, TOLERANCE * y);
        }
    }

    private static void arrest(List<String> differences, JsonNode a, JsonNode b) {
        String name = b.get("fall").asText() + " " + b.get("temperature") + " "
                + b.get("force").asText() + ": ";
        for (String key : NUMBERS) {
            double y = b.get(key).asDouble();
            near(differences, name + key, new double[] {a.get(key).asDouble(), y}, TOLERANCE * Math.abs(y));
        }
        assertThat(a.get("bottomedOut")).as(name + "bottomedOut").isEqualTo(b.get("bottomedOut"));
        for (int i = 0; i < b.get("supports").size(); i++) {
            JsonNode s = a.get("supports").get(i);
            JsonNode t = b.get("supports").get(i);
            String at = name + t.get("id").asText() + " ";
            assertThat(s.get("id")).isEqualTo(t.get("id"));
            double force = t.get("force").asDouble();
            near(differences, at + "force", new double[] {s.get("force").asDouble(), force}, TOLERANCE * force);
            for (int c = 0; c < 3; c++) {
                double[] pair = {
                    s.get("vector").get(c).asDouble(), t.get("vector").get(c).asDouble()
                };
                near(differences, at + "vector", pair, TOLERANCE * force);
            }
            // Slips and displacements reach from metres down to nothing: below 1 cm, 0.1 µm will do.
            for (String key : List.of("displacement", "slip")) {
                double y = t.get(key).asDouble();
                double[] pair = {s.get(key).asDouble(), y};
                near(differences, at + key, pair, TOLERANCE * Math.max(Math.abs(y), 0.01));
            }
        }
        for (int i = 0; i < b.get("inlineAbsorbers").size(); i++) {
            double y = b.get("inlineAbsorbers").get(i).get("extension").asDouble();
            double x = a.get("inlineAbsorbers").get(i).get("extension").asDouble();
            near(differences, name + "in-line absorber", new double[] {x, y}, TOLERANCE * Math.max(y, 0.01));
        }
        double fall = b.get("energy").get("fall").asDouble();
        for (String key : List.of("fall", "connection", "friction", "inlineAbsorbers", "anchors")) {
            double[] pair = {
                a.get("energy").get(key).asDouble(), b.get("energy").get(key).asDouble()
            };
            near(differences, name + "energy " + key, pair, TOLERANCE * fall);
        }
    }

    private static void near(List<String> differences, String what, double[] pair, double tolerance) {
        if (!(Math.abs(pair[0] - pair[1]) <= tolerance + 1e-9)) {
            differences.add(what + ": " + pair[0] + " against " + pair[1]);
        }
    }
}
