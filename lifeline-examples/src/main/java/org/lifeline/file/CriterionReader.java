package org.lifeline.file;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.lifeline.base.unit.Dimension;
import org.lifeline.base.unit.NearestName;
import org.lifeline.design.criteria.CheckedQuantity;
import org.lifeline.design.criteria.Criteria;
import org.lifeline.design.criteria.Criterion;
import org.lifeline.design.criteria.Requirement;
import org.lifeline.design.envelope.Quantity;
import org.lifeline.file.Fields.Range;
import org.lifeline.file.json.Findings;

/** Reads {@code criteria}. */
final class CriterionReader {
    private static final String SUPPORT_LOAD = Quantity.SUPPORT_LOAD.key();

    /** Demands that a design may put a limit on: all whose limit can be written; angles have no unit in design files. */
    private static final List<String> DEMANDS = CheckedQuantity.all().stream()
            .filter(d -> !d.unit().equals("rad"))
            .map(CheckedQuantity::key)
            .toList();

    /** Keys that join several requirements. */
    private static final List<String> JOINS = List.of("allOf", "anyOf", "eachAnchorAnyOf");

    private static final String[] ALTERNATIVES = {"demand", "allOf", "anyOf", "eachAnchorAnyOf"};

    private final List<String> builtIn = Criteria.ids();
    private final Set<String> supportIds;

    CriterionReader(Set<String> supportIds) {
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
        return Criteria.of(id).orElseThrow();
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
        Requirement requirement = requirement(f);
        String source = f.text("source");
        f.close();
        if (!f.clean() || id == null || requirement == null) {
            return null;
        }
        return Criterion.composed(id, requirement, source == null ? "no source stated" : source);
    }

    /** A limit, or several requirements that are joined. */
    private @Nullable Requirement requirement(Fields f) {
        String join = JOINS.stream().filter(f::has).findFirst().orElse(null);
        if (join == null) {
            return limit(f);
        }
        if (f.count(ALTERNATIVES) != 1) {
            f.findings().bad(f.path(join), f.node(join), "give exactly one of " + String.join(", ", ALTERNATIVES));
            return null;
        }
        List<Requirement> parts = new ArrayList<>();
        List<JsonNode> items = f.array(join);
        for (int i = 0; i < items.size(); i++) {
            String path = f.path(join) + "[" + i + "]";
            Fields part = Fields.of(items.get(i), path, f.findings());
            if (part != null) {
                Requirement read = requirement(part);
                part.close();
                if (read != null) {
                    parts.add(read);
                }
            }
        }
        if (items.isEmpty()) {
            f.findings().bad(f.path(join), f.node(join), "must have at least one requirement");
        }
        Requirement[] array = parts.toArray(new Requirement[0]);
        return f.build(() -> switch (join) {
            case "allOf" -> Requirement.allOf(array);
            case "anyOf" -> Requirement.anyOf(array);
            default -> Requirement.eachAnchorAnyOf(array);
        });
    }

    private @Nullable Requirement limit(Fields f) {
        f.required("demand");
        String key = f.choice("demand", DEMANDS);
        CheckedQuantity named = key == null ? null : CheckedQuantity.ofKey(key).orElse(null);
        JsonNode capacity = f.required("capacity");
        double limit = Double.NaN;
        if (capacity != null && named != null) {
            Range range = named.key().equals(Quantity.CLEARANCE_MARGIN.key()) ? Range.NOT_NEGATIVE : Range.POSITIVE;
            limit = named.unit().equals("-")
                    ? f.number("capacity", range)
                    : f.quantity("capacity", dimension(named.unit()), range);
        }
        String support = f.text("support");
        if (support != null && (!SUPPORT_LOAD.equals(key) || !supportIds.contains(support))) {
            f.findings()
                    .bad(
                            f.path("support"),
                            f.node("support"),
                            !SUPPORT_LOAD.equals(key)
                                    ? "stands only beside the demand supportLoad"
                                    : "is not the id of a support");
        }
        double factor = f.number("factor", Range.POSITIVE);
        boolean perWorker = f.has("perWorker") && f.flag("perWorker");
        if (f.count("factor", "perWorker") == 2) {
            f.findings().bad(f.path("perWorker"), f.node("perWorker"), "does not stand beside a factor");
        }
        if (named == null) {
            return null;
        }
        CheckedQuantity quantity = support == null ? named : CheckedQuantity.loadOnSupport(support);
        double value = limit;
        return f.build(() -> perWorker
                ? Requirement.limitPerWorker(quantity, value)
                : Double.isNaN(factor)
                        ? Requirement.limit(quantity, value)
                        : Requirement.factoredLoad(quantity, new Requirement.Factor(factor), value));
    }

    private static Dimension dimension(String unit) {
        return switch (unit) {
            case "N" -> Dimension.FORCE;
            case "kg" -> Dimension.MASS;
            default -> Dimension.LENGTH;
        };
    }
}
