package org.lifeline.analysis.warning;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** How a warning reads, and that each change gives another one. */
class WarningTextTest {
    @ParameterizedTest
    @EnumSource(Warning.Code.class)
    void everyKindHasAKeyAndAText(Warning.Code code) {
        assertThat(code.key()).matches("[a-z]+(-[a-z]+)*");
        assertThat(code.text()).isNotBlank();
        Warning warning = Warning.of(code, "span 1");
        assertThat(warning).hasToString("span 1: " + code.text());
        assertThat(warning.value()).isNaN();
        assertThat(warning.limit()).isNaN();
        assertThat(warning.unit()).isEqualTo("-");
        assertThat(warning.place()).isEmpty();
    }

    @Test
    void keysDiffer() {
        assertThat(Arrays.stream(Warning.Code.values()).map(Warning.Code::key)).doesNotHaveDuplicates();
        assertThat(Arrays.stream(Warning.Code.values()).map(Warning.Code::text)).doesNotHaveDuplicates();
    }

    @Test
    void numbersFollowTheWords() {
        Warning warning = Warning.of(Warning.Code.ANCHOR_CAPACITY, "north").saying("too much");
        assertThat(warning.with(new Measured(12345.678, "N", 10000)))
                .hasToString("north: too much: 12345.7 N for 10000.0 N");
        assertThat(warning.with(new Measured(12345.678, "N", Double.NaN))).hasToString("north: too much: 12345.7 N");
        assertThat(warning.with(new Measured(0.5, "-", 0.25))).hasToString("north: too much: 0.500000 for 0.250000");
        assertThat(warning.with(Measured.nothing())).hasToString("north: too much");
    }

    @Test
    void aChangeLeavesTheOldOneAsItWas() {
        Warning first = Warning.of(Warning.Code.FLAT_LINE, "line");
        Warning second = first.saying("flat").in("span 2").with(new Measured(9, "-", 5));
        assertThat(first.text()).isEqualTo(Warning.Code.FLAT_LINE.text());
        assertThat(first.place()).isEmpty();
        assertThat(second.code()).isEqualTo(Warning.Code.FLAT_LINE);
        assertThat(second.subject()).isEqualTo("line");
        assertThat(second.text()).isEqualTo("flat");
        assertThat(second.place()).isEqualTo("span 2");
        assertThat(second.value()).isEqualTo(9);
        assertThat(second.limit()).isEqualTo(5);
    }

    @Test
    void theLimitsOfTheModelAreSaidOnceEach() {
        assertThat(ModelLimits.list())
                .isNotEmpty()
                .doesNotHaveDuplicates()
                .allSatisfy(l -> assertThat(l).isNotBlank());
        assertThatThrownBy(() -> ModelLimits.list().clear()).isInstanceOf(UnsupportedOperationException.class);
    }
}
