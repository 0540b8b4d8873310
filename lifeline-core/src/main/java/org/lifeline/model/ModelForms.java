package org.lifeline.model;

import java.util.OptionalDouble;
import org.lifeline.base.Point;
import org.lifeline.base.canonical.CanonicalForm;
import org.lifeline.model.absorber.AbsorberCondition;
import org.lifeline.model.absorber.DeploymentForce;
import org.lifeline.model.absorber.LoadingCurve;

/**
 * What the parts of a design consist of, in canonical form. What is said here is hashed into fingerprints: an entry that is
 * added where something was stated only (an option) leaves the fingerprints of older values as they are.
 */
final class ModelForms {
    private ModelForms() {}

    static CanonicalForm of(Lifeline line) {
        CanonicalForm.Builder b = CanonicalForm.builder("lifeline").part("cable", line.cable());
        line.supports().forEach(s -> b.part(CanonicalForm.Builder.element("support", s.id()), s));
        return b.part("installed", line.installed())
                .number("gravity", line.gravity(), "m/s²")
                .build();
    }

    static CanonicalForm of(Installed installed) {
        String unit =
                switch (installed.form()) {
                    case PRETENSION, HORIZONTAL_TENSION -> "N";
                    case INITIAL_SAG, UNSTRETCHED_LENGTH -> "m";
                };
        CanonicalForm.Builder b = CanonicalForm.builder("installed")
                .text("form", installed.form().name())
                .number("value", installed.value(), unit)
                .number("span", installed.span(), "")
                .number("temperature", installed.temperature(), "°C");
        installed.tensionedFrom().ifPresent(end -> b.text("tensionedFrom", end.name()));
        return b.build();
    }

    static CanonicalForm of(Support s) {
        CanonicalForm.Builder b =
                CanonicalForm.builder("support").text("id", s.id()).text("type", s.isEnd() ? "end" : "intermediate");
        Point p = s.position();
        b.number("position.x", p.x(), "m").number("position.y", p.y(), "m").number("position.z", p.z(), "m");
        b.text("passage", s.passage().kind().name());
        if (s.passage().kind() == Passage.Kind.FRICTION) {
            b.number("passage.friction", s.passage().friction(), "");
        }
        Stiffness k = s.stiffness();
        b.number("stiffness.x", k.x(), "N/m")
                .number("stiffness.y", k.y(), "N/m")
                .number("stiffness.z", k.z(), "N/m");
        s.inlineAbsorber().ifPresent(a -> curve(b, "inlineAbsorber", a.curve()));
        s.post().ifPresent(post -> post(b, post));
        return b.number("capacity", s.capacity(), "N").build();
    }

    private static void post(CanonicalForm.Builder b, Post post) {
        b.number("post.height", post.height(), "m")
                .number("post.eccentricity.x", post.eccentricity().x(), "m")
                .number("post.eccentricity.y", post.eccentricity().y(), "m")
                .number("post.elasticModulus", post.elasticModulus(), "Pa")
                .number("post.secondMomentX", post.secondMomentX(), "m⁴")
                .number("post.secondMomentY", post.secondMomentY(), "m⁴")
                .number("post.momentOfResistanceX", post.momentOfResistanceX(), "N·m")
                .number("post.momentOfResistanceY", post.momentOfResistanceY(), "N·m");
    }

    static CanonicalForm of(Connection c) {
        CanonicalForm.Builder b = CanonicalForm.builder("connection")
                .text("kind", c.kind().name())
                .number("length", c.tautLength(0), "m");
        curve(b, "clearanceCurve", c.deployment().dry(DeploymentForce.CLEARANCE));
        curve(b, "maximumCurve", c.deployment().dry(DeploymentForce.MAXIMUM));
        for (AbsorberCondition each : c.deployment().conditions()) {
            String path = CanonicalForm.Builder.element("condition", each.kind().label());
            b.number(path + ".clearanceForce", each.clearanceForce(), "N")
                    .number(path + ".maximumForce", each.maximumForce(), "N")
                    .number(path + ".temperature", each.temperature(), "°C")
                    .text(path + ".source", each.source());
        }
        return b.build();
    }

    private static void curve(CanonicalForm.Builder b, String path, LoadingCurve curve) {
        for (int i = 0; i < curve.corners().size(); i++) {
            String corner = CanonicalForm.Builder.element(path, i);
            b.number(corner + ".extension", curve.corners().get(i).extension(), "m");
            b.number(corner + ".force", curve.corners().get(i).force(), "N");
        }
        b.number(path + ".activationForce", curve.activationForce(), "N")
                .number(path + ".initialStiffness", curve.initialStiffness(), "N/m")
                .number(path + ".stopStiffness", curve.stopStiffness(), "N/m");
    }

    static CanonicalForm of(Worker w) {
        return CanonicalForm.builder("worker")
                .text("id", w.id())
                .number("mass", w.mass(), "kg")
                .number("walkingLevel", w.walkingLevel(), "m")
                .number("attachmentHeight", w.attachmentHeight(), "m")
                .text("attachment", w.attachment().name())
                .number("offset", w.offset(), "m")
                .part("connection", w.connection())
                .build();
    }

    static CanonicalForm of(Fall f) {
        CanonicalForm.Builder b = CanonicalForm.builder("fall").text("id", f.id());
        place(b, "at", f.place());
        f.fallers().forEach(w -> b.part(CanonicalForm.Builder.element("faller", w.id()), w));
        for (Fall.Hanging each : f.hanging()) {
            String path = CanonicalForm.Builder.element("hanging", each.worker().id());
            b.part(path + ".worker", each.worker());
            place(b, path + ".place", each.place());
        }
        return b.number("freeFall", f.freeFall(), "m").build();
    }

    private static void place(CanonicalForm.Builder b, String path, Place place) {
        place.support()
                .ifPresentOrElse(
                        id -> b.text(path + ".support", id),
                        () -> b.number(path + ".span", place.span(), "")
                                .number(path + ".station", place.station(), "m"));
    }

    static CanonicalForm of(LifelineDesign d) {
        CanonicalForm.Builder b =
                CanonicalForm.builder("design").text("title", d.title()).part("line", d.line());
        for (int i = 0; i < d.temperatures().size(); i++) {
            b.number(
                    CanonicalForm.Builder.element("temperature", i),
                    d.temperatures().get(i),
                    "°C");
        }
        d.workers().forEach(w -> b.part(CanonicalForm.Builder.element("worker", w.id()), w));
        d.falls().forEach(f -> b.part(CanonicalForm.Builder.element("fall", f.id()), f));
        b.part("clearance", d.clearance());
        ModelFactors factors = d.modelFactors();
        b.number("modelFactors.force", factors.force(), "")
                .number("modelFactors.distance", factors.distance(), "")
                .text("modelFactors.reason", factors.reason());
        OptionalDouble floor = d.workingFloor();
        d.secondFall().ifPresent(f -> b.part("secondFall", f));
        d.rescuerMass().ifPresent(m -> b.number("rescuerMass", m, "kg"));
        return b.number("workingFloor", floor, "m").build();
    }

    static CanonicalForm of(ClearanceRules rules) {
        CanonicalForm.Builder b = CanonicalForm.builder("clearance")
                .number("harnessStretch", rules.harnessStretch(), "m")
                .number("margin", rules.margin(), "m");
        for (int i = 0; i < rules.obstructions().size(); i++) {
            Obstruction o = rules.obstructions().get(i);
            String path = CanonicalForm.Builder.element("obstruction", i);
            b.number(path + ".from", o.from(), "m")
                    .number(path + ".to", o.to(), "m")
                    .number(path + ".elevation", o.elevation(), "m");
            if (o.distance() != 0) {
                b.number(path + ".distance", o.distance(), "m");
            }
        }
        return b.build();
    }
}
