package org.lifeline.design.study.partial;

import java.util.List;
import org.lifeline.base.GivenValue;
import org.lifeline.base.InputRule;
import org.lifeline.base.Violations;

/**
 * What makes two parts belong to one study.
 *
 * <p>Immutable and thread-safe.
 *
 * @param seed seed of all draws
 * @param study name of the study: the fingerprint of its design, unless the caller gives another
 * @param variables the uncertain variables with unit and distribution, in words
 * @param responses the responses with unit
 * @since 1.0.0
 */
public record StudyIdentity(long seed, String study, List<String> variables, List<String> responses) {
    /**
     * Copies the lists.
     *
     * @param seed seed of all draws
     * @param study name of the study
     * @param variables the variables, at least one
     * @param responses the responses, at least one
     * @throws org.lifeline.base.InvalidInputException if there is no variable or no response
     */
    public StudyIdentity {
        Violations.required("study", study);
        Violations.requiredAll("variables", variables);
        Violations.requiredAll("responses", responses);
        variables = List.copyOf(variables);
        responses = List.copyOf(responses);
        new Violations()
                .require(!variables.isEmpty(), "variables", GivenValue.text("[]"), InputRule.EMPTY, "variable")
                .require(!responses.isEmpty(), "responses", GivenValue.text("[]"), InputRule.EMPTY, "response")
                .throwIfAny();
    }

    /** Refuses another study, saying what differs. */
    void requireSame(StudyIdentity other) {
        new Violations()
                .require(seed == other.seed, "seed", GivenValue.count(other.seed), InputRule.NOT_THAT_OF_STUDY, seed)
                .require(
                        study.equals(other.study),
                        "study",
                        GivenValue.text(other.study),
                        InputRule.NOT_THAT_OF_STUDY,
                        study)
                .require(
                        variables.equals(other.variables),
                        "variables",
                        GivenValue.text(other.variables.toString()),
                        InputRule.NOT_THOSE_OF_STUDY,
                        variables)
                .require(
                        responses.equals(other.responses),
                        "responses",
                        GivenValue.text(other.responses.toString()),
                        InputRule.NOT_THOSE_OF_STUDY,
                        responses)
                .throwIfAny();
    }
}
