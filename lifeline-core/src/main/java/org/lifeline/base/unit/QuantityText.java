package org.lifeline.base.unit;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.lifeline.base.GivenValue;
import org.lifeline.base.InputRule;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.Violation;

/**
 * Reads quantities: a decimal number, then a unit, with or without a blank between them.
 *
 * <p>Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public final class QuantityText {
    /** Longest text that is looked at [characters]; longer ones are no quantity. */
    private static final int LONGEST = 80;

    private static final Pattern FORM = Pattern.compile(
            "([+-]?(?:[0-9]+\\.?[0-9]*|\\.[0-9]+)(?:[eE][+-]?[0-9]{1,3})?)[\\s\\u00a0\\u2000-\\u200a\\u202f\\u205f\\u3000\\u1680\\u180e]*(.*)");

    private static final Pattern NOT_FINITE = Pattern.compile("(?i)[+-]?(nan|inf|infinity|∞)\\b.*|[+-]?∞.*");

    private QuantityText() {}

    /**
     * A text is no quantity of the wanted dimension; the message is the rule that it breaks.
     *
     * @since 1.0.0
     */
    public static final class RuleBroken extends Exception {
        private static final long serialVersionUID = 1L;

        RuleBroken(String rule) {
            super(rule);
        }

        /**
         * The rule that the text breaks.
         *
         * @return a sentence without subject, for example {@code "must be a length: m, mm, cm, ft, in"}
         */
        public String rule() {
            return String.valueOf(getMessage());
        }
    }

    /**
     * Reads a quantity.
     *
     * @param text the text, for example {@code "6 ft"}
     * @param wanted the dimension that it must have
     * @return the quantity, finite
     * @throws RuleBroken if the text is no such quantity
     */
    public static Quantity parse(String text, Dimension wanted) throws RuleBroken {
        String clean = text.strip().replace('\u2212', '-');
        if (NOT_FINITE.matcher(clean).matches()) {
            throw new RuleBroken("must be a finite number with its unit, for example \"" + wanted.sample() + '"');
        }
        Matcher m = FORM.matcher(clean);
        if (clean.length() > LONGEST || !m.matches()) {
            throw new RuleBroken("must be a number followed by its unit, for example \"" + wanted.sample() + '"');
        }
        Unit unit = unit(m.group(2), wanted);
        if (unit.dimension() != wanted) {
            throw new RuleBroken("is " + unit.dimension().withArticle() + " (" + unit.symbol() + "); " + must(wanted));
        }
        BigDecimal number = new BigDecimal(m.group(1));
        if (number.signum() != 0 && number.doubleValue() == 0) {
            throw new RuleBroken("is too small");
        }
        double si = unit.toSi(number);
        if (!Double.isFinite(si)) {
            throw new RuleBroken("is too large");
        }
        return new Quantity(si, unit, text);
    }

    /**
     * Reads a quantity into SI.
     *
     * @param path where the text stands, for the violation
     * @param text the text, for example {@code "6 ft"}
     * @param wanted the dimension that it must have
     * @return the quantity in SI [unit of the dimension]; temperatures [°C]
     * @throws InvalidInputException if the text is no such quantity
     */
    public static double read(String path, String text, Dimension wanted) {
        try {
            return parse(text, wanted).si();
        } catch (RuleBroken e) {
            throw new InvalidInputException(
                    List.of(Violation.of(path, GivenValue.quoted(text), InputRule.NOT_A_QUANTITY, e.rule())));
        }
    }

    private static Unit unit(String spelling, Dimension wanted) throws RuleBroken {
        if (spelling.isEmpty()) {
            throw new RuleBroken("has no unit; " + must(wanted));
        }
        Optional<Unit> unit = Unit.spelled(spelling);
        if (unit.isPresent()) {
            return unit.get();
        }
        if (spelling.startsWith(",") || Character.isDigit(spelling.charAt(0))) {
            throw new RuleBroken("must be one number followed by its unit, with a point before the decimals and nothing"
                    + " between thousands, for example \"" + wanted.sample() + '"');
        }
        String near = NearestName.of(spelling, spellings(u -> u.dimension() == wanted))
                .or(() -> NearestName.of(spelling, spellings(u -> true)))
                .map(s -> " (did you mean " + s + "?)")
                .orElse("");
        throw new RuleBroken("has the unknown unit \"" + spelling + "\"" + near + "; " + must(wanted));
    }

    private static List<String> spellings(Predicate<Unit> which) {
        return Arrays.stream(Unit.values())
                .filter(which)
                .flatMap(u -> u.allSpellings().stream())
                .filter(s -> !s.isEmpty())
                .toList();
    }

    private static String must(Dimension wanted) {
        return "must be " + wanted.withArticle() + " in " + Unit.list(wanted);
    }
}
