package org.lifeline.analysis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.lifeline.analysis.motion.SupportHistory;
import org.lifeline.base.Point;
import org.lifeline.base.Units;
import org.lifeline.model.Attachment;
import org.lifeline.model.Cable;
import org.lifeline.model.Connection;
import org.lifeline.model.Fall;
import org.lifeline.model.Lifeline;
import org.lifeline.model.LoadingCurve;
import org.lifeline.model.Passage;
import org.lifeline.model.Place;
import org.lifeline.model.Stiffness;
import org.lifeline.model.Support;
import org.lifeline.model.Worker;

/** With much damping the motion comes to rest, and rest is the static equilibrium. */
class TransientRestTest {
    private static final double MASS = 110;
    private static final double WEIGHT = MASS * Units.STANDARD_GRAVITY;

    private static double last(double[] history) {
        return history[history.length - 1];
    }

    @Test
    void theEndIsTheStaticHang() {
        for (Passage passage : List.of(Passage.free(), Passage.clamped())) {
            Lifeline line = Lifeline.builder()
                    .cable(Cable.builder()
                            .massPerLength(0.5)
                            .axialStiffness(2e6)
                            .dampingTime(0.08)
                            .build())
                    .support(Support.end("a", Point.of(0, 0, 10)).withStiffness(Stiffness.alongX(2e5)))
                    .intermediateAnchor("p", Point.of(9, 0, 10), passage)
                    .endAnchor("b", Point.of(19, 0, 10.5))
                    .pretension(1200)
                    .build();
            Place place = Place.of(1, 3.5);
            double stiffness = 4e4;
            Worker worker = Worker.builder("w")
                    .mass(MASS)
                    .walkingLevel(8.5)
                    .attachment(Attachment.GRIPPED)
                    .connection(Connection.plainLanyard(1.2, LoadingCurve.spring(stiffness)))
                    .build();
            Fall fall = Fall.builder("f").at(place).faller(worker).build();
            TransientResult r = TransientArrest.withDefaults()
                    .withDuration(25)
                    .withSampling(0.01)
                    .withRefinements(0)
                    .withSegmentLength(0.25)
                    .solve(line, fall);
            LineEquilibrium rest =
                    Statics.withDefaults().solve(line, List.of(new AppliedLoad(place, Attachment.GRIPPED, WEIGHT)));
            String what = passage.toString();
            Point attachment = rest.loads().get(0).point();
            double[] force = r.history().worker("w").force();
            assertThat(last(force)).as(what).isCloseTo(WEIGHT, Percentage.withPercentage(0.5));
            assertThat(last(r.history().worker("w").lineZ())).as(what).isCloseTo(attachment.z(), within(1e-3));
            assertThat(last(r.history().worker("w").z()))
                    .as(what)
                    .isCloseTo(attachment.z() - 1.2 - WEIGHT / stiffness, within(1.5e-3));
            for (SupportHistory each : r.history().supports()) {
                assertThat(last(each.force()))
                        .as("%s at %s", what, each.id())
                        .isCloseTo(rest.support(each.id()).force(), Percentage.withPercentage(0.5));
                assertThat(last(each.displacement(0)))
                        .as("%s at %s", what, each.id())
                        .isCloseTo(rest.support(each.id()).displacement().x(), within(2e-5));
            }
            double slip = rest.supports().get(1).slip();
            assertThat(last(r.history().support("p").slip())).as(what).isCloseTo(slip, within(2e-4));
            assertThat(r.relativeDrift()).as(what).isLessThan(1e-3);
        }
    }
}
