package org.lifeline.design.variable;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.lifeline.analysis.Statics;
import org.lifeline.base.Interval;
import org.lifeline.base.NoEquilibriumException;
import org.lifeline.base.Point;
import org.lifeline.model.Connection;
import org.lifeline.model.Lifeline;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Stiffness;
import org.lifeline.model.Support;
import org.lifeline.model.Worker;
import org.lifeline.model.absorber.LoadingCurve;
import org.lifeline.model.cable.Cable;

/** Ends that are built in one place yield to every pretension anew: 6 kN on 50 kN/m moves one by 0.12 m, 2 kN by 0.04 m. */
class YieldingVariableTest {
    private static final double STIFFNESS = 50e3;
    private static final DesignVariable PRETENSION = DesignVariables.pretension(Interval.of(500, 8000));

    private static Lifeline built(double pretension, double stiffness) {
        return Lifeline.builder()
                .cable(Cable.builder().massPerLength(0.4).axialStiffness(4e6).build())
                .support(Support.end("a", Point.of(0, 0, 9)).withStiffness(Stiffness.alongX(stiffness)))
                .support(Support.end("b", Point.of(20, 0, 9)))
                .pretension(pretension)
                .build();
    }

    private static LifelineDesign design(double pretension) {
        return LifelineDesign.builder("yielding end")
                .line(Statics.withYieldedSupports(built(pretension, STIFFNESS)))
                .worker(Worker.builder("A")
                        .mass(100)
                        .walkingLevel(7.5)
                        .connection(Connection.plainLanyard(1.5, LoadingCurve.spring(50e3)))
                        .build())
                .build();
    }

    private static double x(LifelineDesign design) {
        return design.line().supports().get(0).position().x();
    }

    @Test
    void aPretensionMovesTheEndsThatYield() {
        LifelineDesign design = design(6000);
        assertThat(x(design)).isCloseTo(6000 / STIFFNESS, within(1e-4));
        for (double other : new double[] {2000, 6000, 7500}) {
            LifelineDesign changed = PRETENSION.yielding().apply(design, other);
            double horizontal = Statics.withDefaults()
                    .solve(changed.line(), List.of())
                    .span(1)
                    .horizontalTension();
            assertThat(x(changed))
                    .as("an end of one spring, by its force over its stiffness")
                    .isCloseTo(horizontal / STIFFNESS, within(1e-8));
            assertThat(x(changed))
                    .as("as if it had been installed so from the start")
                    .isCloseTo(x(design(other)), within(1e-8));
            assertThat(changed.line().installed().value()).isEqualTo(other);
        }
        assertThat(x(PRETENSION.apply(design, 2000))).as("built elsewhere").isEqualTo(x(design));
    }

    /** One variable after another: the second starts from the built place again. */
    @Test
    void variablesFollowOneAnother() {
        LifelineDesign design = design(6000);
        DesignVariable stiffness =
                DesignVariables.supportStiffness("a", Interval.of(1e4, 1e6)).yielding();
        LifelineDesign both = stiffness.after(PRETENSION.yielding(), 3000).apply(design, 1e5);
        Lifeline want = Statics.withYieldedSupports(built(3000, 1e5));
        assertThat(x(both)).isCloseTo(want.supports().get(0).position().x(), within(1e-8));
        assertThat(stiffness.name()).isEqualTo("stiffness of a");
        assertThat(PRETENSION.yielding().bounds()).isEqualTo(PRETENSION.bounds());
    }

    @Test
    void anEndThatFindsNoPlaceIsToldOf() {
        DesignVariable soft =
                DesignVariables.supportStiffness("a", Interval.of(1, 1e6)).yielding();
        LifelineDesign design = design(6000);
        assertThatThrownBy(() -> soft.apply(design, 100)).isInstanceOf(NoEquilibriumException.class);
    }
}
