package org.lifeline.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.lifeline.report.document.UnitChoice;

/** The report opens in a browser without an error on the console and without a request to the network. */
class HtmlReportPageTest {
    private static Optional<Path> browser = Optional.empty();

    @TempDir
    private Path folder;

    /** What a browser said about a page. */
    private record Visit(List<String> console, Set<String> requests) {}

    @BeforeAll
    static void findBrowser() {
        for (String dir : Pattern.compile(File.pathSeparator)
                .splitAsStream(Optional.ofNullable(System.getenv("PATH")).orElse(""))
                .toList()) {
            for (String name : List.of("chromium", "chromium-browser")) {
                Path path = Path.of(dir, name);
                if (browser.isEmpty() && Files.isExecutable(path)) {
                    browser = Optional.of(path);
                }
            }
        }
        assumeTrue(
                browser.isPresent(),
                "SKIPPED: no chromium on the PATH, so the report was not opened in a browser (Debian: apt-get install chromium)");
    }

    private Visit visit(String name, String html) throws IOException, InterruptedException {
        Path page = folder.resolve(name + ".html");
        Path netLog = folder.resolve(name + ".net.json");
        Path output = folder.resolve(name + ".txt");
        Files.writeString(page, html);
        Process process = new ProcessBuilder(
                        browser.orElseThrow().toString(),
                        "--headless",
                        "--no-sandbox",
                        "--disable-gpu",
                        "--disable-background-networking",
                        "--disable-component-update",
                        "--disable-sync",
                        "--no-first-run",
                        "--host-resolver-rules=MAP * ~NOTFOUND",
                        "--user-data-dir=" + folder.resolve(name + ".profile"),
                        "--enable-logging=stderr",
                        "--log-net-log=" + netLog,
                        "--virtual-time-budget=3000",
                        "--dump-dom",
                        page.toUri().toString())
                .redirectErrorStream(true)
                .redirectOutput(output.toFile())
                .start();
        boolean ended = process.waitFor(120, TimeUnit.SECONDS);
        if (!ended) {
            process.destroyForcibly();
        }
        assertThat(ended).as("chromium ends by itself").isTrue();
        String said = new String(Files.readAllBytes(output), StandardCharsets.UTF_8);
        assertThat(said).as("the page was rendered").contains("</html>");
        List<String> console = said.lines().filter(l -> l.contains("CONSOLE")).toList();
        Set<String> requests = new HashSet<>();
        Matcher m = Pattern.compile("\"url\":\"(?:https?|wss?)://([^/\"?:]+)")
                .matcher(new String(Files.readAllBytes(netLog), StandardCharsets.UTF_8));
        while (m.find()) {
            requests.add(m.group(1));
        }
        return new Visit(console, requests);
    }

    @Test
    void opensQuietly() throws Exception {
        String trap = "<!DOCTYPE html><html><head><title>t</title></head><body><script>console.error('seen')</script>"
                + "<img src=\"http://probe.invalid/x.png\" alt=\"\"></body></html>";
        Visit control = visit("control", trap);
        assertThat(control.console()).as("the check sees console errors").anyMatch(l -> l.contains("seen"));
        assertThat(control.requests()).as("the check sees requests").contains("probe.invalid");

        // The browser itself asks its maker for updates; what an empty page asks for is not the report's doing.
        Visit empty = visit("empty", "<!DOCTYPE html><html><head><title>e</title></head><body></body></html>");
        String title = String.join(" ", Hostile.texts().subList(0, 5));
        for (UnitChoice units : UnitChoice.values()) {
            Visit report = visit("report-" + units, HtmlReport.write(ReportSamples.document(title, units)));
            assertThat(report.console()).isEmpty();
            assertThat(report.requests()).doesNotContain("probe.invalid");
            Set<String> own = new HashSet<>(report.requests());
            own.removeAll(empty.requests());
            own.removeIf(h -> h.endsWith("google.com") || h.endsWith("googleapis.com") || h.endsWith("gstatic.com"));
            assertThat(own).isEmpty();
        }
    }
}
