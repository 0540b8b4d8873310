package org.lifeline.examples.browser;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.lifeline.examples.TestFiles;
import org.lifeline.examples.cli.CommandLines;

/**
 * The report of the demonstration in a real browser: pages of paper, nothing cut off on a phone or a screen, no script, no
 * network. Skipped where Chromium is not installed; with the environment variable {@code LIFELINE_BROWSER=required} that is
 * a failure.
 */
class ReportInBrowserTest {
    /** Most pages of the report of the demonstration. */
    private static final int MOST_PAGES = 25;

    /** Measures the page in a frame of a width: how far it scrolls sideways, and boxes that stick out of the frame. */
    private static final String PROBE = """
            <!DOCTYPE html><html><head><meta charset="utf-8"></head><body style="margin:0">
            <iframe id="f" src="%s" style="border:0;width:%dpx;height:900px"></iframe><pre id="result">waiting</pre>
            <script>
            document.getElementById('f').onload=function(){
            var d=this.contentDocument,w=d.documentElement.clientWidth,out=0,first='';
            d.querySelectorAll('body *').forEach(function(e){
            if(e.closest('.wide')&&!e.classList.contains('wide'))return;
            if(e.closest('details:not([open])')&&e.tagName!=='SUMMARY'&&e.tagName!=='DETAILS')return;
            var r=e.getBoundingClientRect();
            if(r.width>0&&(r.right>w+1||r.left<-1)){out++;if(!first)first=e.tagName+' '+r.right;}});
            document.getElementById('result').textContent='scroll '+(d.documentElement.scrollWidth-w)+' out '+out
            +' boxes '+d.querySelectorAll('body *').length+' '+first+' done';};
            </script></body></html>
            """;

    /**
     * Lays the page out as on paper in a frame as wide as the paper without its margins: rules for print hold, those for
     * screens do not. Looks for boxes that stick out of the paper, boxes whose content is wider than they are, and letters
     * of drawings outside of their frame.
     */
    private static final String PAPER_PROBE = """
            <!DOCTYPE html><html><head><meta charset="utf-8"></head><body style="margin:0">
            <iframe id="f" src="%s" style="border:0;width:%smm;height:900px"></iframe><pre id="result">waiting</pre>
            <script>
            document.getElementById('f').onload=function(){
            var d=this.contentDocument,rules=0;
            Array.from(d.styleSheets).forEach(function(s){Array.from(s.cssRules).forEach(function(r){
            if(!(r instanceof this.contentWindow.CSSMediaRule))return;
            if(r.media.mediaText==='print'){r.media.mediaText='all';rules++;}
            else if(r.media.mediaText.indexOf('screen')===0)r.media.mediaText='not all';},this);},this);
            var w=d.documentElement.clientWidth,out=0,first='';
            function bad(e,why){out++;if(!first)first=why+' '+e.tagName+' '+e.textContent.trim().substring(0,40);}
            d.querySelectorAll('body *').forEach(function(e){
            if(e.closest('details')||e.closest('nav'))return;
            var r=e.getBoundingClientRect();
            if(r.width>0&&(r.right>w+1||r.left<-1))bad(e,'outside');
            if(e.matches('td,th,p,li,h1,h2,h3,figcaption,caption')&&e.scrollWidth>e.clientWidth+1)bad(e,'too full');
            if(e.tagName==='text'){var b=e.ownerSVGElement.getBoundingClientRect();
            if(r.left<b.left-1||r.right>b.right+1||r.top<b.top-1||r.bottom>b.bottom+1)bad(e,'off its drawing');}});
            document.getElementById('result').textContent='scroll '+(d.documentElement.scrollWidth-w)+' out '+out
            +' boxes '+(rules?d.querySelectorAll('body *').length:0)+' '+first+' done';};
            </script></body></html>
            """;

    /** Width of the paper less the margins of a page, 11 mm on either side [mm]. */
    private static final Map<String, String> PRINTED_WIDTH = Map.of("a4", "188", "letter", "193.9");

    private static final Pattern RESULT = Pattern.compile("scroll (-?[0-9]+) out ([0-9]+) boxes ([0-9]+) (.*)done");

    @TempDir
    static Path folder;

    private static Path report = Path.of("");

    @BeforeAll
    static void writeReport() throws IOException {
        if (Chromium.in(folder).isEmpty()) {
            assertThat(System.getenv("LIFELINE_BROWSER"))
                    .as("Chromium is not installed, but LIFELINE_BROWSER says that it is required")
                    .isNotEqualTo("required");
        }
        assumeTrue(Chromium.in(folder).isPresent(), "Chromium is not installed");
        report = write("a4");
    }

    private static Path write(String paper) throws IOException {
        Path design = folder.resolve("design.json");
        Files.write(design, TestFiles.text("demo-design.json").getBytes(StandardCharsets.UTF_8));
        Path html = folder.resolve(paper + ".html");
        PrintStream none = new PrintStream(OutputStream.nullOutputStream(), true, StandardCharsets.UTF_8);
        int exit =
                CommandLines.run(none, none, "report", design.toString(), "--paper", paper, "--html", html.toString());
        assertThat(exit).isZero();
        return html;
    }

    private static Chromium browser() {
        Optional<Chromium> browser = Chromium.in(folder);
        assumeTrue(browser.isPresent(), "Chromium is not installed");
        return browser.orElseThrow();
    }

    @Test
    void theReportFitsOnFewPagesOfEitherPaper() throws Exception {
        assertThat(browser().pages(report)).as("pages of A4").isBetween(10, MOST_PAGES);
        assertThat(browser().pages(write("letter"))).as("pages of letter paper").isBetween(10, MOST_PAGES);
    }

    @ParameterizedTest
    @CsvSource({"390", "1200"})
    void nothingSticksOutOfThePage(int width) throws Exception {
        Path probe = folder.resolve("probe-" + width + ".html");
        Files.writeString(probe, PROBE.formatted(report.toUri(), width));
        Matcher m = RESULT.matcher(browser().document(probe));
        assertThat(m.find()).as("the page was measured").isTrue();
        assertThat(Integer.parseInt(m.group(3))).as("boxes looked at").isGreaterThan(1000);
        assertThat(Integer.parseInt(m.group(1))).as("scrolls sideways by").isLessThanOrEqualTo(0);
        assertThat(Integer.parseInt(m.group(2)))
                .as("boxes outside of %d px, the first: %s", width, m.group(4))
                .isZero();
    }

    @ParameterizedTest
    @ValueSource(strings = {"a4", "letter"})
    void nothingSticksOutOfThePaper(String paper) throws Exception {
        Path page = paper.equals("a4") ? report : write(paper);
        Path probe = folder.resolve("probe-" + paper + ".html");
        Files.writeString(probe, PAPER_PROBE.formatted(page.toUri(), PRINTED_WIDTH.get(paper)));
        Matcher m = RESULT.matcher(browser().document(probe));
        assertThat(m.find()).as("the page was measured").isTrue();
        assertThat(Integer.parseInt(m.group(3)))
                .as("boxes looked at under the rules for print")
                .isGreaterThan(1000);
        assertThat(Integer.parseInt(m.group(1))).as("wider than the paper by").isLessThanOrEqualTo(0);
        assertThat(Integer.parseInt(m.group(2)))
                .as("boxes that overflow on %s, the first: %s", paper, m.group(4))
                .isZero();
    }

    @Test
    void theProbeOfPaperFindsWhatSticksOut() throws Exception {
        Path wide = folder.resolve("wide-print.html");
        Files.writeString(
                wide,
                "<!DOCTYPE html><html><head><style>p{width:90px}@media print{p{width:900px}}</style></head>"
                        + "<body><p>wide on paper only</p></body></html>");
        Path probe = folder.resolve("probe-wide-print.html");
        Files.writeString(probe, PAPER_PROBE.formatted(wide.toUri(), PRINTED_WIDTH.get("a4")));
        Matcher m = RESULT.matcher(browser().document(probe));
        assertThat(m.find()).isTrue();
        assertThat(Integer.parseInt(m.group(1))).isPositive();
        assertThat(Integer.parseInt(m.group(2))).isEqualTo(1);
    }

    @Test
    void theProbeFindsWhatSticksOut() throws Exception {
        Path wide = folder.resolve("wide.html");
        Files.writeString(wide, "<!DOCTYPE html><html><body><p style=\"width:900px\">wide</p></body></html>");
        Path probe = folder.resolve("probe-wide.html");
        Files.writeString(probe, PROBE.formatted(wide.toUri(), 390));
        Matcher m = RESULT.matcher(browser().document(probe));
        assertThat(m.find()).isTrue();
        assertThat(Integer.parseInt(m.group(1))).isPositive();
        assertThat(Integer.parseInt(m.group(2))).isEqualTo(1);
    }

    @Test
    void theReportHasNoScriptAndNamesNoNetwork() throws Exception {
        String html = Files.readString(report).replace("http://www.w3.org/2000/svg", "");
        assertThat(html).doesNotContain("<script", "http:", "https:", "@import", "src=");
        assertThat(html).contains("default-src 'none'", "counter(page)", "counter(pages)");
    }
}
