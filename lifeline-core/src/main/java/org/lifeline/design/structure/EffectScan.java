package org.lifeline.design.structure;

import java.util.ArrayList;
import java.util.List;
import org.lifeline.analysis.EnergyBalance;
import org.lifeline.analysis.state.AttachmentLimit;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.NoEquilibriumException;
import org.lifeline.design.envelope.ComputedCase;
import org.lifeline.design.envelope.Envelope;
import org.lifeline.design.envelope.FallCase;
import org.lifeline.design.envelope.LoadCombination;
import org.lifeline.internal.numeric.OrderedWork;
import org.lifeline.model.Fall;
import org.lifeline.model.Lifeline;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Place;

/**
 * Moves the falls over the line once more, for the effects that the envelope does not search: shear, moment and torsion at
 * bases, and forces across the line.
 */
final class EffectScan {
    private final LifelineDesign design;
    private final Envelope envelope;
    private final List<Place> places;
    private int evaluations;

    EffectScan(LifelineDesign design, Envelope envelope) {
        this.design = design;
        this.envelope = envelope;
        this.places = places(design.line());
    }

    /** How many arrests were computed. */
    int evaluations() {
        return evaluations;
    }

    void run(GoverningLoads loads) {
        for (Fall fall : Envelope.movingFalls(design)) {
            for (LoadCombination each : envelope.combinations(design)) {
                scan(fall, each, loads);
                // A fall that is stated at a support, where nothing runs, runs in the spans.
                if (fall.at(places.get(0)).canRun()) {
                    scan(fall, each.held(), loads);
                }
            }
        }
    }

    private void scan(Fall fall, LoadCombination combination, GoverningLoads loads) {
        for (Place place : places) {
            OrderedWork.stopIfInterrupted();
            FallCase fallCase = combination.of(fall.at(place));
            AttachmentLimit limit = fallCase.attachmentLimit().orElse(AttachmentLimit.RUNNING);
            try {
                loads.add(new ComputedCase(
                        fallCase,
                        EnergyBalance.withDefaults()
                                .withTemperature(combination.temperature())
                                .withSide(combination.side())
                                .withClearance(design.clearance())
                                .withAttachmentLimit(limit)
                                .solve(combination.line(), fallCase.fall())));
                evaluations++;
            } catch (InvalidInputException | NoEquilibriumException e) {
                // The assessment lists what cannot be computed: its envelope visits the same cases.
            }
        }
    }

    private static List<Place> places(Lifeline line) {
        List<Place> list = new ArrayList<>();
        for (int span = 1; span <= line.spans(); span++) {
            double run = line.run(span);
            for (int i = 0; i < ScanParameters.STATIONS; i++) {
                double share = 0.5 * (1 - StrictMath.cos(Math.PI * (i + 0.5) / ScanParameters.STATIONS));
                list.add(Place.of(span, run * share));
            }
        }
        line.supports().forEach(s -> list.add(Place.atSupport(s.id())));
        return list;
    }
}
