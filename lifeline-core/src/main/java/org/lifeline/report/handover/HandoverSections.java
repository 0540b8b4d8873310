package org.lifeline.report.handover;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.lifeline.base.InertText;
import org.lifeline.design.assessment.NotComputed;
import org.lifeline.design.handover.HandoverResult;
import org.lifeline.report.document.Quantities;
import org.lifeline.report.document.ReportBlock;
import org.lifeline.report.document.ReportSection;

/**
 * The sections of the parts that are handed over, in the order of those who need them.
 *
 * @since 1.0.0
 */
public final class HandoverSections {
    private final HandoverResult result;
    private final Quantities q;

    /**
     * Sections in the units of a report.
     *
     * @param result the parts
     * @param q the units
     */
    public HandoverSections(HandoverResult result, Quantities q) {
        this.result = result;
        this.q = q;
    }

    /**
     * Tells whether loads on supports have a pull across the line in them.
     *
     * @param result the parts, if any are handed over
     * @return true if loads for the structure were drawn up with such a pull
     */
    public static boolean pullsAside(Optional<HandoverResult> result) {
        return result.flatMap(HandoverResult::structure)
                .filter(s -> s.angle() > 0)
                .isPresent();
    }

    /**
     * Writes the sections.
     *
     * @return one for each part that was drawn up, and one for what could not be
     */
    public List<ReportSection> sections() {
        List<ReportSection> list = new ArrayList<>();
        result.structure().ifPresent(r -> list.add(new StructureSection(r, q).section()));
        result.occupancy().ifPresent(r -> list.add(new OccupancySection(r, result.assessment(), q).section()));
        result.clearance().ifPresent(r -> list.add(new ClearanceSection(r, q).section()));
        result.installation().ifPresent(r -> list.add(new InstallationSection(r, q).section()));
        if (!result.notComputed().isEmpty()) {
            List<String> items = new ArrayList<>();
            for (NotComputed each : result.notComputed()) {
                items.add(InertText.plain(each.what()) + ": " + InertText.plain(each.why()));
            }
            list.add(
                    new ReportSection("Parts that could not be handed over", 1, List.of(new ReportBlock.Items(items))));
        }
        return list;
    }
}
