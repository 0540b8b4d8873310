package org.lifeline.file.json;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.lifeline.examples.TestFiles;

/** The text of a tree is, to the letter, what the JSON library writes. */
class JsonTextTest {
    private static String library(JsonNode tree) throws Exception {
        DefaultPrettyPrinter layout = new DefaultPrettyPrinter();
        layout.indentArraysWith(DefaultIndenter.SYSTEM_LINEFEED_INSTANCE.withLinefeed("\n"));
        layout.indentObjectsWith(DefaultIndenter.SYSTEM_LINEFEED_INSTANCE.withLinefeed("\n"));
        return new ObjectMapper().writer(layout).writeValueAsString(tree);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "demo-design.json",
                "result-1.schema.json",
                "result-2.schema.json",
                "designs/every-alternative.json"
            })
    void filesAreWrittenAsTheLibraryWritesThem(String name) throws Exception {
        JsonNode tree = TestFiles.tree(name);
        assertThat(JsonText.pretty(tree)).isEqualTo(library(tree));
        assertThat(JsonText.compact(tree)).isEqualTo(new ObjectMapper().writeValueAsString(tree));
    }

    @Test
    void oddValuesAreWrittenAsTheLibraryWritesThem() throws Exception {
        ObjectNode tree = new JsonNodeFactory(true).objectNode();
        tree.put("text", "\u0001\b\f\n\r\t\"\\/é€😀\u2028\u007f").put("", "");
        tree.put("decimal", new BigDecimal("1.80"))
                .put("large", new BigDecimal("1E+3"))
                .put("tiny", 1e-300);
        tree.put("whole", 3).put("long", Long.MIN_VALUE).put("minus", -0.0).put("max", Double.MAX_VALUE);
        tree.putNull("null").put("yes", true);
        tree.putArray("empty");
        tree.putObject("none");
        tree.putArray("deep").addArray().addObject().put("x", 0.1);
        assertThat(JsonText.pretty(tree)).isEqualTo(library(tree));
        assertThat(JsonText.compact(tree)).isEqualTo(new ObjectMapper().writeValueAsString(tree));
    }
}
