package org.lifeline.base;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * Laws of the algebra of vectors, checked on all vectors with components from -2 to 2 in turn with two fixed ones: whole numbers,
 * so that sums and products are exact and the laws hold to the last digit.
 */
class VectorAlgebraTest {
    private static final Vector3 B = new Vector3(3, -1, 2);
    private static final Vector3 C = new Vector3(-4, 5, 7);

    private static List<Vector3> all() {
        List<Vector3> list = new ArrayList<>();
        for (int i = 0; i < 125; i++) {
            list.add(new Vector3(i % 5 - 2, i / 5 % 5 - 2, i / 25 - 2));
        }
        return list;
    }

    /** Equal but for the sign of a zero, which two orders of the same sum may differ in. */
    private static void same(Vector3 one, Vector3 other) {
        assertThat(one.minus(other).magnitude()).as("%s and %s", one, other).isZero();
    }

    @Test
    void sumsCommuteAndAssociate() {
        for (Vector3 a : all()) {
            same(a.plus(B), B.plus(a));
            same(a.plus(B).plus(C), a.plus(B.plus(C)));
            same(a.minus(B), a.plus(B.times(-1)));
            same(a.plus(Vector3.ZERO), a);
            same(a.times(0), Vector3.ZERO);
            same(a.times(3), a.plus(a).plus(a));
        }
    }

    @Test
    void theInnerProductIsSymmetricAndLinear() {
        for (Vector3 a : all()) {
            assertThat(a.dot(B)).isEqualTo(B.dot(a));
            assertThat(a.dot(B.plus(C))).isEqualTo(a.dot(B) + a.dot(C));
            assertThat(a.times(-3).dot(B)).isEqualTo(-3 * a.dot(B));
            assertThat(a.dot(a)).isCloseTo(a.magnitude() * a.magnitude(), within(1e-14));
        }
    }

    @Test
    void theCrossProductChangesSignWithItsOrderAndIsLinear() {
        for (Vector3 a : all()) {
            same(a.cross(B), B.cross(a).times(-1));
            same(a.cross(a), Vector3.ZERO);
            same(a.cross(B.plus(C)), a.cross(B).plus(a.cross(C)));
            same(a.times(2).cross(B), a.cross(B).times(2));
        }
    }

    /** a × (b × c) = b (a·c) - c (a·b), and the sum of the three turned round is nothing (Jacobi). */
    @Test
    void productsOfThreeVectors() {
        for (Vector3 a : all()) {
            same(a.cross(B.cross(C)), B.times(a.dot(C)).minus(C.times(a.dot(B))));
            same(a.cross(B.cross(C)).plus(B.cross(C.cross(a))).plus(C.cross(a.cross(B))), Vector3.ZERO);
        }
    }

    /** The volume of the box on three edges is the determinant of their components, by the rule of Sarrus. */
    @Test
    void theTripleProductIsTheDeterminant() {
        for (Vector3 a : all()) {
            double sarrus = a.x() * B.y() * C.z()
                    + a.y() * B.z() * C.x()
                    + a.z() * B.x() * C.y()
                    - a.z() * B.y() * C.x()
                    - a.x() * B.z() * C.y()
                    - a.y() * B.x() * C.z();
            assertThat(a.dot(B.cross(C))).isEqualTo(sarrus);
            assertThat(a.cross(B).dot(C)).isEqualTo(sarrus);
        }
    }

    @Test
    void lengthsObeyTheTriangleAndDoNotChangeWhenTurned() {
        for (Vector3 a : all()) {
            assertThat(a.plus(B).magnitude()).isLessThanOrEqualTo(a.magnitude() + B.magnitude() + 1e-14);
            assertThat(a.magnitude()).isGreaterThanOrEqualTo(a.horizontal());
            Vector3 quarter = new Vector3(-a.y(), a.x(), a.z());
            assertThat(quarter.magnitude()).isCloseTo(a.magnitude(), within(1e-15));
            assertThat(quarter.horizontal()).isCloseTo(a.horizontal(), within(1e-15));
            assertThat(a.times(-1).magnitude()).isEqualTo(a.magnitude());
        }
    }

    @Test
    void anglesDoNotDependOnLengthsAndAddUpToAHalfTurn() {
        for (Vector3 a : all()) {
            if (a.magnitude() > 0) {
                double angle = a.angleTo(B);
                assertThat(a.times(1000).angleTo(B.times(0.001))).isCloseTo(angle, within(1e-14));
                assertThat(angle + a.angleTo(B.times(-1))).isCloseTo(Math.PI, within(1e-14));
                assertThat(B.angleTo(a)).isCloseTo(angle, within(1e-15));
                // The cosine law, where the cosine carries its digits.
                double cosine = a.dot(B) / (a.magnitude() * B.magnitude());
                assertThat(Math.cos(angle)).isCloseTo(cosine, within(1e-15));
            }
        }
        assertThat(Vector3.ZERO.angleTo(B)).as("no direction at all").isZero();
    }

    @Test
    void pointsAreMovedByVectors() {
        Point p = Point.of(1, -2, 3);
        for (Vector3 a : all()) {
            assertThat(p.plus(a).minus(p)).isEqualTo(a.plus(Vector3.ZERO));
            assertThat(p.plus(a).distance(p)).isEqualTo(a.magnitude());
            assertThat(p.plus(a).horizontalDistance(p)).isEqualTo(a.horizontal());
            assertThat(p.plus(a).plus(B)).isEqualTo(p.plus(a.plus(B)));
        }
    }

    /** Six directions: the components along an axis and against it cancel, and their squares make up the length twice. */
    @Test
    void componentsAlongTheSixDirections() {
        for (Vector3 a : all()) {
            double sum = 0;
            double squares = 0;
            for (Direction each : Direction.values()) {
                double c = each.component(a);
                sum += c;
                squares += c * c;
            }
            assertThat(sum).isZero();
            assertThat(squares).isEqualTo(2 * a.dot(a));
        }
    }
}
