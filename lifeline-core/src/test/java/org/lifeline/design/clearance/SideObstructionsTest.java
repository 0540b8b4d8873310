package org.lifeline.design.clearance;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.EnergyBalance;
import org.lifeline.base.Point;
import org.lifeline.design.envelope.Designs;
import org.lifeline.model.Attachment;
import org.lifeline.model.ClearanceRules;
import org.lifeline.model.Fall;
import org.lifeline.model.Obstruction;
import org.lifeline.model.Passage;
import org.lifeline.model.Place;
import org.lifeline.model.Worker;

/**
 * Objects beside the line against the pendulum by hand. The worker stands 0.9 m off the line on a lanyard of 1.8 m, so the swing
 * begins at 30°: the feet, L from the line, reach L/2 to the side and stand there L cos 30° below the line.
 */
class SideObstructionsTest {
    private static final double TINY = 1e-6;
    private static final ArrestResult MIDDLE = arrest(0.9, 6);
    private static final double LENGTH = length(MIDDLE);
    private static final double REACH = LENGTH / 2 + 0.3;
    private static final double FEET = MIDDLE.attachmentAtPeak().z() - LENGTH * Math.cos(Math.PI / 6);

    private static ArrestResult arrest(double offset, double station) {
        Worker w = Designs.worker("A", Attachment.GRIPPED).toBuilder("A")
                .offset(offset)
                .build();
        return EnergyBalance.withDefaults()
                .solve(
                        Designs.line(1, Passage.free()),
                        Fall.builder("f").at(Place.of(1, station)).faller(w).build());
    }

    /** Lanyard, deployment, stretch of the harness and height of its attachment above the feet, in a line. */
    private static double length(ArrestResult r) {
        return 1.8 + r.deployment() + 0.3 + 1.5;
    }

    private static List<Integer> struck(ArrestResult r, Obstruction... obstructions) {
        double at = r.fall().place().station();
        return new SideObstructions(ClearanceRules.commonPractice().withObstructions(List.of(obstructions)))
                .struck(r, at, at);
    }

    private static Obstruction beside(double distance, double elevation) {
        return new Obstruction(5, 7, elevation, distance);
    }

    @Test
    void theFeetReachHalfTheirDistanceFromTheLineAndHalfABreadthFurther() {
        assertThat(struck(MIDDLE, beside(REACH - TINY, 12))).containsExactly(1);
        assertThat(struck(MIDDLE, beside(REACH + TINY, 12))).isEmpty();
    }

    /** At the end of its reach the object is struck from the height of the feet less the wanted margin of 0.6 m. */
    @Test
    void anObjectLowerThanTheFeetAndTheMarginIsNotStruck() {
        double nearly = REACH - 1e-9;
        assertThat(struck(MIDDLE, beside(nearly, FEET - 0.6 + 1e-4))).containsExactly(1);
        assertThat(struck(MIDDLE, beside(nearly, FEET - 0.6 - 1e-4))).isEmpty();
    }

    /** Nearer to the line the feet pass lower: z − √(L² − d²) at the distance d. */
    @Test
    void nearerToTheLineTheFeetHangLower() {
        double d = 1.5;
        double low = MIDDLE.attachmentAtPeak().z() - Math.sqrt(LENGTH * LENGTH - d * d);
        assertThat(low).isLessThan(FEET);
        assertThat(struck(MIDDLE, beside(d + 0.3, low - 0.6 + TINY))).containsExactly(1);
        assertThat(struck(MIDDLE, beside(d + 0.3, low - 0.6 - TINY))).isEmpty();
    }

    @Test
    void aSmallerMarginLetsTheObjectStandHigher() {
        ClearanceRules rules = ClearanceRules.commonPractice()
                .withMargin(0)
                .withObstructions(List.of(beside(REACH - 1e-9, FEET - 0.3)));
        assertThat(new SideObstructions(rules).struck(MIDDLE, 6, 6)).isEmpty();
        assertThat(new SideObstructions(rules.withMargin(0.6)).struck(MIDDLE, 6, 6))
                .containsExactly(1);
    }

    /** The swing reaches its amplitude, here the offset of 0.9 m since a gripped attachment at midspan stays, along the line. */
    @Test
    void alongTheLineTheSwingReachesItsAmplitude() {
        assertThat(MIDDLE.attachmentAtPeak().horizontalDistance(Point.of(6, 0, 0)))
                .isLessThan(1e-9);
        double d = 2.05;
        assertThat(struck(MIDDLE, new Obstruction(6.9 - TINY, 8, 12, d))).containsExactly(1);
        assertThat(struck(MIDDLE, new Obstruction(6.9 + TINY, 8, 12, d))).isEmpty();
        assertThat(struck(MIDDLE, new Obstruction(0, 5.1 + TINY, 12, d))).containsExactly(1);
        assertThat(struck(MIDDLE, new Obstruction(0, 5.1 - TINY, 12, d))).isEmpty();
    }

    /** An attachment that travels sweeps the way between, in whichever direction. */
    @Test
    void theWayOfTheAttachmentIsSweptInBothDirections() {
        SideObstructions side = new SideObstructions(ClearanceRules.commonPractice()
                .withObstructions(List.of(new Obstruction(3, 3.1, 12, 2.05), new Obstruction(9, 9.1, 12, 2.05))));
        assertThat(side.struck(MIDDLE, 3.5, 8.5)).containsExactly(1, 2);
        assertThat(side.struck(MIDDLE, 8.5, 3.5)).containsExactly(1, 2);
        assertThat(side.struck(MIDDLE, 4.5, 5)).isEmpty();
    }

    @Test
    void objectsAreNumberedAsStatedAndThoseBelowTheWorkerAreLeftOut() {
        List<Integer> struck = struck(
                MIDDLE,
                new Obstruction(0, 12, 20),
                beside(2, 12),
                new Obstruction(0, 12, 20, 1.2),
                beside(REACH + 1, 20),
                beside(1.2 + TINY, 12));
        // 1 is below the line, 3 within 0.9 m + 0.3 m of it: both are in the way of the fall itself.
        assertThat(struck).containsExactly(2, 5);
    }

    @Test
    void withoutAnOffsetNothingSwingsToTheSide() {
        ArrestResult still = arrest(0, 6);
        assertThat(struck(still, beside(0.3 + TINY, 20))).isEmpty();
    }

    /** Farther off the line the pendulum begins flatter: 1.7 m on 1.8 m reaches 17/18 of L. */
    @Test
    void theReachGrowsWithTheOffset() {
        ArrestResult wide = arrest(1.7, 6);
        double reach = length(wide) * 17 / 18;
        assertThat(struck(wide, beside(reach + 0.3 - TINY, 12.4))).containsExactly(1);
        assertThat(struck(wide, beside(reach + 0.3 + TINY, 20))).isEmpty();
        assertThat(reach).isGreaterThan(REACH - 0.3);
    }
}
