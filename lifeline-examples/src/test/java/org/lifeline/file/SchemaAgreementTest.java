package org.lifeline.file;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.networknt.schema.Error;
import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.Violation;
import org.lifeline.examples.TestFiles;
import org.lifeline.file.result.CriteriaCheck;
import org.lifeline.file.result.DesignRun;
import org.lifeline.file.result.ResultWriter;

/**
 * The published schema and the reader agree: what the schema refuses the reader refuses; what the schema takes the reader
 * takes, or refuses it for something that a schema does not see: units, signs of quantities, references, relations.
 */
class SchemaAgreementTest {
    private static final JsonNodeFactory NODES = JsonNodeFactory.instance;
    private static final Schema DESIGN = schema("design-1.schema.json");
    private static final Schema RESULT = schema("result-1.schema.json");

    /** Parts of the reader's rules that speak of structure; the schema must have refused the file too. */
    private static final List<String> STRUCTURAL = List.of(
            "must be given",
            "is an unknown key",
            "must be a JSON object",
            "must be a JSON array",
            "must be a text",
            "must be a number without unit",
            "must be a number followed by its unit",
            "must be one of",
            "must be \"",
            "must be a pair",
            "must be three lengths",
            "must be the id of a built-in criterion, or",
            "must be a whole number",
            "must be at most 1",
            "give exactly one",
            "stands only beside",
            "stands here only beside",
            "belongs to a lanyard",
            "together with",
            "has no unit",
            "must not be blank",
            "must have at least",
            "must name at least");

    static List<String> designs() {
        List<String> list = new ArrayList<>(List.of("demo-design.json", "designs/every-alternative.json"));
        TestFiles.INDEPENDENT.forEach(n -> list.add("independent/" + n + ".design.json"));
        return list;
    }

    private static Schema schema(String name) {
        return SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                .getSchema(TestFiles.text(name), InputFormat.JSON);
    }

    private static List<Error> schemaErrors(JsonNode node) {
        return DESIGN.validate(node.toString(), InputFormat.JSON);
    }

    private static List<Violation> readerViolations(JsonNode node) {
        try {
            TestFiles.read(node.toString().getBytes(StandardCharsets.UTF_8));
            return List.of();
        } catch (InvalidInputException e) {
            return e.violations();
        }
    }

    private static void compare(JsonNode node, String what) {
        List<Error> errors = schemaErrors(node);
        List<Violation> violations = readerViolations(node);
        if (!errors.isEmpty()) {
            assertThat(violations)
                    .as("%s: the schema refuses (%s), the reader does not", what, errors.get(0))
                    .isNotEmpty();
        } else {
            assertThat(violations)
                    .as("%s: the reader refuses the structure, the schema does not", what)
                    .noneMatch(v -> STRUCTURAL.stream().anyMatch(v.rule()::contains));
        }
    }

    @ParameterizedTest
    @MethodSource("designs")
    void bothTakeTheDesigns(String name) {
        JsonNode design = TestFiles.tree(name);
        assertThat(schemaErrors(design)).isEmpty();
        assertThat(readerViolations(design)).isEmpty();
    }

    @ParameterizedTest
    @MethodSource("designs")
    void bothAgreeWhenOneKeyIsMissing(String name) {
        JsonNode original = TestFiles.tree(name);
        List<List<Object>> paths = new ArrayList<>();
        collect(original, new ArrayList<>(), paths);
        for (List<Object> path : paths) {
            JsonNode copy = original.deepCopy();
            remove(copy, path);
            compare(copy, name + " without " + path);
        }
    }

    @ParameterizedTest
    @MethodSource("designs")
    void bothAgreeWhenOneValueHasAnotherType(String name) {
        JsonNode original = TestFiles.tree(name);
        List<List<Object>> paths = new ArrayList<>();
        collect(original, new ArrayList<>(), paths);
        List<JsonNode> others = List.of(
                NODES.nullNode(),
                NODES.booleanNode(true),
                NODES.numberNode(3),
                NODES.numberNode(-0.5),
                NODES.textNode("words"),
                NODES.textNode(""),
                NODES.textNode("3"),
                NODES.textNode("3 m"),
                NODES.textNode("5 kN"),
                NODES.arrayNode(),
                NODES.objectNode());
        for (List<Object> path : paths) {
            for (JsonNode other : others) {
                JsonNode copy = original.deepCopy();
                replace(copy, path, other);
                compare(copy, name + " with " + path + " = " + other);
            }
        }
    }

    @Test
    void bothAgreeOnRandomMutations() {
        long seed = Long.getLong("lifeline.seed", 20_261_124L);
        int rounds = Boolean.getBoolean("lifeline.long") ? 40_000 : 4_000;
        SplittableRandom random = new SplittableRandom(seed);
        List<String> names = designs();
        int refused = 0;
        for (int i = 0; i < rounds; i++) {
            JsonNode design =
                    TestFiles.tree(names.get(random.nextInt(names.size()))).deepCopy();
            int changes = 1 + random.nextInt(3);
            StringBuilder done = new StringBuilder("seed " + seed + ", round " + i + ":");
            for (int k = 0; k < changes; k++) {
                done.append(' ').append(mutate(design, random));
            }
            compare(design, done.toString());
            refused += schemaErrors(design).isEmpty() ? 0 : 1;
        }
        // Otherwise the mutations would show nothing.
        assertThat(refused).isBetween(rounds / 4, rounds - rounds / 50);
    }

    @ParameterizedTest
    @MethodSource("designs")
    void resultFilesFollowTheirSchema(String name) {
        DesignFile file = TestFiles.design(name);
        DesignRun run = DesignRun.of(file.design());
        byte[] result = new ResultWriter("0.1", file.sha256()).write(run, CriteriaCheck.evaluate(run, file.criteria()));
        assertThat(RESULT.validate(new String(result, StandardCharsets.UTF_8), InputFormat.JSON))
                .isEmpty();
    }

    @Test
    void theResultSchemaIsNotEmpty() {
        assertThat(RESULT.validate("{\"format\": \"org.lifeline.result/1\"}", InputFormat.JSON))
                .isNotEmpty();
    }

    private static String mutate(JsonNode design, SplittableRandom random) {
        List<List<Object>> paths = new ArrayList<>();
        collect(design, new ArrayList<>(), paths);
        if (paths.isEmpty()) {
            return "nothing left";
        }
        List<Object> path = paths.get(random.nextInt(paths.size()));
        List<Object> source = paths.get(random.nextInt(paths.size()));
        JsonNode holder = at(design, path.subList(0, path.size() - 1));
        JsonNode value = at(design, source).deepCopy();
        return switch (random.nextInt(5)) {
            case 0 -> {
                remove(design, path);
                yield "without " + path;
            }
            case 1 -> {
                replace(design, path, value);
                yield path + " = value of " + source;
            }
            case 2 -> {
                if (holder instanceof ObjectNode object) {
                    object.set(path.get(path.size() - 1) + "x", value);
                }
                yield "new key beside " + path;
            }
            case 3 -> {
                if (holder instanceof ArrayNode array) {
                    array.add(at(design, path).deepCopy());
                }
                yield "again " + path;
            }
            default -> {
                if (holder instanceof ObjectNode object && source.get(source.size() - 1) instanceof String key) {
                    object.set(key, value);
                }
                yield source + " beside " + path;
            }
        };
    }

    private static void collect(JsonNode node, List<Object> path, List<List<Object>> paths) {
        if (!path.isEmpty()) {
            paths.add(List.copyOf(path));
        }
        if (node.isObject()) {
            node.fieldNames().forEachRemaining(key -> {
                path.add(key);
                collect(node.get(key), path, paths);
                path.remove(path.size() - 1);
            });
        }
        for (int i = 0; node.isArray() && i < node.size(); i++) {
            path.add(i);
            collect(node.get(i), path, paths);
            path.remove(path.size() - 1);
        }
    }

    private static JsonNode at(JsonNode node, List<Object> path) {
        JsonNode at = node;
        for (Object step : path) {
            at = step instanceof Integer i ? at.get(i) : at.get((String) step);
        }
        return at;
    }

    private static void remove(JsonNode node, List<Object> path) {
        JsonNode holder = at(node, path.subList(0, path.size() - 1));
        Object last = path.get(path.size() - 1);
        if (holder instanceof ArrayNode array) {
            array.remove((Integer) last);
        } else {
            ((ObjectNode) holder).remove((String) last);
        }
    }

    private static void replace(JsonNode node, List<Object> path, JsonNode value) {
        JsonNode holder = at(node, path.subList(0, path.size() - 1));
        Object last = path.get(path.size() - 1);
        if (holder instanceof ArrayNode array) {
            array.set((Integer) last, value);
        } else {
            ((ObjectNode) holder).set((String) last, value);
        }
    }
}
