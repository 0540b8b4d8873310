package org.lifeline.house;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.lang.reflect.Modifier;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** The page of questions names classes and methods that a caller can see. */
class QuestionsTest {
    private static final Pattern ANSWER = Pattern.compile("`(org\\.lifeline\\.[\\w.]+)#(\\w+)`");

    @Test
    void everyAnswerIsPublic() throws IOException {
        String page = Files.readString(Path.of("src/docs/questions.md"));
        Matcher m = ANSWER.matcher(page);
        int answers = 0;
        while (m.find()) {
            Class<?> type = type(m.group(1));
            String method = m.group(2);
            assertThat(Modifier.isPublic(type.getModifiers())).as(m.group()).isTrue();
            assertThat(type.getName()).doesNotContain(".internal.");
            assertThat(Arrays.stream(type.getMethods()).map(java.lang.reflect.Method::getName))
                    .as(m.group())
                    .contains(method);
            answers++;
        }
        assertThat(answers).isGreaterThan(35);
        assertThat(page.lines()
                        .filter(l -> l.startsWith("| ") && !ANSWER.matcher(l).find()))
                .as("every row but the head has an answer")
                .hasSize(1);
    }

    /** A class by its name in source, nested ones behind a dot. */
    private static Class<?> type(String name) {
        try {
            return Class.forName(name);
        } catch (ClassNotFoundException e) {
            int dot = name.lastIndexOf('.');
            try {
                return Class.forName(name.substring(0, dot) + '$' + name.substring(dot + 1));
            } catch (ClassNotFoundException f) {
                throw new AssertionError("no class " + name, f);
            }
        }
    }
}
