package org.lifeline.file;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import org.lifeline.design.criteria.Criterion;
import org.lifeline.design.criteria.Requirement;
import org.lifeline.design.criteria.SourceKind;

/** Writes {@code criteria}: built-in ones by name, those that a design states with their requirement. */
final class CriterionWriter {
    private static final JsonNodeFactory NODES = JsonNodeFactory.instance;

    private CriterionWriter() {}

    static JsonNode write(Criterion criterion) {
        if (criterion.source().kind() != SourceKind.STATED) {
            return NODES.textNode(criterion.id());
        }
        ObjectNode node = NODES.objectNode();
        node.put("id", criterion.id());
        requirement(node, criterion.requirement());
        node.put("source", criterion.source().citation());
        return node;
    }

    private static void requirement(ObjectNode node, Requirement r) {
        switch (r.join()) {
            case ALL_OF -> parts(node.putArray("allOf"), r);
            case ANY_OF -> parts(node.putArray("anyOf"), r);
            case EACH_ANCHOR_ANY_OF -> parts(node.putArray("eachAnchorAnyOf"), r);
            case NONE ->
                limit(
                        node,
                        r.comparison()
                                .orElseThrow(() -> new IllegalArgumentException(
                                        "a design file states limits; this requirement is none")));
        }
    }

    private static void parts(ArrayNode array, Requirement r) {
        r.parts().forEach(part -> requirement(array.addObject(), part));
    }

    private static void limit(ObjectNode node, Requirement.Comparison c) {
        String unit = c.quantity().unit();
        node.put("demand", c.quantity().key());
        switch (unit) {
            case "-" -> node.put("capacity", c.limit());
            case "N", "m", "kg" -> node.put("capacity", c.limit() + " " + unit);
            default -> throw new IllegalArgumentException("an angle cannot be written in a design file");
        }
        c.quantity().support().ifPresent(id -> node.put("support", id));
        if (c.factor() != 1) {
            node.put("factor", c.factor());
        }
        if (c.perWorker()) {
            node.put("perWorker", true);
        }
    }
}
