package org.lifeline.internal.path;

import java.util.ArrayList;
import java.util.List;
import org.lifeline.base.Point;
import org.lifeline.internal.line.LineSystem;
import org.lifeline.internal.line.LoadSlot;
import org.lifeline.model.InlineAbsorber;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Passage;
import org.lifeline.model.Support;
import org.lifeline.model.absorber.LoadingCurve;
import org.lifeline.model.cable.Cable;
import org.lifeline.model.cable.LoadElongation;

/** Level lines of 10 m spans, as models with a history or as bare systems. */
final class SmallLines {
    static final double EA = 2e6;
    static final double SPAN = 10;
    static final double TENSION = 1500;

    private SmallLines() {}

    static List<Support> supports(Passage passage, int spans) {
        List<Support> list = new ArrayList<>();
        for (int i = 0; i <= spans; i++) {
            Point at = Point.of(SPAN * i, 0, 10);
            list.add(i == 0 || i == spans ? Support.end("s" + i, at) : Support.intermediate("s" + i, at, passage));
        }
        return list;
    }

    static InlineAbsorber absorber() {
        return InlineAbsorber.of(LoadingCurve.through(
                List.of(new LoadingCurve.Corner(0, 6000), new LoadingCurve.Corner(1, 6000)), 8e6, 2e5));
    }

    static Lifeline line(List<Support> supports, double mass) {
        Lifeline.Builder b = Lifeline.builder()
                .cable(Cable.builder()
                        .massPerLength(mass)
                        .axialStiffness(EA)
                        .thermalExpansion(12e-6)
                        .build())
                .pretension(TENSION);
        supports.forEach(b::support);
        return b.build();
    }

    static LineModel model(Passage passage, int spans) {
        return new LineModel(line(supports(passage, spans), 0.4));
    }

    /** A system whose cable is straight at the tension of {@link #TENSION} and has no weight. */
    static LineSystem system(List<Support> supports, LoadSlot... slots) {
        LineSystem line = new LineSystem(supports, 0, LoadElongation.linear(EA));
        for (int i = 0; i < line.spans; i++) {
            line.length[i] = line.chord[i] / (1 + TENSION / EA);
        }
        return new LineSystem(line, List.of(slots));
    }

    static LineSystem system(Passage passage, int spans, LoadSlot... slots) {
        return system(supports(passage, spans), slots);
    }
}
