package org.lifeline.examples.print;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class MeasureTest {

    /** Conversions by the exact definitions of foot, pound and pound-force. */
    @ParameterizedTest
    @CsvSource({
        "LENGTH, 1.8288, 1.829 m (6.00 ft)",
        "SMALL_LENGTH, 0.0254, 25.4 mm (1.00 in)",
        "FORCE, 8006.8, 8.01 kN (1800 lbf)",
        "MASS, 140.6136, 140.6 kg (310.0 lb)",
        "ENERGY, 1355.818, 1355.8 J (1000.0 ft·lbf)",
        "WEIGHT_PER_LENGTH, 14.5939, 14.594 N/m (1.0000 lbf/ft)",
        "TEMPERATURE, -40, -40.0 °C (-40.0 °F)",
        "TEMPERATURE, 15, 15.0 °C (59.0 °F)"
    })
    void bothSystemsSideBySide(Measure measure, double value, String text) {
        assertThat(measure.text(value, UnitChoice.BOTH)).isEqualTo(text);
    }

    @Test
    void thereIsNoMinusZero() {
        assertThat(Measure.fixed(-1e-9, 2)).isEqualTo("0.00");
        assertThat(Measure.fixed(-0.0, 1)).isEqualTo("0.0");
        assertThat(Measure.fixed(Double.NaN, 1)).isEqualTo("-");
        assertThat(Measure.fixed(Double.POSITIVE_INFINITY, 1)).isEqualTo("infinite");
        assertThat(Measure.fixed(1e15, 1)).isEqualTo("1000000000000000.0");
    }
}
