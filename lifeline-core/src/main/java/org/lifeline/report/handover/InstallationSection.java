package org.lifeline.report.handover;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.lifeline.base.InertText;
import org.lifeline.base.unit.SignificantDigits;
import org.lifeline.design.envelope.Quantity;
import org.lifeline.design.field.Reading;
import org.lifeline.design.field.StringingRow;
import org.lifeline.design.installation.CutLength;
import org.lifeline.design.installation.InstallationRequest;
import org.lifeline.design.installation.InstallationResult;
import org.lifeline.design.installation.ReadingEffect;
import org.lifeline.design.installation.StretchEffect;
import org.lifeline.design.installation.TakeUp;
import org.lifeline.report.document.Quantities;
import org.lifeline.report.document.QuantityKind;
import org.lifeline.report.document.ReportBlock;
import org.lifeline.report.document.ReportSection;
import org.lifeline.report.document.TableBuilder;

/** What those need who install the line. */
final class InstallationSection {
    private final InstallationResult result;
    private final Quantities q;

    InstallationSection(InstallationResult result, Quantities q) {
        this.result = result;
        this.q = q;
    }

    ReportSection section() {
        InstallationRequest r = result.request();
        List<ReportBlock> blocks = new ArrayList<>();
        blocks.add(new ReportBlock.Paragraph("The line is tensioned between "
                + q.input(QuantityKind.TEMPERATURE, r.temperatures().low()) + " and "
                + q.input(QuantityKind.TEMPERATURE, r.temperatures().high())
                + " while the cable runs over every intermediate anchor; clamps are closed afterwards. Lengths are of"
                + " stress-free cable between the seats of the end anchors: terminations and the tensioner take more. The"
                + " tensioner starts from a cable drawn to " + q.stated(QuantityKind.FORCE, r.handTight()) + "."));
        blocks.add(lengths());
        blocks.add(takeUps());
        blocks.add(
                new ReportBlock.Paragraph("The tensioner needs a travel of at least " + length(result.tensionerTravel())
                        + (result.stretch().isEmpty()
                                ? "; no constructional stretch is stated, and re-tensioning after it is not in this."
                                : ", re-tensioning after the constructional stretch included.")));
        if (!result.stretch().isEmpty()) {
            blocks.add(stretch());
        }
        blocks.add(stringing());
        if (!result.readings().isEmpty()) {
            blocks.add(readings());
        }
        return new ReportSection("Installation", 1, blocks);
    }

    private ReportBlock lengths() {
        TableBuilder t = new TableBuilder("Stress-free cable, at "
                        + q.input(
                                QuantityKind.TEMPERATURE,
                                result.design().line().installed().temperature()))
                .text("Span")
                .number("Horizontal length")
                .number("Stress-free cable");
        for (CutLength each : result.lengths()) {
            t.row(Integer.toString(each.span()), length(each.run()), fine(each.unstretched()));
        }
        t.total("In all", "", fine(result.totalLength()));
        return t.build();
    }

    private ReportBlock takeUps() {
        TableBuilder t = new TableBuilder("Take-up of the tensioner, from drawn by hand to the pretension")
                .number("Temperature")
                .number("Tension before")
                .number("Tension after")
                .number("Cable drawn out")
                .number("Structure gives way")
                .number("Travel")
                .number("Stress-free cable in all");
        for (TakeUp each : result.takeUps()) {
            t.row(
                    q.input(QuantityKind.TEMPERATURE, each.temperature()),
                    q.result(QuantityKind.FORCE, each.tensions().low()),
                    q.result(QuantityKind.FORCE, each.tensions().high()),
                    small(each.rope()),
                    small(each.structure()),
                    small(each.total()),
                    fine(result.totalLengthAt(each.temperature())));
        }
        return t.build();
    }

    private ReportBlock stretch() {
        String source =
                result.request().stretch().map(s -> InertText.plain(s.source())).orElse("");
        TableBuilder t = new TableBuilder("Constructional stretch (" + source
                        + "): what is left of the pretension, and the" + " re-tension that it asks for")
                .number("Stretch")
                .number("Pretension left")
                .number("Largest sag then")
                .number("Take up again");
        for (StretchEffect each : result.stretch()) {
            t.row(
                    percent(each.stretch()),
                    q.result(QuantityKind.FORCE, each.pretension()),
                    length(each.sag()),
                    small(each.retension()));
        }
        return t.build();
    }

    private ReportBlock stringing() {
        TableBuilder t = new TableBuilder("Stringing table: accepted from "
                        + percent(result.request().tolerance().low()) + " to "
                        + percent(result.request().tolerance().high()) + " of the pretension")
                .number("Temperature")
                .number("Span")
                .number("Tension")
                .number("accepted from")
                .number("to")
                .number("Midspan sag")
                .number("accepted from")
                .number("to");
        for (StringingRow r : result.stringing()) {
            Reading f = r.tension();
            Reading s = r.sag();
            t.row(
                    q.input(QuantityKind.TEMPERATURE, r.temperature()),
                    Integer.toString(r.span()),
                    q.result(QuantityKind.FORCE, f.nominal()),
                    q.result(QuantityKind.FORCE, f.low()),
                    q.result(QuantityKind.FORCE, f.high()),
                    small(s.nominal()),
                    small(s.low()),
                    small(s.high()));
        }
        return t.build();
    }

    private ReportBlock readings() {
        TableBuilder t = new TableBuilder(
                        "What another pretension means: the worst of the whole line by energy balance, model"
                                + " factors applied")
                .text("Reading")
                .number("Pretension")
                .number("End anchor load (MAL)")
                .number("Largest tension")
                .number("Required below the line")
                .number("Clearance margin");
        for (ReadingEffect each : result.readings()) {
            t.row(
                    each.name(),
                    q.result(QuantityKind.FORCE, each.pretension()),
                    optional(QuantityKind.FORCE, each.worst(Quantity.END_ANCHOR_LOAD)),
                    optional(QuantityKind.FORCE, each.worst(Quantity.MAXIMUM_TENSION)),
                    optional(QuantityKind.LENGTH, each.worst(Quantity.REQUIRED_BELOW_LINE)),
                    optional(QuantityKind.LENGTH, each.worst(Quantity.CLEARANCE_MARGIN)));
        }
        return t.build();
    }

    private String optional(QuantityKind kind, OptionalDouble value) {
        return value.isPresent() ? q.result(kind, value.getAsDouble()) : "–";
    }

    private String length(double value) {
        return q.result(QuantityKind.LENGTH, value);
    }

    private String small(double value) {
        return q.result(QuantityKind.SMALL_LENGTH, value);
    }

    private String fine(double value) {
        return q.result(QuantityKind.LENGTH, value);
    }

    private static String percent(double share) {
        return SignificantDigits.of(100 * share, 4) + " %";
    }
}
