package org.lifeline.analysis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.lifeline.analysis.state.AppliedLoad;
import org.lifeline.analysis.state.Outcome;
import org.lifeline.base.Convergence;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.NoEquilibriumException;
import org.lifeline.base.Point;
import org.lifeline.model.Attachment;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Place;
import org.lifeline.model.cable.Cable;

class OutcomeTest {
    private static final Lifeline LINE = Lifeline.builder()
            .cable(Cable.builder().massPerLength(0.4).axialStiffness(3e6).build())
            .endAnchor("north", Point.of(0, 0, 12))
            .endAnchor("south", Point.of(12, 0, 12))
            .pretension(1500)
            .build();

    @Test
    void aResult() {
        Outcome<LineEquilibrium> o = Statics.withDefaults().attempt(LINE, List.of());
        assertThat(o.result()).isPresent();
        assertThat(o.orElseThrow()).isSameAs(o.result().orElseThrow());
        assertThat(o.invalidInput()).isEmpty();
        assertThat(o.noEquilibrium()).isEmpty();
    }

    @Test
    void anInputThatCannotBeUsed() {
        Outcome<LineEquilibrium> o = Statics.withDefaults()
                .attempt(LINE, List.of(new AppliedLoad(Place.of(2, 3), Attachment.GRIPPED, 1000)));
        assertThat(o.result()).isEmpty();
        assertThat(o.invalidInput().orElseThrow().violations().get(0).path()).isEqualTo("loads[0].place.span");
        assertThatThrownBy(o::orElseThrow).isInstanceOf(InvalidInputException.class);
    }

    @Test
    void aLostEquilibriumAndAFault() {
        NoEquilibriumException lost = new NoEquilibriumException(
                "span 1", new NoEquilibriumException.Reached(0.5, 700), new Convergence(3, 1, 1e-11));
        Outcome<String> o = Outcome.of(() -> {
            throw lost;
        });
        assertThat(o.noEquilibrium().orElseThrow().load()).hasValue(700);
        assertThatThrownBy(o::orElseThrow).isSameAs(lost);
        assertThatThrownBy(() -> Outcome.of(() -> {
                    throw new IllegalStateException("fault");
                }))
                .isInstanceOf(IllegalStateException.class);
    }
}
