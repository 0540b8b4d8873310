package org.lifeline.explorer.engine;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.OptionalDouble;
import org.lifeline.file.json.JsonText;

/** A JSON object that is put together; numbers that are not finite are left out. Not thread-safe. */
final class Json {
    private final ObjectNode node = JsonNodeFactory.instance.objectNode();

    Json put(String key, String value) {
        node.put(key, value);
        return this;
    }

    Json put(String key, boolean value) {
        node.put(key, value);
        return this;
    }

    Json put(String key, double value) {
        if (Double.isFinite(value)) {
            node.put(key, value + 0.0);
        }
        return this;
    }

    Json put(String key, OptionalDouble value) {
        value.ifPresent(v -> put(key, v));
        return this;
    }

    Json put(String key, Json value) {
        node.set(key, value.node);
        return this;
    }

    Json put(String key, List<Json> values) {
        ArrayNode list = node.putArray(key);
        values.forEach(v -> list.add(v.node));
        return this;
    }

    Json put(String key, double[] values) {
        ArrayNode list = node.putArray(key);
        for (double each : values) {
            list.add(each + 0.0);
        }
        return this;
    }

    @Override
    public String toString() {
        return JsonText.compact(node);
    }
}
