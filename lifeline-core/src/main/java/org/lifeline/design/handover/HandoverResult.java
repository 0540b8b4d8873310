package org.lifeline.design.handover;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.lifeline.design.assessment.AssessmentResult;
import org.lifeline.design.assessment.NotComputed;
import org.lifeline.design.clearance.ClearanceAlongLineResult;
import org.lifeline.design.installation.InstallationResult;
import org.lifeline.design.occupancy.OccupancyResult;
import org.lifeline.design.structure.SupportLoadsResult;

/**
 * What an assessed design hands over.
 *
 * <p>Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public final class HandoverResult {
    private final AssessmentResult assessment;
    private final @Nullable SupportLoadsResult structure;
    private final @Nullable ClearanceAlongLineResult clearance;
    private final @Nullable InstallationResult installation;
    private final @Nullable OccupancyResult occupancy;
    private final List<NotComputed> notComputed;

    /** Collects the parts. Not thread-safe. */
    static final class Parts {
        @Nullable
        SupportLoadsResult structure;

        @Nullable
        ClearanceAlongLineResult clearance;

        @Nullable
        InstallationResult installation;

        @Nullable
        OccupancyResult occupancy;

        final List<NotComputed> notComputed = new ArrayList<>();
    }

    HandoverResult(AssessmentResult assessment, Parts parts) {
        this.assessment = assessment;
        this.structure = parts.structure;
        this.clearance = parts.clearance;
        this.installation = parts.installation;
        this.occupancy = parts.occupancy;
        this.notComputed = List.copyOf(parts.notComputed);
    }

    /**
     * The assessment that everything rests on.
     *
     * @return the assessment
     */
    public AssessmentResult assessment() {
        return assessment;
    }

    /**
     * Loads for the supporting structure.
     *
     * @return the loads, if they were asked for and could be computed
     */
    public Optional<SupportLoadsResult> structure() {
        return Optional.ofNullable(structure);
    }

    /**
     * Clearance along the line.
     *
     * @return the clearance, if it was asked for and could be computed
     */
    public Optional<ClearanceAlongLineResult> clearance() {
        return Optional.ofNullable(clearance);
    }

    /**
     * What those need who install the line.
     *
     * @return lengths, take-up, stringing table, readings, if they were asked for and could be computed
     */
    public Optional<InstallationResult> installation() {
        return Optional.ofNullable(installation);
    }

    /**
     * How many workers may be hooked on.
     *
     * @return the numbers, if they were asked for and could be computed
     */
    public Optional<OccupancyResult> occupancy() {
        return Optional.ofNullable(occupancy);
    }

    /**
     * Parts that could not be computed.
     *
     * @return each with its reason; unmodifiable
     */
    public List<NotComputed> notComputed() {
        return notComputed;
    }

    /**
     * The data sheet for the line.
     *
     * @return the data sheet
     */
    public DataSheet dataSheet() {
        return new DataSheet(this);
    }
}
