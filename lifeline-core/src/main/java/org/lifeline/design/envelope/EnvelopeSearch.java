package org.lifeline.design.envelope;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import org.lifeline.analysis.motion.ForceFilter;
import org.lifeline.base.ProgressListener;
import org.lifeline.internal.numeric.OrderedWork;
import org.lifeline.internal.numeric.SharedWork;
import org.lifeline.model.LifelineDesign;

/**
 * The search of an envelope, in three rounds. Each round works on its influenceLines independently of one another and of their
 * order, with what the rounds before have found, so that the outcome does not depend on the threads.
 *
 * <ol>
 *   <li>the combinations that may govern are sampled along every span;
 *   <li>they are refined where something worse may hide;
 *   <li>every other combination is tried at the worst places; one that is worse there is sampled and refined as well.
 * </ol>
 */
final class EnvelopeSearch {
    private final ArrestQuantities quantities;
    private final List<double[]> stations;

    /** Stations of each span that are too near to others for a curve, but at which an obstruction stands that these may not meet. */
    private final List<double[]> beside;

    private final @Nullable SharedWork shared;
    private final ProgressListener listener;
    private final List<InfluenceLine> leading = new ArrayList<>();
    private final List<InfluenceLine> others = new ArrayList<>();
    private final Extremes.Collector overall;
    private final List<Extremes.Collector> inSpans = new ArrayList<>();
    private long done;

    EnvelopeSearch(
            LifelineDesign design,
            List<double[]> stations,
            List<double[]> beside,
            @Nullable SharedWork shared,
            ProgressListener listener) {
        this.quantities = ArrestQuantities.of(design, ForceFilter.NONE);
        this.stations = stations;
        this.beside = beside;
        this.shared = shared;
        this.listener = listener;
        this.overall = new Extremes.Collector(design, quantities);
        stations.forEach(s -> inSpans.add(new Extremes.Collector(design, quantities)));
    }

    void add(MovingFall movingFall, LoadCombination combination, boolean leads) {
        for (int span = 1; span <= stations.size(); span++) {
            (leads ? leading : others).add(new InfluenceLine(movingFall, span, combination, quantities));
        }
    }

    /** Runs the rounds; false if the listener stopped it. What was done until then is kept. */
    boolean run() {
        boolean whole = round(leading, c -> {
            c.scan(stations.get(c.span() - 1));
            c.lookAt(beside.get(c.span() - 1));
        });
        whole = whole && round(leading, this::refine);
        if (!whole || others.isEmpty()) {
            return whole;
        }
        List<double[]> places = worstPlaces();
        return round(others, c -> probe(c, places.get(c.span() - 1)));
    }

    private boolean round(List<InfluenceLine> influenceLines, Consumer<InfluenceLine> work) {
        long total = 2L * leading.size() + others.size();
        long taken = OrderedWork.run(
                influenceLines.size(),
                i -> {
                    InfluenceLine c = influenceLines.get((int) i);
                    work.accept(c);
                    return c;
                },
                shared,
                (i, c) -> listener.progress(++done, total));
        // Gathered behind the round, in order: no influenceLine sees what another of the same round has found.
        for (InfluenceLine c : influenceLines.subList(0, (int) taken)) {
            for (int index = 0; index < quantities.size(); index++) {
                overall.add(index, c.worst(index));
                inSpans.get(c.span() - 1).add(index, c.worst(index));
            }
        }
        return taken == influenceLines.size();
    }

    private void refine(InfluenceLine influenceLine) {
        for (int index = 0; index < quantities.size(); index++) {
            if (quantities.isSearched(index)) {
                influenceLine.refine(index, known(index, influenceLine.span()));
            }
        }
    }

    private void probe(InfluenceLine influenceLine, double[] places) {
        influenceLine.scan(places);
        influenceLine.lookAt(beside.get(influenceLine.span() - 1));
        for (int index = 0; index < quantities.size(); index++) {
            if (influenceLine.exceeds(index, known(index, influenceLine.span()))) {
                influenceLine.scan(stations.get(influenceLine.span() - 1));
                refine(influenceLine);
                return;
            }
        }
    }

    private double known(int index, int span) {
        return (quantities.isPerSpan(index) ? inSpans.get(span - 1) : overall).value(index);
    }

    /** The stations of each span at which some quantity has its worst value. */
    private List<double[]> worstPlaces() {
        List<TreeSet<Double>> sets = new ArrayList<>();
        stations.forEach(s -> sets.add(new TreeSet<>()));
        for (int index = 0; index < quantities.size(); index++) {
            for (Extremes.Collector c : quantities.isPerSpan(index) ? inSpans : List.of(overall)) {
                InfluenceLine.Worst w = c.worst(index);
                if (w != null && !w.fallCase().fall().place().isAtSupport()) {
                    sets.get(w.fallCase().fall().place().span() - 1)
                            .add(w.fallCase().fall().place().station());
                }
            }
        }
        List<double[]> list = new ArrayList<>();
        for (int i = 0; i < sets.size(); i++) {
            list.add(apart(sets.get(i), stations.get(i)));
        }
        return list;
    }

    /**
     * Places of a span, in their order: one of those that are next to each other, and the end of the span where one is next to
     * it.
     */
    private static double[] apart(Set<Double> places, double[] stations) {
        TreeSet<Double> kept = new TreeSet<>();
        for (double s : places) {
            if (kept.isEmpty() || s > kept.last() + EnvelopeTolerances.PLACES_APART) {
                kept.add(s);
            }
        }
        // There curves turn within millimetres, and each combination has its own turn.
        for (double end : new double[] {stations[0], stations[stations.length - 1]}) {
            if (kept.stream().anyMatch(s -> Math.abs(s - end) < EnvelopeTolerances.PLACES_APART)) {
                kept.add(end);
            }
        }
        return kept.stream().mapToDouble(Double::doubleValue).toArray();
    }

    ArrestQuantities quantities() {
        return quantities;
    }

    /** Curves that were sampled along the whole of their span. */
    List<InfluenceLine> influenceLines() {
        List<InfluenceLine> list = new ArrayList<>(leading);
        list.addAll(others);
        return list;
    }

    Extremes overall(Extremes.Scope scope) {
        return overall.finish(scope);
    }

    /** The worst of falls in each span. */
    List<Extremes.Collector> inSpans() {
        return inSpans;
    }
}
