package org.lifeline.analysis.state;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.lifeline.analysis.LineEquilibrium;
import org.lifeline.analysis.Statics;
import org.lifeline.base.Convergence;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.NoEquilibriumException;
import org.lifeline.model.Attachment;
import org.lifeline.model.Installed;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Place;
import org.lifeline.samples.SampleDesigns;

/** An outcome is a result or one of the two failures that an analysis may have; any other fault goes through. */
class OutcomeTest {
    private static final Lifeline LINE = SampleDesigns.single(SampleDesigns.steel(), Installed.pretension(1500));

    private static LineEquilibrium solve(int span) {
        return Statics.withDefaults()
                .solve(LINE, List.of(new AppliedLoad(Place.of(span, 5), Attachment.GRIPPED, 1000)));
    }

    @Test
    void aResultIsHandedOn() {
        Outcome<LineEquilibrium> o = Outcome.of(() -> solve(1));
        assertThat(o.result()).isPresent();
        assertThat(o.orElseThrow().firstTension()).isEqualTo(solve(1).firstTension());
        assertThat(o.invalidInput()).isEmpty();
        assertThat(o.noEquilibrium()).isEmpty();
    }

    @Test
    void badInputIsKeptAndThrownAgain() {
        Outcome<LineEquilibrium> o = Outcome.of(() -> solve(7));
        assertThat(o.result()).isEmpty();
        assertThat(o.noEquilibrium()).isEmpty();
        InvalidInputException kept = o.invalidInput().orElseThrow();
        assertThatThrownBy(o::orElseThrow).isSameAs(kept);
    }

    @Test
    void aStateThatIsNotFoundIsKeptAndThrownAgain() {
        // A failure as the solver throws it: one that carries how far it came.
        NoEquilibriumException failure = failure();
        Outcome<String> o = Outcome.of(() -> {
            throw failure;
        });
        assertThat(o.result()).isEmpty();
        assertThat(o.invalidInput()).isEmpty();
        assertThat(o.noEquilibrium()).containsSame(failure);
        assertThatThrownBy(o::orElseThrow).isSameAs(failure);
    }

    private static NoEquilibriumException failure() {
        return new NoEquilibriumException("a line", 0.5, new Convergence(12, 1e-3, 1e-9));
    }

    @Test
    void anyOtherFaultGoesThrough() {
        IllegalStateException fault = new IllegalStateException("a fault of the program");
        assertThatThrownBy(() -> Outcome.of(() -> {
                    throw fault;
                }))
                .isSameAs(fault);
    }

    @Test
    @SuppressWarnings("NullAway")
    void withoutAnAnalysisThereIsNoOutcome() {
        assertThatThrownBy(() -> Outcome.of(null))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("analysis");
    }
}
