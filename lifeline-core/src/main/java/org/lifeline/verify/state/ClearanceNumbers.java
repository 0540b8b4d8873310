package org.lifeline.verify.state;

import java.util.List;
import java.util.OptionalDouble;
import org.lifeline.analysis.clearance.Clearance;
import org.lifeline.analysis.clearance.ClearanceRow;
import org.lifeline.base.Violations;

/**
 * A clearance account as plain numbers. Immutable and thread-safe.
 *
 * @param rows the rows
 * @param lineElevation elevation of the line before the fall [m]
 * @param lowestPoint elevation of the lowest point [m]
 * @param requiredElevation elevation below which nothing may stand [m]
 * @param belowLine required clearance below the line [m]
 * @param belowWalkingLevel required clearance below the walking level [m]
 * @param obstruction elevation of the highest obstruction below [m], if there is one
 * @param margin what remains above it [m]
 * @since 1.0.0
 */
public record ClearanceNumbers(
        List<ClearanceRow> rows,
        double lineElevation,
        double lowestPoint,
        double requiredElevation,
        double belowLine,
        double belowWalkingLevel,
        OptionalDouble obstruction,
        OptionalDouble margin) {
    /**
     * Copies the lists.
     *
     * @param rows the rows
     * @param lineElevation elevation of the line before the fall [m]
     * @param lowestPoint elevation of the lowest point [m]
     * @param requiredElevation elevation below which nothing may stand [m]
     * @param belowLine required clearance below the line [m]
     * @param belowWalkingLevel required clearance below the walking level [m]
     * @param obstruction elevation of the highest obstruction below [m], if there is one
     * @param margin what remains above it [m]
     * @throws org.lifeline.base.InvalidInputException if something is missing
     */
    public ClearanceNumbers {
        rows = List.copyOf(Violations.requiredAll("rows", rows));
        Violations.required("obstruction", obstruction);
        Violations.required("margin", margin);
    }

    /**
     * Reads a clearance account.
     *
     * @param c the account
     * @return its numbers
     * @throws org.lifeline.base.InvalidInputException if there is no account
     */
    public static ClearanceNumbers of(Clearance c) {
        Violations.required("clearance", c);
        return new ClearanceNumbers(
                c.rows(),
                c.lineElevation(),
                c.lowestPoint(),
                c.requiredElevation(),
                c.requiredBelowLine(),
                c.requiredBelowWalkingLevel(),
                c.obstruction(),
                c.margin());
    }
}
