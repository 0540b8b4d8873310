package org.lifeline.model.incident;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.lifeline.base.InvalidInputException;
import org.lifeline.model.Attachment;
import org.lifeline.model.Fall;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Place;
import org.lifeline.model.Worker;
import org.lifeline.testing.PlainParts;

/** A second fall and a rescuer as members of a design: what is taken, what is refused, and what stays as it is. */
class SecondFallTest {
    private static Worker worker(String id, Attachment attachment) {
        return Worker.builder(id)
                .mass(100)
                .walkingLevel(10.5)
                .attachment(attachment)
                .connection(PlainParts.lanyard(3200, 6000, 1.2))
                .build();
    }

    private static LifelineDesign.Builder design() {
        Worker a = worker("A", Attachment.GRIPPED);
        return LifelineDesign.builder("two")
                .line(PlainParts.span(PlainParts.cable(0.5, 4e6), 10, 12, 1500))
                .worker(a)
                .worker(worker("B", Attachment.GRIPPED))
                .worker(worker("C", Attachment.FREE_RUNNING))
                .fall(Fall.builder("of A").at(Place.of(1, 4)).faller(a).build());
    }

    @Test
    void delaysAreSortedAndThoseOfTheFirstSecond() {
        assertThat(new SecondFall("B", List.of(0.5, 0.0, 1.0)).delays()).containsExactly(0.0, 0.5, 1.0);
        assertThat(SecondFall.of("B").delays())
                .isEqualTo(SecondFall.USUAL)
                .first()
                .isEqualTo(0.0);
        assertThat(SecondFall.USUAL.get(SecondFall.USUAL.size() - 1)).isEqualTo(SecondFall.LATEST);
    }

    @ParameterizedTest
    @ValueSource(doubles = {-0.1, 1.001, Double.NaN, Double.POSITIVE_INFINITY})
    void aDelayOutsideTheFirstSecondIsRefused(double delay) {
        assertThatThrownBy(() -> new SecondFall("B", List.of(0.2, delay)))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("delays[1]")
                .hasMessageContaining("must lie from 0 to 1.0 s");
    }

    @Test
    void noDelaysTwiceTheSameAndTooManyAreRefused() {
        assertThatThrownBy(() -> new SecondFall("B", List.of()))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("at least one delay");
        assertThatThrownBy(() -> new SecondFall("B", List.of(0.2, 0.2)))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("delays[1]")
                .hasMessageContaining("must not be used twice");
        assertThatThrownBy(() -> new SecondFall("B", Collections.nCopies(21, 0.2)))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("must be at most 20");
        assertThatThrownBy(() -> SecondFall.of(" "))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("worker");
    }

    @Test
    void theDesignKnowsTheFurtherWorker() {
        assertThatThrownBy(() -> design().secondFall(SecondFall.of("Z")).build())
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("secondFall.worker: Z")
                .hasMessageContaining("is not among the workers of the design");
        assertThatThrownBy(() -> design().secondFall(SecondFall.of("A")).build())
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("secondFall.worker: A")
                .hasMessageContaining("takes part in every fall already");
        assertThatThrownBy(() -> design().secondFall(SecondFall.of("C")).build())
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("secondFall.worker: C")
                .hasMessageContaining("attached to the line in the same way");
        assertThatThrownBy(() -> design().rescuerMass(3).build())
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("rescuerMass");
    }

    @Test
    void whatIsNotStatedLeavesADesignAsItWas() {
        LifelineDesign plain = design().build();
        assertThat(plain.secondFall()).isEmpty();
        assertThat(plain.rescuerMass()).isEmpty();
        assertThat(plain.canonicalForm().entries())
                .noneMatch(e -> e.path().startsWith("secondFall") || e.path().startsWith("rescuer"));
        LifelineDesign stated =
                design().secondFall(SecondFall.of("B")).rescuerMass(90).build();
        assertThat(stated).isNotEqualTo(plain).isEqualTo(stated.toBuilder().build());
        assertThat(stated.canonicalForm().fingerprint())
                .isNotEqualTo(plain.canonicalForm().fingerprint());
        assertThat(stated.canonicalForm().entries()).anyMatch(e -> e.path().equals("rescuerMass"));
        assertThat(stated.canonicalForm().entries()).anyMatch(e -> e.path().startsWith("secondFall.delay"));
        // A search moves the fall of one worker alone, be it the further one.
        Worker b = stated.workers().get(1);
        LifelineDesign other = stated.withFalls(
                List.of(Fall.builder("of B").at(Place.of(1, 4)).faller(b).build()));
        assertThat(other.secondFall()).isEqualTo(stated.secondFall());
    }
}
