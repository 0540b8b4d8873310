package org.lifeline.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A number with its unit as a report prints it, read back into SI. The factors are those of NIST Special Publication 811
 * (2008), appendix B.8, recalled, and not those of the library.
 *
 * @param si its value in SI [N] or [m]
 * @param half half a unit of its last digit [N] or [m]
 * @param coarsest half a unit of the coarsest last digit that a number of its kind may have, however small [N] or [m]
 */
public record PrintedNumber(double si, double half, double coarsest) {
    /** Ten newtons, and a centimetre: the last digit of a force in kN and of a length with two decimals. */
    private static final double COARSEST_FORCE = 5;

    private static final double COARSEST_LENGTH = 0.005;

    private static final Pattern NUMBER = Pattern.compile("([−-]?[0-9]+(?:\\.[0-9]+)?) (kN|N|m|lbf|ft)(?![a-z])");

    private static final Map<String, Double> FACTORS =
            Map.of("kN", 1e3, "N", 1.0, "m", 1.0, "lbf", 4.448_221_615_260_5, "ft", 0.3048);

    /** All numbers of a cell that have one of these units. */
    public static List<PrintedNumber> of(String cell) {
        List<PrintedNumber> list = new ArrayList<>();
        Matcher m = NUMBER.matcher(cell);
        while (m.find()) {
            BigDecimal number = new BigDecimal(m.group(1).replace('−', '-'));
            double factor = FACTORS.getOrDefault(m.group(2), Double.NaN);
            double half = 0.5 * Math.pow(10, -number.scale());
            boolean length = m.group(2).equals("m") || m.group(2).equals("ft");
            list.add(new PrintedNumber(
                    factor * number.doubleValue(), factor * half, length ? COARSEST_LENGTH : COARSEST_FORCE));
        }
        return list;
    }

    /** Checks that a cell holds a value in so many systems of units, rounded to the digits that are printed. */
    public static void check(String cell, int systems, double value) {
        List<PrintedNumber> numbers = of(cell);
        assertThat(numbers).as(cell).hasSize(systems);
        for (PrintedNumber each : numbers) {
            // A number on the edge between two roundings may lie a rounding of doubles beyond half a digit.
            double rounding = 1e-12 * Math.abs(value);
            assertThat(Math.abs(each.si - value))
                    .as("%s for %s", cell, value)
                    .isLessThanOrEqualTo(each.half + rounding);
            assertThat(each.half)
                    .as("%s says something of %s", cell, value)
                    .isLessThanOrEqualTo(Math.max(0.05 * Math.abs(value), each.coarsest));
        }
    }
}
