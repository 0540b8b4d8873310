package org.lifeline.reference;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.lifeline.analysis.TransientResult;
import org.lifeline.analysis.motion.WorkerPeaks;
import org.lifeline.base.Units;
import org.lifeline.internal.motion.WaveSignals;
import org.lifeline.model.absorber.LoadingCurve;
import org.lifeline.reference.ReferenceCases.Inputs;
import org.lifeline.testing.StiffLine;
import org.lifeline.testing.StiffLine.Body;

/** Published cases of masses, strings and cables in motion, read from simulations. */
final class DynamicsCases {
    private DynamicsCases() {}

    static Map<String, Function<Inputs, Map<String, Double>>> all() {
        Map<String, Function<Inputs, Map<String, Double>>> map = new LinkedHashMap<>();
        map.put("mass-on-spring-in-time", DynamicsCases::massOnSpring);
        map.put("impact-on-bar-in-time", DynamicsCases::impact);
        map.put("sudden-load-in-time", DynamicsCases::suddenLoad);
        map.put("plastic-step-60", DynamicsCases::plasticStep);
        map.put("plastic-step-75", DynamicsCases::plasticStep);
        map.put("plastic-step-90", DynamicsCases::plasticStep);
        map.put("taut-string", DynamicsCases::tautString);
        map.put("transverse-wave", DynamicsCases::transverseWave);
        map.put("axial-wave", DynamicsCases::axialWave);
        map.put("sagged-cable-1", DynamicsCases::saggedCable);
        map.put("sagged-cable-10", DynamicsCases::saggedCable);
        map.put("sagged-cable-100", DynamicsCases::saggedCable);
        map.put("string-with-mass", DynamicsCases::stringWithMass);
        map.put("free-fall", DynamicsCases::freeFall);
        map.put("pendulum", DynamicsCases::pendulum);
        return map;
    }

    private static Map<String, Double> massOnSpring(Inputs in) {
        TransientResult r = StiffLine.drop(
                new Body(in.get("mass"), in.get("freeFall"), in.get("gravity"), 1e9),
                LoadingCurve.spring(in.get("spring")),
                0.11);
        WorkerPeaks w = r.firstCatch().worker("w");
        return Map.of(
                "totalFall",
                r.history().worker("w").z()[0] - w.lowest().value(),
                "time",
                w.lowest().time());
    }

    private static Map<String, Double> impact(Inputs in) {
        double spring = in.get("modulus") * in.get("area") / in.get("length");
        double weight = in.get("weight");
        TransientResult r = StiffLine.drop(
                new Body(weight / Units.STANDARD_GRAVITY, in.get("freeFall"), Units.STANDARD_GRAVITY, 1e12),
                LoadingCurve.spring(spring),
                0.11);
        WorkerPeaks w = r.firstCatch().worker("w");
        return Map.of(
                "extension", w.extension(),
                "stress", w.force().value() / in.get("area"),
                "factor", w.force().value() / weight);
    }

    private static Map<String, Double> suddenLoad(Inputs in) {
        double mass = in.get("mass");
        double spring = mass * Units.STANDARD_GRAVITY / in.get("static");
        double half = Math.PI * Math.sqrt(mass / spring);
        TransientResult r =
                StiffLine.drop(new Body(mass, 0, Units.STANDARD_GRAVITY, 1e9), LoadingCurve.spring(spring), 1.2 * half);
        return Map.of("extension", r.firstCatch().worker("w").extension());
    }

    /** A weight on a spring that yields: the weight is the step of force, the absorber the yielding resistance. */
    private static Map<String, Double> plasticStep(Inputs in) {
        double mass = in.get("mass");
        double weight = mass * Units.STANDARD_GRAVITY;
        double k = in.get("spring");
        double resistance = weight / in.get("ratio");
        double yield = resistance / k;
        LoadingCurve curve = LoadingCurve.through(
                List.of(new LoadingCurve.Corner(0, resistance), new LoadingCurve.Corner(1, resistance)), k, 1e6);
        TransientResult r = StiffLine.drop(new Body(mass, 0, Units.STANDARD_GRAVITY, 1e9), curve, in.get("duration"));
        return Map.of("ductility", r.firstCatch().worker("w").extension() / yield);
    }

    private static Map<String, Double> tautString(Inputs in) {
        double[] tension = {in.get("tension"), in.get("modulus") * in.get("area")};
        double[] span = {in.get("length"), in.get("density") * in.get("area")};
        return Map.of(
                "frequency1", WaveSignals.mode(tension, span, 1, 128),
                "frequency2", WaveSignals.mode(tension, span, 2, 128),
                "frequency3", WaveSignals.mode(tension, span, 3, 128));
    }

    private static Map<String, Double> transverseWave(Inputs in) {
        return Map.of("speed", WaveSignals.hump(in.get("tension"), in.get("mass"), 800));
    }

    private static Map<String, Double> axialWave(Inputs in) {
        return Map.of(
                "speed", WaveSignals.push(new double[] {in.get("tension"), in.get("stiffness")}, in.get("mass"), 2400));
    }

    private static Map<String, Double> saggedCable(Inputs in) {
        return Map.of("reducedFrequency", WaveSignals.sagged(in.get("lambda2"), in.get("start"), 80));
    }

    private static Map<String, Double> stringWithMass(Inputs in) {
        double half = StiffLine.halfPeriodOfString(in.get("tension"), in.get("mass"), in.get("length"));
        return Map.of("frequency", 0.5 / half);
    }

    private static Map<String, Double> freeFall(Inputs in) {
        TransientResult r = StiffLine.drop(
                new Body(80, in.get("height"), in.get("gravity"), 1e9), LoadingCurve.spring(1e6), in.get("duration"));
        double[] t = r.history().times();
        double[] f = r.history().worker("w").force();
        int i = 0;
        while (f[i] <= 0) {
            i++;
        }
        // The subsystem is taut one sample before it pulls.
        return Map.of("time", t[i - 1]);
    }

    private static Map<String, Double> pendulum(Inputs in) {
        return Map.of("period", WaveSignals.pendulum(in.get("length"), in.get("angle"), in.get("gravity")));
    }
}
