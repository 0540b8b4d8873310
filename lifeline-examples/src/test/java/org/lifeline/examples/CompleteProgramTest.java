package org.lifeline.examples;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The complete program in README.md is {@link StoredAssessment}, word for word, with coordinates that are those of the build. */
class CompleteProgramTest {
    private static final Path README = Path.of("../README.md");

    @Test
    void itIsTheProgramThatIsCompiled() throws IOException {
        String program = Files.readString(Path.of("src/main/java/org/lifeline/examples/StoredAssessment.java"));

        assertThat(Files.readString(README)).contains("```java\n" + program + "```");
    }

    @Test
    void theCoordinatesAreThoseOfTheBuild() throws IOException {
        String pom = Files.readString(Path.of("pom.xml"));
        String version = pom.substring(pom.indexOf("<version>"), pom.indexOf("</version>") + "</version>".length());
        String readme = Files.readString(README);

        assertThat(readme).contains("<artifactId>lifeline-core</artifactId>\n    " + version);
        assertThat(readme).contains("<artifactId>lifeline-examples</artifactId>\n    " + version);
    }

    /** Nobody's design is lost by naming it twice. */
    @Test
    void itReplacesNoFile(@TempDir Path folder) throws IOException {
        String text = TestFiles.text("independent/silo-roof-gripped-middle.design.json");
        String design = Files.writeString(folder.resolve("d.json"), text).toString();

        assertThatThrownBy(() -> StoredAssessment.main(new String[] {design, design}))
                .isInstanceOf(FileAlreadyExistsException.class);

        assertThat(Path.of(design)).hasContent(text);
    }
}
