package org.lifeline.analysis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.DoubleSummaryStatistics;
import java.util.List;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.lifeline.analysis.motion.SupportHistory;
import org.lifeline.analysis.state.AppliedLoad;
import org.lifeline.base.Point;
import org.lifeline.base.Units;
import org.lifeline.model.Attachment;
import org.lifeline.model.Connection;
import org.lifeline.model.Fall;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Passage;
import org.lifeline.model.Place;
import org.lifeline.model.Stiffness;
import org.lifeline.model.Support;
import org.lifeline.model.Worker;
import org.lifeline.model.absorber.LoadingCurve;
import org.lifeline.model.cable.Cable;

/**
 * With much damping the motion comes to rest, and rest is the static equilibrium. Line and fall are symmetric, since
 * otherwise the worker would swing as a pendulum. Damping along the cable works on stretching only, which swings and the
 * sway of unloaded spans cause to the second order: they die out as 1/t. So means over the last seconds are
 * compared, and half a millimetre is left to the length that spans still swaying take up.
 */
class TransientRestTest {
    private static final double MASS = 110;
    private static final double WEIGHT = MASS * Units.STANDARD_GRAVITY;
    private static final double LANYARD = 4e4;

    /** Samples that are looked at in the end: five seconds. */
    private static final int TAIL = 500;

    private static double mean(double[] history) {
        return Arrays.stream(history, history.length - TAIL, history.length)
                .average()
                .orElseThrow();
    }

    /** Width of the band that a history moves in during five seconds. */
    private static double band(double[] history, int from) {
        DoubleSummaryStatistics s = Arrays.stream(history, from, from + TAIL).summaryStatistics();
        return s.getMax() - s.getMin();
    }

    private static Lifeline line(Passage passage) {
        return Lifeline.builder()
                .cable(Cable.builder()
                        .massPerLength(0.5)
                        .axialStiffness(2e6)
                        .dampingTime(0.08)
                        .build())
                .support(Support.end("a", Point.of(0, 0, 10)).withStiffness(Stiffness.alongX(2e5)))
                .intermediateAnchor("p", Point.of(9, 0, 10.5), passage)
                .intermediateAnchor("q", Point.of(18, 0, 10.5), passage)
                .support(Support.end("b", Point.of(27, 0, 10)).withStiffness(Stiffness.alongX(2e5)))
                .pretension(1200)
                .build();
    }

    @Test
    void theEndIsTheStaticHang() {
        for (Passage passage : List.of(Passage.free(), Passage.clamped())) {
            Lifeline line = line(passage);
            Place place = Place.of(2, 4.5);
            Worker worker = Worker.builder("w")
                    .mass(MASS)
                    .walkingLevel(8.5)
                    .attachment(Attachment.GRIPPED)
                    .connection(Connection.plainLanyard(1.2, LoadingCurve.spring(LANYARD)))
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
            compare(passage.toString(), r, rest);
        }
    }

    private static void compare(String what, TransientResult r, LineEquilibrium rest) {
        Point attachment = rest.loads().get(0).point();
        double[] force = r.history().worker("w").force();
        assertThat(mean(force)).as(what).isCloseTo(WEIGHT, Percentage.withPercentage(0.2));
        assertThat(band(force, force.length - TAIL)).as(what).isLessThan(0.2 * band(force, 400));
        assertThat(mean(r.history().worker("w").lineZ())).as(what).isCloseTo(attachment.z(), within(5e-4));
        assertThat(mean(r.history().worker("w").z()))
                .as(what)
                .isCloseTo(attachment.z() - 1.2 - WEIGHT / LANYARD, within(5e-4));
        for (SupportHistory each : r.history().supports()) {
            assertThat(mean(each.force()))
                    .as("%s at %s", what, each.id())
                    .isCloseTo(rest.support(each.id()).force(), Percentage.withPercentage(0.2));
            assertThat(mean(each.displacement(0)))
                    .as("%s at %s", what, each.id())
                    .isCloseTo(rest.support(each.id()).displacement().x(), within(2e-5));
        }
        for (int i = 1; i < 3; i++) {
            // Histories count toward the fall, statics toward the start of the line.
            double slip = (i == 1 ? -1 : 1) * rest.supports().get(i).slip();
            assertThat(mean(r.history().supports().get(i).slip())).as(what).isCloseTo(slip, within(2e-4));
        }
        assertThat(r.relativeDrift()).as(what).isLessThan(1e-3);
    }
}
