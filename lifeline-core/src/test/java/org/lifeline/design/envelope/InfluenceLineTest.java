package org.lifeline.design.envelope;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.EnergyBalance;
import org.lifeline.analysis.motion.ForceFilter;
import org.lifeline.model.Attachment;
import org.lifeline.model.Fall;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Passage;
import org.lifeline.model.Place;
import org.lifeline.model.absorber.DeploymentForce;

/** One fall moved over one span of 12 m, sample by sample, against arrests that are solved one by one. */
@SuppressWarnings("NullAway") // Null is handed over to be refused, and what is there is taken as there.
class InfluenceLineTest {
    private static final LifelineDesign DESIGN =
            Designs.design(1, Passage.free(), Attachment.GRIPPED).withTemperatures(List.of(15.0));
    private static final ArrestQuantities QUANTITIES = ArrestQuantities.of(DESIGN, ForceFilter.NONE);
    private static final MovingFall FALL = MovingFall.of(DESIGN).get(0);

    private static InfluenceLine line(DeploymentForce side) {
        return new InfluenceLine(FALL, 1, LoadCombinations.nominal(DESIGN, 15, side), QUANTITIES);
    }

    private static ArrestResult direct(DeploymentForce side, Place place) {
        return EnergyBalance.withDefaults()
                .withSide(side)
                .withClearance(DESIGN.clearance())
                .solve(DESIGN.line(), FALL.fall().at(place));
    }

    private static double direct(DeploymentForce side, double station, int index) {
        return QUANTITIES.of(direct(side, Place.of(1, station)))[index];
    }

    /** A value found at a station; NaN where there is none. */
    private static double found(InfluenceLine line, double station, int index) {
        return line.found(List.of(Place.of(line.span(), station))).value(0, index);
    }

    private static int index(Quantity q) {
        return ArrestQuantities.index(q);
    }

    @Test
    void eachSampleIsTheArrestAtItsStation() {
        InfluenceLine line = line(DeploymentForce.MAXIMUM);
        line.scan(new double[] {2, 6, 9.5});
        for (double x : new double[] {2, 6, 9.5}) {
            for (Quantity q : List.of(Quantity.END_ANCHOR_LOAD, Quantity.SAG, Quantity.REQUIRED_ELEVATION)) {
                assertThat(found(line, x, index(q)))
                        .as("%s at %s", q, x)
                        .isEqualTo(direct(DeploymentForce.MAXIMUM, x, index(q)), within(1e-9));
            }
        }
        assertThat(found(line, 6.0001, index(Quantity.SAG))).as("not sampled").isNaN();
        assertThat(found(line, 11, index(Quantity.SAG))).as("behind the last").isNaN();
        InfluenceLine.Found found = line.found(List.of(Place.of(1, 6.0001), Place.of(1, 6)));
        assertThat(found.value(1, index(Quantity.SAG))).isEqualTo(found(line, 6, index(Quantity.SAG)));
        assertThat(found.caseAt(1).fall().place()).isEqualTo(Place.of(1, 6));
        assertThat(line.span()).isEqualTo(1);
        assertThat(line.failures()).isEmpty();
    }

    /** A station that was there already is not computed again, whatever the order in which stations come. */
    @Test
    void noStationIsSampledTwice() {
        InfluenceLine line = line(DeploymentForce.MAXIMUM);
        line.scan(new double[] {6, 2, 9});
        line.scan(new double[] {9, 2, 6, 4});
        assertThat(line.evaluations()).isEqualTo(4);
        InfluenceLine.Worst before = line.worst(index(Quantity.SAG));
        line.scan(new double[] {4});
        assertThat(line.evaluations()).isEqualTo(4);
        assertThat(line.worst(index(Quantity.SAG))).isSameAs(before);
    }

    @Test
    void theWorstIsTheLargestOfAllSamplesAndSupports() {
        InfluenceLine line = line(DeploymentForce.CLEARANCE);
        double[] stations = {1, 3, 5, 7, 10};
        line.scan(stations);
        for (int i = 0; i < QUANTITIES.size(); i++) {
            double most = Double.NEGATIVE_INFINITY;
            for (double x : stations) {
                double v = direct(DeploymentForce.CLEARANCE, x, i);
                most = Double.isNaN(v) ? most : Math.max(most, v);
            }
            for (String id : List.of("north", "south")) {
                double v = QUANTITIES.of(direct(DeploymentForce.CLEARANCE, Place.atSupport(id)))[i];
                most = Double.isNaN(v) ? most : Math.max(most, v);
            }
            InfluenceLine.Worst w = line.worst(i);
            if (most == Double.NEGATIVE_INFINITY) {
                assertThat(w).as("quantity %d", i).isNull();
            } else {
                assertThat(w.value()).as("quantity %d", i).isEqualTo(most, within(1e-9 * Math.abs(most) + 1e-12));
                assertThat(QUANTITIES.of(w.arrest())[i]).isEqualTo(w.value());
            }
        }
    }

    /** A connector that is held has the supports of the one that runs: they are not visited again. */
    @Test
    void aHeldConnectorLeavesTheSupportsOut() {
        LifelineDesign runs =
                Designs.design(1, Passage.free(), Attachment.FREE_RUNNING).withTemperatures(List.of(15.0));
        MovingFall fall = MovingFall.of(runs).get(0);
        LoadCombination held =
                LoadCombinations.nominal(runs, 15, DeploymentForce.MAXIMUM).held();
        InfluenceLine line = new InfluenceLine(fall, 1, held, ArrestQuantities.of(runs, ForceFilter.NONE));
        line.scan(new double[0]);
        assertThat(line.worst(index(Quantity.ARREST_FORCE))).isNull();
        InfluenceLine plain = line(DeploymentForce.MAXIMUM);
        plain.scan(new double[0]);
        assertThat(plain.worst(index(Quantity.ARREST_FORCE))
                        .fallCase()
                        .fall()
                        .place()
                        .isAtSupport())
                .isTrue();
        assertThat(plain.evaluations()).isZero();
    }

    /** From five stations beside the middle the refined worst is that of two hundred stations, to the tolerance of the search. */
    @ParameterizedTest
    @EnumSource(
            value = Quantity.class,
            names = {"END_ANCHOR_LOAD", "MAXIMUM_TENSION", "SAG", "REQUIRED_BELOW_LINE", "REQUIRED_ELEVATION"})
    void refiningFindsWhatBruteForceFinds(Quantity q) {
        InfluenceLine line = line(DeploymentForce.MAXIMUM);
        line.scan(new double[] {0.5, 2.7, 5.1, 8.3, 11.5});
        line.refine(index(q), Double.NEGATIVE_INFINITY);
        double most = Double.NEGATIVE_INFINITY;
        for (int i = 9; i < 192; i++) {
            most = Math.max(most, direct(DeploymentForce.MAXIMUM, 12.0 * i / 200, index(q)));
        }
        double found = line.worst(index(q)).value();
        assertThat(found).isGreaterThan(most - line.worst(index(q)).tolerance());
        assertThat(line.evaluations()).isLessThanOrEqualTo(5 + EnvelopeTolerances.MOST_SAMPLES);
    }

    /** Nothing is looked for below a threshold that is known from elsewhere. */
    @Test
    void aThresholdThatIsHigherSparesTheSearch() {
        int q = index(Quantity.END_ANCHOR_LOAD);
        InfluenceLine line = line(DeploymentForce.MAXIMUM);
        line.scan(new double[] {0.5, 2.7, 5.1, 8.3, 11.5});
        line.refine(q, 1e9);
        assertThat(line.evaluations()).isEqualTo(5);
        assertThat(line.exceeds(q, 1e9)).isFalse();
        double worst = line.worst(q).value();
        assertThat(line.exceeds(q, worst + 1)).isFalse();
        assertThat(line.exceeds(q, worst - line.worst(q).tolerance())).isTrue();
        line.refine(q, worst - 1e3);
        assertThat(line.evaluations()).isGreaterThan(5);
    }

    /** What may be exceeded somewhere between is looked for, be it that the bound is on the safe side: never the other way round. */
    @Test
    void theBoundBetweenSamplesIsNeverTooLow() {
        int q = index(Quantity.SAG);
        InfluenceLine line = line(DeploymentForce.MAXIMUM);
        line.scan(new double[] {1, 3, 8.5, 11});
        double most = 0;
        for (double x = 1; x <= 11; x += 0.125) {
            most = Math.max(most, direct(DeploymentForce.MAXIMUM, x, q));
        }
        line.refine(q, most - 2 * line.worst(q).tolerance());
        assertThat(line.evaluations()).isGreaterThan(4);
    }

    @Test
    void aPlaceThatTheSpanDoesNotHaveIsAFailure() {
        InfluenceLine line = line(DeploymentForce.MAXIMUM);
        line.scan(new double[] {6, 15});
        assertThat(line.failures()).singleElement().satisfies(f -> {
            assertThat(f.fallCase().fall().place()).isEqualTo(Place.of(1, 15));
            assertThat(f.reason()).isNotBlank();
        });
        assertThat(found(line, 15, index(Quantity.SAG))).isNaN();
        assertThat(line.evaluations()).isEqualTo(2);
        assertThat(line.worst(index(Quantity.SAG)).fallCase().fall().place()).isEqualTo(Place.of(1, 6));
    }

    @Test
    void aCaseIsThatOfTheCombinationAtTheStation() {
        FallCase c = line(DeploymentForce.CLEARANCE).caseAt(4.5);
        assertThat(c.fall().place()).isEqualTo(Place.of(1, 4.5));
        assertThat(c.side()).isEqualTo(DeploymentForce.CLEARANCE);
        assertThat(c.temperature()).isEqualTo(15);
        Fall moved = FALL.fall().at(Place.of(1, 4.5));
        assertThat(c.fall()).isEqualTo(moved);
    }
}
