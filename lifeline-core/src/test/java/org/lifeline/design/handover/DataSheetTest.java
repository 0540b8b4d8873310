package org.lifeline.design.handover;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.EnergyBalance;
import org.lifeline.analysis.Statics;
import org.lifeline.base.Interval;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.Point;
import org.lifeline.base.Vector3;
import org.lifeline.design.assessment.Assessment;
import org.lifeline.design.assessment.AssessmentResult;
import org.lifeline.design.assessment.NotComputed;
import org.lifeline.design.clearance.ClearanceAlongLine;
import org.lifeline.design.clearance.StationSteps;
import org.lifeline.design.criteria.CheckedQuantity;
import org.lifeline.design.criteria.Criterion;
import org.lifeline.design.envelope.Designs;
import org.lifeline.design.envelope.EnvelopeResult;
import org.lifeline.design.envelope.Quantity;
import org.lifeline.design.field.StringingRow;
import org.lifeline.design.installation.InstallationPlan;
import org.lifeline.design.installation.InstallationRequest;
import org.lifeline.design.structure.SupportLoads;
import org.lifeline.model.Attachment;
import org.lifeline.model.ClearanceRules;
import org.lifeline.model.Connection;
import org.lifeline.model.Fall;
import org.lifeline.model.Lifeline;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.ModelFactors;
import org.lifeline.model.Obstruction;
import org.lifeline.model.Passage;
import org.lifeline.model.Place;
import org.lifeline.model.Support;
import org.lifeline.model.Worker;
import org.lifeline.model.absorber.DeploymentForce;

/** The data sheet line by line, each against what the design states or a second way gives; by energy balance on one span. */
@SuppressWarnings("NullAway") // Null is handed over to be refused, and what is there is taken as there.
class DataSheetTest {
    private static final Worker LONG = worker("long", 1.8, 3200, 100);
    private static final Worker SHORT = worker("short", 1.2, 5500, 80);
    private static final LifelineDesign DESIGN =
            design(List.of(LONG, SHORT, LONG.toBuilder("long 2").build()), List.of());
    private static final AssessmentResult ASSESSMENT = assessed(DESIGN);
    private static final DataSheet BARE = sheet(HandoverRequest.nothing(), ASSESSMENT);

    private static Worker worker(String id, double length, double clearanceForce, double mass) {
        return Designs.worker(id, Attachment.GRIPPED).toBuilder(id)
                .mass(mass)
                .connection(Connection.lanyard(
                        length,
                        Connection.PersonalAbsorber.builder()
                                .clearanceForce(clearanceForce)
                                .maximumForce(6000)
                                .maximumExtension(1.2)
                                .stopStiffness(2e5)
                                .build()))
                .build();
    }

    private static LifelineDesign design(List<Worker> workers, List<Obstruction> obstructions) {
        LifelineDesign.Builder b = LifelineDesign.builder("walkway")
                .line(Designs.line(1, Passage.free()))
                .temperature(5)
                .temperature(25)
                .clearance(ClearanceRules.commonPractice().withObstructions(obstructions));
        workers.forEach(b::worker);
        for (Worker w : workers) {
            b.fall(Fall.builder(w.id()).at(Place.of(1, 4)).faller(w).build());
        }
        return b.build();
    }

    private static AssessmentResult assessed(LifelineDesign design) {
        return Assessment.withDefaults().withoutMotion().solve(design);
    }

    private static DataSheet sheet(HandoverRequest request, AssessmentResult assessment) {
        return Handover.of(request).solve(assessment).dataSheet();
    }

    private static HandoverRequest clearance(double step) {
        return HandoverRequest.nothing()
                .withClearance(ClearanceAlongLine.withDefaults().withSteps(new StationSteps(step, 0.05)));
    }

    // Users and their subsystems.

    @Test
    void theNumberOfUsersIsSaidOnlyWhereItWasLookedFor() {
        assertThat(BARE.users()).isEmpty();
        assertThat(BARE.usersInSpans()).isEmpty();
        assertThat(BARE.design()).isSameAs(DESIGN);
        assertThat(BARE.handover().assessment()).isSameAs(ASSESSMENT);
    }

    @Test
    void usersAreCountedSpanBySpan() {
        Criterion generous = Criterion.stated("anchors", CheckedQuantity.of(Quantity.END_ANCHOR_LOAD), 1e3, "brief 1");
        LifelineDesign two =
                Designs.design(2, Passage.clamped(), Attachment.GRIPPED).withTemperatures(List.of(15.0));
        HandoverResult r = Handover.of(HandoverRequest.nothing().withNumberOfWorkers())
                .solve(Assessment.withDefaults()
                        .withCriteria(List.of(generous))
                        .withoutMotion()
                        .solve(two));
        // Not even one worker: the line is tensioned with more than the limit.
        assertThat(r.dataSheet().users()).hasValue(0);
        assertThat(r.dataSheet().usersInSpans()).containsExactly(0, 0);
        assertThat(r.notComputed()).isEmpty();
    }

    @Test
    void subsystemsThatAreAlikeStandOnceWithAllTheirUsers() {
        List<DataSheet.Permitted> list = BARE.connections();
        assertThat(list).hasSize(2);
        assertThat(list.get(0).connection()).isEqualTo(LONG.connection());
        assertThat(list.get(0).users()).containsExactly("long", "long 2");
        assertThat(list.get(1).users()).containsExactly("short");
        assertThat(list.get(0).forces()).isEqualTo(Interval.of(3200, 6000));
        assertThat(list.get(1).forces()).isEqualTo(Interval.of(5500, 6000));
    }

    /**
     * By hand, counted from where the line hangs at the station: the harness attachment falls by the length of the lanyard, plus what
     * it stands above the line. At a support that is the lanyard itself; the line sags by less than 0.1 m elsewhere.
     */
    @Test
    void theFreeFallIsTheLargestOfEachSubsystem() {
        for (DataSheet.Permitted each : BARE.connections()) {
            double length = each.connection().tautLength(0);
            assertThat(each.freeFall()).isBetween(length, length + 0.1);
            double stated = ASSESSMENT.stated().arrests().stream()
                    .filter(r -> r.fall().fallers().get(0).connection().equals(each.connection()))
                    .mapToDouble(ArrestResult::freeFall)
                    .max()
                    .orElseThrow();
            assertThat(each.freeFall()).isGreaterThanOrEqualTo(stated);
        }
        assertThat(BARE.connections().get(0).freeFall())
                .isEqualTo(ASSESSMENT.governing("freeFall").orElseThrow().value(), within(1e-9));
    }

    @Test
    void aSubsystemWhoseFallWasNotComputedHasNoFreeFall() {
        LifelineDesign d = design(List.of(LONG, SHORT), List.of())
                .withFalls(List.of(
                        Fall.builder("only").at(Place.of(1, 4)).faller(LONG).build()));
        List<DataSheet.Permitted> list =
                sheet(HandoverRequest.nothing(), assessed(d)).connections();
        assertThat(list.get(0).freeFall()).isPositive();
        assertThat(list.get(1).freeFall()).isNaN();
    }

    @Test
    void theMassesOfAllWhoWereAssessedAreSaid() {
        assertThat(BARE.masses()).isEqualTo(Interval.of(80, 100));
    }

    /** Published: an average of 87.5 % of the maximum; 0.875 · 6000 N = 5250 N is the last that is not narrower. */
    @Test
    void onlyForcesCloserThanPublishedAreNamed() {
        assertThat(BARE.narrowForces()).containsExactly("short");
        LifelineDesign edge =
                design(List.of(worker("just", 1.8, 5250, 100), worker("over", 1.8, 5250.001, 100)), List.of());
        assertThat(sheet(HandoverRequest.nothing(), assessed(edge)).narrowForces())
                .containsExactly("over");
    }

    /** The published scatter is that of energy absorbers: a narrow range of a self-retracting device is not named. */
    @Test
    void onlyLanyardsWithAbsorbersAreHeldAgainstThePublishedScatter() {
        Worker device = SHORT.toBuilder("device")
                .connection(Connection.selfRetracting(
                        0.6,
                        Connection.PersonalAbsorber.builder()
                                .clearanceForce(5500)
                                .maximumForce(6000)
                                .maximumExtension(1.2)
                                .stopStiffness(2e5)
                                .build()))
                .build();
        LifelineDesign d = design(List.of(SHORT, device), List.of());
        assertThat(sheet(HandoverRequest.nothing(), assessed(d)).narrowForces()).containsExactly("short");
    }

    @Test
    void usersOfASubsystemAreCopied() {
        List<String> users = new ArrayList<>(List.of("A"));
        DataSheet.Permitted p = new DataSheet.Permitted(LONG.connection(), 1.8, Interval.of(3200, 6000), users);
        users.clear();
        assertThat(p.users()).containsExactly("A");
        assertThatThrownBy(() ->
                        new DataSheet.Permitted(LONG.connection(), 1.8, Interval.of(1, 2), Arrays.asList("A", null)))
                .isInstanceOf(InvalidInputException.class)
                .hasMessage("users[1]: null: must be given");
    }

    // Clearance.

    /** Second way: the deepest need by direct arrests at forty places, from the straight line, rounded up to 0.05 m. */
    @Test
    void theClearanceOfTheWholeLineIsTheDeepestNeed() {
        double most = 0;
        for (int i = 1; i < 40; i++) {
            for (double t : DESIGN.temperatures()) {
                ArrestResult r = EnergyBalance.withDefaults()
                        .withSide(DeploymentForce.CLEARANCE)
                        .withTemperature(t)
                        .solve(DESIGN.line(), DESIGN.falls().get(0).at(Place.of(1, 12.0 * i / 40)));
                most = Math.max(most, 12.4 - r.clearance().requiredElevation());
            }
        }
        double said = BARE.clearanceBelowLine().orElseThrow();
        assertThat(said).isBetween(most - 1e-3, most + 0.05 + 1e-3);
        assertThat(said / 0.05).isEqualTo(Math.rint(said / 0.05), within(1e-9));
        double profile = ASSESSMENT.envelope().profile(Quantity.REQUIRED_ELEVATION).stream()
                .mapToDouble(EnvelopeResult.ProfilePoint::value)
                .min()
                .orElseThrow();
        assertThat(said).isEqualTo(StationSteps.COMMON.up(12.4 - profile), within(1e-9));
    }

    /** A worker and a rescuer of 1500 kg hang lower than any arrest: the clearance grows by what they need more. */
    @Test
    void theClearanceHoldsForTheRescueAsWell() {
        AssessmentResult assessment =
                assessed(DESIGN.toBuilder().rescuerMass(1500).build());
        double rescue = assessment
                .rescue()
                .orElseThrow()
                .of(Quantity.REQUIRED_ELEVATION)
                .orElseThrow()
                .value();
        double arrests = assessment
                .balance()
                .of(Quantity.REQUIRED_ELEVATION)
                .orElseThrow()
                .value();
        assertThat(rescue).isLessThan(arrests - 0.2);
        double said = sheet(HandoverRequest.nothing(), assessment)
                .clearanceBelowLine()
                .orElseThrow();
        // The line is straight between anchors at 12.4 m; it is said in steps of 0.05 m.
        assertThat(said).isBetween(12.4 - rescue - 1e-9, 12.4 - rescue + 0.1);
    }

    /** A light rescue needs nothing more than the arrests: the clearance stays. */
    @Test
    void aLightRescueAddsNothingToTheClearance() {
        AssessmentResult assessment =
                assessed(DESIGN.toBuilder().rescuerMass(10).build());
        assertThat(sheet(HandoverRequest.nothing(), assessment).clearanceBelowLine())
                .isEqualTo(BARE.clearanceBelowLine());
    }

    @Test
    void theClearanceAlongTheLineTakesItsPlace() {
        HandoverResult r = Handover.of(clearance(12)).solve(ASSESSMENT);
        assertThat(r.dataSheet().clearanceBelowLine())
                .hasValue(r.clearance().orElseThrow().largestBelowLine());
        // Both are counted from the straight line here, the highest point of the only stretch.
        assertThat(r.dataSheet().clearanceBelowLine().orElseThrow())
                .isEqualTo(BARE.clearanceBelowLine().orElseThrow(), within(0.05001));
    }

    @Test
    void whereTheLineMustNotBeUsedIsTakenFromTheStretches() {
        LifelineDesign high = design(List.of(LONG), List.of(new Obstruction(7, 8.5, 9)));
        AssessmentResult assessment = assessed(high);
        assertThat(sheet(HandoverRequest.nothing(), assessment).mustNotBeUsed()).isEmpty();
        assertThat(sheet(clearance(3), assessment).mustNotBeUsed()).containsExactly(Interval.of(6, 9));
        assertThat(sheet(clearance(3), ASSESSMENT).mustNotBeUsed()).isEmpty();
    }

    // Pretension and anchors.

    /** Row by row against statics of the line at that temperature. */
    @Test
    void thePretensionIsThatOfTheFirstSpanAtEachTemperature() {
        List<StringingRow> rows = BARE.pretension();
        assertThat(rows).extracting(StringingRow::temperature).containsExactly(5.0, 25.0);
        for (StringingRow each : rows) {
            double tension = Statics.withDefaults()
                    .withTemperature(each.temperature())
                    .solve(DESIGN.line(), List.of())
                    .firstTension();
            assertThat(each.tension().nominal()).isEqualTo(tension, within(1e-6));
            assertThat(each.tension().low())
                    .as("no tolerance is stated")
                    .isEqualTo(each.tension().nominal());
        }
        LifelineDesign two =
                Designs.design(2, Passage.free(), Attachment.GRIPPED).withTemperatures(List.of(15.0));
        assertThat(sheet(HandoverRequest.nothing(), assessed(two)).pretension())
                .singleElement()
                .satisfies(r -> assertThat(r.span()).isEqualTo(1));
    }

    @Test
    void theToleranceIsThatOfTheInstallation() {
        HandoverRequest request = HandoverRequest.nothing()
                .withInstallation(InstallationPlan.of(new InstallationRequest(
                                Interval.of(0, 30), 100, Interval.of(0.8, 1.3), Optional.empty()))
                        .withoutReadings());
        HandoverResult r = Handover.of(request).solve(ASSESSMENT);
        assertThat(r.installation().orElseThrow().readings()).isEmpty();
        StringingRow warm = r.dataSheet().pretension().get(1);
        assertThat(warm.tension().low()).isLessThan(warm.tension().nominal());
        assertThat(warm.tension().high()).isGreaterThan(warm.tension().nominal());
    }

    @Test
    void everyAnchorHasItsLargestLoadBesideWhatIsStated() {
        LifelineDesign factored = LifelineDesign.builder("walkway")
                .line(Lifeline.builder()
                        .cable(DESIGN.line().cable())
                        .support(Support.end("a", Point.of(0, 0, 12.4)).withCapacity(30e3))
                        .endAnchor("b", Point.of(12, 0, 12.4))
                        .pretension(1500)
                        .build())
                .worker(LONG)
                .fall(Fall.builder("f").at(Place.of(1, 6)).faller(LONG).build())
                .modelFactors(new ModelFactors(1.25, 1, "test"))
                .build();
        AssessmentResult assessment = assessed(factored);
        List<DataSheet.AnchorLoad> list =
                sheet(HandoverRequest.nothing(), assessment).anchors();
        assertThat(list).extracting(DataSheet.AnchorLoad::support).containsExactly("a", "b");
        assertThat(list.get(0).stated()).isEqualTo(30e3);
        assertThat(list.get(1).stated()).isNaN();
        // Midspan, maximum force, the worst for a level span; by symmetry both anchors alike.
        Vector3 direct = EnergyBalance.withDefaults()
                .withSide(DeploymentForce.MAXIMUM)
                .solve(factored.line(), factored.falls().get(0))
                .supports()
                .get(0)
                .vector();
        assertThat(list.get(0).load()).isGreaterThanOrEqualTo(1.25 * direct.magnitude() * (1 - 1e-9));
        assertThat(list.get(0).load()).isEqualTo(1.25 * direct.magnitude(), within(0.01 * direct.magnitude()));
        assertThat(list.get(1).load())
                .isEqualTo(list.get(0).load(), within(1e-3 * list.get(0).load()));
    }

    // Requests.

    @Test
    void aRequestHoldsWhatWasAskedForAndNothingElse() {
        SupportLoads structure = SupportLoads.withDefaults();
        ClearanceAlongLine clearance = ClearanceAlongLine.withDefaults();
        InstallationPlan installation = InstallationPlan.of(InstallationRequest.between(Interval.of(0, 30)));
        HandoverRequest nothing = HandoverRequest.nothing();
        List<HandoverRequest> one = List.of(
                nothing.withStructure(structure),
                nothing.withClearance(clearance),
                nothing.withInstallation(installation),
                nothing.withNumberOfWorkers());
        for (int i = 0; i < 4; i++) {
            HandoverRequest r = one.get(i);
            assertThat(r.isEmpty()).isFalse();
            assertThat(r.structure()).isEqualTo(i == 0 ? Optional.of(structure) : Optional.empty());
            assertThat(r.clearance()).isEqualTo(i == 1 ? Optional.of(clearance) : Optional.empty());
            assertThat(r.installation()).isEqualTo(i == 2 ? Optional.of(installation) : Optional.empty());
            assertThat(r.numberOfWorkers()).isEqualTo(i == 3);
        }
        assertThat(nothing.isEmpty()).isTrue();
        // Whatever comes last, what was asked for before stays.
        HandoverRequest all = one.get(3)
                .withInstallation(installation)
                .withClearance(clearance)
                .withStructure(structure);
        HandoverRequest turned = one.get(0)
                .withClearance(clearance)
                .withInstallation(installation)
                .withNumberOfWorkers();
        for (HandoverRequest r : List.of(all, turned)) {
            assertThat(r.structure()).containsSame(structure);
            assertThat(r.clearance()).containsSame(clearance);
            assertThat(r.installation()).containsSame(installation);
            assertThat(r.numberOfWorkers()).isTrue();
        }
    }

    @Test
    void onlyThePartsThatWereAskedForAreDrawnUp() {
        HandoverResult r = Handover.of(HandoverRequest.nothing()
                        .withStructure(SupportLoads.withDefaults().withAngle(0)))
                .solve(ASSESSMENT);
        assertThat(r.structure()).isPresent();
        assertThat(r.clearance()).isEmpty();
        assertThat(r.installation()).isEmpty();
        assertThat(r.occupancy()).isEmpty();
        assertThat(r.notComputed()).isEmpty();
    }

    /** Without criteria any number would do: that part is named with its reason, and the others are drawn up all the same. */
    @Test
    void aPartThatCannotBeDrawnUpStopsNoOther() {
        HandoverResult r = Handover.of(clearance(12).withNumberOfWorkers()).solve(ASSESSMENT);
        assertThat(r.clearance()).isPresent();
        assertThat(r.occupancy()).isEmpty();
        assertThat(r.notComputed()).extracting(NotComputed::what).containsExactly("number of workers");
        assertThat(r.notComputed().get(0).why()).contains("without any, every number is met");
    }

    @Test
    void whatIsMissingIsNamed() {
        HandoverRequest nothing = HandoverRequest.nothing();
        assertThatThrownBy(() -> Handover.of(null)).hasMessage("request: null: must be given");
        assertThatThrownBy(() -> Handover.of(nothing).solve(null)).hasMessage("assessment: null: must be given");
        assertThatThrownBy(() -> nothing.withStructure(null)).hasMessage("structure: null: must be given");
        assertThatThrownBy(() -> nothing.withClearance(null)).hasMessage("clearanceAlongLine: null: must be given");
        assertThatThrownBy(() -> nothing.withInstallation(null)).hasMessage("installation: null: must be given");
    }
}
