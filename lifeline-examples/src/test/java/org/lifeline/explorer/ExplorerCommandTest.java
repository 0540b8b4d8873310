package org.lifeline.explorer;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.Base64;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.lifeline.examples.TestFiles;
import org.lifeline.examples.cli.CommandLines;

/** The command that writes the page, and what stands in the page before any script runs. */
class ExplorerCommandTest {
    @TempDir
    Path folder;

    private final ByteArrayOutputStream out = new ByteArrayOutputStream();
    private final ByteArrayOutputStream err = new ByteArrayOutputStream();

    private int run(String... args) {
        return CommandLines.run(
                new PrintStream(out, true, StandardCharsets.UTF_8),
                new PrintStream(err, true, StandardCharsets.UTF_8),
                args);
    }

    @Test
    void thePageHoldsTheDesignAndNothingOfItIsRun() throws Exception {
        Path design = folder.resolve("line.json");
        Files.writeString(
                design,
                TestFiles.text("demo-design.json")
                        .replace("\"title\": \"Flour mill", "\"title\": \"</script><b>{{engine}}"));
        Path page = folder.resolve("page.html");
        assertThat(run("explorer", "--html", page.toString(), design.toString()))
                .as(err.toString(StandardCharsets.UTF_8))
                .isZero();
        assertThat(out.toString(StandardCharsets.UTF_8)).startsWith("Page for a browser: ");
        String html = Files.readString(page);
        assertThat(html.contains("\\u003c/script>\\u003cb>{{engine}}")).isTrue();
        assertThat(html.split("</script>", -1)).hasSize(6);
        assertThat(run("explorer", "--html", page.toString()))
                .as("a former page is replaced")
                .isZero();
    }

    /** The policy names the hashes of the script and the style that stand in the page: recomputed from the page itself. */
    @Test
    void thePolicyFitsThePage() throws Exception {
        Path page = folder.resolve("page.html");
        assertThat(run("explorer", "--html", page.toString())).isZero();
        String html = Files.readString(page);
        for (String[] each : new String[][] {{"<script>", "</script>"}, {"<style>", "</style>"}}) {
            int from = html.lastIndexOf(each[0]) + each[0].length();
            String text = html.substring(from, html.indexOf(each[1], from));
            String hash = Base64.getEncoder()
                    .encodeToString(MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8)));
            assertThat(html.contains("'sha256-" + hash + "'")).as(each[0]).isTrue();
        }
        Matcher policy = Pattern.compile("Content-Security-Policy\" content=\"([^\"]*)\"")
                .matcher(html);
        assertThat(policy.find()).isTrue();
        assertThat(policy.group(1)).startsWith("default-src 'none';").doesNotContain("unsafe", "*", "http");
    }

    @Test
    void badInputIsNamed() throws Exception {
        Path design = folder.resolve("line.json");
        Files.writeString(design, "{\"format\": 1}");
        assertThat(run("explorer", "--html", folder.resolve("p.html").toString(), design.toString()))
                .isEqualTo(2);
        assertThat(err.toString(StandardCharsets.UTF_8)).contains("format", "must be");
        assertThat(folder.resolve("p.html")).doesNotExist();
        assertThat(run("explorer")).isEqualTo(2);
        Path other = folder.resolve("other.txt");
        Files.writeString(other, "mine");
        assertThat(run("explorer", "--html", other.toString())).isEqualTo(2);
        assertThat(other).hasContent("mine");
    }
}
