package org.lifeline.file.study;

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
import org.lifeline.base.Interval;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.Violation;
import org.lifeline.design.study.partial.CaseRange;
import org.lifeline.design.study.partial.ExactSums;
import org.lifeline.design.study.partial.KeptCase;
import org.lifeline.design.study.partial.ResponsePartial;
import org.lifeline.design.study.partial.StudyIdentity;
import org.lifeline.design.study.partial.StudyPartial;
import org.lifeline.design.study.partial.ValueCounts;

/** Reads the part of a study, strictly: the first thing that is wrong is named with its path. */
final class StudyFileReader {
    private static final ObjectMapper MAPPER = JsonMapper.builder()
            .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
            .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
            .build();

    StudyPartial read(byte[] bytes) {
        if (bytes.length > StudyFile.LARGEST_FILE) {
            throw broken(
                    "file", bytes.length + " bytes", "must not be larger than " + StudyFile.LARGEST_FILE + " bytes");
        }
        JsonNode root;
        try {
            root = MAPPER.readTree(bytes);
        } catch (IOException e) {
            throw broken("file", "JSON", "is not JSON: " + e.getClass().getSimpleName());
        }
        if (root == null || !root.isObject()) {
            throw broken("file", "JSON", "must hold a JSON object");
        }
        String format = text(root, "format", "");
        if (!format.equals(StudyFile.FORMAT)) {
            throw broken("format", format, "must be " + StudyFile.FORMAT);
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
                throw broken("cases[" + list.size() + "]", each.toString(), "must be the first and the last case");
            }
            list.add(new CaseRange(each.path(0).asLong(), each.path(1).asLong()));
        }
        return list;
    }

    private static ResponsePartial response(JsonNode node, String path) {
        double low = number(node, "smallest", path);
        double high = number(node, "largest", path);
        if (low > high) {
            throw broken(path + "smallest", Double.toString(low), "must not be above the largest, " + high);
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
                throw broken(path + key, each.getKey(), "must be the number of a bin");
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
                if (!value.isNumber()) {
                    throw broken(at + "values", value.toString(), "must be numbers");
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
            throw broken(path + key, shown(node), "must be an object");
        }
        return node;
    }

    private static JsonNode array(JsonNode parent, String key, String path) {
        JsonNode node = parent.path(key);
        if (!node.isArray()) {
            throw broken(path + key, shown(node), "must be a list");
        }
        return node;
    }

    private static List<String> texts(JsonNode parent, String key, String path) {
        List<String> list = new ArrayList<>();
        for (JsonNode each : array(parent, key, path)) {
            if (!each.isTextual()) {
                throw broken(path + key + "[" + list.size() + "]", shown(each), "must be a text");
            }
            list.add(each.textValue());
        }
        return list;
    }

    private static String text(JsonNode parent, String key, String path) {
        JsonNode node = parent.path(key);
        if (!node.isTextual()) {
            throw broken(path + key, shown(node), "must be a text");
        }
        return node.textValue();
    }

    private static long whole(JsonNode parent, String key, String path) {
        JsonNode node = parent.path(key);
        if (!node.isIntegralNumber() || !node.canConvertToLong()) {
            throw broken(path + key, shown(node), "must be a whole number");
        }
        return node.longValue();
    }

    private static double number(JsonNode parent, String key, String path) {
        JsonNode node = parent.path(key);
        if (!node.isNumber() || !Double.isFinite(node.doubleValue())) {
            throw broken(path + key, shown(node), "must be a number");
        }
        return node.doubleValue();
    }

    private static String shown(JsonNode node) {
        String text = node.isMissingNode() ? "nothing" : node.toString();
        return text.length() > 60 ? text.substring(0, 60) + "…" : text;
    }

    private static InvalidInputException broken(String path, String value, String rule) {
        return new InvalidInputException(List.of(new Violation(path, value, rule)));
    }
}
