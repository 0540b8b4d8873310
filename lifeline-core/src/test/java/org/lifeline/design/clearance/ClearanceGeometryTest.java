package org.lifeline.design.clearance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.lifeline.base.Interval;
import org.lifeline.base.InvalidInputException;
import org.lifeline.design.envelope.Designs;
import org.lifeline.model.Attachment;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Passage;

/** Rounding, parabolas and tables of made-up stretches, where everything can be worked out by hand. */
class ClearanceGeometryTest {
    private static final LifelineDesign DESIGN = Designs.design(1, Passage.free(), Attachment.GRIPPED);
    private static final ClearanceStretch.Swing STILL = new ClearanceStretch.Swing(0, 0, 0, 0);

    // Rounding.

    @ParameterizedTest
    @CsvSource({"0.001, 0.001", "1000, 1", "1, 0.05"})
    void stepsAtTheEndsOfTheirRangesAreTaken(double step, double rounding) {
        StationSteps s = new StationSteps(step, rounding);
        assertThat(s.step()).isEqualTo(step);
        assertThat(s.rounding()).isEqualTo(rounding);
        assertThat(StationSteps.COMMON).isEqualTo(new StationSteps(1, 0.05));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "0.000999 | 0.05 | step | 1 mm to 1000 m",
                "1000.001 | 0.05 | step | 1 mm to 1000 m",
                "NaN | 0.05 | step | 1 mm to 1000 m",
                "1 | 0.000999 | rounding | 1 mm to 1 m",
                "1 | 1.001 | rounding | 1 mm to 1 m",
                "1 | NaN | rounding | 1 mm to 1 m"
            })
    void stepsOutsideTheirRangesAreRefused(double step, double rounding, String field, String range) {
        assertThatThrownBy(() -> new StationSteps(step, rounding))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageStartingWith(field + ": ")
                .hasMessageEndingWith("must lie from " + range);
    }

    /** Second way: decimal arithmetic on the value in whole tenths of a millimetre. */
    @Test
    void roundingIsThatOfDecimalArithmetic() {
        SplittableRandom random = new SplittableRandom(4);
        StationSteps s = new StationSteps(1, 0.05);
        BigDecimal unit = new BigDecimal("0.05");
        for (int i = 0; i < 2000; i++) {
            BigDecimal value = BigDecimal.valueOf(random.nextLong(-300_000, 300_000), 4);
            BigDecimal up = value.divide(unit, 0, RoundingMode.CEILING).multiply(unit);
            BigDecimal down = value.divide(unit, 0, RoundingMode.FLOOR).multiply(unit);
            assertThat(s.up(value.doubleValue())).isEqualTo(up.doubleValue(), within(1e-9));
            assertThat(s.down(value.doubleValue())).isEqualTo(down.doubleValue(), within(1e-9));
        }
    }

    /** Less than a billionth of the unit above a multiple is rounding of the division; ten times that is not. */
    @Test
    void roundingOffIsForgivenByNoMoreThanABillionth() {
        StationSteps s = new StationSteps(1, 1);
        assertThat(s.up(3 + 5e-10)).isEqualTo(3);
        assertThat(s.up(3 + 5e-9)).isEqualTo(4);
        assertThat(s.down(3 - 5e-10)).isEqualTo(3);
        assertThat(s.down(3 - 5e-9)).isEqualTo(2);
    }

    // The lowest point between three places.

    /** Parabolas a (x − x₀)² + c at −1, 0, 1: the vertex if it lies between, else the lower end. */
    @Test
    void theLowestOfAParabolaIsFound() {
        SplittableRandom random = new SplittableRandom(9);
        int inside = 0;
        for (int i = 0; i < 2000; i++) {
            double a = random.nextDouble(0.1, 3);
            double at = random.nextDouble(-2, 2);
            double c = random.nextDouble(-5, 5);
            double first = a * (-1 - at) * (-1 - at) + c;
            double middle = a * at * at + c;
            double last = a * (1 - at) * (1 - at) + c;
            double expected = Math.abs(at) < 1 ? c : Math.min(first, last);
            inside += Math.abs(at) < 1 ? 1 : 0;
            assertThat(StretchFalls.vertex(first, middle, last)).isEqualTo(expected, within(1e-12));
        }
        assertThat(inside).isBetween(800, 1200);
    }

    @Test
    void whereNothingSagsBetweenThePlacesTheLowestOfThemCounts() {
        assertThat(StretchFalls.vertex(1, 2, 1.5)).as("hump").isEqualTo(1);
        assertThat(StretchFalls.vertex(1, 1, 1)).as("level").isEqualTo(1);
        assertThat(StretchFalls.vertex(3, 2, 1)).as("straight down").isEqualTo(1);
        assertThat(StretchFalls.vertex(1, 2, 3)).as("straight up").isEqualTo(1);
        // (x − 1)² has its vertex at the last of the places −1, 0, 1.
        assertThat(StretchFalls.vertex(4, 1, 0)).isEqualTo(0);
        assertThat(StretchFalls.vertex(0, 1, 4)).isEqualTo(0);
    }

    // Stretches.

    private static ClearanceStretch stretch(double from, double to, double required, OptionalDouble obstruction) {
        List<String> reasons =
                obstruction.isPresent() && obstruction.getAsDouble() > required ? List.of("too high") : List.of();
        return new ClearanceStretch(
                new ClearanceStretch.Extent(1, Interval.of(from, to), Interval.of(from + 100, to + 100)),
                new ClearanceStretch.Needs(Interval.of(12.2, 12.4), required, 4.5, Optional.empty()),
                obstruction,
                new ClearanceStretch.Swing(1, 2, 3, 4),
                reasons);
    }

    @Test
    void distancesAreDifferencesOfElevations() {
        ClearanceStretch s = stretch(2, 3, 6.5, OptionalDouble.of(4));

        assertThat(s.requiredBelowLine()).as("from the highest point").isEqualTo(12.4 - 6.5);
        assertThat(s.availableBelowLine().orElseThrow())
                .as("from the lowest point")
                .isEqualTo(12.2 - 4);
        assertThat(s.margin().orElseThrow()).isEqualTo(2.5);
        assertThat(s.obstruction()).hasValue(4);
        assertThat(s.requiredElevation()).isEqualTo(6.5);
        assertThat(s.requiredBelowWalkingLevel()).isEqualTo(4.5);
        assertThat(s.lineElevation()).isEqualTo(Interval.of(12.2, 12.4));
        assertThat(s.span()).isEqualTo(1);
        assertThat(s.stations()).isEqualTo(Interval.of(2, 3));
        assertThat(s.along()).isEqualTo(Interval.of(102, 103));
        assertThat(s.swing()).isEqualTo(new ClearanceStretch.Swing(1, 2, 3, 4));
        assertThat(s.governing()).isEmpty();
        assertThat(s.mustNotBeUsed()).isFalse();
    }

    @Test
    void withoutAnObstructionNothingIsSaidOfWhatIsFree() {
        ClearanceStretch s = stretch(2, 3, 6.5, OptionalDouble.empty());
        assertThat(s.obstruction()).isEmpty();
        assertThat(s.availableBelowLine()).isEmpty();
        assertThat(s.margin()).isEmpty();
    }

    @Test
    void aReasonForbidsTheStretchAndIsCopied() {
        List<String> reasons = new ArrayList<>(List.of("a reason"));
        ClearanceStretch s = new ClearanceStretch(
                new ClearanceStretch.Extent(2, Interval.of(0, 1), Interval.of(12, 13)),
                new ClearanceStretch.Needs(Interval.of(12, 12), 7, 4, Optional.empty()),
                OptionalDouble.empty(),
                STILL,
                reasons);
        reasons.clear();
        assertThat(s.mustNotBeUsed()).isTrue();
        assertThat(s.reasons()).containsExactly("a reason");
    }

    // The whole line.

    private static ClearanceAlongLineResult result(ClearanceStretch... stretches) {
        return new ClearanceAlongLineResult(
                DESIGN, new StationSteps(1, 0.05), List.of(stretches), new ClearanceAlongLineResult.Addition(0.12, 3));
    }

    @Test
    void neighbouringStretchesThatAreForbiddenAreJoined() {
        OptionalDouble high = OptionalDouble.of(8);
        OptionalDouble low = OptionalDouble.of(2);
        ClearanceAlongLineResult r = result(
                stretch(0, 1, 6, high),
                stretch(1, 2, 6, high),
                stretch(2, 3, 6, high),
                stretch(3, 4, 6, low),
                stretch(4, 5, 6, high),
                stretch(5, 6, 6, OptionalDouble.empty()));

        assertThat(r.mustNotBeUsed()).containsExactly(Interval.of(100, 103), Interval.of(104, 105));
        assertThat(result(stretch(0, 1, 6, low)).mustNotBeUsed()).isEmpty();
        assertThat(r.design()).isSameAs(DESIGN);
        assertThat(r.steps()).isEqualTo(StationSteps.COMMON);
        assertThat(r.additionInTime()).isEqualTo(0.12);
        assertThat(r.arrestsInTime()).isEqualTo(3);
    }

    /** 12.4 − 6.23 = 6.17 and 12.4 − 6.11 = 6.29: rounded up to 6.30. */
    @Test
    void theLargestClearanceIsRoundedUpOnceForTheWholeLine() {
        OptionalDouble none = OptionalDouble.empty();
        assertThat(result(stretch(0, 1, 6.23, none), stretch(1, 2, 6.11, none), stretch(2, 3, 6.2, none))
                        .largestBelowLine())
                .isEqualTo(6.30, within(1e-12));
        assertThat(result().largestBelowLine()).isZero();
    }
}
