package org.lifeline.design.envelope;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.EnergyBalance;
import org.lifeline.analysis.TransientArrest;
import org.lifeline.base.Point;
import org.lifeline.model.Attachment;
import org.lifeline.model.Connection;
import org.lifeline.model.Fall;
import org.lifeline.model.Lifeline;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Place;
import org.lifeline.model.Worker;
import org.lifeline.model.absorber.AbsorberCondition;
import org.lifeline.model.absorber.AbsorberCondition.Kind;
import org.lifeline.model.absorber.DeploymentForce;
import org.lifeline.model.cable.Cable;
import org.lifeline.verify.Verifier;

/**
 * Arrests and the envelope of a design that states forces of wet, cold or hot absorbers are those of designs whose pair of forces
 * was set by hand to what applies at each temperature, to the last digit.
 */
class AbsorberConditionsOfADesignTest {
    private static final double COLDEST = -30;
    private static final double HOTTEST = 40;

    private static Connection.AbsorberBuilder absorber(double low, double high) {
        return Connection.PersonalAbsorber.builder()
                .clearanceForce(low)
                .maximumForce(high)
                .maximumExtension(1.5)
                .initialStiffness(1e5);
    }

    private static AbsorberCondition condition(Kind kind, double low, double high, double temperature) {
        AbsorberCondition.Builder b = AbsorberCondition.builder(kind)
                .clearanceForce(low)
                .maximumForce(high)
                .source("report");
        return (Double.isNaN(temperature) ? b : b.temperature(temperature)).build();
    }

    private static LifelineDesign design(Connection.AbsorberBuilder absorber, List<Double> temperatures) {
        Worker worker = Worker.builder("A")
                .mass(100)
                .walkingLevel(10.6)
                .attachment(Attachment.GRIPPED)
                .connection(Connection.lanyard(1.8, absorber.build()))
                .build();
        return LifelineDesign.builder("gallery")
                .line(Lifeline.builder()
                        .cable(Cable.builder()
                                .massPerLength(0.5)
                                .axialStiffness(4e6)
                                .thermalExpansion(12e-6)
                                .build())
                        .endAnchor("a", Point.of(0, 0, 12))
                        .endAnchor("b", Point.of(14, 0, 12))
                        .pretension(2500)
                        .build())
                .worker(worker)
                .fall(Fall.builder("f").at(Place.of(1, 6)).faller(worker).build())
                .build()
                .withTemperatures(temperatures);
    }

    private static void same(ArrestResult one, ArrestResult other) {
        assertThat(one.endAnchorLoad()).isEqualTo(other.endAnchorLoad());
        assertThat(one.arrestForce()).isEqualTo(other.arrestForce());
        assertThat(one.deployment()).isEqualTo(other.deployment());
        assertThat(one.lineDescent()).isEqualTo(other.lineDescent());
        assertThat(one.clearance().requiredBelowLine())
                .isEqualTo(other.clearance().requiredBelowLine());
    }

    @Test
    void anArrestIsThatOfThePairSetByHand() {
        LifelineDesign stated = design(
                absorber(3200, 6000)
                        .condition(condition(Kind.WET, 2500, 5000, Double.NaN))
                        .condition(condition(Kind.COLD, 3500, 7000, -10)),
                List.of(COLDEST, HOTTEST));
        for (double t : new double[] {COLDEST, -10, HOTTEST}) {
            LifelineDesign byHand = design(absorber(2500, t <= -10 ? 7000 : 6000), List.of(t));
            for (DeploymentForce side : DeploymentForce.values()) {
                EnergyBalance balance =
                        EnergyBalance.withDefaults().withTemperature(t).withSide(side);
                ArrestResult found = balance.solve(stated.line(), stated.falls().get(0));
                same(found, balance.solve(byHand.line(), byHand.falls().get(0)));
                assertThat(Verifier.withDefaults().arrest(found).failures()).isEmpty();
            }
        }
        TransientArrest inTime =
                TransientArrest.withDefaults().withTemperature(COLDEST).withSide(DeploymentForce.MAXIMUM);
        LifelineDesign byHand = design(absorber(2500, 7000), List.of(COLDEST));
        same(
                inTime.solve(stated.line(), stated.falls().get(0)).arrest(),
                inTime.solve(byHand.line(), byHand.falls().get(0)).arrest());
    }

    /** Without temperatures of their own the conditions apply everywhere: the whole envelope is that of the widest pair. */
    @Test
    void theEnvelopeIsThatOfThePairSetByHand() {
        LifelineDesign stated = design(
                absorber(3200, 6000)
                        .condition(condition(Kind.WET, 2500, 5000, Double.NaN))
                        .condition(condition(Kind.COLD, 3500, 7000, Double.NaN)),
                List.of(COLDEST, HOTTEST));
        LifelineDesign byHand = design(absorber(2500, 7000), List.of(COLDEST, HOTTEST));
        assertThat(stated.temperatures()).containsExactly(COLDEST, HOTTEST);
        Extremes found = Envelope.withDefaults().solve(stated).extremes();
        Extremes wanted = Envelope.withDefaults().solve(byHand).extremes();
        for (Quantity q : Quantity.values()) {
            assertThat(found.of(q).map(Extreme::value))
                    .as(q.key())
                    .isEqualTo(wanted.of(q).map(Extreme::value));
        }
        Extreme load = found.of(Quantity.END_ANCHOR_LOAD).orElseThrow();
        assertThat(load.fallCase().describe()).contains("maximum deployment force (cold)");
        assertThat(load.fallCase().conditions()).containsOnlyKeys("A");
        assertThat(found.of(Quantity.DEPLOYMENT).orElseThrow().fallCase().describe())
                .contains("clearance deployment force (wet)");
        assertThat(wanted.of(Quantity.END_ANCHOR_LOAD).orElseThrow().fallCase().describe())
                .endsWith("maximum deployment force");
    }

    /**
     * A force that applies up to a temperature governs there, where no temperature in service may be: the lowest force of a cold
     * absorber meets the slackest line at the warmest cold, the highest of a hot one the tightest at the coolest heat.
     */
    @ParameterizedTest
    @CsvSource({"COLD, -10, 2000, 5000, REQUIRED_BELOW_LINE", "HOT, 20, 4000, 7000, END_ANCHOR_LOAD"})
    void theTemperatureOfAConditionIsLookedAt(Kind kind, double limit, double low, double high, Quantity quantity) {
        LifelineDesign stated =
                design(absorber(3200, 6000).condition(condition(kind, low, high, limit)), List.of(COLDEST, HOTTEST));
        assertThat(stated.temperatures()).containsExactly(COLDEST, HOTTEST, limit);
        assertThat(stated.toBuilder().build()).isEqualTo(stated);
        Extremes found = Envelope.withDefaults().solve(stated).extremes();
        // By hand: the wide pair where it applies, the pair of the dry elsewhere.
        List<Double> wide = kind == Kind.COLD ? List.of(COLDEST, limit) : List.of(limit, HOTTEST);
        double lowest = Math.min(low, 3200);
        double highest = Math.max(high, 6000);
        List<Extremes> byHand = new ArrayList<>();
        byHand.add(Envelope.withDefaults()
                .solve(design(absorber(lowest, highest), wide))
                .extremes());
        byHand.add(Envelope.withDefaults()
                .solve(design(absorber(3200, 6000), List.of(COLDEST, HOTTEST)))
                .extremes());
        for (Quantity q : List.of(
                Quantity.END_ANCHOR_LOAD, Quantity.ARREST_FORCE, Quantity.DEPLOYMENT, Quantity.REQUIRED_BELOW_LINE)) {
            double wanted = byHand.stream()
                    .map(e -> e.of(q).orElseThrow().value())
                    .mapToDouble(Double::doubleValue)
                    .max()
                    .orElseThrow();
            assertThat(found.of(q).orElseThrow().value()).as(q.key()).isEqualTo(wanted);
        }
        Extreme governs = found.of(quantity).orElseThrow();
        assertThat(governs.fallCase().temperature()).isEqualTo(limit);
        assertThat(governs.fallCase().conditions())
                .hasEntrySatisfying("A", c -> assertThat(c.kind()).isEqualTo(kind));
    }

    @Test
    void aTemperatureOutsideTheServiceIsNotAdded() {
        AbsorberCondition cold = condition(Kind.COLD, 2000, 9000, -50);
        LifelineDesign stated = design(absorber(3200, 6000).condition(cold), List.of(COLDEST, HOTTEST));
        assertThat(stated.temperatures()).containsExactly(COLDEST, HOTTEST);
        LifelineDesign plain = design(absorber(3200, 6000), List.of(COLDEST, HOTTEST));
        DesignResult found = DesignAnalysis.withDefaults().solve(stated);
        DesignResult wanted = DesignAnalysis.withDefaults().solve(plain);
        for (int i = 0; i < wanted.arrests().size(); i++) {
            same(found.arrests().get(i), wanted.arrests().get(i));
        }
        assertThat(found.arrests()).hasSameSizeAs(wanted.arrests());
        // At the edge of the service nothing is added either: the temperature is there already.
        assertThat(design(
                                absorber(3200, 6000).condition(condition(Kind.COLD, 2000, 9000, COLDEST)),
                                List.of(COLDEST, HOTTEST))
                        .temperatures())
                .containsExactly(COLDEST, HOTTEST);
    }

    /** Whatever is stated besides: no load and no distance gets smaller. */
    @Test
    void moreConditionsNeverMakeItBetter() {
        List<AbsorberCondition> all = List.of(
                condition(Kind.WET, 3000, 5000, Double.NaN),
                condition(Kind.COLD, 4000, 6800, 0),
                condition(Kind.HOT, 2600, 6500, 30));
        Connection.AbsorberBuilder absorber = absorber(3200, 6000);
        Extremes before = null;
        for (int n = 0; n <= all.size(); n++) {
            Extremes now = Envelope.withDefaults()
                    .solve(design(absorber, List.of(COLDEST, HOTTEST)))
                    .extremes();
            for (Quantity q : Quantity.values()) {
                Optional<Double> less =
                        before == null ? Optional.empty() : before.of(q).map(Extreme::value);
                if (less.isPresent()) {
                    double sign = q == Quantity.CLEARANCE_MARGIN || q == Quantity.REQUIRED_ELEVATION ? -1 : 1;
                    assertThat(sign * now.of(q).orElseThrow().value())
                            .as(q.key() + ", " + n)
                            .isGreaterThanOrEqualTo(sign * less.get());
                }
            }
            before = now;
            if (n < all.size()) {
                absorber.condition(all.get(n));
            }
        }
    }
}
