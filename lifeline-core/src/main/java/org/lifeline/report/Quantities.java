package org.lifeline.report;

import java.util.ArrayList;
import java.util.List;
import org.lifeline.base.UnitSystem;

/**
 * Writes quantities in the units that a reader has chosen.
 *
 * <p>Immutable and thread-safe.
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
     * @param measure what it is
     * @param value the quantity in SI [unit of the measure]
     * @return for example {@code "18.43 kN (4143 lbf)"}
     */
    public String result(Measure measure, double value) {
        return write(measure, s -> measure.number(value, s));
    }

    /**
     * A quantity that was put in, as short as it is.
     *
     * @param measure what it is
     * @param value the quantity in SI [unit of the measure]
     * @return for example {@code "1.8288 m (6 ft)"}
     */
    public String input(Measure measure, double value) {
        return write(measure, s -> measure.input(value, s));
    }

    private String write(Measure measure, java.util.function.Function<UnitSystem, String> number) {
        List<String> parts = new ArrayList<>();
        for (UnitSystem s : choice.systems()) {
            String unit = measure.unit(s);
            String text = number.apply(s);
            boolean joined = unit.isEmpty() || unit.equals("°") || text.startsWith("un") || text.equals("none");
            parts.add(joined ? text + (unit.equals("°") ? unit : "") : text + " " + unit);
        }
        boolean same = parts.size() == 1 || parts.get(0).equals(parts.get(1));
        return same ? parts.get(0) : parts.get(0) + " (" + parts.get(1) + ")";
    }

    /**
     * The unit for a table heading or an axis.
     *
     * @param measure what it is
     * @return for example {@code "kN (lbf)"}; empty for a bare number
     */
    public String unit(Measure measure) {
        String a = measure.unit(choice.leading());
        if (choice.systems().size() == 1) {
            return a;
        }
        String b = measure.unit(choice.systems().get(1));
        return a.equals(b) ? a : a + " (" + b + ")";
    }
}
