package org.lifeline.verify.state;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.lifeline.analysis.state.AppliedLoad;
import org.lifeline.analysis.state.InlineAbsorberState;
import org.lifeline.analysis.state.LoadPosition;
import org.lifeline.analysis.state.SupportReaction;
import org.lifeline.base.Point;
import org.lifeline.base.Vector3;
import org.lifeline.model.Attachment;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Passage;
import org.lifeline.model.Place;
import org.lifeline.model.cable.Cable;

/** States put together by hand, on a line of two spans of 10 m and 6 m at a level of 5 m. */
final class HandMade {
    static final double EXPANSION = 1e-5;

    private HandMade() {}

    static Lifeline line() {
        return Lifeline.builder()
                .cable(Cable.builder()
                        .massPerLength(0.5)
                        .axialStiffness(1e6)
                        .thermalExpansion(EXPANSION)
                        .build())
                .endAnchor("a", Point.of(0, 0, 5))
                .intermediateAnchor("b", Point.of(10, 0, 5), Passage.free())
                .endAnchor("c", Point.of(16, 0, 5))
                .pretension(1000)
                .build();
    }

    /** A straight piece along x with a tension of its own and a load at its end. */
    static PieceNumbers piece(double from, double to, double tension, double load) {
        Vector3 pull = new Vector3(tension, 0, 0);
        return new PieceNumbers(Point.of(from, 0, 5), Point.of(to, 0, 5), pull, pull, to - from, 5, load);
    }

    static SpanNumbers span(int number, PieceNumbers... pieces) {
        double from = number == 1 ? 0 : 10;
        double to = number == 1 ? 10 : 16;
        return new SpanNumbers(number, Point.of(from, 0, 5), Point.of(to, 0, 5), List.of(pieces));
    }

    static StateNumbers state(double temperature, List<SpanNumbers> spans, List<LoadPosition> loads) {
        List<SupportReaction> supports = new ArrayList<>();
        for (String id : List.of("a", "b", "c")) {
            supports.add(new SupportReaction(id, Vector3.ZERO, Vector3.ZERO, 0));
        }
        return new StateNumbers(
                line(), temperature, spans, supports, List.of(new InlineAbsorberState("c", 0.25, 0.5)), loads);
    }

    /** A first span beside a second one that hardly pulls. */
    static StateNumbers beside(SpanNumbers first) {
        return state(15, List.of(first, span(2, piece(10, 16, 1, 0))), List.of());
    }

    static LoadPosition load(int span, double x, double force) {
        return new LoadPosition(span, Point.of(x, 0, 5), force, Optional.empty());
    }

    static LoadPosition resting(int span, double x, double force, String on) {
        return new LoadPosition(span, Point.of(x, 0, 5), force, Optional.of(on));
    }

    static AppliedLoad applied(int span, double station, Attachment attachment, double force) {
        return new AppliedLoad(Place.of(span, station), attachment, force);
    }

    /** Both spans without loads: one piece each. */
    static StateNumbers bare() {
        return state(15, List.of(span(1, piece(0, 10, 1000, 0)), span(2, piece(10, 16, 1200, 0))), List.of());
    }
}
