package org.lifeline.file.handover;

import static org.lifeline.file.handover.HandoverWriter.interval;
import static org.lifeline.file.handover.HandoverWriter.number;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import org.lifeline.design.envelope.Quantity;
import org.lifeline.design.field.Reading;
import org.lifeline.design.field.StringingRow;
import org.lifeline.design.installation.CutLength;
import org.lifeline.design.installation.InstallationResult;
import org.lifeline.design.installation.ReadingEffect;
import org.lifeline.design.installation.StretchEffect;
import org.lifeline.design.installation.TakeUp;

/** Writes what those need who install a line. */
final class InstallationWriter {
    private static final JsonNodeFactory NODES = JsonNodeFactory.instance;
    private static final List<Quantity> MEANT = List.of(
            Quantity.END_ANCHOR_LOAD,
            Quantity.MAXIMUM_TENSION,
            Quantity.REQUIRED_BELOW_LINE,
            Quantity.REQUIRED_ELEVATION,
            Quantity.CLEARANCE_MARGIN);

    private InstallationWriter() {}

    static ObjectNode write(InstallationResult r) {
        ObjectNode node = NODES.objectNode();
        ArrayNode lengths = node.putArray("lengths");
        for (CutLength each : r.lengths()) {
            ObjectNode length = lengths.addObject().put("span", each.span());
            number(length, "unstretchedLength", each.unstretched());
        }
        number(node, "totalLength", r.totalLength());
        ArrayNode takeUps = node.putArray("takeUp");
        for (TakeUp each : r.takeUps()) {
            ObjectNode up = takeUps.addObject();
            number(up, "temperature", each.temperature());
            up.set("tensions", interval(each.tensions()));
            number(up, "rope", each.rope());
            number(up, "structure", each.structure());
        }
        number(node, "tensionerTravel", r.tensionerTravel());
        ArrayNode stretch = node.putArray("constructionalStretch");
        for (StretchEffect each : r.stretch()) {
            ObjectNode s = stretch.addObject();
            number(s, "stretch", each.stretch());
            number(s, "pretension", each.pretension());
            number(s, "sag", each.sag());
            number(s, "retension", each.retension());
        }
        ArrayNode stringing = node.putArray("stringing");
        r.stringing().forEach(s -> stringing.add(row(s)));
        ArrayNode readings = node.putArray("readings");
        for (ReadingEffect each : r.readings()) {
            ObjectNode reading = readings.addObject().put("reading", each.name());
            number(reading, "pretension", each.pretension());
            MEANT.forEach(q -> each.worst(q).ifPresent(v -> number(reading, q.key(), v)));
        }
        return node;
    }

    static ObjectNode row(StringingRow s) {
        ObjectNode node = NODES.objectNode();
        number(node, "temperature", s.temperature());
        node.put("span", s.span());
        node.set("tension", reading(s.tension()));
        node.set("sag", reading(s.sag()));
        return node;
    }

    private static ArrayNode reading(Reading r) {
        return NODES.arrayNode().add(r.low()).add(r.nominal()).add(r.high());
    }
}
