package org.lifeline.verify.state;

import java.util.List;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import org.lifeline.analysis.LineEquilibrium;
import org.lifeline.analysis.state.InlineAbsorberState;
import org.lifeline.analysis.state.LoadPosition;
import org.lifeline.analysis.state.SupportReaction;
import org.lifeline.base.GivenValue;
import org.lifeline.base.InputRule;
import org.lifeline.base.Interval;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.Vector3;
import org.lifeline.base.Violations;
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
 * @since 1.0.0
 */
public record StateNumbers(
        Lifeline line,
        double temperature,
        List<SpanNumbers> spans,
        List<SupportReaction> supports,
        List<InlineAbsorberState> absorbers,
        List<LoadPosition> loads) {
    /**
     * Copies the lists.
     *
     * @param line the line
     * @param temperature temperature of the state [°C]
     * @param spans the spans
     * @param supports forces, displacements and slips of the supports
     * @param absorbers the in-line absorbers, in the order of the supports
     * @param loads the loads in the order in which they were put on
     * @throws org.lifeline.base.InvalidInputException if something is missing, or the spans are not those of the line
     */
    public StateNumbers {
        Violations.required("line", line);
        spans = List.copyOf(Violations.requiredAll("spans", spans));
        supports = List.copyOf(Violations.requiredAll("supports", supports));
        absorbers = List.copyOf(Violations.requiredAll("absorbers", absorbers));
        loads = List.copyOf(Violations.requiredAll("loads", loads));
        new Violations()
                .require(
                        spans.size() == line.spans(),
                        "spans",
                        GivenValue.count(spans.size()),
                        InputRule.SPANS_OF_LINE,
                        line.spans())
                .throwIfAny();
    }

    /**
     * Reads a result.
     *
     * @param e the state
     * @return its numbers
     * @throws org.lifeline.base.InvalidInputException if there is no state
     */
    public static StateNumbers of(LineEquilibrium e) {
        Violations.required("state", e);
        return new StateNumbers(
                e.line(),
                e.temperature(),
                e.spans().stream().map(SpanNumbers::of).toList(),
                e.supports(),
                e.inlineAbsorbers(),
                e.loads());
    }

    /**
     * A span by its number.
     *
     * @param number number of the span, from 1
     * @return the span
     * @throws org.lifeline.base.InvalidInputException if there is no such span
     */
    public SpanNumbers span(int number) {
        return spans.get(requiredSpan(number) - 1);
    }

    /**
     * Thermal expansion of the state.
     *
     * @return unstretched length at this temperature over that at installation [-]
     */
    public double expansion() {
        return 1
                + line.cable().thermalExpansion()
                        * (temperature - line.installed().temperature());
    }

    /**
     * All pieces of cable.
     *
     * @return the pieces in the order of the line
     */
    public Stream<PieceNumbers> pieces() {
        return spans.stream().flatMap(s -> s.pieces().stream());
    }

    /**
     * Unstretched length of the whole cable.
     *
     * @return length at the temperature of the state [m]
     */
    public double length() {
        return spans.stream().mapToDouble(SpanNumbers::length).sum();
    }

    /**
     * Largest tension at an end of a piece.
     *
     * @return tension [N], not negative
     */
    public double largestTension() {
        return pieces().mapToDouble(p ->
                        Math.max(p.startTension().magnitude(), p.endTension().magnitude()))
                .max()
                .orElse(0);
    }

    /**
     * The force that residuals are relative to: the largest load; of a line without loads the largest tension. Never
     * less than a share of the tension: with 16 digits, 1e-9 of a smaller force would be lost in the rounding of the
     * tensions.
     *
     * @return force [N]
     */
    public double forceScale() {
        double load = loads.stream().mapToDouble(LoadPosition::force).max().orElse(0);
        double tension = largestTension();
        return load > 0 ? Math.max(load, StateTolerances.ROUNDING_SHARE * tension) : tension;
    }

    /**
     * Force of the free-running loads that rest on a support itself, not on the cable.
     *
     * @param support id of the support
     * @return force [N], downward
     * @throws org.lifeline.base.InvalidInputException if no id is given
     */
    public double resting(String support) {
        Violations.required("support", support);
        return loads.stream()
                .filter(l -> l.restsOn().filter(support::equals).isPresent())
                .mapToDouble(LoadPosition::force)
                .sum();
    }

    /**
     * Tension of the cable before a support, along the line; nothing before the first.
     *
     * @param support number of the support, from 0
     * @return tension vector, components in [N]
     * @throws org.lifeline.base.InvalidInputException if there is no such support
     */
    public Vector3 tensionBefore(int support) {
        requiredSupport(support);
        return support == 0 ? Vector3.ZERO : span(support).lastPiece().endTension();
    }

    /**
     * Tension of the cable behind a support, along the line; nothing behind the last.
     *
     * @param support number of the support, from 0
     * @return tension vector, components in [N]
     * @throws org.lifeline.base.InvalidInputException if there is no such support
     */
    public Vector3 tensionBehind(int support) {
        requiredSupport(support);
        return support == spans.size()
                ? Vector3.ZERO
                : span(support + 1).firstPiece().startTension();
    }

    /**
     * What is lost in the last digits of the largest coordinate.
     *
     * @return length [m]
     */
    public double lastDigits() {
        return StateTolerances.ULPS
                * Math.ulp(spans.stream()
                        .flatMap(s -> Stream.of(s.first(), s.second()))
                        .flatMapToDouble(p -> DoubleStream.of(p.x(), p.y(), p.z()))
                        .map(Math::abs)
                        .max()
                        .orElse(0));
    }

    /**
     * Tells whether a piece has no length: what it joins touches.
     *
     * @param span the span
     * @param piece number of the piece, from 0
     * @return true if the length is rounding only
     * @throws org.lifeline.base.InvalidInputException if there is no such piece
     */
    public boolean isTouch(SpanNumbers span, int piece) {
        Violations.required("span", span);
        Violations.requiredIndex("piece", piece, span.pieces().size());
        return Math.abs(span.pieces().get(piece).length()) <= StateTolerances.TOUCH * chord(span.number());
    }

    /**
     * As-installed length of the straight line between the supports of a span.
     *
     * @param span number of the span, from 1
     * @return length [m]
     * @throws org.lifeline.base.InvalidInputException if there is no such span
     */
    public double chord(int span) {
        requiredSpan(span);
        return line.supports()
                .get(span - 1)
                .position()
                .distance(line.supports().get(span).position());
    }

    /**
     * The shorter of the two chords at a support.
     *
     * @param support number of the support, from 0
     * @return length [m]
     * @throws org.lifeline.base.InvalidInputException if there is no such support
     */
    public double chordAt(int support) {
        requiredSupport(support);
        double before = support == 0 ? Double.POSITIVE_INFINITY : chord(support);
        double behind = support == spans.size() ? Double.POSITIVE_INFINITY : chord(support + 1);
        return Math.min(before, behind);
    }

    /**
     * Extension of the in-line absorber at the first or the last support.
     *
     * @param support number of the support, from 0
     * @return extension [m]; 0 where there is no absorber
     * @throws org.lifeline.base.InvalidInputException if there is no such support
     */
    public double extension(int support) {
        requiredSupport(support);
        String id = line.supports().get(support).id();
        return absorbers.stream()
                .filter(a -> a.supportId().equals(id))
                .mapToDouble(InlineAbsorberState::extension)
                .sum();
    }

    /**
     * Magnitude of the tension of the cable at the first or the last support.
     *
     * @param support number of the support, from 0
     * @return tension [N]
     * @throws org.lifeline.base.InvalidInputException if there is no such support
     */
    public double endTension(int support) {
        requiredSupport(support);
        return (support == 0 ? tensionBehind(0) : tensionBefore(support)).magnitude();
    }

    private int requiredSpan(int number) {
        if (number < 1 || number > spans.size()) {
            throw noSuch("span", number, InputRule.NO_SUCH_SPAN, Interval.of(1, spans.size()));
        }
        return number;
    }

    private void requiredSupport(int number) {
        if (number < 0 || number > spans.size()) {
            throw noSuch("support", number, InputRule.NO_SUCH_SUPPORT_NUMBER, Interval.of(0, spans.size()));
        }
    }

    /** Apart from its callers, which are asked often and are to stay short. */
    private static InvalidInputException noSuch(String path, int number, InputRule code, Interval range) {
        return new InvalidInputException(
                new Violations().numbered(path, number, range, code).list());
    }
}
