package org.lifeline.examples.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ContainerNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.lifeline.examples.TestFiles;
import org.lifeline.file.DesignFile;
import org.lifeline.file.reproduce.Reproduction;
import org.lifeline.file.reproduce.Verdict;
import org.lifeline.file.result.CriteriaCheck;
import org.lifeline.file.result.DesignRun;
import org.lifeline.file.result.ResultWriter;

/**
 * Designs and results with values that somebody mistyped, mixed up or made up: a command always ends with a stated code, and
 * never with a stack trace, a number that is none, or a wrong "reproduced". A failure prints the seed, the number of the
 * case and the whole file.
 */
class FuzzTest {
    private static final boolean LONG = Boolean.getBoolean("lifeline.long");

    /** Small designs of every kind of line and attachment. */
    private static final List<String> DESIGNS = List.of(
            "silo-roof-gripped-middle",
            "crane-girder-traveller",
            "plain-lanyard-slack-span",
            "heavy-worker-bottoms-out",
            "one-hangs-second-falls",
            "stadium-catwalk-inline-absorber",
            "elastic-posts-corner");

    private static final List<String> NUMBERS = List.of(
            "0",
            "-1",
            "1e200",
            "-1e200",
            "1e-200",
            "1e9",
            "1e-9",
            "1e30",
            "4.9e-324",
            "1e400",
            "nan",
            "infinity",
            "12,5",
            "0.0000001",
            "99999999999999999999",
            "");

    private static final List<String> UNITS =
            List.of(" m", " mm", " kN", " N", " kg", " lb", " kN/m", " °C", " ft", " MN", " s", " %", "", " furlongs");

    private static final Pattern NOT_A_NUMBER = Pattern.compile("\\b(NaN|Infinity)\\b|∞");
    private static final Pattern LEADING = Pattern.compile("[-+0-9.eE]+");

    @TempDir
    private Path folder;

    private final ByteArrayOutputStream outBytes = new ByteArrayOutputStream();
    private final ByteArrayOutputStream errBytes = new ByteArrayOutputStream();

    private int run(String... args) {
        outBytes.reset();
        errBytes.reset();
        return CommandLines.run(
                new PrintStream(outBytes, true, StandardCharsets.UTF_8),
                new PrintStream(errBytes, true, StandardCharsets.UTF_8),
                args);
    }

    /** A node of a tree with its parent and its place there. */
    private record Leaf(ContainerNode<?> parent, String key, int index, JsonNode value) {
        void replace(JsonNode by) {
            if (parent instanceof ObjectNode o) {
                o.set(key, by);
            } else {
                ((ArrayNode) parent).set(index, by);
            }
        }

        void remove() {
            if (parent instanceof ObjectNode o) {
                o.remove(key);
            } else {
                ((ArrayNode) parent).remove(index);
            }
        }
    }

    private static List<Leaf> nodes(JsonNode root, boolean leavesOnly) {
        List<Leaf> list = new ArrayList<>();
        collect(root, list, leavesOnly);
        return list;
    }

    private static void collect(JsonNode node, List<Leaf> out, boolean leavesOnly) {
        if (node instanceof ObjectNode o) {
            o.properties().forEach(e -> {
                add(new Leaf(o, e.getKey(), -1, e.getValue()), out, leavesOnly);
            });
        } else if (node instanceof ArrayNode a) {
            for (int i = 0; i < a.size(); i++) {
                add(new Leaf(a, "", i, a.get(i)), out, leavesOnly);
            }
        }
    }

    private static void add(Leaf leaf, List<Leaf> out, boolean leavesOnly) {
        if (leaf.value().isValueNode() || !leavesOnly) {
            out.add(leaf);
        }
        collect(leaf.value(), out, leavesOnly);
    }

    private static <T> T any(List<T> list, SplittableRandom random) {
        return list.get(random.nextInt(list.size()));
    }

    /** One to three changes of a design. */
    private static void damage(JsonNode root, SplittableRandom random) {
        JsonNodeFactory make = JsonNodeFactory.instance;
        if (random.nextInt(2) == 0) {
            near(root, random);
            return;
        }
        for (int k = random.nextInt(3); k >= 0; k--) {
            boolean structure = random.nextInt(8) == 0;
            List<Leaf> all = nodes(root, !structure);
            Leaf leaf = any(all, random);
            if (leaf.key().equals("format")) {
                continue;
            }
            // A design without falls is searched through, which takes its time.
            boolean falls = leaf.key().equals("falls") || leaf.parent().equals(root.path("falls"));
            String text = leaf.value().asText();
            Matcher number = LEADING.matcher(text);
            String unit = number.lookingAt() ? text.substring(number.end()) : "";
            switch (random.nextInt(structure && !falls ? 10 : 6)) {
                case 0 -> leaf.replace(make.textNode(any(NUMBERS, random) + unit));
                case 1 -> leaf.replace(make.textNode(scaled(text, unit, random)));
                case 2 -> leaf.replace(make.textNode(scaled(text, any(UNITS, random), random)));
                case 3 ->
                    leaf.replace(
                            make.textNode(any(nodes(root, true), random).value().asText()));
                case 4 -> leaf.replace(make.numberNode(Math.pow(10, random.nextInt(-30, 30))));
                case 5 -> leaf.replace(make.textNode(near(text, unit, random)));
                case 6 -> leaf.remove();
                case 7 -> leaf.replace(make.arrayNode().add(1));
                case 8 -> leaf.replace(make.nullNode());
                default -> leaf.replace(any(all, random).value().deepCopy());
            }
        }
    }

    /** Every third quantity is another one of the same order: most of these designs can be computed. */
    private static void near(JsonNode root, SplittableRandom random) {
        for (Leaf each : nodes(root, true)) {
            if (LEADING.matcher(each.value().asText()).lookingAt() && random.nextInt(3) == 0) {
                String text = each.value().asText();
                Matcher number = LEADING.matcher(text);
                String unit = number.lookingAt() ? text.substring(number.end()) : "";
                if (!unit.isBlank()) {
                    each.replace(JsonNodeFactory.instance.textNode(near(text, unit, random)));
                }
            }
        }
    }

    private static String near(String text, String unit, SplittableRandom random) {
        return number(text) * (0.7 + 0.6 * random.nextDouble()) + unit;
    }

    private static double number(String text) {
        Matcher number = LEADING.matcher(text);
        try {
            return number.lookingAt() ? Double.parseDouble(number.group()) : 1;
        } catch (NumberFormatException e) {
            return 1;
        }
    }

    /** A quantity that is some powers of ten off, the commonest slip. */
    private static String scaled(String text, String unit, SplittableRandom random) {
        double value = number(text);
        return value * Math.pow(10, random.nextInt(-12, 13)) * (random.nextInt(10) == 0 ? -1 : 1) + unit;
    }

    @Test
    void aDesignIsComputedOrRefused() throws IOException {
        long seed = Long.getLong("lifeline.seed", 18L);
        int cases = LONG ? 50_000 : 2_000;
        Path file = folder.resolve("d.json");
        Path result = folder.resolve("r.json");
        int[] ended = new int[5];
        for (int i = 0; i < cases; i++) {
            SplittableRandom random = new SplittableRandom(seed * 1_000_003 + i);
            JsonNode root = TestFiles.tree("independent/" + any(DESIGNS, random) + ".design.json");
            damage(root, random);
            String text = root.toString();
            Files.writeString(file, text);
            String which = "seed " + seed + ", case " + i + ": " + text;
            int code = run("analyze", "--no-motion", file.toString(), "--result", result.toString());
            String out = outBytes.toString(StandardCharsets.UTF_8);
            String err = errBytes.toString(StandardCharsets.UTF_8);
            assertThat(code).as("%s%n%s", which, err).isIn(0, 2, 3, 4);
            ended[code]++;
            assertThat(out + err)
                    .as(which)
                    .doesNotContain("\tat ", "java.", "org.lifeline.internal", "fasterxml")
                    .doesNotContainPattern("[a-z]Exception");
            if (code == ExitCode.DONE) {
                assertThat(NOT_A_NUMBER.matcher(out).find())
                        .as("%s%n%s", which, out)
                        .isFalse();
                assertThat(NOT_A_NUMBER.matcher(Files.readString(result)).find())
                        .as(which)
                        .isFalse();
            } else {
                assertThat(err).as(which).isNotBlank();
            }
        }
        assertThat(ended[0]).as("designs that were computed").isGreaterThan(cases / 5);
        assertThat(ended[2]).as("designs that were refused").isGreaterThan(cases / 10);
    }

    @Test
    void aChangedResultIsNeverReproduced() {
        long seed = Long.getLong("lifeline.seed", 18L);
        int cases = LONG ? 50_000 : 500;
        DesignFile design = TestFiles.design("independent/silo-roof-gripped-middle.design.json");
        DesignRun run = DesignRun.of(design.design());
        byte[] result =
                new ResultWriter("1", design.sha256()).write(run, CriteriaCheck.evaluate(run, design.criteria()));
        Reproduction reproduction = Reproduction.by("1");
        assertThat(reproduction.check(design, result).verdict()).isEqualTo(Verdict.REPRODUCED);
        for (int i = 0; i < cases; i++) {
            SplittableRandom random = new SplittableRandom(seed * 1_000_003 + i);
            byte[] changed = random.nextInt(3) == 0 ? bytesChanged(result, random) : valueChanged(result, random);
            Reproduction.Outcome o = reproduction.check(design, changed);
            if (o.verdict().isReproduced()) {
                assertThat(onlyHowItWent(TestFiles.tree(changed), TestFiles.tree(result)))
                        .as("seed %d, case %d: %s", seed, i, new String(changed, StandardCharsets.UTF_8))
                        .isTrue();
            }
        }
    }

    /** Numbers of the iteration are no results, and a last digit is within the tolerance. */
    private static boolean onlyHowItWent(JsonNode a, JsonNode b) {
        List<Leaf> left = results(a);
        List<Leaf> right = results(b);
        if (left.size() != right.size()) {
            return false;
        }
        for (int i = 0; i < left.size(); i++) {
            JsonNode x = left.get(i).value();
            JsonNode y = right.get(i).value();
            boolean near = x.isNumber()
                    && y.isNumber()
                    && Math.abs(x.doubleValue() - y.doubleValue())
                            <= Reproduction.DEFAULT_TOLERANCE * Math.max(1, Math.abs(y.doubleValue()));
            if (!x.equals(y) && !near) {
                return false;
            }
        }
        return true;
    }

    private static List<Leaf> results(JsonNode root) {
        for (Leaf each : nodes(root, false)) {
            if (List.of("convergence", "residual", "libraryVersion", "format").contains(each.key())) {
                each.remove();
            }
        }
        return nodes(root, true);
    }

    private static byte[] valueChanged(byte[] result, SplittableRandom random) {
        JsonNode root = TestFiles.tree(result);
        Leaf leaf = any(nodes(root, random.nextInt(4) > 0), random);
        JsonNodeFactory make = JsonNodeFactory.instance;
        double value = leaf.value().doubleValue();
        switch (random.nextInt(6)) {
            case 0 -> leaf.replace(make.numberNode(value * (1 + Math.pow(10, random.nextInt(-5, 3)))));
            case 1 -> leaf.replace(make.numberNode(-value));
            case 2 -> leaf.remove();
            case 3 -> leaf.replace(make.textNode("infinite"));
            case 4 -> leaf.replace(any(nodes(root, true), random).value().deepCopy());
            default -> leaf.replace(make.numberNode(12345.678));
        }
        String text = root.toString();
        return (random.nextInt(3) == 0 ? text.replace("12345.678", "1e999") : text).getBytes(StandardCharsets.UTF_8);
    }

    private static byte[] bytesChanged(byte[] result, SplittableRandom random) {
        byte[] bytes = result.clone();
        int at = random.nextInt(bytes.length);
        if (random.nextBoolean()) {
            bytes[at] = (byte) "0123456789{}[]\",:eE-. ".charAt(random.nextInt(22));
            return bytes;
        }
        return java.util.Arrays.copyOf(bytes, at);
    }
}
