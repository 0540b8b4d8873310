package org.lifeline.file;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.lifeline.base.Interval;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.PlausibleRange;
import org.lifeline.base.unit.Dimension;
import org.lifeline.design.clearance.ClearanceAlongLine;
import org.lifeline.design.clearance.StationSteps;
import org.lifeline.design.handover.HandoverRequest;
import org.lifeline.design.installation.ConstructionalStretch;
import org.lifeline.design.installation.InstallationPlan;
import org.lifeline.design.installation.InstallationRequest;
import org.lifeline.design.structure.StatedFactor;
import org.lifeline.design.structure.SupportLoads;
import org.lifeline.file.Fields.Range;

/** Reads which parts a design is to hand over; a part is asked for by its object. */
final class HandoverReader {
    private HandoverReader() {}

    static HandoverRequest read(Fields top) {
        Fields f = top.object("handover");
        HandoverRequest request = HandoverRequest.nothing();
        if (f == null) {
            return request;
        }
        SupportLoads structure = structure(f);
        ClearanceAlongLine clearance = clearance(f);
        InstallationPlan installation = installation(f);
        request = structure == null ? request : request.withStructure(structure);
        request = clearance == null ? request : request.withClearance(clearance);
        request = installation == null ? request : request.withInstallation(installation);
        request = f.flag("numberOfWorkers") ? request.withNumberOfWorkers() : request;
        f.close();
        return request;
    }

    private static @Nullable SupportLoads structure(Fields f) {
        Fields s = f.object("structure");
        if (s == null) {
            return null;
        }
        double angle = s.quantity("pullAngle", Dimension.ANGLE, Range.NOT_NEGATIVE);
        List<StatedFactor> factors = new ArrayList<>();
        List<JsonNode> items = s.array("factors");
        for (int i = 0; i < items.size(); i++) {
            Fields o = Fields.of(items.get(i), s.path("factors") + "[" + i + "]", s.findings());
            if (o != null) {
                String name = o.requiredText("name");
                o.required("factor");
                double factor = o.number("factor", Range.POSITIVE);
                String source = o.requiredText("source");
                o.close();
                StatedFactor built = o.build(() -> new StatedFactor(orBlank(name), factor, orBlank(source)));
                if (built != null) {
                    factors.add(built);
                }
            }
        }
        s.close();
        return s.build(() -> {
            SupportLoads loads = SupportLoads.withDefaults().withFactors(factors);
            return Double.isNaN(angle) ? loads : loads.withAngle(angle);
        });
    }

    private static String orBlank(@Nullable String text) {
        return text == null ? "" : text;
    }

    private static @Nullable ClearanceAlongLine clearance(Fields f) {
        Fields c = f.object("clearanceAlongLine");
        if (c == null) {
            return null;
        }
        double step = c.quantity("step", Dimension.LENGTH, Range.POSITIVE);
        double rounding = c.quantity("rounding", Dimension.LENGTH, Range.POSITIVE);
        c.close();
        return c.build(() -> ClearanceAlongLine.withDefaults()
                .withSteps(new StationSteps(
                        Double.isNaN(step) ? StationSteps.COMMON.step() : step,
                        Double.isNaN(rounding) ? StationSteps.COMMON.rounding() : rounding)));
    }

    private static @Nullable InstallationPlan installation(Fields f) {
        Fields i = f.object("installation");
        if (i == null) {
            return null;
        }
        double lowest = temperature(i, "lowestTemperature");
        double highest = temperature(i, "highestTemperature");
        if (highest < lowest) {
            i.findings()
                    .bad(i.path("highestTemperature"), i.node("highestTemperature"), FileRule.BELOW_LOWEST_TEMPERATURE);
        }
        double hand = i.quantity("handTight", Dimension.FORCE, Range.POSITIVE);
        double tolerance = i.quantity("tolerance", Dimension.STRAIN, Range.POSITIVE);
        if (tolerance >= 1) {
            i.findings().bad(i.path("tolerance"), i.node("tolerance"), FileRule.TOLERANCE_OF_ALL);
        }
        ConstructionalStretch stretch = stretch(i);
        i.close();
        return i.build(() -> InstallationPlan.of(new InstallationRequest(
                Interval.of(lowest, highest),
                Double.isNaN(hand) ? InstallationRequest.DRAWN_BY_HAND : hand,
                Double.isNaN(tolerance)
                        ? InstallationRequest.WITHIN_TEN_PERCENT
                        : Interval.of(1 - tolerance, 1 + tolerance),
                Optional.ofNullable(stretch))));
    }

    private static double temperature(Fields i, String key) {
        return i.within(key, i.requiredQuantity(key, Dimension.TEMPERATURE, Range.ANY), PlausibleRange.TEMPERATURE);
    }

    private static @Nullable ConstructionalStretch stretch(Fields i) {
        JsonNode value = i.value("constructionalStretch");
        if (value == null) {
            return null;
        }
        if (value.isTextual()) {
            String core = i.choice("constructionalStretch", List.of("steel core", "fibre core"));
            return "fibre core".equals(core) ? ConstructionalStretch.FIBRE_CORE : ConstructionalStretch.STEEL_CORE;
        }
        if (!value.isObject()) {
            i.findings().bad(i.path("constructionalStretch"), value, FileRule.NOT_A_STRETCH);
            return null;
        }
        Fields s = i.object("constructionalStretch");
        if (s == null) {
            return null;
        }
        double from = s.requiredQuantity("from", Dimension.STRAIN, Range.NOT_NEGATIVE);
        double to = s.requiredQuantity("to", Dimension.STRAIN, Range.NOT_NEGATIVE);
        String source = s.requiredText("source");
        s.close();
        if (to < from) {
            s.findings().bad(s.path("to"), s.node("to"), FileRule.TO_BELOW_FROM);
        }
        if (!s.clean()) {
            return null;
        }
        try {
            return new ConstructionalStretch(Interval.of(from, to), orBlank(source));
        } catch (InvalidInputException e) {
            // Its range is the object itself, its source a key of it.
            e.violations().forEach(v -> (v.path().equals("source") ? s : i).report(v, v.path()));
            return null;
        }
    }
}
