package org.lifeline.report.appendix;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.lifeline.report.document.ReportBlock;
import org.lifeline.report.document.ReportSection;

/** The appendix holds what the calculation cites, and the figures that the tests of the library measured. */
class TheoryAppendixTest {
    private static final Path MAIN = Path.of("src/main/java/org/lifeline");

    private static List<String> captions() {
        ReportSection section = TheoryAppendix.section(true);
        List<String> list = new ArrayList<>();
        for (ReportBlock each : section.blocks()) {
            if (each instanceof ReportBlock.Table t) {
                list.add(t.caption());
            }
        }
        return list;
    }

    @Test
    void everyCitedSectionIsThere() throws IOException {
        List<String> cited = new ArrayList<>();
        try (Stream<Path> files = Files.walk(MAIN)) {
            for (Path file : files.filter(f -> f.toString().endsWith(".java")).toList()) {
                Matcher m = Pattern.compile("appendix\\s*\"?\\s*\\+?\\s*\"?\\s*(A\\.\\d)")
                        .matcher(Files.readString(file));
                while (m.find()) {
                    cited.add(m.group(1));
                }
            }
        }
        assertThat(cited).contains("A.1", "A.2", "A.3", "A.6");
        for (String each : cited) {
            assertThat(captions()).anyMatch(c -> c.startsWith(each + " "));
        }
    }

    @Test
    void noReportSendsItsReaderToARepository() throws IOException {
        try (Stream<Path> files = Files.walk(MAIN)) {
            for (Path file : files.filter(f -> f.toString().endsWith(".java")).toList()) {
                for (String line : Files.readAllLines(file)) {
                    if (!line.strip().startsWith("*") && !line.strip().startsWith("//")) {
                        assertThat(line).as("%s", file).doesNotContainPattern("\"[^\"]*theory/[a-z]+\\.md");
                    }
                }
            }
        }
    }

    @Test
    void theComparisonIsTheMeasuredOne() throws IOException {
        List<String> rows =
                Files.readAllLines(Path.of("src/test/resources/org/lifeline/analysis/time-against-balance.csv"));
        for (TheoryAppendix.Ratio each : TheoryAppendix.Ratio.values()) {
            List<String> cells = rows.stream()
                    .filter(r -> r.startsWith("\"all\"," + each.name() + ","))
                    .map(r -> List.of(r.split(",", -1)))
                    .findFirst()
                    .orElseThrow();
            assertThat(each.quantiles()).as("%s", each).isEqualTo(cells.subList(4, 9));
        }
    }
}
