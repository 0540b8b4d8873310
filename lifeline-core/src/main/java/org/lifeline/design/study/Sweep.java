package org.lifeline.design.study;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Executor;
import org.jspecify.annotations.Nullable;
import org.lifeline.base.GivenValue;
import org.lifeline.base.InputRule;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.NoEquilibriumException;
import org.lifeline.base.ProgressListener;
import org.lifeline.base.Violations;
import org.lifeline.design.variable.Axis;
import org.lifeline.internal.numeric.OrderedWork;
import org.lifeline.internal.numeric.SharedWork;
import org.lifeline.model.LifelineDesign;

/**
 * A table over every combination of the values of some variables.
 *
 * <p>Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public final class Sweep {
    private final @Nullable SharedWork shared;
    private final ProgressListener listener;
    private final RowSink sink;

    private Sweep(@Nullable SharedWork shared, ProgressListener listener, RowSink sink) {
        this.shared = shared;
        this.listener = listener;
        this.sink = sink;
    }

    /**
     * In the calling thread.
     *
     * @return the sweep
     */
    public static Sweep withDefaults() {
        return new Sweep(null, ProgressListener.none(), RowSink.none());
    }

    /**
     * The same with its cases worked out on an executor; the calling thread helps and waits.
     *
     * @param value the executor
     * @return the new sweep
     */
    public Sweep withExecutor(Executor value) {
        Violations.required("executor", value);
        return new Sweep(new SharedWork(value), listener, sink);
    }

    /**
     * The same with a listener that hears of each case and can end the sweep.
     *
     * @param value the listener
     * @return the new sweep
     */
    public Sweep withProgress(ProgressListener value) {
        Violations.required("progress", value);
        return new Sweep(shared, value, sink);
    }

    /**
     * The same with its rows handed to a sink as they come.
     *
     * @param value the sink
     * @return the new sweep
     */
    public Sweep withRows(RowSink value) {
        Violations.required("rows", value);
        return new Sweep(shared, listener, value);
    }

    /**
     * Computes the table.
     *
     * @param base the design in which the variables are set, one after the other
     * @param axes the variables with their values; usually one or two
     * @param evaluation what is computed
     * @return the rows, and whether they are all: there are fewer when the listener ended the sweep or the calling thread was
     *     interrupted
     * @throws org.lifeline.base.InvalidInputException if there is no axis
     */
    public SweepResult solve(LifelineDesign base, List<Axis> axes, Evaluation evaluation) {
        Violations.required("base", base);
        Violations.requiredAll("axes", axes);
        Violations.required("evaluation", evaluation);
        new Violations()
                .require(!axes.isEmpty(), "axes", GivenValue.text("[]"), InputRule.EMPTY, "variable")
                .throwIfAny();
        long total = 1;
        for (Axis a : axes) {
            total = Math.multiplyExact(total, a.values().size());
        }
        long n = total;
        List<StudyRow> rows = new ArrayList<>();
        OrderedWork.run(n, i -> row(base, i, axes, evaluation), shared, (i, row) -> {
            rows.add(row);
            sink.take(row);
            return listener.progress(i + 1, n);
        });
        return new SweepResult(rows, n);
    }

    private static StudyRow row(LifelineDesign base, long index, List<Axis> axes, Evaluation evaluation) {
        double[] inputs = new double[axes.size()];
        long rest = index;
        for (int k = axes.size() - 1; k >= 0; k--) {
            int size = axes.get(k).values().size();
            inputs[k] = axes.get(k).values().get((int) (rest % size));
            rest /= size;
        }
        try {
            LifelineDesign design = base;
            for (int k = 0; k < inputs.length; k++) {
                design = axes.get(k).variable().apply(design, inputs[k]);
            }
            return new StudyRow(index + 1, inputs, evaluation.evaluate(design), "");
        } catch (InvalidInputException | NoEquilibriumException | CaseFailure e) {
            return new StudyRow(index + 1, inputs, new double[0], CaseFailure.reason(e));
        }
    }
}
