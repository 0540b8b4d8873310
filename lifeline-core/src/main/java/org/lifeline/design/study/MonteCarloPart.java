package org.lifeline.design.study;

import java.util.List;
import org.lifeline.base.GivenValue;
import org.lifeline.base.InputRule;
import org.lifeline.base.Violations;
import org.lifeline.design.study.partial.CaseRange;
import org.lifeline.design.study.partial.StudyIdentity;
import org.lifeline.design.study.partial.StudyPartial;
import org.lifeline.internal.numeric.OrderedWork;
import org.lifeline.model.LifelineDesign;

/**
 * Some of the cases of a Monte Carlo study, for one machine of several; see {@link MonteCarlo#withCases}.
 *
 * <p>Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public final class MonteCarloPart {
    private static final int BATCH = 256; // cases worked out at a time by one thread

    private final MonteCarlo study;
    private final CaseRange cases;
    private final String name;

    MonteCarloPart(MonteCarlo study, CaseRange cases, String name) {
        this.study = study;
        this.cases = cases;
        this.name = name;
    }

    /**
     * The same with a name for the study in place of the fingerprint of the design: parts of different names are not put
     * together.
     *
     * @param value the name
     * @return the new part
     */
    public MonteCarloPart ofStudy(String value) {
        Violations.required("value", value);
        return new MonteCarloPart(study, cases, value);
    }

    /**
     * Works the cases out.
     *
     * @param base the design in which the variables are set, one after the other
     * @param variables the uncertain variables
     * @param evaluation what is computed
     * @return the part of the study; of the cases done so far when the listener ended it or the calling thread was
     *     interrupted
     * @throws org.lifeline.base.InvalidInputException if there is no variable
     */
    public StudyPartial solve(LifelineDesign base, List<UncertainVariable> variables, Evaluation evaluation) {
        Violations.required("base", base);
        Violations.requiredAll("variables", variables);
        Violations.required("evaluation", evaluation);
        new Violations()
                .require(!variables.isEmpty(), "variables", GivenValue.text("[]"), InputRule.EMPTY, "variable")
                .throwIfAny();
        String of = name.isEmpty() ? base.fingerprint().toString() : name;
        StudyIdentity identity = StudyStatistics.identity(study.seed(), of, variables, evaluation.responses());
        StudyStatistics statistics = new StudyStatistics(identity, cases.first());
        long batches = (cases.size() + BATCH - 1) / BATCH;
        MonteCarlo.Job job = new MonteCarlo.Job(base, List.copyOf(variables), evaluation);
        OrderedWork.run(batches, b -> batch(job, b), study.shared(), (b, rows) -> {
            for (StudyRow row : rows) {
                statistics.add(row);
                study.sink().take(row);
            }
            return study.listener().progress(Math.min(cases.size(), (b + 1) * BATCH), cases.size());
        });
        return statistics.partial();
    }

    /** The rows of a batch, numbered from 0; the last one may be shorter. */
    private StudyRow[] batch(MonteCarlo.Job job, long number) {
        long offset = number * BATCH;
        StudyRow[] rows = new StudyRow[(int) Math.min(BATCH, cases.size() - offset)];
        for (int i = 0; i < rows.length; i++) {
            OrderedWork.stopIfInterrupted();
            rows[i] = study.row(job, cases.first() + offset + i);
        }
        return rows;
    }
}
