package org.lifeline.design.assessment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.lifeline.base.Units.kN;
import static org.lifeline.base.Units.meganewtons;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.TransientArrest;
import org.lifeline.base.Point;
import org.lifeline.model.Fall;
import org.lifeline.model.Lifeline;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Passage;
import org.lifeline.model.Place;
import org.lifeline.model.cable.Cable;
import org.lifeline.testing.FreeRunningWorker;

/**
 * A free-running attachment on 3 x 12 m with friction 0.12 and a lanyard of 6 kN. The envelope by energy balance lies below
 * arrests in time on this line; the assessment, which judges the larger of both, lies above every one of them.
 */
class FreeRunningAssessedTest {
    private static final boolean LONG = Boolean.getBoolean("lifeline.long");
    private static final List<Double> SHARES =
            LONG ? List.of(0.0017, 0.01, 0.05, 0.1, 0.25, 0.4, 0.5, 0.75, 0.9, 0.998) : List.of(0.0017, 0.5);

    private static Lifeline line() {
        return Lifeline.builder()
                .cable(Cable.builder()
                        .weightPerLength(4.2)
                        .axialStiffness(meganewtons(4.9))
                        .build())
                .endAnchor("start", Point.of(0, 0, 6))
                .pretension(kN(1.5))
                .intermediateAnchor("post 1", Point.of(12, 0, 6), Passage.friction(0.12))
                .intermediateAnchor("post 2", Point.of(24, 0, 6), Passage.friction(0.12))
                .endAnchor("end", Point.of(36, 0, 6))
                .build();
    }

    @Test
    void noArrestInTimeLiesAboveTheAssessment() {
        LifelineDesign design = LifelineDesign.builder("3 x 12 m")
                .line(line())
                .worker(FreeRunningWorker.lanyardOfSixKilonewtons())
                .temperature(line().installed().temperature())
                .build();
        AssessmentResult result = Assessment.withDefaults().solve(design);
        assertThat(result.notComputed()).isEmpty();
        List<String> above = new ArrayList<>();
        StringBuilder table = new StringBuilder();
        for (int span = 1; span <= 2; span++) {
            for (double share : SHARES) {
                Place place = Place.of(span, share * 12);
                Fall fall = Fall.builder("f")
                        .at(place)
                        .faller(FreeRunningWorker.lanyardOfSixKilonewtons())
                        .build();
                ArrestResult time = TransientArrest.withDefaults()
                        .withSegmentLength(12.0 / 64)
                        .withRefinements(LONG ? 1 : 0)
                        .withEndAfterFirstCatch(0)
                        .withSampling(0.1)
                        .solve(line(), fall)
                        .arrest();
                String at = place + " ";
                for (String post : List.of("post 1", "post 2")) {
                    compare(result, at, "load on " + post, time.anchorLoad(post), above, table);
                }
                compare(result, at, "endAnchorLoad", time.endAnchorLoad(), above, table);
                compare(result, at, "maximumTension", time.maximumTension(), above, table);
                compare(result, at, "requiredBelowLine", time.clearance().requiredBelowLine(), above, table);
            }
        }
        assertThat(above).as(table.toString()).isEmpty();
        // What the balance alone would say: below what the motion gives at the ends and in the cable.
        GoverningValue end = result.governing("endAnchorLoad").orElseThrow();
        assertThat(end.inTime().orElseThrow())
                .isGreaterThan(1.1 * end.energyBalance().orElseThrow());
    }

    private static void compare(
            AssessmentResult result, String at, String name, double time, List<String> above, StringBuilder table) {
        GoverningValue g = result.governing(name).orElseThrow();
        table.append(String.format(
                Locale.ROOT,
                "%s %s in time %.5g, assessed %.5g, balance %.5g%n",
                at,
                name,
                time,
                g.factored(),
                g.energyBalance().orElseThrow()));
        if (time > g.factored()) {
            above.add(at + name);
        }
    }
}
