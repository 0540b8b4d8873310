package org.lifeline.design.envelope;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.EnergyBalance;
import org.lifeline.analysis.state.AttachmentLimit;
import org.lifeline.base.Direction;
import org.lifeline.base.Interval;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.Vector3;
import org.lifeline.base.Violation;
import org.lifeline.model.Attachment;
import org.lifeline.model.Fall;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.ModelFactors;
import org.lifeline.model.Passage;
import org.lifeline.model.Place;
import org.lifeline.model.absorber.DeploymentForce;

/** What is read off an arrest, with the model factors where they belong. */
class QuantityTest {
    private static final LifelineDesign DESIGN = Designs.design(2, Passage.friction(0.12), Attachment.GRIPPED)
            .withWorkers(w -> w.toBuilder(w.id()).offset(0.7).build());
    private static final Fall FALL =
            Fall.builder("f").at(Place.of(2, 4)).faller(DESIGN.workers().get(0)).build();
    private static final ArrestResult ARREST = EnergyBalance.withDefaults()
            .withTemperature(15)
            .withSide(DeploymentForce.MAXIMUM)
            .withClearance(DESIGN.clearance())
            .solve(DESIGN.line(), FALL);

    private static Map<Quantity, Double> plain() {
        ArrestResult r = ARREST;
        Map<Quantity, Double> m = new EnumMap<>(Quantity.class);
        m.put(Quantity.END_ANCHOR_LOAD, Math.max(r.anchorLoad("north"), r.anchorLoad("south")));
        m.put(Quantity.INTERMEDIATE_ANCHOR_LOAD, r.anchorLoad("post 1"));
        m.put(
                Quantity.SUPPORT_LOAD,
                Math.max(r.anchorLoad("post 1"), Math.max(r.anchorLoad("north"), r.anchorLoad("south"))));
        m.put(Quantity.MAXIMUM_TENSION, r.maximumTension());
        m.put(Quantity.ARREST_FORCE, r.arrestForce());
        m.put(Quantity.LINE_LOAD, r.lineLoad());
        m.put(Quantity.FREE_FALL, r.freeFall());
        m.put(Quantity.DEPLOYMENT, r.deployment());
        m.put(Quantity.SAG, r.sag());
        m.put(Quantity.LINE_DESCENT, r.lineDescent());
        m.put(Quantity.TOTAL_FALL_DISTANCE, r.totalFallDistance());
        m.put(Quantity.REQUIRED_BELOW_LINE, r.clearance().requiredBelowLine());
        m.put(Quantity.REQUIRED_BELOW_WALKING_LEVEL, r.clearance().requiredBelowWalkingLevel());
        m.put(Quantity.REQUIRED_ELEVATION, r.clearance().requiredElevation());
        m.put(Quantity.CLEARANCE_MARGIN, r.clearance().requiredElevation() - 4);
        m.put(Quantity.SWING_DISPLACEMENT, SwingFall.of(r).displacement());
        m.put(Quantity.SWING_ANGLE, SwingFall.of(r).angle());
        m.put(Quantity.SWING_DROP, SwingFall.of(r).drop());
        return m;
    }

    /** Share of computed distance in a quantity: 1 for what is computed, −1 for an elevation, 0 for what the design states. */
    private static double growth(Quantity q) {
        double computed = ARREST.deployment() + ARREST.lineDescent();
        return switch (q) {
            case DEPLOYMENT -> ARREST.deployment();
            case SAG -> ARREST.sag();
            case LINE_DESCENT -> ARREST.lineDescent();
            case TOTAL_FALL_DISTANCE, REQUIRED_BELOW_LINE, REQUIRED_BELOW_WALKING_LEVEL -> computed;
            case REQUIRED_ELEVATION, CLEARANCE_MARGIN -> -computed;
            default -> 0;
        };
    }

    @ParameterizedTest
    @EnumSource(Quantity.class)
    void valuesAreThoseOfTheArrestWithTheFactors(Quantity q) {
        if (q == Quantity.INLINE_EXTENSION) {
            assertThat(q.value(ARREST, ModelFactors.none())).isNaN();
            return;
        }
        double value = Objects.requireNonNull(plain().get(q));
        assertThat(q.value(ARREST, ModelFactors.none())).isEqualTo(value, within(1e-12 * Math.abs(value)));
        double factored = q.isForce() ? 1.3 * value : value + 0.2 * growth(q);
        assertThat(q.value(ARREST, new ModelFactors(1.3, 1.2))).isEqualTo(factored, within(1e-9 * Math.abs(value)));
        assertThat(q.isForce()).isEqualTo(q.unit().equals("N"));
    }

    @Test
    void keysAreUniqueAndFound() {
        assertThat(Quantity.keys()).doesNotHaveDuplicates().hasSize(Quantity.values().length);
        for (Quantity q : Quantity.values()) {
            assertThat(Quantity.of(q.key())).contains(q);
            assertThat(q.words()).isNotBlank();
        }
        assertThat(Quantity.of("nothing")).isEmpty();
        assertThat(List.of(Quantity.values()).stream().filter(q -> !q.largestIsWorst()))
                .containsExactly(Quantity.REQUIRED_ELEVATION, Quantity.CLEARANCE_MARGIN);
    }

    @Test
    void aSingleSpanHasNoIntermediateAnchor() {
        LifelineDesign d = Designs.design(1, Passage.free(), Attachment.GRIPPED);
        ArrestResult r = EnergyBalance.withDefaults()
                .solve(
                        d.line(),
                        Fall.builder("f")
                                .at(Place.of(1, 4))
                                .faller(d.workers().get(0))
                                .build());
        assertThat(Quantity.INTERMEDIATE_ANCHOR_LOAD.value(r, ModelFactors.none()))
                .isNaN();
        assertThat(Quantity.CLEARANCE_MARGIN.value(r, ModelFactors.none())).isNaN();
    }

    @Test
    void directionsAreComponents() {
        Vector3 v = new Vector3(1, -2, 3);
        assertThat(Direction.PLUS_X.component(v)).isEqualTo(1);
        assertThat(Direction.MINUS_X.component(v)).isEqualTo(-1);
        assertThat(Direction.PLUS_Y.component(v)).isEqualTo(-2);
        assertThat(Direction.MINUS_Y.component(v)).isEqualTo(2);
        assertThat(Direction.UP.component(v)).isEqualTo(3);
        assertThat(Direction.DOWN.component(v)).isEqualTo(-3);
        assertThat(Direction.values())
                .extracting(Direction::symbol)
                .containsExactly("+x", "-x", "+y", "-y", "+z", "-z");
    }

    @Test
    void aCaseIsDescribedWithWhatDeviates() {
        FallCase plain = FallCase.asDesigned(ARREST);
        assertThat(plain.describe())
                .isEqualTo("fall f, span 2, station 4.000 m, 15.0 °C, maximum deployment force")
                .isEqualTo(plain.toString());
        assertThat(plain.mass()).isEmpty();
        assertThat(plain.friction()).isEmpty();
        assertThat(plain.pretensionFactor()).isEmpty();
        FallCase other = new FallCase(
                FALL, -30, DeploymentForce.CLEARANCE, new FallCase.Deviation(0.8, 0.2, 130), AttachmentLimit.RUNNING);
        assertThat(other.describe())
                .endsWith("-30.0 °C, clearance deployment force, pretension × 0.800, friction 0.200, mass 130.0 kg");
        assertThat(other.mass()).hasValue(130);
        assertThat(other.friction()).hasValue(0.2);
        assertThat(other.pretensionFactor()).hasValue(0.8);
    }

    @Test
    void aFailureTellsAFaultOfTheProgramFromBadInput() {
        FallCase c = FallCase.asDesigned(ARREST);
        FailedCase bad =
                new FailedCase(c, new InvalidInputException(List.of(new Violation("mass", "0 kg", "must be"))));
        assertThat(bad.reason()).contains("mass").doesNotContain("fault of the program");
        assertThat(bad.toString()).startsWith("fall f, span 2").endsWith(bad.reason());
        assertThat(bad.fallCase()).isSameAs(c);
        FailedCase fault = new FailedCase(c, new IllegalStateException("left"));
        assertThat(fault.reason()).isEqualTo("fault of the program: IllegalStateException: left");
        assertThat(new FailedCase(c, new IllegalStateException()).reason())
                .isEqualTo("fault of the program: IllegalStateException");
    }

    @ParameterizedTest
    @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY})
    void rangesHaveFiniteEnds(double value) {
        assertThatThrownBy(() -> Interval.of(value, 1)).isInstanceOf(InvalidInputException.class);
        assertThatThrownBy(() -> Interval.of(0, value)).isInstanceOf(InvalidInputException.class);
        assertThatThrownBy(() -> Interval.exactly(value)).isInstanceOf(InvalidInputException.class);
    }

    @ParameterizedTest
    @CsvSource({"-1, 1", "0, 1"})
    void tolerancesThatReachToZeroAreRefused(double low, double high) {
        Interval range = Interval.of(low, high);
        assertThatThrownBy(() -> Tolerances.none().withMass(range)).hasMessageContaining("mass.low");
        assertThatThrownBy(() -> Tolerances.none().withPretension(range)).hasMessageContaining("pretension.low");
        if (low < 0) {
            assertThatThrownBy(() -> Tolerances.none().withFriction(range)).hasMessageContaining("friction");
        }
        assertThatThrownBy(() -> Tolerances.none().withFriction(Interval.of(0, 2.1)))
                .hasMessageContaining("friction");
        assertThat(Tolerances.none().withFriction(Interval.of(0, 2)).friction()).contains(Interval.of(0, 2));
        assertThat(Interval.of(0, 2).width()).isEqualTo(2);
        assertThat(Interval.of(0, 2).contains(2)).isTrue();
        assertThat(Interval.of(0, 2).contains(2.1)).isFalse();
    }
}
