package org.lifeline.report.handover;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.lifeline.base.InertText;
import org.lifeline.base.Interval;
import org.lifeline.design.assessment.AssessmentResult;
import org.lifeline.design.assessment.Basis;
import org.lifeline.design.assessment.MotionScope;
import org.lifeline.design.field.StringingRow;
import org.lifeline.design.handover.DataSheet;
import org.lifeline.model.Connection;
import org.lifeline.model.absorber.PublishedScatter;
import org.lifeline.model.cable.Cable;
import org.lifeline.report.document.Quantities;
import org.lifeline.report.document.QuantityKind;
import org.lifeline.report.document.ReportBlock;
import org.lifeline.report.document.ReportSection;
import org.lifeline.report.document.TableBuilder;

/**
 * The data sheet for the line: one page for those who use it and those who inspect it.
 *
 * @since 1.0.0
 */
public final class DataSheetSection {
    private final DataSheet sheet;
    private final Quantities q;

    /**
     * A data sheet in the units of a report.
     *
     * @param sheet the data sheet
     * @param q the units
     */
    public DataSheetSection(DataSheet sheet, Quantities q) {
        this.sheet = sheet;
        this.q = q;
    }

    /**
     * Writes the section.
     *
     * @return the section
     */
    public ReportSection section() {
        List<ReportBlock> blocks = new ArrayList<>();
        blocks.add(values());
        blocks.add(connections());
        blocks.add(loads());
        methodAlone().ifPresent(s -> blocks.add(new ReportBlock.Paragraph(s)));
        if (!sheet.narrowForces().isEmpty()) {
            blocks.add(new ReportBlock.Paragraph("Remark: the deployment forces stated for "
                    + sheet.narrowForces().stream().map(InertText::name).collect(Collectors.joining(", "))
                    + " lie closer together than average and maximum of one drop were found to, about 87.5 %: "
                    + PublishedScatter.SOURCE + "."));
        }
        blocks.add(new ReportBlock.Items(List.of(
                "Only a qualified person may change the line, its anchors, its pretension, the number of users, or the"
                        + " connecting subsystems; every change needs a new calculation.",
                "Users change nothing. They keep the clearance, the number of users and the subsystems of this sheet, and look"
                        + " the line over before each use.",
                "A line that has arrested a fall, or a component that fails inspection, is taken out of service.",
                "Rescue of a suspended worker is planned before work begins.",
                "This sheet states that nothing complies with a regulation or standard; results are an aid for a qualified"
                        + " person, and the manufacturers' instructions come first.")));
        return new ReportSection("Data sheet for the line", 1, blocks);
    }

    /** That loads are by energy balance alone, where arrests in time do not count in them. */
    private Optional<String> methodAlone() {
        AssessmentResult assessment = sheet.handover().assessment();
        if (assessment.motion() == MotionScope.LEFT_OUT) {
            return Optional.of(
                    "Arrests in time were LEFT OUT: the loads and distances of this sheet are by energy balance alone,"
                            + " and in time they may be larger.");
        }
        return assessment.basis() == Basis.ENERGY_BALANCE
                ? Optional.of(
                        "The loads of this sheet rest on energy balance alone, as the design states, and in time they may be"
                                + " larger.")
                : Optional.empty();
    }

    private ReportBlock values() {
        TableBuilder t =
                new TableBuilder("What the line is made for").text("Item").text("Value");
        t.row("Users at once", users());
        t.row(
                "Mass of a user with tools",
                q.stated(QuantityKind.MASS, sheet.masses().low()) + " to "
                        + q.stated(QuantityKind.MASS, sheet.masses().high()));
        t.row(
                "Keep free below the line as installed",
                sheet.clearanceBelowLine().isPresent()
                        ? q.stated(
                                QuantityKind.LENGTH, sheet.clearanceBelowLine().getAsDouble())
                        : "not computed");
        t.row(
                "Do not use the line",
                sheet.handover().clearance().isEmpty()
                        ? "clearance along the line not drawn up"
                        : sheet.mustNotBeUsed().isEmpty()
                                ? "no stretch found"
                                : sheet.mustNotBeUsed().stream()
                                        .map(this::range)
                                        .collect(Collectors.joining("; ")));
        for (StringingRow r : sheet.pretension()) {
            String accepted = r.tension().low() < r.tension().nominal()
                    ? " (" + q.result(QuantityKind.FORCE, r.tension().low()) + " to "
                            + q.result(QuantityKind.FORCE, r.tension().high()) + ")"
                    : "";
            t.row(
                    "Pretension at " + q.input(QuantityKind.TEMPERATURE, r.temperature()),
                    q.result(QuantityKind.FORCE, r.tension().nominal()) + accepted);
        }
        Cable cable = sheet.design().line().cable();
        t.row(
                "Cable, required breaking strength",
                cable.breakingStrength().isPresent()
                        ? q.stated(QuantityKind.FORCE, cable.breakingStrength().getAsDouble())
                        : "not stated");
        return t.build();
    }

    private String users() {
        if (sheet.users().isEmpty()) {
            return "assessed with the falls of the design; the number was not looked for";
        }
        return sheet.users().getAsInt() + "; in the spans "
                + sheet.usersInSpans().stream().map(String::valueOf).collect(Collectors.joining(", "))
                + (sheet.handover().occupancy().map(o -> o.isConfirmed()).orElse(false)
                        ? ""
                        : " (by energy balance"
                                + OccupancySection.notMet(sheet.handover().assessment())
                                        .map(ids -> "; the assessment of this design does NOT MEET " + ids)
                                        .orElse("")
                                + ")");
    }

    private String range(Interval i) {
        return "from " + q.result(QuantityKind.LENGTH, i.low()) + " to " + q.result(QuantityKind.LENGTH, i.high());
    }

    private ReportBlock connections() {
        TableBuilder t = new TableBuilder("Connecting subsystems that are permitted, by required values")
                .text("Kind")
                .number("Length")
                .number("Free fall at most")
                .number("Deployment force from")
                .number("to")
                .number("Extension at most");
        for (DataSheet.Permitted p : sheet.connections()) {
            t.row(
                    kind(p.connection()),
                    q.stated(QuantityKind.LENGTH, p.connection().tautLength(0)),
                    Double.isNaN(p.freeFall()) ? "not computed" : q.result(QuantityKind.LENGTH, p.freeFall()),
                    deploys(p) ? q.result(QuantityKind.FORCE, p.forces().low()) : "–",
                    deploys(p) ? q.result(QuantityKind.FORCE, p.forces().high()) : "–",
                    p.connection().kind() == Connection.Kind.PLAIN_LANYARD
                            ? "–"
                            : q.stated(QuantityKind.LENGTH, p.connection().maximumExtension()));
        }
        return t.build();
    }

    /** Tells whether the subsystem has a deployment force; one by its curve, or without absorber, pulls from nothing up. */
    private static boolean deploys(DataSheet.Permitted p) {
        return p.forces().high() > 0;
    }

    private static String kind(Connection c) {
        return switch (c.kind()) {
            case LANYARD_WITH_ABSORBER -> "lanyard with energy absorber";
            case PLAIN_LANYARD -> "lanyard without absorber";
            case SELF_RETRACTING -> "self-retracting device";
            default -> "subsystem by its curve";
        };
    }

    private ReportBlock loads() {
        TableBuilder t = new TableBuilder("Loads on the anchors")
                .text("Anchor")
                .number("Largest load")
                .number("Capacity stated");
        for (DataSheet.AnchorLoad a : sheet.anchors()) {
            t.row(
                    InertText.name(a.support()),
                    q.result(QuantityKind.FORCE, a.load()),
                    Double.isNaN(a.stated()) ? "not stated" : q.stated(QuantityKind.FORCE, a.stated()));
        }
        return t.build();
    }
}
