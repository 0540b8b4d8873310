package org.lifeline.analysis;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.OptionalDouble;
import org.lifeline.analysis.clearance.Clearance;
import org.lifeline.analysis.clearance.ClearanceAccount;
import org.lifeline.analysis.state.AppliedLoad;
import org.lifeline.analysis.state.EnergyAccount;
import org.lifeline.base.GivenValue;
import org.lifeline.base.InputRule;
import org.lifeline.base.PlausibleRange;
import org.lifeline.base.Point;
import org.lifeline.base.Violations;
import org.lifeline.base.canonical.Canonical;
import org.lifeline.base.canonical.CanonicalForm;
import org.lifeline.model.ClearanceRules;
import org.lifeline.model.Fall;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Worker;

/**
 * The line at rest after an arrest, with a rescuer who hangs on it at the place of the fall: the weights of those who have
 * fallen and of the rescuer together, put on slowly.
 *
 * <p>Nothing moves, so that the force of the absorbers does not matter; of the arrest its torn length is taken over, by which
 * the worker hangs lower. In-line absorbers and anchors with friction are taken as if the line had not arrested a fall before:
 * where that arrest loaded them more they have given way already, and the line hangs lower than said here, but no lower than
 * at the lowest point of the arrest; tension and loads are then smaller than said here. See {@code src/docs/theory/arrest.md}.
 *
 * <p>Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public final class RescueLoad implements Canonical {
    private final double mass;
    private final ClearanceRules clearance;

    private RescueLoad(double mass, ClearanceRules clearance) {
        this.mass = mass;
        this.clearance = clearance;
    }

    /**
     * With the clearance rules of common practice.
     *
     * @param rescuerMass mass of the rescuer with the rescue equipment [kg]
     * @return the analysis
     * @throws org.lifeline.base.InvalidInputException if the mass is not plausible
     */
    public static RescueLoad ofRescuer(double rescuerMass) {
        return new RescueLoad(
                PlausibleRange.WORKER_MASS.required("rescuerMass", rescuerMass), ClearanceRules.commonPractice());
    }

    /**
     * The same with other clearance rules.
     *
     * @param value harness stretch, margin, obstructions
     * @return the new analysis
     */
    public RescueLoad withClearance(ClearanceRules value) {
        return new RescueLoad(mass, Violations.required("clearance", value));
    }

    /**
     * The line at rest after an arrest.
     *
     * @param arrest the arrest, by energy balance
     * @return a result whose peak is the equilibrium under all who hang; its free fall and deployments are those of the arrest,
     *     its force on a worker is the weight of the heaviest who fell, and no energy is accounted for
     * @throws org.lifeline.base.InvalidInputException if the arrest was computed in another way
     * @throws org.lifeline.base.NoEquilibriumException if no equilibrium was found
     */
    public ArrestResult solve(ArrestResult arrest) {
        Violations.required("arrest", arrest);
        new Violations()
                .require(
                        arrest.method() == Method.ENERGY_BALANCE,
                        "arrest.method",
                        GivenValue.text(arrest.method().label()),
                        InputRule.ENERGY_BALANCE_NEEDED)
                .throwIfAny();
        Lifeline line = arrest.line();
        Fall fall = arrest.fall();
        List<AppliedLoad> loads = loads(arrest);
        LineEquilibrium state =
                Statics.withDefaults().withTemperature(arrest.temperature()).solve(line, loads);
        Point at = state.loads().get(loads.size() - 1).point();
        double heaviest =
                Collections.max(fall.fallers().stream().map(Worker::mass).toList());
        WorkerClearance needed = clearance(arrest, at);
        return new ArrestResultBuilder(new ArrestResult.Conditions(
                        fall, arrest.side(), Method.RESCUE_AT_REST, arrest.attachmentLimit()))
                .before(arrest.before())
                .peak(state)
                .attachmentBefore(arrest.attachmentBefore())
                .attachmentAtPeak(at)
                .freeFall(arrest.freeFall())
                .deployments(arrest.deployments())
                .arrestForce(heaviest * line.gravity())
                .lineLoad(loads.get(loads.size() - 1).force())
                .energy(new EnergyAccount(0, 0, 0, 0, 0, 0, 0))
                .clearance(needed.account)
                .clearanceWorker(needed.worker)
                .harnessStretch(clearance.harnessStretch())
                .build();
    }

    /**
     * The loads of the rescue: those who hung before the fall, then all who have fallen and the rescuer at one place.
     *
     * @param arrest the arrest before it
     * @return the loads in the order in which they are put on; unmodifiable
     */
    public List<AppliedLoad> loads(ArrestResult arrest) {
        Violations.required("arrest", arrest);
        Fall fall = arrest.fall();
        double g = arrest.line().gravity();
        List<AppliedLoad> loads = new ArrayList<>();
        for (Fall.Hanging each : fall.hanging()) {
            loads.add(new AppliedLoad(
                    each.place(), each.worker().attachment(), each.worker().mass() * g));
        }
        loads.add(new AppliedLoad(fall.place(), arrest.attachment(), (fall.fallingMass() + mass) * g));
        return List.copyOf(loads);
    }

    /** An account of clearance and whose it is. */
    private record WorkerClearance(Worker worker, Clearance account) {}

    /** The account of the one of those who have fallen who hangs lowest. */
    private WorkerClearance clearance(ArrestResult arrest, Point at) {
        Lifeline line = arrest.line();
        Fall fall = arrest.fall();
        Point first = line.supports().get(arrest.span() - 1).position();
        double along = line.along(fall.place()) - line.stationOf(fall.place()) + first.horizontalDistance(at);
        OptionalDouble below = ClearanceAccount.highest(clearance, line, fall, along);
        double before = arrest.attachmentBefore().z();
        ClearanceAccount.Levels levels = new ClearanceAccount.Levels(
                before, at.z(), OptionalDouble.empty(), fall.place().isAtSupport());
        WorkerClearance worst = null;
        for (int i = 0; i < fall.fallers().size(); i++) {
            Worker each = fall.fallers().get(i);
            double above = before - each.harnessElevation();
            double taut = Math.max(each.connection().tautLength(above), above);
            Clearance c = ClearanceAccount.draw(
                    clearance,
                    each,
                    levels,
                    new ClearanceAccount.Reach(taut, arrest.deployments().get(i)),
                    below);
            if (worst == null || c.requiredElevation() < worst.account.requiredElevation()) {
                worst = new WorkerClearance(each, ClearanceAccount.atRest(c, Method.RESCUE_AT_REST.label()));
            }
        }
        if (worst == null) {
            throw new IllegalStateException("unreachable: a fall has at least one faller");
        }
        return worst;
    }

    @Override
    public CanonicalForm canonicalForm() {
        return CanonicalForm.builder("rescue load")
                .number("mass", mass, "kg")
                .part("clearance", clearance)
                .build();
    }
}
