package org.lifeline.report.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.design.criteria.CapacityCheck;
import org.lifeline.design.criteria.CheckedQuantity;
import org.lifeline.design.criteria.Criteria;
import org.lifeline.design.criteria.Criterion;
import org.lifeline.design.envelope.Designs;
import org.lifeline.design.envelope.Envelope;
import org.lifeline.design.envelope.EnvelopeResult;
import org.lifeline.design.envelope.EnvelopeResult.ProfilePoint;
import org.lifeline.design.envelope.Quantity;
import org.lifeline.model.Attachment;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Passage;
import org.lifeline.report.document.Picture;
import org.lifeline.report.document.UnitChoice;

/** The envelope as drawn: its curves are the profiles, its levels the limits, its marks the posts. */
class EnvelopePictureTest {
    private static final LifelineDesign DESIGN = Designs.design(3, Passage.friction(0.12), Attachment.GRIPPED);
    private static final EnvelopeResult ENVELOPE =
            Envelope.withDefaults().withIntervals(4).solve(DESIGN);
    private static final List<CapacityCheck> LIMITS = limits();
    private static final Picture LOADS = EnvelopePicture.loads(ENVELOPE, UnitChoice.SI, List.of(), LIMITS);
    private static final Picture DISTANCES = EnvelopePicture.distances(ENVELOPE, UnitChoice.SI);

    private static List<CapacityCheck> limits() {
        double end = value(Quantity.END_ANCHOR_LOAD);
        return Criteria.check(
                        List.of(
                                Criterion.stated(
                                        "anchors", CheckedQuantity.of(Quantity.END_ANCHOR_LOAD), 1.25 * end, "brief"),
                                Criterion.stated(
                                        "lower", CheckedQuantity.of(Quantity.END_ANCHOR_LOAD), 1.125 * end, "brief"),
                                Criterion.stated("far", CheckedQuantity.of(Quantity.ARREST_FORCE), 40 * end, "brief"),
                                Criterion.stated("sag", CheckedQuantity.of(Quantity.SAG), 3, "brief")),
                        ENVELOPE.extremes())
                .stream()
                .flatMap(r -> r.check().leaves().stream())
                .toList();
    }

    private static double value(Quantity q) {
        return ENVELOPE.extremes().of(q).orElseThrow().value();
    }

    private static double at(List<ProfilePoint> p, double x) {
        for (int i = 1; i < p.size(); i++) {
            if (x <= p.get(i).along()) {
                double share = (x - p.get(i - 1).along())
                        / (p.get(i).along() - p.get(i - 1).along());
                return p.get(i - 1).value()
                        + share * (p.get(i).value() - p.get(i - 1).value());
            }
        }
        return p.get(p.size() - 1).value();
    }

    private static void matches(Picture picture, String heading, List<ProfilePoint> profile, double unit) {
        Columns c = new Columns(picture);
        double[] x = c.of("place of the fall along the line [m]");
        double[] y = c.of(heading);
        double low = profile.get(0).along();
        double high = profile.get(profile.size() - 1).along();
        int compared = 0;
        for (int i = 0; i < 21; i++) {
            double place = x[0] + (x[20] - x[0]) * i / 20;
            assertThat(x[i]).isCloseTo(place, within(0.00051));
            if (Double.isNaN(y[i]) || place <= low || place >= high) {
                continue;
            }
            double digit = unit == 1000 ? 0.0051 : 0.00051;
            assertThat(y[i]).as("%s at %s m", heading, place).isCloseTo(at(profile, place) / unit, within(digit));
            compared++;
        }
        assertThat(compared).isGreaterThan(15);
    }

    @Test
    void curvesOfLoadsAreTheProfilesOfTheEnvelope() {
        matches(LOADS, "tension of the cable [kN]", ENVELOPE.profile(Quantity.MAXIMUM_TENSION), 1000);
        matches(LOADS, "end anchor load [kN]", ENVELOPE.profile(Quantity.END_ANCHOR_LOAD), 1000);
        matches(LOADS, "arrest force [kN]", ENVELOPE.profile(Quantity.ARREST_FORCE), 1000);
        for (int i = 0; i < DESIGN.line().supports().size(); i++) {
            String id = DESIGN.line().supports().get(i).id();
            matches(LOADS, id + " [kN]", ENVELOPE.supportProfile(i), 1000);
        }
    }

    @Test
    void curvesOfDistancesAreTheProfilesOfTheEnvelope() {
        matches(DISTANCES, "total fall distance [m]", ENVELOPE.profile(Quantity.TOTAL_FALL_DISTANCE), 1);
        matches(DISTANCES, "sag at the load [m]", ENVELOPE.profile(Quantity.SAG), 1);
        matches(DISTANCES, "deployment [m]", ENVELOPE.profile(Quantity.DEPLOYMENT), 1);
        double[] top = new Columns(DISTANCES).of("top of obstruction [m]");
        assertThat(Arrays.stream(top).filter(Double::isFinite))
                .allSatisfy(z -> assertThat(z).isEqualTo(4.0));
        double[] lowest = new Columns(DISTANCES).of("lowest point + margin [m]");
        double least = Arrays.stream(lowest).filter(Double::isFinite).min().orElseThrow();
        // The margin is least where the lowest point is; the table may miss the very place.
        double margin = value(Quantity.CLEARANCE_MARGIN);
        assertThat(least - 4).isBetween(margin - 0.0006, margin + 0.3);
        assertThat(DISTANCES.description()).contains(String.format(Locale.ROOT, "%.3f m", margin));
    }

    @Test
    void aLimitStandsAtTheLoadThatMayBeAndTheLowerOfTwoWins() {
        Shapes s = Shapes.of(LOADS);
        List<double[]> levels =
                s.lines("ll-limit").stream().filter(l -> l[2] - l[0] > 500).toList();
        assertThat(levels)
                .as("two criteria of one quantity give one level, the far one none")
                .hasSize(1);
        double[] tension = {0, 0};
        List<ProfilePoint> profile = ENVELOPE.profile(Quantity.END_ANCHOR_LOAD);
        double[][] drawn = s.polylines("ll-s2").get(0);
        int least = 0;
        int most = 0;
        for (int i = 0; i < profile.size(); i++) {
            least = profile.get(i).value() < profile.get(least).value() ? i : least;
            most = profile.get(i).value() > profile.get(most).value() ? i : most;
        }
        tension[0] = profile.get(least).value();
        tension[1] = profile.get(most).value();
        double per = (drawn[most][1] - drawn[least][1]) / (tension[1] - tension[0]);
        double expected = drawn[most][1] + per * (1.125 * value(Quantity.END_ANCHOR_LOAD) - tension[1]);
        assertThat(levels.get(0)[1]).isCloseTo(expected, within(0.5));
        assertThat(s.words()).anySatisfy(w -> assertThat(w).startsWith("limit: "));
        assertThat(LOADS.description()).contains("Limits of the criteria are levels");
    }

    @Test
    void postsAreMarkedWhereTheyStandAndEndsAreNot() {
        for (Picture p : List.of(LOADS, DISTANCES)) {
            Shapes s = Shapes.of(p);
            List<double[]> marks = s.lines("ll-ghost");
            assertThat(marks).hasSize(2);
            double[][] drawn = s.polylines("ll-s1").get(0);
            List<ProfilePoint> profile = ENVELOPE.profile(Quantity.MAXIMUM_TENSION);
            double per = (drawn[drawn.length - 1][0] - drawn[0][0])
                    / (profile.get(profile.size() - 1).along() - profile.get(0).along());
            for (int i = 0; i < 2; i++) {
                double x = drawn[0][0] + per * (12 * (i + 1) - profile.get(0).along());
                assertThat(marks.get(i)[0]).isCloseTo(x, within(0.05));
                assertThat(s.words()).contains("post " + (i + 1));
            }
        }
    }

    @Test
    void arrestsInTimeAreRingsAtTheirPlaces() {
        List<ArrestResult> inTime = new ArrayList<>();
        ENVELOPE.extremes().of(Quantity.MAXIMUM_TENSION).ifPresent(e -> inTime.add(e.arrest()));
        ENVELOPE.extremes().of(Quantity.SAG).ifPresent(e -> inTime.add(e.arrest()));
        Picture p = EnvelopePicture.loads(ENVELOPE, UnitChoice.SI, inTime, List.of());
        Shapes s = Shapes.of(p);
        assertThat(s.circles("ll-s4")).hasSize(2);
        assertThat(s.circles("ll-s5")).hasSize(2);
        List<double[]> rings = s.circles("ll-s4");
        assertThat(rings.get(0)[0]).as("from left to right").isLessThanOrEqualTo(rings.get(1)[0]);
        assertThat(p.description()).contains("rings: the arrests that were followed in time");
        assertThat(LOADS.description()).doesNotContain("rings");
        assertThat(p.description()).doesNotContain("Limits of the criteria");
        double largest = inTime.get(0).maximumTension();
        double[][] line = s.polylines("ll-s1").get(0);
        double top = Arrays.stream(line).mapToDouble(q -> q[1]).min().orElseThrow();
        double ring = rings.stream().mapToDouble(r -> r[1]).min().orElseThrow();
        assertThat(largest).isGreaterThan(0);
        assertThat(ring).as("the governing arrest lies on the envelope").isCloseTo(top, within(0.5));
    }

    @Test
    void aLineOfManySupportsShowsEndsAndPostsTogether() {
        LifelineDesign many = Designs.design(6, Passage.free(), Attachment.GRIPPED);
        EnvelopeResult e = Envelope.withDefaults().withIntervals(4).solve(many);
        Shapes s = Shapes.of(EnvelopePicture.loads(e, UnitChoice.SI, List.of(), List.of()));
        assertThat(s.words()).contains("end anchors", "intermediate anchors").doesNotContain("north");
        assertThat(s.lines("ll-ghost"))
                .as("seven supports have five posts to mark")
                .hasSize(5);
        matches2(e);
    }

    private static void matches2(EnvelopeResult e) {
        Columns c = new Columns(EnvelopePicture.loads(e, UnitChoice.SI, List.of(), List.of()));
        assertThat(c.of("end anchors [kN]")).isEqualTo(c.of("end anchor load [kN]"));
        double[] posts = c.of("intermediate anchors [kN]");
        assertThat(Arrays.stream(posts).filter(Double::isFinite).max().orElseThrow())
                .isLessThanOrEqualTo(e.extremes()
                                        .of(Quantity.INTERMEDIATE_ANCHOR_LOAD)
                                        .orElseThrow()
                                        .value()
                                / 1000
                        + 0.0051);
    }

    @Test
    void wordsNameTheLargestLoads() {
        assertThat(LOADS.description())
                .contains(
                        String.format(Locale.ROOT, "end anchor load %.2f kN", value(Quantity.END_ANCHOR_LOAD) / 1000),
                        String.format(Locale.ROOT, "arrest force %.2f kN", value(Quantity.ARREST_FORCE) / 1000));
        assertThat(LOADS.title()).isEqualTo("Envelope of loads along the line: walkway");
    }
}
