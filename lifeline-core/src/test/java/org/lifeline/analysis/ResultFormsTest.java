package org.lifeline.analysis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Test;
import org.lifeline.analysis.state.AppliedLoad;
import org.lifeline.analysis.state.AttachmentLimit;
import org.lifeline.analysis.state.InlineAbsorberState;
import org.lifeline.analysis.state.SupportReaction;
import org.lifeline.base.Point;
import org.lifeline.base.Refusal;
import org.lifeline.base.Vector3;
import org.lifeline.base.canonical.CanonicalForm;
import org.lifeline.model.Attachment;
import org.lifeline.model.Fall;
import org.lifeline.model.InlineAbsorber;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Passage;
import org.lifeline.model.Place;
import org.lifeline.model.Stiffness;
import org.lifeline.model.Support;
import org.lifeline.model.absorber.LoadingCurve;
import org.lifeline.model.cable.Cable;
import org.lifeline.testing.FreeRunningWorker;

/** The canonical form of a result holds its numbers under their own names, with their units. */
class ResultFormsTest {
    private static Lifeline line() {
        LoadingCurve absorber = LoadingCurve.through(
                List.of(new LoadingCurve.Corner(0, 2500), new LoadingCurve.Corner(1.5, 9000)), 8e5, 1e6);
        return Lifeline.builder()
                .cable(Cable.builder().massPerLength(0.5).axialStiffness(4e6).build())
                .support(Support.end("a", Point.of(0, 0, 6))
                        .withStiffness(new Stiffness(4e5, 5e5, 6e5))
                        .withInlineAbsorber(InlineAbsorber.of(absorber)))
                .intermediateAnchor("p", Point.of(12, 1, 6.5), Passage.friction(0.1))
                .endAnchor("b", Point.of(24, 0, 6))
                .pretension(1500)
                .build();
    }

    private static double number(CanonicalForm form, String path, String unit) {
        CanonicalForm.Entry entry = form.entries().stream()
                .filter(e -> e.path().equals(path))
                .findFirst()
                .orElseThrow(() -> new AssertionError(path + " is missing in " + form));
        assertThat(entry.unit()).as(path).isEqualTo(unit);
        return entry.number();
    }

    private static void assertVector(CanonicalForm form, String path, Vector3 v, String unit) {
        assertThat(number(form, path + ".x", unit)).isEqualTo(v.x());
        assertThat(number(form, path + ".y", unit)).isEqualTo(v.y());
        assertThat(number(form, path + ".z", unit)).isEqualTo(v.z());
    }

    @Test
    void anEquilibriumIsItsSpansSupportsAndLoads() {
        LineEquilibrium e = Statics.withDefaults()
                .withTemperature(35)
                .solve(line(), List.of(new AppliedLoad(Place.of(1, 5), Attachment.GRIPPED, 1200)));
        CanonicalForm form = e.canonicalForm();
        assertThat(number(form, "temperature", "°C")).isEqualTo(35);
        assertThat(e.spans()).hasSize(2);
        for (SpanState each : e.spans()) {
            String path = CanonicalForm.Builder.element("span", each.number());
            assertThat(number(form, path + ".sag", "m")).isEqualTo(each.sag());
            assertThat(number(form, path + ".horizontalTension", "N")).isEqualTo(each.horizontalTension());
            assertThat(number(form, path + ".maximumTension", "N")).isEqualTo(each.maximumTension());
            assertThat(number(form, path + ".unstretchedLength", "m")).isEqualTo(each.unstretchedLength());
        }
        assertThat(number(form, "firstTension", "N")).isEqualTo(e.firstTension());
        assertThat(number(form, "lastTension", "N")).isEqualTo(e.lastTension());
        assertThat(number(form, "maximumTension", "N")).isEqualTo(e.maximumTension());
        for (SupportReaction each : e.supports()) {
            String path = CanonicalForm.Builder.element("support", each.id());
            assertVector(form, path + ".force", each.vector(), "N");
            assertVector(form, path + ".displacement", each.displacement(), "m");
            assertThat(number(form, path + ".slip", "m")).isEqualTo(each.slip());
        }
        assertThat(e.inlineAbsorbers()).hasSize(1);
        for (InlineAbsorberState each : e.inlineAbsorbers()) {
            String path = CanonicalForm.Builder.element("inlineAbsorber", each.supportId());
            assertThat(number(form, path + ".extension", "m")).isEqualTo(each.extension());
        }
        String load = CanonicalForm.Builder.element("load", 0);
        assertThat(number(form, load + ".force", "N")).isEqualTo(1200);
        Point at = e.loads().get(0).point();
        assertVector(form, load + ".point", new Vector3(at.x(), at.y(), at.z()), "m");
    }

    private static Fall fall(Attachment attachment) {
        return Fall.builder("f")
                .at(Place.of(1, 3))
                .faller(FreeRunningWorker.lanyardOfSixKilonewtons().toBuilder("w")
                        .attachment(attachment)
                        .build())
                .build();
    }

    /** Energies, clearance and the line at its peak are part of the form of an arrest. */
    @Test
    void anArrestIsItsPeakItsEnergyAndItsClearance() {
        ArrestResult r = EnergyBalance.withDefaults().solve(line(), fall(Attachment.GRIPPED));
        CanonicalForm form = r.canonicalForm();
        assertThat(number(form, "temperature", "°C")).isEqualTo(r.temperature());
        assertThat(number(form, "freeFall", "m")).isEqualTo(r.freeFall());
        assertThat(number(form, CanonicalForm.Builder.element("deployment", 0), "m"))
                .isEqualTo(r.deployments().get(0));
        assertThat(number(form, "arrestForce", "N")).isEqualTo(r.arrestForce());
        assertThat(number(form, "lineLoad", "N")).isEqualTo(r.lineLoad());
        assertThat(number(form, "sag", "m")).isEqualTo(r.sag());
        assertThat(number(form, "lineDescent", "m")).isEqualTo(r.lineDescent());
        assertThat(number(form, "maximumTension", "N")).isEqualTo(r.maximumTension());
        assertThat(number(form, "totalFallDistance", "m")).isEqualTo(r.totalFallDistance());
        assertThat(number(form, "clearance.requiredBelowLine", "m"))
                .isEqualTo(r.clearance().requiredBelowLine());
        for (SupportReaction each : r.peak().supports()) {
            assertVector(form, CanonicalForm.Builder.element("support", each.id()) + ".force", each.vector(), "N");
        }
        double taken = number(form, "energy.cable", "J")
                + number(form, "energy.hanging", "J")
                + number(form, "energy.connection", "J")
                + number(form, "energy.friction", "J")
                + number(form, "energy.inlineAbsorbers", "J")
                + number(form, "energy.anchors", "J");
        double fall = number(form, "energy.fall", "J");
        assertThat(taken).as("the energy of the fall is taken").isCloseTo(fall, within(1e-8 * fall));
    }

    /** Of two limits the larger value counts, for every quantity by itself; one who grips knows one limit only. */
    @Test
    void ofTwoLimitsTheLargerValueCounts() {
        AttachmentLimits both = EnergyBalance.withDefaults().solveLimits(line(), fall(Attachment.FREE_RUNNING));
        ArrestResult running = both.at(AttachmentLimit.RUNNING);
        ArrestResult held = both.at(AttachmentLimit.HELD);
        ToDoubleFunction<ArrestResult> below = r -> r.clearance().requiredBelowLine();
        assertGoverns(both.requiredBelowLine(), below, running, held);
        assertGoverns(both.maximumTension(), ArrestResult::maximumTension, running, held);
        assertGoverns(both.arrestForce(), ArrestResult::arrestForce, running, held);
        assertGoverns(both.totalFallDistance(), ArrestResult::totalFallDistance, running, held);
        AttachmentLimits one = EnergyBalance.withDefaults().solveLimits(line(), fall(Attachment.GRIPPED));
        assertThat(one.requiredBelowLine().limit()).as("both are the same").isEqualTo(AttachmentLimit.RUNNING);
        assertThat(one.requiredBelowLine().value()).isPositive();
    }

    private static void assertGoverns(
            AttachmentLimits.Governing found,
            ToDoubleFunction<ArrestResult> of,
            ArrestResult running,
            ArrestResult held) {
        double a = of.applyAsDouble(running);
        double b = of.applyAsDouble(held);
        assertThat(found.value()).isEqualTo(Math.max(a, b)).isPositive();
        assertThat(of.applyAsDouble(found.arrest())).isEqualTo(found.value());
    }

    /** Points of a piece at equal unstretched lengths, the ends where the piece begins and ends. */
    @Test
    void theShapeOfAPieceHasItsEnds() {
        LineEquilibrium e = Statics.withDefaults().solve(line(), List.of());
        CablePiece piece = e.span(1).pieces().get(0);
        List<Point> shape = piece.shape(4);
        assertThat(shape).hasSize(5);
        assertThat(shape.get(0)).isEqualTo(piece.start());
        assertThat(shape.get(4)).isEqualTo(piece.end());
        for (int i = 0; i <= 4; i++) {
            Point at = piece.pointAt(0.25 * i * piece.unstretchedLength());
            assertThat(shape.get(i).distance(at)).as("point %d", i).isLessThan(1e-12);
        }
        assertThat(shape.get(2).z())
                .as("hangs below the chord")
                .isLessThan(0.5 * (piece.start().z() + piece.end().z()));
        assertThat(Refusal.paths(() -> piece.pointAt(Double.NaN))).containsExactly("length");
        assertThat(Refusal.paths(() -> piece.shape(0))).containsExactly("intervals");
    }
}
