package org.lifeline.file.result;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Locale;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.state.AttachmentLimit;
import org.lifeline.analysis.warning.Warning;
import org.lifeline.design.assessment.AssessedCriterion;
import org.lifeline.design.assessment.AssessmentResult;
import org.lifeline.design.assessment.FollowedArrest;
import org.lifeline.design.assessment.GoverningValue;
import org.lifeline.design.assessment.IndependentCheck;
import org.lifeline.design.assessment.NotComputed;
import org.lifeline.design.criteria.CapacityCheck;
import org.lifeline.design.criteria.CriterionResult;
import org.lifeline.design.criteria.Status;
import org.lifeline.design.envelope.Extreme;
import org.lifeline.design.envelope.Extremes;
import org.lifeline.design.envelope.FallCase;
import org.lifeline.design.envelope.Quantity;
import org.lifeline.file.handover.HandoverWriter;
import org.lifeline.model.Place;
import org.lifeline.model.incident.SecondFall;

/** Draws up the member {@code assessment} of a result file: plain SI numbers, unrounded. */
final class AssessmentWriter {
    private static final JsonNodeFactory NODES = JsonNodeFactory.instance;

    private AssessmentWriter() {}

    static ObjectNode write(AssessmentResult result) {
        ObjectNode node = NODES.objectNode();
        node.put("basis", result.basis().key());
        node.put("complete", result.isComplete());
        ArrayNode governing = node.putArray("governing");
        result.governing().forEach(g -> governing.add(value(g)));
        ArrayNode criteria = node.putArray("criteria");
        result.criteria().forEach(c -> criteria(criteria, c));
        ArrayNode warnings = node.putArray("warnings");
        result.warnings().forEach(w -> warnings.add(warning(w)));
        ArrayNode missing = node.putArray("notComputed");
        for (NotComputed each : result.notComputed()) {
            missing.addObject().put("what", each.what()).put("why", each.why());
        }
        node.putObject("motion")
                .put("scope", result.motion().words())
                .put("arrests", result.followed().size());
        ArrayNode followed = node.putArray("arrestsInTime");
        result.followed().forEach(f -> followed.add(followed(f)));
        result.design().secondFall().ifPresent(f -> node.set("secondFall", secondFall(f, result)));
        result.design().rescuerMass().ifPresent(m -> node.set("rescue", rescue(m, result)));
        ArrayNode checks = node.putArray("independentChecks");
        for (IndependentCheck each : result.checks()) {
            ObjectNode check = fallCase(each.fallCase());
            check.put("method", each.method().label());
            check.put("passed", each.passed());
            checks.add(check);
        }
        return node;
    }

    private static ObjectNode value(GoverningValue g) {
        ObjectNode node = NODES.objectNode();
        node.put("quantity", g.quantity().map(Quantity::key).orElse(g.name()));
        g.support().ifPresent(s -> node.put("support", s));
        ResultWriter.number(node, "value", g.value());
        ResultWriter.number(node, "factored", g.factored());
        node.put("unit", g.unit());
        node.put("method", g.method().label());
        g.energyBalance().ifPresent(v -> ResultWriter.number(node, "energyBalance", v));
        g.inTime().ifPresent(v -> ResultWriter.number(node, "transient", v));
        g.allowance().ifPresent(v -> ResultWriter.number(node, "transientAllowance", v));
        g.ratio().ifPresent(v -> ResultWriter.number(node, "ratio", v));
        g.dampingRange().ifPresent(i -> {
            ObjectNode range = node.putObject("dampingRange");
            ResultWriter.number(range, "low", i.low());
            ResultWriter.number(range, "high", i.high());
        });
        node.setAll(fallCase(g.fallCase()));
        return node;
    }

    /** The further worker of the design, with the worst values of the arrests in which he falls; none if none was computed. */
    private static ObjectNode secondFall(SecondFall second, AssessmentResult result) {
        ObjectNode node = NODES.objectNode();
        node.put("worker", second.worker());
        ArrayNode delays = node.putArray("delays");
        second.delays().forEach(delays::add);
        node.put("arrests", result.secondFalls().size());
        result.secondFall().ifPresent(e -> node.set("governing", extremes(e)));
        return node;
    }

    private static ObjectNode rescue(double mass, AssessmentResult result) {
        ObjectNode node = NODES.objectNode();
        ResultWriter.number(node, "rescuerMass", mass);
        node.put("states", result.rescueStates().size());
        result.rescue().ifPresent(e -> node.set("governing", extremes(e)));
        return node;
    }

    private static ArrayNode extremes(Extremes extremes) {
        ArrayNode list = NODES.arrayNode();
        for (Extreme e : extremes.governing()) {
            ObjectNode node = list.addObject();
            node.put("quantity", e.quantity().map(Quantity::key).orElse(e.name()));
            e.support().ifPresent(s -> node.put("support", s));
            ResultWriter.number(node, "value", e.computed());
            ResultWriter.number(node, "allowance", e.allowance());
            ResultWriter.number(node, "factored", e.value());
            node.put("unit", e.unit());
            node.setAll(fallCase(e.fallCase()));
        }
        return list;
    }

    /** Names a case: fall, place, attachment, temperature, force, deviations. */
    private static ObjectNode fallCase(FallCase c) {
        ObjectNode node = NODES.objectNode();
        node.put("fall", c.fall().id());
        node.set("place", place(c.fall().place()));
        node.put("attachment", attachment(c));
        ResultWriter.number(node, "temperature", c.temperature());
        node.put("force", c.side().name().toLowerCase(Locale.ROOT));
        HandoverWriter.conditions(node, c.conditions());
        c.later()
                .ifPresent(l ->
                        ResultWriter.number(node.putObject("laterFall").put("worker", l.worker()), "delay", l.delay()));
        c.pretensionFactor().ifPresent(v -> ResultWriter.number(node, "pretensionFactor", v));
        c.friction().ifPresent(v -> ResultWriter.number(node, "friction", v));
        c.mass().ifPresent(v -> ResultWriter.number(node, "mass", v));
        return node;
    }

    /** Where the connection pulls on a support itself it cannot run. */
    private static String attachment(FallCase c) {
        if (c.fall().place().isAtSupport()) {
            return "held";
        }
        return c.attachmentLimit()
                .map(l -> l == AttachmentLimit.HELD ? "held" : "running")
                .orElse("gripped");
    }

    private static ObjectNode place(Place place) {
        ObjectNode node = NODES.objectNode();
        place.support()
                .ifPresentOrElse(
                        id -> node.put("support", id),
                        () -> ResultWriter.number(node.put("span", place.span()), "station", place.station()));
        return node;
    }

    private static void criteria(ArrayNode list, AssessedCriterion c) {
        CriterionResult result = c.result();
        for (CapacityCheck check : result.check().deciding()) {
            PrintedComparison printed = new PrintedComparison(result.criterion(), check);
            ObjectNode node = list.addObject();
            node.put("id", result.criterion().id());
            node.put("comparison", check.title());
            ResultWriter.number(node, "demand", check.demand());
            ResultWriter.number(node, "capacity", check.capacity());
            node.put("unit", check.unit());
            ResultWriter.number(node, "ratio", check.ratio());
            node.put("result", result(check.status()));
            String why = check.reason().isEmpty() ? c.remark() : check.reason();
            if (!why.isEmpty()) {
                node.put("why", why);
            }
            check.governing()
                    .map(Extreme::arrest)
                    .map(ArrestResult::method)
                    .ifPresent(m -> node.put("method", m.label()));
            check.governing().ifPresent(e -> node.setAll(fallCase(e.fallCase())));
            node.put("source", result.criterion().source().citation());
            node.put("mark", printed.mark());
        }
    }

    private static String result(Status status) {
        return switch (status) {
            case MET -> "MET";
            case NOT_MET -> "NOT MET";
            case NOT_EVALUATED -> "NOT EVALUATED";
        };
    }

    private static ObjectNode warning(Warning w) {
        ObjectNode node = NODES.objectNode();
        node.put("code", w.code().key());
        node.put("text", w.subject() + ": " + w.text());
        node.put("where", w.place().isEmpty() ? w.subject() : w.place());
        ResultWriter.number(node, "value", w.value());
        ResultWriter.number(node, "limit", w.limit());
        node.put("unit", w.unit());
        return node;
    }

    private static ObjectNode followed(FollowedArrest f) {
        ObjectNode node = fallCase(f.fallCase());
        ArrestResult r = f.arrest();
        ResultWriter.number(node, "freeFall", r.freeFall());
        ResultWriter.number(node, "deployment", r.deployment());
        ResultWriter.number(node, "arrestForce", r.arrestForce());
        ResultWriter.number(node, "endAnchorLoad", r.endAnchorLoad());
        ResultWriter.number(node, "maximumTension", r.maximumTension());
        ResultWriter.number(node, "totalFallDistance", r.totalFallDistance());
        ResultWriter.number(node, "requiredBelowLine", r.clearance().requiredBelowLine());
        r.clearance().margin().ifPresent(v -> ResultWriter.number(node, "margin", v));
        r.motion().ifPresent(m -> {
            ResultWriter.number(node, "uncertainty", m.allowances().relative());
            ResultWriter.number(node, "relativeEnergyDrift", m.relativeDrift());
        });
        node.put("accurate", f.accurate());
        return node;
    }
}
