package org.lifeline.internal.svg;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.lifeline.report.Contrast;

/**
 * Lines stay visible to those who see fewer colours, and in grey print.
 *
 * <p>Matrices in linear RGB for complete deficiencies: Machado, Oliveira and Fernandes, A physiologically-based model for
 * simulation of color vision deficiency, IEEE Transactions on Visualization and Computer Graphics 15(6), 2009 (recalled).
 * Luminance: ITU-R BT.709 (recalled).
 */
class ColourVisionTest {
    /** How colours are seen. */
    enum Vision {
        WITHOUT_LONG_CONES(0.152286, 1.052583, -0.204868, 0.114503, 0.786281, 0.099216, -0.003882, -0.048116, 1.051998),
        WITHOUT_MEDIUM_CONES(
                0.367322, 0.860646, -0.227968, 0.280085, 0.672501, 0.047413, -0.011820, 0.042940, 0.968881),
        WITHOUT_SHORT_CONES(
                1.255528, -0.076749, -0.178779, -0.078411, 0.930809, 0.147602, 0.004733, 0.691367, 0.303900),
        GREY_PRINT(0.2126, 0.7152, 0.0722, 0.2126, 0.7152, 0.0722, 0.2126, 0.7152, 0.0722);

        private final String matrix;

        Vision(double... matrix) {
            this.matrix = Arrays.toString(matrix);
        }

        private double[] numbers() {
            return Arrays.stream(matrix.substring(1, matrix.length() - 1).split(", ", -1))
                    .mapToDouble(Double::parseDouble)
                    .toArray();
        }

        String see(String colour) {
            double[] rgb = new double[3];
            for (int i = 0; i < 3; i++) {
                double c = Integer.parseInt(colour.substring(1 + 2 * i, 3 + 2 * i), 16) / 255.0;
                rgb[i] = c <= 0.04045 ? c / 12.92 : Math.pow((c + 0.055) / 1.055, 2.4);
            }
            double[] m = numbers();
            StringBuilder seen = new StringBuilder("#");
            for (int i = 0; i < 3; i++) {
                double c = 0;
                for (int j = 0; j < 3; j++) {
                    c += m[3 * i + j] * rgb[j];
                }
                c = Math.max(0, Math.min(1, c));
                c = c <= 0.0031308 ? 12.92 * c : 1.055 * Math.pow(c, 1 / 2.4) - 0.055;
                seen.append(String.format(Locale.ROOT, "%02x", Math.round(255 * c)));
            }
            return seen.toString();
        }
    }

    @ParameterizedTest
    @EnumSource(Vision.class)
    void greyStaysGrey(Vision vision) {
        assertThat(vision.see("#ffffff")).isEqualTo("#ffffff");
        assertThat(vision.see("#000000")).isEqualTo("#000000");
    }

    @ParameterizedTest
    @EnumSource(Vision.class)
    void everyLineStandsOutFromItsPaper(Vision vision) {
        for (Pen p : Pen.values()) {
            if (p != Pen.GRID) {
                // WCAG 2.1, success criterion 1.4.11: graphics at least 3 : 1.
                assertThat(Contrast.of(vision.see(p.light), "#ffffff"))
                        .as("%s on white", p)
                        .isGreaterThan(3);
                assertThat(Contrast.of(vision.see(p.dark), "#14181c"))
                        .as("%s on dark", p)
                        .isGreaterThan(3);
            }
        }
    }

    @ParameterizedTest
    @EnumSource(Vision.class)
    void linesOfLikeColourDifferInTheirDashes(Vision vision) {
        List<Pen> series = List.of(Pen.FIRST, Pen.SECOND, Pen.THIRD, Pen.FOURTH, Pen.FIFTH, Pen.SIXTH);
        for (Pen a : series) {
            for (Pen b : series) {
                if (a != b && Contrast.of(vision.see(a.light), vision.see(b.light)) < 3) {
                    assertThat(a.dash).as("%s and %s", a, b).isNotEqualTo(b.dash);
                }
            }
        }
    }
}
