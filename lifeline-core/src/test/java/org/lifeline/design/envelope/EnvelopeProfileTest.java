package org.lifeline.design.envelope;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.EnergyBalance;
import org.lifeline.base.Interval;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.Point;
import org.lifeline.model.Attachment;
import org.lifeline.model.Connection;
import org.lifeline.model.Fall;
import org.lifeline.model.Lifeline;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Passage;
import org.lifeline.model.Place;
import org.lifeline.model.Worker;

/** Profiles along a symmetric line of two spans, cases by count, and pendulums by hand. */
@SuppressWarnings("NullAway") // Null is handed over to be refused, and what is there is taken as there.
class EnvelopeProfileTest {
    private static final LifelineDesign DESIGN =
            Designs.design(2, Passage.free(), Attachment.GRIPPED).withTemperatures(List.of(15.0));
    private static final EnvelopeResult RESULT = Envelope.withDefaults().solve(DESIGN);

    /** Each point of a profile again by itself, with the case that it names. */
    @Test
    void aProfileIsMadeOfItsArrests() {
        for (Quantity q : List.of(Quantity.END_ANCHOR_LOAD, Quantity.REQUIRED_ELEVATION)) {
            List<EnvelopeResult.ProfilePoint> profile = RESULT.profile(q);
            assertThat(profile).isNotEmpty();
            for (int i = 0; i < profile.size(); i += 5) {
                EnvelopeResult.ProfilePoint p = profile.get(i);
                ArrestResult r = EnergyBalance.withDefaults()
                        .withSide(p.fallCase().side())
                        .withTemperature(15)
                        .withClearance(DESIGN.clearance())
                        .solve(DESIGN.line(), p.fallCase().fall());
                assertThat(q.value(r, DESIGN.modelFactors())).isEqualTo(p.value(), within(1e-6 * Math.abs(p.value())));
                assertThat(p.fallCase().fall().place()).isEqualTo(p.place());
                assertThat(p.along())
                        .isEqualTo(12 * (p.place().span() - 1) + p.place().station(), within(1e-9));
            }
        }
    }

    @Test
    void profilesRunAlongTheLineAndNeverBeyondTheExtreme() {
        for (Quantity q : List.of(Quantity.MAXIMUM_TENSION, Quantity.SAG, Quantity.REQUIRED_ELEVATION)) {
            double extreme = RESULT.extremes().of(q).orElseThrow().value();
            double before = -1;
            for (EnvelopeResult.ProfilePoint p : RESULT.profile(q)) {
                assertThat(p.along()).isGreaterThan(before);
                before = p.along();
                double sign = q.largestIsWorst() ? 1 : -1;
                assertThat(sign * p.value()).isLessThanOrEqualTo(sign * extreme + 1e-9 * Math.abs(extreme));
            }
        }
        assertThat(RESULT.profile(Quantity.INLINE_EXTENSION))
                .as("there is no in-line absorber")
                .isEmpty();
    }

    /** The line is its own mirror image: so are profiles of what does not tell its ends apart. */
    @Test
    void profilesAreSymmetric() {
        for (Quantity q : List.of(Quantity.END_ANCHOR_LOAD, Quantity.SAG, Quantity.REQUIRED_ELEVATION)) {
            List<EnvelopeResult.ProfilePoint> profile = RESULT.profile(q);
            int n = profile.size();
            for (int i = 0; i < n / 2; i++) {
                EnvelopeResult.ProfilePoint a = profile.get(i);
                EnvelopeResult.ProfilePoint b = profile.get(n - 1 - i);
                assertThat(b.along()).isEqualTo(24 - a.along(), within(1e-9));
                assertThat(b.value())
                        .as("%s at %s", q, a.along())
                        .isEqualTo(a.value(), within(1e-4 * Math.abs(a.value())));
            }
        }
        List<EnvelopeResult.ProfilePoint> north = RESULT.supportProfile(0);
        List<EnvelopeResult.ProfilePoint> south = RESULT.supportProfile(2);
        for (int i = 0; i < north.size(); i++) {
            assertThat(south.get(north.size() - 1 - i).value())
                    .isEqualTo(north.get(i).value(), within(1e-4 * north.get(i).value()));
        }
    }

    @Test
    void theWholeIsTheWorseOfBothSpans() {
        for (Quantity q : List.of(Quantity.END_ANCHOR_LOAD, Quantity.SAG, Quantity.REQUIRED_ELEVATION)) {
            double one = RESULT.inSpan(1).of(q).orElseThrow().value();
            double two = RESULT.inSpan(2).of(q).orElseThrow().value();
            double worst = q.largestIsWorst() ? Math.max(one, two) : Math.min(one, two);
            assertThat(RESULT.extremes().of(q).orElseThrow().value()).isEqualTo(worst, within(1e-4 * Math.abs(worst)));
        }
        assertThatThrownBy(() -> RESULT.inSpan(0)).isInstanceOf(InvalidInputException.class);
        assertThatThrownBy(() -> RESULT.inSpan(3)).isInstanceOf(InvalidInputException.class);
        assertThatThrownBy(() -> RESULT.supportProfile(3)).hasMessageStartingWith("support: 3: ");
        assertThatThrownBy(() -> RESULT.supportProfile(-1)).hasMessageStartingWith("support: -1: ");
        assertThatThrownBy(() -> RESULT.profile(null)).hasMessage("quantity: null: must be given");
    }

    /** Required elevation less the ground at 4 m, everywhere on the line. */
    @Test
    void theClearanceStandsAgainstTheGround() {
        List<EnvelopeResult.ClearancePoint> list = RESULT.clearance();
        assertThat(list).hasSameSizeAs(RESULT.profile(Quantity.REQUIRED_ELEVATION));
        for (EnvelopeResult.ClearancePoint p : list) {
            assertThat(p.obstructionElevation()).isEqualTo(4);
            assertThat(p.margin().orElseThrow()).isEqualTo(p.requiredElevation() - 4);
        }
        assertThat(new EnvelopeResult.ClearancePoint(Place.of(1, 1), 1, 6, Double.NaN).margin())
                .isEmpty();
        assertThat(RESULT.isComplete()).isTrue();
        assertThat(RESULT.failures()).isEmpty();
        assertThat(RESULT.evaluations()).isGreaterThan(list.size());
        assertThat(RESULT.design()).isSameAs(DESIGN);
    }

    /** More stations to begin with do not find more than the tolerance of the search. */
    @Test
    void moreIntervalsFindTheSame() {
        EnvelopeResult fine = Envelope.withDefaults().withIntervals(48).solve(DESIGN);
        for (Extreme each : fine.extremes().governing()) {
            double found = RESULT.extremes().governing().stream()
                    .filter(e -> e.name().equals(each.name()))
                    .findFirst()
                    .orElseThrow()
                    .value();
            assertThat(found).as(each.name()).isEqualTo(each.value(), within(1e-3 * Math.abs(each.value()) + 1e-4));
        }
        assertThat(fine.evaluations()).isGreaterThan(RESULT.evaluations());
    }

    // Stated falls, by count.

    /** Two falls at three temperatures on both sides; a gripped attachment has one limit only. */
    @Test
    void everyStatedFallIsSolvedAtEveryTemperatureOnBothSides() {
        LifelineDesign d = DESIGN.withTemperatures(List.of(-10.0, 15.0, 40.0))
                .withFalls(List.of(fall("one", Place.of(1, 4)), fall("two", Place.of(2, 6))));
        List<String> heard = new ArrayList<>();
        DesignResult r = DesignAnalysis.withDefaults()
                .withProgress((done, total) -> {
                    heard.add(done + "/" + total);
                    return true;
                })
                .solve(d);
        assertThat(r.arrests()).hasSize(12);
        assertThat(r.cases())
                .hasSize(12)
                .extracting(c -> c.fallCase().describe())
                .doesNotHaveDuplicates();
        assertThat(heard).hasSize(12).startsWith("1/12").endsWith("12/12");
        assertThat(r.searched()).isFalse();
        assertThat(r.failures()).isEmpty();
        assertThat(r.design()).isSameAs(d);
        // Colder is tighter: the largest anchor load is found at the lowest temperature.
        assertThat(r.extremes()
                        .of(Quantity.END_ANCHOR_LOAD)
                        .orElseThrow()
                        .fallCase()
                        .temperature())
                .isEqualTo(-10);
        assertThat(r.extremes().of(Quantity.SAG).orElseThrow().fallCase().temperature())
                .isEqualTo(40);
    }

    private static Fall fall(String id, Place place) {
        return Fall.builder(id).at(place).faller(DESIGN.workers().get(0)).build();
    }

    @Test
    void aListenerEndsTheAnalysisOfStatedFalls() {
        LifelineDesign d = DESIGN.withFalls(List.of(fall("one", Place.of(1, 4)), fall("two", Place.of(2, 6))));
        DesignResult r = DesignAnalysis.withDefaults()
                .withProgress((done, total) -> done < 2)
                .solve(d);
        assertThat(r.arrests()).hasSize(2);
        assertThat(r.extremes().coversEverything()).isFalse();
    }

    // Pendulums.

    private static SwingFall swing(Connection connection, double offset, double attachmentElevation) {
        Worker w = Designs.worker("A", Attachment.GRIPPED).toBuilder("A")
                .offset(offset)
                .walkingLevel(attachmentElevation - 1.5)
                .connection(connection)
                .build();
        Lifeline line = Lifeline.builder()
                .cable(DESIGN.line().cable())
                .endAnchor("a", Point.of(0, 0, 12.4))
                .endAnchor("b", Point.of(12, 0, 12.4))
                .pretension(1500)
                .build();
        return SwingFall.of(EnergyBalance.withDefaults()
                .solve(
                        line,
                        Fall.builder("f").at(Place.atSupport("a")).faller(w).build()));
    }

    private static Connection.PersonalAbsorber absorber() {
        return Connection.PersonalAbsorber.builder()
                .clearanceForce(3200)
                .maximumForce(6000)
                .maximumExtension(1.2)
                .initialStiffness(1e5)
                .stopStiffness(2e5)
                .build();
    }

    /** 3, 4, 5: 1.2 m off on a lanyard of 2 m swings from 0.4 m above its lowest point; v = √(2 g 0.4 m). */
    @Test
    void aLanyardOfThreeFourFive() {
        SwingFall s = swing(Connection.lanyard(2, absorber()), 1.2, 12.4);
        assertThat(s.length()).isEqualTo(2);
        assertThat(s.drop()).isEqualTo(0.4, within(1e-12));
        assertThat(s.amplitude()).isEqualTo(1.2, within(1e-12));
        assertThat(s.displacement()).isEqualTo(1.2, within(1e-12));
        assertThat(s.angle()).isEqualTo(Math.asin(0.6), within(1e-12));
        assertThat(s.speed()).isEqualTo(Math.sqrt(2 * 9.80665 * 0.4), within(1e-12));
        assertThat(s.travel()).isZero();
        assertThat(s.worker().id()).isEqualTo("A");
    }

    /**
     * A device that follows the worker is paid out along the slope to where the worker stands, 1.5 m off and 2 m below: 2.5 m, and it
     * locks after 0.6 m more. By hand the pendulum of 3.1 m begins 1.5 m off.
     */
    @Test
    void aSelfRetractingDeviceSwingsOnWhatIsPaidOut() {
        SwingFall s = swing(Connection.selfRetracting(0.6, absorber()), 1.5, 10.4);
        assertThat(s.length()).isEqualTo(3.1, within(1e-12));
        assertThat(s.drop()).isEqualTo(3.1 - Math.sqrt(3.1 * 3.1 - 1.5 * 1.5), within(1e-12));
        assertThat(s.angle()).isEqualTo(Math.asin(1.5 / 3.1), within(1e-12));
    }

    @Test
    void settingsOfTheEnvelopeAreKeptAndChecked() {
        Tolerances t = Tolerances.none().withPretension(Interval.of(0.9, 1.1));
        assertThat(Envelope.withDefaults().withTolerances(t).tolerances()).isSameAs(t);
        assertThat(Envelope.withDefaults().withTolerances(t).canonicalForm())
                .isNotEqualTo(Envelope.withDefaults().canonicalForm());
        assertThat(Envelope.withDefaults().withIntervals(20).canonicalForm())
                .isNotEqualTo(Envelope.withDefaults().canonicalForm());
        assertThatThrownBy(() -> Envelope.withDefaults().withTolerances(null))
                .isInstanceOf(InvalidInputException.class);
        assertThatThrownBy(() -> Envelope.withDefaults().withIntervals(0)).isInstanceOf(InvalidInputException.class);
        assertThatThrownBy(() -> SwingFall.of(null)).hasMessage("arrest: null: must be given");
    }
}
