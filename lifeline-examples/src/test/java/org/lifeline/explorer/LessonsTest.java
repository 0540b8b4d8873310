package org.lifeline.explorer;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.lifeline.explorer.engine.Engine;

/** Every statement of the six lessons of the page, computed; the tutorial for students has the same words. */
class LessonsTest {
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final Path TUTORIAL = Path.of("../lifeline-core/src/docs/tutorials/student.md");

    /** A statement of a lesson with the design that the lessons begin with. */
    record Statement(JsonNode design, JsonNode content) {
        @Override
        public String toString() {
            return content.path("say").asText();
        }
    }

    private static JsonNode data() throws Exception {
        try (InputStream in = LessonsTest.class.getResourceAsStream("/org/lifeline/explorer/page/lessons.json")) {
            return JSON.readTree(in);
        }
    }

    static Stream<Statement> statements() throws Exception {
        List<Statement> list = new ArrayList<>();
        JsonNode data = data();
        for (JsonNode lesson : data.path("lessons")) {
            lesson.path("statements").forEach(s -> list.add(new Statement(data.path("design"), s)));
        }
        return list.stream();
    }

    /** A design with a patch, after RFC 7396: objects member by member, null takes out, everything else is replaced. */
    private static JsonNode merged(JsonNode target, JsonNode patch) {
        if (!patch.isObject()) {
            return patch;
        }
        ObjectNode out = target.isObject() ? target.deepCopy() : JSON.createObjectNode();
        for (var each : patch.properties()) {
            if (each.getValue().isNull()) {
                out.remove(each.getKey());
            } else {
                out.set(each.getKey(), merged(out.path(each.getKey()), each.getValue()));
            }
        }
        return out;
    }

    private static double result(Statement s, String patch) throws Exception {
        String design = merged(s.design(), s.content().path(patch)).toString();
        JsonNode answer = s.content().path("inTime").asBoolean()
                ? JSON.readTree(Engine.inTime(
                        design, 0, Double.NaN, s.content().path("side").asText().equals("clearance"), 1))
                : JSON.readTree(Engine.numbers(design, 0, Double.NaN))
                        .path(s.content().path("side").asText());
        String key = s.content().path("result").asText();
        assertThat(answer.has(key)).as("%s has %s", answer, key).isTrue();
        return answer.path(key).doubleValue();
    }

    @ParameterizedTest
    @MethodSource("statements")
    void aStatementHolds(Statement s) throws Exception {
        double value = s.content().has("to") ? result(s, "to") / result(s, "from") : result(s, "from");
        assertThat(value)
                .isBetween(
                        s.content().path("least").doubleValue(),
                        s.content().path("most").doubleValue());
    }

    @Test
    void thereAreSixLessonsAndTheTutorialTellsThem() throws Exception {
        JsonNode lessons = data().path("lessons");
        assertThat(lessons).hasSize(6);
        String tutorial = Files.readString(TUTORIAL).replaceAll("\\s+", " ");
        for (JsonNode lesson : lessons) {
            assertThat(lesson.path("statements").size()).isGreaterThan(1);
            assertThat(tutorial)
                    .contains(
                            lesson.path("title").asText(),
                            lesson.path("question").asText(),
                            lesson.path("answer").asText());
            for (JsonNode s : lesson.path("statements")) {
                assertThat(tutorial).contains(s.path("say").asText());
            }
        }
    }
}
