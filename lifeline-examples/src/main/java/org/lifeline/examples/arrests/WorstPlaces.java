package org.lifeline.examples.arrests;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.ToDoubleFunction;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.model.DeploymentForce;
import org.lifeline.model.Fall;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Place;
import org.lifeline.model.Worker;

/**
 * Looks for the worst places of a single fall: in each span, for each worker, the stations with the largest end anchor
 * load, the largest load on any support, the largest tension, the largest arrest force and the least clearance.
 *
 * <p>Tries the stations at every twelfth of a span, at every service temperature. A worst place between two of these
 * stations is missed by at most a twenty-fourth of the span.
 */
final class WorstPlaces {
    private static final int PARTS = 12;

    private final DesignAnalysis.ArrestListener listener;

    WorstPlaces(DesignAnalysis.ArrestListener listener) {
        this.listener = listener;
    }

    /** The design with a fall at each of the worst places. */
    LifelineDesign addTo(LifelineDesign design) {
        LifelineDesign.Builder b = LifelineDesign.builder(design.title())
                .line(design.line())
                .clearance(design.clearance())
                .modelFactors(design.modelFactors());
        design.temperatures().forEach(b::temperature);
        design.workers().forEach(b::worker);
        int all = design.workers().size() * design.line().spans();
        int done = 0;
        for (Worker worker : design.workers()) {
            for (int span = 1; span <= design.line().spans(); span++) {
                listener.next("worst place of worker " + worker.id() + " in span " + span, done++, all);
                worst(design, worker, span).forEach(b::fall);
            }
        }
        return b.build();
    }

    private static List<Fall> worst(LifelineDesign design, Worker worker, int span) {
        List<ArrestResult> loads = new ArrayList<>();
        List<ArrestResult> distances = new ArrayList<>();
        double run = design.line().run(span);
        for (int k = 1; k < PARTS; k++) {
            double station = Math.round(run * k / PARTS * 1000) / 1000.0;
            if (!(station > 0 && station < run)) {
                continue;
            }
            Fall fall = fall(worker, span, station);
            for (double t : design.temperatures()) {
                loads.add(DesignAnalysis.arrest(design, t, DeploymentForce.MAXIMUM)
                        .solve(design.line(), fall));
                distances.add(DesignAnalysis.arrest(design, t, DeploymentForce.CLEARANCE)
                        .solve(design.line(), fall));
            }
        }
        Map<Double, Fall> chosen = new TreeMap<>();
        choose(chosen, loads, ArrestResult::endAnchorLoad);
        choose(chosen, loads, ArrestResult::maximumTension);
        choose(chosen, loads, ArrestResult::arrestForce);
        choose(
                chosen,
                loads,
                r -> r.supports().stream().mapToDouble(s -> s.force()).max().orElse(0));
        choose(chosen, distances, r -> -r.clearance().requiredElevation());
        choose(chosen, distances, r -> -r.clearance().margin().orElse(0));
        return List.copyOf(chosen.values());
    }

    private static Fall fall(Worker worker, int span, double station) {
        String id = String.format(Locale.ROOT, "worker %s, span %d, station %.3f m", worker.id(), span, station);
        return Fall.builder(id).at(Place.of(span, station)).faller(worker).build();
    }

    private static void choose(
            Map<Double, Fall> chosen, List<ArrestResult> results, ToDoubleFunction<ArrestResult> quantity) {
        ArrestResult worst = null;
        for (ArrestResult each : results) {
            // Nearly equal, as left and right of the middle: keep the first.
            double now = worst == null ? 0 : quantity.applyAsDouble(worst);
            if (worst == null || quantity.applyAsDouble(each) > now + 1e-9 * Math.abs(now)) {
                worst = each;
            }
        }
        if (worst != null) {
            chosen.putIfAbsent(worst.fall().place().station(), worst.fall());
        }
    }
}
