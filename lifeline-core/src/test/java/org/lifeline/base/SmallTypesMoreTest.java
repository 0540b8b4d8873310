package org.lifeline.base;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ListResourceBundle;
import java.util.ResourceBundle;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Points, vectors, texts of another language, listeners and the messages of what could not be solved. */
@SuppressWarnings("NullAway") // Null is handed over to be refused, and what is there is taken as there.
class SmallTypesMoreTest {
    private static final ResourceBundle ONE_SENTENCE = new ListResourceBundle() {
        @Override
        protected Object[][] getContents() {
            return new Object[][] {{"BLANK", "darf nicht leer sein"}};
        }
    };

    @ParameterizedTest
    @CsvSource({"3, 4, 12, 13, 5", "-3, 4, -12, 13, 5", "0, 0, -7, 7, 0", "0, 2, 0, 2, 2", "1, 0, 0, 1, 1"})
    void lengthsByPythagoras(double x, double y, double z, double length, double horizontal) {
        Vector3 v = new Vector3(x, y, z);
        assertThat(v.magnitude()).isEqualTo(length);
        assertThat(v.horizontal()).isEqualTo(horizontal);
        Point from = Point.of(10, -20, 30);
        Point to = from.plus(v);
        assertThat(from.distance(to)).isEqualTo(length);
        assertThat(from.horizontalDistance(to)).isEqualTo(horizontal);
        assertThat(to.horizontalDistance(from)).isEqualTo(horizontal);
        assertThat(to.minus(from)).isEqualTo(v);
    }

    @Test
    void thereAndBackIsWhereItWas() {
        Point p = Point.of(1.5, -2.25, 8);
        Vector3 v = new Vector3(0.5, 0.25, -4);
        assertThat(p.plus(v).plus(v.times(-1))).isEqualTo(p);
        assertThat(p.minus(p)).isEqualTo(Vector3.ZERO);
        assertThat(v.minus(v)).isEqualTo(Vector3.ZERO);
        assertThat(v.plus(v)).isEqualTo(v.times(2));
    }

    @ParameterizedTest
    @CsvSource({"NaN, 0, 0", "0, NaN, 0", "0, 0, NaN", "Infinity, 0, 0", "0, -Infinity, 0", "0, 0, Infinity"})
    void onePartThatIsNotFiniteMakesThePointNotFinite(double x, double y, double z) {
        assertThat(Point.of(x, y, z).isFinite()).isFalse();
        assertThat(Point.of(Double.MAX_VALUE, -Double.MAX_VALUE, 4.9e-324).isFinite())
                .isTrue();
    }

    /** 6² + 3² + 2² = 7² and 2·3 + 3·(-6) + 6·2 = 0: two edges of a box of the lengths 7, and their product of 49. */
    @Test
    void edgesOfABoxAtRightAngles() {
        Vector3 a = new Vector3(2, 3, 6);
        Vector3 b = new Vector3(3, -6, 2);
        assertThat(a.dot(b)).isZero();
        assertThat(a.cross(b)).isEqualTo(new Vector3(42, 14, -21));
        assertThat(a.cross(b).magnitude()).isEqualTo(49);
        assertThat(a.angleTo(b)).isCloseTo(Math.PI / 2, within(1e-15));
        assertThat(a.angleTo(a)).isZero();
        // Halves of an equilateral triangle: 60° between (1, 0, -1) and (0, 1, -1), cos = 1/2.
        assertThat(new Vector3(1, 0, -1).angleTo(new Vector3(0, 1, -1))).isCloseTo(Math.PI / 3, within(1e-15));
    }

    @Test
    void intervalsHoldWhatLiesBetweenTheirEnds() {
        Interval i = Interval.of(-0.5, 1.25);
        assertThat(i.low()).isEqualTo(-0.5);
        assertThat(i.high()).isEqualTo(1.25);
        assertThat(i.width()).isEqualTo(1.75);
        assertThat(i.contains(0)).isTrue();
        assertThat(Interval.exactly(3)).isEqualTo(Interval.of(3, 3));
        assertThat(Interval.exactly(3).contains(Math.nextUp(3.0))).isFalse();
    }

    @Test
    void theWorseOfTwoStagesIsTold() {
        Convergence fine = new Convergence(3, 1e-13, 1e-12);
        Convergence coarse = new Convergence(5, 1e-9, 1e-8);
        Convergence both = new Convergence(8, 1e-9, 1e-8);
        assertThat(fine.then(coarse)).isEqualTo(both);
        assertThat(coarse.then(fine)).isEqualTo(both);
    }

    @Test
    void whatABundleDoesNotHoldStaysEnglish() {
        MessageTexts texts = BundleTexts.of(ONE_SENTENCE);
        assertThat(texts.sentence(InputRule.BLANK)).isEqualTo("darf nicht leer sein");
        assertThat(texts.sentence(InputRule.MISSING)).isEqualTo("must be given");
        assertThat(MessageTexts.english().sentence(InputRule.BLANK)).isEqualTo("must not be blank");
        assertThatThrownBy(() -> BundleTexts.of(null))
                .isInstanceOf(InvalidInputException.class)
                .hasMessage("bundle: null: must be given");
    }

    @Test
    void aListenerThatDoesNotCareNeverStops() {
        ProgressListener none = ProgressListener.none();
        assertThat(none.progress(0, 10)).isTrue();
        assertThat(none.progress(10, 10)).isTrue();
    }

    @Test
    void theLoadIsToldOnlyWhereItIsKnown() {
        Convergence c = new Convergence(12, 0.5, 1e-10);
        NoEquilibriumException known =
                new NoEquilibriumException("span 1", new NoEquilibriumException.Reached(0.5, 3000), c);
        assertThat(known)
                .hasMessage("no equilibrium: span 1; last load factor 0.5, load 3000.0 N, residual 0.5"
                        + " (tolerance 1.0E-10) after 12 iterations");
        assertThat(known.load()).hasValue(3000);
        NoEquilibriumException unknown = new NoEquilibriumException("span 1", 0.5, c);
        assertThat(unknown).hasMessageNotContaining("load 3000").hasMessageContaining("last load factor 0.5, residual");
        assertThat(unknown.load()).isEmpty();
        assertThat(unknown.convergence()).isSameAs(c);
    }

    @Test
    void oppositeDirectionsReadOppositeComponents() {
        Vector3 v = new Vector3(1.5, -2, 0.25);
        assertThat(Direction.PLUS_X.component(v)).isEqualTo(1.5).isEqualTo(-Direction.MINUS_X.component(v));
        assertThat(Direction.PLUS_Y.component(v)).isEqualTo(-2).isEqualTo(-Direction.MINUS_Y.component(v));
        assertThat(Direction.UP.component(v)).isEqualTo(0.25).isEqualTo(-Direction.DOWN.component(v));
        assertThat(Direction.values())
                .extracting(Direction::symbol)
                .containsExactly("+x", "-x", "+y", "-y", "+z", "-z");
    }
}
