package org.lifeline.verify;

import java.util.List;
import org.lifeline.analysis.clearance.ClearanceRow;
import org.lifeline.model.Worker;
import org.lifeline.verify.state.ArrestNumbers;
import org.lifeline.verify.state.ClearanceNumbers;

/** The clearance account: its sums, and the lowest point from the geometry of the arrest. */
final class ClearanceChecks {
    private final ArrestNumbers arrest;
    private final ClearanceNumbers account;
    private final CheckLog log;
    private final double scale;

    ClearanceChecks(ArrestNumbers arrest, CheckLog log) {
        this.arrest = arrest;
        this.account = arrest.clearance();
        this.log = log;
        this.scale = arrest.levelScale();
    }

    void check() {
        List<ClearanceRow> rows = account.rows();
        equal(
                "line elevation",
                account.lineElevation(),
                arrest.attachmentBefore().z());
        equal(
                "first row",
                rows.get(0).elevation(),
                account.lineElevation() - rows.get(0).value());
        for (int i = 1; i < rows.size(); i++) {
            ClearanceRow row = rows.get(i);
            String where = "row " + (i + 1) + ", " + row.item();
            equal(where, row.elevation(), rows.get(i - 1).elevation() - row.value());
            log.add(Check.CLEARANCE, where + ", down", Deviation.over(0, row.value()) / scale);
        }
        ClearanceRow last = rows.get(rows.size() - 1);
        equal("required elevation", account.requiredElevation(), last.elevation());
        equal("lowest point", account.lowestPoint(), last.elevation() + last.value());
        equal("below the line", account.belowLine(), account.lineElevation() - account.requiredElevation());
        geometry();
        if (account.obstruction().isPresent()) {
            double margin = account.margin().orElse(Double.NaN);
            equal(
                    "margin",
                    margin,
                    account.requiredElevation() - account.obstruction().getAsDouble());
        }
    }

    /** The faller who reaches lowest, from the place of the attachment at the lowest point. */
    private void geometry() {
        double stretch =
                arrest.distances().totalFallDistance() - arrest.freeFall() - arrest.deployment() - arrest.descent();
        double lowest = Double.POSITIVE_INFINITY;
        double walking = Double.NaN;
        for (int i = 0; i < arrest.fall().fallers().size(); i++) {
            Worker w = arrest.fall().fallers().get(i);
            double taut = FallChecks.tautLength(w, arrest.attachmentBefore().z());
            double feet =
                    arrest.attachmentAtPeak().z() - taut - arrest.deployments().get(i) - stretch - w.attachmentHeight();
            if (feet < lowest) {
                lowest = feet;
                walking = w.walkingLevel();
            }
        }
        equal("lowest point from geometry", account.lowestPoint(), lowest);
        equal("below the walking level", account.belowWalkingLevel(), walking - account.requiredElevation());
    }

    private void equal(String where, double value, double expected) {
        log.add(Check.CLEARANCE, where, Math.abs(value - expected) / scale);
    }
}
