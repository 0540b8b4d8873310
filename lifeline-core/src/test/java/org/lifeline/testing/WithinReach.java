package org.lifeline.testing;

import java.util.ArrayList;
import java.util.List;
import org.lifeline.analysis.Statics;
import org.lifeline.analysis.state.AppliedLoad;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.NoEquilibriumException;
import org.lifeline.model.Attachment;
import org.lifeline.model.Connection;
import org.lifeline.model.Fall;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Worker;
import org.lifeline.verify.state.CableIntegration;
import org.lifeline.verify.state.MaterialPoints;
import org.lifeline.verify.state.StateNumbers;

/**
 * Falls of workers who cannot reach the line, turned into falls of workers who can: the level of the worker changes, and
 * the free fall or the length of the lanyard.
 */
final class WithinReach {
    /** Share of the taut length that is left over [-], so that rounding of the line's elevation does not undo it. */
    private static final double SPARE = 1e-8;

    private WithinReach() {}

    /** The fall with the same free fall; as it is where the line has no equilibrium. */
    static Fall sameFreeFall(Lifeline line, Fall fall, double temperature) {
        return of(line, fall, temperature, true);
    }

    /** The fall with the same lanyard: from as high above the line as it reaches, where the worker stood higher. */
    static Fall sameLength(Lifeline line, Fall fall, double temperature) {
        return of(line, fall, temperature, false);
    }

    private static Fall of(Lifeline line, Fall fall, double temperature, boolean keepFreeFall) {
        double elevation;
        try {
            elevation = elevation(line, fall, temperature);
        } catch (InvalidInputException | NoEquilibriumException e) {
            return fall;
        }
        double z = elevation;
        return fall.withWorkers(w -> fall.fallers().contains(w) ? within(w, z, keepFreeFall) : w);
    }

    /** Where the attachment is before the fall, by the quadrature of the checks. */
    private static double elevation(Lifeline line, Fall fall, double temperature) {
        List<AppliedLoad> loads = new ArrayList<>();
        for (Fall.Hanging h : fall.hanging()) {
            double weight = h.worker().mass() * line.gravity();
            loads.add(new AppliedLoad(h.place(), h.worker().attachment(), weight));
        }
        Statics statics = Statics.withDefaults();
        CableIntegration integration = CableIntegration.of(line.cable());
        MaterialPoints now = new MaterialPoints(
                StateNumbers.of(statics.withTemperature(temperature).solve(line, loads)), integration);
        if (fall.fallers().get(0).attachment() == Attachment.GRIPPED) {
            MaterialPoints installed = new MaterialPoints(StateNumbers.of(statics.solve(line, List.of())), integration);
            double held = installed.lengthTo(fall.place());
            if (now.isInSpan(fall.place().span(), held)) {
                return now.at(fall.place().span(), held).z();
            }
        }
        return now.pointAt(fall.place()).z();
    }

    private static Worker within(Worker w, double elevation, boolean keepFreeFall) {
        Connection c = w.connection();
        double above = elevation - w.harnessElevation();
        if (c.kind() == Connection.Kind.SELF_RETRACTING || Math.abs(above) <= c.tautLength(0)) {
            return w;
        }
        double freeFall = c.freeFall(above);
        // Overhead out of reach there is no free fall: the taut lanyard ends at the harness. Below: half of it each
        // way.
        double length = above > 0 || !keepFreeFall ? c.tautLength(0) : freeFall / 2;
        double drop = above > 0 ? length * (1 - SPARE) : -length * (1 - SPARE);
        return w.toBuilder(w.id())
                .walkingLevel(elevation - drop - w.attachmentHeight())
                .connection(c.withLength(length))
                .build();
    }
}
