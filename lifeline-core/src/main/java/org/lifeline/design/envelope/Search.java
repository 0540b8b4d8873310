package org.lifeline.design.envelope;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.TreeSet;
import java.util.concurrent.Executor;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import org.lifeline.internal.numeric.OrderedWork;
import org.lifeline.model.LifelineDesign;

/**
 * The search of an envelope, in three rounds. Each round works on its curves independently of one another and of their
 * order, with what the rounds before have found, so that the outcome does not depend on the threads.
 *
 * <ol>
 *   <li>the corners that may govern are sampled along every span;
 *   <li>they are refined where something worse may hide;
 *   <li>every other corner is tried at the worst places; one that is worse there is sampled and refined as well.
 * </ol>
 */
final class Search {
    private final Measures measures;
    private final List<double[]> stations;
    private final @Nullable Executor executor;
    private final ProgressListener listener;
    private final List<Curve> leading = new ArrayList<>();
    private final List<Curve> others = new ArrayList<>();
    private final Extremes.Collector overall;
    private final List<Extremes.Collector> inSpans = new ArrayList<>();
    private long done;

    Search(LifelineDesign design, List<double[]> stations, @Nullable Executor executor, ProgressListener listener) {
        this.measures = new Measures(design);
        this.stations = stations;
        this.executor = executor;
        this.listener = listener;
        this.overall = new Extremes.Collector(design, measures, Curve.HAIR);
        stations.forEach(s -> inSpans.add(new Extremes.Collector(design, measures, Curve.HAIR)));
    }

    void add(Scene scene, Corner corner, boolean leads) {
        for (int span = 1; span <= stations.size(); span++) {
            (leads ? leading : others).add(new Curve(scene, span, corner, measures));
        }
    }

    /** Runs the rounds; false if the listener stopped it. What was done until then is kept. */
    boolean run() {
        boolean whole = round(leading, c -> c.scan(stations.get(c.span() - 1)));
        whole = whole && round(leading, this::refine);
        List<double[]> places = worstPlaces();
        return whole && round(others, c -> probe(c, places.get(c.span() - 1)));
    }

    private boolean round(List<Curve> curves, Consumer<Curve> work) {
        long total = 2L * leading.size() + others.size();
        long taken = OrderedWork.run(
                curves.size(),
                i -> {
                    Curve c = curves.get((int) i);
                    work.accept(c);
                    return c;
                },
                executor,
                (i, c) -> listener.progress(++done, total));
        // Gathered behind the round, in order: no curve sees what another of the same round has found.
        for (Curve c : curves.subList(0, (int) taken)) {
            for (int index = 0; index < measures.size(); index++) {
                overall.add(index, c.worst(index));
                inSpans.get(c.span() - 1).add(index, c.worst(index));
            }
        }
        return taken == curves.size();
    }

    private void refine(Curve curve) {
        for (int index = 0; index < measures.size(); index++) {
            double known = known(index, curve.span());
            if (measures.isSearched(index) && curve.mayExceed(index, known)) {
                curve.refine(index, known);
            }
        }
    }

    private void probe(Curve curve, double[] places) {
        curve.scan(places);
        for (int index = 0; index < measures.size(); index++) {
            if (curve.exceeds(index, known(index, curve.span()))) {
                curve.scan(stations.get(curve.span() - 1));
                refine(curve);
                return;
            }
        }
    }

    private double known(int index, int span) {
        return (measures.isPerSpan(index) ? inSpans.get(span - 1) : overall).value(index);
    }

    /** The stations of each span at which some measure has its worst value. */
    private List<double[]> worstPlaces() {
        List<TreeSet<Double>> sets = new ArrayList<>();
        stations.forEach(s -> sets.add(new TreeSet<>()));
        for (int index = 0; index < measures.size(); index++) {
            for (Extremes.Collector c : inSpans) {
                Curve.Worst w = measures.isPerSpan(index) ? c.worst(index) : overall.worst(index);
                if (w != null) {
                    sets.get(w.fallCase().fall().place().span() - 1)
                            .add(w.fallCase().fall().place().station());
                }
            }
        }
        List<double[]> list = new ArrayList<>();
        for (TreeSet<Double> set : sets) {
            double[] apart = new double[set.size()];
            int n = 0;
            for (double s : set) {
                if (n == 0 || s > apart[n - 1] + 0.02) {
                    apart[n++] = s;
                }
            }
            list.add(Arrays.copyOf(apart, n));
        }
        return list;
    }

    Measures measures() {
        return measures;
    }

    /** Curves that were sampled along the whole of their span. */
    List<Curve> curves() {
        List<Curve> list = new ArrayList<>(leading);
        list.addAll(others);
        return list;
    }

    Extremes overall(Extremes.Scope scope) {
        return overall.finish(scope);
    }

    List<Extremes> inSpans(Extremes.Scope scope) {
        return inSpans.stream().map(c -> c.finish(scope)).toList();
    }
}
