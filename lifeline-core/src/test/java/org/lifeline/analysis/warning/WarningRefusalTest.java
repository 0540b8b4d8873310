package org.lifeline.analysis.warning;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Function;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.lifeline.base.InvalidInputException;

/** Keys follow the names of their kinds, every part of a warning is needed, and numbers carry six digits. */
class WarningRefusalTest {
    private static final Warning FLAT = Warning.of(Warning.Code.FLAT_LINE, "line");

    @ParameterizedTest
    @EnumSource(Warning.Code.class)
    void theKeyIsTheNameInSmallLettersWithHyphens(Warning.Code code) {
        assertThat(code.key().replace('-', '_').toUpperCase(Locale.ROOT)).isEqualTo(code.name());
        assertThat(code.text()).doesNotEndWith(".").isEqualTo(code.text().strip());
    }

    @Test
    @SuppressWarnings("NullAway")
    void aPartThatIsMissingIsRefusedByName() {
        Map<String, Function<Warning, Warning>> parts = new TreeMap<>();
        parts.put("code", w -> Warning.of(null, "line"));
        parts.put("subject", w -> Warning.of(Warning.Code.FLAT_LINE, null));
        parts.put("value", w -> w.saying(null));
        parts.forEach((name, change) -> assertThatThrownBy(() -> change.apply(FLAT))
                .as(name)
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining(name));
        assertThatThrownBy(() -> FLAT.in(null)).isInstanceOf(InvalidInputException.class);
        assertThatThrownBy(() -> FLAT.with(null)).isInstanceOf(InvalidInputException.class);
    }

    @ParameterizedTest
    @CsvSource({
        "0.000123456789, N, NaN, 0.000123457 N",
        "123456.78, N, NaN, 123457 N",
        "-2.5, m, NaN, -2.50000 m",
        "0.5, rad, 0.25, 0.500000 rad for 0.250000 rad",
        "0.5, -, NaN, 0.500000"
    })
    void numbersCarrySixDigitsAndTheirUnit(double value, String unit, double limit, String text) {
        String words = FLAT.with(new Measured(value, unit, limit)).toString();
        assertThat(words.replace('−', '-')).isEqualTo("line: " + FLAT.text() + ": " + text);
    }

    @Test
    void eachChangeKeepsTheOtherParts() {
        Measured measured = new Measured(9, "N", 5);
        Warning all = FLAT.with(measured).in("span 2").saying("flat");
        assertThat(all.saying("other")).isEqualTo(new Warning(all.code(), "line", "other", "span 2", measured));
        assertThat(all.in("span 3")).isEqualTo(new Warning(all.code(), "line", "flat", "span 3", measured));
        assertThat(all.with(Measured.nothing()).place()).isEqualTo("span 2");
        assertThat(all.with(Measured.nothing()).text()).isEqualTo("flat");
    }

    @Test
    void nothingMeasuredHasNoNumberAndNoUnit() {
        assertThat(Measured.nothing().value()).isNaN();
        assertThat(Measured.nothing().limit()).isNaN();
        assertThat(Measured.nothing().unit()).isEqualTo("-");
    }

    @Test
    void theSidePullIsOneOfTheLimitsOfTheModel() {
        assertThat(ModelLimits.list()).contains(ModelLimits.SIDE_PULL).hasSizeGreaterThan(10);
        assertThat(ModelLimits.list()).allSatisfy(l -> assertThat(l).doesNotEndWith("."));
    }
}
