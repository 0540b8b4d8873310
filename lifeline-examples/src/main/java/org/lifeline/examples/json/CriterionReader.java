package org.lifeline.examples.json;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.lifeline.examples.arrests.Demand;
import org.lifeline.examples.criteria.Criterion;
import org.lifeline.examples.json.Fields.Range;

/** Reads {@code criteria}. */
final class CriterionReader {
    private final Set<String> builtIn;
    private final List<String> supportIds;

    CriterionReader(Set<String> builtIn, List<String> supportIds) {
        this.builtIn = builtIn;
        this.supportIds = supportIds;
    }

    List<Criterion> readAll(Fields top) {
        List<Criterion> list = new ArrayList<>();
        Set<String> ids = new HashSet<>();
        List<JsonNode> items = top.array("criteria");
        for (int i = 0; i < items.size(); i++) {
            String path = "criteria[" + i + "]";
            JsonNode item = items.get(i);
            Criterion read = item.isObject() ? own(item, path, top.findings()) : named(item, path, top.findings());
            if (read == null) {
                continue;
            }
            if (!ids.add(read.id())) {
                top.findings().bad(item.isObject() ? path + ".id" : path, item, "is named twice");
            }
            list.add(read);
        }
        return list;
    }

    private @Nullable Criterion named(JsonNode item, String path, Findings findings) {
        if (!item.isTextual()) {
            findings.bad(path, item, "must be the id of a built-in criterion, or an object that states one");
            return null;
        }
        String id = item.textValue();
        if (!builtIn.contains(id)) {
            String near = NearestName.of(id, builtIn)
                    .map(s -> "did you mean \"" + s + "\"?")
                    .orElse("known: "
                            + String.join(", ", builtIn.stream().sorted().toList()));
            findings.bad(path, item, "is not a built-in criterion; " + near);
            return null;
        }
        findings.note(path, id);
        return new Criterion.BuiltIn(id);
    }

    private @Nullable Criterion own(JsonNode item, String path, Findings findings) {
        Fields f = Fields.of(item, path, findings);
        if (f == null) {
            return null;
        }
        String id = f.requiredText("id");
        if (id != null && (id.isBlank() || builtIn.contains(id))) {
            f.findings()
                    .bad(
                            f.path("id"),
                            f.node("id"),
                            id.isBlank() ? "must not be blank" : "is the id of a built-in criterion");
        }
        f.required("demand");
        String key = f.choice("demand", Demand.keys());
        Demand demand = key == null ? null : Demand.of(key).orElse(null);
        JsonNode capacity = f.required("capacity");
        double limit = Double.NaN;
        if (capacity != null && demand != null) {
            Dimension dimension = demand.unit().equals("N") ? Dimension.FORCE : Dimension.LENGTH;
            limit = f.quantity("capacity", dimension, demand.atLeast() ? Range.NOT_NEGATIVE : Range.POSITIVE);
        }
        String source = f.text("source");
        String support = f.text("support");
        if (support != null && (demand != Demand.SUPPORT_LOAD || !supportIds.contains(support))) {
            f.findings()
                    .bad(
                            f.path("support"),
                            f.node("support"),
                            demand != Demand.SUPPORT_LOAD
                                    ? "stands only beside the demand supportLoad"
                                    : "is not the id of a support");
        }
        f.close();
        if (!f.clean() || id == null || demand == null) {
            return null;
        }
        return new Criterion.Own(
                id,
                demand,
                new Criterion.Limit(limit, support == null ? "" : support),
                source == null ? "no source stated" : source);
    }
}
