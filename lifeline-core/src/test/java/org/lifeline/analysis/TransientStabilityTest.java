package org.lifeline.analysis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.lifeline.analysis.motion.EnergyHistory;
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
import org.lifeline.model.absorber.LoadingCurve.Corner;
import org.lifeline.model.cable.Cable;

/** Motions that once made energy out of nothing, or had no lowest point. */
class TransientStabilityTest {
    private static Worker worker(LoadingCurve curve, Attachment attachment, double taut) {
        return Worker.builder("w")
                .mass(92)
                .walkingLevel(-taut)
                .attachment(attachment)
                .connection(Connection.givenCurve(taut, curve))
                .build();
    }

    private static LoadingCurve stiff() {
        return LoadingCurve.through(
                List.of(new Corner(0, 0), new Corner(0.02, 7000), new Corner(0.7, 7000)), 3.5e5, 1e6);
    }

    private static double most(TransientResult r, EnergyHistory.Part part) {
        double most = 0;
        for (double each : r.history().energies().of(part)) {
            most = Math.max(most, Math.abs(each));
        }
        return most;
    }

    /** A soft heavy rope takes long steps; a stiff link on a light ring needs short ones. */
    @Test
    void aStiffLinkOnASoftRope() {
        Lifeline line = Lifeline.builder()
                .cable(Cable.builder().massPerLength(4).axialStiffness(2.5e5).build())
                .endAnchor("a", Point.of(0, 0, 0))
                .endAnchor("b", Point.of(60, 0, 0))
                .pretension(4000)
                .build();
        Fall fall = Fall.builder("f")
                .at(Place.of(1, 40))
                .faller(worker(stiff(), Attachment.FREE_RUNNING, 2))
                .freeFall(4)
                .build();
        TransientResult r = TransientArrest.withDefaults().withRefinements(0).solve(line, fall);
        assertThat(r.firstCatchOver()).isTrue();
        assertThat(r.relativeDrift()).isBetween(0.0, 1e-3);
        assertThat(r.arrest().arrestForce()).isLessThan(7000 * 1.0001);
        for (double each : r.history().energies().of(EnergyHistory.Part.CONNECTIONS)) {
            assertThat(each).isGreaterThan(-1);
        }
    }

    /** A ring that rests against a post on springs goes with it; held to a fixed place it would be driven by the post. */
    @Test
    void aRingRestsAgainstAYieldingPost() {
        LoadingCurve inline = LoadingCurve.through(
                List.of(new Corner(0, 2100), new Corner(0.15, 2100)), Double.POSITIVE_INFINITY, 3e6);
        Lifeline line = Lifeline.builder()
                .cable(Cable.builder().massPerLength(0.29).axialStiffness(2e6).build())
                .endAnchor("a", Point.of(0, 0, 0))
                .support(Support.intermediate("p", Point.of(5.6, 1.2, 3.7), Passage.free())
                        .withStiffness(Stiffness.rigid().withX(4.2e5).withY(9200)))
                .intermediateAnchor("q", Point.of(10.3, 2.3, 6.8), Passage.free())
                .support(Support.end("b", Point.of(18.8, 2, 12.2)).withInlineAbsorber(InlineAbsorber.of(inline)))
                .pretension(800)
                .build();
        Worker falling = Worker.builder("w")
                .mass(68)
                .walkingLevel(3.8)
                .attachment(Attachment.FREE_RUNNING)
                .connection(Connection.givenCurve(2, stiff()))
                .build();
        Fall fall = Fall.builder("f")
                .at(Place.of(2, 2.6))
                .faller(falling)
                .freeFall(3)
                .build();
        TransientResult r = TransientArrest.withDefaults().withRefinements(0).solve(line, fall);
        double[] x = r.history().worker("w").lineX();
        assertThat(x[x.length - 1]).as("the ring has run down to the post").isCloseTo(5.6, within(0.5));
        assertThat(r.relativeDrift()).isBetween(0.0, 2e-3);
        assertThat(most(r, EnergyHistory.Part.FRICTION))
                .isLessThan(r.arrest().energy().fall());
        assertThat(most(r, EnergyHistory.Part.DAMPING))
                .isLessThan(r.arrest().energy().fall());
    }

    /** If the run ends before anybody has come to rest, the arrest is that of its end, and says that it is not over. */
    @Test
    void aRunThatEndsTooSoon() {
        Lifeline line = Lifeline.builder()
                .cable(Cable.builder().massPerLength(0.4).axialStiffness(3e6).build())
                .endAnchor("a", Point.of(0, 0, 0))
                .endAnchor("b", Point.of(12, 0, 0))
                .pretension(1500)
                .build();
        Fall fall = Fall.builder("f")
                .at(Place.of(1, 6))
                .faller(worker(stiff(), Attachment.GRIPPED, 1.5))
                .freeFall(1.8)
                .build();
        TransientResult r = TransientArrest.withDefaults()
                .withRefinements(0)
                .withDuration(0.65)
                .solve(line, fall);
        assertThat(r.firstCatchOver()).isFalse();
        assertThat(r.relativeDrift()).isBetween(0.0, 1e-3);
        double[] z = r.history().worker("w").z();
        assertThat(r.arrest().energy().fall())
                .isCloseTo(92 * 9.80665 * (z[0] - z[z.length - 1]), within(92 * 9.8 * 0.02));
    }
}
