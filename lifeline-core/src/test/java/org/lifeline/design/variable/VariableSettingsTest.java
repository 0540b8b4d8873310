package org.lifeline.design.variable;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.lifeline.base.Interval;
import org.lifeline.base.InvalidInputException;
import org.lifeline.design.envelope.Designs;
import org.lifeline.model.Attachment;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Passage;

/** Variables outside what they can mean, and what a change leaves as it was. */
class VariableSettingsTest {
    private static final LifelineDesign DESIGN =
            Designs.design(2, Passage.friction(0.12), Attachment.GRIPPED).toBuilder()
                    .workingFloor(10.9)
                    .build();
    private static final Interval ANY = Interval.of(0.1, 1e6);

    private static List<DesignVariable> variables() {
        return List.of(
                DesignVariables.pretension(ANY),
                DesignVariables.initialSag(1, ANY),
                DesignVariables.spanLength(1, ANY),
                DesignVariables.spanLengths(ANY),
                DesignVariables.anchorCapacity(ANY),
                DesignVariables.lanyardLength(ANY),
                DesignVariables.workerMass(ANY),
                DesignVariables.axialStiffness(ANY),
                DesignVariables.breakingStrength(ANY));
    }

    @ParameterizedTest
    @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY, -1, 0})
    void valuesThatMakeNoDesignAreRefused(double value) {
        for (DesignVariable each : variables()) {
            if (value == 0 && each.name().equals("length of the connecting subsystem")) {
                continue; // a worker may hook on without a lanyard
            }
            assertThatThrownBy(() -> each.apply(DESIGN, value))
                    .as("%s = %s", each, value)
                    .isInstanceOf(InvalidInputException.class);
        }
    }

    @Test
    void aChangeLeavesTheRestAsItWas() {
        for (DesignVariable each : variables()) {
            double value = each.name().contains("stiffness")
                    ? 5e6
                    : each.unit().equals("N") ? 5000 : each.unit().equals("kg") ? 90 : 1.6;
            LifelineDesign changed = each.apply(DESIGN, value);
            assertThat(changed.workingFloor()).as(each.name()).hasValue(10.9);
            assertThat(changed.title()).isEqualTo(DESIGN.title());
            assertThat(changed.temperatures()).isEqualTo(DESIGN.temperatures());
            assertThat(changed.clearance().margin())
                    .isEqualTo(DESIGN.clearance().margin());
            assertThat(changed.modelFactors()).isEqualTo(DESIGN.modelFactors());
            assertThat(changed.workers()).hasSameSizeAs(DESIGN.workers());
            assertThat(changed.line().supports()).hasSameSizeAs(DESIGN.line().supports());
            assertThat(DESIGN.line().run(1)).as("the base is untouched").isEqualTo(12, within(1e-12));
        }
    }

    @ParameterizedTest
    @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY})
    void anAxisHasFiniteValues(double value) {
        DesignVariable v = DesignVariables.pretension(ANY);
        assertThatThrownBy(() -> new Axis(v, List.of(1.0, value)))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("values[1]");
        assertThatThrownBy(() -> new Axis(v, List.of())).hasMessageContaining("at least one");
        assertThatThrownBy(() -> Axis.even(v, 1)).hasMessageContaining("count");
    }

    @Test
    void anEvenAxisFollowsTheScale() {
        DesignVariable linear = DesignVariables.pretension(Interval.of(1, 100));
        assertThat(Axis.even(linear, 3).values()).containsExactly(1.0, 50.5, 100.0);
        List<Double> tens = Axis.even(linear.logarithmic(), 3).values();
        assertThat(tens.get(1)).isEqualTo(10, within(1e-9));
        assertThat(Axis.even(linear.within(Interval.of(1, 3)).whole(), 9).values())
                .containsExactly(1.0, 2.0, 3.0);
        assertThat(linear.whole().isWhole()).isTrue();
        assertThat(linear.isWhole()).isFalse();
        assertThat(linear.at(-1)).isEqualTo(1);
        assertThat(linear.at(2)).isEqualTo(100);
        assertThat(linear.toString()).isEqualTo("pretension [N]");
    }

    @Test
    void variablesThatCannotBeAreRefused() {
        assertThatThrownBy(() -> DesignVariable.of(" ", "N", ANY, (d, v) -> d)).hasMessageContaining("name");
        assertThatThrownBy(() -> DesignVariable.of("x", "N", Interval.of(0, 1), (d, v) -> d)
                        .logarithmic())
                .hasMessageContaining("bounds");
        DesignVariable bare = DesignVariable.of("count", "-", Interval.of(1, 2), (d, v) -> d);
        assertThat(bare.toString()).isEqualTo("count");
        assertThat(bare.apply(DESIGN, 2)).isSameAs(DESIGN);
        assertThat(bare.bounds()).isEqualTo(Interval.of(1, 2));
    }
}
