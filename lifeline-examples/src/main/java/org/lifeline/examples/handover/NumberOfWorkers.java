package org.lifeline.examples.handover;

import java.io.IOException;
import java.util.stream.Collectors;
import org.lifeline.base.InertText;
import org.lifeline.design.occupancy.Occupancy;
import org.lifeline.design.occupancy.OccupancyResult;
import org.lifeline.design.occupancy.TriedNumber;
import org.lifeline.examples.shared.DesignArgument;
import org.lifeline.file.DesignFile;

/** How many of a crew may be hooked on at once, so that every criterion of the design is met. */
public final class NumberOfWorkers {
    private NumberOfWorkers() {}

    /**
     * Prints the numbers, by energy balance.
     *
     * @param args a design file, or nothing for the demonstration design
     * @throws IOException if the file cannot be read
     */
    public static void main(String[] args) throws IOException {
        DesignFile file = DesignArgument.read(args);
        OccupancyResult r = Occupancy.meeting(file.criteria()).solve(file.design());
        System.out.println("Crew of " + file.design().workers().size() + "; criteria judged by energy balance.");
        for (TriedNumber each : r.tried()) {
            String where = each.span() == 0 ? "whole line" : "span " + each.span();
            System.out.println(where + ", " + each.number() + " at once, " + each.arrangements() + " arrangements: "
                    + (each.isMet()
                            ? "all criteria met"
                            : "NOT MET: "
                                    + each.notMet().stream()
                                            .map(c ->
                                                    InertText.name(c.criterion().id()))
                                            .collect(Collectors.joining(", "))));
        }
        System.out.println("On the whole line at most " + r.inAll() + ".");
    }
}
