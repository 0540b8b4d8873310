package org.lifeline.file;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Properties;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.lifeline.base.InputRule;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.PlausibleRange;
import org.lifeline.base.Violation;
import org.lifeline.base.ViolationCode;
import org.lifeline.examples.TestFiles;
import org.lifeline.file.json.JsonRule;

/** What is wrong with a design file has a code, and each code its sentence. */
class FileRuleTest {
    /** The file from which a translator starts holds exactly the sentences that are built in. */
    @Test
    void theEnglishBundleAgreesWithTheCodes() throws IOException {
        Properties file = new Properties();
        try (var in = FileRule.class.getResourceAsStream("/org/lifeline/file/messages.properties")) {
            file.load(new InputStreamReader(in, StandardCharsets.UTF_8));
        }
        for (FileRule each : FileRule.values()) {
            assertThat(file.remove(each.key())).as(each.key()).isEqualTo(each.english());
        }
        assertThat(file).isEmpty();
    }

    /** A caller finds the rules of the text among those of the file, under the same names. */
    @Test
    void everyRuleOfTheTextIsOneOfTheFile() {
        for (JsonRule each : JsonRule.values()) {
            assertThat(FileRule.of(each)).isEqualTo(FileRule.valueOf(each.name()));
        }
    }

    @Test
    void keysAreUniqueOverAllCodes() {
        Stream<ViolationCode> core =
                Stream.concat(Arrays.stream(InputRule.values()), Arrays.stream(PlausibleRange.values()));
        assertThat(Stream.concat(core, Arrays.stream(FileRule.values())).map(ViolationCode::key))
                .doesNotHaveDuplicates();
    }

    @Test
    void aFileFullOfMistakesIsToldByCodes() {
        InvalidInputException refused = catchThrowableOfType(InvalidInputException.class, () -> TestFiles.read("""
                        {"format": "other/1", "title": 3, "supports": {}, "gravity": "9.8 kg", "colour": "red",
                         "workers": [{"id": " ", "mass": "-3 kg"}], "falls": []}
                        """));
        List<Violation> found = refused.violations();
        assertThat(found).extracting(Violation::code).doesNotContain(InputRule.STATED);
        assertThat(found)
                .extracting(Violation::code)
                .contains(
                        FileRule.NOT_THE_FORMAT,
                        FileRule.NOT_A_TEXT,
                        FileRule.NOT_AN_ARRAY,
                        FileRule.UNKNOWN_KEY,
                        FileRule.NOT_ABOVE_ZERO_IN_FILE,
                        InputRule.NOT_A_QUANTITY,
                        InputRule.MISSING);
        assertThat(found).anySatisfy(v -> {
            assertThat(v.path()).isEqualTo("format");
            assertThat(v.rule()).isEqualTo("must be \"" + DesignReader.FORMAT + '"');
        });
    }
}
