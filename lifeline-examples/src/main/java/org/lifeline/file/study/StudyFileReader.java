package org.lifeline.file.study;

import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.lifeline.base.GivenValue;
import org.lifeline.base.InputRule;
import org.lifeline.base.Interval;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.Violation;
import org.lifeline.base.ViolationCode;
import org.lifeline.design.study.partial.CaseRange;
import org.lifeline.design.study.partial.ExactSums;
import org.lifeline.design.study.partial.KeptCase;
import org.lifeline.design.study.partial.ResponsePartial;
import org.lifeline.design.study.partial.StudyIdentity;
import org.lifeline.design.study.partial.StudyPartial;
import org.lifeline.design.study.partial.ValueCounts;
import org.lifeline.file.FileRule;
import org.lifeline.file.json.Findings;
import org.lifeline.file.json.JsonFault;

/** Reads the part of a study, strictly: the first thing that is wrong is named with its path. */
final class StudyFileReader {
    private static final ObjectMapper MAPPER = JsonMapper.builder()
            .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
            .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
            .build();

    StudyPartial read(byte[] bytes) {
        if (bytes.length > StudyFile.LARGEST_FILE) {
            GivenValue size = GivenValue.countOf(bytes.length, "bytes");
            throw broken("file", size, FileRule.LARGER_THAN_READ, StudyFile.LARGEST_FILE);
        }
        JsonNode root;
        try {
            root = MAPPER.readTree(bytes);
        } catch (JsonProcessingException e) {
            throw broken(place(e.getLocation()), GivenValue.text("JSON"), FileRule.NOT_JSON, JsonFault.words(e));
        } catch (IOException e) {
            throw broken("file", GivenValue.text("JSON"), FileRule.NOT_JSON, "it cannot be read from here on");
        }
        if (root == null || !root.isObject()) {
            throw broken("file", GivenValue.text("JSON"), FileRule.NO_OBJECT);
        }
        String format = text(root, "format", "");
        if (!format.equals(StudyFile.FORMAT)) {
            throw broken("format", GivenValue.quoted(format), FileRule.NOT_THE_FORMAT, StudyFile.FORMAT);
        }
        StudyIdentity identity = new StudyIdentity(
                whole(root, "seed", ""),
                text(root, "study", ""),
                texts(root, "variables", ""),
                texts(root, "responses", ""));
        JsonNode failed = node(root, "failed", "");
        List<ResponsePartial> responses = new ArrayList<>();
        for (JsonNode each : array(root, "values", "")) {
            responses.add(response(each, "values[" + responses.size() + "]."));
        }
        return new StudyPartial(
                identity,
                ranges(root),
                new StudyPartial.FailedCases(whole(failed, "count", "failed."), kept(failed, "failed.")),
                responses);
    }

    private static List<CaseRange> ranges(JsonNode root) {
        List<CaseRange> list = new ArrayList<>();
        for (JsonNode each : array(root, "cases", "")) {
            if (each.size() != 2
                    || !each.path(0).isIntegralNumber()
                    || !each.path(1).isIntegralNumber()) {
                throw broken("cases[" + list.size() + "]", shown(each), FileRule.NOT_A_RANGE_OF_CASES);
            }
            list.add(new CaseRange(each.path(0).asLong(), each.path(1).asLong()));
        }
        return list;
    }

    private static ResponsePartial response(JsonNode node, String path) {
        double low = number(node, "smallest", path);
        double high = number(node, "largest", path);
        if (low > high) {
            throw broken(path + "smallest", GivenValue.number(low, ""), FileRule.ABOVE_LARGEST, high);
        }
        return new ResponsePartial(
                new ValueCounts(
                        whole(node, "zeros", path),
                        Interval.of(low, high),
                        bins(node, "positive", path),
                        bins(node, "negative", path)),
                new ExactSums(whole(node, "count", path), texts(node, "sums", path), texts(node, "products", path)),
                kept(node, path));
    }

    private static SortedMap<Integer, Long> bins(JsonNode parent, String key, String path) {
        SortedMap<Integer, Long> map = new TreeMap<>();
        for (Map.Entry<String, JsonNode> each : node(parent, key, path).properties()) {
            try {
                map.put(Integer.valueOf(each.getKey()), whole(parent.path(key), each.getKey(), path + key + "."));
            } catch (NumberFormatException e) {
                throw broken(path + key, GivenValue.quoted(Findings.clip(each.getKey())), InputRule.NO_SUCH_BIN);
            }
        }
        return map;
    }

    private static List<KeptCase> kept(JsonNode parent, String path) {
        List<KeptCase> list = new ArrayList<>();
        for (JsonNode each : array(parent, "first", path)) {
            String at = path + "first[" + list.size() + "].";
            List<Double> values = new ArrayList<>();
            for (JsonNode value : array(each, "values", at)) {
                if (!value.isNumber() || !Double.isFinite(value.doubleValue())) {
                    throw broken(at + "values[" + values.size() + "]", shown(value), FileRule.NOT_FINITE_IN_FILE);
                }
                values.add(value.doubleValue());
            }
            list.add(new KeptCase(
                    whole(each, "case", at), values, each.path("reason").asText("")));
        }
        return list;
    }

    private static JsonNode node(JsonNode parent, String key, String path) {
        JsonNode node = parent.path(key);
        if (!node.isObject()) {
            throw broken(path + key, shown(node), FileRule.NOT_AN_OBJECT);
        }
        return node;
    }

    private static JsonNode array(JsonNode parent, String key, String path) {
        JsonNode node = parent.path(key);
        if (!node.isArray()) {
            throw broken(path + key, shown(node), FileRule.NOT_AN_ARRAY);
        }
        return node;
    }

    private static List<String> texts(JsonNode parent, String key, String path) {
        List<String> list = new ArrayList<>();
        for (JsonNode each : array(parent, key, path)) {
            if (!each.isTextual()) {
                throw broken(path + key + "[" + list.size() + "]", shown(each), FileRule.NOT_A_TEXT);
            }
            list.add(each.textValue());
        }
        return list;
    }

    private static String text(JsonNode parent, String key, String path) {
        JsonNode node = parent.path(key);
        if (!node.isTextual()) {
            throw broken(path + key, shown(node), FileRule.NOT_A_TEXT);
        }
        return node.textValue();
    }

    private static long whole(JsonNode parent, String key, String path) {
        JsonNode node = parent.path(key);
        if (!node.isIntegralNumber() || !node.canConvertToLong()) {
            throw broken(path + key, shown(node), FileRule.NOT_A_WHOLE_NUMBER);
        }
        return node.longValue();
    }

    private static double number(JsonNode parent, String key, String path) {
        JsonNode node = parent.path(key);
        if (!node.isNumber() || !Double.isFinite(node.doubleValue())) {
            throw broken(path + key, shown(node), FileRule.NOT_FINITE_IN_FILE);
        }
        return node.doubleValue();
    }

    private static GivenValue shown(JsonNode node) {
        return node.isMissingNode() ? GivenValue.missing() : GivenValue.text(Findings.written(node));
    }

    private static String place(@Nullable JsonLocation where) {
        return where == null ? "file" : "line " + where.getLineNr() + ", column " + where.getColumnNr();
    }

    private static InvalidInputException broken(
            String path, GivenValue given, ViolationCode rule, Object... arguments) {
        return new InvalidInputException(List.of(Violation.of(path, given, rule, arguments)));
    }
}
