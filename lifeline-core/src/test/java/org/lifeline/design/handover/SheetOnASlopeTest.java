package org.lifeline.design.handover;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.EnergyBalance;
import org.lifeline.analysis.RescueLoad;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.NoEquilibriumException;
import org.lifeline.design.assessment.Assessment;
import org.lifeline.design.assessment.AssessmentResult;
import org.lifeline.design.envelope.Envelope;
import org.lifeline.design.envelope.LoadCombination;
import org.lifeline.design.envelope.Quantity;
import org.lifeline.design.envelope.RandomDesigns;
import org.lifeline.model.Fall;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Place;

/**
 * The clearance below the line that the data sheet asks for holds for a rescue on lines that slope, where the rescue needs most below the line
 * elsewhere than at the lowest elevation: 5.00 m were told where 5.07 m are needed (seed 84).
 */
class SheetOnASlopeTest {
    private static final double RESCUER = 400;
    private static final int PLACES = 8;

    /** Second way: the line at rest under all of them at places of every span, from the straight line. */
    private static double needed(LifelineDesign d) {
        double most = 0;
        RescueLoad rescue = RescueLoad.ofRescuer(RESCUER).withClearance(d.clearance());
        for (Fall fall : Envelope.movingFalls(d)) {
            for (LoadCombination c : Envelope.withDefaults().combinations(d)) {
                EnergyBalance analysis = EnergyBalance.withDefaults()
                        .withTemperature(c.temperature())
                        .withSide(c.side())
                        .withClearance(d.clearance());
                for (int span = 1; span <= d.line().spans(); span++) {
                    for (int i = 1; i < PLACES; i++) {
                        Place place = Place.of(span, d.line().run(span) * i / PLACES);
                        try {
                            ArrestResult r = rescue.solve(analysis.solve(c.line(), fall.at(place)));
                            double elevation = Quantity.REQUIRED_ELEVATION.value(r, d.modelFactors());
                            most = Math.max(most, d.line().chordElevation(place) - elevation);
                        } catch (InvalidInputException | NoEquilibriumException e) {
                            // No arrest there, and none that the sheet speaks of.
                        }
                    }
                }
            }
        }
        return most;
    }

    @ParameterizedTest
    @ValueSource(longs = {35, 84, 12})
    void theClearanceHoldsForTheRescueWhereverItNeedsMost(long seed) {
        LifelineDesign d = new RandomDesigns(seed)
                .design().toBuilder().rescuerMass(RESCUER).build();
        AssessmentResult assessment = Assessment.withDefaults().withoutMotion().solve(d);
        double said = Handover.of(HandoverRequest.nothing())
                .solve(assessment)
                .dataSheet()
                .clearanceBelowLine()
                .orElseThrow();
        assertThat(said).isGreaterThan(needed(d) - 1e-3);
    }
}
