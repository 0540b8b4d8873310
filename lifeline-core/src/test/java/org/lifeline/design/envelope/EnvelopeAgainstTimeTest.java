package org.lifeline.design.envelope;

import static org.assertj.core.api.Assertions.assertThat;
import static org.lifeline.base.Units.kN;
import static org.lifeline.base.Units.meganewtons;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.TransientArrest;
import org.lifeline.analysis.state.AttachmentLimit;
import org.lifeline.base.Point;
import org.lifeline.model.Fall;
import org.lifeline.model.Lifeline;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Passage;
import org.lifeline.model.Place;
import org.lifeline.model.absorber.DeploymentForce;
import org.lifeline.model.cable.Cable;
import org.lifeline.testing.FreeRunningWorker;

/**
 * A connector that is free to run needs time for it. The envelope over both limits, running and held, and over the
 * supports, is set against arrests that are followed in time. What the motion adds by its own overshoot is in neither
 * limit; the factors below are what was measured, and they are not to grow.
 */
class EnvelopeAgainstTimeTest {
    /** One line with what an arrest in time may add to the envelope's loads on posts, and to tension and end loads [-], as measured. */
    record Case(String name, Lifeline line, double posts, double overshoot) {
        @Override
        public String toString() {
            return name;
        }
    }

    private static Lifeline line(double pretension, double friction, double... x) {
        Lifeline.Builder b = Lifeline.builder()
                .cable(Cable.builder()
                        .weightPerLength(4.2)
                        .axialStiffness(meganewtons(4.9))
                        .build())
                .endAnchor("start", Point.of(x[0], 0, 6))
                .pretension(pretension);
        for (int i = 1; i < x.length - 1; i++) {
            b.intermediateAnchor("post " + i, Point.of(x[i], 0, 6), Passage.friction(friction));
        }
        return b.endAnchor("end", Point.of(x[x.length - 1], 0, 6)).build();
    }

    static List<Case> cases() {
        return List.of(
                new Case("3 x 12 m, friction 0.12", line(kN(1.5), 0.12, 0, 12, 24, 36), 1.01, 1.17),
                new Case("8, 10 and 6 m, friction 0.3", line(kN(1), 0.3, 0, 8, 18, 24), 1.13, 1.16),
                new Case("2 x 9 m, free", line(kN(2), 0, 0, 9, 18), 1.0, 1.21));
    }

    private static LifelineDesign design(Lifeline line) {
        return LifelineDesign.builder("x")
                .line(line)
                .worker(FreeRunningWorker.lanyardOfSixKilonewtons())
                .temperature(line.installed().temperature())
                .build();
    }

    @ParameterizedTest
    @MethodSource("cases")
    void noArrestInTimeLiesAboveTheEnvelope(Case c) {
        Lifeline line = c.line();
        Extremes envelope = Envelope.withDefaults().solve(design(line)).extremes();
        List<Place> places = new ArrayList<>();
        places.add(Place.of(2, 0.02));
        places.add(Place.of(1, 0.5 * line.run(1)));
        if (Boolean.getBoolean("lifeline.long")) {
            for (int span = 1; span <= 2; span++) {
                for (double share : new double[] {0.05, 0.1, 0.25, 0.5, 0.9}) {
                    places.add(Place.of(span, share * line.run(span)));
                }
            }
        }
        for (Place place : places) {
            Fall fall = Fall.builder("f")
                    .at(place)
                    .faller(FreeRunningWorker.lanyardOfSixKilonewtons())
                    .build();
            ArrestResult time = TransientArrest.withDefaults()
                    .withDuration(0.9)
                    .withSampling(0.01)
                    .withRefinements(0)
                    .solve(line, fall)
                    .arrest();
            for (int i = 1; i < line.spans(); i++) {
                String post = line.supports().get(i).id();
                below(
                        c,
                        place,
                        post,
                        time.anchorLoad(post),
                        envelope.onSupport(post).orElseThrow().value(),
                        c.posts());
            }
            below(
                    c,
                    place,
                    "end",
                    time.endAnchorLoad(),
                    envelope.of(Quantity.END_ANCHOR_LOAD).orElseThrow().value(),
                    c.overshoot());
            below(
                    c,
                    place,
                    "tension",
                    time.maximumTension(),
                    envelope.of(Quantity.MAXIMUM_TENSION).orElseThrow().value(),
                    c.overshoot());
            below(
                    c,
                    place,
                    "clearance",
                    time.clearance().requiredBelowLine(),
                    envelope.of(Quantity.REQUIRED_BELOW_LINE).orElseThrow().value(),
                    1);
        }
    }

    private static void below(Case c, Place place, String what, double time, double envelope, double factor) {
        assertThat(time).as("%s, %s, %s", c, place, what).isLessThanOrEqualTo(factor * envelope);
    }

    @Test
    void theHeldLimitGovernsThePosts() {
        Extremes envelope =
                Envelope.withDefaults().solve(design(cases().get(0).line())).extremes();
        Extreme post = envelope.onSupport("post 1").orElseThrow();
        assertThat(post.value()).isGreaterThan(7000);
        assertThat(post.fallCase().attachmentLimit()).contains(AttachmentLimit.HELD);
        assertThat(post.fallCase().describe()).contains("attachment held");
        assertThat(post.fallCase().side()).isEqualTo(DeploymentForce.MAXIMUM);
    }
}
