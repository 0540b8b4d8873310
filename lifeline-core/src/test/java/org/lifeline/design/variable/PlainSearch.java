package org.lifeline.design.variable;

import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.lifeline.base.Interval;
import org.lifeline.design.criteria.CheckedQuantity;
import org.lifeline.design.criteria.Criterion;
import org.lifeline.design.envelope.Extremes;
import org.lifeline.design.envelope.WorstCases;
import org.lifeline.model.Connection;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Worker;
import org.lifeline.model.absorber.LoadingCurve;
import org.lifeline.testing.PlainParts;

/**
 * A search whose answer is known in closed form: a line of one level span of 8 m, judged by quantities of the design alone, so
 * that no arrest has to be solved.
 */
final class PlainSearch {
    /** Nothing is computed: quantities of the design itself are all that can be judged. */
    static final WorstCases NOTHING = design -> Extremes.ofCases(design, List.of());

    static final LifelineDesign BASE = LifelineDesign.builder("plain")
            .line(PlainParts.span(PlainParts.cable(0.5, 5e6).withBreakingStrength(5e4), 8, 12, 1500))
            .worker(Worker.builder("A")
                    .mass(100)
                    .walkingLevel(11)
                    .connection(Connection.plainLanyard(1.8, LoadingCurve.spring(5e4)))
                    .build())
            .build();

    private PlainSearch() {}

    /** The span at most this long [m]. */
    static Criterion span(double most) {
        return Criterion.stated("span", CheckedQuantity.SPAN_LENGTH, most, "test");
    }

    static FeasibleSearch search(Criterion... criteria) {
        return FeasibleSearch.withCriteria(List.of(criteria)).withAnalysis(NOTHING);
    }

    /** A variable that makes the span as long as a function of it says [m]. */
    static DesignVariable run(Interval bounds, DoubleUnaryOperator length) {
        DesignVariable span = DesignVariables.spanLength(1, Interval.of(1, 100));
        return DesignVariable.of("v", "-", bounds, (d, v) -> span.apply(d, length.applyAsDouble(v)));
    }
}
