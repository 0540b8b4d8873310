package org.lifeline.report.picture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.base.Point;
import org.lifeline.internal.svg.AxisScale.Range;
import org.lifeline.internal.svg.TextWidth;
import org.lifeline.model.InlineAbsorber;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Passage;
import org.lifeline.model.Stiffness;
import org.lifeline.model.Support;
import org.lifeline.model.absorber.LoadingCurve;
import org.lifeline.report.Printed;
import org.lifeline.report.PrintedNumber;
import org.lifeline.report.chart.Shapes;
import org.lifeline.report.document.Picture;
import org.lifeline.report.document.Quantities;
import org.lifeline.report.document.ReportBlock;
import org.lifeline.report.document.UnitChoice;
import org.lifeline.samples.SampleDesigns;
import org.w3c.dom.Element;

/** The plan is to scale, its arrows are as long as forces are large, and labels above a line keep clear of each other. */
class PlanMarksTest {
    private static final Map<String, ArrestResult> ARRESTS = SampleDesigns.arrests();
    private static final ArrestResult CORNER = Objects.requireNonNull(ARRESTS.get("corner"));
    private static final Picture PLAN = PlanPicture.draw(CORNER, UnitChoice.SI);

    private static Lifeline turned(double y) {
        return Lifeline.builder()
                .cable(SampleDesigns.steel())
                .endAnchor("a", Point.of(0, 0, 12))
                .intermediateAnchor("b", Point.of(10, 0, 12), Passage.free())
                .endAnchor("c", Point.of(20, y, 12))
                .pretension(1000)
                .build();
    }

    @Test
    void distancesInThePlanAreThoseOfTheSupports() {
        Shapes s = Shapes.of(PLAN);
        double[][] p = s.polylines("ll-s1").get(0);
        assertThat(p).hasDimensions(4, 2);
        List<Point> at =
                CORNER.line().supports().stream().map(Support::position).toList();
        double scale = (p[1][0] - p[0][0]) / (at.get(1).x() - at.get(0).x());
        for (int i = 0; i < 4; i++) {
            assertThat(p[i][0] - p[0][0])
                    .isCloseTo(scale * (at.get(i).x() - at.get(0).x()), within(0.02));
            assertThat(p[0][1] - p[i][1])
                    .as("y up")
                    .isCloseTo(scale * (at.get(i).y() - at.get(0).y()), within(0.02));
        }
        Element bar = s.texts("fall").get(0);
        double[] load = s.circles("ll-f-force").get(0);
        assertThat(load[0] - p[0][0])
                .isCloseTo(scale * CORNER.attachmentAtPeak().x(), within(0.02));
        assertThat(p[0][1] - load[1])
                .isCloseTo(scale * CORNER.attachmentAtPeak().y(), within(0.02));
        assertThat(Shapes.n(bar, "x")).isCloseTo(load[0] + 11, within(0.02));
    }

    @Test
    void arrowsPointAlongTheForceAndAreAsLongAsItIsLarge() {
        Shapes s = Shapes.of(PLAN);
        double[][] p = s.polylines("ll-s1").get(0);
        List<double[][]> heads =
                s.all("polygon", "ll-f-force").stream().map(Shapes::points).toList();
        double most = CORNER.supports().stream()
                .mapToDouble(r -> r.vector().horizontal())
                .max()
                .orElseThrow();
        int drawn = 0;
        for (int i = 0; i < 4; i++) {
            double h = CORNER.supports().get(i).vector().horizontal();
            double size = 90 * h / most;
            if (size <= 3) {
                continue;
            }
            double[] tip = heads.get(drawn)[0];
            drawn++;
            double dx = tip[0] - p[i][0];
            double dy = p[i][1] - tip[1];
            assertThat(Math.hypot(dx, dy)).isCloseTo(size + 8, within(0.03));
            assertThat(dx * h)
                    .isCloseTo((size + 8) * CORNER.supports().get(i).vector().x(), within(0.03 * h));
            assertThat(dy * h)
                    .isCloseTo((size + 8) * CORNER.supports().get(i).vector().y(), within(0.03 * h));
        }
        assertThat(heads).hasSize(drawn);
        assertThat(drawn).isGreaterThanOrEqualTo(3);
    }

    @Test
    void everySupportIsNamedBesideItsHorizontalForce() {
        Shapes s = Shapes.of(PLAN);
        for (int i = 0; i < 4; i++) {
            Element name = s.text(CORNER.line().supports().get(i).id());
            Element force = s.words().stream()
                    .flatMap(w -> s.texts(w).stream())
                    .filter(e -> e.getAttribute("x").equals(name.getAttribute("x"))
                            && Math.abs(Shapes.n(e, "y") - Shapes.n(name, "y") - 14) < 0.011)
                    .findFirst()
                    .orElseThrow();
            PrintedNumber.check(
                    force.getTextContent(), 1, CORNER.supports().get(i).vector().horizontal());
        }
    }

    @Test
    void theTableHasPositionsAndForces() {
        ReportBlock.Table t = PLAN.data();
        assertThat(t.rows()).hasSize(4);
        for (int i = 0; i < 4; i++) {
            List<String> c = t.rows().get(i).cells();
            Point p = CORNER.line().supports().get(i).position();
            assertThat(Printed.number(c.get(1))).isEqualTo(p.x());
            assertThat(Printed.number(c.get(2))).isEqualTo(p.y());
            assertThat(Printed.number(c.get(3))).isEqualTo(p.z());
            PrintedNumber.check(c.get(4), 1, CORNER.supports().get(i).force());
            PrintedNumber.check(c.get(5), 1, CORNER.supports().get(i).vector().horizontal());
        }
        assertThat(PLAN.description()).startsWith("Plan of 4 supports").endsWith("Drawn to true scale.");
    }

    @Test
    void aLineTurnsFromAMillionthOfItsLengthOn() {
        assertThat(PlanPicture.turns(turned(0))).isFalse();
        assertThat(PlanPicture.turns(turned(2.0e-5))).isFalse();
        assertThat(PlanPicture.turns(turned(2.2e-5))).isTrue();
        assertThat(PlanPicture.turns(turned(-2.2e-5))).isTrue();
    }

    @Test
    void labelsThatWouldMeetStandInAnotherRow() {
        SupportLabels labels = new SupportLabels(new Range(8, 500));
        SupportLabels.Label a = labels.place(100, List.of("a name"));
        SupportLabels.Label b = labels.place(110, List.of("another"));
        SupportLabels.Label c = labels.place(400, List.of("far away"));
        assertThat(a.row()).isZero();
        assertThat(b.row()).isEqualTo(1);
        assertThat(c.row()).isZero();
        assertThat(a.left()).isEqualTo(100 - TextWidth.of("a name") / 2);
        assertThat(labels.rows()).isEqualTo(2);
        SupportLabels.Label tall = labels.place(105, List.of("three", "rows", "high"));
        assertThat(tall.row()).as("above both").isEqualTo(2);
        assertThat(labels.rows()).isEqualTo(5);
        assertThat(tall.lines()).containsExactly("three", "rows", "high");
    }

    @Test
    void labelsStayInTheirRoomAndKeepTheirGap() {
        SupportLabels labels = new SupportLabels(new Range(8, 500));
        assertThat(labels.place(0, List.of("west")).left()).isEqualTo(8);
        assertThat(labels.place(500, List.of("east")).left()).isEqualTo(500 - TextWidth.of("east"));
        SupportLabels row = new SupportLabels(new Range(0, 500));
        double wide = TextWidth.of("mmm");
        row.place(wide / 2, List.of("mmm"));
        assertThat(row.place(1.5 * wide + 12, List.of("mmm")).row())
                .as("just twelve units apart")
                .isZero();
        SupportLabels closer = new SupportLabels(new Range(0, 500));
        closer.place(wide / 2, List.of("mmm"));
        assertThat(closer.place(1.5 * wide + 11.9, List.of("mmm")).row()).isEqualTo(1);
    }

    @Test
    void theDetailsOfASupportAreItsPassageStiffnessCapacityAndAbsorber() {
        Quantities q = Quantities.in(UnitChoice.SI);
        Point p = Point.of(0, 0, 12);
        assertThat(SupportDetails.of(Support.end("e", p).withCapacity(45e3), q))
                .containsExactly("end anchor", "capacity 45 kN");
        assertThat(SupportDetails.of(Support.intermediate("i", p, Passage.free()), q))
                .containsExactly("cable passes freely");
        assertThat(SupportDetails.of(Support.intermediate("i", p, Passage.clamped()), q))
                .containsExactly("clamped");
        assertThat(SupportDetails.of(
                        Support.intermediate("i", p, Passage.friction(0.12))
                                .withStiffness(Stiffness.rigid().withX(4e5).withZ(2.5e5)),
                        q))
                .containsExactly("passes, μ = 0.12", "kx = 400 kN/m, kz = 250 kN/m");
        Support absorber = Support.end("e", p)
                .withInlineAbsorber(InlineAbsorber.of(LoadingCurve.through(
                        List.of(new LoadingCurve.Corner(0, 8000), new LoadingCurve.Corner(0.8, 9000)), 8e6, 220e3)));
        assertThat(SupportDetails.of(absorber, q)).containsExactly("end anchor", "in-line absorber, 9 kN, up to 0.8 m");
        assertThat(SupportDetails.rows(absorber, q))
                .allSatisfy(r -> assertThat(TextWidth.of(r)).isLessThanOrEqualTo(190));
        List<String> broken = SupportDetails.rows(
                Support.end("e", p)
                        .withStiffness(
                                Stiffness.rigid().withX(123_456).withY(234_567).withZ(345_678)),
                q);
        assertThat(broken).hasSizeGreaterThan(2).startsWith("end anchor");
        assertThat(String.join(" ", broken.subList(1, broken.size())))
                .isEqualTo("kx = 123.5 kN/m, ky = 234.6 kN/m, kz = 345.7 kN/m");
    }
}
