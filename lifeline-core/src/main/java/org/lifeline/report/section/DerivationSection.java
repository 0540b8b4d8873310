package org.lifeline.report.section;

import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.CablePiece;
import org.lifeline.analysis.LineEquilibrium;
import org.lifeline.analysis.SpanState;
import org.lifeline.base.InertText;
import org.lifeline.base.UnitSystem;
import org.lifeline.base.Vector3;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Passage;
import org.lifeline.model.Stiffness;
import org.lifeline.model.Support;
import org.lifeline.report.document.Quantities;
import org.lifeline.report.document.QuantityKind;
import org.lifeline.report.document.ReportBlock;
import org.lifeline.report.document.TableBuilder;

/**
 * Shows where numbers of an arrest come from that are more than one formula away: displacements of elastic supports, cable
 * that passes a support, extension of an in-line absorber as installed, heat of friction as a sum over steps.
 */
final class DerivationSection {
    /** An axis, the component of a force along it, the stiffness of a support along it. */
    private record Axis(String name, ToDoubleFunction<Vector3> force, ToDoubleFunction<Stiffness> stiffness) {}

    private static final List<Axis> AXES = List.of(
            new Axis("x", Vector3::x, Stiffness::x),
            new Axis("y", Vector3::y, Stiffness::y),
            new Axis("z", Vector3::z, Stiffness::z));

    private final LineEquilibrium installed;
    private final Quantities q;

    DerivationSection(LineEquilibrium installed, Quantities q) {
        this.installed = installed;
        this.q = q;
    }

    List<ReportBlock> blocks(ArrestResult r) {
        List<ReportBlock> blocks = new ArrayList<>();
        displacements(r, blocks);
        passed(r, blocks);
        inlineAbsorbers(r, blocks);
        friction(r, blocks);
        return blocks;
    }

    /** Displacement over an axis = (force at the lowest point − force as installed) / stiffness. */
    private void displacements(ArrestResult r, List<ReportBlock> blocks) {
        TableBuilder t = new TableBuilder(
                        "Displacement of elastic supports since installation: u = (R − Rᵢ)/k, R the force of the line")
                .text("Support, axis")
                .number("R")
                .number("Rᵢ, as installed")
                .number("k")
                .number("u = (R − Rᵢ)/k");
        boolean any = false;
        for (int i = 0; i < r.supports().size(); i++) {
            Support s = r.line().supports().get(i);
            Vector3 now = r.supports().get(i).vector();
            Vector3 then = installed.supports().get(i).vector();
            Stiffness k = s.stiffness();
            String name = InertText.name(s.id());
            for (Axis axis : AXES) {
                double stiffness = axis.stiffness().applyAsDouble(k);
                if (Double.isFinite(stiffness)) {
                    any = true;
                    double r1 = axis.force().applyAsDouble(now);
                    double r0 = axis.force().applyAsDouble(then);
                    t.row(
                            name + ", " + axis.name(),
                            q.result(QuantityKind.FORCE, r1),
                            q.result(QuantityKind.FORCE, r0),
                            q.input(QuantityKind.STIFFNESS, stiffness),
                            q.result(QuantityKind.SMALL_LENGTH, (r1 - r0) / stiffness));
                }
            }
        }
        if (any) {
            blocks.add(t.build());
        }
    }

    /**
     * Cable that passes = growth of the unstretched length on the side of the start of the line. The results count it at the
     * temperature of installation, the lengths of the spans at that of the arrest.
     */
    private void passed(ArrestResult r, List<ReportBlock> blocks) {
        Lifeline line = r.line();
        if (line.spans() < 2) {
            return;
        }
        double expansion = line.cable().thermalExpansion()
                * (r.temperature() - line.installed().temperature());
        boolean warmer = expansion != 0;
        TableBuilder t = new TableBuilder(
                        "Cable that passes each intermediate support: growth of the unstretched length ΣS"
                                + " from the first support to it, positive toward the start of the line"
                                + (warmer
                                        ? "; ΣS at the temperature of the arrest, the cable passed at that of installation: growth / (1 + α(θ − θᵢ)), α(θ − θᵢ) = "
                                                + QuantityKind.RATIO.number(expansion, UnitSystem.SI)
                                        : ""))
                .text("Support")
                .number("ΣS before the fall")
                .number("ΣS at the lowest point")
                .number("Cable passed");
        double before = 0;
        double peak = 0;
        for (int i = 1; i < line.spans(); i++) {
            before += r.before().span(i).unstretchedLength();
            peak += r.peak().span(i).unstretchedLength();
            t.row(
                    InertText.name(line.supports().get(i).id()),
                    fine(before),
                    fine(peak),
                    q.result(QuantityKind.SMALL_LENGTH, passed(r, r.peak(), i)));
        }
        blocks.add(t.build());
    }

    /** Cable that has passed a support since before the fall [m], positive toward the start, at the temperature of installation. */
    static double passed(ArrestResult r, LineEquilibrium state, int support) {
        return state.supports().get(support).slip()
                - r.before().supports().get(support).slip();
    }

    /** Lengths with one digit more than their difference is shown with, so that it follows from the printed numbers. */
    private String fine(double length) {
        UnitSystem leading = q.choice().leading();
        return QuantityKind.show(QuantityKind.SMALL_LENGTH.rounded(length, leading, leading == UnitSystem.SI ? 2 : 3))
                + " "
                + QuantityKind.SMALL_LENGTH.unit(leading);
    }

    private void inlineAbsorbers(ArrestResult r, List<ReportBlock> blocks) {
        for (int end : List.of(0, r.line().spans())) {
            Support s = r.line().supports().get(end);
            s.inlineAbsorber().ifPresent(a -> {
                double tension = end == 0 ? installed.firstTension() : installed.lastTension();
                double k = a.initialStiffness();
                if (Double.isInfinite(k)) {
                    blocks.add(new ReportBlock.Paragraph("In-line absorber at " + InertText.name(s.id())
                            + ": rigid until it deploys, no extension as installed."));
                    return;
                }
                blocks.add(new ReportBlock.Paragraph("In-line absorber at " + InertText.name(s.id())
                        + ", extension as installed = tension / initial stiffness = "
                        + q.result(QuantityKind.FORCE, tension) + " / " + q.input(QuantityKind.STIFFNESS, k) + " = "
                        + q.result(QuantityKind.SMALL_LENGTH, tension / k) + "."));
            });
        }
    }

    private void friction(ArrestResult r, List<ReportBlock> blocks) {
        if (r.energy().friction() == 0) {
            return;
        }
        FrictionHeat heat = FrictionHeat.of(r);
        blocks.add(
                new ReportBlock.Paragraph("Heat of friction Q = Σ ∫ΔΨ dq over the intermediate supports with friction:"
                        + " q is the unstretched length of cable that passes, Ψ = T + ∫ε dT (for an elastic cable T + T²/(2·EA)) what a"
                        + " unit of it is worth, ΔΨ the difference between the two sides of the support. Below, the force on the line"
                        + " grows to its largest value in " + FrictionHeat.STEPS
                        + " steps; each adds the mean of ΔΨ at its ends times"
                        + " the cable that passes in it."));
        TableBuilder t = new TableBuilder("Heat of friction, step by step").number("Force on the line");
        List<Integer> supports = rough(r.line());
        for (int i : supports) {
            String name = InertText.name(r.line().supports().get(i).id());
            t.number("ΔΨ at " + name).number("q there").number("Q there");
        }
        for (FrictionHeat.Step step : heat.steps()) {
            List<String> cells = new ArrayList<>(List.of(q.result(QuantityKind.FORCE, step.force())));
            for (int i : supports) {
                cells.add(q.result(QuantityKind.FORCE, FrictionHeat.of(step.drop(), i)));
                cells.add(q.result(QuantityKind.SMALL_LENGTH, FrictionHeat.of(step.passed(), i)));
                cells.add(q.result(QuantityKind.ENERGY, FrictionHeat.of(step.heat(), i)));
            }
            t.row(cells);
        }
        blocks.add(t.build());
        blocks.add(new ReportBlock.Paragraph("Sum over the steps: " + q.result(QuantityKind.ENERGY, heat.total())
                + "; in the energy account, with steps that are made finer until their error is small: "
                + q.result(QuantityKind.ENERGY, r.energy().friction()) + "."));
    }

    static List<Integer> rough(Lifeline line) {
        List<Integer> list = new ArrayList<>();
        for (int i = 1; i < line.spans(); i++) {
            if (line.supports().get(i).passage().kind() == Passage.Kind.FRICTION) {
                list.add(i);
            }
        }
        return list;
    }

    /** Tension of the cable beside a support, on the side of the start of the line and on the other. */
    static double tension(LineEquilibrium state, int support, boolean towardStart) {
        SpanState span = state.span(towardStart ? support : support + 1);
        List<CablePiece> pieces = span.pieces();
        return towardStart
                ? pieces.get(pieces.size() - 1).endTension().magnitude()
                : pieces.get(0).startTension().magnitude();
    }
}
