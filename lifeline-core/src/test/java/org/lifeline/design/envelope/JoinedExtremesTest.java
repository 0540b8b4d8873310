package org.lifeline.design.envelope;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.EnergyBalance;
import org.lifeline.analysis.warning.Warning;
import org.lifeline.base.Convergence;
import org.lifeline.base.Direction;
import org.lifeline.base.Interval;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.NoEquilibriumException;
import org.lifeline.base.Vector3;
import org.lifeline.model.Attachment;
import org.lifeline.model.ClearanceRules;
import org.lifeline.model.Fall;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Obstruction;
import org.lifeline.model.Passage;
import org.lifeline.model.Place;
import org.lifeline.model.Worker;
import org.lifeline.model.absorber.DeploymentForce;

/** Extremes of arrests that were solved one by one: put together in any order, against maxima by hand. */
@SuppressWarnings("NullAway") // Null is handed over to be refused, and what is there is taken as there.
class JoinedExtremesTest {
    private static final LifelineDesign DESIGN = design();
    private static final List<ArrestResult> ARRESTS = arrests();
    private static final Extremes ALL = Extremes.of(DESIGN, ARRESTS);

    private static LifelineDesign design() {
        return Designs.design(2, Passage.free(), Attachment.GRIPPED).toBuilder()
                .clearance(ClearanceRules.commonPractice()
                        .withObstructions(List.of(new Obstruction(0, 12, 3), new Obstruction(12.5, 24, 4))))
                .build();
    }

    private static Fall fall(Place place) {
        return Fall.builder("f").at(place).faller(DESIGN.workers().get(0)).build();
    }

    private static List<ArrestResult> arrests() {
        List<ArrestResult> list = new ArrayList<>();
        for (DeploymentForce side : DeploymentForce.values()) {
            for (Place place : List.of(
                    Place.of(1, 2), Place.of(1, 6), Place.of(2, 5), Place.of(2, 11), Place.atSupport("post 1"))) {
                list.add(EnergyBalance.withDefaults()
                        .withSide(side)
                        .withTemperature(15)
                        .withClearance(DESIGN.clearance())
                        .solve(DESIGN.line(), fall(place)));
            }
        }
        return list;
    }

    private static List<String> digits(Extremes e) {
        List<String> list = new ArrayList<>();
        e.all()
                .forEach(x -> list.add(x.name() + " " + Double.toHexString(x.value()) + " "
                        + x.arrest().fall().place() + " " + x.fallCase().side()));
        return list;
    }

    /** Values, and where they are from: the largest of single arrests, one by one. */
    @Test
    void eachExtremeIsTheWorstOfTheArrests() {
        for (Quantity q : Quantity.values()) {
            double sign = q.largestIsWorst() ? 1 : -1;
            double most = Double.NEGATIVE_INFINITY;
            for (ArrestResult r : ARRESTS) {
                double v = sign * q.value(r, DESIGN.modelFactors());
                most = Double.isNaN(v) ? most : Math.max(most, v);
            }
            if (most == Double.NEGATIVE_INFINITY) {
                assertThat(ALL.of(q)).as(q.key()).isEmpty();
            } else {
                assertThat(sign * ALL.of(q).orElseThrow().value())
                        .as(q.key())
                        .isEqualTo(most, within(1e-9 * Math.abs(most)));
                assertThat(ALL.of(q).orElseThrow().name()).isEqualTo(q.key());
                assertThat(ALL.of(q).orElseThrow().allowance())
                        .as("an energy balance has no mesh")
                        .isZero();
            }
        }
    }

    /** Parts put together pairwise in random order: the values are always those of all arrests at once. */
    @Test
    void anyOrderAndGroupingGivesTheSameValues() {
        for (long seed = 0; seed < 20; seed++) {
            Random random = new Random(seed);
            List<Extremes> parts = new ArrayList<>();
            for (ArrestResult r : ARRESTS) {
                parts.add(Extremes.of(DESIGN, List.of(r)));
            }
            Collections.shuffle(parts, random);
            while (parts.size() > 1) {
                Extremes a = parts.remove(random.nextInt(parts.size()));
                Extremes b = parts.remove(random.nextInt(parts.size()));
                parts.add(Extremes.joined(a, List.of(b)));
            }
            for (Extreme each : parts.get(0).all()) {
                Extreme expected = ALL.all().stream()
                        .filter(e -> e.name().equals(each.name()))
                        .findFirst()
                        .orElseThrow();
                assertThat(each.value())
                        .as("seed %d, %s", seed, each.name())
                        .isEqualTo(expected.value(), within(2e-9 * Math.abs(expected.value()) + 1e-12));
            }
            assertThat(parts.get(0).all()).hasSameSizeAs(ALL.all());
        }
    }

    @Test
    void joiningKeepsTheOrderWhereItIsKept() {
        List<Extremes> parts =
                ARRESTS.stream().map(r -> Extremes.of(DESIGN, List.of(r))).toList();
        assertThat(digits(Extremes.joined(parts.get(0), parts.subList(1, parts.size()))))
                .isEqualTo(digits(ALL));
        assertThat(digits(Extremes.joined(ALL, List.of()))).isEqualTo(digits(ALL));
        assertThat(digits(Extremes.joined(ALL, List.of(ALL)))).isEqualTo(digits(ALL));
        Extremes nothing = Extremes.of(DESIGN, List.of());
        assertThat(nothing.all()).isEmpty();
        assertThat(digits(Extremes.joined(nothing, List.of(ALL)))).isEqualTo(digits(ALL));
    }

    // Supports, directions, obstructions.

    /** The largest component toward a direction, and the largest resultant, of each support by vectors. */
    @Test
    void supportsHaveTheirLargestComponentsAndResultants() {
        for (int i = 0; i < 3; i++) {
            String id = DESIGN.line().supports().get(i).id();
            double most = 0;
            for (ArrestResult r : ARRESTS) {
                most = Math.max(most, r.supports().get(i).vector().magnitude());
            }
            assertThat(ALL.onSupport(id).orElseThrow().value()).isEqualTo(most, within(1e-6));
            assertThat(ALL.onSupport(id).orElseThrow().name()).isEqualTo("load on " + id);
            for (Direction d : Direction.values()) {
                double toward = Double.NEGATIVE_INFINITY;
                for (ArrestResult r : ARRESTS) {
                    Vector3 v = r.supports().get(i).vector();
                    toward = Math.max(toward, d.component(v));
                }
                final double expected = toward;
                ALL.onSupportToward(id, d).ifPresent(e -> {
                    assertThat(e.value()).as("%s %s", id, d).isEqualTo(expected, within(1e-6));
                    assertThat(e.support()).contains(id);
                });
            }
            assertThat(ALL.onSupportToward(id, Direction.DOWN)).isPresent();
        }
    }

    /** The margin above an obstruction is that of the deepest fall on its way: required elevation less its top. */
    @Test
    void eachObstructionHasItsOwnMargin() {
        for (int k = 0; k < 2; k++) {
            double top = k == 0 ? 3 : 4;
            double least = Double.POSITIVE_INFINITY;
            for (ArrestResult r : ARRESTS) {
                boolean here = k == 0
                        ? r.line().along(r.fall().place()) <= 12
                        : r.line().along(r.fall().place()) > 12.5;
                if (here) {
                    least = Math.min(least, r.clearance().requiredElevation() - top);
                }
            }
            assertThat(ALL.overObstruction(k).orElseThrow().value()).isEqualTo(least, within(1e-9));
            assertThat(ALL.overObstruction(k).orElseThrow().name()).isEqualTo("margin above obstruction " + (k + 1));
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {-1, 2, 99})
    void anObstructionThatIsNotThereIsRefused(int index) {
        assertThatThrownBy(() -> ALL.overObstruction(index))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageStartingWith("obstruction: " + index + ": ");
    }

    @Test
    void aSupportThatIsNotThereIsRefused() {
        assertThatThrownBy(() -> ALL.onSupport("east"))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageStartingWith("support: east: ");
        assertThatThrownBy(() -> ALL.onSupportToward("east", Direction.UP)).hasMessageStartingWith("support: east: ");
        assertThatThrownBy(() -> ALL.onSupportToward("north", null)).hasMessage("direction: null: must be given");
        assertThatThrownBy(() -> ALL.of(null)).hasMessage("quantity: null: must be given");
        assertThatThrownBy(() -> ALL.lacking(null)).hasMessage("why: null: must be given");
        assertThatThrownBy(() -> Extremes.of(DESIGN, Arrays.asList((ArrestResult) null)))
                .hasMessage("arrests[0]: null: must be given");
        LifelineDesign bare =
                DESIGN.toBuilder().clearance(ClearanceRules.commonPractice()).build();
        assertThatThrownBy(() -> Extremes.of(bare, List.of()).overObstruction(0))
                .isInstanceOf(InvalidInputException.class);
    }

    // What is lacking.

    @Test
    void whatIsLackingIsGathered() {
        Extremes one = ALL.lacking("first");
        assertThat(ALL.of(Quantity.SAG).orElseThrow().lacking()).isEmpty();
        assertThat(one.of(Quantity.SAG).orElseThrow().lacking()).isEqualTo("first");
        assertThat(one.lacking("second").of(Quantity.SAG).orElseThrow().lacking())
                .isEqualTo("first; second");
        // A free fall follows from the line before the fall: nothing of the arrest is lacking there.
        assertThat(one.of(Quantity.FREE_FALL).orElseThrow().lacking()).isEmpty();
        assertThat(lacking(Extremes.joined(ALL, List.of(one)))).isEqualTo("first");
        assertThat(lacking(Extremes.joined(one, List.of(ALL)))).isEqualTo("first");
        assertThat(lacking(Extremes.joined(one, List.of(one)))).as("said once").isEqualTo("first");
        assertThat(lacking(Extremes.joined(one, List.of(ALL.lacking("second")))))
                .isEqualTo("first; second");
    }

    private static String lacking(Extremes e) {
        return e.of(Quantity.SAG).orElseThrow().lacking();
    }

    /** A failure is kept with its case, is a warning, and takes the completeness away, also from what it is joined to. */
    @Test
    void failuresAreKeptAndSaid() {
        FallCase c = ALL.of(Quantity.SAG).orElseThrow().fallCase();
        FailedCase failed = FailedCase.of(c, new NoEquilibriumException("the line", 0.5, new Convergence(3, 1, 1e-10)));
        List<ComputedCase> cases = List.of(new ComputedCase(c, ARRESTS.get(0)));
        Extremes lacking = Extremes.ofCases(DESIGN, cases, List.of(failed));
        assertThat(ALL.coversEverything()).isTrue();
        assertThat(lacking.coversEverything()).isFalse();
        assertThat(lacking.failures()).containsExactly(failed);
        Extremes both = Extremes.joined(ALL, List.of(lacking, lacking));
        assertThat(both.failures()).containsExactly(failed, failed);
        assertThat(both.coversEverything()).isFalse();
        assertThat(lacking.warnings())
                .filteredOn(w -> w.code() == Warning.Code.NOT_COMPUTED)
                .singleElement()
                .satisfies(w -> assertThat(w.text()).isEqualTo("not computed: " + failed.reason()));
        assertThat(failed.toString()).isEqualTo(c.describe() + ": " + failed.reason());
        assertThat(failed.cause()).isInstanceOf(NoEquilibriumException.class);
    }

    /** Masses of all who are there, those who hang and those who only fall included. */
    @Test
    void theMassesOfEverybodyAreTheRange() {
        Worker light = Designs.worker("light", Attachment.GRIPPED).withMass(62);
        Worker heavy = Designs.worker("heavy", Attachment.GRIPPED).withMass(131);
        LifelineDesign d = DESIGN.toBuilder()
                .worker(light)
                .worker(heavy)
                .fall(Fall.builder("f")
                        .at(Place.of(1, 4))
                        .faller(light)
                        .hanging(heavy, Place.of(1, 6))
                        .build())
                .build();
        assertThat(Extremes.of(d, List.of()).masses()).isEqualTo(Interval.of(62, 131));
        assertThat(Extremes.of(d, List.of()).massTolerance()).isEmpty();
        Extremes joined = Extremes.joined(Extremes.of(DESIGN, List.of()), List.of(Extremes.of(d, List.of())));
        assertThat(joined.masses()).isEqualTo(Interval.of(62, 131));
        EnvelopeResult wide = Envelope.withDefaults()
                .withTolerances(Tolerances.none().withMass(Interval.of(50, 140)))
                .solve(Designs.design(1, Passage.free(), Attachment.GRIPPED).withTemperatures(List.of(15.0)));
        assertThat(wide.extremes().masses()).isEqualTo(Interval.of(50, 140));
        assertThat(wide.extremes().massTolerance()).contains(Interval.of(50, 140));
    }

    @Test
    void whatGovernsLeavesOutWhatIsOnlyListed() {
        assertThat(ALL.governing())
                .extracting(Extreme::name)
                .contains("endAnchorLoad", "load on post 1")
                .doesNotContain("supportLoad", "swingDrop", "requiredElevation");
        assertThat(ALL.all()).extracting(Extreme::name).contains("supportLoad", "requiredElevation");
        assertThat(ALL.all())
                .extracting(Extreme::name)
                .containsAll(ALL.governing().stream().map(Extreme::name).toList());
    }
}
