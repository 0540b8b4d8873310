package org.lifeline.file.json;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.core.exc.StreamConstraintsException;
import com.fasterxml.jackson.core.json.JsonReadFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CoderResult;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.lifeline.base.GivenValue;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.Violation;
import org.lifeline.base.ViolationCode;

/**
 * Reads JSON text as strictly as a design deserves: UTF-8 only, no key twice, nothing behind the end, limited size and
 * depth; numbers keep the digits that were written.
 *
 * <p>Text that is no JSON gives one violation with line and column; keys given twice are collected and reading goes on.
 */
public final class JsonTree {
    /** Largest file that is read [bytes]. */
    public static final int LARGEST = 10_000_000;

    /** Deepest nesting of objects and arrays that is read. */
    public static final int DEEPEST = 50;

    private static final int LONGEST_NUMBER = 200;
    private static final int LONGEST_KEY = 10_000;

    private static final JsonFactory FACTORY = JsonFactory.builder()
            .streamReadConstraints(StreamReadConstraints.builder()
                    .maxNestingDepth(DEEPEST)
                    .maxNumberLength(LONGEST_NUMBER)
                    .maxNameLength(LONGEST_KEY)
                    .maxStringLength(LARGEST)
                    .build())
            .enable(JsonReadFeature.ALLOW_NON_NUMERIC_NUMBERS)
            .build();

    /** Exact decimals: 1.80 stays 1.80, so that a violation can show what was written. */
    private static final JsonNodeFactory NODES = new JsonNodeFactory(true);

    private final JsonParser parser;
    private final Function<JsonRule, ViolationCode> codes;
    private final List<Violation> duplicates = new ArrayList<>();
    private int furtherDuplicates;

    private JsonTree(JsonParser parser, Function<JsonRule, ViolationCode> codes) {
        this.parser = parser;
        this.codes = codes;
    }

    /**
     * What was read.
     *
     * @param root the value of the whole text
     * @param duplicates keys that were given twice, the first of them
     * @param furtherDuplicates how many more were given twice
     */
    public record Parsed(JsonNode root, List<Violation> duplicates, int furtherDuplicates) {}

    /**
     * Reads a whole text.
     *
     * @param bytes the text in UTF-8
     * @param codes the code of each rule that the text may break
     * @return the tree and the keys given twice
     * @throws InvalidInputException with one violation if this is no JSON text within the limits
     */
    public static Parsed parse(byte[] bytes, Function<JsonRule, ViolationCode> codes) {
        if (bytes.length > LARGEST) {
            // A command reads one byte more than it would take, and knows no more of the length.
            GivenValue given = bytes.length == LARGEST + 1
                    ? GivenValue.text("more than " + LARGEST + " bytes")
                    : GivenValue.countOf(bytes.length, "bytes");
            throw broken("file", given, codes.apply(JsonRule.LARGER_THAN_READ), LARGEST);
        }
        String text = decode(bytes, codes);
        try (JsonParser parser = FACTORY.createParser(text)) {
            return new JsonTree(parser, codes).whole(text);
        } catch (StreamConstraintsException e) {
            throw broken(
                    "file",
                    GivenValue.text("JSON"),
                    codes.apply(JsonRule.BEYOND_A_LIMIT),
                    DEEPEST,
                    LONGEST_NUMBER,
                    LONGEST_KEY);
        } catch (IOException e) {
            throw new IllegalStateException("reading from memory failed", e);
        }
    }

    private Parsed whole(String text) throws IOException {
        try {
            if (parser.nextToken() == null) {
                throw broken("file", GivenValue.text("empty"), codes.apply(JsonRule.NO_OBJECT));
            }
            JsonNode root = value("");
            if (parser.nextToken() != null) {
                throw located(parser.currentTokenLocation(), text, codes.apply(JsonRule.GOES_ON));
            }
            return new Parsed(root, List.copyOf(duplicates), furtherDuplicates);
        } catch (StreamConstraintsException e) {
            throw e;
        } catch (JsonProcessingException e) {
            throw located(e.getLocation(), text, codes.apply(JsonRule.NOT_JSON), JsonFault.words(e));
        }
    }

    private static String decode(byte[] bytes, Function<JsonRule, ViolationCode> codes) {
        ByteBuffer in = ByteBuffer.wrap(bytes);
        if (bytes.length >= 3 && bytes[0] == (byte) 0xEF && bytes[1] == (byte) 0xBB && bytes[2] == (byte) 0xBF) {
            in.position(3);
        }
        CharsetDecoder decoder = StandardCharsets.UTF_8
                .newDecoder()
                .onMalformedInput(CodingErrorAction.REPORT)
                .onUnmappableCharacter(CodingErrorAction.REPORT);
        CharBuffer out = CharBuffer.allocate(bytes.length + 1);
        CoderResult result = decoder.decode(in, out, true);
        if (result.isError()) {
            int line = 1;
            int lineStart = 0;
            for (int i = 0; i < in.position(); i++) {
                if (bytes[i] == '\n') {
                    line++;
                    lineStart = i + 1;
                }
            }
            int column = in.position() - lineStart + 1;
            throw broken(
                    "line " + line + ", column " + column,
                    GivenValue.text(String.format(java.util.Locale.ROOT, "byte 0x%02X", bytes[in.position()])),
                    codes.apply(JsonRule.NOT_UTF8));
        }
        out.flip();
        return out.toString();
    }

    private JsonNode value(String path) throws IOException {
        JsonToken token = parser.currentToken();
        return switch (token) {
            case START_OBJECT -> object(path);
            case START_ARRAY -> array(path);
            case VALUE_STRING -> NODES.textNode(parser.getText());
            case VALUE_NUMBER_INT -> NODES.numberNode(parser.getDecimalValue());
            case VALUE_NUMBER_FLOAT ->
                parser.isNaN() ? NODES.numberNode(parser.getDoubleValue()) : NODES.numberNode(parser.getDecimalValue());
            case VALUE_TRUE -> NODES.booleanNode(true);
            case VALUE_FALSE -> NODES.booleanNode(false);
            case VALUE_NULL -> NODES.nullNode();
            default -> throw new IllegalStateException("unexpected token " + token);
        };
    }

    private ObjectNode object(String path) throws IOException {
        ObjectNode node = NODES.objectNode();
        while (parser.nextToken() != JsonToken.END_OBJECT) {
            String key = parser.currentName();
            String at = Findings.child(path, key);
            JsonLocation where = parser.currentTokenLocation();
            parser.nextToken();
            JsonNode value = value(at);
            if (node.has(key) && duplicates.size() >= Findings.MOST) {
                furtherDuplicates++;
            } else if (node.has(key)) {
                GivenValue again = GivenValue.text(Findings.written(value));
                duplicates.add(Violation.of(
                        at, again, codes.apply(JsonRule.KEY_TWICE), where.getLineNr(), where.getColumnNr()));
            } else {
                node.set(key, value);
            }
        }
        return node;
    }

    private ArrayNode array(String path) throws IOException {
        ArrayNode node = NODES.arrayNode();
        while (parser.nextToken() != JsonToken.END_ARRAY) {
            node.add(value(path + "[" + node.size() + "]"));
        }
        return node;
    }

    private static InvalidInputException located(
            @Nullable JsonLocation where, String text, ViolationCode rule, Object... arguments) {
        if (where == null) {
            return broken("file", GivenValue.text("JSON"), rule, arguments);
        }
        int line = Math.max(1, where.getLineNr());
        int column = Math.max(1, where.getColumnNr());
        String[] lines = text.split("\\R", line + 1);
        boolean ended = line > lines.length || (line == lines.length && lines[line - 1].isEmpty());
        String shown = ended ? "end of file" : lines[line - 1].strip();
        return broken("line " + line + ", column " + column, GivenValue.text(Findings.clip(shown)), rule, arguments);
    }

    private static InvalidInputException broken(
            String path, GivenValue given, ViolationCode rule, Object... arguments) {
        return new InvalidInputException(List.of(Violation.of(path, given, rule, arguments)));
    }
}
