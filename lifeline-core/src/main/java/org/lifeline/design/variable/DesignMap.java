package org.lifeline.design.variable;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Executor;
import org.jspecify.annotations.Nullable;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.NoEquilibriumException;
import org.lifeline.base.ProgressListener;
import org.lifeline.base.Violations;
import org.lifeline.design.criteria.Criterion;
import org.lifeline.design.envelope.Envelope;
import org.lifeline.design.envelope.Extremes;
import org.lifeline.design.envelope.WorstCases;
import org.lifeline.internal.numeric.OrderedWork;
import org.lifeline.internal.numeric.SharedWork;
import org.lifeline.model.LifelineDesign;

/**
 * The worst ratio of demand to capacity over two variables, and for each value of the first the feasible range of the second,
 * found by root finding.
 *
 * <p>Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public final class DesignMap {
    private final FeasibleSearch search;
    private final @Nullable SharedWork shared;
    private final ProgressListener listener;

    private DesignMap(FeasibleSearch search, @Nullable SharedWork shared, ProgressListener listener) {
        this.search = search;
        this.shared = shared;
        this.listener = listener;
    }

    /**
     * A map over the envelope of a design.
     *
     * @param criteria the criteria that have to be met
     * @return the map
     * @throws org.lifeline.base.InvalidInputException if there is no criterion
     */
    public static DesignMap withCriteria(List<Criterion> criteria) {
        Violations.requiredAll("criteria", criteria);
        return new DesignMap(FeasibleSearch.withCriteria(criteria), null, ProgressListener.none());
    }

    /**
     * The same over other cases.
     *
     * @param value the analysis that gives the worst cases
     * @return the new map
     */
    public DesignMap withAnalysis(WorstCases value) {
        Violations.required("analysis", value);
        return new DesignMap(search.withAnalysis(value), shared, listener);
    }

    /**
     * The same with its columns worked out on an executor; the calling thread helps and waits.
     *
     * @param value the executor
     * @return the new map
     */
    public DesignMap withExecutor(Executor value) {
        Violations.required("executor", value);
        return new DesignMap(search, new SharedWork(value), listener);
    }

    /**
     * The same with a listener that hears of each value of the first variable and can end the work.
     *
     * @param value the listener
     * @return the new map
     */
    public DesignMap withProgress(ProgressListener value) {
        Violations.required("progress", value);
        return new DesignMap(search, shared, value);
    }

    /**
     * A value of the first variable with the second one searched through.
     *
     * @param value value of the first variable [unit of the variable]
     * @param cells the values of the second variable that were asked for, tried
     * @param range feasible ranges of the second variable, with all values that were tried
     * @since 1.0.0
     */
    public record Column(double value, List<Trial> cells, FeasibleResult range) {
        /**
         * Copies the cells.
         *
         * @param value value of the first variable [unit of the variable]
         * @param cells the values of the second variable that were asked for, tried
         * @param range feasible ranges of the second variable, with all values that were tried
         */
        public Column {
            Violations.requiredAll("cells", cells);
            cells = List.copyOf(cells);
        }
    }

    /**
     * Works out the map.
     *
     * @param base the design in which both variables are set
     * @param first the first variable with its values
     * @param second the second variable with its values
     * @return one column for each value of the first variable, and whether they are all: there are fewer when the listener
     *     ended the work or the calling thread was interrupted
     */
    public DesignMapResult solve(LifelineDesign base, Axis first, Axis second) {
        Violations.required("base", base);
        Violations.required("first", first);
        Violations.required("second", second);
        List<Column> columns = new ArrayList<>();
        int n = first.values().size();
        Optional<GoverningCases> cases = search.envelope().map(e -> governing(e, base, first, second));
        OrderedWork.run(
                n,
                i -> column(base, first.values().get((int) i), first.variable(), second, cases),
                shared,
                (i, column) -> {
                    columns.add(column);
                    return listener.progress(i + 1, n);
                });
        return new DesignMapResult(columns, n);
    }

    /** The cases that govern at the corners of the map, in the middles of its edges and in its middle. */
    private GoverningCases governing(Envelope envelope, LifelineDesign base, Axis first, Axis second) {
        List<LifelineDesign> designs = new ArrayList<>();
        for (double x : ends(first)) {
            for (double y : ends(second)) {
                try {
                    designs.add(second.variable().after(first.variable(), x).apply(base, y));
                } catch (InvalidInputException | NoEquilibriumException e) {
                    // A corner that is no design has no envelope.
                }
            }
        }
        GoverningCases[] known = {GoverningCases.of(envelope)};
        OrderedWork.run(designs.size(), i -> extremes(envelope, designs.get((int) i)), shared, (i, extremes) -> {
            if (extremes.isPresent()) {
                known[0] = known[0].and(extremes.get());
            }
            return true;
        });
        return known[0];
    }

    private static Optional<Extremes> extremes(Envelope envelope, LifelineDesign design) {
        try {
            return Optional.of(envelope.extremes(design));
        } catch (InvalidInputException | NoEquilibriumException e) {
            return Optional.empty();
        }
    }

    private static List<Double> ends(Axis axis) {
        List<Double> v = axis.values();
        return List.copyOf(new LinkedHashSet<>(List.of(v.get(0), v.get(v.size() / 2), v.get(v.size() - 1))));
    }

    private Column column(
            LifelineDesign base, double value, DesignVariable first, Axis second, Optional<GoverningCases> cases) {
        DesignVariable both = second.variable().after(first, value);
        FeasibleRangeSolver solver = new FeasibleRangeSolver(search, base, both);
        cases.ifPresent(solver::knowing);
        FeasibleResult range = solver.run();
        List<Trial> cells = new ArrayList<>();
        for (double v : second.values()) {
            cells.add(solver.at(v));
        }
        return new Column(value, cells, range);
    }
}
