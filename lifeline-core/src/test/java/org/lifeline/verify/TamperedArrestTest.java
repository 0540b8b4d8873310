package org.lifeline.verify;

import static org.assertj.core.api.Assertions.assertThat;
import static org.lifeline.verify.Arrested.distance;
import static org.lifeline.verify.Arrested.energy;
import static org.lifeline.verify.Arrested.failed;
import static org.lifeline.verify.Arrested.numbers;

import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.lifeline.analysis.EnergyBalance;
import org.lifeline.analysis.Statics;
import org.lifeline.analysis.clearance.ClearanceRow;
import org.lifeline.model.ClearanceRules;
import org.lifeline.model.Connection;
import org.lifeline.model.Fall;
import org.lifeline.model.Obstruction;
import org.lifeline.model.Worker;
import org.lifeline.model.absorber.LoadingCurve;
import org.lifeline.model.absorber.LoadingCurve.Corner;
import org.lifeline.testing.ArrestCase;
import org.lifeline.testing.Cases;
import org.lifeline.verify.state.ArrestNumbers;
import org.lifeline.verify.state.ClearanceNumbers;
import org.lifeline.verify.state.StateNumbers;

/** Each check of an arrest is able to fail: one number of a right arrest is changed, and just its check finds it. */
class TamperedArrestTest {
    private final ArrestNumbers level = numbers(Cases.level());
    private final ArrestNumbers friction = numbers(Cases.friction());

    @Test
    void untouchedArrestsPass() {
        assertThat(failed(level)).isEmpty();
        assertThat(failed(friction)).isEmpty();
    }

    @Test
    void finite() {
        assertThat(failed(distance(level, "sag", Double.NaN))).containsExactly(Check.FINITE, Check.DERIVED);
    }

    @Test
    void attachmentElsewhereBeforeTheFall() {
        ArrestNumbers a = Changed.with(level, "attachmentBefore", Changed.moved(level.attachmentBefore(), 0, 1e-6, 0));

        assertThat(failed(a)).containsExactly(Check.ATTACHMENT_BEFORE);
    }

    @Test
    void attachmentElsewhereAtTheLowestPoint() {
        ArrestNumbers a = Changed.with(level, "attachmentAtPeak", Changed.moved(level.attachmentAtPeak(), 0, 1e-6, 0));

        assertThat(failed(a)).containsExactly(Check.ATTACHMENT_AT_PEAK);
    }

    @Test
    void anotherFreeFall() {
        ArrestNumbers a = Changed.with(level, "freeFall", level.freeFall() + 1e-6);

        assertThat(failed(distance(a, "totalFallDistance", 1e-6))).containsExactly(Check.FREE_FALL);
    }

    @Test
    void aForceBesideTheLoadingCurve() {
        Worker old = level.fall().fallers().get(0);
        // The same work up to the deployment, another force there.
        double x = level.deployment();
        LoadingCurve curve = LoadingCurve.through(
                List.of(
                        new Corner(0, 0),
                        new Corner(0.06, 6000),
                        new Corner(x - 0.1, 6000),
                        new Corner(x - 0.05, 6000),
                        new Corner(x, 6000.1),
                        new Corner(1.2, 6001)),
                Double.POSITIVE_INFINITY,
                2e5);
        ArrestNumbers a = Changed.with(level, "fall", fall(old, curve, old.mass()));

        assertThat(failed(a)).containsExactly(Check.CONNECTION_FORCE, Check.ENERGY_CONNECTION);
    }

    private Fall fall(Worker old, LoadingCurve curve, double mass) {
        Worker other = Worker.builder("other")
                .mass(mass)
                .walkingLevel(old.walkingLevel())
                .attachmentHeight(old.attachmentHeight())
                .attachment(old.attachment())
                .connection(Connection.givenCurve(old.connection().tautLength(0), curve))
                .build();
        return Fall.builder("fall").at(level.fall().place()).faller(other).build();
    }

    @Test
    void workersTooHeavyForTheLineLoad() {
        Worker old = level.fall().fallers().get(0);
        ArrestNumbers a = Changed.with(level, "fall", fall(old, old.connection().curve(level.side()), 700));

        assertThat(failed(a)).contains(Check.PEAK, Check.ENERGY_FALL);
    }

    @Test
    void anotherArrestForce() {
        assertThat(failed(Changed.with(level, "arrestForce", level.arrestForce() * 1.0001)))
                .containsExactly(Check.ARREST_FORCE);
        ArrestNumbers together = numbers(Cases.together());
        assertThat(failed(together)).isEmpty();
        assertThat(failed(Changed.with(together, "arrestForce", together.arrestForce() * 0.9999)))
                .containsExactly(Check.ARREST_FORCE);
    }

    @Test
    void bottomingOutThatIsNotTrueOrNotSaid() {
        assertThat(failed(Changed.with(level, "bottomedOut", true))).containsExactly(Check.BOTTOMED_OUT);
        ArrestNumbers together = numbers(Cases.together());
        assertThat(together.bottomedOut()).isTrue();
        assertThat(failed(Changed.with(together, "bottomedOut", false))).containsExactly(Check.BOTTOMED_OUT);
    }

    @ParameterizedTest
    @CsvSource({"sag", "lineDescent", "loadX"})
    void distancesThatDoNotFollow(String name) {
        assertThat(failed(distance(level, name, 1e-6))).containsExactly(Check.DERIVED);
    }

    @Test
    void aTotalFallShorterThanItsParts() {
        double stretch = 0.3;

        assertThat(failed(distance(level, "totalFallDistance", -stretch - 1e-6)))
                .containsExactly(Check.DERIVED, Check.CLEARANCE);
    }

    @Test
    void slipThatDoesNotFollow() {
        ArrestNumbers.Distances d = friction.distances();
        ArrestNumbers a =
                Changed.with(friction, "distances", Changed.with(d, "slip", Changed.at(d.slip(), 1, s -> -s)));

        assertThat(failed(a)).containsExactly(Check.DERIVED);
    }

    @Test
    void anotherEnergyOfTheFall() {
        assertThat(failed(energy(level, "fall", 5e-9))).containsExactly(Check.ENERGY_FALL);
    }

    /** A row is out by more than its limit, another makes up for part of it, so that the account still closes. */
    @ParameterizedTest
    @CsvSource({
        "cable, hanging, ENERGY_CABLE",
        "hanging, cable, ENERGY_HANGING",
        "anchors, cable, ENERGY_ANCHORS",
        "inlineAbsorbers, cable, ENERGY_ABSORBERS",
        "connection, cable, ENERGY_CONNECTION"
    })
    void anotherRowOfTheAccount(String row, String other, Check expected) {
        ArrestNumbers a = energy(energy(level, row, 1.5e-8), other, -0.9e-8);

        assertThat(failed(a)).containsExactly(expected);
    }

    /** The same where there is something in the rows, and an error of 1e-6 of them. */
    @Test
    void anotherRowOfAFullAccount() {
        rowOf(Cases.yielding(), "anchors", Check.ENERGY_ANCHORS);
        rowOf(Cases.sequence(), "hanging", Check.ENERGY_HANGING);
        rowOf(Cases.inlineAbsorber(), "inlineAbsorbers", Check.ENERGY_ABSORBERS);
        rowOf(Cases.twoInlineAbsorbers(), "inlineAbsorbers", Check.ENERGY_ABSORBERS);
        rowOf(Cases.together(), "connection", Check.ENERGY_CONNECTION);
    }

    private static void rowOf(ArrestCase each, String row, Check expected) {
        ArrestNumbers a = numbers(each);

        assertThat(failed(a)).as(each.name()).isEmpty();
        assertThat(failed(energy(energy(a, row, 1.5e-8), "cable", -0.9e-8)))
                .as(each.name())
                .containsExactly(expected);
        assertThat(failed(energy(energy(a, row, -1.5e-8), "cable", 0.9e-8)))
                .as(each.name())
                .containsExactly(expected);
    }

    @Test
    void anAccountThatDoesNotClose() {
        assertThat(failed(energy(energy(level, "cable", 0.9e-8), "hanging", 0.9e-8)))
                .containsExactly(Check.ENERGY_RESIDUAL);
    }

    @Test
    void heatThatCannotBe() {
        assertThat(failed(energy(level, "friction", 5e-9))).containsExactly(Check.ENERGY_FRICTION);
        assertThat(failed(energy(level, "friction", -5e-9))).containsExactly(Check.ENERGY_FRICTION);
    }

    @Test
    void slipWithoutHeat() {
        double heat = friction.energy().friction() / friction.energy().fall();
        assertThat(heat).isPositive();

        assertThat(failed(energy(friction, "friction", -heat)))
                .contains(Check.ENERGY_FRICTION, Check.ENERGY_RESIDUAL, Check.PATH_WORK);
    }

    @Test
    void anotherPathWork() {
        assertThat(failed(Changed.with(friction, "pathWork", friction.pathWork() * (1 + 1e-5))))
                .containsExactly(Check.PATH_WORK);
    }

    @Test
    void anotherWorkThroughStaticStates() {
        StateNumbers installed =
                StateNumbers.of(Statics.withDefaults().solve(level.before().line(), List.of()));
        double work = level.energy().lineWork() / level.energy().fall();
        ArrestNumbers a = energy(level, "cable", 3e-6 * work);

        assertThat(Verifier.withDefaults()
                        .withPathWork(20_000)
                        .reportArrest(a, installed)
                        .failures())
                .extracting(CheckResult::check)
                .contains(Check.STATIC_PATH_WORK);
        // Too few solutions allowed: no number, no pass.
        assertThat(Verifier.withDefaults()
                        .withPathWork(3)
                        .reportArrest(level, installed)
                        .failures())
                .extracting(CheckResult::check)
                .containsExactly(Check.STATIC_PATH_WORK);
    }

    @Test
    void rowsOfTheClearanceThatDoNotAddUp() {
        ClearanceNumbers c = level.clearance();
        for (int i = 0; i < c.rows().size(); i++) {
            ArrestNumbers a = clearance(Changed.with(
                    c, "rows", Changed.at(c.rows(), i, r -> Changed.with(r, "elevation", r.elevation() + 1e-6))));

            assertThat(failed(a)).as("row %d", i).containsExactly(Check.CLEARANCE);
        }
    }

    @Test
    void aRowThatRunsUpward() {
        ClearanceNumbers c = level.clearance();
        ArrestNumbers a =
                clearance(Changed.with(c, "rows", Changed.at(c.rows(), 1, r -> Changed.with(r, "value", -r.value()))));

        assertThat(failed(a)).containsExactly(Check.CLEARANCE);
    }

    /** All rows too high by the same: they add up, but do not begin at the line. */
    @Test
    void aClearanceThatBeginsElsewhere() {
        ClearanceNumbers c = level.clearance();
        List<ClearanceRow> rows = c.rows().stream()
                .map(r -> Changed.with(r, "elevation", r.elevation() + 1e-6))
                .toList();

        assertThat(failed(clearance(Changed.with(c, "rows", rows)))).containsExactly(Check.CLEARANCE);
    }

    /** Two rows that cancel: one of them runs upward. */
    @Test
    void aStepUpAndALongerStepDown() {
        ClearanceNumbers c = level.clearance();
        double up = c.rows().get(3).value() + 1;
        List<ClearanceRow> rows =
                Changed.at(c.rows(), 3, r -> new ClearanceRow(r.item(), -1, r.elevation() + up, r.source()));
        rows = Changed.at(rows, 4, r -> Changed.with(r, "value", r.value() + up));

        assertThat(failed(clearance(Changed.with(c, "rows", rows)))).containsExactly(Check.CLEARANCE);
    }

    @ParameterizedTest
    @CsvSource({"lineElevation", "lowestPoint", "requiredElevation", "belowLine", "belowWalkingLevel"})
    void levelsOfTheClearance(String name) throws ReflectiveOperationException {
        ClearanceNumbers c = level.clearance();
        double old = (double) ClearanceNumbers.class.getDeclaredMethod(name).invoke(c);

        assertThat(failed(clearance(Changed.with(c, name, old + 1e-6)))).containsExactly(Check.CLEARANCE);
    }

    @Test
    void aMarginThatIsNotTheDistanceToTheObstruction() {
        ArrestCase each = Cases.level();
        ArrestNumbers below = ArrestNumbers.of(EnergyBalance.withDefaults()
                .withClearance(ClearanceRules.commonPractice().withObstructions(List.of(new Obstruction(0, 24, 3))))
                .solve(each.line(), each.fall()));
        ClearanceNumbers c = below.clearance();
        assertThat(failed(below)).isEmpty();
        double margin = c.margin().orElseThrow();

        ArrestNumbers other =
                Changed.with(below, "clearance", Changed.with(c, "margin", OptionalDouble.of(margin + 1e-6)));
        ArrestNumbers none = Changed.with(below, "clearance", Changed.with(c, "margin", OptionalDouble.empty()));

        assertThat(failed(other)).containsExactly(Check.CLEARANCE);
        assertThat(failed(none)).containsExactly(Check.CLEARANCE);
    }

    private ArrestNumbers clearance(ClearanceNumbers other) {
        return Changed.with(level, "clearance", other);
    }

    /** What is wrong with a state is found in the arrest as well, before and at the lowest point. */
    @Test
    void statesOfTheArrestAreChecked() {
        StateNumbers before =
                Changed.piece(level.before(), 1, 1, p -> Changed.with(p, "weight", p.weight() * (1 + 1e-10)));
        StateNumbers peak = Changed.piece(level.peak(), 1, 2, p -> Changed.with(p, "weight", p.weight() * (1 + 1e-10)));

        assertThat(failed(Changed.with(level, "before", before))).containsExactly(Check.WEIGHT);
        assertThat(failed(Changed.with(level, "peak", peak))).containsExactly(Check.WEIGHT);
    }
}
