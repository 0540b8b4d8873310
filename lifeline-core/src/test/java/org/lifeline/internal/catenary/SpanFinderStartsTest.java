package org.lifeline.internal.catenary;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.lifeline.internal.catenary.SpanFinder.Known;
import org.lifeline.model.cable.LoadElongation;
import org.lifeline.model.cable.LoadElongation.Corner;

/** From which start a span is found: its parabola, its catenary, or a light cable that grows heavy. */
class SpanFinderStartsTest {
    private static final double RUN = 10;
    private static final double WEIGHT = 5;
    private static final LoadElongation ROPE = LoadElongation.linear(2e6);

    private static double sag(LoadElongation law, SpanFinder f, double weight, double run, double rise) {
        CatenaryQuadrature part = new CatenaryQuadrature(law, f.h, f.v, (f.h * rise / run - f.v) / weight, weight);
        return part.run() * rise / run - part.rise();
    }

    /** Up to λ = w l/2H = 0.4 the parabola is the start, and Newton's steps die out: the span fits to rounding. */
    @Test
    void aTautSpanIsFoundToRounding() {
        for (double rise : new double[] {-4, 0, 8}) {
            for (double lambda : new double[] {1e-3, 0.1, 0.39}) {
                double h = WEIGHT * RUN / (2 * lambda);
                SpanFinder f = new SpanFinder(ROPE, WEIGHT, RUN, rise);
                assertThat(f.find(Known.HORIZONTAL_TENSION, h)).isTrue();
                assertThat(f.exact).as("rise %s, lambda %s", rise, lambda).isTrue();
                Map<Known, Double> values = Map.of(
                        Known.START_TENSION,
                        Math.hypot(f.h, f.v),
                        Known.HORIZONTAL_TENSION,
                        f.h,
                        Known.SAG,
                        sag(ROPE, f, WEIGHT, RUN, rise),
                        Known.UNSTRETCHED_LENGTH,
                        f.s);
                for (Map.Entry<Known, Double> each : values.entrySet()) {
                    Known known = each.getKey();
                    SpanFinder again = new SpanFinder(ROPE, WEIGHT, RUN, rise);
                    // Slack of a span that hangs low is found from its catenary where the parabola leads beyond λ =
                    // 0.4.
                    assertThat(again.find(known, each.getValue())).isTrue();
                    assertThat(again.exact || lambda > 0.3)
                            .as("%s, rise %s, lambda %s", known, rise, lambda)
                            .isTrue();
                    assertThat(again.h).isCloseTo(h, within(1e-9 * h));
                    CatenaryQuadrature q = new CatenaryQuadrature(ROPE, again.h, again.v, again.s, WEIGHT);
                    assertThat(q.run()).isCloseTo(RUN, within(1e-12 * RUN));
                    assertThat(q.rise()).isCloseTo(rise, within(1e-12 * RUN));
                }
            }
        }
    }

    @Test
    void whatIsNotTautIsFoundFromItsCatenary() {
        SpanFinder slack = new SpanFinder(ROPE, WEIGHT, RUN, 1);
        assertThat(slack.find(Known.HORIZONTAL_TENSION, WEIGHT * RUN / (2 * 0.401)))
                .isTrue();
        assertThat(slack.exact).as("beyond λ = 0.4").isFalse();
        assertThat(slack.find(Known.HORIZONTAL_TENSION, WEIGHT * RUN / (2 * 0.399)))
                .isTrue();
        assertThat(slack.exact).as("below it").isTrue();
        SpanFinder weightless = new SpanFinder(ROPE, 0, RUN, 1);
        assertThat(weightless.find(Known.HORIZONTAL_TENSION, 1000)).isTrue();
        assertThat(weightless.exact).isFalse();
        LoadElongation bent =
                LoadElongation.curve(List.of(new Corner(0, 0), new Corner(1e-3, 1e3), new Corner(2e-3, 4e3)));
        SpanFinder curved = new SpanFinder(bent, WEIGHT, RUN, 1);
        assertThat(curved.find(Known.HORIZONTAL_TENSION, 2000)).isTrue();
        assertThat(curved.exact).isFalse();
    }

    /**
     * Ropes that give way at a force and are held to a small sag: the catenary's estimate is far off, because a little more
     * tension stretches them by much. What is found is checked by quadrature.
     */
    @Test
    void aRopeThatYieldsIsFoundAsItsWeightGrows() {
        LoadElongation[] ropes = {
            LoadElongation.curve(List.of(new Corner(0, 0), new Corner(0.0882, 25368), new Corner(0.0893, 25372))),
            LoadElongation.curve(List.of(new Corner(0, 0), new Corner(0.0062, 80942.03), new Corner(0.00621, 80942.4))),
            LoadElongation.curve(List.of(new Corner(0, 0), new Corner(0.0626, 539.95), new Corner(0.0705, 540.45))),
            LoadElongation.curve(List.of(new Corner(0, 0), new Corner(0.0958, 8674615), new Corner(0.0961, 8676686))),
            // These need smaller steps of the weight on the way.
            LoadElongation.curve(
                    List.of(new Corner(0, 0), new Corner(0.050978, 5762500), new Corner(0.056612, 5762950))),
            LoadElongation.curve(
                    List.of(new Corner(0, 0), new Corner(0.048594, 1011600), new Corner(0.092261, 1011686.248))),
            LoadElongation.curve(
                    List.of(new Corner(0, 0), new Corner(0.001259, 9380200), new Corner(0.0017531, 9380214.072)))
        };
        // run, rise, weight per length, sag
        double[][] spans = {
            {101.43, -33.875, 4.1432, 0.183},
            {41.246, -147.92, 50.09, 0.15475},
            {86.246, -315.33, 3, 1.44215},
            {449.41, -841.65, 1410.87, 0.421},
            {33.384, -37.569, 1150.7, 0.0078891},
            {203.35, -432.59, 40.524, 0.15505},
            {210.45, -486.99, 4380.8, 1.4376}
        };
        for (int i = 0; i < ropes.length; i++) {
            double[] p = spans[i];
            SpanFinder f = new SpanFinder(ropes[i], p[2], p[0], p[1]);
            assertThat(f.find(Known.SAG, p[3])).as("span %d", i).isTrue();
            double chord = Math.hypot(p[0], p[1]);
            CatenaryQuadrature q = new CatenaryQuadrature(ropes[i], f.h, f.v, f.s, p[2]);
            assertThat(q.run()).as("span %d", i).isCloseTo(p[0], within(1e-10 * chord));
            assertThat(q.rise()).as("span %d", i).isCloseTo(p[1], within(1e-10 * chord));
            assertThat(sag(ropes[i], f, p[2], p[0], p[1])).as("span %d", i).isCloseTo(p[3], within(1e-10 * chord));
        }
    }

    @Test
    void whatCannotBeIsNotFound() {
        SpanFinder f = new SpanFinder(ROPE, WEIGHT, RUN, 1);
        assertThat(f.find(Known.START_TENSION, 0.5 * f.leastStartTension())).isFalse();
        assertThat(f.find(Known.HORIZONTAL_TENSION, WEIGHT * RUN / 60))
                .as("λ = 30")
                .isFalse();
        SpanFinder weightless = new SpanFinder(ROPE, 0, RUN, 1);
        assertThat(weightless.find(Known.SAG, 0.1)).isFalse();
        assertThat(weightless.find(Known.UNSTRETCHED_LENGTH, 11)).isFalse();
    }
}
