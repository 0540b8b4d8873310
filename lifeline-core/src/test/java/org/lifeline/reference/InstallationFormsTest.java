package org.lifeline.reference;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.lifeline.analysis.LineEquilibrium;
import org.lifeline.analysis.Statics;
import org.lifeline.analysis.state.AppliedLoad;
import org.lifeline.analysis.state.SupportReaction;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.Point;
import org.lifeline.base.Vector3;
import org.lifeline.model.Attachment;
import org.lifeline.model.Installed;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Passage;
import org.lifeline.model.Place;
import org.lifeline.model.Stiffness;
import org.lifeline.model.cable.Cable;
import org.lifeline.verify.Verifier;

/**
 * Lines stated in ways that handbooks use: a load at a point of the cable itself, supports before anything pulls at them, a line
 * pulled over rough supports from one end, a cable without weight. Each against a formula that the library does not use.
 */
class InstallationFormsTest {
    private static final double EA = 3e6;

    private static Lifeline.Builder line(double weight) {
        return Lifeline.builder()
                .cable(Cable.builder()
                        .weightPerLength(weight)
                        .axialStiffness(EA)
                        .build());
    }

    private static Lifeline span(double weight, Installed installed) {
        return line(weight)
                .endAnchor("north", Point.of(0, 0, 12))
                .endAnchor("south", Point.of(10, 0, 12))
                .installed(installed)
                .build();
    }

    // A load at a point of the cable

    /**
     * Two straight elastic bars: a weightless cable, slack until it is loaded. The point found must be where Hooke's forces of
     * the two lengths carry the load.
     */
    @ParameterizedTest
    @CsvSource({"10.5, 3", "10.5, 7.2", "12, 4.5", "10.05, 5.025", "9.99, 2"})
    void aLoadOnAPointOfAWeightlessCableHangsOnTwoBars(double length, double at) {
        Lifeline line = span(0, Installed.unstretchedLength(length));
        double load = 2000;
        LineEquilibrium e = Statics.withDefaults()
                .solve(line, List.of(new AppliedLoad(Statics.placeOfCablePoint(line, at), Attachment.GRIPPED, load)));
        Point p = e.loads().get(0).point();
        double first = Math.hypot(p.x(), 12 - p.z());
        double second = Math.hypot(10 - p.x(), 12 - p.z());
        double t1 = EA * (first / at - 1);
        double t2 = EA * (second / (length - at) - 1);
        // Lengths of 10 m to 16 digits make 1e-9 of a force of 2 kN at this stiffness.
        assertThat(t1 * p.x() / first).isEqualTo(t2 * (10 - p.x()) / second, within(1e-7 * load));
        assertThat(t1 * (12 - p.z()) / first + t2 * (12 - p.z()) / second).isEqualTo(load, within(1e-7 * load));
        assertThat(e.firstTension()).isEqualTo(t1, within(1e-7 * t1));
        assertThat(e.lastTension()).isEqualTo(t2, within(1e-7 * t2));
    }

    /** Run to a point of an elastic catenary: Irvine, Cable Structures, MIT Press 1981, ch. 1. */
    @ParameterizedTest
    @ValueSource(doubles = {0.4, 3, 5.1, 9.9})
    void aPointOfTheCatenaryHangsWhereIrvineSays(double s) {
        double w = 6;
        Lifeline line = span(w, Installed.unstretchedLength(10.2));
        LineEquilibrium e = Statics.withDefaults().solve(line, List.of());
        double h = e.span(1).horizontalTension();
        double v = Math.sqrt(e.firstTension() * e.firstTension() - h * h);
        double run = h * s / EA + h / w * (asinh(v / h) - asinh((v - w * s) / h));
        Place place = Statics.placeOfCablePoint(line, s);
        assertThat(place.span()).isEqualTo(1);
        assertThat(place.station()).isEqualTo(run, within(1e-11));
        LineEquilibrium loaded =
                Statics.withDefaults().solve(line, List.of(new AppliedLoad(place, Attachment.GRIPPED, 1500)));
        assertThat(loaded.span(1).pieces().get(0).unstretchedLength()).isEqualTo(s, within(1e-10));
    }

    private static double asinh(double x) {
        return Math.log(x + Math.sqrt(x * x + 1));
    }

    @Test
    void pointsBeyondTheCableAreRefused() {
        Lifeline line = span(6, Installed.unstretchedLength(10.2));
        for (double s : new double[] {0, -1, 10.2, 11, Double.NaN}) {
            assertThatThrownBy(() -> Statics.placeOfCablePoint(line, s))
                    .isInstanceOf(InvalidInputException.class)
                    .hasMessageContaining("length: " + s + " m: must lie above 0 m and below the unstretched length");
        }
    }

    @Test
    void thePointMayLieInALaterSpan() {
        Lifeline line = threeSpans(0.2, Installed.unstretchedLength(29.29));
        LineEquilibrium e = Statics.withDefaults().solve(line, List.of());
        Place place = Statics.placeOfCablePoint(line, 15);
        double share = (15 - e.span(1).unstretchedLength()) / e.span(2).unstretchedLength();
        assertThat(place.span()).isEqualTo(2);
        // A taut span is straight but for a sag of some centimetres, which shifts the point by about a millimetre.
        assertThat(place.station()).isEqualTo(share * line.run(2), within(2e-3));
    }

    // Supports before anything pulls at them

    /** A taut weightless cable between two springs in line: T = (a − L)/(L/EA + 2/k). Anchors softer and stiffer than it. */
    @ParameterizedTest
    @ValueSource(doubles = {2e4, 1e5, 3e5, 1e8})
    void supportsYieldUntilSpringsAndCableAgree(double k) {
        double length = 9.98;
        Lifeline before =
                span(0, Installed.unstretchedLength(length)).withSupports(s -> s.withStiffness(Stiffness.alongX(k)));
        double tension = (10 - length) / (length / EA + 2 / k);
        Lifeline installed = Statics.withYieldedSupports(before);
        assertThat(installed.supports().get(0).position().x()).isEqualTo(tension / k, within(1e-9));
        assertThat(installed.supports().get(1).position().x()).isEqualTo(10 - tension / k, within(1e-9));
        assertThat(Statics.withDefaults().solve(installed, List.of()).maximumTension())
                .isEqualTo(tension, within(1e-6 * tension));
    }

    /** Three spans round a corner on yielding posts: each moved by its reaction over its stiffness, in every direction. */
    @Test
    void everySupportMovesByItsReaction() {
        Stiffness soft = new Stiffness(2e5, 3e5, 4e6);
        Lifeline before = threeSpans(0.2, Installed.pretension(2500)).withSupports(s -> s.withStiffness(soft));
        Lifeline installed = Statics.withYieldedSupports(before);
        LineEquilibrium e = Statics.withDefaults().solve(installed, List.of());
        for (int i = 0; i < 4; i++) {
            Vector3 moved = installed
                    .supports()
                    .get(i)
                    .position()
                    .minus(before.supports().get(i).position());
            Vector3 r = e.supports().get(i).vector();
            assertThat(moved.x()).isEqualTo(r.x() / 2e5, within(1e-9));
            assertThat(moved.y()).isEqualTo(r.y() / 3e5, within(1e-9));
            assertThat(moved.z()).isEqualTo(r.z() / 4e6, within(1e-9));
        }
        assertThat(Statics.withYieldedSupports(threeSpans(0.2, Installed.pretension(2500))))
                .as("rigid supports stay")
                .isEqualTo(threeSpans(0.2, Installed.pretension(2500)));
    }

    // Tensioned over rough supports from one end

    /** Two level spans with a right angle in plan, no weight: the cable turns by π/2, so that T₂/T₁ = e^(∓μπ/2). */
    @ParameterizedTest
    @ValueSource(doubles = {0.05, 0.12, 0.4})
    void theCapstanRatioAtARightAngle(double friction) {
        Lifeline.Builder b = line(0).endAnchor("north", Point.of(0, 0, 12))
                .intermediateAnchor("corner", Point.of(10, 0, 12), Passage.friction(friction))
                .endAnchor("south", Point.of(10, 8, 12));
        double ratio = Math.exp(-friction * Math.PI / 2);
        LineEquilibrium first = Statics.withDefaults()
                .solve(
                        b.installed(Installed.pretension(2000).tensionedFrom(Installed.TensioningEnd.FIRST))
                                .build(),
                        List.of());
        assertThat(first.firstTension()).isEqualTo(2000, within(1e-9));
        assertThat(first.lastTension()).isEqualTo(2000 * ratio, within(1e-9));
        LineEquilibrium last = Statics.withDefaults()
                .solve(
                        b.installed(Installed.pretension(2000).tensionedFrom(Installed.TensioningEnd.LAST))
                                .build(),
                        List.of());
        assertThat(last.lastTension()).isEqualTo(2000 / ratio, within(1e-9));
        // Unstretched lengths by Hooke: what the length form must give back.
        double length = 10 / (1 + 2000 / EA) + 8 / (1 + 2000 * ratio / EA);
        LineEquilibrium byLength = Statics.withDefaults()
                .solve(
                        b.installed(Installed.unstretchedLength(length).tensionedFrom(Installed.TensioningEnd.FIRST))
                                .build(),
                        List.of());
        // 1e-15 of a length is EA times that of a tension.
        assertThat(byLength.firstTension()).isEqualTo(2000, within(1e-6));
        LineEquilibrium inSpan2 = Statics.withDefaults()
                .solve(
                        b.installed(Installed.horizontalTension(2000 * ratio)
                                        .inSpan(2)
                                        .tensionedFrom(Installed.TensioningEnd.FIRST))
                                .build(),
                        List.of());
        assertThat(inSpan2.firstTension()).isEqualTo(2000, within(1e-8));
    }

    private static Lifeline threeSpans(double friction, Installed installed) {
        return line(5).endAnchor("north", Point.of(0, 0, 12))
                .intermediateAnchor("post 1", Point.of(10, 0, 12.4), Passage.friction(friction))
                .intermediateAnchor("post 2", Point.of(19, 4, 12), Passage.friction(friction))
                .endAnchor("south", Point.of(24, 12, 11.5))
                .installed(installed)
                .build();
    }

    /** With weight, in space: the capstan rule holds at each support with the angle between the two tensions there. */
    @ParameterizedTest
    @CsvSource({
        "PRETENSION, FIRST, 1500",
        "PRETENSION, LAST, 1500",
        "HORIZONTAL_TENSION, FIRST, 1400",
        "HORIZONTAL_TENSION, LAST, 1400",
        "INITIAL_SAG, FIRST, 0.05",
        "UNSTRETCHED_LENGTH, LAST, 29.29"
    })
    void theCapstanRuleAtEverySupport(Installed.Form form, Installed.TensioningEnd end, double value) {
        Installed installed =
                switch (form) {
                    case PRETENSION -> Installed.pretension(value);
                    case HORIZONTAL_TENSION ->
                        Installed.horizontalTension(value).inSpan(2);
                    case INITIAL_SAG -> Installed.initialSag(2, value);
                    case UNSTRETCHED_LENGTH -> Installed.unstretchedLength(value);
                };
        Lifeline line = threeSpans(0.2, installed.tensionedFrom(end));
        LineEquilibrium e = Statics.withDefaults().solve(line, List.of());
        for (int i = 1; i <= 2; i++) {
            Vector3 before = e.span(i).pieces().get(0).endTension();
            Vector3 behind = e.span(i + 1).pieces().get(0).startTension();
            double expected = 0.2 * before.angleTo(behind) * (end == Installed.TensioningEnd.FIRST ? -1 : 1);
            assertThat(Math.log(behind.magnitude() / before.magnitude())).isEqualTo(expected, within(1e-12));
            assertThat(Math.abs(expected)).isGreaterThan(0.08);
        }
        double got =
                switch (form) {
                    case PRETENSION -> e.firstTension();
                    case HORIZONTAL_TENSION -> e.span(2).horizontalTension();
                    case INITIAL_SAG -> e.span(2).sag();
                    case UNSTRETCHED_LENGTH ->
                        e.span(1).unstretchedLength()
                                + e.span(2).unstretchedLength()
                                + e.span(3).unstretchedLength();
                };
        assertThat(got).isEqualTo(value, within(1e-9 * value));
        List<AppliedLoad> loads = List.of(new AppliedLoad(Place.of(2, 4), Attachment.FREE_RUNNING, 3000));
        LineEquilibrium loaded = Statics.withDefaults().solve(line, loads);
        assertThat(Verifier.withDefaults().equilibrium(loaded, loads).failures())
                .isEmpty();
        assertThat(Verifier.withDefaults().equilibrium(e, List.of()).failures()).isEmpty();
    }

    /** What friction left behind at installation matters under load: the far end carries less than on an evened line. */
    @Test
    void theLoadedLineRemembersHowItWasTensioned() {
        List<AppliedLoad> load = List.of(new AppliedLoad(Place.of(1, 5), Attachment.GRIPPED, 500));
        LineEquilibrium even = Statics.withDefaults().solve(threeSpans(0.3, Installed.pretension(3000)), load);
        LineEquilibrium pulled = Statics.withDefaults()
                .solve(threeSpans(0.3, Installed.pretension(3000).tensionedFrom(Installed.TensioningEnd.FIRST)), load);
        SupportReaction a = even.support("south");
        SupportReaction b = pulled.support("south");
        assertThat(b.force()).isLessThan(0.96 * a.force());
    }

    // A weightless cable

    /** A slack cable without weight under a load in its middle: two bars of l = L/2 (1 + T/EA), T = P l/(2 d), d² = l² − a². */
    @ParameterizedTest
    @ValueSource(doubles = {10.02, 10.4, 13})
    void aSlackCableWithoutWeight(double length) {
        double tension = 0;
        double depth = 0;
        for (int k = 0; k < 200; k++) {
            double l = 0.5 * length * (1 + tension / EA);
            depth = Math.sqrt(l * l - 25);
            tension = 2000 * l / (2 * depth);
        }
        Lifeline line = span(0, Installed.unstretchedLength(length));
        List<AppliedLoad> loads = List.of(new AppliedLoad(Place.of(1, 5), Attachment.GRIPPED, 2000));
        LineEquilibrium e = Statics.withDefaults().solve(line, loads);
        assertThat(e.maximumTension()).isEqualTo(tension, within(1e-9 * tension));
        assertThat(e.loads().get(0).point().z()).isEqualTo(12 - depth, within(1e-9));
        LineEquilibrium free = Statics.withDefaults()
                .solve(line, List.of(new AppliedLoad(Place.of(1, 2), Attachment.FREE_RUNNING, 2000)));
        assertThat(free.maximumTension())
                .as("a free load runs to the middle")
                .isEqualTo(tension, within(1e-8 * tension));
        assertThat(Verifier.withDefaults().equilibrium(e, loads).failures()).isEmpty();
    }
}
