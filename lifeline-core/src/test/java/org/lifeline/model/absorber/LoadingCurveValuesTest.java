package org.lifeline.model.absorber;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.Refusal;
import org.lifeline.model.absorber.LoadingCurve.Corner;

/** Curves as values: scaled, side by side, equal, printed; what is no number; and the scatter of published absorbers. */
@SuppressWarnings("NullAway") // Null is handed over to be refused, and what is there is taken as there.
class LoadingCurveValuesTest {
    private static final double RIGID = Double.POSITIVE_INFINITY;

    /** Rises with 50 kN/m to 4 kN at 80 mm, then to 5 kN at 1 m, then 100 kN/m. */
    private static final LoadingCurve RISING =
            LoadingCurve.through(List.of(new Corner(0, 0), new Corner(0.08, 4000), new Corner(1, 5000)), RIGID, 1e5);

    private static LoadingCurve plateau(double force, double first, double stop) {
        return LoadingCurve.through(List.of(new Corner(0, force), new Corner(1, force)), first, stop);
    }

    /** Twice the forces at the same extensions: forces, stiffnesses and work are twice as large, extensions the same. */
    @Test
    void scalingIsProportional() {
        for (LoadingCurve c : List.of(RISING, plateau(6000, 1e5, 2e5), plateau(6000, RIGID, RIGID))) {
            LoadingCurve twice = c.scaled(2);
            for (double x : new double[] {0, 0.01, 0.08, 0.5, 1}) {
                assertThat(twice.force(x)).isEqualTo(2 * c.force(x));
                assertThat(twice.work(x)).isCloseTo(2 * c.work(x), within(1e-9));
            }
            assertThat(twice.activationForce()).isEqualTo(2 * c.activationForce());
            assertThat(twice.initialStiffness()).isEqualTo(2 * c.initialStiffness());
            assertThat(twice.stopStiffness()).isEqualTo(2 * c.stopStiffness());
            assertThat(twice.rigidForce()).isEqualTo(2 * c.rigidForce());
            assertThat(twice.lastForce()).isEqualTo(2 * c.lastForce());
            assertThat(twice.maximumExtension()).isEqualTo(c.maximumExtension());
            assertThat(twice.scaled(0.5)).isEqualTo(c);
            assertThat(c.scaled(1)).isEqualTo(c).hasSameHashCodeAs(c);
        }
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, -1, Double.NaN, Double.POSITIVE_INFINITY})
    void aCurveIsScaledByFinitePositiveFactors(double factor) {
        assertThat(Refusal.of(() -> RISING.scaled(factor)))
                .containsExactly("factor: " + factor + ": must be a finite number above zero");
    }

    /** Nothing turns rigid, or into nothing, by being scaled; what is a sum already may stay what it is. */
    @Test
    void aCurveStaysOneThatCanBeStated() {
        LoadingCurve stiff = LoadingCurve.spring(1e15);
        assertThat(Refusal.of(() -> stiff.scaled(1e300)))
                .containsExactly("factor: 1.0E300: must lie from 1.0E-17 to 1.0");
        assertThat(Refusal.of(() -> LoadingCurve.spring(1e-2).scaled(1e-320)))
                .containsExactly("factor: 1.0E-320: must lie from 1.0 to 1.0E17");
        assertThat(Refusal.of(() -> plateau(6000, RIGID, RIGID).scaled(1e6)))
                .containsExactly("factor: 1000000.0: must lie from " + Double.MIN_NORMAL / 6000 + " to " + 1e9 / 6000);
        assertThat(stiff.scaled(1e-17).stopStiffness()).isEqualTo(1e-2);
        LoadingCurve sum = LoadingCurve.parallel(List.of(stiff, stiff));
        assertThat(sum.scaled(1)).isEqualTo(sum);
        assertThat(Refusal.of(() -> sum.scaled(1.5))).hasSize(1);
        assertThat(sum.scaled(0.5)).isEqualTo(stiff);
        LoadingCurve faint = plateau(1e-300, RIGID, RIGID);
        assertThat(faint.scaled(1e300).lastForce()).isEqualTo(1);
        assertThat(Refusal.of(() -> faint.scaled(1e-20))).hasSize(1);
    }

    /** Trapezes by hand: ½ 4 kN 80 mm = 160 J; then 4.5 kN mean over 0.92 m = 4140 J; then 5 kN 0.1 m + ½ 100 kN/m 0.01 m². */
    @ParameterizedTest
    @CsvSource({
        "0, 0, 0",
        "0.04, 2000, 40",
        "0.08, 4000, 160",
        "0.54, 4500, 2115",
        "1, 5000, 4300",
        "1.1, 15000, 5300",
        "-0.1, 0, 0"
    })
    void forceAndWorkByHand(double x, double force, double work) {
        assertThat(RISING.force(x)).isCloseTo(force, within(1e-9));
        assertThat(RISING.work(x)).isCloseTo(work, within(1e-9));
    }

    @Test
    void whatIsNoNumberGivesNoNumber() {
        assertThat(RISING.force(Double.NaN)).isNaN();
        assertThat(RISING.work(Double.NaN)).isNaN();
        assertThat(RISING.force(RIGID)).isInfinite();
        assertThat(RISING.force(Double.NEGATIVE_INFINITY)).isZero();
    }

    /** Between the corners force and extension are each other's inverse; both ends of a plateau carry its force. */
    @ParameterizedTest
    @ValueSource(doubles = {1, 1999, 4000, 4001, 4999.5, 5000, 5001, 80_000})
    void extensionsAreTheInverseOfTheForce(double force) {
        assertThat(RISING.force(RISING.nearExtension(force))).isCloseTo(force, within(1e-8));
        assertThat(RISING.force(RISING.farExtension(force))).isCloseTo(force, within(1e-8));
        assertThat(RISING.nearExtension(force)).isCloseTo(RISING.farExtension(force), within(1e-12));
        LoadingCurve flat = plateau(force, 1e6, 1e6);
        assertThat(flat.nearExtension(force)).isEqualTo(force / 1e6);
        assertThat(flat.farExtension(force)).isEqualTo(1);
    }

    @Test
    void twoEqualCurvesSideBySideAreOneOfTwiceTheForce() {
        for (LoadingCurve c : List.of(RISING, plateau(6000, 1e5, 2e5), plateau(6000, RIGID, RIGID))) {
            LoadingCurve both = LoadingCurve.parallel(List.of(c, c));
            assertThat(both).isEqualTo(c.scaled(2));
            assertThat(LoadingCurve.parallel(List.of(both, c))).isEqualTo(LoadingCurve.parallel(List.of(c, both)));
        }
    }

    /** A stop that does not give ends the movement of all: 1 m of the first, though the second goes on to 2 m. */
    @Test
    void theFirstRigidStopEndsThemAll() {
        LoadingCurve longer = LoadingCurve.through(List.of(new Corner(0, 1000), new Corner(2, 3000)), RIGID, RIGID);
        LoadingCurve both = LoadingCurve.parallel(List.of(plateau(6000, RIGID, RIGID), longer));
        assertThat(both.corners()).containsExactly(new Corner(0, 7000), new Corner(1, 8000));
        assertThat(both.maximumExtension()).isEqualTo(1);
        assertThat(both.stopStiffness()).isInfinite();
        assertThat(both.activationForce()).isEqualTo(7000);
        LoadingCurve soft = LoadingCurve.parallel(List.of(plateau(6000, RIGID, 5e4), LoadingCurve.spring(1e4)));
        assertThat(soft.stopStiffness()).isCloseTo(6e4, within(1e-9));
        assertThat(soft.force(0.5)).isCloseTo(11_000, within(1e-9));
        assertThat(soft.force(1.5)).isCloseTo(6000 + 25_000 + 15_000, within(1e-8));
    }

    @Test
    void noCurvesSideBySideAreRefused() {
        assertThat(Refusal.of(() -> LoadingCurve.parallel(List.of())))
                .containsExactly("curves: []: must name at least one curve");
        assertThat(Refusal.of(() -> LoadingCurve.parallel(Arrays.asList(RISING, null))))
                .containsExactly("curves[1]: null: must be given");
        assertThat(Refusal.of(() -> LoadingCurve.parallel(null))).containsExactly("curves: null: must be given");
    }

    @Test
    void curvesAreEqualWhenCornersStopAndStartAre() {
        LoadingCurve c = plateau(6000, 1e5, 2e5);
        assertThat(c).isEqualTo(plateau(6000, 1e5, 2e5)).hasSameHashCodeAs(plateau(6000, 1e5, 2e5));
        for (LoadingCurve other : List.of(
                plateau(6001, 1e5, 2e5),
                plateau(6000, 1.1e5, 2e5),
                plateau(6000, 1e5, 2.1e5),
                LoadingCurve.through(List.of(new Corner(0, 6000), new Corner(1.1, 6000)), 1e5, 2e5),
                LoadingCurve.through(
                        List.of(new Corner(0, 0), new Corner(0.06, 6000), new Corner(1, 6000)), RIGID, 2e5))) {
            assertThat(other).isNotEqualTo(c);
            assertThat(other.hashCode()).isNotEqualTo(c.hashCode());
        }
        assertThat(c).isNotEqualTo(c.toString());
    }

    @Test
    void aCurveIsPrintedWithItsUnits() {
        assertThat(plateau(6000, RIGID, RIGID)).hasToString("[6000.0, 6000.0] N at [0.0, 1.0] m");
        assertThat(plateau(6000, 1e5, 2e5))
                .hasToString("[0.0, 6000.0, 6000.0] N at [0.0, 0.06, 1.0] m, then 200000.0 N/m");
        assertThat(LoadingCurve.spring(5e4)).hasToString("[0.0] N at [0.0] m, then 50000.0 N/m");
    }

    @Test
    void everyPieceIsAStraightLineThroughItsCorner() {
        for (int i = 0; i < RISING.pieces(); i++) {
            double start = RISING.pieceStart(i);
            assertThat(RISING.forceOnPiece(i, start)).isEqualTo(RISING.force(start));
            assertThat(RISING.forceOnPiece(i, start + 0.02)).isCloseTo(RISING.force(start + 0.02), within(1e-9));
            assertThat(RISING.slope(start)).isEqualTo(RISING.slopeOfPiece(i));
            assertThat(RISING.piece(start)).isEqualTo(i);
        }
        assertThat(RISING.slopeOfPiece(1)).isCloseTo(1000 / 0.92, within(1e-9));
        assertThat(RISING.piece(Math.nextDown(0.08))).isZero();
        assertThat(RISING.piece(-1)).isZero();
    }

    @ParameterizedTest
    @ValueSource(ints = {-1, 3})
    void thereIsNoPieceBeforeTheFirstNorAfterTheLast(int piece) {
        assertThatThrownBy(() -> RISING.slopeOfPiece(piece))
                .isInstanceOf(InvalidInputException.class)
                .hasMessage("piece: " + piece + ": must be a number from 0 to 2");
        assertThatThrownBy(() -> RISING.forceOnPiece(piece, 0.5)).isInstanceOf(InvalidInputException.class);
        assertThatThrownBy(() -> RISING.corners().clear()).isInstanceOf(UnsupportedOperationException.class);
    }

    @Test
    void aStartAsSteepAsTheFirstPieceNeverMeetsIt() {
        List<Corner> corners = List.of(new Corner(0, 4000), new Corner(1, 5000));
        assertThat(Refusal.paths(() -> LoadingCurve.through(corners, 1000, 1e5)))
                .containsExactly("initialStiffness");
        // 5000 N/m meets the last corner itself: 5 kN at 1 m.
        assertThat(LoadingCurve.through(corners, 5000, 1e5).corners())
                .containsExactly(new Corner(0, 0), new Corner(1, 5000));
        assertThat(Refusal.paths(() -> LoadingCurve.through(corners, Math.nextDown(5000.0), 1e5)))
                .containsExactly("initialStiffness");
    }

    @Test
    void aCurveTakesAThousandCornersAndNoNulls() {
        List<Corner> corners = new ArrayList<>();
        for (int i = 0; i < 1000; i++) {
            corners.add(new Corner(0.001 * i, 1000 + i));
        }
        assertThat(LoadingCurve.through(corners, RIGID, RIGID).pieces()).isEqualTo(1000);
        corners.add(new Corner(1, 2000));
        assertThat(Refusal.of(() -> LoadingCurve.through(corners, RIGID, RIGID)))
                .containsExactly("curve: 1001 corners: a curve needs no more corners");
        assertThat(Refusal.of(() -> LoadingCurve.through(Arrays.asList(new Corner(0, 1), null), RIGID, RIGID)))
                .containsExactly("curve[1]: null: must be given");
        assertThat(Refusal.of(() -> LoadingCurve.through(null, RIGID, RIGID)))
                .containsExactly("curve: null: must be given");
    }

    /** Average over maximum 0.875: Carrión et al. 2020 (published); a statement is narrower only above that share. */
    @ParameterizedTest
    @CsvSource({"5250, 6000, false", "5251, 6000, true", "6000, 6000, true", "3000, 6000, false"})
    void aStatementNarrowerThanThePublishedScatter(double clearance, double maximum, boolean narrower) {
        assertThat(PublishedScatter.AVERAGE_OVER_MAXIMUM).isEqualTo(0.875);
        assertThat(PublishedScatter.SOURCE).endsWith("(published)");
        assertThat(PublishedScatter.isNarrower(plateau(clearance, RIGID, RIGID), plateau(maximum, RIGID, RIGID)))
                .isEqualTo(narrower);
    }

    @Test
    void aSpringHasNoScatterAndNoCurveIsNone() {
        LoadingCurve spring = LoadingCurve.spring(5e4);
        assertThat(PublishedScatter.isNarrower(spring, spring)).isFalse();
        assertThat(PublishedScatter.isNarrower(plateau(1000, RIGID, RIGID), spring))
                .isFalse();
        assertThat(Refusal.of(() -> PublishedScatter.isNarrower(null, spring)))
                .containsExactly("clearance: null: must be given");
        assertThat(Refusal.of(() -> PublishedScatter.isNarrower(spring, null)))
                .containsExactly("maximum: null: must be given");
    }
}
