package org.lifeline.design.field;

import java.util.List;
import java.util.OptionalDouble;
import org.lifeline.base.GivenValue;
import org.lifeline.base.InputRule;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.NoEquilibriumException;
import org.lifeline.base.Violation;
import org.lifeline.base.ViolationCode;
import org.lifeline.base.unit.SignificantDigits;
import org.lifeline.internal.numeric.Roots;
import org.lifeline.model.Lifeline;

/**
 * Looks for the pretension at installation that gives a reading: from that of the design up or down, as far as the line can be
 * tensioned or slackened. Works in the logarithm of the pretension over that of the design. Not thread-safe.
 */
final class PretensionSearch {
    /** First step of the search in the logarithm of the pretension [-]: a factor of 1.28. */
    private static final double FIRST_STEP = 0.25;

    /**
     * Step in the logarithm of the pretension at which the tightest or slackest line that there can be counts as found [-]: a
     * tenth of how near the reading is met.
     */
    private static final double LEAST_STEP = 1e-10;

    /** How near the line comes to the reading, over the reading [-]; far below what any instrument shows. */
    private static final double READING = 1e-9;

    /**
     * Steps downward from a design that is itself tensioned beyond what it holds, as a stated length can make it [-]: to e^-10
     * of its tension. A length strains the cable by 5 % at most, some times what it breaks at.
     */
    private static final int STEPS_TO_A_LINE = 40;

    /** Digits of a pretension in a message; the search leaves more of them uncertain. */
    private static final int SHOWN_DIGITS = 6;

    private final Lifeline line;
    private final double designed;
    private final Measurement measurement;
    private final double value;
    private final double sign;

    /** Why the last pretension that was refused cannot be, as a sentence after the pretension. */
    private String refusal = "";

    PretensionSearch(Lifeline line, double designed, Measurement measurement, double value) {
        this.line = line;
        this.designed = designed;
        this.measurement = measurement;
        this.value = value;
        this.sign = measurement.fallsWithTension() ? -1 : 1;
    }

    /** The line with another pretension at installation. */
    static Lifeline with(Lifeline line, double pretension) {
        return line.withInstalled(line.installed().withPretension(pretension));
    }

    /**
     * The pretension at installation that gives the reading [N].
     *
     * @throws InvalidInputException if the line cannot have one that does, with what was read as the place
     */
    double solve() {
        double start = start();
        return excess(start) < 0 ? upward(start) : downward(start);
    }

    /** The pretension of the design, or below it the first at which the line can be. */
    private double start() {
        double start = 0;
        for (int i = 0; i < STEPS_TO_A_LINE; i++) {
            if (tried(start).isPresent()) {
                return start;
            }
            start -= FIRST_STEP;
        }
        throw refused(InputRule.PRETENSION_NOT_FOUND, shown(start), refusal);
    }

    private double upward(double start) {
        double low = start;
        double step = FIRST_STEP;
        boolean met = false;
        while (true) {
            OptionalDouble there = tried(low + step);
            if (there.isEmpty()) {
                met = true;
                step *= 0.5;
            } else if (there.getAsDouble() >= 0) {
                return between(low, low + step);
            } else {
                low += step;
                // Once a line was refused the tightest one that there can be is closed in.
                step *= met ? 0.5 : 2;
            }
            if (step < LEAST_STEP) {
                return atTheEnd(low, InputRule.PRETENSION_NOT_FOUND, shown(low), refusal);
            }
        }
    }

    private double downward(double start) {
        double high = start;
        double step = FIRST_STEP;
        boolean met = false;
        while (true) {
            OptionalDouble there = tried(high - step);
            if (there.isEmpty()) {
                met = true;
                step *= 0.5;
            } else if (there.getAsDouble() <= 0) {
                return between(high - step, high);
            } else {
                high -= step;
                step *= met ? 0.5 : 1;
            }
            if (step < LEAST_STEP) {
                return atTheEnd(high, InputRule.SLACKER_THAN_IT_HANGS);
            }
        }
    }

    /** The tightest or slackest line, where it gives the reading. */
    private double atTheEnd(double x, ViolationCode rule, Object... arguments) {
        if (Math.abs(excess(x)) <= READING * value) {
            return pretension(x);
        }
        throw refused(rule, arguments);
    }

    private double between(double low, double high) {
        return pretension(Roots.crossing(measurement.name(), this::excess, low, high, READING * value));
    }

    private double pretension(double x) {
        return designed * StrictMath.exp(x);
    }

    private String shown(double x) {
        return SignificantDigits.of(pretension(x), SHOWN_DIGITS) + " N";
    }

    /** By how much the reading lies on the side of too much pretension [N] or [m]. */
    private double excess(double x) {
        return sign * (measurement.on(with(line, pretension(x))) - value);
    }

    /** The same where the line can have the pretension. */
    private OptionalDouble tried(double x) {
        try {
            return OptionalDouble.of(excess(x));
        } catch (InvalidInputException e) {
            refusal = e.violations().get(0).rule();
        } catch (NoEquilibriumException e) {
            refusal = "leaves it without equilibrium (" + e.getMessage() + ")";
        }
        return OptionalDouble.empty();
    }

    private InvalidInputException refused(ViolationCode rule, Object... arguments) {
        String what = measurement.name() + (value == measurement.value() ? "" : ", an end of its uncertainty");
        return new InvalidInputException(
                List.of(Violation.of(what, GivenValue.number(value, measurement.unit()), rule, arguments)));
    }
}
