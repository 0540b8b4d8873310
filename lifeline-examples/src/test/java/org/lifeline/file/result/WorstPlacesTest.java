package org.lifeline.file.result;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import java.util.SplittableRandom;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Test;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.EnergyBalance;
import org.lifeline.analysis.state.AttachmentLimit;
import org.lifeline.examples.TestFiles;
import org.lifeline.model.Fall;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Place;
import org.lifeline.model.Worker;
import org.lifeline.model.absorber.DeploymentForce;

class WorstPlacesTest {
    private static LifelineDesign withoutFalls() {
        LifelineDesign d = TestFiles.design("demo-design.json").design();
        LifelineDesign.Builder b =
                LifelineDesign.builder(d.title()).line(d.line()).clearance(d.clearance());
        d.temperatures().forEach(b::temperature);
        d.workers().forEach(b::worker);
        return b.build();
    }

    @Test
    void everyWorkerHasAPlaceInEverySpan() {
        LifelineDesign design = withoutFalls();
        DesignRun run = DesignRun.of(design);
        assertThat(run.searched()).isTrue();
        for (Worker worker : design.workers()) {
            for (int span = 1; span <= design.line().spans(); span++) {
                int number = span;
                assertThat(run.design().falls())
                        .anyMatch(f -> design.line().spanOf(f.place()) == number
                                && f.fallers().contains(worker));
            }
        }
        assertThat(run.arrests())
                .filteredOn(a -> !a.attachmentLimit().equals(Optional.of(AttachmentLimit.HELD)))
                .hasSize(run.design().falls().size() * design.temperatures().size() * 2);
    }

    /** No random place on the line is worse by more than the 0.1 % to which worst places are found. */
    @Test
    void noOtherPlaceIsMuchWorse() {
        LifelineDesign design = withoutFalls();
        DesignRun run = DesignRun.of(design);
        long seed = 77;
        SplittableRandom random = new SplittableRandom(seed);
        for (int i = 0; i < 40; i++) {
            Worker worker = design.workers().get(random.nextInt(design.workers().size()));
            int span = 1 + random.nextInt(design.line().spans());
            Fall fall = Fall.builder("random")
                    .at(Place.of(span, design.line().run(span) * random.nextDouble(0.02, 0.98)))
                    .faller(worker)
                    .build();
            for (double t : design.temperatures()) {
                EnergyBalance balance =
                        EnergyBalance.withDefaults().withTemperature(t).withClearance(design.clearance());
                ArrestResult load = balance.withSide(DeploymentForce.MAXIMUM).solve(design.line(), fall);
                ArrestResult distance =
                        balance.withSide(DeploymentForce.CLEARANCE).solve(design.line(), fall);
                String what = "seed " + seed + ", " + fall.place();
                covered(run, load, ArrestResult::endAnchorLoad, what);
                covered(run, load, ArrestResult::maximumTension, what);
                covered(run, load, ArrestResult::arrestForce, what);
                covered(run, distance, r -> r.clearance().requiredBelowLine(), what);
            }
        }
    }

    private static void covered(
            DesignRun run, ArrestResult other, ToDoubleFunction<ArrestResult> quantity, String what) {
        double most = run.arrests().stream().mapToDouble(quantity).max().orElseThrow();
        assertThat(quantity.applyAsDouble(other)).as(what).isLessThanOrEqualTo(1.001 * most);
    }

    @Test
    void namedFallsAreNotSearched() {
        DesignRun run = DesignRun.of(TestFiles.design("demo-design.json").design());
        assertThat(run.searched()).isFalse();
        assertThat(run.design().falls()).hasSize(2);
    }
}
