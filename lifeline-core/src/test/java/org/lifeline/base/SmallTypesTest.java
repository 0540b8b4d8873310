package org.lifeline.base;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.lifeline.base.unit.Dimension;

/** Intervals, directions, vectors and the record of an iteration. */
class SmallTypesTest {
    private static Vector3 random(SplittableRandom r) {
        return new Vector3(r.nextDouble(-5, 5), r.nextDouble(-5, 5), r.nextDouble(-5, 5));
    }

    @ParameterizedTest
    @CsvSource({"NaN, 1", "0, NaN", "0, Infinity", "-Infinity, 0", "2, 1"})
    void anIntervalThatIsNoneIsRefused(double low, double high) {
        assertThatThrownBy(() -> Interval.of(low, high)).isInstanceOf(InvalidInputException.class);
    }

    @Test
    void anIntervalHoldsItsEnds() {
        Interval i = Interval.of(-1, 2);
        assertThat(i.width()).isEqualTo(3);
        assertThat(i.contains(-1)).isTrue();
        assertThat(i.contains(2)).isTrue();
        assertThat(i.contains(Math.nextUp(2.0))).isFalse();
        assertThat(i.contains(Math.nextDown(-1.0))).isFalse();
        assertThat(i.contains(Double.NaN)).isFalse();
        assertThat(Interval.exactly(4).width()).isZero();
        assertThat(Interval.exactly(4).contains(4)).isTrue();
    }

    @ParameterizedTest
    @EnumSource(Direction.class)
    void aDirectionReadsOneComponent(Direction direction) {
        Vector3 v = new Vector3(2, 3, 5);
        double expected =
                switch (direction) {
                    case PLUS_X -> 2;
                    case MINUS_X -> -2;
                    case PLUS_Y -> 3;
                    case MINUS_Y -> -3;
                    case UP -> 5;
                    case DOWN -> -5;
                };
        assertThat(direction.component(v)).isEqualTo(expected);
        assertThat(direction.component(Vector3.ZERO)).isZero();
        assertThat(direction.symbol()).isNotBlank();
        for (Direction other : Direction.values()) {
            assertThat(other == direction).isEqualTo(other.symbol().equals(direction.symbol()));
        }
    }

    /** |a × b|² + (a·b)² = |a|²|b|² (Lagrange's identity), and the product is normal to both. */
    @Test
    void productsOfVectorsBelongTogether() {
        for (long seed = 1; seed <= 500; seed++) {
            SplittableRandom r = new SplittableRandom(seed);
            Vector3 a = random(r);
            Vector3 b = random(r);
            Vector3 c = a.cross(b);
            double size = a.dot(a) * b.dot(b);
            assertThat(c.dot(c) + a.dot(b) * a.dot(b)).as("seed %d", seed).isCloseTo(size, within(1e-12 * size));
            assertThat(c.dot(a)).as("seed %d", seed).isCloseTo(0, within(1e-12 * size));
            assertThat(c.dot(b)).as("seed %d", seed).isCloseTo(0, within(1e-12 * size));
            assertThat(c.plus(b.cross(a)).magnitude()).as("seed %d", seed).isLessThan(1e-12);
            double angle = a.angleTo(b);
            assertThat(Math.cos(angle) * a.magnitude() * b.magnitude())
                    .as("seed %d", seed)
                    .isCloseTo(a.dot(b), within(1e-12 * size));
            assertThat(b.angleTo(a)).as("seed %d", seed).isCloseTo(angle, within(1e-14));
        }
    }

    /** The cosine says nothing about angles of 1e-9; the friction at a nearly straight support needs them. */
    @Test
    void smallAnglesKeepTheirDigits() {
        for (double angle : new double[] {1e-12, 1e-9, 1e-6, 1e-3}) {
            Vector3 a = new Vector3(1, 0, 0);
            Vector3 b = new Vector3(Math.cos(angle), 0, Math.sin(angle));
            assertThat(a.angleTo(b)).isCloseTo(angle, within(1e-12 * angle + 1e-18));
            Vector3 back = new Vector3(-Math.cos(angle), Math.sin(angle), 0);
            assertThat(a.angleTo(back)).isCloseTo(Math.PI - angle, within(1e-15));
        }
    }

    /** Heron's formula against half of the cross product. */
    @Test
    void distancesOfPointsAreThoseOfTheTriangle() {
        for (long seed = 1; seed <= 200; seed++) {
            SplittableRandom r = new SplittableRandom(seed);
            Point p = Point.of(1, 2, 3);
            Point q = p.plus(random(r));
            Point s = p.plus(random(r));
            double a = p.distance(q);
            double b = q.distance(s);
            double c = s.distance(p);
            double half = 0.5 * (a + b + c);
            double heron = Math.sqrt(Math.max(0, half * (half - a) * (half - b) * (half - c)));
            double cross = 0.5 * q.minus(p).cross(s.minus(p)).magnitude();
            assertThat(heron).as("seed %d", seed).isCloseTo(cross, within(1e-6));
            assertThat(Math.hypot(p.horizontalDistance(q), q.z() - p.z()))
                    .as("seed %d", seed)
                    .isCloseTo(a, within(1e-13));
        }
    }

    @Test
    void aPointThatIsNotFinite() {
        assertThat(new Point(0, 0, 0).isFinite()).isTrue();
        assertThat(new Point(Double.NaN, 0, 0).isFinite()).isFalse();
        assertThat(new Point(0, Double.POSITIVE_INFINITY, 0).isFinite()).isFalse();
        assertThat(new Point(0, 0, Double.NEGATIVE_INFINITY).isFinite()).isFalse();
    }

    @Test
    void iterationsOneAfterTheOtherAddUp() {
        Convergence first = new Convergence(3, 1e-9, 1e-10);
        Convergence both = first.then(new Convergence(4, 1e-12, 1e-11));
        assertThat(both.iterations()).isEqualTo(7);
        assertThat(both.residual()).as("residual of what came last").isBetween(1e-12, 1e-9);
        assertThat(first.iterations()).isEqualTo(3);
    }

    @Test
    void theExceptionSaysWhereAndHowFar() {
        Convergence convergence = new Convergence(40, 0.25, 1e-10);
        NoEquilibriumException e = new NoEquilibriumException("span 2", 0.75, convergence);
        assertThat(e.where()).isEqualTo("span 2");
        assertThat(e.loadFactor()).isEqualTo(0.75);
        assertThat(e.convergence()).isEqualTo(convergence);
        assertThat(e.load()).isEmpty();
        assertThat(e)
                .hasMessageContaining("span 2")
                .hasMessageContaining("0.75")
                .hasMessageContaining("40");
    }

    @ParameterizedTest
    @EnumSource(Dimension.class)
    void dimensionsLeaveSiAlone(Dimension dimension) {
        for (double value : new double[] {-3.5, 0, 1e-9, 12345.678}) {
            assertThat(dimension.in(value, UnitSystem.SI)).isEqualTo(value);
            assertThat(dimension.exact(value, UnitSystem.SI)).isEqualByComparingTo(new java.math.BigDecimal(value));
        }
        assertThat(dimension.in(Double.NaN, UnitSystem.US_CUSTOMARY)).isNaN();
        assertThat(dimension.in(Double.POSITIVE_INFINITY, UnitSystem.US_CUSTOMARY))
                .isInfinite();
        assertThat(dimension.unit(UnitSystem.SI)).isNotBlank();
        assertThat(dimension.unit(UnitSystem.US_CUSTOMARY)).isNotBlank();
    }
}
