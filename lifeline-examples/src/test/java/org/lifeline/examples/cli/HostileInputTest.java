package org.lifeline.examples.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.File;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Isolated;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.lifeline.examples.TestFiles;
import org.lifeline.examples.programs.Programs;
import org.w3c.dom.Document;
import org.w3c.dom.NodeList;

/** Titles and names that somebody put into a design to do harm come out inert, whatever the command. */
@Isolated("it redirects the standard output")
class HostileInputTest {
    /** The programs that read a design file. */
    private static final List<String> ON_DESIGNS =
            List.of("envelope", "solve-for", "map", "stringing", "field-check", "study", "histories");

    /** Text that clears a terminal and rings its bell, in characters that a file name may have. */
    private static final String STEERING = "\u001b[2J\u001b[31mred\u0007";

    @TempDir
    private Path folder;

    private final ByteArrayOutputStream outBytes = new ByteArrayOutputStream();
    private final ByteArrayOutputStream errBytes = new ByteArrayOutputStream();

    static List<String> texts() {
        return List.of(
                "</title><script>alert(1)</script>",
                "\"><img src=http://probe.invalid/x onerror=alert(1)>",
                "' onmouseover='alert(1)",
                "]]><svg onload=alert(1)>&lt;",
                "=HYPERLINK(\"http://probe.invalid\";\"x\")",
                "@SUM(A1:A9)",
                "+1+cmd|' /C calc'!A0",
                "\u001b[2J\u001b[31mred\u0007\b\u0000",
                "\u202Etxt.exe\u202C \u2066left\u2069 \u200Fmark \u061C",
                "zero\u200Bwidth\uFEFF \uFFFF",
                "line one\r\nline two\u2028line three\ttab %n %s $1 \\Q");
    }

    /** A small design in which every name and title is the text. */
    private Path design(String text, String title) throws Exception {
        ObjectMapper json = new ObjectMapper();
        String name = json.writeValueAsString(text);
        String design = """
                {
                  "format": "org.lifeline.design/1",
                  "title": TITLE,
                  "cable": { "name": NAME, "massPerLength": "0.41 kg/m", "axialStiffness": "3.3 MN",
                    "minimumBreakingStrength": "20 kN" },
                  "supports": [
                    { "id": NAME, "type": "end", "position": ["0 m", "0 m", "6 m"], "capacity": "10 kN",
                      "inlineAbsorber": { "curve": [["0 m", "5 kN"], ["0.02 m", "5 kN"]] } },
                    { "id": POST, "type": "intermediate", "position": ["6 m", "1 m", "8 m"], "passage": "free" },
                    { "id": END, "type": "end", "position": ["12 m", "0 m", "6 m"] }
                  ],
                  "installed": { "pretension": "1.5 kN", "temperature": "15 °C" },
                  "workers": [
                    { "id": NAME, "mass": "90 kg", "walkingLevel": "4.6 m",
                      "connection": { "tautLength": "1.2 m",
                        "absorber": { "clearanceForce": "3.2 kN", "maximumForce": "6 kN", "maximumExtension": "0.2 m",
                          "stopStiffness": "200 kN/m" } } },
                    { "id": POST, "mass": "80 kg", "walkingLevel": "4.6 m",
                      "connection": { "tautLength": "1.2 m",
                        "absorber": { "clearanceForce": "3.2 kN", "maximumForce": "6 kN", "maximumExtension": "1.2 m" } } }
                  ],
                  "falls": [{ "id": NAME, "span": 1, "station": "3 m", "fallers": [NAME],
                    "hanging": [{ "worker": POST, "span": 2, "station": "2 m" }] }],
                  "clearance": { "obstructions": [{ "from": "0 m", "to": "9 m", "elevation": "3 m" }] },
                  "criteria": [ "us-osha-hll-factor",
                    { "id": NAME, "demand": "supportLoad", "support": POST, "capacity": "10 kN", "source": NAME } ]
                }
                """.replace("TITLE", json.writeValueAsString(title))
                .replace("NAME", name)
                .replace("POST", json.writeValueAsString(text + "2"))
                .replace("END", json.writeValueAsString(text + "3"));
        return Files.writeString(folder.resolve("design.json"), design);
    }

    private int run(Object... args) {
        outBytes.reset();
        errBytes.reset();
        return CommandLines.run(
                new PrintStream(outBytes, true, StandardCharsets.UTF_8),
                new PrintStream(errBytes, true, StandardCharsets.UTF_8),
                Stream.of(args).map(Object::toString).toArray(String[]::new));
    }

    /** What a command said on both streams, the ways of files left out. */
    private String said() {
        return (outBytes.toString(StandardCharsets.UTF_8) + errBytes.toString(StandardCharsets.UTF_8))
                .replace(folder.toString(), "");
    }

    private static void assertInert(String text) {
        assertThat(text.codePoints().filter(c -> c != '\n' && c != '\r')).allMatch(c -> c >= 0x20 && c != 0x7F);
        assertThat(text.codePoints()).noneMatch(c -> {
            int type = Character.getType(c);
            return type == Character.FORMAT
                    || type == Character.SURROGATE
                    || type == Character.UNASSIGNED
                    || type == Character.LINE_SEPARATOR
                    || (type == Character.CONTROL && c >= 0x80);
        });
    }

    private static Document parse(String xml) throws Exception {
        DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
        factory.setFeature("http://apache.org/xml/features/disallow-doctype-decl", true);
        return factory.newDocumentBuilder().parse(new ByteArrayInputStream(xml.getBytes(StandardCharsets.UTF_8)));
    }

    private static void assertHarmless(String markup) throws Exception {
        assertInert(markup);
        Document d = parse(markup.replace("<!DOCTYPE html>\n", ""));
        for (String tag : List.of("script", "img", "iframe", "object")) {
            assertThat(d.getElementsByTagName(tag).getLength()).as(tag).isZero();
        }
        NodeList all = d.getElementsByTagName("*");
        for (int i = 0; i < all.getLength(); i++) {
            for (int k = 0; k < all.item(i).getAttributes().getLength(); k++) {
                assertThat(all.item(i).getAttributes().item(k).getNodeName()).doesNotStartWith("on");
            }
        }
    }

    private static void assertNoFormula(Path csv) throws Exception {
        String text = Files.readString(csv);
        assertInert(text);
        boolean quoted = false;
        boolean start = true;
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (start && c != '"' && c != ' ') {
                boolean number = c == '-' && i + 1 < text.length() && Character.isDigit(text.charAt(i + 1));
                assertThat("=+@-|".indexOf(c) < 0 || number)
                        .as(
                                "%s: field that begins %s",
                                csv.getFileName(), text.substring(i, Math.min(i + 20, text.length())))
                        .isTrue();
                start = false;
            }
            if (c == '"') {
                quoted = !quoted;
            } else if (!quoted && (c == ',' || c == '\n')) {
                start = true;
            }
        }
    }

    @ParameterizedTest
    @MethodSource("texts")
    void everyCommandWritesInertText(String text) throws Exception {
        Path design = design(text, text);
        assertThat(run("analyze", "--no-motion", design)).as(said()).isZero();
        assertInert(said());
        Path result = folder.resolve("design.result.json");
        assertThat(run("reproduce", result, design)).as(said()).isZero();
        assertInert(said());
        ObjectNode changed = (ObjectNode) TestFiles.tree(Files.readAllBytes(result));
        changed.put("libraryVersion", text);
        changed.put(text, text);
        ((ObjectNode) changed.path("arrests").get(0)).put("fall", text + "!").put("sag", 1.5);
        Files.write(result, new ObjectMapper().writeValueAsBytes(changed));
        assertThat(run("reproduce", result, design)).isEqualTo(ExitCode.CHECK_FAILED);
        assertInert(said());

        Path html = folder.resolve("r.html");
        Path plain = folder.resolve("r.txt");
        Path parts = folder.resolve("parts");
        assertThat(run(
                        "report",
                        design,
                        "--html",
                        html,
                        "--text",
                        plain,
                        "--parts",
                        parts,
                        "--by",
                        text,
                        "--date",
                        text,
                        "--no-transient"))
                .as(said())
                .isZero();
        assertInert(said());
        assertHarmless(Files.readString(html));
        assertInert(Files.readString(plain));
        try (Stream<Path> files = Files.list(parts)) {
            for (Path each : files.toList()) {
                if (each.toString().endsWith(".svg")) {
                    assertHarmless(Files.readString(each));
                } else {
                    assertNoFormula(each);
                }
            }
        }
    }

    /** What would steer a terminal or start a formula; programs write no markup but the map and the histories. */
    static List<String> terminalTexts() {
        return texts().stream()
                .filter(t -> t.indexOf('<') < 0 && t.indexOf('\'') < 0)
                .toList();
    }

    @Test
    void theMapIsHarmless() throws Exception {
        assertExample("map", design(texts().get(8), texts().get(7)));
        Path map = folder.resolve("map.svg");
        assertExample("map", design(texts().get(1), texts().get(0)), map);
        assertHarmless(Files.readString(map));
    }

    @ParameterizedTest
    @MethodSource("terminalTexts")
    void everyProgramWritesInertText(String text) throws Exception {
        Path design = design(text, text);
        assertExample("envelope", design);
        assertExample("stringing", design);
        assertExample("field-check", design, "1", "40 mm", "5 mm", "15 °C");
        assertExample("solve-for", design, "pretension", "1 kN", "2 kN");
        Path csv = folder.resolve("cases.csv");
        assertExample("study", design, "20", csv);
        assertNoFormula(csv);
    }

    @ParameterizedTest
    @MethodSource("texts")
    void historiesAreInert(String text) throws Exception {
        Path csv = folder.resolve("histories.csv");
        Path picture = folder.resolve("histories.svg");
        assertExample("histories", design(text, text), csv, picture);
        assertNoFormula(csv);
        assertHarmless(Files.readString(picture));
    }

    /** What a file is called is no more trusted than what stands in it. */
    @Test
    void programsNameTheirFilesInertly() throws Exception {
        assumeTrue(File.separatorChar == '/', "a file can have such a name");
        Path design = design("name", "title");
        Path csv = folder.resolve(STEERING + ".csv");
        Path cases = folder.resolve(STEERING + "cases.csv");
        Path picture = folder.resolve(STEERING + ".svg");
        assertExample("histories", design, csv, picture);
        assertExample("study", design, "20", cases);
        assertExample("map", design, picture);
        assertExample("span-study", picture);
        assertThat(csv).exists();
        assertThat(picture).exists();
    }

    /** All the others have their own line and take nothing; what they are given is refused and comes out inert. */
    @Test
    void programsWithoutADesignRepeatNothing() {
        for (Programs.Program each : Programs.all()) {
            if (!ON_DESIGNS.contains(each.name()) && !each.name().equals("span-study")) {
                assertThat(run("example", each.name(), STEERING)).isEqualTo(ExitCode.BAD_INPUT);
                assertInert(said());
            }
        }
    }

    private void assertExample(Object... args) {
        PrintStream before = System.out;
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try {
            System.setOut(new PrintStream(bytes, true, StandardCharsets.UTF_8));
            assertThat(run(Stream.concat(Stream.of("example"), Stream.of(args)).toArray()))
                    .as(said())
                    .isZero();
        } finally {
            System.setOut(before);
        }
        assertThat(bytes.size()).isPositive();
        assertInert(bytes.toString(StandardCharsets.UTF_8) + said());
    }

    @Test
    void theChecksSeeHarm() throws Exception {
        for (String harm : List.of("\u001b[2J", "\u202E", "a\u2028b", "\u0085", "\u200B")) {
            assertThatThrownBy(() -> assertInert(harm)).isInstanceOf(AssertionError.class);
        }
        for (String harm : List.of("<p><script/></p>", "<p onclick='x'/>", "<p><img/></p>")) {
            assertThatThrownBy(() -> assertHarmless(harm)).isInstanceOf(AssertionError.class);
        }
        for (String harm : List.of("a,=1+1\r\n", "@SUM(A1)\r\n", "\"x\",\"+1\"\r\n")) {
            Path csv = Files.writeString(folder.resolve("harm.csv"), harm);
            assertThatThrownBy(() -> assertNoFormula(csv)).isInstanceOf(AssertionError.class);
        }
        assertNoFormula(Files.writeString(folder.resolve("good.csv"), "a,'=1+1,-2.5,\"'@x, y\"\r\n"));
    }

    @Test
    void aMegabyteOfTextIsCutWithItsLengthStated() throws Exception {
        Path design = design("n".repeat(200_000), "t".repeat(1 << 20));
        assertThat(run("analyze", "--no-motion", design, "--no-result")).isZero();
        // One screen, in which every name is cut.
        assertThat(said()).hasSizeLessThan(100_000);
        assertThat(run("analyze", "--no-motion", "--full", design, "--no-result"))
                .isZero();
        assertThat(said()).contains("(1048576 characters)").doesNotContain("t".repeat(10_000));
        Path html = folder.resolve("r.html");
        assertThat(run("report", design, "--html", html, "--no-transient", "--no-envelope"))
                .isZero();
        assertThat(Files.readString(html)).contains("(1048576 characters)").hasSizeLessThan(3_000_000);
    }

    @Test
    void namesOfFilesAndOptionsAreInertToo() {
        for (String text : texts()) {
            if (text.indexOf('\u0000') < 0) {
                assertThat(run("example", text)).isEqualTo(ExitCode.BAD_INPUT);
                assertInert(said());
                assertThat(run("analyze", "--no-motion", "--units", text)).isEqualTo(ExitCode.BAD_INPUT);
                assertInert(said());
                assertThat(run("report", folder.resolve("none"), "--detail", text))
                        .isEqualTo(ExitCode.BAD_INPUT);
                assertInert(said());
                assertThat(run("analyze", "--" + text)).isEqualTo(ExitCode.BAD_INPUT);
                assertInert(said());
            }
        }
    }
}
