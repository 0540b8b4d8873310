package org.lifeline.design.envelope;

import java.util.ArrayList;
import java.util.List;
import java.util.NavigableSet;
import java.util.TreeSet;
import java.util.concurrent.Executor;
import org.jspecify.annotations.Nullable;
import org.lifeline.base.ProgressListener;
import org.lifeline.base.Violations;
import org.lifeline.base.canonical.Canonical;
import org.lifeline.base.canonical.CanonicalForm;
import org.lifeline.internal.numeric.SharedWork;
import org.lifeline.model.Fall;
import org.lifeline.model.LifelineDesign;

/**
 * The worst that can happen on a line: over every place of every span, every temperature in service, both sides of the
 * absorber's force range, and the ranges of mass, pretension and friction.
 *
 * <p>The falls of the design say who falls and who hangs already; the fall itself is moved along the whole line. Without
 * falls, each worker of the design falls alone. The worst places are found by sampling each span and then refining
 * wherever a worse value may hide, to 1 mm or to 0.1 % of the value. A narrow peak that no place beside it shows can be missed:
 * of 900 random lines, against 70 intervals a span instead of 16, 31 had a value that was more than 0.1 % worse, 4 one that was more
 * than 1 % worse, and one a load on an end anchor, among falls in a span that did not govern, that was 6 % worse. Of what
 * governs the whole line 893 had nothing that was more than 0.1 % worse against 200 intervals and more; the others missed 0.1 to 0.7 %, mostly of the load on
 * a post.
 *
 * <p>By default the combinations of the ranges that govern by the physics of it are searched, and every other combination is
 * tried at the worst places that they gave, and searched as well where it is worse; {@link #withAllCombinations()} searches every
 * combination. The result is the same for any number of threads. Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public final class Envelope implements WorstCases, Canonical {
    private final Tolerances tolerances;
    private final boolean allCombinations;
    private final int intervals;
    private final @Nullable SharedWork shared;
    private final ProgressListener listener;

    private Envelope(
            Tolerances tolerances,
            boolean allCombinations,
            int intervals,
            @Nullable SharedWork shared,
            ProgressListener listener) {
        this.tolerances = tolerances;
        this.allCombinations = allCombinations;
        this.intervals = intervals;
        this.shared = shared;
        this.listener = listener;
    }

    /**
     * Without tolerances, in the calling thread, with 16 intervals in each span to start from.
     *
     * @return the analysis
     */
    public static Envelope withDefaults() {
        return new Envelope(Tolerances.none(), false, 16, null, ProgressListener.none());
    }

    /**
     * The same over ranges of mass, pretension and friction.
     *
     * @param value the ranges
     * @return the new analysis
     */
    public Envelope withTolerances(Tolerances value) {
        Violations.required("tolerances", value);
        return new Envelope(value, allCombinations, intervals, shared, listener);
    }

    /**
     * The same with every combination of temperature, side and range ends searched along the whole line.
     *
     * @return the new analysis
     */
    public Envelope withAllCombinations() {
        return new Envelope(tolerances, true, intervals, shared, listener);
    }

    /**
     * The same with another number of intervals in each span to start from.
     *
     * @param value number of intervals, at least 4
     * @return the new analysis
     * @throws org.lifeline.base.InvalidInputException if there are fewer
     */
    public Envelope withIntervals(int value) {
        new Violations().atLeast("intervals", value, 4).throwIfAny();
        return new Envelope(tolerances, allCombinations, value, shared, listener);
    }

    /**
     * The same with its work done on an executor; the calling thread helps and waits.
     *
     * @param value the executor
     * @return the new analysis
     */
    public Envelope withExecutor(Executor value) {
        Violations.required("executor", value);
        return new Envelope(tolerances, allCombinations, intervals, new SharedWork(value), listener);
    }

    /**
     * The same with a listener that hears of each span that is done and can end the search.
     *
     * @param value the listener
     * @return the new analysis
     */
    public Envelope withProgress(ProgressListener value) {
        Violations.required("progress", value);
        return new Envelope(tolerances, allCombinations, intervals, shared, value);
    }

    /**
     * The ranges that the envelope goes over, beside temperatures and sides.
     *
     * @return mass, pretension, friction
     */
    public Tolerances tolerances() {
        return tolerances;
    }

    /**
     * Searches the whole line.
     *
     * @param design the design
     * @return the worst values, what governs them and how they vary along the line
     * @throws org.lifeline.base.InvalidInputException if the line cannot hang as stated
     * @throws org.lifeline.base.NoEquilibriumException if the line alone finds no equilibrium
     */
    public EnvelopeResult solve(LifelineDesign design) {
        Violations.required("design", design);
        List<double[]> stations = new ArrayList<>();
        List<double[]> beside = new ArrayList<>();
        for (int span = 1; span <= design.line().spans(); span++) {
            NavigableSet<Double> set = stations(design, span);
            stations.add(set.stream().mapToDouble(Double::doubleValue).toArray());
            beside.add(design.clearance().obstructionStations(design.line(), span).stream()
                    .filter(s -> !set.contains(s))
                    .mapToDouble(Double::doubleValue)
                    .toArray());
        }
        EnvelopeSearch search = new EnvelopeSearch(design, stations, beside, shared, listener);
        for (MovingFall movingFall : MovingFall.of(design)) {
            List<LoadCombination> all = LoadCombinations.all(design, tolerances);
            for (LoadCombination combination : all) {
                boolean leads = allCombinations || LoadCombinations.mayGovern(design, tolerances, combination);
                search.add(movingFall, combination, leads);
                if (movingFall.canRun()) {
                    search.add(movingFall, combination.held(), leads);
                }
            }
        }
        boolean complete = search.run();
        return new EnvelopeResult(design, tolerances, search, stations, complete);
    }

    /**
     * The combinations of temperatures, sides and ranges that may govern by the physics of it, or all of them if all are
     * searched.
     *
     * @param design the design
     * @return the combinations, in the order in which ties are decided; unmodifiable
     */
    public List<LoadCombination> combinations(LifelineDesign design) {
        Violations.required("design", design);
        return LoadCombinations.all(design, tolerances).stream()
                .filter(c -> allCombinations || LoadCombinations.mayGovern(design, tolerances, c))
                .toList();
    }

    /**
     * The falls that are moved along the line: those of the design, sequences that are alike once; without falls, each worker
     * alone.
     *
     * @param design the design
     * @return the falls, each somewhere on the line; unmodifiable
     */
    public static List<Fall> movingFalls(LifelineDesign design) {
        Violations.required("design", design);
        return MovingFall.of(design).stream().map(MovingFall::fall).toList();
    }

    @Override
    public Extremes extremes(LifelineDesign design) {
        Violations.required("design", design);
        return solve(design).extremes();
    }

    /**
     * First stations of a span: close together near its ends, at the edges of the obstructions below, and where someone
     * hangs already, since the line has a combination there.
     */
    private NavigableSet<Double> stations(LifelineDesign design, int span) {
        double run = design.line().run(span);
        double end = Math.min(EnvelopeTolerances.FINEST, run * EnvelopeTolerances.STATIONS_APART);
        NavigableSet<Double> set = new TreeSet<>(List.of(end, run - end));
        for (double station : design.clearance().obstructionStations(design.line(), span)) {
            addApart(set, station, run);
        }
        for (Fall fall : design.falls()) {
            for (Fall.Hanging each : fall.hanging()) {
                if (!each.place().isAtSupport() && each.place().span() == span) {
                    addApart(set, each.place().station(), run);
                }
            }
        }
        // Two of the intervals lie beside the ends.
        int wide = intervals - 2;
        for (int i = 1; i < wide; i++) {
            addApart(set, end + (run - 2 * end) * 0.5 * (1 - StrictMath.cos(Math.PI * i / wide)), run);
        }
        double near = Math.max(Math.sqrt(end * set.higher(end)), end + EnvelopeTolerances.SECOND_STATION * run);
        addApart(set, near, run);
        addApart(set, run - near, run);
        return set;
    }

    /** Adds a station within the span unless there is one so near that slopes between the two would be noise. */
    private static void addApart(NavigableSet<Double> set, double station, double run) {
        Double below = set.floor(station);
        Double above = set.ceiling(station);
        double apart = EnvelopeTolerances.STATIONS_APART * run;
        if (below != null && above != null && station - below >= apart && above - station >= apart) {
            set.add(station);
        }
    }

    /**
     * What the result depends on: executor and listener do not belong to it.
     *
     * @return ranges and density of the search
     */
    @Override
    public CanonicalForm canonicalForm() {
        return CanonicalForm.builder("envelope")
                .part("tolerances", tolerances)
                .text("allCombinations", allCombinations)
                .number("intervals", intervals, "")
                .build();
    }
}
