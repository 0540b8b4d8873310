package org.lifeline.model.absorber;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.lifeline.base.InvalidInputException;
import org.lifeline.model.Connection;
import org.lifeline.model.absorber.AbsorberCondition.Kind;

/** What may be stated of a wet, cold or hot absorber, and which pair of forces follows from it. */
@SuppressWarnings("NullAway") // what refuses null is tested with null
class AbsorberConditionTest {
    private static final DeploymentForce LOW = DeploymentForce.CLEARANCE;
    private static final DeploymentForce HIGH = DeploymentForce.MAXIMUM;

    private static AbsorberCondition.Builder of(Kind kind, double low, double high) {
        return AbsorberCondition.builder(kind)
                .clearanceForce(low)
                .maximumForce(high)
                .source("report");
    }

    private static Connection.AbsorberBuilder absorber(double low, double high) {
        return Connection.PersonalAbsorber.builder()
                .clearanceForce(low)
                .maximumForce(high)
                .maximumExtension(1.2)
                .initialStiffness(1e5)
                .stopStiffness(2e5);
    }

    private static Connection lanyard(Connection.AbsorberBuilder absorber) {
        return Connection.lanyard(1.8, absorber.build());
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, -1, Double.NaN, Double.POSITIVE_INFINITY, 1e10})
    void forcesAreNamedWithTheirRule(double force) {
        assertThatThrownBy(() -> of(Kind.WET, force, 4000).build())
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("clearanceForce");
        assertThatThrownBy(() -> of(Kind.WET, 3000, force).build())
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("maximumForce");
    }

    @Test
    void whatIsWrongIsListedTogether() {
        assertThatThrownBy(() ->
                        of(Kind.WET, 4000, 3999).temperature(-300).source(" ").build())
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("maximumForce")
                .hasMessageContaining("must not be lower than clearanceForce")
                .hasMessageContaining("-300")
                .hasMessageContaining("may be wet at any temperature")
                .hasMessageContaining("forces without source are nobody's");
        assertThatThrownBy(() -> AbsorberCondition.builder(Kind.COLD).build())
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("clearanceForce")
                .hasMessageContaining("maximumForce")
                .hasMessageContaining("source");
        assertThatThrownBy(
                        () -> of(Kind.COLD, 3000, 4000).temperature(Double.NaN).build())
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("temperature");
        assertThatThrownBy(() -> AbsorberCondition.builder(null))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("condition");
        assertThat(of(Kind.WET, 4000, 4000).build().maximumForce()).isEqualTo(4000);
    }

    @Test
    void aConditionIsStatedOnce() {
        AbsorberCondition wet = of(Kind.WET, 3000, 4000).build();
        assertThatThrownBy(
                        () -> absorber(3000, 6000).condition(wet).condition(wet).build())
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("condition[1]")
                .hasMessageContaining("wet")
                .hasMessageContaining("must not be stated twice");
        assertThatThrownBy(() -> absorber(3000, 6000).condition(null).build())
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("condition[0]");
    }

    @Test
    void coldUpToItsTemperatureHotFromItsOnWetAlways() {
        AbsorberCondition cold = of(Kind.COLD, 3000, 7000).temperature(-10).build();
        AbsorberCondition hot = of(Kind.HOT, 2000, 5000).temperature(35).build();
        AbsorberCondition wet = of(Kind.WET, 2500, 5000).build();
        for (double t : new double[] {-40, -10, -9.999, 0, 34.999, 35, 60}) {
            assertThat(cold.appliesAt(t)).as("cold at " + t).isEqualTo(t <= -10);
            assertThat(hot.appliesAt(t)).as("hot at " + t).isEqualTo(t >= 35);
            assertThat(wet.appliesAt(t)).isTrue();
            assertThat(of(Kind.COLD, 3000, 7000).build().appliesAt(t)).isTrue();
        }
        assertThatThrownBy(() -> wet.appliesAt(Double.NaN)).isInstanceOf(InvalidInputException.class);
        assertThat(cold).hasToString("cold, 3000.0 to 7000.0 N, up to -10.0 °C (report)");
        assertThat(hot).hasToString("hot, 2000.0 to 5000.0 N, from 35.0 °C (report)");
    }

    @Test
    void theEnvelopeOfWhatAppliesIsTaken() {
        Connection c = lanyard(absorber(3200, 6000)
                .condition(of(Kind.HOT, 2000, 5000).temperature(35).build())
                .condition(of(Kind.WET, 2500, 5500).build())
                .condition(of(Kind.COLD, 3000, 7000).temperature(-10).build()));
        forces(c, -20, 2500, 7000);
        forces(c, -10, 2500, 7000);
        forces(c, 15, 2500, 6000);
        forces(c, 35, 2000, 6000);
        assertThat(c.curve(LOW).activationForce()).isEqualTo(2000);
        assertThat(c.curve(HIGH).activationForce()).isEqualTo(7000);
        assertThat(c.deployment().dry(LOW).activationForce()).isEqualTo(3200);
        assertThat(c.deployment().conditions().stream().map(AbsorberCondition::kind))
                .as("in the order of the kinds")
                .containsExactly(Kind.WET, Kind.COLD, Kind.HOT);
        assertThat(kind(c, LOW, -20)).isEqualTo("wet");
        assertThat(kind(c, HIGH, -20)).isEqualTo("cold");
        assertThat(kind(c, HIGH, 15)).isEqualTo("dry");
        assertThat(kind(c, LOW, 40)).isEqualTo("hot");
        // What is the same as in the dry does not count as another condition.
        Connection same =
                lanyard(absorber(3200, 6000).condition(of(Kind.WET, 3200, 6000).build()));
        assertThat(kind(same, LOW, 15)).isEqualTo("dry");
        assertThat(kind(same, HIGH, 15)).isEqualTo("dry");
        assertThatThrownBy(() -> same.curve(LOW, Double.NaN))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("temperature");
    }

    private static void forces(Connection c, double temperature, double low, double high) {
        // The same curve as that of an absorber whose pair of forces was set by hand, to the last digit.
        Connection byHand = lanyard(absorber(low, high));
        assertThat(c.curve(LOW, temperature)).isEqualTo(byHand.curve(LOW));
        assertThat(c.curve(HIGH, temperature)).isEqualTo(byHand.curve(HIGH));
    }

    private static String kind(Connection c, DeploymentForce side, double temperature) {
        return c.deployment()
                .condition(side, temperature)
                .map(k -> k.kind().label())
                .orElse("dry");
    }

    @Test
    void scaledForcesScaleEveryCondition() {
        Connection c = lanyard(absorber(3200, 6000)
                        .condition(of(Kind.COLD, 3000, 7000).temperature(-10).build()))
                .withForcesScaled(0.5)
                .withLength(2);
        assertThat(c.curve(HIGH, -20).activationForce()).isEqualTo(3500);
        assertThat(c.curve(HIGH, 20).activationForce()).isEqualTo(3000);
        AbsorberCondition cold = c.deployment().conditions().get(0);
        assertThat(cold.clearanceForce()).isEqualTo(1500);
        assertThat(cold.maximumForce()).isEqualTo(3500);
        assertThat(cold.temperature()).hasValue(-10);
        assertThat(cold.source()).isEqualTo("report");
        Connection brake = Connection.selfRetracting(
                0.7,
                absorber(2600, 4000).condition(of(Kind.WET, 2000, 4000).build()).build());
        assertThat(brake.curve(LOW, 15).activationForce()).isEqualTo(2000);
    }

    @Test
    void wordsNameWorkersOnlyWhereTheyDiffer() {
        AbsorberCondition cold = of(Kind.COLD, 3000, 7000).build();
        AbsorberCondition wet = of(Kind.WET, 3000, 7000).build();
        assertThat(AbsorberCondition.words(Map.of("A", cold), 1)).isEqualTo("cold");
        assertThat(AbsorberCondition.words(Map.of("A", cold), 2)).isEqualTo("A cold");
        Map<String, AbsorberCondition> two = new LinkedHashMap<>();
        two.put("A", cold);
        two.put("B", cold);
        assertThat(AbsorberCondition.words(two, 2)).isEqualTo("cold");
        two.put("B", wet);
        assertThat(AbsorberCondition.words(two, 2)).isEqualTo("A cold, B wet");
        assertThat(AbsorberCondition.words(Map.of(), 1)).isEmpty();
    }

    @Test
    void rangesCompareByValue() {
        LoadingCurve low = LoadingCurve.through(
                List.of(new LoadingCurve.Corner(0, 3000), new LoadingCurve.Corner(1, 3000)), 1e5, 1e5);
        LoadingCurve high = LoadingCurve.through(
                List.of(new LoadingCurve.Corner(0, 6000), new LoadingCurve.Corner(1, 6000)), 1e5, 1e5);
        DeploymentRange range = DeploymentRange.of(low, high);
        assertThat(range).isEqualTo(DeploymentRange.of(low, high)).hasSameHashCodeAs(DeploymentRange.of(low, high));
        assertThat(range.with(of(Kind.WET, 3000, 6000).build(), low, high)).isNotEqualTo(range);
        assertThat(range.toString()).contains(" to ").doesNotContain("@");
        assertThat(range.with(of(Kind.WET, 3000, 6000).build(), low, high).toString())
                .contains("; wet, 3000.0 to 6000.0 N (report)");
    }
}
