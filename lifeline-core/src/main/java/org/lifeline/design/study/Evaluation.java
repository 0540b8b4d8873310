package org.lifeline.design.study;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.EnergyBalance;
import org.lifeline.base.GivenValue;
import org.lifeline.base.InputRule;
import org.lifeline.base.Violations;
import org.lifeline.design.criteria.Criterion;
import org.lifeline.design.envelope.Extremes;
import org.lifeline.design.envelope.Quantity;
import org.lifeline.design.envelope.WorstCases;
import org.lifeline.model.Fall;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.absorber.DeploymentForce;

/**
 * What is computed in each case of a study. Must be a pure function of the design; it is called from several threads.
 *
 * <p>Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public final class Evaluation {
    private final List<Response> responses;
    private final Function function;

    /**
     * Computes the responses of a design.
     *
     * @since 1.0.0
     */
    @FunctionalInterface
    public interface Function {
        /**
         * The responses of a design.
         *
         * @param design the design
         * @return one value for each response, each [unit of the response]; NaN where a design has none
         */
        double[] of(LifelineDesign design);
    }

    private Evaluation(List<Response> responses, Function function) {
        this.responses = List.copyOf(responses);
        this.function = function;
        new Violations()
                .require(!responses.isEmpty(), "responses", GivenValue.text("[]"), InputRule.EMPTY, "response")
                .throwIfAny();
    }

    /**
     * An evaluation of the caller's own. A case fails where it throws {@link org.lifeline.base.InvalidInputException} or
     * {@link org.lifeline.base.NoEquilibriumException}; anything else that it throws ends the study and is thrown.
     *
     * @param responses what is computed
     * @param function how; gives one value for each response
     * @return the evaluation
     * @throws org.lifeline.base.InvalidInputException if there is no response
     */
    public static Evaluation of(List<Response> responses, Function function) {
        Violations.requiredAll("responses", responses);
        Violations.required("function", function);
        return new Evaluation(responses, function);
    }

    /**
     * One response of the caller's own.
     *
     * @param response what is computed
     * @param function how
     * @return the evaluation
     */
    public static Evaluation ofOne(Response response, ToDoubleFunction<LifelineDesign> function) {
        Violations.required("response", response);
        Violations.required("function", function);
        return new Evaluation(List.of(response), d -> new double[] {function.applyAsDouble(d)});
    }

    /**
     * The worst values of quantities over an envelope, or over the stated falls.
     *
     * @param analysis the analysis that gives the worst cases
     * @param quantities the quantities
     * @return the evaluation; a case some of whose arrests cannot be computed fails
     */
    public static Evaluation worst(WorstCases analysis, List<Quantity> quantities) {
        Violations.required("analysis", analysis);
        Violations.requiredAll("quantities", quantities);
        return new Evaluation(
                quantities.stream().map(q -> new Response(q.key(), q.unit())).toList(), d -> {
                    Extremes e = covered(analysis.extremes(d));
                    return quantities.stream()
                            .mapToDouble(q -> e.of(q).map(x -> x.value()).orElse(Double.NaN))
                            .toArray();
                });
    }

    /**
     * Ratios of demand to capacity over an envelope, or over the stated falls.
     *
     * @param analysis the analysis that gives the worst cases
     * @param criteria the criteria
     * @return the evaluation; a case some of whose arrests cannot be computed fails
     */
    public static Evaluation ratios(WorstCases analysis, List<Criterion> criteria) {
        Violations.required("analysis", analysis);
        Violations.requiredAll("criteria", criteria);
        return new Evaluation(
                criteria.stream().map(c -> new Response(c.id(), "-")).toList(), d -> {
                    Extremes e = covered(analysis.extremes(d));
                    return criteria.stream()
                            .mapToDouble(c -> c.check(e).ratio())
                            .toArray();
                });
    }

    private static Extremes covered(Extremes e) {
        if (!e.failures().isEmpty()) {
            throw new CaseFailure(e.failures().get(0).toString());
        }
        if (!e.coversEverything()) {
            throw new CaseFailure("its analysis was ended early");
        }
        return e;
    }

    /**
     * One arrest: the first fall of the design at its first temperature in service, on one side of the force range. The
     * cheapest evaluation, for studies of very many cases.
     *
     * @param side side of the force range
     * @param quantities what is read off the arrest
     * @return the evaluation
     */
    public static Evaluation firstFall(DeploymentForce side, List<Quantity> quantities) {
        Violations.required("side", side);
        Violations.requiredAll("quantities", quantities);
        return new Evaluation(
                quantities.stream().map(q -> new Response(q.key(), q.unit())).toList(), d -> {
                    if (d.falls().isEmpty()) {
                        throw new CaseFailure("the design states no fall");
                    }
                    Fall fall = d.falls().get(0);
                    ArrestResult r = EnergyBalance.withDefaults()
                            .withTemperature(d.temperatures().get(0))
                            .withSide(side)
                            .withClearance(d.clearance())
                            .solve(d.line(), fall);
                    return quantities.stream()
                            .mapToDouble(q -> q.value(r, d.modelFactors()))
                            .toArray();
                });
    }

    /**
     * This evaluation and another one in each case.
     *
     * @param other the other
     * @return the evaluation with the responses of both
     */
    public Evaluation and(Evaluation other) {
        Violations.required("other", other);
        List<Response> both = new ArrayList<>(responses);
        both.addAll(other.responses);
        return new Evaluation(both, d -> {
            double[] a = function.of(d);
            double[] b = other.function.of(d);
            double[] all = Arrays.copyOf(a, a.length + b.length);
            System.arraycopy(b, 0, all, a.length, b.length);
            return all;
        });
    }

    /**
     * What is computed.
     *
     * @return the responses; unmodifiable
     */
    public List<Response> responses() {
        return responses;
    }

    double[] evaluate(LifelineDesign design) {
        double[] values = function.of(design);
        if (values.length != responses.size()) {
            throw new IllegalStateException(
                    "the evaluation gave " + values.length + " values for " + responses.size() + " responses");
        }
        return values;
    }
}
