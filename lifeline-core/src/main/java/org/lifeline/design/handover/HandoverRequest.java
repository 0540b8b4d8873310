package org.lifeline.design.handover;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.lifeline.base.Violations;
import org.lifeline.design.clearance.ClearanceAlongLine;
import org.lifeline.design.installation.InstallationPlan;
import org.lifeline.design.structure.SupportLoads;

/**
 * Which parts are to be handed over.
 *
 * <p>Immutable and thread-safe. Start with {@link #nothing()} and add parts.
 *
 * @since 1.0.0
 */
public final class HandoverRequest {
    private static final HandoverRequest NOTHING = new HandoverRequest(null, null, null, false);

    private final @Nullable SupportLoads structure;
    private final @Nullable ClearanceAlongLine clearance;
    private final @Nullable InstallationPlan installation;
    private final boolean numberOfWorkers;

    private HandoverRequest(
            @Nullable SupportLoads structure,
            @Nullable ClearanceAlongLine clearance,
            @Nullable InstallationPlan installation,
            boolean numberOfWorkers) {
        this.structure = structure;
        this.clearance = clearance;
        this.installation = installation;
        this.numberOfWorkers = numberOfWorkers;
    }

    /**
     * Nothing is asked for.
     *
     * @return the request
     */
    public static HandoverRequest nothing() {
        return NOTHING;
    }

    /**
     * The same with loads for the supporting structure.
     *
     * @param value how they are drawn up
     * @return the new request
     */
    public HandoverRequest withStructure(SupportLoads value) {
        return new HandoverRequest(Violations.required("structure", value), clearance, installation, numberOfWorkers);
    }

    /**
     * The same with the clearance along the line.
     *
     * @param value how it is drawn up
     * @return the new request
     */
    public HandoverRequest withClearance(ClearanceAlongLine value) {
        return new HandoverRequest(
                structure, Violations.required("clearanceAlongLine", value), installation, numberOfWorkers);
    }

    /**
     * The same with what those need who install the line.
     *
     * @param value how it is drawn up
     * @return the new request
     */
    public HandoverRequest withInstallation(InstallationPlan value) {
        return new HandoverRequest(structure, clearance, Violations.required("installation", value), numberOfWorkers);
    }

    /**
     * The same with the number of workers that meets the criteria.
     *
     * @return the new request
     */
    public HandoverRequest withNumberOfWorkers() {
        return new HandoverRequest(structure, clearance, installation, true);
    }

    /**
     * Tells whether anything is asked for.
     *
     * @return true if nothing is
     */
    public boolean isEmpty() {
        return structure == null && clearance == null && installation == null && !numberOfWorkers;
    }

    /**
     * Loads for the supporting structure.
     *
     * @return how they are drawn up, if asked for
     */
    public Optional<SupportLoads> structure() {
        return Optional.ofNullable(structure);
    }

    /**
     * Clearance along the line.
     *
     * @return how it is drawn up, if asked for
     */
    public Optional<ClearanceAlongLine> clearance() {
        return Optional.ofNullable(clearance);
    }

    /**
     * What those need who install the line.
     *
     * @return how it is drawn up, if asked for
     */
    public Optional<InstallationPlan> installation() {
        return Optional.ofNullable(installation);
    }

    /**
     * Whether the number of workers is looked for.
     *
     * @return true if it is
     */
    public boolean numberOfWorkers() {
        return numberOfWorkers;
    }
}
