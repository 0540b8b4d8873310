package org.lifeline.file.study;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.SortedMap;
import org.lifeline.design.study.partial.CaseRange;
import org.lifeline.design.study.partial.KeptCase;
import org.lifeline.design.study.partial.ResponsePartial;
import org.lifeline.design.study.partial.StudyPartial;

/**
 * Writes and reads the part of a study: JSON in UTF-8, format {@value #FORMAT}. Values are SI and unrounded: what is read is equal
 * to what was written. The same part gives the same bytes on one version of Java.
 *
 * @since 1.0.0
 */
public final class StudyFile {
    /** The format. */
    public static final String FORMAT = "org.lifeline.study/" + StudyPartial.VERSION;

    /** Largest file that is read [bytes]. */
    public static final int LARGEST_FILE = 100_000_000;

    private static final JsonNodeFactory NODES = JsonNodeFactory.instance;

    private StudyFile() {}

    /**
     * Writes a part.
     *
     * @param part the part
     * @return the file, JSON in UTF-8
     */
    public static byte[] write(StudyPartial part) {
        ObjectNode root = NODES.objectNode();
        root.put("format", FORMAT);
        root.put("seed", part.identity().seed());
        root.put("study", part.identity().study());
        part.identity().variables().forEach(root.putArray("variables")::add);
        part.identity().responses().forEach(root.putArray("responses")::add);
        ArrayNode cases = root.putArray("cases");
        for (CaseRange each : part.cases()) {
            cases.addArray().add(each.first()).add(each.last());
        }
        ObjectNode failed = root.putObject("failed");
        failed.put("count", part.failures().count());
        kept(failed.putArray("first"), part.failures().first());
        ArrayNode values = root.putArray("values");
        part.responses().forEach(r -> values.add(response(r)));
        try {
            return (new ObjectMapper().writeValueAsString(root) + "\n").getBytes(StandardCharsets.UTF_8);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("a tree of numbers and texts is always written", e);
        }
    }

    private static ObjectNode response(ResponsePartial r) {
        ObjectNode node = NODES.objectNode();
        node.put("count", r.sums().count());
        node.put("zeros", r.counts().zeros());
        node.put("smallest", r.counts().extent().low());
        node.put("largest", r.counts().extent().high());
        node.set("positive", bins(r.counts().positive()));
        node.set("negative", bins(r.counts().negative()));
        r.sums().sums().forEach(node.putArray("sums")::add);
        r.sums().products().forEach(node.putArray("products")::add);
        kept(node.putArray("first"), r.first());
        return node;
    }

    private static ObjectNode bins(SortedMap<Integer, Long> bins) {
        ObjectNode node = NODES.objectNode();
        bins.forEach((bin, n) -> node.put(Integer.toString(bin), n));
        return node;
    }

    private static void kept(ArrayNode list, List<KeptCase> cases) {
        for (KeptCase each : cases) {
            ObjectNode node = list.addObject();
            node.put("case", each.number());
            each.values().forEach(node.putArray("values")::add);
            if (!each.reason().isEmpty()) {
                node.put("reason", each.reason());
            }
        }
    }

    /**
     * Reads a part.
     *
     * @param bytes the file
     * @return the part
     * @throws org.lifeline.base.InvalidInputException if this is no such file, saying where and which rule is broken
     */
    public static StudyPartial read(byte[] bytes) {
        return new StudyFileReader().read(bytes);
    }
}
