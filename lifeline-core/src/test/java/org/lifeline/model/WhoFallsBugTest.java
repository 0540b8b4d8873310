package org.lifeline.model;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.lifeline.base.Refusal;
import org.lifeline.model.absorber.LoadingCurve;
import org.lifeline.testing.PlainParts;

/** What falls is what is judged: a fall of another worker than those of the design is refused. */
class WhoFallsBugTest {
    private static Worker worker(String id, double mass) {
        return Worker.builder(id)
                .mass(mass)
                .walkingLevel(4)
                .connection(Connection.plainLanyard(1.8, LoadingCurve.spring(5e4)))
                .build();
    }

    private static LifelineDesign.Builder design(Fall fall) {
        return LifelineDesign.builder("d")
                .line(PlainParts.span(PlainParts.cable(0.5, 5e6), 10, 5, 1000))
                .worker(worker("A", 100))
                .fall(fall);
    }

    @Test
    void aHeavierWorkerOfTheSameIdIsRefused() {
        Fall fall =
                Fall.builder("f").at(Place.of(1, 3)).faller(worker("A", 300)).build();

        assertThat(Refusal.of(() -> design(fall).build()))
                .containsExactly("fall[0].faller[0]: A, 300.0 kg: has other data than the worker of this id in the"
                        + " design, 100.0 kg");
    }

    @Test
    void strangersAreRefused() {
        Fall fall = Fall.builder("f")
                .at(Place.of(1, 3))
                .faller(worker("A", 100))
                .faller(worker("B", 100))
                .hanging(worker("C", 100), Place.of(1, 5))
                .build();

        assertThat(Refusal.of(() -> design(fall).build()))
                .containsExactly(
                        "fall[0].faller[1]: B: is not among the workers of the design",
                        "fall[0].hanging[0].worker: C: is not among the workers of the design");
    }

    @Test
    void anEqualWorkerIsTheSame() {
        Fall fall =
                Fall.builder("f").at(Place.of(1, 3)).faller(worker("A", 100)).build();

        assertThat(design(fall).build().falls()).containsExactly(fall);
    }

    @Test
    void replacedWorkersAreReplacedEverywhere() {
        Fall fall =
                Fall.builder("f").at(Place.of(1, 3)).faller(worker("A", 100)).build();
        LifelineDesign heavy = design(fall).build().withWorkers(w -> w.withMass(130));

        assertThat(heavy.workers().get(0).mass()).isEqualTo(130);
        assertThat(heavy.falls().get(0).fallers()).isEqualTo(heavy.workers());
    }
}
