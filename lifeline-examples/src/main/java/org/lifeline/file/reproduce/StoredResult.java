package org.lifeline.file.reproduce;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.core.exc.StreamConstraintsException;
import com.fasterxml.jackson.core.io.JsonEOFException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import org.jspecify.annotations.Nullable;
import org.lifeline.file.json.JsonFault;

/**
 * A result file as read: its tree, or why it is none.
 *
 * @param root the tree; null if the file is not a result
 * @param verdict what the file is instead; null if it is a result
 * @param why why it is none; empty if it is one
 */
record StoredResult(@Nullable JsonNode root, @Nullable Verdict verdict, String why) {
    /** Deepest nesting that is read; a result needs eight levels. */
    static final int DEEPEST = 50;

    /** Longest number that is read [characters]; a double needs 24. */
    private static final int LONGEST_NUMBER = 200;

    /** Longest key that is read [characters]. */
    private static final int LONGEST_KEY = 10_000;

    private static final ObjectMapper READER = new ObjectMapper(JsonFactory.builder()
                    .streamReadConstraints(StreamReadConstraints.builder()
                            .maxNestingDepth(DEEPEST)
                            .maxNumberLength(LONGEST_NUMBER)
                            .maxNameLength(LONGEST_KEY)
                            .maxStringLength(Reproduction.LARGEST_FILE)
                            .build())
                    .build())
            .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
            .enable(JsonParser.Feature.STRICT_DUPLICATE_DETECTION);

    static StoredResult read(byte[] bytes) {
        if (bytes.length > Reproduction.LARGEST_FILE) {
            return no(Verdict.DAMAGED, "it is larger than " + Reproduction.LARGEST_FILE + " bytes");
        }
        JsonNode root;
        try {
            root = READER.readTree(bytes);
        } catch (StreamConstraintsException e) {
            return no(
                    Verdict.DAMAGED,
                    "it is nested deeper than " + DEEPEST + " levels, a number in it has more than " + LONGEST_NUMBER
                            + " digits, or a key more than " + LONGEST_KEY + " characters");
        } catch (JsonProcessingException e) {
            return notJson(bytes, e);
        } catch (IOException e) {
            throw new IllegalStateException("reading from memory does not fail", e);
        }
        if (root.isMissingNode()) {
            return no(Verdict.TRUNCATED, "the file is empty");
        }
        if (!root.isObject() || !root.path("arrests").isArray()) {
            return no(Verdict.DAMAGED, "it has no list of arrests");
        }
        return new StoredResult(root, null, "");
    }

    private static StoredResult notJson(byte[] bytes, JsonProcessingException e) {
        JsonLocation at = e.getLocation();
        if (at == null) {
            return no(Verdict.DAMAGED, "no JSON");
        }
        // A number or a word that is cut off is met at the very end of the text.
        boolean begun = new String(bytes, 0, Math.min(bytes.length, 100), StandardCharsets.UTF_8)
                .stripLeading()
                .startsWith("{");
        if (e instanceof JsonEOFException || (begun && at.getByteOffset() >= bytes.length - 1)) {
            return no(Verdict.TRUNCATED, "the text ends in the middle of line " + at.getLineNr());
        }
        return no(
                Verdict.DAMAGED,
                "no JSON at line " + at.getLineNr() + ", column " + at.getColumnNr() + ": " + JsonFault.words(e));
    }

    private static StoredResult no(Verdict verdict, String why) {
        return new StoredResult(null, verdict, why);
    }
}
