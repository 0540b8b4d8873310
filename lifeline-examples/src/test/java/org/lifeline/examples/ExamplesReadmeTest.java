package org.lifeline.examples;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.lifeline.base.unit.Dimension;
import org.lifeline.base.unit.Unit;
import org.lifeline.file.DesignFile;
import org.lifeline.file.result.CriteriaCheck;
import org.lifeline.file.result.DesignRun;

/** What this module's README.md says is true. */
class ExamplesReadmeTest {

    private static String readme() throws IOException {
        return Files.readString(Path.of("README.md"));
    }

    @Test
    void theDesignOfTheReadmeIsAnalyzed() throws IOException {
        Matcher m = Pattern.compile("```json\\n(.*?)```", Pattern.DOTALL).matcher(readme());
        assertThat(m.find()).isTrue();
        DesignFile file = TestFiles.read(m.group(1));
        DesignRun run = DesignRun.of(file.design());
        assertThat(run.arrests()).hasSizeGreaterThanOrEqualTo(4);
        assertThat(CriteriaCheck.evaluate(run, file.criteria())).isNotEmpty();
    }

    @Test
    void everyUnitStandsInTheReadme() throws IOException {
        String flat = readme().replaceAll("\\s+", " ");
        String units = flat.substring(flat.indexOf("Units: "), flat.indexOf("The factors are exact"));
        for (Unit each : Unit.values()) {
            if (each.dimension() == Dimension.RATIO || each.dimension() == Dimension.ANGLE) {
                continue; // no member of a design file is an angle, and a bare number has no unit
            }
            assertThat(units).containsPattern("[ ;]" + Pattern.quote(each.symbol()) + "[ ;.]");
        }
    }
}
