package org.lifeline.report.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.lifeline.internal.svg.Spot;

/** Lines of equal value: on a plane they are the straight line that algebra gives, and elsewhere they separate. */
class ContourLinesTest {
    private static final double[] X = {0, 1, 3, 4};
    private static final double[] Y = {-1, 0, 2};

    private static double[][] plane(double a, double b, double c) {
        double[][] v = new double[Y.length][X.length];
        for (int i = 0; i < Y.length; i++) {
            for (int j = 0; j < X.length; j++) {
                v[i][j] = a + b * X[j] + c * Y[i];
            }
        }
        return v;
    }

    private static double length(List<ContourLines.Segment> all) {
        return all.stream()
                .mapToDouble(s -> Math.hypot(
                        s.to().x() - s.from().x(), s.to().y() - s.from().y()))
                .sum();
    }

    @Test
    void onAPlaneTheLineIsTheStraightLineOfItsEquation() {
        for (long seed = 1; seed <= 30; seed++) {
            SplittableRandom r = new SplittableRandom(seed);
            double b = r.nextDouble(0.2, 2);
            double c = r.nextDouble(-2, 2);
            // Through the point (1.7, 0.6) within the grid.
            double level = 1 + b * 1.7 + c * 0.6;
            List<ContourLines.Segment> all = new ContourLines(X, Y, plane(1, b, c)).at(level);
            assertThat(all).isNotEmpty();
            for (ContourLines.Segment s : all) {
                for (Spot p : List.of(s.from(), s.to())) {
                    assertThat(1 + b * p.x() + c * p.y()).as("seed %d", seed).isCloseTo(level, within(1e-9));
                    assertThat(p.x()).isBetween(0.0, 4.0);
                    assertThat(p.y()).isBetween(-1.0, 2.0);
                }
            }
            // The line ends where it meets the frame: its length is that of the chord of the rectangle.
            double low = Math.max(0, Math.min(x(level, b, c, -1), x(level, b, c, 2)));
            double high = Math.min(4, Math.max(x(level, b, c, -1), x(level, b, c, 2)));
            double chord = Math.abs(c) < 1e-3 ? 3 : (high - low) * Math.hypot(1, b / c);
            assertThat(length(all)).as("seed %d", seed).isCloseTo(chord, within(1e-6));
        }
    }

    private static double x(double level, double b, double c, double y) {
        return (level - 1 - c * y) / b;
    }

    @Test
    void aLevelThatNoValueReachesHasNoLine() {
        ContourLines lines = new ContourLines(X, Y, plane(1, 0.5, 0.25));
        // From 0.75 at the lower left to 3.5 at the upper right corner.
        assertThat(lines.at(0.74)).isEmpty();
        assertThat(lines.at(3.51)).isEmpty();
        assertThat(lines.at(0.76)).isNotEmpty();
        assertThat(lines.at(3.49)).isNotEmpty();
    }

    @Test
    void besideAValueThatIsNotFiniteThereIsNoLine() {
        double[][] v = plane(0, 1, 0);
        v[0][1] = Double.NaN;
        List<ContourLines.Segment> all = new ContourLines(X, Y, v).at(2);
        // The lower middle cell touches the hole; of the line x = 2 the upper half is left.
        assertThat(length(all)).isCloseTo(2, within(1e-12));
        assertThat(all).allSatisfy(s -> {
            assertThat(s.from().y()).isGreaterThanOrEqualTo(0);
            assertThat(s.to().y()).isGreaterThanOrEqualTo(0);
        });
        v[0][1] = Double.POSITIVE_INFINITY;
        assertThat(length(new ContourLines(X, Y, v).at(2))).isCloseTo(2, within(1e-12));
    }

    @Test
    void inASaddleTheHighCornersAreJoinedByTheMiddleOrParted() {
        double[] two = {0, 1};
        double[][] saddle = {{1, 0}, {0, 1}};
        // The middle is 0.5: above a level of 0.4 it joins the high corners, so both lines cut off a low corner.
        for (ContourLines.Segment s : new ContourLines(two, two, saddle).at(0.4)) {
            assertThat(Math.min(distance(s, 1, 0), distance(s, 0, 1))).isLessThan(0.51);
        }
        for (ContourLines.Segment s : new ContourLines(two, two, saddle).at(0.6)) {
            assertThat(Math.min(distance(s, 0, 0), distance(s, 1, 1))).isLessThan(0.51);
        }
        assertThat(new ContourLines(two, two, saddle).at(0.4)).hasSize(4);
        assertThat(new ContourLines(two, two, saddle).at(0.6)).hasSize(4);
    }

    private static double distance(ContourLines.Segment s, double x, double y) {
        double mx = 0.5 * (s.from().x() + s.to().x());
        double my = 0.5 * (s.from().y() + s.to().y());
        return Math.hypot(mx - x, my - y);
    }

    @Test
    void withoutValuesThereAreNoLines() {
        assertThat(new ContourLines(X, Y, new double[0][]).at(1)).isEmpty();
    }

    @Test
    void aValueOnTheLevelCountsAsAbove() {
        double[] two = {0, 1};
        assertThat(new ContourLines(two, two, new double[][] {{1, 1}, {1, 1}}).at(1))
                .isEmpty();
        List<ContourLines.Segment> touch = new ContourLines(two, two, new double[][] {{0, 0}, {1, 1}}).at(1);
        assertThat(length(touch)).isCloseTo(1, within(1e-12));
        assertThat(touch).allSatisfy(s -> assertThat(s.from().y()).isCloseTo(1, within(1e-12)));
    }
}
