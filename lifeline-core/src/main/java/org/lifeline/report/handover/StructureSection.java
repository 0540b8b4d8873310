package org.lifeline.report.handover;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.lifeline.base.InertText;
import org.lifeline.base.Vector3;
import org.lifeline.base.unit.SignificantDigits;
import org.lifeline.design.structure.GoverningReaction;
import org.lifeline.design.structure.LoadEffect;
import org.lifeline.design.structure.StatedFactor;
import org.lifeline.design.structure.SupportLoadsResult;
import org.lifeline.model.Post;
import org.lifeline.model.Support;
import org.lifeline.report.document.CaseNames;
import org.lifeline.report.document.Quantities;
import org.lifeline.report.document.QuantityKind;
import org.lifeline.report.document.ReportBlock;
import org.lifeline.report.document.ReportSection;
import org.lifeline.report.document.TableBuilder;

/** Loads for the supporting structure. */
final class StructureSection {
    private final SupportLoadsResult result;
    private final Quantities q;

    StructureSection(SupportLoadsResult result, Quantities q) {
        this.result = result;
        this.q = q;
    }

    ReportSection section() {
        List<ReportBlock> blocks = new ArrayList<>();
        boolean alone = result.inTime().isEmpty();
        blocks.add(new ReportBlock.Paragraph(
                "Forces of the line on its supports, along x, y, z, z up; moments about the base of a post. Service loads of the"
                        + " governing cases by "
                        + (alone ? "ENERGY BALANCE ALONE" : "both methods")
                        + ", model factors applied; no partial factor of any code is in them. Loads by energy balance act together; "
                        + (alone
                                ? "in time, which is not in these loads, they may be larger."
                                : "in time each is the peak of its support with what its mesh may hide, as criteria are judged.")
                        + " Wind, ice, the weight of posts and other loads of the structure are not"
                        + " in them."));
        blocks.add(new ReportBlock.Paragraph(pull()));
        if (!result.factors().isEmpty()) {
            blocks.add(new ReportBlock.Paragraph("Factors as stated: "
                    + result.factors().stream()
                            .map(f -> InertText.name(f.name()) + " " + ratio(f.factor()) + " ("
                                    + InertText.plain(f.source()) + ")")
                            .collect(Collectors.joining("; "))
                    + "."));
        }
        blocks.add(governing());
        blocks.add(partners());
        blocks.add(permanent());
        posts().ifPresent(blocks::add);
        List<String> warnings = new ArrayList<>();
        result.warnings()
                .forEach(w -> warnings.add("ATTENTION: " + InertText.name(w.support()) + ": " + w.text()
                        + (Double.isNaN(w.share()) ? "" : " (share " + ratio(w.share()) + ")") + "."));
        if (!warnings.isEmpty()) {
            blocks.add(new ReportBlock.Items(warnings));
        }
        return new ReportSection("Loads for the supporting structure", 1, blocks);
    }

    /** How far the connection is taken to pull aside, and that this is an assumption. */
    private String pull() {
        if (result.angle() == 0) {
            return "The connection is taken to pull straight down, as the design states; a fall to the side, or a line that"
                    + " swings, loads supports across the line, and is not in these loads.";
        }
        return "Assumption: the connection pulls up to ± " + q.input(QuantityKind.ANGLE, result.angle())
                + " from the vertical, across the line, to either side. "
                + (result.isAngleAssumed()
                        ? "The design states no angle; this one is taken without a source. "
                        : "The angle is stated in the design. ")
                + "The loaded span swings into the plane of the pull, its tensions kept. Whoever falls further to the side pulls"
                + " at a larger angle.";
    }

    private ReportBlock governing() {
        TableBuilder t = new TableBuilder("Largest effects on every support, with the force that belongs to them")
                .text("Support")
                .text("Largest")
                .number("Service load");
        for (StatedFactor f : result.factors()) {
            t.number(InertText.name(f.name()) + " × " + ratio(f.factor()));
        }
        t.number("Fx").number("Fy").number("Fz").number("Pull").text("Case");
        for (GoverningReaction r : result.governing()) {
            List<String> cells = new ArrayList<>(
                    List.of(InertText.name(r.support().id()), r.effect().words(), value(r.effect(), r.value())));
            for (StatedFactor f : result.factors()) {
                cells.add(value(r.effect(), r.factored(f)));
            }
            cells.addAll(components(r.vector()));
            cells.add(q.input(QuantityKind.ANGLE, r.angle()));
            cells.add(CaseNames.name(r.fallCase(), q) + ", " + CaseNames.method(r.method()));
            t.row(cells);
        }
        return t.build();
    }

    private ReportBlock partners() {
        TableBuilder t = new TableBuilder("Load cases: the largest resultant on every support with its simultaneous"
                        + " partners, by energy balance")
                .text("Largest on");
        List<Support> supports = result.design().line().supports();
        supports.forEach(s -> t.number(InertText.name(s.id()) + ": Fx, Fy, Fz"));
        for (Support s : supports) {
            result.byEnergyBalance(s.id(), LoadEffect.RESULTANT).ifPresent(r -> {
                List<String> cells = new ArrayList<>(List.of(InertText.name(s.id())));
                r.forces().forEach(v -> cells.add(String.join("; ", components(v))));
                t.row(cells);
            });
        }
        return t.build();
    }

    private ReportBlock permanent() {
        TableBuilder t = new TableBuilder("Permanent loads: the line as installed, nobody on it")
                .text("Support")
                .number("Fx")
                .number("Fy")
                .number("Fz");
        List<Support> supports = result.design().line().supports();
        for (int i = 0; i < supports.size(); i++) {
            List<String> cells =
                    new ArrayList<>(List.of(InertText.name(supports.get(i).id())));
            cells.addAll(components(result.permanent().get(i)));
            t.row(cells);
        }
        return t.build();
    }

    private Optional<ReportBlock> posts() {
        TableBuilder t = new TableBuilder("Posts")
                .text("Support")
                .number("Height")
                .number("Stiffness along x")
                .number("along y")
                .number("Deflection at the largest shear")
                .number("Share of the elastic moment of resistance");
        boolean any = false;
        for (Support s : result.design().line().supports()) {
            Optional<Post> post = s.post();
            if (post.isEmpty()) {
                continue;
            }
            any = true;
            t.row(
                    InertText.name(s.id()),
                    q.stated(QuantityKind.LENGTH, post.get().height()),
                    stiffness(s.stiffness().x()),
                    stiffness(s.stiffness().y()),
                    result.deflection(s.id())
                            .map(d -> q.result(QuantityKind.SMALL_LENGTH, d.magnitude()))
                            .orElse("–"),
                    result.governing(s.id(), LoadEffect.ELASTIC_SHARE)
                            .map(r -> ratio(r.value()))
                            .orElse("not stated"));
        }
        return any ? Optional.of(t.build()) : Optional.empty();
    }

    private String stiffness(double k) {
        return Double.isInfinite(k) ? "rigid" : q.result(QuantityKind.STIFFNESS, k);
    }

    private List<String> components(Vector3 v) {
        return List.of(
                q.result(QuantityKind.FORCE, v.x()),
                q.result(QuantityKind.FORCE, v.y()),
                q.result(QuantityKind.FORCE, v.z()));
    }

    private String value(LoadEffect effect, double value) {
        return switch (effect.unit()) {
            case "N" -> q.result(QuantityKind.FORCE, value);
            case "N·m" -> q.result(QuantityKind.MOMENT, value);
            default -> ratio(value);
        };
    }

    private static String ratio(double value) {
        return SignificantDigits.of(value, 3);
    }
}
