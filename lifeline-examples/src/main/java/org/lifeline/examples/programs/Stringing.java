package org.lifeline.examples.programs;

import java.io.IOException;
import java.util.List;
import java.util.Locale;
import org.lifeline.base.Interval;
import org.lifeline.design.field.StringingRow;
import org.lifeline.design.field.StringingTable;
import org.lifeline.examples.shared.DesignArgument;
import org.lifeline.file.DesignFile;

/** The stringing table of a design: what those who tension the line read at which temperature, within 10 %. */
public final class Stringing {
    private Stringing() {}

    /**
     * Prints the table.
     *
     * @param args a design file, or nothing for the demonstration design
     * @throws IOException if the file cannot be read
     */
    public static void main(String[] args) throws IOException {
        DesignFile file = DesignArgument.read(args);
        List<StringingRow> rows = StringingTable.withDefaults()
                .withTolerance(Interval.of(0.9, 1.1))
                .solve(file.design().line(), List.of(-20.0, -10.0, 0.0, 10.0, 20.0, 30.0, 40.0));
        System.out.println("In parentheses: what is read with 10 % less and with 10 % more pretension than designed.");
        System.out.println("  °C  span   tension [N]            midspan sag [mm]");
        for (StringingRow r : rows) {
            System.out.println(String.format(
                    Locale.ROOT,
                    "%4.0f  %4d   %5.0f (%5.0f to %5.0f)   %5.1f (%5.1f to %5.1f)",
                    r.temperature(),
                    r.span(),
                    r.tension().nominal(),
                    r.tension().low(),
                    r.tension().high(),
                    1000 * r.sag().nominal(),
                    1000 * r.sag().low(),
                    1000 * r.sag().high()));
        }
    }
}
