package org.lifeline.file;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.lifeline.base.Violation;
import org.lifeline.base.unit.Dimension;
import org.lifeline.base.unit.NearestName;
import org.lifeline.file.Fields.Range;
import org.lifeline.file.json.Findings;
import org.lifeline.model.Fall;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Place;
import org.lifeline.model.Worker;

/** Reads {@code falls}. */
final class FallReader {
    private static final String PLACE = "give exactly one: a span with its station, or a support";

    private final Map<String, @Nullable Worker> workers;
    private final @Nullable Lifeline line;
    private final int spans;

    /**
     * A reader of falls.
     *
     * @param workers the workers by id; null for one that is wrong himself
     * @param line the line, null if its supports are wrong
     * @param spans number of spans as far as it is known, below 1 if not
     */
    FallReader(Map<String, @Nullable Worker> workers, @Nullable Lifeline line, int spans) {
        this.workers = workers;
        this.line = line;
        this.spans = spans;
    }

    List<@Nullable Fall> readAll(Fields top) {
        List<@Nullable Fall> list = new ArrayList<>();
        Map<String, Integer> ids = new HashMap<>();
        List<JsonNode> items = top.array("falls");
        for (int i = 0; i < items.size(); i++) {
            Fields f = Fields.of(items.get(i), "falls[" + i + "]", top.findings());
            if (f == null) {
                continue;
            }
            list.add(read(f));
            String id = f.node("id").asText("");
            Integer before = ids.putIfAbsent(id, i);
            if (before != null && !id.isEmpty()) {
                f.findings().bad(f.path("id"), f.node("id"), "is the id of falls[" + before + "] as well");
            }
        }
        return list;
    }

    private @Nullable Fall read(Fields f) {
        String id = f.requiredText("id");
        if (id != null && id.isBlank()) {
            f.findings().bad(f.path("id"), f.node("id"), "must not be blank");
        }
        Fall.Builder b = Fall.builder(id == null ? "?" : id);
        Place place = place(f);
        if (place != null) {
            b.at(place);
        }
        f.required("fallers");
        List<JsonNode> fallers = f.array("fallers");
        if (f.node("fallers").isArray() && f.node("fallers").isEmpty()) {
            f.findings().bad(f.path("fallers"), f.node("fallers"), "must name at least one worker");
        }
        boolean complete = place != null;
        for (int i = 0; i < fallers.size(); i++) {
            Worker worker = worker(fallers.get(i), f.path("fallers") + "[" + i + "]", f.findings());
            if (worker != null) {
                b.faller(worker);
            }
            complete &= worker != null;
        }
        double freeFall = f.quantity("freeFall", Dimension.LENGTH, Range.NOT_NEGATIVE);
        if (!Double.isNaN(freeFall)) {
            b.freeFall(freeFall);
        }
        List<JsonNode> hanging = f.array("hanging");
        for (int i = 0; i < hanging.size(); i++) {
            Fields h = Fields.of(hanging.get(i), f.path("hanging") + "[" + i + "]", f.findings());
            complete &= h != null && hanging(h, b);
        }
        f.close();
        return complete ? f.build(b::build) : null;
    }

    private boolean hanging(Fields h, Fall.Builder b) {
        JsonNode name = h.required("worker");
        Worker worker = name == null ? null : worker(name, h.path("worker"), h.findings());
        Place place = place(h);
        h.close();
        if (worker == null || place == null) {
            return false;
        }
        b.hanging(worker, place);
        return true;
    }

    private @Nullable Worker worker(JsonNode value, String path, Findings findings) {
        String id = Fields.text(value, path, findings);
        if (id == null) {
            return null;
        }
        if (!workers.containsKey(id)) {
            String near = NearestName.of(id, workers.keySet())
                    .map(s -> "did you mean \"" + s + "\"?")
                    .orElse("known: " + Findings.clip(String.join(", ", workers.keySet())));
            findings.bad(path, value, "is not the id of a worker; " + near);
        }
        return workers.get(id);
    }

    /** A station of a span, or a support; one of the two, and not both. */
    private @Nullable Place place(Fields f) {
        if (f.has("support")) {
            String id = f.requiredText("support");
            if (f.count("span", "station") > 0) {
                f.findings().bad(f.path("support"), f.node("support"), PLACE);
                return null;
            }
            if (id == null) {
                return null;
            }
            Place place = Place.atSupport(id);
            List<Violation> found = line == null ? List.of() : line.check(place);
            found.forEach(v -> f.report(v, v.path()));
            return found.isEmpty() ? place : null;
        }
        if (!f.has("span") && !f.has("station")) {
            f.findings().missing(f.path("span"), PLACE);
            return null;
        }
        f.required("span");
        int span = f.count("span");
        double station = f.requiredQuantity("station", Dimension.LENGTH, Range.POSITIVE);
        if (line == null) {
            if (spans >= 1 && span > spans) {
                f.findings().bad(f.path("span"), f.node("span"), "must be a span from 1 to " + spans);
            }
            return span >= 1 && station > 0 ? Place.of(span, station) : null;
        }
        if (span < 1) {
            return null;
        }
        Place place = Place.of(span, Double.isNaN(station) ? Double.MIN_VALUE : station);
        List<Violation> found = line.check(place);
        found.forEach(v -> f.report(v, v.path()));
        return found.isEmpty() && !Double.isNaN(station) ? place : null;
    }
}
