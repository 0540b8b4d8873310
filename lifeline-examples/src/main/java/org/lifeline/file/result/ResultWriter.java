package org.lifeline.file.result;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.LineEquilibrium;
import org.lifeline.analysis.SpanState;
import org.lifeline.analysis.clearance.Clearance;
import org.lifeline.analysis.clearance.ClearanceRow;
import org.lifeline.analysis.motion.MotionSummary;
import org.lifeline.analysis.motion.SupportPeaks;
import org.lifeline.analysis.motion.WorkerPeaks;
import org.lifeline.analysis.state.AttachmentLimit;
import org.lifeline.analysis.state.EnergyAccount;
import org.lifeline.analysis.state.InlineAbsorberState;
import org.lifeline.analysis.state.SupportReaction;
import org.lifeline.base.Vector3;
import org.lifeline.design.envelope.Extreme;
import org.lifeline.design.envelope.Quantity;
import org.lifeline.file.handover.HandoverWriter;
import org.lifeline.file.json.JsonText;
import org.lifeline.model.absorber.DeploymentForce;

/**
 * Draws up the result file: plain SI numbers, unrounded; what is not known is left out.
 *
 * <p>Immutable and thread-safe.
 */
public final class ResultWriter {
    /** The format of a file of stated falls alone. */
    public static final String FORMAT = "org.lifeline.result/1";

    /** The format of a file with the assessment of the whole line. */
    public static final String ASSESSED = "org.lifeline.result/2";

    private static final JsonNodeFactory NODES = JsonNodeFactory.instance;

    private final String libraryVersion;
    private final String sha256;

    /**
     * A writer for the results of one design file.
     *
     * @param libraryVersion version of the library that computed them
     * @param sha256 SHA-256 of the design file as read
     */
    public ResultWriter(String libraryVersion, String sha256) {
        this.libraryVersion = libraryVersion;
        this.sha256 = sha256;
    }

    /**
     * The result file.
     *
     * @param run what was computed
     * @param criteria what came out for the criteria
     * @return the file, JSON in UTF-8
     */
    public byte[] write(DesignRun run, List<PrintedComparison> criteria) {
        return write(run, criteria, IndependentCheck.of(run.arrests()));
    }

    /**
     * The result file.
     *
     * @param run what was computed
     * @param criteria what came out for the criteria
     * @param check the independent check of the arrests
     * @return the file, JSON in UTF-8
     */
    public byte[] write(DesignRun run, List<PrintedComparison> criteria, IndependentCheck check) {
        return bytes(root(run, criteria, check, FORMAT));
    }

    /**
     * The result file with the assessment of the whole line.
     *
     * @param run what was computed
     * @param criteria what came out for the criteria on the stated falls
     * @param check the independent check of the stated falls
     * @param provenance what the numbers come from
     * @return the file, JSON in UTF-8
     */
    public byte[] write(
            AssessedRun run, List<PrintedComparison> criteria, IndependentCheck check, ResultProvenance provenance) {
        ObjectNode root = root(run.run(), criteria, check, ASSESSED);
        root.put("designContentSha256", provenance.contentSha256());
        ObjectNode node = root.putObject("provenance");
        node.put("version", libraryVersion);
        node.put("commit", provenance.commit());
        node.put("jdk", provenance.jdk());
        ObjectNode options = node.putObject("options");
        provenance.options().forEach(options::put);
        root.set("assessment", AssessmentWriter.write(run.assessment()));
        run.handover().ifPresent(h -> root.set("handover", HandoverWriter.write(h)));
        return bytes(root);
    }

    private ObjectNode root(DesignRun run, List<PrintedComparison> criteria, IndependentCheck check, String format) {
        ObjectNode root = NODES.objectNode();
        root.put("format", format);
        root.put("libraryVersion", libraryVersion);
        root.put("designSha256", sha256);
        root.put("title", run.design().title());
        ObjectNode factors = root.putObject("modelFactors");
        factors.put("force", run.design().modelFactors().force());
        factors.put("distance", run.design().modelFactors().distance());
        if (!run.design().modelFactors().reason().isEmpty()) {
            factors.put("reason", run.design().modelFactors().reason());
        }
        root.put("fallsSearched", run.searched());
        root.set("installed", installed(run.installed()));
        // One arrest for each fall, temperature and force; where the attachment is held beside them what governs more.
        ArrayNode arrests = root.putArray("arrests");
        ArrayNode held = NODES.arrayNode();
        for (int i = 0; i < run.arrests().size(); i++) {
            ArrestResult r = run.arrests().get(i);
            ObjectNode node = arrest(r);
            check.flag(i).ifPresent(flag -> node.put("independentCheck", flag));
            boolean isHeld = r.attachmentLimit().equals(Optional.of(AttachmentLimit.HELD));
            (isHeld ? held : arrests).add(node);
        }
        if (!held.isEmpty()) {
            root.set("heldArrests", held);
        }
        ArrayNode list = root.putArray("criteria");
        criteria.forEach(c -> list.add(criterion(c)));
        root.set("governing", governing(run));
        return root;
    }

    private static byte[] bytes(ObjectNode root) {
        return (JsonText.pretty(root) + "\n").getBytes(StandardCharsets.UTF_8);
    }

    private static ObjectNode installed(LineEquilibrium line) {
        ObjectNode node = NODES.objectNode();
        number(node, "temperature", line.temperature());
        ArrayNode spans = node.putArray("spans");
        for (SpanState each : line.spans()) {
            ObjectNode span = spans.addObject();
            number(span, "sag", each.sag());
            number(span, "horizontalTension", each.horizontalTension());
            number(span, "unstretchedLength", each.unstretchedLength());
        }
        node.putArray("endTension").add(line.firstTension()).add(line.lastTension());
        return node;
    }

    private static ObjectNode arrest(ArrestResult r) {
        ObjectNode node = which(r);
        node.put("method", r.method().label());
        number(node, "freeFall", r.freeFall());
        number(node, "deployment", r.deployment());
        node.put("bottomedOut", r.bottomedOut());
        number(node, "arrestForce", r.arrestForce());
        number(node, "lineLoad", r.lineLoad());
        number(node, "sag", r.sag());
        number(node, "lineDescent", r.lineDescent());
        number(node, "loadX", r.loadX());
        number(node, "maximumTension", r.maximumTension());
        ArrayNode supports = node.putArray("supports");
        for (int i = 0; i < r.supports().size(); i++) {
            SupportReaction s = r.supports().get(i);
            ObjectNode support = supports.addObject();
            support.put("id", s.id());
            number(support, "force", s.force());
            support.set("vector", vector(s.vector()));
            number(support, "displacement", s.displacement().magnitude());
            support.set("displacementVector", vector(s.displacement()));
            number(support, "slip", r.slip(i));
        }
        ArrayNode absorbers = node.putArray("inlineAbsorbers");
        for (InlineAbsorberState each : r.inlineAbsorbers()) {
            ObjectNode absorber = absorbers.addObject();
            absorber.put("support", each.supportId());
            number(absorber, "extension", each.extension());
            number(absorber, "remaining", each.remaining());
            absorber.put("bottomedOut", each.bottomedOut());
        }
        number(node, "totalFallDistance", r.totalFallDistance());
        node.set("energy", energy(r.energy()));
        node.set("clearance", clearance(r.clearance()));
        ObjectNode convergence = node.putObject("convergence");
        convergence.put("iterations", r.convergence().iterations());
        number(convergence, "residual", r.convergence().residual());
        number(convergence, "tolerance", r.convergence().tolerance());
        r.motion().ifPresent(m -> node.set("motion", motion(m)));
        return node;
    }

    private static ObjectNode motion(MotionSummary m) {
        ObjectNode node = NODES.objectNode();
        number(node, "segmentLength", m.mesh().mesh().segmentLength());
        node.put("nodes", m.mesh().mesh().nodes());
        number(node, "spread", m.mesh().spread());
        number(node, "relativeEnergyDrift", m.relativeDrift());
        node.put("firstCatchOver", m.firstCatchOver());
        ObjectNode whole = node.putObject("wholeRun");
        number(whole, "maximumTension", m.wholeRun().tension().value());
        number(whole, "maximumTensionTime", m.wholeRun().tension().time());
        ArrayNode workers = whole.putArray("workers");
        for (WorkerPeaks each : m.wholeRun().workers()) {
            ObjectNode worker = workers.addObject();
            worker.put("id", each.id());
            number(worker, "arrestForce", each.force().value());
            number(worker, "arrestForceTime", each.force().time());
            number(worker, "lowestHarnessAttachment", each.lowest().value());
            number(worker, "lowestHarnessAttachmentTime", each.lowest().time());
        }
        ArrayNode supports = whole.putArray("supports");
        for (SupportPeaks each : m.wholeRun().supports()) {
            ObjectNode support = supports.addObject();
            support.put("id", each.id());
            number(support, "force", each.force().value());
            number(support, "forceTime", each.force().time());
        }
        return node;
    }

    private static ObjectNode energy(EnergyAccount account) {
        ObjectNode node = NODES.objectNode();
        number(node, "fall", account.fall());
        number(node, "line", account.cable() + account.hanging());
        number(node, "connection", account.connection());
        number(node, "friction", account.friction());
        number(node, "inlineAbsorbers", account.inlineAbsorbers());
        number(node, "anchors", account.anchors());
        number(node, "residual", account.residual());
        number(node, "cable", account.cable());
        number(node, "hanging", account.hanging());
        return node;
    }

    private static ObjectNode clearance(Clearance account) {
        ObjectNode node = NODES.objectNode();
        ArrayNode rows = node.putArray("rows");
        for (ClearanceRow each : account.rows()) {
            ObjectNode row = rows.addObject();
            row.put("item", each.item());
            number(row, "value", each.value());
            number(row, "elevation", each.elevation());
            row.put("source", each.source());
        }
        number(node, "lowestPoint", account.lowestPoint());
        number(node, "requiredBelowLine", account.requiredBelowLine());
        number(node, "requiredBelowWalkingLevel", account.requiredBelowWalkingLevel());
        optional(node, "obstruction", account.obstruction());
        optional(node, "margin", account.margin());
        return node;
    }

    private static ObjectNode criterion(PrintedComparison result) {
        ObjectNode node = NODES.objectNode();
        node.put("id", result.criterion().id());
        node.put("comparison", result.text());
        number(node, "demand", result.demand());
        number(node, "capacity", result.capacity());
        node.put("unit", result.unit());
        number(node, "ratio", result.ratio());
        result.met().ifPresentOrElse(met -> node.put("met", met), () -> node.putNull("met"));
        node.put("source", result.criterion().source().citation());
        node.put("mark", result.mark());
        result.governs().ifPresent(arrest -> node.set("arrest", which(arrest)));
        return node;
    }

    private static ObjectNode governing(DesignRun run) {
        ObjectNode node = NODES.objectNode();
        for (Extreme each : run.extremes().governing()) {
            ObjectNode entry = NODES.objectNode();
            number(entry, "value", each.computed());
            number(entry, "factored", each.value());
            entry.put("unit", each.unit());
            entry.setAll(which(each.arrest()));
            if (each.support().isPresent()) {
                node.withObject("/" + Quantity.SUPPORT_LOAD.key())
                        .set(each.support().get(), entry);
            } else {
                node.set(each.name(), entry);
            }
        }
        return node;
    }

    /** Names an arrest: fall, temperature, force. */
    static ObjectNode which(ArrestResult r) {
        ObjectNode node = NODES.objectNode();
        node.put("fall", r.fall().id());
        number(node, "temperature", r.temperature());
        node.put("force", r.side() == DeploymentForce.CLEARANCE ? "clearance" : "maximum");
        HandoverWriter.conditions(node, r.fall().conditions(r.side(), r.temperature()));
        r.attachmentLimit().ifPresent(limit -> node.put("attachmentLimit", limit.label()));
        return node;
    }

    private static ArrayNode vector(Vector3 v) {
        return NODES.arrayNode().add(v.x() + 0.0).add(v.y() + 0.0).add(v.z() + 0.0);
    }

    /** Puts a number; what is not finite has no place in JSON and is left out. */
    static void number(ObjectNode node, String key, double value) {
        if (Double.isFinite(value)) {
            node.put(key, value + 0.0);
        }
    }

    private static void optional(ObjectNode node, String key, OptionalDouble value) {
        value.ifPresent(v -> number(node, key, v));
    }
}
