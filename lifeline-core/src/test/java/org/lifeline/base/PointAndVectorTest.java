package org.lifeline.base;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class PointAndVectorTest {
    private static final Vector3 X = new Vector3(1, 0, 0);
    private static final Vector3 Y = new Vector3(0, 1, 0);
    private static final Vector3 Z = new Vector3(0, 0, 1);

    @Test
    void pointsAndTheirDifferences() {
        Point a = Point.of(1, 2, 3);
        Point b = Point.of(4, 6, 15);
        assertThat(b.minus(a)).isEqualTo(new Vector3(3, 4, 12));
        assertThat(a.plus(new Vector3(3, 4, 12))).isEqualTo(b);
        assertThat(a.distance(b)).isEqualTo(13);
        assertThat(b.distance(a)).isEqualTo(13);
        assertThat(a.horizontalDistance(b)).isEqualTo(5);
        assertThat(a.x()).isEqualTo(1);
        assertThat(a.y()).isEqualTo(2);
        assertThat(a.z()).isEqualTo(3);
    }

    @Test
    void finitePoints() {
        assertThat(Point.of(0, 0, 0).isFinite()).isTrue();
        assertThat(Point.of(Double.NaN, 0, 0).isFinite()).isFalse();
        assertThat(Point.of(0, Double.POSITIVE_INFINITY, 0).isFinite()).isFalse();
        assertThat(Point.of(0, 0, Double.NEGATIVE_INFINITY).isFinite()).isFalse();
    }

    @Test
    void sumsAndMultiples() {
        Vector3 v = new Vector3(1, -2, 3);
        assertThat(v.plus(new Vector3(10, 20, 30))).isEqualTo(new Vector3(11, 18, 33));
        assertThat(v.minus(new Vector3(10, 20, 30))).isEqualTo(new Vector3(-9, -22, -27));
        assertThat(v.times(-2)).isEqualTo(new Vector3(-2, 4, -6));
        assertThat(v.plus(Vector3.ZERO)).isEqualTo(v);
        assertThat(new Vector3(2, 3, 6).magnitude()).isEqualTo(7);
        assertThat(new Vector3(3, -4, 99).horizontal()).isEqualTo(5);
    }

    @Test
    void products() {
        assertThat(X.cross(Y)).isEqualTo(Z);
        assertThat(Y.cross(Z)).isEqualTo(X);
        assertThat(Z.cross(X)).isEqualTo(Y);
        assertThat(new Vector3(1, 2, 3).dot(new Vector3(4, -5, 6))).isEqualTo(12);
        SplittableRandom r = new SplittableRandom(3);
        for (int i = 0; i < 1000; i++) {
            Vector3 a = random(r);
            Vector3 b = random(r);
            assertThat(a.cross(b).dot(a)).isCloseTo(0, within(1e-12));
            assertThat(a.cross(b).plus(b.cross(a)).magnitude()).isZero();
            // Lagrange's identity
            double lagrange = a.dot(a) * b.dot(b) - a.dot(b) * a.dot(b);
            assertThat(a.cross(b).dot(a.cross(b))).isCloseTo(lagrange, within(1e-9));
        }
    }

    private static Vector3 random(SplittableRandom r) {
        return new Vector3(r.nextDouble(-5, 5), r.nextDouble(-5, 5), r.nextDouble(-5, 5));
    }

    @Test
    void anglesFromTinyToOpposed() {
        assertThat(X.angleTo(Y)).isCloseTo(Math.PI / 2, within(1e-15));
        assertThat(X.angleTo(X.times(7))).isZero();
        assertThat(X.angleTo(X.times(-3))).isCloseTo(Math.PI, within(1e-15));
        for (double angle = 1e-12; angle < 3; angle *= 7) {
            Vector3 turned = new Vector3(Math.cos(angle), Math.sin(angle), 0);
            assertThat(X.angleTo(turned.times(40))).isCloseTo(angle, within(2e-15 * Math.max(1, angle)));
            assertThat(X.angleTo(turned)).isCloseTo(angle, within(1e-4 * angle));
        }
    }
}
