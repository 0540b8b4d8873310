package org.lifeline.analysis.explain;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.TransientArrest;
import org.lifeline.analysis.state.EnergyAccount;
import org.lifeline.model.Attachment;
import org.lifeline.model.Fall;
import org.lifeline.model.InlineAbsorber;
import org.lifeline.model.Installed;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Place;
import org.lifeline.model.absorber.LoadingCurve;
import org.lifeline.samples.SampleDesigns;

/** The sheet of an arrest in time holds the peaks of the motion and the energy account at the lowest point. */
class MotionExplanationTest {
    private static final ArrestResult ARREST = solve(0);

    private static ArrestResult solve(int refinements) {
        InlineAbsorber absorber = InlineAbsorber.of(LoadingCurve.through(
                List.of(new LoadingCurve.Corner(0, 6000), new LoadingCurve.Corner(0.8, 6000)), 8e6, 3e5));
        Lifeline line = SampleDesigns.single(SampleDesigns.steel(), Installed.pretension(2000))
                .withSupports(s -> s.id().equals("east") ? s.withInlineAbsorber(absorber) : s);
        Fall fall = Fall.builder("fall")
                .at(Place.of(1, 5))
                .faller(SampleDesigns.worker("A", 100, Attachment.GRIPPED, SampleDesigns.lanyard()))
                .build();
        return TransientArrest.withDefaults()
                .withSegmentLength(1)
                .withRefinements(refinements)
                .withDuration(0.9)
                .solve(line, fall)
                .arrest();
    }

    private static Map<String, CalculationStep> by(ArrestResult r) {
        return Reviewer.bySymbol(r.explain());
    }

    private static double value(Map<String, CalculationStep> by, String symbol) {
        return Objects.requireNonNull(by.get(symbol), symbol).value();
    }

    @Test
    void theSectionsEndWithMotionAccountAndClearance() {
        List<String> sections = ARREST.explain().stream()
                .map(CalculationStep::section)
                .distinct()
                .toList();
        assertThat(sections)
                .containsExactly(
                        "Cable",
                        "Span 1, as installed and before the fall",
                        "Line, as installed and before the fall",
                        "Free fall",
                        "Motion of line and workers",
                        "Energy account at the lowest point",
                        "Fall distance and clearance");
    }

    @Test
    void thePeaksAreThoseOfTheResult() {
        Map<String, CalculationStep> by = by(ARREST);
        assertThat(value(by, "x")).isEqualTo(ARREST.deployment());
        assertThat(value(by, "F_a")).isEqualTo(ARREST.arrestForce());
        assertThat(value(by, "P")).isEqualTo(ARREST.lineLoad());
        assertThat(value(by, "T_m")).isEqualTo(ARREST.maximumTension());
        assertThat(value(by, "R_0")).isEqualTo(ARREST.anchorLoad("west"));
        assertThat(value(by, "R_1")).isEqualTo(ARREST.anchorLoad("east"));
        assertThat(Objects.requireNonNull(by.get("R_1")).what()).contains("east");
        assertThat(by).doesNotContainKey("R_2");
        assertThat(value(by, "e_east"))
                .isEqualTo(ARREST.inlineAbsorbers().get(0).extension())
                .isPositive();
        assertThat(value(by, "δ")).isEqualTo(ARREST.lineDescent());
        assertThat(value(by, "f")).isEqualTo(ARREST.sag());
        assertThat(value(by, "x_l")).isEqualTo(ARREST.reach());
    }

    /** What the fall set free is in the cable, with the hanging, in connection, friction, absorbers and anchors. */
    @Test
    void theAccountAddsUp() {
        Map<String, CalculationStep> by = by(ARREST);
        EnergyAccount e = ARREST.energy();
        assertThat(value(by, "W")).isEqualTo(e.fall());
        assertThat(value(by, "U_c")).isEqualTo(e.cable());
        assertThat(value(by, "U_h")).isEqualTo(e.hanging());
        assertThat(value(by, "U_x")).isEqualTo(e.connection());
        assertThat(value(by, "Q")).isEqualTo(e.friction());
        assertThat(value(by, "U_i")).isEqualTo(e.inlineAbsorbers()).isPositive();
        assertThat(value(by, "U_a")).isEqualTo(e.anchors());
        double sum = e.cable() + e.hanging() + e.connection() + e.friction() + e.inlineAbsorbers() + e.anchors();
        assertThat(value(by, "U")).isCloseTo(sum, within(1e-9 * sum));
        assertThat(value(by, "ΔW")).isCloseTo(e.fall() - sum, within(1e-9 * sum));
        assertThat(Math.abs(value(by, "ΔW"))).isLessThan(0.01 * e.fall());
        assertThat(Objects.requireNonNull(by.get("ΔW")).section()).isEqualTo("Energy account at the lowest point");
        assertThat(Objects.requireNonNull(by.get("x_l")).section()).isEqualTo("Motion of line and workers");
    }

    /** One mesh bounds nothing, nor do two; three do. */
    @Test
    void theBoundOfTheMeshesIsSaidWhereThereIsOne() {
        assertThat(ARREST.convergence().residual()).isInfinite();
        assertThat(by(ARREST)).doesNotContainKey("ρ");
        ArrestResult finer = solve(2);
        assertThat(finer.convergence().residual()).isFinite();
        assertThat(value(by(finer), "ρ")).isEqualTo(finer.convergence().residual());
    }
}
