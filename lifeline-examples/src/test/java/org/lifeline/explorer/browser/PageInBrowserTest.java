package org.lifeline.explorer.browser;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.offset;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.lifeline.examples.TestFiles;
import org.lifeline.examples.cli.CommandLines;
import org.lifeline.explorer.engine.Digits;
import org.lifeline.explorer.engine.Engine;
import org.lifeline.explorer.engine.RandomDesigns;
import org.lifeline.file.DesignReader;

/**
 * The page in Chromium, driven as a user drives it. Skipped where Chromium is not installed; with the environment variable
 * {@code LIFELINE_BROWSER=required} that is a failure.
 */
class PageInBrowserTest {
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final long FIRST = 20_261_128;
    private static final int RANDOM_DESIGNS = 200;

    @TempDir
    static Path folder;

    private static Path page = Path.of("");
    private static Optional<BrowserPage> browser = Optional.empty();

    @BeforeAll
    static void begin() throws Exception {
        Optional<Path> program = BrowserPage.program();
        if (program.isEmpty()) {
            assertThat(System.getenv("LIFELINE_BROWSER"))
                    .as("Chromium is not installed, but LIFELINE_BROWSER says that it is required")
                    .isNotEqualTo("required");
        }
        assumeTrue(program.isPresent(), "Chromium is not installed");
        page = folder.resolve("page.html");
        PrintStream none = new PrintStream(OutputStream.nullOutputStream(), true, StandardCharsets.UTF_8);
        assertThat(CommandLines.run(none, none, "explorer", "--html", page.toString()))
                .isZero();
        browser = Optional.of(BrowserPage.begin(program.orElseThrow(), folder));
    }

    @AfterAll
    static void end() {
        browser.ifPresent(BrowserPage::close);
    }

    private static BrowserPage browser() {
        return browser.orElseThrow();
    }

    @BeforeEach
    void openPage() throws Exception {
        open("", 1200);
    }

    /** Nothing is asked of a network, and the console says nothing, whatever was done. */
    @AfterEach
    void nothingWasLoadedAndNothingWentWrong() {
        assertThat(browser().console()).as("console").isEmpty();
        assertThat(browser().requests())
                .allMatch(
                        r -> r.startsWith(page.toUri().toString()) || r.startsWith("blob:") || r.equals("about:blank"));
    }

    /** Loads the page anew; another fragment alone would leave it as it is for a moment. */
    private static void open(String fragment, int width) throws Exception {
        browser().open("about:blank", 1200, 900);
        browser().open(page.toUri() + fragment, width, 900);
        browser().until("state.answer && !state.asked");
    }

    private static String link(String design) {
        return "#design="
                + Base64.getUrlEncoder().withoutPadding().encodeToString(design.getBytes(StandardCharsets.UTF_8));
    }

    /** The middle of an element in the window [px], scrolled into sight. */
    private static double[] middle(String selector) throws Exception {
        JsonNode box = browser()
                .value("(function(){const e=document.querySelector(" + JSON.writeValueAsString(selector)
                        + ");e.scrollIntoView({block:'center'});const r=e.getBoundingClientRect();"
                        + "return [r.left+r.width/2,r.top+r.height/2];})()");
        return new double[] {box.get(0).asDouble(), box.get(1).asDouble()};
    }

    private static void click(String selector) throws Exception {
        double[] at = middle(selector);
        browser().mouse("mousePressed", at[0], at[1]);
        browser().mouse("mouseReleased", at[0], at[1]);
    }

    /** Types into a field and leaves it. */
    private static void type(String selector, String text) throws Exception {
        click(selector);
        browser().value("document.activeElement.select()");
        browser().call("Input.insertText", java.util.Map.of("text", text));
        browser().key("Tab", 9);
    }

    private static void settled() throws Exception {
        browser().until("!state.asked && !state.again");
    }

    @Test
    void thePageIsSmallAndForbidsLoading() throws Exception {
        String html = Files.readString(page);
        assertThat(Files.size(page)).isLessThan(1_000_000);
        assertThat(html.contains("default-src 'none'; script-src 'sha256-")).isTrue();
        String ours = html.replace("http://www.w3.org/2000/svg", "");
        for (String loading : List.of("http:", "https:", "@import", " src=", "fetch(", "XMLHttpRequest", "import(")) {
            assertThat(ours.contains(loading)).as("the page names %s", loading).isFalse();
        }
    }

    @Test
    void numbersAreThoseOfTheLibrary() throws Exception {
        JsonNode here = JSON.readTree(Engine.arrest(TestFiles.text("demo-design.json"), 0, Double.NaN));
        JsonNode there = browser().value("state.answer");
        assertThat(new Digits().compare(here, there).differences()).isEmpty();
        String shown = browser()
                .value("document.querySelector('#results tbody tr td').textContent")
                .asText();
        assertThat(shown)
                .isEqualTo(String.format(
                        java.util.Locale.ROOT,
                        "%.2f\u00a0kN",
                        here.path("maximum").path("endAnchorLoad").asDouble() / 1000));
    }

    @Test
    void randomDesignsHaveTheDigitsOfTheJvm() throws Exception {
        List<String> designs = new ArrayList<>();
        for (int i = 0; i < RANDOM_DESIGNS; i++) {
            designs.add(RandomDesigns.of(FIRST + i));
        }
        JsonNode answers = browser()
                .value("ask('curve', {ask: 'curve', designs: " + JSON.writeValueAsString(designs)
                        + ", fall: 0, temperature: NaN})");
        int solved = 0;
        int compared = 0;
        for (int i = 0; i < designs.size(); i++) {
            JsonNode here = JSON.readTree(Engine.numbers(designs.get(i), 0, Double.NaN));
            Digits digits = new Digits().compare(here, answers.get(i));
            compared += digits.compared();
            assertThat(digits.differences())
                    .as("seed %d: %s", FIRST + i, designs.get(i))
                    .isEmpty();
            solved += here.has("maximum") ? 1 : 0;
        }
        assertThat(solved).as("designs that were solved, not refused").isGreaterThan(RANDOM_DESIGNS * 9 / 10);
        assertThat(compared).isGreaterThan(RANDOM_DESIGNS * 30);
    }

    /** The result in the page against the file that the command line writes for the same design. */
    @Test
    void theResultIsThatOfTheCommandLine() throws Exception {
        String design = RandomDesigns.of(FIRST);
        Path file = folder.resolve("line.json");
        Files.writeString(file, design);
        Path result = folder.resolve("line.result.json");
        PrintStream none = new PrintStream(OutputStream.nullOutputStream(), true, StandardCharsets.UTF_8);
        assertThat(CommandLines.run(
                        none, none, "analyze", "--no-motion", file.toString(), "--result", result.toString()))
                .isZero();
        open(link(design), 1200);
        browser().until("document.getElementById('result').textContent");
        ObjectNode here = (ObjectNode) JSON.readTree(Files.readString(result));
        ObjectNode there = (ObjectNode) JSON.readTree(
                browser().value("document.getElementById('result').textContent").asText());
        assertThat(there.path("format").asText()).isEqualTo("org.lifeline.result/2");
        assertThat(there.path("designSha256")).isEqualTo(here.path("designSha256"));
        assertThat(there.path("assessment").path("governing").size()).isGreaterThan(5);
        for (ObjectNode each : List.of(here, there)) {
            ((ObjectNode) each.path("provenance")).remove("jdk");
        }
        assertThat(new Digits().compare(here, there).differences()).isEmpty();
    }

    @Test
    void aValueIsTypedTurnedUndoneAndRefused() throws Exception {
        type("#v-mass-x", "120");
        settled();
        assertThat(browser().value("state.design.workers[0].mass").asText()).isEqualTo("120 kg");
        double before = browser().value("state.answer.clearance.deployment").asDouble();
        click("#v-pretension");
        browser().value("document.getElementById('v-pretension').focus()");
        String old = browser().value("state.design.installed.pretension").asText();
        browser().key("ArrowRight", 39);
        settled();
        assertThat(browser().value("state.design.installed.pretension").asText())
                .isNotEqualTo(old);
        type("#v-mass-x", "220 lb");
        settled();
        assertThat(browser().value("siOf(state.design.workers[0].mass)").asDouble())
                .isEqualTo(99.7903, offset(1e-3));
        assertThat(browser().value("state.answer.clearance.deployment").asDouble())
                .isLessThan(before);
        type("#v-mass-x", "-5");
        settled();
        assertThat(browser()
                        .value("document.querySelector('#refused').textContent")
                        .asText())
                .contains("workers[0].mass", "-5 kg", "must be a finite number above zero".substring(0, 4));
        assertThat(browser()
                        .value("document.getElementById('v-mass-w').textContent")
                        .asText())
                .contains("workers[0].mass");
        click("#undo");
        settled();
        assertThat(browser()
                        .value("document.querySelector('#refused').textContent")
                        .asText())
                .isEmpty();
        assertThat(browser().value("siOf(state.design.workers[0].mass)").asDouble())
                .isEqualTo(99.7903, offset(1e-3));
    }

    @Test
    void theWorkerIsDraggedAlongTheLine() throws Exception {
        double[] at = middle("#elevation .handle");
        browser().mouse("mousePressed", at[0], at[1]);
        for (int i = 1; i <= 8; i++) {
            browser().mouse("mouseMoved", at[0] - 30 * i, at[1]);
        }
        browser().mouse("mouseReleased", at[0] - 240, at[1]);
        settled();
        assertThat(browser().value("state.design.falls[0].span").asInt()).isEqualTo(1);
        assertThat(browser().value("state.undo.length").asInt())
                .as("one drag is undone at once")
                .isEqualTo(1);
        click("#undo");
        settled();
        assertThat(browser().value("state.design.falls[0].span").asInt()).isEqualTo(2);
    }

    @Test
    void aLinkHoldsTheDesign() throws Exception {
        type("#v-friction-x", "0.35");
        settled();
        browser().until("location.hash.length > 100 && fromBase64url(location.hash.slice(8)) === state.text");
        String address = browser().value("location.href").asText();
        JsonNode design = browser().value("state.design");
        JsonNode numbers = browser().value("state.answer.maximum");
        browser().open("about:blank", 1200, 900);
        browser().open(address, 1200, 900);
        browser().until("state.answer && !state.asked");
        assertThat(browser().value("state.design")).isEqualTo(design);
        assertThat(browser().value("state.answer.maximum")).isEqualTo(numbers);
        byte[] inAddress = Base64.getUrlDecoder().decode(address.substring(address.indexOf("#design=") + 8));
        assertThat(JSON.readTree(inAddress)).isEqualTo(design);
    }

    /** The fall, the temperature and the force that are looked at stand in the address, too; what is not there is left out. */
    /** Members that no control of the page turns stay in the design, are computed, and what is not is said. */
    @ParameterizedTest
    @CsvSource({
        "second-fall-and-rescue, a second fall, true",
        "second-fall-and-rescue, a rescuer on the line, true",
        "absorber-conditions, the condition: cold, false"
    })
    void whatHasNoControlIsKeptComputedOrSaid(String name, String said, boolean incidents) throws Exception {
        String design = Files.readString(Path.of("designs/" + name + ".design.json"));
        open(link(design), 1200);
        if (!incidents) {
            // What the library computes: the temperatures in service and the limit of the cold absorber between them.
            List<String> offered = new ArrayList<>(List.of("NaN"));
            new DesignReader()
                    .read(design.getBytes(StandardCharsets.UTF_8))
                    .design()
                    .temperatures()
                    .forEach(t -> offered.add(String.valueOf(Math.round(t))));
            assertThat(browser()
                            .value("Array.from(document.getElementById('temperature').options,o=>o.value).join()")
                            .asText())
                    .isEqualTo(String.join(",", offered));
            choose("temperature", "-10");
            settled();
            choose("temperature", "-25");
        }
        type("#v-mass-x", "98");
        settled();
        ObjectNode wanted = (ObjectNode) JSON.readTree(design);
        ((ObjectNode) wanted.path("workers").path(0)).put("mass", "98 kg");
        browser()
                .until(
                        "location.hash.length > 100 && fromBase64url(/design=([^&]*)/.exec(location.hash)[1]) === state.text");
        assertThat(JSON.readTree(browser().value("state.text").asText())).isEqualTo(wanted);
        assertThat(browser()
                        .value("document.getElementById('caution-list').textContent")
                        .asText())
                .contains(said);
        JsonNode here =
                JSON.readTree(Engine.arrest(browser().value("state.text").asText(), 0, incidents ? Double.NaN : -25));
        assertThat(new Digits().compare(here, browser().value("state.answer")).differences())
                .isEmpty();
        browser().until("document.getElementById('result').textContent");
        String governing = browser()
                .value("document.getElementById('governing').textContent")
                .asText();
        JsonNode result = JSON.readTree(
                browser().value("document.getElementById('result').textContent").asText());
        assertThat(result.path("assessment").path("rescue").path("governing").isEmpty())
                .isEqualTo(!incidents);
        assertThat(governing).contains(incidents ? "span 1" : "absorber of rigger cold");
        assertThat(browser()
                        .value("document.getElementById('whole-state').textContent")
                        .asText()
                        .contains("the second fall among them"))
                .isEqualTo(incidents);
    }

    /** What governs is said with the model factors of the design, as analyze says it; that the numbers of one fall lack them, too. */
    @Test
    void theWorstCarriesTheModelFactors() throws Exception {
        ObjectNode design = (ObjectNode) TestFiles.tree("independent/silo-roof-gripped-middle.design.json");
        design.putObject("modelFactors").put("force", 1.25).put("distance", 1.1);
        open(link(design.toString()), 1200);
        assertThat(browser()
                        .value("document.getElementById('caution-list').textContent")
                        .asText())
                .contains("model factors: force × 1.25, distance × 1.1");
        browser().until("document.getElementById('result').textContent");
        JsonNode governing = JSON.readTree(browser()
                        .value("document.getElementById('result').textContent")
                        .asText())
                .path("assessment")
                .path("governing");
        JsonNode anchor = governing.path(0);
        assertThat(anchor.path("quantity").asText()).isEqualTo("endAnchorLoad");
        assertThat(anchor.path("factored").asDouble())
                .isCloseTo(1.25 * anchor.path("value").asDouble(), offset(1e-6));
        assertThat(browser()
                        .value("document.getElementById('governing').tBodies[0].rows[0].cells[1].textContent")
                        .asText()
                        .replaceAll("\\h", " "))
                .startsWith(String.format(
                        java.util.Locale.ROOT,
                        "%.2f kN",
                        anchor.path("factored").asDouble() / 1000))
                .contains(String.format(
                        java.util.Locale.ROOT,
                        "as computed %.2f kN, without the model factor",
                        anchor.path("value").asDouble() / 1000));
    }

    @Test
    void aLinkHoldsWhatIsLookedAt() throws Exception {
        open("", 1200);
        choose("fall", "1");
        choose("temperature", "-20");
        choose("side", "maximum");
        settled();
        browser().until("/&fall=2&temperature=-20&force=highest$/.test(location.hash)");
        JsonNode numbers = browser().value("state.answer.maximum");
        String address = browser().value("location.hash").asText();
        open(address, 1200);
        assertThat(browser()
                        .value("[state.view.fall,state.view.temperature,state.view.side]")
                        .toString())
                .isEqualTo("[1,-20,\"maximum\"]");
        assertThat(browser().value("document.getElementById('side').value").asText())
                .isEqualTo("maximum");
        assertThat(browser().value("state.answer.maximum")).isEqualTo(numbers);
        open(address.replace("fall=2", "fall=99").replace("-20", "17.5"), 1200);
        assertThat(browser()
                        .value("[state.view.fall,String(state.view.temperature)]")
                        .toString())
                .isEqualTo("[0,\"NaN\"]");
    }

    private static void choose(String id, String value) throws Exception {
        browser()
                .value("(function(){const e=document.getElementById('" + id + "');e.value='" + value
                        + "';e.dispatchEvent(new Event('change'));return 0;})()");
    }

    @Test
    void aCurveIsDrawnKeptAndNamed() throws Exception {
        browser().until("curve.points.filter(Boolean).length > 40 && !document.getElementById('keep').disabled");
        String held =
                browser().value("document.getElementById('held').textContent").asText();
        assertThat(held).contains("Held:", "pretension 1.20", "same share of its span");
        type("#keep-name", "as it was");
        click("#keep");
        type("#v-pretension-x", "3");
        settled();
        browser().until("document.querySelectorAll('#curve .curve').length === 2");
        assertThat(browser()
                        .value("document.getElementById('kept').textContent")
                        .asText())
                .contains("as it was");
        JsonNode point = browser().value("curve.points.filter(Boolean)[20]");
        String design = browser()
                .value("(function(){const d=copyOf(state.design);variables(d,state.view).find(v=>v.id==="
                        + "'run.all').set(d,state.view," + point.get(0) + ");return JSON.stringify(d);})()")
                .asText();
        JsonNode here = JSON.readTree(Engine.numbers(design, 0, Double.NaN));
        assertThat(point.get(1).asDouble())
                .isEqualTo(here.path("maximum").path("endAnchorLoad").asDouble(), offset(1e-5));
        assertThat(browser().value("curvesCsv().split('\\r\\n').length").asInt())
                .isGreaterThan(80);
        assertThat(browser().value("svgFile(document.getElementById('curve'))").asText())
                .startsWith("<svg")
                .contains("<path");
    }

    @Test
    void aFallIsPlayed() throws Exception {
        String design = RandomDesigns.of(FIRST + 2)
                .replaceAll("\"massPerLength\": \"[^\"]*\"", "\"massPerLength\": \"0.4 kg/m\"");
        open(link(design), 1200);
        browser()
                .value("document.getElementById('side').value='maximum';"
                        + "document.getElementById('side').dispatchEvent(new Event('change'))");
        click("#play");
        browser().until("player.running && player.time > 0.05");
        assertThat(browser()
                        .value("document.getElementById('play-said').textContent")
                        .asText())
                .contains("In time over energy balance: tension ");
        JsonNode here = JSON.readTree(Engine.inTime(design, 0, Double.NaN, false, 0));
        JsonNode there = browser().value("state.inTime");
        for (String each : List.of("maximumTension", "arrestForce", "endAnchorLoad", "totalFallDistance")) {
            assertThat(there.path(each).doubleValue() / here.path(each).doubleValue())
                    .as("%s in time; last digits grow with the number of steps", each)
                    .isBetween(1 - 1e-6, 1 + 1e-6);
        }
        assertThat(browser()
                        .value("document.querySelectorAll('#scene .cable').length")
                        .asInt())
                .isEqualTo(1);
        click("#play");
        assertThat(browser().value("player.running").asBoolean()).isFalse();
    }

    @Test
    void unitsAreSwitched() throws Exception {
        browser()
                .value("document.getElementById('units').value='us';"
                        + "document.getElementById('units').dispatchEvent(new Event('change'))");
        assertThat(browser()
                        .value("document.querySelector('#results tbody tr td').textContent")
                        .asText())
                .endsWith("lbf");
        assertThat(browser()
                        .value("document.getElementById('v-run-all-x').value")
                        .asDouble())
                .isEqualTo(28 / 3.0 / 0.3048, offset(1e-3));
    }

    @Test
    void everyLessonSetsThePage() throws Exception {
        int lessons = browser()
                .value("document.querySelectorAll('#lessons button').length")
                .asInt();
        assertThat(lessons).isEqualTo(6);
        for (int i = 0; i < lessons; i++) {
            browser().value("document.querySelectorAll('#lessons button')[" + i + "].click()");
            settled();
            assertThat(browser()
                            .value("document.getElementById('refused').textContent")
                            .asText())
                    .isEmpty();
            assertThat(browser()
                            .value("document.getElementById('note').textContent")
                            .asText())
                    .startsWith("Lesson: ");
        }
    }

    @ParameterizedTest
    @CsvSource({"390, light", "390, dark", "1200, light", "1200, dark"})
    void nothingSticksOutAndNothingIsBlank(int width, String scheme) throws Exception {
        browser()
                .call(
                        "Emulation.setEmulatedMedia",
                        java.util.Map.of(
                                "features",
                                List.of(java.util.Map.of("name", "prefers-color-scheme", "value", scheme))));
        open("", width);
        browser().until("curve.points.filter(Boolean).length > 40");
        browser().value("document.querySelectorAll('details').forEach(d=>d.open=true)");
        assertThat(browser()
                        .value("document.documentElement.scrollWidth-document.documentElement.clientWidth")
                        .asInt())
                .as("scrolls sideways by")
                .isLessThanOrEqualTo(0);
        JsonNode out = browser()
                .value(
                        "Array.from(document.querySelectorAll('body *')).filter(e=>!e.closest('.scroll,svg')"
                                + "&&!e.matches('.skip,.aside')).filter(e=>{const r=e.getBoundingClientRect();return r.width>0&&(r.right>"
                                + "document.documentElement.clientWidth+1||r.left<-1);}).map(e=>e.tagName+'#'+e.id+' '+e.className)");
        assertThat(out).as("boxes outside of the window").isEmpty();
        JsonNode text = browser()
                .value("Array.from(document.querySelectorAll('#elevation text,#curve text')).filter(e=>{"
                        + "const r=e.getBoundingClientRect(),s=e.ownerSVGElement.getBoundingClientRect();return r.left<s.left-1||"
                        + "r.right>s.right+1;}).map(e=>e.textContent)");
        assertThat(text).as("words outside of their picture").isEmpty();
        assertThat(browser()
                        .value("document.querySelectorAll('#elevation path').length")
                        .asInt())
                .isGreaterThan(10);
        java.awt.image.BufferedImage shot = javax.imageio.ImageIO.read(
                new java.io.ByteArrayInputStream(browser().picture(false)));
        long colours = java.util.stream.IntStream.range(0, shot.getHeight())
                .flatMap(y ->
                        java.util.stream.IntStream.range(0, shot.getWidth()).map(x -> shot.getRGB(x, y)))
                .distinct()
                .count();
        assertThat(colours).as("colours on the screen").isGreaterThan(20);
    }
}
