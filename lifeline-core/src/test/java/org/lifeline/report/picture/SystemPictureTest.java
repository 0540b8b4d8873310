package org.lifeline.report.picture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.LineEquilibrium;
import org.lifeline.analysis.Statics;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Obstruction;
import org.lifeline.report.Hostile;
import org.lifeline.report.Xml;
import org.lifeline.report.document.Picture;
import org.lifeline.report.document.UnitChoice;
import org.lifeline.samples.SampleDesigns;
import org.w3c.dom.Document;
import org.w3c.dom.Element;

/** The drawing of the system is complete, within its frame and to scale. */
class SystemPictureTest {
    private static LifelineDesign design(String title, ArrestResult r) {
        LifelineDesign.Builder builder =
                LifelineDesign.builder(title).line(r.line()).fall(r.fall());
        r.fall().fallers().forEach(builder::worker);
        r.fall().hanging().forEach(h -> builder.worker(h.worker()));
        return builder.clearance(SampleDesigns.design(title)
                        .clearance()
                        .withObstructions(List.of(new Obstruction(0, 6, 4.0), new Obstruction(6, 9, 5.5))))
                .build();
    }

    private static Picture draw(LifelineDesign design, UnitChoice units) {
        LineEquilibrium installed = Statics.withDefaults().solve(design.line(), List.of());
        return SystemPicture.draw(design, installed, units);
    }

    @ParameterizedTest
    @EnumSource(UnitChoice.class)
    void everyLineIsDrawnWithinItsFrame(UnitChoice units) {
        for (ArrestResult r : SampleDesigns.arrests().values()) {
            Picture p = draw(design("system", r), units);
            Document d = PictureChecks.check(p);
            assertThat(p.data().rows()).hasSameSizeAs(r.line().supports());
            assertThat(Xml.all(d, "text"))
                    .extracting(Element::getTextContent)
                    .contains("Plan", "walking level")
                    .anyMatch(t -> t.endsWith("to true scale; x to the right, y up"));
        }
    }

    @Test
    void spansAreInScale() {
        for (ArrestResult r : SampleDesigns.arrests().values()) {
            Document d = Xml.parse(draw(design("scale", r), UnitChoice.SI).svg());
            // Leaders run straight up from the supports; the dimension chain has a tick at each of them.
            List<Double> ticks = new ArrayList<>();
            for (Element e : Xml.all(d, "line")) {
                double y1 = Double.parseDouble(e.getAttribute("y1"));
                double y2 = Double.parseDouble(e.getAttribute("y2"));
                boolean upright = e.getAttribute("x1").equals(e.getAttribute("x2"));
                if (upright && Math.abs(y2 - y1 - 14) < 0.011) {
                    ticks.add(Double.parseDouble(e.getAttribute("x1")));
                }
            }
            assertThat(ticks.size()).isGreaterThanOrEqualTo(2 * r.line().spans());
            double whole = 0;
            for (int i = 1; i <= r.line().spans(); i++) {
                whole += r.line().run(i);
            }
            double scale = (ticks.get(2 * r.line().spans() - 1) - ticks.get(0)) / whole;
            for (int i = 0; i < r.line().spans(); i++) {
                assertThat((ticks.get(2 * i + 1) - ticks.get(2 * i)) / scale)
                        .as("span %d", i + 1)
                        .isCloseTo(r.line().run(i + 1), within(0.03));
            }
        }
    }

    @Test
    void runsAndCapacitiesAreWritten() {
        LifelineDesign design = SampleDesigns.design("numbers");
        String svg = draw(design, UnitChoice.SI).svg();
        for (int i = 1; i <= design.line().spans(); i++) {
            assertThat(svg)
                    .contains(String.format(
                            java.util.Locale.ROOT, ">%.3f<", design.line().run(i)));
        }
        design.line().supports().forEach(s -> assertThat(svg).contains(s.id()));
    }

    /** Two narrow obstructions with room between them have their extent beside their name; close ones are cut short. */
    @Test
    void whatIsAnObstructionIsWrittenWhereThereIsRoom() {
        LifelineDesign design = SampleDesigns.design("narrow");
        double end = 0;
        for (int i = 1; i <= design.line().spans(); i++) {
            end += design.line().run(i);
        }
        String svg = drawnWith(design, 0.3 * end, 0.7 * end);
        assertThat(svg.split(">obstruction, ", -1)).as("both in full").hasSize(3);
        assertThat(svg).doesNotContain("…");
        assertThat(drawnWith(design, 0.5 * end, 0.52 * end)).contains("…");
    }

    private static String drawnWith(LifelineDesign design, double first, double second) {
        return draw(
                        design.toBuilder()
                                .clearance(design.clearance()
                                        .withObstructions(List.of(
                                                new Obstruction(first, first + 0.2, 0.5),
                                                new Obstruction(second, second + 0.2, 0.5))))
                                .build(),
                        UnitChoice.SI)
                .svg();
    }

    @Test
    void hostileNamesComeOutInert() {
        for (String hostile : Hostile.texts()) {
            ArrestResult r = SampleDesigns.arrests().values().iterator().next();
            Picture p = draw(design(hostile, r), UnitChoice.BOTH);
            Document d = PictureChecks.check(p);
            assertThat(Xml.all(d, "script")).isEmpty();
        }
    }
}
