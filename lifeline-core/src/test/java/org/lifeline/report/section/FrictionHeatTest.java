package org.lifeline.report.section;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.EnergyBalance;
import org.lifeline.design.envelope.Designs;
import org.lifeline.model.Attachment;
import org.lifeline.model.Fall;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Passage;
import org.lifeline.model.Place;

/** The table of the heat of friction in ten steps against the heat that the analysis followed. */
class FrictionHeatTest {
    private static ArrestResult arrest(Passage passage) {
        LifelineDesign d = Designs.design(3, passage, Attachment.GRIPPED);
        Fall fall =
                Fall.builder("f").at(Place.of(2, 5)).faller(d.workers().get(0)).build();
        return EnergyBalance.withDefaults().withTemperature(15).solve(d.line(), fall);
    }

    /** Trapezoids over ten steps: what a reviewer adds up by hand comes to within some percent of the integral. */
    @Test
    void theStepsAddUpToTheHeatOfTheAnalysis() {
        for (double mu : new double[] {0.05, 0.12, 0.25}) {
            ArrestResult r = arrest(Passage.friction(mu));
            double total = FrictionHeat.of(r).total();
            assertThat(total).as("friction %s", mu).isPositive();
            assertThat(total)
                    .as("friction %s", mu)
                    .isCloseTo(r.energy().friction(), within(0.05 * r.energy().friction()));
        }
    }

    @Test
    void heatGrowsFromStepToStep() {
        List<FrictionHeat.Step> steps =
                FrictionHeat.of(arrest(Passage.friction(0.12))).steps();
        assertThat(steps).hasSize(FrictionHeat.STEPS + 1);
        assertThat(steps.get(0).force()).isZero();
        for (int k = 1; k < steps.size(); k++) {
            assertThat(steps.get(k).force()).isGreaterThan(steps.get(k - 1).force());
            for (int support : steps.get(k).heat().keySet()) {
                assertThat(FrictionHeat.of(steps.get(k).heat(), support))
                        .as("step %d, support %d", k, support)
                        .isGreaterThanOrEqualTo(FrictionHeat.of(steps.get(k - 1).heat(), support) - 1e-9);
            }
        }
    }

    @Test
    void theLastStepIsThePeak() {
        ArrestResult r = arrest(Passage.friction(0.12));
        List<FrictionHeat.Step> steps = FrictionHeat.of(r).steps();
        FrictionHeat.Step last = steps.get(steps.size() - 1);
        assertThat(last.force()).isCloseTo(r.lineLoad(), within(1e-9 * r.lineLoad()));
        for (int i : last.passed().keySet()) {
            double slipped = r.peak().supports().get(i).slip()
                    - r.before().supports().get(i).slip();
            assertThat(FrictionHeat.of(last.passed(), i)).isCloseTo(slipped, within(1e-12));
        }
    }

    @Test
    void withoutFrictionThereIsNoHeat() {
        assertThat(FrictionHeat.of(arrest(Passage.free())).total()).isZero();
        assertThat(FrictionHeat.of(arrest(Passage.clamped())).total()).isZero();
    }
}
