package org.lifeline.analysis;

import org.lifeline.analysis.clearance.Clearance;
import org.lifeline.analysis.state.EnergyAccount;
import org.lifeline.analysis.state.InlineAbsorberState;
import org.lifeline.analysis.state.LoadPosition;
import org.lifeline.analysis.state.SupportReaction;
import org.lifeline.base.Point;
import org.lifeline.base.Vector3;
import org.lifeline.base.canonical.CanonicalForm;

/** The numbers of results in canonical form; what a result holds of its inputs is left to the forms of these. */
final class ResultForms {
    private ResultForms() {}

    static CanonicalForm of(LineEquilibrium e) {
        CanonicalForm.Builder b =
                CanonicalForm.builder("line equilibrium").number("temperature", e.temperature(), "°C");
        for (SpanState each : e.spans()) {
            String path = CanonicalForm.Builder.element("span", each.number());
            b.number(path + ".sag", each.sag(), "m")
                    .number(path + ".horizontalTension", each.horizontalTension(), "N")
                    .number(path + ".maximumTension", each.maximumTension(), "N")
                    .number(path + ".unstretchedLength", each.unstretchedLength(), "m");
        }
        b.number("firstTension", e.firstTension(), "N")
                .number("lastTension", e.lastTension(), "N")
                .number("maximumTension", e.maximumTension(), "N");
        supports(b, e);
        for (int i = 0; i < e.loads().size(); i++) {
            LoadPosition each = e.loads().get(i);
            String path = CanonicalForm.Builder.element("load", i);
            b.number(path + ".force", each.force(), "N");
            point(b, path + ".point", each.point());
        }
        return b.build();
    }

    private static void supports(CanonicalForm.Builder b, LineEquilibrium e) {
        for (SupportReaction each : e.supports()) {
            String path = CanonicalForm.Builder.element("support", each.id());
            vector(b, path + ".force", each.vector(), "N");
            vector(b, path + ".displacement", each.displacement(), "m");
            b.number(path + ".slip", each.slip(), "m");
        }
        for (InlineAbsorberState each : e.inlineAbsorbers()) {
            b.number(
                    CanonicalForm.Builder.element("inlineAbsorber", each.supportId()) + ".extension",
                    each.extension(),
                    "m");
        }
    }

    static CanonicalForm of(ArrestResult r) {
        CanonicalForm.Builder b = CanonicalForm.builder("arrest")
                .text("method", r.method().name())
                .text("side", r.side().name())
                .number("temperature", r.temperature(), "°C")
                .number("freeFall", r.freeFall(), "m");
        for (int i = 0; i < r.deployments().size(); i++) {
            b.number(
                    CanonicalForm.Builder.element("deployment", i),
                    r.deployments().get(i),
                    "m");
        }
        b.text("bottomedOut", r.bottomedOut())
                .number("arrestForce", r.arrestForce(), "N")
                .number("lineLoad", r.lineLoad(), "N")
                .number("sag", r.sag(), "m")
                .number("lineDescent", r.lineDescent(), "m")
                .number("loadX", r.loadX(), "m")
                .number("maximumTension", r.maximumTension(), "N")
                .number("totalFallDistance", r.totalFallDistance(), "m");
        supports(b, r.peak());
        energy(b, r.energy());
        clearance(b, r.clearance());
        return b.build();
    }

    private static void energy(CanonicalForm.Builder b, EnergyAccount e) {
        b.number("energy.fall", e.fall(), "J")
                .number("energy.cable", e.cable(), "J")
                .number("energy.hanging", e.hanging(), "J")
                .number("energy.connection", e.connection(), "J")
                .number("energy.friction", e.friction(), "J")
                .number("energy.inlineAbsorbers", e.inlineAbsorbers(), "J")
                .number("energy.anchors", e.anchors(), "J");
    }

    private static void clearance(CanonicalForm.Builder b, Clearance c) {
        b.number("clearance.lowestPoint", c.lowestPoint(), "m")
                .number("clearance.requiredBelowLine", c.requiredBelowLine(), "m")
                .number("clearance.requiredBelowWalkingLevel", c.requiredBelowWalkingLevel(), "m")
                .number("clearance.margin", c.margin(), "m");
    }

    static CanonicalForm of(TransientResult r) {
        return CanonicalForm.builder("arrest in time")
                .part("arrest", r.arrest())
                .number("uncertainty", r.uncertainty(), "")
                .number("relativeDrift", r.relativeDrift(), "")
                .number("timeStep", r.timeStep(), "s")
                .text("firstCatchOver", r.firstCatchOver())
                .build();
    }

    private static void point(CanonicalForm.Builder b, String path, Point p) {
        b.number(path + ".x", p.x(), "m").number(path + ".y", p.y(), "m").number(path + ".z", p.z(), "m");
    }

    private static void vector(CanonicalForm.Builder b, String path, Vector3 v, String unit) {
        b.number(path + ".x", v.x(), unit).number(path + ".y", v.y(), unit).number(path + ".z", v.z(), unit);
    }
}
