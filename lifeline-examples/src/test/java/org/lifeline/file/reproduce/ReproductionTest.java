package org.lifeline.file.reproduce;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.DoubleNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.lifeline.examples.TestFiles;
import org.lifeline.file.DesignFile;
import org.lifeline.file.DesignReader;
import org.lifeline.file.result.CriteriaCheck;
import org.lifeline.file.result.DesignRun;
import org.lifeline.file.result.ResultWriter;

/** Tells right results from tampered, cut-off, older and foreign ones. */
class ReproductionTest {
    private static final String VERSION = "9.9-test";
    private static final DesignFile DEMO = design("demo-design.json");
    private static final byte[] RESULT = result(DEMO, VERSION);

    private static DesignFile design(String name) {
        return new DesignReader().read(TestFiles.bytes(name));
    }

    private static byte[] result(DesignFile design, String version) {
        DesignRun run = DesignRun.of(design.design());
        return new ResultWriter(version, design.sha256()).write(run, CriteriaCheck.evaluate(run, design.criteria()));
    }

    private static Reproduction.Outcome check(byte[] bytes) {
        return Reproduction.by(VERSION).check(DEMO, bytes);
    }

    private static ObjectNode tree() {
        return (ObjectNode) TestFiles.tree(RESULT);
    }

    private static byte[] bytes(JsonNode node) {
        try {
            return new ObjectMapper().writeValueAsBytes(node);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Test
    void ownResultsComeOutAgain() {
        Reproduction.Outcome o = check(RESULT);
        assertThat(o.verdict()).isEqualTo(Verdict.REPRODUCED);
        assertThat(o.differences()).isEmpty();
        assertThat(o.compared()).isGreaterThan(500);
        assertThat(o.stored()).hasSizeGreaterThan(150);
        assertThat(o.broken()).isEmpty();
        assertThat(o.verified()).contains(List.of());
        assertThat(String.join("\n", o.identity())).contains(DEMO.sha256()).contains(VERSION);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "conveyor-gallery",
                "pipe-bridge-friction",
                "sloping-roof-edge-corner",
                "one-hangs-second-falls",
                "two-fall-together",
                "steep-spans-traveller-rests",
                "heavy-worker-bottoms-out"
            })
    void storedNumbersOfRightResultsObeyTheLaws(String name) {
        DesignFile file = design("independent/" + name + ".design.json");
        Reproduction.Outcome o = Reproduction.by(VERSION).check(file, result(file, VERSION));
        assertThat(o.broken()).isEmpty();
        assertThat(o.verdict()).isEqualTo(Verdict.REPRODUCED);
    }

    @Test
    void anyChangedNumberIsNamed() {
        SplittableRandom random = new SplittableRandom(60);
        List<List<String>> paths = new ArrayList<>();
        collect(tree(), new ArrayList<>(), paths);
        assertThat(paths).hasSizeGreaterThan(400);
        for (int i = 0; i < 25; i++) {
            List<String> path = paths.get(random.nextInt(paths.size()));
            ObjectNode changed = tree();
            double before = at(changed, path).doubleValue();
            double after = before * 1.01 + 0.01;
            put(changed, path, after);
            Reproduction.Outcome o = check(bytes(changed));
            assertThat(o.verdict()).as("%s: %s to %s", path, before, after).isEqualTo(Verdict.ALTERED);
            assertThat(o.differences()).hasSize(1);
            assertThat(o.differences().get(0).stored()).isEqualTo(Double.toString(after));
            assertThat(o.differences().get(0).recomputed()).isEqualTo(Double.toString(before));
        }
    }

    /** Paths of all numbers that are results. */
    private static void collect(JsonNode node, List<String> path, List<List<String>> out) {
        if (node.isNumber()) {
            out.add(List.copyOf(path));
        } else if (node.isObject()) {
            node.properties().forEach(e -> {
                if (!e.getKey().equals("convergence") && !e.getKey().equals("residual")) {
                    path.add(e.getKey());
                    collect(e.getValue(), path, out);
                    path.remove(path.size() - 1);
                }
            });
        } else if (node.isArray()) {
            for (int i = 0; i < node.size(); i++) {
                path.add(Integer.toString(i));
                collect(node.get(i), path, out);
                path.remove(path.size() - 1);
            }
        }
    }

    private static JsonNode at(JsonNode node, List<String> path) {
        JsonNode n = node;
        for (String step : path) {
            n = n.isArray() ? n.path(Integer.parseInt(step)) : n.path(step);
        }
        return n;
    }

    private static void put(JsonNode node, List<String> path, double value) {
        JsonNode parent = at(node, path.subList(0, path.size() - 1));
        String last = path.get(path.size() - 1);
        if (parent instanceof ArrayNode array) {
            array.set(Integer.parseInt(last), DoubleNode.valueOf(value));
        } else {
            ((ObjectNode) parent).put(last, value);
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "lineLoad",
                "deployment",
                "freeFall",
                "lineDescent",
                "arrestForce",
                "totalFallDistance",
            })
    void storedNumbersContradictAChangeEvenWithoutTheSolver(String key) {
        ObjectNode changed = tree();
        ObjectNode arrest = (ObjectNode) changed.path("arrests").get(0);
        arrest.put(key, arrest.path(key).doubleValue() * 1.02);
        List<StoredCheck> broken = StoredNumbers.check(DEMO.design(), changed).stream()
                .filter(c -> !c.holds())
                .toList();
        assertThat(broken).isNotEmpty().allMatch(c -> c.where().matches("arrests\\[0].*|governing.*"));
    }

    @Test
    void aForceOnASupportCannotBeLoweredQuietly() {
        ObjectNode changed = tree();
        ObjectNode support =
                (ObjectNode) changed.path("arrests").get(1).path("supports").get(0);
        ArrayNode vector = (ArrayNode) support.path("vector");
        for (int k = 0; k < 3; k++) {
            vector.set(k, DoubleNode.valueOf(0.8 * vector.get(k).doubleValue()));
        }
        support.put("force", 0.8 * support.path("force").doubleValue());
        List<StoredCheck> broken = StoredNumbers.check(DEMO.design(), changed).stream()
                .filter(c -> !c.holds())
                .toList();
        assertThat(broken).extracting(StoredCheck::law).contains("horizontal forces on the supports cancel (x)");
    }

    @Test
    void cutOffFilesAreKnown() {
        for (int part = 1; part < 20; part++) {
            byte[] cut = Arrays.copyOf(RESULT, RESULT.length * part / 20);
            Reproduction.Outcome o = check(cut);
            assertThat(o.verdict()).isEqualTo(Verdict.TRUNCATED);
            assertThat(o.identity().get(0)).contains("ends in the middle of line");
        }
        assertThat(check(new byte[0]).verdict()).isEqualTo(Verdict.TRUNCATED);
    }

    @Test
    void missingPartsAreKnown() {
        ObjectNode changed = tree();
        ((ArrayNode) changed.path("arrests")).remove(3);
        assertThat(check(bytes(changed)).verdict()).isIn(Verdict.INCOMPLETE, Verdict.ALTERED);
        ObjectNode without = tree();
        ((ObjectNode) without.path("arrests").get(0)).remove("sag");
        Reproduction.Outcome o = check(bytes(without));
        assertThat(o.verdict()).isEqualTo(Verdict.INCOMPLETE);
        assertThat(o.differences()).extracting(Difference::path).containsExactly("arrests[0].sag");
    }

    @Test
    void whatIsNoResultIsKnown() {
        for (String text : List.of("hello", "[1, 2]", "{}", "{\"arrests\": 3}", "{} {}", "{\"a\":1,\"a\":2}")) {
            assertThat(check(text.getBytes(StandardCharsets.UTF_8)).verdict())
                    .as(text)
                    .isEqualTo(Verdict.DAMAGED);
        }
    }

    @Test
    void olderVersionsAreKnown() {
        byte[] older = result(DEMO, "0.0.1");
        Reproduction.Outcome same = check(older);
        assertThat(same.verdict()).isEqualTo(Verdict.OTHER_VERSION_SAME_NUMBERS);
        assertThat(String.join("\n", same.identity())).contains("0.0.1; this is " + VERSION);

        // An older version that located every load elsewhere, by one part in a thousand.
        ObjectNode changed = (ObjectNode) TestFiles.tree(older);
        changed.path("arrests")
                .forEach(a -> ((ObjectNode) a).put("loadX", a.path("loadX").doubleValue() * 1.001));
        Reproduction.Outcome o = check(bytes(changed));
        assertThat(o.verdict()).isEqualTo(Verdict.OTHER_VERSION);
        assertThat(o.differences()).hasSameSizeAs(changed.path("arrests"));

        // One whose numbers contradict each other was not only older.
        ((ObjectNode) changed.path("arrests").get(0)).put("lineLoad", 1000.0);
        assertThat(check(bytes(changed)).verdict()).isEqualTo(Verdict.ALTERED);
    }

    @Test
    void resultsOfOtherDesignsAreKnown() {
        ObjectNode changed = tree();
        changed.put("designSha256", "0".repeat(64));
        assertThat(check(bytes(changed)).verdict()).isEqualTo(Verdict.OTHER_DESIGN);
    }

    /** Of two hashes one of which fits, no more is said than that: the file may have other white space or the hash been altered. */
    @Test
    void oneHashThatDoesNotFitIsNamedAsThat() {
        String zeros = "0".repeat(64);
        ObjectNode altered = tree().put("designSha256", zeros)
                .put("designContentSha256", DEMO.hashes().content());
        Reproduction.Outcome o = check(bytes(altered));
        assertThat(o.verdict()).isEqualTo(Verdict.REPRODUCED);
        assertThat(String.join("\n", o.identity()))
                .contains(zeros)
                .contains("its white space differs, or the SHA-256 above was altered")
                .doesNotContain("white space only");
        Reproduction.Outcome content = check(bytes(tree().put("designContentSha256", zeros)));
        assertThat(String.join("\n", content.identity())).contains("one of the two hashes was altered");
        assertThat(String.join("\n", check(RESULT).identity())).doesNotContain("note");
    }

    @Test
    void resultsOfOtherProgramsAreCompared() {
        DesignFile file = design("independent/conveyor-gallery.design.json");
        byte[] other = TestFiles.bytes("independent/conveyor-gallery.result.json");
        Reproduction.Outcome o = Reproduction.by(VERSION).withTolerance(1e-4).check(file, other);
        assertThat(o.verdict()).isEqualTo(Verdict.OTHER_PROGRAM);
        assertThat(o.compared()).isGreaterThan(50);
        assertThat(o.differences())
                .as("two programs agree on what they share")
                .allMatch(d -> d.path().startsWith("installed.") || d.relative() < 1e-3);
    }

    @Test
    void toleranceDecidesWhatIsListed() {
        ObjectNode changed = tree();
        ObjectNode arrest = (ObjectNode) changed.path("arrests").get(0);
        arrest.put("sag", arrest.path("sag").doubleValue() + 1e-4);
        assertThat(Reproduction.by(VERSION)
                        .withTolerance(1e-3)
                        .check(DEMO, bytes(changed))
                        .differences())
                .isEmpty();
        assertThat(check(bytes(changed)).differences()).hasSize(1);
    }

    /** Infinity is no number that came out again, in whichever field it stands. */
    @Test
    void infinityIsEqualToNothing() {
        List<List<String>> paths = new ArrayList<>();
        everyNumber(tree(), new ArrayList<>(), paths);
        SplittableRandom random = new SplittableRandom(18);
        List<List<String>> tried = new ArrayList<>();
        for (String key :
                List.of("maximumTension", "sag", "slip", "factored", "demand", "residual", "margin", "force")) {
            tried.add(paths.stream()
                    .filter(p -> p.get(p.size() - 1).equals(key))
                    .findFirst()
                    .orElseThrow());
        }
        for (int i = 0; i < 20; i++) {
            tried.add(paths.get(random.nextInt(paths.size())));
        }
        for (List<String> path : tried) {
            for (String infinite : List.of("1e999", "-1e999", "9".repeat(150) + "e200")) {
                ObjectNode changed = tree();
                put(changed, path, 123456.0625);
                byte[] bytes = new String(bytes(changed), StandardCharsets.UTF_8)
                        .replace("123456.0625", infinite)
                        .getBytes(StandardCharsets.UTF_8);
                for (double tolerance : new double[] {1e-6, 0.9}) {
                    Reproduction.Outcome o =
                            Reproduction.by(VERSION).withTolerance(tolerance).check(DEMO, bytes);
                    assertThat(o.verdict()).as("%s: %s", path, infinite).isEqualTo(Verdict.ALTERED);
                    assertThat(o.differences()).as("%s", path).isNotEmpty();
                }
            }
        }
    }

    private static void everyNumber(JsonNode node, List<String> path, List<List<String>> out) {
        if (node.isNumber()) {
            out.add(List.copyOf(path));
        }
        node.properties().forEach(e -> {
            path.add(e.getKey());
            everyNumber(e.getValue(), path, out);
            path.remove(path.size() - 1);
        });
        for (int i = 0; node.isArray() && i < node.size(); i++) {
            path.add(Integer.toString(i));
            everyNumber(node.get(i), path, out);
            path.remove(path.size() - 1);
        }
    }

    @Test
    void nestingAndNumbersBeyondAnyResultAreDamage() {
        for (String text : List.of(
                "[".repeat(2000),
                "{\"arrests\":".repeat(5000),
                "{\"arrests\": [" + "[".repeat(5000) + "]".repeat(5000) + "]}",
                "{\"arrests\": [], \"x\": " + "9".repeat(5000) + "}",
                "{\"arrests\": [], \"x\": 0." + "9".repeat(5000) + "}",
                "{\"" + "k".repeat(60_000) + "\": 1, \"arrests\": []}",
                "{\"arrests\": [1, 2e9999999999, null, {\"supports\": 3}]}")) {
            Reproduction.Outcome o = check(text.getBytes(StandardCharsets.UTF_8));
            assertThat(o.verdict().isReproduced()).isFalse();
            assertThat(String.join(" ", o.identity())).doesNotContain("com.fasterxml", "StreamReadConstraints");
        }
    }

    /** A result that is longer than a design may be: 10 MB and more. */
    @Test
    void aResultLargerThanADesignIsRead() {
        ObjectNode tree = tree();
        tree.put("remark", "x".repeat(12_000_000));
        Reproduction.Outcome o = check(bytes(tree));
        assertThat(o.differences()).extracting(Difference::path).containsExactly("remark");
        assertThat(check(new byte[Reproduction.LARGEST_FILE + 1]).identity())
                .containsExactly("it is larger than 200000000 bytes");
    }

    @Test
    void aFailedIndependentCheckIsNeverReproduced() {
        Reproduction.Outcome o = Reproduction.by(VERSION)
                .withIndependentCheck(r -> List.of("equilibrium at the load"))
                .check(DEMO, RESULT);
        assertThat(o.differences()).isEmpty();
        assertThat(o.verdict()).isEqualTo(Verdict.UNVERIFIED);
        assertThat(o.verdict().isReproduced()).isFalse();
        assertThat(o.verdict().text()).startsWith("NOT reproduced");
        assertThat(Reproduction.by("other")
                        .withIndependentCheck(r -> List.of("equilibrium at the load"))
                        .check(DEMO, RESULT)
                        .verdict())
                .isEqualTo(Verdict.UNVERIFIED);
    }

    @Test
    void whatIsNoJsonIsToldInWords() {
        String twice = "{\"arrests\": [],\n \"arrests\": []}";
        assertThat(check(twice.getBytes(StandardCharsets.UTF_8)).identity())
                .singleElement()
                .asString()
                .startsWith("no JSON at line 2, column ")
                .endsWith(": a key is given twice in one object");
        String key = "{\"" + "k".repeat(20_000) + "\": 1, \"arrests\": []}";
        assertThat(check(key.getBytes(StandardCharsets.UTF_8)).identity())
                .singleElement()
                .asString()
                .endsWith("or a key more than 10000 characters");
    }
}
