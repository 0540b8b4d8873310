package org.lifeline.analysis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.lifeline.base.NoEquilibriumException;
import org.lifeline.base.Point;
import org.lifeline.base.Refusal;
import org.lifeline.base.Vector3;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Passage;
import org.lifeline.model.Place;
import org.lifeline.model.Stiffness;
import org.lifeline.model.Support;
import org.lifeline.model.cable.Cable;

/** Supports that yield as a line is tensioned: each by what pulls on it over its stiffness, and where cable comes to hang. */
class YieldingSupportsTest {
    private static final double RIGID = Double.POSITIVE_INFINITY;
    private static final double TENSION = 3000;

    private static Lifeline line(Stiffness end, Stiffness post) {
        return Lifeline.builder()
                .cable(Cable.builder().massPerLength(0.5).axialStiffness(4e6).build())
                .support(Support.end("a", Point.of(0, 0, 6)).withStiffness(end))
                .support(Support.intermediate("p", Point.of(9, 4, 6.5), Passage.free())
                        .withStiffness(post))
                .support(Support.end("b", Point.of(20, 1, 6)).withStiffness(end))
                .pretension(TENSION)
                .build();
    }

    private static double component(Vector3 v, int axis) {
        return axis == 0 ? v.x() : axis == 1 ? v.y() : v.z();
    }

    /** u = R/k in every elastic direction, and none in the others; stiff supports and soft ones. */
    @Test
    void everySupportYieldsByItsForceOverItsStiffness() {
        Stiffness[] ends = {
            new Stiffness(4e5, 5e5, 6e5), new Stiffness(2e4, RIGID, RIGID), new Stiffness(RIGID, RIGID, RIGID)
        };
        Stiffness[] posts = {
            new Stiffness(RIGID, 3e5, RIGID), new Stiffness(1e4, 3e3, 2e4), new Stiffness(RIGID, RIGID, 5e4)
        };
        for (int k = 0; k < ends.length; k++) {
            Lifeline before = line(ends[k], posts[k]);
            Lifeline after = Statics.withYieldedSupports(before);
            LineEquilibrium e = Statics.withDefaults().solve(after, List.of());
            double most = 0;
            for (int i = 0; i < 3; i++) {
                Point from = before.supports().get(i).position();
                Point to = after.supports().get(i).position();
                double[] moved = {to.x() - from.x(), to.y() - from.y(), to.z() - from.z()};
                Stiffness s = i == 1 ? posts[k] : ends[k];
                double[] stiffness = {s.x(), s.y(), s.z()};
                for (int axis = 0; axis < 3; axis++) {
                    double force = component(e.supports().get(i).vector(), axis);
                    double want = Double.isInfinite(stiffness[axis]) ? 0 : force / stiffness[axis];
                    assertThat(moved[axis])
                            .as("case %d, support %d, axis %d", k, i, axis)
                            .isCloseTo(want, within(1e-8));
                    most = Math.max(most, Math.abs(moved[axis]));
                }
            }
            assertThat(most).as("case %d", k).isGreaterThan(k == 1 ? 0.3 : 1e-5);
            assertThat(after.supports().get(1).stiffness()).isEqualTo(posts[k]);
        }
    }

    /** Ends of a level span with a given tension come nearer to each other by twice its horizontal part over k. */
    @Test
    void theEndsOfALevelSpanComeNearer() {
        for (double stiffness : new double[] {1e6, 1e4}) {
            Lifeline before = Lifeline.builder()
                    .cable(Cable.builder()
                            .massPerLength(0.5)
                            .axialStiffness(4e6)
                            .build())
                    .support(Support.end("a", Point.of(0, 0, 6)).withStiffness(Stiffness.alongX(stiffness)))
                    .support(Support.end("b", Point.of(10, 0, 6)).withStiffness(Stiffness.alongX(stiffness)))
                    .pretension(TENSION)
                    .build();
            Lifeline after = Statics.withYieldedSupports(before);
            double horizontal =
                    Statics.withDefaults().solve(after, List.of()).span(1).horizontalTension();
            assertThat(horizontal).isCloseTo(TENSION, within(1e-3 * TENSION));
            assertThat(after.supports().get(0).position().x()).isCloseTo(horizontal / stiffness, within(1e-9));
            assertThat(after.supports().get(1).position().x()).isCloseTo(10 - horizontal / stiffness, within(1e-9));
        }
    }

    /** What yields and is unloaded again stands where it was built. */
    @Test
    void unloadedSupportsGoBackToWhereTheyWereBuilt() {
        for (double stiffness : new double[] {5e4, 1e6}) {
            Lifeline built = line(Stiffness.alongX(stiffness), new Stiffness(RIGID, stiffness, 2 * stiffness));
            Lifeline back = Statics.withUnloadedSupports(Statics.withYieldedSupports(built));
            for (int i = 0; i < 3; i++) {
                assertThat(back.supports()
                                .get(i)
                                .position()
                                .distance(built.supports().get(i).position()))
                        .isLessThan(1e-9);
            }
            assertThat(back.supports().get(1).stiffness())
                    .isEqualTo(built.supports().get(1).stiffness());
        }
    }

    @Test
    void rigidSupportsStayWhereTheyAre() {
        Lifeline line = line(new Stiffness(RIGID, RIGID, RIGID), new Stiffness(RIGID, RIGID, RIGID));
        assertThat(Statics.withYieldedSupports(line)).isEqualTo(line);
    }

    /** Supports that are pulled past each other before they hold find no place. */
    @Test
    void supportsThatAreTooSoftFindNoPlace() {
        Lifeline soft = Lifeline.builder()
                .cable(Cable.builder().massPerLength(0.5).axialStiffness(4e6).build())
                .support(Support.end("a", Point.of(0, 0, 6)).withStiffness(Stiffness.alongX(300)))
                .support(Support.end("b", Point.of(10, 0, 6)).withStiffness(Stiffness.alongX(300)))
                .pretension(TENSION)
                .build();
        assertThatThrownBy(() -> Statics.withYieldedSupports(soft))
                .isInstanceOf(NoEquilibriumException.class)
                .hasMessageContaining("supports that yield");
    }

    private static Lifeline level(double span, double mass, double tension, double stiffness) {
        return Lifeline.builder()
                .cable(Cable.builder().massPerLength(mass).axialStiffness(4e6).build())
                .support(Support.end("a", Point.of(0, 0, 60)).withStiffness(Stiffness.alongX(stiffness)))
                .support(Support.end("b", Point.of(span, 0, 60)).withStiffness(Stiffness.alongX(stiffness)))
                .pretension(tension)
                .build();
    }

    /** A line that is too heavy for its pretension is refused for that, whether its supports yield or not. */
    @Test
    void aLineThatCannotHangIsRefusedForThat() {
        List<String> rigid = Refusal.of(() -> Statics.withDefaults().solve(level(100, 2, 400, RIGID), List.of()));
        assertThat(rigid).hasSize(1);
        assertThat(Refusal.of(() -> Statics.withYieldedSupports(level(100, 2, 400, 1e6))))
                .isEqualTo(rigid);
    }

    private static NoEquilibriumException lost(Lifeline line) {
        NoEquilibriumException e =
                catchThrowableOfType(NoEquilibriumException.class, () -> Statics.withYieldedSupports(line));
        assertThat(e).isNotNull();
        return e;
    }

    /** What is missing is told as a share of the span: the same for a line of twice the length with the same forces. */
    @Test
    void whatIsMissingIsAShareOfTheSpan() {
        double small = lost(level(10, 0.5, TENSION, 300)).convergence().residual();
        double large = lost(level(20, 0.25, TENSION, 150)).convergence().residual();
        assertThat(small).isGreaterThan(0.1);
        // Where no part of a step comes nearer is found by halving, and by differences that carry rounding.
        assertThat(large).isCloseTo(small, within(1e-3 * small));
    }

    /** A line of twice the length with the same forces, its supports half as stiff, yields by the same shares. */
    @Test
    void aLineOfTwiceTheLengthYieldsTwiceAsFar() {
        for (double stiffness : new double[] {1e6, 3e4, 3e3}) {
            Lifeline small = Statics.withYieldedSupports(level(10, 0.5, TENSION, stiffness));
            Lifeline large = Statics.withYieldedSupports(level(20, 0.25, TENSION, stiffness / 2));
            for (int i = 0; i < 2; i++) {
                assertThat(large.supports().get(i).position().x())
                        .isCloseTo(2 * small.supports().get(i).position().x(), within(1e-8));
            }
        }
    }

    /** A model of a thousandth of the size, its forces the same: what is missing at the end is a share of the span as well. */
    @Test
    void aSmallModelYieldsByTheSameShares() {
        for (double stiffness : new double[] {1e5, 1e4, 1e3}) {
            Lifeline large = Statics.withYieldedSupports(level(10, 0.5, TENSION, stiffness));
            Lifeline small = Statics.withYieldedSupports(level(0.01, 500, TENSION, 1e3 * stiffness));
            for (int i = 0; i < 2; i++) {
                assertThat(small.supports().get(i).position().x() / 0.01)
                        .as("support %d of stiffness %s", i, stiffness)
                        .isCloseTo(large.supports().get(i).position().x() / 10, within(2e-11));
            }
        }
    }

    /** Each of two ends that are too soft has gone half of the span when they meet: tension over stiffness less that is missing. */
    @Test
    void endsThatAreTooSoftMissWhatTheyWouldStillGoWhenTheyMeet() {
        for (double stiffness : new double[] {550, 300, 30}) {
            double missing =
                    lost(level(10, 0.5, TENSION, stiffness)).convergence().residual();
            // They cannot come nearer than the shortest span that a line may have.
            assertThat(missing).as("stiffness %s", stiffness).isCloseTo(TENSION / stiffness / 10 - 0.5, within(1e-3));
        }
    }

    /** Half of the cable of a level span hangs at its middle; a whole span more lies in the next one. */
    @Test
    void aPointOfTheCableHangsWhereItsLengthSays() {
        Lifeline line = Lifeline.builder()
                .cable(Cable.builder().massPerLength(0.5).axialStiffness(4e6).build())
                .endAnchor("a", Point.of(0, 0, 6))
                .intermediateAnchor("p", Point.of(10, 0, 6), Passage.free())
                .endAnchor("b", Point.of(18, 6, 6))
                .pretension(TENSION)
                .build();
        LineEquilibrium e = Statics.withDefaults().solve(line, List.of());
        double first = e.span(1).unstretchedLength();
        double second = e.span(2).unstretchedLength();
        assertPlace(Statics.placeOfCablePoint(line, 0.5 * first), 1, 5);
        assertPlace(Statics.placeOfCablePoint(line, first + 0.5 * second), 2, 5);
        for (double outside : new double[] {0, -1, first + second, first + second + 1}) {
            assertThat(Refusal.paths(() -> Statics.placeOfCablePoint(line, outside)))
                    .as("length %s", outside)
                    .containsExactly("length");
        }
    }

    private static void assertPlace(Place place, int span, double station) {
        assertThat(place.span()).isEqualTo(span);
        assertThat(place.station()).isCloseTo(station, within(1e-6));
    }
}
