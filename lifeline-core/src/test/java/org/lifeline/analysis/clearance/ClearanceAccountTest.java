package org.lifeline.analysis.clearance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.lifeline.base.Point;
import org.lifeline.model.ClearanceRules;
import org.lifeline.model.Connection;
import org.lifeline.model.Fall;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Obstruction;
import org.lifeline.model.Place;
import org.lifeline.model.Worker;
import org.lifeline.model.absorber.LoadingCurve;
import org.lifeline.model.cable.Cable;

/** The account of elevations by hand: every row is a step down, and what is left is the margin. */
class ClearanceAccountTest {
    private static final OptionalDouble NONE = OptionalDouble.empty();

    private static Worker worker() {
        return Worker.builder("w")
                .mass(100)
                .walkingLevel(8.5)
                .connection(Connection.plainLanyard(1.8, LoadingCurve.spring(5e4)))
                .build();
    }

    private static ClearanceRules rules(Obstruction... obstructions) {
        return ClearanceRules.commonPractice()
                .withHarnessStretch(0.3)
                .withMargin(1)
                .withObstructions(List.of(obstructions));
    }

    private static Clearance draw(OptionalDouble harness, OptionalDouble below) {
        return ClearanceAccount.draw(
                rules(),
                worker(),
                new ClearanceAccount.Levels(10, 9.4, harness, false),
                new ClearanceAccount.Reach(1.8, 1.1),
                below);
    }

    private static Lifeline line() {
        return Lifeline.builder()
                .cable(Cable.builder().massPerLength(0.4).axialStiffness(3e6).build())
                .endAnchor("a", Point.of(0, 0, 10))
                .endAnchor("b", Point.of(12, 0, 10))
                .pretension(1500)
                .build();
    }

    private static Fall fall(double station) {
        return Fall.builder("f")
                .at(Place.of(1, station))
                .faller(worker())
                .freeFall(1)
                .build();
    }

    /** 10 − 0.6 − 1.8 − 1.1 − 0.3 − attachment height − 1. */
    @Test
    void theStepsAddUp() {
        Clearance c = draw(NONE, OptionalDouble.of(1));
        double height = worker().attachmentHeight();
        assertThat(c.lineElevation()).isEqualTo(10);
        assertThat(c.lowestPoint()).isCloseTo(10 - 0.6 - 1.8 - 1.1 - 0.3 - height, within(1e-12));
        assertThat(c.requiredElevation()).isCloseTo(c.lowestPoint() - 1, within(1e-12));
        assertThat(c.requiredBelowLine()).isCloseTo(0.6 + 1.8 + 1.1 + 0.3 + height + 1, within(1e-12));
        assertThat(c.requiredBelowWalkingLevel()).isCloseTo(8.5 - c.requiredElevation(), within(1e-12));
        assertThat(c.margin().orElseThrow()).isCloseTo(c.requiredElevation() - 1, within(1e-12));
        assertThat(c.obstruction()).hasValue(1);
    }

    @Test
    void everyRowIsTheOneAboveItLessItsValue() {
        for (long seed = 1; seed <= 200; seed++) {
            SplittableRandom r = new SplittableRandom(seed);
            OptionalDouble harness = r.nextBoolean() ? NONE : OptionalDouble.of(r.nextDouble(4, 8));
            Clearance c = ClearanceAccount.draw(
                    rules(),
                    worker(),
                    new ClearanceAccount.Levels(r.nextDouble(9, 11), r.nextDouble(7, 9), harness, r.nextBoolean()),
                    new ClearanceAccount.Reach(r.nextDouble(0.5, 3), r.nextDouble(0, 1.5)),
                    NONE);
            List<ClearanceRow> rows = c.rows();
            for (int i = 1; i < rows.size(); i++) {
                assertThat(rows.get(i - 1).elevation() - rows.get(i).value())
                        .as("seed %d, row %s", seed, rows.get(i).item())
                        .isCloseTo(rows.get(i).elevation(), within(1e-12));
                assertThat(rows.get(i).source()).isNotBlank();
            }
            assertThat(rows.get(0).value()).isZero();
        }
    }

    /** Whoever swings hangs higher or lower than the plumb line says; the account ends where the motion did. */
    @Test
    void aHarnessOutOfPlumbHasARowOfItsOwn() {
        Clearance c = draw(OptionalDouble.of(6.7), NONE);
        ClearanceRow row = c.rows().stream()
                .filter(r -> r.item().contains("out of plumb"))
                .findFirst()
                .orElseThrow();
        assertThat(row.elevation()).isCloseTo(6.7, within(1e-12));
        assertThat(row.value()).isCloseTo(10 - 0.6 - 1.8 - 1.1 - 6.7, within(1e-12));
        assertThat(row.source()).isEqualTo("transient");
        assertThat(draw(NONE, NONE).rows()).noneMatch(r -> r.item().contains("plumb"));
        assertThat(draw(OptionalDouble.of(6.5), NONE).rows())
                .as("plumb but for rounding")
                .noneMatch(r -> r.item().contains("plumb"));
    }

    @Test
    void wordsSayWhatHolds() {
        Clearance atSupport = ClearanceAccount.draw(
                rules(),
                worker(),
                new ClearanceAccount.Levels(10, 9.9, NONE, true),
                new ClearanceAccount.Reach(1.8, 1.1),
                NONE);
        assertThat(atSupport.rows().get(0).item()).isEqualTo("support before the fall");
        assertThat(atSupport.rows().get(1).item()).isEqualTo("descent of the support");
        assertThat(draw(NONE, NONE).rows().get(0).item()).isEqualTo("line at the station before the fall");
        assertThat(draw(NONE, NONE).rows().get(2).item()).isEqualTo("taut length of the connecting subsystem");
    }

    @Test
    void withoutAnObstructionThereIsNoMargin() {
        Clearance c = draw(NONE, NONE);
        assertThat(c.margin()).isEmpty();
        assertThat(c.obstruction()).isEmpty();
        assertThatThrownBy(() -> c.rows().clear()).isInstanceOf(UnsupportedOperationException.class);
    }

    @Test
    void theHighestObstructionBelowCounts() {
        ClearanceRules rules = rules(
                new Obstruction(0, 4, 2),
                new Obstruction(4, 8, 3),
                new Obstruction(5, 7, 2.5),
                new Obstruction(9, 12, 6));
        assertThat(ClearanceAccount.highest(rules, line(), fall(6), 6)).hasValue(3);
        assertThat(ClearanceAccount.highest(rules, line(), fall(2), 2)).hasValue(2);
        assertThat(ClearanceAccount.highest(rules, line(), fall(8.5), 8.5)).isEmpty();
        assertThat(ClearanceAccount.highest(rules(), line(), fall(6), 6)).isEmpty();
    }

    /** An attachment that runs from 8.5 m to 9.5 m passes over the one that stands from 9 m on, and so the other way. */
    @Test
    void whatTheAttachmentPassesOverCountsAsWell() {
        ClearanceRules rules = rules(new Obstruction(9, 12, 6));
        assertThat(ClearanceAccount.highest(rules, line(), fall(8.5), 9.5)).hasValue(6);
        assertThat(ClearanceAccount.highest(rules, line(), fall(11), 8)).hasValue(6);
        assertThat(ClearanceAccount.highest(rules, line(), fall(8.5), 5)).isEmpty();
        assertThat(ClearanceAccount.highest(rules, line(), fall(9), 5))
                .as("at its border")
                .hasValue(6);
    }
}
