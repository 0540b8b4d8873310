package org.lifeline.design.occupancy;

import java.util.ArrayList;
import java.util.List;
import org.lifeline.analysis.EnergyBalance;
import org.lifeline.analysis.state.AttachmentLimit;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.NoEquilibriumException;
import org.lifeline.design.envelope.ComputedCase;
import org.lifeline.design.envelope.Envelope;
import org.lifeline.design.envelope.Extremes;
import org.lifeline.design.envelope.FallCase;
import org.lifeline.design.envelope.LoadCombination;
import org.lifeline.internal.numeric.OrderedWork;
import org.lifeline.model.Fall;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Place;

/** Moves the falls of a design along one span, in every combination that may govern and at both limits of an attachment. */
final class SpanScan {
    /**
     * Stations in the span [-], closer toward its supports (Chebyshev points), beside both supports, the middle and obstructions: on the lines
     * of the tests a search of 60 stations gives loads that are at most 0.1 % larger.
     */
    private static final int STATIONS = 8;

    private final LifelineDesign design;
    private final Envelope envelope;
    private final List<ComputedCase> cases = new ArrayList<>();
    private int failed;

    SpanScan(LifelineDesign design, Envelope envelope) {
        this.design = design;
        this.envelope = envelope;
    }

    Extremes run(int span) {
        List<Place> places = places(span);
        for (LoadCombination combination : envelope.combinations(design)) {
            for (Fall fall : design.falls()) {
                for (Place place : places) {
                    solve(combination, fall.at(place));
                    if (fall.canRun() && !place.isAtSupport()) {
                        solve(combination.held(), fall.at(place));
                    }
                }
            }
        }
        // A criterion that has to look elsewhere than where these govern looks along the whole line: of several spans
        // on the safe side.
        Extremes found = Extremes.ofCases(design, cases).ofWholeLine(envelope.tolerances());
        return failed == 0 ? found : found.lacking(failed + " cases could not be computed");
    }

    private List<Place> places(int span) {
        double run = design.line().run(span);
        List<Place> list = new ArrayList<>();
        list.add(Place.of(span, run / 2));
        for (int i = 0; i < STATIONS; i++) {
            list.add(Place.of(span, run * 0.5 * (1 - StrictMath.cos(Math.PI * (i + 0.5) / STATIONS))));
        }
        for (double station : design.clearance().obstructionStations(design.line(), span)) {
            list.add(Place.of(span, station));
        }
        list.add(Place.atSupport(design.line().supports().get(span - 1).id()));
        list.add(Place.atSupport(design.line().supports().get(span).id()));
        return list;
    }

    private void solve(LoadCombination combination, Fall fall) {
        OrderedWork.stopIfInterrupted();
        FallCase fallCase = combination.of(fall);
        try {
            cases.add(new ComputedCase(
                    fallCase,
                    EnergyBalance.withDefaults()
                            .withTemperature(combination.temperature())
                            .withSide(combination.side())
                            .withClearance(design.clearance())
                            .withAttachmentLimit(fallCase.attachmentLimit().orElse(AttachmentLimit.RUNNING))
                            .solve(combination.line(), fallCase.fall())));
        } catch (InvalidInputException | NoEquilibriumException e) {
            failed++;
        }
    }
}
