package org.lifeline.report.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.lifeline.analysis.TransientArrest;
import org.lifeline.analysis.TransientResult;
import org.lifeline.analysis.motion.MotionHistory;
import org.lifeline.analysis.motion.WorkerHistory;
import org.lifeline.model.Attachment;
import org.lifeline.model.Fall;
import org.lifeline.model.Installed;
import org.lifeline.model.Place;
import org.lifeline.report.Xml;
import org.lifeline.report.document.Picture;
import org.lifeline.report.document.UnitChoice;
import org.lifeline.samples.SampleDesigns;
import org.w3c.dom.Element;

/** An arrest in time as drawn: every curve is that of the history, and the energies of every row balance. */
class HistoryPictureTest {
    private static final TransientResult MOTION = motion();
    private static final Picture PICTURE = HistoryPicture.draw(MOTION, UnitChoice.SI);
    private static final Columns TABLE = new Columns(PICTURE);

    private static double[] column(String heading) {
        return TABLE.of(heading);
    }

    private static TransientResult motion() {
        Fall fall = Fall.builder("fall")
                .at(Place.of(1, 5))
                .faller(SampleDesigns.worker("A", 100, Attachment.GRIPPED, SampleDesigns.lanyard()))
                .hanging(SampleDesigns.worker("B", 80, Attachment.GRIPPED, SampleDesigns.lanyard()), Place.of(1, 3))
                .build();
        return TransientArrest.withDefaults()
                .withSegmentLength(1)
                .withRefinements(0)
                .withDuration(1)
                .solve(SampleDesigns.single(SampleDesigns.steel(), Installed.pretension(2000)), fall);
    }

    /** A value of the history between its samples. */
    private static double at(double[] times, double[] values, double t) {
        for (int i = 1; i < times.length; i++) {
            if (t <= times[i]) {
                double share = (t - times[i - 1]) / (times[i] - times[i - 1]);
                return values[i - 1] + share * (values[i] - values[i - 1]);
            }
        }
        return values[values.length - 1];
    }

    @Test
    void theEnergyLostInHeightIsThatOfTheOtherParts() {
        double[] lost = column("lost in height [J]");
        double[] motion = column("motion of workers [J]");
        double[] connections = column("connecting subsystems [J]");
        double[] cable = column("cable and anchors [J]");
        double[] heat = column("heat of the line [J]");
        double most = Arrays.stream(lost).max().orElseThrow();
        assertThat(most).as("a hundred kilograms fall metres").isGreaterThan(1800);
        for (int i = 0; i < lost.length; i++) {
            // Five roundings to whole joules and what the integration loses.
            assertThat(motion[i] + connections[i] + cable[i] + heat[i])
                    .as("row %d", i)
                    .isCloseTo(lost[i], within(2.6 + Math.abs(MOTION.energyDrift())));
        }
        assertThat(lost[0]).isZero();
        assertThat(Arrays.stream(heat).min().orElseThrow()).isGreaterThanOrEqualTo(0);
    }

    @Test
    void forcesAndElevationsAreThoseOfTheHistory() {
        MotionHistory h = MOTION.history();
        double[] t = column("time since the start of the fall [s]");
        double step = h.times()[h.times().length - 1] / 20;
        for (int i = 0; i < t.length; i++) {
            assertThat(t[i]).isCloseTo(i * step, within(0.00051));
        }
        for (WorkerHistory w : h.workers()) {
            double[] line = column("line at " + w.id() + " [m]");
            double[] harness = column("harness of " + w.id() + " [m]");
            double[] force = column("on " + w.id() + " [kN]");
            for (int i = 0; i < t.length; i++) {
                assertThat(line[i]).isCloseTo(at(h.times(), w.lineZ(), i * step), within(0.000501));
                assertThat(harness[i]).isCloseTo(at(h.times(), w.z(), i * step), within(0.000501));
                assertThat(force[i]).isCloseTo(at(h.times(), w.force(), i * step) / 1000, within(0.00501));
            }
        }
        assertThat(h.workers()).as("the one who falls and the one who hangs").hasSize(2);
        for (int k = 0; k < 2; k++) {
            double[] load = column("load on " + h.supports().get(k).id() + " [kN]");
            for (int i = 0; i < t.length; i++) {
                assertThat(load[i])
                        .isCloseTo(at(h.times(), h.supports().get(k).force(), i * step) / 1000, within(0.00501));
            }
        }
    }

    @Test
    void theEnergyBalanceIsALevelAmongTheForces() {
        Shapes s = Shapes.of(PICTURE);
        double balance = MOTION.energyBalance().orElseThrow().endAnchorLoad() / 1000;
        double[] level = s.lines("ll-limit").get(0);
        // The scale of the uppermost field from two of its numbers.
        Element low = number(s, 0);
        Element high = number(s, 1);
        double value = Double.parseDouble(low.getTextContent());
        double per = (Shapes.n(high, "y") - Shapes.n(low, "y")) / (Double.parseDouble(high.getTextContent()) - value);
        assertThat(Shapes.n(low, "y") - 4 + per * (balance - value)).isCloseTo(level[1], within(0.05));
        assertThat(s.words()).contains("end anchor, balance");
    }

    private static Element number(Shapes s, int which) {
        return Xml.all(s.document(), "text").stream()
                .filter(e -> e.getAttribute("text-anchor").equals("end"))
                .toList()
                .get(which);
    }

    @Test
    void theWordsNameTheLargestTensionAndWhenItCame() {
        assertThat(PICTURE.title()).startsWith("History of the arrest: ");
        assertThat(PICTURE.description())
                .contains(String.format(
                        Locale.ROOT,
                        "Largest tension %.2f kN at %.3f s, arrest force %.2f kN",
                        MOTION.firstCatch().tension().value() / 1000,
                        MOTION.firstCatch().tension().time(),
                        MOTION.arrest().arrestForce() / 1000));
    }

    @Test
    void threeFieldsStandOnOneAxisOfTime() {
        Shapes s = Shapes.of(PICTURE);
        assertThat(s.words()).contains("force [kN]", "elevation [m]", "energy [J]");
        assertThat(s.texts("time since the start of the fall [s]")).hasSize(1);
        // The first catch is inside the drawing: forces of the worker start from nothing and come back from their peak.
        double[] force = column("on A [kN]");
        assertThat(force[0]).isZero();
        assertThat(Arrays.stream(force).max().orElseThrow())
                .isLessThanOrEqualTo(MOTION.arrest().arrestForce() / 1000 + 0.01);
    }
}
