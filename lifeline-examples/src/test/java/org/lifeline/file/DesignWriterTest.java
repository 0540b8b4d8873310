package org.lifeline.file;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.lifeline.base.canonical.Difference;
import org.lifeline.examples.TestFiles;
import org.lifeline.file.result.DesignRun;
import org.lifeline.file.result.ResultWriter;
import org.lifeline.model.LifelineDesign;

/** A design that is written and read again is the same design: it gives the same results. */
class DesignWriterTest {

    static List<String> designs() {
        List<String> list = new ArrayList<>(List.of("demo-design.json", "designs/every-alternative.json"));
        TestFiles.INDEPENDENT.forEach(n -> list.add("independent/" + n + ".design.json"));
        return list;
    }

    @ParameterizedTest
    @MethodSource("designs")
    void resultsStayTheSame(String name) {
        LifelineDesign design = TestFiles.design(name).design();
        DesignFile again = TestFiles.read(DesignWriter.write(design));
        JsonNode before = results(design);
        JsonNode after = results(again.design());
        same(name, before.get("installed"), after.get("installed"));
        same(name, before.get("arrests"), after.get("arrests"));
    }

    @ParameterizedTest
    @MethodSource("designs")
    void theDesignIsTheSame(String name) {
        LifelineDesign design = TestFiles.design(name).design();
        LifelineDesign again = TestFiles.read(DesignWriter.write(design)).design();
        assertThat(Difference.between(design.canonicalForm(), again.canonicalForm()))
                .isEmpty();
        assertThat(again).isEqualTo(design);
        assertThat(again.fingerprint()).isEqualTo(design.fingerprint());
    }

    /** An in-line absorber and an absorber of a worker whose first rise meets a slope: both come back to the last digit. */
    @Test
    void aFirstRiseComesBackToTheLastDigit() {
        SplittableRandom random = new SplittableRandom(20_261_130);
        for (int i = 0; i < 200; i++) {
            ObjectNode root = (ObjectNode) TestFiles.tree("independent/conveyor-gallery.design.json");
            double first = random.nextDouble(2, 9);
            ObjectNode inline = ((ObjectNode) root.path("supports").path(3)).putObject("inlineAbsorber");
            ArrayNode curve = inline.putArray("curve");
            curve.addArray().add("0 m").add(first + " kN");
            curve.addArray().add(random.nextDouble(0.3, 1.2) + " m").add(first * random.nextDouble(1, 1.5) + " kN");
            inline.put("initialStiffness", random.nextDouble(100, 9000) + " kN/m");
            inline.put("stopStiffness", random.nextDouble(100, 900) + " kN/m");
            ((ObjectNode) root.at("/workers/0/connection/absorber"))
                    .put("maximumForce", random.nextDouble(4, 8) + " kN")
                    .put("initialStiffness", random.nextDouble(30, 300) + " kN/m");
            LifelineDesign design = TestFiles.read(root.toString()).design();
            LifelineDesign again = TestFiles.read(DesignWriter.write(design)).design();
            assertThat(Difference.between(design.canonicalForm(), again.canonicalForm()))
                    .as(root.toString())
                    .isEmpty();
            assertThat(again.fingerprint()).isEqualTo(design.fingerprint());
        }
    }

    @ParameterizedTest
    @MethodSource("designs")
    void writingTwiceChangesNothing(String name) {
        byte[] once = DesignWriter.write(TestFiles.design(name).design());
        byte[] twice = DesignWriter.write(TestFiles.read(once).design());
        same(name, TestFiles.tree(once), TestFiles.tree(twice));
    }

    private static JsonNode results(LifelineDesign design) {
        DesignRun run = DesignRun.of(design);
        return TestFiles.tree(new ResultWriter("", "").write(run, List.of()));
    }

    /** Equal but for the last digits that arithmetic in between may change. */
    private static void same(String where, JsonNode a, JsonNode b) {
        if (where.endsWith("iterations") || where.endsWith("residual")) {
            return;
        }
        if (a.isNumber()) {
            double x = a.doubleValue();
            assertThat(b.doubleValue()).as(where).isCloseTo(x, within(1e-6 * Math.max(Math.abs(x), 1e-3)));
        } else if (a.isArray()) {
            assertThat(b.size()).as(where).isEqualTo(a.size());
            for (int i = 0; i < a.size(); i++) {
                same(where + "[" + i + "]", a.get(i), b.get(i));
            }
        } else if (a.isObject()) {
            Iterator<String> keys = a.fieldNames();
            while (keys.hasNext()) {
                String key = keys.next();
                assertThat(b.has(key)).as(where + "." + key).isTrue();
                same(where + "." + key, a.get(key), b.get(key));
            }
        } else {
            text(where, a.asText(), b.asText());
        }
    }

    private static void text(String where, String a, String b) {
        String[] x = a.split(" ", -1);
        String[] y = b.split(" ", -1);
        if (x.length == 2 && x[0].matches("-?[0-9.]+(E-?[0-9]+)?")) {
            assertThat(y[1]).as(where).isEqualTo(x[1]);
            double value = Double.parseDouble(x[0]);
            assertThat(Double.parseDouble(y[0])).as(where).isCloseTo(value, within(1e-12 * Math.abs(value)));
        } else {
            assertThat(b).as(where).isEqualTo(a);
        }
    }

    @ParameterizedTest
    @MethodSource("designs")
    void whatIsWrittenIsUtf8Json(String name) {
        byte[] bytes = DesignWriter.write(TestFiles.design(name).design());
        assertThat(new String(bytes, StandardCharsets.UTF_8))
                .startsWith("{")
                .endsWith("}\n")
                .doesNotContain("Infinity")
                .doesNotContain("NaN");
    }
}
