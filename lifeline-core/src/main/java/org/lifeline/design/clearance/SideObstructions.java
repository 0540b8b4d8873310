package org.lifeline.design.clearance;

import java.util.ArrayList;
import java.util.List;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.design.envelope.SwingFall;
import org.lifeline.model.ClearanceRules;
import org.lifeline.model.Obstruction;
import org.lifeline.model.Worker;

/**
 * Obstructions beside the line that a worker strikes in a swing.
 *
 * <p>The worker is taken as straight in line with the connecting subsystem: from the attachment on the line at the lowest point
 * of the arrest down to the feet, L = taut length + deployment + harness stretch + height of the harness attachment. Swinging to
 * the angle θ of {@link SwingFall} the feet reach L sin θ to the side, and half the breadth of a person further. Where they reach
 * the obstruction, at the horizontal distance d from the line, they are at z − √(L² − d²) or lower; the obstruction is struck if
 * its top is no lower than that less the wanted margin (geometry of the pendulum).
 */
final class SideObstructions {
    private final ClearanceRules rules;

    SideObstructions(ClearanceRules rules) {
        this.rules = rules;
    }

    /** Numbers of the obstructions that are struck, from 1. */
    List<Integer> struck(ArrestResult arrest, double fromAlong, double toAlong) {
        List<Integer> list = new ArrayList<>();
        SwingFall swing = SwingFall.of(arrest);
        double low = Math.min(fromAlong, toAlong) - swing.amplitude();
        double high = Math.max(fromAlong, toAlong) + swing.amplitude();
        for (int i = 0; i < rules.obstructions().size(); i++) {
            Obstruction o = rules.obstructions().get(i);
            boolean beside = !o.isUnder(arrest.fall().largestOffset()) && o.standsBetween(low, high);
            if (beside && strikes(arrest, o)) {
                list.add(i + 1);
            }
        }
        return list;
    }

    private boolean strikes(ArrestResult arrest, Obstruction o) {
        double z = arrest.attachmentAtPeak().z();
        for (int i = 0; i < arrest.fall().fallers().size(); i++) {
            Worker w = arrest.fall().fallers().get(i);
            double above = arrest.attachmentBefore().z() - w.harnessElevation();
            double taut = Math.max(w.connection().tautLength(above), above);
            double reach = taut + arrest.deployments().get(i) + rules.harnessStretch() + w.attachmentHeight();
            // To the side only what the worker stands off the line makes the pendulum swing.
            double sine = Math.min(1, w.offset() / taut);
            double free = o.distance() - Obstruction.HALF_BREADTH;
            if (reach * sine >= free) {
                double feet = z - Math.sqrt(Math.max(0, reach * reach - free * free));
                if (o.elevation() >= feet - rules.margin()) {
                    return true;
                }
            }
        }
        return false;
    }
}
