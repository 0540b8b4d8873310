package org.lifeline.analysis.clearance;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.lifeline.base.Violations;
import org.lifeline.model.ClearanceRules;
import org.lifeline.model.Connection;
import org.lifeline.model.Fall;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Obstruction;
import org.lifeline.model.Worker;

/**
 * Draws up the clearance account of an arrest.
 *
 * @since 1.0.0
 */
public final class ClearanceAccount {
    /** Distance out of plumb below which it gets no row of its own: rounding of elevations [m]. */
    private static final double PLUMB = 1e-9;

    /** Number of the row that says how far the line, or the support, goes down. */
    private static final int DESCENT = 1;

    private ClearanceAccount() {}

    /**
     * Elevations that an account starts from.
     *
     * @param lineBefore elevation of the line at the station before the fall [m]
     * @param lineLowest elevation of the attachment at the lowest point [m]
     * @param harnessLowest elevation of the harness attachment at the lowest point [m], where a motion gives it; a
     *     subsystem out of plumb reaches less far down than it is long
     * @param atSupport true where the connection pulls on a support and not on the line
     * @since 1.0.0
     */
    public record Levels(double lineBefore, double lineLowest, OptionalDouble harnessLowest, boolean atSupport) {}

    /**
     * How long the connecting subsystem is.
     *
     * @param taut its taut length [m]
     * @param deployment its extension beyond that at the lowest point [m]
     * @since 1.0.0
     */
    public record Reach(double taut, double deployment) {}

    /**
     * The account of one worker.
     *
     * @param rules harness stretch, margin, obstructions
     * @param worker the worker
     * @param levels elevations of line and harness [m]
     * @param reach lengths of the connecting subsystem [m]
     * @param below elevation of the highest obstruction below [m], if there is one
     * @return the account
     */
    public static Clearance draw(
            ClearanceRules rules, Worker worker, Levels levels, Reach reach, OptionalDouble below) {
        Violations.required("rules", rules);
        Violations.required("worker", worker);
        Violations.required("levels", levels);
        Violations.required("reach", reach);
        Violations.required("below", below);
        List<ClearanceRow> rows = new ArrayList<>();
        String source = levels.harnessLowest().isPresent() ? "transient" : "energy balance";
        String hold = levels.atSupport() ? "support" : "line at the station";
        double z = levels.lineBefore();
        rows.add(new ClearanceRow(hold + " before the fall", 0, z, "equilibrium of the line"));
        z = step(
                rows,
                levels.atSupport() ? "descent of the support" : "descent of the line",
                levels.lineBefore() - levels.lineLowest(),
                source,
                z);
        boolean device = worker.connection().kind() == Connection.Kind.SELF_RETRACTING;
        z = step(
                rows,
                device ? "length paid out at lock-up" : "taut length of the connecting subsystem",
                reach.taut(),
                "design",
                z);
        z = step(rows, "deployment", reach.deployment(), source, z);
        double plumb = z - levels.harnessLowest().orElse(z);
        if (Math.abs(plumb) > PLUMB) {
            z = step(rows, "connecting subsystem out of plumb", plumb, source, z);
        }
        z = step(rows, "harness stretch", rules.harnessStretch(), "design", z);
        z = step(rows, "harness attachment to feet", worker.attachmentHeight(), "design", z);
        double lowest = z;
        step(rows, "margin", rules.margin(), "design", z);
        return new Clearance(rows, worker.walkingLevel(), lowest, below);
    }

    /**
     * The same account where the line is at rest at its lowest: how far it goes down rests on that, the deployment on the arrest
     * before.
     *
     * @param account the account
     * @param source what the descent of the line rests on, in words
     * @return the account with the source at the row of the descent, everything else as it was
     */
    public static Clearance atRest(Clearance account, String source) {
        Violations.required("account", account);
        Violations.required("source", source);
        List<ClearanceRow> rows = new ArrayList<>(account.rows());
        ClearanceRow descent = rows.get(DESCENT);
        rows.set(DESCENT, new ClearanceRow(descent.item(), descent.value(), descent.elevation(), source));
        return account.withRows(rows);
    }

    private static double step(List<ClearanceRow> rows, String item, double value, String source, double z) {
        double next = z - value;
        rows.add(new ClearanceRow(item, value, next, source));
        return next;
    }

    /**
     * The highest obstruction below any place between that of the fall and that of the lowest point.
     *
     * @param rules the obstructions
     * @param line the line
     * @param fall the fall
     * @param alongAtPeak distance along the line of the attachment at the lowest point [m]
     * @return elevation [m], if there is an obstruction
     */
    public static OptionalDouble highest(ClearanceRules rules, Lifeline line, Fall fall, double alongAtPeak) {
        Violations.required("rules", rules);
        if (rules.obstructions().isEmpty()) {
            return OptionalDouble.empty();
        }
        double along = line.along(fall.place());
        return rules.obstructions().stream()
                .filter(o -> o.standsBetween(along, alongAtPeak) && o.isUnder(fall.largestOffset()))
                .mapToDouble(Obstruction::elevation)
                .max();
    }
}
