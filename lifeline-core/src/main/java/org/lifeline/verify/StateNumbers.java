package org.lifeline.verify;

import java.util.List;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import org.lifeline.analysis.InlineAbsorberState;
import org.lifeline.analysis.LineEquilibrium;
import org.lifeline.analysis.LoadPosition;
import org.lifeline.analysis.SupportReaction;
import org.lifeline.base.Vector3;
import org.lifeline.model.Lifeline;

/**
 * A line in equilibrium as plain numbers. Immutable and thread-safe.
 *
 * @param line the line
 * @param temperature temperature of the state [°C]
 * @param spans the spans
 * @param supports forces, displacements and slips of the supports
 * @param absorbers the in-line absorbers, in the order of the supports
 * @param loads the loads in the order in which they were put on
 */
record StateNumbers(
        Lifeline line,
        double temperature,
        List<SpanNumbers> spans,
        List<SupportReaction> supports,
        List<InlineAbsorberState> absorbers,
        List<LoadPosition> loads) {
    /** Share of the largest tension below which a force drowns in the rounding of the tensions [-]. */
    private static final double ROUNDING_SHARE = 1e-5;
    /** Units in the last place that a few operations on a coordinate lose [-]. */
    private static final double ULPS = 8;
    /** Share of the chord below which a piece has no length but rounding [-]. */
    private static final double TOUCH = 1e-12;

    StateNumbers {
        spans = List.copyOf(spans);
        supports = List.copyOf(supports);
        absorbers = List.copyOf(absorbers);
        loads = List.copyOf(loads);
    }

    static StateNumbers of(LineEquilibrium e) {
        return new StateNumbers(
                e.line(),
                e.temperature(),
                e.spans().stream().map(SpanNumbers::of).toList(),
                e.supports(),
                e.inlineAbsorbers(),
                e.loads());
    }

    SpanNumbers span(int number) {
        return spans.get(number - 1);
    }

    /** Unstretched length at this temperature over that at installation [-]. */
    double expansion() {
        return 1
                + line.cable().thermalExpansion()
                        * (temperature - line.installed().temperature());
    }

    Stream<PieceNumbers> pieces() {
        return spans.stream().flatMap(s -> s.pieces().stream());
    }

    double length() {
        return spans.stream().mapToDouble(SpanNumbers::length).sum();
    }

    double largestTension() {
        return pieces().mapToDouble(p ->
                        Math.max(p.startTension().magnitude(), p.endTension().magnitude()))
                .max()
                .orElse(0);
    }

    /**
     * The force that residuals are relative to: the largest load; of a line without loads the largest tension. Never
     * less than a share of the tension: with 16 digits, 1e-9 of a smaller force would be lost in the rounding of the
     * tensions.
     */
    double forceScale() {
        double load = loads.stream().mapToDouble(LoadPosition::force).max().orElse(0);
        double tension = largestTension();
        return load > 0 ? Math.max(load, ROUNDING_SHARE * tension) : tension;
    }

    /** Force of the free-running loads that rest on a support itself, not on the cable [N]. */
    double resting(String support) {
        return loads.stream()
                .filter(l -> l.restsOn().filter(support::equals).isPresent())
                .mapToDouble(LoadPosition::force)
                .sum();
    }

    /** Tension of the cable before a support, along the line; nothing before the first. */
    Vector3 tensionBefore(int support) {
        return support == 0 ? Vector3.ZERO : span(support).lastPiece().endTension();
    }

    /** Tension of the cable behind a support, along the line; nothing behind the last. */
    Vector3 tensionBehind(int support) {
        return support == spans.size()
                ? Vector3.ZERO
                : span(support + 1).firstPiece().startTension();
    }

    /** What is lost in the last digits of the largest coordinate [m]. */
    double lastDigits() {
        return ULPS
                * Math.ulp(spans.stream()
                        .flatMap(s -> Stream.of(s.first(), s.second()))
                        .flatMapToDouble(p -> DoubleStream.of(p.x(), p.y(), p.z()))
                        .map(Math::abs)
                        .max()
                        .orElse(0));
    }

    /** Tells whether a piece, by number from 0, has no length: what it joins touches. */
    boolean isTouch(SpanNumbers span, int piece) {
        return Math.abs(span.pieces().get(piece).length()) <= TOUCH * chord(span.number());
    }

    /** As-installed length of the straight line between the supports of a span [m]. */
    double chord(int span) {
        return line.supports()
                .get(span - 1)
                .position()
                .distance(line.supports().get(span).position());
    }

    /** The shorter of the two chords at a support [m]. */
    double chordAt(int support) {
        double before = support == 0 ? Double.POSITIVE_INFINITY : chord(support);
        double behind = support == spans.size() ? Double.POSITIVE_INFINITY : chord(support + 1);
        return Math.min(before, behind);
    }

    /** Extension of the in-line absorber at the first or the last support; 0 where there is none [m]. */
    double extension(int support) {
        String id = line.supports().get(support).id();
        return absorbers.stream()
                .filter(a -> a.supportId().equals(id))
                .mapToDouble(InlineAbsorberState::extension)
                .sum();
    }

    /** Magnitude of the tension of the cable at the first or the last support [N]. */
    double endTension(int support) {
        return (support == 0 ? tensionBehind(0) : tensionBefore(support)).magnitude();
    }
}
