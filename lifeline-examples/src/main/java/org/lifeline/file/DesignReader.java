package org.lifeline.file;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.lifeline.analysis.Statics;
import org.lifeline.base.InputRule;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.NoEquilibriumException;
import org.lifeline.base.unit.Dimension;
import org.lifeline.design.assessment.Basis;
import org.lifeline.design.criteria.Criterion;
import org.lifeline.design.handover.HandoverRequest;
import org.lifeline.file.Fields.Range;
import org.lifeline.file.json.Findings;
import org.lifeline.file.json.JsonText;
import org.lifeline.file.json.JsonTree;
import org.lifeline.model.Fall;
import org.lifeline.model.Installed;
import org.lifeline.model.Lifeline;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Support;
import org.lifeline.model.Worker;
import org.lifeline.model.cable.Cable;
import org.lifeline.report.document.ProjectData;

/**
 * Reads a design file.
 *
 * <p>Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public final class DesignReader {
    /** The format that is read. */
    public static final String FORMAT = "org.lifeline.design/1";

    /** Largest number of bytes that is read. */
    public static final int LARGEST_FILE = JsonTree.LARGEST;

    /** A reader. */
    public DesignReader() {}

    /**
     * Reads a design.
     *
     * @param bytes the file as it is, JSON in UTF-8
     * @return the design with everything that was written
     * @throws InvalidInputException with all violations of the file
     */
    public DesignFile read(byte[] bytes) {
        JsonTree.Parsed parsed = JsonTree.parse(bytes, FileRule::of);
        Findings findings = new Findings(FileRule::of);
        parsed.duplicates().forEach(findings::add);
        findings.addUnlisted(parsed.furtherDuplicates());
        Fields top = Fields.of(parsed.root(), "", findings);
        if (top == null) {
            findings.throwIfAny();
            throw new IllegalStateException("unreachable: a root that is no object has been reported");
        }
        Parts parts = new Parts(top);
        LifelineDesign design = parts.read();
        List<Criterion> criteria = new CriterionReader(parts.supportIds.keySet()).readAll(top);
        String basis = top.choice("basis", Basis.keys());
        ProjectData project = ProjectReader.read(top);
        HandoverRequest handover = HandoverReader.read(top);
        top.close();
        if (design != null) {
            DesignSize.exceeded(design).ifPresent(findings::add);
        }
        findings.throwIfAny();
        if (design == null) {
            throw new IllegalStateException("unreachable: a design that was not built has been reported");
        }
        return new DesignFile(
                design,
                project,
                new DesignFile.CriteriaChoice(
                        criteria, Basis.of(basis == null ? "" : basis).orElse(Basis.LARGER_OF_BOTH), handover),
                findings.written(),
                new DesignFile.Hashes(sha256(bytes), sha256(content(parsed.root()))));
    }

    /** What stands in a file, without white space between its parts. */
    private static byte[] content(JsonNode root) {
        return JsonText.compact(root).getBytes(StandardCharsets.UTF_8);
    }

    private static String sha256(byte[] bytes) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every JDK has SHA-256", e);
        }
    }

    /** The parts of one file while it is read. */
    private static final class Parts {
        private final Fields top;
        private final Findings findings;
        private final Map<String, Integer> supportIds = new HashMap<>();
        private final Map<String, @Nullable Worker> workers = new LinkedHashMap<>();

        Parts(Fields top) {
            this.top = top;
            this.findings = top.findings();
        }

        @Nullable
        LifelineDesign read() {
            format();
            String title = top.text("title");
            double gravity = top.quantity("gravity", Dimension.ACCELERATION, Range.POSITIVE);
            top.required("cable");
            Fields c = top.object("cable");
            Cable cable = c == null ? null : CableReader.read(c);
            List<@Nullable Support> supports = supports();
            top.required("installed");
            Fields i = top.object("installed");
            Installed installed = i == null ? null : InstalledReader.read(i);
            LifelineDesign.Builder b = LifelineDesign.builder(title == null ? "Untitled design" : title);
            SiteReader.temperatures(top, b);
            readWorkers();
            SiteReader site = new SiteReader(top);
            site.clearance(b);
            site.modelFactors(b);
            site.incidents(b, workers.keySet());
            Lifeline checked = line(cable, supports, installed, gravity);
            List<@Nullable Fall> falls = new FallReader(workers, checked, supports.size() - 1).readAll(top);
            if (findings.count() > 0 || cable == null || installed == null || checked == null) {
                return null;
            }
            b.line(checked);
            for (Worker each : workers.values()) {
                if (each != null) {
                    b.worker(each);
                }
            }
            for (Fall each : falls) {
                if (each != null) {
                    b.fall(each);
                }
            }
            return top.build(b::build);
        }

        private void format() {
            JsonNode value = top.required("format");
            if (value != null && !(value.isTextual() && value.textValue().equals(FORMAT))) {
                findings.bad("format", value, FileRule.NOT_THE_FORMAT, FORMAT);
            }
        }

        private List<@Nullable Support> supports() {
            top.required("supports");
            List<JsonNode> items = top.array("supports");
            List<@Nullable Support> list = new ArrayList<>();
            for (int i = 0; i < items.size(); i++) {
                Fields f = Fields.of(items.get(i), "supports[" + i + "]", findings);
                list.add(f == null ? null : SupportReader.read(f, i == 0 || i == items.size() - 1));
                unique(f, i, supportIds);
            }
            if (top.node("supports").isArray() && top.node("supports").size() < 2) {
                findings.bad("supports", top.node("supports"), FileRule.TOO_FEW_SUPPORTS_IN_FILE);
            }
            return list;
        }

        private void readWorkers() {
            top.required("workers");
            List<JsonNode> items = top.array("workers");
            Map<String, Integer> ids = new HashMap<>();
            for (int i = 0; i < items.size(); i++) {
                Fields f = Fields.of(items.get(i), "workers[" + i + "]", findings);
                Worker worker = f == null ? null : WorkerReader.read(f);
                unique(f, i, ids);
                if (f != null && f.node("id").isTextual()) {
                    workers.putIfAbsent(f.node("id").textValue(), worker);
                }
            }
            if (top.node("workers").isArray() && top.node("workers").isEmpty()) {
                findings.bad("workers", top.node("workers"), InputRule.EMPTY, "worker");
            }
        }

        private void unique(@Nullable Fields f, int number, Map<String, Integer> ids) {
            if (f == null || !f.node("id").isTextual()) {
                return;
            }
            String id = f.node("id").textValue();
            Integer before = ids.putIfAbsent(id, number);
            if (before != null && !id.isEmpty()) {
                String list = f.path().substring(0, f.path().indexOf('['));
                findings.bad(f.path("id"), f.node("id"), FileRule.ID_TAKEN_IN_FILE, list, before);
            }
        }

        /** The line; where cable or installed state are wrong, with others in their place, so that places can be checked. */
        private @Nullable Lifeline line(
                @Nullable Cable cable,
                List<@Nullable Support> supports,
                @Nullable Installed installed,
                double gravity) {
            // Asked for first: with a support that is wrong there is no line, and the key is a known one all the same.
            String positions = top.choice("supportPositions", List.of("installed", "unloaded"));
            Lifeline.Builder b = Lifeline.builder()
                    .cable(
                            cable != null
                                    ? cable
                                    : Cable.builder()
                                            .massPerLength(1)
                                            .axialStiffness(1e9)
                                            .build())
                    .installed(installed != null ? installed : Installed.pretension(1000));
            if (!Double.isNaN(gravity)) {
                b.gravity(gravity);
            }
            for (Support each : supports) {
                if (each == null) {
                    return null;
                }
                b.support(each);
            }
            try {
                Lifeline line = b.build();
                return "unloaded".equals(positions) && findings.count() == 0 ? Statics.withYieldedSupports(line) : line;
            } catch (NoEquilibriumException e) {
                findings.bad("supportPositions", top.node("supportPositions"), FileRule.CANNOT_BE_TENSIONED, e.where());
                return null;
            } catch (InvalidInputException e) {
                e.violations().stream()
                        .map(ModelPaths::inFile)
                        .filter(v -> !findings.touches(v.path()))
                        .forEach(v -> top.report(v, v.path()));
                return null;
            }
        }
    }
}
