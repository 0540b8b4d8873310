package org.lifeline.analysis;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.lifeline.model.ClearanceRules;
import org.lifeline.model.Connection;
import org.lifeline.model.Fall;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Obstruction;
import org.lifeline.model.Worker;

/** Draws up the clearance account of an arrest. */
final class ClearanceAccount {
    private ClearanceAccount() {}

    /**
     * The account of one worker.
     *
     * @param rules harness stretch, margin, obstructions
     * @param worker the worker
     * @param levels elevation of the line before the fall and at the lowest point [m]
     * @param lengths taut length and deployment of the connecting subsystem [m]
     * @param below elevation of the highest obstruction below [m], if there is one
     */
    static Clearance draw(
            ClearanceRules rules, Worker worker, double[] levels, double[] lengths, OptionalDouble below) {
        List<ClearanceRow> rows = new ArrayList<>();
        double z = levels[0];
        rows.add(new ClearanceRow("line at the station before the fall", 0, z, "equilibrium of the line"));
        z = step(rows, "descent of the line", levels[0] - levels[1], "energy balance", z);
        boolean device = worker.connection().kind() == Connection.Kind.SELF_RETRACTING;
        z = step(
                rows,
                device ? "length paid out at lock-up" : "taut length of the connecting subsystem",
                lengths[0],
                "design",
                z);
        z = step(rows, "deployment", lengths[1], "energy balance", z);
        z = step(rows, "harness stretch", rules.harnessStretch(), "design", z);
        z = step(rows, "harness attachment to feet", worker.attachmentHeight(), "design", z);
        double lowest = z;
        z = step(rows, "margin", rules.margin(), "design", z);
        return new Clearance(rows, levels[0], worker.walkingLevel(), new double[] {lowest, z}, below);
    }

    /**
     * The account of one worker in motion. A subsystem that is out of plumb reaches less far down than it is long.
     *
     * @param rules harness stretch, margin, obstructions
     * @param worker the worker
     * @param levels elevation of the line before the fall and at the lowest point, and of the harness attachment there [m]
     * @param lengths taut length and extension of the connecting subsystem at the lowest point [m]
     * @param below elevation of the highest obstruction below [m], if there is one
     */
    static Clearance drawMoving(
            ClearanceRules rules, Worker worker, double[] levels, double[] lengths, OptionalDouble below) {
        List<ClearanceRow> rows = new ArrayList<>();
        String source = "transient";
        double z = levels[0];
        rows.add(new ClearanceRow("line at the station before the fall", 0, z, "equilibrium of the line"));
        z = step(rows, "descent of the line", levels[0] - levels[1], source, z);
        boolean device = worker.connection().kind() == Connection.Kind.SELF_RETRACTING;
        z = step(
                rows,
                device ? "length paid out at lock-up" : "taut length of the connecting subsystem",
                lengths[0],
                "design",
                z);
        z = step(rows, "deployment", lengths[1], source, z);
        double plumb = z - levels[2];
        if (Math.abs(plumb) > 1e-9) {
            z = step(rows, "connecting subsystem out of plumb", plumb, source, z);
        }
        z = step(rows, "harness stretch", rules.harnessStretch(), "design", z);
        z = step(rows, "harness attachment to feet", worker.attachmentHeight(), "design", z);
        double lowest = z;
        z = step(rows, "margin", rules.margin(), "design", z);
        return new Clearance(rows, levels[0], worker.walkingLevel(), new double[] {lowest, z}, below);
    }

    private static double step(List<ClearanceRow> rows, String item, double value, String source, double z) {
        double next = z - value;
        rows.add(new ClearanceRow(item, value, next, source));
        return next;
    }

    /** The highest obstruction below any place between two distances along the line. */
    static OptionalDouble highest(ClearanceRules rules, Lifeline line, Fall fall, double alongAtPeak) {
        if (rules.obstructions().isEmpty()) {
            return OptionalDouble.empty();
        }
        double a = line.along(fall.place());
        double low = Math.min(a, alongAtPeak);
        double high = Math.max(a, alongAtPeak);
        return rules.obstructions().stream()
                .filter(o -> o.from() <= high && o.to() >= low)
                .mapToDouble(Obstruction::elevation)
                .max();
    }
}
