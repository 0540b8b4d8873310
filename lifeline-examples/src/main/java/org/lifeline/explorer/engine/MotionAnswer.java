package org.lifeline.explorer.engine;

import java.util.ArrayList;
import java.util.List;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.TransientArrest;
import org.lifeline.analysis.TransientResult;
import org.lifeline.analysis.motion.MotionHistory;
import org.lifeline.analysis.motion.SupportHistory;
import org.lifeline.analysis.motion.WorkerHistory;
import org.lifeline.base.Point;
import org.lifeline.model.absorber.DeploymentForce;

/** What a page shows of one fall in time. */
final class MotionAnswer {
    /** Time that is followed [s]: the fall, the catch and a rebound. */
    private static final double DURATION = 2;

    /** Time between two pictures [s]: at a tenth of real time 25 pictures a second need 4 ms. */
    private static final double SAMPLING = 2e-3;

    private MotionAnswer() {}

    /** How a fall is followed; the temperature [°C] is NaN for that of the installation. */
    record Request(double temperature, boolean clearance, int refinements) {}

    static String of(LiveAnswer.Case c, Request request) {
        TransientArrest arrest = TransientArrest.withDefaults()
                .withSide(request.clearance() ? DeploymentForce.CLEARANCE : DeploymentForce.MAXIMUM)
                .withClearance(c.design().clearance())
                .withDuration(DURATION)
                .withSampling(SAMPLING)
                .withRefinements(request.refinements());
        if (!Double.isNaN(request.temperature())) {
            arrest = arrest.withTemperature(request.temperature());
        }
        TransientResult r = arrest.solve(c.line(), c.fall());
        ArrestResult peak = r.arrest();
        Developed developed = new Developed(c.line());
        MotionHistory history = r.history();
        WorkerHistory worker = history.worker(c.fall().fallers().get(0).id());
        int span = peak.span();
        double[] lineAlong = new double[history.times().length];
        for (int i = 0; i < lineAlong.length; i++) {
            lineAlong[i] = developed.point(span, Point.of(worker.lineX()[i], worker.lineY()[i], 0))[0];
        }
        List<Json> supports = new ArrayList<>();
        for (SupportHistory each : history.supports()) {
            supports.add(new Json()
                    .put("id", each.id())
                    .put("tensionBefore", each.tensionBefore())
                    .put("tensionBehind", each.tensionBehind())
                    .put("force", each.force()));
        }
        return new Json()
                .put("times", history.times())
                .put("workerZ", worker.z())
                .put("force", worker.force())
                .put("extension", worker.extension())
                .put("lineAlong", lineAlong)
                .put("lineZ", worker.lineZ())
                .put("supports", supports)
                .put("endAnchorLoad", peak.endAnchorLoad())
                .put("maximumTension", peak.maximumTension())
                .put("arrestForce", peak.arrestForce())
                .put("deployment", peak.deployment())
                .put("totalFallDistance", peak.totalFallDistance())
                .put("requiredBelowLine", peak.clearance().requiredBelowLine())
                .put("margin", peak.clearance().margin())
                .put("sag", peak.sag())
                .put("tensionRatio", r.tensionRatio())
                .put("forceRatio", r.forceRatio())
                .put("fallDistanceRatio", r.fallDistanceRatio())
                .put("uncertainty", r.uncertainty())
                .put("meshes", r.meshes().size())
                .put("drift", r.relativeDrift())
                .put("accurate", r.accurate())
                .toString();
    }
}
