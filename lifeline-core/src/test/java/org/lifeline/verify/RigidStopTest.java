package org.lifeline.verify;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.lifeline.analysis.Statics;
import org.lifeline.analysis.state.AppliedLoad;
import org.lifeline.base.Point;
import org.lifeline.model.Attachment;
import org.lifeline.model.InlineAbsorber;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Place;
import org.lifeline.model.Support;
import org.lifeline.model.absorber.LoadingCurve;
import org.lifeline.model.absorber.LoadingCurve.Corner;
import org.lifeline.model.cable.Cable;

/** A line whose in-line absorber stands at a rigid stop passes; the check used to print NaN there. */
class RigidStopTest {
    @Test
    void aLineAtARigidStopPasses() {
        for (double stop : new double[] {Double.POSITIVE_INFINITY, 1e9, 5e5, 3e4}) {
            LoadingCurve curve = LoadingCurve.through(List.of(new Corner(0, 9000), new Corner(0.1, 9000)), 1e5, stop);
            Lifeline line = Lifeline.builder()
                    .cable(Cable.builder()
                            .massPerLength(0.4)
                            .axialStiffness(4e6)
                            .build())
                    .endAnchor("a", Point.of(0, 0, 10))
                    .support(Support.end("b", Point.of(10, 0, 10)).withInlineAbsorber(InlineAbsorber.of(curve)))
                    .pretension(2000)
                    .build();
            List<AppliedLoad> loads = List.of(new AppliedLoad(Place.of(1, 5), Attachment.GRIPPED, 8000));
            VerificationReport report =
                    Verifier.withDefaults().equilibrium(Statics.withDefaults().solve(line, loads), loads);
            assertThat(report.passed()).as("stop %s: %s", stop, report).isTrue();
        }
    }
}
