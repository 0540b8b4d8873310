package org.lifeline.file;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.math.MathContext;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.Violations;
import org.lifeline.design.assessment.Basis;
import org.lifeline.design.criteria.Criterion;
import org.lifeline.design.handover.HandoverRequest;
import org.lifeline.model.Attachment;
import org.lifeline.model.Connection;
import org.lifeline.model.Fall;
import org.lifeline.model.Installed;
import org.lifeline.model.Lifeline;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Obstruction;
import org.lifeline.model.Passage;
import org.lifeline.model.Place;
import org.lifeline.model.Post;
import org.lifeline.model.Stiffness;
import org.lifeline.model.Support;
import org.lifeline.model.Worker;
import org.lifeline.model.absorber.AbsorberCondition;
import org.lifeline.model.absorber.DeploymentForce;
import org.lifeline.model.absorber.LoadingCurve;
import org.lifeline.model.cable.Cable;
import org.lifeline.report.document.ProjectData;

/**
 * Writes a design file, or a design as one, in SI with all digits. What the reader turned into something simpler stays simpler: a
 * rope class is written as mass, stiffness and strength, an initial stiffness of a curve as a corner of the curve, slack of
 * a self-retracting device as part of its lock-up distance.
 *
 * <p>Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public final class DesignWriter {
    private static final JsonNodeFactory NODES = JsonNodeFactory.instance;

    /** Digits that tell every double from its neighbours [-]. */
    private static final int MOST_DIGITS = 17;

    /** Neighbours of a force on either side, one of which rounding leads back to [-]. */
    private static final int NEIGHBOURS = 32;

    private DesignWriter() {}

    /**
     * A design file as a whole: the design, the project, the criteria, what their verdicts rest on, and the parts that are to
     * be handed over. What is read from it again has the same values and the same fingerprint of the design; its hashes are
     * others where the file was not written here, since numbers are written in SI and not as they were typed. Supports that
     * were stated unloaded are written where they stand in the installed state.
     *
     * @param file the file, as it was read or with {@link DesignFile#withDesign} or other parts changed
     * @return the file, JSON in UTF-8
     * @throws IllegalArgumentException if it holds what a design file cannot say: a stated criterion that limits an angle or
     *     is a rule of its own, or a tolerance of installation that is not the same to both sides
     * @since 1.0.0
     */
    public static byte[] write(DesignFile file) {
        return write(Violations.required("file", file).design(), new Parts(file.criteriaChoice(), file.project()));
    }

    /**
     * A design alone as a design file: without project, criteria, basis and handover, which belong to the file. What was
     * read from a file keeps them by {@link #write(DesignFile)}.
     *
     * @param design the design
     * @return the file, JSON in UTF-8
     */
    public static byte[] write(LifelineDesign design) {
        return write(design, List.of(), ProjectData.none());
    }

    /**
     * A design and criteria as a design file, without project, basis (the verdicts rest on the larger of both methods then)
     * and handover; {@link #write(DesignFile)} writes them all.
     *
     * @param design the design
     * @param criteria the criteria, built in or stated by the design
     * @return the file, JSON in UTF-8
     * @throws IllegalArgumentException if a stated criterion limits an angle, which a design file cannot say
     */
    public static byte[] writeWithCriteria(LifelineDesign design, List<Criterion> criteria) {
        return write(design, criteria, ProjectData.none());
    }

    /**
     * A design, its criteria and what it belongs to as a design file, without basis (the verdicts rest on the larger of both
     * methods then) and handover; {@link #write(DesignFile)} writes them all.
     *
     * @param design the design
     * @param criteria the criteria, built in or stated by the design
     * @param project the project; what is blank is left out
     * @return the file, JSON in UTF-8
     * @throws IllegalArgumentException if a stated criterion limits an angle, which a design file cannot say
     */
    public static byte[] write(LifelineDesign design, List<Criterion> criteria, ProjectData project) {
        DesignFile.CriteriaChoice choice =
                new DesignFile.CriteriaChoice(criteria, Basis.LARGER_OF_BOTH, HandoverRequest.nothing());
        return write(design, new Parts(choice, project));
    }

    /** What a file has beside the design. */
    private record Parts(DesignFile.CriteriaChoice choice, ProjectData project) {}

    private static byte[] write(LifelineDesign design, Parts parts) {
        ProjectData project = parts.project();
        ObjectNode root = NODES.objectNode();
        root.put("format", DesignReader.FORMAT);
        root.put("title", design.title());
        if (!project.isEmpty()) {
            root.set("project", project(project));
        }
        Lifeline line = design.line();
        root.put("gravity", quantity(line.gravity(), "m/s²"));
        root.set("cable", cable(line));
        ArrayNode supports = root.putArray("supports");
        line.supports().forEach(s -> supports.add(support(s)));
        root.set("installed", installed(line.installed()));
        ArrayNode temperatures = root.putObject("service").putArray("temperatures");
        design.temperatures().forEach(t -> temperatures.add(quantity(t, "°C")));
        ArrayNode workers = root.putArray("workers");
        design.workers().forEach(w -> workers.add(worker(w)));
        ArrayNode falls = root.putArray("falls");
        design.falls().forEach(f -> falls.add(fall(f)));
        design.secondFall().ifPresent(f -> {
            ObjectNode second = root.putObject("secondFall").put("worker", f.worker());
            ArrayNode delays = second.putArray("delays");
            f.delays().forEach(d -> delays.add(quantity(d, "s")));
        });
        design.rescuerMass().ifPresent(m -> root.putObject("rescue").put("rescuerMass", quantity(m, "kg")));
        ObjectNode clearance = root.putObject("clearance");
        clearance.put("harnessStretch", metres(design.clearance().harnessStretch()));
        clearance.put("margin", metres(design.clearance().margin()));
        design.workingFloor().ifPresent(z -> clearance.put("workingFloor", metres(z)));
        ArrayNode obstructions = clearance.putArray("obstructions");
        for (Obstruction each : design.clearance().obstructions()) {
            ObjectNode obstruction = obstructions
                    .addObject()
                    .put("from", metres(each.from()))
                    .put("to", metres(each.to()))
                    .put("elevation", metres(each.elevation()));
            if (each.distance() != 0) {
                obstruction.put("distance", metres(each.distance()));
            }
        }
        criteria(root, parts.choice());
        ObjectNode factors = root.putObject("modelFactors")
                .put("force", design.modelFactors().force())
                .put("distance", design.modelFactors().distance());
        if (!design.modelFactors().reason().isEmpty()) {
            factors.put("reason", design.modelFactors().reason());
        }
        try {
            String text = new ObjectMapper().writerWithDefaultPrettyPrinter().writeValueAsString(root) + "\n";
            return text.getBytes(StandardCharsets.UTF_8);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("a tree of numbers and texts is always written", e);
        }
    }

    private static void criteria(ObjectNode root, DesignFile.CriteriaChoice choice) {
        if (choice.basis() != Basis.LARGER_OF_BOTH) {
            root.put("basis", choice.basis().key());
        }
        if (!choice.criteria().isEmpty()) {
            ArrayNode list = root.putArray("criteria");
            choice.criteria().forEach(c -> list.add(CriterionWriter.write(c)));
        }
        if (!choice.handover().isEmpty()) {
            root.set("handover", HandoverWriter.write(choice.handover()));
        }
    }

    private static ObjectNode project(ProjectData project) {
        ObjectNode node = NODES.objectNode();
        for (ProjectData.Item each : ProjectData.Item.values()) {
            if (!project.text(each).isEmpty()) {
                node.put(each.key(), project.text(each));
            }
        }
        if (!project.revisions().isEmpty()) {
            ArrayNode list = node.putArray("revisions");
            project.revisions()
                    .forEach(r -> list.addObject()
                            .put("revision", r.revision())
                            .put("date", r.date())
                            .put("description", r.description())
                            .put("by", r.by()));
        }
        return node;
    }

    private static ObjectNode cable(Lifeline line) {
        Cable cable = line.cable();
        ObjectNode node = NODES.objectNode();
        node.put("name", cable.name());
        cable.diameter().ifPresent(d -> node.put("diameter", metres(d)));
        // What was given, not what follows from it: the other one is not the same number when it is read again.
        if (cable.isGivenByMass()) {
            node.put("massPerLength", quantity(cable.massPerLength(line.gravity()), "kg/m"));
        } else {
            node.put("weightPerLength", quantity(line.weightPerLength(), "N/m"));
        }
        if (cable.elongation().isStiffnessAlone()) {
            // The tension at strain 1; the inverse of a compliance may differ in its last digit.
            node.put(
                    "axialStiffness",
                    newtons(cable.elongation().corners().get(1).tension()));
        } else {
            ArrayNode curve = node.putArray("loadElongation");
            cable.elongation()
                    .corners()
                    .forEach(c -> curve.addArray().add(c.strain()).add(newtons(c.tension())));
        }
        cable.breakingStrength().ifPresent(f -> node.put("minimumBreakingStrength", newtons(f)));
        if (cable.isTerminationEfficiencyStated()) {
            node.put("terminationEfficiency", cable.terminationEfficiency());
        }
        node.put("thermalExpansion", quantity(cable.thermalExpansion(), "/K"));
        cable.dampingTime().ifPresent(t -> node.put("dampingTime", quantity(t, "s")));
        return node;
    }

    private static ObjectNode support(Support support) {
        ObjectNode node = NODES.objectNode();
        node.put("id", support.id());
        node.put("type", support.isEnd() ? "end" : "intermediate");
        node.putArray("position")
                .add(metres(support.position().x()))
                .add(metres(support.position().y()))
                .add(metres(support.position().z()));
        if (!support.isEnd()) {
            Passage passage = support.passage();
            switch (passage.kind()) {
                case FREE -> node.put("passage", "free");
                case CLAMPED -> node.put("passage", "clamped");
                case FRICTION -> node.putObject("passage").put("friction", passage.friction());
            }
        }
        support.post().ifPresent(p -> node.set("post", post(p)));
        Stiffness k = support.stiffness();
        if (!k.isRigid() && !support.post().map(Post::hasSection).orElse(false)) {
            ObjectNode stiffness = node.putObject("stiffness");
            finite(stiffness, "x", k.x());
            finite(stiffness, "y", k.y());
            finite(stiffness, "z", k.z());
        }
        support.inlineAbsorber().ifPresent(a -> {
            ObjectNode absorber = node.putObject("inlineAbsorber");
            absorber.set("curve", corners(deployment(a.curve())));
            finite(absorber, "initialStiffness", initialStiffness(a.curve()));
            finite(absorber, "stopStiffness", a.curve().stopStiffness());
        });
        support.capacity().ifPresent(f -> node.put("capacity", newtons(f)));
        return node;
    }

    private static ObjectNode post(Post post) {
        ObjectNode node = NODES.objectNode();
        node.put("height", metres(post.height()));
        node.putObject("eccentricity")
                .put("x", metres(post.eccentricity().x()))
                .put("y", metres(post.eccentricity().y()));
        post.elasticModulus().ifPresent(e -> node.put("elasticModulus", quantity(e, "Pa")));
        xy(node, "secondMomentOfArea", post.secondMomentX(), post.secondMomentY(), "m⁴");
        xy(node, "elasticMomentOfResistance", post.momentOfResistanceX(), post.momentOfResistanceY(), "N·m");
        return node;
    }

    private static void xy(ObjectNode node, String key, OptionalDouble x, OptionalDouble y, String unit) {
        if (x.isPresent() || y.isPresent()) {
            ObjectNode both = node.putObject(key);
            x.ifPresent(v -> both.put("x", quantity(v, unit)));
            y.ifPresent(v -> both.put("y", quantity(v, unit)));
        }
    }

    private static ObjectNode installed(Installed installed) {
        ObjectNode node = NODES.objectNode();
        switch (installed.form()) {
            case PRETENSION -> node.put("pretension", newtons(installed.value()));
            case HORIZONTAL_TENSION ->
                node.put("horizontalTension", newtons(installed.value())).put("span", installed.span());
            case INITIAL_SAG ->
                node.put("initialSag", metres(installed.value())).put("span", installed.span());
            case UNSTRETCHED_LENGTH -> node.put("unstretchedLength", metres(installed.value()));
        }
        installed
                .tensionedFrom()
                .ifPresent(end -> node.put("tensionedFrom", end == Installed.TensioningEnd.FIRST ? "first" : "last"));
        return node.put("temperature", quantity(installed.temperature(), "°C"));
    }

    private static ObjectNode worker(Worker worker) {
        ObjectNode node = NODES.objectNode();
        node.put("id", worker.id());
        node.put("mass", quantity(worker.mass(), "kg"));
        node.put("walkingLevel", metres(worker.walkingLevel()));
        node.put("attachmentHeight", metres(worker.attachmentHeight()));
        node.put("attachment", worker.attachment() == Attachment.GRIPPED ? "gripped" : "free-running");
        node.put("offset", metres(worker.offset()));
        node.set("connection", connection(worker.connection()));
        return node;
    }

    private static ObjectNode connection(Connection connection) {
        ObjectNode node = NODES.objectNode();
        LoadingCurve maximum = connection.deployment().dry(DeploymentForce.MAXIMUM);
        LoadingCurve clearance = connection.deployment().dry(DeploymentForce.CLEARANCE);
        if (connection.kind() == Connection.Kind.SELF_RETRACTING) {
            ObjectNode device = node.putObject("retractable");
            device.put("lockDistance", metres(connection.freeFall(0)));
            device.putObject("brakeForce")
                    .put("clearance", newtons(clearance.activationForce()))
                    .put("maximum", newtons(maximum.activationForce()));
            lengths(device, maximum);
            conditions(device, connection);
            return node;
        }
        node.put("tautLength", metres(connection.tautLength(0)));
        switch (connection.kind()) {
            case LANYARD_WITH_ABSORBER -> {
                ObjectNode absorber = node.putObject("absorber");
                absorber.put("clearanceForce", newtons(clearance.activationForce()));
                absorber.put("maximumForce", newtons(maximum.activationForce()));
                lengths(absorber, maximum);
                conditions(absorber, connection);
            }
            case PLAIN_LANYARD -> node.put("stiffness", quantity(maximum.stopStiffness(), "N/m"));
            default -> {
                node.set("loadingCurve", corners(maximum.corners()));
                finite(node, "stopStiffness", maximum.stopStiffness());
            }
        }
        return node;
    }

    private static void lengths(ObjectNode node, LoadingCurve curve) {
        node.put("maximumExtension", metres(curve.maximumExtension()));
        finite(node, "initialStiffness", initialStiffness(curve));
        finite(node, "stopStiffness", curve.stopStiffness());
    }

    private static void conditions(ObjectNode node, Connection connection) {
        for (AbsorberCondition each : connection.deployment().conditions()) {
            ObjectNode condition =
                    node.withObjectProperty("conditions").putObject(each.kind().label());
            condition.put("clearanceForce", newtons(each.clearanceForce()));
            condition.put("maximumForce", newtons(each.maximumForce()));
            each.temperature().ifPresent(t -> condition.put("temperature", quantity(t, "°C")));
            condition.put("source", each.source());
        }
    }

    /** The rise up to the activation force; infinite where the curve is rigid up to there. */
    private static double initialStiffness(LoadingCurve curve) {
        return curve.rigidForce() == 0 && curve.activationForce() > 0
                ? curve.initialStiffness()
                : Double.POSITIVE_INFINITY;
    }

    /** The corners without the first rise, begun at the activation force. */
    private static List<LoadingCurve.Corner> deployment(LoadingCurve curve) {
        if (Double.isInfinite(initialStiffness(curve))) {
            return curve.corners();
        }
        List<LoadingCurve.Corner> corners = new ArrayList<>(curve.corners());
        LoadingCurve.Corner met = corners.get(1);
        double slope = corners.size() > 2
                ? (corners.get(2).force() - met.force()) / (corners.get(2).extension() - met.extension())
                : 0;
        corners.remove(1);
        double force = met.force() - slope * met.extension();
        // Working in the first rise rounded: the force that gives the same curve again, with few digits or a neighbour.
        List<Double> tried = new ArrayList<>(rounded(force));
        for (int i = 1; i <= NEIGHBOURS; i++) {
            tried.add(force + i * Math.ulp(force));
            tried.add(force - i * Math.ulp(force));
        }
        tried.add(force);
        for (double each : tried) {
            corners.set(0, new LoadingCurve.Corner(0, each));
            if (gives(corners, curve)) {
                return corners;
            }
        }
        return corners;
    }

    /** A number rounded to one digit, to two, and so on, up to as many as tell it from its neighbours. */
    static List<Double> rounded(double value) {
        List<Double> list = new ArrayList<>();
        for (int digits = 1; digits <= MOST_DIGITS; digits++) {
            list.add(new BigDecimal(value).round(new MathContext(digits)).doubleValue());
        }
        return list;
    }

    private static boolean gives(List<LoadingCurve.Corner> corners, LoadingCurve curve) {
        try {
            return LoadingCurve.through(corners, curve.initialStiffness(), curve.stopStiffness())
                    .equals(curve);
        } catch (InvalidInputException e) {
            return false;
        }
    }

    private static ArrayNode corners(List<LoadingCurve.Corner> corners) {
        ArrayNode node = NODES.arrayNode();
        corners.forEach(c -> node.addArray().add(metres(c.extension())).add(newtons(c.force())));
        return node;
    }

    private static ObjectNode fall(Fall fall) {
        ObjectNode node = NODES.objectNode();
        node.put("id", fall.id());
        place(node, fall.place());
        ArrayNode fallers = node.putArray("fallers");
        fall.fallers().forEach(w -> fallers.add(w.id()));
        fall.freeFall().ifPresent(h -> node.put("freeFall", metres(h)));
        ArrayNode hanging = node.putArray("hanging");
        for (Fall.Hanging each : fall.hanging()) {
            place(hanging.addObject().put("worker", each.worker().id()), each.place());
        }
        return node;
    }

    private static void place(ObjectNode node, Place place) {
        if (place.isAtSupport()) {
            node.put("support", place.support().orElseThrow());
        } else {
            node.put("span", place.span());
            node.put("station", metres(place.station()));
        }
    }

    private static void finite(ObjectNode node, String key, double stiffness) {
        if (Double.isFinite(stiffness)) {
            node.put(key, quantity(stiffness, "N/m"));
        }
    }

    private static String metres(double value) {
        return quantity(value, "m");
    }

    private static String newtons(double value) {
        return quantity(value, "N");
    }

    private static String quantity(double value, String unit) {
        return value + " " + unit;
    }
}
