package org.lifeline.analysis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.lifeline.base.Point;
import org.lifeline.model.Attachment;
import org.lifeline.model.Connection;
import org.lifeline.model.Fall;
import org.lifeline.model.InlineAbsorber;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Passage;
import org.lifeline.model.Place;
import org.lifeline.model.Stiffness;
import org.lifeline.model.Support;
import org.lifeline.model.Worker;
import org.lifeline.model.absorber.LoadingCurve;
import org.lifeline.model.cable.Cable;

/** The arrest in time against closed forms, and the energy balance. */
class TransientArrestTest {

    private static Fall fall(Place place, Attachment attachment, Connection connection, double freeFall) {
        Worker worker = Worker.builder("A")
                .mass(100)
                .walkingLevel(8.3)
                .attachment(attachment)
                .connection(connection)
                .build();
        return Fall.builder("fall").at(place).faller(worker).freeFall(freeFall).build();
    }

    private static Connection absorber() {
        return Connection.lanyard(
                1.8,
                Connection.PersonalAbsorber.builder()
                        .clearanceForce(3200)
                        .maximumForce(6000)
                        .maximumExtension(1.2)
                        .initialStiffness(1e5)
                        .stopStiffness(2e5)
                        .build());
    }

    private static Lifeline line(Passage passage, double massPerLength) {
        return Lifeline.builder()
                .cable(Cable.builder()
                        .massPerLength(massPerLength)
                        .axialStiffness(3.3e6)
                        .build())
                .endAnchor("a", Point.of(0, 0, 10))
                .intermediateAnchor("p", Point.of(8, 0, 10), passage)
                .endAnchor("b", Point.of(18, 0, 10))
                .pretension(1500)
                .build();
    }

    /**
     * A mass dropped on a spring: δ = δ_st (1 + √(1 + 2 h/δ_st)) (Thomson, <i>Vibration Theory and Applications</i>, the
     * closed form behind ex. 4.6-1; suddenly applied, h = 0: exactly twice the static extension, p. 102). The line is so
     * taut and stiff that the lanyard is the only spring; 1 % for what it still gives.
     */
    @Test
    void massOnASpring() {
        Lifeline stiff = Lifeline.builder()
                .cable(Cable.builder().massPerLength(0.05).axialStiffness(1e9).build())
                .endAnchor("a", Point.of(0, 0, 10))
                .endAnchor("b", Point.of(2, 0, 10))
                .pretension(2e6)
                .build();
        double k = 2e4;
        Connection spring = Connection.plainLanyard(1.8, LoadingCurve.spring(k));
        double still = 100 * stiff.gravity() / k;
        for (double h : new double[] {0, 0.5}) {
            TransientResult r = TransientArrest.withDefaults()
                    .withSegmentLength(0.25)
                    .withRefinements(0)
                    .withDuration(0.7)
                    .solve(stiff, fall(Place.of(1, 1), Attachment.GRIPPED, spring, h));
            double expected = k * still * (1 + Math.sqrt(1 + 2 * h / still));
            assertThat(r.firstCatch().worker("A").force().value()).isCloseTo(expected, Percentage.withPercentage(1));
        }
    }

    /** With a light cable and a plateau the energy balance gives the same lowest point; it differs by what waves carry. */
    @Test
    void aLightLineComesNearTheEnergyBalance() {
        Lifeline light = line(Passage.clamped(), 0.02);
        Fall f = fall(Place.of(2, 5), Attachment.GRIPPED, absorber(), 1.5);
        ArrestResult balance = EnergyBalance.withDefaults().solve(light, f);
        TransientResult r = TransientArrest.withDefaults().withRefinements(1).solve(light, f);
        ArrestResult motion = r.arrest();
        assertThat(motion.method()).isEqualTo(Method.TRANSIENT);
        assertThat(motion.arrestForce()).isCloseTo(balance.arrestForce(), Percentage.withPercentage(1));
        double byBalance = balance.lineDescent() + balance.deployment();
        double byMotion = motion.lineDescent() + motion.deployment();
        assertThat(byMotion).isCloseTo(byBalance, Percentage.withPercentage(4));
        assertThat(r.relativeDrift()).isLessThan(1e-3);
    }

    /** Friction, a clamp and a free passage each run three seconds through slack and rebound, energy accounted for. */
    @Test
    void everyPassageRunsThroughSlackAndRebound() {
        for (Passage passage : List.of(Passage.free(), Passage.friction(0.2), Passage.clamped())) {
            boolean clamp = passage.kind() == Passage.Kind.CLAMPED;
            for (Attachment attachment : List.of(clamp ? Attachment.GRIPPED : Attachment.FREE_RUNNING)) {
                Fall f = fall(Place.of(1, 3), attachment, absorber(), 1.5);
                Lifeline line = line(passage, 0.41);
                TransientResult r = TransientArrest.withDefaults()
                        .withRefinements(0)
                        .withDuration(3)
                        .solve(line, f);
                ArrestResult balance = EnergyBalance.withDefaults().solve(line, f);
                String what = passage + ", " + attachment;
                double[] times = r.history().times();
                assertThat(times[times.length - 1]).as(what).isCloseTo(3, within(0.01));
                assertThat(r.relativeDrift()).as(what).isLessThan(1e-3);
                assertThat(r.firstCatch().worker("A").force().value())
                        .as(what)
                        .isBetween(0.9 * balance.arrestForce(), 1.3 * balance.arrestForce());
                assertThat(r.arrest().maximumTension())
                        .as(what)
                        .isBetween(0.8 * balance.maximumTension(), 1.6 * balance.maximumTension());
                if (clamp) {
                    assertThat(r.arrest().slip(1)).as(what).isCloseTo(0, within(1e-9));
                }
            }
        }
    }

    /** Yielding ends and an in-line absorber: the absorber bounds the tension at its end and keeps its extension. */
    @Test
    void anInLineAbsorberBoundsTheTension() {
        LoadingCurve curve = LoadingCurve.through(
                List.of(new LoadingCurve.Corner(0, 7000), new LoadingCurve.Corner(0.8, 7000)), 6e6, 2e5);
        Lifeline line = Lifeline.builder()
                .cable(Cable.builder().massPerLength(0.41).axialStiffness(3.3e6).build())
                .support(Support.end("a", Point.of(0, 0, 10)).withStiffness(Stiffness.alongX(4e5)))
                .intermediateAnchor("p", Point.of(8, 0, 10), Passage.friction(0.1))
                .support(Support.end("b", Point.of(18, 0, 10)).withInlineAbsorber(InlineAbsorber.of(curve)))
                .pretension(1500)
                .build();
        TransientResult r = TransientArrest.withDefaults()
                .withRefinements(1)
                .withDuration(2)
                .solve(line, fall(Place.of(2, 5), Attachment.FREE_RUNNING, absorber(), 1.5));
        assertThat(r.wholeRun().support("b").tensionBefore()).isLessThan(7000 * 1.02);
        double[] extension = r.history().support("b").inlineExtension();
        double most = 0;
        for (double e : extension) {
            most = Math.max(most, e);
        }
        assertThat(most).isGreaterThan(0.01);
        assertThat(extension[extension.length - 1]).isGreaterThan(most - 7000 / 6e6 - 1e-6);
        assertThat(r.relativeDrift()).isLessThan(1e-3);
    }
}
