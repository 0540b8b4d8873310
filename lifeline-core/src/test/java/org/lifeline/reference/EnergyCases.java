package org.lifeline.reference;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Function;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.EnergyBalance;
import org.lifeline.base.Point;
import org.lifeline.base.Units;
import org.lifeline.model.Attachment;
import org.lifeline.model.Connection;
import org.lifeline.model.Fall;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Place;
import org.lifeline.model.Stiffness;
import org.lifeline.model.Support;
import org.lifeline.model.Worker;
import org.lifeline.model.absorber.LoadingCurve;
import org.lifeline.reference.ReferenceCases.Inputs;

/** Published cases of a mass that is dropped on a spring, computed as the arrest of a fall. */
final class EnergyCases {
    private static final double PRACTICALLY_RIGID = 1e13;

    private EnergyCases() {}

    static Map<String, Function<Inputs, Map<String, Double>>> all() {
        Map<String, Function<Inputs, Map<String, Double>>> map = new LinkedHashMap<>();
        map.put("mass-on-spring", EnergyCases::massOnSpring);
        map.put("impact-on-bar", in -> impact(in, false));
        map.put("impact-on-anchors", in -> impact(in, true));
        map.put("sudden-load", EnergyCases::suddenLoad);
        return map;
    }

    /** A line so short and taut that it does not yield; its anchors may. */
    private static Lifeline line(Stiffness anchors, double gravity) {
        return Lifeline.builder()
                .cable(StaticsCases.cable(1e-6, PRACTICALLY_RIGID))
                .gravity(gravity)
                .support(Support.end("first", Point.of(0, 0, 0)).withStiffness(anchors))
                .support(Support.end("last", Point.of(0.01, 0, 0)).withStiffness(anchors))
                .pretension(1e10)
                .build();
    }

    private static ArrestResult drop(Lifeline line, double mass, double freeFall, double spring) {
        Worker worker = Worker.builder("test mass")
                .mass(mass)
                .walkingLevel(-1.5)
                .attachment(Attachment.GRIPPED)
                .connection(Connection.plainLanyard(freeFall / 2, LoadingCurve.spring(spring)))
                .build();
        Fall fall = Fall.builder("drop")
                .at(Place.of(1, 0.005))
                .faller(worker)
                .freeFall(freeFall)
                .build();
        return EnergyBalance.withDefaults().solve(line, fall);
    }

    private static Map<String, Double> massOnSpring(Inputs in) {
        ArrestResult r =
                drop(line(Stiffness.rigid(), in.get("gravity")), in.get("mass"), in.get("freeFall"), in.get("spring"));
        return Map.of("totalFall", r.freeFall() + r.deployment() + r.lineDescent());
    }

    private static Map<String, Double> impact(Inputs in, boolean springUnderAnchors) {
        double spring = in.get("modulus") * in.get("area") / in.get("length");
        double weight = in.get("weight");
        Stiffness anchors = springUnderAnchors ? Stiffness.rigid().withZ(0.5 * spring) : Stiffness.rigid();
        ArrestResult r = drop(
                line(anchors, Units.STANDARD_GRAVITY),
                weight / Units.STANDARD_GRAVITY,
                in.get("freeFall"),
                springUnderAnchors ? PRACTICALLY_RIGID : spring);
        double extension = r.deployment() + r.lineDescent();
        return Map.of(
                "extension", extension,
                "stress", r.lineLoad() / in.get("area"),
                "factor", extension / (weight / spring));
    }

    private static Map<String, Double> suddenLoad(Inputs in) {
        double mass = in.get("mass");
        double spring = mass * Units.STANDARD_GRAVITY / in.get("static");
        ArrestResult r = drop(line(Stiffness.rigid(), Units.STANDARD_GRAVITY), mass, 0, spring);
        return Map.of("extension", r.deployment());
    }
}
