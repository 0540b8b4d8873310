package org.lifeline.design.variable;

import java.util.ArrayList;
import java.util.List;
import java.util.function.UnaryOperator;
import org.lifeline.base.GivenValue;
import org.lifeline.base.InputRule;
import org.lifeline.base.Interval;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.Point;
import org.lifeline.base.Violation;
import org.lifeline.base.ViolationCode;
import org.lifeline.base.Violations;
import org.lifeline.model.Fall;
import org.lifeline.model.InlineAbsorber;
import org.lifeline.model.Installed;
import org.lifeline.model.Lifeline;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Passage;
import org.lifeline.model.Place;
import org.lifeline.model.Stiffness;
import org.lifeline.model.Support;
import org.lifeline.model.Worker;
import org.lifeline.model.absorber.DeploymentForce;
import org.lifeline.model.absorber.LoadingCurve;
import org.lifeline.model.cable.LoadElongation;

/**
 * The variables that are asked for most. Each takes the bounds within which it is considered.
 *
 * @since 1.0.0
 */
public final class DesignVariables {
    private DesignVariables() {}

    /**
     * Pretension at the first end anchor, at the temperature of installation.
     *
     * @param bounds tensions [N], above zero
     * @return the variable
     */
    public static DesignVariable pretension(Interval bounds) {
        Violations.required("bounds", bounds);
        return DesignVariable.of(
                "pretension",
                "N",
                bounds,
                (d, v) -> d.withLine(d.line().withInstalled(d.line().installed().withPretension(v))));
    }

    /**
     * Initial sag of one span.
     *
     * @param span number of the span, from 1
     * @param bounds sags [m], above zero
     * @return the variable
     */
    public static DesignVariable initialSag(int span, Interval bounds) {
        Violations.required("bounds", bounds);
        return DesignVariable.of(
                "initial sag of span " + span,
                "m",
                bounds,
                (d, v) -> d.withLine(d.line()
                        .withInstalled(Installed.initialSag(span, v)
                                .tensionedLike(d.line().installed()))));
    }

    /**
     * Horizontal length of one span; see {@link #spanLengths}.
     *
     * @param span number of the span, from 1
     * @param bounds lengths [m], above zero
     * @return the variable
     */
    public static DesignVariable spanLength(int span, Interval bounds) {
        Violations.required("bounds", bounds);
        return DesignVariable.of(
                "length of span " + span,
                "m",
                bounds,
                (d, v) -> SpanChange.apply(d, i -> i == span ? v : d.line().run(i)));
    }

    /**
     * Horizontal length of all spans alike. Directions in plan and elevations of the supports stay; stations of falls and
     * the extent of obstructions move in proportion to their span. A line that was installed with a known length of cable keeps
     * its pretension.
     *
     * @param bounds lengths [m], above zero
     * @return the variable
     */
    public static DesignVariable spanLengths(Interval bounds) {
        Violations.required("bounds", bounds);
        return DesignVariable.of("span length", "m", bounds, (d, v) -> SpanChange.apply(d, i -> v));
    }

    /**
     * Elevation of the first support; the whole line goes with it, workers and obstructions stay.
     *
     * @param bounds elevations [m]
     * @return the variable
     */
    public static DesignVariable lineElevation(Interval bounds) {
        Violations.required("bounds", bounds);
        return DesignVariable.of("elevation of the line", "m", bounds, (d, v) -> {
            double shift = v - d.line().supports().get(0).position().z();
            return d.withLine(d.line().withSupports(s -> {
                Point p = s.position();
                return s.withPosition(Point.of(p.x(), p.y(), p.z() + shift));
            }));
        });
    }

    /**
     * Stated capacity of every anchor.
     *
     * @param bounds capacities [N], above zero
     * @return the variable
     */
    public static DesignVariable anchorCapacity(Interval bounds) {
        Violations.required("bounds", bounds);
        return DesignVariable.of(
                "capacity of the anchors",
                "N",
                bounds,
                (d, v) -> d.withLine(d.line().withSupports(s -> s.withCapacity(v))));
    }

    /**
     * Horizontal stiffness of one anchor: in the directions in which it is elastic already, or in x and y when it is rigid.
     *
     * @param supportId the support
     * @param bounds stiffnesses [N/m], above zero
     * @return the variable, on a logarithmic scale
     */
    public static DesignVariable supportStiffness(String supportId, Interval bounds) {
        Violations.required("supportId", supportId);
        Violations.required("bounds", bounds);
        return DesignVariable.of(
                        "stiffness of " + supportId,
                        "N/m",
                        bounds,
                        (d, v) -> onSupport(d, supportId, s -> s.withStiffness(stiffness(s.stiffness(), v))))
                .logarithmic();
    }

    private static Stiffness stiffness(Stiffness now, double value) {
        boolean rigid = Double.isInfinite(now.x()) && Double.isInfinite(now.y());
        Stiffness s = rigid || Double.isFinite(now.x()) ? now.withX(value) : now;
        return rigid || Double.isFinite(now.y()) ? s.withY(value) : s;
    }

    /**
     * Activation force of the in-line energy absorber at one end anchor; the whole of its curve is scaled with it.
     *
     * @param supportId the end anchor that carries the absorber
     * @param bounds forces [N], above zero
     * @return the variable
     */
    public static DesignVariable inlineActivation(String supportId, Interval bounds) {
        Violations.required("supportId", supportId);
        Violations.required("bounds", bounds);
        return DesignVariable.of(
                "activation force of the in-line absorber at " + supportId,
                "N",
                bounds,
                (d, v) -> onSupport(d, supportId, s -> {
                    InlineAbsorber a = s.inlineAbsorber().orElse(null);
                    if (a == null) {
                        throw problem("support", supportId, InputRule.INLINE_ABSORBER_NEEDED);
                    }
                    LoadingCurve curve = a.curve();
                    return s.withInlineAbsorber(InlineAbsorber.of(curve.scaled(v / curve.activationForce())));
                }));
    }

    /**
     * Maximum deployment force of every worker's connecting subsystem; the whole of its force range is scaled with it.
     *
     * @param bounds forces [N], above zero
     * @return the variable
     */
    public static DesignVariable deploymentForce(Interval bounds) {
        Violations.required("bounds", bounds);
        return DesignVariable.of(
                "maximum deployment force",
                "N",
                bounds,
                (d, v) -> d.withWorkers(w -> {
                    double now = w.connection().curve(DeploymentForce.MAXIMUM).activationForce();
                    if (!(now > 0)) {
                        throw problem("worker", w.id(), InputRule.DEPLOYMENT_FORCE_NEEDED);
                    }
                    return w.withConnection(w.connection().withForcesScaled(v / now));
                }));
    }

    /**
     * Length of every worker's connecting subsystem.
     *
     * @param bounds taut lengths, or lock-up distances of self-retracting devices [m], not negative
     * @return the variable
     */
    public static DesignVariable lanyardLength(Interval bounds) {
        Violations.required("bounds", bounds);
        return DesignVariable.of(
                "length of the connecting subsystem",
                "m",
                bounds,
                (d, v) -> d.withWorkers(w -> w.withConnection(w.connection().withLength(v))));
    }

    /**
     * Mass of every worker.
     *
     * @param bounds masses [kg], above zero
     * @return the variable
     */
    public static DesignVariable workerMass(Interval bounds) {
        Violations.required("bounds", bounds);
        return DesignVariable.of("mass of the workers", "kg", bounds, (d, v) -> d.withWorkers(w -> w.withMass(v)));
    }

    /**
     * Number of workers who fall together at one place: copies of the first who falls. A design without falls gets one fall
     * of its first worker and the copies.
     *
     * @param bounds numbers, at least 1 [-]
     * @return the variable, taking whole numbers
     * @throws org.lifeline.base.InvalidInputException if no whole number lies within the bounds
     */
    public static DesignVariable workersTogether(Interval bounds) {
        Violations.required("bounds", bounds);
        return DesignVariable.of("workers who fall together", "-", bounds, (d, v) -> together(d, (int) Math.rint(v)))
                .whole();
    }

    private static LifelineDesign together(LifelineDesign design, int count) {
        new Violations().atLeast("workers", count, 1).throwIfAny();
        List<Fall> falls = new ArrayList<>();
        LifelineDesign.Builder b = design.toBuilder();
        List<Fall> stated = design.falls().isEmpty()
                ? List.of(Fall.builder(count + " together")
                        .at(Place.of(1, design.line().run(1) / 2))
                        .faller(design.workers().get(0))
                        .build())
                : design.falls();
        List<String> known =
                new ArrayList<>(design.workers().stream().map(Worker::id).toList());
        for (Fall f : stated) {
            Fall.Builder fall = Fall.builder(f.id()).at(f.place());
            f.hanging().forEach(h -> fall.hanging(h.worker(), h.place()));
            f.freeFall().ifPresent(fall::freeFall);
            Worker first = f.fallers().get(0);
            for (int i = 0; i < count; i++) {
                Worker w = i == 0
                        ? first
                        : first.toBuilder(first.id() + " (" + (i + 1) + ")").build();
                if (!known.contains(w.id())) {
                    known.add(w.id());
                    b.worker(w);
                }
                fall.faller(w);
            }
            falls.add(fall.build());
        }
        return b.build().withFalls(falls);
    }

    /**
     * Axial stiffness of the cable, taken as linear.
     *
     * @param bounds stiffnesses EA [N], above zero
     * @return the variable, on a logarithmic scale
     */
    public static DesignVariable axialStiffness(Interval bounds) {
        Violations.required("bounds", bounds);
        return DesignVariable.of(
                        "axial stiffness of the cable",
                        "N",
                        bounds,
                        (d, v) -> d.withLine(
                                d.line().withCable(d.line().cable().withElongation(LoadElongation.linear(v)))))
                .logarithmic();
    }

    /**
     * Minimum breaking strength of the cable.
     *
     * @param bounds strengths [N], above zero
     * @return the variable
     */
    public static DesignVariable breakingStrength(Interval bounds) {
        Violations.required("bounds", bounds);
        return DesignVariable.of(
                "minimum breaking strength",
                "N",
                bounds,
                (d, v) -> d.withLine(d.line().withCable(d.line().cable().withBreakingStrength(v))));
    }

    /**
     * Coefficient of friction of every intermediate anchor that is not clamped.
     *
     * @param bounds coefficients μ [-], from 0 to 2
     * @return the variable
     */
    public static DesignVariable friction(Interval bounds) {
        Violations.required("bounds", bounds);
        return DesignVariable.of(
                "friction at the intermediate anchors",
                "-",
                bounds,
                (d, v) -> d.withLine(d.line()
                        .withSupports(s -> s.isEnd() || s.passage().kind() == Passage.Kind.CLAMPED
                                ? s
                                : s.withPassage(Passage.friction(v)))));
    }

    /**
     * The one temperature in service.
     *
     * @param bounds temperatures [°C]
     * @return the variable
     */
    public static DesignVariable temperature(Interval bounds) {
        Violations.required("bounds", bounds);
        return DesignVariable.of("temperature", "°C", bounds, (d, v) -> d.withTemperatures(List.of(v)));
    }

    private static LifelineDesign onSupport(LifelineDesign design, String id, UnaryOperator<Support> change) {
        Lifeline line = design.line();
        if (line.supports().stream().noneMatch(s -> s.id().equals(id))) {
            throw problem("support", id, InputRule.NO_SUCH_SUPPORT);
        }
        return design.withLine(line.withSupports(s -> s.id().equals(id) ? change.apply(s) : s));
    }

    private static InvalidInputException problem(String path, String value, ViolationCode rule) {
        return new InvalidInputException(List.of(Violation.of(path, GivenValue.text(value), rule)));
    }
}
