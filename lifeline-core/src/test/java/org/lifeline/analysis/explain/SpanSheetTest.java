package org.lifeline.analysis.explain;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.CablePiece;
import org.lifeline.analysis.LineEquilibrium;
import org.lifeline.analysis.SpanState;
import org.lifeline.analysis.Statics;
import org.lifeline.analysis.state.AppliedLoad;
import org.lifeline.base.Point;
import org.lifeline.model.Attachment;
import org.lifeline.model.Installed;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Passage;
import org.lifeline.model.Place;
import org.lifeline.model.Stiffness;
import org.lifeline.model.absorber.DeploymentForce;
import org.lifeline.samples.SampleDesigns;
import org.lifeline.testing.ArrestCase;
import org.lifeline.testing.Cases;
import org.lifeline.testing.Shorthand;

/** The sheet of a line at rest: its spans piece by piece, what fixes it, which way it runs, what rests on its posts. */
class SpanSheetTest {
    private static final List<AppliedLoad> TWO = List.of(
            new AppliedLoad(Place.of(1, 3), Attachment.GRIPPED, 700),
            new AppliedLoad(Place.of(1, 8), Attachment.GRIPPED, 900));

    /** Two spans over a post, towards +x, or mirrored towards −x. */
    private static Lifeline line(double direction, Installed installed) {
        return Lifeline.builder()
                .cable(SampleDesigns.steel())
                .endAnchor("a", Point.of(0, 0, 12))
                .intermediateAnchor("p", Point.of(direction * 12, 0, 13), Passage.free())
                .endAnchor("b", Point.of(direction * 20, 0, 12.5))
                .installed(installed)
                .build();
    }

    private static LineEquilibrium rest(Lifeline line, List<AppliedLoad> loads) {
        return Statics.withDefaults().solve(line, loads);
    }

    private static Map<String, CalculationStep> by(List<CalculationStep> sheet) {
        return Reviewer.bySymbol(sheet);
    }

    private static double value(Map<String, CalculationStep> by, String symbol) {
        return Objects.requireNonNull(by.get(symbol), symbol).value();
    }

    /** As many pieces as the loads cut the span into, in their order, each load between two of them where it hangs. */
    @Test
    void aSpanIsWrittenPieceByPiece() {
        LineEquilibrium state = rest(line(1, Installed.pretension(1500)), TWO);
        Map<String, CalculationStep> by = by(state.explain());
        for (SpanState span : state.spans()) {
            List<CablePiece> pieces = span.pieces();
            String k = span.number() + ".";
            for (int j = 1; j <= pieces.size(); j++) {
                CablePiece piece = pieces.get(j - 1);
                assertThat(value(by, "S_" + k + j)).isEqualTo(piece.unstretchedLength());
                assertThat(Objects.requireNonNull(by.get("S_" + k + j)).what()).endsWith("piece " + j);
                assertThat(value(by, "z_" + k + j)).isCloseTo(piece.start().z(), within(1e-9));
                assertThat(value(by, "V_" + k + j))
                        .isCloseTo(piece.startTension().z(), within(1e-6));
                boolean loaded = j < pieces.size();
                assertThat(by.containsKey("P_" + k + j)).isEqualTo(loaded);
                if (loaded) {
                    assertThat(value(by, "P_" + k + j)).isEqualTo(TWO.get(j - 1).force());
                }
            }
            String beyond = k + (pieces.size() + 1);
            assertThat(by).doesNotContainKeys("S_" + beyond, "z_" + beyond, "V_" + beyond);
        }
        assertThat(state.span(1).pieces()).hasSize(3);
        assertThat(state.span(2).pieces()).hasSize(1);
    }

    /** The sag of a span is that of the cable alone: of a span that carries a load it is another number, at the load. */
    @Test
    void aSpanWithoutLoadHasTheSagOfItsCable() {
        for (Installed installed : List.of(Installed.pretension(1500), Installed.initialSag(2, 0.2))) {
            // The last so light, and so near its post, that the cable still runs parallel to the chord before it.
            List<AppliedLoad> light = List.of(new AppliedLoad(Place.of(1, 11), Attachment.GRIPPED, 5));
            for (List<AppliedLoad> loads : List.of(List.<AppliedLoad>of(), TWO, light)) {
                LineEquilibrium state = rest(line(1, installed), loads);
                Map<String, CalculationStep> by = by(state.explain());
                for (SpanState span : state.spans()) {
                    String sag = "f_" + span.number();
                    assertThat(by.containsKey(sag)).isEqualTo(span.pieces().size() == 1);
                    if (by.containsKey(sag)) {
                        assertThat(value(by, sag)).isCloseTo(span.sag(), within(1e-8));
                    }
                }
            }
        }
    }

    /** What fixed the line when it was installed is a check only while it is as installed. */
    @Test
    void theInstalledStateIsToldOfTheLineAsInstalledAlone() {
        Lifeline line = line(1, Installed.pretension(1500));
        String key = "fixed by the installed state";
        assertThat(rest(line, List.of()).explain()).anyMatch(s -> s.what().contains(key));
        assertThat(rest(line, TWO).explain()).noneMatch(s -> s.what().contains(key));
        assertThat(Statics.withDefaults()
                        .withTemperature(-20)
                        .solve(line, List.of())
                        .explain())
                .noneMatch(s -> s.what().contains(key));
        // The named span is the one whose horizontal tension was set.
        LineEquilibrium second = rest(line(1, Installed.horizontalTension(1200).inSpan(2)), List.of());
        assertThat(value(by(second.explain()), "H_0")).isEqualTo(second.span(2).horizontalTension());
        assertThat(value(by(second.explain()), "H_0")).isCloseTo(1200, within(1e-6));
    }

    /** A line and its mirror image: the same forces, those along x turned round; only towards +x no direction is needed. */
    @Test
    void aLineTowardsMinusXIsTheMirrorImage() {
        LineEquilibrium state = rest(line(1, Installed.pretension(1500)), TWO);
        LineEquilibrium mirrored = rest(line(-1, Installed.pretension(1500)), TWO);
        Map<String, CalculationStep> by = by(state.explain());
        Map<String, CalculationStep> back = by(mirrored.explain());
        assertThat(by).doesNotContainKeys("cx_1", "cy_1", "cx_2", "cy_2", "Ry_0", "Ry_1", "Ry_2");
        assertThat(value(back, "cx_1")).isCloseTo(-1, within(1e-12));
        assertThat(value(back, "cx_2")).isCloseTo(-1, within(1e-12));
        for (int i = 0; i < 3; i++) {
            assertThat(value(back, "Rx_" + i)).isCloseTo(-value(by, "Rx_" + i), within(1e-4));
            assertThat(value(back, "Ry_" + i)).isCloseTo(0, within(1e-9));
            assertThat(value(back, "Rz_" + i)).isCloseTo(value(by, "Rz_" + i), within(1e-4));
            assertThat(value(back, "R_" + i)).isCloseTo(value(by, "R_" + i), within(1e-4));
            assertThat(value(back, "Rx_" + i))
                    .isCloseTo(mirrored.supports().get(i).vector().x(), within(1e-6));
        }
        assertThat(value(by, "Rx_0")).isPositive();
        for (CalculationStep step : mirrored.explain()) {
            if (step.symbol().startsWith("ΣX_") || step.symbol().startsWith("f_")) {
                assertThat(step.value()).isCloseTo(value(by, step.symbol()), within(1e-8));
            }
        }
    }

    /** Across a straight line in one plane nothing acts: of a post that yields that way there is nothing to say. */
    @Test
    void aSpringAcrossAStraightLineIsNotWritten() {
        Lifeline line = line(1, Installed.pretension(1500))
                .withSupports(s -> s.id().equals("p") ? s.withStiffness(new Stiffness(2e5, 1e5, 3e5)) : s);
        LineEquilibrium state = rest(line, TWO);
        Map<String, CalculationStep> by = by(state.explain());
        assertThat(by).containsKeys("kx_1", "kz_1").doesNotContainKeys("ky_1", "uy_1", "Ry_1");
        assertThat(state.supports().get(1).displacement().y()).isEqualTo(0);
        assertThat(value(by, "uz_1"))
                .isEqualTo(state.supports().get(1).displacement().z())
                .isNegative();
    }

    /** A load at a post goes into the post; the sheet names it by its number, and takes it off what the cable does there. */
    @Test
    void aLoadThatRestsOnAPostStandsInItsBalance() {
        Lifeline line = line(1, Installed.pretension(1500));
        LineEquilibrium bare = rest(line, List.of());
        AppliedLoad atPost = new AppliedLoad(Place.atSupport("p"), Attachment.GRIPPED, 800);
        List<AppliedLoad> loads = List.of(new AppliedLoad(Place.of(2, 4), Attachment.GRIPPED, 500), atPost);
        LineEquilibrium state = rest(line, loads);
        Map<String, CalculationStep> by = by(state.explain());
        assertThat(value(by, "Q_1.2")).isEqualTo(800);
        CalculationStep load = Objects.requireNonNull(by.get("Q_1.2"));
        assertThat(load.source()).isEqualTo("load 2");
        assertThat(by).doesNotContainKeys("Q_1.1", "Q_0.1", "Q_2.1", "Q_0.2", "Q_2.2");
        assertThat(value(by, "Rz_1")).isCloseTo(state.supports().get(1).vector().z(), within(1e-6));
        double up = value(by, "Rz_0") + value(by, "Rz_1") + value(by, "Rz_2");
        double carried =
                bare.supports().stream().mapToDouble(s -> s.vector().z()).sum() - 500 - 800;
        assertThat(up).isCloseTo(carried, within(0.01));
    }

    /** Who falls behind another in the same span: his place is counted from where the cable begins, over both pieces. */
    @Test
    void aFallBehindOneWhoHangsIsPlacedOverThePiecesBeforeIt() {
        ArrestResult r = behindOneWhoHangs().solve();
        Map<String, CalculationStep> by = by(r.explain());
        SpanState span = r.before().span(1);
        assertThat(span.pieces()).hasSize(3);
        Point attachment = r.attachmentBefore();
        assertThat(value(by, "z_b1h")).isCloseTo(attachment.z(), within(1e-8));
        assertThat(value(by, "a_b1h")).isCloseTo(span.firstSupport().horizontalDistance(attachment), within(1e-8));
        double first = span.pieces().get(0).end().horizontalDistance(span.firstSupport());
        assertThat(first).isLessThan(value(by, "a_b1h"));
        assertThat(value(by, "S_b1h")).isLessThan(span.pieces().get(1).unstretchedLength());
        assertThat(value(by, "δ")).isCloseTo(r.lineDescent(), within(1e-8));
        assertThat(value(by, "a")).isCloseTo(r.loadX(), within(1e-8));
        // Lent to those who hang: each has his weight, and rises or sinks with his own piece's end.
        assertThat(value(by, "W_2")).isCloseTo(r.energy().hanging(), within(1e-4));
        assertThat(value(by, "Q_1")).isCloseTo(90 * r.line().gravity(), within(1e-9));
        assertThat(value(by, "Q_2")).isCloseTo(70 * r.line().gravity(), within(1e-9));
        Reviewer.recompute(r.explain());
    }

    private static ArrestCase behindOneWhoHangs() {
        return new Shorthand("behind one who hangs")
                .cable(4.2, 1.2e-5, 0, 0, 1, 4.9e6)
                .end(0, 0, 12)
                .end(20, 0, 12)
                .installed(Installed.Form.PRETENSION, 1500, 1, 15)
                .hanging(Attachment.GRIPPED, Place.of(1, 4), 90)
                .hanging(Attachment.GRIPPED, Place.of(1, 16), 70)
                .faller(new double[] {100, 10.5, 1.5}, false, 1.8, 2e5, 0, 0, 0.06, 6000, 1.2, 6000)
                .fall(Attachment.GRIPPED, Place.of(1, 9), Double.NaN)
                .at(15, DeploymentForce.MAXIMUM);
    }

    /** Whoever rests on a post lends nothing by the cable; his elevation is that of the post. */
    @Test
    void oneWhoRestsOnAPostIsAsHighAsThePost() {
        ArrestResult r = new Shorthand("rests")
                .cable(4.2, 1.2e-5, 0, 0, 1, 4.9e6)
                .end(0, 0, 12)
                .post(10, 0, 12, 0)
                .springs(Shorthand.INF, Shorthand.INF, 2e5)
                .end(20, 0, 12)
                .installed(Installed.Form.PRETENSION, 1500, 1, 15)
                .hanging(Attachment.GRIPPED, Place.atSupport("post 1"), 90)
                .faller(new double[] {100, 10.5, 1.5}, false, 1.8, 2e5, 0, 0, 0.06, 6000, 1.2, 6000)
                .fall(Attachment.GRIPPED, Place.of(1, 5), Double.NaN)
                .at(15, DeploymentForce.MAXIMUM)
                .solve();
        Map<String, CalculationStep> by = by(r.explain());
        double weight = 90 * r.line().gravity();
        double before = r.before().supports().get(1).displacement().z();
        double after = r.peak().supports().get(1).displacement().z();
        assertThat(value(by, "z_s0")).isCloseTo(12 + after, within(1e-9));
        assertThat(value(by, "z_bs0")).isCloseTo(12 + before, within(1e-9));
        assertThat(value(by, "W_2")).isCloseTo(weight * (after - before), within(1e-6));
        assertThat(after).isLessThan(before);
    }

    /** The pieces and what an in-line absorber has grown reach from support to support, at either end. */
    @Test
    void theRunsAndRisesFillTheSpan() {
        List<ArrestCase> cases = new ArrayList<>();
        cases.add(Cases.twoInlineAbsorbers());
        cases.add(Cases.inlineAbsorber());
        cases.add(behindOneWhoHangs());
        for (ArrestCase each : cases) {
            ArrestResult r = each.solve();
            Map<String, CalculationStep> by = by(r.explain());
            for (SpanState span : r.peak().spans()) {
                String k = "_" + span.number();
                assertThat(value(by, "ΣX" + k)).as(each.name()).isCloseTo(value(by, "L" + k), within(1e-8));
                assertThat(value(by, "ΣZ" + k)).as(each.name()).isCloseTo(value(by, "D" + k), within(1e-8));
            }
            // A growth stands on the sheet where there is an absorber, and at no other end.
            int spans = r.line().spans();
            for (int i = 1; i <= spans; i++) {
                boolean first =
                        i == 1 && r.line().supports().get(0).inlineAbsorber().isPresent();
                boolean last = i == spans
                        && r.line().supports().get(spans).inlineAbsorber().isPresent();
                assertThat(by.containsKey("e_" + i + "a")).as(each.name()).isEqualTo(first);
                assertThat(by.containsKey("e_" + i + "b")).as(each.name()).isEqualTo(last);
            }
        }
    }
}
