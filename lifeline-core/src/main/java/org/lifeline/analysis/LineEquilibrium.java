package org.lifeline.analysis;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.IntToDoubleFunction;
import org.lifeline.analysis.explain.CalculationStep;
import org.lifeline.analysis.explain.Explanations;
import org.lifeline.analysis.state.InlineAbsorberState;
import org.lifeline.analysis.state.LoadPosition;
import org.lifeline.analysis.state.SupportReaction;
import org.lifeline.analysis.warning.Warning;
import org.lifeline.base.Convergence;
import org.lifeline.base.GivenValue;
import org.lifeline.base.InputRule;
import org.lifeline.base.Interval;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.Point;
import org.lifeline.base.UnitSystem;
import org.lifeline.base.Violation;
import org.lifeline.base.Violations;
import org.lifeline.base.canonical.Canonical;
import org.lifeline.base.canonical.CanonicalForm;
import org.lifeline.internal.line.LineGeometry;
import org.lifeline.internal.line.Piece;
import org.lifeline.internal.numeric.OrderedWork;
import org.lifeline.internal.path.LineModel;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Support;
import org.lifeline.model.absorber.LoadingCurve;

/**
 * A whole line in equilibrium; in the result of a transient analysis, the line at the lowest point of the fall, in
 * motion and cut into straight segments, with the peaks of tension, supports and absorbers.
 *
 * <p>Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public final class LineEquilibrium implements Canonical {
    private final Lifeline line;
    private final double temperature;
    private final List<SpanState> spans;
    private final List<SupportReaction> supports;
    private final List<InlineAbsorberState> absorbers;
    private final List<LoadPosition> loads;
    private final Convergence convergence;
    private final double tension;

    private LineEquilibrium(LineModel model, double temperature, List<Hung> hung) {
        this.line = model.line();
        this.temperature = temperature;
        this.convergence = model.convergence();
        int n = line.spans();
        SpanState[] spanList = new SpanState[n];
        SupportReaction[] supportList = new SupportReaction[n + 1];
        LoadPosition[] loadList = new LoadPosition[hung.size()];
        LineGeometry geometry = model.geometry();
        Point first = geometry.support(0);
        double most = 0;
        for (int i = 0; i < n; i++) {
            OrderedWork.stopIfInterrupted();
            List<Piece> pieces = geometry.pieces(i);
            Point second = geometry.support(i + 1);
            spanList[i] = new SpanState(i + 1, first, second, cable(pieces));
            most = Math.max(most, spanList[i].maximumTension());
            for (int k = 0; k < loadList.length; k++) {
                if (hung.get(k).span == i + 1) {
                    loadList[k] = position(model, hung.get(k), pieces);
                }
            }
            first = second;
        }
        for (int k = 0; k < loadList.length; k++) {
            if (hung.get(k).span == 0) {
                loadList[k] = position(model, hung.get(k), List.of());
            }
        }
        for (int i = 0; i <= n; i++) {
            OrderedWork.stopIfInterrupted();
            Support s = line.supports().get(i);
            supportList[i] = new SupportReaction(s.id(), geometry.reaction(i), geometry.displacement(i), model.slip(i));
        }
        this.spans = List.of(spanList);
        this.supports = List.of(supportList);
        this.loads = List.of(loadList);
        this.absorbers = absorbers(line, model::extension);
        this.tension = most;
    }

    private static List<CablePiece> cable(List<Piece> pieces) {
        CablePiece[] list = new CablePiece[pieces.size()];
        for (int i = 0; i < list.length; i++) {
            list[i] = new CablePiece(pieces.get(i));
        }
        return List.of(list);
    }

    /** A load on the line: its span from 1, or 0 for one at a support; its downward force [N]. */
    record Hung(LineModel.Load load, int span, double force) {}

    private LineEquilibrium(LineEquilibrium before, Moving moving, Peaks peaks) {
        this.line = before.line;
        this.temperature = before.temperature;
        this.loads = List.copyOf(moving.loads);
        this.convergence = peaks.convergence;
        this.spans = List.copyOf(moving.spans);
        this.supports = List.copyOf(moving.supports);
        this.absorbers = absorbers(line, end -> end == 0 ? peaks.first : peaks.last);
        this.tension = peaks.tension;
    }

    /** A line at one moment of a motion, with the peaks of its supports. */
    record Moving(List<SpanState> spans, List<SupportReaction> supports, List<LoadPosition> loads) {}

    /** Peaks that a motion met at other moments: largest tension [N], extensions of the two in-line absorbers [m]. */
    record Peaks(double tension, double first, double last, Convergence convergence) {}

    static LineEquilibrium moving(LineEquilibrium before, Moving moving, Peaks peaks) {
        return new LineEquilibrium(before, moving, peaks);
    }

    private static List<InlineAbsorberState> absorbers(Lifeline line, IntToDoubleFunction extensions) {
        List<InlineAbsorberState> list = new ArrayList<>(2);
        List<Support> supports = line.supports();
        for (int end = 0; end < 2; end++) {
            Support s = supports.get(end == 0 ? 0 : supports.size() - 1);
            if (s.inlineAbsorber().isPresent()) {
                LoadingCurve curve = s.inlineAbsorber().get().curve();
                double extension = extensions.applyAsDouble(end);
                list.add(new InlineAbsorberState(s.id(), extension, Math.max(0, curve.maximumExtension() - extension)));
            }
        }
        return List.copyOf(list);
    }

    private static LoadPosition position(LineModel model, Hung hung, List<Piece> pieces) {
        int rest = model.restsOn(hung.load);
        return new LoadPosition(
                hung.span,
                model.position(hung.load, pieces),
                hung.force,
                rest < 0
                        ? Optional.empty()
                        : Optional.of(model.line().supports().get(rest).id()));
    }

    static LineEquilibrium of(LineModel model, double temperature, List<Hung> hung) {
        return new LineEquilibrium(model, temperature, hung);
    }

    /**
     * The line.
     *
     * @return the line
     */
    public Lifeline line() {
        return line;
    }

    /**
     * Temperature of the state.
     *
     * @return temperature [°C]
     */
    public double temperature() {
        return temperature;
    }

    /**
     * The spans in the order of the line.
     *
     * @return spans 1 … n; unmodifiable
     */
    public List<SpanState> spans() {
        return spans;
    }

    /**
     * A span.
     *
     * @param number number of the span, from 1
     * @return the span
     * @throws InvalidInputException if there is no such span
     */
    public SpanState span(int number) {
        new Violations()
                .numbered("span", number, Interval.of(1, spans.size()), InputRule.NO_SUCH_SPAN)
                .throwIfAny();
        return spans.get(number - 1);
    }

    /**
     * What the line does to its supports, in the order of the line.
     *
     * @return supports 0 … n; unmodifiable
     */
    public List<SupportReaction> supports() {
        return supports;
    }

    /**
     * What the line does to one support.
     *
     * @param id the support
     * @return force, displacement and slip
     * @throws InvalidInputException if there is no such support
     */
    public SupportReaction support(String id) {
        return supports.stream()
                .filter(s -> s.id().equals(id))
                .findFirst()
                .orElseThrow(() -> new InvalidInputException(List.of(
                        Violation.of("support", GivenValue.text(String.valueOf(id)), InputRule.NO_SUCH_SUPPORT))));
    }

    /**
     * The in-line energy absorbers.
     *
     * @return one for each end that has one; unmodifiable
     */
    public List<InlineAbsorberState> inlineAbsorbers() {
        return absorbers;
    }

    /**
     * Where the loads hang, in the order in which they were put on.
     *
     * @return the loads; unmodifiable
     */
    public List<LoadPosition> loads() {
        return loads;
    }

    /**
     * Tension of the cable at the first support.
     *
     * @return tension [N]
     */
    public double firstTension() {
        return spans.get(0).pieces().get(0).startTension().magnitude();
    }

    /**
     * Tension of the cable at the last support.
     *
     * @return tension [N]
     */
    public double lastTension() {
        List<CablePiece> last = spans.get(spans.size() - 1).pieces();
        return last.get(last.size() - 1).endTension().magnitude();
    }

    /**
     * Largest tension anywhere in the cable.
     *
     * @return tension [N]
     */
    public double maximumTension() {
        return tension;
    }

    /**
     * Points along the line, for drawing.
     *
     * @param intervalsPerPiece number of intervals in each piece of cable, at least 1
     * @return the points from the first support to the last
     * @throws InvalidInputException if there is no interval
     */
    public List<Point> shape(int intervalsPerPiece) {
        new Violations().atLeast("intervalsPerPiece", intervalsPerPiece, 1).throwIfAny();
        List<Point> list = new ArrayList<>();
        spans.forEach(s -> list.addAll(s.shape(intervalsPerPiece)));
        return List.copyOf(list);
    }

    /**
     * How the iteration ended.
     *
     * @return iterations, scaled residual, tolerance
     */
    public Convergence convergence() {
        return convergence;
    }

    /**
     * The equilibrium written down step by step, in SI.
     *
     * @return the lines; unmodifiable
     */
    public List<CalculationStep> explain() {
        return explainIn(UnitSystem.SI);
    }

    /**
     * The equilibrium written down step by step.
     *
     * @param system the units to calculate in
     * @return the lines; unmodifiable
     */
    public List<CalculationStep> explainIn(UnitSystem system) {
        Violations.required("system", system);
        return Explanations.of(this, system);
    }

    /**
     * Where the result goes beyond what it is valid for, or beyond what cable, anchors and absorbers hold.
     *
     * @return the warnings; unmodifiable, empty if there is nothing to say
     */
    public List<Warning> warnings() {
        return ResultWarnings.of(this);
    }

    @Override
    public CanonicalForm canonicalForm() {
        return ResultForms.of(this);
    }
}
