package org.lifeline.file.handover;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Locale;
import java.util.Map;
import org.lifeline.base.Interval;
import org.lifeline.base.Vector3;
import org.lifeline.design.assessment.NotComputed;
import org.lifeline.design.clearance.ClearanceAlongLineResult;
import org.lifeline.design.clearance.ClearanceStretch;
import org.lifeline.design.envelope.FallCase;
import org.lifeline.design.handover.HandoverResult;
import org.lifeline.design.occupancy.OccupancyResult;
import org.lifeline.design.occupancy.TriedNumber;
import org.lifeline.design.structure.GoverningReaction;
import org.lifeline.design.structure.LoadEffect;
import org.lifeline.design.structure.StatedFactor;
import org.lifeline.design.structure.SupportLoadsResult;
import org.lifeline.model.Post;
import org.lifeline.model.Support;
import org.lifeline.model.absorber.AbsorberCondition;

/** Writes the parts that a design hands over. */
public final class HandoverWriter {
    private static final JsonNodeFactory NODES = JsonNodeFactory.instance;

    private HandoverWriter() {}

    /**
     * Writes the parts.
     *
     * @param result the parts
     * @return the value of the member {@code handover}
     */
    public static ObjectNode write(HandoverResult result) {
        ObjectNode node = NODES.objectNode();
        result.structure().ifPresent(r -> node.set("structure", structure(r)));
        result.occupancy().ifPresent(r -> node.set("numberOfWorkers", workers(r)));
        result.clearance().ifPresent(r -> node.set("clearanceAlongLine", clearance(r)));
        result.installation().ifPresent(r -> node.set("installation", InstallationWriter.write(r)));
        node.set("dataSheet", DataSheetWriter.write(result.dataSheet()));
        ArrayNode missing = node.putArray("notComputed");
        for (NotComputed each : result.notComputed()) {
            missing.addObject().put("what", each.what()).put("why", each.why());
        }
        return node;
    }

    private static ObjectNode structure(SupportLoadsResult r) {
        ObjectNode node = NODES.objectNode();
        number(node, "pullAngle", r.angle());
        ArrayNode factors = node.putArray("factors");
        for (StatedFactor f : r.factors()) {
            ObjectNode factor = factors.addObject().put("name", f.name());
            number(factor, "factor", f.factor());
            factor.put("source", f.source());
        }
        ArrayNode governing = node.putArray("governing");
        r.governing().forEach(g -> governing.add(reaction(g, r)));
        ArrayNode cases = node.putArray("loadCases");
        for (Support s : r.design().line().supports()) {
            r.byEnergyBalance(s.id(), LoadEffect.RESULTANT).ifPresent(g -> cases.add(reaction(g, r)));
        }
        ArrayNode permanent = node.putArray("permanent");
        r.permanent().forEach(v -> permanent.add(vector(v)));
        ArrayNode posts = node.putArray("posts");
        r.design().line().supports().forEach(s -> s.post().ifPresent(p -> posts.add(post(s, p, r))));
        ArrayNode warnings = node.putArray("warnings");
        for (SupportLoadsResult.PostWarning w : r.warnings()) {
            ObjectNode warning =
                    warnings.addObject().put("support", w.support()).put("text", w.text());
            number(warning, "share", w.share());
        }
        return node;
    }

    private static ObjectNode reaction(GoverningReaction g, SupportLoadsResult r) {
        ObjectNode node = NODES.objectNode();
        node.put("support", g.support().id());
        node.put("largest", g.effect().name().toLowerCase(Locale.ROOT));
        number(node, "value", g.value());
        node.put("unit", g.effect().unit());
        ArrayNode factored = node.putArray("factored");
        r.factors().forEach(f -> factored.add(g.factored(f)));
        node.set("vector", vector(g.vector()));
        g.moment().ifPresent(m -> node.set("baseMoment", vector(m)));
        ArrayNode forces = node.putArray("forces");
        g.forces().forEach(v -> forces.add(vector(v)));
        node.put("simultaneous", g.simultaneous());
        number(node, "pullAngle", g.angle());
        node.put("method", g.method().label());
        node.set("case", fallCase(g.fallCase()));
        return node;
    }

    private static ObjectNode post(Support s, Post p, SupportLoadsResult r) {
        ObjectNode node = NODES.objectNode();
        node.put("support", s.id());
        number(node, "height", p.height());
        number(node, "stiffnessX", s.stiffness().x());
        number(node, "stiffnessY", s.stiffness().y());
        r.deflection(s.id()).ifPresent(d -> node.set("deflection", vector(d)));
        return node;
    }

    private static ObjectNode workers(OccupancyResult r) {
        ObjectNode node = NODES.objectNode();
        node.put("inAll", r.inAll());
        ArrayNode spans = node.putArray("inSpans");
        for (int span = 1; span <= r.design().line().spans(); span++) {
            spans.add(r.inSpan(span));
        }
        node.put("confirmedInTime", r.isConfirmed());
        node.put("selectionsLeftOut", r.selectionsLeftOut());
        ArrayNode tried = node.putArray("tried");
        for (TriedNumber each : r.tried()) {
            ObjectNode t = tried.addObject()
                    .put("span", each.span())
                    .put("workers", each.number())
                    .put("arrangements", each.arrangements());
            ArrayNode broken = t.putArray("notMet");
            each.notMet().forEach(c -> broken.add(c.criterion().id()));
        }
        return node;
    }

    private static ObjectNode clearance(ClearanceAlongLineResult r) {
        ObjectNode node = NODES.objectNode();
        number(node, "step", r.steps().step());
        number(node, "rounding", r.steps().rounding());
        number(node, "additionInTime", r.additionInTime());
        node.put("arrestsInTime", r.arrestsInTime());
        ArrayNode stretches = node.putArray("stretches");
        for (ClearanceStretch s : r.stretches()) {
            ObjectNode stretch = stretches.addObject().put("span", s.span());
            number(stretch, "from", s.stations().low());
            number(stretch, "to", s.stations().high());
            stretch.set("along", interval(s.along()));
            stretch.set("lineElevation", interval(s.lineElevation()));
            number(stretch, "requiredElevation", s.requiredElevation());
            number(stretch, "requiredBelowLine", s.requiredBelowLine());
            number(stretch, "requiredBelowWalkingLevel", s.requiredBelowWalkingLevel());
            s.obstruction().ifPresent(v -> number(stretch, "obstruction", v));
            s.availableBelowLine().ifPresent(v -> number(stretch, "availableBelowLine", v));
            s.margin().ifPresent(v -> number(stretch, "margin", v));
            ObjectNode swing = stretch.putObject("swing");
            number(swing, "displacement", s.swing().displacement());
            number(swing, "reach", s.swing().amplitude());
            number(swing, "angle", s.swing().angle());
            number(swing, "drop", s.swing().drop());
            ArrayNode reasons = stretch.putArray("mustNotBeUsed");
            s.reasons().forEach(reasons::add);
            s.governing().ifPresent(c -> stretch.set("case", fallCase(c)));
        }
        ArrayNode forbidden = node.putArray("mustNotBeUsed");
        r.mustNotBeUsed().forEach(i -> forbidden.add(interval(i)));
        return node;
    }

    private static ObjectNode fallCase(FallCase c) {
        ObjectNode node = NODES.objectNode().put("fall", c.fall().id());
        if (c.fall().place().isAtSupport()) {
            node.put("support", c.fall().place().support().orElse(""));
        } else {
            node.put("span", c.fall().place().span());
            number(node, "station", c.fall().place().station());
        }
        number(node, "temperature", c.temperature());
        node.put("force", c.side().name().toLowerCase(Locale.ROOT));
        conditions(node, c.conditions());
        c.attachmentLimit().ifPresent(l -> node.put("attachmentLimit", l.label()));
        c.later().ifPresent(l -> number(node.putObject("laterFall").put("worker", l.worker()), "delay", l.delay()));
        return node;
    }

    /**
     * Says of those who fall under which condition other than dry their absorber has the force of a case.
     *
     * @param node where it is put; nothing where all have that of the dry
     * @param byWorker the condition by worker
     */
    public static void conditions(ObjectNode node, Map<String, AbsorberCondition> byWorker) {
        byWorker.forEach((worker, condition) -> node.withArrayProperty("absorberConditions")
                .addObject()
                .put("worker", worker)
                .put("condition", condition.kind().label()));
    }

    static ArrayNode vector(Vector3 v) {
        return NODES.arrayNode().add(v.x() + 0.0).add(v.y() + 0.0).add(v.z() + 0.0);
    }

    static ArrayNode interval(Interval i) {
        return NODES.arrayNode().add(i.low()).add(i.high());
    }

    /** Writes a finite number; others are left out. */
    static void number(ObjectNode node, String key, double value) {
        if (Double.isFinite(value)) {
            node.put(key, value + 0.0);
        }
    }
}
