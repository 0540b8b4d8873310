package org.lifeline.analysis.explain;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.lifeline.base.UnitSystem;
import org.lifeline.base.unit.Dimension;
import org.lifeline.model.absorber.LoadingCurve;

/** What the sheet makes of a loading curve, against the area under it and the force on it. */
class CurveExplanationTest {
    private static final double STOP = 2e5;

    /** Rigid up to 1 kN, rising to 3 kN, a plateau, rising to 5 kN, and a stop of 200 kN/m. */
    private static final LoadingCurve CURVE = LoadingCurve.through(
            List.of(
                    new LoadingCurve.Corner(0, 1000),
                    new LoadingCurve.Corner(0.1, 3000),
                    new LoadingCurve.Corner(0.4, 3000),
                    new LoadingCurve.Corner(0.6, 5000)),
            Double.POSITIVE_INFINITY,
            STOP);

    /** A curve on a sheet up to an extension. */
    private static final class Written {
        private final CalculationSheet sheet = new CalculationSheet(UnitSystem.SI);
        private final CurveExplanation curve;
        private final Figure extension;
        private final Figure force;
        private final double x;

        Written(LoadingCurve law, double x) {
            this.x = x;
            extension = sheet.given("x", "extension", x, Dimension.LENGTH, "test");
            force = sheet.given("P", "force", x > 0 ? law.force(x) : law.rigidForce(), Dimension.FORCE, "test");
            curve = new CurveExplanation(sheet, law, "c", "data sheet");
            curve.writeCorners(x);
        }

        double work() {
            return curve.work(extension, force, x).value(Figure::value);
        }

        Optional<Double> again() {
            return curve.extensionAt(force, x).map(e -> e.value(Figure::value));
        }

        List<CalculationStep> steps() {
            return sheet.finish();
        }
    }

    /** Area under the curve by the midpoint rule in strips of a tenth of a millimetre. */
    private static double area(LoadingCurve law, double x) {
        int n = (int) Math.round(x / 1e-4);
        double sum = 0;
        for (int i = 0; i < n; i++) {
            sum += law.force((i + 0.5) * x / n) * x / n;
        }
        return sum;
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.05, 0.1, 0.2, 0.4, 0.5, 0.6, 0.7})
    void theTrapezoidsAreTheAreaUnderTheCurve(double x) {
        assertThat(new Written(CURVE, x).work()).isCloseTo(area(CURVE, x), within(1e-6 * area(CURVE, x)));
    }

    @Test
    void nothingIsTakenBeforeItExtends() {
        Written w = new Written(CURVE, 0);
        assertThat(w.work()).isZero();
        assertThat(w.again()).isEmpty();
        assertThat(w.curve.onPlateau(0)).isFalse();
    }

    /** The reader needs the corners that were passed and the next one, no more; before the first move, all of them. */
    @ParameterizedTest
    @CsvSource({"0.05, 2", "0.1, 2", "0.1001, 3", "0.4, 3", "0.5, 4", "0.6, 4", "0.7, 4", "0, 4"})
    void cornersAreWrittenUpToTheFirstThatIsNotPassed(double x, int corners) {
        List<CalculationStep> steps = new Written(CURVE, x).steps();
        assertThat(steps).filteredOn(s -> s.symbol().startsWith("x_c")).hasSize(corners);
        for (int i = 0; i < corners; i++) {
            int at = i;
            assertThat(steps)
                    .filteredOn(s -> s.symbol().equals("x_c" + at))
                    .singleElement()
                    .satisfies(s -> {
                        assertThat(s.value()).isEqualTo(CURVE.corners().get(at).extension());
                        assertThat(s.source()).isEqualTo("design");
                        assertThat(s.unit()).isEqualTo("m");
                    });
            assertThat(steps)
                    .filteredOn(s -> s.symbol().equals("F_c" + at))
                    .singleElement()
                    .satisfies(s -> {
                        assertThat(s.value()).isEqualTo(CURVE.corners().get(at).force());
                        assertThat(s.source()).isEqualTo("data sheet");
                        assertThat(s.unit()).isEqualTo("N");
                    });
        }
    }

    /** Where the force rises, its extension is found again from it; on the plateau every extension has the same force. */
    @ParameterizedTest
    @CsvSource({"0.05, true", "0.1, true", "0.2, false", "0.4, false", "0.5, true", "0.6, true", "0.7, true"})
    void theExtensionIsFoundAgainFromTheForceWhereItRises(double x, boolean found) {
        Written w = new Written(CURVE, x);
        assertThat(w.curve.onPlateau(x)).isEqualTo(!found);
        Optional<Double> again = w.again();
        assertThat(again.isPresent()).isEqualTo(found);
        again.ifPresent(value -> assertThat(value).isCloseTo(x, within(1e-12)));
    }

    @Test
    void theStiffnessOfTheStopIsWrittenOnlyWhereItActs() {
        Written behind = new Written(CURVE, 0.7);
        assertThat(behind.again()).isPresent();
        assertThat(behind.steps())
                .filteredOn(s -> s.symbol().equals("k_c"))
                .singleElement()
                .satisfies(s -> {
                    assertThat(s.value()).isEqualTo(STOP);
                    assertThat(s.unit()).isEqualTo("N/m");
                });
        Written before = new Written(CURVE, 0.5);
        assertThat(before.again()).isPresent();
        assertThat(before.steps()).noneMatch(s -> s.symbol().equals("k_c"));
    }

    /** A stop that does not give has one extension and any force. */
    @Test
    void aRigidStopLeavesTheExtensionUnsaid() {
        LoadingCurve rigid = LoadingCurve.through(
                List.of(new LoadingCurve.Corner(0, 4000)), Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY);
        Written w = new Written(rigid, 0);
        assertThat(w.curve.extensionAt(w.force, 1e-9)).isEmpty();
        assertThat(w.steps()).noneMatch(s -> s.symbol().equals("k_c"));
    }

    @Test
    void aSpringTakesHalfOfForceTimesWay() {
        Written w = new Written(LoadingCurve.spring(60_000), 0.15);
        assertThat(w.work()).isCloseTo(0.5 * 60_000 * 0.15 * 0.15, within(1e-9));
        assertThat(w.again()).hasValueSatisfying(x -> assertThat(x).isCloseTo(0.15, within(1e-12)));
        assertThat(w.curve.onPlateau(0.15)).isFalse();
    }

    /** Start of the piece, and the work up to there: 200 J up to the first corner, 900 J over the plateau. */
    @ParameterizedTest
    @CsvSource({"0.05, 0, 0", "0.1, 0, 0", "0.2, 0.1, 200", "0.4, 0.1, 200", "0.5, 0.4, 1100", "0.7, 0.6, 1900"})
    void theWorkUpToThePieceIsThatOfTheCornersBefore(double x, double start, double work) {
        Written w = new Written(CURVE, x);
        assertThat(w.curve.startOfPiece(x).value()).isEqualTo(start);
        assertThat(w.curve.workToPiece(x).value(Figure::value)).isCloseTo(work, within(1e-9));
    }
}
