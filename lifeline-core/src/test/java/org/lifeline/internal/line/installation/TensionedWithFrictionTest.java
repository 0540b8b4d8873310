package org.lifeline.internal.line.installation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.lifeline.base.Point;
import org.lifeline.base.Vector3;
import org.lifeline.internal.catenary.SpanFinder;
import org.lifeline.model.Installed;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Passage;
import org.lifeline.model.cable.Cable;

/** The capstan rule at every support of a line that was tensioned from one end. */
@SuppressWarnings("NullAway") // Null is handed over to be refused, and what is there is taken as there.
class TensionedWithFrictionTest {
    private static final double FRICTION = 0.2;

    private static final List<Point> CORNERS = List.of(
            Point.of(0, 0, 5), Point.of(8, 0, 5), Point.of(8, 9, 5.5), Point.of(14, 15, 5), Point.of(20, 15, 4));

    private static Lifeline line(List<Point> points, Passage passage) {
        Lifeline.Builder b = Lifeline.builder()
                .cable(Cable.builder().massPerLength(0.5).axialStiffness(3e6).build())
                .installed(Installed.pretension(3000).tensionedFrom(Installed.TensioningEnd.FIRST));
        b.endAnchor("a", points.get(0));
        for (int i = 1; i < points.size() - 1; i++) {
            b.intermediateAnchor("p" + i, points.get(i), passage);
        }
        return b.endAnchor("z", points.get(points.size() - 1)).build();
    }

    private static TensionedWithFriction of(Lifeline line, Installed.TensioningEnd end) {
        return new TensionedWithFriction(line, line.weightPerLength(), end);
    }

    private static double start(SpanFinder f) {
        return Math.hypot(f.h, f.v);
    }

    private static double end(Lifeline line, SpanFinder f) {
        return Math.hypot(f.h, f.v + line.weightPerLength() * f.s);
    }

    /** The unit direction of the cable of a span where it leaves a support, or where it comes to the next one. */
    private static double[] direction(Lifeline line, int span, SpanFinder f, boolean atEnd) {
        Point a = line.supports().get(span).position();
        Point b = line.supports().get(span + 1).position();
        double run = Math.hypot(b.x() - a.x(), b.y() - a.y());
        double v = f.v + (atEnd ? line.weightPerLength() * f.s : 0);
        double t = Math.hypot(f.h, v);
        return new double[] {f.h * (b.x() - a.x()) / run / t, f.h * (b.y() - a.y()) / run / t, v / t};
    }

    private static double turned(Lifeline line, int support, SpanFinder[] spans) {
        double[] a = direction(line, support - 1, spans[support - 1], true);
        double[] b = direction(line, support, spans[support], false);
        return Math.acos(a[0] * b[0] + a[1] * b[1] + a[2] * b[2]);
    }

    @Test
    void theTensionFallsAwayFromTheTensioningEnd() {
        Lifeline line = line(CORNERS, Passage.friction(FRICTION));
        for (Installed.TensioningEnd from : Installed.TensioningEnd.values()) {
            SpanFinder[] spans = of(line, from).march(3000);
            assertThat(spans).isNotNull().hasSize(4);
            assertThat(start(spans[0])).isCloseTo(3000, within(1e-6));
            int sign = from == Installed.TensioningEnd.FIRST ? -1 : 1;
            for (int i = 1; i < 4; i++) {
                double angle = turned(line, i, spans);
                assertThat(Math.log(start(spans[i]) / end(line, spans[i - 1])))
                        .as("support %d from %s", i, from)
                        .isCloseTo(sign * FRICTION * angle, within(1e-8));
            }
            assertThat(turned(line, 1, spans)).as("a right angle in plan").isCloseTo(Math.PI / 2, within(0.02));
        }
    }

    @Test
    void withoutFrictionTheTensionIsTheSameOnBothSides() {
        for (Passage passage : List.of(Passage.free(), Passage.clamped())) {
            Lifeline line = line(CORNERS, passage);
            SpanFinder[] spans = of(line, Installed.TensioningEnd.FIRST).march(3000);
            assertThat(spans).isNotNull();
            for (int i = 1; i < 4; i++) {
                assertThat(start(spans[i])).isCloseTo(end(line, spans[i - 1]), within(1e-6));
            }
        }
    }

    /** Turned about, and tensioned from the other end, the line is the same. */
    @Test
    void fromTheOtherEndTheLineIsTheSame() {
        Lifeline line = line(CORNERS, Passage.friction(FRICTION));
        Lifeline back = line(
                List.of(CORNERS.get(4), CORNERS.get(3), CORNERS.get(2), CORNERS.get(1), CORNERS.get(0)),
                Passage.friction(FRICTION));
        SpanFinder[] spans = of(line, Installed.TensioningEnd.FIRST).march(3000);
        assertThat(spans).isNotNull();
        SpanFinder[] other = of(back, Installed.TensioningEnd.LAST).march(end(line, spans[3]));
        assertThat(other).isNotNull();
        for (int i = 0; i < 4; i++) {
            assertThat(other[3 - i].h).isCloseTo(spans[i].h, within(1e-5));
            assertThat(other[3 - i].s).isCloseTo(spans[i].s, within(1e-9));
        }
        assertThat(end(back, other[3])).isCloseTo(3000, within(1e-5));
    }

    @Test
    void lengthAndTensionLeadToTheSameSpans() {
        Lifeline line = line(CORNERS, Passage.friction(FRICTION));
        TensionedWithFriction t = of(line, Installed.TensioningEnd.FIRST);
        SpanFinder[] spans = t.march(3000);
        assertThat(spans).isNotNull();
        double length = Arrays.stream(spans).mapToDouble(f -> f.s).sum();
        for (double near : new double[] {500, 3000, 9000}) {
            SpanFinder[] byLength = t.ofLength(length, near);
            assertThat(byLength).isNotNull();
            assertThat(start(byLength[0])).isCloseTo(3000, within(1e-3));
        }
        for (int k = 0; k < 4; k++) {
            SpanFinder[] byTension = t.ofStartTension(k, start(spans[k]));
            assertThat(byTension).isNotNull();
            assertThat(start(byTension[0])).as("by span %d", k).isCloseTo(3000, within(1e-5));
        }
    }

    /** However far the first guess of the tension is off, one can be found; and none where the line would be too slack. */
    @Test
    void whatIsLookedForMayBeFarOff() {
        Lifeline line = line(CORNERS, Passage.friction(FRICTION));
        for (Installed.TensioningEnd from : Installed.TensioningEnd.values()) {
            TensionedWithFriction t = of(line, from);
            SpanFinder[] spans = t.march(3000);
            assertThat(spans).isNotNull();
            double length = Arrays.stream(spans).mapToDouble(f -> f.s).sum();
            for (double near : new double[] {100, 2999, 3001, 1e5}) {
                SpanFinder[] byLength = t.ofLength(length, near);
                assertThat(byLength).as("from %s N", near).isNotNull();
                assertThat(start(byLength[0])).isCloseTo(3000, within(1e-3));
            }
            assertThat(t.ofLength(1.2 * length, 3000))
                    .as("it would hang in one span")
                    .isNull();
            assertThat(t.ofStartTension(3, 5)).as("less than the span needs").isNull();
            double last = start(spans[3]);
            SpanFinder[] twice = t.ofStartTension(3, 2 * last);
            assertThat(twice).isNotNull();
            assertThat(start(twice[3])).isCloseTo(2 * last, within(1e-5 * last));
        }
    }

    /** A weightless line in space turns by the angle between its chords alone: T₂/T₁ = e^(−μθ) in closed form. */
    @Test
    void withoutWeightTheAngleIsThatOfTheChords() {
        List<Point> points = List.of(Point.of(1, 2, 3), Point.of(5, 5, 3), Point.of(7, 9, 5), Point.of(2, 12, 4));
        Lifeline.Builder b = Lifeline.builder()
                .cable(Cable.builder().massPerLength(0).axialStiffness(3e6).build())
                .installed(Installed.pretension(3000).tensionedFrom(Installed.TensioningEnd.FIRST));
        b.endAnchor("a", points.get(0));
        b.intermediateAnchor("p", points.get(1), Passage.friction(FRICTION));
        b.intermediateAnchor("q", points.get(2), Passage.friction(0.1));
        Lifeline line = b.endAnchor("z", points.get(3)).build();
        SpanFinder[] spans = of(line, Installed.TensioningEnd.FIRST).march(3000);
        assertThat(spans).isNotNull();
        double expected = 3000;
        for (int i = 1; i < 3; i++) {
            Vector3 before = points.get(i).minus(points.get(i - 1));
            Vector3 behind = points.get(i + 1).minus(points.get(i));
            double angle = Math.acos(before.dot(behind) / before.magnitude() / behind.magnitude());
            expected *= Math.exp(-(i == 1 ? FRICTION : 0.1) * angle);
            assertThat(start(spans[i])).as("span %d", i).isCloseTo(expected, within(1e-8));
        }
    }

    @Test
    void aLineThatIsTooSlackHasNoSpans() {
        Lifeline line = line(CORNERS, Passage.friction(FRICTION));
        TensionedWithFriction t = of(line, Installed.TensioningEnd.FIRST);
        assertThat(t.march(0)).isNull();
        assertThat(t.march(25))
                .as("the first span hangs, the last one does not")
                .isNull();
    }

    @Test
    void onlyFrictionMatters() {
        assertThat(TensionedWithFriction.matters(line(CORNERS, Passage.friction(0.1))))
                .isTrue();
        assertThat(TensionedWithFriction.matters(line(CORNERS, Passage.free()))).isFalse();
        assertThat(TensionedWithFriction.matters(line(CORNERS, Passage.clamped())))
                .isFalse();
    }
}
