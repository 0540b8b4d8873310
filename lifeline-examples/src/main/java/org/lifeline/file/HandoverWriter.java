package org.lifeline.file;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import org.lifeline.base.Interval;
import org.lifeline.design.clearance.StationSteps;
import org.lifeline.design.handover.HandoverRequest;
import org.lifeline.design.installation.ConstructionalStretch;
import org.lifeline.design.installation.InstallationRequest;
import org.lifeline.design.structure.SupportLoads;

/** Writes {@code handover}: a part that is asked for by its object, with what it was asked with. */
final class HandoverWriter {
    private static final JsonNodeFactory NODES = JsonNodeFactory.instance;

    private HandoverWriter() {}

    static ObjectNode write(HandoverRequest request) {
        ObjectNode node = NODES.objectNode();
        request.structure().ifPresent(s -> structure(node.putObject("structure"), s));
        request.clearance().ifPresent(c -> clearance(node.putObject("clearanceAlongLine"), c.steps()));
        request.installation().ifPresent(p -> installation(node.putObject("installation"), p.request()));
        if (request.numberOfWorkers()) {
            node.put("numberOfWorkers", true);
        }
        return node;
    }

    private static void structure(ObjectNode node, SupportLoads loads) {
        loads.statedAngle().ifPresent(a -> node.put("pullAngle", a + " rad"));
        if (!loads.factors().isEmpty()) {
            ArrayNode list = node.putArray("factors");
            loads.factors()
                    .forEach(f -> list.addObject()
                            .put("name", f.name())
                            .put("factor", f.factor())
                            .put("source", f.source()));
        }
    }

    private static void clearance(ObjectNode node, StationSteps steps) {
        node.put("step", steps.step() + " m").put("rounding", steps.rounding() + " m");
    }

    private static void installation(ObjectNode node, InstallationRequest r) {
        node.put("lowestTemperature", r.temperatures().low() + " °C");
        node.put("highestTemperature", r.temperatures().high() + " °C");
        node.put("handTight", r.handTight() + " N");
        if (!r.tolerance().equals(InstallationRequest.WITHIN_TEN_PERCENT)) {
            node.put("tolerance", tolerance(r.tolerance()));
        }
        r.stretch().ifPresent(s -> node.set("constructionalStretch", stretch(s)));
    }

    private static JsonNode stretch(ConstructionalStretch stretch) {
        if (stretch.equals(ConstructionalStretch.STEEL_CORE)) {
            return NODES.textNode("steel core");
        }
        if (stretch.equals(ConstructionalStretch.FIBRE_CORE)) {
            return NODES.textNode("fibre core");
        }
        return NODES.objectNode()
                .put("from", stretch.range().low())
                .put("to", stretch.range().high())
                .put("source", stretch.source());
    }

    /** The share t that gives the factors 1 − t and 1 + t again to their last digit, with the fewest digits. */
    private static double tolerance(Interval factors) {
        List<Double> tried = new ArrayList<>(DesignWriter.rounded(1 - factors.low()));
        tried.addAll(DesignWriter.rounded(factors.high() - 1));
        return tried.stream()
                .filter(t -> 1 - t == factors.low() && 1 + t == factors.high())
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("a design file has one tolerance to both sides of the"
                        + " pretension; the factors " + factors.low() + " and " + factors.high()
                        + " cannot be written"));
    }
}
