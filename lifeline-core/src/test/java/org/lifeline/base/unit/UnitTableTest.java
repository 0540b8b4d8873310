package org.lifeline.base.unit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.lifeline.base.UnitSystem;

/** The table of units: conversions as exact decimals, symbols, spellings, and text of dimensions. */
class UnitTableTest {
    /** One of each unit that is not SI as decimals, from the definitions of 1959 and 1901 (recalled) by hand. */
    @ParameterizedTest
    @CsvSource({
        "MILLIMETRE, 0.001",
        "CENTIMETRE, 0.01",
        "FOOT, 0.3048",
        "INCH, 0.0254",
        "KILONEWTON, 1000",
        "MEGANEWTON, 1000000",
        "POUND_FORCE, 4.4482216152605",
        "KIP, 4448.2216152605",
        "POUND, 0.45359237",
        "NEWTON_PER_MILLIMETRE, 1000",
        "POUND_FORCE_PER_FOOT, 14.593902937206364",
        "POUND_FORCE_PER_INCH, 175.1268352464764",
        "POUND_PER_FOOT, 1.4881639435695537",
        "POUND_PER_SQUARE_INCH, 6894.757293168362",
        "KIP_PER_SQUARE_INCH, 6894757.293168361",
        "SQUARE_INCH, 0.00064516",
        "FOOT_POUND_FORCE, 1.3558179483314004",
        "PERCENT, 0.01",
        "PER_FAHRENHEIT, 1.8",
        "DEGREE, 0.017453292519943295",
        "FOOT_PER_SECOND_SQUARED, 0.3048",
        "KIP_FOOT, 1355.8179483314004",
        "CENTIMETRE_TO_THE_FOURTH, 1e-8",
        "MILLIMETRE_TO_THE_FOURTH, 1e-12",
        "INCH_TO_THE_FOURTH, 4.162314256e-7"
    })
    void oneOfAUnitIsItsDefinitionInSi(Unit unit, double si) {
        assertThat(unit.toSi(1)).isEqualTo(si);
        assertThat(unit.fromSi(si)).isCloseTo(1, within(3e-16));
        assertThat(unit.toSi(0)).isZero();
        assertThat(unit.fromSi(0)).isZero();
    }

    @ParameterizedTest
    @EnumSource(Unit.class)
    void whatIsNotFiniteStaysWhatItIs(Unit unit) {
        assertThat(unit.toSi(Double.NaN)).isNaN();
        assertThat(unit.toSi(Double.POSITIVE_INFINITY)).isEqualTo(Double.POSITIVE_INFINITY);
        assertThat(unit.fromSi(Double.NEGATIVE_INFINITY)).isEqualTo(Double.NEGATIVE_INFINITY);
        String suffix = unit.symbol().isEmpty() ? "" : " " + unit.symbol();
        assertThat(unit.print(Double.NaN)).isEqualTo("NaN" + suffix);
        assertThat(unit.print(Double.NEGATIVE_INFINITY, 3)).isEqualTo("-Infinity" + suffix);
    }

    @Test
    void temperaturesAreShiftedBothWays() {
        assertThat(Unit.KELVIN.toSi(new BigDecimal("273.15"))).isZero();
        assertThat(Unit.KELVIN.fromSi(-273.15)).isCloseTo(0, within(3e-14));
        assertThat(Unit.KELVIN.exact(26.85).setScale(6, RoundingMode.HALF_UP)).isEqualByComparingTo("300");
        assertThat(Unit.FAHRENHEIT.toSi(new BigDecimal("98.6"))).isEqualTo(37);
        assertThat(Unit.FAHRENHEIT.exact(100)).isEqualByComparingTo("212");
        assertThat(Unit.CELSIUS.toSi(-12.5)).isEqualTo(-12.5);
    }

    /** Decimal halves are rounded away from zero, on the exact value of the double: 2.5 is a half, 0.145 is below one. */
    @ParameterizedTest
    @CsvSource({
        "2.5, 0, 3 m",
        "-2.5, 0, -3 m",
        "0.125, 2, 0.13 m",
        "0.145, 2, 0.14 m",
        "1e6, 1, 1000000.0 m",
        "0, 2, 0.00 m",
        "-0.001, 2, 0.00 m"
    })
    void decimalsAreRoundedOnceAndAwayFromZero(double value, int decimals, String text) {
        assertThat(Unit.METRE.print(value, decimals)).isEqualTo(text);
    }

    @ParameterizedTest
    @CsvSource({
        "MILLIMETRE, 0.0115, 11.5 mm",
        "KILONEWTON, 6000, 6 kN",
        "GIGAPASCAL, 1.31e11, 131 GPa",
        "FOOT, 0.3048, 1 ft",
        "PERCENT, 0.004, 0.4 %",
        "ONE, 0.9, 0.9",
        "METRE, 0, 0 m",
        "METRE, 120, 120 m",
        "METRE, 1e-7, 0.0000001 m",
        "METRE, 0.1, 0.1 m"
    })
    void theShortestTextThatIsReadBack(Unit unit, double si, String text) {
        assertThat(unit.print(si)).isEqualTo(text);
    }

    @Test
    void aUnitIsFoundByEachOfItsSpellings() {
        assertThat(Unit.spelled("N/mm^2")).contains(Unit.NEWTON_PER_SQUARE_MILLIMETRE);
        assertThat(Unit.spelled("N / mm²")).contains(Unit.NEWTON_PER_SQUARE_MILLIMETRE);
        assertThat(Unit.spelled("N∕mm2")).contains(Unit.NEWTON_PER_SQUARE_MILLIMETRE);
        assertThat(Unit.spelled("N⁄m")).contains(Unit.NEWTON_PER_METRE);
        assertThat(Unit.spelled("N⋅m")).contains(Unit.NEWTON_METRE);
        assertThat(Unit.spelled("kN . m"))
                .as("a point is no sign of a product with blanks")
                .isEmpty();
        assertThat(Unit.spelled("\u00a0kN\u202f")).contains(Unit.KILONEWTON);
        assertThat(Unit.spelled("℉")).contains(Unit.FAHRENHEIT);
        assertThat(Unit.spelled("")).contains(Unit.ONE);
        assertThat(Unit.spelled("KN")).as("case has a meaning: mN and MN").isEmpty();
        assertThat(Unit.KILONEWTON.allSpellings()).containsExactly("kN");
        assertThat(Unit.CELSIUS.allSpellings()).containsExactly("°C", "degC", "deg C");
        assertThat(Unit.ONE.allSpellings()).containsExactly("");
    }

    @Test
    void unitsOfADimensionAreListed() {
        assertThat(Unit.list(Dimension.LENGTH)).isEqualTo("m, mm, cm, ft, in");
        assertThat(Unit.list(Dimension.TIME)).isEqualTo("s, ms");
        assertThat(Unit.list(Dimension.RATIO)).isEmpty();
        assertThat(Unit.list(Dimension.LENGTH_PER_FORCE))
                .as("only shown, not read")
                .isEmpty();
    }

    @ParameterizedTest
    @CsvSource({
        "LENGTH, a length",
        "ENERGY, an energy",
        "ANGLE, an angle",
        "AREA, an area",
        "ACCELERATION, an acceleration",
        "FORCE, a force",
        "EXPANSION, a thermal expansion"
    })
    void aDimensionHasItsArticle(Dimension dimension, String words) {
        assertThat(dimension.withArticle()).isEqualTo(words);
    }

    /** The sample in a refusal must itself be a quantity of the dimension, or it would mislead. */
    @ParameterizedTest
    @EnumSource(Dimension.class)
    void theSampleOfADimensionIsReadWhereUnitsAreRead(Dimension dimension) throws QuantityText.RuleBroken {
        if (!Unit.list(dimension).isEmpty()) {
            Quantity q = QuantityText.parse(dimension.sample(), dimension);
            assertThat(q.si()).isNotZero();
            assertThat(q.written()).isEqualTo(dimension.sample());
        }
        assertThat(dimension.sample()).isNotBlank();
    }

    /** Customary numbers by hand: 1 m = 1/0.3048 ft, 1 N/m = 0.3048/4.448… lbf/ft, 37 °C = 98.6 °F, 1 J = 0.7376 ft·lbf. */
    @ParameterizedTest
    @CsvSource({
        "LENGTH, 0.3048, 1, ft",
        "FORCE, 8896.443230521, 2000, lbf",
        "MASS, 45.359237, 100, lb",
        "TEMPERATURE, 37, 98.6, °F",
        "TEMPERATURE, -40, -40, °F",
        "EXPANSION, 18e-6, 10e-6, 1/°F",
        "RATIO, 0.9, 0.9, -",
        "STRAIN, 0.004, 0.004, -",
        "TIME, 2, 2, s",
        "AREA, 0.09290304, 1, ft²",
        "ACCELERATION, 9.80665, 32.17404855643044, ft/s²",
        "SECOND_MOMENT, 0.0086309748412416, 1, ft⁴",
        "LENGTH_PER_FORCE, 1, 14.593902937206364, ft/lbf",
        "STRESS, 6894.757293168361, 144, lbf/ft²",
        "MOMENT, 1.3558179483314004, 1, lbf·ft",
        "FORCE_SQUARED_LENGTH, 6.0309787041258790, 1, lbf²·ft",
        "WEIGHT_PER_MASS, 9.80665, 1, lbf/lb"
    })
    void customaryNumbersFollowFromTheDefinitions(Dimension dimension, double si, double customary, String unit) {
        assertThat(dimension.in(si, UnitSystem.US_CUSTOMARY)).isCloseTo(customary, within(4e-15 * Math.abs(customary)));
        assertThat(dimension.exact(si, UnitSystem.US_CUSTOMARY).doubleValue())
                .isEqualTo(dimension.in(si, UnitSystem.US_CUSTOMARY));
        assertThat(dimension.unit(UnitSystem.US_CUSTOMARY)).isEqualTo(unit);
        assertThat(dimension.in(si, UnitSystem.SI)).isEqualTo(si);
    }

    @ParameterizedTest
    @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY})
    void noSystemChangesWhatIsNotFinite(double value) {
        for (UnitSystem system : UnitSystem.values()) {
            assertThat(Double.compare(Dimension.FORCE.in(value, system), value)).isZero();
        }
    }

    @Test
    void aNameIsFoundWithinHalfOfItsLetters() {
        List<String> known = List.of("kN", "N", "mass");
        assertThat(NearestName.of("KN", known)).as("the case alone").contains("kN");
        assertThat(NearestName.of("mess", known)).contains("mass");
        assertThat(NearestName.of("meas", known))
                .as("two edits of four letters")
                .contains("mass");
        assertThat(NearestName.of("meau", known)).as("three edits").isEmpty();
        assertThat(NearestName.of("x", List.of())).isEmpty();
        assertThat(NearestName.of("a".repeat(60), List.of("a".repeat(60)))).isPresent();
        assertThat(NearestName.of("a".repeat(61), List.of("a".repeat(61))))
                .as("no name is as long")
                .isEmpty();
    }

    @Test
    void theFirstOfTwoNamesEquallyNearIsTaken() {
        assertThat(NearestName.of("mat", List.of("map", "mad"))).contains("map");
        assertThat(NearestName.of("mat", List.of("mad", "map"))).contains("mad");
        assertThat(NearestName.of("mat", List.of("map", "MAT")))
                .as("the same letters before an edit")
                .contains("MAT");
    }

    @Test
    void aTextOfEightyCharactersIsReadAndOneMoreIsNot() throws QuantityText.RuleBroken {
        String longest = "0".repeat(77) + "1 m";
        assertThat(longest).hasSize(80);
        assertThat(QuantityText.parse(longest, Dimension.LENGTH).si()).isEqualTo(1);
        assertThatThrownBy(() -> QuantityText.parse("0" + longest, Dimension.LENGTH))
                .isInstanceOf(QuantityText.RuleBroken.class)
                .hasMessage("must be a number followed by its unit, for example \"1.8 m\"");
        assertThat(QuantityText.parse("  " + longest + "  ", Dimension.LENGTH).si())
                .as("blanks around it do not count")
                .isEqualTo(1);
    }
}
