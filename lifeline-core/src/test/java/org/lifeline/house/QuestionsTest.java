package org.lifeline.house;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.lang.reflect.Modifier;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** The page of questions names classes and methods that a caller can see, of every package that a caller can use. */
class QuestionsTest {
    private static final Pattern ANSWER = Pattern.compile("`((org\\.lifeline\\.[a-z.]+)\\.[A-Z][\\w.]*)#(\\w+)`");
    private static final Pattern EXPORTED = Pattern.compile("(?m)^ *exports ([\\w.]+);");

    @Test
    void everyAnswerIsPublic() throws IOException {
        String page = page();
        Matcher m = ANSWER.matcher(page);
        int answers = 0;
        while (m.find()) {
            if (m.group(2).startsWith("org.lifeline.file")) {
                continue; // in the other jar, with its tests
            }
            Class<?> type = type(m.group(1));
            String method = m.group(3);
            assertThat(Modifier.isPublic(type.getModifiers())).as(m.group()).isTrue();
            assertThat(Arrays.stream(type.getMethods()).map(java.lang.reflect.Method::getName))
                    .as(m.group())
                    .contains(method);
            answers++;
        }
        assertThat(answers).isGreaterThan(60);
        assertThat(page.lines()
                        .filter(l -> l.startsWith("| ") && !ANSWER.matcher(l).find()))
                .as("every row but the heads of two tables has an answer")
                .hasSize(2);
    }

    @Test
    void everyExportedPackageHasItsEntry() throws IOException {
        List<String> exported = names(EXPORTED, Files.readString(Path.of("src/main/module/module-info.java")), 1);
        assertThat(exported).contains("org.lifeline.base", "org.lifeline.report");
        assertThat(names(ANSWER, page(), 2)).containsAll(exported);
    }

    private static String page() throws IOException {
        return Files.readString(Path.of("src/docs/questions.md"));
    }

    private static List<String> names(Pattern pattern, String text, int group) {
        return pattern.matcher(text).results().map(m -> m.group(group)).toList();
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
