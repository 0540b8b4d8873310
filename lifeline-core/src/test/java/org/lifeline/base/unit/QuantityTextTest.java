package org.lifeline.base.unit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

class QuantityTextTest {

    private static double si(String text, Dimension dimension) throws QuantityText.RuleBroken {
        return QuantityText.parse(text, dimension).si();
    }

    /** Exact by definition: the nearest double to the exact product. */
    @ParameterizedTest
    @CsvSource({
        "1.8 m, LENGTH, 1.8",
        "12 mm, LENGTH, 0.012",
        "40 cm, LENGTH, 0.4",
        "6 ft, LENGTH, 1.8288",
        "3.5 in, LENGTH, 0.0889",
        "17 N, FORCE, 17",
        "3.2 kN, FORCE, 3200",
        "4.9 MN, FORCE, 4900000",
        "1 lbf, FORCE, 4.4482216152605",
        "1800 lbf, FORCE, 8006.7989074689",
        "2 kip, FORCE, 8896.443230521",
        "220 lb, MASS, 99.7903214",
        "0.576 kg/m, MASS_PER_LENGTH, 0.576",
        "300 kN/m, FORCE_PER_LENGTH, 300000",
        "8 MN/m, FORCE_PER_LENGTH, 8000000",
        "5 N/m, FORCE_PER_LENGTH, 5",
        "120 N/mm, FORCE_PER_LENGTH, 120000",
        "7 Pa, STRESS, 7",
        "7 kPa, STRESS, 7000",
        "1770 MPa, STRESS, 1770000000",
        "105 GPa, STRESS, 105000000000",
        "1770 N/mm², STRESS, 1770000000",
        "64.7 mm², AREA, 0.0000647",
        "2 in², AREA, 0.00129032",
        "250 J, ENERGY, 250",
        "1.2 kJ, ENERGY, 1200",
        "1 ft·lbf, ENERGY, 1.3558179483314004",
        "3 s, TIME, 3",
        "0.4 ms, TIME, 0.0004",
        "-30 °C, TEMPERATURE, -30",
        "59 °F, TEMPERATURE, 15",
        "-40 °F, TEMPERATURE, -40",
        "288.15 K, TEMPERATURE, 15",
        "0 K, TEMPERATURE, -273.15",
        "0.4 %, STRAIN, 0.004",
        "12e-6 /K, EXPANSION, 12e-6",
        "10e-6 /°F, EXPANSION, 18e-6",
        "9.81 m/s², ACCELERATION, 9.81",
        "32 ft/s², ACCELERATION, 9.7536"
    })
    void convertsExactly(String text, Dimension dimension, double expected) throws QuantityText.RuleBroken {
        assertThat(si(text, dimension)).isEqualTo(expected);
    }

    /** Rounded factors of NIST Special Publication 811 (2008), App. B.8, seven digits; recalled. */
    @ParameterizedTest
    @CsvSource({
        "1 psi, STRESS, 6894.757",
        "1 ksi, STRESS, 6894757",
        "1 lbf/ft, FORCE_PER_LENGTH, 14.59390",
        "1 lbf/in, FORCE_PER_LENGTH, 175.1268",
        "1 lb/ft, MASS_PER_LENGTH, 1.488164",
        "1 kip, FORCE, 4448.222",
        "1 ft·lbf, ENERGY, 1.355818",
        "1 lb, MASS, 0.4535924",
        "1 in², AREA, 0.00064516"
    })
    void agreesWithPublishedFactors(String text, Dimension dimension, double rounded) throws QuantityText.RuleBroken {
        assertThat(si(text, dimension)).isCloseTo(rounded, within(6e-7 * rounded));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "5 mm2|AREA|5e-6",
                "5 mm^2|AREA|5e-6",
                "1 in2|AREA|0.00064516",
                "1 ft-lbf|ENERGY|1.3558179483314004",
                "1 ftlbf|ENERGY|1.3558179483314004",
                "1 ft lbf|ENERGY|1.3558179483314004",
                "1 ft.lbf|ENERGY|1.3558179483314004",
                "1 ft*lbf|ENERGY|1.3558179483314004",
                "1 ft⋅lbf|ENERGY|1.3558179483314004",
                "-30 degC|TEMPERATURE|-30",
                "-30 deg C|TEMPERATURE|-30",
                "-30 ℃|TEMPERATURE|-30",
                "59 degF|TEMPERATURE|15",
                "12e-6 1/K|EXPANSION|12e-6",
                "12e-6 /degC|EXPANSION|12e-6",
                "10e-6 1/degF|EXPANSION|18e-6",
                "9.81 m/s2|ACCELERATION|9.81",
                "9.81 m/s^2|ACCELERATION|9.81",
                "1770 N/mm2|STRESS|1770e6",
                "1.8m|LENGTH|1.8",
                " 1.8   m |LENGTH|1.8",
                "1.8\u00a0m|LENGTH|1.8",
                "+1.8 m|LENGTH|1.8",
                "−1.8 m|LENGTH|-1.8",
                ".5 m|LENGTH|0.5",
                "2. m|LENGTH|2",
                "18e-1 m|LENGTH|1.8",
                "1.8E0 m|LENGTH|1.8",
                "300 kN / m|FORCE_PER_LENGTH|300e3"
            })
    void takesOtherSpellings(String text, Dimension dimension, double expected) throws QuantityText.RuleBroken {
        assertThat(si(text, dimension)).isEqualTo(expected);
    }

    @ParameterizedTest
    @EnumSource(Unit.class)
    void everySpellingNamesItsUnit(Unit unit) {
        assertThat(unit.allSpellings())
                .allSatisfy(s -> assertThat(Unit.spelled(s)).contains(unit));
    }

    @Test
    void noSpellingNamesTwoUnits() {
        assertThat(Arrays.stream(Unit.values()).flatMap(u -> u.allSpellings().stream()))
                .doesNotHaveDuplicates();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "1.8|LENGTH|has no unit",
                "5 kN|LENGTH|is a force (kN); must be a length in m, mm, cm, ft, in",
                "1.8 m|AREA|must be an area in mm², in², m²",
                "220 lbf|MASS|is a force (lbf); must be a mass in kg, lb",
                "3 lb|FORCE|is a mass (lb); must be a force",
                "3 furlong|LENGTH|has the unknown unit \"furlong\"",
                "3 KN|FORCE|did you mean kN?",
                "3 lbs|MASS|did you mean lb?",
                "NaN m|LENGTH|must be a finite number",
                "nan m|LENGTH|must be a finite number",
                "Infinity kN|FORCE|must be a finite number",
                "-inf kN|FORCE|must be a finite number",
                "∞ kN|FORCE|must be a finite number",
                "1,8 m|LENGTH|with a point before the decimals",
                "1,800 lbf|FORCE|nothing between thousands",
                "1 800 lbf|FORCE|nothing between thousands",
                "m|LENGTH|must be a number followed by its unit",
                "''|LENGTH|must be a number followed by its unit",
                "--3 m|LENGTH|must be a number followed by its unit",
                "0x10 m|LENGTH|has the unknown unit \"x10 m\"",
                "3 m 2 m|LENGTH|has the unknown unit",
                "1e999 m|LENGTH|is too large",
                "1e99999 m|LENGTH|must be one number followed by its unit",
                "12 °C|LENGTH|is a temperature",
                "12e-6 K|EXPANSION|is a temperature",
                "5 °|TEMPERATURE|is an angle (°); must be a temperature",
                "5 kN|MOMENT|is a force (kN); must be a moment in N·m, kN·m, lbf·ft, kip·ft",
                "5 cm²|SECOND_MOMENT|must be a second moment of area in cm⁴, mm⁴, m⁴, in⁴"
            })
    void refuses(String text, Dimension dimension, String rule) {
        assertThatThrownBy(() -> QuantityText.parse(text, dimension))
                .isInstanceOfSatisfying(
                        QuantityText.RuleBroken.class, e -> assertThat(e.rule()).contains(rule));
    }

    @ParameterizedTest
    @ValueSource(ints = {100, 100_000})
    void refusesLongTextAtOnce(int length) {
        assertThatThrownBy(() -> QuantityText.parse("9".repeat(length) + " m", Dimension.LENGTH))
                .isInstanceOf(QuantityText.RuleBroken.class);
    }

    @Test
    void keepsWhatWasWritten() throws QuantityText.RuleBroken {
        Quantity q = QuantityText.parse("5.0 ft", Dimension.LENGTH);
        assertThat(q.written()).isEqualTo("5.0 ft");
        assertThat(q.unit()).isEqualTo(Unit.FOOT);
    }
}
