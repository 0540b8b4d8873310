package org.lifeline.file.handover;

import static org.lifeline.file.handover.HandoverWriter.interval;
import static org.lifeline.file.handover.HandoverWriter.number;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Locale;
import org.lifeline.design.handover.DataSheet;

/** Writes the data sheet for a line. */
final class DataSheetWriter {
    private static final JsonNodeFactory NODES = JsonNodeFactory.instance;

    private DataSheetWriter() {}

    static ObjectNode write(DataSheet sheet) {
        ObjectNode node = NODES.objectNode();
        sheet.users().ifPresent(n -> node.put("users", n));
        node.set("masses", interval(sheet.masses()));
        sheet.clearanceBelowLine().ifPresent(v -> number(node, "clearanceBelowLine", v));
        ArrayNode connections = node.putArray("connections");
        for (DataSheet.Permitted p : sheet.connections()) {
            ObjectNode c = connections
                    .addObject()
                    .put("kind", p.connection().kind().name().toLowerCase(Locale.ROOT));
            number(c, "freeFall", p.freeFall());
            c.set("deploymentForce", interval(p.forces()));
            number(c, "maximumExtension", p.connection().maximumExtension());
            ArrayNode users = c.putArray("workers");
            p.users().forEach(users::add);
        }
        ArrayNode pretension = node.putArray("pretension");
        sheet.pretension().forEach(r -> pretension.add(InstallationWriter.row(r)));
        ArrayNode anchors = node.putArray("anchors");
        for (DataSheet.AnchorLoad a : sheet.anchors()) {
            ObjectNode anchor = anchors.addObject().put("support", a.support());
            number(anchor, "load", a.load());
            number(anchor, "capacity", a.stated());
        }
        return node;
    }
}
