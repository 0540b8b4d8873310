package org.lifeline.file;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import org.junit.jupiter.api.Test;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.Violation;
import org.lifeline.examples.TestFiles;
import org.lifeline.report.document.ProjectData;
import org.lifeline.report.document.ProjectData.Item;

/** The project block of a design file: read, written, refused. */
class ProjectReaderTest {
    private static final String DEMO = TestFiles.text("demo-design.json");

    @Test
    void whatStandsInTheFileIsReadAndWrittenAgain() {
        DesignFile file = TestFiles.read(DEMO);
        assertThat(file.project().text(Item.DOCUMENT)).isEqualTo("FM-LL-001");
        assertThat(file.project().text(Item.CHECKED_BY)).isEmpty();
        assertThat(file.project().revisions()).hasSize(2);
        DesignFile again = TestFiles.read(DesignWriter.write(file.design(), file.criteria(), file.project()));
        for (Item each : Item.values()) {
            assertThat(again.project().text(each)).isEqualTo(file.project().text(each));
        }
        assertThat(again.project().revisions()).isEqualTo(file.project().revisions());
    }

    @Test
    void aFileWithoutOneHasNone() {
        DesignFile file = TestFiles.read(DesignWriter.write(TestFiles.read(DEMO).design()));
        assertThat(file.project().isEmpty()).isTrue();
        assertThat(file.project()).isSameAs(ProjectData.none());
    }

    @Test
    void mistakesAreNamed() {
        String bad = DEMO.replace("\"client\"", "\"clint\"")
                .replace("\"preparedBy\": \"designer\"", "\"preparedby\": 3, \"date\": 4")
                .replace("\"revision\": \"A\", ", "");
        InvalidInputException e = catchThrowableOfType(InvalidInputException.class, () -> TestFiles.read(bad));
        assertThat(e.violations())
                .extracting(Violation::path)
                .contains("project.preparedby", "project.date", "project.revisions[0].revision");
    }
}
