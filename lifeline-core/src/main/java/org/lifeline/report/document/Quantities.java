package org.lifeline.report.document;

import java.util.ArrayList;
import java.util.List;
import org.lifeline.base.UnitSystem;

/**
 * Writes quantities in the units that a reader has chosen.
 *
 * <p>Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public final class Quantities {
    private final UnitChoice choice;

    private Quantities(UnitChoice choice) {
        this.choice = choice;
    }

    /**
     * A writer.
     *
     * @param choice the units
     * @return the writer
     */
    public static Quantities in(UnitChoice choice) {
        return new Quantities(choice);
    }

    /**
     * The units.
     *
     * @return the choice
     */
    public UnitChoice choice() {
        return choice;
    }

    /**
     * A computed quantity, with the digits that it deserves.
     *
     * @param kind what it is
     * @param value the quantity in SI [unit of the kind]
     * @return for example {@code "18.43 kN (4143 lbf)"}
     */
    public String result(QuantityKind kind, double value) {
        return write(kind, s -> kind.number(value, s));
    }

    /**
     * A difference of two computed quantities as it follows from their printed numbers, for a row that adds up.
     *
     * @param kind what they are
     * @param sum the larger one in SI [unit of the kind], finite
     * @param part what is taken from it in SI [unit of the kind], finite
     * @return the printed sum less the printed part
     */
    public String rest(QuantityKind kind, double sum, double part) {
        return write(kind, s -> {
            int decimals = kind.decimals(sum, s);
            return QuantityKind.show(kind.rounded(sum, s, decimals).subtract(kind.rounded(part, s, decimals)));
        });
    }

    /**
     * A quantity that was put in, as short as it is.
     *
     * @param kind what it is
     * @param value the quantity in SI [unit of the kind]
     * @return for example {@code "1.8288 m (6 ft)"}
     */
    public String input(QuantityKind kind, double value) {
        return write(kind, s -> kind.input(value, s));
    }

    /**
     * A quantity that was put in, with no more digits than a computed one has: for drawings and tables that are read at a
     * glance. Where it was put in with fewer it keeps them.
     *
     * @param kind what it is
     * @param value the quantity in SI [unit of the kind]
     * @return for example {@code "1.5 m (4.921 ft)"}
     */
    public String stated(QuantityKind kind, double value) {
        return write(kind, s -> {
            String input = kind.input(value, s);
            String result = kind.number(value, s);
            return input.length() <= result.length() ? input : result;
        });
    }

    private String write(QuantityKind kind, java.util.function.Function<UnitSystem, String> number) {
        List<String> parts = new ArrayList<>();
        for (UnitSystem s : choice.systems()) {
            String unit = kind.unit(s);
            String text = number.apply(s);
            boolean bare = unit.isEmpty() || !Character.isDigit(text.charAt(text.length() - 1));
            parts.add(bare ? text : text + (unit.equals("°") ? "" : " ") + unit);
        }
        boolean same = parts.size() == 1 || parts.get(0).equals(parts.get(1));
        return same ? parts.get(0) : parts.get(0) + " (" + parts.get(1) + ")";
    }

    /**
     * The unit for a table heading or an axis.
     *
     * @param kind what it is
     * @return for example {@code "kN (lbf)"}; empty for a bare number
     */
    public String unit(QuantityKind kind) {
        String a = kind.unit(choice.leading());
        if (choice.systems().size() == 1) {
            return a;
        }
        String b = kind.unit(choice.systems().get(1));
        return a.equals(b) ? a : a + " (" + b + ")";
    }
}
