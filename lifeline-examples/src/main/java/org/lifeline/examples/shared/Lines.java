package org.lifeline.examples.shared;

import java.util.Locale;
import org.lifeline.analysis.state.AttachmentLimit;
import org.lifeline.base.InertText;
import org.lifeline.design.criteria.CriterionResult;
import org.lifeline.design.envelope.FallCase;
import org.lifeline.model.Place;
import org.lifeline.model.absorber.DeploymentForce;
import org.lifeline.report.document.CaseNames;
import org.lifeline.report.document.Quantities;
import org.lifeline.report.document.QuantityKind;
import org.lifeline.report.document.UnitChoice;

/** How programs on design files write values, cases and criteria; names from a file come out inert. */
public final class Lines {
    private static final Quantities SI = Quantities.in(UnitChoice.SI);

    private Lines() {}

    /** A value by its SI unit: "9.574 kN", "2.091 m", "22.00°". */
    public static String value(String unit, double value) {
        return switch (unit) {
            case "N" -> SI.result(QuantityKind.FORCE, value);
            case "m" -> SI.result(QuantityKind.LENGTH, value);
            case "kg" -> SI.result(QuantityKind.MASS, value);
            case "rad" -> SI.result(QuantityKind.ANGLE, value);
            default -> value == Math.rint(value) ? Long.toString((long) value) : SI.result(QuantityKind.RATIO, value);
        };
    }

    /** Who falls where, when it is how warm, with which force, and what deviates from the design. */
    public static String fallCase(FallCase c) {
        StringBuilder b = new StringBuilder(InertText.name(c.fall().id()));
        Place place = c.fall().place();
        b.append(place.support()
                .map(id -> ": at " + InertText.name(id))
                .orElseGet(() -> ": span " + place.span() + " at " + SI.result(QuantityKind.LENGTH, place.station())));
        b.append(", ").append(SI.input(QuantityKind.TEMPERATURE, c.temperature()));
        b.append(c.side() == DeploymentForce.CLEARANCE ? ", clearance force" : ", maximum force");
        b.append(CaseNames.conditions(c.fall(), c.side(), c.temperature()));
        c.later()
                .ifPresent(l -> b.append(", ")
                        .append(InertText.name(l.worker()))
                        .append(String.format(Locale.ROOT, " %.3f s later", l.delay())));
        c.attachmentLimit().filter(l -> l == AttachmentLimit.HELD).ifPresent(l -> b.append(", attachment held"));
        c.pretensionFactor().ifPresent(f -> b.append(", pretension × ").append(f));
        c.friction().ifPresent(f -> b.append(", friction ").append(f));
        c.mass().ifPresent(m -> b.append(", mass ").append(SI.input(QuantityKind.MASS, m)));
        return b.toString();
    }

    /** A criterion with demand, capacity and ratio. */
    public static String criterion(CriterionResult r) {
        String numbers = Double.isNaN(r.ratio())
                ? InertText.plain(r.reason())
                : String.format(
                        Locale.ROOT,
                        "%9s / %9s = %.3f",
                        value(r.unit(), r.demand()),
                        value(r.unit(), r.capacity()),
                        r.ratio());
        return String.format(
                Locale.ROOT,
                "%-20s %-7s %s  %s",
                InertText.name(r.criterion().id()),
                r.status().words(),
                numbers,
                r.criterion().source().kind().words());
    }
}
